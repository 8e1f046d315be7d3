// The sheet's rows: the song in eights, each with a line for every group of performers who dance the same.
import type { TempoMap } from "../src/count";
import type { Block, Section } from "./api";

export interface Row {
  section: Section | null;
  heads: boolean; // the first of its section
  start: number; // [beats]
  beats: number;
  bar: number; // number of its first bar
}

export interface Line {
  who: string[];
  blocks: Block[]; // of the first of them
}

export const CLOSE = 1e-6; // [beats]

/** Bars of a row: an eight, which is two bars, but four of two beats; in other metres two bars too, such as six counts of a waltz. */
const barsOfRow = (metre: number) => (8 % metre === 0 ? 8 / metre : 2);

/** Rows of an eight; a section begins a new one. */
export function rowsOf(tempo: TempoMap, sections: Section[], first: number, end: number): Row[] {
  const rows: Row[] = [];
  let bar = Math.min(1, tempo.position(first + CLOSE).bar);
  while (tempo.barStart(bar) < end - CLOSE) {
    const start = tempo.barStart(bar);
    let next = bar + 1;
    while (next < bar + barsOfRow(tempo.metre) && !sections.some((each) => Math.abs(each.start_beat - tempo.barStart(next)) < 0.5)) next += 1;
    const section = sectionAt(sections, start + 0.5);
    rows.push({
      section,
      heads: section !== null && section !== rows[rows.length - 1]?.section,
      start,
      beats: tempo.barStart(next) - start,
      bar,
    });
    bar = next;
  }
  return rows;
}

function sectionAt(sections: Section[], beat: number): Section | null {
  return sections.find((each) => beat >= each.start_beat && beat < each.end_beat) ?? null;
}

/** Lines of a row: performers who dance the same share one. */
export function linesOf(row: Row, names: string[], blocks: Map<string, Block[]>): Line[] {
  const lines = new Map<string, Line>();
  for (const name of names) {
    const own = (blocks.get(name) ?? []).filter((each) => each.end > row.start + CLOSE && each.start < row.start + row.beats - CLOSE);
    const key = own.map((each) => [each.kind, each.title, each.start.toFixed(4), each.end.toFixed(4), each.path?.join("/"), each.entry?.join("/")].join("|")).join(";");
    const line = lines.get(key);
    if (line) line.who.push(name);
    else lines.set(key, { who: [name], blocks: own });
  }
  return [...lines.values()];
}

/** What stands over a beat; a link or a rest only where nothing that was written does. */
export function blockAt(blocks: Block[], beat: number): Block | null {
  const here = blocks.filter((each) => each.start <= beat + CLOSE && each.end > beat + CLOSE);
  return here.find((each) => each.path !== null && each.kind !== "link") ?? here[0] ?? null;
}

/** Who, in words. */
export function together(who: string[], names: string[]): string {
  if (who.length === names.length && who.length > 1) return "everybody";
  return who.length > 1 ? `${who.slice(0, -1).join(", ")} and ${who[who.length - 1]}` : (who[0] ?? "nobody");
}

/** A moment as the file has it: bar.beat, with a fraction where it is off the beat. */
export function moment(tempo: TempoMap, beat: number): string {
  const { bar, beat: inBar } = tempo.position(beat + CLOSE);
  const whole = Math.floor(inBar);
  const rest = Math.round((inBar - whole) * 1000) / 1000;
  return rest < 1e-3 ? `${bar}.${whole}` : `${bar}.${whole}+${rest}`;
}

/** The beat of a moment written as bar.beat; null if it is written in another way. */
export function beatOf(tempo: TempoMap, words: string): number | null {
  const found = /^(-?\d+)\.(\d+)(?:\+(\d+)\/(\d+)|\+(\d*\.?\d+))?$/.exec(words.trim());
  if (!found) return null;
  const [, bar, count, over, under, part] = found;
  return tempo.barStart(Number(bar)) + Number(count) - 1 + (over ? Number(over) / Number(under) : Number(part ?? 0));
}

/** Short gaps between what is written: the prop is led from one to the next. */
export function gapsOf(blocks: Block[]): { start: number; end: number }[] {
  return blocks.flatMap((each, k) => {
    const next = blocks[k + 1];
    return next && next.start > each.end + CLOSE && next.start - each.end <= LONGEST_LINK + CLOSE ? [{ start: each.end, end: next.start }] : [];
  });
}

const LONGEST_LINK = 4; // [beats] of a gap that is a single link; a longer one goes by rest
