// The file as text: to read, and to mend where it cannot be read as a show.
import { useRef } from "preact/hooks";
import { operate } from "./doing";
import { saidOf } from "./api";
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
          {saidOf(each)} {each.line !== null && <button type="button" class="small" onClick={() => go(each.line!, each.column ?? 1)}>Go to line {each.line}</button>}
        </p>
      ))}
      <textarea ref={field} spellcheck={false} aria-label={`The text of ${now.file}`} value={text} onInput={(event) => type(event.currentTarget.value)} />
      {older && edited && <p class="fault">The show was changed since you began to type: both changes are put together if they touch different places.</p>}
      <p class="row">
        <button type="button" class="main" disabled={!edited} onClick={() => void operate({ do: "replace-text", text: ends ? text.replaceAll("\n", "\r\n") : text }, "The text is taken.", revision).then((done) => done && (written.value = null))}>Take this text</button>
        <button type="button" disabled={!edited} onClick={() => (written.value = null)}>Back to the show’s</button>
      </p>
    </div>
  );
}
