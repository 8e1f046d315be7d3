// What else the show file can say of a move: fields made from its schema, but for those that have buttons or rows of their own.
import { useEffect, useState } from "preact/hooks";
import { get, type Parameter, type Path } from "./api";
import { patterns } from "./store";
import { Fields, plain, schemaNow, setSchema, worded, type Json, type Maker } from "./fields";

// Changed by the buttons of the place, by dragging, or by drafting.
const ELSEWHERE = ["pattern", "phrase", "shift", "beats", "cycles", "link", "rest", "hold", "drafted", "who", "from", "until", "canon", "mirror"];
const FIRST = ["cue", "note"];
// Where the file's key is no word for it.
const WORDS: Record<string, string> = {
  cue: "cue word", timing: "timing of the hands", direction: "direction of the hands", hands: "which hands", cycle: "beats to a cycle",
  mirrored: "left and right swapped", repeat: "times in a row", with: "values of the pattern", left: "left hand", right: "right hand",
};

export function MoreOfMove({ row, at, say }: { row: Json; at: Path; say: (key: string, value: Json | Maker, what: string) => Promise<boolean> }) {
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
          of={withValues(plain(schemaNow().$defs[at[0] === "timeline" ? "Entry" : "Step"]), row)} values={row} first={FIRST} words={WORDS} without={withoutUse(row)} path={`move ${at.join(" ")}`}
          put={(key, value) => say(key, value, WORDS[key] ?? worded(key))}
        />
      )}
    </details>
  );
}

/** The schema with the values that the row's own pattern leaves open, each by its name; any name, where the pattern is not known here. */
function withValues(of: Json, row: Json): Json {
  const open = patterns.value.find((each) => each.name === row.pattern);
  if (!open || !of.properties.with) return of;
  const properties = Object.fromEntries(open.parameters.map((each) => [each.name, ofParameter(each)]));
  const unknown = Object.keys(row.with ?? {}).filter((key) => !(key in properties)); // to be seen, and taken out
  return { ...of, properties: { ...of.properties, with: { description: of.properties.with.description, properties: { ...properties, ...Object.fromEntries(unknown.map((key) => [key, { type: "string" }])) } } } };
}

function ofParameter({ choices, help, low, high, unit, ...each }: Parameter): Json {
  if (choices.length) return { enum: choices, default: each.default, description: help };
  const range = `${low} … ${high}${unit ? ` ${unit}` : ""}`;
  return { type: "string", description: help ? `${help}; ${range}` : range, examples: [each.default === null ? "as the prop" : String(each.default)] };
}

/** Keys that are changed elsewhere, and those that this kind of entry cannot say, or not beside what it says; one that is there can be taken out. */
function withoutUse(row: Json): string[] {
  const { kinds, never_together } = schemaNow().step_kinds as { kinds: Record<string, { made_by: string[]; takes: string[] }>; never_together: [string, string][] };
  const kind = Object.values(kinds).find((each) => each.made_by.some((key) => row[key] !== undefined));
  const barred = never_together.flatMap(([one, other]) => [row[one] !== undefined && other, row[other] !== undefined && one]);
  const keys = Object.keys(plain(schemaNow().$defs.Entry).properties);
  return [...ELSEWHERE, ...keys.filter((key) => row[key] === undefined && (barred.includes(key) || !kind?.takes.includes(key)))];
}
