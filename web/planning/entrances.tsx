// Entrances and exits: who comes on from the wings or goes off into them, as one form on the stage plan and as words in the sheet.
import { useState } from "preact/hooks";
import type { Coming, Operation, Standing } from "./api";
import { operate } from "./doing";
import type { Point } from "./handle";
import { together, type Row } from "./rows";
import { beside, names, seconds, seek, state, tempo, view } from "./store";
import { Kept, momentNow } from "./ways";

const SIDES = ["stage left", "stage right", "upstage"];
const BEATS = 8; // that a walk is given at first

type Said = Record<string, any>; // an entry as the file has it

const rows = (): Said[] => state.value?.values?.entrances ?? [];
const listed = (who: unknown): string[] => (who === "all" ? names.value : [who].flat().map(String));

/** Who comes on and goes off during a row of the sheet, those who do so at once together. */
export function comingsIn(row: Row): { start: number; end: number; words: string }[] {
  const found = new Map<string, Coming[]>();
  for (const each of view.value?.entrances ?? []) {
    if (each.end <= row.start || each.start >= row.start + row.beats) continue;
    const key = `${each.start} ${each.end} ${each.on} ${each.side}`;
    found.set(key, [...(found.get(key) ?? []), each]);
  }
  return [...found.values()].map((own) => ({ start: own[0].start, end: own[0].end, words: said(own) }));
}

function said(own: Coming[]): string {
  const who = own.map((each) => each.who), several = who.length > 1;
  return `${together(who, names.value)} ${several ? own[0].words.replace("comes", "come").replace("goes", "go") : own[0].words}`;
}

/** The stage plan at the moment at which somebody begins to walk on or off. */
export function showStage(beat: number): void {
  beside("stage");
  if (tempo.value) seek(Math.max(0, tempo.value.secondsAt(beat)));
}

/** Somebody waits at another place in the wings; whoever shares the entry stays where they were. */
export function waitElsewhere(name: string, standing: Standing, at: Point): Operation {
  const own = view.value!.entrances.filter((each) => each.who === name);
  const gone = own.filter((each) => !each.on && each.start <= standing.start + 1e-6);
  const coming = gone[gone.length - 1] ?? own[0];
  const number = Number(coming.path[1]), row = rows()[number];
  const others = listed(row.who).filter((each) => each !== name);
  if (!others.length) return { do: "change-item", into: "entrances", number, values: { at, side: null } };
  const { side: _, who: __, ...rest } = row;
  return { do: "do-together", said: `${name} waits elsewhere`, operations: [
    { do: "change-item", into: "entrances", number, values: { who: others } },
    { do: "put-item", into: "entrances", item: { who: name, ...rest, at } },
  ] };
}

export function EntranceForm() {
  return (
    <fieldset class="entrances"><legend>Entrances and exits</legend>
      <p class="quiet">Whoever comes on first waits in the wings until then. They walk to their spot in the formation that stands. In the wings nobody may be lit.</p>
      <ul class="list">{rows().map((row, k) => <OneEntrance key={k} row={row} number={k} />)}</ul>
      <NewEntrance />
    </fieldset>
  );
}

function OneEntrance({ row, number }: { row: Said; number: number }) {
  const on = row.comes_on !== undefined, key = on ? "comes_on" : "goes_off";
  const who = listed(row.who), whose = together(who, names.value);
  const staged = view.value!.entrances.find((each) => each.path[1] === number);
  const change = (values: Said, words: string) => operate({ do: "change-item", into: "entrances", number, values }, words);
  const what = `${whose} ${who.length > 1 ? (on ? "come on" : "go off") : on ? "comes on" : "goes off"}`;
  return (
    <li><div role="group" aria-label={`${what} at ${String(row[key])}`}>
      <button type="button" class="small" disabled={!staged} onClick={() => staged && showStage(staged.start)}>{what}</button>{" "}
      <Kept label="at" value={String(row[key])} put={(value) => change({ [key]: value }, `${what} at ${value}.`)} />{" "}
      <Kept label="beats" value={String(row.beats)} put={(value) => change({ beats: value }, `${what} in ${value} beats.`)} />{" "}
      <label>{on ? "from" : "to"} <select value={row.side ?? ""} onChange={(event) => void change({ side: event.currentTarget.value, at: null }, `${what}: ${event.currentTarget.value}.`)}>
        {row.side === undefined && <option value="">[{[row.at].flat().join(", ")}]</option>}
        {SIDES.map((each) => <option key={each}>{each}</option>)}
      </select></label>{" "}
      <button type="button" class="small" onClick={() => void operate({ do: "delete-item", into: "entrances", number }, "Deleted.")}>Delete<span class="unseen"> that {what} at {String(row[key])}</span></button>
    </div></li>
  );
}

function NewEntrance() {
  const [who, setWho] = useState("");
  const [on, setOn] = useState(true);
  const [at, setAt] = useState<string | null>(null);
  const [beats, setBeats] = useState(BEATS);
  const [where, setWhere] = useState(SIDES[0]);
  const now = momentNow(seconds.value).words, name = who || names.value[0], moment = (at ?? now).trim();
  const put = async () => {
    const item = { who: name, [on ? "comes_on" : "goes_off"]: moment, beats, side: where };
    // What somebody has typed meanwhile stays.
    if (await operate({ do: "put-item", into: "entrances", item }, `${name} ${on ? "comes on" : "goes off"} at ${moment}.`)) setAt((given) => (given?.trim() === moment ? null : given));
  };
  return (
    <form class="row" aria-label="A new entrance or exit" onSubmit={(event) => { event.preventDefault(); void put(); }}>
      <label>Who <select value={name} onChange={(event) => setWho(event.currentTarget.value)}>
        {names.value.map((each) => <option key={each}>{each}</option>)}
        {names.value.length > 1 && <option value="all">all</option>}
      </select></label>
      <select aria-label="comes on or goes off" value={on ? "on" : "off"} onChange={(event) => setOn(event.currentTarget.value === "on")}><option value="on">{name === "all" ? "come on" : "comes on"}</option><option value="off">{name === "all" ? "go off" : "goes off"}</option></select>
      <label>at <input type="text" size={6} required value={at ?? now} onInput={(event) => setAt(event.currentTarget.value)} /></label>
      <label>{on ? "from" : "to"} <select value={where} onChange={(event) => setWhere(event.currentTarget.value)}>{SIDES.map((each) => <option key={each}>{each}</option>)}</select></label>
      <label class="stepper">walking for <input type="number" min={1} step={1} value={beats} onInput={(event) => { const given = Number(event.currentTarget.value); if (given >= 1) setBeats(given); }} /> beats</label>
      <button type="submit" class="main">{name === "all" ? "All" : name} {on ? (name === "all" ? "come on" : "comes on") : name === "all" ? "go off" : "goes off"} at {moment}</button>
    </form>
  );
}
