"""Bounds on pull and derivatives between knots, against the same splines looked at densely with formulas of their own."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.trajectories.flown_path.flown_bounds import (
    largest_on_spans,
    paces_along,
    pull_bounds,
)

GRAVITY = 9.80665
STEP = 1.0 / 96
SPANS = 4 * 96


def wild(seed, size=1.0):
    """A path of four beats that goes round and is shaken."""
    draw = np.random.default_rng(seed)
    beats = np.arange(SPANS + 5) * STEP
    turn = 2 * np.pi * beats
    ring = np.stack([np.sin(turn), np.cos(turn), 0.3 * np.sin(2 * turn)], axis=1)
    shaken = np.cumsum(np.cumsum(draw.normal(size=(SPANS + 5, 3)), axis=0), axis=0) * 2e-5
    return EvenSpline(start=0.0, step=STEP, coefficients=size * (ring + shaken))


def tempo(wobble):
    """Beats a second about 1.7, as a spline with a knot in the middle of every beat."""
    draw = np.random.default_rng(3)
    own = 1.7 + wobble * draw.normal(size=12)
    return EvenSpline(start=-1.5, step=1.0, coefficients=np.repeat(own[:, None], 3, axis=1))


def looked(path, rate, drag):
    """Pull over mass at forty places of each span, shape (spans, 40): seconds by differences of beats, nothing by formula."""
    beats = path.start + (np.arange(path.spans)[:, None] + (np.arange(40) + 0.5) / 40) * path.step
    pace, change = rate.at(beats)[..., :1], rate.at(beats, 1)[..., :1]
    first, second = path.at(beats, 1), path.at(beats, 2)
    velocity = pace * first
    acceleration = pace * (change * first + pace * second)  # d/dt = p d/db
    against = drag * np.linalg.norm(velocity, axis=-1, keepdims=True) * velocity
    return np.linalg.norm(acceleration + against + [0.0, 0.0, GRAVITY], axis=-1)


@pytest.mark.parametrize("drag", [0.0, 0.05])
@pytest.mark.parametrize("wobble", [0.0, 0.05, 0.3])
@pytest.mark.parametrize("size", [0.3, 1.0])
def test_the_pull_is_never_less_nor_more_than_its_bounds(drag, wobble, size):
    path, rate = wild(7, size), tempo(wobble)
    seen = looked(path, rate, drag)
    least, most = pull_bounds(path, rate, drag)
    assert np.all(least <= seen.min(axis=1))
    assert np.all(most >= seen.max(axis=1))
    if wobble < 0.1:  # and they say something
        assert np.median((seen.min(axis=1) - least) / seen.min(axis=1)) < 0.02
        assert np.median((most - seen.max(axis=1)) / seen.max(axis=1)) < 0.02


@pytest.mark.parametrize("first", [0, 1, 95, 96, 130])
@pytest.mark.parametrize("order", [0, 1])
def test_the_tempo_along_a_path_is_that_of_its_beats(first, order):
    """Wherever the path begins and ends between the knots of the tempo."""
    rate, path = tempo(0.3), wild(5)
    own = EvenSpline(
        start=path.start + first * STEP,
        step=STEP,
        coefficients=path.coefficients[first : first + 205],
    )
    for share in (0.25, 0.5):
        beats = own.start + (np.arange(own.spans) + share) * STEP
        wanted = rate.at(beats, order)[:, :1]
        assert_allclose(paces_along(rate, own, share, order), wanted, rtol=1e-9, atol=1e-9)


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_tempo_that_changes_within_a_span_is_allowed_for(way):
    """A swing straight up and down, and a tempo that gains or loses a beat a second in every beat.

    Where the swing turns it bends evenly, so nearly all that its pull changes within a span comes of the tempo: two thirds by the
    square of the pace, a third by its rate. Without either share the bounds do not hold.
    """
    swing = np.cos(2 * np.pi * np.arange(SPANS + 5) * STEP)
    still = np.zeros_like(swing)
    path = EvenSpline(start=0.0, step=STEP, coefficients=np.stack([still, still, swing], axis=1))
    own = 3.0 + way * (np.arange(12) - 5.5)  # a straight line, three in the middle
    rate = EvenSpline(start=-1.5, step=1.0, coefficients=np.repeat(own[:, None], 3, axis=1))
    assert_allclose(rate.at(np.array([0.0, 4.0]))[:, 0], 3.0 + way * np.array([-2.0, 2.0]))
    seen = looked(path, rate, 0.0)
    least, most = pull_bounds(path, rate, 0.0)
    assert np.all(least <= seen.min(axis=1))
    assert np.all(most >= seen.max(axis=1))


def test_a_plumb_line_at_rest_pulls_with_its_weight():
    still = EvenSpline(start=0.0, step=STEP, coefficients=np.ones((SPANS + 5, 3)))
    for bound in pull_bounds(still, tempo(0.2), 0.05):
        assert_allclose(bound, GRAVITY, rtol=1e-5)


def test_derivatives_are_bounded_on_every_span():
    path = wild(5)
    places = (np.arange(path.spans)[:, None] + (np.arange(30) + 0.5) / 30) * path.step
    for order in (1, 2):
        most = np.linalg.norm(path.at(places, order), axis=-1).max(axis=1)
        bound = largest_on_spans(path, order)
        assert np.all(bound >= most)
        assert_allclose(bound, most, rtol=0.05, atol=0.01 * most.max())
        assert np.all(bound <= path.largest(order) * (1 + 1e-9))
