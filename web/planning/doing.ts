// What a person does to the show: each goes to the server as an operation, and comes back as a new state.
import { Refused, get, post, saidOf, type Block, type Entry, type Finding, type Findings, type Operation, type Path, type Song, type State, type View } from "./api";
import { effect } from "@preact/signals";
import { made } from "./fields";
import { moment } from "./rows";
import { away, busy, checking, copied, ended, fault, findings, fresh, names, notice, picked, shared, song, stageFault, state, tempo, told, view } from "./store";

let underWay: Promise<unknown> = Promise.resolve();
let queued = 0; // asked for, and not answered yet

/** Once the server has answered about all that was asked for before: what was done last is what Undo takes back and Save writes. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  fault.value = null; // when somebody acts: what is refused while more waits is still said
  queued += 1;
  const done = underWay.then(work).finally(() => (queued -= 1));
  underWay = done.catch(() => {});
  return done;
}

/** Does something to the show in its turn, or nothing where there is nothing left to do; where it is refused, the page says why, and offers `again` if it can be done all the same. */
export function doing(work: () => Promise<Done | null>, said?: string, again?: () => void): Promise<boolean> {
  return inTurn(() => toServer(work, said, again));
}

async function toServer(work: () => Promise<Done | null>, said?: string, again?: () => void, steps = 1): Promise<boolean> {
  busy.value = true;
  const before = state.value!.revision;
  try {
    const now = await work();
    if (!now) return false;
    alone = { since: !mineAlone(now, before, steps) ? now.revision : alone.now === before ? alone.since : before, now: now.revision };
    take(now);
    if (said) told.value = said;
    return true;
  } catch (error) {
    const words = error instanceof Refused || !(error instanceof TypeError) ? String((error as Error).message ?? error) : "The program behind this page does not answer.";
    fault.value = { words, anyway: error instanceof Refused && error.anyway && again ? again : null };
    told.value = words;
    if (error instanceof Refused && error.status === 409) take(await get<State>("show"));
    return false;
  } finally {
    busy.value = false;
  }
}

export function take(now: State): void {
  if (state.value && now.revision < state.value.revision) return;
  if (now.recovered && now.recovered !== state.value?.recovered) notice(now.recovered);
  // Doing all the same what was refused, or something instead, is about the show as it was then.
  if ((fault.value?.anyway || fault.value?.instead) && state.value && now.revision !== state.value.revision) fault.value = queued ? { ...fault.value, anyway: null, instead: null } : null;
  state.value = now;
}

/** Whether an answer came of a revision by this page's doing alone: what changes nothing makes no step, so that one more may be somebody else's. */
const mineAlone = (answer: Done, on: number, steps = 1) => answer.before === on && answer.revision <= on + steps;

// Revisions in a row that all come from this page.
let alone = { since: -1, now: -1 };

/** The revision of the show as somebody sees it, in the turn of what they do: with what this page changed before, but with nothing from elsewhere. */
export const seenAt = (revision: number) => (revision >= alone.since && state.value!.revision === alone.now ? alone.now : revision);

// What this page changed itself, one answer after the other, without moving anything to another place in the file.
let steady = { since: -1, now: -1 };
const SET_IN_PLACE = /^change-(block|titles|heading|person|item|pattern|walk)$/;
const IN_PLACE = new RegExp(`${SET_IN_PLACE.source}|^(move-spot|set-way|set-mirror|set-away|set-there|set-stand-in)$`);
// What names its thing, and says nothing that was made from what stood elsewhere.
const NAMES_ALONE = /^(delete-(?!blocks)|remove-|rename-|set-(away|there|stand-in)$)/;
const inPlaceSince = (revision: number) => revision >= steady.since && state.value!.revision === steady.now;

/** Whether everything stands where it stood in the file at a revision: what was taken hold of then can be let go now. */
export const placesKept = (revision: number) => state.value!.revision === revision || inPlaceSince(revision);

/** Whether what was taken hold of at a revision is to be let go; not while an answer is under way, since the show may be told before it. */
export const dragEnds = (revision: number) => !busy.value && !placesKept(revision);

type Composed = { operation: Operation | Operation[]; revision: number };
type Done = State & { before?: number }; // the revision that stood when this had its turn; missing where nothing was to be changed

/** Does an operation in its turn; one that is a function is made when its turn comes. */
export function operate(operation: Operation | Operation[] | (() => Promise<Composed | null>), said?: string, revision = state.value!.revision, anyway = false): Promise<boolean> {
  let now: Composed | null = null; // kept for `again`
  return doing(async () => {
    now = typeof operation === "function" ? await operation() : { operation, revision };
    return now && send(now, anyway);
  }, said, () => now && void operate(now.operation, said, now.revision, true));
}

/** An operation about a value; one that is made from what is there is made, and done, on what this page changed before it. */
export function operateOn(now: (file: any) => unknown, value: unknown, operation: (value: unknown) => Operation, what: string): Promise<boolean> {
  const told = `${what} ${value === null ? "left out" : "changed"}.`;
  if (typeof value !== "function") return operate(operation(value), told);
  return operateFrom((file) => operation(made(value, now(file))), told);
}

/** An operation that is made from what the file says, in its turn: with what this page changed before it. None is made where that leaves nothing to do. */
export function operateFrom(operation: (file: any) => Operation | null, said: string): Promise<boolean> {
  const asked = state.value!;
  return operate(async () => {
    const on = inPlaceSince(asked.revision) ? state.value! : asked; // what moved places is put together by the server
    const made = operation(on.values ?? {});
    return made && { operation: made, revision: on.revision };
  }, said);
}

/** On the revision that the operation was made for, which the server puts together with what came since; a value said, or something taken out, after a change that waited, on the answer to that. */
async function send({ operation, revision }: Composed, anyway: boolean): Promise<Done> {
  const latest = state.value!.revision;
  const on = (valuesAlone(operation) || namesAlone(operation)) && inPlaceSince(revision) ? latest : revision;
  const answer = await post<Done>("operations", { revision: on, ...(Array.isArray(operation) ? { operations: operation } : { operation }), anyway });
  const kept = inPlace(operation) && on === latest && mineAlone(answer, on);
  steady = { since: !kept ? answer.revision : steady.now === on ? steady.since : on, now: answer.revision };
  return answer;
}

const inPlace = (operation: Operation | Operation[]): operation is Operation => !Array.isArray(operation) && IN_PLACE.test(operation.do);

const namesAlone = (operation: Operation | Operation[]) => !Array.isArray(operation) && NAMES_ALONE.test(operation.do);

/** Whether it sets values as such: words, numbers, a place, lines. What else is written as a record is a whole, so that the server has to see what else was said of it meanwhile. */
function valuesAlone(operation: Operation | Operation[]): boolean {
  return inPlace(operation) && SET_IN_PLACE.test(operation.do) && Object.values(operation.values as object).every((each) => [each].flat().every((one) => one === null || typeof one !== "object"));
}

const LONGEST = 20_000; // [ms] until a show that is not put on its song is waited for no longer

/** Once the page shows what it has done, or cannot. */
export async function shown(): Promise<void> {
  let stop = () => {};
  let late = 0;
  await new Promise<void>((done) => {
    late = window.setTimeout(done, LONGEST);
    stop = effect(() => { if (fresh.value || stageFault.value || away.value || ended.value) done(); });
  });
  clearTimeout(late);
  stop();
  await new Promise((done) => setTimeout(done, 0)); // it is drawn
}

/** Whether the page shows the show as it is, with all that was asked for. */
const upToDate = () => !queued && (fresh.value || Boolean(stageFault.value || away.value || ended.value));

/** Does something that is about what the page shows, once it shows the show as it is. */
export async function whenShown(work: () => unknown): Promise<void> {
  while (!upToDate()) {
    await underWay;
    await shown();
  }
  await work();
}

/** A button about what is shown waits while that is about to be something else; if the button is gone by then, it does nothing. */
export function waiting(event: Event): void {
  const button = (event.target as Element).closest("button");
  if (!button || button.closest("header") || upToDate()) return;
  event.preventDefault();
  event.stopPropagation();
  void whenShown(() => {
    if (button.isConnected) button.click();
    else told.value = "Nothing was done: what the button was about has changed.";
  });
}

/** A drag ends where the show changes under it: what is held may be something else by then. */
export function dragLost(): void {
  const words = "Nothing was moved: the show changed while you were dragging. Try again.";
  fault.value = { words, anyway: null };
  told.value = words;
}

// Of the show as this page knows it: what somebody else did meanwhile is not taken back unseen.
export const undo = () => inTurn(async () => state.value?.undo && toServer(() => post<Done>("undo", { revision: state.value!.revision }), `Undone: ${state.value.undo}.`));
export const redo = () => inTurn(async () => state.value?.redo && toServer(() => post<Done>("redo", { revision: state.value!.revision }), `Done again: ${state.value.redo}.`));
export const save = () => inTurn(() => toServer(() => post<Done>("save", {}), "Saved.", undefined, 0)); // what the file said meanwhile is a step of somebody else's

let viewing = 0;

/** The newest staged view; an older answer never replaces a newer one. */
export async function look(): Promise<void> {
  const turn = ++viewing;
  try {
    const now = await get<View>("view");
    if (turn !== viewing) return;
    view.value = now;
    stageFault.value = null;
  } catch (error) {
    if (turn === viewing && error instanceof Refused && error.status === 422) stageFault.value = error.message;
  }
}

const OFTEN = 60; // [ms] between two lists
let finding = 0, listed = -Infinity, later = 0;

/** What stands against the show; several checks that answer within a moment are asked about once. */
export async function askFindings(): Promise<void> {
  const left = listed + OFTEN - performance.now();
  if (later) return;
  if (left > 0) later = window.setTimeout(() => void listFindings().catch(() => {}), left);
  else await listFindings();
}

/** An older answer never replaces a newer one. */
async function listFindings(): Promise<void> {
  later = 0;
  listed = performance.now();
  const turn = ++finding;
  const found = await get<Findings>("findings");
  if (turn !== finding) return;
  // While the checks are at work some lists are not known yet, and findings of one cause are not put together.
  const own = found.findings ?? [];
  findings.value = { ...found, open: found.open ?? [], drawn: found.drawn ?? [], findings: own, entries: found.complete && found.entries ? found.entries : singly(own), unseen: found.unseen ?? [], cautions: found.cautions ?? [] };
}

/** Findings in the order of their weight, those that say the same once, until the checks have put together what has one cause. */
function singly(found: Finding[]): Entry[] {
  const rank = { stop: 0, warn: 1, note: 2 };
  const alike = new Map<string, Entry>();
  found.forEach((each, k) => {
    const key = JSON.stringify([each.code, each.severity, each.message, each.remedies]), known = alike.get(key);
    if (known) known.of.push(k);
    else alike.set(key, { severity: each.severity, start: each.start, position: each.when ?? each.position, message: each.message, remedies: each.remedies, of: [k] });
  });
  for (const each of alike.values()) if (each.of.length > 1) each.message += ` (${each.of.length} times)`;
  return [...alike.values()].sort((a, b) => rank[a.severity] - rank[b.severity] || (a.start ?? 0) - (b.start ?? 0));
}

export async function askSong(): Promise<void> {
  try {
    const now = await get<Song & { hearing?: number }>("song");
    if (now.hearing !== undefined) setTimeout(() => void askSong(), 1000);
    else song.value = now;
  } catch (error) {
    if (error instanceof Refused && error.status === 409) return; // of a text that is no show: asked again with the next one
    notice(error instanceof Error ? error.message : String(error), true);
  }
}

export async function askState(): Promise<void> {
  take(await get<State>("show"));
}

/** What the server tells by itself. */
export function heard(event: string, data: any): void {
  if (event === "show") {
    if (data.words && data.revision > (state.value?.revision ?? 0)) told.value = data.words;
    if (!state.value || data.revision > state.value.revision) void askState();
    else if (data.revision === state.value.revision) state.value = { ...state.value, ...data, text: state.value.text, values: state.value.values };
  } else if (event === "staged") {
    if (data.error) stageFault.value = saidOf(data.error);
    else void look();
    if (!song.value) void askSong();
  } else if (event === "checks") checking.value = data;
  else if (event === "findings") void askFindings();
  else if (event === "share") shared.value = data;
  else if (event === "outside") void askState();
  else if (event === "notice") notice(data.message, data.severity === "warn");
}

// --- the clipboard ---

/** Entries of some blocks, each once, in order of time. */
export function entriesOf(blocks: Block[]): { path: Path; start: number }[] {
  const out = new Map<string, { path: Path; start: number }>();
  for (const block of blocks) {
    const path = block.entry ?? block.path;
    if (!path || path[0] !== "timeline") continue;
    const key = path.join("/"), known = out.get(key);
    if (!known || block.start < known.start) out.set(key, { path, start: block.start });
  }
  return [...out.values()].sort((a, b) => a.start - b.start);
}

export async function copy(blocks: Block[]): Promise<void> {
  const entries = copyable(blocks);
  if (!entries.length) return;
  await copyFrom(state.value!.revision, entries, blocks[0].title);
  told.value = `Copied: ${blocks[0].title}.`;
}

/** Copies, and takes out what it has copied: one thing that is asked for, from the click on. */
export async function cut(blocks: Block[]): Promise<void> {
  const entries = copyable(blocks);
  if (!entries.length) return;
  const operation = takenOut(entries.map((each) => each.path)), revision = state.value!.revision;
  await operate(async () => {
    await copyFrom(revision, entries, blocks[0].title);
    return { operation, revision };
  }, `Cut: ${blocks[0].title}.`);
}

function copyable(blocks: Block[]): { path: Path; start: number }[] {
  const entries = entriesOf(blocks);
  if (!entries.length) fault.value = { words: "Nothing is written here that could be copied.", anyway: null };
  return entries;
}

async function copyFrom(revision: number, entries: { path: Path; start: number }[], words: string): Promise<void> {
  const found = await post<{ blocks: string[] }>("copied", { revision, at: entries.map((each) => each.path) });
  copied.value = { blocks: found.blocks, starts: entries.map((each) => each.start - entries[0].start), words };
}

/** Entries taken out, and what followed them without a moment of its own given the one at which it starts now. */
export function takenOut(at: Path[]): Operation[] {
  const rows = (state.value?.values?.timeline ?? []) as Record<string, any>[];
  const gone = new Set(at.map((path) => Number(path[1])));
  const loose = new Set<string>();
  const pinned: Operation[] = [];
  rows.forEach((row, k) => {
    const who = dancersOf(row);
    if (gone.has(k)) who.forEach((name) => loose.add(name));
    else if (who.some((name) => loose.has(name))) {
      const start = "from" in row || "accent" in row ? null : startOf(k);
      if (start !== null) pinned.push({ do: "change-block", at: ["timeline", k], values: { from: start } });
      who.forEach((name) => loose.delete(name));
    }
  });
  return [...pinned, { do: "delete-blocks", at }];
}

function dancersOf(row: Record<string, any>): string[] {
  return row.who === undefined || row.who === "all" ? names.value : [row.who].flat();
}

/** The moment at which an entry of the timeline starts, as the show is staged. */
function startOf(entry: number): string | null {
  const own = (view.value?.blocks ?? []).filter((each) => each.entry?.[0] === "timeline" && each.entry[1] === entry);
  const first = own.reduce<Block | null>((least, each) => (least === null || each.start < least.start ? each : least), null);
  return first && tempo.value ? moment(tempo.value, first.start) : null;
}

export async function paste(startAt: (beat: number) => string, before: (beat: number) => number | null): Promise<void> {
  const at = picked.value, what = copied.value;
  if (!at || !what) return;
  const starts = what.starts.map((after) => startAt(at.beat + after));
  await operate({ do: "paste-blocks", into: ["timeline"], blocks: what.blocks, starts, before: before(at.beat) }, `Pasted: ${what.words}.`);
}
