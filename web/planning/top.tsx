// The head of the page: what is open, what stands against it, undo, save.
import { redo, save, undo } from "./doing";
import { saidOf } from "./api";
import { away, busy, checking, ended, fault, findings, notices, readOnly, stageFault, state, told, view } from "./store";
import { callTour } from "./tour";

export function Top() {
  const now = state.value;
  return (
    <header class="top">
      <h1>{view.value?.title ?? now?.file ?? "…"}</h1>
      <p class="file">{now ? `${now.file} · ${now.saved ? "saved" : "not saved yet"}${tonight(now.values)}` : ""}</p>
      <Verdict />
      <div class="tools">
        <button type="button" disabled={!now?.undo} onClick={() => void undo()} title={now?.undo ? `Take back: ${now.undo} (Ctrl + Z)` : "Nothing to take back"}>Undo</button>
        <button type="button" disabled={!now?.redo} onClick={() => void redo()} title={now?.redo ? `Do again: ${now.redo} (Ctrl + Y)` : "Nothing to do again"}>Redo</button>
        <button type="button" class={now && !now.saved ? "main" : ""} disabled={!now || now.saved} onClick={() => void save()} title="Write the file (Ctrl + S)">Save</button>
        <button type="button" id="call-tour" onClick={callTour}>Tour</button>
      </div>
      <p class="unseen" role="status" aria-live="polite">{told.value}</p>
    </header>
  );
}

/** That not everybody is there tonight: everything on the page is about those who are. */
function tonight(values: Record<string, any> | null): string {
  const away = [values?.tonight?.away ?? []].flat(), standIns: any[] = values?.tonight?.stand_ins ?? [];
  const words = [...standIns.map((each) => `${each.name} for ${each.for}`), ...(away.length ? [`without ${away.join(", ")}`] : [])];
  return words.length ? ` · tonight ${words.join(", ")}` : "";
}

/** What the checks say so far: never clear before all of them have answered about what the file says now. */
export function Verdict() {
  const now = state.value, looked = checking.value, found = findings.value;
  if (!now) return <p class="verdict">opening …</p>;
  if (ended.value || away.value) return <p class="verdict">Not connected: what stands against it is not known</p>;
  if (!now.readable) return <p class="verdict stop">{readOnly.value ? "There is no show to look at now: wait until whoever shares it has mended it" : "The file cannot be read: see Text"}</p>;
  if (stageFault.value) return <p class="verdict stop" title={stageFault.value}>Cannot be danced as it is written</p>;
  const current = looked !== null && looked.revision === now.revision && !busy.value;
  if (current && looked.error) return <p class="verdict stop" title={looked.error.message}>A check broke off: {saidOf(looked.error)}</p>;
  const counts = looked?.counts ?? { stop: 0, warn: 0, note: 0 };
  const left = current ? (looked.open?.length ?? null) : null; // null: which checks there are is not known yet
  const said = [counts.stop ? `${counts.stop} stop` : "", counts.warn ? `${counts.warn} warn` : ""].filter(Boolean).join(", ");
  // Mends are sought once every check has answered: what stands against the show is known by then.
  const seeking = current && left === 1 && looked.open?.[0] === "mends";
  if (!seeking && (!current || left !== 0 || !looked.complete || found?.revision !== now.revision))
    return (
      <p class="verdict looking">
        {current && looked.hearing ? "hearing the song" : left === null ? "looking again" : `looking: ${left} ${left === 1 ? "check" : "checks"} left`}{said && current ? `, so far ${said}` : ""}
        {current && looked.share !== null && <progress max={1} value={looked.share} aria-label={looked.words ?? "looking"} />}
      </p>
    );
  const more = seeking ? "; mends are being sought" : "";
  if (counts.stop) return <p class="verdict stop">Do not dance yet: {said}{more}</p>;
  if (counts.warn) return <p class="verdict warn">Dance with care: {said}{more}</p>;
  if (!view.value?.blocks.length) return <p class="verdict">Nothing to look at yet</p>;
  return <p class="verdict good">Clear, as far as the checks go</p>;
}

export function Notices() {
  return (
    <div class="notices" role="status">
      {fault.value && (
        <p class="refused" role="alert">
          {fault.value.words}{" "}
          {fault.value.instead && <button type="button" class="small main" onClick={fault.value.instead.work}>{fault.value.instead.words}</button>}{" "}
          {fault.value.anyway && <button type="button" class="small" onClick={fault.value.anyway}>Do it all the same</button>}{" "}
          <button type="button" class="small" onClick={() => (fault.value = null)}>Close</button>
        </p>
      )}
      {ended.value && <p class="warn">{ended.value}</p>}
      {state.value?.kept.message && <p class="warn">{state.value.kept.message}</p>}
      {notices.value.map((each) => <p key={each.id} class={each.warn ? "warn" : ""}>{each.words}</p>)}
    </div>
  );
}
