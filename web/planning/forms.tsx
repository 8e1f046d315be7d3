// Forms for what the show file says about people, place, fire and rules; made from the file's own schema.
import { useEffect, useState } from "preact/hooks";
import { get, type Operation } from "./api";
import { SongFile } from "./beginning";
import { operate } from "./doing";
import { names, state, view } from "./store";

type Json = any;
type Change = (values: Record<string, Json>) => Operation;

let schema: Json = null;

/** A part of the schema with what it refers to in its place, and null left out. */
function plain(part: Json): Json {
  if (part?.$ref) return { ...plain(schema.$defs[part.$ref.split("/").pop()]), ...part, $ref: undefined };
  const some = part?.anyOf?.filter((each: Json) => each.type !== "null");
  if (some?.length === 1) return { ...plain(some[0]), description: part.description ?? plain(some[0]).description, default: part.default };
  if (some?.length > 1) {
    const record = some.map(plain).find((each: Json) => each.properties);
    if (record) return { ...record, description: part.description ?? record.description, orWord: true };
  }
  return part ?? {};
}

const ITEMS: Record<string, string> = { audience: "audience edge", ceilings: "ceiling", scenery: "piece of scenery", exits: "exit", extinguishers: "extinguisher" };
const HEADINGS: [string, string][] = [
  ["venue", "Place"], ["fire", "Fire"], ["limits", "Limits"], ["wishes", "Wishes for drafts"], ["rules", "Rules"], ["weather", "Weather"], ["stop_call", "Stop call"], ["emergency", "Emergency"], ["drift", "Errors to expect"],
];

export function ShowForms() {
  const [ready, setReady] = useState(schema !== null);
  useEffect(() => {
    if (!ready) void get<Json>("schema").then((found) => { schema = found; setReady(true); });
  }, []);
  const values = state.value?.values;
  if (!ready || !values) return <p class="quiet">{values === null ? "The file cannot be read: mend it under Text." : "The forms are being made …"}</p>;
  const titles = { properties: Object.fromEntries(["title", "version", "date", "night", "begins"].map((key) => [key, schema.properties[key]])) };
  return (
    <div class="forms">
      <details open><summary>Show</summary><Fields of={titles} values={values} change={(values) => ({ do: "change-titles", values })} path="show" /></details>
      <details><summary>Song</summary><Song values={values} /></details>
      <details><summary>Cast</summary><People group="cast" kind="Performer" values={values} /></details>
      <details><summary>Crew</summary><People group="crew" kind="CrewMember" values={values} /></details>
      {HEADINGS.map(([heading, title]) => (
        <details key={heading}><summary>{title}</summary>
          <p class="quiet">{schema.properties[heading]?.description}</p>
          <Fields of={plain(schema.properties[heading])} values={values[heading] ?? {}} change={(own) => ({ do: "change-heading", heading, values: own })} path={heading} without={[...Object.keys(ITEMS), "lit"]} />
          {heading === "venue" && Object.entries(ITEMS).map(([into, word]) => <Items key={into} into={into} word={word} values={values.venue?.[into] ?? []} />)}
          {heading === "fire" && values.fire && <Items into="lit" word="time in which somebody is lit" values={values.fire.lit ?? []} />}
        </details>
      ))}
    </div>
  );
}

// --- people ---

function People({ group, kind, values }: { group: "cast" | "crew"; kind: string; values: Json }) {
  const rows: Json[] = values[group] ?? [];
  const [name, setName] = useState("");
  const add = () => {
    const last = rows[rows.length - 1] ?? {};
    const beside = (formation: string) => {
      const spots = Object.values(view.value?.formations[formation]?.spots ?? {});
      const x = spots.length ? Math.max(...spots.map((each) => each[0])) : -2, y = spots.length ? spots[spots.length - 1][1] : 3;
      return { at: [Math.round((x + 2) * 20) / 20, y] };
    };
    if (group === "cast") {
      const formations = Object.entries(values.formations ?? {}).filter(([, each]: Json) => each?.spots).map(([each]) => each);
      void operate({ do: "add-performer", performer: { name, stature: scalar(last.stature ?? "1.7 m"), prop: said(last.prop ?? "poi") }, spots: Object.fromEntries(formations.map((each) => [each, beside(each)])) }, `${name} is in the cast.`);
    } else void operate({ do: "add-crew", member: { name, post: [-6, 2], duty: "spotter" } }, `${name} is in the crew.`);
    setName("");
  };
  const of = schema.$defs[kind];
  return (
    <>
      {rows.map((row) => (
        <details key={row.name} class="inner"><summary>{row.name}</summary>
          <Name group={group} name={row.name} />
          <Fields of={of} values={row} without={["name"]} change={(own) => ({ do: "change-person", group, name: row.name, values: own })} path={`${group} ${row.name}`} />
          <p class="row"><button type="button" onClick={() => void operate({ do: "remove-person", group, name: row.name }, `${row.name} is taken out.`)}>Take {row.name} out</button></p>
        </details>
      ))}
      <form class="row" onSubmit={(event) => { event.preventDefault(); if (name.trim()) add(); }}>
        <label>A new {group === "cast" ? "performer" : "member of the crew"} <input type="text" value={name} placeholder="name" onInput={(event) => setName(event.currentTarget.value)} /></label>
        <button type="submit" disabled={!name.trim()}>Add</button>
      </form>
    </>
  );
}

function Name({ group, name }: { group: string; name: string }) {
  const [now, setNow] = useState(name);
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); void operate({ do: "rename-person", group, name, new: now }, `Now called ${now}.`); }}>
      <label>Name <input type="text" value={now} onInput={(event) => setNow(event.currentTarget.value)} /></label>
      <button type="submit" disabled={!now.trim() || now === name}>Rename everywhere</button>
    </form>
  );
}

// --- the song's count ---

function Song({ values }: { values: Json }) {
  const track = plain(schema.properties.track);
  const own = plain(track.properties?.corrections ?? {});
  const sections: Json[] = values.track?.corrections?.sections ?? [];
  const [name, setName] = useState(""), [start, setStart] = useState("");
  return (
    <>
      <SongFile />
      <p class="quiet">{values.track?.file}: put right here what was heard wrongly.</p>
      <Fields of={own} values={values.track?.corrections ?? {}} without={["sections"]} change={(given) => ({ do: "correct-count", values: given })} path="count" />
      {sections.map((each, k) => (
        <p key={`${each.from}${each.name}`} class="row">
          <span>From {each.from}: {each.name}</span>
          <button type="button" class="small" onClick={() => void operate({ do: "delete-section", number: k }, "The section goes on from the one before.")}>Take out</button>
        </p>
      ))}
      <form class="row" onSubmit={(event) => { event.preventDefault(); void operate({ do: "put-section", start, name, before: placeOf(sections, start) }, `${name} from ${start}.`); setName(""); setStart(""); }}>
        <label>A section <input type="text" value={name} placeholder="verse" onInput={(event) => setName(event.currentTarget.value)} /></label>
        <label>from bar.beat <input type="text" value={start} placeholder="9.1" onInput={(event) => setStart(event.currentTarget.value)} /></label>
        <button type="submit" disabled={!name || !start}>Add</button>
      </form>
    </>
  );
}

function placeOf(sections: Json[], start: string): number | null {
  const bar = (words: string) => Number.parseFloat(words);
  const k = sections.findIndex((each) => bar(String(each.from)) > bar(start));
  return k < 0 ? null : k;
}

// --- lists ---

function Items({ into, word, values }: { into: string; word: string; values: Json[] }) {
  const of = plain((into === "lit" ? plain(schema.properties.fire) : plain(schema.properties.venue)).properties[into].items ?? arrayOf(into).items);
  const rows = Array.isArray(values) ? values : [];
  const fresh: Record<string, Json> = {
    audience: { name: `edge ${rows.length + 1}`, line: [[-6, -3], [6, -3]] }, ceilings: null, scenery: null,
    exits: { name: `exit ${rows.length + 1}`, at: [-6, -4], width: "1.2 m" }, extinguishers: { at: [-5, 2], rating: "2-A:10-B:C", kind: "foam" },
    lit: { who: "all", from: "1.1", until: "2.1" },
  };
  return (
    <>
      {rows.map((row, k) => (
        <details key={k} class="inner"><summary>{row.name ?? `${word} ${k + 1}`}{into === "lit" ? `: ${[row.who].flat().join(", ")}, ${row.from} to ${row.until}` : ""}</summary>
          <Fields of={of} values={row} change={(own) => ({ do: "change-item", into, number: k, values: own })} path={`${into} ${k}`} />
          <p class="row"><button type="button" onClick={() => void operate({ do: "delete-item", into, number: k }, "Taken out.")}>Take it out</button></p>
        </details>
      ))}
      {fresh[into] && <p class="row"><button type="button" onClick={() => void operate({ do: "put-item", into, item: fresh[into] }, "Added.")}>Add {/^[aeiou]/.test(word) ? "an" : "a"} {word}</button></p>}
    </>
  );
}

const arrayOf = (into: string) => plain((into === "lit" ? plain(schema.properties.fire) : plain(schema.properties.venue)).properties[into]);

// --- fields ---

type Put = (key: string, value: Json) => Promise<boolean>;

function Fields({ of, values, change, put, path, without = [] }: { of: Json; values: Json; change?: Change; put?: Put; path: string; without?: string[] }) {
  const all = Object.entries<Json>(of?.properties ?? {}).filter(([key]) => !without.includes(key));
  const own = values && typeof values === "object" ? values : {};
  const said = all.filter(([key]) => own[key] !== undefined), left = all.filter(([key]) => own[key] === undefined);
  const [added, setAdded] = useState<string[]>([]);
  const shown = [...said, ...left.filter(([key]) => added.includes(key))];
  const rest = left.filter(([key]) => !added.includes(key));
  const set: Put = put ?? ((key, value) => operate(change!({ [key]: value }), `${worded(key)} ${value === null ? "left out" : "changed"}.`));
  return (
    <div class="fields">
      {shown.map(([key, each]) => <Field key={key} name={key} of={plain(each)} value={own[key]} set={(value) => set(key, value)} id={`${path} ${key}`.replaceAll(/\W+/g, "-")} />)}
      {rest.length > 0 && (
        <label class="more">Say more <select value="" onChange={(event) => { setAdded([...added, event.currentTarget.value]); event.currentTarget.value = ""; }}>
          <option value="" />{rest.map(([key]) => <option key={key} value={key}>{worded(key)}</option>)}
        </select></label>
      )}
    </div>
  );
}

const worded = (key: string) => key.replaceAll("_", " ");

function Field({ name, of, value, set, id }: { name: string; of: Json; value: Json; set: (value: Json) => Promise<boolean>; id: string }) {
  const given = value === undefined ? "" : typeof value === "string" || typeof value === "number" ? String(value) : JSON.stringify(said(value));
  const [text, setText] = useState(given);
  useEffect(() => setText(given), [given]);
  if (of.properties && value && typeof value === "object" && !Array.isArray(value)) {
    return <fieldset><legend>{worded(name)}</legend><Nested of={of} value={value} set={set} path={id} /></fieldset>;
  }
  const options: string[] | null = of.enum ?? (of.type === "boolean" ? ["true", "false"] : null);
  const why = `${id}-why`;
  return (
    <div class="field">
      <label for={id}>{worded(name)}</label>
      {options ? (
        <select id={id} aria-describedby={why} value={given || String(of.default ?? "")} onChange={(event) => void set(scalar(event.currentTarget.value))}>
          {!given && <option value="" />}{options.map((each) => <option key={String(each)} value={String(each)}>{String(each)}</option>)}
        </select>
      ) : (
        <input id={id} type="text" aria-describedby={why} list={name === "who" ? "cast-names" : undefined} value={text} placeholder={of.examples?.[0] ?? (of.default !== undefined && of.default !== null ? String(of.default) : "")}
          onInput={(event) => setText(event.currentTarget.value)}
          onChange={async () => { if (text !== given && !(await set(text.trim() ? read(text) : null))) setText(given); }} />
      )}
      {value !== undefined && <button type="button" class="small" title={`Leave ${worded(name)} out`} aria-label={`Leave ${worded(name)} out`} onClick={() => void set(null)}>×</button>}
      <small id={why}>{of.description}</small>
    </div>
  );
}

/** A record within a record is written anew as a whole. */
function Nested({ of, value, set, path }: { of: Json; value: Json; set: (value: Json) => Promise<boolean>; path: string }) {
  const put: Put = (key, each) => {
    const { [key]: _, ...now } = said(value);
    return set(each === null ? now : { ...now, [key]: each });
  };
  return <Fields of={of} values={value} path={path} put={put} />;
}

/** What a person typed: a list or record if it is one, else a number or words. */
function read(text: string): Json {
  if (/^[[{]/.test(text.trim())) {
    try {
      return JSON.parse(text);
    } catch {
      return text;
    }
  }
  return scalar(text.trim());
}

function scalar(text: Json): Json {
  if (typeof text !== "string") return text;
  if (text === "true" || text === "false") return text === "true";
  return /^-?\d+(\.\d+)?$/.test(text) && String(Number(text)) === text ? Number(text) : text;
}

/** Values of the file, whose scalars come as their text, as they are sent back. */
function said(value: Json): Json {
  if (Array.isArray(value)) return value.map(said);
  if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, said(each)]));
  return scalar(value);
}

export const CastNames = () => <datalist id="cast-names">{["all", ...names.value].map((each) => <option key={each} value={each} />)}</datalist>;
