// What the page knows, and what a person has chosen on it.
import { computed, signal } from "@preact/signals";
import { TempoMap } from "../src/count";
import type { Block, Checking, Findings, Pattern, Song, State, View } from "./api";

/** A count of somebody's line. */
export interface Place {
  beat: number;
  who: string[];
}

export const state = signal<State | null>(null);
export const view = signal<View | null>(null);
export const song = signal<Song | null>(null);
export const findings = signal<Findings | null>(null);
export const checking = signal<Checking | null>(null);
export const patterns = signal<Pattern[]>([]);
export const stageFault = signal<string | null>(null); // why the newest revision cannot be staged
export const notices = signal<{ id: number; words: string; warn: boolean }[]>([]);
export const ended = signal<string | null>(null); // the server has ended
export const away = signal(false); // what the server tells broke off; it is asked again

export const picked = signal<Place | null>(null);
export const opened = signal(false); // the form about the place
export const picks = signal(0); // how often a place was chosen: also the one that is chosen already is to be seen
export const along = signal<string | null>(null); // the place at which what follows a change moves along with it
export const walking = signal(false); // the keyboard is in the sheet
export const copied = signal<{ blocks: string[]; starts: number[]; words: string } | null>(null);
export const told = signal(""); // for everybody, and for screen readers
/** Why the last thing was not done; what can be done all the same, or instead. */
export const fault = signal<{ words: string; anyway: (() => void) | null; instead?: { words: string; work: () => unknown } | null } | null>(null);
export const written = signal<{ text: string; based: string; revision: number } | null>(null); // the file as somebody is typing it
export const busy = signal(false);
export const readOnly = signal(false); // this page only watches

/** How the show is shared with phones that watch. */
export interface Shared { address: string; code: string; watching: number; exposed: string; shut: boolean; over: boolean }
export const shared = signal<Shared | null>(null);

export const seconds = signal(0); // where the song is
export const playing = signal(false);
export const side = signal<"findings" | "stage" | "dance" | "count" | "who" | "draft" | "forms" | "print" | "versions" | "text">("findings");
export const besides = signal(0); // how often something beside the sheet was to be seen
export const pointed = signal<number | null>(null); // the entry of the findings that is shown

export const names = computed(() => view.value?.cast.map((each) => each.name) ?? []);

export const tempo = computed(() => {
  const given = view.value?.tempo;
  return given ? new TempoMap(given.times, given.first, given.bars, given.metre) : null;
});

/** Who is looked at as the file stands now: the view may be of an older revision while it is staged. */
export const fresh = computed(() => view.value !== null && view.value.revision === state.value?.revision);

export const blocksBy = computed(() => {
  const out = new Map<string, Block[]>();
  for (const block of view.value?.blocks ?? []) {
    const own = out.get(block.who);
    if (own) own.push(block);
    else out.set(block.who, [block]);
  }
  return out;
});

export function pick(place: Place | null): void {
  picked.value = place;
  picks.value += 1;
  fault.value = null;
}

/** Shows what is beside the sheet, for somebody who asked for it elsewhere: it has to come into sight too. */
export function beside(which: typeof side.value): void {
  side.value = which;
  besides.value += 1;
}

let move: ((to: number) => void) | null = null;

/** The player takes over where the song is. */
export function playBy(player: (to: number) => void): void {
  move = player;
}

export function seek(to: number): void {
  seconds.value = to;
  move?.(to);
}

let count = 0;

export function notice(words: string, warn = false): void {
  const id = ++count;
  notices.value = [...notices.value.slice(-3), { id, words, warn }];
  setTimeout(() => (notices.value = notices.value.filter((each) => each.id !== id)), warn ? 30_000 : 10_000);
}
