// The embedded song, decoded once and handed to the sound card in pieces whose start is known to the
// sample: unchanged at full speed, through the stretcher at any other. The time that is shown is
// that of the sample being heard now.
import { NoSound, type Clock } from "./clock";
import { Stretcher } from "./stretch";

const HORIZON = 1.6; // [s] handed over in advance: a page that stalls for a second still sounds
const PIECE = 0.4; // [s]
const DELAY = 1105 / 44100; // [s] delay of MP3 encoder and decoder, if a browser does not remove it
const LEASH = 0.004; // [s] of the clock on the wall: the smoothed time never leaves the sound's by more
const PATIENCE = 3000; // [ms] for the sound card to begin; without one some browsers never say so
const SOON = 0.04; // [s] between pressing play and the first sample

interface Piece { at: number; from: number; to: number } // context time; song from … to

export class SoundClock implements Clock {
  readonly silent = false;
  readonly context: AudioContext;
  readonly output: GainNode;
  private buffer: AudioBuffer | null = null;
  private mono = new Float32Array(0);
  private skip = 0; // [s] of encoder delay at the buffer's start
  private readonly ready: Promise<void>;
  private rate = 1;
  private rest = 0; // position when it is not playing
  private on = false;
  private pieces: Piece[] = [];
  private nodes: { node: AudioBufferSourceNode; until: number }[] = [];
  private stretcher: Stretcher | null = null;
  private timer = 0;
  private span: [number, number] | null = null;
  private shown = 0;
  private stamp = 0;

  constructor(bytes: ArrayBuffer, readonly duration: number, fail: (why: string) => void) {
    this.context = new AudioContext({ latencyHint: "interactive" });
    this.output = this.context.createGain();
    this.output.connect(this.context.destination);
    this.ready = this.context.decodeAudioData(bytes).then(
      (buffer) => {
        this.buffer = buffer;
        this.skip = buffer.duration - duration > 0.02 ? DELAY : 0;
        this.mono = new Float32Array(buffer.length);
        for (let c = 0; c < buffer.numberOfChannels; c++) {
          const channel = buffer.getChannelData(c);
          for (let i = 0; i < channel.length; i++) this.mono[i] += channel[i];
        }
      },
      () => fail("This browser cannot read the song."),
    );
  }

  get playing(): boolean {
    return this.on;
  }

  /** The song's own samples, from its first moment on; null if the browser could not read it. */
  async samples(): Promise<{ mono: Float32Array; rate: number; context: AudioContext } | null> {
    await this.ready;
    if (!this.buffer) return null;
    const { sampleRate } = this.buffer;
    return { mono: this.mono.subarray(Math.round(this.skip * sampleRate)), rate: sampleRate, context: this.context };
  }

  /** Context time of the sample that is heard now. */
  heard(): number {
    return this.stamped() ?? this.context.currentTime - (this.context.outputLatency || this.context.baseLatency || 0);
  }

  /** The same by the browser's own account of when samples leave; null where it gives none that can be. */
  private stamped(): number | null {
    const { context } = this;
    const stamp = context.getOutputTimestamp?.();
    if (!stamp?.contextTime || !stamp.performanceTime) return null;
    const at = stamp.contextTime + (performance.now() - stamp.performanceTime) / 1000;
    return at <= context.currentTime + 0.01 && at > context.currentTime - 0.6 ? at : null;
  }

  /** Where in the song it was at a moment just past [ms of the page's clock], as an event's time stamp gives it. */
  at(stamp: number): number {
    if (!this.on) return this.rest;
    return this.songAt(this.heard() - Math.max(0, performance.now() - stamp) / 1000);
  }

  /** How late samples come out [s]; null where the browser does not say. What loudspeakers add without wires nobody knows. */
  latency(): number | null {
    const at = this.stamped();
    if (at !== null) return Math.max(0, this.context.currentTime - at);
    return this.context.outputLatency || null;
  }

  private songAt(time: number): number {
    const { pieces } = this;
    let k = pieces.length - 1;
    while (k > 0 && pieces[k].at > time) k--;
    const piece = pieces[k];
    if (!piece) return this.rest;
    return Math.min(piece.to, piece.from + Math.max(0, time - piece.at) * this.rate);
  }

  now(): number {
    if (!this.on) return this.rest;
    const raw = this.songAt(this.heard());
    const stamp = performance.now();
    const ahead = this.shown + ((stamp - this.stamp) / 1000) * this.rate;
    const off = raw - ahead;
    const leash = LEASH * this.rate;
    this.shown = Math.abs(off) > 0.03 ? raw : Math.min(raw + leash, Math.max(raw - leash, ahead + 0.2 * off));
    this.stamp = stamp;
    if (raw >= this.duration - 1e-3 && !this.span) {
      this.pause();
      this.rest = this.duration;
    }
    return Math.max(0, this.shown);
  }

  /** Context time at which a moment of the song sounds next; null if that is not handed over yet. */
  when(seconds: number): number | null {
    for (const piece of this.pieces) {
      if (piece.from <= seconds && seconds < piece.to) {
        const at = piece.at + (seconds - piece.from) / this.rate;
        if (at > this.context.currentTime - 0.02) return at;
      }
    }
    return null;
  }

  async play(): Promise<void> {
    await this.ready;
    await Promise.race([this.context.resume(), new Promise((done) => setTimeout(done, PATIENCE))]);
    if (this.context.state !== "running") throw new NoSound();
    if (!this.buffer) return;
    if (this.rest >= this.duration - 0.01) this.rest = 0;
    this.on = true;
    this.begin(this.rest);
  }

  pause(): void {
    this.rest = this.on ? Math.max(0, this.songAt(this.heard())) : this.rest;
    this.on = false;
    this.hush();
  }

  seek(seconds: number): void {
    this.rest = Math.min(Math.max(seconds, 0), this.duration);
    if (this.on) this.begin(this.rest);
  }

  /** Loop between two moments, without a gap; null to stop looping. */
  loop(span: [number, number] | null): void {
    if (span?.[0] === this.span?.[0] && span?.[1] === this.span?.[1]) return;
    this.span = span;
    if (this.on) this.begin(this.songAt(this.heard()));
  }

  get speed(): number {
    return this.rate;
  }

  set speed(rate: number) {
    if (rate === this.rate) return;
    const at = this.on ? this.songAt(this.heard()) : this.rest;
    this.rate = rate;
    if (this.on) this.begin(at);
  }

  get volume(): number {
    return this.output.gain.value;
  }

  set volume(share: number) {
    this.output.gain.value = share;
  }

  private hush(): void {
    clearInterval(this.timer);
    for (const { node } of this.nodes) node.stop();
    this.nodes = [];
    this.pieces = [];
    this.stretcher = null;
  }

  private begin(from: number): void {
    this.hush();
    this.rest = this.shown = from;
    this.stamp = performance.now();
    this.pieces = [{ at: this.context.currentTime + SOON, from, to: from }];
    this.fill();
    this.timer = window.setInterval(() => this.fill(), 100);
  }

  private fill(): void {
    const { context, pieces } = this;
    if (!this.buffer || !this.on) return;
    while (pieces.length > 2 && pieces[1].at < context.currentTime - 2) pieces.shift();
    this.nodes = this.nodes.filter(({ until }) => until > context.currentTime - 0.1);
    for (;;) {
      const last = pieces[pieces.length - 1];
      const at = last.at + (last.to - last.from) / this.rate;
      if (at > context.currentTime + HORIZON) return;
      const end = this.span ? this.span[1] : this.duration;
      const back = last.to >= end - 1e-6;
      if (back && !this.span) return;
      const from = back && this.span ? this.span[0] : last.to;
      if (back) this.stretcher = null;
      const to = this.hand(at, from, Math.min(end, from + Math.max(0.05, PIECE * this.rate)));
      if (to <= from) return;
      pieces.push({ at, from, to });
    }
  }

  /** Hand one piece to the sound card; returns how far in the song it goes. */
  private hand(at: number, from: number, end: number): number {
    const buffer = this.buffer!;
    const node = this.context.createBufferSource();
    node.connect(this.output);
    let to = end;
    if (this.rate === 1) {
      node.buffer = buffer;
      node.start(at, from + this.skip, end - from);
    } else {
      this.stretcher ??= new Stretcher(buffer, this.mono, from + this.skip, this.rate);
      const { hop } = this.stretcher;
      const hops = Math.max(1, Math.ceil(((end - from) / this.rate) * buffer.sampleRate / hop - 1e-6));
      const channels = this.stretcher.next(hops);
      const piece = this.context.createBuffer(channels.length, hops * hop, buffer.sampleRate);
      channels.forEach((channel, c) => piece.copyToChannel(channel, c));
      node.buffer = piece;
      node.start(at);
      to = Math.min(this.duration, from + ((hops * hop) / buffer.sampleRate) * this.rate);
    }
    this.nodes.push({ node, until: at + (to - from) / this.rate });
    return to;
  }
}
