// Fields of a record of the show file, made from its schema: words, numbers, choices, places, lists and records, each as what it is.
import { useState } from "preact/hooks";
import { names, state } from "./store";
import { useTyping } from "./typing";

export type Json = any;
export type Put = (key: string, value: Json) => Promise<boolean>;
type Set = (value: Json) => Promise<boolean>;

let schema: Json = null;

export function setSchema(found: Json): void {
  schema = found;
}

export const schemaNow = (): Json => schema;

/** A part of the schema with what it refers to in its place, and null left out. */
export function plain(part: Json): Json {
  if (part?.$ref) return { ...plain(schema.$defs[part.$ref.split("/").pop()]), ...part, $ref: undefined };
  const some = part?.anyOf?.filter((each: Json) => each.type !== "null");
  if (some?.length === 1) return { ...plain(some[0]), description: part.description ?? plain(some[0]).description, default: part.default };
  if (some?.length > 1) {
    const record = some.map(plain).find((each: Json) => each.properties);
    if (record) return { ...record, description: part.description ?? record.description, orWord: true };
    if (some.some((each: Json) => each.type === "array" && each.items?.type === "string")) return { ...part, lines: true };
  }
  return part ?? {};
}

export const worded = (key: string) => key.replaceAll("_", " ");

/** Fields that are said, or asked for: those of `first` always and before all others; `words` are labels in place of keys. */
export function Fields({ of, values, put, path, without = [], must = [], first = [], words = {} }: { of: Json; values: Json; put: Put; path: string; without?: string[]; must?: string[]; first?: string[]; words?: Record<string, string> }) {
  const known: [string, Json][] = Object.entries<Json>(of?.properties ?? {}).filter(([key]) => !without.includes(key));
  const all = [...first.flatMap((key) => known.filter((each) => each[0] === key)), ...known.filter(([key]) => !first.includes(key))];
  const label = (key: string) => words[key] ?? worded(key);
  const own = values && typeof values === "object" ? values : {};
  const [added, setAdded] = useState<string[]>([]);
  const here = ([key]: [string, Json]) => own[key] !== undefined || must.includes(key) || first.includes(key);
  const shown = [...all.filter(here), ...all.filter((each) => !here(each) && added.includes(each[0]))];
  const rest = all.filter((each) => !here(each) && !added.includes(each[0]));
  return (
    <div class="fields">
      {shown.map(([key, each]) => <Field key={key} name={key} label={label(key)} of={plain(each)} value={own[key]} set={(value) => put(key, value)} id={`${path} ${key}`.replaceAll(/\W+/g, "-")} must={must.includes(key)} />)}
      {rest.length > 0 && (
        <label class="more">Say more <select value="" onChange={(event) => { setAdded([...added, event.currentTarget.value]); event.currentTarget.value = ""; }}>
          <option value="" />{rest.map(([key]) => <option key={key} value={key}>{label(key)}</option>)}
        </select></label>
      )}
    </div>
  );
}

const PERSON = ["lit_by", "put_out_by", "caller", "meets", "first_aider", "lead"]; // somebody of the show, or anybody
const PEOPLE = ["who", "watches", "callers"]; // lists of people of the show

function Field({ name, label, of, value, set, id, must }: Given & { must: boolean }) {
  const items = of.items ? plain(of.items) : null;
  const map = of.type === "object" && !of.properties && of.additionalProperties;
  const given = { name, label, of, value, set, id };
  const several = (of.required?.length ?? 0) > 1; // a record that cannot be said key by key
  if (of.properties && value === undefined && several && !of.orWord) return <Group {...given} must={must}><NewRecord of={of} must={of.required} path={id} word={label} add={set} /></Group>;
  if (of.properties && !(of.orWord && (value === undefined || typeof value === "string"))) return <Group {...given} must={must}><Nested of={of} value={value ?? {}} set={set} path={id} /></Group>;
  if (of.orWord) return <WordOrRecord {...given} must={must} />;
  if (PEOPLE.includes(name) && of.lines) return <Group {...given} must={must}><PeopleField {...given} /></Group>;
  if (of.lines) return <Labelled {...given} must={must}><LinesField {...given} /></Labelled>;
  if (of.prefixItems?.length === 2) return <Group {...given} must={must}><PairField of={of} value={value} set={set} /></Group>;
  if (of.type === "array" && (items?.prefixItems || items?.items)) return <Group {...given} must={must}><PlacesField of={of} value={value} set={set} what={name} /></Group>;
  if (map) return <Group {...given} must={must}><MapField {...given} /></Group>;
  return <Labelled {...given} must={must}><ScalarField {...given} must={must} /></Labelled>;
}

interface Given { name: string; label: string; of: Json; value: Json; set: Set; id: string }

function Leave({ label, value, set, must }: Given & { must: boolean }) {
  if (value === undefined || must) return null;
  return <button type="button" class="small" title={`Leave ${label} out`} aria-label={`Leave ${label} out`} onClick={() => void set(null)}>×</button>;
}

function Labelled({ children, ...given }: Given & { must: boolean; children: preact.ComponentChildren }) {
  return (
    <div class="field">
      <label for={given.id}>{given.label}{given.must && " *"}</label>
      {children}
      <Leave {...given} />
      <small id={`${given.id}-why`}>{given.of.description}{given.of.lines && "; one a line"}</small>
    </div>
  );
}

function Group({ children, ...given }: Given & { must: boolean; children: preact.ComponentChildren }) {
  return (
    <fieldset class="group"><legend>{given.label}{given.must && " *"} <Leave {...given} /></legend>
      {given.of.description && <small>{given.of.description}</small>}
      {children}
    </fieldset>
  );
}

/** Sets a value; where it is refused, the field is drawn again, and shows what holds. */
function useRefused(set: Set): Set {
  const [, again] = useState(0);
  return async (value) => {
    const done = await set(value);
    if (!done) again((now) => now + 1);
    return done;
  };
}

function ScalarField({ name, label, of, value, set, id, must }: Given & { must: boolean }) {
  const given = value === undefined || value === null ? "" : String(value);
  const options: string[] | null = of.enum ?? (of.type === "boolean" ? ["true", "false"] : null);
  const why = `${id}-why`;
  const choose = useRefused(set);
  // What is so anyway need not stand in the file.
  const chosen = (text: string) => (text === "" || (!must && text === String(of.default)) ? null : scalar(text));
  if (options) {
    return (
      <select id={id} aria-describedby={why} value={given || (must ? "" : String(of.default ?? ""))} onChange={(event) => void choose(chosen(event.currentTarget.value))}>
        {!given && <option value="" />}{options.map((each) => <option key={String(each)} value={String(each)}>{YES[String(each)] ?? String(each)}</option>)}
      </select>
    );
  }
  return <TextField id={id} why={why} given={given} list={PERSON.includes(name) ? "cast-names" : undefined} placeholder={of.examples?.[0] ?? (of.default !== undefined && of.default !== null ? String(of.default) : "")} most={of.maxLength} label={label} put={(text) => set(text ? scalar(text) : null)} />;
}

const YES: Record<string, string> = { true: "yes", false: "no" };

/** A text that is sent once it is left; put back where it is refused, but one that is too long stays, to be shortened. */
function TextField({ id, why, given, put, placeholder, list, label, most = Infinity }: { id?: string; why?: string; given: string; put: (text: string) => Promise<boolean>; placeholder?: string; list?: string; label?: string; most?: number }) {
  const { now, type, leave, left, box } = useTyping<HTMLInputElement>([given], ([text]) => put(text.trim()));
  const letters = [...now[0].trim()].length, long = letters > most;
  return (
    <>
      <input ref={box} id={id} type="text" aria-describedby={why} aria-invalid={long} aria-label={id ? undefined : label} list={list} value={now[0]} placeholder={placeholder}
        onInput={(event) => type([event.currentTarget.value])} onChange={() => void (long || leave())} onBlur={() => long || left()} />
      {long && <small class="long" role="alert">A {label} has at most {most} letters, and this one has {letters}: shorten it.</small>}
    </>
  );
}

/** A word that stands for a record, or the record itself: a prop is its kind, or its kind with its sizes. */
function WordOrRecord(given: Given & { must: boolean }) {
  const { of, value, id, label } = given, set = useRefused(given.set);
  const key = of.properties.kind ? "kind" : Object.keys(of.properties)[0];
  const kinds: string[] | undefined = plain(of.properties[key]).enum;
  return (
    <Labelled {...given}>
      <span class="row">
        {kinds ? (
          <select id={id} aria-describedby={`${id}-why`} value={value ?? ""} onChange={(event) => void set(event.currentTarget.value || null)}><option value="" />{kinds.map((each) => <option key={each}>{each}</option>)}</select>
        ) : <TextField id={id} why={`${id}-why`} given={value ?? ""} put={(text) => set(text || null)} />}
        {value && <button type="button" class="small" onClick={() => void set({ [key]: value })}>Say more<span class="unseen"> about {label}</span></button>}
      </span>
    </Labelled>
  );
}

/** A record within a record is written anew as a whole. */
function Nested({ of, value, set, path }: { of: Json; value: Json; set: Set; path: string }) {
  const put: Put = (key, each) => {
    const { [key]: _, ...now } = said(value);
    return set(each === null ? now : { ...now, [key]: each });
  };
  return <Fields of={of} values={value} path={path} put={put} must={Object.keys(value).length ? [] : (of.required ?? [])} />;
}

function PeopleField({ name, value, ...given }: Given) {
  const set = useRefused(given.set);
  const crew = ((state.value?.values?.crew ?? []) as { name: string }[]).map((each) => each.name);
  const people = name === "callers" ? [...names.value, ...crew] : names.value;
  const now: string[] = value === undefined ? [] : [value].flat().map(String);
  const all = name === "who" && (now.includes("all") || value === undefined);
  const choose = (who: string, on: boolean) => {
    const chosen = people.filter((each) => (each === who ? on : now.includes(each) || all));
    return set(!chosen.length ? null : name === "who" && chosen.length === people.length ? "all" : chosen.length === 1 ? chosen[0] : chosen);
  };
  return <p class="people">{people.map((each) => <label key={each}><input type="checkbox" checked={all || now.includes(each)} onChange={(event) => void choose(each, event.currentTarget.checked)} /> {each}</label>)}</p>;
}

/** Words or sentences, one a line. */
function LinesField({ value, set, id }: Given) {
  const given = value === undefined || value === null ? "" : [value].flat().join("\n");
  const { now, type, leave, left, box } = useTyping<HTMLTextAreaElement>([given], ([text]) => {
    const lines = text.split("\n").map((line) => line.trim()).filter(Boolean);
    return set(!lines.length ? null : lines.length === 1 ? lines[0] : lines);
  });
  return (
    <textarea ref={box} id={id} aria-describedby={`${id}-why`} rows={Math.min(6, Math.max(1, now[0].split("\n").length))} value={now[0]}
      onInput={(event) => type([event.currentTarget.value])} onChange={() => void leave()} onBlur={left} />
  );
}

const isPlace = (of: Json) => /coordinate/.test(of.prefixItems?.[0]?.description ?? "");

/** Two numbers: a place on the stage, or a range. Nothing is said before both are. */
function PairField({ of, value, set, head = "" }: { of: Json; value: Json; set: Set; head?: string }) {
  const words = isPlace(of) ? ["metres across, right of the middle for the audience", "metres upstage of the front edge"] : ["from", "to"];
  const short = isPlace(of) ? ["across", "upstage"] : words;
  const given = Array.isArray(value) ? value.map(String) : ["", ""];
  const { now, type, leave, box } = useTyping<HTMLParagraphElement>(given, (both) => set(both.map((each) => scalar(each.trim()))));
  return (
    <p class="pair" ref={box}>
      {[0, 1].map((k) => (
        <label key={k}>{short[k]} <input type="text" inputMode="decimal" aria-label={`${head}${words[k]}`} value={now[k]} onInput={(event) => type(k ? [now[0], event.currentTarget.value] : [event.currentTarget.value, now[1]])} onChange={() => void (now.every((each) => each.trim()) && leave())} /></label>
      ))}
    </p>
  );
}

/** Corners of a line or an outline; of several outlines, each by itself. */
function PlacesField({ of, value, set, what, depth = "" }: { of: Json; value: Json; set: Set; what: string; depth?: string }) {
  const items = plain(of.items);
  const rows: Json[] = Array.isArray(value) ? value : [];
  const [fresh, setFresh] = useState(0); // fields that are not filled in yet
  const open = Math.max(fresh, rows.length ? 0 : (of.minItems ?? 1));
  // Several places are one line only together: it is sent once there are enough.
  const [waiting, setWaiting] = useState<Json[]>([]);
  const put = (k: number, each: Json) => set(said(rows).map((row: Json, other: number) => (other === k ? each : row)));
  const add = async (each: Json) => {
    const now = [...said(rows), ...waiting, each];
    if (now.length < (of.minItems ?? 1)) {
      setWaiting([...waiting, each]);
      return true;
    }
    setWaiting([]);
    setFresh(0);
    return set(now);
  };
  const called = items.prefixItems ? "corner" : "outline";
  const one = (k: number, each: Json, set: Set) =>
    items.prefixItems
      ? <PairField of={items} value={each} set={set} head={`${worded(what)}, ${depth}${called} ${k + 1}: `} />
      : <PlacesField of={items} value={each} set={set} what={what} depth={`${called} ${k + 1}, `} />;
  return (
    <ol class="places">
      {rows.map((each, k) => (
        <li key={k}>{one(k, each, (now) => put(k, now))}
          {rows.length > (of.minItems ?? 1) && <button type="button" class="small" aria-label={`Take ${called} ${k + 1} of ${worded(what)} out`} onClick={() => void set(said(rows).filter((_: Json, other: number) => other !== k))}>×</button>}
        </li>
      ))}
      {waiting.map((each, k) => <li key={`w${k}`}>{one(rows.length + k, each, async (now) => { setWaiting(waiting.map((row, other) => (other === k ? now : row))); return true; })}</li>)}
      {[...Array(Math.max(0, open - waiting.length)).keys()].map((k) => <li key={`n${rows.length + waiting.length + k}`}>{one(rows.length + waiting.length + k, undefined, add)}</li>)}
      <li><button type="button" class="small" onClick={() => setFresh(open + 1)}>Another {called}</button></li>
    </ol>
  );
}

/** Names with what is said of each. */
function MapField({ name, value, set, id }: Given) {
  const now: Record<string, Json> = value ?? {};
  const [key, setKey] = useState("");
  const rows = Object.entries(now);
  const [open, setOpen] = useState<string[]>([]);
  const put = (of: string, each: string) => {
    const lines = each.split("\n").filter(Boolean);
    const { [of]: _, ...others } = said(now);
    const left = lines.length ? { ...others, [of]: scalar(each) } : others;
    return set(Object.keys(left).length ? left : null);
  };
  return (
    <div class="map">
      {[...rows, ...open.filter((each) => !(each in now)).map((each): [string, Json] => [each, ""])].map(([of, each]) => (
        <label key={of}>{of} <TextField given={[each].flat().join("; ")} label={`${worded(name)}: ${of}`} put={(text) => put(of, text)} /></label>
      ))}
      <p class="row">
        <label for={`${id}-new`} class="unseen">Another one of {worded(name)}</label>
        <input id={`${id}-new`} type="text" value={key} placeholder="name" onInput={(event) => setKey(event.currentTarget.value)} />
        <button type="button" class="small" disabled={!key.trim() || key.trim() in now} onClick={() => { setOpen([...open, key.trim()]); setKey(""); }}>Add<span class="unseen"> to {worded(name)}</span></button>
      </p>
    </div>
  );
}

/** A record that is asked for before it is anything: nothing is put into the show that nobody said. */
export function NewRecord({ of, must, path, word, add, without }: { of: Json; must: string[]; path: string; word: string; add: (values: Record<string, Json>) => Promise<boolean>; without?: string[] }) {
  const [values, setValues] = useState<Record<string, Json>>({});
  const [open, setOpen] = useState(false);
  const missing = must.filter((key) => values[key] === undefined);
  if (!open) return <p class="row"><button type="button" onClick={() => setOpen(true)}>Add {article(word)} {word}</button></p>;
  const put: Put = async (key, value) => {
    setValues((now) => {
      const { [key]: _, ...others } = now;
      return value === null ? others : { ...others, [key]: value };
    });
    return true;
  };
  return (
    <div class="new-record" role="group" aria-label={`A new ${word}`}>
      <Fields of={of} values={values} put={put} path={path} must={must} without={without} />
      {missing.length > 0 && <p class="quiet">Still to be said: {missing.map(worded).join(", ")}.</p>}
      <p class="row">
        <button type="button" class="main" disabled={missing.length > 0} onClick={async () => { if (await add(values)) { setValues({}); setOpen(false); } }}>Add the {word}</button>
        <button type="button" onClick={() => { setValues({}); setOpen(false); }}>Leave it</button>
      </p>
    </div>
  );
}

const article = (word: string) => (/^[aeiou]/.test(word) ? "an" : "a");

export function scalar(text: Json): Json {
  if (typeof text !== "string") return text;
  if (text === "true" || text === "false") return text === "true";
  return /^-?\d+(\.\d+)?$/.test(text) && String(Number(text)) === text ? Number(text) : text;
}

/** Values of the file, whose scalars come as their text, as they are sent back. */
export function said(value: Json): Json {
  if (Array.isArray(value)) return value.map(said);
  if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, said(each)]));
  return scalar(value);
}
