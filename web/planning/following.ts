// What follows a change of the timeline, moved along with it: up to the next gap that is long enough to take it up.
import type { Block, Operation } from "./api";
import { CLOSE } from "./rows";

type Row = Record<string, any>;
export type Ends = Map<string, number>; // by performer, where the changed entry ends [beats]

const KEPT_GAP = 4; // [beats] of a gap that is a link, or the ways of a rest: it stays as long as it is

const ON_BORDER = 0.05; // [beats]

interface Span { entry: number; start: number; end: number; newEnd: number; gap: number } // gap: the most that is kept behind it

const NEW = -1; // an entry that is not written yet

/** When each performer dances each entry of the timeline, in order. */
function linesOf(blocks: Block[]): Map<string, Span[]> {
  const out = new Map<string, Span[]>();
  for (const each of blocks) {
    if (each.entry?.[0] !== "timeline") continue;
    const own = out.get(each.who) ?? out.set(each.who, []).get(each.who)!;
    const entry = Number(each.entry[1]), known = own.find((span) => span.entry === entry);
    if (known) Object.assign(known, { start: Math.min(known.start, each.start), end: Math.max(known.end, each.end) });
    else own.push({ entry, start: each.start, end: each.end, newEnd: 0, gap: KEPT_GAP });
  }
  for (const own of out.values()) for (const span of own) span.newEnd = span.end;
  return out;
}

/** By how many beats other entries start later (or earlier, below 0) once an entry ends at other beats.
 *
 * `from` is the entry, or the beat from which a new one is danced. A gap of up to four beats stays as it is, a longer one
 * takes up what it can. Nothing moves earlier than what somebody who dances in it still does. What begins with a section
 * (`borders`, in beats) keeps its count: if there is no room before it, the change is refused as an overlap.
 */
export function shiftsAfter(blocks: Block[], from: { entry: number } | { beat: number }, ends: Ends, borders: number[]): Map<number, number> {
  const lines = linesOf(blocks);
  for (const [who, end] of ends) {
    const own = lines.get(who) ?? lines.set(who, []).get(who)!;
    if ("beat" in from) own.push({ entry: NEW, start: from.beat, end: from.beat, newEnd: end, gap: 0 });
    else for (const span of own) if (span.entry === from.entry) span.newEnd = end;
  }
  for (const own of lines.values()) own.sort((a, b) => a.start - b.start || a.entry - b.entry);
  const changed = "entry" in from ? from.entry : NEW;
  const starts = new Map<number, number>();
  for (const own of lines.values()) for (const span of own) starts.set(span.entry, Math.min(starts.get(span.entry) ?? Infinity, span.start));
  const first = starts.get(changed) ?? Infinity;
  const shifts = new Map<number, number>();
  for (const entry of [...starts.keys()].sort((a, b) => starts.get(a)! - starts.get(b)!)) {
    const start = starts.get(entry)!;
    if (entry === changed || start < first - CLOSE || borders.some((border) => Math.abs(border - start) < ON_BORDER)) continue;
    let by = -Infinity, pushed = false, drawn = false;
    for (const own of lines.values()) {
      const k = own.findIndex((span) => span.entry === entry);
      if (k < 1) continue;
      const before = own[k - 1], gap = own[k].start - before.end;
      const least = before.newEnd + Math.min(gap, before.gap) - own[k].start;
      by = Math.max(by, least);
      pushed ||= least > CLOSE;
      drawn ||= before.newEnd < before.end - CLOSE && gap <= before.gap + CLOSE;
    }
    if (!(pushed || (drawn && by < -CLOSE))) continue;
    shifts.set(entry, by);
    for (const own of lines.values()) for (const span of own) if (span.entry === entry) span.newEnd = span.end + by;
  }
  return shifts;
}

/** Operations that start entries of the timeline later or earlier; one that follows by itself needs none. */
export function movedAlong(timeline: Row[], shifts: Map<number, number>, startOf: (entry: number) => number, momentOf: (beat: number) => string, beatOf: (moment: string) => number | null): Operation[] {
  return [...shifts].sort((a, b) => a[0] - b[0]).flatMap(([entry, by]): Operation[] => {
    const row = timeline[entry] ?? {};
    const values: Row = {};
    if ("from" in row) values.from = momentOf(startOf(entry) + by);
    if ("until" in row) {
      const until = beatOf(String(row.until));
      if (until !== null) values.until = momentOf(until + by);
    }
    return Object.keys(values).length ? [{ do: "change-block", at: ["timeline", entry], values }] : [];
  });
}

/** How far shifts reach, in words: how many entries, and up to where. */
export function reachOf(blocks: Block[], shifts: Map<number, number>, momentOf: (beat: number) => string): { count: number; until: string } {
  let until = -Infinity, last = -Infinity;
  for (const each of blocks) {
    if (each.entry?.[0] !== "timeline") continue;
    last = Math.max(last, each.end);
    if (shifts.has(Number(each.entry[1]))) until = Math.max(until, each.end);
  }
  return { count: shifts.size, until: until > last - CLOSE ? "the end" : momentOf(until) };
}
