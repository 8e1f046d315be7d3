// A walk and the way of each who walks it: on the plan with its points and moments, and beside it as a form.
import { signal } from "@preact/signals";
import type { Operation, View, Walk } from "./api";
import { operate, operateFrom, shown, whenShown } from "./doing";
import { said as written } from "./fields";
import { Handle, dragged, putAt, round, whereNow, type Plan, type Point } from "./handle";
import { nearest, stretchAt } from "./plan";
import { moment, together } from "./rows";
import { beside, names, seek, state, tempo, view } from "./store";
import { useTyping } from "./typing";

/** The walk that is looked at, by its number in the file; and whose way. */
export const chosenWalk = signal<number | null>(null);
const whose = signal<string | null>(null);

type Row = Record<string, any>;

const stagingRows = (): Row[] => state.value?.values?.staging ?? [];
const ownWalks = (now: View, number: number) => now.walks.filter((each) => each.path?.[0] === "staging" && each.path[1] === number);

/** Opens a walk on the stage plan, at the moment at which it begins. */
export function showWalk(number: number): void {
  const standing = view.value?.standings.find((each) => each.path[0] === "staging" && each.path[1] === number);
  chosenWalk.value = number;
  beside("stage");
  if (standing && tempo.value) seek(Math.max(0, tempo.value.secondsAt(standing.walk)));
}

/** The points through which somebody walks, as the file has them: the view may be older. */
const pointsOf = (number: number, who: string, file = state.value?.values): Point[] => written(file?.staging?.[number]?.via?.[who] ?? []);

const samePlace = (a: readonly unknown[], b: readonly unknown[]) => Number(a[0]) === Number(b[0]) && Number(a[1]) === Number(b[1]);

function setWay(number: number, who: string, points: Point[]): Operation {
  return { do: "set-way", number, who, points };
}

// --- on the plan ---

export function WaysOnPlan({ plan }: { plan: Plan }) {
  const now = view.value!, number = chosenWalk.value;
  if (number === null) return null;
  const walks = ownWalks(now, number);
  return <g class="ways">{walks.map((walk) => <Way key={walk.who} walk={walk} number={number} plan={plan} all={walks} />)}</g>;
}

function Way({ walk, number, plan, all }: { walk: Walk; number: number; plan: Plan; all: Walk[] }) {
  const now = view.value!;
  const on = whose.value === walk.who;
  const start = walk.points[0], end = walk.points[walk.points.length - 1];
  const key = (k: number) => `way ${number} ${walk.who} ${k}`;
  const via = walk.via.map((each, k) => whereNow(key(k), each));
  const shifted = via.some(([x, y], k) => x !== walk.via[k][0] || y !== walk.via[k][1]);
  const line = (points: readonly Point[]) => points.map((each) => plan.at(...each).map((value) => value.toFixed(2)).join(",")).join(" ");
  const path: Point[] = [start, ...via, end];
  const put = (k: number, to: Point) =>
    putAt(key(k), to, () => {
      const points = pointsOf(number, walk.who);
      if (k >= points.length) return null;
      points[k] = to;
      return setWay(number, walk.who, points);
    }, `${walk.who} walks through ${to[0]}, ${to[1]}.`);
  const remove = (k: number) => {
    const shown = via[k], all = via.length;
    void operateFrom((file) => {
      // The point that is seen: a key that is pressed twice does not take the next one.
      const points = pointsOf(number, walk.who, file), found = points.findIndex((each) => samePlace(each, shown));
      const gone = found < 0 && points.length === all ? k : found;
      return gone < 0 ? null : setWay(number, walk.who, points.filter((_, other) => other !== gone));
    }, `A point is taken out of ${walk.who}’s way.`);
  };
  const held = via.findIndex((_, k) => dragged.value?.key === key(k));
  return (
    <g class={on ? "way on" : "way"}>
      <polyline class="way-line" points={line(walk.points)} />
      {shifted && <polyline class="way-new" points={line(path)} />}
      <polyline
        class="way-hold" points={line(shifted ? path : walk.points)}
        onPointerDown={(event) => {
          // A new point where the way is taken hold of: dragged at once.
          event.preventDefault();
          whose.value = walk.who;
          const at = plan.place(event);
          const k = stretchAt(path, at);
          plan.hold(event.pointerId);
          dragged.value = { key: `new point ${walk.who}`, words: `a new point of ${walk.who}’s way`, at, from: [Infinity, Infinity], on: state.value!.revision, drop: (to) => void addPoint(number, walk.who, k, to) };
        }}
      ><title>{walk.who}: {walk.length.toFixed(1)} m; take hold of the way to lead it through another point</title></polyline>
      <circle class="way-start" cx={plan.at(...start)[0]} cy={plan.at(...start)[1]} r={0.24} />
      {momentsOf(walk).map(({ count, at }) => {
        const [x, y] = plan.at(...at);
        return <g key={count} class="way-moment"><circle cx={x} cy={y} r={0.07} />{on && count % 4 === 1 && <text x={x + 0.14} y={y - 0.12}>{count}</text>}</g>;
      })}
      {dragged.value?.key === `new point ${walk.who}` && <NewPoint plan={plan} path={path} at={dragged.value.at} />}
      {held >= 0 && <Near plan={plan} at={via[held]} walk={walk} others={othersAt(now, all, walk, walk.via[held])} />}
      {via.map((each, k) => (
        <Handle key={k} id={key(k)} plan={plan} at={each} shape="diamond" size={0.2} class="via" words={`Point ${k + 1} of ${via.length} of ${walk.who}’s way`} put={(to) => { whose.value = walk.who; put(k, to); }} remove={() => remove(k)} />
      ))}
    </g>
  );
}

async function addPoint(number: number, who: string, place: number, at: Point): Promise<void> {
  const keyboard = document.activeElement;
  let points: Point[] = [];
  const done = await operateFrom((file) => {
    points = pointsOf(number, who, file);
    if (points.some((each) => samePlace(each, at))) return null; // asked for twice at once, it is one
    points.splice(place, 0, at);
    return setWay(number, who, points);
  }, `${who} walks through ${at[0]}, ${at[1]}.`);
  if (!done) return;
  await shown();
  await whenShown(() => focusPoint(`Point ${place + 1} of ${points.length} of ${who}’s way`, keyboard));
}

/** Takes the keyboard to a point, unless somebody has taken it elsewhere meanwhile. */
function focusPoint(words: string, from: Element | null): void {
  if (document.activeElement !== from && document.activeElement !== document.body) return;
  [...document.querySelectorAll<SVGElement>(".via.handle")].find((each) => each.getAttribute("aria-label")?.startsWith(words))?.focus();
}

function NewPoint({ plan, path, at }: { plan: Plan; path: Point[]; at: Point }) {
  const k = stretchAt(path, at);
  const [x, y] = plan.at(...at);
  const line = [path[k], at, path[k + 1]].map((each) => plan.at(...each).map((value) => value.toFixed(2)).join(",")).join(" ");
  return <g><polyline class="way-new" points={line} /><circle class="via handle" cx={x} cy={y} r={0.2} /></g>;
}

/** How near the others are while somebody passes a point of their way, and how far they reach. */
function Near({ plan, at, walk, others }: { plan: Plan; at: Point; walk: Walk; others: Point[] }) {
  const [cx, cy] = plan.at(...at);
  return (
    <g class="close">
      <circle class="reach" cx={cx} cy={cy} r={view.value!.reach[walk.who] ?? 1} />
      <Lines plan={plan} lines={nearest(at, others, 2)} />
    </g>
  );
}

export function Lines({ plan, lines }: { plan: Plan; lines: [Point, Point, number][] }) {
  return (
    <>
      {lines.map(([a, b, metres]) => {
        const [x1, y1] = plan.at(...a), [x2, y2] = plan.at(...b);
        return <g key={`${x1} ${y1} ${x2} ${y2}`} class="close"><line x1={x1} y1={y1} x2={x2} y2={y2} /><text x={(x1 + x2) / 2} y={(y1 + y2) / 2 - 0.15}>{metres.toFixed(2)} m</text></g>;
      })}
    </>
  );
}

/** Where all others are when somebody is nearest to a point of their way, as drawn. */
function othersAt(now: View, all: Walk[], walk: Walk, point: Point): Point[] {
  const far = walk.points.map(([x, y]) => Math.hypot(x - point[0], y - point[1]));
  const k = far.indexOf(Math.min(...far));
  const standing = now.standings.find((each) => each.path[0] === "staging" && each.path[1] === chosenWalk.value);
  return names.value.filter((name) => name !== walk.who).flatMap((name): Point[] => {
    const own = all.find((each) => each.who === name), spot = standing?.spots[name];
    return own ? [own.points[k]] : spot ? [[spot[0], spot[1]]] : [];
  });
}

/** Where somebody is on each count of a walk. */
function momentsOf(walk: Walk): { count: number; at: Point }[] {
  const beats = walk.end - walk.start, last = walk.points.length - 1;
  return [...Array(Math.max(0, Math.ceil(beats - 1e-6) - 1)).keys()].map((k) => {
    const x = ((k + 1) / beats) * last, i = Math.min(Math.floor(x), last - 1);
    const [a, b] = [walk.points[i], walk.points[i + 1]];
    return { count: k + 2, at: [a[0] + (x - i) * (b[0] - a[0]), a[1] + (x - i) * (b[1] - a[1])] };
  });
}

// --- beside it ---

export function WayForm() {
  const now = view.value!, rows = stagingRows();
  const number = chosenWalk.value !== null && chosenWalk.value < rows.length ? chosenWalk.value : null;
  const walkable = rows.map((row, k) => ({ row, k })).slice(1);
  return (
    <fieldset class="walk-form"><legend>Walks</legend>
      {!walkable.length && <p class="quiet">Nobody walks yet: take another formation from a moment on, below.</p>}
      {walkable.length > 0 && (
        <label>Look at <select value={number === null ? "" : String(number)} onChange={(event) => { const value = event.currentTarget.value; if (value === "") chosenWalk.value = null; else showWalk(Number(value)); }}>
          <option value="">no walk</option>
          {walkable.map(({ row, k }) => <option key={k} value={String(k)}>to {row.formation}, from {row.from}</option>)}
        </select></label>
      )}
      {number !== null && number > 0 && <OneWalk key={number} number={number} row={rows[number]} now={now} />}
    </fieldset>
  );
}

function OneWalk({ number, row, now }: { number: number; row: Row; now: View }) {
  const walks = ownWalks(now, number);
  const change = (values: Row, said: string) => operate({ do: "change-walk", number, values }, said);
  const stays = names.value.filter((name) => !walks.some((each) => each.who === name));
  return (
    <>
      <Kept label="From" value={String(row.from)} put={(value) => change({ from: value }, `The walk begins at ${value}.`)} />
      <Kept label="in beats" value={String(row.beats ?? "")} put={(value) => change({ beats: Number(value) || value }, `The walk takes ${value} beats.`)} />
      <ul class="way-list">
        {walks.map((walk) => {
          const points = walk.via.length;
          return (
            <li key={walk.who} class={whose.value === walk.who ? "on" : ""}>
              <span><b>{walk.who}</b> {walk.length.toFixed(1)} m, {points ? `through ${points} ${points === 1 ? "point" : "points"}` : "straight"}, {(walk.length / Math.max(walk.end_s - walk.start_s, 1e-6)).toFixed(1)} m/s in the mean</span>
              <button type="button" class="small" onClick={() => { whose.value = walk.who; void addPoint(number, walk.who, ...bowed(walk)); }}>Add a point<span class="unseen"> to {walk.who}’s way</span></button>
              <button type="button" class="small" disabled={!points} onClick={() => void operate(setWay(number, walk.who, []), `${walk.who} walks straight.`)}>Straight<span class="unseen"> for {walk.who}</span></button>
            </li>
          );
        })}
      </ul>
      {stays.length > 0 && <p class="quiet">{together(stays, names.value)} {stays.length > 1 || (stays.length === names.value.length && stays.length > 1) ? "stay" : "stays"} where {stays.length > 1 ? "they are" : "the walk begins"}.</p>}
      <p class="quiet">On the plan: small dots are counts; take hold of a way to lead it through another point; a way through points is a curve.</p>
      <p class="row"><button type="button" onClick={() => void operate({ do: "delete-walk", number }, "The walk is deleted.").then((done) => done && (chosenWalk.value = null))}>Delete this walk</button></p>
    </>
  );
}

/** A point aside of the longest stretch of a way, so that it can be seen and moved. */
function bowed(walk: Walk): [number, Point] {
  const path: Point[] = [walk.points[0], ...walk.via, walk.points[walk.points.length - 1]];
  const long = path.slice(1).map((each, k) => Math.hypot(each[0] - path[k][0], each[1] - path[k][1]));
  const k = long.indexOf(Math.max(...long)), [a, b] = [path[k], path[k + 1]];
  const aside = Math.min(0.5, long[k] / 4) / (long[k] || 1);
  return [k, [round((a[0] + b[0]) / 2 - aside * (b[1] - a[1])), round((a[1] + b[1]) / 2 + aside * (b[0] - a[0]))]];
}

/** A field that is written when it is left; put back where that is refused. */
export function Kept({ label, value, put }: { label: string; value: string; put: (value: string) => Promise<boolean> }) {
  const { now, type, leave, box } = useTyping<HTMLInputElement>([value], ([text]) => put(text.trim()));
  return (
    <label class="kept-field">{label} <input ref={box} type="text" value={now[0]} onInput={(event) => type([event.currentTarget.value])} onChange={() => void (now[0].trim() && leave())} /></label>
  );
}

/** The moment at which the song is, on a whole count. */
export function momentNow(seconds: number): { beat: number; words: string } {
  const beat = Math.max(0, Math.round(tempo.value!.beatAt(seconds)));
  return { beat, words: moment(tempo.value!, beat) };
}
