// What else the show file can say of a move: fields made from its schema, but for those that have buttons or rows of their own.
import { useEffect, useState } from "preact/hooks";
import { get, type Operation, type Path } from "./api";
import { Fields, plain, schemaNow, setSchema, worded, type Json } from "./fields";

// Changed by the buttons of the place, by dragging, or by drafting.
const ELSEWHERE = ["pattern", "phrase", "shift", "beats", "cycles", "link", "rest", "hold", "drafted", "who", "from", "until", "canon", "mirror"];

export function MoreOfMove({ row, at, change }: { row: Json; at: Path; change: (operation: Operation, said: string) => Promise<boolean> }) {
  const [open, setOpen] = useState(false);
  const [ready, setReady] = useState(schemaNow() !== null);
  useEffect(() => {
    if (open && !ready) void get<Json>("schema").then((found) => { setSchema(found); setReady(true); }, () => {});
  }, [open]);
  return (
    <details class="inner" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Cue word, note and more</summary>
      {open && ready && (
        <Fields
          of={plain(schemaNow().$defs[at[0] === "timeline" ? "Entry" : "Step"])} values={row} without={ELSEWHERE} must={[]} path={`move ${at.join(" ")}`}
          put={(key, value) => change({ do: "change-block", at, values: { [key]: value } }, `${worded(key)} ${value === null ? "left out" : "changed"}.`)}
        />
      )}
    </details>
  );
}
