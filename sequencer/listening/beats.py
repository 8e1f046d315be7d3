"""Beats and bars from activations: tempo level chosen by likelihood, bars by all that tells the one, with confidence values."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Bools, Floats, Ints
from sequencer.listening.activations import Activations
from sequencer.listening.bar_starts.bar_readings import LaidBars, bars_in_context, shifted_readings
from sequencer.listening.barpointer import FPS, Path
from sequencer.listening.confidence import (
    doubted_bars,
    slipped_beats,
    sure_bars,
    sure_beats,
    sure_metre,
)
from sequencer.listening.last_beat import end_of_count
from sequencer.listening.leaders import count_in, counted_music
from sequencer.listening.levels import METRES, readings_of, ways_to_count
from sequencer.listening.signal.accents import plain_accents
from sequencer.listening.signal.spectra import FRAMES
from sequencer.listening.steadiness import steadied
from sequencer.timing.song import Reading

_UNSURE = 0.5  # mean probability of downbeats below which the network has no opinion
_PLAIN = 0.7  # fraction that accents must explain to be trusted
_LEAST_SCORE = 8.0  # [nats] if no way to count is more likely than this, there is no beat
_FIRST, _LAST = 0.35, 0.1  # probability of the first beat, and of the last: music fades out
_LEAST_CONFIDENCE = 0.2  # mean probability of eight beats below which they are not steady
_DOUBTFUL = 0.45  # the same, next to such a span
_CONTEXT = 24  # beats at least that tell phrases and harmony


@dataclass(frozen=True, slots=True, eq=False)
class BeatCount:
    """Beats and bars detected in a track.

    Parameters
    ----------
    beats : ndarray, shape (n,) [s]
    downbeats : ndarray, shape (m,) [s]
        A subset of `beats`.
    confidence : ndarray, shape (m,) [1]
        Confidence of each bar.
    beat_confidence : ndarray, shape (n,) [1]
    metre : int
    readings : tuple of Reading
    unsteady : tuple of (float, float)
        Spans without a steady beat [s].
    metre_confidence : float
        How sure the metre is [1].
    count_in : int
        Beats before the first bar that only count the music in.

    Notes
    -----
    Source: `barpointer`. Times are the centres of activation peaks, to about 10 ms.
    """

    beats: Floats
    downbeats: Floats
    confidence: Floats
    beat_confidence: Floats
    metre: int
    readings: tuple[Reading, ...]
    unsteady: tuple[tuple[float, float], ...]
    metre_confidence: float = 0.0
    count_in: int = 0


def count_of(
    heard: Activations, duration: float, chroma: NDArray[np.float16] | None = None
) -> BeatCount:
    """Count the beats of a whole track.

    Parameters
    ----------
    heard : Activations
    duration : float
        Of the track [s].
    chroma : ndarray, shape (m, 12) [1], optional
        See `Spectra`; without it bars are laid as the search for beats found them, and tempo is not held steady.

    Returns
    -------
    count : BeatCount
        Without beats if there is no steady beat.

    Notes
    -----
    Source: `levels`, `bar_choice`, `confidence`.
    """
    chance = _chance(heard.beat)
    beat, downbeat = _finer(chance), _finer(_chance(heard.downbeat))
    ways = ways_to_count(beat, downbeat, heard.metres)
    if not ways:
        return _nothing(duration)
    path = ways[0].path
    best = path.metre
    if max(way.path.score for way in ways) < _LEAST_SCORE or len(path.frames) < 4:
        return _nothing(duration)
    sure = _confidence(beat, path.frames)
    times = _refined(chance, path.frames)
    times, places, sure = _without_gaps(times, path, sure)
    put: Floats = np.zeros(0)
    if chroma is not None:
        times, places, sure, put = _held_steady(times, places, sure, beat)
    heard_from, heard_to = counted_music(times, heard.bands)
    left = _left_out(times, heard_from, heard_to)
    times, places, sure = (each[heard_from:heard_to] for each in (times, places, sure))
    if len(times) < 4:
        return _nothing(duration)
    times, places, sure, unsteady = _only_steady(times, places, sure, duration)
    told = [span for span in left if not any(a <= span[0] and span[1] <= b for a, b in unsteady)]
    unsteady = tuple(sorted([*unsteady, *told]))
    if len(times) < 4 or not np.any(places == 0):
        return _nothing(duration)
    readings = readings_of(ways)
    laid = None
    if chroma is not None and len(times) >= _CONTEXT:
        laid = bars_in_context(times, heard, chroma, ways)
        places, best = laid.places.astype(np.float64), laid.metre
        readings = shifted_readings(readings, laid, times)
    first = places == 0
    down = _finer_at(downbeat, times)
    unsure = float(np.mean(down[first])) < _UNSURE
    share, metre, phase = plain_accents(heard.bands, times, METRES)
    part = (
        metre < best and best % metre == 0
    )  # a backbeat alone does not turn a bar of four into twos
    accented = np.arange(len(times)) % metre == phase
    same = metre == best and first[accented].mean() >= 0.5  # the search also handles shorter bars
    if share > _PLAIN and not same and (unsure or not part):
        best = metre
        first = accented
        down = first.astype(np.float64)
        readings = (replace(readings[0], metre=best), *readings[1:])
        laid = None
    led = count_in(times, first, best, heard.bands)
    first = first & (np.arange(len(times)) >= led)
    end = max(end_of_count(times, heard.bands), int(np.argmax(first)) + 1)
    times, sure, down = (each[:end] for each in (times, sure, down))
    first = first[:end]
    count = BeatCount(
        times,
        times[first],
        _bar_confidence(times, first, sure, down),
        sure,
        best,
        readings,
        unsteady,
        sum(reading.share for reading in readings if reading.metre == best),
        led,
    )
    return count if laid is None else _sure_count(count, first, laid, np.isin(times, put))


def _sure_count(count: BeatCount, first: Bools, laid: LaidBars, put: Bools) -> BeatCount:
    """The count with its confidence as shares that hold; `put` are beats that a steady tempo put where they are."""
    firsts = np.flatnonzero(first)
    ends = np.append(firsts[1:], len(first))
    mean = [
        float(count.beat_confidence[low:high].mean())
        for low, high in zip(firsts, ends, strict=True)
    ]
    bars = sure_bars(np.array(mean), laid.ones[firsts])
    slipped = put | slipped_beats(count.beats)
    return replace(
        count,
        confidence=doubted_bars(bars, firsts, slipped),
        beat_confidence=sure_beats(count.beat_confidence),
        metre_confidence=sure_metre(float(laid.ways.shares[laid.ways.metres == laid.metre].sum())),
    )


def _held_steady(
    times: Floats, places: Floats, sure: Floats, beat: Floats
) -> tuple[Floats, Floats, Floats, Floats]:
    """Beats on the steady tempo that most lie on, and those of them that it put there."""
    held, moved = steadied(times, sure, beat)
    if not moved.any():
        return times, places, sure, held[:0]
    near = np.clip(np.searchsorted(times, held), 1, len(times) - 1)
    near -= (held - times[near - 1] < times[near] - held).astype(np.int64)
    sure = np.where(moved, _finer_at(beat, held), sure[near])
    return held, np.where(moved, 1, places[near]), sure, held[moved]


def _left_out(times: Floats, first: int, end: int) -> list[tuple[float, float]]:
    """Spans before and after the music in which beats were found that are not counted [s]."""
    spans = []
    if first:
        spans.append((round(float(times[0]), 3), round(float(times[first]), 3)))
    if end < len(times):
        spans.append((round(float(times[end - 1]), 3), round(float(times[-1]), 3)))
    return spans


def _nothing(duration: float) -> BeatCount:
    none = np.zeros(0)
    return BeatCount(none, none, none, none, 4, (), ((0.0, duration),))


def _chance(odds: Floats) -> Floats:
    return np.asarray(1.0 / (1.0 + np.exp(-odds)), dtype=np.float64)


def _finer(activation: Floats) -> Floats:
    """Resample the network's frames to search frames, keeping peaks one search frame wide on each side."""
    from scipy.ndimage import maximum_filter1d

    n = len(activation) * FPS // FRAMES
    fine = np.interp(np.arange(n) * FRAMES / FPS, np.arange(len(activation)), activation)
    return np.asarray(maximum_filter1d(fine, 3))


def _finer_at(fine: Floats, times: Floats) -> Floats:
    index = np.clip(np.round(times * FPS).astype(np.int64), 2, max(len(fine) - 3, 2))
    return np.max([fine[index + shift] for shift in (-2, -1, 0, 1, 2)], axis=0)


def _confidence(beat: Floats, frames: Ints) -> Floats:
    return _finer_at(beat, frames / FPS)


def _refined(beat: Floats, frames: Ints) -> Floats:
    """Times of beats: the centre of the activation's peak near each frame of the path [s]."""
    near = np.arange(-2, 3)
    middle = np.round(frames * FRAMES / FPS).astype(np.int64)
    index = np.clip(middle[:, None] + near, 0, len(beat) - 1)
    weight = beat[index] ** 2
    total = weight.sum(axis=1)
    centre = (weight * (middle[:, None] + near)).sum(axis=1) / np.maximum(total, 1e-12)
    clear = beat[index].max(axis=1) > 0.15
    times = np.where(clear, centre / FRAMES, frames / FPS)
    # never let two beats coincide or cross
    times = np.maximum(times, 0.0)
    return np.asarray(np.maximum.accumulate(times + 0.0))


def _without_gaps(times: Floats, path: Path, sure: Floats) -> tuple[Floats, Floats, Floats]:
    """Continue the count evenly, with zero confidence, where the path breaks off and restarts."""
    out_t, out_p, out_s = [times[0]], [int(path.places[0])], [sure[0]]
    for i in range(1, len(times)):
        if path.breaks[i]:
            gap = times[i] - times[i - 1]
            around = np.diff(times[max(i - 5, 0) : i]).tolist() + np.diff(times[i : i + 5]).tolist()
            steps = max(1, round(gap / float(np.median(around)))) if around else 1
            for step in range(1, steps):
                out_t.append(times[i - 1] + gap * step / steps)
                out_p.append((out_p[-1] + 1) % path.metre)
                out_s.append(0.0)
        out_t.append(times[i])
        out_p.append(int(path.places[i]))
        out_s.append(sure[i])
    keep = np.concatenate([[True], np.diff(out_t) > 0.1])
    return np.array(out_t)[keep], np.array(out_p)[keep], np.array(out_s)[keep]


def _only_steady(
    times: Floats, places: Floats, sure: Floats, duration: float
) -> tuple[Floats, Floats, Floats, tuple[tuple[float, float], ...]]:
    """Drop doubtful beats at both ends; report the doubtful spans in between."""
    width = 8
    if len(times) < width:
        mean: Floats = np.full(len(times), sure.mean())
    else:
        padded = np.pad(sure, (width // 2, width - 1 - width // 2), mode="edge")
        mean = np.asarray(np.convolve(padded, np.ones(width) / width, mode="valid"), np.float64)
    steady = mean >= _LEAST_CONFIDENCE
    begins = steady & (sure >= np.minimum(_FIRST, mean))  # the count continues through silence,
    ends = steady & (sure >= _LAST)  # but does not start or end in it
    if not begins.any():
        return times[:0], places[:0], sure[:0], ((0.0, duration),)
    low = int(np.argmax(begins))
    high = len(steady) - int(np.argmax(ends[::-1]))
    times, places, sure, steady = (
        times[low:high],
        places[low:high],
        sure[low:high],
        steady[low:high],
    )
    spans: list[tuple[float, float]] = []
    gap = float(np.median(np.diff(times))) if len(times) > 1 else 1.0
    if times[0] > 4 * gap + 2:
        spans.append((0.0, float(times[0])))
    edges = np.flatnonzero(
        np.diff(np.concatenate([[1], ~_grown(~steady, mean[low:high]), [1]]).astype(int))
    )
    for a, b in zip(edges[::2], edges[1::2], strict=True):
        spans.append((float(times[a]), float(times[min(b, len(times) - 1)])))
    if duration - times[-1] > 4 * gap + 2:
        spans.append((float(times[-1]), duration))
    return times, places, sure, tuple((round(a, 3), round(b, 3)) for a, b in spans)


def _grown(lost: Bools, mean: Floats) -> Bools:
    """Beats that are lost, and neighbouring ones that are only half certain."""
    doubtful = (mean < _DOUBTFUL) | lost
    edges = np.flatnonzero(np.diff(np.concatenate([[0], doubtful, [0]]).astype(int)))
    grown = np.zeros(len(lost), np.bool_)
    for a, b in zip(edges[::2], edges[1::2], strict=True):
        grown[a:b] = lost[a:b].any()
    return grown


def _bar_confidence(times: Floats, first: Bools, sure: Floats, down: Floats) -> Floats:
    """Confidence of each bar: in its beats, and in its first beat against the others."""
    starts = np.flatnonzero(first)
    ends = np.append(starts[1:], len(times))
    result = []
    for a, b in zip(starts, ends, strict=True):
        others = down[a + 1 : b].max() if b - a > 1 else 0.0
        lead = down[a] / (down[a] + others + 0.05)
        result.append(float(np.mean(sure[a:b]) * (0.5 + 0.5 * lead)))
    return np.array(result)
