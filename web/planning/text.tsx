// The file as text: to read, and to mend where it cannot be read as a show.
import { useEffect, useRef } from "preact/hooks";
import { doing, operate } from "./doing";
import { post, type State } from "./api";
import { state, written } from "./store";

export function FileText() {
  const now = state.value!;
  const ends = now.text.includes("\r\n"); // a text field knows only the letter for a new line
  const shown = now.text.replaceAll("\r\n", "\n");
  const { text, based, revision } = written.value ?? { text: shown, based: shown, revision: now.revision };
  const type = (text: string) => (written.value = text === based ? null : { text, based, revision });
  const field = useRef<HTMLTextAreaElement>(null);
  const edited = text !== based, older = based !== shown;
  const go = (line: number, column: number) => {
    const lines = text.split("\n");
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + column - 1;
    field.current?.focus();
    field.current?.setSelectionRange(start, start + 1);
  };
  return (
    <div class="text">
      {now.faults.map((each) => (
        <p key={each.message} class="fault">
          {each.message} {each.line !== null && <button type="button" class="small" onClick={() => go(each.line!, each.column ?? 1)}>Go to line {each.line}</button>}
        </p>
      ))}
      <textarea ref={field} spellcheck={false} aria-label={`The text of ${now.file}`} value={text} onInput={(event) => type(event.currentTarget.value)} />
      {older && edited && <p class="fault">The show was changed since you began to type: both changes are put together if they touch different places.</p>}
      <p class="row">
        <button type="button" class="main" disabled={!edited} onClick={() => void operate({ do: "replace-text", text: ends ? text.replaceAll("\n", "\r\n") : text }, "The text is taken.", revision).then((done) => done && (written.value = null))}>Take this text</button>
        <button type="button" disabled={!edited} onClick={() => (written.value = null)}>Back to the show's</button>
      </p>
    </div>
  );
}

/** The file was changed by another program where it was changed here too: both texts side by side. */
export function Outside() {
  const now = state.value;
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => box.current?.showModal(), [now?.outside !== null]);
  if (!now?.outside) return null;
  const settle = (take: "mine" | "theirs") => void doing(() => post<State>("outside", { take }), take === "mine" ? "Yours is kept." : "The other one is taken.");
  return (
    <dialog ref={box} class="outside" aria-label="The file was changed elsewhere" onCancel={(event) => event.preventDefault()}>
      <h2>The file was changed elsewhere</h2>
      <p>{now.outside.message}</p>
      <div class="both">
        <div><h3>Here</h3><pre tabIndex={0}>{now.text}</pre><button type="button" class="main" onClick={() => settle("mine")}>Keep this one</button></div>
        <div><h3>In the file</h3><pre tabIndex={0}>{now.outside.text}</pre><button type="button" onClick={() => settle("theirs")}>Take this one</button></div>
      </div>
      <p class="quiet">Neither is lost: what is not kept can be had back with Undo.</p>
    </dialog>
  );
}
