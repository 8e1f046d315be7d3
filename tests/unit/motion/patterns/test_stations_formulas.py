"""Station patterns: the formula with the moving frame, and the edge of every refusal."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.interpolate import CubicSpline

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.stations import (
    CLOSE,
    StationPoint,
    _check_pair,
    _normal,
    check_stations,
    station_law,
)

BODY = Body(stature=1.7)
X, Y, Z = np.eye(3)
ROWS = [(10.0, 20.0, 180.0), (80.0, 120.0, 430.0), (200.0, 60.0, 800.0), (370.0, 20.0, 1260.0)]
BEATS = np.array([0.0, 0.31, 0.9, 1.47, 2.2, 2.9, 3.3])


def points(rows):
    return [StationPoint(hand=h, bend=b, phase=p) for h, b, p in rows]


@pytest.mark.parametrize(
    ("plane", "turn", "sense", "right", "up", "side"),
    [
        ("wall", "anticlockwise", 1.0, X, Z, "left"),
        ("wheel", "clockwise", -1.0, Y, Z, "right"),
        ("floor", "anticlockwise", 1.0, X, Y, "right"),
    ],
)
def test_a_station_law_is_as_the_module_says(plane, turn, sense, right, up, side):
    """φ at a steady rate; the hand by a periodic spline of scipy's own; β by half cosines; then the
    formula of docs/motion.md, section 3.5, with e_r, e_θ and e_a at every beat."""
    offset = (0.07, 0.11, -0.05)
    law = station_law(
        points(ROWS), hand_radius=0.2, plane=plane, turn=turn, start=0.6, beats=3.5, side=side,
        body=BODY, offset=offset,
    )  # fmt: skip
    hand, bend, phase = np.radians(np.array(ROWS).T)
    knots = 3.5 * (phase - phase[0]) / (phase[-1] - phase[0])
    level = hand - hand[0] - 2 * np.pi * knots / 3.5
    level[-1] = level[0]
    gone = 2 * np.pi * BEATS / 3.5 + CubicSpline(knots, level, bc_type="periodic")(BEATS)
    angle = (0.6 + sense * gone)[:, None]
    k = np.searchsorted(knots, BEATS, side="right") - 1
    share = (BEATS - knots[k]) / (knots[k + 1] - knots[k])
    beta = (bend[k] + (bend[k + 1] - bend[k]) * (1 - np.cos(np.pi * share)) / 2)[:, None]
    phi = (phase[0] + (phase[-1] - phase[0]) * BEATS / 3.5)[:, None]
    e_r = np.cos(angle) * right + np.sin(angle) * up
    e_t = sense * (np.cos(angle) * up - np.sin(angle) * right)
    n = np.cos(beta) * e_t + np.sin(beta) * sense * np.cross(right, up)
    seen = law.at(BEATS)
    centre = circle_centre(plane, side, BODY, 0.2, offset, bends=True)
    assert_allclose(seen.hand, centre + 0.2 * e_r, atol=1e-12)
    assert_allclose(seen.plane, n, atol=1e-12)
    expected = np.cos(phi) * e_r + np.sin(phi) * np.cross(n, e_r)
    assert_allclose(seen.tether, expected, atol=1e-12)
    assert law.period == 3.5
    for each in law.turns[:2]:
        assert_allclose(each.angle.knots, knots, atol=1e-12)


def test_a_station_law_left_to_itself():
    given = {"hand_radius": 0.2, "beats": 3.5, "body": BODY}
    told = {
        "plane": "wall", "turn": "anticlockwise", "start": -np.pi / 2, "side": "right",
        "offset": (0.0, 0.0, 0.0),
    }  # fmt: skip
    assert station_law(points(ROWS), **given) == station_law(points(ROWS), **given, **told)


def test_normals_lean_from_along_to_the_axis():
    """β = 0 along the hand's motion, 90° along the circle's axis; by hand at 0°, 90° and 30°."""
    for hand, bend, expected in (
        (0.0, 0.0, (0.0, 1.0, 0.0)),
        (90.0, 0.0, (-1.0, 0.0, 0.0)),
        (0.0, 90.0, (0.0, 0.0, 1.0)),
        (30.0, 60.0, (-0.25, np.sqrt(3) / 4, np.sqrt(3) / 2)),
    ):
        found = _normal(StationPoint(hand=hand, bend=bend, phase=0.0))
        assert_allclose(found, expected, atol=1e-15)


def with_last(hand=370.0, bend=20.0, phase=1260.0):
    return points([*ROWS[:-1], (hand, bend, phase)])


def test_the_last_station_may_be_off_by_less_than_a_millionth_of_a_turn():
    """CLOSE of a whole turn of 360°: 0.00036°."""
    assert CLOSE == 1e-6
    for name, value in (("hand", 370.0), ("bend", 20.0), ("phase", 1260.0)):
        for off in (-3.5e-4, 3.5e-4):
            assert check_stations(with_last(**{name: value + off}), hand_radius=0.2) is None
        for off in (-3.7e-4, 3.7e-4):
            with pytest.raises(ValueError, match=f"its {name} is off by -?0.0°"):
                check_stations(with_last(**{name: value + off}), hand_radius=0.2)
    with pytest.raises(ValueError, match=r"its hand is off by -12.5°"):
        check_stations(with_last(hand=357.5), hand_radius=0.2)


def test_stations_may_go_round_more_than_once_and_bend_a_whole_turn():
    twice = [(0.0, 0.0, 0.0), (120.0, 90.0, 200.0), (400.0, 180.0, 500.0), (720.0, 360.0, 720.0)]
    assert check_stations(points(twice), hand_radius=0.2) is None


def test_three_stations_will_do_and_two_not():
    three = points([(0.0, 0.0, 180.0), (90.0, 90.0, 360.0), (360.0, 0.0, 540.0)])
    assert check_stations(three, hand_radius=1e-9) is None
    with pytest.raises(ValueError, match=r"at least 3 stations.*got 2"):
        check_stations(three[:2], hand_radius=0.2)
    for radius in (0.0, -0.1, float("nan")):
        with pytest.raises(ValueError, match="hand_radius must be positive"):
            check_stations(three, hand_radius=radius)
    with pytest.raises(ValueError, match="beats of a cycle must be positive"):
        station_law(three, hand_radius=0.2, beats=0.0, body=BODY)


def pair(hand=90.0, bend=90.0, phase=360.0):
    return StationPoint(hand=0.0, bend=0.0, phase=180.0), StationPoint(
        hand=hand, bend=bend, phase=phase
    )


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"phase": 180.0}, "stations 4 and 5: hand and phase must increase"),
        ({"phase": 179.0}, "hand and phase must increase"),
        ({"hand": 0.0}, "hand and phase must increase"),
        ({"hand": -1.0}, "hand and phase must increase"),
        ({"bend": 180.1}, "stations 4 and 5: the direction jumps: .* bend by 180°"),
        ({"bend": -200.0}, "the plane would bend by 200°"),
        ({"bend": 180.0, "hand": 180.0}, "stations 4 and 5: their planes are parallel"),
        ({"bend": 0.0, "hand": 5e-5}, "planes are parallel"),
    ],
)
def test_a_pair_that_cannot_be_passed_is_refused(given, words):
    with pytest.raises(ValueError, match=words):
        _check_pair(4, *pair(**given))


def test_a_pair_just_within_is_allowed():
    """180° of bend, 1e-7° more by rounding, a thousandth of a degree on; sine of 6e-5° is 1.05e-6."""
    for given in (
        {"bend": 180.0, "hand": 1.0},
        {"bend": -180.0, "hand": 1.0},
        {"bend": 180.0 + 1e-7, "hand": 1.0},
        {"phase": 180.001},
        {"hand": 0.001},
        {"bend": 0.0, "hand": 6e-5},
    ):
        assert _check_pair(4, *pair(**given)) is None


def test_every_pair_of_a_list_is_looked_at():
    """The fault lies between the first two, in the middle, and between the last two."""
    good = [(0.0, 0.0, 0.0), (90.0, 45.0, 100.0), (180.0, 90.0, 200.0), (360.0, 0.0, 360.0)]
    for k, bad in ((1, (90.0, 45.0, 0.0)), (2, (180.0, 90.0, 90.0)), (3, (180.0, 90.0, 370.0))):
        rows = list(good)
        rows[k if k < 3 else 2] = bad
        with pytest.raises(ValueError, match=f"stations {k} and {k + 1}: hand and phase"):
            check_stations(points(rows), hand_radius=0.2)
