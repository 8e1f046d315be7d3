// What the last switch of who is there changed: who stands where, what falls out or comes back, who leads, which jobs are open, what the checks say of it.
import { useEffect, useState } from "preact/hooks";
import { Refused, get, type Checking } from "./api";
import { subjects } from "./check_words";
import { checking, fresh, opened, pick, seek, state, tempo, told, view, walking } from "./store";

interface Part { part: string; group: "cast" | "crew"; before: string | null; after: string | null; words: string }
interface Stand { formation: string; position: string; second: number; spots: { part: string; person: string | null; at: [number, number] }[] }
interface Row { bar: number; position: string; second: number; moves: number; words: string }
interface Change { part: string; kind: "out" | "back" | "otherwise"; moves: number; sections: { section: string; moves: number; rows: Row[] }[] }
interface Together { kind: "canon" | "mirror"; title: string; position: string; second: number; words: string }
interface Job { part: string; job: string; state: "open" | "still open" | "filled"; left: string[] }
interface FoundChange { kind: "new" | "gone" | "changed"; severity: string; position: string | null; message: string; before: string }
interface Found { unknown: string[]; changes: FoundChange[]; same: number; unseen: string[] }
interface Switched { revision: number; now: number; parts: Part[]; stands: Stand[]; changes: Change[]; together: Together[]; jobs: Job[]; findings: Found | null }

const counted = (many: number, one: string) => `${many} ${one}${many === 1 ? "" : "s"}`;
const CHANGED = { out: ["falls out", "fall out"], back: ["comes back", "come back"], otherwise: ["is danced differently", "are danced differently"] };
const SHORT = 6; // lines that stand open: whoever is there is switched below them
const CAME = { new: "New", gone: "Gone", changed: "Changed" };

/** What the last switch changed, asked for anew when the show or what the checks say of it is another one. */
function useSwitched(): { now: Switched | null; why: string } {
  const [now, setNow] = useState<Switched | null>(null);
  const [why, setWhy] = useState("");
  const looked = checking.value, complete = Boolean(looked?.complete && looked.revision === state.value?.revision);
  useEffect(() => {
    let over = false, again = 0;
    const ask = async () => {
      try {
        const found = await get<Switched | null>("switched");
        if (!over) { setNow(found); setWhy(""); }
      } catch (error) {
        if (over) return;
        if (error instanceof Refused && error.status === 409) again = window.setTimeout(() => void ask(), 300); // something else went first
        else setWhy(error instanceof Error ? error.message : String(error));
      }
    };
    if (fresh.value) void ask();
    return () => { over = true; clearTimeout(again); };
  }, [state.value?.revision, fresh.value, complete]);
  return { now, why };
}

export function LastSwitch() {
  const { now, why } = useSwitched();
  // Whoever only listens is told once for each switch, and once more when all has been looked at.
  useEffect(() => { if (now) told.value = saidOfSwitch(now); }, [now?.revision]);
  useEffect(() => { if (now?.findings && now.parts.length) told.value = `${saidOfSwitch(now)} ${cameAndWent(now.findings)}.`; }, [now?.revision, now?.findings !== null]);
  if (why) return <p class="why-not">What the switch changed cannot be told: {why}</p>;
  if (!now) return null;
  const same = !now.parts.length;
  return (
    <section class="switched" aria-labelledby="switched-head">
      <h3 id="switched-head" tabIndex={-1}>What the switch changed</h3>
      <p>{saidOfSwitch(now)}</p>
      {now.now > now.revision && <p class="quiet">The show has been changed in other ways since: this is about the switch alone.</p>}
      {!same && <Danced changes={now.changes} />}
      {!same && <Led together={now.together} />}
      <Jobs jobs={now.jobs} />
      <Stands stands={now.stands} />
      <Looked found={now.findings} looked={checking.value} current={now.now === now.revision} />
    </section>
  );
}

const saidOfSwitch = (now: Switched): string => (now.parts.length ? `${now.parts.map((each) => each.words).join("; ")}. ${summary(now)}` : "Everybody has the part that they had before.");

/** How much of the show it touches, in a line. */
function summary({ changes, together, jobs }: Switched): string {
  const moves = (kind: Change["kind"]) => changes.filter((each) => each.kind === kind).reduce((sum, each) => sum + each.moves, 0);
  const open = jobs.filter((each) => each.state !== "filled").length, filled = jobs.length - open;
  const said = [
    moves("out") && `${counted(moves("out"), "move")} ${moves("out") === 1 ? "falls" : "fall"} out`,
    moves("back") && `${counted(moves("back"), "move")} ${moves("back") === 1 ? "comes" : "come"} back`,
    moves("otherwise") && `${counted(moves("otherwise"), "move")} ${moves("otherwise") === 1 ? "is" : "are"} danced differently`,
    together.length && (together.length === 1 ? `1 ${together[0].kind} has another lead or side` : `${together.length} canons or mirrors have another lead or side`),
    open && `${counted(open, "job")} ${open === 1 ? "is" : "are"} open`,
    filled && `${counted(filled, "job")} ${filled === 1 ? "is" : "are"} filled again`,
  ].filter(Boolean);
  return said.length ? `${said.join(", ")}.` : "Nobody’s moves or jobs are touched.";
}

/** A moment that leads there in the song and in the sheet. */
function When({ position, second, who }: { position: string; second: number; who: string[] }) {
  const go = () => {
    seek(Math.max(0, second));
    pick({ beat: Math.floor(tempo.value!.beatAt(second) + 1e-3), who });
    opened.value = false;
    walking.value = false;
    setTimeout(() => document.querySelector(".count.on")?.scrollIntoView({ block: "center" }));
  };
  return <button type="button" class="small" onClick={go}>{position}<span class="unseen">: show it in the sheet</span></button>;
}

function Danced({ changes }: { changes: Change[] }) {
  if (!changes.length) return null;
  const there = view.value?.cast.map((each) => each.name) ?? [];
  return (
    <>
      <h4>What is danced</h4>
      {changes.map((each) => (
        <details key={`${each.part} ${each.kind}`} class="inner" open={changes.reduce((sum, one) => sum + one.moves, 0) <= SHORT}>
          <summary>{each.part}’s part: {counted(each.moves, "move")} {CHANGED[each.kind][each.moves === 1 ? 0 : 1]}</summary>
          {each.sections.map((section, k) => (
            <div key={k}>
              <p>{section.section || "outside of the sections"}: {counted(section.moves, "move")}</p>
              <ul>{section.rows.map((row) => <li key={row.position}>bar {row.bar} <When position={row.position} second={row.second} who={there.includes(each.part) ? [each.part] : there} /> {row.words}</li>)}</ul>
            </div>
          ))}
        </details>
      ))}
    </>
  );
}

function Led({ together }: { together: Together[] }) {
  if (!together.length) return null;
  const there = view.value?.cast.map((each) => each.name) ?? [];
  return (
    <details class="inner" open={together.length <= SHORT}>
      <summary>Canons and mirrors</summary>
      <ul>{together.map((each, k) => <li key={k}><When position={each.position} second={each.second} who={there} /> the {each.kind} of {each.title}: {each.words}</li>)}</ul>
    </details>
  );
}

function Jobs({ jobs }: { jobs: Job[] }) {
  if (!jobs.length) return null;
  const STATE = { open: "nobody has it now", "still open": "nobody has it, as before", filled: "filled again" };
  return (
    <>
      <h4>Crew and safety</h4>
      <ul>
        {jobs.map((each, k) => (
          <li key={k} class={each.state === "filled" ? "" : "open-job"}>{each.part}, {each.job}: {STATE[each.state]}{each.left.length > 0 && `; ${each.left.join(" and ")} ${each.left.length === 1 ? "has" : "have"} the same duty`}</li>
        ))}
      </ul>
    </>
  );
}

function Stands({ stands }: { stands: Stand[] }) {
  if (!stands.length) return null;
  const place = ([x, y]: [number, number]) => `${Math.abs(x) < 0.05 ? "on the middle line" : `${Math.abs(x).toFixed(1)} m to stage ${x > 0 ? "left" : "right"}`}, ${Math.abs(y).toFixed(1)} m ${y < 0 ? "downstage" : "upstage"}`;
  return (
    <details class="inner"><summary>Who stands where now</summary>
      {stands.map((each, k) => (
        <div key={k}>
          <p><When position={each.position} second={each.second} who={view.value?.cast.map((one) => one.name) ?? []} /> {each.formation}</p>
          <ul>{each.spots.map((spot) => <li key={spot.part}>{spot.person === null ? `${spot.part}’s spot stays empty` : spot.person === spot.part ? spot.part : `${spot.person}, for ${spot.part}`}: {place(spot.at)}</li>)}</ul>
        </div>
      ))}
    </details>
  );
}

/** What is looked at anew, and how far; then which findings came and went. */
function Looked({ found, looked, current }: { found: Found | null; looked: Checking | null; current: boolean }) {
  const left = looked?.open ?? null;
  return (
    <>
      <h4>Looked at anew</h4>
      {!found && !current && <p class="quiet">The show was changed before all had been looked at after the switch: see Findings.</p>}
      {!found && current && <p class="quiet">{left === null ? "All of it is looked at again." : `Done: ${looked!.done.length ? subjects(looked!.done) : "nothing yet"}. Still to come: ${subjects(left)}.`}</p>}
      {found && (
        <>
          <p>{current && looked?.done.length && !left?.some((each) => each !== "mends") ? `All of it: ${subjects(looked.done)}. ` : ""}{cameAndWent(found)}.</p>
          {found.changes.length > 0 && (
            <ul class="came">
              {found.changes.map((each, k) => <li key={k} class={each.kind}><b>{CAME[each.kind]}</b>, {each.severity}{each.position ? `, ${each.position}` : ""}: {each.message}{each.before ? `; before: ${each.before}` : ""}</li>)}
            </ul>
          )}
          {found.unseen.map((line) => <p key={line} class="quiet">{line}</p>)}
        </>
      )}
    </>
  );
}

function cameAndWent({ changes, same, unknown }: Found): string {
  if (unknown.length) return unknown.join("; ");
  const many = (kind: FoundChange["kind"]) => changes.filter((each) => each.kind === kind).length;
  const said = (["new", "gone", "changed"] as const).filter(many).map((kind) => `${many(kind)} ${kind}`);
  return `Findings: ${said.length ? said.join(", ") : "none new, none gone"}, ${same} as before`;
}
