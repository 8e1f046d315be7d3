// The song played on the planning page: the player that the rehearsal page has too, its sound fetched once it is needed.
import { effect, signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { SilentClock, type Clock } from "../src/clock";
import { FASTEST, Player, SLOWEST } from "../src/player";
import { SoundClock } from "../src/sound";
import { bytes } from "./api";
import { heardCount } from "./count_store";
import { notice, playBy, playing, seconds, tempo, told, view } from "./store";
import type { TempoMap } from "../src/count";

export const clicking = signal(false); // a click on every count
export const pace = signal(100); // [%]
export const repeated = signal<[number, number] | null>(null); // [s]
export const fetching = signal(false); // the song's sound is on its way
export const countingIn = signal<number | null>(null); // the count before it plays

class SongPlayer {
  player: Player | null = null;
  readonly drawn: ((seconds: number) => void)[] = []; // what else is drawn each frame
  private loaded = false;
  private dirty = true;

  constructor() {
    effect(() => {
      // Until it is played the song needs no sound, but its length: it can be gone through at once.
      const long = view.value?.duration, count = heardCount.value ?? tempo.value;
      if (!long || !count) return;
      if (!this.player) this.player = this.made(long, count);
      else {
        this.player.count(count);
        if (!this.loaded && this.player.clock.duration !== long) this.player.take(new SilentClock(long));
      }
    });
    playBy((to) => this.seek(to));
    const loop = () => {
      this.frame();
      requestAnimationFrame(loop);
    };
    requestAnimationFrame(loop);
  }

  private made(duration: number, count: TempoMap): Player {
    const own = new Player(new SilentClock(duration), count, {
      changed: () => (playing.value = own.clock.playing || own.counting !== null),
      counted: (count) => (countingIn.value = count),
      notice: (words) => notice(words, true),
    });
    own.clock.seek(seconds.peek());
    return own;
  }

  get clock(): Clock {
    return this.player?.clock ?? silence;
  }

  touch(): void {
    this.dirty = true;
  }

  seek(to: number): void {
    this.clock.seek(to);
    seconds.value = this.clock.now();
    this.dirty = true;
  }

  /** Plays or stops: browsers make no sound before somebody presses a key or a button. */
  async toggle(): Promise<void> {
    if (!this.player || fetching.value) return; // pressed again while nothing is heard yet: it plays soon
    if (!this.player.clock.playing && !this.player.counting) await this.load();
    await this.player.toggle();
    this.dirty = true;
  }

  private async load(): Promise<void> {
    if (this.loaded || !this.player) return;
    this.loaded = true;
    const duration = view.value?.duration ?? 1;
    fetching.value = true;
    told.value = "The song is being loaded.";
    const silent = (why: string) => notice(`${why} The show plays without sound.`, true);
    try {
      const sound = new SoundClock(await bytes("track.mp3"), duration, (why) => {
        this.player!.take(new SilentClock(duration));
        silent(why);
      });
      this.player.take(sound);
    } catch (error) {
      silent(error instanceof Error ? error.message : String(error));
    } finally {
      fetching.value = false;
    }
  }

  setClicks(on: boolean): void {
    clicking.value = on;
    if (this.player) this.player.clicks.on = on;
  }

  setPace(percent: number): void {
    pace.value = this.player?.pace(percent) ?? 100;
    this.dirty = true;
  }

  /** Repeat a span of the song [s], or nothing. */
  setRepeat(span: [number, number] | null): void {
    if (!this.player) return;
    this.player.lift();
    if (span) {
      this.player.mark("a", span[0]);
      this.player.mark("b", span[1]);
    }
    repeated.value = this.player.span;
  }

  private frame(): void {
    if (!this.player) return;
    const on = this.player.clock.playing;
    const now = this.player.frame();
    if (on) seconds.value = now;
    const told = on || this.player.counting !== null;
    if (playing.value !== told) playing.value = told;
    if (on) follow();
    if (!on && !this.dirty) return;
    this.dirty = false;
    for (const draw of this.drawn) draw(now);
  }
}

const silence = new SilentClock(1);

let shown: Element | null = null;

/** Keeps the row that sounds in sight. */
function follow(): void {
  const row = document.querySelector(".head")?.closest(".eight") ?? null;
  if (row && row !== shown) row.scrollIntoView({ block: "nearest" });
  shown = row;
}

export const player = new SongPlayer();

export function Transport({ children }: { children?: ComponentChildren }) {
  const counts = tempo.value, now = view.value;
  if (!counts || !now) return null;
  const at = seconds.value, beat = counts.beatAt(at);
  const { bar, beat: inBar } = counts.position(Math.max(beat, counts.first) + 1e-6);
  const bars = (by: number) => player.seek(Math.max(0, counts.secondsAt(counts.barStart(bar + by))));
  const section = now.sections.find((each) => at >= each.start && at < each.end) ?? null;
  return (
    <footer class="transport" aria-label="The song">
      <button type="button" title="A bar back" onClick={() => bars(-1)}>‹ bar</button>
      <button type="button" class="main" aria-busy={fetching.value} onClick={() => void player.toggle()} title="Play or stop (Space)">{playing.value ? "Stop" : fetching.value ? "Loading …" : "Play"}</button>
      <button type="button" title="A bar on" onClick={() => bars(1)}>bar ›</button>
      <p class="where"><b>{countingIn.value ?? bar}</b>{countingIn.value === null && ` . ${Math.floor(inBar)}`}</p>
      {children}
      <input
        type="range" min={0} max={now.duration} step={0.1} value={at} aria-label="Where the song is" aria-valuetext={`bar ${bar}, count ${Math.floor(inBar)}`}
        onInput={(event) => player.seek(Number(event.currentTarget.value))}
      />
      <p class="time">{clock(at)} of {clock(now.duration)}</p>
      <details class="how">
        <summary>Speed, clicks{pace.value !== 100 || clicking.value || repeated.value ? ":" : ""} {[pace.value !== 100 ? `${pace.value} %` : "", clicking.value ? "clicks" : "", repeated.value ? "repeated" : ""].filter(Boolean).join(", ")}</summary>
        <div>
          <label>Speed <input type="range" min={SLOWEST} max={FASTEST} step={5} value={pace.value} aria-valuetext={`${pace.value} percent`} onInput={(event) => player.setPace(Number(event.currentTarget.value))} /> {pace.value} %</label>
          <label><input type="checkbox" checked={clicking.value} onChange={(event) => player.setClicks(event.currentTarget.checked)} /> Click on every count</label>
          <label><input type="checkbox" onChange={(event) => player.player && (player.player.countIn = event.currentTarget.checked)} /> A bar of counting first</label>
          <button type="button" class="small" aria-pressed={repeated.value !== null} disabled={!section && !repeated.value} onClick={() => player.setRepeat(repeated.value ? null : [section!.start, section!.end])}>
            {repeated.value ? "Repeat no more" : `Repeat ${section?.name ?? "the section"}`}
          </button>
        </div>
      </details>
    </footer>
  );
}

export const clock = (total: number) => `${Math.floor(total / 60)}:${String(Math.floor(total % 60)).padStart(2, "0")}`;
