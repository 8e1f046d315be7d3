// A move dragged along the sheet, or only its end: where it comes to is outlined until it is let go. A finger scrolls there, unless it rests on the move first, or takes it by a grip.
import { effect, signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Block } from "./api";
import { dragEnds, dragLost } from "./doing";
import { beatsSaid, danced, endsOf, entryOf, inPhrase, moveEntry, startOf, stretchEntry, stretchStep } from "./moving";
import { moment, type Line, type Row } from "./rows";
import { along, fresh, readOnly, state, tempo } from "./store";

interface Carried { who: string; start: number; end: number; by: number; words: string }

const carried = signal<Carried | null>(null);
const FAR = 5; // [px] from which a press is a drag
const EDGE = 10; // [px] before the end of a move by which the end is held
const NEAR_EDGE = 40; // [px] from the edge of the sheet's pane within which it scrolls
const REST = 350; // [ms] that a finger rests on a move until it is held
const SHAKE = 10; // [px] that a resting finger may wander
const CREEP = 60; // [ms] between two steps of a sheet that scrolls under what is held at its edge
let just = false; // a drag has just ended
let byFinger = false; // a finger holds something, so that it does not scroll

/** Keeps the page where it is while a finger drags a move; the browser asks that of the sheet itself. */
export function keepStill(event: TouchEvent): void {
  if (byFinger && event.cancelable) event.preventDefault();
}

/** Whether a click is no more than the end of a drag. */
export const wasDrag = () => just;

/** The beat of the sheet at a place of the page; null beside it. */
function beatAt(x: number, y: number): number | null {
  const lines = document.elementFromPoint(x, y)?.closest(".eight")?.querySelector<HTMLElement>(".lines");
  if (!lines) return null;
  const box = lines.getBoundingClientRect(), beats = Number(lines.dataset.beats);
  return Number(lines.dataset.start) + Math.min(Math.max((x - box.left) / box.width, 0), 1 - 1e-6) * beats;
}

/** Whether the end of a block is held at a place. */
const atEnd = (bar: HTMLElement, x: number) => bar.classList.contains("ends") && bar.getBoundingClientRect().right - x < EDGE;

/** Whether somebody may drag a block. */
export const canBeDragged = (block: Block) => !readOnly.value && block.path !== null && entryOf(block)[0] === "timeline";

/** Begins to drag a block, or its end, once the mouse has gone far enough with its button down, or a finger has rested on it; by a grip it goes at once. */
export function grab(event: PointerEvent, block: Block, grip: "move" | "end" | null = null): void {
  const x = event.clientX, y = event.clientY;
  // A grip hangs below the line, and beside the end of what it holds.
  const from = grip === "end" ? block.end : grip ? gripBeat(event) : beatAt(x, y);
  just = false;
  if (event.button !== 0 || !event.isPrimary || !fresh.value || from === null || !canBeDragged(block)) return;
  question.value = null;
  const on = state.value!.revision; // what the block is a block of
  const finger = event.pointerType !== "mouse", pointer = event.pointerId;
  const stretching = grip ? grip === "end" : !finger && atEnd(event.currentTarget as HTMLElement, x);
  const off = grip ? offLine(event) : 0;
  let latest: PointerEvent | null = null;
  const first = startOf(entryOf(block), block), last = endsOf(entryOf(block), 0).get(block.who) ?? block.end;
  const all = () => along.value === `${block.path!.join("/")} ${block.who}`;
  const carry = (by: number) => {
    document.body.classList.add(stretching ? "stretching" : "carrying");
    carried.value = stretching
      ? { who: block.who, start: block.start, end: block.end + by, by, words: beatsSaid(block.end - block.start + by) }
      : { who: block.who, start: first + by, end: last + by, by, words: `to ${moment(tempo.value!, first + by)}` };
  };
  const to = (now: PointerEvent) => {
    if (now.pointerId !== pointer) return;
    const far = Math.hypot(now.clientX - x, now.clientY - y);
    if (!carried.value && resting && far > SHAKE) return end(false); // it scrolls
    if (!carried.value && (resting || far < FAR)) return;
    latest = now;
    if (Math.abs(now.clientY - y) > NEAR_EDGE / 2) scroll(now.clientY); // not where something near the edge is dragged along its row
    const at = beatAt(now.clientX, now.clientY - off);
    if (at === null) return;
    const by = stretching ? Math.max(Math.round(at - from - lies), Math.floor(1 - (block.end - block.start))) : Math.max(Math.floor(at) - Math.floor(from), -Math.floor(first));
    if (carried.value?.by !== by) carry(by);
  };
  // The end of a move is where it is; a grip beside it is a little further on.
  const lies = grip === "end" ? (beatAt(x, y - off) ?? from) - from : block.end - from;
  const resting = finger && !grip ? setTimeout(() => {
    byFinger = true;
    carry(0);
  }, REST) : 0;
  if (finger && grip) byFinger = true;
  const creeping = setInterval(() => latest && to(latest), CREEP);
  const end = (done: boolean) => {
    const now = carried.value;
    carried.value = null;
    byFinger = false;
    clearTimeout(resting);
    clearInterval(creeping);
    watching();
    document.body.classList.remove("carrying", "stretching");
    for (const [name, work] of Object.entries(watched)) removeEventListener(name, work as EventListener, true);
    if (!now) return;
    just = true; // until the click that may follow has been
    const over = () => setTimeout(() => (just = false));
    if (done) over();
    else addEventListener("pointerup", over, { capture: true, once: true });
    if (!done || !now.by) return;
    if (!stretching) void moveEntry(block, now.by, all(), on, first);
    else stretchTo(block, now, all(), on);
  };
  const watching = effect(() => {
    if (!carried.value || !dragEnds(on)) return;
    end(false);
    dragLost();
  });
  const watched = {
    pointermove: to,
    pointerup: (up: PointerEvent) => up.pointerId === pointer && end(true),
    pointercancel: (lost: PointerEvent) => lost.pointerId === pointer && end(false),
    contextmenu: (menu: Event) => finger && menu.preventDefault(), // what a resting finger would open
    keydown: (key: KeyboardEvent) => {
      if (key.key !== "Escape") return;
      key.stopPropagation();
      end(false);
    },
  };
  for (const [name, work] of Object.entries(watched)) addEventListener(name, work as EventListener, true);
}

/** How far below the middle of its line a grip is taken [px]. */
function offLine(event: PointerEvent): number {
  const box = (event.currentTarget as HTMLElement).parentElement!.getBoundingClientRect();
  return event.clientY - (box.top + box.height / 2);
}

const gripBeat = (event: PointerEvent) => beatAt(event.clientX, event.clientY - offLine(event));

/** What lies above or below comes into sight while something is held at the edge: of the sheet's pane, or of a page that is one column. */
function scroll(y: number): void {
  const pane = document.querySelector(".left")!, alone = getComputedStyle(pane).overflowY !== "visible";
  const box = pane.getBoundingClientRect(), form = document.querySelector(".place");
  const under = form && getComputedStyle(form).position === "fixed" ? form.getBoundingClientRect().top : innerHeight;
  const top = alone ? box.top : 0, bottom = alone ? box.bottom : under;
  const by = y < top + NEAR_EDGE ? -NEAR_EDGE / 2 : y > bottom - NEAR_EDGE ? NEAR_EDGE / 2 : 0;
  if (by) (alone ? pane : document.scrollingElement!).scrollTop += by;
}

// --- a move of a phrase ---

interface Question { block: Block; beats: number; all: boolean; on: number; uses: number; shown: Carried }

const question = signal<Question | null>(null); // "here, or everywhere it is danced" is not answered yet

effect(() => {
  if (!question.value || !dragEnds(question.value.on)) return;
  question.value = null;
  dragLost();
});

/** Lets a block end elsewhere; where it is a move of a phrase that is danced elsewhere too, somebody says first whether it changes there too. */
function stretchTo(block: Block, now: Carried, all: boolean, on: number): void {
  const beats = block.end - block.start + now.by, uses = inPhrase(block) ? danced(block).length : 1;
  if (uses > 1) question.value = { block, beats, all, on, uses, shown: now };
  else void (inPhrase(block) ? stretchStep(block, beats, false, all, on) : stretchEntry(block, beats, all, on));
}

/** Asks where a move of a phrase changes, after its end was dragged. */
export function HereOrEverywhere() {
  const now = question.value;
  const box = useRef<HTMLElement>(null);
  useEffect(() => box.current?.querySelector("button")?.focus({ preventScroll: true }), [now]);
  if (!now) return null;
  const { block, beats, all, on, uses } = now;
  const leave = () => (question.value = null);
  const answer = (here: boolean) => {
    leave();
    void stretchStep(block, beats, here, all, on);
  };
  return (
    <section
      ref={box} class="ask" role="alertdialog" aria-labelledby="ask-where"
      onKeyDown={(event) => { if (event.key === "Escape") leave(); }}
    >
      <p id="ask-where"><b>{block.title}</b> of the phrase <b>{block.phrase}</b>, {beatsSaid(beats)} instead of {beatsSaid(block.end - block.start)}: the phrase is danced {uses} times.</p>
      <p class="row">
        <button type="button" class="main" onClick={() => answer(true)}>Here only</button>
        <button type="button" onClick={() => answer(false)}>Everywhere</button>
        <button type="button" onClick={leave}>Leave it as it was</button>
      </p>
    </section>
  );
}

// --- what is seen on the sheet ---

/** Where a chosen move is taken by a finger or the mouse: to move it, or by its end. */
export function Grips({ block, row, left }: { block: Block; row: Row; left: (row: Row, beat: number) => string }) {
  if (!canBeDragged(block)) return null;
  const begins = block.start >= row.start - 1e-6, ends = block.end <= row.start + row.beats + 1e-6;
  const last = block.end > row.start + row.beats - 0.9; // it would hang over the edge of the sheet
  return (
    <>
      {begins && <span class="grip" aria-hidden="true" title="Drag it to another count" style={{ left: left(row, block.start) }} onPointerDown={(event) => grab(event, block, "move")}><svg viewBox="0 0 24 10"><path d="M2 5H22M5.5 1.5 2 5l3.5 3.5M18.5 1.5 22 5l-3.5 3.5" /></svg></span>}
      {ends && <span class={last ? "grip end last" : "grip end"} aria-hidden="true" title="Drag its end: longer or shorter" style={{ left: left(row, block.end) }} onPointerDown={(event) => grab(event, block, "end")}><svg viewBox="0 0 24 10"><path d="M12 0V10M8 5H2M4.5 2.5 2 5l2.5 2.5M16 5H22M19.5 2.5 22 5l-2.5 2.5" /></svg></span>}
    </>
  );
}

/** What is dragged, where it would come to. */
export function Outline({ line, row, across }: { line: Line; row: Row; across: (row: Row, start: number, end: number) => preact.CSSProperties }) {
  const now = carried.value ?? question.value?.shown;
  if (!now || !line.who.includes(now.who) || now.end <= row.start || now.start >= row.start + row.beats) return null;
  return <span class="outline" aria-hidden="true" style={across(row, now.start, now.end)}>{now.start >= row.start - 1e-6 && <b>{now.words}</b>}</span>;
}
