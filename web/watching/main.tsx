// A phone that watches a show which somebody plans: it joins by a code, sees and hears, and changes nothing.
import { render } from "preact";
import { computed, signal } from "@preact/signals";
import { Refused, carry, get, listen, type State } from "../planning/api";
import { Dance } from "../planning/dance";
import { askFindings, askSong, look } from "../planning/doing";
import { FindingsList } from "../planning/findings";
import { Transport, player } from "../planning/playing";
import { blockAt, together } from "../planning/rows";
import { Sheet } from "../planning/sheet";
import { StagePlan } from "../planning/stage";
import { away, checking, ended, names, notice, readOnly, seconds, song, state, tempo, view } from "../planning/store";
import { Verdict } from "../planning/top";

const KEPT = "guest";
const joined = signal(false);
const why = signal<string | null>(null);
const trying = signal(false);
const shown = signal<"sheet" | "stage" | "dance" | "findings">("sheet");
const TABS = { sheet: "Sheet", stage: "Stage", dance: "Dance", findings: "Findings" } as const;
const mine = signal(""); // who holds this phone

readOnly.value = true;

// --- the door ---

async function join(code: string): Promise<void> {
  trying.value = true;
  why.value = null;
  try {
    const response = await fetch("api/join", { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ code }) });
    const said = await response.json();
    if (response.ok) {
      sessionStorage.setItem(KEPT, said.token);
      void enter(said.token);
    } else why.value = refusal(said.error);
  } catch {
    why.value = "The program that shares the show does not answer.";
  } finally {
    trying.value = false;
  }
}

function refusal({ message, wait }: { message: string; wait?: number }): string {
  const words = message[0].toUpperCase() + message.slice(1);
  return wait ? `${words}. Wait ${wait < 120 ? `${wait} seconds` : `${Math.ceil(wait / 60)} minutes`}.` : `${words}.`;
}

function Door() {
  return (
    <main class="door">
      <h1>Watch a show</h1>
      <p>Type the code that whoever shares it sees.</p>
      <form onSubmit={(event) => { event.preventDefault(); void join(new FormData(event.currentTarget).get("code") as string); }}>
        <label>Code <input name="code" type="text" autocomplete="off" autocapitalize="characters" spellcheck={false} maxLength={20} required aria-describedby="door-why" /></label>
        <button type="submit" class="main" disabled={trying.value}>Join</button>
        <p id="door-why" class={why.value ? "fault" : ""} role="alert">{why.value}</p>
      </form>
      <p class="quiet">Nothing here is encrypted: others on this network may read along.</p>
    </main>
  );
}

// --- inside ---

/** A show as it is told to those who watch: neither its text nor where it lies. */
async function askState(): Promise<void> {
  const now = await get<Pick<State, "file" | "revision" | "readable" | "saved">>("show");
  state.value = { ...now, folder: "", text: "", track_there: true, new: false, faults: [], values: null, autosave: "journal", undo: null, redo: null, kept: { where: "", message: null }, outside: null, recovered: null };
}

function told(event: string, data: any): void {
  if (event === "show" && data.revision !== state.value?.revision) void askState();
  else if (event === "staged") {
    void look();
    if (!song.value) void askSong();
  } else if (event === "checks") checking.value = data;
  else if (event === "findings") void askFindings();
  else if (event === "end") ended.value = data.message;
}

async function enter(token: string): Promise<void> {
  carry("X-Sequencer-Guest", token);
  try {
    await askState();
  } catch (error) {
    sessionStorage.removeItem(KEPT);
    why.value = error instanceof Refused && error.status === 403 ? "Type the code once more: the show was shared anew." : "The program that shares the show does not answer.";
    return;
  }
  joined.value = true;
  void look();
  void askSong();
  void askFindings().catch(() => {});
  for (let failed = 0; failed < 6; failed += 1) {
    try {
      await listen((event, data) => {
        failed = 0;
        away.value = false;
        told(event, data);
      });
    } catch (error) {
      if (error instanceof Refused) notice(error.message, true);
    }
    if (ended.value) return;
    away.value = true;
    await new Promise((done) => setTimeout(done, 600 * (failed + 1)));
    void look();
  }
  ended.value = "The program that shares the show has ended, or the network is gone.";
}

const whose = computed(() => (names.value.includes(mine.value) ? [mine.value] : names.value));

/** What somebody, or everybody, dances now, and what comes next. */
function Now() {
  const now = view.value, counts = tempo.value;
  if (!now || !counts) return null;
  const beat = counts.beatAt(seconds.value) + 1e-6;
  const who = whose.value[0];
  if (whose.value.length > 1 || !who) return null;
  const own = now.blocks.filter((each) => each.who === who);
  const at = blockAt(own, beat);
  const next = own.filter((each) => each.kind !== "link" && each.path !== null && each.start > beat).sort((a, b) => a.start - b.start)[0];
  return (
    <p class="now">
      <span class="quiet">{who} now</span>
      <b>{at && at.kind !== "link" ? at.title : at ? "a link" : "nothing"}</b>
      {at?.words.length ? <span>{at.words.join("; ")}</span> : null}
      {next && <span class="quiet">then {next.title} at {next.position}, in {Math.ceil(next.start - beat)}</span>}
    </p>
  );
}

function Inside() {
  return (
    <>
      <header class="top">
        <h1>{view.value?.title ?? state.value?.file ?? "…"}</h1>
        <Verdict />
        <label>For <select value={mine.value} onChange={(event) => (mine.value = event.currentTarget.value)}>
          <option value="">{together(names.value, names.value)}</option>{names.value.length > 1 && names.value.map((each) => <option key={each} value={each}>{each}</option>)}
        </select></label>
      </header>
      {ended.value && <p class="fault" role="alert">{ended.value}</p>}
      <main>
      <div class="tabs" role="tablist" aria-label="What is shown" onKeyDown={turn}>
        {(Object.keys(TABS) as (keyof typeof TABS)[]).map((each) => (
          <button key={each} id={`tab-${each}`} type="button" role="tab" aria-selected={shown.value === each} aria-controls="shown" tabIndex={shown.value === each ? 0 : -1} onClick={() => (shown.value = each)}>{TABS[each]}</button>
        ))}
      </div>
      <div id="shown" role="tabpanel" tabIndex={0} aria-labelledby={`tab-${shown.value}`}>
        <Now />
        {!view.value && <p class="quiet">The show is being put on its song …</p>}
        {view.value && shown.value === "sheet" && <Sheet only={whose.value} />}
        {shown.value === "stage" && <StagePlan />}
        {shown.value === "dance" && <Dance />}
        {shown.value === "findings" && <FindingsList />}
        <p class="quiet">You are watching: nothing can be changed from here. The connection is not encrypted.</p>
      </div></main>
      <Transport />
    </>
  );
}

function turn(event: KeyboardEvent): void {
  const all = Object.keys(TABS) as (keyof typeof TABS)[];
  const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
  if (!by) return;
  event.preventDefault();
  shown.value = all[(all.indexOf(shown.value) + by + all.length) % all.length];
  setTimeout(() => document.getElementById(`tab-${shown.value}`)?.focus());
}

addEventListener("keydown", (event) => {
  const at = event.target as HTMLElement;
  if (!joined.value || event.key !== " " || event.ctrlKey || event.metaKey || at.matches("button, input, select, summary")) return;
  event.preventDefault();
  void player.toggle();
});

const box = document.getElementById("page")!;
box.className = "watch";
render(<App />, box);

function App() {
  return joined.value ? <Inside /> : <Door />;
}

const before = sessionStorage.getItem(KEPT);
if (before) void enter(before);

