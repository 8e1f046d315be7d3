"""A dancer with drawn errors, number by number: the draws are taken again in the order that is told."""

import math
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import (
    ERROR_KINDS,
    DriftedTrajectory,
    Spread,
    drifted,
    later,
)
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop

POI = Prop(length=0.6, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
WIDE = Spread(place=0.3, facing=0.4, timing=0.5, tempo=0.02, tether=0.05, hand=0.25)


def test_how_people_err_if_nothing_is_said():
    """This tool's estimates, typed again; 8.6° is 0.15 rad."""
    own = Spread()
    assert (own.place, own.timing, own.tempo, own.tether, own.hand) == (
        0.15,
        0.10,
        0.001,
        0.01,
        0.05,
    )
    assert own.facing == pytest.approx(8.6 * math.pi / 180)
    assert ERROR_KINDS == ("place", "facing", "timing", "tempo", "tether", "hand")


@pytest.mark.parametrize("kind", ERROR_KINDS)
def test_only_one_kind(kind):
    only = WIDE.only(kind)
    for name in ERROR_KINDS:
        assert getattr(only, name) == (getattr(WIDE, name) if name == kind else 0.0)
    with pytest.raises(ValueError, match="must be 0 to 10"):
        Spread(**{kind: 10.0})
    with pytest.raises(ValueError, match="must be 0 to 10"):
        Spread(**{kind: -1e-12})
    rest = WIDE.without(kind)
    for name in ERROR_KINDS:
        assert getattr(rest, name) == (0.0 if name == kind else getattr(WIDE, name))


def test_twice_as_wide():
    """Each kind doubled; a tempo no further than the loosest that is allowed, 5 %, nor the others than 10."""
    assert Spread(place=0.2, tempo=0.01).times(2) == Spread(
        place=0.4, facing=2 * Spread().facing, timing=0.2, tempo=0.02, tether=0.02, hand=0.1
    )
    assert WIDE.times(0.5).timing == 0.25
    assert replace(WIDE, tempo=0.04).times(2).tempo == 0.05
    assert replace(WIDE, place=6.0).times(2).place == pytest.approx(10.0)


class Line:
    """Hand, tether and plane as different lines in time, and three pieces of bounds."""

    bounds = tuple(
        Bounds(
            hand_speed=1.0 + k, hand_acceleration=2.0 + k, turn_rate=3.0 + k,
            turn_acceleration=4.0 + k, hand_reach=5.0 + k, hand_jerk=6.0, frame_rate=7.0 + k,
        )
        for k in range(3)
    )  # fmt: skip

    def __init__(self):
        self.asked = []

    def at(self, beats):
        t = np.asarray(beats)[..., None]
        return Motion(**{
            name: t * np.array([1.0, 2.0, 3.0]) + k
            for k, name in enumerate((
                "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate",
                "tether_acceleration", "plane",
            ))
        })  # fmt: skip

    def pieces(self, start, end):
        self.asked.append((start, end))
        cuts = (start, start + 1.0, end - 2.0, end)
        return tuple(zip(cuts, cuts[1:], self.bounds, strict=False))


def test_a_drifted_trajectory_by_hand():
    """Two beats at pace 1.25 about beat 10, half a beat late: show beat 14.5 is planned beat 10 + 4·1.25 = 15."""
    own = DriftedTrajectory(Line(), 0.5, 10.0, 1.25, (0.3, -0.4, 9.0))
    seen, plan = own.at(np.array([14.5, 10.5])), Line().at(np.array([15.0, 10.0]))
    assert_allclose(seen.hand, plan.hand + np.array([0.3, -0.4, 9.0]))
    assert_allclose(seen.hand_rate, plan.hand_rate * 1.25)
    assert_allclose(seen.hand_acceleration, plan.hand_acceleration * 1.5625)
    assert_allclose(seen.tether, plan.tether)
    assert_allclose(seen.tether_rate, plan.tether_rate * 1.25)
    assert_allclose(seen.tether_acceleration, plan.tether_acceleration * 1.5625)
    assert_allclose(seen.plane, plan.plane)


def test_its_pieces_by_hand():
    """From show beat 6.5 to 18.5 the plan runs from 5 to 20; its cuts 6 and 18 fall on 7.3 and 16.9."""
    own = DriftedTrajectory(Line(), 0.5, 10.0, 1.25, (0.3, -0.4, 9.0))
    pieces = own.pieces(6.5, 18.5)
    assert own.trajectory.asked == [(5.0, 20.0)]
    assert_allclose([piece[:2] for piece in pieces], [(6.5, 7.3), (7.3, 16.9), (16.9, 18.5)])
    assert (pieces[0][0], pieces[-1][1]) == (6.5, 18.5)
    for k, (_, _, bounds) in enumerate(pieces):
        assert bounds.hand_speed == pytest.approx((1 + k) * 1.25)
        assert bounds.hand_acceleration == pytest.approx((2 + k) * 1.5625)
        assert bounds.turn_rate == pytest.approx((3 + k) * 1.25)
        assert bounds.turn_acceleration == pytest.approx((4 + k) * 1.5625)
        assert bounds.hand_reach == pytest.approx(5 + k + 0.5)  # √(0.3² + 0.4²)
        assert bounds.frame_rate == pytest.approx((7 + k) * 1.25)


class One(Line):
    """A single piece."""

    def pieces(self, start, end):
        return ((start, end, self.bounds[0]),)


def test_rounding_opens_no_gap():
    """Beats that no division by the pace gives back to the last digit: ends are those asked for, exactly."""
    for start, end in ((0.1, 0.7), (1.3, 17.9)):
        ((low, high, _),) = DriftedTrajectory(One(), 0.1, 3.3, 1.1, (0, 0, 0)).pieces(start, end)
        assert (low, high) == (start, end)


def test_deviations_come_later_by_hand():
    """As the trajectory: planned beat 15 about 10 at pace 1.25 is 14, and half a beat on 14.5."""
    own = {"left": (HandDeviation(15.0, 20.0, 0.2), HandDeviation(20.0, 10.0, 0.3)), "right": ()}
    moved = later(own, 0.5, 10.0, 1.25)
    assert moved == {
        "left": (HandDeviation(14.5, 18.5, 0.2), HandDeviation(18.5, 10.5, 0.3)), "right": (),
    }  # fmt: skip
    assert later(own, 2.0)["left"][0] == HandDeviation(17.0, 22.0, 0.2)
    assert later(own, 2.0, stretch=0.5)["left"][0] == HandDeviation(32.0, 42.0, 0.2)


FLOOR = WalkPath(
    (0.5, 2.0), 0.4,
    (Move(start=1.0, end=5.0, place=(1.5, 3.0), facing=2.0, through=((1.0, 2.2),)),
     Move(start=6.0, end=7.0, place=(0.0, 3.0), facing=1.0, through=((0.3, 3.1),))),
)  # fmt: skip


def dancer(props):
    return Dancer(
        name="Ada", body=Body(stature=1.72), props=props,
        trajectories={side: Line() for side in props}, floor=FLOOR, lit=((0.0, 8.0),),
        deviation={"right": (HandDeviation(15.0, 20.0, 0.2),)},
    )  # fmt: skip


class Dictated:
    """Draws in order, whatever their number: 0.1, 0.2, 0.3 …, or one huge."""

    def __init__(self, step=0.1):
        self.step, self.count = step, 0

    def normal(self, size=None):
        n = int(np.prod(size)) if size is not None else 1
        own = self.step * np.arange(self.count + 1, self.count + 1 + n)
        self.count += n
        return own[0] if size is None else own.reshape(size)


@pytest.mark.parametrize(
    "props",
    [{"left": POI, "right": STAFF}, {"right": POI}, {"left": STAFF}, {}],
    ids=["both", "right", "left", "none"],
)
def test_draws_are_those_of_everybody(props):
    """Six for places, three for facings, one each for timing and tempo, then four for either side, held or not."""
    draw = Dictated()
    ada, floor = drifted(dancer(props), WIDE, draw, 4.0), FLOOR
    assert draw.count == 19
    by = [(0.03, 0.06), (0.09, 0.12), (0.15, 0.18)]
    strays = [(*by[k], 0.4 * (0.7 + 0.1 * k)) for k in range(3)]
    assert np.array(ada.floor.strays) == pytest.approx(np.array(strays))
    late, stretch = 0.5 * 1.0, 1 + 0.02 * 1.1
    for move, plan in zip(ada.floor.moves, floor.moves, strict=True):
        when = [(beat - 4.0) / stretch + 4.0 + late for beat in (plan.start, plan.end)]
        assert (move.start, move.end) == pytest.approx(when)
        assert (move.place, move.facing, move.through) == (plan.place, plan.facing, plan.through)
    draws = {"left": (1.2, (1.3, 1.4, 1.5)), "right": (1.6, (1.7, 1.8, 1.9))}
    assert set(ada.props) == set(ada.trajectories) == set(props)
    for side, prop in props.items():
        longer, aside = draws[side]
        length = 0.6 + 0.05 * longer if prop is POI else 0.7
        assert ada.props[side].length == pytest.approx(length)
        own = ada.trajectories[side]
        assert (own.late, own.middle, own.stretch) == pytest.approx((late, 4.0, stretch))
        assert own.aside == pytest.approx([0.25 * each for each in aside])
    assert ada.lit == ((0.0, 8.0),)
    (found,) = ada.deviation["right"]
    assert found[:2] == pytest.approx((4 + 11 / stretch + late, 4 + 16 / stretch + late))
    assert found.size == 0.2


@pytest.mark.parametrize(("step", "most"), [(1.0, 4.0), (-1.0, -4.0), (0.3, 3.3), (-0.35, -3.85)])
def test_a_tempo_errs_by_four_deviations_at_most(step, most):
    """The eleventh draw: ±11, of which 4 count; ±3.3 and ±3.85 count as they are."""
    ada = drifted(dancer({"right": STAFF}), replace(WIDE, tether=0.0), Dictated(step), 4.0)
    assert ada.trajectories["right"].stretch == pytest.approx(1 + 0.02 * most)


def test_half_a_tether_is_left_at_least():
    """The twelfth draw for the left, −12·0.05 m of 60 cm: held at 30; and −5·0.05 leaves 35 cm."""
    assert drifted(dancer({"left": POI}), WIDE, Dictated(-1.0), 0.0).props["left"].length == 0.3
    short = drifted(dancer({"left": POI}), WIDE, Dictated(-5 / 12), 0.0).props["left"].length
    assert short == pytest.approx(0.35)


def test_nothing_drawn_changes_nothing():
    none = Spread(**dict.fromkeys(ERROR_KINDS, 0.0))
    plan = dancer({"left": POI, "right": STAFF})
    same = drifted(plan, none, np.random.default_rng(1), 4.0)
    assert same.floor == replace(plan.floor, strays=((0.0, 0.0, 0.0),) * 3)
    at = np.linspace(0.0, 8.0, 33)
    assert_array_equal(same.floor.at(at).place, plan.floor.at(at).place)
    assert same.props == plan.props
    beats = np.linspace(0.0, 8.0, 5)
    assert_array_equal(
        same.trajectories["left"].at(beats).hand, plan.trajectories["left"].at(beats).hand
    )
