"""Build steps one by one: places, changes and cross points worked by hand on a circle in the wall plane."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.patterns.build_steps import (
    PARALLEL,
    _angle,
    _cross_words,
    build_steps,
    cross_point,
    place_words,
    stations_at,
)
from sequencer.motion.patterns.library import patterns_from

X, Y, Z = np.eye(3)
CENTRE = np.array([0.2, 0.5, 1.4])


def at_angle(degrees, first=X, second=Z):
    a = np.radians(degrees)
    return np.cos(a) * first + np.sin(a) * second


@pytest.mark.parametrize(
    ("away", "words"),
    [
        (X, "right"), (-X, "left"), (Z, "top"), (-Z, "bottom"), (Y, "front"), (-Y, "back"),
        (7.0 * at_angle(11.9), "right"),
        (at_angle(12.1), "12° from right towards top"),
        (at_angle(36.9), "37° from right towards top"),
        (at_angle(37.1), "half-way between right and top"),
        (at_angle(52.9), "half-way between top and right"),
        (at_angle(53.1), "37° from top towards right"),
        (at_angle(45.0), "half-way between top and right"),  # a tie: the later letter first
        # nearer to the right by 4e-9, and by 4e-10, which nine digits do not tell from a tie
        (X + (1 - 6e-9) * Z, "half-way between right and top"),
        (X + (1 - 6e-10) * Z, "half-way between top and right"),
        (at_angle(225.0), "half-way between left and bottom"),
        (at_angle(20.0, Y, -X), "20° from front towards left"),
        (at_angle(30.0, -Y, -Z), "30° from back towards bottom"),
        (np.ones(3), "55° from top towards right"),  # the cube's diagonal: arccos(1/√3) = 54.7°
    ],
)  # fmt: skip
def test_places_turn_at_twelve_and_within_eight_degrees_of_half_way(away, words):
    assert place_words(away) == words


@pytest.mark.parametrize(
    ("point", "words"),
    [
        ((0.0, 0.0, 0.0), "the middle of the hand's circle"),
        ((0.0099, -0.0099, 0.0099), "the middle of the hand's circle"),
        ((0.0101, 0.0, 0.0), "1 cm right"),
        ((-0.0101, 0.12, -0.34), "1 cm left, 12 cm ahead, 34 cm below"),
        ((0.05, -0.2, 0.3), "5 cm right, 20 cm behind, 30 cm above"),
    ],
)
def test_cross_points_in_centimetres_from_the_middle(point, words):
    assert _cross_words(CENTRE + np.array(point), CENTRE) == words


def test_a_cross_point_worked_by_hand():
    """x = 1 and y = 2 meet in an upright line, nearest to the middle (½, 1, 1½) of the hands at z = 1½."""
    found = cross_point(np.array([1.0, 0.0, 3.0]), X, np.array([0.0, 2.0, 0.0]), Y)
    assert_allclose(found, (1.0, 2.0, 1.5), atol=1e-15)
    # x = 1 and x + y = 3, by normals 45° apart, meet in the same line
    found = cross_point(
        np.array([1.0, 0.0, 3.0]), X, np.array([3.0, 0.0, 0.0]), (X + Y) / np.sqrt(2.0)
    )
    assert_allclose(found, (1.0, 2.0, 1.5), atol=1e-15)


def test_planes_a_millionth_apart_are_parallel():
    assert PARALLEL == 1e-6
    hands = np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0])
    near, far = ((np.cos(a) * X + np.sin(a) * Y) for a in (0.9e-6, 1.1e-6))
    assert cross_point(hands[0], X, hands[1], near) is None
    assert_allclose(cross_point(hands[0], X, hands[1], far)[0], 1.0)


@pytest.mark.parametrize("angle", [0.0, 0.3, np.pi / 2, 2.8, np.pi])
def test_the_angle_between_normals(angle):
    assert _angle(X, np.cos(angle) * X + np.sin(angle) * Z) == pytest.approx(angle, abs=1e-15)


def law(period=4.0, sense=1.0):
    """The hand anticlockwise round 0.3 m in the wall plane, the plane turning half as fast about the hand's
    outward direction, in `period` beats."""
    rate = sense * 2 * np.pi / 4.0
    around = Turn((0.0, -1.0, 0.0), Wave(rate=rate))
    bend = Turn((0.0, 0.0, -1.0), Wave(rate=rate / 2))
    return ComposedLaw(
        hand=HandPath(tuple(CENTRE), arms=(Arm((0.0, 0.0, -0.3), (around,)),)),
        tether=(0.0, 0.0, -1.0), plane=(1.0, 0.0, 0.0), turns=(around, bend), period=period,
    )  # fmt: skip


@pytest.mark.parametrize("sense", [1.0, -1.0])
@pytest.mark.parametrize("period", [4.0, np.inf])
def test_stations_of_a_plain_circle(sense, period):
    """Four places a quarter of a turn apart and the plane 45° on at each; without a period the mean over
    the last beat's span is the same centre."""
    steps = stations_at(
        law(period, sense), [0.0, 1.0, 2.0, 3.0, 4.0], ["in", "out"] * 2 + ["in"], lobes=2, cycle=4.0
    )  # fmt: skip
    first, third = ("right", "left") if sense > 0 else ("left", "right")
    assert [s.place for s in steps] == ["bottom", first, "top", third, "bottom"]
    assert [s.number for s in steps] == [1, 2, 3, 4, 5]
    assert [s.beat for s in steps] == [0.0, 1.0, 2.0, 3.0, 4.0]
    assert [s.half for s in steps] == ["in", "out", "in", "out", "in"]
    assert [s.lobe for s in steps] == [1, 1, 2, 2, 1]
    assert [s.cycle for s in steps] == [1, 1, 1, 1, 2]
    assert steps[0].change == "start"
    assert steps[0].cross is None
    assert steps[0].cross_words == ""
    assert np.isnan(steps[0].turned)
    seen = law(period, sense).at(np.arange(5.0))
    for k in range(1, 5):
        n, m = seen.plane[k - 1], seen.plane[k]
        turned = np.arccos(np.clip(n @ m, -1, 1))
        assert steps[k].turned == pytest.approx(turned)
        expected = f"the hand goes on by 90°, the plane turns by {np.degrees(turned):.0f}°"
        assert steps[k].change == expected
        cross = cross_point(seen.hand[k - 1], n, seen.hand[k], m)
        assert_allclose(steps[k].cross, cross, atol=1e-12)
        assert steps[k].cross_words == _cross_words(cross, CENTRE)
    assert_allclose([s.hand for s in steps], seen.hand)
    assert_allclose([s.tether for s in steps], seen.tether)
    assert_allclose([s.plane for s in steps], seen.plane)
    assert steps[0].performer == "wheel plane, backward"
    assert steps[0].audience == "wheel plane, backward"


def flat(rate):
    """The same circle with a plane that turns at that rate about the vertical, the hand's plane aside."""
    around = Turn((0.0, -1.0, 0.0), Wave(rate=np.pi / 2))
    return ComposedLaw(
        hand=HandPath(tuple(CENTRE), arms=(Arm((0.0, 0.0, -0.3), (around,)),)),
        tether=(0.0, 0.0, -1.0), plane=(0.0, -1.0, 0.0), turns=(Turn((0.0, 0.0, 1.0), Wave(rate=rate)),),
        period=4.0,
    )  # fmt: skip


def test_less_than_half_a_degree_of_the_plane_is_none():
    for degrees, words in ((0.0, "stays"), (0.49, "stays"), (0.51, "turns by 1°")):
        steps = stations_at(
            flat(np.radians(degrees)), [0.0, 1.0], ["in", "out"], lobes=1, cycle=4.0
        )
        assert steps[1].change == f"the hand goes on by 90°, the plane {words}"
    assert steps[0].audience == "wall plane, clockwise"
    assert steps[0].performer == "wall plane, anticlockwise"


def test_a_hand_goes_on_by_up_to_a_whole_turn():
    steps = stations_at(flat(0.5), [0.0, 3.0, 4.5], ["in"] * 3, lobes=1, cycle=4.0)
    said = [s.change.split(",")[0] for s in steps[1:]]
    assert said == ["the hand goes on by 270°", "the hand goes on by 135°"]


@pytest.mark.parametrize("period", [4.0, np.inf])
@pytest.mark.parametrize(
    ("degrees", "told"), [(90.45, 90), (90.55, 91), (269.45, 269), (269.55, 270)]
)
def test_the_middle_of_the_circle_is_the_mean_of_one_whole_round(period, degrees, told):
    """One place too few or too many would move it by over a millimetre, a fifth of a degree seen from there;
    without a period the round is up to the last beat."""
    steps = stations_at(law(period), [0.0, degrees / 90.0, 4.0], ["in"] * 3, lobes=1, cycle=4.0)
    assert steps[1].change.startswith(f"the hand goes on by {told}°, ")


def test_listed_stations_count_their_lobes_by_the_turns_from_first_to_last():
    """From 180° to 900° are two turns; a phase that hardly moves counts as one lobe all the same."""
    book = patterns_from({"own": {"stations": station_rows([180.0, 430.0, 640.0, 900.0])}})
    steps = build_steps("own", {}, cycle=4.0, book=book)
    assert [s.lobe for s in steps] == [1, 1, 2, 1]
    assert_allclose([s.beat for s in steps], [0.0, 4 * 250 / 720, 4 * 460 / 720, 4.0])
    slow = patterns_from({"own": {"stations": station_rows([0.0, 1e-5, 2e-5])}})
    assert [s.lobe for s in build_steps("own", {}, cycle=4.0, book=slow)] == [1, 1, 1]


def test_lobes_and_cycles_of_beats_that_are_rounded():
    """A quarter of a lobe before its in counts to the lobe, a billionth before the cycle's end to the next."""
    beats = [0.0, 1.49, 1.51, 3.49, 3.51, 4.0 - 1e-9, 4.0 - 1e-7]
    steps = stations_at(flat(0.1), beats, ["in"] * 7, lobes=2, cycle=4.0)
    assert [s.lobe for s in steps] == [1, 1, 2, 2, 1, 1, 1]
    assert [s.cycle for s in steps] == [1, 1, 1, 1, 1, 2, 1]


def station_rows(phases):
    hands = np.linspace(0, 360, len(phases))
    bends = [0.0, *(45.0 + 20 * k for k in range(len(phases) - 2)), 0.0]
    return [
        {"hand": float(h), "bend": b, "phase": p}
        for h, b, p in zip(hands, bends, phases, strict=True)
    ]


def test_the_listed_stations_are_in_out_or_between():
    """Within a degree of 180° an in, of 0° or 360° an out; beats follow the phase."""
    phases = [-0.9, 90.0, 179.1, 181.1, 358.9, 360.9, 539.1, 540.9, 719.1]
    book = patterns_from({"own": {"stations": station_rows(phases)}})
    steps = build_steps("own", {}, cycle=4.0, book=book)
    assert [s.half for s in steps] == [
        "out", "between", "in", "between", "between", "out", "in", "in", "out",
    ]  # fmt: skip
    assert_allclose([s.beat for s in steps], 4.0 * (np.array(phases) + 0.9) / 720, atol=1e-12)
    assert [s.cycle for s in steps] == [1] * 8 + [2]
    assert [s.lobe for s in steps] == [1, 1, 1, 1, 2, 2, 2, 2, 1]


def test_a_whole_degree_off_is_between():
    book = patterns_from({"own": {"stations": station_rows([180.0, 181.0, 359.0, 361.0, 540.0])}})
    halves = [s.half for s in build_steps("own", {}, cycle=4.0, book=book)]
    assert halves == ["in", "between", "between", "between", "in"]


def test_build_steps_take_body_tether_and_side_as_given():
    tall = build_steps("pro-bend-4", {}, body=Body(stature=1.9), side="left", tether=0.9)
    usual = build_steps("pro-bend-4", {})
    assert usual[0].hand[0] == pytest.approx(-build_steps("pro-bend-4", {}, side="left")[0].hand[0])
    assert tall[0].hand[2] == pytest.approx(usual[0].hand[2] + 0.2 * 1440.7 / 1756.2)  # shoulder's
    same = build_steps("pro-bend-4", {}, body=Body(stature=1.7))  # the default body
    assert_allclose(same[3].hand, usual[3].hand)
    assert [s.beat for s in usual] == [0.5 * k for k in range(9)]
    with pytest.raises(ValueError, match="build steps exist only for toroids and station patterns"):
        build_steps("two-beat-weave", {})
