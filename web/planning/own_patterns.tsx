// The show's own patterns, and the files of patterns that it uses: forms made from the tables of motions that the server sends.
import { useState } from "preact/hooks";
import type { Block, Path } from "./api";
import { operate, operateOn } from "./doing";
import { Fields, NewRecord, schemaNow, worded, type Json } from "./fields";
import { fault, names, opened, pick, state, tempo, view, walking } from "./store";

type Way = "law" | "hands" | "stations";
const WAYS: [Way, string][] = [["law", "one motion for both hands"], ["hands", "a motion for each hand"], ["stations", "station by station"]];
const WORDS = { set: "fixed", defaults: "open", left: "left hand", right: "right hand", cycle: "beats to a cycle", room: "room to move", needs: "to learn first", why: "what is hard", family: "kind", props: "for" };

export function OwnPatterns({ values }: { values: Json }) {
  const own = Object.entries<Json>(values.patterns ?? {});
  return (
    <>
      <p class="quiet">A move that the vocabulary lacks, written down once: then it is listed with all others where you put a move. One pattern, drawn and tried on a body: <code>sequencer patterns NAME --from</code> this show.</p>
      {own.map(([name, record]) => <OwnPattern key={name} name={name} record={record} />)}
      <NewPattern />
      <PatternFiles files={listed(values.pattern_files)} />
    </>
  );
}

function OwnPattern({ name, record }: { name: string; record: Json }) {
  const said = record && typeof record === "object" ? record : {};
  return (
    <details class="inner"><summary>{name}</summary>
      <Rename name={name} />
      <Fields of={formOf(wayOf(said), said)} values={said} words={WORDS} path={`pattern ${name}`} must={schemaNow().pattern_form.ways[wayOf(said)].required}
        put={(key, value) => operateOn((file) => file.patterns?.[name]?.[key], value, (now) => ({ do: "change-pattern", name, values: { [key]: now } }), `${name}: ${worded(key)}`)} />
      <Uses name={name} />
      <Delete name={name} />
    </details>
  );
}

function Rename({ name }: { name: string }) {
  const [now, setNow] = useState(name);
  const [why, setWhy] = useState("");
  const put = async () => setWhy((await operate({ do: "rename-pattern", old: name, new: now.trim() }, `Now called ${now.trim()}.`)) ? "" : (fault.value?.words ?? ""));
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); void put(); }}>
      <label>Name <input type="text" value={now} onInput={(event) => setNow(event.currentTarget.value)} /></label>
      <button type="submit" disabled={!now.trim() || now.trim() === name}>Rename everywhere</button>
      {why && <span class="why-not">{why}</span>}
    </form>
  );
}

// --- where it is danced ---

/** Blocks that dance a pattern, each entry or step once. */
function danced(name: string): Block[] {
  const own = (view.value?.blocks ?? []).filter((each) => each.path && [rowOf(each.path), rowOf(each.path)?.left, rowOf(each.path)?.right].some((row) => row?.pattern === name));
  const found = new Map<string, Block>();
  for (const each of own) if (!found.has(`${each.start} ${each.path!.join("/")}`)) found.set(`${each.start} ${each.path!.join("/")}`, each);
  return [...found.values()].sort((a, b) => a.start - b.start);
}

function rowOf(path: Path): Json {
  return path.reduce<Json>((value, key) => value?.[key], state.value?.values);
}

function Uses({ name }: { name: string }) {
  const own = danced(name), counts = tempo.value;
  if (!own.length || !counts) return <p class="quiet">Nothing dances it yet.</p>;
  const go = (block: Block) => {
    const who = own.filter((each) => each.start === block.start && each.path!.join() === block.path!.join()).map((each) => each.who);
    pick({ beat: Math.floor(block.start + 1e-6), who: who.length ? who : names.value });
    opened.value = true;
    walking.value = false;
  };
  return <p class="row uses"><span>Danced from</span>{own.map((each) => <button key={`${each.start} ${each.path!.join("/")}`} type="button" class="small" onClick={() => go(each)}>{each.position}<span class="unseen">: show it in the sheet</span></button>)}</p>;
}

function Delete({ name }: { name: string }) {
  const [why, setWhy] = useState("");
  const put = async () => setWhy((await operate({ do: "delete-pattern", name }, `${name} is deleted.`)) ? "" : (fault.value?.words ?? ""));
  return (
    <p class="row">
      <button type="button" onClick={() => void put()}>Delete {name}</button>
      {why && <span class="why-not">{why}</span>}
    </p>
  );
}

// --- what it says ---

const wayOf = (record: Json): Way => ("stations" in record ? "stations" : "left" in record || "right" in record ? "hands" : "law");
const listed = (value: Json): string[] => (value === undefined || value === null ? [] : [value].flat().map(String));

/** The schema of a pattern, with the values of the motions that it names; a value is fixed, or open, but not both. */
export function formOf(way: Way, record: Json): Json {
  const { ways, laws, stations } = schemaNow().pattern_form;
  const lawOf = (own: Json) => laws[own?.law]?.properties ?? {};
  const sides = way === "hands" ? ["left", "right"] : [];
  const values = (own: Json, besides: Json) => only(lawOf(own), Object.keys(besides ?? {}));
  const of: Json = { ...ways[way].properties };
  const open = way === "stations" ? only(stations.properties, Object.keys(record.set ?? {}))
    : way === "law" ? values(record, record.set)
    : Object.fromEntries(Object.entries(values(record.right, { ...record.left?.set, ...record.right?.set })).filter(([key]) => key in lawOf(record.left)));
  if (of.set) of.set = { ...of.set, properties: way === "stations" ? only(stations.properties, Object.keys(record.defaults ?? {})) : values(record, record.defaults) };
  for (const side of sides) of[side] = { ...of[side], properties: { ...of[side].properties, set: { ...of[side].properties.set, properties: values(record[side], record.defaults) } } };
  of.defaults = { ...of.defaults, properties: open };
  return { properties: Object.fromEntries(Object.entries<Json>(of).filter(([, each]) => !each.law || Object.keys(each.properties ?? {}).length)) };
}

const only = (properties: Json, besides: string[]): Json => Object.fromEntries(Object.entries(properties).filter(([key]) => !besides.includes(key)));

// --- a new one ---

function NewPattern() {
  const [way, setWay] = useState<Way>("law");
  const name = { type: "string", description: "as it is danced: small flower" };
  const add = async ({ name, ...said }: Record<string, Json>) => {
    const keys = Object.keys(formOf(way, said).properties); // what was said before another way was chosen is left out
    const pattern = Object.fromEntries(Object.entries(said).filter(([key]) => keys.includes(key)));
    return operate({ do: "add-pattern", name: String(name), pattern }, `${name} can be danced.`);
  };
  return (
    <>
      <NewRecord word="pattern" path={`new pattern ${way}`} must={["name", ...schemaNow().pattern_form.ways[way].required]} words={WORDS} add={add}
        of={(values: Record<string, Json>) => ({ properties: { name, ...formOf(way, values).properties } })}
        head={<fieldset><legend>Written as</legend>{WAYS.map(([each, words]) => <label key={each}><input type="radio" name="way" checked={way === each} onChange={() => setWay(each)} /> {words}</label>)}</fieldset>} />
    </>
  );
}

// --- files ---

function PatternFiles({ files }: { files: string[] }) {
  const [file, setFile] = useState("");
  const [why, setWhy] = useState("");
  const set = async (now: string[], words: string): Promise<boolean> => {
    const done = await operate({ do: "set-pattern-files", files: now }, words);
    setWhy(done ? "" : (fault.value?.words ?? ""));
    return done;
  };
  const add = async () => {
    if (await set([...files, file.trim()], `Patterns of ${file.trim()} can be danced.`)) setFile("");
  };
  return (
    <fieldset class="group"><legend>Files of patterns</legend>
      <small>{schemaNow().properties.pattern_files.description}: patterns that many shows share</small>
      {files.map((each) => (
        <p key={each} class="row"><span>{each}</span> <button type="button" class="small" onClick={() => void set(files.filter((other) => other !== each), `${each} is used no longer.`)}>Use it no longer<span class="unseen">: {each}</span></button></p>
      ))}
      <form class="row" onSubmit={(event) => { event.preventDefault(); void add(); }}>
        <label>A file <input type="text" value={file} placeholder="my-moves.yaml" onInput={(event) => setFile(event.currentTarget.value)} /></label>
        <button type="submit" disabled={!file.trim() || files.includes(file.trim())}>Use it</button>
      </form>
      {why && <p class="why-not">{why}</p>}
    </fieldset>
  );
}
