// Drafts: a routine proposed for what is empty, shown before it is put into the show.
import { signal } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { post, saidOf, type State } from "./api";
import { doing, operate } from "./doing";
import { useRefused } from "./fields";
import { draft, errand, since, type Draft, type Errand } from "./errands";
import { showForm } from "./show_form";
import { CLOSE, moment } from "./rows";
import { beside, opened, picked, state, tempo, view } from "./store";

const SHORTEST = 6; // [beats] of a gap that is filled

const focused = signal(false); // the keyboard is brought here from elsewhere

/** Brings the keyboard to the heading of what has just come, where what it was on has gone. */
export function useHeading(box: RefObject<HTMLElement | null>, state: string | undefined): void {
  const before = useRef(false);
  useEffect(() => {
    const at = document.activeElement, lost = !at || at === document.body || at.closest("[hidden]");
    if ((before.current || focused.value) && lost) box.current?.querySelector<HTMLElement>("h2, h3")?.focus({ preventScroll: true });
    before.current = true;
    focused.value = false;
  }, [state]);
}

export function Drafting() {
  const now = draft.value;
  const box = useRef<HTMLDivElement>(null);
  useHeading(box, now?.state);
  if (!state.value?.readable) return <p class="quiet">The file cannot be read as a show: mend it under Text, then a routine can be drafted.</p>;
  return (
    <div ref={box} class="drafting">
      {now?.state === "working" ? <Working now={now} /> : now?.state === "done" && now.offer ? <Offered now={now} /> : <Asking now={now} />}
    </div>
  );
}

// --- asking ---

function Asking({ now }: { now: Draft | null }) {
  const drafted = hasDrafted();
  const gap = picked.value ? gapAround(picked.value.beat) : null;
  const sections = view.value?.sections ?? [];
  const [section, setSection] = useState("");
  const [seed, setSeed] = useState(0);
  const ask = (what: object) => void errand("draft", { seed, ...what });
  return (
    <>
      <h3 tabIndex={-1}>A routine for this song</h3>
      <p>Fills what is empty with moves that everybody can dance at this tempo, and checks the whole. What you wrote yourself is left as it is. You see it first, then you decide.</p>
      {now?.state === "failed" && <p class="fault" role="alert">{now.error && saidOf(now.error)}</p>}
      {now?.state === "stopped" && <p class="fault">{sentence(now.words)}</p>}
      <p class="row">
        <button type="button" class="main" onClick={() => ask({})}>{drafted ? "Draft anew what was drafted" : "Draft what is empty"}</button>
        {drafted && <button type="button" onClick={() => ask({ another: true })}>Another routine</button>}
      </p>
      <fieldset><legend>Only a part of the song</legend>
        <p>
          <label>Section <select value={section} onChange={(event) => setSection(event.currentTarget.value)}>
            <option value="" />{sections.map((each) => <option key={each.name} value={each.name}>{each.name}</option>)}
          </select></label>
          <button type="button" disabled={!section} onClick={() => ask({ section })}>Draft this section</button>
          {drafted && <button type="button" disabled={!section} onClick={() => ask({ section, another: true })}>Another one for it</button>}
        </p>
        {gap
          ? <p><span>The empty stretch at the chosen count, {gap.from} to {gap.until}</span> <button type="button" onClick={() => ask({ span: [gap.from, gap.until] })}>Draft this stretch</button></p>
          : <p class="quiet">Or choose an empty count in the sheet: then the stretch around it can be drafted.</p>}
      </fieldset>
      <Levels />
      <p class="row"><label>Variant <input type="number" min={0} step={1} value={seed} aria-describedby="seed-why" onInput={(event) => setSeed(Math.max(0, Math.round(Number(event.currentTarget.value) || 0)))} /></label></p>
      <p class="quiet" id="seed-why">Variant 0 is what fits best. Another number decides otherwise where it makes little difference; the same number gives the same routine again.</p>
    </>
  );
}

/** What everybody can do, as far as a draft asks for it. */
function Levels() {
  const cast: Record<string, any>[] = state.value?.values?.cast ?? [];
  const level = useRefused(async ([name, chosen]) => operate({ do: "change-person", group: "cast", name, values: { level: chosen ? Number(chosen) : null } }, `${name}: level ${chosen || "not said"}.`));
  return (
    <fieldset><legend>What everybody can dance</legend>
      {cast.map((each) => (
        <p key={each.name}>
          <label>{each.name} <select value={String(each.level ?? "")} onChange={(event) => void level([each.name, event.currentTarget.value])}>
            <option value="">{each.repertoire ? "only what is listed" : "level 3, as nothing is said"}</option>
            {[1, 2, 3, 4, 5].map((level) => <option key={level} value={level}>{LEVELS[level]}</option>)}
          </select></label>
          {each.repertoire && <span class="quiet">{known(each.repertoire)}</span>}
        </p>
      ))}
      <p class="row">
        <button type="button" onClick={() => showForm("Cast")}>Moves known, learnt, never danced</button>
        <button type="button" onClick={() => showForm("Wishes for drafts")}>Wishes</button>
      </p>
    </fieldset>
  );
}

const LEVELS = ["", "level 1: first moves", "level 2: easy", "level 3: middling", "level 4: hard", "level 5: everything"];

function known(repertoire: Record<string, any>): string {
  return Object.entries(repertoire).map(([key, list]) => `${key}: ${[list].flat().join(", ")}`).join("; ");
}

export function hasDrafted(): boolean {
  const rows: Record<string, any>[] = state.value?.values?.timeline ?? [];
  return rows.some((each) => each && "drafted" in each);
}

/** The stretch around a count in which nobody has anything written, in whole beats; null where somebody has, or it is too short. */
export function gapAround(beat: number): { from: string; until: string } | null {
  const now = view.value, counts = tempo.value;
  if (!now || !counts) return null;
  const written = now.blocks.filter((each) => each.path !== null);
  if (written.some((each) => each.start < beat + 1 - CLOSE && each.end > beat + CLOSE)) return null;
  const end = Math.floor(counts.beatAt(now.duration) + CLOSE);
  const low = Math.ceil(Math.max(0, ...written.map((each) => each.end).filter((each) => each <= beat + CLOSE)) - CLOSE);
  const high = Math.floor(Math.min(end, ...written.map((each) => each.start).filter((each) => each > beat + CLOSE)) + CLOSE);
  return high - low < SHORTEST ? null : { from: moment(counts, low), until: moment(counts, high) };
}

/** The way from the form about a count to a draft of the stretch around it. */
export function DraftHere({ beat }: { beat: number }) {
  const gap = gapAround(beat);
  if (!gap) return null;
  const ask = () => {
    beside("draft");
    opened.value = false;
    focused.value = true;
    void errand("draft", { span: [gap.from, gap.until] });
  };
  return <button type="button" onClick={ask}>Draft {gap.from} to {gap.until}</button>;
}

/** Over a sheet on which nothing is danced yet. */
export function FirstMoves() {
  if (!view.value || view.value.blocks.length || !state.value?.readable) return null;
  const ask = () => { beside("draft"); focused.value = true; void errand("draft", {}); };
  if (draft.value?.state === "done" && draft.value.offer)
    return (
      <div class="first">
        <p>Your draft is ready under Draft: put it into the show, or leave it.</p>
        <button type="button" class="main" onClick={() => beside("draft")}>Look at it</button>
      </div>
    );
  return (
    <div class="first">
      <p>Nothing is danced yet. Click a count, or walk there with the arrow keys and press Enter, to put a move there; or let a routine be drafted for the whole song.</p>
      {draft.value?.state === "working"
        ? <p class="progressing"><progress max={1} value={draft.value.share} aria-label="Drafting" /><span>A routine is being drafted: {Math.round(100 * draft.value.share)} %</span></p>
        : <button type="button" class="main" onClick={ask}>Draft a first routine</button>}
    </div>
  );
}

// --- at work ---

export function Working({ now }: { now: Draft }) {
  return (
    <>
      <h3 tabIndex={-1}>Drafting{part(now)}</h3>
      <Progressing now={now} />
      <p class="row">
        <button type="button" disabled={now.stopping} onClick={() => void errand("draft/stop", { keep: true })}>{now.stopping ? "Stopping …" : "Stop, and show the best so far"}</button>
        <button type="button" onClick={() => void errand("draft/stop")}>Give it up</button>
      </p>
      <p class="quiet">You can go on planning meanwhile. What you change then is put together with the draft, where both touch different places.</p>
    </>
  );
}

/** The words of the command line, and how much is done. */
export function Progressing({ now }: { now: Errand }) {
  const [passed, setPassed] = useState(now.seconds); // between two words of the server
  useEffect(() => {
    setPassed(now.seconds);
    const ticking = setInterval(() => setPassed((before) => before + 1), 1000);
    return () => clearInterval(ticking);
  }, [now.seconds]);
  return (
    <p class="progressing">
      <progress max={1} value={now.share} aria-label={now.words} />
      <span>{Math.round(100 * now.share)} %, {since(passed)}</span>
      <span class="quiet">{now.words} …</span>
    </p>
  );
}

const part = (now: Draft) => (now.asked.section ? ` ${now.asked.section}` : now.asked.span ? ` ${now.asked.span.join(" to ")}` : "");
export const sentence = (words: string) => (words ? `${words[0].toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? "" : "."}` : "");

// --- what it offers ---

function Offered({ now }: { now: Draft }) {
  const offer = now.offer!;
  const lay = async () => {
    if (await doing(() => post<State>("draft/lay", { number: now.number }), "The draft is in the show.")) {
      opened.value = false; // a form about a count would stand before what the checks say of it
      beside("findings");
    }
  };
  const { section, span } = now.asked;
  const again = () => void errand("draft", { section, span, another: true, seed: now.asked.seed });
  const groups = new Map<string, Draft["offer"] extends null ? never : { position: string; words: string }[]>();
  for (const row of offer.rows) groups.set(row.section, [...(groups.get(row.section) ?? []), row]);
  return (
    <>
      <h3 tabIndex={-1}>This could be danced{part(now)}</h3>
      {offer.words.map((line, k) => <p key={k} class={/^(NOT checked|cannot be flown|left out|left open)/.test(line) ? "caution" : k ? "quiet" : ""}>{sentence(plain(line))}</p>)}
      {!offer.new && <p class="caution">It is what stands in the show already.</p>}
      {now.older && <p class="caution">The show has been changed since this was begun. Both changes are put together where they touch different places; else you are told.</p>}
      <p class="row">
        <button type="button" class="main" disabled={!offer.new} onClick={() => void lay()}>Put it into the show</button>
        <button type="button" onClick={again}>Another one</button>
        <button type="button" onClick={() => void errand("draft/stop")}>Leave it</button>
      </p>
      <p class="quiet">It is kept as an offer until you put it into the show or leave it, even if the program ends before.</p>
      <div class="offered">
        {[...groups].map(([section, rows]) => (
          <section key={section} aria-label={section}>
            <h4>{section}</h4>
            <ol>{rows.map((row) => <li key={row.position}><b>{row.position}</b> <span>{row.words}</span></li>)}</ol>
          </section>
        ))}
      </div>
      {offer.why.length > 0 && <details><summary>What counts against it, in figures</summary><pre tabIndex={0}>{offer.why.join("\n")}</pre></details>}
      {offer.lines.length > 0 && <details><summary>What changes in the file</summary><pre tabIndex={0}>{offer.lines.map((hunk) => [...hunk.out.map((line) => `− ${line}`), ...hunk.in.map((line) => `+ ${line}`)].join("\n")).join("\n…\n")}</pre></details>}
    </>
  );
}

/** Where the command line names commands, the page has its own way. */
function plain(line: string): string {
  return line.replace(": run `sequencer check` before you rely on it", ": the checks look at it once it is in the show").replace(": `sequencer check --mend` mends it as far as it goes", ": Findings offers mends once it is in the show");
}
