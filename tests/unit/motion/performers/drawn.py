"""Laws and trajectories whose every number is known, and how hard the tether is pulled on some stretches."""

from itertools import pairwise

import numpy as np

from sequencer.motion.laws.composed import ComposedLaw, HandPath, Slide
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.feasibility import pull_quantity
from sequencer.motion.performers.least_values import Asked, least_values
from sequencer.motion.trajectories.trajectory import Span, Trajectory


def pull_left(trajectory, edges, *, prop, beats_per_second):
    """Tension over mass [m/s²], smallest on each stretch; below 0 the tether is slack."""
    quantity = pull_quantity(length=prop.length, tempos=(beats_per_second,))
    return least_values([Asked(quantity, (trajectory,), list(pairwise(edges)))])[0]


class Drawn:
    """Drawn waves about a place; its bounds are just numbers, one set for each piece."""

    def __init__(self, seed, cuts=(0.0, 1.7, 3.25, 6.0), about=(0.3, 0.4, 1.3)):
        draw = np.random.default_rng(seed)
        self.about, self.waves, self.cuts = about, draw.uniform(-1, 1, (3, 2, 3)), cuts
        names = (
            "hand_speed", "hand_acceleration", "turn_rate", "turn_acceleration", "hand_reach",
            "hand_jerk", "turn_jerk", "frame_rate", "frame_acceleration",
        )  # fmt: skip
        self.bounds = [
            Bounds(**dict(zip(names, row, strict=True)))
            for row in draw.uniform(0.5, 2.0, (len(cuts) - 1, 9)).tolist()
        ]

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]
        hand, rate, push = (
            self.about * (k == 0) + 0.3 * 2**k * self.waves[0, 0] * np.sin(2 * t + k * np.pi / 2)
            for k in np.array([[0], [1], [2]])
        )
        tether = self.waves[1, 0] + self.waves[1, 1] * np.sin(2 * t + self.waves[0, 1])
        tether /= np.linalg.norm(tether, axis=-1, keepdims=True)
        plane = np.cross(tether, self.waves[2, 0])
        plane /= np.linalg.norm(plane, axis=-1, keepdims=True)
        spin = self.waves[2, 1] * np.cos(3 * t)
        return Motion(
            hand=hand, hand_rate=rate, hand_acceleration=push, tether=tether, tether_rate=spin,
            tether_acceleration=0 * hand, plane=plane,
        )  # fmt: skip

    def pieces(self, start, end):
        spans = zip(self.cuts, self.cuts[1:], self.bounds, strict=False)
        return tuple(
            (max(a, start), min(b, end), own) for a, b, own in spans if b > start and a < end
        )

    def bound(self, beat, name):
        """A bound of the piece that a beat lies in."""
        k = sum(cut <= beat for cut in self.cuts) - 1
        return getattr(self.bounds[k], name)


def law(seed):
    """A tether on a circle from a hand that sways, every number drawn."""
    draw = np.random.default_rng(seed)
    axis = np.array([0.2, 1.0, 0.1 * seed])
    axis /= np.linalg.norm(axis)
    tether = np.cross(axis, [0.0, 0.0, 1.0])
    tether /= np.linalg.norm(tether)
    sway = Wave(0.0, 0.0, ((0.2, float(draw.uniform(1, 3)), 0.3),))
    hand = HandPath(tuple(draw.uniform(0.1, 0.4, 3).tolist()), (Slide((0.3, 0.5, 1.0), sway),))
    turn = Turn(
        tuple(axis.tolist()), Wave(float(draw.uniform(0, 1)), float(draw.uniform(1, 3)), ())
    )
    return ComposedLaw(
        hand=hand,
        tether=tuple(tether.tolist()),
        plane=tuple(axis.tolist()),
        turns=(turn,),
        period=4.0,
    )


class Loose:
    """A trajectory of no spans."""

    def at(self, beats):
        return law(9).at(np.asarray(beats) * 0.5)

    def pieces(self, start, end):
        raise NotImplementedError


def trajectory(*seeds):
    return Trajectory(
        tuple(
            Span(start=4.0 * k, end=4.0 * k + 4, origin=4.0 * k - 0.5, kind="block", label=f"{seed}",
                 law=law(seed))
            for k, seed in enumerate(seeds)
        )
    )  # fmt: skip
