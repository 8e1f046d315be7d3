// The file as text: to read, and to mend where it cannot be read as a show.
import { useEffect, useRef, useState } from "preact/hooks";
import { doing, operate } from "./doing";
import { post, type State } from "./api";
import { fault, state } from "./store";

export function FileText() {
  const now = state.value!;
  const [text, setText] = useState(now.text);
  const [based, setBased] = useState(now.text);
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    // What was not edited here follows the file.
    if (text === based) setText(now.text);
    if (text === based) setBased(now.text);
  }, [now.revision]);
  const edited = text !== based, older = based !== now.text;
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
      <textarea ref={field} spellcheck={false} aria-label={`The text of ${now.file}`} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      {fault.value && <p class="fault" role="alert">{fault.value}</p>}
      {older && edited && <p class="fault">The show was changed elsewhere since you began to type: taking this text takes that back.</p>}
      <p class="row">
        <button type="button" class="main" disabled={!edited} onClick={async () => { if (await operate({ do: "replace-text", text }, "The text is taken.")) setBased(text); }}>Take this text</button>
        <button type="button" disabled={!edited} onClick={() => { setText(now.text); setBased(now.text); }}>Back to the show's</button>
      </p>
    </div>
  );
}

/** The file was changed by another program where it was changed here too: both texts side by side. */
export function Outside() {
  const now = state.value;
  if (!now?.outside) return null;
  const settle = (take: "mine" | "theirs") => void doing(() => post<State>("outside", { take }), take === "mine" ? "Yours is kept." : "The other one is taken.");
  return (
    <section class="outside" role="alertdialog" aria-label="The file was changed elsewhere">
      <h2>The file was changed elsewhere</h2>
      <p>{now.outside.message}</p>
      <div class="both">
        <div><h3>Here</h3><pre tabIndex={0}>{now.text}</pre><button type="button" class="main" onClick={() => settle("mine")}>Keep this one</button></div>
        <div><h3>In the file</h3><pre tabIndex={0}>{now.outside.text}</pre><button type="button" onClick={() => settle("theirs")}>Take this one</button></div>
      </div>
      <p class="quiet">Neither is lost: what is not kept can be had back with Undo.</p>
    </section>
  );
}
