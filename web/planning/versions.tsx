// Versions kept by a name, and the comparison of any two: what changed, eight by eight, and all else.
import { useEffect, useState } from "preact/hooks";
import { get } from "./api";
import { KINDS, MARKS, NOW, askVersions, clockWords, close, compare, comparing, comparison, goBack, inOrder, keep, looked, lookAt, remove, sides, spokenChange, stepOn, versions, type Change, type Comparison, type Steps, type Version } from "./compared";
import { beside, checking, fresh, state } from "./store";

const AGAIN = 700; // [ms] after a change, before the two are compared again

export function Versions() {
  useEffect(() => void askVersions(), [state.value?.revision, checking.value?.complete]); // a file beside it may be another one
  const two = sides.value;
  return (
    <div class="versions">
      {two ? <Compared /> : (
        <>
          <Keep />
          <KeptList />
          <Any />
        </>
      )}
    </div>
  );
}

// --- keeping ---

function Keep() {
  const [name, setName] = useState("");
  const [there, setThere] = useState(false);
  const put = async (replace: boolean) => {
    const how = await keep(name, replace);
    setThere(how === "there");
    if (how === "kept") setName((now) => (now === name ? "" : now)); // what was typed meanwhile stays
  };
  return (
    <form class="keep" onSubmit={(event) => { event.preventDefault(); if (name.trim()) void put(false); }}>
      <label for="version-name">Keep the show as it is now, and call it</label>
      <p class="row">
        <input id="version-name" type="text" value={name} maxLength={80} placeholder="before the rehearsal" autocomplete="off" onInput={(event) => { setName(event.currentTarget.value); setThere(false); }} />
        <button type="submit" class="main" disabled={!name.trim()}>Keep it</button>
      </p>
      {there && (
        <p class="fault" role="alert">
          There is a version “{name.trim()}” already. <button type="button" class="small" onClick={() => void put(true)}>Replace it</button> <button type="button" class="small" onClick={() => setThere(false)}>Keep both: choose another name</button>
        </p>
      )}
    </form>
  );
}

function KeptList() {
  const all = versions.value;
  if (!all) return <p class="quiet">Looking for versions …</p>;
  if (!all.length) return <p class="quiet">No version has been kept yet. Each becomes a show file of its own beside this one, such as “{named(state.value!.file, "before the rehearsal")}”.</p>;
  return <ul class="kept-list" aria-label="Versions">{all.map((each) => <Kept key={each.name} version={each} />)}</ul>;
}

function named(file: string, name: string): string {
  const dot = file.lastIndexOf(".");
  return dot > 0 ? `${file.slice(0, dot)} (${name})${file.slice(dot)}` : `${file} (${name})`;
}

function Kept({ version }: { version: Version }) {
  const [asked, setAsked] = useState(false);
  const { stop = 0, warn = 0 } = version.checked ?? {};
  const counts = [stop ? `${stop} stop` : "", warn ? `${warn} warn` : ""].filter(Boolean).join(", ") || "nothing against it";
  const against = !version.checked ? "not checked when it was kept" : version.holds ? counts : `${counts} when it was kept; the program or a file it reads may have changed since`;
  return (
    <li>
      <h3>{version.name}</h3>
      <p class="quiet"><time dateTime={version.time}>{clockWords(version.time)}</time> · {against} · {version.file}</p>
      <p>{version.same ? "The show now is the same, letter by letter." : `Since then: ${version.line}.`}</p>
      <p class="row">
        <button type="button" disabled={version.same} onClick={() => void compare(`version:${version.name}`, NOW)}>Compare<span class="unseen"> {version.name} with the show now</span></button>
        <button type="button" disabled={version.same} onClick={() => void goBack({ name: version.name }, state.value!.revision)} title="One step: Undo takes it back">Go back to it<span class="unseen"> {version.name}</span></button>
        <button type="button" aria-expanded={asked} onClick={() => setAsked(!asked)}>Delete<span class="unseen"> {version.name}</span></button>
      </p>
      {asked && (
        <p class="fault" role="alert">
          Delete “{version.name}” for good? Its file goes. <button type="button" class="small" onClick={() => void remove(version.name)}>Delete it</button> <button type="button" class="small" onClick={() => setAsked(false)}>Leave it</button>
        </p>
      )}
    </li>
  );
}

/** On a narrow page the list is far below the sheet: the change that is looked at, and the way to the next, stay in sight. */
export function StepBar() {
  const found = comparison.value, k = looked.value, all = inOrder.value;
  if (!found || k === null || !all.length) return null;
  const at = all.indexOf(k);
  return (
    <div class="step-bar" role="group" aria-label="From change to change">
      <button type="button" class="small" disabled={at === 0} onClick={() => stepOn(-1)} aria-label="Previous change">↑</button>
      <button type="button" class="small" disabled={at === all.length - 1} onClick={() => stepOn(1)} aria-label="Next change">↓</button>
      <p>{at + 1} of {all.length}: <b>{MARKS[found.changes[k].kind]}</b> {found.changes[k].who.join(", ")} {found.changes[k].words}</p>
      <button type="button" class="small" onClick={close}>Close</button>
    </div>
  );
}

// --- any two ---

function Any() {
  const [old, setOld] = useState("file");
  const [other, setOther] = useState(NOW);
  const [steps, setSteps] = useState<Steps>({ at: 0, steps: [] });
  useEffect(() => void get<Steps>("history").then(setSteps, () => {}), [state.value?.revision]);
  const step = /^step:(\d+)$/.exec(old);
  return (
    <fieldset class="any"><legend>Compare any two</legend>
      <label>What was <Which value={old} set={setOld} steps={steps} /></label>
      <label>with what is <Which value={other} set={setOther} steps={steps} /></label>
      <p class="row">
        <button type="button" class="main" disabled={old === other} onClick={() => void compare(old, other)}>Compare</button>
        {step && <button type="button" title="One step: Undo takes it back" onClick={() => void goBack({ step: Number(step[1]) }, state.value!.revision)}>Go back to that step</button>}
      </p>
    </fieldset>
  );
}

function Which({ value, set, steps }: { value: string; set: (value: string) => void; steps: Steps }) {
  const late = steps.steps.map((each, k) => ({ ...each, k: k + 1 })).reverse();
  return (
    <select value={value} onChange={(event) => set(event.currentTarget.value)}>
      <option value={NOW}>the show now</option>
      <option value="file">the file as it was saved</option>
      {(versions.value ?? []).length > 0 && <optgroup label="Versions">{versions.value!.map((each) => <option key={each.name} value={`version:${each.name}`}>{each.name}</option>)}</optgroup>}
      <optgroup label="Steps">
        {late.map((each) => <option key={each.k} value={`step:${each.k}`}>after {each.k}: {each.words}{each.k > steps.at ? " (undone)" : ""}, {clockWords(each.time)}</option>)}
        <option value="step:0">as it was opened</option>
      </optgroup>
    </select>
  );
}

// --- the comparison ---

function Compared() {
  const two = sides.value!, found = comparison.value;
  const follows = [two.old, two.new].some((each) => each === NOW || each === "file");
  useEffect(() => {
    // What is compared with the show as it is now is compared anew once that is another one.
    if (!follows || !comparison.value) return;
    const waiting = setTimeout(() => void compare(two.old, two.new, true), AGAIN);
    return () => clearTimeout(waiting);
  }, [state.value?.revision, state.value?.saved, checking.value?.complete]);
  return (
    <section class={comparing.value || !fresh.value ? "compared older" : "compared"} aria-label="Comparison">
      <p class="row"><button type="button" onClick={close}>Back to the versions</button></p>
      {found ? <Found found={found} /> : <p class="quiet" role="status">The two are put on the song and compared …</p>}
    </section>
  );
}

function Found({ found }: { found: Comparison }) {
  const all = inOrder.value, at = looked.value === null ? -1 : all.indexOf(looked.value);
  const rows = found.eights;
  return (
    <>
      <h3>{capital(found.new)}, compared with {found.old}</h3>
      <p>{capital(found.line)}.</p>
      {found.faults.map((each) => <p key={each} class="fault">{capital(each)}.</p>)}
      {all.length > 0 && (
        <p class="row" role="group" aria-label="From change to change">
          <button type="button" disabled={at === 0} onClick={() => stepOn(-1)} title="Alt + arrow up">Previous change</button>
          <button type="button" disabled={at === all.length - 1} onClick={() => stepOn(1)} title="Alt + arrow down">Next change</button>
          <span class="quiet">{at >= 0 ? `${at + 1} of ${all.length}` : `${all.length} in all`} · Alt + ↑ ↓</span>
        </p>
      )}
      <div class="change-list" onKeyDown={walk}>
        {rows.map((row, k) => (
          <div key={`${row.bar} ${row.section}`}>
            {row.section !== rows[k - 1]?.section && <h4>{row.section || "Before the first section"}</h4>}
            <div class="change-row"><b>bar {row.bar}</b><ul>{row.changes.map((n) => <One key={n} change={found.changes[n]} k={n} />)}</ul></div>
          </div>
        ))}
        {found.elsewhere.length > 0 && <Elsewhere found={found} />}
      </div>
      <FindingsCompared found={found} />
    </>
  );
}

const SUBJECTS: Record<string, string> = {
  dance: "What is danced", entries: "How the dance is put down", floor: "Where everybody stands and walks", song: "The song and its count", cast: "The cast", crew: "The crew",
  place: "The place", fire: "Fire", rules: "Rules and limits", other: "Title and other headings", writing: "How it is written",
};

function Elsewhere({ found }: { found: Comparison }) {
  const by = Object.keys(SUBJECTS).map((subject) => [subject, found.elsewhere.filter((k) => found.changes[k].subject === subject)] as const).filter(([, own]) => own.length);
  return <>{by.map(([subject, own]) => <div key={subject}><h4>{SUBJECTS[subject]}</h4><ul class="change-row">{own.map((k) => <One key={k} change={found.changes[k]} k={k} />)}</ul></div>)}</>;
}

function One({ change, k }: { change: Change; k: number }) {
  const on = looked.value === k;
  return (
    <li>
      <button type="button" class={`change ${change.kind} ${on ? "on" : ""}`} data-change={k} aria-current={on ? "true" : undefined} aria-label={`${KINDS[change.kind]}. ${spokenChange(change, k)}`} onClick={() => lookAt(k)}>
        <b aria-hidden="true">{MARKS[change.kind]}</b> {change.position && <span class="when">{change.position}</span>} {change.who.length > 0 && <em>{change.who.join(", ")}</em>} {change.words}
      </button>
      {on && change.moves.length > 0 && <button type="button" class="small" onClick={() => beside("stage")}>See it on the stage</button>}
    </li>
  );
}

function FindingsCompared({ found }: { found: Comparison }) {
  const { unknown, changes, same, unseen } = found.findings;
  if (found.identical && !changes.length) return null;
  return (
    <div class="findings-compared">
      <h4>What stands against it</h4>
      {unknown.length ? unknown.map((each) => <p key={each} class="quiet">{capital(each)}, so findings are not compared.</p>) : (
        <>
          <p class="quiet">{same === 1 ? "1 finding" : `${same} findings`} as before{changes.length ? ":" : "; none new, none gone."}</p>
          <ul>{changes.map((each, k) => (
            <li key={k} class={`change ${each.kind}`}><b aria-hidden="true">{MARKS[each.kind]}</b> <em>{KINDS[each.kind]}</em> {capital(each.severity)} {each.position} {each.message}{each.before && <span class="quiet"> Before: {each.before}</span>}</li>
          ))}</ul>
          {unseen.map((each) => <p key={each} class="quiet">{capital(each)}</p>)}
        </>
      )}
    </div>
  );
}

const capital = (words: string) => words.slice(0, 1).toUpperCase() + words.slice(1);

/** Arrow keys walk over the list. */
function walk(event: KeyboardEvent): void {
  if (!["ArrowDown", "ArrowUp"].includes(event.key) || event.altKey) return;
  const all = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>("button.change")];
  const at = all.indexOf(event.target as HTMLElement);
  if (at < 0) return;
  event.preventDefault();
  all[Math.min(Math.max(at + (event.key === "ArrowDown" ? 1 : -1), 0), all.length - 1)].focus();
}

/** While two are compared, Alt and an arrow key step from change to change wherever the keyboard is. */
export function stepKey(event: KeyboardEvent): boolean {
  const at = event.target as HTMLElement;
  if (at.matches("select, textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])")) return false; // there the keys mean something else
  if (!comparison.value || !event.altKey || event.ctrlKey || event.metaKey || !["ArrowDown", "ArrowUp"].includes(event.key)) return false;
  stepOn(event.key === "ArrowDown" ? 1 : -1);
  return true;
}
