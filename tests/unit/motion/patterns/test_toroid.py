"""Toroids against the formulas of the module's head, written with the moving frame instead of rotations."""

from itertools import product

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.placing import circle_centre
from sequencer.motion.patterns.toroid import check_toroid, home_cycles, toroid

BODY = Body(stature=1.7)
BEATS = np.array([0.0, 0.31, 0.9, 1.47, 2.2, 3.3, 4.9, 7.7])
X, Y, Z = np.eye(3)
RIGHT_UP = {"wall": (X, Z), "wheel": (Y, Z), "floor": (X, Y)}
OFFSET = (0.07, 0.11, -0.05)


def formula(lobes, bend, start, radius, plane, turn, place, begin, cycle, centre):
    """Hand, tether and plane's n by e_r, e_θ, e_a at every beat."""
    right, up = RIGHT_UP[plane]
    sense = 1.0 if turn == "anticlockwise" else -1.0
    u0 = np.pi / lobes if begin == "out" else 0.0
    gone = 2 * np.pi * BEATS / cycle
    angle, u = (place + sense * gone)[:, None], gone + u0
    e_r = np.cos(angle) * right + np.sin(angle) * up
    e_t = sense * (np.cos(angle) * up - np.sin(angle) * right)
    e_a = sense * np.cross(right, up)
    if bend == "iso":
        beta = np.full(len(u), 0.0 if start == 1 else np.pi)
    else:
        beta = np.pi / 2 - start * np.pi / 2 * np.cos(lobes * u / 2)
        beta = beta if bend == "pro" else -beta
    phi = (np.pi + lobes * u)[:, None]
    n = np.cos(beta)[:, None] * e_t + np.sin(beta)[:, None] * e_a
    return centre + radius * e_r, np.cos(phi) * e_r + np.sin(phi) * np.cross(n, e_r), n


@pytest.mark.parametrize(("bend", "start"), list(product(("iso", "pro", "anti"), (1, -1))))
@pytest.mark.parametrize(
    ("lobes", "plane", "turn", "place", "begin", "side"),
    [
        (4, "wall", "anticlockwise", -1.1, "in", "right"),
        (3, "wheel", "clockwise", 0.4, "out", "left"),
        (5, "floor", "anticlockwise", 2.0, "out", "right"),
    ],
)
def test_a_toroid_is_as_the_formula_says(bend, start, lobes, plane, turn, place, begin, side):
    law = toroid(
        lobes=lobes, bend=bend, start=start, hand_radius=0.2, plane=plane, turn=turn, place=place,
        begin=begin, beats=3.5, side=side, body=BODY, offset=OFFSET,
    )  # fmt: skip
    centre = circle_centre(plane, side, BODY, 0.2, OFFSET, bends=True)
    hand, tether, n = formula(lobes, bend, start, 0.2, plane, turn, place, begin, 3.5, centre)
    seen = law.at(BEATS)
    assert_allclose(seen.hand, hand, atol=1e-12)
    assert_allclose(seen.tether, tether, atol=1e-12)
    assert_allclose(seen.plane, n, atol=1e-12)
    odd = bend != "iso" and lobes % 2 == 1
    assert law.period == (7.0 if odd else 3.5)


def test_a_toroid_left_to_itself():
    """From the bottom of the wall plane, anticlockwise, at an in, along the hand's motion, right."""
    given = {"lobes": 4, "bend": "pro", "hand_radius": 0.2, "beats": 4.0, "body": BODY}
    told = {
        "start": 1, "plane": "wall", "turn": "anticlockwise", "place": -np.pi / 2, "begin": "in",
        "side": "right", "offset": (0.0, 0.0, 0.0),
    }  # fmt: skip
    assert toroid(**given) == toroid(**given, **told)


@pytest.mark.parametrize(
    ("lobes", "bend", "cycles"),
    [(1, "iso", 1), (2, "iso", 1), (3, "iso", 1), (1, "pro", 2), (2, "pro", 1), (3, "anti", 2), (4, "anti", 1)],
)  # fmt: skip
def test_odd_bends_come_home_after_two_cycles(lobes, bend, cycles):
    assert home_cycles(lobes, bend) == cycles


@pytest.mark.parametrize(
    ("lobes", "bend", "start", "words"),
    [
        (0, "pro", 1, "whole number from 1 to 24"),
        (25, "pro", 1, "whole number from 1 to 24"),
        (4.5, "pro", 1, "whole number from 1 to 24"),
        (4, "up", 1, "bend must be one of iso, pro, anti, got 'up'"),
        (1, "anti", 1, "an anti-bend needs at least 2 lobes"),
        (4, "pro", 0, "start must be 1 or -1, got 0"),
        (4, "pro", 2, "start must be 1 or -1, got 2"),
        (4, "pro", -2, "start must be 1 or -1, got -2"),
    ],
)
def test_what_is_no_toroid_is_refused(lobes, bend, start, words):
    with pytest.raises(ValueError, match=words):
        check_toroid(lobes, bend, start)


@pytest.mark.parametrize("lobes", [1, 24])
def test_the_fewest_and_the_most_lobes(lobes):
    for bend in ("iso", "pro") if lobes == 1 else ("iso", "pro", "anti"):
        for start in (1, -1):
            assert check_toroid(lobes, bend, start) is None
    assert check_toroid(2, "anti", 1) is None


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"begin": "mid"}, "begin must be in or out, got 'mid'"),
        ({"hand_radius": 0.0}, "hand_radius must be positive, got 0.0"),
        ({"hand_radius": -0.1}, "hand_radius must be positive"),
        ({"hand_radius": float("nan")}, "hand_radius must be positive"),
        ({"beats": 0.0}, "beats of a cycle must be positive"),
        ({"lobes": 0}, "lobes must be a whole number"),
    ],
)
def test_a_toroid_needs_a_circle_a_beginning_and_time(given, words):
    usual = {"lobes": 4, "bend": "pro", "hand_radius": 0.2, "beats": 4.0, "body": BODY}
    with pytest.raises(ValueError, match=words):
        toroid(**{**usual, **given})
    assert toroid(**{**usual, "hand_radius": 1e-9}).period == 4.0
