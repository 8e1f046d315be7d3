// The planning page: the sheet of eights, beside it the stage, the dance, the findings and the file.
import { render } from "preact";
import { effect } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { Refused, enter, get, listen, type Pattern } from "./api";
import { Beginning, MissingSong, beginTold } from "./beginning";
import { CountPanel } from "./counting";
import { Dance } from "./dance";
import { askFindings, askSong, askState, heard, look, redo, save, undo } from "./doing";
import { Drafting, FirstMoves } from "./drafting";
import { askErrands, errandTold } from "./errands";
import { FindingsList } from "./findings";
import { CastNames, ShowForms } from "./forms";
import { PlaceForm } from "./place";
import { Printing } from "./printing";
import { ShareBanner } from "./share";
import { HereOrEverywhere } from "./dragging";
import { Sheet } from "./sheet";
import { TakenBack } from "./taken_back";
import { Transport, player } from "./playing";
import { StagePlan } from "./stage";
import { away, besides, ended, findings, patterns, side, stageFault, state, view, written } from "./store";
import { Outside } from "./outside";
import { FileText } from "./text";
import { WhoIsThere } from "./who";
import { Notices, Top } from "./top";
import { Tour, askTour } from "./tour";
import { StepBar, Versions, stepKey } from "./versions";

const SIDES = { findings: "Findings", stage: "Stage", dance: "Dance", count: "Count", who: "Who", draft: "Draft", forms: "Show", print: "Print", versions: "Versions", text: "Text" } as const;

function App() {
  const now = state.value;
  if (!now) return <main class="opening"><p>{ended.value ?? "Opening the show …"}</p></main>;
  if (!now.text.trim()) return <>{now.new ? <Beginning /> : <TakenBack />}<Notices /><Outside /></>;
  return (
    <>
      <a class="skip" href="#side">Skip the sheet</a>
      <Top />
      <Tour />
      <ShareBanner />
      <main>
        <section class="left" aria-label="The sheet">
          {stageFault.value && now.readable && <p class="fault">{stageFault.value}</p>}
          <MissingSong />
          <FirstMoves />
          {view.value ? <Sheet /> : <p class="quiet">{!now.readable ? "The file cannot be read as a show: mend it under Text." : stageFault.value ? "" : "The show is being put on its song …"}</p>}
        </section>
        <aside id="side" class="side">
          <PlaceForm />
          <div class="tabs" role="tablist" aria-label="Beside the sheet" onKeyDown={turn}>
            {(Object.keys(SIDES) as (keyof typeof SIDES)[]).map((each) => (
              <button key={each} id={`tab-${each}`} type="button" role="tab" aria-selected={side.value === each} aria-controls="panel" tabIndex={side.value === each ? 0 : -1} onClick={() => show(each)}>
                {SIDES[each]}{each === "findings" && <Count />}
              </button>
            ))}
          </div>
          <div id="panel" class="panel" role="tabpanel" tabIndex={0} aria-labelledby={`tab-${side.value}`}>
            {side.value === "findings" && <FindingsList />}
            {side.value === "stage" && <StagePlan />}
            {side.value === "dance" && <Dance />}
            {side.value === "count" && <CountPanel />}
            {side.value === "who" && <WhoIsThere />}
            {side.value === "draft" && <Drafting />}
            {side.value === "forms" && <ShowForms />}
            {side.value === "print" && <Printing />}
            {side.value === "versions" && <Versions />}
            {side.value === "text" && <FileText />}
          </div>
        </aside>
      </main>
      <StepBar />
      <Transport><BelowAndBack /></Transport>
      <HereOrEverywhere />
      <Notices />
      <Outside />
      <CastNames />
    </>
  );
}

function Count() {
  const against = (findings.value?.entries ?? []).filter((each) => each.severity !== "note").length;
  return against ? <b class="number">{against}</b> : null;
}

/** What a tab shows is seen from its top, right below the tabs: not where something else was left, nor below a long form about a count. */
function show(which: keyof typeof SIDES): void {
  side.value = which;
  const box = document.getElementById("side")!, panel = document.getElementById("panel")!, tabs = panel.previousElementSibling as HTMLElement;
  if (!below.matches) box.scrollTop = panel.offsetTop - tabs.offsetHeight;
  else scrollBy(0, Math.min(0, panel.getBoundingClientRect().top - tabs.offsetHeight));
}

const below = matchMedia("(max-width: 900px)"); // what is beside the sheet stands below it

/** On a narrow page what somebody asked for on the sheet comes into sight below it. */
effect(() => {
  if (besides.value && below.matches) setTimeout(() => document.querySelector(".tabs")?.scrollIntoView());
});

/** On a narrow page, the way from the sheet to what stands below it, and back. */
function BelowAndBack() {
  const [down, setDown] = useState(false);
  useEffect(() => {
    const watching = new IntersectionObserver(([tabs]) => setDown(tabs.boundingClientRect.top < innerHeight / 2), { threshold: [0, 1], rootMargin: "0px 0px -50%" });
    watching.observe(document.querySelector(".tabs")!);
    return () => watching.disconnect();
  }, []);
  const go = () => (down ? (document.querySelector(".count.on") ?? document.querySelector(".top"))?.scrollIntoView({ block: "center" }) : document.querySelector(".tabs")?.scrollIntoView());
  return <button type="button" class="below" onClick={go}>{down ? "Sheet ↑" : "Tabs ↓"}</button>;
}

function turn(event: KeyboardEvent): void {
  const all = Object.keys(SIDES) as (keyof typeof SIDES)[];
  const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
  if (!by) return;
  event.preventDefault();
  show(all[(all.indexOf(side.value) + by + all.length) % all.length]);
  setTimeout(() => document.getElementById(`tab-${side.value}`)?.focus());
}

addEventListener("keydown", (event) => {
  const at = event.target as HTMLElement;
  const typing = at.matches("textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])");
  const command = event.ctrlKey || event.metaKey;
  const key = event.key.toLowerCase();
  if (stepKey(event)) event.preventDefault();
  else if (command && key === "s") {
    event.preventDefault();
    if (state.value?.text.trim()) void save(); // a show that was undone is not written over by a key
  } else if (command && !typing && key === "z") {
    event.preventDefault();
    void (event.shiftKey ? redo() : undo());
  } else if (command && !typing && key === "y") {
    event.preventDefault();
    void redo();
  } else if (!command && !typing && event.key === " " && !at.matches("button, input, summary")) {
    event.preventDefault();
    void player.toggle();
  }
});

addEventListener("beforeunload", (event) => {
  // Nothing is lost: the journal keeps it. But a file that is not written is easily forgotten.
  const unwritten = state.value && !state.value.saved && state.value.autosave === "journal";
  if ((unwritten || written.value) && !ended.value) event.preventDefault();
});

async function begin(): Promise<void> {
  try {
    await enter();
    await askState();
  } catch (error) {
    ended.value = error instanceof Refused && error.status === 403 ? "This address has lost its key: open the page again from the terminal, where sequencer open printed it." : String(error instanceof Error ? error.message : error);
    return;
  }
  // The view and the song are asked for once the stream says that the show is staged: at once, if it is.
  if (!state.value!.readable) {
    side.value = "text";
    void askSong();
    void look();
  }
  void askFindings().catch(() => {});
  void askErrands().catch(() => {});
  void askTour().catch(() => {});
  void get<{ patterns: Pattern[] }>("patterns").then((found) => (patterns.value = found.patterns), () => {});
  for (let failed = 0; failed < 5; ) {
    try {
      await listen((event, data) => {
        failed = 0;
        away.value = false;
        if (event === "end") ended.value = data.message;
        if (event === "errand") data.kind === "begin" ? beginTold(data) : errandTold(data);
        heard(event, data);
      });
    } catch {
      failed += 1;
    }
    if (ended.value) return;
    away.value = true;
    failed += 1;
    await new Promise((done) => setTimeout(done, 500 * failed));
  }
  ended.value = "The program behind this page has ended. Run sequencer open again: nothing is lost.";
}

render(<App />, document.getElementById("page")!);
void begin();
