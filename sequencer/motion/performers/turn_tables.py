"""Turns and phases of many laws as rows of tables, so that each instant gathers the numbers of its law.

All arithmetic is by element; coordinate axes come first. Frame: body frame [m], rates per beat.
Source: the same formulas as rotations.py and phases.py; a test checks that they agree.
"""

from collections.abc import Sequence
from typing import NamedTuple, Protocol

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.laws.phases import CosineSteps, Phase, Steps, Wave, smooth_step
from sequencer.motion.laws.rotations import Turn, Vector

Jet = list[Floats]  # a value and its derivatives by beats, each (3, n) or (n,)


class PhaseTable(Protocol):
    """Phases of m laws."""

    def at(self, rows: Ints, beats: Floats, count: int) -> Jet:
        """Value and derivatives of the chosen rows, `count` in all, each (n,)."""
        ...


class TurnTable(NamedTuple):
    """One turn of each of m laws."""

    axes: Floats  # (3, m)
    angle: PhaseTable
    # of turns that are all about one coordinate axis: the two coordinates that it turns into each other, and its sense
    about: tuple[int, int, float] | None


def carried_rows(turns: Sequence[TurnTable], jet: Jet, rows: Ints, beats: Floats) -> Jet:
    """As `rotations.carried`, with different rotations for each row."""
    parts = list(jet)
    for axes, angle, about in reversed(turns):
        if about is not None:
            parts = _carried_about(about, angle, parts, rows, beats)
            continue
        axis = axes.take(rows, axis=-1)
        turn, *slopes = angle.at(rows, beats, len(parts))
        swept = cross_rows(axis, parts[0])
        if len(parts) > 2:
            slope, curve = slopes
            parts[2] = parts[2] + (
                2.0 * slope * cross_rows(axis, parts[1])
                + curve * swept
                + slope**2 * cross_rows(axis, swept)
            )
        if len(parts) > 1:
            parts[1] = parts[1] + slopes[0] * swept
        cosine, sine = np.cos(turn), np.sin(turn)
        parts = [
            _rotated(part, axis, swept if k == 0 else cross_rows(axis, part), cosine, sine)
            for k, part in enumerate(parts)
        ]
    return parts


def _carried_about(
    about: tuple[int, int, float], angle: PhaseTable, jet: Jet, rows: Ints, beats: Floats
) -> Jet:
    """As `carried_rows` of one turn about a coordinate axis: products with its zeros are left out, which changes no digit."""
    i, j, sense = about
    turn, *slopes = angle.at(rows, beats, len(jet))
    parts = np.array(jet)
    x, y = parts[:, i], parts[:, j]  # of each order
    cosine, sine = np.cos(turn), sense * np.sin(turn)
    if len(jet) > 2:
        curve, twice, square = sense * slopes[1], 2.0 * (sense * slopes[0]), slopes[0] ** 2
        ahead = twice * y[1] + curve * y[0] + square * x[0]
        y[2] += twice * x[1] + curve * x[0] - square * y[0]
        x[2] -= ahead
    if len(jet) > 1:
        slope = sense * slopes[0]
        x[1] -= slope * y[0]
        y[1] += slope * x[0]
    parts[:, i], parts[:, j] = cosine * x - sine * y, cosine * y + sine * x
    return list(parts)


def _rotated(vector: Floats, axis: Floats, swept: Floats, cosine: Floats, sine: Floats) -> Floats:
    kept = axis * (axis[0] * vector[0] + axis[1] * vector[1] + axis[2] * vector[2])
    return np.asarray(kept + cosine * (vector - kept) + sine * swept)


def cross_rows(a: Floats, b: Floats) -> Floats:
    """Cross products of vectors, each (3, n)."""
    out = np.empty_like(b)  # quicker than rows that are stacked
    for k, (m, n) in enumerate(((1, 2), (2, 0), (0, 1))):
        np.subtract(a[m] * b[n], a[n] * b[m], out=out[k])
    return out


def vectors_of(vectors: Sequence[Vector]) -> Floats:
    """Vectors as columns, shape (3, m)."""
    return np.ascontiguousarray(np.array(vectors, dtype=np.float64).T)


def turns_of(chains: Sequence[Sequence[Turn]]) -> list[TurnTable]:
    """Nested turns of m laws with the same number of them, outermost first."""
    return [
        TurnTable(
            vectors_of([chain[k].axis for chain in chains]),
            phases_of([chain[k].angle for chain in chains]),
            _about([chain[k].axis for chain in chains]),
        )
        for k in range(len(chains[0]))
    ]


def _about(axes: Sequence[Vector]) -> tuple[int, int, float] | None:
    """The coordinates that turns about some axes turn into each other, and their sense; None if not all are one coordinate axis."""
    first = tuple(axes[0])
    if any(tuple(axis) != first for axis in axes[1:]):
        return None
    along = [k for k in range(3) if first[k]]
    if len(along) != 1 or abs(first[along[0]]) != 1.0:
        return None
    k = along[0]
    return (k + 1) % 3, (k + 2) % 3, float(first[k])


def phases_of(phases: Sequence[Phase]) -> PhaseTable:
    """Phases of m laws, all of one form."""
    waves = [phase for phase in phases if isinstance(phase, Wave)]
    return _Waves(waves) if waves else _Steps([p for p in phases if not isinstance(p, Wave)])


class _Waves:
    def __init__(self, waves: Sequence[Wave]) -> None:
        self.offset = np.array([wave.offset for wave in waves])
        self.rate = np.array([wave.rate for wave in waves])
        count = len(waves[0].sways)
        self.sways = (
            np.array([wave.sways for wave in waves])
            .reshape(len(waves), count, 3)
            .transpose(1, 2, 0)
        )

    def at(self, rows: Ints, beats: Floats, count: int) -> Jet:
        rate = self.rate[rows]
        value = self.offset[rows] + rate * beats
        acceleration = np.zeros_like(value)
        for sway in self.sways:
            amplitude, frequency, lead = sway.take(rows, axis=-1)
            angle = frequency * beats + lead
            cosine = amplitude * np.cos(angle)
            value = value + cosine
            if count > 1:
                rate = rate - amplitude * frequency * np.sin(angle)
            if count > 2:
                acceleration = acceleration - frequency**2 * cosine
        return [value, rate, acceleration][:count]


class _Steps:
    """Minimum-jerk or half cosine steps, all of the same kind and number of knots."""

    def __init__(self, phases: Sequence[Phase]) -> None:
        steps = [phase for phase in phases if isinstance(phase, Steps | CosineSteps)]
        self.knots = np.array([phase.knots for phase in steps])
        self.values = np.array([phase.values for phase in steps])
        self.cosine = isinstance(steps[0], CosineSteps)
        self.repeats = isinstance(steps[0], CosineSteps) or steps[0].repeats

    def at(self, rows: Ints, beats: Floats, count: int) -> Jet:
        knots, values = self.knots.take(rows, axis=0), self.values.take(rows, axis=0)
        each = np.arange(len(rows))
        span = knots[:, -1] - knots[:, 0]
        cycle = np.floor((beats - knots[:, 0]) / span) if self.repeats else np.zeros_like(beats)
        own = beats - cycle * span
        index = np.sum(knots <= own[:, None], axis=1) - 1
        index = np.clip(index, 0, knots.shape[1] - 2)
        begin, value = knots[each, index], values[each, index]
        width, jump = knots[each, index + 1] - begin, values[each, index + 1] - value
        value = value + cycle * (values[:, -1] - values[:, 0])
        if self.cosine:
            pace = np.pi / width
            angle = pace * (own - begin)
            cosine, rate = np.cos(angle), jump / 2 * pace * np.sin(angle)
            return [value + jump / 2 * (1.0 - cosine), rate, jump / 2 * pace**2 * cosine][:count]
        step, rate, curve = smooth_step((own - begin) / width)
        return [value + jump * step, jump / width * rate, jump / width**2 * curve][:count]
