"""The count of a song: beats ↔ seconds ↔ bar.beat.

The beat coordinate is 0 at bar 1 beat 1 and increases by one per beat; it is negative in a pickup. Between
two beats time runs evenly, as in the tempo map of a Standard MIDI File; before the first and after the last
beat the nearest tempo continues.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import ceil, floor, isfinite

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Floats, as_floats
from sequencer.timing.position import Position
from sequencer.units import BarLengths, counted


@dataclass(frozen=True, eq=False)
class TempoMap:
    """Seconds of every beat, and which beats start a bar.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Strictly increasing, n ≥ 2.
    first : int
        Beat coordinate of `times[0]`: 0 or, for a pickup, below.
    bars : tuple of int
        Beat coordinates at which bars 1, 2, … start; the first is 0. Bars beyond the last are as
        long as `metre`.
    metre : int
        Beats per bar beyond `bars`.
    """

    times: Floats
    first: int = 0
    bars: tuple[int, ...] = (0,)
    metre: int = 4

    def __post_init__(self) -> None:
        times = as_floats("times", self.times)
        if times.ndim != 1 or len(times) < 2 or not np.all(np.diff(times) > 0):
            raise ValueError("times must be at least two strictly increasing seconds")
        if not self.bars or self.bars[0] != 0 or not np.all(np.diff(self.bars) > 0):
            raise ValueError("bars must start at beat 0 and increase")
        if self.metre < 1:
            raise ValueError(f"metre must be at least 1, got {self.metre}")
        object.__setattr__(self, "times", times)

    def __repr__(self) -> str:
        return (
            f"<TempoMap of {counted(len(self.times), 'beat')}, {median_tempo(self.times):.1f} beats/min, "
            f"{counted(len(self.bars), 'bar')} of {self.metre}, {self.times[0]:.2f} … {self.times[-1]:.2f} s>"
        )

    @classmethod
    def steady(
        cls, tempo: float, *, beats: int = 2, metre: int = 4, start: float = 0.0
    ) -> "TempoMap":
        """Map of one tempo [beats/min] whose bar 1 begins at `start` [s]."""
        if not tempo > 0:
            raise ValueError(f"tempo must be positive, got {tempo!r}")
        count = max(beats, 2)
        bars = tuple(range(0, count, metre))
        times = np.asarray(start + np.arange(count) * 60.0 / tempo, dtype=np.float64)
        return cls(times, bars=bars, metre=metre)

    @property
    def knots(self) -> Floats:
        """Beat coordinates of `times`, shape (n,) [beats]."""
        return self.first + np.arange(len(self.times), dtype=np.float64)

    def seconds_from_beats(self, beats: ArrayLike) -> Floats:
        """Seconds at beat coordinates.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        seconds : ndarray, shape (...) [s]

        Notes
        -----
        Source: linear interpolation, as in the Standard MIDI File's tempo map. Exact.
        """
        if isinstance(beats, float):
            return np.asarray(self.second_of(beats))
        return _interpolated(as_floats("beats", beats), self.knots, self.times)

    def second_of(self, beat: float) -> float:
        """The second at one beat coordinate [s], as it is asked for thousands of times: the same operations as for many.

        Raises
        ------
        ValueError
            If the beat is not finite.
        """
        if not isfinite(beat):
            raise ValueError(f"beats must be finite, got {beat!r}")
        known = self._times
        k = min(max(floor(beat) - self.first, 0), len(known) - 2)
        return known[k] + (float(beat) - (self.first + k)) * (known[k + 1] - known[k])

    def beats_from_seconds(self, seconds: ArrayLike) -> Floats:
        """Beat coordinates at seconds; the inverse of `seconds_from_beats`.

        Parameters
        ----------
        seconds : array_like, shape (...) [s]

        Returns
        -------
        beats : ndarray, shape (...) [beats]

        Notes
        -----
        Source: linear interpolation, as in the Standard MIDI File's tempo map. Exact.
        """
        if isinstance(seconds, float) and isfinite(seconds):
            # One second: the same operations as for many.
            known = self._times
            k = min(max(bisect_right(known, seconds) - 1, 0), len(known) - 2)
            slope = 1.0 / (known[k + 1] - known[k])
            return np.asarray(self.first + k + (float(seconds) - known[k]) * slope)
        return _interpolated(as_floats("seconds", seconds), self.times, self.knots)

    def beats_per_second(self, beats: ArrayLike) -> Floats:
        """Tempo in beats per second just after each beat coordinate.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        rate : ndarray, shape (...) [beats/s]

        Notes
        -----
        Source: slope of the map. Exact.
        """
        index = np.floor(as_floats("beats", beats)).astype(np.int64) - self.first
        return 1.0 / np.diff(self.times)[np.clip(index, 0, len(self.times) - 2)]

    def fastest(self, start: float, end: float) -> float:
        """Highest tempo anywhere between two beat coordinates [beats/s]; exact, not sampled."""
        return 1.0 / min(self._gaps_between(start, end))

    def slowest(self, start: float, end: float) -> float:
        """Lowest tempo anywhere between two beat coordinates [beats/s]; exact, not sampled."""
        return 1.0 / max(self._gaps_between(start, end))

    @cached_property
    def _times(self) -> list[float]:
        times: list[float] = self.times.tolist()
        return times

    @cached_property
    def _gaps(self) -> list[float]:
        """Seconds from each beat to the next: asked for thousands of times, for a few beats each."""
        gaps: list[float] = np.diff(self.times).tolist()
        return gaps

    def _gaps_between(self, start: float, end: float) -> list[float]:
        """Those of all beats that two beat coordinates touch; at least one."""
        count = len(self._gaps)
        low = min(max(floor(start) - self.first, 0), count - 1)
        high = min(max(ceil(end) - self.first, low + 1), count)
        return self._gaps[low:high]

    def bar_start(self, bar: int) -> int:
        """Beat coordinate at which a bar begins; bars before 1 and after the last are regular."""
        if bar < 1:
            return (bar - 1) * self.metre
        if bar <= len(self.bars):
            return self.bars[bar - 1]
        return self.bars[-1] + (bar - len(self.bars)) * self.metre

    @property
    def bar_lengths(self) -> BarLengths:
        """Beats of every bar, for counting aloud."""
        lengths = np.diff(self.bars).tolist()
        others = tuple((k, own) for k, own in enumerate(lengths, 1) if own != self.metre)
        return BarLengths(metre=self.metre, others=others)

    def bar_length(self, bar: int) -> int:
        """Beats in a bar."""
        return self.bar_start(bar + 1) - self.bar_start(bar)

    def beat_of(self, position: Position) -> float:
        """Beat coordinate of a position.

        Raises
        ------
        ValueError
            If the bar has no such beat.
        """
        length = self.bar_length(position.bar)
        if position.beat >= length + 1:
            raise ValueError(f"bar {position.bar} has {length} beats, so there is no {position}")
        return self.bar_start(position.bar) + float(position.beat - 1)

    def position_of(self, beat: float) -> Position:
        """Bar and beat of a beat coordinate, to 1/960 of a beat."""
        return self._known_position(round(beat * 960))[0]

    def position_text(self, beat: float) -> str:
        """bar.beat of a beat coordinate, as text."""
        return self._known_position(round(beat * 960))[1]

    @cached_property
    def _positions(self) -> dict[int, tuple[Position, str]]:
        """Positions that were asked for, by 960ths of a beat: an edited show asks for the same ones again."""
        return {}

    def _known_position(self, parts: int) -> tuple[Position, str]:
        known = self._positions.get(parts)
        if known is None:
            found = self._position(Fraction(parts, 960))
            known = self._positions[parts] = found, str(found)
        return known

    def _position(self, exact: Fraction) -> Position:
        if exact < 0:
            bar = 1 + exact // self.metre
        else:
            bar = int(np.searchsorted(self.bars, float(exact), side="right"))
            beyond = exact - self.bars[-1]
            if bar == len(self.bars):
                bar += int(beyond // self.metre)
        return Position(int(bar), exact - self.bar_start(int(bar)) + 1)


def bars_from_downbeats(n_beats: int, downbeats: Sequence[int]) -> tuple[int, ...]:
    """Bar starts as beat coordinates, from indices of beats that begin a bar.

    The first downbeat becomes beat coordinate 0, so it is subtracted from every index.

    Raises
    ------
    ValueError
        If there is no downbeat, or one lies outside the beats.
    """
    if not downbeats or min(downbeats) < 0 or max(downbeats) >= n_beats:
        raise ValueError("downbeats must be indices of beats, at least one")
    ordered = sorted(set(downbeats))
    return tuple(index - ordered[0] for index in ordered)


def median_tempo(beats: ArrayLike) -> float:
    """Median tempo of a sequence of beats [beats/min], over spans of eight if there are that many.

    Parameters
    ----------
    beats : array_like, shape (n,) [s]
        Rising.

    Returns
    -------
    tempo : float
        0 if there are fewer than two beats.

    Notes
    -----
    Source: ours; a span of eight averages out the grid on which beats are detected. Exact.
    """
    times = as_floats("beats", beats)
    if len(times) < 2:
        return 0.0
    span = min(8, len(times) - 1)
    return float(60.0 * span / np.median(times[span:] - times[:-span]))


def _interpolated(at: Floats, x: Floats, y: Floats) -> Floats:
    index = np.clip(np.searchsorted(x, at, side="right") - 1, 0, len(x) - 2)
    slope = np.diff(y) / np.diff(x)
    return np.asarray(y[index] + (at - x[index]) * slope[index])
