// Entries of the timeline moved and stretched, with what follows them where that is wanted: by the form about a count, and by the mouse on the sheet.
import type { Block, Operation, Path } from "./api";
import { operate } from "./doing";
import { movedAlong, reachOf, shiftsAfter, type Ends } from "./following";
import { CLOSE, beatOf, moment } from "./rows";
import { along, fault, notice, picked, state, tempo, told, view } from "./store";

export interface Follow { operations: Operation[]; words: string }

const ALONE: Follow = { operations: [], words: "" };

export const beatsSaid = (beats: number) => `${Math.round(beats * 1000) / 1000} ${Math.abs(beats - 1) < 1e-6 ? "beat" : "beats"}`;
export const movesSaid = (count: number) => (count === 1 ? "1 move" : `${count} moves`);

export function rowAt(path: Path): Record<string, any> | null {
  let value: any = state.value?.values;
  for (const key of path) value = value?.[key];
  return value && typeof value === "object" ? value : null;
}

// --- what follows ---

/** By how much what follows moves once an entry, or a new one, ends elsewhere. */
export function shiftsOf(from: { entry: number } | { beat: number }, ends: Ends): Map<number, number> {
  const counts = tempo.value, now = view.value;
  if (!counts || !now) return new Map();
  return shiftsAfter(now.blocks, from, ends, now.sections.map((each) => counts.beatAt(each.start)));
}

export function reached(shifts: Map<number, number>): { count: number; until: string } {
  const counts = tempo.value!;
  return reachOf(view.value?.blocks ?? [], shifts, (beat) => moment(counts, beat));
}

/** Operations that move along what follows, and how far that reaches in words. */
function followed(from: { entry: number } | { beat: number }, ends: Ends): Follow {
  const counts = tempo.value, blocks = view.value?.blocks;
  const shifts = shiftsOf(from, ends);
  if (!shifts.size || !counts || !blocks) return ALONE;
  const starts = new Map<number, number>();
  for (const each of blocks) {
    if (each.entry?.[0] !== "timeline") continue;
    const entry = Number(each.entry[1]);
    starts.set(entry, Math.min(starts.get(entry) ?? Infinity, each.start));
  }
  const operations = movedAlong(state.value?.values?.timeline ?? [], shifts, (entry) => starts.get(entry)!, (beat) => moment(counts, beat), (words) => beatOf(counts, words));
  const { count, until } = reached(shifts);
  return { operations, words: `, and ${count} that ${count === 1 ? "follows" : "follow"}, up to ${until}` };
}

/** The same if somebody has said at a place that what follows moves along; nothing if it is to stay. */
export const following = (of: string, from: { entry: number } | { beat: number }, ends: Ends): Follow => (along.value === of ? followed(from, ends) : ALONE);

/** What is told to a screen reader alone; nothing where everybody is told below. */
export const quietly = (follow: Follow, said: string) => (follow.operations.length ? undefined : said);

/** What moved along is said for everybody to see: it is more than was clicked. */
export async function seen(done: Promise<boolean>, follow: Follow, said: string): Promise<boolean> {
  const well = await done;
  if (well && follow.operations.length) notice(said);
  return well;
}

/** Where something was refused for want of room, what follows can be moved along instead. */
function offerAlong(from: { entry: number }, ends: Ends, on: number, work: () => unknown): void {
  if (state.value!.revision !== on) return; // the entry may be another one by now
  const far = reached(shiftsOf(from, ends));
  if (!fault.value || !far.count) return;
  fault.value = { ...fault.value, instead: { words: `Move what follows along: ${movesSaid(far.count)}, up to ${far.until}`, work } };
}

// --- an entry ---

export const entryOf = (block: Block): Path => block.entry ?? block.path!;

/** Where each performer ends an entry, some beats later. */
export function endsOf(entry: Path, by: number): Ends {
  const ends: Ends = new Map();
  const key = entry.join("/");
  for (const each of view.value?.blocks ?? []) {
    if (each.entry?.join("/") === key) ends.set(each.who, Math.max(ends.get(each.who) ?? -Infinity, each.end + by));
  }
  return ends;
}

/** When the performer of a block begins its entry. */
export function startOf(entry: Path, block: Block): number {
  const key = entry.join("/");
  const own = (view.value?.blocks ?? []).filter((each) => each.who === block.who && each.entry?.join("/") === key && each.kind !== "link");
  return Math.min(block.start, ...own.map((each) => each.start));
}

/** Moves the entry of a block by some beats, and what follows it too if that is wanted; as the show stood at a revision, when it began at a beat. */
export async function moveEntry(block: Block, by: number, all: boolean, on = state.value!.revision, first = startOf(entryOf(block), block)): Promise<boolean> {
  const entry = entryOf(block), number = Number(entry[1]), ends = endsOf(entry, by);
  const to = moment(tempo.value!, first + by), place = picked.value;
  const follow = all ? followed({ entry: number }, ends) : ALONE;
  const move = { do: "move-block", at: entry, start: to };
  const said = `Moved to ${to}${follow.words}.`;
  const well = await seen(operate(follow.operations.length ? [...follow.operations, move] : move, quietly(follow, said), on), follow, said);
  if (well && place) picked.value = { ...place, beat: place.beat + by };
  if (!well && !all && by > 0) offerAlong({ entry: number }, ends, on, () => moveEntry(block, by, true, on, first));
  return well;
}

// --- a move of a phrase ---

export const inPhrase = (block: Block) => block.path![0] === "phrases";

/** Every time that the performer dances the same step, in order. */
export function danced(block: Block): Block[] {
  const key = block.path!.join("/");
  return (view.value?.blocks ?? []).filter((each) => each.who === block.who && each.path?.join("/") === key).sort((a, b) => a.start - b.start);
}

/** How often an entry dances the step of a block. */
function entryTimes(entry: Path, block: Block): number {
  const key = entry.join("/");
  return danced(block).filter((each) => each.entry?.join("/") === key).length;
}

/** An operation on a move of a phrase, for the one time only that the block is. */
export const hereOnly = (block: Block, operation: Operation): Operation => ({ do: "change-here", use: block.use, rounds: block.rounds, operation });

const ELSEWHERE = "Nothing was changed: the move begins elsewhere by now. Try again.";

/** Lets a move of a phrase last so many beats, here only or wherever the phrase is danced, and moves what follows it too if that is wanted. */
export async function stretchStep(block: Block, beats: number, here: boolean, all: boolean, on = state.value!.revision): Promise<boolean> {
  if (here && !danced(block).some((each) => Math.abs(each.start - block.start) < CLOSE)) { // which of the times was meant is not known any more
    fault.value = { words: ELSEWHERE, anyway: null };
    told.value = ELSEWHERE;
    return false;
  }
  const entry = entryOf(block), number = Number(entry[1]), by = beats - (block.end - block.start);
  // Where a phrase is danced elsewhere too, what follows it there stays: an overlap is refused.
  const ends = endsOf(entry, here ? by : by * entryTimes(entry, block));
  const times = Number(rowAt(block.path!)?.repeat ?? 1) || 1;
  const follow = all ? followed({ entry: number }, ends) : ALONE;
  const stretch = { do: "stretch-block", at: block.path!, beats: beats / times };
  const own = here ? hereOnly(block, stretch) : stretch;
  const said = `${block.title}: ${beatsSaid(beats)}${follow.words}.`;
  const well = await seen(operate(follow.operations.length ? [...follow.operations, own] : own, quietly(follow, said), on), follow, said);
  if (!well && !all && by > 0) offerAlong({ entry: number }, ends, on, () => stretchStep(block, beats, here, true, on));
  return well;
}

/** Lets a block that stands on the timeline by itself last so many beats, and moves what follows it too if that is wanted; as the show stood at a revision. */
export async function stretchEntry(block: Block, beats: number, all: boolean, on = state.value!.revision): Promise<boolean> {
  const entry = entryOf(block), number = Number(entry[1]), by = beats - (block.end - block.start), ends = endsOf(entry, by);
  const times = Number(rowAt(block.path!)?.repeat ?? 1) || 1;
  const follow = all ? followed({ entry: number }, ends) : ALONE;
  const stretch = { do: "stretch-block", at: block.path!, beats: beats / times };
  const said = `${block.title}: ${beatsSaid(beats)}${follow.words}.`;
  const well = await seen(operate(follow.operations.length ? [...follow.operations, stretch] : stretch, quietly(follow, said), on), follow, said);
  if (!well && !all && by > 0) offerAlong({ entry: number }, ends, on, () => stretchEntry(block, beats, true, on));
  return well;
}
