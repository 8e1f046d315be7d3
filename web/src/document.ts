// The page's data: one JSON document, and key samples of every motion in base 64.
import { inflateSync } from "fflate";
import type { Held } from "./carriage";
import { TempoMap } from "./count";
import { AFTER, BEFORE, Track, type TrackHead } from "./tracks";

export type Side = "left" | "right";
export const SIDES: readonly Side[] = ["left", "right"];

export interface Finding {
  code: string;
  severity: "stop" | "warn" | "note";
  who: string[];
  start: number | null;
  end: number | null;
  position: string | null;
  message: string;
  remedies: string[];
  source: string;
}

/** Findings of one cause, as the list tells them. */
export interface Entry {
  severity: Finding["severity"];
  start: number | null;
  position: string | null; // as it can be counted aloud
  message: string;
  remedies: string[];
  of: number[]; // places of the findings among all
}

export interface Clearance {
  between: [string, string];
  distance: number;
  required: number;
  at: number;
  parts: [string, string];
}

export type Spot = [number, number]; // [m] along and across a prop, from the hand

export interface Prop {
  kind: string;
  length: number; // [m] hand to the farthest wick
  lines: [number, number, number, number][]; // the segments it is made of, two spots each
  heads: Spot[]; // wicks, the farthest along first
  wick: number;
  flame: number;
  room: Room;
}

/** What others keep clear of, on the prop's axis [m]; radii unlit and lit. */
export interface Room { ball: number; behind: number; shaft: number; radius: [number, number]; rear: [number, number] }

/** A wheelchair [m]: height of the seat, radius of a wheel, half the breadth; knee and sole ahead and up. */
export interface Chair { seat: number; wheel: number; half: number; knee: [number, number]; sole: [number, number] }

export interface Body {
  stature: number; // standing
  chair: Chair | null; // for somebody who is seated
  crown: number; // [m] above the floor, standing or seated
  hips: number; // [m] about which the trunk leans
  column: [number, number]; // [m] that others keep clear of: radius, and where its axis ends
  shoulder: number;
  halfShoulder: number;
  halfBreadth: number;
  arm: number;
  limb: number;
  give: [number, number, number, number]; // [m] of a shoulder: in, back, forward, up
}

type Heads = { floor: TrackHead } & Partial<Record<Side, TrackHead>>;

export interface CastEntry {
  name: string;
  body: Body;
  carriage?: Held[]; // absent for somebody who stays upright
  props: Partial<Record<Side, Prop>>;
  tracks: Heads;
  drawn?: Heads; // of somebody whose tracks are as flown: as drawn
  spans: Partial<Record<Side, [number, number, string][]>>;
  lit: [number, number][];
  reach: number; // [m] from the body's axis, flame and hand deviation included
  deviation: Partial<Record<Side, [number, number, number][]>>; // from and to beat, and how much [m]
  drawnDeviation?: CastEntry["deviation"]; // the same of the drawing
}

export interface Place {
  outline: [number, number][];
  holes: [number, number][][];
  audience: { name: string; line: [number, number][] }[];
  scenery: { name: string; outline: [number, number][]; height: number }[];
  exits: { name: string; at: [number, number] }[];
  extinguishers: [number, number][];
  fuel: [number, number] | null;
  lines: { name: string; points: [number, number][] }[]; // on the ground: ways out, fire lane, zone, rings round the fuel; one point: the gate
}

export interface Standing { name: string; walk: number; start: number; spots: [number, number, number][] }

export interface Document {
  format: number;
  kind: "show" | "pattern";
  title: string;
  version: string;
  date: string;
  duration: number;
  tempo: { times: number[]; first: number; bars: number[]; metre: number };
  sections: [string, number, number][];
  place: Place;
  crew: { name: string; duty: string; at: [number, number]; watches: string[] }[];
  cast: CastEntry[];
  keys: string;
  blocks: [number, number, number, number, number][];
  texts: string[][];
  mirrored: string[][]; // the same of the mirror image
  standings: Standing[];
  stations: [number, string, string][]; // beat, words, and words of the mirror image
  burn: { seconds: number; measured: boolean } | null;
  findings: Finding[];
  entries: Entry[];
  clearances: Clearance[];
  part?: [number, number] | null; // [s] the part that is shown; missing or null for a whole show
  apart: number | null; // [m] required between two performers
  not_checked: string[];
  error: { stated: number; measured: number };
  audio: { kind: "embedded" | "linked" | "none"; type: string; notice: string };
}

export interface Tracks { floor: Track; left?: Track; right?: Track; drawn?: Tracks }

export function readDocument(): Document {
  const text = document.getElementById("show")?.textContent ?? "";
  return JSON.parse(text) as Document;
}

export function bytesFromBase64(text: string): Uint8Array<ArrayBuffer> {
  const plain = atob(text.trim());
  const bytes = new Uint8Array(plain.length);
  for (let i = 0; i < plain.length; i++) bytes[i] = plain.charCodeAt(i);
  return bytes;
}

export function tempoOf(doc: Document): TempoMap {
  return new TempoMap(doc.tempo.times, doc.tempo.first, doc.tempo.bars, doc.tempo.metre);
}

/** Key samples of every performer, as danced and then as drawn before the next one's; second differences in 16-bit arithmetic are summed up here. */
export function tracksOf(doc: Document): Tracks[] {
  const planes = inflateSync(bytesFromBase64(doc.keys));
  const half = planes.length / 2;
  let at = 0;
  const read = (head: TrackHead): Track => {
    const channels = head.steps.length;
    let size = 0;
    for (const n of head.intervals) size += channels * (n + BEFORE + AFTER + 1);
    const samples = new Int16Array(size);
    let to = 0;
    for (const n of head.intervals) {
      const width = n + BEFORE + AFTER + 1;
      for (let c = 0; c < channels; c++) {
        let slope = 0;
        let value = 0;
        for (let i = 0; i < width; i++, at++) {
          const word = planes[at] | (planes[half + at] << 8);
          const second = (word >>> 1) ^ -(word & 1);
          if (i === 0) value = second;
          else {
            slope = i === 1 ? second : slope + second;
            value += slope;
          }
          value = (value << 16) >> 16;
          samples[to++] = value;
        }
      }
    }
    return new Track(head, samples);
  };
  const all = (heads: Heads): Tracks => {
    const own: Tracks = { floor: read(heads.floor) };
    for (const side of SIDES) {
      const head = heads[side];
      if (head) own[side] = read(head);
    }
    return own;
  };
  return doc.cast.map((entry) => {
    const own = all(entry.tracks);
    if (entry.drawn) own.drawn = all(entry.drawn);
    return own;
  });
}
