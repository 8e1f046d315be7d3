// Fields of a record of the show file, made from its schema: words, numbers, choices, places, lists and records, each as what it is.
import { useRef, useState } from "preact/hooks";
import { fault, names, state } from "./store";
import { useTyping } from "./typing";

export type Json = any;
/** A value made from what the file says once it is this change's turn: of a record or a list only a part is changed. */
export type Maker = (now: Json) => Json;
export type Put = (key: string, value: Json | Maker) => Promise<boolean>;
type Set = (value: Json | Maker) => Promise<boolean>;

export const made = (value: Json | Maker, now: Json): Json => (typeof value === "function" ? value(said(now)) : value);

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

const SAID: Record<string, string> = { stature: "height" }; // where people have another word than the file

export const worded = (key: string) => SAID[key] ?? key.replaceAll("_", " ");

/** Fields that are said, or asked for: those of `first` always and before all others; `words` are labels in place of keys, as is a `label` in the schema. */
export function Fields({ of, values, put, path, without = [], must = [], first = [], words = {} }: { of: Json; values: Json; put: Put; path: string; without?: string[]; must?: string[]; first?: string[]; words?: Record<string, string> }) {
  const known: [string, Json][] = Object.entries<Json>(of?.properties ?? {}).filter(([key]) => !without.includes(key));
  const all = [...first.flatMap((key) => known.filter((each) => each[0] === key)), ...known.filter(([key]) => !first.includes(key))];
  const label = (key: string) => words[key] ?? of.properties[key].label ?? worded(key);
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

function Field({ set: send, ...told }: Given & { must: boolean }) {
  const [why, setWhy] = useState("");
  const set: Set = async (value) => {
    const done = await send(value);
    setWhy(done ? "" : (fault.value?.words ?? ""));
    return done;
  };
  if (isRecord(told.of, told.value)) return <Filled {...told} set={send} />; // its own fields say why
  return (
    <>
      <Filled {...told} set={set} />
      {why && <p class="why-not">{worded(told.label)}: {why}</p>}
    </>
  );
}

const isRecord = (of: Json, value: Json) => of.properties && !(of.orWord && (value === undefined || typeof value === "string"));

/** A field for what its value is. */
function Filled({ name, label, of, value, set, id, must }: Given & { must: boolean }) {
  const items = of.items ? plain(of.items) : null;
  const map = of.type === "object" && !of.properties && of.additionalProperties;
  const given = { name, label, of, value, set, id };
  const several = (of.required?.length ?? 0) > 1; // a record that cannot be said key by key
  if (of.properties && value === undefined && several && !of.orWord) return <Group {...given} must={must}><NewRecord of={of} must={of.required} path={id} word={label} add={set} /></Group>;
  if (isRecord(of, value)) return <Group {...given} must={must}><Nested of={of} value={value ?? {}} set={set} path={id} /></Group>;
  if (of.orWord) return <WordOrRecord {...given} must={must} />;
  if (items?.enum) return <Group {...given} must={must}><TicksField {...given} choices={items.enum} /></Group>;
  if (of.type === "array" && items?.properties) return <Labelled {...given} must={must}><RowsField {...given} keys={Object.keys(items.properties)} /></Labelled>;
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
      <small id={`${given.id}-why`}>{given.of.description}{(given.of.lines || given.of.type === "array") && "; one a line"}</small>
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
export function useRefused(set: Set): Set {
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
  return <TextField id={id} why={why} given={given} list={PERSON.includes(name) ? "cast-names" : schema?.known?.[name] ? `known-${name}` : undefined} placeholder={of.examples?.[0] ?? (of.default !== undefined && of.default !== null ? String(of.default) : "")} most={of.maxLength} label={label} put={(text) => set(text ? scalar(text) : null)} />;
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

/** A record within a record: one of its keys is changed, whatever else it says by then. */
function Nested({ of, value, set, path }: { of: Json; value: Json; set: Set; path: string }) {
  const put: Put = (key, each) => set((now: Json) => {
    const { [key]: old, ...others } = now && typeof now === "object" ? now : ({} as Record<string, Json>);
    const own = made(each, old);
    return own === null ? others : { ...others, [key]: own };
  });
  return <Fields of={of} values={value} path={path} put={put} must={Object.keys(value).length ? [] : (of.required ?? [])} />;
}

function PeopleField({ name, value, ...given }: Given) {
  const set = useRefused(given.set);
  const crew = ((state.value?.values?.crew ?? []) as { name: string }[]).map((each) => each.name);
  const people = name === "callers" ? [...names.value, ...crew] : names.value;
  const now = listed(value);
  const all = name === "who" && (now.includes("all") || value === undefined);
  const choose = (who: string, on: boolean) => set((before: Json) => {
    const known = listed(before), everybody = name === "who" && (!known.length || known.includes("all"));
    const chosen = people.filter((each) => (each === who ? on : known.includes(each) || everybody));
    return !chosen.length ? null : name === "who" && chosen.length === people.length ? "all" : chosen.length === 1 ? chosen[0] : chosen;
  });
  return <p class="people">{people.map((each) => <label key={each}><input type="checkbox" checked={all || now.includes(each)} onChange={(event) => void choose(each, event.currentTarget.checked)} /> {each}</label>)}</p>;
}

const listed = (value: Json): string[] => (value === undefined || value === null ? [] : [value].flat().map(String));

/** Some of a few kinds. */
function TicksField({ value, choices, ...given }: Given & { choices: string[] }) {
  const set = useRefused(given.set), now = listed(value);
  const choose = (kind: string, on: boolean) => set((before: Json) => {
    const chosen = choices.filter((each) => (each === kind ? on : listed(before).includes(each)));
    return chosen.length ? chosen : null;
  });
  return <p class="people">{choices.map((each) => <label key={each}><input type="checkbox" checked={now.includes(each)} onChange={(event) => void choose(each, event.currentTarget.checked)} /> {each}</label>)}</p>;
}

/** Short records, one a line, their values with commas between them; sent as a whole, since only together they may hold. */
function RowsField({ value, set, id, keys }: Given & { keys: string[] }) {
  const given = (Array.isArray(value) ? value : []).map((row) => keys.map((key) => row?.[key] ?? "").join(", ")).join("\n");
  const { now, type, leave, left, box } = useTyping<HTMLTextAreaElement>([given], ([text]) => {
    const rows = text.split("\n").filter((line) => line.trim()).map((line) => line.split(",").map((each) => each.trim()));
    return set(rows.length ? rows.map((row) => Object.fromEntries(row.map((each, k) => [keys[k] ?? `value ${k + 1}`, scalar(each)]))) : null);
  });
  return (
    <textarea ref={box} id={id} aria-describedby={`${id}-why`} rows={Math.min(12, Math.max(3, now[0].split("\n").length))} value={now[0]} placeholder={keys.join(", ")}
      onInput={(event) => type([event.currentTarget.value])} onChange={() => void leave()} onBlur={left} />
  );
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
  const put = (k: number, each: Json | Maker) => set((now: Json) => list(now).map((row, other) => (other === k ? made(each, row) : row)));
  const add = async (given: Json | Maker) => {
    const each = made(given, undefined);
    if (rows.length + waiting.length + 1 < (of.minItems ?? 1)) {
      setWaiting([...waiting, each]);
      return true;
    }
    setWaiting([]);
    setFresh(0);
    return set((now: Json) => [...list(now), ...waiting, each]);
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
          {rows.length > (of.minItems ?? 1) && <button type="button" class="small" aria-label={`Take ${called} ${k + 1} of ${worded(what)} out`} onClick={() => void set((now: Json) => list(now).filter((_, other) => other !== k))}>×</button>}
        </li>
      ))}
      {waiting.map((each, k) => <li key={`w${k}`}>{one(rows.length + k, each, async (now) => { setWaiting(waiting.map((row, other) => (other === k ? made(now, row) : row))); return true; })}</li>)}
      {[...Array(Math.max(0, open - waiting.length)).keys()].map((k) => <li key={`n${rows.length + waiting.length + k}`}>{one(rows.length + waiting.length + k, undefined, add)}</li>)}
      <li><button type="button" class="small" onClick={() => setFresh(open + 1)}>Another {called}</button></li>
    </ol>
  );
}

const list = (value: Json): Json[] => (Array.isArray(value) ? value : []);

/** Names with what is said of each. */
function MapField({ name, value, set, id }: Given) {
  const now: Record<string, Json> = value ?? {};
  const [key, setKey] = useState("");
  const rows = Object.entries(now);
  const [open, setOpen] = useState<string[]>([]);
  const put = (of: string, each: string) => set((before: Json) => {
    const { [of]: _, ...others } = (before ?? {}) as Record<string, Json>;
    const left = each ? { ...others, [of]: scalar(each) } : others;
    return Object.keys(left).length ? left : null;
  });
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
export function NewRecord({ of, must, path, word, add, without, words, head }: { of: Json | ((values: Record<string, Json>) => Json); must: string[]; path: string; word: string; add: (values: Record<string, Json>) => Promise<boolean>; without?: string[]; words?: Record<string, string>; head?: preact.ComponentChildren }) {
  const [values, setValues] = useState<Record<string, Json>>({});
  const [open, setOpen] = useState(false);
  const [why, setWhy] = useState("");
  const latest = useRef(values); // a click that takes the keyboard from the last field comes before that is drawn
  const stillOpen = (now: Record<string, Json>) => must.filter((key) => now[key] === undefined);
  const missing = stillOpen(values);
  const say = (now: Record<string, Json>) => setValues((latest.current = now));
  const leave = () => { say({}); setOpen(false); setWhy(""); };
  const send = async () => {
    if (stillOpen(latest.current).length) return;
    if (await add(latest.current)) leave();
    else setWhy(fault.value?.words ?? "");
  };
  if (!open) return <p class="row"><button type="button" onClick={() => setOpen(true)}>Add {article(word)} {word}</button></p>;
  const asked = typeof of === "function" ? of(values) : of;
  const put: Put = async (key, value) => {
    const { [key]: old, ...others } = latest.current, own = made(value, old);
    say(own === null ? others : { ...others, [key]: own });
    return true;
  };
  return (
    <div class="new-record" role="group" aria-label={`A new ${word}`}>
      {head}
      <Fields of={asked} values={values} put={put} path={path} must={must} without={without} words={words} />
      {why && <p class="why-not">{why}</p>}
      <p class="row">
        <button type="button" class="main" aria-disabled={missing.length > 0} onClick={() => void send()}>Add the {word}</button>
        <button type="button" onClick={leave}>Leave it</button>
      </p>
      {/* Below the buttons: what goes as soon as the last field is left would else take the button from under the pointer. */}
      {missing.length > 0 && <p class="quiet">Still needed: {missing.map((key) => words?.[key] ?? asked.properties[key]?.label ?? worded(key)).join(", ")}.</p>}
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
