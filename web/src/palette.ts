// Colours: Okabe and Ito's set for colour-blind readers ("Color Universal Design", 2008); two sets, for near-black and for the sun.
// Whatever a colour says is also said by shape, words or position.
export interface Palette {
  light: boolean; // dark on bright: light is then not added to the ground, but taken from it
  background: number;
  floor: number;
  grid: number;
  centre: number; // middle line of the stage
  line: number;
  edge: number; // of the audience
  text: number;
  left: number;
  right: number;
  alert: number;
  warn: number;
  note: number;
  wood: number; // scenery
  post: { crew: number; extinguisher: number; exit: number; fuel: number };
  part: { section: number[]; block: number; link: number }; // of the song, on the line below
}

export const NIGHT: Palette = {
  light: false,
  background: 0x0c0f12, floor: 0x171c21, grid: 0x2a323a, centre: 0x46525d, line: 0x8b98a3, edge: 0xd9e1e7, text: 0xeef2f4,
  left: 0x56b4e9, // sky blue
  right: 0xffa630, // orange
  alert: 0xff6b57, warn: 0xffd27a, note: 0x9fb0bd, wood: 0x4a4038,
  post: { crew: 0x8fd0b4, extinguisher: 0xd0483b, exit: 0x9fd8ff, fuel: 0xd8c25a },
  part: { section: [0x2b4a5e, 0x4d4326, 0x27493d, 0x4a3142, 0x46462a, 0x30365c], block: 0x39434d, link: 0x22292f },
};

export const DAY: Palette = {
  light: true,
  background: 0xf6f4ee, floor: 0xe9e6dc, grid: 0xcfccc0, centre: 0xa5a297, line: 0x59636d, edge: 0x343c44, text: 0x14181c,
  left: 0x0069a8, // blue
  right: 0xb85400, // vermilion, darkened
  alert: 0xb3261e, warn: 0x8a5a00, note: 0x59636d, wood: 0xa89a8a,
  post: { crew: 0x1f7a55, extinguisher: 0xb3261e, exit: 0x0069a8, fuel: 0x7a6400 },
  part: { section: [0xb9d7e8, 0xe8dca8, 0xbde0cc, 0xe8c9dc, 0xdedcb2, 0xccd2f0], block: 0xd5d8da, link: 0xeceae4 },
};

// Bodies look the same by day and by night.
export const SKIN = 0xb9aca0;
export const HAIR = 0x2a211c;
export const SHOE = 0x22272d;
export const TROUSERS = 0x3b434c;
export const SEAT = 0x39424b; // a wheelchair's seat and tyres
export const METAL = 0x9ba5ae;
export const CLOTHES = [0x4f7f9e, 0x9a7b45, 0x4d8a74, 0x94627f, 0x8c8a4e, 0x5d67a0, 0x9a5f49, 0x6f7a84];

export const css = (hex: number) => "#" + hex.toString(16).padStart(6, "0");
