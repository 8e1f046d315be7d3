// Names above the performers and beside things at the venue, overlaid on the drawing as text. No label lies on another or is
// cut by the edge: performers' names move up, and what stands about goes without its label where there is no room.
import { Vector3, type PerspectiveCamera } from "three";
import type { Document } from "./document";
import { make } from "./dom";
import type { Mover, Pose } from "./motion";
import type { Drawn } from "./scene";
import type { View } from "./views";

interface Label { element: HTMLElement; at: Vector3; who: number; size: [number, number] | null }
type Rect = [number, number, number, number]; // [pixels] left, top, right, bottom

const GAP = 2; // [pixels]
const TRIES = 4; // heights at which a name is tried

export class Labels {
  private readonly all: Label[] = [];
  private readonly v = new Vector3();

  constructor(private readonly box: HTMLElement, doc: Document) {
    const add = (text: string, at: Vector3, who: number) => {
      const element = make("span", text, who < 0 ? "thing" : "");
      box.append(element);
      this.all.push({ element, at, who, size: null });
    };
    doc.cast.forEach((entry, i) => add(entry.name, new Vector3(), i));
    for (const edge of doc.place.audience) {
      const [a, b] = [edge.line[0], edge.line[edge.line.length - 1]];
      add(edge.name, new Vector3((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, 0.1), -1);
    }
    for (const one of doc.crew) add(`${one.name} · ${one.duty}`, new Vector3(one.at[0], one.at[1], 1.4), -1);
    for (const one of doc.place.exits) add(`exit: ${one.name}`, new Vector3(one.at[0], one.at[1], 0.3), -1);
    for (const one of doc.place.extinguishers) add("extinguisher", new Vector3(one[0], one[1], 0.85), -1);
    for (const one of doc.place.scenery) add(one.name, new Vector3(one.outline[0][0], one.outline[0][1], one.height + 0.2), -1);
    for (const { name, points } of doc.place.lines) if (name) add(name, new Vector3(points[0][0], points[0][1], 0.05), -1);
    if (doc.place.fuel) add("fuel", new Vector3(doc.place.fuel[0], doc.place.fuel[1], 0.85), -1);
  }

  /** Type is larger or smaller now. */
  again(): void {
    for (const label of this.all) label.size = null;
  }

  place(camera: PerspectiveCamera, poses: Pose[], movers: Mover[], now: Drawn, mirrored: boolean, view: View): void {
    const width = this.box.clientWidth, height = this.box.clientHeight;
    const alone = movers.length === 1 || now.shown.filter(Boolean).length === 1;
    const taken: Rect[] = [];
    const first = this.all[now.follow] ?? this.all[0]; // has its place before the others
    for (const label of first ? [first, ...this.all.filter((each) => each !== first)] : []) {
      const { element, who } = label;
      const hide = who >= 0 ? !now.shown[who] || alone || (who === now.follow && (view === "eye" || view === "behind")) : view === "eye" || view === "behind" || (now.front !== null && label.at.z > 0.1 && label.at.y <= now.front);
      if (who >= 0) {
        label.at.set(poses[who].x, poses[who].y, movers[who].entry.body.crown + 0.2);
        if (view === "above") label.at.y += 0.75; // beside the head, not on it
        element.classList.toggle("followed", who === now.follow);
        element.classList.toggle("troubled", now.alert[who]);
      }
      const at = this.v.copy(label.at).project(camera);
      let out = hide || at.z > 1 || Math.abs(at.x) > 1.1 || Math.abs(at.y) > 1.1;
      if (!out) {
        const x = ((mirrored ? -at.x : at.x) * 0.5 + 0.5) * width, y = (-at.y * 0.5 + 0.5) * height;
        if (element.hidden) element.hidden = false; // what is not shown has no size
        const [wide, high] = (label.size ??= [element.offsetWidth, element.offsetHeight]);
        const spot = y < height ? free(x, y, wide, high, width, taken, who >= 0 ? TRIES : 1) : null;
        if (spot) {
          taken.push([spot[0], spot[1], spot[0] + wide, spot[1] + high]);
          element.style.transform = `translate(${spot[0].toFixed(1)}px, ${spot[1].toFixed(1)}px)`;
        }
        out = spot === null;
      }
      if (element.hidden !== out) element.hidden = out;
    }
  }
}

/** Upper left corner of a label over a point, within the picture and clear of others; null if there is none. */
function free(x: number, y: number, wide: number, high: number, width: number, taken: Rect[], tries: number): [number, number] | null {
  const left = Math.min(Math.max(x - wide / 2, 0), Math.max(width - wide, 0));
  for (let k = 0, top = Math.max(y - high, 0); k < tries && top >= 0; k++, top -= high + GAP) {
    const clear = taken.every(([l, t, r, b]) => left >= r + GAP || left + wide + GAP <= l || top >= b + GAP || top + high + GAP <= t);
    if (clear) return [left, top];
  }
  return null;
}
