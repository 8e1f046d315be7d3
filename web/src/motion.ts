// Where every point of every performer is at a beat, in the stage frame [m].
import { SIDES, type CastEntry, type Side, type Tracks } from "./document";

export type Vec = [number, number, number];
export interface Pose {
  x: number;
  y: number;
  cos: number; // of the facing
  sin: number;
  hand: Record<Side, Vec>;
  head: Record<Side, Vec>;
  plane: Record<Side, Vec>; // stage frame
  bodyHand: Record<Side, Vec>; // body frame
  bodyPlane: Record<Side, Vec>;
}

export function emptyPose(): Pose {
  const sides = () => ({ left: [0, 0, 0] as Vec, right: [0, 0, 0] as Vec });
  return { x: 0, y: 0, cos: 1, sin: 0, hand: sides(), head: sides(), plane: sides(), bodyHand: sides(), bodyPlane: sides() };
}

const scratch = new Float64Array(9);

export class Mover {
  constructor(readonly entry: CastEntry, private readonly tracks: Tracks) {}

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
    for (const side of SIDES) {
      const track = this.tracks[side];
      const prop = this.entry.props[side];
      if (!track || !prop) continue;
      track.read(beat, scratch);
      const own = out.bodyHand[side];
      own[0] = scratch[0]; own[1] = scratch[1]; own[2] = scratch[2];
      const reach = prop.length / Math.hypot(scratch[3], scratch[4], scratch[5]);
      const head = out.head[side];
      head[0] = own[0] + reach * scratch[3];
      head[1] = own[1] + reach * scratch[4];
      head[2] = own[2] + reach * scratch[5];
      const size = Math.hypot(scratch[6], scratch[7], scratch[8]) || 1;
      const plane = out.bodyPlane[side];
      plane[0] = scratch[6] / size; plane[1] = scratch[7] / size; plane[2] = scratch[8] / size;
      this.turn(out, plane, out.plane[side]);
      this.toStage(out, own, out.hand[side]);
      this.toStage(out, head, head);
    }
  }

  /** Only one prop's head, for trails. */
  headAt(beat: number, side: Side, pose: Pose, out: Vec): void {
    const track = this.tracks[side], prop = this.entry.props[side];
    if (!track || !prop) return;
    this.stand(beat, pose);
    track.read(beat, scratch, 6);
    const reach = prop.length / Math.hypot(scratch[3], scratch[4], scratch[5]);
    out[0] = scratch[0] + reach * scratch[3];
    out[1] = scratch[1] + reach * scratch[4];
    out[2] = scratch[2] + reach * scratch[5];
    this.toStage(pose, out, out);
  }
}
