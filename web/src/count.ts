// Beats and seconds; mirrors sequencer/timing/tempo.py.
export interface Position { bar: number; beat: number; inBar: number }

/** Index of the last entry not above `value`; −1 where there is none. */
export function lastUpTo(sorted: ArrayLike<number>, value: number): number {
  let low = 0, high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

export class TempoMap {
  constructor(
    readonly times: number[],
    readonly first: number,
    readonly bars: number[],
    readonly metre: number,
  ) {}

  beatAt(seconds: number): number {
    const i = Math.min(Math.max(lastUpTo(this.times, seconds), 0), this.times.length - 2);
    const gap = this.times[i + 1] - this.times[i];
    return this.first + i + (seconds - this.times[i]) / gap;
  }

  secondsAt(beat: number): number {
    const x = beat - this.first;
    const i = Math.min(Math.max(Math.floor(x), 0), this.times.length - 2);
    return this.times[i] + (x - i) * (this.times[i + 1] - this.times[i]);
  }

  /** Beats a second at a moment. */
  rateAt(seconds: number): number {
    const i = Math.min(Math.max(lastUpTo(this.times, seconds), 0), this.times.length - 2);
    return 1 / (this.times[i + 1] - this.times[i]);
  }

  barStart(bar: number): number {
    if (bar < 1) return (bar - 1) * this.metre;
    if (bar <= this.bars.length) return this.bars[bar - 1];
    return this.bars[this.bars.length - 1] + (bar - this.bars.length) * this.metre;
  }

  position(beat: number): Position {
    let bar: number;
    if (beat < 0) bar = 1 + Math.floor(beat / this.metre);
    else {
      bar = lastUpTo(this.bars, beat) + 1;
      if (bar === this.bars.length) {
        bar += Math.floor((beat - this.bars[bar - 1]) / this.metre);
      }
    }
    const start = this.barStart(bar);
    return { bar, beat: beat - start + 1, inBar: this.barStart(bar + 1) - start };
  }

  /** bar.beat with whole beats. */
  text(beat: number): string {
    const { bar, beat: b } = this.position(beat + 1e-6);
    return `${bar}.${Math.floor(b)}`;
  }
}
