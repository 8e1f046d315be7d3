// What the page's address asks for: rehearsal.html#from=24.1&until=27.1&speed=60&for=Wren opens it at that loop, slowed and
// repeated. A practice plan links to it.
import type { TempoMap } from "./count";
import { $ } from "./dom";
import type { Page } from "./main";
import { FASTEST, SLOWEST } from "./player";

type Tell = (text: string) => void;

/** The second of a bar.beat, or of a moment as m:ss.s; NaN if it is neither, null if it is not in the song. */
function second(text: string, tempo: TempoMap, duration: number): number | null {
  const bar = /^(-?\d+)\.(\d+)$/.exec(text);
  const clock = /^(\d+):([0-5]\d(?:\.\d+)?)$/.exec(text);
  let at = NaN;
  if (bar) {
    const start = tempo.barStart(Number(bar[1])), beat = Number(bar[2]);
    if (beat < 1 || beat > tempo.position(start + 1e-6).inBar) return null;
    at = tempo.secondsAt(start + beat - 1);
  } else if (clock) at = Number(clock[1]) * 60 + Number(clock[2]);
  if (Number.isNaN(at)) return at;
  return at >= -1 && at <= duration + 1 ? Math.min(Math.max(at, 0), duration) : null;
}

/** Set up what the address asks for; whatever in it is not understood is told, and the rest is done. */
export function openAsked(page: Page, hash: string, tell: Tell): void {
  const asked = new URLSearchParams(hash.replace(/^#/, ""));
  openLoop(page, asked, tell);
  openSpeed(asked.get("speed"), tell);
  openFor(page, asked.get("for"), tell);
  for (const [name, value] of asked)
    if (!["from", "until", "speed", "for"].includes(name)) tell(`The address of this page asks for “${name}=${value}”, which means nothing here.`);
}

function openLoop(page: Page, asked: URLSearchParams, tell: Tell): void {
  const { doc, tempo, player } = page;
  const [from, until] = ["from", "until"].map((name) => {
    const text = asked.get(name);
    return text === null ? undefined : second(text, tempo, doc.duration);
  });
  const unread = ["from", "until"].filter((_, i) => Number.isNaN([from, until][i]));
  for (const name of unread) tell(`The address of this page says “${name}=${asked.get(name)}”: write a bar and beat, as in ${name}=24.1, or a moment, as in ${name}=1:05.5.`);
  if (unread.length || (from === undefined && until === undefined)) return;
  if (typeof from === "number" && until === undefined) page.seek(from);
  else if (typeof from === "number" && typeof until === "number" && until - from > 0.05) {
    [player.a, player.b] = [from, until];
    if (player.repeat) player.turn();
    $("repeat").click();
    page.seek(from);
  } else tell("The loop that was asked for is not in this song: has the show changed since the plan?");
}

function openSpeed(text: string | null, tell: Tell): void {
  if (text === null) return;
  const speed = /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  if (!(speed >= SLOWEST && speed <= FASTEST)) tell(`The address of this page says “speed=${text}”: the song can be played at ${SLOWEST} to ${FASTEST} %.`);
  if (Number.isNaN(speed)) return;
  const slider = $<HTMLInputElement>("speed");
  slider.value = String(speed);
  slider.dispatchEvent(new Event("input"));
}

function openFor(page: Page, name: string | null, tell: Tell): void {
  if (name === null) return;
  const who = page.doc.cast.findIndex((entry) => entry.name === name);
  if (who >= 0) $("cast").querySelectorAll("button")[who]?.click();
  else tell(name ? `There is no ${name} in this show.` : "The address of this page does not say for whom: write a performer’s name after for=.");
}
