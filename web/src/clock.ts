// The one clock of the page. Everything drawn is a function of `now()`, which is the time of the sound
// itself, read afresh each frame, so errors cannot accumulate. An embedded song has the clock of sound.ts; a
// linked one plays in the browser's audio element, which keeps the pitch but, at other than normal speed,
// sounds some 40 ms of the song ahead of the time it reports (measured in Chromium).
export interface Clock {
  readonly silent: boolean;
  readonly playing: boolean;
  readonly duration: number;
  now(): number;
  play(): Promise<void>;
  pause(): void;
  seek(seconds: number): void;
  speed: number;
  volume: number;
  loop?(span: [number, number] | null): void;
  when?(seconds: number): number | null;
  at?(stamp: number): number;
  latency?(): number | null;
  context?: AudioContext;
}

/** The browser lets no sound out, as on a machine without a sound card. */
export class NoSound extends Error {}

export class SilentClock implements Clock {
  readonly silent = true;
  private anchor = 0;
  private started: number | null = null;
  private rate = 1;
  private span: [number, number] | null = null;
  volume = 1;

  constructor(readonly duration: number) {}

  get playing(): boolean {
    return this.started !== null;
  }

  now(): number {
    if (this.started === null) return this.anchor;
    const at = this.anchor + ((performance.now() - this.started) / 1000) * this.rate;
    if (this.span && at >= this.span[1]) {
      const [from, to] = this.span;
      this.anchor = from + ((at - to) % (to - from));
      this.started = performance.now();
      return this.anchor;
    }
    if (at < this.duration) return at;
    this.anchor = this.duration;
    this.started = null;
    return this.duration;
  }

  async play(): Promise<void> {
    if (this.now() >= this.duration) this.anchor = 0;
    this.started ??= performance.now();
  }

  pause(): void {
    this.anchor = this.now();
    this.started = null;
  }

  loop(span: [number, number] | null): void {
    this.span = span;
  }

  seek(seconds: number): void {
    this.anchor = Math.min(Math.max(seconds, 0), this.duration);
    if (this.started !== null) this.started = performance.now();
  }

  get speed(): number {
    return this.rate;
  }

  set speed(rate: number) {
    const at = this.now();
    this.rate = rate;
    this.seek(at);
  }
}

const SMOOTHING = 0.15; // share of the audio time's jitter that is followed each frame
const LEASH = 0.006; // [s] the smoothed time never leaves the audio's by more

export class SongClock implements Clock {
  readonly silent = false;
  private rate = 1;
  private shown = 0;
  private stamp = 0;

  constructor(readonly element: HTMLAudioElement, readonly duration: number) {
    element.preservesPitch = true;
  }

  get playing(): boolean {
    return !this.element.paused && !this.element.ended;
  }

  now(): number {
    const raw = this.element.currentTime;
    const stamp = performance.now();
    if (!this.playing || this.element.seeking || this.element.readyState < 3) {
      this.shown = raw;
      this.stamp = stamp;
      return raw;
    }
    const ahead = this.shown + ((stamp - this.stamp) / 1000) * this.rate;
    const off = raw - ahead;
    const next = Math.abs(off) > 0.04 ? raw : ahead + SMOOTHING * off;
    this.shown = Math.min(Math.max(next, raw - LEASH), raw + LEASH);
    this.stamp = stamp;
    return this.shown;
  }

  async play(): Promise<void> {
    if (this.element.ended) this.element.currentTime = 0;
    await this.element.play();
  }

  pause(): void {
    this.element.pause();
  }

  seek(seconds: number): void {
    this.element.currentTime = Math.min(Math.max(seconds, 0), this.duration);
    this.shown = this.element.currentTime;
    this.stamp = performance.now();
  }

  get speed(): number {
    return this.rate;
  }

  set speed(rate: number) {
    this.rate = rate;
    this.element.playbackRate = rate;
  }

  get volume(): number {
    return this.element.volume;
  }

  set volume(share: number) {
    this.element.volume = share;
  }
}
