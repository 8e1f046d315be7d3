// The song as both pages play it: where it is and how fast, what is repeated, a count-in and clicks. Everything that is drawn
// asks it where the song is.
import { Clicks } from "./clicks";
import { NoSound, SilentClock, type Clock } from "./clock";
import type { TempoMap } from "./count";

export const SLOWEST = 40, FASTEST = 110; // [%]
const STEP = 5; // [%]

/** What a page does when the player does something by itself. */
export interface Told {
  changed(): void; // it plays, or has stopped
  counted(count: number | null): void; // of the bar before it plays; null once that is over
  notice(words: string): void;
}

export class Player {
  readonly clicks: Clicks;
  a: number | null = null; // [s] marks between which the song is repeated
  b: number | null = null;
  repeat = false;
  countIn = false;
  counting: AbortController | null = null;

  constructor(public clock: Clock, tempo: TempoMap, private readonly told: Told) {
    this.clicks = new Clicks(tempo);
  }

  /** Another count of the same song. */
  count(tempo: TempoMap): void {
    this.clicks.count(tempo);
  }

  /** Another clock goes on where the one before was. */
  take(clock: Clock): void {
    const old = this.clock;
    this.clock = clock;
    clock.seek(old.now());
    clock.speed = old.speed;
  }

  /** Play, after a bar of counting if that is wanted; or stop. */
  async toggle(): Promise<void> {
    if (this.clock.playing || this.counting) return this.stop();
    const { span } = this;
    if (span) {
      const now = this.clock.now();
      if (now < span[0] - 0.01 || now >= span[1] - 0.01) this.clock.seek(span[0]);
    }
    if (this.countIn && !(await this.counted())) return this.told.changed();
    try {
      await this.clock.play();
    } catch (error) {
      if (error instanceof NoSound) {
        this.told.notice("This browser makes no sound here. The show plays without sound.");
        this.take(new SilentClock(this.clock.duration));
        void this.clock.play();
      } else this.told.notice("The browser did not start the song; press Play again.");
    }
    this.told.changed();
  }

  private async counted(): Promise<boolean> {
    const stopper = new AbortController();
    this.counting = stopper;
    this.told.changed();
    const go = await this.clicks.countIn(this.clock, this.clock.now(), this.clock.speed, (count) => this.told.counted(count), stopper.signal);
    this.told.counted(null);
    this.counting = null;
    return go;
  }

  stop(): void {
    this.counting?.abort();
    this.clock.pause();
    this.told.changed();
  }

  /** What is repeated; null if nothing is. */
  get span(): [number, number] | null {
    return this.repeat && this.a !== null && this.b !== null ? [this.a, this.b] : null;
  }

  /** A mark at a moment of the song; with both marks it is repeated between them. */
  mark(which: "a" | "b", seconds: number): void {
    this[which] = seconds;
    if (this.a !== null && this.b !== null && this.a > this.b) [this.a, this.b] = [this.b, this.a];
    if (this.a !== null && this.b !== null && this.b - this.a > 0.05 && !this.repeat) this.turn();
  }

  lift(): void {
    this.a = this.b = null;
    this.repeat = false;
  }

  /** Repeat or not; without marks it is the whole song. */
  turn(): void {
    this.repeat = !this.repeat;
    if (!this.repeat) return;
    this.a ??= 0;
    this.b ??= this.clock.duration;
  }

  /** Speed in percent, in steps of five; gives what it is now. */
  pace(percent: number): number {
    const value = Math.min(FASTEST, Math.max(SLOWEST, Math.round(percent / STEP) * STEP));
    this.clock.speed = value / 100;
    return value;
  }

  /** Once a frame: where the song is; what is repeated goes back, and clicks are handed to the sound card. */
  frame(): number {
    const { clock, span } = this;
    const playing = clock.playing;
    let seconds = clock.now();
    clock.loop?.(span);
    if (playing && !clock.loop && span && seconds >= span[1]) {
      clock.seek(span[0]);
      seconds = span[0];
      if (!clock.playing) void clock.play();
    }
    this.clicks.run(clock, seconds);
    return seconds;
  }
}
