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
from sequencer.motion.performers.courses import Courses, LawPlaces
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
        self._drift = {
            hand: own
            for hand, own in zip(held, given, strict=True)
            if isinstance(own, DriftedTrajectory)
        }
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
            shoulder = self._shoulders[side][:, own]
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
        times = [
            self._drift[k, side].planned_beats(beats[low:high])
            if (k, side) in self._drift
            else beats[low:high]
            for k, side, low, high in some
        ]
        each = [
            self._courses.places(self._course[k, side], own)
            for (k, side, _, _), own in zip(some, times, strict=True)
        ]
        places = LawPlaces(*(np.concatenate(part) for part in zip(*each, strict=True)))
        states = self._courses.parts(places, np.concatenate(times), _VALUE_AND_RATE)
        done = 0
        for k, side, low, high in some:
            rows = slice(done, done + high - low)
            done += high - low
            if (k, side) in self._drift:
                drift = self._drift[k, side]
                states[0][:, rows] += np.array(drift.aside)[:, None]
                states[1][:, rows] *= drift.stretch
                states[3][:, rows] *= drift.stretch
        return states
