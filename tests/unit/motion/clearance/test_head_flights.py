"""Bounds between sampled flights, against flights at other instants and against any push of the size allowed."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.clearance import head_flights
from sequencer.motion.clearance.head_flights import WickCourses, landing_of
from sequencer.motion.laws.law import Bounds
from sequencer.motion.trajectories.trajectory import Trajectory
from tests.unit.motion.clearance.thrown import CASES, STEADY, thrown


@pytest.mark.parametrize("case", CASES)
def test_no_flight_within_an_interval_is_farther_off_than_its_slack(case):
    """Intervals of all widths, 17 instants in each: a term left out of the bound shows as a flight outside it."""
    dancer, tempo = CASES[case]
    course = WickCourses([dancer], tempo)
    draw = np.random.default_rng(5)
    rows = draw.integers(len(course.start), size=600)
    wide = course.end[rows] - course.start[rows]
    half = wide / 2 * 10.0 ** draw.uniform(-3, 0, len(rows))
    beats = course.start[rows] + half + draw.uniform(0, 1, len(rows)) * (wide - 2 * half)
    middle = course.flights(rows, beats, half)
    for share in np.linspace(-1, 1, 17):
        there = course.flights(rows, beats + share * half, np.zeros(len(rows)))
        for one, other in (
            (middle.release, there.release), (middle.landing, there.landing), (middle.flown[:, None], there.flown[:, None]),
        ):  # fmt: skip
            assert np.all(np.linalg.norm(one - other, axis=-1) <= middle.slack + 1e-6)
        assert np.all(there.fastest <= middle.fastest + 1e-6)


@pytest.mark.parametrize(
    ("height", "velocity", "pull", "w"),
    [
        (1.0, (3.0, 0.0, 4.0), 60.0, 0.004),
        (1.0, (3.0, 0.0, 4.0), 0.0, 0.004),
        (0.3, (2.0, 1.0, -6.0), 200.0, 0.004),
        (0.02, (0.0, 0.1, 0.0), 5.0, 0.004),
        (2.0, (0.0, 0.0, 7.0), 90.0, 0.004),
        (0.3, (-8.3, 5.4, -3.6), 260.0, 0.05),  # thrown down, it may rise within the interval
        (
            0.0123,
            (-9.134, 1.421, 1.087),
            26.67,
            0.01708,
        ),  # near the ground, where the height counts least
    ],
)
def test_a_bound_holds_for_any_push_of_the_size_allowed_and_is_not_idle(height, velocity, pull, w):
    """A head pushed by a steady acceleration in each of 400 directions: the worst uses up a third of the bound."""
    course = WickCourses([CASES["poi"][0]], CASES["poi"][1])
    place, start = np.array([0.0, 0.0, height]), np.array(velocity)
    most = float(np.linalg.norm(velocity)) + pull * w
    course.speed, course.acceleration = np.array([most]), np.array([pull])
    slack, fastest = course.bounds(np.zeros(1, int), place[None, 2], start[None], np.array([w]))
    draw = np.random.default_rng(0).normal(size=(400, 3))
    push = pull * draw / np.linalg.norm(draw, axis=-1, keepdims=True)
    begun = landing_of(place, start)
    moved = 0.0
    for t in np.linspace(-w, w, 17):
        landing = landing_of(place + t * start + push * t**2 / 2, start + t * push)
        moved = max(moved, float(np.linalg.norm(landing - begun, axis=-1).max()))

    assert slack[0] / 3 <= moved <= slack[0]
    assert np.linalg.norm(start + w * push, axis=-1).max() <= fastest[0] + 1e-12


@pytest.mark.parametrize("case", ["poi", "staff"])
def test_bounds_on_wicks_are_those_of_the_points_they_are(case):
    """Source: `Dancer.pieces`, whose bounds tests of its own hold against sampled points."""
    dancer, tempo = CASES[case]
    low, high = dancer.lit[0]
    course, pieces = WickCourses([dancer], tempo), dancer.pieces(low, high)
    wicks = len(dancer.props["right"].heads)
    for k, point in enumerate([7, 9][:wicks]):  # right head, right rear end
        own = np.array_split(np.arange(len(course.start)), wicks)[k]
        own = own[course.start[own] < high]
        middle = (course.start + course.end)[own] / 2
        at = np.searchsorted(pieces.edges, middle) - 1
        pace = tempo.beats_per_second(middle)
        assert_allclose(course.speed[own], pieces.speed[at, point] * pace)
        assert_allclose(course.acceleration[own], pieces.acceleration[at, point] * pace**2)


@pytest.mark.parametrize("case", CASES)
def test_flights_are_those_of_every_wick_and_samples_cover_all_lit_time(case):
    """Places and velocities of wicks from `Dancer.wick_places` by differences, the landing by the roots of a parabola."""
    dancer, tempo = CASES[case]
    course = WickCourses([dancer], tempo)
    (samples,) = course.samples(1.5)
    wicks = len(dancer.props["right"].heads)
    assert np.sum(2 * samples.half) == pytest.approx(wicks * sum(b - a for a, b in dancer.lit))
    assert np.all(samples.flights.slack <= 1.5)
    assert np.all(samples.proven)
    some = np.random.default_rng(2).integers(len(samples.row), size=40)
    some = some[np.abs(samples.beat[some] - np.round(samples.beat[some])) > 2e-6]
    wick = samples.row[some] // (len(course.start) // wicks)
    release, landing = thrown(dancer, tempo, samples.beat[some])
    each = wick, np.arange(len(some))
    assert_allclose(samples.flights.release[some], release[each], atol=1e-6)
    assert_allclose(samples.flights.landing[some], landing[each], atol=1e-5)


def test_what_is_found_of_a_dancer_does_not_depend_on_the_others():
    """To the last digit: slices are kept, and searched again with others beside them."""
    poi, staff = CASES["poi"][0], CASES["staff"][0]
    beats = np.random.default_rng(4).uniform(0.5, 3.0, 200)
    alone, both = WickCourses([poi], STEADY), WickCourses([staff, poi], STEADY)
    rows = np.searchsorted(alone.start, beats, side="right") - 1
    one = alone.flights(rows, beats, np.full(200, 0.01))
    two = both.flights(rows + both.first[1], beats, np.full(200, 0.01))
    for a, b in zip(one, two, strict=True):
        assert np.array_equal(a, b)
    for a, b in zip(alone.samples(1.0)[0][:3], both.samples(1.0)[1][:3], strict=True):
        assert np.array_equal(a, b)


@pytest.mark.parametrize("case", CASES)
def test_a_song_sampled_in_many_parts_is_sampled_as_in_one(case, monkeypatch):
    """To the last digit; and no part holds more than its share, so that a long song needs no more room."""
    course = WickCourses([CASES[case][0], CASES["staff"][0]], CASES[case][1])
    whole = course.samples(1.0)
    monkeypatch.setattr(head_flights, "_ROWS", 2)
    monkeypatch.setattr(head_flights, "_TOGETHER", 5)
    for one, two in zip(whole, course.samples(1.0), strict=True):
        assert all(np.array_equal(a, b) for a, b in zip(one[:3], two[:3], strict=True))
        assert all(np.array_equal(a, b) for a, b in zip(one.flights, two.flights, strict=True))
    for part in course.batches(1.0):
        assert len(np.unique(part.row)) <= 2
        assert len(part.row) <= max(len(each.row) for each in whole)


def without_bounds(monkeypatch, dancer):
    """As a fan or hoop in a link is: nothing bounds its acceleration."""
    loose = replace(dancer, name="Bo", lit=((0.0, 3.9),))
    whole = loose.trajectories["right"].pieces(-10.0, 10.0)
    assert isinstance(whole[0][2], Bounds)
    unbounded = tuple((a, b, replace(c, frame_acceleration=np.inf)) for a, b, c in whole)
    monkeypatch.setattr(
        Trajectory,
        "pieces",
        lambda _self, a, b: tuple(
            (max(a, x), min(b, y), c) for x, y, c in unbounded if x < b and y > a
        ),
    )
    return loose


def test_without_a_bound_a_margin_stands_for_it(monkeypatch):
    dancer, tempo = CASES["fan"]
    course = WickCourses([without_bounds(monkeypatch, dancer)], tempo)
    (samples,) = course.samples(0.2)

    wick = samples.row // (len(course.start) // len(dancer.props["right"].heads))
    assert np.array_equal(samples.proven, wick == 0)  # the one on the axis is bounded all the same
    for share in (-1.0, -0.4, 0.7, 1.0):
        there = course.flights(samples.row, samples.beat + share * samples.half, samples.half)
        off = np.linalg.norm(there.landing - samples.flights.landing, axis=-1)
        assert np.all(off <= samples.flights.slack)
