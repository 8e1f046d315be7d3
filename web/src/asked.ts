// What the page's address asks for: rehearsal.html#from=24.1&until=27.1&speed=60&for=Wren opens it at that loop, slowed and
// repeated. A practice plan links to it.
import type { TempoMap } from "./count";
import { $ } from "./dom";
import type { Page } from "./main";

/** The second of a bar.beat, or of a moment as m:ss.s; null if it is neither, or beyond the song. */
function second(text: string | null, tempo: TempoMap, duration: number): number | null {
  const bar = /^(-?\d+)\.(\d+)$/.exec(text ?? "");
  const clock = /^(\d+):(\d\d(?:\.\d+)?)$/.exec(text ?? "");
  let at = NaN;
  if (bar && Number(bar[2]) >= 1) at = tempo.secondsAt(tempo.barStart(Number(bar[1])) + Number(bar[2]) - 1);
  else if (clock) at = Number(clock[1]) * 60 + Number(clock[2]);
  return at >= -1 && at <= duration + 1 ? Math.min(Math.max(at, 0), duration) : null;
}

/** Set up what the address asks for; whatever in it is not understood is told, and the rest is done. */
export function openAsked(page: Page, hash: string, notice: (text: string) => void): void {
  const asked = new URLSearchParams(hash.replace(/^#/, ""));
  const { doc, tempo, player } = page;
  const from = second(asked.get("from"), tempo, doc.duration), until = second(asked.get("until"), tempo, doc.duration);
  if (from !== null && until !== null && until - from > 0.05) {
    [player.a, player.b] = [from, until];
    if (player.repeat) player.turn();
    $("repeat").click();
    page.seek(from);
  } else if (from !== null && !asked.has("until")) page.seek(from);
  else if (asked.has("from") || asked.has("until")) notice("The loop that was asked for is not in this song: has the show changed since the plan?");
  const speed = Number(asked.get("speed"));
  if (speed > 0) {
    const slider = $<HTMLInputElement>("speed");
    slider.value = String(speed);
    slider.dispatchEvent(new Event("input"));
  }
  const name = asked.get("for");
  if (name === null) return;
  const who = doc.cast.findIndex((entry) => entry.name === name);
  if (who < 0) notice(`There is no ${name} in this show.`);
  else $("cast").querySelectorAll("button")[who]?.click();
}
