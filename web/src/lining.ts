// Two recordings of one song lined up by their sound: where in the film the song begins, and how fast it was played there.
// Each sound becomes an envelope of its onsets: the rises of loudness in bands, a hundred times a second. The two are laid over
// each other at every lag by cross-correlation, at every speed at which somebody practises. Source: spectral flux as an onset
// function, S. Dixon, Onset detection revisited, DAFx 2006 (from memory); bands and thresholds are this page's own.

export const PER_SECOND = 100; // of an envelope
const FRAME = 1024;
const BANDS = 24;
const LOWEST = 60, HIGHEST = 8000; // [Hz] what a telephone records of a song in a room
const AROUND = 0.4; // [s] the usual loudness about an onset is taken off
const LEAST = 6; // [s] that both have to share
const APART = 0.15; // [s] another place is no nearer than this
const SURE = 1.15; // how many times better than the next best place
export const ENOUGH = 7; // standard deviations above chance
const SPEEDS = [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 1.05, 1.1];

/** Where the song is in the film. */
export interface Lining {
  start: number; // [s] of the film at which the song begins; negative if that was before the film
  speed: number; // of the song in the film, 1 as it is
  strength: number; // standard deviations above chance
  clear: number; // how many times better than the next best place
  sure: boolean;
}

const turns = new Map<number, [Float64Array, Float64Array]>(); // cosines and sines for transforms of each length

function turnsOf(n: number): [Float64Array, Float64Array] {
  let known = turns.get(n);
  if (!known) {
    const angles = Float64Array.from({ length: n / 2 }, (_, k) => (-2 * Math.PI * k) / n);
    known = [angles.map(Math.cos), angles.map(Math.sin)];
    turns.set(n, known);
  }
  return known;
}

/** In-place fast Fourier transform of 2^n values. */
export function transform(re: Float64Array, im: Float64Array): void {
  const n = re.length, [cos, sin] = turnsOf(n);
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j], re[i]];
      [im[i], im[j]] = [im[j], im[i]];
    }
  }
  for (let size = 2; size <= n; size <<= 1) {
    const half = size >> 1, stride = n / size;
    for (let i = 0; i < n; i += size)
      for (let k = 0; k < half; k++) {
        const a = i + k, b = a + half, c = cos[k * stride], s = sin[k * stride];
        const x = re[b] * c - im[b] * s, y = re[b] * s + im[b] * c;
        re[b] = re[a] - x;
        im[b] = im[a] - y;
        re[a] += x;
        im[a] += y;
      }
  }
}

/** Rises of loudness of a sound, a hundred times a second, about zero. */
export function onsets(samples: Float32Array, rate: number): Float32Array {
  const frames = Math.max(0, Math.floor((samples.length / rate) * PER_SECOND));
  const edges = Array.from({ length: BANDS + 1 }, (_, k) => Math.round((LOWEST * (HIGHEST / LOWEST) ** (k / BANDS) * FRAME) / rate));
  const shape = Float64Array.from({ length: FRAME }, (_, k) => 0.5 - 0.5 * Math.cos((2 * Math.PI * k) / FRAME));
  const re = new Float64Array(FRAME), im = new Float64Array(FRAME);
  let before = new Float64Array(BANDS);
  const out = new Float32Array(frames);
  for (let i = 0; i < frames; i++) {
    const middle = Math.round((i / PER_SECOND) * rate);
    for (let k = 0; k < FRAME; k++) {
      re[k] = (samples[middle - FRAME / 2 + k] ?? 0) * shape[k];
      im[k] = 0;
    }
    transform(re, im);
    const now = new Float64Array(BANDS);
    for (let band = 0; band < BANDS; band++) {
      let power = 1e-9;
      const low = Math.min(edges[band], FRAME / 2 - 1), high = Math.min(Math.max(edges[band + 1], low + 1), FRAME / 2);
      for (let k = low; k < high; k++) power += re[k] * re[k] + im[k] * im[k];
      now[band] = Math.log(power / (high - low) + 1e-4);
      if (i) out[i] += Math.max(0, now[band] - before[band]);
    }
    before = now;
  }
  return levelled(out);
}

/** A function without what is usual about each of its moments. */
function levelled(values: Float32Array): Float32Array {
  const half = Math.round(AROUND * PER_SECOND), sums = new Float64Array(values.length + 1);
  values.forEach((value, i) => (sums[i + 1] = sums[i] + value));
  return values.map((value, i) => {
    const low = Math.max(0, i - half), high = Math.min(values.length, i + half + 1);
    return value - (sums[high] - sums[low]) / (high - low);
  });
}

/** An envelope of a sound that is played at another speed. */
function played(values: Float32Array, speed: number): Float32Array {
  if (speed === 1) return values;
  const out = new Float32Array(Math.floor(values.length / speed));
  for (let i = 0; i < out.length; i++) {
    const at = i * speed, k = Math.floor(at);
    out[i] = values[k] + (at - k) * ((values[k + 1] ?? values[k]) - values[k]);
  }
  return out;
}

interface Peak { lag: number; strength: number; next: number }

/** How well one envelope lies over another at each lag, in standard deviations of chance: its best place, and the next best. */
function best(song: Float32Array, film: Float32Array): Peak | null {
  let size = 1;
  while (size < song.length + film.length) size <<= 1;
  const a = [new Float64Array(size), new Float64Array(size)], b = [new Float64Array(size), new Float64Array(size)];
  a[0].set(song);
  b[0].set(film);
  transform(a[0], a[1]);
  transform(b[0], b[1]);
  const re = new Float64Array(size), im = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    // the song's transform conjugated; conjugated once more, so that the transform goes back
    re[k] = a[0][k] * b[0][k] + a[1][k] * b[1][k];
    im[k] = -(a[0][k] * b[1][k] - a[1][k] * b[0][k]);
  }
  transform(re, im);
  const squares = (values: Float32Array) => {
    const sums = new Float64Array(values.length + 1);
    values.forEach((value, i) => (sums[i + 1] = sums[i] + value * value));
    return sums;
  };
  const songs = squares(song), films = squares(film);
  const first = 1 - song.length, scores = new Float64Array(song.length + film.length).fill(-Infinity);
  let top = -Infinity, place = 0;
  for (let lag = first; lag < film.length; lag++) {
    const low = Math.max(0, lag), high = Math.min(film.length, lag + song.length);
    if (high - low < LEAST * PER_SECOND) continue;
    const power = (films[high] - films[low]) * (songs[high - lag] - songs[low - lag]);
    const score = power > 0 ? (re[(lag + size) % size] / size / Math.sqrt(power)) * Math.sqrt(high - low) : 0;
    scores[lag - first] = score;
    if (score > top) [top, place] = [score, lag];
  }
  if (top === -Infinity) return null;
  let next = 0;
  scores.forEach((score, k) => {
    if (Math.abs(k + first - place) > APART * PER_SECOND && score > next) next = score;
  });
  const left = scores[place - first - 1], right = scores[place - first + 1]; // not there, or not looked at, at either end
  const bend = left - 2 * top + right;
  return { lag: place + (Number.isFinite(bend) && bend < 0 ? (0.5 * (left - right)) / bend : 0), strength: top, next };
}

/** Line a film up with a song by their onsets; null if one of them is too short. */
export function linedUp(song: Float32Array, film: Float32Array): Lining | null {
  let found: (Peak & { speed: number }) | null = null, other = 0;
  for (const speed of SPEEDS) {
    const peak = best(played(song, speed), film);
    if (!peak) continue;
    if (found === null || peak.strength > found.strength) {
      other = Math.max(other, found?.strength ?? 0);
      found = { ...peak, speed };
    } else other = Math.max(other, peak.strength);
  }
  if (found === null) return null;
  const clear = found.strength / Math.max(found.next, other, 1e-9);
  const sure = found.strength > ENOUGH && clear > SURE;
  return { start: found.lag / PER_SECOND, speed: found.speed, strength: found.strength, clear, sure };
}
