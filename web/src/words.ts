// Planes, stations and times in words; mirrors sequencer/motion/patterns/planes.py for planes.
import type { Vec } from "./motion";

const PLANES: [Vec, string][] = [
  [[-1, 0, 0], "wheel plane, forward"],
  [[1, 0, 0], "wheel plane, backward"],
  [[0, 1, 0], "wall plane, clockwise"],
  [[0, -1, 0], "wall plane, anticlockwise"],
  [[0, 0, 1], "floor plane, anticlockwise from above"],
  [[0, 0, -1], "floor plane, clockwise from above"],
];

const dot = (a: Vec, b: Vec) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Plane and direction as the performer sees them. */
export function planeWords(n: Vec): string {
  const ranked = PLANES.map(([axis, words]) => ({ words, product: dot(axis, n) })).sort((a, b) => b.product - a.product);
  const off = (Math.acos(Math.min(1, Math.max(-1, ranked[0].product))) * 180) / Math.PI;
  if (off <= 15) return ranked[0].words;
  const [one, other] = ranked.map(({ words }) => words.split(",")[0]);
  return `tilted between ${one.replace(" plane", "")} and ${other}`;
}

/** Where a hand is on its path, and which way its prop points if it points straight in or out. */
export function stationWords(hand: Vec, centre: Vec, tether: Vec, prop: string): string {
  const off: Vec = [hand[0] - centre[0], hand[1] - centre[1], hand[2] - centre[2]];
  const size = Math.hypot(...off);
  if (size < 0.08) return "still";
  const across = Math.abs(off[0]) >= 0.924 * size ? 0 : Math.abs(off[1]) >= 0.924 * size ? 1 : Math.abs(off[2]) >= 0.924 * size ? 2 : -1;
  const names: [string, string][] = [["left", "right"], ["back", "front"], ["bottom", "top"]];
  const one = (axis: number) => names[axis][off[axis] > 0 ? 1 : 0];
  let words: string;
  if (across >= 0) words = one(across);
  else {
    const ranked = [0, 1, 2].sort((a, b) => Math.abs(off[b]) - Math.abs(off[a]));
    words = [ranked[0], ranked[1]].sort((a, b) => b - a).map(one).join(" ");
  }
  const lean = dot(off, tether) / (size * Math.hypot(...tether));
  const reach = lean > 0.8 ? `, ${prop} pointing outward` : lean < -0.8 ? `, ${prop} pointing inward` : "";
  return `at the ${words}${reach}`;
}

/** A hand's place, its prop's direction and plane in the mirror image: x changes its sign, and for a plane the others do. */
export function reflected(v: Vec, plane = false): Vec {
  return plane ? [v[0], -v[1], -v[2]] : [-v[0], v[1], v[2]];
}

export function clockText(seconds: number): string {
  const ticks = Math.max(0, Math.floor(seconds * 10 + 1e-6));
  const minutes = Math.floor(ticks / 600);
  return `${minutes}:${String(Math.floor((ticks % 600) / 10)).padStart(2, "0")}.${ticks % 10}`;
}

export function shortClock(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds - 1e-6));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
