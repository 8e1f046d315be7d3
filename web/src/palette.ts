// Colours: Okabe and Ito's set for colour-blind readers ("Color Universal Design", 2008), on near-black.
// Whatever a colour says is also said by shape, words or position.
export const BACKGROUND = 0x0c0f12;
export const FLOOR = 0x171c21;
export const GRID = 0x2a323a;
export const LINE = 0x8b98a3;
export const LEFT = 0x56b4e9; // sky blue
export const RIGHT = 0xffa630; // orange
export const ALERT = 0xff6b57;
export const SKIN = 0xb9aca0;
export const TROUSERS = 0x3b434c;
export const SEAT = 0x39424b; // a wheelchair's seat and tyres
export const METAL = 0x9ba5ae;
export const CLOTHES = [0x4f7f9e, 0x9a7b45, 0x4d8a74, 0x94627f, 0x8c8a4e, 0x5d67a0, 0x9a5f49, 0x6f7a84];

export const css = (hex: number) => "#" + hex.toString(16).padStart(6, "0");
