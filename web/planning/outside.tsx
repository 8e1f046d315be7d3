// The file was changed by another program where it was changed here too: which places, and both texts side by side.
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { post, type Conflict, type Lines, type State } from "./api";
import { doing } from "./doing";
import { state } from "./store";

const LINE_ENDS = /\r\n|[\n\r\v\f\x1c-\x1e\x85\u2028\u2029]/; // as the server counts lines

export function Outside() {
  const now = state.value;
  const box = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => box.current?.showModal(), [now?.outside !== null]); // before anything in it is scrolled to its place
  if (!now?.outside) return null;
  const settle = (take: "mine" | "theirs") => void doing(() => post<State>("outside", { take }), take === "mine" ? "Yours is kept." : "The other one is taken.");
  return (
    <dialog ref={box} class="outside" aria-label="The file was changed elsewhere" onCancel={(event) => event.preventDefault()}>
      <h2>The file was changed elsewhere</h2>
      <p>{now.outside.message}</p>
      <Places conflicts={now.outside.conflicts} />
      <Both here={now.text} there={now.outside.text} lines={now.outside.lines} first={firstOf(now.outside.lines, now.outside.conflicts)} settle={settle} />
      <p class="quiet">Neither is lost: what is not kept can be had back with Undo.</p>
    </dialog>
  );
}

/** Each place that both changed, with what stands there on either side. */
function Places({ conflicts }: { conflicts: Conflict[] }) {
  if (!conflicts.length) return <p>The two do not go together. The lines in which they differ are marked below.</p>;
  const said = (words: string | null) => (words === null ? <em>taken out</em> : <code>{words}</code>);
  return (
    <div class="places" tabIndex={0} role="region" aria-label="Changed on both sides">
      <table>
        <thead><tr><th scope="col">Place</th><th scope="col">Here</th><th scope="col">In the file</th></tr></thead>
        <tbody>{conflicts.map((each, k) => (
          <tr key={k}>
            <th scope="row">{each.place}<small>{each.why}</small></th>
            {each.path.length ? <><td>{said(each.ours)}</td><td>{said(each.theirs)}</td></> : <td colSpan={2}>the whole file</td>}
          </tr>
        ))}</tbody>
      </table>
    </div>
  );
}

/** Both texts with the lines marked in which they differ, and a way from each such place to the next. */
function Both({ here, there, lines, first, settle }: { here: string; there: string; lines: Lines[]; first: number; settle: (take: "mine" | "theirs") => void }) {
  const [at, setAt] = useState(first);
  const box = useRef<HTMLDivElement>(null);
  const theirs = placesThere(lines);
  const k = Math.min(at, Math.max(lines.length - 1, 0));
  useLayoutEffect(() => setAt(first), [here, there]);
  useEffect(() => box.current?.querySelectorAll<HTMLElement>(`[data-place="${k}"]`).forEach((each) => {
    const pane = each.closest("pre")!;
    pane.scrollTop = each.offsetTop - pane.clientHeight / 3; // the pane is what it is placed in
  }), [k, here, there]);
  const go = (by: number) => setAt((k + by + lines.length) % lines.length); // round and round: a button that went dead would lose the keyboard
  const words = (own: string[], line: number) => (own.length ? `line ${line}: ${own.map((each) => each.trim()).join(" / ")}` : "nothing");
  return (
    <>
      {lines.length > 0 && (
        <p class="row" role="group" aria-label="From difference to difference">
          <button type="button" class="small" disabled={lines.length < 2} onClick={() => go(-1)}>Previous difference</button>
          <button type="button" class="small" disabled={lines.length < 2} onClick={() => go(1)}>Next difference</button>
          <span role="status">{k + 1} of {lines.length}<span class="unseen">. Here {words(lines[k].out, lines[k].line)}. In the file {words(lines[k].in, theirs[k])}.</span></span>
        </p>
      )}
      <div class="both" ref={box}>
        <div><h3>Here</h3><Marked text={here} places={lines.map((each) => [each.line, each.out.length])} at={k} label="The text here" /><button type="button" class="main" onClick={() => settle("mine")}>Keep this one</button></div>
        <div><h3>In the file</h3><Marked text={there} places={lines.map((each, n) => [theirs[n], each.in.length])} at={k} label="The text in the file" /><button type="button" onClick={() => settle("theirs")}>Take this one</button></div>
      </div>
    </>
  );
}

function Marked({ text, places, at, label }: { text: string; places: number[][]; at: number; label: string }) {
  const rows = text.split(LINE_ENDS);
  const parts = [];
  let done = 0;
  places.forEach(([line, count], k) => {
    parts.push(rows.slice(done, line - 1).map((each) => `${each}\n`).join(""));
    const own = rows.slice(line - 1, line - 1 + count).join("\n");
    const on = k === at ? "on" : "";
    parts.push(count ? <mark key={k} class={on} data-place={k}>{own}{"\n"}</mark> : <span key={k} class={`none ${on}`} data-place={k} />);
    done = line - 1 + count;
  });
  parts.push(rows.slice(done).join("\n"));
  return <pre tabIndex={0} role="region" aria-label={label}>{parts}</pre>;
}

/** The line at which each difference stands in the file, from 1: the server counts those of the text here. */
function placesThere(lines: Lines[]): number[] {
  let shift = 0;
  return lines.map((each) => {
    const own = each.line + shift;
    shift += each.in.length - each.out.length;
    return own;
  });
}

/** The difference in which the first conflict lies; the first of all where that is not to be told. */
function firstOf(lines: Lines[], conflicts: Conflict[]): number {
  const words = [conflicts[0]?.ours, conflicts[0]?.theirs].flatMap((each) => each?.split(LINE_ENDS)[0].trim() || []);
  return Math.max(0, lines.findIndex((each) => [...each.out, ...each.in].some((line) => words.some((own) => line.includes(own)))));
}
