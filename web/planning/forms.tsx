// Forms for what the show file says about people, place, fire and rules; made from the file's own schema.
import { useEffect, useLayoutEffect, useState } from "preact/hooks";
import { Refused, get, post, type Operation } from "./api";
import { SongFile } from "./beginning";
import { heldCorrection } from "./count_store";
import { operate, operateOn } from "./doing";
import { Fields, NewRecord, made, plain, schemaNow, setSchema, worded, type Json, type Maker } from "./fields";
import { OwnPatterns } from "./own_patterns";
import { names, notice, state, view } from "./store";

type Change = (values: Record<string, Json>) => Operation;

/** Fields whose changes are each an operation; `latest` is the record in the file as it is when a change has its turn. */
export function Saved({ change, latest, ...given }: { of: Json; values: Json; change: Change; latest: (file: Json) => Json; path: string; without?: string[]; first?: string[] }) {
  return <Fields {...given} put={(key, value) => operateOn((file) => latest(file)?.[key], value, (own) => change({ [key]: own }), worded(key))} />;
}

const TITLES = ["title", "version", "date", "night", "begins", "type_file"];
const ITEMS: Record<string, string> = { audience: "audience edge", ceilings: "ceiling", scenery: "piece of scenery", exits: "exit", extinguishers: "extinguisher" };
const HEADINGS: [string, string][] = [
  ["venue", "Place"], ["fire", "Fire"], ["limits", "Limits"], ["wishes", "Wishes for drafts"], ["rules", "Rules"], ["weather", "Weather"], ["stop_call", "Stop call"], ["emergency", "Emergency"], ["drift", "Errors to expect"],
];

// A show is one without them too.
const DROPPED = HEADINGS.map(([heading]) => heading).filter((heading) => heading !== "venue");

export function ShowForms() {
  const [ready, setReady] = useState(schemaNow() !== null);
  useEffect(() => {
    if (!ready) void get<Json>("schema").then((found) => { setSchema(found); setReady(true); });
  }, []);
  const values = state.value?.values;
  if (!ready || !values) return <p class="quiet">{values === null ? "The file cannot be read: mend it under Text." : "The forms are being made …"}</p>;
  const schema = schemaNow();
  const titles = { properties: Object.fromEntries(TITLES.map((key) => [key, schema.properties[key]])) };
  return (
    <div class="forms">
      {Object.entries(schema.known as Record<string, string[]>).map(([name, all]) => <datalist key={name} id={`known-${name}`}>{all.map((each) => <option key={each} value={each} />)}</datalist>)}
      <details open><summary>Show</summary><Saved of={titles} values={values} change={(values) => ({ do: "change-titles", values })} latest={(file) => file} path="show" /></details>
      <details><summary>Song</summary><Song values={values} /></details>
      <details><summary>Cast</summary><People group="cast" kind="Performer" values={values} /></details>
      <details><summary>Crew</summary><People group="crew" kind="CrewMember" values={values} /></details>
      <details><summary>Patterns of your own</summary><OwnPatterns values={values} /></details>
      {HEADINGS.map(([heading, title]) => (
        <details key={heading}><summary>{title}</summary>
          <p class="quiet">{schema.properties[heading]?.description}</p>
          <Saved of={plain(schema.properties[heading])} values={values[heading] ?? {}} change={(own) => ({ do: "change-heading", heading, values: own })} latest={(file) => file[heading]} path={heading} without={[...Object.keys(ITEMS), "lit"]} first={heading === "fire" ? ["fuel"] : []} />
          {heading === "fire" && !values.fire && <p class="quiet">Name the fuel first; then say who is lit, from when until when.</p>}
          {heading === "venue" && Object.entries(ITEMS).map(([into, word]) => <Items key={into} into={into} word={word} values={values.venue?.[into] ?? []} />)}
          {DROPPED.includes(heading) && values[heading] && <p class="row"><button type="button" onClick={() => void operate({ do: "delete-heading", heading }, `${title}: nothing is said any more.`)}>Leave all of it out</button></p>}
          {heading === "fire" && values.fire && <Items into="lit" word="time in which somebody is lit" values={values.fire.lit ?? []} />}
        </details>
      ))}
    </div>
  );
}

// --- people ---

function People({ group, kind, values }: { group: "cast" | "crew"; kind: string; values: Json }) {
  const rows: Json[] = values[group] ?? [];
  const there: Room = { revision: 0, spots: {}, short: [], words: "" };
  const add = (given: Record<string, Json>) => {
    if (group === "crew") return operate({ do: "add-crew", member: given }, `${given.name} is in the crew.`);
    return operate(async () => Object.assign(there, await roomFor(given)) && added(given, there)).then((well) => {
      if (well) notice(there.words, there.short.length > 0);
      return well;
    });
  };
  const of = schemaNow().$defs[kind];
  return (
    <>
      {rows.map((row, k) => (
        <details key={k} class="inner"><summary>{row.name}</summary>
          <Name group={group} name={row.name} />
          <Saved of={of} values={row} without={["name"]} change={(own) => ({ do: "change-person", group, name: row.name, values: own })} latest={(file) => file[group]?.find((each: Json) => each.name === row.name)} path={`${group} ${row.name}`} />
          <p class="row"><button type="button" onClick={() => void operate({ do: "remove-person", group, name: row.name }, `${row.name} is taken out.`)}>Take {row.name} out</button></p>
        </details>
      ))}
      <NewRecord of={of} must={group === "cast" ? ["name", "stature", "prop"] : ["name", "post", "duty"]} path={`new ${group}`} word={group === "cast" ? "performer" : "member of the crew"} add={add} />
    </>
  );
}

interface Room { revision: number; spots: Record<string, Json>; short: string[]; words: string }

const AGAIN = 300, TRIES = 20; // [ms] between two questions about room, and how often it is asked

/** Where somebody new has room, as the server finds by the show's distances; beside the others where it cannot say. */
async function roomFor(performer: Record<string, Json>, tries = 1): Promise<Room> {
  try {
    return await post<Room>("room", { performer });
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    if (["superseded", "gone"].includes(error.trouble?.code ?? "") && tries < TRIES) { // something else went first
      await new Promise((done) => setTimeout(done, AGAIN));
      return roomFor(performer, tries + 1);
    }
    const staging = error.trouble?.code === "staging";
    if (error.status !== 422 && !staging) throw error;
    const formations = Object.entries(state.value!.values?.formations ?? {}).filter(([, each]: Json) => each?.spots).map(([each]) => each);
    const why = staging ? "is still being put on its song" : "cannot be put on its song";
    return { revision: state.value!.revision, spots: Object.fromEntries(formations.map((each) => [each, beside(each)])), short: [], words: `${performer.name} is in the cast, beside the others: where there is room is not known, since the show ${why}.` };
  }
}

const added = (performer: Record<string, Json>, there: Room) => ({ operation: { do: "add-performer", performer, spots: there.spots }, revision: there.revision });

/** A spot beside those of a formation: where somebody new is seen, and can be moved from. */
function beside(formation: string): { at: [number, number] } {
  const spots = Object.values(view.value?.formations[formation]?.spots ?? {});
  const x = spots.length ? Math.max(...spots.map((each) => each[0])) : -2, y = spots.length ? spots[spots.length - 1][1] : 3;
  return { at: [Math.round((x + 2) * 20) / 20, y] };
}

function Name({ group, name }: { group: string; name: string }) {
  const [now, setNow] = useState(name);
  useLayoutEffect(() => setNow(name), [name]); // renamed, or somebody else stands there now
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); void operate({ do: "rename-person", group, name, new: now }, `Now called ${now}.`); }}>
      <label>Name <input type="text" value={now} onInput={(event) => setNow(event.currentTarget.value)} /></label>
      <button type="submit" disabled={!now.trim() || now === name}>Rename everywhere</button>
    </form>
  );
}

// --- the song's count ---

function Song({ values }: { values: Json }) {
  const schema = schemaNow();
  const track = plain(schema.properties.track);
  const own = plain(track.properties?.corrections ?? {});
  const sections: Json[] = values.track?.corrections?.sections ?? [];
  const [name, setName] = useState(""), [start, setStart] = useState("");
  return (
    <>
      <SongFile />
      <p class="quiet">{values.track?.file}: put right here what was heard wrongly.</p>
      <Fields of={own} values={values.track?.corrections ?? {}} without={["sections"]} path="count" put={putCount} />
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

function putCount(key: string, value: Json | Maker): Promise<boolean> {
  return operate(async () => {
    const own = made(value, state.value!.values?.track?.corrections?.[key]);
    return { operation: await heldCorrection({ [key]: own }), revision: state.value!.revision };
  }, `${worded(key)} ${value === null ? "left out" : "changed"}; sections begin when they did.`);
}

function placeOf(sections: Json[], start: string): number | null {
  const bar = (words: string) => Number.parseFloat(words);
  const k = sections.findIndex((each) => bar(String(each.from)) > bar(start));
  return k < 0 ? null : k;
}

// --- lists ---

function Items({ into, word, values }: { into: string; word: string; values: Json[] }) {
  const heading = plain(schemaNow().properties[into === "lit" ? "fire" : "venue"]);
  const of = plain(plain(heading.properties[into]).items);
  const rows = Array.isArray(values) ? values : [];
  const must = [...new Set([...(into === "lit" ? ["who"] : []), ...(of.required ?? []), ...(MUST[into] ?? [])])];
  return (
    <>
      {rows.map((row, k) => (
        <details key={k} class="inner"><summary>{row.name ?? `${word} ${k + 1}`}{into === "lit" ? `: ${[row.who ?? "all"].flat().join(", ")}, ${row.from} to ${row.until}` : ""}</summary>
          <Saved of={of} values={row} change={(own) => ({ do: "change-item", into, number: k, values: own })} latest={(file) => file[into === "lit" ? "fire" : "venue"]?.[into]?.[k]} path={`${into} ${k}`} />
          <p class="row"><button type="button" onClick={() => void operate({ do: "delete-item", into, number: k }, "Taken out.")}>Take it out</button></p>
        </details>
      ))}
      <NewRecord of={of} must={must} path={`new ${into}`} word={word} add={(item) => operate({ do: "put-item", into, item }, "Added.")} />
    </>
  );
}

// What is asked for beyond what the file needs: a crew that looks for it has to know.
const MUST: Record<string, string[]> = { exits: ["width"], extinguishers: ["rating", "kind"] };

export function CastNames() {
  const crew = ((state.value?.values?.crew ?? []) as Json[]).map((each) => each?.name).filter((each) => typeof each === "string");
  return <datalist id="cast-names">{[...new Set([...names.value, ...crew])].map((each) => <option key={each} value={each} />)}</datalist>;
}
