// What the server says and takes. Every request carries the secret that came with the page's address.
import type { Place as Ground } from "../src/document";

export type Path = (string | number)[];
export type Operation = { do: string; [field: string]: unknown };

export interface Trouble {
  code: string;
  message: string; // as a terminal has it
  said?: string; // as the page says it: without code and file
  what: string;
  why: string;
  mend: string;
  line: number | null;
  column: number | null;
}

export interface State {
  file: string;
  folder: string;
  revision: number;
  text: string;
  readable: boolean;
  faults: Trouble[];
  values: Record<string, any> | null;
  saved: boolean;
  autosave: "journal" | "file";
  undo: string | null;
  redo: string | null;
  kept: { where: string; message: string | null };
  outside: { text: string; message: string; conflicts: Conflict[]; lines: Lines[] } | null;
  recovered: string | null;
  track_there: boolean;
  new: boolean; // nothing was ever here: a show can be begun
}

/** A place that the file and the page both changed; a side that took it out has no text for it. */
export interface Conflict { path: Path; place: string; why: string; ours: string | null; theirs: string | null }

export interface HandSaid { pattern: string; parameters: Record<string, unknown>; fitted: Record<string, unknown> }

export interface Block {
  who: string;
  kind: string;
  start: number;
  end: number;
  start_s: number;
  end_s: number;
  position: string;
  end_position: string;
  title: string;
  words: string[];
  phrase: string | null;
  note: string | null;
  cue: string | null;
  mirrored: boolean;
  path: Path | null;
  entry: Path | null;
  use: Path[]; // uses of phrases that lead from the entry to its step
  rounds: (number | null)[]; // which time of each use that repeats
  cycle: number | null;
  home: number | null; // beats after which both hands are as at first
  shift: number | null;
  timing: string | null;
  direction: string | null;
  hands: Partial<Record<"left" | "right", HandSaid>>;
}

export interface Section { name: string; label: string; start: number; end: number; energy: number; start_beat: number; end_beat: number; mark: string; border: "sure" | "perhaps" | null }

/** Where else a section may begin, as the song was heard. */
export interface Turn { start: number; bar: number; confidence: number }
export type Spot = [number, number, number]; // [m] across and upstage, facing [degrees]

export interface Standing { formation: string; walk: number; start: number; end: number; position: string; path: Path; waiting: string[]; spots: Record<string, Spot> }

/** Somebody who comes on from the wings, or goes off into them. */
export interface Coming { who: string; on: boolean; words: string; side: string; place: [number, number]; start: number; end: number; start_s: number; position: string; end_position: string; path: Path }

export interface Walk {
  who: string;
  start: number;
  end: number;
  start_s: number;
  end_s: number;
  points: [number, number][]; // [m] in even steps of time
  via: [number, number][];
  length: number; // [m]
  path: Path | null;
}

export interface View {
  revision: number;
  title: string;
  duration: number;
  span: [number, number];
  tempo: { times: number[]; first: number; bars: number[]; metre: number };
  sections: Section[];
  turns: Turn[];
  cast: { name: string; path: Path; stature: number; prop: string; lit: { start: number; end: number; path: Path }[] }[];
  blocks: Block[];
  accents: { who: string; beat: number; position: string; path: Path }[];
  standings: Standing[];
  walks: Walk[];
  entrances: Coming[];
  formations: Record<string, { spots: Record<string, Spot> | null; shape: string | null; path: Path; used: number[] }>;
  place: Ground;
  crew: { name: string; duty: string; at: [number, number]; watches: string[]; path: Path }[];
  missing: { who: string; kind: string; start: number; end: number; position: string; end_position: string; title: string; path: Path }[];
  reach: Record<string, number>;
  apart: number | null;
}

export interface Song {
  track: string;
  duration: number;
  loudness: { step: number; db: number[] };
}

export interface Lines { line: number; out: string[]; in: string[] }
export interface Mend { words: string; operation: Operation; lines: Lines[] }

export interface Finding {
  id: string;
  code: string;
  severity: "stop" | "warn" | "note";
  who: string[];
  start: number | null;
  end: number | null;
  position: string | null;
  when: string | null; // as it can be counted aloud
  message: string;
  remedies: string[];
  source: string;
  as: "drawn" | "flown";
  paths: Path[];
  mends: Mend[];
}

export interface Entry { severity: Finding["severity"]; start: number | null; position: string | null; message: string; remedies: string[]; of: number[] }

export interface Findings {
  revision: number;
  open: string[];
  drawn: string[];
  complete: boolean;
  ok: boolean | null;
  findings: Finding[];
  entries: Entry[];
  unseen: string[];
  cautions: string[];
}

export interface Checking {
  revision: number;
  open: string[] | null; // null until the show is staged
  done: string[];
  words: string | null; // of what takes long
  share: number | null;
  hearing: boolean;
  error: Trouble | null; // a check broke off
  counts: Record<Finding["severity"], number>;
  complete: boolean;
}

/** A pattern of the vocabulary, and how it joins what stands before a place. */
export interface Pattern { name: string; summary: string; suits: boolean; verdict: string | null; shift: number; link_beats: number | null; words: string; parameters: Parameter[] }

/** A value of a pattern that stays open. */
export interface Parameter { name: string; kind: string; unit: string; default: string | number | null; low: number; high: number; choices: (string | number)[]; help: string }

/** A request that was refused, with the server's sentence. */
export class Refused extends Error {
  constructor(readonly status: number, readonly trouble: Trouble | null, words: string, readonly anyway = false) {
    super(words);
  }
}

/** What is wrong and how to mend it, for a person. */
export const saidOf = (trouble: Trouble) => trouble.said ?? trouble.message;

const KEPT = "secret";

const headers: Record<string, string> = { "X-Sequencer-Secret": "" };

/** Takes the secret from the page's address, or trades the ticket in it for the secret; it stays with this tab. */
export async function enter(): Promise<void> {
  const given = location.hash.slice(1);
  if (given) history.replaceState(null, "", location.pathname);
  if (given.startsWith("ticket=")) {
    const answer = await fetch("/enter", { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ ticket: given.slice(7) }) });
    if (answer.ok) sessionStorage.setItem(KEPT, (await answer.json()).secret);
  } else if (given) sessionStorage.setItem(KEPT, given);
  headers["X-Sequencer-Secret"] = sessionStorage.getItem(KEPT) || "";
}

/** Another header that every request carries. */
export function carry(name: string, value: string): void {
  headers[name] = value;
}

async function answered(response: Response): Promise<any> {
  const text = await response.text();
  let body: any = null;
  try {
    body = JSON.parse(text);
  } catch {
    // an answer of another kind has its sentence below
  }
  if (response.ok) return body;
  const trouble = (body?.error ?? null) as Trouble | null;
  const words = trouble ? saidOf(trouble) : `The server answered with ${response.status}.`;
  throw new Refused(response.status, trouble, words, Boolean(body?.error?.anyway));
}

export async function get<T>(path: string): Promise<T> {
  return answered(await fetch(`/api/${path}`, { headers }));
}

export async function post<T>(path: string, body: unknown): Promise<T> {
  return answered(await fetch(`/api/${path}`, { method: "POST", headers: { ...headers, "content-type": "application/json" }, body: JSON.stringify(body) }));
}

/** Puts a file of this person beside the show; the name by which it lies there. */
export async function bring(file: File): Promise<{ file: string }> {
  return answered(await fetch(`/api/song-file?name=${encodeURIComponent(file.name)}`, { method: "POST", headers, body: file }));
}

export async function bytes(path: string): Promise<ArrayBuffer> {
  const response = await fetch(`/api/${path}`, { headers });
  if (!response.ok) await answered(response);
  return response.arrayBuffer();
}

/** Events as they come, until the stream ends; a stream that breaks off is begun anew by the caller. */
export async function listen(tell: (event: string, data: any) => void): Promise<void> {
  const response = await fetch("/api/events", { headers });
  if (!response.ok || !response.body) return answered(response);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let left = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    left += value;
    const parts = left.split("\n\n");
    left = parts.pop()!;
    for (const part of parts) {
      let event = "message", data = "";
      for (const line of part.split("\n")) {
        if (line.startsWith("event:")) event = line.slice(6).trim();
        else if (line.startsWith("data:")) data += line.slice(5).trim();
      }
      if (data) tell(event, JSON.parse(data));
    }
  }
}
