// What is printed and exported, from the show as it stands on the page: sheets, rehearsal page, count tracks, cues.
import { useEffect, useRef, useState } from "preact/hooks";
import { get, saidOf } from "./api";
import { Progressing, sentence, useHeading } from "./drafting";
import { errand, printing, type MadeFile, type Printing as Made } from "./errands";
import { beside, state } from "./store";

interface Kind { name: string; reader: string; holds: string; pack: boolean }

const PARTS: [string, string, string][] = [
  ["page", "Rehearsal page", "the show danced, with the song, in one file for any browser"],
  ["counts", "Count track", "the song with counts and calls, for speakers or for phones"],
  ["midi", "Cues for light and sound", "MIDI"],
  ["captions", "Captions", "WebVTT, for a video of the rehearsal"],
  ["timetable", "Timetable and cue list", "every change with its time, and the operators’ cues with time code, as CSV and JSON"],
  ["timecode", "Time code", "for desks that follow the track: as a sound and as MIDI"],
];
const RATES: [string, string][] = [["24", "24"], ["25", "25"], ["29.97df", "29.97, drop-frame"], ["30", "30"]]; // [frames/s]
const SPEEDS = [100, 85, 70, 50]; // [%]

export function Printing() {
  const now = printing.value;
  const box = useRef<HTMLDivElement>(null);
  useHeading(box, now?.state);
  if (!state.value?.readable) return <p class="quiet">The file cannot be read as a show: mend it under Text, then it can be printed.</p>;
  const working = now?.state === "working"; // what was chosen stays chosen
  return (
    <div ref={box} class="printing">
      {working && <Working now={now} />}
      {now?.state === "failed" && <p class="fault" role="alert">{now.error && saidOf(now.error)}</p>}
      {now?.state === "done" && now.made && <Files now={now} />}
      <div class="printing" hidden={working}>
        <Sheets />
        <Rehearsal />
      </div>
      <p class="quiet" hidden={working}>What is printed is the show as it stands on this page, saved or not. The files are put into {now?.folder ?? "the folder exports beside the show"}.</p>
    </div>
  );
}

function Working({ now }: { now: Made }) {
  return (
    <section class="printing" aria-label="At work">
      <h3 tabIndex={-1}>{now.asked?.what === "rehearsal" ? "Making what you rehearse with" : "Printing the sheets"}</h3>
      <Progressing now={now} />
      <p class="row"><button type="button" onClick={() => void errand("print/stop")}>Give it up</button></p>
      <p class="quiet">You can go on planning meanwhile: what you change now is not in these files.</p>
    </section>
  );
}

function Files({ now }: { now: Made }) {
  const { files, ok, said, older } = now.made!;
  return (
    <section class="made" aria-label="What was made">
      <h3 tabIndex={-1}>Ready</h3>
      {ok === false && <p class="fault">Do not dance this yet: <button type="button" class="small" onClick={() => beside("findings")}>Findings</button> says why, and so does every sheet.</p>}
      {ok === null && <p class="caution">Nothing was checked for these: Findings says whether the show can be danced.</p>}
      {older && <p class="caution">The show has changed since: these files show it as it was before.</p>}
      {now.unsaved && <p class="quiet">Made from the show as it stood on this page; it was not saved then.</p>}
      <ul>
        {files.map((file) => (
          <li key={file.name}>
            {shown(file) ? <a href={file.address} target="_blank" rel="noopener">{file.name}</a> : <span>{file.name}</span>}
            <small>{size(file.bytes)}</small>
            <a class="save" href={`${file.address}?save`} download={file.name} aria-label={`Download ${file.name}`}>Download</a>
          </li>
        ))}
      </ul>
      {said.map((line) => <p key={line} class="quiet">{sentence(line)}</p>)}
      <p class="quiet">They lie in {now.folder}.</p>
    </section>
  );
}

const shown = (file: MadeFile) => /\.(pdf|html|wav|mp3)$/.test(file.name);
const size = (bytes: number) => (bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`);

function Sheets() {
  const [kinds, setKinds] = useState<Kind[]>([]);
  const [what, setWhat] = useState<"pack" | "all" | "some">("pack");
  const [only, setOnly] = useState<string[]>([]);
  const [people, setPeople] = useState<string[]>([]);
  const [paper, setPaper] = useState("a4");
  const [since, setSince] = useState("");
  useEffect(() => void get<{ kinds: Kind[] }>("printable").then((found) => setKinds(found.kinds), () => {}), []);
  const nothing = what === "some" && !only.length && !people.length;
  const print = () => void errand("sheets", { everything: what === "all", only: what === "some" ? only : [], people: what === "some" ? people : [], paper, since: since.trim() || null });
  return (
    <form class="printed" onSubmit={(event) => { event.preventDefault(); if (!nothing) print(); }}>
      <h3 tabIndex={-1}>Sheets to print</h3>
      <fieldset><legend>Which</legend>
        <label><input type="radio" name="which" checked={what === "pack"} onChange={() => setWhat("pack")} /> what is carried on the night</label>
        <label><input type="radio" name="which" checked={what === "all"} onChange={() => setWhat("all")} /> everything</label>
        <label><input type="radio" name="which" checked={what === "some"} onChange={() => setWhat("some")} /> what I choose</label>
      </fieldset>
      {what === "some" && (
        <>
          <fieldset class="kinds"><legend>Kinds (none: every kind)</legend>
            {!kinds.length && <span class="quiet">The kinds are being listed …</span>}
            {kinds.map((each) => (
              <label key={each.name}><input type="checkbox" checked={only.includes(each.name)} onChange={(event) => setOnly(toggled(only, each.name, event.currentTarget.checked))} /> <span><b>{each.name.replaceAll("-", " ")}</b>, for {each.reader}<small>{each.holds}</small></span></label>
            ))}
          </fieldset>
          <People legend="For whom (none chosen: everybody)" chosen={people} choose={setPeople} crew />
        </>
      )}
      <p class="row">
        <label>Paper <select value={paper} onChange={(event) => setPaper(event.currentTarget.value)}><option value="a4">A4</option><option value="letter">Letter</option></select></label>
        <label>Mark what has changed since <input type="text" value={since} placeholder="an earlier show file, beside this one" onInput={(event) => setSince(event.currentTarget.value)} /></label>
      </p>
      <p class="row"><button type="submit" class="main" disabled={nothing}>Make the sheets</button></p>
    </form>
  );
}

function Rehearsal() {
  const [parts, setParts] = useState(["page", "counts"]);
  const [speeds, setSpeeds] = useState([100]);
  const [counts, setCounts] = useState("pitched");
  const [people, setPeople] = useState<string[]>([]);
  const [alone, setAlone] = useState(false);
  const [calls, setCalls] = useState(true);
  const [split, setSplit] = useState(false);
  const [small, setSmall] = useState(false);
  const [each, setEach] = useState(false);
  const [rate, setRate] = useState("25");
  const [code, setCode] = useState("00:00:00:00");
  const counted = parts.includes("counts");
  const ready = parts.length > 0 && (!counted || speeds.length > 0);
  const make = () => void errand("rehearsal", { parts, speeds: (counted ? speeds : [100]).map((each) => each / 100), counts, people, clicks_only: alone, no_calls: !calls, split, small, each, timecodes: [rate], code_from: parts.includes("timecode") || parts.includes("timetable") ? code.trim() : "00:00:00:00" });
  return (
    <form class="printed" onSubmit={(event) => { event.preventDefault(); if (ready) make(); }}>
      <h3>To rehearse with, and for other programs</h3>
      <fieldset class="kinds"><legend>What</legend>
        {PARTS.map(([name, title, holds]) => (
          <label key={name}><input type="checkbox" checked={parts.includes(name)} onChange={(event) => setParts(toggled(parts, name, event.currentTarget.checked))} /> <span><b>{title}</b><small>{holds}</small></span></label>
        ))}
      </fieldset>
      {counted && (
        <details><summary>How the count track sounds</summary>
          <fieldset><legend>Speeds, at the same pitch</legend>
            {SPEEDS.map((each) => <label key={each}><input type="checkbox" checked={speeds.includes(each)} onChange={(event) => setSpeeds(SPEEDS.filter((other) => (other === each ? event.currentTarget.checked : speeds.includes(other))))} /> {each} %</label>)}
          </fieldset>
          <p class="row"><label>The four beats before a change are <select value={counts} onChange={(event) => setCounts(event.currentTarget.value)}>
            <option value="pitched">pitched clicks</option><option value="spoken">spoken: five, six, seven, eight</option><option value="none">not counted</option>
          </select></label></p>
          <fieldset><legend>In it</legend>
            <label><input type="checkbox" checked={!alone} onChange={(event) => setAlone(!event.currentTarget.checked)} /> the song</label>
            <label><input type="checkbox" checked={calls} onChange={(event) => setCalls(event.currentTarget.checked)} /> three notes before each section</label>
            <label><input type="checkbox" checked={split} onChange={(event) => setSplit(event.currentTarget.checked)} /> song left, counts right</label>
          </fieldset>
          <fieldset><legend>Files</legend>
            <label><input type="checkbox" checked={small} onChange={(event) => setSmall(event.currentTarget.checked)} /> small, for phones (MP3)</label>
            <label><input type="checkbox" checked={each} onChange={(event) => setEach(event.currentTarget.checked)} /> one for each performer</label>
          </fieldset>
          <People legend="Whose changes are counted (none chosen: everybody’s)" chosen={people} choose={setPeople} />
        </details>
      )}
      {(parts.includes("timecode") || parts.includes("timetable")) && (
        <p class="row">
          {parts.includes("timecode") && <label>Frames a second <select value={rate} onChange={(event) => setRate(event.currentTarget.value)}>{RATES.map(([value, words]) => <option key={value} value={value}>{words}</option>)}</select></label>}
          <label>The track begins at time code <input type="text" value={code} size={11} maxLength={11} spellcheck={false} onInput={(event) => setCode(event.currentTarget.value)} /></label>
        </p>
      )}
      <p class="row"><button type="submit" class="main" disabled={!ready}>Make these</button></p>
    </form>
  );
}

function People({ legend, chosen, choose, crew = false }: { legend: string; chosen: string[]; choose: (who: string[]) => void; crew?: boolean }) {
  const values = state.value?.values;
  const all: string[] = [...(values?.cast ?? []), ...(crew ? (values?.crew ?? []) : [])].map((each: Record<string, any>) => each.name).filter(Boolean);
  return (
    <fieldset><legend>{legend}</legend>
      {all.map((each) => <label key={each}><input type="checkbox" checked={chosen.includes(each)} onChange={(event) => choose(toggled(chosen, each, event.currentTarget.checked))} /> {each}</label>)}
    </fieldset>
  );
}

const toggled = (list: string[], each: string, on: boolean) => (on ? [...list.filter((other) => other !== each), each] : list.filter((other) => other !== each));
