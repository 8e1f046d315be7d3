// The distance between two performers at a moment, with the same parts and radii as the checks.
// Flames count while lit; the hand deviation widens arm and prop.
import { hangs } from "./carriage";
import { SIDES, type Body, type Document, type Side } from "./document";
import { placeOn, type Pose, type Vec } from "./motion";

interface Rod { a: Vec; b: Vec; radius: number }
export interface Near { first: number; second: number; distance: number }

const ELBOW = 0.08; // [m] least room of an elbow, as the checks have it

export class Distances {
  drawn = false; // as drawn, where it could be as flown
  private readonly rods: Rod[][];

  constructor(private readonly doc: Document) {
    this.rods = doc.cast.map((entry) => {
      const count = 1 + SIDES.filter((side) => entry.props[side]).length * 4;
      return Array.from({ length: count }, () => ({ a: [0, 0, 0] as Vec, b: [0, 0, 0] as Vec, radius: 0 }));
    });
  }

  /** Distance of two performers [m]; negative where they overlap. */
  between(first: number, second: number): number {
    let least = Infinity;
    for (const p of this.rods[first]) {
      for (const q of this.rods[second]) {
        least = Math.min(least, apart(p.a, p.b, q.a, q.b) - p.radius - q.radius);
      }
    }
    return least;
  }

  /** The closest two of those shown; null if there are fewer than two. */
  nearest(shown: boolean[]): Near | null {
    let best: Near | null = null;
    for (let i = 0; i < this.rods.length; i++) {
      if (!shown[i]) continue;
      for (let j = i + 1; j < this.rods.length; j++) {
        if (!shown[j] || (best && this.rough(i, j) >= best.distance)) continue;
        const distance = this.between(i, j);
        if (!best || distance < best.distance) best = { first: i, second: j, distance };
      }
    }
    return best;
  }

  /** Read the poses of a beat. */
  take(beat: number, poses: Pose[], lit: boolean[]): void {
    this.doc.cast.forEach((entry, who) => {
      const pose = poses[who], body = entry.body, rods = this.rods[who];
      set(rods[0].a, pose.x, pose.y, 0);
      set(rods[0].b, pose.x, pose.y, body.column[1]);
      rods[0].radius = body.column[0];
      let k = 1;
      for (const side of SIDES) {
        const prop = entry.props[side];
        if (!prop) continue;
        const margins = (this.drawn && entry.drawnDeviation) || entry.deviation;
        const more = deviation(margins[side] ?? [], beat), { ball, behind, shaft, radius, rear } = prop.room;
        const [arm, rod, far, near] = rods.slice(k, k + 4);
        k += 4;
        shoulder(pose, side, body, arm.a);
        set(arm.b, ...pose.hand[side]);
        const span = Math.hypot(arm.b[0] - arm.a[0], arm.b[1] - arm.a[1], arm.b[2] - arm.a[2]);
        arm.radius = body.limb + Math.max(0.5 * Math.sqrt(Math.max(body.arm ** 2 - span ** 2, 0)), ELBOW) + more;
        placeOn(pose, side, [-behind, 0], rod.a);
        placeOn(pose, side, [ball, 0], rod.b);
        rod.radius = shaft + more;
        set(far.a, ...rod.b);
        set(far.b, ...rod.b);
        far.radius = radius[lit[who] ? 1 : 0] + more;
        set(near.a, ...rod.a);
        set(near.b, ...rod.a);
        near.radius = rear[lit[who] ? 1 : 0] + more;
      }
    });
  }

  /** A lower bound, from the places on the floor alone. */
  private rough(i: number, j: number): number {
    const a = this.rods[i][0].a, b = this.rods[j][0].a;
    return Math.hypot(a[0] - b[0], a[1] - b[1]) - this.doc.cast[i].reach - this.doc.cast[j].reach;
  }
}

function set(out: Vec, x: number, y: number, z: number): void {
  out[0] = x; out[1] = y; out[2] = z;
}

function shoulder(pose: Pose, side: Side, body: Body, out: Vec): void {
  const [x, y, z] = hangs(body, pose.angles, side, out); // body y is −Y, and body x −X, at facing 0
  set(out, pose.x - pose.cos * x + pose.sin * y, pose.y - pose.sin * x - pose.cos * y, z);
}

function deviation(spans: [number, number, number][], beat: number): number {
  let most = 0;
  for (const [start, end, size] of spans) if (start <= beat && beat <= end) most = Math.max(most, size);
  return most;
}

/** Distance of two segments. Source: C. Ericson, Real-Time Collision Detection (2005), section 5.1.9. */
export function apart(p: Vec, q: Vec, r: Vec, s: Vec): number {
  const ux = q[0] - p[0], uy = q[1] - p[1], uz = q[2] - p[2];
  const vx = s[0] - r[0], vy = s[1] - r[1], vz = s[2] - r[2];
  const wx = p[0] - r[0], wy = p[1] - r[1], wz = p[2] - r[2];
  const a = ux * ux + uy * uy + uz * uz, e = vx * vx + vy * vy + vz * vz;
  const f = vx * wx + vy * wy + vz * wz, c = ux * wx + uy * wy + uz * wz, b = ux * vx + uy * vy + uz * vz;
  const within = (x: number) => Math.min(1, Math.max(0, x));
  let t = 0, h = 0;
  if (a > 1e-12 && e > 1e-12) {
    const across = a * e - b * b;
    t = across > 1e-12 * a * e ? within((b * f - c * e) / across) : 0;
    h = (b * t + f) / e;
    if (h < 0) { h = 0; t = within(-c / a); }
    else if (h > 1) { h = 1; t = within((b - c) / a); }
  } else if (a > 1e-12) t = within(-c / a);
  else if (e > 1e-12) h = within(f / e);
  return Math.hypot(wx + t * ux - h * vx, wy + t * uy - h * vy, wz + t * uz - h * vz);
}
