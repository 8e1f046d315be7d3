"""Whole trajectories as tables: the states of many hands, each at its own instant, computed together.

The same states as `Trajectory.at`, in two steps: which law gives the state at a beat, or which two are mixed there
(`Courses.places`), and the states themselves, with all laws of one form evaluated together (batch.py). What is
computed for an instant does not depend on the others. Frame: body frame [m], beats; coordinate axes come first.
Source: the same formulas as trajectory.py; a test checks that they agree.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.laws.phases import smooth_step
from sequencer.motion.performers.batch import Evaluated, Laws, Needed
from sequencer.motion.performers.turn_tables import Jet
from sequencer.motion.trajectories.trajectory import Trajectory, TrajectoryPart


class LawPlaces(NamedTuple):
    """What decides the states around n beats: a law, or two that are mixed there."""

    law: Ints  # (n,) counted by spans and bridges: no two share one
    origin: Floats  # (n,) [beats] at which the law's beat is 0
    other: Ints  # (n,) the law that the first is blended into; −1 if it is not
    other_origin: Floats  # (n,) [beats]
    begin: Floats  # (n,) [beats] of the blend
    width: Floats  # (n,) [beats] of the blend

    def rows(self, rows: Ints) -> "LawPlaces":
        """Some of them, perhaps repeated."""
        return LawPlaces(
            law=self.law[rows],
            origin=self.origin[rows],
            other=self.other[rows],
            other_origin=self.other_origin[rows],
            begin=self.begin[rows],
            width=self.width[rows],
        )


class _Table(NamedTuple):
    """A trajectory as tables: its spans and its blends."""

    edges: Floats  # (s − 1,) [beats] start of each span after the first
    laws: Ints  # (s,)
    origins: Floats  # (s,) [beats]
    boundaries: Floats  # (b,) [beats] of blends, increasing
    halves: Floats  # (b,) [beats]
    bridges: Ints  # (b,) a law, −1 for a mix
    befores: Ints  # (b,) the span that ends at the blend

    def places(self, beats: Floats) -> LawPlaces:
        span = np.searchsorted(self.edges, beats, side="right")
        law, origin = self.laws[span], self.origins[span]
        other = np.full(len(beats), -1, dtype=np.int64)
        other_origin, begin, width = (np.zeros(len(beats)) for _ in range(3))
        if not len(self.boundaries):
            return LawPlaces(law, origin, other, other_origin, begin, width)
        # Before the first blend this gives the last one, which is just as far from being reached.
        blend = np.searchsorted(self.boundaries - self.halves, beats, side="right") - 1
        inside = np.flatnonzero(np.abs(beats - self.boundaries[blend]) < self.halves[blend])
        blend = blend[inside]
        begin[inside] = self.boundaries[blend] - self.halves[blend]
        width[inside] = 2 * self.halves[blend]
        bridge, before = self.bridges[blend], self.befores[blend]
        bridged, mixed = inside[bridge >= 0], inside[bridge < 0]
        law[bridged], origin[bridged] = bridge[bridge >= 0], begin[bridged]
        k = before[bridge < 0]
        law[mixed], origin[mixed] = self.laws[k], self.origins[k]
        other[mixed], other_origin[mixed] = self.laws[k + 1], self.origins[k + 1]
        return LawPlaces(law, origin, other, other_origin, begin, width)


class Courses:
    """Trajectories, and laws at their own beats, that are evaluated together.

    Parameters
    ----------
    courses : sequence of trajectories, parts of them, and laws
    """

    def __init__(self, courses: Sequence[Evaluated | TrajectoryPart]) -> None:
        self._members: list[Evaluated] = []
        self._tables = [_table(course, self._members) for course in courses]
        self._laws = Laws(self._members)

    def law(self, index: int) -> Evaluated:
        """The law that `LawPlaces` gives by its index."""
        return self._members[index]

    def places(self, course: int, beats: Floats) -> LawPlaces:
        """What decides the states of one course around some beats.

        Parameters
        ----------
        course : int
        beats : ndarray, shape (n,) [beats]
        """
        return self._tables[course].places(beats)

    def places_of(self, course: Ints, beats: Floats) -> LawPlaces:
        """The same for the course of each instant.

        Parameters
        ----------
        course : ndarray, shape (n,) [1]
        beats : ndarray, shape (n,) [beats]
        """
        order = np.argsort(course, kind="stable")
        edges = np.concatenate([[0], np.flatnonzero(np.diff(course[order])) + 1, [len(course)]])
        own = [
            self.places(int(course[order[low]]), beats[order[low:high]])
            for low, high in pairwise(edges.tolist())
        ]
        back = np.empty_like(order)
        back[order] = np.arange(len(order))
        return LawPlaces(*(np.concatenate(part)[back] for part in zip(*own, strict=True)))

    def parts(self, places: LawPlaces, beats: Floats, needed: Needed) -> Floats:
        """What is needed of the states at some beats.

        Parameters
        ----------
        places : LawPlaces
            Of each instant.
        beats : ndarray, shape (n,) [beats]
        needed : Needed

        Returns
        -------
        parts : ndarray, shape (rows, 3, n) [m and 1, and per beat, body frame]
            Hand and its derivatives, tether and its derivatives, plane.

        Notes
        -----
        Source: docs/motion.md, section 5. Exact to rounding.
        """
        seen = self._laws.parts(places.law, beats - places.origin, needed)
        mixed = np.flatnonzero(places.other >= 0)
        if len(mixed):
            own, t = places.rows(mixed), beats[mixed]
            both = needed if needed.tether or not needed.plane else needed._replace(tether=1)
            first = self._laws.parts(own.law, t - own.origin, both)
            last = self._laws.parts(own.other, t - own.other_origin, both)
            seen[:, :, mixed] = _mixed(first, last, (t - own.begin) / own.width, own.width, needed)
        return seen


def _mixed(first: Floats, last: Floats, x: Floats, width: Floats, needed: Needed) -> Floats:
    """States between those of two laws, at fractions x of the blend, as `Trajectory.at`."""
    step, rate, curve = smooth_step(x)
    weights = (step, rate / width, curve / width**2)
    parts = _blended(first[: needed.hand], last[: needed.hand], weights)
    tethers = slice(needed.hand, len(first) - needed.plane)
    tether = _unit(_blended(first[tethers], last[tethers], weights))
    parts += tether[: needed.tether]
    if needed.plane:
        parts.append(_plane_between(first[-1], last[-1], tether[0], step))
    return np.stack(parts)


def _blended(first: Floats, last: Floats, weights: tuple[Floats, Floats, Floats]) -> Jet:
    """(1 − σ)·a + σ·b and its derivatives, as many as are given."""
    s, s1, s2 = weights
    apart = last - first
    jet: Jet = [first[k] + s * apart[k] for k in range(len(first))]
    if len(jet) > 1:
        jet[1] = jet[1] + s1 * apart[0]
    if len(jet) > 2:
        jet[2] = jet[2] + 2 * s1 * apart[1] + s2 * apart[0]
    return jet


def _unit(jet: Jet) -> Jet:
    """The unit vector along a vector, with its derivatives."""
    if not jet:
        return []
    size = np.sqrt(_dot(jet[0], jet[0]))
    unit: Jet = [jet[0] / size]
    if len(jet) > 1:
        size1 = _dot(unit[0], jet[1])
        unit.append((jet[1] - size1 * unit[0]) / size)
    if len(jet) > 2:
        size2 = _dot(unit[1], jet[1]) + _dot(unit[0], jet[2])
        unit.append((jet[2] - 2 * size1 * unit[1] - size2 * unit[0]) / size)
    return unit


def _plane_between(first: Floats, last: Floats, tether: Floats, step: Floats) -> Floats:
    """The first plane, projected across the tether and turned about it towards the last one."""
    start, end = (_unit([plane - _dot(plane, tether) * tether])[0] for plane in (first, last))
    side: Floats = np.cross(tether, start, axis=0).astype(np.float64)
    turn = np.arctan2(_dot(side, end), _dot(start, end)) * step
    return np.asarray(np.cos(turn) * start + np.sin(turn) * side)


def _dot(a: Floats, b: Floats) -> Floats:
    return np.asarray(a[0] * b[0] + a[1] * b[1] + a[2] * b[2])


def _table(course: Evaluated | TrajectoryPart, laws: list[Evaluated]) -> _Table:
    """A trajectory as tables; its laws are appended to the existing ones."""
    if not isinstance(course, Trajectory | TrajectoryPart):
        laws.append(course)
        none, last = np.empty(0), np.array([len(laws) - 1])
        return _Table(none, last, np.zeros(1), none, none, last[:0], last[:0])
    start = len(laws)
    laws += [span.law for span in course.spans]
    befores = [k for k, blend in enumerate(course.blends) if blend.half > 0.0]
    blends = [course.blends[k] for k in befores]
    bridges = []
    for blend in blends:
        bridges.append(-1 if blend.bridge is None else len(laws))
        if blend.bridge is not None:
            laws.append(blend.bridge)
    return _Table(
        edges=np.array([span.start for span in course.spans[1:]]),
        laws=np.arange(start, start + len(course.spans)),
        origins=np.array([span.origin for span in course.spans]),
        boundaries=np.array([blend.boundary for blend in blends]),
        halves=np.array([blend.half for blend in blends]),
        bridges=np.array(bridges, dtype=np.int64),
        befores=np.array(befores, dtype=np.int64),
    )
