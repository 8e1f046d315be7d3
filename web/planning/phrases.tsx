// Phrases: what is danced more than once gets a name, is danced again by it, renamed, and written out.
import { useState } from "preact/hooks";
import type { Block, Path } from "./api";
import { operate } from "./doing";
import { CLOSE, moment } from "./rows";
import { placeFor } from "./sheet";
import { names, state, tempo, view } from "./store";

type Row = Record<string, any>;

const timeline = (): Row[] => state.value?.values?.timeline ?? [];
const listed = (value: unknown): string[] => (value === undefined || value === null ? [] : [value].flat().map(String));
const rowAt = (path: Path): Row | undefined => path.reduce<any>((value, key) => value?.[key], state.value?.values);

/** Beats from where an entry begins for the first of its performers to where it ends for them. */
function spanOf(number: number): [number, number] | null {
  const own = (view.value?.blocks ?? []).filter((each) => each.entry?.[0] === "timeline" && each.entry[1] === number && each.path !== null);
  if (!own.length) return null;
  const first = own.reduce((least, each) => (each.start < least.start ? each : least));
  const theirs = own.filter((each) => each.who === first.who);
  return [Math.min(...theirs.map((each) => each.start)), Math.max(...theirs.map((each) => each.end))];
}

/** Entries from one on that can be danced as a phrase: neighbours of the same performers, without a hole. */
function neighbours(number: number): number[] {
  const rows = timeline(), first = rows[number], out = [number];
  const alike = (row: Row) => ["who", "canon", "mirror"].every((key) => JSON.stringify(row[key]) === JSON.stringify(first[key]));
  for (let k = number + 1; k < rows.length && alike(rows[k]) && !("accent" in rows[k]); k++) {
    const before = spanOf(k - 1), own = spanOf(k);
    if (!before || !own || Math.abs(own[0] - before[1]) > CLOSE) break;
    out.push(k);
  }
  return out;
}

const titled = (row: Row): string => row.phrase ?? row.pattern ?? (row.link ? "a link" : row.rest ? "a rest" : row.hold ? "a stop" : "two hands");

/** A move of the timeline, with what follows it, is given a name. */
export function NameIt({ entry }: { entry: Path }) {
  const number = Number(entry[1]), row = timeline()[number];
  const [name, setName] = useState(""), [last, setLast] = useState(number);
  if (entry[0] !== "timeline" || !row || "phrase" in row || "accent" in row || !spanOf(number)) return null;
  const run = neighbours(number), chosen = run.filter((k) => k <= last);
  const put = async () => {
    const beats = chosen.map((k) => (timeline()[k].until === undefined ? null : Math.round((spanOf(k)![1] - spanOf(k)![0]) * 1e6) / 1e6));
    if (await operate({ do: "name-phrase", at: chosen.map((k) => ["timeline", k]), name: name.trim(), follow_on: true, beats }, `The phrase ${name.trim()} can be danced again.`)) setName("");
  };
  return (
    <details class="inner"><summary>Make a phrase of it, to dance it again</summary>
      <form class="row" onSubmit={(event) => { event.preventDefault(); void put(); }}>
        <label>Its name <input type="text" value={name} placeholder="wheel" onInput={(event) => setName(event.currentTarget.value)} /></label>
        {run.length > 1 && (
          <label>Up to <select value={Math.max(...chosen)} onChange={(event) => setLast(Number(event.currentTarget.value))}>
            {run.map((k) => <option key={k} value={k}>{k === number ? "this move alone" : `${titled(timeline()[k])}, until ${moment(tempo.value!, spanOf(k)![1])}`}</option>)}
          </select></label>
        )}
        <button type="submit" disabled={!name.trim()}>Name it</button>
      </form>
    </details>
  );
}

/** The phrase that an entry or step dances, renamed or written out. */
export function OfPhrase({ block }: { block: Block }) {
  const phrase = String(block.path![1]);
  const [name, setName] = useState(phrase);
  const entry = block.entry!, own = rowAt(entry);
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); void operate({ do: "rename-phrase", old: phrase, new: name.trim() }, `Now called ${name.trim()}.`); }}>
      <label>Its name <input type="text" value={name} onInput={(event) => setName(event.currentTarget.value)} /></label>
      <button type="submit" disabled={!name.trim() || name.trim() === phrase}>Rename everywhere</button>
      {own && "phrase" in own && <button type="button" onClick={() => void operate({ do: "write-out-phrase", at: entry }, `${own.phrase} is written out.`)}>Write {own.phrase} out here</button>}
    </form>
  );
}

/** A phrase danced once more, where nothing is danced; one that nothing dances can be deleted. */
export function PutPhrase({ beat, who }: { beat: number; who: string[] }) {
  const known = Object.keys(state.value?.values?.phrases ?? {});
  const [chosen, setChosen] = useState("");
  if (!known.length || !tempo.value) return null;
  const name = known.includes(chosen) ? chosen : known[0];
  const put = () => operate({ do: "put-block", into: ["timeline"], block: { who: who.length === names.value.length && who.length > 1 ? "all" : who.length === 1 ? who[0] : who, from: moment(tempo.value!, beat), phrase: name }, before: placeFor(beat) }, `Put: ${name}.`);
  return (
    <p class="row">
      <label>A phrase <select value={name} onChange={(event) => setChosen(event.currentTarget.value)}>{known.map((each) => <option key={each}>{each}</option>)}</select></label>
      <button type="button" disabled={!who.length} onClick={() => void put()}>Put the phrase here</button>
      {!usesOf(name) && <button type="button" onClick={() => void operate({ do: "delete-phrase", name }, `${name} is deleted.`)}>Delete it: nothing dances it</button>}
    </p>
  );
}

function usesOf(name: string): number {
  const steps = Object.values<any>(state.value?.values?.phrases ?? {}).flatMap(listedRows);
  return [...timeline(), ...steps].filter((row) => listed(row?.phrase)[0] === name).length;
}

const listedRows = (value: any): Row[] => (Array.isArray(value) ? value : []);
