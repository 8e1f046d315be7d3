// Where every point of every performer is at a beat, in the stage frame [m].
import { anglesAt, type Angles } from "./carriage";
import { SIDES, type CastEntry, type Prop, type Side, type Spot, type Tracks } from "./document";

export type Vec = [number, number, number];
export interface Pose {
  x: number;
  y: number;
  cos: number; // of the facing
  sin: number;
  hand: Record<Side, Vec>;
  tether: Record<Side, Vec>; // stage frame, unit: along the prop
  across: Record<Side, Vec>; // stage frame, unit: across it, in its plane
  plane: Record<Side, Vec>; // stage frame
  bodyHand: Record<Side, Vec>; // body frame
  bodyPlane: Record<Side, Vec>;
  angles: Angles; // how the body gives way
}

export function emptyPose(): Pose {
  const sides = () => ({ left: [0, 0, 0] as Vec, right: [0, 0, 0] as Vec });
  return { x: 0, y: 0, cos: 1, sin: 0, hand: sides(), tether: sides(), across: sides(), plane: sides(), bodyHand: sides(), bodyPlane: sides(), angles: [0, 0, 0, 0, 0] };
}

const scratch = new Float64Array(9);
const along: Vec = [0, 0, 0], wide: Vec = [0, 0, 0];

function unit(x: number, y: number, z: number, out: Vec): Vec {
  const size = Math.hypot(x, y, z) || 1;
  out[0] = x / size; out[1] = y / size; out[2] = z / size;
  return out;
}

function cross(a: Vec, b: Vec): Vec {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** A place on a prop in the stage frame. */
export function placeOn(pose: Pose, side: Side, spot: Spot, out: Vec): Vec {
  const hand = pose.hand[side], d = pose.tether[side], w = pose.across[side];
  for (let i = 0; i < 3; i++) out[i] = hand[i] + spot[0] * d[i] + spot[1] * w[i];
  return out;
}

/** Wicks whose trail is drawn: the farthest, and the other end of a staff. */
export function trailed(prop: Prop): Spot[] {
  return prop.heads.slice(0, prop.kind === "staff" ? 2 : 1);
}

export class Mover {
  drawn = false; // danced as drawn, where it could be danced as flown

  constructor(readonly entry: CastEntry, private readonly own: Tracks) {}

  private get tracks(): Tracks {
    return (this.drawn && this.own.drawn) || this.own;
  }

  stand(beat: number, out: Pose): void {
    this.tracks.floor.read(beat, scratch);
    const size = Math.hypot(scratch[2], scratch[3]);
    out.x = scratch[0];
    out.y = scratch[1];
    out.cos = scratch[2] / size;
    out.sin = scratch[3] / size;
  }

  /** A direction of the body frame in the stage frame: body y is −Y at facing 0. */
  turn(pose: Pose, v: Vec, out: Vec): void {
    const x = v[0], y = v[1];
    out[0] = -pose.cos * x + pose.sin * y;
    out[1] = -pose.sin * x - pose.cos * y;
    out[2] = v[2];
  }

  toStage(pose: Pose, v: Vec, out: Vec): void {
    this.turn(pose, v, out);
    out[0] += pose.x;
    out[1] += pose.y;
  }

  at(beat: number, out: Pose): void {
    this.stand(beat, out);
    anglesAt(this.entry.carriage, beat, out.angles);
    for (const side of SIDES) {
      const track = this.tracks[side];
      const prop = this.entry.props[side];
      if (!track || !prop) continue;
      track.read(beat, scratch);
      const own = out.bodyHand[side];
      own[0] = scratch[0]; own[1] = scratch[1]; own[2] = scratch[2];
      this.turn(out, unit(scratch[3], scratch[4], scratch[5], along), out.tether[side]);
      const size = Math.hypot(scratch[6], scratch[7], scratch[8]) || 1;
      const plane = out.bodyPlane[side];
      plane[0] = scratch[6] / size; plane[1] = scratch[7] / size; plane[2] = scratch[8] / size;
      this.turn(out, plane, out.plane[side]);
      this.toStage(out, own, out.hand[side]);
      this.turn(out, unit(...cross(plane, along), wide), out.across[side]);
    }
  }

  /** Only one wick of a prop, for trails. */
  headAt(beat: number, side: Side, pose: Pose, out: Vec, spot: Spot): void {
    const track = this.tracks[side];
    if (!track) return;
    this.stand(beat, pose);
    track.read(beat, scratch, spot[1] === 0 ? 6 : 9);
    unit(scratch[3], scratch[4], scratch[5], along);
    if (spot[1] !== 0) unit(...cross([scratch[6], scratch[7], scratch[8]], along), wide);
    for (let i = 0; i < 3; i++) out[i] = scratch[i] + spot[0] * along[i] + (spot[1] && spot[1] * wide[i]);
    this.toStage(pose, out, out);
  }
}
