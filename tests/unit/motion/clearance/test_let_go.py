"""Flights of heads let go, against a projectile written out here and ten times as many instants.

Source: uniform acceleration, any mechanics text. The reference shares the laws of hands and walks with what it judges,
which tests of their own hold; velocities are central differences of places, and the ground is met where the height is 0.
"""

from dataclasses import replace

import numpy as np
import pytest
import shapely
from numpy.testing import assert_allclose
from scipy.optimize import minimize_scalar

from sequencer.geometry.bodies import Body
from sequencer.motion.clearance import let_go as room
from sequencer.motion.clearance.let_go import (
    FLIGHT_ERROR,
    GROWN,
    SLACK,
    LandingTarget,
    flights_let_go,
    flown_over,
)
from sequencer.motion.laws.law import Bounds
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.tempo import TempoMap
from tests.nothing_kept import nothing_kept

G = 9.80665  # [m/s²] standard gravity
QUICKENING = TempoMap(
    np.cumsum(np.r_[0.5, np.linspace(0.62, 0.45, 40)])
)  # [s] 97 to 133 beats a minute
STEADY = TempoMap.steady(120.0, beats=64)
POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)
PROPS = {
    "poi": POI,
    "staff": Prop(kind="staff", length=0.7, behind=0.5, mass=0.6, wick_radius=0.04),
    "fan": Prop(kind="fan", length=0.4, mass=0.4, wicks=5, spread=2.0, wick_radius=0.02),
    "hoop": Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03),
}
WALK = WalkPath(
    (1.0, 4.0),
    0.3,
    (Move(start=2.0, end=7.0, place=(3.0, 5.0), facing=2.5, through=((1.5, 5.5),)),),
)


def danced(*names, prop=POI, floor=WALK, lit=((0.0, 12.0),), beats=4.0):
    """One after the other in the right hand, four beats each, blended where they meet."""
    body = Body(stature=1.7)
    spans = tuple(
        Span(
            start=4.0 * k,
            end=4.0 * k + 4.0,
            law=law_for(name, {}, side="right", body=body, tether=0.55, beats=beats),
            origin=4.0 * k,
            kind="block",
            label=name,
        )
        for k, name in enumerate(names)
    )
    return Dancer(
        name="Ada", body=body, props={"right": prop}, trajectories={"right": Trajectory(spans)}, floor=floor, lit=lit,
    )  # fmt: skip


def thrown(dancer, tempo, beats):
    """Releases and landings of every wick, each shape (k, n, 2)."""
    step = 1e-6
    seconds = tempo.seconds_from_beats(beats + step) - tempo.seconds_from_beats(beats - step)
    (before, at, after) = (dancer.wick_places(beats + d)["right"] for d in (-step, 0.0, step))
    velocity = (after - before) / seconds[:, None]
    z, rise = np.maximum(at[..., 2], 0.0), velocity[..., 2]
    aloft = [
        max(np.roots([-G / 2, up, high]).real)
        for up, high in zip(rise.ravel(), z.ravel(), strict=True)
    ]
    return at[..., :2], at[..., :2] + velocity[..., :2] * np.reshape(aloft, z.shape)[..., None]


def instants(tempo, low, high, n):
    """Even ones, none so near a beat that a difference would mix two tempi."""
    beats = np.linspace(low + 2e-6, high - 2e-6, n)
    return beats[np.abs(beats - np.round(beats)) > 2e-6]


CASES = {
    "poi": (danced("three-beat-weave", "antispin-flower-4", "pendulum"), QUICKENING),
    "staff": (
        danced("extension", "extension", prop=PROPS["staff"], lit=((0.5, 3.0), (5.0, 8.0))),
        STEADY,
    ),
    "fan": (danced("extension", prop=PROPS["fan"], lit=((0.0, 4.0),)), STEADY),
    "hoop": (danced("windmill", prop=PROPS["hoop"], lit=((0.0, 4.0),)), QUICKENING),
}


@pytest.mark.parametrize("case", CASES)
def test_every_flight_lies_in_the_outline_and_none_is_farther_or_nearer_than_told(case):
    dancer, tempo = CASES[case]
    post, zone = (3.4, 3.0), ((6.0, 6.0), (7.0, 6.0), (7.0, 7.5))
    edge = ((-9.0, -6.0), (12.0, -5.0))
    targets = [
        LandingTarget(name="post", shape="point", points=(post,)),
        LandingTarget(name="zone", shape="area", points=zone),
        LandingTarget(name="edge", shape="line", points=edge),
    ]
    found = flights_let_go(dancer, tempo, ())[0]
    beats = np.concatenate([instants(tempo, *span, 700) for span in dancer.lit])
    release, landing = thrown(dancer, tempo, beats)
    lines = shapely.linestrings(np.stack([release, landing], axis=-2))
    far = np.linalg.norm(landing - release, axis=-1)

    assert found.proven
    assert found.flight + FLIGHT_ERROR >= far.max() >= found.flight - 0.1
    area = shapely.union_all([shapely.Polygon(ring) for ring in flown_over(dancer, tempo)])
    assert np.all(shapely.covers(area, lines.ravel()))
    for near, shape in zip(
        flights_let_go(dancer, tempo, targets)[1],
        (shapely.Point(post), shapely.Polygon(zone), shapely.LineString(edge)),
        strict=True,
    ):
        gaps = shapely.distance(lines, shape)
        assert near.beyond == 0.0
        assert near.distance - FLIGHT_ERROR <= gaps.min() <= near.distance + 0.06
        own = thrown(dancer, tempo, np.array([near.beat]))
        here = shapely.distance(shapely.linestrings(np.stack(own, axis=-2)), shape)
        assert here.min() == pytest.approx(
            near.distance, abs=1e-3
        )  # the beat told is the beat it happens


def test_an_outline_is_no_wider_than_it_says():
    dancer, tempo = CASES["poi"]
    release, landing = thrown(dancer, tempo, instants(tempo, 0.0, 12.0, 3000))
    lines = shapely.linestrings(np.stack([release, landing], axis=-2)).ravel()
    tree = shapely.STRtree(lines)
    corners = shapely.points([corner for ring in flown_over(dancer, tempo) for corner in ring])
    _, gaps = tree.query_nearest(corners, return_distance=True, all_matches=False)

    assert gaps.max() <= GROWN + 0.02
    assert gaps.min() > 0.0


def test_a_head_on_a_circle_flies_as_far_as_the_classroom_formula_says(dance):
    """Speed v = 2π·2 /s · r about a hand that rests: R(θ) = v|sin θ|·(v cos θ + √(v² cos²θ + 2gz))/g, by scipy's minimiser."""
    ada = dance.dancer(
        ratio=1.0, hand_radius=0.0, beats=1.0, tether=0.55, sides=("right",), lit=((0.0, 4.0),)
    )
    low, high = np.array([ada.wick_places(t)["right"][0] for t in (0.0, 0.5)])  # bottom and top
    v, centre = 4 * np.pi * 0.55, (low[2] + high[2]) / 2

    def flown(angle):
        up, z = v * np.cos(angle), centre + 0.55 * np.sin(angle)
        return v * abs(np.sin(angle)) * (up + np.sqrt(up**2 + 2 * G * z)) / G

    starts = np.linspace(0, 2 * np.pi, 24)
    best = min(
        minimize_scalar(lambda a: -flown(a), bounds=(s, s + 0.5), method="bounded").fun
        for s in starts
    )
    found = flights_let_go(ada, STEADY, ())[0]

    assert high[2] - low[2] == pytest.approx(1.1)
    assert found.flight == pytest.approx(-best, abs=FLIGHT_ERROR)
    assert v <= found.fastest <= v + 0.2


def test_a_line_that_heads_fly_over_says_how_far_beyond(dance):
    """The same circle before a line 1 m downstage of the hand, a head thrown along the wheel plane."""
    ada = dance.dancer(
        place=(0.0, 3.0), ratio=1.0, hand_radius=0.0, beats=1.0, tether=0.55, plane="wheel", sides=("right",), lit=((0.0, 4.0),),
    )  # fmt: skip
    _, landing = thrown(ada, STEADY, instants(STEADY, 0.0, 1.0, 4001))
    rows = LandingTarget(name="rows", shape="line", points=((-9.0, 2.0), (9.0, 2.0)))
    (near,) = flights_let_go(ada, STEADY, [rows])[1]

    assert near.distance == 0.0
    beyond = 2.0 - landing[..., 1].min()
    assert beyond <= near.beyond <= beyond + SLACK
    assert near.landing[1] == pytest.approx(2.0 - beyond, abs=SLACK)


@pytest.mark.parametrize("case", CASES)
def test_no_flight_within_an_interval_is_farther_off_than_its_slack(case):
    """Intervals of all widths, 17 instants in each: a term left out of the bound shows as a flight outside it."""
    dancer, tempo = CASES[case]
    course = room._Course(dancer, tempo)
    draw = np.random.default_rng(5)
    rows = draw.integers(len(course.start), size=600)
    wide = course.end[rows] - course.start[rows]
    half = wide / 2 * 10.0 ** draw.uniform(-3, 0, len(rows))
    beats = course.start[rows] + half + draw.uniform(0, 1, len(rows)) * (wide - 2 * half)
    middle = course.flights(rows, beats, half)
    for share in np.linspace(-1, 1, 17):
        there = course.flights(rows, beats + share * half, np.zeros(len(rows)))
        for one, other in (
            (middle.release, there.release), (middle.landing, there.landing), (middle.flown[..., None], there.flown[..., None]),
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
    course = room._Course(*CASES["poi"])
    place, start = np.array([0.0, 0.0, height]), np.array(velocity)
    most = float(np.linalg.norm(velocity)) + pull * w
    course.speed, course.acceleration = np.array([[most]]), np.array([[pull]])
    slack, fastest = course._bounded(
        np.zeros(1, int), place[None, None, 2], start[None, None], np.array([w])
    )
    draw = np.random.default_rng(0).normal(size=(400, 3))
    push = pull * draw / np.linalg.norm(draw, axis=-1, keepdims=True)
    begun = room.landing_of(place, start)
    moved = 0.0
    for t in np.linspace(-w, w, 17):
        landing = room.landing_of(place + t * start + push * t**2 / 2, start + t * push)
        moved = max(moved, float(np.linalg.norm(landing - begun, axis=-1).max()))

    assert slack[0] / 3 <= moved <= slack[0]
    assert np.linalg.norm(start + w * push, axis=-1).max() <= fastest[0] + 1e-12


@pytest.mark.parametrize("case", ["poi", "staff"])
def test_bounds_on_wicks_are_those_of_the_points_they_are(case):
    """Source: `Dancer.pieces`, whose bounds tests of its own hold against sampled points."""
    dancer, tempo = CASES[case]
    low, high = dancer.lit[0]
    course, pieces = room._Course(dancer, tempo), dancer.pieces(low, high)
    inside = course.start < high
    middle = (course.start + course.end)[inside] / 2
    at = np.searchsorted(pieces.edges, middle) - 1
    for k, point in enumerate([7, 9][: len(course.wicks)]):  # right head, right rear end
        pace = tempo.beats_per_second(middle)
        assert_allclose(course.speed[k, inside], pieces.speed[at, point] * pace)
        assert_allclose(course.acceleration[k, inside], pieces.acceleration[at, point] * pace**2)


def test_sparse_samples_change_no_result(monkeypatch):
    """With samples twenty times as far apart the search must find what lies between them."""
    dancer, tempo = CASES["poi"]
    edge = [LandingTarget(name="post", shape="point", points=((9.0, 9.0),))]
    close = flights_let_go(dancer, tempo, ())[0], flights_let_go(dancer, tempo, edge)[1][0]
    with nothing_kept():
        monkeypatch.setattr(room, "SLACK", 2.0)
        far = flights_let_go(dancer, tempo, ())[0], flights_let_go(dancer, tempo, edge)[1][0]

    assert far[0].flight == pytest.approx(close[0].flight, abs=FLIGHT_ERROR)
    assert far[1].distance == pytest.approx(close[1].distance, abs=FLIGHT_ERROR)


def test_an_outline_holds_all_that_is_within_the_slack_of_a_flight():
    draw = np.random.default_rng(3)
    release = draw.uniform(-2, 2, (1, 9, 2))
    landing = release + np.round(draw.uniform(-4, 4, (1, 9, 2)), 1)
    release[0, :3, 0], landing[0, :3, 0] = 0.4 - 1e-9, 0.4 - 1e-9  # along the border of cells
    flights = room._Flights(release, landing, np.full(9, SLACK), np.ones(9))
    area = shapely.union_all([shapely.Polygon(ring) for ring in room._outlines(flights)])
    lines = shapely.linestrings(np.stack([release, landing], axis=-2)).ravel()

    assert area.covers(shapely.union_all(lines).buffer(SLACK))
    assert area.within(shapely.union_all(lines).buffer(GROWN + 0.01))


def test_without_a_bound_a_margin_stands_for_it_and_it_says_so(monkeypatch):
    dancer, tempo = CASES["fan"]
    proven = flights_let_go(dancer, tempo, ())[0]
    loose = replace(dancer, name="Bo", lit=((0.0, 3.9),))  # not kept from the other
    whole = loose.trajectories["right"].pieces(-10.0, 10.0)
    unbounded = tuple((a, b, replace(c, frame_acceleration=np.inf)) for a, b, c in whole)
    monkeypatch.setattr(
        Trajectory,
        "pieces",
        lambda _self, a, b: tuple(
            (max(a, x), min(b, y), c) for x, y, c in unbounded if x < b and y > a
        ),
    )
    found = flights_let_go(loose, tempo, ())[0]

    assert isinstance(whole[0][2], Bounds)
    assert proven.proven
    assert not found.proven
    assert proven.flight - FLIGHT_ERROR <= found.flight <= proven.flight + 0.5
    course, samples = room._sampled(loose, tempo)
    for share in (-1.0, -0.4, 0.7, 1.0):
        there = course.flights(samples.row, samples.beat + share * samples.half, samples.half)
        off = np.linalg.norm(there.landing - samples.flights.landing, axis=-1)
        assert np.all(off <= samples.flights.slack)


def test_nobody_unlit_is_asked(dance):
    with pytest.raises(ValueError, match="Ada is never lit"):
        flights_let_go(dance.dancer(lit=()), STEADY, ())
