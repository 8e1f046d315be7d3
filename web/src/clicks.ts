// Clicks made in the page: count-in, and a metronome with the song or instead of it.
import type { TempoMap } from "./count";
import type { Clock } from "./clock";

const AHEAD = 0.12; // [s] clicks are handed to the sound card this long before they sound
const LATE = 0.01; // [s] a click so much behind its beat is heard as one with it

export class Clicks {
  private context: AudioContext | null = null;
  private next = -Infinity; // beat
  on = false;

  constructor(private tempo: TempoMap) {}

  /** Click another count from now on. */
  count(tempo: TempoMap): void {
    this.tempo = tempo;
    this.next = -Infinity;
  }

  private audio(clock: Clock): AudioContext | null {
    try {
      this.context ??= clock.context ?? null;
      this.context ??= new AudioContext({ latencyHint: "interactive" });
      if (this.context.state === "suspended") void this.context.resume();
    } catch {
      return null; // no sound card: the page goes on without clicks
    }
    return this.context;
  }

  /** One click; gives what silences it, also before it sounds. */
  private click(context: AudioContext, at: number, accent: boolean): () => void {
    const tone = context.createOscillator();
    const gain = context.createGain();
    tone.type = accent ? "triangle" : "sine";
    tone.frequency.value = accent ? 1760 : 1175;
    gain.gain.setValueAtTime(accent ? 0.5 : 0.32, at);
    gain.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
    tone.connect(gain).connect(context.destination);
    tone.start(at);
    tone.stop(at + 0.08);
    return () => gain.disconnect();
  }

  /** Hand over the clicks of the beats that are about to come. */
  run(clock: Clock, seconds: number): void {
    if (!this.on || !clock.playing) {
      this.next = -Infinity;
      return;
    }
    const context = this.audio(clock);
    if (!context) return;
    const beat = this.tempo.beatAt(seconds);
    if (this.next < beat - 0.5 || this.next > beat + 8) this.next = Math.ceil(beat);
    const late = clock.when ? 0 : context.outputLatency || 0; // what is handed over now sounds later by this
    for (;;) {
      const moment = this.tempo.secondsAt(this.next);
      const wait = (moment - seconds) / clock.speed;
      if (wait > AHEAD + late) break;
      const at = clock.when?.(moment) ?? context.currentTime + wait - late;
      // On a busy machine a click may be thought of when its moment is past: none is better than one beside the beat.
      if (at > context.currentTime - LATE) {
        const { beat: inBar } = this.tempo.position(this.next + 1e-6);
        this.click(context, Math.max(at, context.currentTime), Math.floor(inBar) === 1);
      }
      this.next += 1;
    }
  }

  /** Click one bar before a moment; reports each count, and resolves when the moment is reached. */
  countIn(clock: Clock, seconds: number, speed: number, tell: (count: number) => void, stop: AbortSignal): Promise<boolean> {
    const context = this.audio(clock);
    const beat = this.tempo.beatAt(seconds);
    const { inBar } = this.tempo.position(beat + 1e-6);
    const gap = 1 / (this.tempo.rateAt(seconds) * speed);
    for (let i = 0; i < inBar && context; i++) stop.addEventListener("abort", this.click(context, context.currentTime + 0.05 + i * gap, i === 0));
    return new Promise((resolve) => {
      const started = performance.now() + 50;
      const step = () => {
        if (stop.aborted) return resolve(false);
        const count = Math.floor((performance.now() - started) / 1000 / gap);
        if (count >= inBar) return resolve(true);
        tell(Math.max(count, 0) + 1);
        requestAnimationFrame(step);
      };
      step();
    });
  }
}
