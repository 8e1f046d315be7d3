"""Two props of one performer: how far apart, and periods flown clear of each other."""

from functools import cache

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.segments import segment_segment
from sequencer.motion.flown.apart import LEAST_BESIDE, gaps_between, prop_capsules
from sequencer.motion.flown.period_search import period_apart
from sequencer.outputs.patterns.one_pattern import one_pattern
from tests.unit.motion.flown.flights import POI


@cache
def both(name):
    """Both hands of a pattern, each flown by itself."""
    return one_pattern(name, tempo=100.0).flown


def least(one, other):
    """Distance of the props, at 2,000 instants, by the four pairs of tethers and balls."""
    beats = np.linspace(0.0, one.law.period, 2001)
    a, b = one.flight(beats), other.flight(beats)
    wick, own = other.flying.prop.wick_radius, one.flying.prop.wick_radius
    pairs = [
        segment_segment(a.hand, a.head, b.hand, b.head)[0],
        segment_segment(a.head, a.head, b.hand, b.head)[0] - own,
        segment_segment(a.hand, a.head, b.head, b.head)[0] - wick,
        segment_segment(a.head, a.head, b.head, b.head)[0] - wick - own,
    ]
    return np.min(pairs)


def test_hands_that_would_meet_are_flown_apart():
    """Hands of the pro-bend, each by itself, go 3 cm into each other."""
    left, right = (both("pro-bend-3")[side] for side in ("left", "right"))
    assert least(right, left) < -0.01
    found = period_apart(right, left)
    assert found.broken == ()
    assert least(found, left) > LEAST_BESIDE - 2e-3  # between the looks
    assert_allclose(found.moved, right.moved)
    assert found.head_off[0] < right.head_off[0] + 0.1


def test_hands_that_keep_apart_are_left():
    left, right = (both("extension")[side] for side in ("left", "right"))
    assert least(right, left) > LEAST_BESIDE
    assert period_apart(right, left) is right


def test_a_prop_s_capsules():
    head, hand = np.array([[0.1, 0.2, 0.3]]), np.array([[0.4, 0.5, 0.6]])
    tether, ball = prop_capsules(POI, head, hand)[0]
    assert_allclose(tether[:6], [*hand[0], *head[0]])
    assert_allclose(ball, [*head[0], *head[0], POI.wick_radius])
    assert 0.0 < tether[6] < 0.02


def test_gaps_between_props():
    """A tether along x, its head at 0.45; capsules and balls at known distances."""
    hand, head = np.zeros((1, 3)), np.array([[0.45, 0.0, 0.0]])

    def gap(low, high, radius):
        return gaps_between(POI, head, hand, np.array([[[*low, *high, radius]]]))[0]

    thin = gap((0.2, 0.3, 0.0), (0.2, 0.9, 0.0), 0.02)
    assert 0.3 - 0.02 - 0.02 < thin < 0.3 - 0.02
    assert gap((0.45, 0.0, 0.4), (0.45, 0.0, 0.9), 0.1) == pytest.approx(0.4 - 0.1 - 0.05)
    assert gap((0.45, 0.0, 0.1), (0.45, 0.0, 0.1), 0.1) < 0.0
