// A move dragged along the sheet by the mouse, or only its end: where it comes to is outlined until it is let go. Fingers scroll there, and use the form.
import { effect, signal } from "@preact/signals";
import type { Block } from "./api";
import { dragEnds, dragLost } from "./doing";
import { beatsSaid, endsOf, entryOf, moveEntry, startOf, stretchEntry } from "./moving";
import { moment, type Line, type Row } from "./rows";
import { along, fresh, readOnly, state, tempo } from "./store";

interface Carried { who: string; start: number; end: number; by: number; words: string }

const carried = signal<Carried | null>(null);
const FAR = 5; // [px] from which a press is a drag
const EDGE = 10; // [px] before the end of a move by which the end is held
const NEAR_EDGE = 40; // [px] from the edge of the sheet's pane within which it scrolls
let just = false; // a drag has just ended

/** Whether a click is no more than the end of a drag. */
export const wasDrag = () => just;

/** The beat of the sheet at a place of the page; null beside it. */
function beatAt(x: number, y: number): number | null {
  const lines = document.elementFromPoint(x, y)?.closest(".eight")?.querySelector<HTMLElement>(".lines");
  if (!lines) return null;
  const box = lines.getBoundingClientRect(), beats = Number(lines.dataset.beats);
  return Number(lines.dataset.start) + Math.min(Math.max((x - box.left) / box.width, 0), 1 - 1e-6) * beats;
}

/** Whether the end of a block is held at a place: of one that stands on the timeline by itself. */
const atEnd = (block: Block, bar: HTMLElement, x: number) => block.path![0] === "timeline" && bar.classList.contains("ends") && bar.getBoundingClientRect().right - x < EDGE;

/** Begins to drag a block, once the mouse has gone far enough with its button down. */
export function grab(event: PointerEvent, block: Block): void {
  const from = beatAt(event.clientX, event.clientY), x = event.clientX, y = event.clientY;
  just = false;
  if (event.button !== 0 || event.pointerType === "touch" || readOnly.value || !fresh.value || from === null || !block.path || entryOf(block)[0] !== "timeline") return;
  const on = state.value!.revision; // what the block is a block of
  const stretching = atEnd(block, event.currentTarget as HTMLElement, x);
  const first = startOf(entryOf(block), block), last = endsOf(entryOf(block), 0).get(block.who) ?? block.end;
  const all = () => along.value === `${block.path!.join("/")} ${block.who}`;
  const to = (now: PointerEvent) => {
    if (!carried.value && Math.hypot(now.clientX - x, now.clientY - y) < FAR) return;
    scroll(now.clientY);
    const at = beatAt(now.clientX, now.clientY);
    if (at === null) return;
    const by = stretching ? Math.max(Math.round(at - block.end), Math.floor(1 - (block.end - block.start))) : Math.max(Math.floor(at) - Math.floor(from), -Math.floor(first));
    if (carried.value?.by === by) return;
    document.body.classList.add(stretching ? "stretching" : "carrying");
    carried.value = stretching
      ? { who: block.who, start: block.start, end: block.end + by, by, words: beatsSaid(block.end - block.start + by) }
      : { who: block.who, start: first + by, end: last + by, by, words: `to ${moment(tempo.value!, first + by)}` };
  };
  const end = (done: boolean) => {
    const now = carried.value;
    carried.value = null;
    watching();
    document.body.classList.remove("carrying", "stretching");
    for (const [name, work] of Object.entries(watched)) removeEventListener(name, work as EventListener, true);
    if (!now) return;
    just = true; // until the click that may follow has been
    const over = () => setTimeout(() => (just = false));
    if (done) over();
    else addEventListener("pointerup", over, { capture: true, once: true });
    if (done && now.by) void (stretching ? stretchEntry(block, block.end - block.start + now.by, all(), on) : moveEntry(block, now.by, all(), on, first));
  };
  const watching = effect(() => {
    if (!carried.value || !dragEnds(on)) return;
    end(false);
    dragLost();
  });
  const watched = {
    pointermove: to,
    pointerup: () => end(true),
    pointercancel: () => end(false),
    keydown: (key: KeyboardEvent) => {
      if (key.key !== "Escape") return;
      key.stopPropagation();
      end(false);
    },
  };
  for (const [name, work] of Object.entries(watched)) addEventListener(name, work as EventListener, true);
}

/** What lies above or below comes into sight while something is held at the edge. */
function scroll(y: number): void {
  const pane = document.querySelector(".left")!, box = pane.getBoundingClientRect();
  if (y < box.top + NEAR_EDGE) pane.scrollTop -= NEAR_EDGE / 2;
  else if (y > box.bottom - NEAR_EDGE) pane.scrollTop += NEAR_EDGE / 2;
}

/** What is dragged, where it would come to. */
export function Outline({ line, row, across }: { line: Line; row: Row; across: (row: Row, start: number, end: number) => preact.CSSProperties }) {
  const now = carried.value;
  if (!now || !line.who.includes(now.who) || now.end <= row.start || now.start >= row.start + row.beats) return null;
  return <span class="outline" aria-hidden="true" style={across(row, now.start, now.end)}>{now.start >= row.start - 1e-6 && <b>{now.words}</b>}</span>;
}
