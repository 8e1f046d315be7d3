// Something on the stage plan that is dragged, or moved by arrow keys: one move after the other, each from where the one before has led.
import { effect, signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import type { Operation } from "./api";
import { dragEnds, dragLost, operate, placesKept } from "./doing";
import { fresh, readOnly, state } from "./store";

export type Point = [number, number]; // [m] across and upstage

/** Between the stage and the picture of it. */
export interface Plan {
  at: (x: number, y: number) => Point; // in the picture
  place: (event: PointerEvent) => Point; // on the stage, as it can be marked there
  hold: (pointer: number) => void;
}

const FINE = 0.05, COARSE = 0.5; // [m] of a step by the keyboard
const MARKED = 0.05; // [m] to which a place is rounded: what can be marked on a floor
const FINGER = 0.9; // [m] around a handle that takes a finger: on a phone the handle itself is a few pixels wide
const STILL = 0.02; // [m] that is no move

export const round = (metres: number) => Math.round(Math.round(metres / MARKED) * MARKED * 100) / 100;

/** What is being dragged, since which revision. */
export const dragged = signal<{ key: string; words: string; at: Point; from: Point; on: number; drop: (to: Point) => void } | null>(null);

effect(() => {
  const now = dragged.value;
  if (!now || !dragEnds(now.on)) return;
  dragged.value = null;
  dragLost();
});

const moved = signal<ReadonlyMap<string, Point>>(new Map()); // where things are put that the view does not show yet
let heldOn: number | null = null; // the revision of what is let go just now
let under = 0; // moves that are not answered yet
let waiting: Promise<unknown> = Promise.resolve();

/** Where something is: under the pointer, put there and not staged yet, or as the view has it. */
export function whereNow(key: string, given: Point): Point {
  if (dragged.value?.key === key) return dragged.value.at;
  const put = moved.value.get(key);
  return put && !(fresh.value && !under) ? put : given;
}

/** Puts something somewhere; of several moves that wait, only the last is done. */
export function putAt(key: string, at: Point, operation: () => Operation | Operation[] | null, said: string): void {
  moved.value = new Map(fresh.value && !under ? [] : moved.value).set(key, at);
  under += 1;
  const asked = heldOn ?? state.value!.revision;
  waiting = waiting.then(async () => {
    if (moved.value.get(key) === at) {
      const what = operation();
      if (!what || !(await operate(what, said, placesKept(asked) ? undefined : asked))) {
        const left = new Map(moved.value);
        left.delete(key);
        moved.value = left;
      }
    }
    under -= 1;
    moved.value = new Map(moved.value);
  });
}

export function dragTo(at: Point): void {
  if (dragged.value) dragged.value = { ...dragged.value, at };
}

export function drop(): void {
  const now = dragged.value;
  dragged.value = null;
  if (!now || Math.hypot(now.at[0] - now.from[0], now.at[1] - now.from[1]) <= STILL) return;
  heldOn = now.on;
  now.drop(now.at);
  heldOn = null;
}

interface Given {
  id: string; // by which its moves are told from others'
  plan: Plan;
  at: Point; // where it is now
  words: string;
  put: (to: Point) => void;
  remove?: () => void; // by Delete
  class?: string;
  shape: "circle" | "square" | "diamond";
  size: number; // [m]
  children?: ComponentChildren;
}

export function Handle({ id, plan, at, words, put, remove, class: kind = "", shape, size, children }: Given) {
  const [px, py] = plan.at(...at);
  const hold = (event: PointerEvent) => {
    event.preventDefault();
    (event.currentTarget as SVGElement).parentElement!.querySelector<SVGElement>(".handle")!.focus();
    plan.hold(event.pointerId);
    dragged.value = { key: id, words, at, from: at, on: state.value!.revision, drop: put };
  };
  const given = readOnly.value ? { class: `handle ${kind}`, role: "img" as const, "aria-label": `${words}, ${at[0].toFixed(2)} across, ${at[1].toFixed(2)} upstage` } : {
    class: `handle ${kind}`,
    tabindex: 0,
    role: "button" as const,
    "aria-label": `${words}, ${at[0].toFixed(2)} across, ${at[1].toFixed(2)} upstage; arrow keys move by 5 cm, with Shift by 50 cm${remove ? "; Delete takes it out" : ""}`,
    onPointerDown: hold,
    onKeyDown: (event: KeyboardEvent) => {
      if (remove && (event.key === "Delete" || event.key === "Backspace")) {
        event.preventDefault();
        remove();
        return;
      }
      const step = event.shiftKey ? COARSE : FINE;
      const by: Record<string, Point> = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
      if (!by[event.key]) return;
      event.preventDefault();
      put([round(at[0] + by[event.key][0]), round(at[1] + by[event.key][1])]);
    },
  };
  return (
    <g class={dragged.value?.key === id ? "held dragged" : "held"}>
      {!readOnly.value && <circle class="finger" cx={px} cy={py} r={FINGER} onPointerDown={hold} />}
      {shape === "circle" ? <circle {...given} cx={px} cy={py} r={size} /> : <rect {...given} x={px - size} y={py - size} width={2 * size} height={2 * size} transform={shape === "diamond" ? `rotate(45 ${px} ${py})` : undefined} />}
      {children}
    </g>
  );
}
