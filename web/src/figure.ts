// A performer's body in the posture that the show's carriage gives: hips to head, arms bent at the elbow so that both parts keep their length, legs
// that step along the path walked or rest on a wheelchair's footrest. Lengths follow the show's statures; the shape is only a drawing, the checks
// use capsules.
import { gives, onHead, onTrunk } from "./carriage";
import type { Body, Side } from "./document";
import { SIDES } from "./document";
import type { Mover, Pose, Vec } from "./motion";

export const LIMBS = 9; // neck, upper arm and forearm, thigh and shin of each side
export const BALLS = 9; // hips, shoulders, elbows, hands, knees … and feet are boxes of their own

const UPPER = 0.505; // share of the arm above the elbow; ANSUR II, from memory
const up = (body: Body, share: number) => body.stature * share;

export interface Skeleton {
  limbs: { from: Vec; to: Vec; r0: number; kind: "skin" | "cloth" | "legs" }[];
  balls: { at: Vec; r: number; kind: "skin" | "cloth" | "legs" }[];
  feet: { at: Vec }[];
}

const v = (): Vec => [0, 0, 0];

export function newSkeleton(body: Body): Skeleton {
  const limb = body.limb;
  const arm = (kind: "cloth" | "skin", r: number) => ({ from: v(), to: v(), r0: r, kind });
  const leg = (r: number) => ({ from: v(), to: v(), r0: r, kind: "legs" as const });
  return {
    limbs: [
      { from: v(), to: v(), r0: 0.052, kind: "skin" },
      arm("cloth", limb * 0.92), arm("skin", limb * 0.72), leg(0.078), leg(0.055),
      arm("cloth", limb * 0.92), arm("skin", limb * 0.72), leg(0.078), leg(0.055),
    ],
    balls: [
      { at: v(), r: 0.001, kind: "legs" },
      { at: v(), r: limb * 1.15, kind: "cloth" }, { at: v(), r: limb * 0.86, kind: "cloth" },
      { at: v(), r: limb * 0.95, kind: "skin" }, { at: v(), r: 0.062, kind: "legs" },
      { at: v(), r: limb * 1.15, kind: "cloth" }, { at: v(), r: limb * 0.86, kind: "cloth" },
      { at: v(), r: limb * 0.95, kind: "skin" }, { at: v(), r: 0.062, kind: "legs" },
    ],
    feet: [{ at: v() }, { at: v() }],
  };
}

const local = { shoulder: v(), elbow: v(), hip: v(), knee: v(), ankle: v(), hand: v(), neck: v(), chin: v() };

/** Elbow on the circle that both arm parts allow, hanging down, out and a little back. */
function elbow(shoulder: Vec, hand: Vec, arm: number, outward: number, out: Vec): void {
  const a = arm * UPPER, b = arm - a;
  const d: Vec = [hand[0] - shoulder[0], hand[1] - shoulder[1], hand[2] - shoulder[2]];
  const far = Math.max(Math.hypot(...d), 1e-6);
  const reach = Math.min(Math.max(far, Math.abs(a - b) + 1e-4), a + b - 1e-4);
  const along = (a * a - b * b + reach * reach) / (2 * reach);
  const side = Math.sqrt(Math.max(a * a - along * along, 0));
  const u: Vec = [d[0] / far, d[1] / far, d[2] / far];
  const pole: Vec = [0.55 * outward, -0.35, -0.75];
  const lift = pole[0] * u[0] + pole[1] * u[1] + pole[2] * u[2];
  const p: Vec = [pole[0] - lift * u[0], pole[1] - lift * u[1], pole[2] - lift * u[2]];
  const size = Math.hypot(...p) || 1;
  for (let i = 0; i < 3; i++) out[i] = shoulder[i] + u[i] * along + (p[i] / size) * side;
}

/** Where an empty hand is: by the leg, or in the lap. */
function idle(body: Body, out: number): Vec {
  if (body.chair) return [out * up(body, 0.057), 0.7 * body.chair.knee[0], body.chair.knee[1] + 0.12];
  return [out * (body.halfBreadth + 0.08), 0.08, body.shoulder - body.arm * 0.97];
}

export function pose(skeleton: Skeleton, mover: Mover, at: Pose, beat: number, scratch: Pose): void {
  const body = mover.entry.body;
  const put = (from: Vec, to: Vec) => mover.toStage(at, from, to);
  const { angles } = at;
  const { limbs, balls, feet } = skeleton;
  onTrunk(body, angles, [0, 0, body.shoulder + 0.01], local.neck);
  onHead(body, angles, [0, 0.02, body.crown - up(body, 0.115)], local.chin);
  put(local.neck, limbs[0].from);
  put(local.chin, limbs[0].to);
  put([0, 0, body.hips], balls[0].at);

  // Walking: feet swing along the path, by the distance covered.
  mover.stand(beat + 0.05, scratch);
  const dx = (scratch.x - at.x) / 0.05, dy = (scratch.y - at.y) / 0.05;
  const speed = Math.hypot(dx, dy);
  const stride = Math.min(0.3, speed * 0.35);
  const way: Vec = speed > 1e-3 ? [dx / speed, dy / speed, 0] : [0, 0, 0];
  const gone = (at.x * way[0] + at.y * way[1]) * 4.2;

  SIDES.forEach((side: Side, s) => {
    const out = side === "right" ? 1 : -1;
    const k = 1 + 4 * s;
    const shoulder = onTrunk(body, angles, [out * body.halfShoulder * 0.94, 0, body.shoulder - body.limb], local.shoulder);
    const held = mover.entry.props[side] !== undefined;
    const hand = held ? at.bodyHand[side] : idle(body, out);
    if (held) gives(body, angles, side, hand).forEach((more, i) => (shoulder[i] += more));
    elbow(shoulder, hand, body.arm, out, local.elbow);
    put(shoulder, limbs[k].from);
    put(local.elbow, limbs[k].to);
    put(local.elbow, limbs[k + 1].from);
    put(hand, limbs[k + 1].to);
    put(shoulder, balls[k].at);
    put(local.elbow, balls[k + 1].at);
    put(hand, balls[k + 2].at);

    if (body.chair) {
      const x = out * up(body, 0.057), { knee, sole } = body.chair;
      put([x, 0, body.hips], limbs[k + 2].from);
      put([x, ...knee], limbs[k + 2].to);
      put([x, ...knee], limbs[k + 3].from);
      put([x, ...knee], balls[k + 3].at);
      put([x, sole[0], sole[1] + 0.08], limbs[k + 3].to);
      put([x, sole[0], sole[1] + 0.08], feet[s].at);
      return;
    }
    const hip: Vec = [out * up(body, 0.052), 0, up(body, 0.505)];
    const stance: Vec = [out * up(body, 0.085), -0.02, 0.08];
    put(hip, limbs[k + 2].from);
    const ankle = limbs[k + 3].to;
    put(stance, ankle);
    const swing = Math.sin(gone + (s === 0 ? 0 : Math.PI)) * stride;
    const raised = Math.max(0, Math.cos(gone + (s === 0 ? 0 : Math.PI))) * stride * 0.35;
    ankle[0] += way[0] * swing;
    ankle[1] += way[1] * swing;
    ankle[2] += raised;
    const from = limbs[k + 2].from;
    const forward: Vec = v();
    mover.turn(at, [out * 0.1, 1, 0], forward);
    const bend = 0.035 + 0.5 * raised + 0.2 * Math.abs(swing);
    const knee: Vec = [
      (from[0] + ankle[0]) / 2 + forward[0] * bend,
      (from[1] + ankle[1]) / 2 + forward[1] * bend,
      (from[2] + ankle[2]) / 2 + 0.02,
    ];
    for (let i = 0; i < 3; i++) {
      limbs[k + 2].to[i] = knee[i];
      limbs[k + 3].from[i] = knee[i];
      balls[k + 3].at[i] = knee[i];
      feet[s].at[i] = ankle[i];
    }
  });
}
