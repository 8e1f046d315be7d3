// The count of the song put right by ear: taps, the one, half or double, and the sections; heard with clicks before it is written.
import { effect, signal } from "@preact/signals";
import { Refused, post, saidOf } from "./api";
import { ask, bordersNow, clockText, correction, countNow, counted, forget, isAnswered, momentOf, numbered, operationOf, said, think, thinkSections, thinking, thought, type Border, type Corrections, type Counted } from "./count_store";
import { operate } from "./doing";
import { clicking, clock, fetching, player } from "./playing";
import type { Row } from "./rows";
import { playing, seconds, song, state, told, view } from "./store";

interface Offer { words: string; values: Corrections }
interface Tapped { fit: { tempo: number; sway: number }; words: string[]; offers: Offer[] }

const FEWEST = 8; // taps that tell a tempo
const PAUSE = 400; // [ms] after which taps are looked at
const AGAIN = 400; // [ms] within which a click is the same press as the key or finger before it

export const taps = signal<number[]>([]); // [s] of the song
const tapped = signal<Tapped | null>(null);
let latency: number | null = null;
let looking = 0, pressed = 0;

// The show may be changed while a count is thought of: what it moves is another thing then.
effect(() => {
  const revision = state.value?.revision;
  if (revision !== undefined && thought.peek() && counted.peek()?.revision !== revision) void ask();
});

// --- taps ---

/** A tap: the moment of the song that was heard when the finger went down. The first one lets the song play. */
function tap(stamp: number): void {
  pressed = performance.now();
  if (fetching.value) return; // there is nothing to tap to yet
  if (!playing.value) {
    taps.value = [];
    tapped.value = null;
    void player.toggle().then(() => (told.value = "The song plays: tap on each beat."));
    return;
  }
  latency = player.clock.latency?.() ?? null;
  taps.value = [...taps.value, player.clock.at?.(stamp) ?? player.clock.now()];
  clearTimeout(looking);
  if (taps.value.length >= FEWEST) looking = window.setTimeout(() => void look(), PAUSE);
}

async function look(): Promise<void> {
  const own = taps.value;
  try {
    const found = await post<Tapped>("taps", { taps: own, latency });
    if (taps.value !== own) return;
    tapped.value = found;
    told.value = found.words.join(" ");
  } catch (error) {
    if (taps.value === own) told.value = error instanceof Refused ? error.message : "The program behind this page does not answer.";
  }
}

function startOver(): void {
  clearTimeout(looking);
  taps.value = [];
  tapped.value = null;
  told.value = "The taps are forgotten.";
}

function Tapping() {
  const n = taps.value.length, found = tapped.value;
  return (
    <section aria-labelledby="count-tap">
      <h3 id="count-tap">Tap along</h3>
      <p class="quiet">Press once, and the song plays; then tap on each beat you feel, eight times or more. Your first tap is taken for a one.</p>
      <p class="row">
        <button
          type="button" class="tap" aria-keyshortcuts="T"
          onPointerDown={(event) => event.button === 0 && tap(event.timeStamp)}
          onKeyDown={(event) => {
            if (event.key !== " " && event.key !== "Enter") return;
            event.preventDefault(); // a tap is when the key goes down, not when it comes up
            event.stopPropagation();
            if (!event.repeat) tap(event.timeStamp);
          }}
          onClick={(event) => event.detail === 0 && performance.now() - pressed > AGAIN && tap(event.timeStamp)}
        >
          {playing.value ? "Tap" : fetching.value ? "The song is being loaded …" : "Play and tap"} <kbd>T</kbd>
          <b>{n ? (n < FEWEST ? `${n} of ${FEWEST}` : `${n} taps`) : ""}</b>
        </button>
        <button type="button" disabled={!n} onClick={startOver}>Start over</button>
      </p>
      {found && (
        <div class="found">
          {found.words.map((each) => <p key={each}>{each}</p>)}
          {found.offers.map((offer) => <p key={offer.words}><button type="button" onClick={() => think(offer.values, offer.words)}>{offer.words}</button></p>)}
          {!found.offers.length && <p class="quiet">Nothing needs to be changed.</p>}
        </div>
      )}
    </section>
  );
}

// --- the one, and how fast ---

/** The beat that is nearest to what was heard at a moment. */
function nearest(stamp: number): number {
  const at = playing.value ? (player.clock.at?.(stamp) ?? player.clock.now()) : seconds.value;
  return Math.round(countNow.value!.beatAt(at));
}

function thisIsOne(stamp: number): void {
  const counts = countNow.value;
  if (!counts) return;
  const beat = nearest(stamp);
  think({ one: clockText(counts.secondsAt(beat)) }, `The one is at ${clockText(counts.secondsAt(beat))} now.`);
}

/** The one so many beats later. */
function moveOne(by: number): void {
  const counts = countNow.value;
  if (!counts) return;
  const { bar } = counts.position(Math.max(counts.beatAt(seconds.value), 0) + 1e-6);
  const at = clockText(counts.secondsAt(counts.barStart(Math.max(bar, 1)) + by));
  think({ one: at }, by < 0 ? "The one is a beat earlier now." : "The one is a beat later now.");
}

const LEVELS = ["half", null, "double"] as const;

/** Half or twice as fast as the count that is shown; null where the file cannot say it. */
function paced(way: -1 | 1): Corrections | null {
  const steady = correction("steady");
  if (steady) {
    const faster = Number(steady.tempo) * 2 ** way;
    return faster >= 20 && faster <= 400 ? { steady: { tempo: Math.round(faster * 1000) / 1000, at: steady.at } } : null;
  }
  const next = LEVELS.indexOf(correction("tempo") ?? null) + way;
  return next in LEVELS ? { tempo: LEVELS[next] } : null;
}

function Count() {
  const now = counted.value, counts = countNow.value;
  if (!counts) return null;
  const first = counts.secondsAt(0), bpm = now && thought.value ? now.bpm : tempoOf(counts.times);
  const metre = correction("metre");
  const half = paced(-1), double = paced(1);
  const shift = milliseconds(correction("shift"));
  const changed = (["metre", "one", "tempo", "shift", "beats", "steady"] as const).filter((key) => correction(key) !== null);
  return (
    <section aria-labelledby="count-is">
      <h3 id="count-is">The count</h3>
      <p class="tells"><b>{bpm.toFixed(1)}</b> beats a minute, <b>{counts.metre}</b> to the bar, bar 1 at {clockText(Math.max(0, first))}. {changed.length ? "" : "Nothing of it is corrected."}</p>
      <p class="row">
        <button type="button" aria-keyshortcuts="1" onPointerDown={(event) => event.button === 0 && pressing(event.timeStamp)} onClick={(event) => (event.detail === 0 ? thisIsOne(event.timeStamp) : thisIsOne(lastPress))}>This is one <kbd>1</kbd></button>
        <button type="button" onClick={() => moveOne(-1)}>One a beat earlier</button>
        <button type="button" onClick={() => moveOne(1)}>One a beat later</button>
      </p>
      <p class="row">
        <button type="button" disabled={!half} onClick={() => half && think(half, "Half as fast.")}>Half as fast</button>
        <button type="button" disabled={!double} onClick={() => double && think(double, "Twice as fast.")}>Twice as fast</button>
        <label>Beats a bar <select value={String(metre ?? "")} onChange={(event) => think({ metre: event.currentTarget.value ? Number(event.currentTarget.value) : null }, "Another metre.")}>
          <option value="">as heard</option>{[2, 3, 4, 5, 6, 7].map((each) => <option key={each} value={String(each)}>{each}</option>)}
        </select></label>
        <label>Later by <input type="number" step={5} min={-2000} max={2000} value={shift} onChange={(event) => think({ shift: Number(event.currentTarget.value) ? `${Math.round(Number(event.currentTarget.value))} ms` : null }, "All beats moved.")} /> ms</label>
      </p>
      <p class="row">
        <label><input type="checkbox" checked={clicking.value} onChange={(event) => player.setClicks(event.currentTarget.checked)} /> Click on every count, higher on the one</label>
        {changed.length > 0 && <button type="button" class="small" onClick={() => think(Object.fromEntries(changed.map((key) => [key, null])), "The count is as it was detected again.")}>Back to what was heard</button>}
      </p>
    </section>
  );
}

let lastPress = 0;
const pressing = (stamp: number) => (lastPress = stamp);

/** The song's tempo, as `median_tempo` has it: one figure for it everywhere [beats a minute]. */
function tempoOf(times: number[]): number {
  const span = Math.min(8, times.length - 1);
  const gaps = times.slice(span).map((time, k) => time - times[k]).sort((a, b) => a - b);
  const middle = gaps.length >> 1;
  return (60 * span) / (gaps.length % 2 ? gaps[middle] : (gaps[middle - 1] + gaps[middle]) / 2);
}

function milliseconds(shift: unknown): number {
  const found = /^\s*(-?[\d.]+)\s*(ms|s)?\s*$/.exec(String(shift ?? ""));
  return found ? Math.round(Number(found[1]) * (found[2] === "ms" ? 1 : 1000)) : 0;
}

// --- sections ---

function Sections() {
  const borders = bordersNow(), counts = countNow.value;
  if (!counts || !view.value) return null;
  const names = numbered(borders.map((each) => each.name));
  const change = (k: number, part: Partial<Border>, words: string) => thinkSections(borders.map((each, i) => (i === k ? { ...each, ...part } : each)), words);
  const place = (k: number, at: number, words: string) => {
    const low = k > 0 ? borders[k - 1].seconds + 0.1 : 0, high = k + 1 < borders.length ? borders[k + 1].seconds - 0.1 : view.value!.duration - 0.1;
    if (at > low && at < high) change(k, { start: momentOf(at), seconds: at }, words);
    else told.value = "There is another section already.";
  };
  const bar = (at: number) => counts.position(counts.beatAt(at) + 1e-3).bar;
  const onBar = (at: number) => {
    const { bar, beat, inBar } = counts.position(counts.beatAt(at) + 1e-3);
    return counts.secondsAt(counts.barStart(beat - 1 < inBar / 2 ? bar : bar + 1));
  };
  const here = onBar(seconds.value), within = borders.filter((each) => each.seconds <= here + 0.05).length - 1;
  const split = () => {
    if (within >= 0 && here - borders[within].seconds < 0.1) {
      told.value = "A section begins here already.";
      return;
    }
    const fresh = { start: momentOf(here), name: "new", was: null, seconds: here };
    thinkSections([...borders.slice(0, within + 1), fresh, ...borders.slice(within + 1)], `A section begins at ${fresh.start}.`);
  };
  return (
    <section aria-labelledby="count-parts">
      <h3 id="count-parts">Sections</h3>
      <p class="quiet">Give parts that come back the same name; they are numbered then. A section lasts until the next one.</p>
      <ol class="borders">
        {borders.map((each, k) => (
          <li key={k}>
            <label><span class="unseen">Name of the section from {each.start}</span><input type="text" list="section-names" value={each.name} onChange={(event) => event.currentTarget.value.trim() && change(k, { name: event.currentTarget.value.trim() }, `Now called ${event.currentTarget.value.trim()}.`)} /></label>
            <button type="button" class="small" title="Go there" onClick={() => player.seek(each.seconds)}>{k ? `from ${each.start}` : "from the start"}</button>
            {k > 0 && (
              <span role="group" aria-label={`${names[k]} begins`}>
                <button type="button" class="small" aria-label={`${names[k]} a bar earlier`} onClick={() => place(k, counts.secondsAt(counts.barStart(bar(each.seconds) - (onBar(each.seconds) < each.seconds - 0.02 ? 0 : 1))), "A bar earlier.")}>‹ bar</button>
                <button type="button" class="small" aria-label={`${names[k]} a bar later`} onClick={() => place(k, counts.secondsAt(counts.barStart(bar(each.seconds) + 1)), "A bar later.")}>bar ›</button>
                <button type="button" class="small" aria-label={`${names[k]} begins here, where the song is`} onClick={() => place(k, here, `It begins at ${momentOf(here)}.`)}>here</button>
                <button type="button" class="small" aria-label={`Join ${names[k]} with the section before it`} onClick={() => thinkSections(borders.filter((_, i) => i !== k), `${names[k]} is joined with ${names[k - 1]}.`)}>join</button>
              </span>
            )}
            {k > 0 && <small class="quiet">{howSure(each.seconds)}</small>}
          </li>
        ))}
      </ol>
      {view.value.turns.length > 0 && (
        <p class="row">
          <span class="quiet">As heard, a part may also begin at</span>
          {view.value.turns.map((each) => (
            <button key={each.start} type="button" class="small" title="Go there" onClick={() => player.seek(each.start)}>bar {each.bar} ({Math.round(100 * each.confidence)}%)</button>
          ))}
        </p>
      )}
      <datalist id="section-names">{[...new Set(["intro", "verse", "chorus", "bridge", "break", "outro", ...borders.map((each) => each.name)])].map((each) => <option key={each} value={each} />)}</datalist>
      <p class="row"><button type="button" onClick={split}>Split at {momentOf(here)}</button></p>
    </section>
  );
}

/** Whether a part was heard to begin at a moment of the song. */
function howSure(seconds: number): string {
  const found = view.value!.sections.find((each) => Math.abs(each.start - seconds) < 0.25);
  if (!found?.border) return "";
  const varied = found.mark === found.label ? "" : `, ${found.mark}: it comes back varied`;
  return (found.border === "sure" ? "surely a new part" : "perhaps not a new part") + varied;
}

// --- what it comes to ---

function Outcome() {
  const own = thought.value, found = counted.value;
  if (!own) return null;
  const write = async () => {
    if (await operate(operationOf(own), "The count is set.")) {
      forget();
      taps.value = [];
      tapped.value = null;
    }
  };
  return (
    <section class="thought" aria-labelledby="count-so">
      <h3 id="count-so">Not written yet</h3>
      {found ? lines(found).map((each) => <p key={each}>{each}</p>) : <p class="quiet">{thinking.value ? "Looking what it moves …" : ""}</p>}
      {found && found.blocks && found.blocks.told.length > 0 && (
        <ul>
          {found.blocks.told.map((each) => (
            <li key={`${each.before} ${each.who.join()}`}>{each.before} {each.title} ({each.who.join(", ")}): {each.before === each.after ? "" : `${each.after} now, `}from {fine(each.before_s)} to {fine(each.after_s)}{Math.abs(each.longer_s) > 0.05 ? `, ${Math.abs(each.longer_s).toFixed(1)} s ${each.longer_s > 0 ? "longer" : "shorter"}` : ""}</li>
          ))}
          {found.blocks.told.reduce((sum, each) => sum + each.who.length, 0) < found.blocks.moved && <li>… and others</li>}
        </ul>
      )}
      {found?.trouble && <p class="fault">On this count the show cannot be danced as it is written: {saidOf(found.trouble)}</p>}
      <p class="row">
        <button type="button" class="main" disabled={!isAnswered.value} onClick={() => void write()}>Set it so</button>
        <button type="button" onClick={() => { forget(); told.value = "As it was."; }}>Leave it as it was</button>
      </p>
    </section>
  );
}

const fine = (seconds: number) => `${Math.floor(Math.max(seconds, 0) / 60)}:${(Math.max(seconds, 0) % 60).toFixed(1).padStart(4, "0")}`;
const many = (n: number, word: string) => `${n} ${word}${n === 1 ? "" : "s"}`;

/** What a count moves, in sentences. */
function lines(found: Counted): string[] {
  const out: string[] = [];
  const { beats, ones, blocks } = found;
  if (beats && (beats.moved || beats.gone || beats.come)) {
    const all: [number, string, string][] = [[beats.same, "stays where it is", "stay where they are"], [beats.moved, "moves a little", "move a little"], [beats.gone, "is left out", "are left out"], [beats.come, "is new", "are new"]];
    const parts = all.filter(([n]) => n).map(([n, one, several], k) => `${k ? n : many(n, "beat")} ${n === 1 ? one : several}`);
    out.push(`${[parts.slice(0, -1).join(", "), parts[parts.length - 1]].filter(Boolean).join(" and ")}.`);
  } else if (ones && (ones.moved || ones.gone || ones.come)) out.push(`The beats stay; ${many(ones.moved + ones.gone, "one")} ${ones.moved + ones.gone === 1 ? "is" : "are"} elsewhere.`);
  else if (beats) out.push("All beats and ones stay.");
  for (const each of found.borders) {
    if (each.before_s === null) out.push(`${each.name} begins at ${fine(each.after_s!)}.`);
    else if (each.after_s === null) out.push(`There is no ${each.name} any more.`);
    else out.push(`${each.name} begins at ${fine(each.after_s)} instead of ${fine(each.before_s)}.`);
  }
  if (found.held) out.push(`The sections begin where they did in the song, and are counted anew: ${found.held.map(([from, name]) => `${name} from ${from}`).join(", ")}.`);
  if (blocks?.moved) out.push(`What is written in bars and counts keeps them, and so sounds elsewhere: ${many(blocks.moved, "move")}, by up to ${blocks.most_s.toFixed(1)} s. ${blocks.same ? `${blocks.same} stay.` : ""}`);
  else if (blocks) out.push("Nothing that is danced moves.");
  return out;
}

/** Keys of this panel, while it has the keyboard: T taps, 1 is the one. */
function keyed(event: KeyboardEvent): void {
  const at = event.target as HTMLElement;
  if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || at.matches("input:not([type=checkbox]), select, textarea")) return;
  const act = { t: () => tap(event.timeStamp), "1": () => thisIsOne(event.timeStamp) }[event.key.toLowerCase()];
  if (!act) return;
  event.preventDefault();
  act();
}

export function CountPanel() {
  if (!view.value) return <p class="quiet">{state.value?.readable ? "The song is not counted yet." : "The file cannot be read: mend it under Text."}</p>;
  return (
    <div class="counting" onKeyDown={keyed}>
      <Tapping />
      <Count />
      <Sections />
      <Outcome />
      <p class="quiet">Heard in {said.value && song.value?.track}: {clock(view.value.duration)}. What a loudspeaker without wires adds to the delay no program knows; if all clicks come late there, use one with a wire.</p>
    </div>
  );
}

// --- on the sheet ---

/** The count that is thought of, and the taps, on the strip below a row of the sheet: where they are in the song. */
export function CountMarks({ row, seconds: [from, to] }: { row: Row; seconds: [number, number] }) {
  const counts = thought.value ? countNow.value : null;
  if (!counts && !taps.value.length) return null;
  const x = (at: number) => (100 * (at - from)) / (to - from);
  const beats: { at: number; one: boolean }[] = [];
  if (counts) {
    for (let beat = Math.ceil(counts.beatAt(from) - 1e-6); counts.secondsAt(beat) < to - 1e-6 && beats.length < 64; beat++) beats.push({ at: counts.secondsAt(beat), one: Math.floor(counts.position(beat + 1e-6).beat) === 1 });
  }
  const own = taps.value.filter((at) => at >= from && at < to);
  return (
    <svg class="marks" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" data-bar={row.bar}>
      {beats.map(({ at, one }) => <path key={at} class={one ? "one" : "beat"} d={`M${x(at).toFixed(2)} ${one ? 0 : 3}V10`} />)}
      {own.map((at, k) => <path key={`tap ${k}`} class="tapped" d={`M${x(at).toFixed(2)} 0V3`} />)}
    </svg>
  );
}
