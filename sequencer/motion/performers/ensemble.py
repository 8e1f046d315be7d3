"""Vectorised evaluation of many dancers: points of whole casts, each at its own instant.

The same points as `Dancer.stage_points`, computed for all dancers together (batch.py); a test checks that
they agree. Stage frame [m], beats.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import SIDES
from sequencer.motion.laws.phases import smooth_step
from sequencer.motion.performers.batch import Evaluated, Laws, Props
from sequencer.motion.performers.body_parts import FIRST_POINT, N_POINTS, REAR
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.walks import WalkPaths
from sequencer.motion.trajectories.trajectory import Trajectory


class _LawAt(NamedTuple):
    """The law that gives a prop's state at an instant, and the law it is mixed with; n instants."""

    law: Ints  # (n,)
    beats: Floats  # (n,) in the law's beats
    other: Ints  # (n,) −1 if nothing is mixed
    other_beats: Floats  # (n,)
    share: Floats  # (n,) weight of the other law, 0 … 1
    slope: Floats  # (n,) [1/beat] rate of the weight


@dataclass(frozen=True, slots=True, eq=False)
class _Table:
    """A trajectory as tables: its spans and its blends."""

    edges: Floats  # (s − 1,) [beats] start of each span after the first
    laws: Ints  # (s,)
    origins: Floats  # (s,) [beats]
    boundaries: Floats  # (b,) [beats] of blends, increasing
    halves: Floats  # (b,) [beats]
    bridges: Ints  # (b,) a law, −1 for a mix
    befores: Ints  # (b,) the span that ends at the blend

    def laws_at(self, beats: Floats) -> _LawAt:
        span = np.searchsorted(self.edges, beats, side="right")
        law, own = self.laws[span], beats - self.origins[span]
        n = len(beats)
        other, later = np.full(n, -1, dtype=np.int64), np.zeros(n)
        share, slope = np.zeros(n), np.zeros(n)
        if not len(self.boundaries):
            return _LawAt(law, own, other, later, share, slope)
        # Before the first blend this gives the last one, which is just as far from being reached.
        blend = np.searchsorted(self.boundaries - self.halves, beats, side="right") - 1
        off, half = beats - self.boundaries[blend], self.halves[blend]
        inside = np.flatnonzero(np.abs(off) < half)
        bridge, before = self.bridges[blend[inside]], self.befores[blend[inside]]
        bridged, mixed = inside[bridge >= 0], inside[bridge < 0]
        law[bridged], own[bridged] = bridge[bridge >= 0], (off + half)[bridged]
        k = before[bridge < 0]
        law[mixed], own[mixed] = self.laws[k], beats[mixed] - self.origins[k]
        other[mixed], later[mixed] = self.laws[k + 1], beats[mixed] - self.origins[k + 1]
        step, rate, _ = smooth_step((off[mixed] + half[mixed]) / (2 * half[mixed]))
        share[mixed], slope[mixed] = step, rate / (2 * half[mixed])
        return _LawAt(law, own, other, later, share, slope)


class Ensemble:
    """Dancers whose points are computed together.

    Parameters
    ----------
    dancers : sequence of Dancer
    """

    def __init__(self, dancers: Sequence[Dancer]) -> None:
        self.dancers = tuple(dancers)
        laws: list[Evaluated] = []
        self._tables = {
            side: [
                _table(dancer.trajectories[side], laws) if side in dancer.props else None
                for dancer in dancers
            ]
            for side in SIDES
        }
        self.elbow_slopes = np.array([dancer.body.elbow_slope for dancer in dancers])
        self._laws = Laws(laws)
        self._floors = WalkPaths([dancer.floor for dancer in dancers])
        self._top = np.array([dancer.carriage.column_top for dancer in dancers])
        self._shoulders = {
            side: np.array([dancer.body.shoulder(side) for dancer in dancers]).T for side in SIDES
        }
        self._gives = [not dancer.carriage.upright for dancer in dancers]
        props = {side: [dancer.props.get(side) for dancer in dancers] for side in SIDES}
        self._far = {
            side: np.array([prop.ball[0] if prop else 0.0 for prop in own])
            for side, own in props.items()
        }
        self._behind = {
            side: np.array([prop.behind if prop else 0.0 for prop in own])
            for side, own in props.items()
        }

    def stage_points(self, who: Ints, beats: Floats, kept: int = N_POINTS) -> tuple[Floats, Floats]:
        """Points of one dancer per instant, and their velocities.

        Parameters
        ----------
        who : ndarray, shape (n,) [1]
            Index of a dancer, increasing.
        beats : ndarray, shape (n,) [beats]
        kept : int
            Number of points: all, or without the rear ends.

        Returns
        -------
        points : ndarray, shape (n, kept, 3) [m, stage frame]
        rates : ndarray, shape (n, kept, 3) [m/beat, stage frame]

        Notes
        -----
        Source: `Dancer.stage_points`. Exact to rounding.
        """
        n = len(who)
        cuts = np.concatenate([[0], np.flatnonzero(np.diff(who)) + 1, [n]]).tolist()
        slices = [(int(who[low]), low, high) for low, high in pairwise(cuts)]
        stand = self._floors.at(slices, beats)
        points, rates = np.zeros((n, kept, 3)), np.zeros((n, kept, 3))
        points[:, :, :2] = stand.place[:, None]
        rates[:, :, :2] = stand.place_rate[:, None]
        points[:, 1:, 2] = self._top[who, None]
        cos, sin = -np.cos(stand.facing), -np.sin(stand.facing)  # half a turn on: body y is −Y
        turning = stand.facing_rate
        for side in SIDES:
            tables = self._tables[side]
            some = [
                (table, low, high) for k, low, high in slices if (table := tables[k]) is not None
            ]
            if not some:
                continue
            rows = np.concatenate([np.arange(low, high) for _, low, high in some])
            laws_at = [table.laws_at(beats[low:high]) for table, low, high in some]
            seen = self._props(
                _LawAt(*(np.concatenate(part) for part in zip(*laws_at, strict=True)))
            )
            own, first = who[rows], FIRST_POINT[side]
            which = [p for p in (first, first + 1, first + 2, REAR[side]) if p < kept]
            ends = (self._far[side][own], -self._behind[side][own])[: len(which) - 2]
            shoulder = self._shoulders[side][:, own]
            gives = np.zeros_like(shoulder)
            for k, low, high in slices:
                if self._gives[k] and tables[k] is not None:
                    here = np.searchsorted(rows, np.arange(low, high))
                    carriage = self.dancers[k].carriage
                    shoulder[:, here] = carriage.shoulder(beats[low:high], side).T
                    gives[:, here] = carriage.shoulder_rate(beats[low:high], side).T
            at = np.stack([shoulder, seen.hand, *(seen.hand + a * seen.tether for a in ends)])
            moving = np.stack(
                [gives, seen.hand_rate, *(seen.hand_rate + a * seen.tether_rate for a in ends)]
            )
            c, s, w = cos[rows], sin[rows], turning[rows]
            x, y = c * at[:, 0] - s * at[:, 1], s * at[:, 0] + c * at[:, 1]
            u, v = c * moving[:, 0] - s * moving[:, 1], s * moving[:, 0] + c * moving[:, 1]
            place, drift = stand.place[rows].T, stand.place_rate[rows].T
            at[:, 0], at[:, 1] = place[0] + x, place[1] + y
            moving[:, 0], moving[:, 1] = drift[0] + u - w * y, drift[1] + v + w * x
            points[rows[:, None], which] = at.transpose(2, 0, 1)
            rates[rows[:, None], which] = moving.transpose(2, 0, 1)
        return points, rates

    def _props(self, laws_at: _LawAt) -> Props:
        seen = self._laws.at(laws_at.law, laws_at.beats)
        mixed = np.flatnonzero(laws_at.other >= 0)
        if not len(mixed):
            return seen
        later = self._laws.at(laws_at.other[mixed], laws_at.other_beats[mixed])
        s, s1 = laws_at.share[mixed], laws_at.slope[mixed]
        first = Props(*(part[:, mixed] for part in seen))
        hand = first.hand + s * (later.hand - first.hand)
        hand_rate = first.hand_rate + s * (later.hand_rate - first.hand_rate)
        m = first.tether + s * (later.tether - first.tether)
        m1 = first.tether_rate + s * (later.tether_rate - first.tether_rate)
        m1 = m1 + s1 * (later.tether - first.tether)
        size = np.sqrt(np.sum(m * m, axis=0))
        tether = m / size
        rate = (m1 - np.sum(tether * m1, axis=0) * tether) / size
        blended = (hand, hand_rate + s1 * (later.hand - first.hand), tether, rate)
        for part, mix in zip(seen, blended, strict=True):
            part[:, mixed] = mix
        return seen


def _table(trajectory: PropTrajectory, laws: list[Evaluated]) -> _Table:
    """A trajectory as tables; its laws are appended to the existing ones."""
    if not isinstance(trajectory, Trajectory):
        laws.append(trajectory)
        none, last = np.empty(0), np.array([len(laws) - 1])
        return _Table(none, last, np.zeros(1), none, none, last[:0], last[:0])
    start = len(laws)
    laws += [span.law for span in trajectory.spans]
    befores = [k for k, blend in enumerate(trajectory.blends) if blend.half > 0.0]
    blends = [trajectory.blends[k] for k in befores]
    bridges = []
    for blend in blends:
        bridges.append(-1 if blend.bridge is None else len(laws))
        if blend.bridge is not None:
            laws.append(blend.bridge)
    return _Table(
        edges=np.array([span.start for span in trajectory.spans[1:]]),
        laws=np.arange(start, start + len(trajectory.spans)),
        origins=np.array([span.origin for span in trajectory.spans]),
        boundaries=np.array([blend.boundary for blend in blends]),
        halves=np.array([blend.half for blend in blends]),
        bridges=np.array(bridges, dtype=np.int64),
        befores=np.array(befores, dtype=np.int64),
    )
