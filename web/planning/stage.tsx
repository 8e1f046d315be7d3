// The stage from above: who stands where at this moment of the song. A spot is dragged, or moved by arrow keys.
import { useRef, useState } from "preact/hooks";
import { operate } from "./doing";
import { fresh, names, readOnly, seconds, tempo, view } from "./store";
import type { Spot, Standing, View } from "./api";

const FINE = 0.05, COARSE = 0.5; // [m] of a step by the keyboard
const MARKED = 0.05; // [m] to which a dragged spot is rounded: what can be marked on a floor

interface Box { x0: number; x1: number; y0: number; y1: number }

function boxOf(now: View): Box {
  const xs: number[] = [], ys: number[] = [];
  const add = ([x, y]: readonly number[]) => { xs.push(x); ys.push(y); };
  now.place.outline.forEach(add);
  now.place.audience.forEach((edge) => edge.line.forEach(add));
  now.crew.forEach((each) => add(each.at));
  now.place.extinguishers.forEach(add);
  if (now.place.fuel) add(now.place.fuel);
  for (const each of Object.values(now.formations)) Object.values(each.spots).forEach(add);
  if (!xs.length) return { x0: -5, x1: 5, y0: -5, y1: 8 };
  // The stage decides; what lies far behind it is at the border of the picture.
  const far = (values: number[], low: number, high: number) => values.filter((value) => value > low && value < high);
  const inside = now.place.outline.length ? now.place.outline : Object.values(now.formations).flatMap((each) => Object.values(each.spots).map((spot) => [spot[0], spot[1]]));
  const sx = inside.map((each) => each[0]), sy = inside.map((each) => each[1]);
  const [a, b, c, d] = [Math.min(...sx) - 5, Math.max(...sx) + 5, Math.min(...sy) - 7, Math.max(...sy) + 6];
  return { x0: Math.min(...sx, ...far(xs, a, b)) - 0.8, x1: Math.max(...sx, ...far(xs, a, b)) + 0.8, y0: Math.min(...sy, ...far(ys, c, d)) - 0.8, y1: Math.max(...sy, ...far(ys, c, d)) + 0.8 };
}

export function standingAt(now: View, beat: number): Standing | null {
  return [...now.standings].reverse().find((each) => each.walk <= beat + 1e-6) ?? now.standings[0] ?? null;
}

export function StagePlan() {
  const now = view.value, counts = tempo.value;
  const svg = useRef<SVGSVGElement>(null);
  const [, setTurn] = useState(0);
  const [drag, setDrag] = useState<{ who: string; at: [number, number] } | null>(null);
  const moved = useRef(new Map<string, [number, number]>()); // where spots are put that the view does not show yet
  const waiting = useRef<Promise<unknown>>(Promise.resolve());
  const under = useRef(0); // moves that are not answered yet
  if (fresh.value && !under.current) moved.current.clear();
  if (!now || !counts) return <p class="quiet">There is no stage to show yet.</p>;
  const beat = counts.beatAt(seconds.value);
  const standing = standingAt(now, beat);
  if (!standing) return <p class="quiet">The file says nothing about where anybody stands.</p>;
  const box = boxOf(now);
  const at = (x: number, y: number): [number, number] => [x - box.x0, box.y1 - y];
  const points = (list: readonly (readonly number[])[]) => list.map(([x, y]) => at(x, y).map((each) => each.toFixed(2)).join(",")).join(" ");
  const spots: [string, Spot][] = names.value.flatMap((name) => {
    const own = standing.spots[name];
    if (!own) return [];
    const place = drag?.who === name ? drag.at : (moved.current.get(`${standing.formation} ${name}`) ?? [own[0], own[1]]);
    return [[name, [place[0], place[1], own[2]] as Spot] as [string, Spot]];
  });
  const close = pairs(spots, now);
  const place = (event: PointerEvent): [number, number] => {
    const matrix = svg.current!.getScreenCTM()!.inverse();
    const own = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    return [round(own.x + box.x0), round(box.y1 - own.y)];
  };
  const set = (who: string, at: [number, number]) => {
    // One after the other: each begins where the one before has led.
    const key = `${standing.formation} ${who}`;
    moved.current.set(key, at);
    under.current += 1;
    setTurn((turn) => turn + 1);
    waiting.current = waiting.current.then(async () => {
      const last = moved.current.get(key) === at; // else it has been moved on meanwhile
      if (last && !(await operate({ do: "move-spot", formation: standing.formation, who, at }, `${who} stands at ${at[0]}, ${at[1]} in ${standing.formation}.`))) moved.current.delete(key);
      under.current -= 1;
      setTurn((turn) => turn + 1);
    });
  };
  return (
    <figure class="plan">
      <figcaption>
        <b>{standing.formation}</b>, from {standing.position}
        {now.formations[standing.formation]?.used.length > 1 && ` (danced in ${now.formations[standing.formation].used.length} times: all move with it)`}
      </figcaption>
      <svg
        ref={svg} viewBox={`0 0 ${(box.x1 - box.x0).toFixed(2)} ${(box.y1 - box.y0).toFixed(2)}`} role="group" aria-label={`The stage from above, ${standing.formation}; the audience is below`}
        onPointerMove={(event) => drag && setDrag({ ...drag, at: place(event) })}
        onPointerUp={() => {
          if (!drag) return;
          const own = standing.spots[drag.who];
          if (own && Math.hypot(own[0] - drag.at[0], own[1] - drag.at[1]) > 0.02) set(drag.who, drag.at);
          setDrag(null);
        }}
        onPointerCancel={() => setDrag(null)}
      >
        <polygon class="floor" points={points(now.place.outline)} />
        {now.place.holes.map((hole, k) => <polygon key={k} class="hole" points={points(hole)} />)}
        {now.place.audience.map((edge) => <polyline key={edge.name} class="audience" points={points(edge.line)} />)}
        {now.place.scenery.map((thing) => <polygon key={thing.name} class="thing" points={points(thing.outline)} ><title>{thing.name}</title></polygon>)}
        {now.place.extinguishers.map((each, k) => <Mark key={k} at={at(...each)} sign="E" words="extinguisher" />)}
        {now.place.fuel && <Mark at={at(...now.place.fuel)} sign="F" words="fuel point" />}
        {now.crew.map((each) => <Mark key={each.name} at={at(...each.at)} sign={each.name[0]} words={`${each.name}, ${each.duty}`} />)}
        {close.map(([a, b, metres]) => {
          const [x1, y1] = at(a[0], a[1]), [x2, y2] = at(b[0], b[1]);
          return <g key={`${x1} ${y1} ${x2} ${y2}`} class="close"><line x1={x1} y1={y1} x2={x2} y2={y2} /><text x={(x1 + x2) / 2} y={(y1 + y2) / 2 - 0.15}>{metres.toFixed(2)} m</text></g>;
        })}
        {spots.map(([name, [x, y, facing]]) => {
          const [px, py] = at(x, y), reach = now.reach[name] ?? 1;
          const turn = (facing * Math.PI) / 180;
          return (
            <g key={name} class={drag?.who === name ? "spot dragged" : "spot"}>
              <circle class="reach" cx={px} cy={py} r={reach} />
              <line class="facing" x1={px} y1={py} x2={px + 0.55 * Math.sin(turn)} y2={py + 0.55 * Math.cos(turn)} />
              <circle
                class="body" cx={px} cy={py} r={0.34} tabindex={readOnly.value ? undefined : 0} role={readOnly.value ? "img" : "button"} aria-label={readOnly.value ? `${name}, ${x.toFixed(2)} across, ${y.toFixed(2)} upstage` : `${name}, ${x.toFixed(2)} across, ${y.toFixed(2)} upstage; arrow keys move by 5 cm, with Shift by 50 cm`}
                onPointerDown={(event) => { if (readOnly.value) return; event.preventDefault(); svg.current!.setPointerCapture(event.pointerId); setDrag({ who: name, at: [x, y] }); }}
                onKeyDown={(event) => {
                  if (readOnly.value) return;
                  const step = event.shiftKey ? COARSE : FINE;
                  const by: Record<string, [number, number]> = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
                  if (!by[event.key]) return;
                  event.preventDefault();
                  set(name, [round(x + by[event.key][0]), round(y + by[event.key][1])]);
                }}
              />
              <text x={px} y={py + 0.95}>{name}</text>
            </g>
          );
        })}
      </svg>
      <p class="quiet">{drag ? `${drag.who}: ${drag.at[0].toFixed(2)} m across, ${drag.at[1].toFixed(2)} m upstage. Distances are between spots, as drawn; the checks look at every moment when you let go.` : "Thin circles: how far body, prop and flame reach. The audience is below."}</p>
    </figure>
  );
}

const round = (metres: number) => Math.round(Math.round(metres / MARKED) * MARKED * 100) / 100;

/** Spots whose reaches overlap, and how far apart they are [m]. */
function pairs(spots: [string, Spot][], now: View): [Spot, Spot, number][] {
  return spots.flatMap(([one, a], k) =>
    spots.slice(k + 1).flatMap(([other, b]): [Spot, Spot, number][] => {
      const apart = Math.hypot(a[0] - b[0], a[1] - b[1]);
      return apart < (now.reach[one] ?? 1) + (now.reach[other] ?? 1) ? [[a, b, apart]] : [];
    }),
  );
}

function Mark({ at: [x, y], sign, words }: { at: [number, number]; sign: string; words: string }) {
  return <g class="mark"><title>{words}</title><rect x={x - 0.28} y={y - 0.28} width={0.56} height={0.56} /><text x={x} y={y + 0.16}>{sign}</text></g>;
}
