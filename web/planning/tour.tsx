// A short tour for a first visit: a few steps, each with the part of the page that it is about marked.
import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { get, post } from "./api";

const at = signal<number | null>(null); // the step that is shown
const called = signal(false); // by a person: then the keyboard goes there

const STEPS: [title: string, words: string, about: string][] = [
  ["The sheet", "Your song stands here in eights, as on a count sheet. A bar across the counts is a move, a hatched one the link to the next. Click a count, or walk there with the arrow keys and press Enter, to put a move or to change the one that is there. Drag a move to another count, or its end to stretch it; a finger rests on it first.", ".left"],
  ["A routine to begin with", "Under Draft you get a proposal: moves that everybody can dance at this tempo, checked as a whole. You see it before it goes into the show, and one Undo takes it out again.", "#tab-draft"],
  ["Hear it, see it", "The space bar plays the song. Under Dance the show is danced; under Stage you drag everybody to where they stand.", ".transport"],
  ["What stands against it", "After every change the show is looked at anew: reach, distances, walks, fire. The answer stands up here, each finding beside its row and under Findings, often with a mend to try.", ".verdict"],
  ["Save and print", "Nothing that you do is lost, and Undo goes back to the beginning. Save writes the file. Under Print are the sheets for the night and the page to rehearse with.", ".tools"],
];

export async function askTour(): Promise<void> {
  const { seen } = await get<{ seen: boolean }>("tour");
  if (!seen) at.value = 0;
}

export function callTour(): void {
  called.value = true;
  at.value = 0;
}

function end(): void {
  at.value = null;
  void post("tour", {}).catch(() => {});
  if (called.value) document.getElementById("call-tour")?.focus();
}

function go(step: number): void {
  called.value = true;
  at.value = step;
}

export function Tour() {
  const step = at.value;
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (step === null) return;
    const about = document.querySelector(STEPS[step][2]);
    about?.classList.add("toured");
    if (called.value) head.current?.focus();
    return () => about?.classList.remove("toured");
  }, [step]);
  if (step === null) return null;
  const [title, words] = STEPS[step];
  return (
    <section class="tour" aria-labelledby="tour-title" onKeyDown={(event) => { if (event.key === "Escape") end(); }}>
      <div>
        <h2 id="tour-title" ref={head} tabIndex={-1} aria-describedby="tour-words">{title} <small>{step + 1} of {STEPS.length}</small></h2>
        <p id="tour-words">{words}</p>
      </div>
      <p class="row">
        {step > 0 && <button type="button" onClick={() => go(step - 1)}>Back</button>}
        {step < STEPS.length - 1 && <button type="button" class="main" onClick={() => go(step + 1)}>Next</button>}
        <button type="button" class={step === STEPS.length - 1 ? "main" : ""} onClick={end}>{step === STEPS.length - 1 ? "Done" : step ? "End the tour" : "No tour"}</button>
      </p>
    </section>
  );
}
