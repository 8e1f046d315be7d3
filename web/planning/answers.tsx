// How those who dance an entry are together: at once, one after the other, mirrored, apart; and who answers it.
import { useState } from "preact/hooks";
import type { Block, Path } from "./api";
import { operate, operateFrom } from "./doing";
import { CLOSE, moment, together } from "./rows";
import { names, picked, state, tempo, view } from "./store";

type Row = Record<string, any>;

const rowOf = (entry: Path): Row | undefined => (entry[0] === "timeline" ? state.value?.values?.timeline?.[Number(entry[1])] : undefined);
const dancersOf = (row: Row): string[] => (row.who === "all" || row.who === undefined ? names.value : [row.who].flat().map(String));
const beatsSaid = (beats: number) => `${Math.round(beats * 1000) / 1000} ${Math.abs(beats - 1) < CLOSE ? "beat" : "beats"}`;

function blocksOf(entry: Path): Block[] {
  const key = entry.join("/");
  return (view.value?.blocks ?? []).filter((each) => each.entry?.join("/") === key && each.path !== null);
}

export function Together({ entry }: { entry: Path }) {
  const row = rowOf(entry);
  if (!row || names.value.length < 2) return null;
  const who = dancersOf(row);
  return (
    <>
      {who.length > 1 && <AtOnce entry={entry} row={row} who={who} />}
      {who.length > 1 && <Apart entry={entry} who={who} />}
      <Answer entry={entry} row={row} who={who} />
    </>
  );
}

const mirroredIn = (row: Row, who: string[]): string[] => (row.mirror === undefined ? [] : row.mirror === "all" ? who : [row.mirror].flat());

function AtOnce({ entry, row, who }: { entry: Path; row: Row; who: string[] }) {
  const mirrored = mirroredIn(row, who);
  const mirror = (name: string, on: boolean) => operateFrom((file) => {
    const before = mirroredIn(file.timeline[Number(entry[1])], who);
    return { do: "set-mirror", at: entry, who: who.filter((other) => (other === name ? on : before.includes(other))) };
  }, "Mirrored.");
  const canon = row.canon ? Number(row.canon) : 0;
  return (
    <fieldset><legend>Together</legend>
      <p>{canon ? `a canon, ${beatsSaid(canon)} apart` : "all at once"}
        <button type="button" onClick={() => void operate({ do: "set-canon", at: entry, beats: canon + 1 }, "Canon.")}>{canon ? "1 beat farther apart" : "A canon"}</button>
        {canon > 0 && <button type="button" onClick={() => void operate({ do: "set-unison", at: [entry] }, "All at once.")}>All at once</button>}
      </p>
      <p>Mirrored: {who.map((name) => (
        <label key={name}><input type="checkbox" checked={mirrored.includes(name)} onChange={(event) => void mirror(name, event.currentTarget.checked)} /> {name}</label>
      ))}</p>
    </fieldset>
  );
}

/** One of them gets an entry of their own, which can then be changed by itself. */
function Apart({ entry, who }: { entry: Path; who: string[] }) {
  const [name, setName] = useState("");
  const own = who.includes(name) ? name : who[who.length - 1];
  const part = () => {
    const starts: Record<string, string> = {};
    for (const each of blocksOf(entry)) starts[each.who] ??= moment(tempo.value!, Math.min(...blocksOf(entry).filter((other) => other.who === each.who).map((other) => other.start)));
    return operate({ do: "part-entry", at: entry, who: [own], starts }, `${own} has an entry of their own here.`);
  };
  return (
    <p class="row">
      <label>To change it for one alone <select value={own} onChange={(event) => setName(event.currentTarget.value)}>{who.map((each) => <option key={each}>{each}</option>)}</select></label>
      <button type="button" onClick={() => void part()}>Part {own} from the others</button>
    </p>
  );
}

/** Others dance the same as soon as this is over. */
function Answer({ entry, row, who }: { entry: Path; row: Row; who: string[] }) {
  const [chosen, setChosen] = useState<string[] | null>(null);
  const others = names.value.filter((each) => !who.includes(each));
  const now = chosen ?? others, own = blocksOf(entry);
  if (!own.length) return null;
  const end = Math.max(...own.map((each) => each.end));
  const answer = () => operate({ do: "answer-with", at: entry, who: now, start: moment(tempo.value!, end) }, now.length === 1 ? `${now[0]} answers.` : `${together(now, [])} answer.`);
  return (
    <details class="inner"><summary>Call and answer</summary>
      <p class="row">{names.value.map((name) => (
        <label key={name}><input type="checkbox" checked={now.includes(name)} onChange={(event) => setChosen(names.value.filter((other) => (other === name ? event.currentTarget.checked : now.includes(other))))} /> {name}</label>
      ))}
        <button type="button" disabled={!now.length} onClick={() => void answer()}>{now.length === 1 ? `${now[0]} answers` : "They answer"} at {moment(tempo.value!, end)}</button></p>
      {"until" in row && <p class="quiet">It ends at a moment of the song: give it its beats first.</p>}
    </details>
  );
}

/** A move cut where a count within it is chosen; both parts dance on as the one did. */
export function CutInTwo({ block, row }: { block: Block; row: Row }) {
  const at = picked.value, first = at ? at.beat - block.start : 0;
  if (!("pattern" in row || "rest" in row || "hold" in row) || row.repeat || row.canon || first < 1 - CLOSE || block.end - at!.beat < 1 - CLOSE) return null;
  const shift = "pattern" in row ? Number(block.shift ?? 0) + first : null;
  const cut = () => operate({ do: "split-block", at: block.path, first, second: block.end - at!.beat, shift, home: block.home }, `Cut at ${moment(tempo.value!, at!.beat)}.`);
  return <button type="button" onClick={() => void cut()}>Cut in two at {moment(tempo.value!, at!.beat)}</button>;
}
