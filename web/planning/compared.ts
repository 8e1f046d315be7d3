// Versions of the show, and two texts of it compared: what the server says of them, and which change is looked at.
import { computed, signal } from "@preact/signals";
import { Refused, get, post, type Path, type State } from "./api";
import { doing, seenAt } from "./doing";
import { fault, names, notice, pick, seek, tempo, told } from "./store";

export interface Version { name: string; file: string; time: string; line: string; same: boolean; checked: Record<"stop" | "warn" | "note", number> | null; holds: boolean }
export interface Move { who: string; before: [number, number]; after: [number, number] }
export type ChangeKind = "new" | "gone" | "moved" | "changed";

export interface Change {
  subject: string;
  kind: ChangeKind;
  words: string;
  who: string[];
  spans: [number, number][]; // [beats] in the newer text
  before: [number, number][]; // [beats] in the older one
  position: string | null;
  moves: Move[];
  old: Path[];
  new: Path[];
}

export interface FindingChange { kind: ChangeKind; severity: string; position: string | null; message: string; before: string }

export interface Comparison {
  old: string;
  new: string;
  identical: boolean;
  says_the_same: boolean;
  line: string;
  changes: Change[];
  eights: { bar: number; start: number; beats: number; section: string; changes: number[] }[];
  elsewhere: number[];
  findings: { unknown: string[]; changes: FindingChange[]; same: number; unseen: string[]; line: string };
  faults: string[];
}

export interface Steps { at: number; steps: { words: string; time: string }[] }

export const MARKS: Record<ChangeKind, string> = { new: "+", gone: "−", moved: "→", changed: "≠" };
export const KINDS: Record<ChangeKind, string> = { new: "new", gone: "gone", moved: "moved", changed: "changed" };
export const NOW = "now";

export const versions = signal<Version[] | null>(null);
export const sides = signal<{ old: string; new: string } | null>(null); // which two are compared
export const comparison = signal<Comparison | null>(null);
export const comparing = signal(false);
export const looked = signal<number | null>(null); // the change that is looked at, by its number
export const onPlan = signal<Move[]>([]); // that the stage plan draws

/** Changes in the order in which they are stepped through: row by row, then all else. */
export const inOrder = computed(() => {
  const now = comparison.value;
  return now ? [...now.eights.flatMap((row) => row.changes), ...now.elsewhere] : [];
});

/** What the sheet marks: changes with the beats that they fill there. */
export const marked = computed(() => {
  const now = comparison.value;
  if (!now || !sides.value) return [];
  const backwards = sides.value.old === NOW && sides.value.new !== NOW; // then the sheet shows the older text
  return now.changes.flatMap((change, k) => {
    const own = backwards ? (change.before.length ? change.before : change.spans) : change.spans.length ? change.spans : change.before;
    return own.length ? [{ change, k, spans: own }] : [];
  });
});

export async function askVersions(): Promise<void> {
  try {
    versions.value = (await get<{ versions: Version[] }>("versions")).versions;
  } catch (error) {
    notice(error instanceof Error ? error.message : String(error), true);
  }
}

/** Keeps the show as it is; whether it is kept, and why not if there is such a version already. */
export async function keep(name: string, replace = false): Promise<"kept" | "there" | "refused"> {
  fault.value = null;
  try {
    versions.value = (await post<{ versions: Version[] }>("versions", { name, replace })).versions;
    told.value = `Kept as ${name.trim()}.`;
    return "kept";
  } catch (error) {
    if (error instanceof Refused && error.trouble?.code === "version-there") return "there";
    fault.value = { words: error instanceof Error ? error.message : String(error), anyway: null };
    return "refused";
  }
}

export async function remove(name: string): Promise<void> {
  try {
    versions.value = (await post<{ versions: Version[] }>("versions/delete", { name })).versions;
    told.value = `The version ${name} is deleted.`;
    if (sides.value && Object.values(sides.value).includes(`version:${name}`)) close();
  } catch (error) {
    fault.value = { words: error instanceof Error ? error.message : String(error), anyway: null };
    void askVersions();
  }
}

/** Makes the show what a version or a step says: one step, which Undo takes back. */
export function goBack(to: { name: string } | { step: number }, revision: number): Promise<boolean> {
  return doing(() => post<State>("versions/take", { ...to, revision: seenAt(revision) }), "name" in to ? `Back to the version ${to.name}.` : "Back to that step.");
}

let turn = 0;

export async function compare(old: string, other: string, quietly = false): Promise<void> {
  const own = ++turn;
  sides.value = { old, new: other };
  comparing.value = true;
  if (!quietly) {
    comparison.value = null;
    looked.value = null;
    onPlan.value = [];
  }
  try {
    for (let tries = 0; ; tries++) {
      try {
        const found = await get<Comparison>(`compare?old=${encodeURIComponent(old)}&new=${encodeURIComponent(other)}`);
        if (own !== turn) return;
        const before = looked.value === null ? undefined : comparison.value?.changes[looked.value];
        const still = found.changes.findIndex((each) => each.words === before?.words && each.who.join() === before.who.join());
        comparison.value = found;
        looked.value = still < 0 ? null : still; // the one that was looked at, if there still is one
        if (still < 0) onPlan.value = [];
        if (!quietly) told.value = `Compared: ${found.line}.`;
        return;
      } catch (error) {
        const again = error instanceof Refused && (error.status === 409 || error.status === 503) && tries < 20;
        if (!again || own !== turn) throw error;
        await new Promise((done) => setTimeout(done, 500));
      }
    }
  } catch (error) {
    if (own !== turn) return;
    fault.value = { words: error instanceof Error ? error.message : String(error), anyway: null };
    close();
  } finally {
    if (own === turn) comparing.value = false;
  }
}

export function close(): void {
  turn += 1;
  sides.value = comparison.value = looked.value = null;
  onPlan.value = [];
  comparing.value = false;
}

/** Looks at a change: the sheet goes to it, and the stage plan draws what has moved. */
export function lookAt(k: number): void {
  const change = comparison.value?.changes[k], counts = tempo.value;
  if (!change) return;
  looked.value = k;
  onPlan.value = change.moves;
  told.value = spokenChange(change, k);
  const mark = marked.value.find((each) => each.k === k);
  if (!mark || !counts) return;
  const beat = mark.spans[0][0];
  seek(Math.max(0, counts.secondsAt(beat)));
  pick({ beat: Math.floor(beat + 1e-6), who: change.who.filter((name) => names.value.includes(name)) });
  setTimeout(() => document.getElementById(`mark-${k}`)?.scrollIntoView({ block: "center" }));
}

/** To the change before or behind the one that is looked at. */
export function stepOn(by: 1 | -1): void {
  const all = inOrder.value;
  if (!all.length) return;
  const at = looked.value === null ? (by > 0 ? -1 : all.length) : all.indexOf(looked.value);
  lookAt(all[Math.min(Math.max(at + by, 0), all.length - 1)]);
}

export function spokenChange(change: Change, k: number): string {
  const who = change.who.length ? `${change.who.join(", ")}: ` : "";
  const when = change.position ? `, ${change.position}` : "";
  return `Change ${inOrder.value.indexOf(k) + 1} of ${inOrder.value.length}${when}: ${who}${change.words}`;
}

/** A moment as a person says it: today's by the clock alone. */
export function clockWords(time: string): string {
  const then = new Date(time), today = new Date();
  const clock = then.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  return then.toDateString() === today.toDateString() ? `today, ${clock}` : `${then.toLocaleDateString([], { day: "numeric", month: "long", year: "numeric" })}, ${clock}`;
}
