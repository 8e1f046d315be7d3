// The stage from above in numbers: what the picture shows, who stands where, and how near.
import type { Point } from "./handle";
import type { Spot, Standing, View } from "./api";

export interface Box { x0: number; x1: number; y0: number; y1: number }

export function boxOf(now: View): Box {
  const xs: number[] = [], ys: number[] = [];
  const add = ([x, y]: readonly number[]) => { xs.push(x); ys.push(y); };
  now.place.outline.forEach(add);
  now.place.audience.forEach((edge) => edge.line.forEach(add));
  now.crew.forEach((each) => add(each.at));
  now.place.extinguishers.forEach(add);
  now.entrances.forEach((each) => add(each.place));
  if (now.place.fuel) add(now.place.fuel);
  for (const each of Object.values(now.formations)) Object.values(each.spots ?? {}).forEach(add);
  if (!xs.length) return { x0: -5, x1: 5, y0: -5, y1: 8 };
  // The stage decides; what lies far behind it is at the border of the picture.
  const far = (values: number[], low: number, high: number) => values.filter((value) => value > low && value < high);
  const inside = now.place.outline.length ? now.place.outline : Object.values(now.formations).flatMap((each) => Object.values(each.spots ?? {}).map((spot) => [spot[0], spot[1]]));
  const sx = inside.map((each) => each[0]), sy = inside.map((each) => each[1]);
  const [a, b, c, d] = [Math.min(...sx) - 5, Math.max(...sx) + 5, Math.min(...sy) - 7, Math.max(...sy) + 6];
  return { x0: Math.min(...sx, ...far(xs, a, b)) - 0.8, x1: Math.max(...sx, ...far(xs, a, b)) + 0.8, y0: Math.min(...sy, ...far(ys, c, d)) - 0.8, y1: Math.max(...sy, ...far(ys, c, d)) + 0.8 };
}

export function standingAt(now: View, beat: number): Standing | null {
  return [...now.standings].reverse().find((each) => each.walk <= beat + 1e-6) ?? now.standings[0] ?? null;
}

/** Spots whose reaches overlap, and how far apart they are [m]. */
export function pairs(spots: [string, Spot][], now: View): [Point, Point, number][] {
  return spots.flatMap(([one, a], k) =>
    spots.slice(k + 1).flatMap(([other, b]): [Point, Point, number][] => {
      const apart = Math.hypot(a[0] - b[0], a[1] - b[1]);
      return apart < (now.reach[one] ?? 1) + (now.reach[other] ?? 1) ? [[[a[0], a[1]], [b[0], b[1]], apart]] : [];
    }),
  );
}

/** From a point to the nearest of others, with how far they are [m]. */
export function nearest(from: Point, others: readonly Point[], count: number): [Point, Point, number][] {
  return others
    .map((to): [Point, Point, number] => [from, to, Math.hypot(from[0] - to[0], from[1] - to[1])])
    .sort((a, b) => a[2] - b[2])
    .slice(0, count);
}

/** Where on a way a point lies next: the number of the stretch between two of its points. */
export function stretchAt(way: readonly Point[], point: Point): number {
  let least = Infinity, found = 0;
  way.slice(1).forEach((end, k) => {
    const [x, y] = way[k], dx = end[0] - x, dy = end[1] - y;
    const share = Math.min(1, Math.max(0, ((point[0] - x) * dx + (point[1] - y) * dy) / (dx * dx + dy * dy || 1)));
    const far = Math.hypot(x + share * dx - point[0], y + share * dy - point[1]);
    if (far < least) [least, found] = [far, k];
  });
  return found;
}
