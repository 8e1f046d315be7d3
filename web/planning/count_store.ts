// The count of the song as somebody is putting it right: what is thought of, before it is written.
import { computed, signal } from "@preact/signals";
import { TempoMap } from "../src/count";
import { Refused, post, type Operation, type Trouble } from "./api";
import { fault, state, tempo, told, view } from "./store";

export interface Corrections {
  metre?: string | number | null;
  one?: string | null;
  tempo?: "half" | "double" | null;
  shift?: string | number | null;
  beats?: string | null;
  steady?: { tempo: string | number; at: string } | null;
}

/** A section as it is thought of; `was` is the name by which moments of the file know it. */
export interface Border { start: string; name: string; was: string | null; seconds: number }

export interface Thought { values: Corrections; sections: Border[] | null }

type Moved = { same: number; moved: number; gone: number; come: number };
type Told = { who: string[]; title: string; before: string; after: string; before_s: number; after_s: number; longer_s: number };

/** What the server says of a count that is thought of. */
export interface Counted {
  revision: number;
  trouble: Trouble | null;
  held: [string, string][] | null; // sections as they are written to begin when they did; null where they can stay as written
  bpm: number;
  tempo: { times: number[]; first: number; bars: number[]; metre: number };
  sections: { name: string; label: string; start: number; end: number; position: string }[];
  beats: Moved | null;
  ones: Moved | null;
  borders: { name: string; before_s: number | null; after_s: number | null }[];
  blocks: { same: number; moved: number; most_s: number; told: Told[] } | null;
}

export const thought = signal<Thought | null>(null);
export const counted = signal<Counted | null>(null);
let answered: Thought | null = null; // the thought that `counted` is about
export const thinking = signal(false); // the server is being asked

/** The count that is thought of. */
export const heardCount = computed(() => {
  const own = counted.value?.tempo;
  return thought.value && own ? new TempoMap(own.times, own.first, own.bars, own.metre) : null;
});

/** The count that is heard and seen: the one that is thought of, or the show's. */
export const countNow = computed(() => heardCount.value ?? tempo.value);

export const said = computed<Corrections>(() => (state.value?.values?.track?.corrections ?? {}) as Corrections);

/** What a correction would be: as it is thought of, or as the file has it. */
export function correction<Key extends keyof Corrections>(key: Key): Corrections[Key] | null {
  const own = thought.value?.values ?? {};
  return (key in own ? own[key] : said.value[key]) ?? null;
}

export function think(values: Corrections, words: string): void {
  const all: Record<string, unknown> = { ...thought.value?.values, ...values };
  for (const key of Object.keys(all)) if (alike(all[key], (said.value as Record<string, unknown>)[key])) delete all[key];
  set({ values: all as Corrections, sections: thought.value?.sections ?? null }, words);
}

export function thinkSections(sections: Border[] | null, words: string): void {
  set({ values: thought.value?.values ?? {}, sections }, words);
}

const alike = (a: unknown, b: unknown) => (a ?? null) === null ? (b ?? null) === null : JSON.stringify(a) === JSON.stringify(b) || String(a) === String(b ?? "");

function set(next: Thought, words: string): void {
  told.value = words;
  thought.value = Object.keys(next.values).length || next.sections ? next : null;
  if (thought.value) void ask();
  else counted.value = null;
}

export function forget(): void {
  thought.value = counted.value = null;
}

let asked = 0;

/** What the thought would move; asked anew whenever it, or the show, is another one. */
export async function ask(): Promise<void> {
  const own = thought.value, turn = ++asked;
  if (!own || !state.value) return;
  thinking.value = true;
  try {
    const found = await post<Counted>("count", { revision: state.value.revision, operation: thoughtOf(own), hold: holdOf(own) });
    if (turn !== asked || thought.value !== own) return;
    answered = own;
    counted.value = found;
    fault.value = null;
  } catch (error) {
    if (turn !== asked) return;
    const words = error instanceof Refused ? error.message : "The program behind this page does not answer.";
    fault.value = { words, anyway: null };
    told.value = words;
  } finally {
    if (turn === asked) thinking.value = false;
  }
}

/** Whether the server has answered what is thought of now, so that it can be written. */
export const isAnswered = computed(() => counted.value !== null && !thinking.value && answered === thought.value);

/** All that is thought of, as one operation; sections begin when they did. */
export function operationOf(own: Thought): Operation {
  return thoughtOf(own, answered === own ? counted.value?.held : null);
}

/** Corrections from a form, as one operation: sections that the file gives begin when they did, whatever the count. */
export async function heldCorrection(values: Corrections): Promise<Operation> {
  const count: Operation = { do: "correct-count", values };
  if (!areGiven() || !state.value) return count;
  try {
    const found = await post<Counted>("count", { revision: state.value.revision, operation: count, hold: view.value!.sections.map((each) => each.start) });
    return found.held ? { do: "do-together", operations: [count, { do: "set-sections", sections: found.held }], said: "correct the count" } : count;
  } catch (error) {
    if (error instanceof Refused) return count; // refused by what does it, in the same words
    throw error;
  }
}

function thoughtOf(own: Thought, held: [string, string][] | null = null): Operation {
  const count: Operation = { do: "correct-count", values: own.values };
  const borders = own.sections ?? (held ? bordersNow() : null);
  if (!borders) return count;
  const sections = { ...sectionsOf(borders), ...(held ? { sections: held } : {}) };
  return Object.keys(own.values).length ? { do: "do-together", operations: [count, sections], said: "set the count and the sections" } : sections;
}

/** Seconds at which the sections of the file are to begin on another count; null where it gives none, or the count stays. */
function holdOf(own: Thought): number[] | null {
  if (!Object.keys(own.values).length) return null;
  return own.sections || areGiven() ? (own.sections ?? view.value?.sections ?? []).map((each) => ("seconds" in each ? each.seconds : each.start)) : null;
}

function sectionsOf(borders: Border[]): Operation {
  const names = numbered(borders.map((each) => each.name));
  const renamed = borders.flatMap((each, k) => (each.was !== null && each.was !== names[k] ? [[each.was, names[k]]] : []));
  const kept = new Set(borders.map((each) => each.was));
  const gone = (view.value?.sections ?? []).map((each) => each.name).filter((name) => !kept.has(name));
  return { do: "set-sections", sections: borders.map((each) => [each.start, each.name]), renamed, gone };
}

const rowsGiven = () => ((said.value as Record<string, unknown>).sections ?? []) as { from: string; name: string }[];

/** Whether the file gives the sections, each where it has a row. */
function areGiven(): boolean {
  const sections = view.value?.sections ?? [], rows = rowsGiven();
  return rows.length > 0 && rows.length === sections.length && rows.every((row, k) => row.name === sections[k].label);
}

/** Names of sections as moments say them: numbered where several are called the same. */
export function numbered(labels: string[]): string[] {
  const seen = new Map<string, number>();
  return labels.map((label) => {
    if (labels.filter((other) => other === label).length === 1) return label;
    seen.set(label, (seen.get(label) ?? 0) + 1);
    return `${label} ${seen.get(label)}`;
  });
}

/** Sections as they are, each with the moment that the file gives it, where it does. */
export function bordersNow(): Border[] {
  const own = thought.value?.sections;
  if (own) {
    const now = counted.value?.sections;
    return now?.length === own.length ? own.map((each, k) => ({ ...each, seconds: now[k].start })) : own;
  }
  const sections = view.value?.sections ?? [];
  const rows = rowsGiven(), given = areGiven();
  return sections.map((each, k) => ({ start: given ? String(rows[k].from) : momentOf(each.start), name: each.label, was: each.name, seconds: each.start }));
}

/** A moment of the track as the file has it: a count where it is on one, else its time. */
export function momentOf(seconds: number): string {
  const counts = countNow.value;
  if (!counts || seconds <= 0) return clockText(Math.max(0, seconds));
  const beat = Math.round(counts.beatAt(seconds));
  return Math.abs(counts.secondsAt(beat) - seconds) < 0.02 ? counts.text(beat) : clockText(seconds);
}

/** m:ss.sss, as exact as a file needs it. */
export function clockText(seconds: number): string {
  const ticks = Math.round(seconds * 1000);
  return `${Math.floor(ticks / 60000)}:${((ticks % 60000) / 1000).toFixed(3).padStart(6, "0").replace(/(\.\d)0+$|(\.\d\d)0$/, "$1$2")}`;
}
