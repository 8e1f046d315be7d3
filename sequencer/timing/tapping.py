"""What a person's taps along a song say about its count: their tempo and phase, and how they go with beats that are known.

Fingers are early: people who tap with a steady sound tap some 20 to 80 ms before it, and do not notice.
Source: B. H. Repp, Sensorimotor synchronization: a review of the tapping literature, Psychonomic Bulletin & Review 12, 2005
(from memory).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Bools, Floats, Ints, as_floats

FEWEST_TAPS = 8
MOST_TAPS = 2_000  # more than one a beat of any song
BOUNCE = 0.12  # [s] two taps closer than this are one bouncing finger
USUAL_LEAD = 0.08  # [s] by which fingers may be early, see above
_NORMAL = 1.4826  # standard deviation of normal deviates in their median absolute deviation
_FAR = 3.0  # standard deviations beyond which a tap is a slip
_SLIP = 0.03  # [s] no tap nearer than this is a slip, however steady the others are
_ASIDE = 1.2  # most by which the period may differ from that of most steps
_FINE = 0.05  # [beats] by which the count may be off at the end between two rates that are tried
_MOST_RATES = 20_000
_ROUNDS = 8  # of counting the taps anew; it settles after two or three
_PAIRS = 400  # taps of which all pairs are looked at for the slope; of more, every second or third
_STEPS_ALIKE = 0.7  # share of steps that must go from one beat to the next
_NEAR = 0.25  # [beats] taps further from every beat tell nothing about them
_LOOSE = 0.2  # [beats] taps that sway more about a row of beats do not go with it
_DRIFT = 0.15  # [beats] by which the second half of them may lie elsewhere than the first
_PAUSE = 4.0  # [beats] without a tap that part two runs
_LOST = 0.15  # [beats] by which the count may be off after a pause, at one standard error, before nobody knows how many beats it had
_UNEVEN = 0.75  # a short step is at most this share of a long one, where taps come in pairs
_ALTERNATE = 0.7  # share of steps that must be short after a long one, or long after a short one
_FEWEST_PAIRS = 4
_STROKE = 0.012  # [s] how sharply strokes are told apart
_STROKE_REACH = 0.08  # [s]

Relation = Literal["same", "half", "double", "between"]


@dataclass(frozen=True, slots=True, kw_only=True)
class TapFit:
    """A steady count through a person's taps."""

    period: float  # [s] from one beat to the next
    start: float  # [s] the beat of the first tap that is none of the slips
    sway: float  # [s] standard deviation of the taps about it, by their median deviation
    period_error: float  # [s] standard error of `period`
    used: int  # taps
    slips: int  # taps that were left out: bounces, and what lies far from all others
    lost: bool = False  # in a pause so long that nobody knows how many beats it had: the tempo is that of the runs

    @property
    def tempo(self) -> float:
        """Beats a minute."""
        return 60.0 / self.period

    @property
    def tempo_error(self) -> float:
        """Standard error of the tempo [beats/min]."""
        return self.tempo * self.period_error / self.period


@dataclass(frozen=True, slots=True, kw_only=True)
class TapMatch:
    """How taps go with beats that are known."""

    relation: Relation  # taps on every beat, on every second, twice a beat, or between the beats
    odd: bool  # on every second beat: on those between the ones from which halving would count
    offset: float  # [s] of the taps in the median; negative: early
    sway: float  # [s] standard deviation of the offsets, by their median deviation


def fit_taps(taps: ArrayLike) -> TapFit:
    """A steady count through taps, whatever slips are among them.

    Parameters
    ----------
    taps : array_like, shape (n,) [s]
        Of the track, in any order.

    Returns
    -------
    fit : TapFit

    Raises
    ------
    ValueError
        If there are fewer than eight, or more than two thousand.

    Notes
    -----
    The tempo at which the taps gather most in one phase (the vector strength of J. M. Goldberg and P. B. Brown, 1969) gives each
    tap the number of its beat; the slope is the median of those of all pairs (H. Theil 1950; P. K. Sen, Estimates of the
    regression coefficient based on Kendall's tau, 1968), which stays right with up to 29 % of slips. Those are left out then, and
    least squares through the others are the answer, through each run of them where a pause between is too long to count through.
    Of the taps of a bouncing finger the one nearest to its beat counts.
    """
    every = np.unique(as_floats("taps", taps))
    given = int(np.size(np.asarray(taps)))
    first_of = np.concatenate([[True], np.diff(every) >= BOUNCE])[: len(every)]
    times = every[first_of]
    if not FEWEST_TAPS <= len(times) <= MOST_TAPS:
        raise ValueError(
            f"tap at least {FEWEST_TAPS} beats"
            if len(times) < FEWEST_TAPS
            else f"there are more than {MOST_TAPS} taps: start over"
        )
    period, start = _gathered(times)
    number = np.round((times - start) / period)
    for _ in range(_ROUNDS):
        period = _slope(number, times)
        start = float(np.median(times - period * number))
        again = np.round((times - start) / period)
        if np.array_equal(again, number):
            break
        number = again
    times = _nearest_of_bounces(every, first_of, start + period * number)
    off = times - start - period * number
    middle = float(np.median(off))
    kept = np.abs(off - middle) <= max(_FAR * _deviation(off), _SLIP)
    period, error, own = _by_runs(number[kept], times[kept])
    off = times[kept] - own - period * number[kept]
    first = float(number[kept][0])
    return TapFit(
        period=period,
        start=float(own[0]) + first * period,
        sway=_deviation(off),
        period_error=error,
        used=int(kept.sum()),
        slips=given - int(kept.sum()),
        lost=bool(np.ptp(own) > 0),
    )


def _by_runs(number: Floats, times: Floats) -> tuple[float, float, Floats]:
    """Slope, its standard error, and the value at 0 for each tap: one for all, but where a pause is too long to count through.

    Through a pause of n beats a tempo with standard error e carries the count within n·e. Where half a beat is not well beyond that, a
    beat more or less in the pause fits as well, and least squares through both sides would be far too sure of one of them; so it would where
    the sides do not meet. Then each has a value of its own, and only the slope is common (analysis of covariance; textbook).
    """
    run = np.concatenate([[0], np.cumsum(np.diff(number) > _PAUSE)])
    slope, error, own = _common_slope(run, number, times)
    if run[-1] == 0:
        return slope, error, own
    joined = run.copy()
    for k in np.flatnonzero(np.diff(run)).tolist():
        off, drift = abs(own[k + 1] - own[k]), error * (number[k + 1] - number[k])
        if drift <= _LOST * slope and off <= _FAR * drift + _SLIP:
            joined[joined == joined[k + 1]] = joined[k]
    return _common_slope(np.unique(joined, return_inverse=True)[1], number, times)


def _common_slope(run: Ints, x: Floats, y: Floats) -> tuple[float, float, Floats]:
    """One slope of several runs by least squares, its standard error, and the value at 0 of each point's run."""
    size = np.bincount(run)
    mean_x, mean_y = np.bincount(run, x) / size, np.bincount(run, y) / size
    dx, dy = x - mean_x[run], y - mean_y[run]
    square = float(np.sum(dx**2))
    slope = float(np.sum(dx * dy) / square)
    left = dy - slope * dx
    free = max(len(x) - len(size) - 1, 1)
    return slope, float(np.sqrt(np.sum(left**2) / free / square)), (mean_y - slope * mean_x)[run]


def beats_of_pairs(taps: ArrayLike) -> tuple[Floats, float] | None:
    """The beats of taps that come in pairs, as a gallop does, and how far apart a pair is [s]; None for even taps.

    Parameters
    ----------
    taps : array_like, shape (n,) [s]
        Of the track, in any order.

    Notes
    -----
    The second of a pair is the beat: of two tones close together, the one before the longer gap is heard as accented. Source:
    D.-J. Povel and H. Okkerman, Accents in equitone sequences, Perception & Psychophysics 30, 1981 (from memory). Shares are ours.
    """
    times = np.unique(as_floats("taps", taps))
    times = times[np.concatenate([[True], np.diff(times) >= BOUNCE])[: len(times)]]
    steps = np.diff(times)
    if len(steps) < 2 * _FEWEST_PAIRS - 1:
        return None
    low, high = (float(each) for each in np.quantile(steps, [0.25, 0.75]))
    if low > _UNEVEN * high:
        return None
    short = steps < (low + high) / 2
    if np.mean(short[1:] != short[:-1]) < _ALTERNATE:
        return None
    beats = times[1:][short]
    return (beats, float(np.median(steps[short]))) if len(beats) >= _FEWEST_PAIRS else None


def _nearest_of_bounces(every: Floats, first_of: Bools, beats: Floats) -> Floats:
    """Of each bouncing finger's taps the one nearest to its beat: it may have brushed the key before it came down."""
    which = np.cumsum(first_of) - 1
    order = np.lexsort((np.abs(every - beats[which]), which))
    return np.asarray(every[order[first_of]])


def match_taps(taps: ArrayLike, beats: ArrayLike) -> TapMatch | None:
    """How taps go with beats: None if they do not.

    Parameters
    ----------
    taps : array_like, shape (n,) [s]
    beats : array_like, shape (m,) [s]
        Rising. `odd` of the answer counts from the first.

    Notes
    -----
    Taps go with a row of beats if at least 70 % of the steps from tap to tap go from one of its beats to the next, and most of them
    lie within a quarter of a beat of one, sway little and do not drift. Of several rows the one is taken that is nearest in the median. Ours.
    """
    times, known = np.unique(as_floats("taps", taps)), as_floats("beats", beats)
    if len(times) < FEWEST_TAPS or len(known) < 2:
        return None
    middles = (known[1:] + known[:-1]) / 2
    rows: list[tuple[Relation, bool, Floats]] = [
        ("same", False, known), ("between", False, middles),
        ("half", False, known[::2]), ("half", True, known[1::2]),
        ("double", False, np.sort(np.concatenate([known, middles]))),
    ]  # fmt: skip
    found = [
        TapMatch(relation=relation, odd=odd, offset=offset, sway=sway)
        for relation, odd, row in rows
        if len(row) > 1
        for offset, sway in _against(times, row)
    ]
    return min(found, key=lambda each: abs(each.offset), default=None)


def lead_of_strokes(
    period: float,
    start: float,
    strokes: Sequence[float],
    strengths: Sequence[float],
    span: tuple[float, float],
) -> float | None:
    """By how much later than a steady count the strokes of the song fall [s]; None where they do not tell.

    Parameters
    ----------
    period, start : float
        Of the count [s].
    strokes : sequence of float, shape (n,) [s]
    strengths : sequence of float, shape (n,)
    span : (float, float)
        Of the song that is looked at [s].

    Notes
    -----
    The lead at which most strokes gather, each by its strength, seen through a normal window of 12 ms, within 80 ms; it tells
    if half of the beats have a stroke there. Ours.
    """
    times = np.asarray(strokes, dtype=np.float64)
    inside = (times >= span[0] - period / 2) & (times <= span[1] + period / 2)
    times = times[inside]
    weights = np.asarray(strengths, dtype=np.float64)[inside]
    off = (times - start + period / 2) % period - period / 2
    reach = min(_STROKE_REACH, period / 4)
    leads = np.arange(-reach, reach + 5e-4, 1e-3)
    heaps = np.exp(-0.5 * ((off[:, None] - leads) / _STROKE) ** 2) * weights[:, None]
    best = float(leads[int(np.argmax(heaps.sum(axis=0)))]) if len(times) else 0.0
    near = np.abs(off - best) <= 2 * _STROKE
    beats = len(np.unique(np.round((times[near] - start - best) / period)))
    return best if 2 * beats >= (span[1] - span[0]) / period else None


def _against(times: Floats, row: Floats) -> list[tuple[float, float]]:
    """Offset and sway of taps about a row of beats; nothing if they do not go with it."""
    inside = times[(times > row[0] - (row[1] - row[0])) & (times < row[-1] + (row[-1] - row[-2]))]
    if len(inside) < FEWEST_TAPS:
        return []
    middles = (row[1:] + row[:-1]) / 2
    nearest = np.searchsorted(middles, inside)
    gap = np.gradient(row)[nearest]
    off = inside - row[nearest]
    if np.mean(np.diff(nearest) == 1) < _STEPS_ALIKE or np.mean(np.abs(off) < _NEAR * gap) <= 0.5:
        return []
    beat, sway, half = float(np.median(gap)), _deviation(off), len(off) // 2
    drift = abs(float(np.median(off[half:]) - np.median(off[:half])))
    if sway > _LOOSE * beat or drift > _DRIFT * beat:
        return []
    return [(float(np.median(off)), sway)]


def _gathered(times: Floats) -> tuple[float, float]:
    """Period near that of most steps at which taps gather most in one phase, and a beat [s]."""
    usual = float(np.median(np.diff(times)))
    span = float(times[-1] - times[0])
    low, high = usual / _ASIDE, usual * _ASIDE
    count = min(max(int((1 / low - 1 / high) * span / _FINE), 2), _MOST_RATES)
    rates = np.linspace(1 / high, 1 / low, count)
    turns = [complex(np.exp(2j * np.pi * rate * (times - times[0])).mean()) for rate in rates]
    best = int(np.argmax(np.abs(turns)))
    period = float(1 / rates[best])
    return period, float(times[0] + period * np.angle(turns[best]) / (2 * np.pi))


def _slope(number: Floats, times: Floats) -> float:
    """Median of the slopes of all pairs."""
    step = max(1, len(times) // _PAIRS)
    x, y = number[::step], times[::step]
    a, b = np.triu_indices(len(x), 1)
    apart = x[b] > x[a]
    return float(np.median((y[b] - y[a])[apart] / (x[b] - x[a])[apart]))


def _deviation(values: Floats) -> float:
    return float(_NORMAL * np.median(np.abs(values - np.median(values))))
