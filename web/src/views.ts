// Where the camera stands. Every view except the free one is a function of the moment and the zoom.
import { PerspectiveCamera, Vector3 } from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { onHead } from "./carriage";
import type { Room } from "./framing";
import type { Mover, Pose, Vec } from "./motion";

export type View = "audience" | "behind" | "eye" | "above" | "free";
export const VIEWS: { name: View; label: string; help: string }[] = [
  { name: "audience", label: "Audience", help: "from the audience" },
  { name: "behind", label: "Behind", help: "from behind the followed performer, to copy" },
  { name: "eye", label: "Own eye", help: "through the followed performer’s eyes" },
  { name: "above", label: "Above", help: "plan from above, audience at the bottom" },
  { name: "free", label: "Free", help: "drag to turn" },
];

export interface Box { x0: number; x1: number; y0: number; y1: number }

const FLATTEST = 6, STEEPEST = 22; // [degrees] at which the audience looks down; a tall picture is seen from higher seats
const FILLED = 0.97; // share of the picture, along the side that is full

const half = (degrees: number) => Math.tan((degrees * Math.PI) / 360);

export class Eye {
  view: View = "audience";
  zoom = 1;
  look = { yaw: 0, pitch: 0 }; // of the performer's eye, by dragging
  readonly orbit: OrbitControls;
  private readonly a = new Vector3();
  private readonly b = new Vector3();

  constructor(readonly camera: PerspectiveCamera, surface: HTMLElement, private readonly box: Box, private readonly floor: Box) {
    this.orbit = new OrbitControls(camera, surface);
    this.orbit.enabled = false;
    this.orbit.enableDamping = false;
    this.orbit.minDistance = 0.6;
    this.orbit.maxDistance = 80;
    this.orbit.maxPolarAngle = Math.PI * 0.495;
  }

  choose(view: View): void {
    if (view === "free" && this.view !== "free") {
      const { x0, x1, y0, y1 } = this.box;
      const far = (2.4 + 1.05 * Math.max(x1 - x0, y1 - y0)) * Math.max(1, 0.9 / this.camera.aspect);
      this.orbit.target.set((x0 + x1) / 2, (y0 + y1) / 2, 0.9);
      this.camera.position.copy(this.orbit.target).add(this.a.set(0.45 * far, -0.85 * far, 0.45 * far));
    }
    this.view = view;
    this.zoom = 1;
    this.look = { yaw: 0, pitch: 0 };
    this.orbit.enabled = view === "free";
  }

  /** `room` is what the view from the audience has to show. */
  aim(mover: Mover | undefined, pose: Pose | undefined, solo: boolean, room: Room | null): void {
    const { camera } = this;
    const wide = camera.aspect;
    const fov = (degrees: number) => {
      if (camera.fov !== degrees) {
        camera.fov = degrees;
        camera.updateProjectionMatrix();
      }
    };
    camera.up.set(0, 0, 1);
    const body = (x: number, y: number, z: number, out: Vector3) => {
      const v: Vec = [x, y, z];
      mover!.toStage(pose!, v, v);
      return out.set(...v);
    };
    if (this.view === "free") {
      fov(45);
      this.orbit.update();
      return;
    }
    if (this.view === "audience") {
      fov(32);
      if (room) this.fill(room, half(32));
      return;
    }
    if ((solo || this.view !== "above") && (!mover || !pose)) return;
    if (this.view === "behind") {
      fov(45);
      const far = (3.7 * Math.max(1, 0.85 / wide)) / this.zoom;
      camera.position.copy(body(0, -far, 1.75 + 0.12 * far, this.a));
      camera.lookAt(body(0, 1.2, 1.05, this.b));
    } else if (this.view === "eye") {
      fov(86 / Math.sqrt(this.zoom));
      // The head's place is the body's; the gaze stays level.
      const own = mover!.entry.body;
      const [x, y, high] = onHead(own, pose!.angles, [0, 0.09, own.crown - own.stature * 0.065], [0, 0, 0]);
      camera.position.copy(body(x, y, high, this.a));
      const yaw = this.look.yaw, pitch = this.look.pitch - 0.1;
      camera.lookAt(body(x + Math.sin(yaw) * Math.cos(pitch), y + Math.cos(yaw) * Math.cos(pitch), high + Math.sin(pitch), this.b));
    } else {
      fov(26);
      const f = this.floor;
      const across = (f.x1 - f.x0) / 2 + 0.9, deep = (f.y1 - f.y0) / 2 + 0.6;
      const far = Math.max(across / (half(26) * wide), deep / half(26)) / this.zoom;
      const px = solo ? pose!.x : (f.x0 + f.x1) / 2, py = solo ? pose!.y : (f.y0 + f.y1) / 2;
      camera.up.set(0, 1, 0);
      camera.position.set(px, py, solo ? Math.min(far, 2.1 / half(26) / Math.min(1, wide) / this.zoom) + 1 : far + 1);
      camera.lookAt(px, py, 0);
    }
  }

  /** As near as a room is seen whole, looking down so far that it fills the picture. */
  private fill(room: Room, tall: number): void {
    const t = tall * FILLED, wide = t * this.camera.aspect;
    let best = seen(room, FLATTEST, t, wide);
    let low = FLATTEST, high = STEEPEST;
    if (best.across > best.up) {
      for (let k = 0; k < 12; k++) { // until height and breadth are full alike
        const pitch = (low + high) / 2;
        best = seen(room, pitch, t, wide);
        if (best.across > best.up) low = pitch;
        else high = pitch;
      }
    }
    const far = Math.max(best.across, best.up) / this.zoom;
    const { ahead, above, aim } = best;
    const at = (k: 0 | 1 | 2) => aim[k] - far * ahead[k];
    this.camera.position.set(at(0), at(1), at(2));
    this.camera.up.set(above[0], above[1], above[2]);
    this.camera.lookAt(aim[0], aim[1], aim[2]);
  }
}

interface Seen { across: number; up: number; aim: Vec; ahead: Vec; above: Vec }

/** How far back [m] a camera has to be, for the breadth and for the height of a room, and what it looks at.
 *
 * A corner at (x, y, z) across, up and ahead of the room's middle is seen if |x − cx| ≤ wide (far + z), and likewise upwards. Each
 * bound is linear in far and in where the camera looks, so the nearest place is where the bounds of two opposite sides meet. */
function seen(room: Room, pitch: number, tall: number, wide: number): Seen {
  const angle = (pitch * Math.PI) / 180, cos = Math.cos(angle), sin = Math.sin(angle);
  const ahead: Vec = [0, cos, -sin], above: Vec = [0, sin, cos];
  const middle = [0, 1, 2].map((i) => (room[i] + room[i + 3]) / 2) as Vec;
  let left = -Infinity, right = -Infinity, top = -Infinity, bottom = -Infinity;
  for (let corner = 0; corner < 8; corner++) {
    const [x, dy, dz] = [0, 1, 2].map((i) => room[i + (corner & (1 << i) ? 3 : 0)] - middle[i]);
    const y = dy * above[1] + dz * above[2], z = dy * ahead[1] + dz * ahead[2];
    right = Math.max(right, x - wide * z);
    left = Math.max(left, -x - wide * z);
    top = Math.max(top, y - tall * z);
    bottom = Math.max(bottom, -y - tall * z);
  }
  const cx = (right - left) / 2, cy = (top - bottom) / 2;
  const aim: Vec = [middle[0] + cx, middle[1] + cy * above[1], middle[2] + cy * above[2]];
  return { across: (right + left) / (2 * wide), up: (top + bottom) / (2 * tall), aim, ahead, above };
}
