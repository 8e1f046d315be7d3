// The stage from above: who stands where at this moment of the song. What stands there is dragged, or moved by arrow keys.
import { useRef } from "preact/hooks";
import type { Spot, Standing } from "./api";
import { onPlan } from "./compared";
import { EntranceForm, waitElsewhere } from "./entrances";
import { FormationForm } from "./formations";
import { Handle, dragTo, dragged, drop, putAt, round, whereNow, type Plan, type Point } from "./handle";
import { boxOf, nearest, pairs, standingAt } from "./plan";
import { names, readOnly, seconds, tempo, view } from "./store";
import { Lines, WayForm, WaysOnPlan } from "./ways";

export function StagePlan() {
  const now = view.value, counts = tempo.value;
  const svg = useRef<SVGSVGElement>(null);
  if (!now || !counts) return <p class="quiet">There is no stage to show yet.</p>;
  const standing = standingAt(now, counts.beatAt(seconds.value));
  if (!standing) return <p class="quiet">The file says nothing about where anybody stands.</p>;
  const box = boxOf(now);
  const plan: Plan = {
    at: (x, y) => [x - box.x0, box.y1 - y],
    place: (event) => {
      const own = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.current!.getScreenCTM()!.inverse());
      return [round(own.x + box.x0), round(box.y1 - own.y)];
    },
    hold: (pointer) => svg.current!.setPointerCapture(pointer),
  };
  const points = (list: readonly (readonly number[])[]) => list.map(([x, y]) => plan.at(x, y).map((each) => each.toFixed(2)).join(",")).join(" ");
  const spots: [string, Spot][] = names.value.flatMap((name) => {
    const own = standing.spots[name];
    return own ? [[name, [...whereNow(spotKey(standing, name), [own[0], own[1]]), own[2]] as Spot] as [string, Spot]] : [];
  });
  const held = dragged.value;
  const uses = now.formations[standing.formation]?.used.length ?? 0;
  return (
    <>
      <figure class="plan">
        <figcaption>
          <b>{standing.formation}</b>, from {standing.position}{standing.waiting.length > 0 && `; in the wings: ${standing.waiting.join(", ")}`}
          {uses > 1 && ` (used ${uses} times: a change here changes it each time)`}
        </figcaption>
        <svg
          ref={svg} viewBox={`0 0 ${(box.x1 - box.x0).toFixed(2)} ${(box.y1 - box.y0).toFixed(2)}`} role="group" aria-label={`The stage from above, ${standing.formation}; the audience is below`}
          onPointerMove={(event) => held && dragTo(plan.place(event))} onPointerUp={drop} onPointerCancel={() => (dragged.value = null)}
        >
          <polygon class="floor" points={points(now.place.outline)} />
          {now.place.holes.map((hole, k) => <polygon key={k} class="hole" points={points(hole)} />)}
          {now.place.audience.map((edge) => <polyline key={edge.name} class="audience" points={points(edge.line)} />)}
          {now.place.scenery.map((thing) => <polygon key={thing.name} class="thing" points={points(thing.outline)} ><title>{thing.name}</title></polygon>)}
          <Posts plan={plan} spots={spots.map(([, [x, y]]): Point => [x, y])} />
          <Lines plan={plan} lines={pairs(spots, now)} />
          <WaysOnPlan plan={plan} />
          {spots.map(([name, spot]) => <OneSpot key={name} name={name} spot={spot} standing={standing} plan={plan} />)}
          <MovesOnPlan plan={plan} />
        </svg>
        <p class="quiet">{held ? `${held.words}: ${held.at[0].toFixed(2)} m across, ${held.at[1].toFixed(2)} m upstage. Distances are as drawn; the checks look at every moment when you let go.` : "Thin circles: how far body, prop and flame reach. The audience is below. Open squares: crew by their first letter; full ones: E an extinguisher, F the fuel."}</p>
      </figure>
      {!readOnly.value && <WayForm />}
      {!readOnly.value && <EntranceForm />}
      {!readOnly.value && <FormationForm standing={standing} />}
    </>
  );
}

const spotKey = (standing: Standing, who: string) => `spot ${standing.formation} ${who}`;

function OneSpot({ name, spot: [x, y, facing], standing, plan }: { name: string; spot: Spot; standing: Standing; plan: Plan }) {
  const [px, py] = plan.at(x, y), turn = (facing * Math.PI) / 180;
  const waits = standing.waiting.includes(name);
  const put = (at: Point) => waits
    ? putAt(spotKey(standing, name), at, () => waitElsewhere(name, standing, at), `${name} waits in the wings at ${at[0]}, ${at[1]}.`)
    : putAt(spotKey(standing, name), at, () => ({ do: "move-spot", formation: standing.formation, who: name, at }), `${name} stands at ${at[0]}, ${at[1]} in ${standing.formation}.`);
  return (
    <g class={waits ? "spot waits" : "spot"}>
      <circle class="reach" cx={px} cy={py} r={view.value!.reach[name] ?? 1} />
      <line class="facing" x1={px} y1={py} x2={px + 0.55 * Math.sin(turn)} y2={py + 0.55 * Math.cos(turn)} />
      <Handle id={spotKey(standing, name)} plan={plan} at={[x, y]} words={waits ? `${name}, in the wings` : name} put={put} shape="circle" size={0.34} class="body" />
      <text x={px} y={py + 0.95}>{name}</text>
    </g>
  );
}

/** Crew, extinguishers and the fuel; how near performers are to what is dragged. */
function Posts({ plan, spots }: { plan: Plan; spots: Point[] }) {
  const now = view.value!;
  return (
    <>
      {now.place.extinguishers.map((each, k) => (
        <Post key={`e${k}`} id={`extinguisher ${k}`} plan={plan} spots={spots} given={each} thing sign="E" words={`Extinguisher ${k + 1}`} said="An extinguisher" operation={(at) => ({ do: "change-item", into: "extinguishers", number: k, values: { at } })} />
      ))}
      {now.place.fuel && <Post id="fuel" plan={plan} spots={spots} given={now.place.fuel} thing sign="F" words="Fuel" said="The fuel" operation={(at) => ({ do: "change-heading", heading: "venue", values: { fuel_station: at } })} />}
      {now.crew.map((each) => (
        <Post key={each.name} id={`crew ${each.name}`} plan={plan} spots={spots} given={each.at} sign={[...each.name][0]} words={`${each.name}, ${each.duty}`} said={each.name} operation={(at) => ({ do: "change-person", group: "crew", name: each.name, values: { post: at } })} />
      ))}
    </>
  );
}

function Post({ id, plan, spots, given, sign, words, said, operation, thing = false }: { id: string; plan: Plan; spots: Point[]; given: Point; sign: string; words: string; said: string; thing?: boolean; operation: (at: Point) => { do: string } }) {
  const at = whereNow(id, given);
  const [x, y] = plan.at(...at);
  return (
    <g class={thing ? "mark thing-mark" : "mark"}>
      {dragged.value?.key === id && <Lines plan={plan} lines={nearest(at, spots, 2)} />}
      <Handle id={id} plan={plan} at={at} words={words} put={(to) => putAt(id, to, () => operation(to), `${said} is at ${to[0]}, ${to[1]}.`)} shape="square" size={0.28} class="post">
        <title>{words}</title>
        <text x={x} y={y + 0.16}>{sign}</text>
      </Handle>
    </g>
  );
}

/** What has moved between two texts that are compared: where it was, and where it is. */
function MovesOnPlan({ plan }: { plan: Plan }) {
  return (
    <g class="moves" aria-hidden="true">
      {onPlan.value.map((each, k) => {
        const [x1, y1] = plan.at(...each.before), [x2, y2] = plan.at(...each.after);
        const far = Math.hypot(each.after[0] - each.before[0], each.after[1] - each.before[1]);
        return <g key={k}><circle cx={x1} cy={y1} r={0.34} /><line x1={x1} y1={y1} x2={x2} y2={y2} /><text x={x1} y={y1 - 0.45}>was here, {far.toFixed(2)} m</text></g>;
      })}
    </g>
  );
}

