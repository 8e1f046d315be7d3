// Marks of a comparison in the sheet: under each row what is otherwise there, by a sign, a line and words.
import { KINDS, MARKS, looked, lookAt, marked, spokenChange } from "./compared";
import { names } from "./store";
import { together, type Row } from "./rows";

export function RowMarks({ row }: { row: Row }) {
  const end = row.start + row.beats;
  const here = marked.value.flatMap(({ change, k, spans }) =>
    spans.flatMap(([from, to], n) => {
      const until = Math.max(to, from + 0.5);
      return until > row.start + 1e-6 && from < end - 1e-6 ? [{ change, k, n, from: Math.max(from, row.start), to: Math.min(until, end), begins: from >= row.start - 1e-6 }] : [];
    }),
  );
  if (!here.length) return null;
  const percent = (beats: number) => `${(100 * beats) / row.beats}%`;
  return (
    <div class="row-marks" role="group" aria-label={`Changed in the eight from bar ${row.bar}`}>
      {here.map(({ change, k, n, from, to, begins }) => (
        <div key={`${k} ${n}`} class="mark-line">
          <button
            type="button" id={begins && n === 0 ? `mark-${k}` : undefined} class={`row-mark ${change.kind} ${begins ? "" : "goes-on"} ${looked.value === k ? "on" : ""} ${change.subject === "floor" ? "floor" : ""}`}
            style={{ marginLeft: percent(from - row.start), minWidth: percent(to - from) }} tabIndex={begins && n === 0 ? 0 : -1}
            aria-label={`${KINDS[change.kind]}. ${spokenChange(change, k)}`} title={change.words} onClick={() => lookAt(k)}
          >
            {begins && <><b aria-hidden="true">{MARKS[change.kind]}</b> {change.who.length > 0 && change.who.length < names.value.length && <em>{together(change.who, names.value)}</em>} {change.words}</>}
          </button>
        </div>
      ))}
    </div>
  );
}
