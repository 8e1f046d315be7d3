// How a body gives way; mirrors sequencer/geometry/posture.py, motion/laws/carriage.py and motion/performers/arms.py.
import type { Body, Side } from "./document";
import type { Vec } from "./motion";

export type Angles = [number, number, number, number, number]; // [rad] turn, lean, side, nod, tilt
export type Held = [number, number, ...Angles]; // from and to beat
export type Rows = [number, number, number, number, number, number, number, number, number];

/** Angles at a beat: minimum-jerk from one posture to the next. */
export function anglesAt(held: Held[] | undefined, beat: number, out: Angles): void {
  if (!held?.length) return void out.fill(0);
  let k = 0;
  while (k < held.length - 1 && held[k + 1][0] <= beat) k++;
  const next = held[Math.min(k + 1, held.length - 1)];
  const width = next[0] - held[k][1];
  const x = width > 0 ? Math.min(Math.max((beat - held[k][1]) / width, 0), 1) : 0;
  const step = x * x * x * (10 - 15 * x + 6 * x * x);
  for (let i = 0; i < 5; i++) out[i] = held[k][i + 2] + step * (next[i + 2] - held[k][i + 2]);
}

/** Rz(turn)·Rx(−lean)·Ry(side), row by row. */
export function trunkTurn([turn, lean, side]: Angles): Rows {
  const ct = Math.cos(turn), st = Math.sin(turn), cl = Math.cos(lean), sl = Math.sin(lean), cs = Math.cos(side), ss = Math.sin(side);
  return [
    ct * cs + st * sl * ss, -st * cl, ct * ss - st * sl * cs,
    st * cs - ct * sl * ss, ct * cl, st * ss + ct * sl * cs,
    -cl * ss, -sl, cl * cs,
  ];
}

/** The trunk's rotation, with the head's Rx(−nod)·Ry(tilt) applied first. */
export function headTurn(angles: Angles): Rows {
  return times(trunkTurn(angles), trunkTurn([0, angles[3], angles[4], 0, 0]));
}

export function times(a: Rows, b: Rows): Rows {
  return Array.from({ length: 9 }, (_, k) => {
    const i = k - (k % 3), j = k % 3;
    return a[i] * b[j] + a[i + 1] * b[j + 3] + a[i + 2] * b[j + 6];
  }) as Rows;
}

function turned(m: Rows, x: number, y: number, z: number, out: Vec): Vec {
  out[0] = m[0] * x + m[1] * y + m[2] * z;
  out[1] = m[3] * x + m[4] * y + m[5] * z;
  out[2] = m[6] * x + m[7] * y + m[8] * z;
  return out;
}

/** Where the trunk takes a point of the upright body. */
export function onTrunk(body: Body, angles: Angles, p: Vec, out: Vec): Vec {
  turned(trunkTurn(angles), p[0], p[1], p[2] - body.hips, out);
  out[2] += body.hips;
  return out;
}

/** Where trunk and neck take a point of the upright head. */
export function onHead(body: Body, angles: Angles, p: Vec, out: Vec): Vec {
  turned(trunkTurn([0, angles[3], angles[4], 0, 0]), p[0], p[1], p[2] - body.shoulder, out);
  out[2] += body.shoulder;
  return onTrunk(body, angles, [...out], out);
}

/** Where an arm hangs from. */
export function hangs(body: Body, angles: Angles, side: Side, out: Vec): Vec {
  return onTrunk(body, angles, [side === "left" ? -body.halfShoulder : body.halfShoulder, 0, body.shoulder], out);
}

/** How far a shoulder moves once the arm is straight, to the nearest place of its box and no more than is missing. */
export function gives(body: Body, angles: Angles, side: Side, hand: Vec): Vec {
  const from = hangs(body, angles, side, [0, 0, 0]), m = trunkTurn(angles);
  const d: Vec = [hand[0] - from[0], hand[1] - from[1], hand[2] - from[2]];
  const a: Vec = [0, 1, 2].map((i) => m[i] * d[0] + m[i + 3] * d[1] + m[i + 6] * d[2]) as Vec; // as the trunk sees it
  const missing = dot(a, a) - body.arm ** 2;
  if (missing <= 0) return [0, 0, 0];
  const [within, back, forward, up] = body.give, out = side === "left" ? -1 : 1;
  const x = Math.min(Math.max(out * a[0], -within), 0) * out;
  const c: Vec = [x, Math.min(Math.max(a[1], -back), forward), Math.min(Math.max(a[2], 0), up)];
  const square = dot(c, c), along = dot(c, a);
  const share = square > 0 ? Math.min(Math.max((along - Math.sqrt(Math.max(along * along - square * missing, 0))) / square, 0), 1) : 0;
  return turned(m, share * c[0], share * c[1], share * c[2], [0, 0, 0]);
}

/** Where an arm begins, with the shoulder moved as far as the hand needs. */
export function begins(body: Body, angles: Angles, side: Side, hand: Vec): Vec {
  const more = gives(body, angles, side, hand);
  return hangs(body, angles, side, [0, 0, 0]).map((own, i) => own + more[i]) as Vec;
}

function dot(a: Vec, b: Vec): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
