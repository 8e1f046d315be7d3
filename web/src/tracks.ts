// One motion as key samples; mirrors sequencer/outputs/rehearsal/keys.py.
export const CHUNK = 8;
export const BEFORE = 2;
export const AFTER = 3;

export interface TrackHead { start: number; intervals: number[]; steps: number[]; bases: number[] }

export class Track {
  private readonly offsets: Int32Array;
  readonly channels: number;

  constructor(private readonly head: TrackHead, private readonly samples: Int16Array) {
    this.channels = head.steps.length;
    this.offsets = new Int32Array(head.intervals.length);
    let at = 0;
    head.intervals.forEach((n, i) => {
      this.offsets[i] = at;
      at += this.channels * (n + BEFORE + AFTER + 1);
    });
  }

  /** Values of the first `count` channels at a beat, by Lagrange's formula through six samples. */
  read(beat: number, out: Float64Array, count = this.channels): void {
    const { head, samples } = this;
    const place = (beat - head.start) / CHUNK;
    const chunk = Math.min(Math.max(Math.floor(place), 0), head.intervals.length - 1);
    const n = head.intervals[chunk];
    const x = Math.min(Math.max(place - chunk, 0), 1) * n;
    const index = Math.min(Math.floor(x), n - 1);
    const f = x - index;
    const a = f + 2, b = f + 1, d = f - 1, e = f - 2, g = f - 3;
    const w0 = (-b * f * d * e * g) / 120;
    const w1 = (a * f * d * e * g) / 24;
    const w2 = (-a * b * d * e * g) / 12;
    const w3 = (a * b * f * e * g) / 12;
    const w4 = (-a * b * f * d * g) / 24;
    const w5 = (a * b * f * d * e) / 120;
    const width = n + BEFORE + AFTER + 1;
    let k = this.offsets[chunk] + index;
    for (let c = 0; c < count; c++, k += width) {
      out[c] = head.bases[c] + head.steps[c] * (
        w0 * samples[k] + w1 * samples[k + 1] + w2 * samples[k + 2] +
        w3 * samples[k + 3] + w4 * samples[k + 4] + w5 * samples[k + 5]);
    }
  }
}
