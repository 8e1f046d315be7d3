// Long work that the server does beside everything else: drafts and print-outs; how far they are, and what came of them.
import { effect, signal } from "@preact/signals";
import { Refused, get, post, type Lines, type Trouble } from "./api";
import { fault, state, told } from "./store";

export interface Errand {
  state: "none" | "working" | "done" | "failed" | "stopped";
  number: number;
  words: string;
  share: number;
  seconds: number;
  stopping: boolean;
  error: Trouble | null;
}

export interface Offer {
  rows: { section: string; position: string; words: string }[];
  words: string[];
  why: string[];
  cost: number;
  bound: number;
  checked: boolean;
  lines: Lines[];
  new: boolean; // it differs from what stands there
}

export interface Draft extends Errand {
  asked: { section: string | null; span: [string, string] | null; another: boolean; seed: number };
  older: boolean; // the show has been changed since it was begun
  offer: Offer | null;
}

export interface MadeFile { name: string; address: string; bytes: number }

export interface Printing extends Errand {
  folder: string;
  asked: { what: "sheets" | "rehearsal" };
  unsaved: boolean;
  made: { files: MadeFile[]; ok: boolean | null; said: string[]; older: boolean } | null;
}

export const draft = signal<Draft | null>(null);
export const printing = signal<Printing | null>(null);

const ENDED = { done: "is ready", failed: "could not be made", stopped: "was stopped" };

export async function askErrands(): Promise<void> {
  [draft.value, printing.value] = await Promise.all([get<Draft>("draft"), get<Printing>("print")]);
}

let seen = 0;

// Whether what was made is of the show as it is now: asked again after every step.
effect(() => {
  const now = state.value?.revision ?? 0;
  if (seen && now !== seen && (draft.peek()?.state === "done" || printing.peek()?.state === "done")) void askErrands().catch(() => {});
  seen = now;
});

/** What the server tells of an errand: how far it is, or that it has ended, and then what came of it is asked for. */
export function errandTold(said: { kind: "draft" | "print" } & Errand): void {
  const known = said.kind === "draft" ? draft : printing;
  if (said.state === "working" && known.value && known.value.state === "working") {
    (known as typeof draft).value = { ...(known.value as Draft), ...said };
    return;
  }
  const before = known.value?.state;
  void askErrands().then(() => {
    const words = ENDED[said.state as keyof typeof ENDED];
    if (before === "working" && words) told.value = `${said.kind === "draft" ? "The draft" : "What you asked for"} ${words}.`;
  }, () => {});
}

/** Asks for an errand, or for its end; what is refused is said as for every step. */
export async function errand(path: string, body: object = {}): Promise<boolean> {
  fault.value = null;
  try {
    const now = await post<Draft | Printing>(path, body);
    if (path.startsWith("draft")) draft.value = now as Draft;
    else if (!path.startsWith("begin")) printing.value = now as Printing;
    return true;
  } catch (error) {
    const words = error instanceof Refused || !(error instanceof TypeError) ? (error as Error).message : "The program behind this page does not answer.";
    fault.value = { words, anyway: null };
    told.value = words;
    return false;
  }
}

/** How long it has been at work, as one says it. */
export function since(seconds: number): string {
  return seconds < 60 ? `${Math.round(seconds)} s` : `${Math.floor(seconds / 60)} min ${Math.round(seconds % 60)} s`;
}
