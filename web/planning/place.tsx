// The form about a count: what is danced there, changed; or a move put where there is none.
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { Refused, get, type Block, type Operation, type Path, type Pattern } from "./api";
import { copy, cut, operate, operateOn, paste, shown, waiting } from "./doing";
import { made } from "./fields";
import type { Ends } from "./following";
import { beatsSaid, danced, endsOf, entryOf, following, hereOnly, inPhrase, moveEntry, movesSaid, quietly, reached, rowAt, seen, shiftsOf, stretchEntry, stretchStep } from "./moving";
import { moment, together } from "./rows";
import { CutInTwo, Together } from "./answers";
import { DraftHere } from "./drafting";
import { MoreOfMove } from "./more";
import { NameIt, OfPhrase, PutPhrase } from "./phrases";
import { chosenBlocks, placeFor, remove, rowsNow } from "./sheet";
import { along, copied, names, opened, patterns, picked, picks, state, tempo, view, walking } from "./store";

export function PlaceForm() {
  const at = picked.value, counts = tempo.value;
  const box = useRef<HTMLElement>(null);
  const form = useRef<{ path: string; who: string; start: number; number: number } | null>(null);
  const blocks = chosenBlocks();
  // The move, not the name of its phrase, nor whatever else comes first. Under a finger the form itself: a field would bring the keyboard up over the sheet.
  const first = () => {
    if (matchMedia("(pointer: coarse)").matches) return box.current?.focus({ preventScroll: true });
    const found = [".pattern-field input", ".steps button", "form input"].map((each) => box.current?.querySelector<HTMLElement>(each));
    found.find(Boolean)?.focus({ preventScroll: true });
  };
  useEffect(() => {
    if (!opened.value) return;
    seenWith(box.current);
    if (!walking.value) first(); // whoever walks over the sheet goes on there
  }, [opened.value, picks.value, at?.beat, at?.who.join()]);
  useEffect(() => {
    // A form that was replaced by another one takes the keyboard with it.
    if (opened.value && document.activeElement === document.body) first();
  }, [blocks[0]?.path?.join()]);
  if (!at || !counts || !opened.value) return null;
  const block = blocks[0] as Block | undefined;
  // A change that gives the block another place in the file leaves its form as it is.
  const same = block && form.current && (form.current.path === block.path!.join("/") || (form.current.who === block.who && Math.abs(form.current.start - block.start) < 1e-6));
  if (block) form.current = { path: block.path!.join("/"), who: block.who, start: block.start, number: (form.current?.number ?? 0) + (same ? 0 : 1) };
  const row = rowsNow().find((each) => at.beat >= each.start - 1e-6 && at.beat < each.start + each.beats - 1e-6);
  return (
    <section
      ref={box} class="place" tabIndex={-1} aria-label="What is danced here" onClickCapture={waiting}
      onKeyDown={(event) => {
        if (event.key === "Escape") close();
      }}
    >
      <header>
        <p>{row ? `Bar ${row.bar}, count ${Math.floor(at.beat - row.start + 1e-6) + 1} (${moment(counts, at.beat)}) · ` : ""}{together(block ? [...new Set(blocks.map((each) => each.who))] : at.who, names.value)}</p>
        <button type="button" class="small" onClick={close} title="Close (Escape)">Close</button>
      </header>
      {block ? <Written key={form.current!.number} block={block} blocks={blocks} /> : <Empty key={`${at.beat} ${at.who.join()}`} beat={at.beat} who={at.who} />}
    </section>
  );
}

/** The form from its top, and the count that it is about: a form further down, or another row, may have been looked at. */
function seenWith(form: HTMLElement | null): void {
  for (const scrolled of [form, form?.parentElement]) if (scrolled) scrolled.scrollTop = 0;
  document.querySelector(".count.on")?.scrollIntoView({ block: "nearest" });
}

function close(): void {
  opened.value = false;
  walking.value = true;
  document.querySelector<HTMLElement>(".count.on")?.focus();
}

// --- a new move ---

function Empty({ beat, who }: { beat: number; who: string[] }) {
  const counts = tempo.value!;
  const [name, setName] = useState("");
  const [beats, setBeats] = useState(free(beat, who));
  const [chosen, setChosen] = useState(who);
  const [near, setNear] = useState<Pattern[]>([]);
  const key = `new ${beat}`;
  const ends: Ends = new Map(chosen.map((each) => [each, beat + beats]));
  const put = () => {
    const block: Record<string, unknown> = { who: whoSaid(chosen), from: moment(counts, beat), pattern: name, beats };
    const shift = near.find((each) => each.name === name)?.shift;
    if (shift) block.shift = shift; // it joins what stands before it if it starts that far in
    const follow = following(key, { beat }, ends);
    const said = `Put: ${name}${follow.words}.`;
    void seen(operate([...follow.operations, { do: "put-block", into: ["timeline"], block, before: placeFor(beat) }], quietly(follow, said)), follow, said);
  };
  return (
    <form onSubmit={(event) => { event.preventDefault(); if (name) put(); }}>
      <PatternField label="Put a move" value={name} choose={setName} who={chosen} at={beat} near={near} found={setNear} />
      <Stepper label="For" unit="beats" value={beats} least={1} step={1} set={setBeats} />
      {names.value.length > 1 && (
        <fieldset><legend>Danced by</legend>
          {names.value.map((each) => (
            <label key={each}><input type="checkbox" checked={chosen.includes(each)} onChange={(event) => setChosen(names.value.filter((other) => (other === each ? event.currentTarget.checked : chosen.includes(other))))} /> {each}</label>
          ))}
        </fieldset>
      )}
      <PutPhrase beat={beat} who={chosen} />
      <Along of={key} shifts={[shiftsOf({ beat }, ends)]} />
      <p class="row">
        <button type="submit" class="main" disabled={!name || !chosen.length}>Put it here</button>
        <button type="button" disabled={!chosen.length} onClick={() => void operate({ do: "put-block", into: ["timeline"], before: placeFor(beat), block: { who: whoSaid(chosen), from: moment(counts, beat), rest: beats } }, "Put: a rest.")}>Rest here</button>
        <DraftHere beat={beat} />
        {copied.value && <button type="button" onClick={() => void paste((at) => moment(counts, at), placeFor)}>Paste {copied.value.words}</button>}
      </p>
    </form>
  );
}

const whoSaid = (who: string[]) => (who.length === names.value.length && who.length > 1 ? "all" : who.length === 1 ? who[0] : who);

/** Beats until somebody of those dances something else, at most an eight. */
function free(beat: number, who: string[]): number {
  const after = (view.value?.blocks ?? []).filter((each) => who.includes(each.who) && each.path !== null && each.start > beat + 1e-6).map((each) => each.start);
  return Math.max(1, Math.min(8, Math.floor(Math.min(...after, Infinity) - beat)));
}

// --- a move that is there ---

function Written({ block, blocks }: { block: Block; blocks: Block[] }) {
  const entry = entryOf(block);
  const ofPhrase = inPhrase(block);
  const [here, setHere] = useState(true);
  const uses = ofPhrase ? danced(block).length : 1;
  const row = rowAt(block.path!) ?? {};
  const length = block.end - block.start;
  const key = `${block.path!.join("/")} ${block.who}`;
  const once = ofPhrase && here && uses > 1;
  const own = (operation: Operation) => (once ? hereOnly(block, operation) : operation);
  const change = (operation: Operation, said?: string) => operate(own(operation), said);
  const at = block.path!;
  const latest = useRef({ at, own, revision: 0 });
  latest.current = { at, own, revision: view.value!.revision };
  const say = (key: string, value: unknown, what: string) => {
    const change = (at: Path, own: unknown) => ({ do: "change-block", at, values: { [key]: own } });
    if (!once) return operateOn(() => rowAt(at)?.[key], value, (own) => change(at, own), what);
    return operate(async () => {
      await shown(); // the change before this one may have given the block a phrase of its own
      const now = latest.current;
      return { operation: now.own(change(now.at, made(value, rowAt(now.at)?.[key]))), revision: now.revision };
    }, `${what} ${value === null ? "left out" : "changed"}.`);
  };
  const stretch = (beats: number) => void (ofPhrase ? stretchStep(block, beats, once, along.value === key) : stretchEntry(block, beats, along.value === key));
  const start = (by: number) => moveEntry(block, by, along.value === key);
  const shift = Number(block.shift ?? 0);
  return (
    <>
      <h3>{block.title}</h3>
      <ul class="words">{block.words.filter((line) => line !== block.title).map((line) => <li key={line}>{line}</li>)}</ul>
      {ofPhrase && (
        <fieldset>
          <legend>The phrase {block.phrase} is danced {uses === 1 ? "once" : `${uses} times`}. Change it</legend>
          {uses > 1 && <label><input type="radio" name="where" checked={here} onChange={() => setHere(true)} /> here only</label>}
          <label><input type="radio" name="where" checked={!here || uses < 2} onChange={() => setHere(false)} /> {uses > 1 ? "everywhere" : "in the phrase"}</label>
          <OfPhrase key={String(block.path![1])} block={block} />
        </fieldset>
      )}
      {"pattern" in row && <Another block={block} change={change} at={at} />}
      <div class="steps">
        <p>Starts {block.position}
          <button type="button" onClick={() => void start(-1)} title={ofPhrase ? "The whole entry moves" : "A beat earlier"}>1 beat earlier</button>
          <button type="button" onClick={() => void start(1)}>1 beat later</button>
        </p>
        <p>Lasts {beatsSaid(length)}
          <button type="button" disabled={length <= 1} onClick={() => stretch(length - 1)}>1 beat shorter</button>
          <button type="button" onClick={() => stretch(length + 1)}>1 beat longer</button>
        </p>
        <Along of={key} shifts={[1, -1].map((by) => shiftsOf({ entry: Number(entry[1]) }, endsOf(entry, by)))} />
        {"pattern" in row && (
          <p>Begins {shift ? `${beatsSaid(shift)} in` : "at its start"}
            <button type="button" onClick={() => change({ do: "change-block", at, values: { shift: shift - 0.5 || null } }, "Shifted.")}>½ beat back</button>
            <button type="button" onClick={() => change({ do: "change-block", at, values: { shift: shift + 0.5 || null } }, "Shifted.")}>½ beat on</button>
          </p>
        )}
      </div>
      <MoreOfMove row={row} at={at} say={say} />
      <p class="row">
        <button type="button" onClick={() => void copy(blocks)}>Copy</button>
        <button type="button" onClick={() => void cut(blocks)}>Cut</button>
        <button type="button" onClick={() => void remove(blocks)}>{ofPhrase ? "Delete the entry" : "Delete"}</button>
        {!ofPhrase && <CutInTwo block={block} row={row} />}
      </p>
      <NameIt key={entry.join("/")} entry={entry} />
      <Together entry={entry} />
    </>
  );
}

/** Whether what follows a change moves along with it, and how far that would reach; for one place, until another is chosen. */
function Along({ of, shifts }: { of: string; shifts: Map<number, number>[] }) {
  useLayoutEffect(() => {
    if (along.peek() !== of) along.value = null; // also if this place is chosen again later
  }, [of]);
  const far = shifts.map(reached).sort((a, b) => b.count - a.count)[0];
  const words = far.count ? `${movesSaid(far.count)}, up to ${far.until}` : "here nothing has to";
  return (
    <label class="along"><input type="checkbox" checked={along.value === of} onChange={(event) => (along.value = event.currentTarget.checked ? of : null)} /> What follows moves along: {words}</label>
  );
}

function Another({ block, change, at }: { block: Block; change: (operation: Operation, said: string) => void; at: Path }) {
  const [name, setName] = useState("");
  const [near, setNear] = useState<Pattern[]>([]);
  return (
    <form class="row" onSubmit={(event) => { event.preventDefault(); if (name) change({ do: "change-block", at, values: { pattern: name } }, `Now ${name}.`); }}>
      <PatternField label="Dance another move" value={name} choose={setName} who={[block.who]} at={block.start} near={near} found={setNear} />
      <button type="submit" disabled={!name || name === block.title}>Change</button>
    </form>
  );
}

// --- fields ---

const AGAIN = 400; // [ms] until a list is asked for once more

function Stepper({ label, unit, value, least, step, set }: { label: string; unit: string; value: number; least: number; step: number; set: (value: number) => void }) {
  return <label class="stepper">{label} <input type="number" min={least} step={step} value={value} onInput={(event) => { const now = Number(event.currentTarget.value); if (now >= least) set(now); }} /> {unit}</label>;
}

/** A pattern by its name, with those first that join what stands before. */
function PatternField({ label, value, choose, who, at, near, found }: { label: string; value: string; choose: (name: string) => void; who: string[]; at: number; near: Pattern[]; found: (near: Pattern[]) => void }) {
  const [on, setOn] = useState(-1);
  const [open, setOpen] = useState(false);
  const asked = who.join();
  useEffect(() => {
    let live = true;
    if (!asked) return;
    let again = 0;
    const ask = () => get<{ patterns: Pattern[] }>(`patterns?who=${encodeURIComponent(asked)}&at=${at}`).then((now) => {
      if (!live) return;
      found(now.patterns);
      patterns.value = now.patterns; // patterns of the show's own among them
    }, (error) => {
      if (live && error instanceof Refused && [409, 503].includes(error.status)) again = window.setTimeout(ask, AGAIN); // something else went first
    });
    void ask();
    return () => { live = false; clearTimeout(again); };
  }, [asked, at, state.value?.revision]);
  const all = near.length ? near : patterns.value;
  const words = value.toLowerCase().split(/[\s-]+/).filter(Boolean);
  const fits = all.filter((each) => words.every((word) => each.name.includes(word))).slice(0, 60);
  const shown = open && !(fits.length === 1 && fits[0].name === value);
  return (
    <div class="pattern-field">
      <label>{label}
        <input
          type="text" role="combobox" aria-expanded={shown} aria-controls="patterns" aria-autocomplete="list" aria-activedescendant={shown && on >= 0 ? `pattern-${on}` : undefined}
          autocomplete="off" spellcheck={false} value={value} placeholder="its name, or part of it"
          onClick={() => setOpen(true)} onBlur={() => setTimeout(() => setOpen(false), 150)}
          onInput={(event) => { choose(event.currentTarget.value); setOpen(true); setOn(-1); }}
          onKeyDown={(event) => {
            if (event.key === "ArrowDown" || event.key === "ArrowUp") {
              event.preventDefault();
              setOpen(true);
              setOn((on + (event.key === "ArrowDown" ? 1 : fits.length - 1) + (on < 0 && event.key === "ArrowUp" ? 1 : 0)) % Math.max(1, fits.length));
            } else if (event.key === "Enter" && shown && fits.length && (on >= 0 || fits.length === 1)) {
              event.preventDefault();
              choose(fits[Math.max(on, 0)].name);
              setOpen(false);
            } else if (event.key === "Escape" && shown) {
              event.stopPropagation();
              setOpen(false);
            }
          }}
        />
      </label>
      {shown && (
        <ul id="patterns" role="listbox" aria-label="Moves">
          {fits.map((each, k) => (
            <li key={each.name} id={`pattern-${k}`} role="option" aria-selected={k === on} class={k === on ? "on" : ""} onMouseDown={(event) => { event.preventDefault(); choose(each.name); setOpen(false); }}>
              <span>{each.name}</span> <small>{!each.suits ? "not for these props" : near.length ? each.words : "seeing how it joins …"}</small>
              <em>{each.summary}</em>
            </li>
          ))}
          {!fits.length && <li class="none" role="option" aria-selected={false} aria-disabled="true">no move has that name</li>}
        </ul>
      )}
    </div>
  );
}
