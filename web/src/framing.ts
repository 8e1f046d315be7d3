// What a view of everybody has to show at a moment: all bodies and heads of props, from a little before until a little after,
// so that the picture is full and its frame moves slowly, and nobody leaves it.
import type { Side } from "./document";
import { SIDES } from "./document";
import { emptyPose, placeOn, type Mover, type Vec } from "./motion";

export type Room = [number, number, number, number, number, number]; // [m] x, y, z: lowest each, then highest each

const MOMENTS = 4; // looked at in a beat
const AROUND = 4; // [beats] before and after that are in the frame
const EASE = 4; // [beats] over which the frame moves
const BESIDE = 0.25; // [m] flesh and flame beside what is measured

export class Framing {
  private readonly beats: Map<number, Room>[];
  private readonly pose = emptyPose();
  private whole: Room | null = null;
  private last: Room | null = null;

  constructor(private readonly movers: Mover[]) {
    this.beats = movers.map(() => new Map());
  }

  /** The motion is another: as drawn, or as flown. */
  again(): void {
    for (const each of this.beats) each.clear();
    this.whole = null;
  }

  /** What those shown need around a beat; null if nobody is shown. Where a place is not known, the frame stays as it was. */
  around(beat: number, shown: boolean[]): Room | null {
    if (!shown.some(Boolean)) return null;
    const first = Math.floor(beat), rest = beat - first;
    const steps: Room[] = [];
    for (let k = -EASE; k <= EASE + 1; k++) steps.push(this.between(first + k - AROUND, first + k + AROUND, shown));
    const room = steps[0].map((_, i) => {
      let sum = 0;
      for (let k = 0; k <= 2 * EASE; k++) sum += (1 - rest) * steps[k][i] + rest * steps[k + 1][i];
      return sum / (2 * EASE + 1);
    }) as Room;
    if (room.every(Number.isFinite)) this.last = room;
    return this.last;
  }

  /** What everybody needs from one beat to another: a frame that never moves. */
  all(from: number, until: number): Room | null {
    this.whole ??= this.between(Math.floor(from), Math.ceil(until), this.movers.map(() => true));
    return this.whole.every(Number.isFinite) ? this.whole : null;
  }

  private between(from: number, until: number, shown: boolean[]): Room {
    const out: Room = [Infinity, Infinity, 0, -Infinity, -Infinity, -Infinity];
    this.movers.forEach((_, who) => {
      if (!shown[who]) return;
      for (let beat = from; beat <= until; beat++) {
        const own = this.of(who, beat);
        for (let i = 0; i < 3; i++) {
          out[i] = Math.min(out[i], own[i]);
          out[i + 3] = Math.max(out[i + 3], own[i + 3]);
        }
      }
    });
    return out;
  }

  private of(who: number, beat: number): Room {
    const known = this.beats[who].get(beat);
    if (known) return known;
    const { pose } = this, mover = this.movers[who], { entry } = mover;
    const own: Room = [Infinity, Infinity, 0, -Infinity, -Infinity, entry.body.crown + BESIDE];
    const at: Vec = [0, 0, 0];
    const take = ([x, y, z]: Vec) => {
      own[0] = Math.min(own[0], x - BESIDE);
      own[1] = Math.min(own[1], y - BESIDE);
      own[3] = Math.max(own[3], x + BESIDE);
      own[4] = Math.max(own[4], y + BESIDE);
      own[5] = Math.max(own[5], z + BESIDE);
    };
    for (let k = 0; k < MOMENTS; k++) {
      mover.at(beat + k / MOMENTS, pose);
      take([pose.x, pose.y, 0]);
      for (const side of SIDES as readonly Side[]) {
        const prop = entry.props[side];
        if (!prop) continue;
        take(pose.hand[side]);
        for (const spot of prop.heads) take(placeOn(pose, side, spot, at));
      }
    }
    this.beats[who].set(beat, own);
    return own;
  }
}
