// The list of findings, each with the mends that were tried: one button shows what would change, the next does it.
import { useState } from "preact/hooks";
import type { Finding, Mend } from "./api";
import { subjects } from "./check_words";
import { operate } from "./doing";
import { together } from "./rows";
import { findings, names, pick, pointed, seek, state, tempo, view } from "./store";

const SAID = { stop: "Stop", warn: "Warn", note: "Note" };

export function FindingsList() {
  const found = findings.value;
  if (!found) return <p class="quiet">The checks have not answered yet.</p>;
  const old = found.revision !== state.value?.revision;
  return (
    <div class={old ? "findings older" : "findings"}>
      {old && <p class="quiet">These are about the show before the last change; it is being looked at again.</p>}
      {found.open.length > 0 && <p class="quiet">Still being looked at: {subjects(found.open)}.</p>}
      {found.drawn.length > 0 && <p class="quiet">Looked at as the moves are drawn; how the props really fly comes next: {subjects(found.drawn)}.</p>}
      {found.complete && !found.entries.length && <p>{view.value?.blocks.length ? "Nothing stands against it." : "Nothing is danced yet, so there is nothing to look at."}</p>}
      <ol>
        {found.entries.map((entry, k) => {
          const own = entry.of.map((n) => found.findings[n]).filter(Boolean);
          return (
            <li key={`${k} ${entry.message}`} id={`entry-${k}`} class={`entry ${entry.severity} ${pointed.value === k ? "pointed" : ""}`}>
              <button type="button" class="told" onClick={() => show(own, entry.start, k)}>
                <b>{SAID[entry.severity]}</b> {entry.position && <span class="when">{entry.position}</span>} <Whose found={own} /> {coded(entry.message)}
              </button>
              <Mends found={own} remedies={entry.remedies} old={old} />
            </li>
          );
        })}
      </ol>
      {found.complete && found.unseen.length > 0 && (
        <details><summary>What no check looks at</summary><ul>{found.unseen.map((line) => <li key={line}>{line}</li>)}</ul></details>
      )}
      {found.cautions.length > 0 && <details><summary>Cautions</summary><ul>{found.cautions.map((line) => <li key={line}>{line}</li>)}</ul></details>}
    </div>
  );
}

/** What the file says stands in its own type, as the checks mark it on a command line. */
const coded = (words: string) => words.split("`").map((part, k) => (k % 2 ? <code key={k}>{part}</code> : part));

/** Whose an entry is: everybody of all findings that have its cause; nothing where it is about nobody. */
function Whose({ found }: { found: Finding[] }) {
  const who = [...new Set(found.flatMap((each) => each.who))];
  const order = (name: string) => (names.value.includes(name) ? names.value.indexOf(name) : names.value.length); // crew last
  who.sort((a, b) => order(a) - order(b));
  if (!who.length) return null;
  const said = who.map(tonight);
  const cast = who.every((name) => names.value.includes(name)) && said.every((name, k) => name === who[k]);
  return <span class="whose">{cast ? together(who, names.value) : together(said, [])}:</span>;
}

/** A part, with who takes it tonight: where two have swapped, a name alone would mean either. */
function tonight(part: string): string {
  const standIns = (state.value?.values?.tonight?.stand_ins ?? []) as Record<string, string>[];
  const taken = standIns.find((each) => each.for === part);
  return taken ? `${part}’s part, tonight ${taken.name}` : part;
}

function show(own: Finding[], start: number | null, k: number): void {
  pointed.value = k;
  const counts = tempo.value;
  if (start === null || !counts) return;
  seek(Math.max(0, start));
  pick({ beat: Math.floor(counts.beatAt(start) + 1e-6), who: own[0]?.who.length ? own[0].who : [] });
  setTimeout(() => document.querySelector(".count.on")?.scrollIntoView({ block: "center" }));
}

function Mends({ found, remedies, old }: { found: Finding[]; remedies: string[]; old: boolean }) {
  const all = found.flatMap((each) => each.mends);
  const mends = all.filter((mend, k) => all.findIndex((other) => other.words === mend.words && JSON.stringify(other.lines) === JSON.stringify(mend.lines)) === k);
  const ready = new Set(mends.map((mend) => mend.words));
  const others = remedies.filter((words) => !ready.has(words));
  const [seen, setSeen] = useState<Mend | null>(null);
  return (
    <>
      {mends.length > 0 && (
        <p class="mends">
          {mends.map((mend) => (
            <button key={mend.words} type="button" aria-pressed={seen === mend} onClick={() => setSeen(seen === mend ? null : mend)}>{coded(mend.words)}</button>
          ))}
        </p>
      )}
      {seen && (
        <div class="preview">
          <p>This changes in the file:</p>
          <pre>{seen.lines.map((hunk) => [...hunk.out.map((line) => `− ${line.trim()}`), ...hunk.in.map((line) => `+ ${line.trim()}`)].join("\n")).join("\n…\n")}</pre>
          <button type="button" class="main" disabled={old} onClick={() => { setSeen(null); void operate(seen.operation, `Mended: ${seen.words}.`); }}>Do it</button>
        </div>
      )}
      {others.length > 0 && <ul class="remedies">{others.map((words) => <li key={words}>{coded(words)}</li>)}</ul>}
    </>
  );
}
