// Formations by hand: a new one, another name, taken from a moment on, or given up.
import { useState } from "preact/hooks";
import type { Operation, Spot, Standing } from "./api";
import { operate } from "./doing";
import { seconds, state, tempo, view } from "./store";
import { Kept, chosenWalk, momentNow } from "./ways";

const SHAPES = ["line", "wedge", "diamond", "circle", "box", "stagger", "face to face", "back to back"];
const COPY = "as they stand now";
const WALK = 8; // beats that a walk is given at first

export function FormationForm({ standing }: { standing: Standing }) {
  const now = view.value!;
  const record = now.formations[standing.formation];
  const uses = ((state.value?.values?.staging ?? []) as Record<string, unknown>[]).filter((row) => row.formation === standing.formation).length;
  return (
    <>
      <Take standing={standing} />
      <fieldset><legend>The formation {standing.formation}</legend>
        {record && <Kept key={standing.formation} label="Its name" value={standing.formation} put={(name) => operate({ do: "rename-formation", old: standing.formation, new: name }, `Now called ${name}.`)} />}
        {record?.shape && (
          <p>It is a {record.shape}: nobody has a spot of their own. <button type="button" class="small" onClick={() => void operate({ do: "set-formation", name: standing.formation, formation: { spots: written(standing.spots) } }, "Everybody has a spot of their own.")}>Give everybody their own spot</button></p>
        )}
        <p class="quiet">{uses === 1 ? "It is taken once." : `It is taken ${uses} times: all change with it.`}</p>
      </fieldset>
      <Unused />
    </>
  );
}

function written(spots: Record<string, Spot>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(spots).map(([who, [x, y, facing]]) => [who, { at: [rounded(x), rounded(y)], ...(facing ? { facing: rounded(facing) } : {}) }]));
}

const rounded = (value: number) => Math.round(value * 100) / 100;

/** A formation taken from the moment at which the song is: one that there is, or a new one. */
function Take({ standing }: { standing: Standing }) {
  const all = Object.keys(view.value!.formations);
  const [which, setWhich] = useState("");
  const [name, setName] = useState("");
  const [kind, setKind] = useState(COPY);
  const [beats, setBeats] = useState(WALK);
  const at = momentNow(seconds.value);
  const rows = (state.value?.values?.staging ?? []) as Record<string, unknown>[];
  const later = view.value!.standings.find((each) => each.path[0] === "staging" && each.walk > at.beat + 1e-6);
  const before = later ? Number(later.path[1]) : null;
  const making = which === "";
  const taken = all.includes(name.trim());
  const take = async () => {
    const made: Operation[] = making ? [{ do: "set-formation", name: name.trim(), formation: kind === COPY ? { spots: written(standing.spots) } : shaped(kind, standing) }] : [];
    const first = !rows.length;
    const put: Operation = { do: "put-walk", formation: making ? name.trim() : which, start: at.words, ...(first ? {} : { beats }), before };
    if (await operate([...made, put], `${making ? name.trim() : which} is taken from ${at.words}.`)) {
      setName("");
      chosenWalk.value = first ? null : (before ?? rows.length);
    }
  };
  return (
    <fieldset class="take"><legend>Take a formation from {at.words} on</legend>
      <label>Which <select value={which} onChange={(event) => setWhich(event.currentTarget.value)}>
        <option value="">a new one</option>
        {all.map((each) => <option key={each} value={each}>{each}</option>)}
      </select></label>
      {making && (
        <>
          <label>Its name <input type="text" value={name} placeholder="gate" onInput={(event) => setName(event.currentTarget.value)} /></label>
          <label>How <select value={kind} onChange={(event) => setKind(event.currentTarget.value)}><option>{COPY}</option>{SHAPES.map((each) => <option key={each}>{each}</option>)}</select></label>
        </>
      )}
      {rows.length > 0 && <label class="stepper">They walk for <input type="number" min={1} step={1} value={beats} onInput={(event) => { const now = Number(event.currentTarget.value); if (now >= 1) setBeats(now); }} /> beats</label>}
      {making && taken && <p class="quiet">There is a formation {name.trim()} already: choose it above, or another name.</p>}
      <p class="row"><button type="button" class="main" disabled={making && (!name.trim() || taken)} onClick={() => void take()}>Take it from {at.words}</button></p>
    </fieldset>
  );
}

/** A shape around the middle of where all stand now, as wide as there is between them. */
function shaped(shape: string, standing: Standing): Record<string, unknown> {
  const spots = Object.values(standing.spots);
  const middle = (k: 0 | 1) => rounded(spots.reduce((sum, each) => sum + each[k], 0) / Math.max(1, spots.length));
  const gaps = spots.flatMap((a, k) => spots.slice(k + 1).map((b) => Math.hypot(a[0] - b[0], a[1] - b[1])));
  return { shape, centre: [middle(0), middle(1)], spacing: `${gaps.length ? Math.max(2, Math.round(Math.min(...gaps) * 10) / 10) : 3} m` };
}

/** Formations that are never taken: they can go. */
function Unused() {
  const rows = (state.value?.values?.staging ?? []) as Record<string, unknown>[];
  const unused = Object.keys((state.value?.values?.formations ?? {}) as Record<string, unknown>).filter((name) => !rows.some((row) => row.formation === name));
  if (!unused.length || !tempo.value) return null;
  return (
    <fieldset><legend>Never taken</legend>
      {unused.map((name) => <p key={name}>{name} <button type="button" class="small" onClick={() => void operate({ do: "delete-formation", name }, `${name} is deleted.`)}>Delete<span class="unseen"> the formation {name}</span></button></p>)}
    </fieldset>
  );
}
