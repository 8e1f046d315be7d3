"""Vectorised evaluation of many dancers: points of whole casts, each at its own instant.

The same points as `Dancer.stage_points`, computed for all dancers together (courses.py); a test checks that
they agree. Stage frame [m], beats.
"""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.performers.batch import Needed, Props
from sequencer.motion.performers.body_parts import FIRST_POINT, N_POINTS, REAR
from sequencer.motion.performers.courses import Courses
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import DriftedTrajectory
from sequencer.motion.performers.walks import WalkPaths

_VALUE_AND_RATE = Needed(hand=2, tether=2)


class Ensemble:
    """Dancers whose points are computed together.

    Parameters
    ----------
    dancers : sequence of Dancer
    """

    def __init__(self, dancers: Sequence[Dancer]) -> None:
        self.dancers = tuple(dancers)
        held = [
            (k, side) for side in SIDES for k in range(len(dancers)) if side in dancers[k].props
        ]
        given = [dancers[k].trajectories[side] for k, side in held]
        # Whoever drifts dances what is planned, at other beats: one course serves all who do.
        planned = [own.trajectory if isinstance(own, DriftedTrajectory) else own for own in given]
        each = {id(own): own for own in planned}
        course = {own: number for number, own in enumerate(each)}
        self._course = {hand: course[id(own)] for hand, own in zip(held, planned, strict=True)}
        self._courses = Courses(list(each.values()))
        late = [own if isinstance(own, DriftedTrajectory) else None for own in given]
        self._drifting = np.array([own is not None for own in late], dtype=np.bool_)
        self._hand = {hand: number for number, hand in enumerate(held)}
        self._of_course = np.array([self._course[hand] for hand in held], dtype=np.int64)
        # Of each hand: middle, lag and stretch of its beats, and how far it is aside; none of them where it does not drift.
        self._drifts = (
            np.array(
                [
                    (0, 0, 1, 0, 0, 0) if d is None else (d.middle, d.late, d.stretch, *d.aside)
                    for d in late
                ]
            )
            .reshape(-1, 6)
            .T
        )
        looks = [dancer.look for dancer in dancers]
        number = {look: k for k, look in enumerate(dict.fromkeys(looks))}
        self.alike = [dancers[looks.index(look)] for look in number]  # one dancer of each look
        self.looks = np.array([number[look] for look in looks], dtype=np.int64)
        self.elbow_slopes = np.array([dancer.body.elbow_slope for dancer in dancers])
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
        held = {
            side: [(k, side, low, high) for k, low, high in slices if (k, side) in self._course]
            for side in SIDES
        }
        # Both hands at once: what it costs is the number of calls, not of instants.
        some = [each for own in held.values() for each in own]
        if not some:
            return points, rates
        both = np.concatenate([np.arange(low, high) for _, _, low, high in some])
        states = self._states(some, beats)
        done = 0
        for side, of in held.items():
            if not of:
                continue
            count = sum(high - low for _, _, low, high in of)
            rows, seen = both[done : done + count], Props(*states[:, :, done : done + count])
            done += count
            own, first = who[rows], FIRST_POINT[side]
            which = [p for p in (first, first + 1, first + 2, REAR[side]) if p < kept]
            ends = (self._far[side][own], -self._behind[side][own])[: len(which) - 2]
            shoulder = self._shoulders[side].take(own, axis=-1)
            gives = np.zeros_like(shoulder)
            for k, low, high in slices:
                if self._gives[k] and (k, side) in self._course:
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

    def _states(self, some: Sequence[tuple[int, Side, int, int]], beats: Floats) -> Floats:
        """Hands and tethers with their rates, shape (4, 3, n), of some hands in slices of the beats."""
        hand = np.repeat(
            [self._hand[k, side] for k, side, _, _ in some],
            [high - low for _, _, low, high in some],
        )
        middle, late, stretch, *aside = self._drifts.take(hand, axis=-1)
        each = np.concatenate([beats[low:high] for _, _, low, high in some])
        # Where nobody drifts, beats stay as they are, to the last digit.
        times = np.where(self._drifting[hand], middle + (each - late - middle) * stretch, each)
        course = self._of_course[hand]
        places = self._courses.places_of(course, times)
        states = self._courses.parts(places, times, _VALUE_AND_RATE)
        states[0] += np.stack(aside)
        states[1] *= stretch
        states[3] *= stretch
        return states
