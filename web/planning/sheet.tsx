// The sheet of eights: a row for each eight of the song, and in it a line for everybody who dances the same.
import { computed } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Block, Entry, Section } from "./api";
import { CountMarks } from "./counting";
import { Grips, Outline, grab, keepStill, wasDrag } from "./dragging";
import { copy, cut, entriesOf, operate, paste, takenOut, whenShown } from "./doing";
import { RowMarks } from "./marks";
import { Near } from "./near";
import { blockAt, gapsOf, linesOf, moment, rowsOf, together, type Line, type Row } from "./rows";
import { comingsIn, showStage } from "./entrances";
import { showWalk } from "./ways";
import { beside, blocksBy, findings, fresh, names, opened, pick, picked, pointed, readOnly, seconds, seek, song, state, tempo, view, walking, type Place } from "./store";

const STEPS = 48; // of the strip of loudness under a row

export function rowsNow(): Row[] {
  const now = view.value, counts = tempo.value;
  if (!now || !counts) return [];
  const starts = now.blocks.map((each) => each.start), ends = now.blocks.map((each) => each.end);
  return rowsOf(counts, now.sections, Math.min(0, ...starts), Math.max(counts.beatAt(now.duration), ...ends));
}

/** `only` these performers, on a page that watches. */
const rowsOfShow = computed(rowsNow);

/** The row that sounds, by its first beat. */
const sounding = computed(() => {
  const beat = tempo.value?.beatAt(seconds.value) ?? 0;
  return rowsOfShow.value.find((row) => beat >= row.start && beat < row.start + row.beats)?.start ?? null;
});

const MANY = 600; // lines, of which not all are made at once
const LINE = 2.9; // [rem] of a line with its name

export function Sheet({ only }: { only?: string[] }) {
  const rows = rowsOfShow.value, who = only ?? names.value, many = rows.length * who.length > MANY;
  const wide = Math.max(1, ...rows.map((row) => row.beats));
  return (
    <div class={fresh.value ? "sheet" : "sheet older"} role="group" aria-label="The song in eights; arrow keys walk over the counts" onKeyDown={(event) => keyed(event, rows)} onTouchMove={keepStill}>
      {rows.map((row, k) => <RowThere key={row.start} row={row} wide={wide} first={k === 0} who={who} many={many} />)}
    </div>
  );
}

function RowThere({ many, ...all }: { row: Row; wide: number; first: boolean; who: string[]; many: boolean }) {
  const { row, first, who } = all;
  const within = (beat: number | null | undefined) => beat !== null && beat !== undefined && beat >= row.start && beat < row.start + row.beats;
  const must = many && (first || within(picked.value?.beat) || sounding.value === row.start);
  return <Near on={many} must={must} tall={3 + LINE * who.length}>{() => <SheetRow {...all} />}</Near>;
}

function SheetRow({ row, wide, first, who }: { row: Row; wide: number; first: boolean; who: string[] }) {
  const lines = linesOf(row, who, blocksBy.value);
  const counts = tempo.value!;
  const at = first ? picked.value : null;
  return (
    <div class="part-row">
      {row.heads && row.section && (
        <h2 class={row.section.border === "perhaps" ? "part perhaps" : "part"}>
          {row.section.name}{marked(row.section)} <small>bar {row.bar}{full(row.section)}{heardHow(row.section.border)}</small>
        </h2>
      )}
      <div class="eight">
        <button class="bar" type="button" tabIndex={-1} title="Go there in the song" onClick={() => seek(counts.secondsAt(row.start))}>{row.bar}</button>
        <div class="lines" data-start={row.start} data-beats={row.beats} style={{ width: `${(100 * row.beats) / wide}%` }}>
          <div class="counts" aria-hidden="true">{eachCount(row).map((k) => <i key={k}>{k + 1}</i>)}</div>
          {lines.map((line) => (
            <SheetLine key={line.who.join()} line={line} row={row} named={lines.length > 1 || line.who.length < names.value.length} entry={first && at === null} />
          ))}
          <Walks row={row} />
          <RowMarks row={row} />
          <div class="strip">
            <Loudness row={row} />
            <CountMarks row={row} seconds={[counts.secondsAt(row.start), counts.secondsAt(row.start + row.beats)]} />
          </div>
          <Head row={row} />
        </div>
        <Margin row={row} />
      </div>
    </div>
  );
}

/** How full the song is there, among its sections. */
function full(section: Section): string {
  const all = view.value!.sections.map((each) => each.energy).sort((a, b) => a - b);
  const rank = all.indexOf(section.energy) / Math.max(1, all.length - 1);
  return all.length < 3 ? "" : rank <= 0.25 ? ", calm" : rank >= 0.75 ? ", full" : "";
}

/** How it varies what has come before, where its name does not say so: " (B')". */
const marked = (section: Section) => (section.mark === section.label ? "" : ` (${section.mark})`);
const heardHow = (border: Section["border"]) => (border === "sure" ? ", surely a new part" : border === "perhaps" ? ", perhaps not a new part" : "");

const eachCount = (row: Row) => [...Array(Math.max(1, Math.round(row.beats))).keys()];
const share = (row: Row, beat: number) => `${(100 * (Math.min(Math.max(beat, row.start), row.start + row.beats) - row.start)) / row.beats}%`;
const across = (row: Row, start: number, end: number) => ({ left: share(row, start), width: `calc(${share(row, end)} - ${share(row, start)})` });

function SheetLine({ line, row, named, entry }: { line: Line; row: Row; named: boolean; entry: boolean }) {
  return (
    <div class="line">
      {named && <span class="who">{together(line.who, names.value)}</span>}
      <div class="bars">
        {eachCount(row).map((k) => <Count key={k} beat={row.start + k} line={line} row={row} entry={entry && k === 0} />)}
        {gapsOf(line.blocks).map((gap) => <span key={gap.start} class="gap" aria-hidden="true" style={across(row, gap.start, gap.end)} />)}
        {line.blocks.map((block) => <Bar key={`${block.kind} ${block.start}`} block={block} line={line} row={row} />)}
        {line.blocks.map((block) => isChosen(block, line) && <Grips key={`${block.kind} ${block.start}`} block={block} row={row} left={share} />)}
        <Outline line={line} row={row} across={across} />
      </div>
    </div>
  );
}

/** One count of a line: what the keyboard walks over, and where a move is put. */
function Count({ beat, line, row, entry }: { beat: number; line: Line; row: Row; entry: boolean }) {
  const own = useRef<HTMLButtonElement>(null);
  const at = picked.value;
  const on = at !== null && at.beat === beat && at.who.some((name) => line.who.includes(name));
  useEffect(() => {
    if (on && walking.value) own.current?.focus();
  }, [on]);
  const block = blockAt(line.blocks, beat);
  return (
    <button
      ref={own} type="button" class={on ? "count on" : "count"} tabIndex={on || entry ? 0 : -1} aria-current={on ? "location" : undefined}
      aria-label={`Bar ${row.bar}, count ${Math.round(beat - row.start) + 1}, ${together(line.who, names.value)}: ${block ? spoken(block) : "nothing"}`}
      onClick={() => choose({ beat, who: line.who })}
    />
  );
}

function choose(place: Place): void {
  if (readOnly.value) return watched(place);
  walking.value = false;
  pick(place);
  opened.value = true;
}

/** A page that only watches goes there in the song. */
function watched(place: Place): void {
  pick(place);
  seek(tempo.value!.secondsAt(place.beat));
}

export function spoken(block: Block): string {
  if (block.kind === "link") return ["a link", ...ownWords(block)].join(", ");
  return [block.title, ...(block.phrase ? [`of the phrase ${block.phrase}`] : []), ...ownWords(block)].join(", ");
}

/** The cue word and the note that somebody wrote for a move. */
const ownWords = (block: Block) => [...(block.cue ? [`cue: ${block.cue}`] : []), ...(block.note ? [`note: ${block.note}`] : [])];

/** Whether the chosen count lies in a block of a line. */
function isChosen(block: Block, line: Line): boolean {
  const at = picked.value;
  return at !== null && block.path !== null && at.who.some((name) => line.who.includes(name)) && at.beat >= block.start - 1e-6 && at.beat < block.end - 1e-6;
}

function Bar({ block, line, row }: { block: Block; line: Line; row: Row }) {
  const begins = block.start >= row.start - 1e-6, ends = block.end <= row.start + row.beats + 1e-6;
  const kind = ["block", block.path === null ? "between" : "written", block.kind, begins ? "begins" : "", ends ? "ends" : "", isChosen(block, line) ? "chosen" : ""].join(" ");
  const told = block.kind !== "link" && (block.path !== null || block.end - block.start > 1.5);
  return (
    <div
      class={kind} aria-hidden="true" style={across(row, block.start, block.end)} title={[block.title, ...ownWords(block), ...block.words].join("\n")}
      onPointerDown={(event) => grab(event, block)}
      onClick={(event) => {
        if (wasDrag()) return;
        const box = event.currentTarget.parentElement!.getBoundingClientRect();
        const beat = row.start + Math.floor(((event.clientX - box.left) / box.width) * row.beats);
        choose({ beat, who: line.who });
      }}
    >
      {told && <span>{begins ? block.title : `… ${block.title}`}</span>}
      {begins && block.cue && <b class="cue-word">{block.cue}</b>}
      {begins && told && block.phrase && <small>{block.phrase}</small>}
      {begins && block.note && <small class="own-note">{block.note}</small>}
    </div>
  );
}

/** Who walks to another place during a row, under its lines; a walk is opened on the stage plan. */
function Walks({ row }: { row: Row }) {
  const spans = new Map<string, { start: number; end: number; who: string[]; number: number | null }>();
  for (const walk of view.value?.walks ?? []) {
    if (walk.end <= row.start || walk.start >= row.start + row.beats || walk.length < 0.05 || walk.path?.[0] === "entrances") continue;
    const key = `${walk.start} ${walk.end}`, known = spans.get(key);
    if (known) known.who.push(walk.who);
    else spans.set(key, { start: walk.start, end: walk.end, who: [walk.who], number: walk.path?.[0] === "staging" ? Number(walk.path[1]) : null });
  }
  const comings = comingsIn(row);
  if (!spans.size && !comings.length) return null;
  return (
    <div class="walks">
      {comings.map((each) => <button key={each.words} type="button" class="coming" style={across(row, each.start, each.end)} title="See it on the stage" onClick={() => showStage(each.start)}>{each.words}</button>)}
      {[...spans.values()].map((each) => {
        const several = each.who.length > 1 || (each.who.length === names.value.length && names.value.length > 1);
        return (
          <button key={each.start} type="button" style={across(row, each.start, each.end)} disabled={each.number === null} title="See the ways on the stage" onClick={() => showWalk(each.number!)}>
            {together(each.who, names.value)} {several ? "walk" : "walks"}
          </button>
        );
      })}
    </div>
  );
}

/** How loud the song is under a row, by rank within the song: a loud master has calm parts too. */
function Loudness({ row }: { row: Row }) {
  const heard = song.value?.loudness, counts = tempo.value, levels = ranks.value;
  if (!heard || !counts || !levels.length) return null;
  const bars = [...Array(STEPS).keys()].map((k) => {
    const from = Math.floor(counts.secondsAt(row.start + (k / STEPS) * row.beats) / heard.step);
    const to = Math.ceil(counts.secondsAt(row.start + ((k + 1) / STEPS) * row.beats) / heard.step);
    const level = Math.max(0, ...levels.slice(Math.max(from, 0), Math.max(to, 0)));
    return `M${k + 0.5} 10V${(10 - 9.6 * level).toFixed(2)}`;
  });
  return <svg class="loudness" viewBox={`0 0 ${STEPS} 10`} preserveAspectRatio="none" aria-hidden="true"><path d={bars.join("")} /></svg>;
}

const ranks = computed(() => {
  const db = song.value?.loudness.db ?? [];
  const order = [...db.keys()].sort((a, b) => db[a] - db[b]);
  const out = new Array<number>(db.length);
  order.forEach((k, rank) => (out[k] = (rank + 1) / db.length));
  return out;
});

/** Where the song is. */
function Head({ row }: { row: Row }) {
  if (sounding.value !== row.start) return null;
  const counts = tempo.value!;
  const beat = counts.beatAt(seconds.value);
  return <b class="head" style={{ left: share(row, beat) }} aria-hidden="true" />;
}

/** What stands against the row, beside it. */
function Margin({ row }: { row: Row }) {
  const counts = tempo.value!;
  const here = (findings.value?.entries ?? []).flatMap((entry, k) => {
    if (entry.severity === "note" || entry.start === null) return [];
    const beat = counts.beatAt(entry.start);
    return beat >= row.start && beat < row.start + row.beats ? [{ entry, k }] : [];
  });
  const old = findings.value?.revision !== view.value?.revision;
  return (
    <div class={old ? "margin older" : "margin"}>
      {here.map(({ entry, k }) => <Remark key={k} entry={entry} k={k} />)}
    </div>
  );
}

function Remark({ entry, k }: { entry: Entry; k: number }) {
  return (
    <button
      type="button" class={`remark ${entry.severity}`}
      onClick={() => {
        beside("findings");
        pointed.value = k;
        setTimeout(() => document.getElementById(`entry-${k}`)?.scrollIntoView({ block: "nearest" }));
      }}
    >
      <b>{entry.severity === "stop" ? "Stop" : "Warn"}</b> {entry.message}
    </button>
  );
}

// --- the keyboard in the sheet ---

/** The block that the keyboard is on, and everybody's of its entry. */
export function chosenBlocks(): Block[] {
  const at = picked.value;
  if (!at) return [];
  return at.who.flatMap((name) => {
    const own = blockAt(blocksBy.value.get(name) ?? [], at.beat);
    return own && own.path !== null ? [own] : [];
  });
}

function keyed(event: KeyboardEvent, rows: Row[]): void {
  if (!(event.target as HTMLElement).classList.contains("count")) return;
  const command = event.ctrlKey || event.metaKey;
  const shownThen = (work: () => unknown) => () => whenShown(work); // a key that is pressed twice does not take the next entry
  const act: Record<string, () => unknown> = readOnly.value
    ? (command ? {} : { Enter: () => watched(picked.value!), " ": () => watched(picked.value!) })
    : command
    ? { c: shownThen(() => copy(chosenBlocks())), x: shownThen(() => cut(chosenBlocks())), v: shownThen(() => paste((beat) => moment(tempo.value!, beat), placeFor)) }
    : { Delete: shownThen(() => remove(chosenBlocks())), Backspace: shownThen(() => remove(chosenBlocks())), Enter: open, " ": open };
  const work = act[event.key];
  if (work && picked.value) {
    event.preventDefault();
    void work();
    return;
  }
  if (!command && !event.altKey && move(event.key, rows)) event.preventDefault();
}

/** The form about the chosen count takes the keyboard, also where it was open already while somebody walked over the sheet. */
function open(): void {
  walking.value = false;
  pick(picked.value);
  opened.value = true;
}

export async function remove(blocks: Block[]): Promise<void> {
  const at = entriesOf(blocks).map((each) => each.path);
  if (at.length) await operate(takenOut(at), `Deleted: ${blocks[0].title}.`);
}

/** The entry of the timeline before which one that starts at a beat is written, so that the file stays in order of time. */
export function placeFor(beat: number): number | null {
  const later = (view.value?.blocks ?? []).filter((each) => each.entry?.[0] === "timeline" && each.start > beat + 1e-6);
  const rows = later.map((each) => Number(each.entry![1])).filter(Number.isFinite);
  if (!rows.length) return null;
  const next = Math.min(...rows);
  // An entry without a moment follows the one before it: nothing may come between them.
  const row = (state.value?.values?.timeline ?? [])[next] as Record<string, unknown> | undefined;
  return row && ("from" in row || "accent" in row) ? next : null;
}

/** Arrows walk over counts and lines, Home and End over a row, Page Up and Down over sections. */
function move(key: string, rows: Row[]): boolean {
  const steps: Record<string, [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  if (!rows.length || !(key in steps || ["Home", "End", "PageUp", "PageDown"].includes(key))) return false;
  const at = picked.value ?? { beat: rows[0].start, who: names.value };
  const k = Math.max(0, rows.findIndex((row) => at.beat >= row.start && at.beat < row.start + row.beats));
  const lines = (row: Row) => linesOf(row, names.value, blocksBy.value);
  const last = (row: Row) => row.start + Math.max(1, Math.round(row.beats)) - 1;
  let row = rows[k], beat = at.beat;
  let line = Math.max(0, lines(row).findIndex((each) => each.who.includes(at.who[0])));
  const [sideways, down] = steps[key] ?? [0, 0];
  if (sideways) {
    beat = Math.min(Math.max(beat + sideways, rows[0].start), last(rows[rows.length - 1]));
    row = rows.find((each) => beat >= each.start && beat < each.start + each.beats) ?? row;
    line = Math.max(0, lines(row).findIndex((each) => each.who.includes(at.who[0])));
  } else if (down) {
    line += down;
    if (line < 0 || line >= lines(row).length) {
      const next = rows[k + down];
      if (!next) return true;
      beat = Math.min(next.start + (beat - row.start), last(next));
      row = next;
      line = down > 0 ? 0 : lines(row).length - 1;
    }
  } else if (key === "Home") beat = row.start;
  else if (key === "End") beat = last(row);
  else {
    const heads = rows.filter((each) => each.heads);
    // past the last section lies the end of the sheet, before the first its beginning
    if (key === "PageDown") row = heads.find((each) => each.start > at.beat) ?? rows[rows.length - 1];
    else row = [...heads].reverse().find((each) => each.start < rows[k].start) ?? rows[0];
    beat = row.start;
    line = 0;
  }
  walking.value = true;
  pick({ beat, who: lines(row)[line].who });
  return true;
}
