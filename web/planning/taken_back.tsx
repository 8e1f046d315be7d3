// A show of which nothing stands any more, since all was undone or taken out: how it comes back.
import { useEffect, useRef } from "preact/hooks";
import { redo, save, undo } from "./doing";
import { ended, state } from "./store";

export function TakenBack() {
  const now = state.value!;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <>
      <header class="top">
        <h1>{now.file}</h1>
        <p class="file">{ended.value ? "not connected" : now.saved ? "empty on disk too" : "the file on disk is as it was last saved"}</p>
        <div class="tools">
          <button type="button" disabled={!now.undo} onClick={() => void undo()} title={now.undo ? `Take back: ${now.undo} (Ctrl + Z)` : "Nothing to take back"}>Undo</button>
          <button type="button" class={now.redo ? "main" : ""} disabled={!now.redo} onClick={() => void redo()} title={now.redo ? `Do again: ${now.redo} (Ctrl + Y)` : "Nothing to do again"}>Redo</button>
          {!now.redo && !now.undo && <button type="button" disabled={now.saved} onClick={() => void save()}>Save</button>}
        </div>
      </header>
      <main class="beginning">
        <h2 ref={heading} tabIndex={-1}>Nothing is left of this show here</h2>
        <p>{now.redo ? `Everything was undone, also the beginning. Redo brings the show back, step by step; the first is: ${now.redo}.` : now.undo ? `Its whole text was taken out. Undo brings it back: ${now.undo}.` : "The file on disk is gone or says something else. Save makes it empty, and then a show can be begun in it."}</p>
        {!now.saved && <p>What was saved is still on disk, untouched.</p>}
        <p class="quiet">To begin another show, open a file of another name.</p>
      </main>
    </>
  );
}
