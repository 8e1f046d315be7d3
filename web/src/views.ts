// Where the camera stands. Every view except the free one is a function of the moment and the zoom.
import { PerspectiveCamera, Vector3 } from "three";
import { OrbitControls } from "three/addons/controls/OrbitControls.js";
import { onHead } from "./carriage";
import type { Mover, Pose, Vec } from "./motion";

export type View = "audience" | "behind" | "eye" | "above" | "free";
export const VIEWS: { name: View; label: string; help: string }[] = [
  { name: "audience", label: "Audience", help: "from the audience" },
  { name: "behind", label: "Behind", help: "from behind the followed performer, to copy" },
  { name: "eye", label: "Own eye", help: "through the followed performer's eyes" },
  { name: "above", label: "Above", help: "plan from above, audience at the bottom" },
  { name: "free", label: "Free", help: "drag to turn" },
];

export interface Box { x0: number; x1: number; y0: number; y1: number }

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

  aim(mover: Mover | undefined, pose: Pose | undefined, solo: boolean, size: { width: number; height: number; lift: number }): void {
    const { camera } = this;
    const wide = camera.aspect;
    if (this.view === "eye") camera.clearViewOffset();
    else camera.setViewOffset(size.width, size.height, 0, size.lift / 2, size.width, size.height);
    const free = 1 - size.lift / size.height; // share of the height that nothing covers
    const { x0, x1, y0, y1 } = this.box;
    const cx = (x0 + x1) / 2;
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
    const alone = solo || this.view === "behind" || this.view === "eye";
    if (alone && (!mover || !pose)) return;
    const half = (degrees: number) => Math.tan((degrees * Math.PI) / 360);
    if (this.view === "audience" && solo) {
      fov(32);
      const far = (1.42 / half(32) / Math.min(free, wide * 0.95)) / this.zoom;
      camera.position.copy(this.a.set(pose!.x, pose!.y - far, 1.55));
      camera.lookAt(this.b.set(pose!.x, pose!.y, 1.12));
    } else if (this.view === "audience") {
      fov(32);
      const across = (x1 - x0) / 2 + 1.5, high = 1.55 + 0.16 * (y1 - y0);
      const far = Math.max(across / (half(32) * wide), high / half(32) / free) / this.zoom;
      camera.position.copy(this.a.set(cx, y0 - far, 1.7 + far * 0.13));
      camera.lookAt(this.b.set(cx, y0 + 0.25 * (y1 - y0), 1.15));
    } else if (this.view === "behind") {
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
      const far = Math.max(across / (half(26) * wide), deep / half(26) / free) / this.zoom;
      const px = solo ? pose!.x : (f.x0 + f.x1) / 2, py = solo ? pose!.y : (f.y0 + f.y1) / 2;
      camera.up.set(0, 1, 0);
      camera.position.set(px, py, solo ? Math.min(far, 2.1 / half(26) / Math.min(free, wide) / this.zoom) + 1 : far + 1);
      camera.lookAt(px, py, 0);
    }
  }
}
