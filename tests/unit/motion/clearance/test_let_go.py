"""Extremes of flights of heads let go, against a projectile written out and ten times as many instants.

Source: uniform acceleration, any mechanics text (thrown.py).
"""

from dataclasses import replace

import numpy as np
import pytest
import shapely
from scipy.optimize import minimize_scalar

from sequencer.motion.clearance import let_go as room
from sequencer.motion.clearance.head_flights import Flights, WickCourses
from sequencer.motion.clearance.let_go import (
    FLIGHT_ERROR,
    SPEED_ERROR,
    LandingTarget,
    flights_let_go,
)
from sequencer.motion.performers.walks import Move, WalkPath
from tests.nothing_kept import nothing_kept
from tests.unit.motion.clearance.test_head_flights import without_bounds
from tests.unit.motion.clearance.thrown import (
    CASES,
    QUICKENING,
    STEADY,
    G,
    danced,
    instants,
    thrown,
)


@pytest.mark.parametrize("case", CASES)
def test_none_is_farther_faster_or_nearer_than_told(case):
    dancer, tempo = CASES[case]
    post, zone = (3.4, 3.0), ((6.0, 6.0), (7.0, 6.0), (7.0, 7.5))
    edge = ((-9.0, -6.0), (12.0, -5.0))
    targets = [
        LandingTarget(name="post", shape="point", points=(post,)),
        LandingTarget(name="zone", shape="area", points=zone),
        LandingTarget(name="edge", shape="line", points=edge),
    ]
    (_, found), nearest = flights_let_go([dancer], tempo, targets)
    beats = np.concatenate([instants(tempo, *span, 700) for span in dancer.lit])
    release, landing = thrown(dancer, tempo, beats)
    lines = shapely.linestrings(np.stack([release, landing], axis=-2))
    far = np.linalg.norm(landing - release, axis=-1)

    assert found.proven
    assert found.flight + FLIGHT_ERROR >= far.max() >= found.flight - 0.1
    for (who, near), shape in zip(
        nearest,
        (shapely.Point(post), shapely.Polygon(zone), shapely.LineString(edge)),
        strict=True,
    ):
        gaps = shapely.distance(lines, shape)
        assert who == "Ada"
        assert near.beyond == 0.0
        assert near.distance - FLIGHT_ERROR <= gaps.min() <= near.distance + 0.06
        own = thrown(dancer, tempo, np.array([near.beat]))
        here = shapely.distance(shapely.linestrings(np.stack(own, axis=-2)), shape)
        assert here.min() == pytest.approx(
            near.distance, abs=1e-3
        )  # the beat told is the beat it happens


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
    _, found = flights_let_go([ada], STEADY, ()).farthest

    assert high[2] - low[2] == pytest.approx(1.1)
    assert found.flight == pytest.approx(-best, abs=FLIGHT_ERROR)
    assert v <= found.fastest <= v + SPEED_ERROR


def test_a_line_that_heads_fly_over_says_how_far_beyond(dance):
    """The same circle before a line 1 m downstage of the hand, a head thrown along the wheel plane."""
    ada = dance.dancer(
        place=(0.0, 3.0), ratio=1.0, hand_radius=0.0, beats=1.0, tether=0.55, plane="wheel", sides=("right",), lit=((0.0, 4.0),),
    )  # fmt: skip
    _, landing = thrown(ada, STEADY, instants(STEADY, 0.0, 1.0, 4001))
    rows = LandingTarget(name="rows", shape="line", points=((-9.0, 2.0), (9.0, 2.0)))
    ((_, near),) = flights_let_go([ada], STEADY, [rows]).nearest

    assert near.distance == 0.0
    beyond = 2.0 - landing[..., 1].min()
    assert beyond <= near.beyond <= beyond + 2 * FLIGHT_ERROR
    assert near.landing[1] == pytest.approx(2.0 - beyond, abs=FLIGHT_ERROR)


def dense(dancer, tempo, n=6000):
    """Flights from evenly spaced instants; their formula is held by tests of its own."""
    course = WickCourses([dancer], tempo)
    beats = instants(tempo, *dancer.lit[0], n)
    each = [
        course.flights(np.searchsorted(course.start, beats, side="right") - 1, beats, 0 * beats)
    ]  # one wick
    return each[0]


def spots(*points):
    return [LandingTarget(name=f"p{k}", shape="point", points=(p,)) for k, p in enumerate(points)]


CAST = (
    danced("three-beat-weave", "antispin-flower-4", "pendulum"),
    replace(
        danced("windmill", "three-beat-weave", "extension"), name="Bo", floor=WalkPath((5.0, 3.0), -0.4),
    ),
)  # fmt: skip


def test_the_best_coarse_sample_need_not_be_in_the_slice_of_the_nearest_flight(monkeypatch):
    """Planted: points whose nearest coarse sample is one performer's, and whose nearest flight by far the other's."""
    monkeypatch.setattr(room, "_COARSE", 4.0)
    draw = np.random.default_rng(11)
    points = [(float(x), float(y)) for x, y in draw.uniform((-4, -2), (10, 9), (120, 2))]
    slices = [each for k, own in enumerate(CAST) for each in room._lit_slices(k, own)]
    assert [own.who for own in slices] == [0, 1]
    lines = [shapely.linestrings(np.stack(dense(own, QUICKENING)[:2], axis=1)) for own in CAST]
    truth = np.array(
        [[shapely.distance(own, shapely.Point(p)).min() for p in points] for own in lines]
    )
    with nothing_kept():
        looks = room._Looks(slices, QUICKENING, room._Aims(spots(*points)))
        found = flights_let_go(CAST, QUICKENING, spots(*points)).nearest
    coarse = np.array([scan.value[2:] for scan in looks.scans])
    best, right = np.argmin(coarse, axis=0), np.argmin(truth, axis=0)
    apart = np.abs(truth[0] - truth[1]) > 2 * FLIGHT_ERROR

    assert np.any((best != right) & apart)
    for k in np.flatnonzero(apart):
        who, near = found[k]
        assert who == CAST[right[k]].name
        assert near.distance == pytest.approx(truth[:, k].min(), abs=FLIGHT_ERROR + 0.01)


def test_what_was_kept_before_changes_no_digit():
    """Each alone first, then both; against both with nothing kept. Of a part that was known, the same is found."""
    draw = np.random.default_rng(3)
    targets = spots(*map(tuple, draw.uniform((-4, -2), (10, 9), (25, 2)).tolist()))
    for own in CAST:
        flights_let_go([own], QUICKENING, targets)
    after = flights_let_go(CAST, QUICKENING, targets)
    with nothing_kept():
        assert flights_let_go(CAST, QUICKENING, targets) == after


def of(aims, aim, flights):
    value, lower = aims.every(flights)
    return value[aim], lower[aim]


def flights_of(release, landing, slack):
    n = len(release)
    return Flights(release, landing, np.full(n, slack), np.full(n, 8.0), np.full(n, 8.5))


def test_a_bound_holds_for_any_flight_within_the_slack_and_is_reached():
    """Both ends of random flights moved by the slack towards or away from what is sought: values by shapely."""
    draw = np.random.default_rng(9)
    release, landing = draw.uniform(-2, 2, (300, 2)), draw.uniform(-8, 8, (300, 2))
    zone, row = ((4.0, 0.0), (7.0, 1.0), (5.0, 3.0)), ((-9.0, -4.0), (0.0, -5.0), (3.0, -5.0))
    targets = [
        LandingTarget(name="post", shape="point", points=((3.4, 3.0),)),
        LandingTarget(name="zone", shape="area", points=zone),
        LandingTarget(name="row", shape="line", points=row),
    ]
    shapes = shapely.Point(3.4, 3.0), shapely.Polygon(zone), shapely.LineString(row)
    aims, slack = room._Aims(targets), 0.4
    middle = flights_of(release, landing, slack)
    for k, shape in enumerate(shapes, 2):
        value, lower = of(aims, k, middle)
        lines = shapely.linestrings(np.stack([release, landing], axis=1))
        gap = shapely.distance(lines, shape)
        assert np.maximum(value, 0.0) == pytest.approx(gap, abs=1e-9)
        least = np.inf
        for angle in np.linspace(0, 2 * np.pi, 41):
            off = slack * np.array([np.cos(angle), np.sin(angle)])
            other, _ = of(aims, k, flights_of(release + off, landing + off, 0.0))
            assert np.all(other >= lower - 1e-9)
            least = np.minimum(least, other)
        if k < 4:
            assert np.all(least[gap > slack] <= lower[gap > slack] + 0.01)
        else:  # crossed for good: no farther beyond than the slack more
            beyond = shapely.distance(shapely.points(landing), shape)
            assert value[gap == 0] == pytest.approx(-beyond[gap == 0])
            assert np.any(least[gap == 0] <= lower[gap == 0] + 0.01)
    way = (landing - release) / np.linalg.norm(landing - release, axis=1)[:, None]
    farther, _ = of(aims, 0, flights_of(release, landing + slack * way, 0.0))
    assert farther == pytest.approx(of(aims, 0, middle)[1])
    assert np.all(of(aims, 1, middle)[0] == -8.0)
    assert np.all(of(aims, 1, middle)[1] == -8.5)
    inside = flights_of(np.array([[5.2, 1.2]]), np.array([[5.3, 1.3]]), slack)
    assert of(aims, 3, inside)[0] == 0.0


def test_aims_measured_together_are_those_measured_apart():
    """To the last digit: what is searched together differs from edit to edit."""
    draw = np.random.default_rng(10)
    own = flights_of(draw.uniform(-2, 2, (90, 2)), draw.uniform(-8, 8, (90, 2)), 0.3)
    line = LandingTarget(name="row", shape="line", points=((-9.0, -4.0), (3.0, -5.0)))
    area = LandingTarget(name="zone", shape="area", points=((4.0, 0.0), (7.0, 1.0), (5.0, 3.0)))
    aims = room._Aims([*spots((3.4, 3.0)), line, area, *spots((0.0, 5.0))])
    which = draw.integers(aims.count, size=90)
    value, lower = aims.measured(which, own)
    for aim in range(aims.count):
        alone = of(aims, aim, own)
        assert np.array_equal(value[which == aim], alone[0][which == aim])
        assert np.array_equal(lower[which == aim], alone[1][which == aim])


def test_the_extreme_of_a_cast_is_that_of_its_performers():
    targets = spots((3.4, 3.0), (9.0, 9.0), (1.0, -1.5))
    both = flights_let_go(CAST, QUICKENING, targets)
    each = [flights_let_go([own], QUICKENING, targets) for own in CAST]

    speed = dense(CAST[both.farthest[0] == "Bo"], QUICKENING).speed.max()
    assert speed - 1e-3 <= both.farthest[1].fastest <= speed + SPEED_ERROR
    far = max((own.farthest for own in each), key=lambda own: own[1].flight)
    assert both.farthest[0] == far[0]
    assert both.farthest[1].flight == pytest.approx(far[1].flight, abs=FLIGHT_ERROR)
    assert both.farthest[1].fastest == pytest.approx(far[1].fastest, abs=SPEED_ERROR)
    for k, (_, near) in enumerate(both.nearest):
        least = min(own.nearest[k][1].distance for own in each)
        assert near.distance == pytest.approx(least, abs=FLIGHT_ERROR)


def test_a_flight_round_the_end_of_a_line_ends_the_search():
    """One who turns throws past the end of a line: how far beyond it a head lands jumps there, from metres to nothing."""
    turning = WalkPath((0.0, 3.0), 0.0, (Move(start=0.0, end=8.0, place=(0.5, 3.0), facing=1.5),))
    ada = danced("extension", "extension", floor=turning, lit=((0.0, 8.0),))
    release, landing = dense(ada, STEADY)[:2]
    lines = shapely.linestrings(np.stack([release, landing], axis=1))
    flown = np.linalg.norm(landing - release, axis=1)
    for k in np.random.default_rng(1).choice(np.flatnonzero(flown > flown.mean()), 6).tolist():
        end = release[k] + 0.3 * (landing[k] - release[k])
        aside = np.array([-1.0, 1.0]) * (landing[k] - release[k])[::-1]
        for side in (1.0, -1.0):
            other = end + side * aside
            row = LandingTarget(name="row", shape="line", points=(tuple(end), tuple(other)))
            shape = shapely.LineString([end, other])
            ((_, near),) = flights_let_go([ada], STEADY, [row]).nearest
            gaps, beyond = (
                shapely.distance(lines, shape),
                shapely.distance(shapely.points(landing), shape),
            )

            assert near.distance == 0.0
            assert near.beyond >= beyond[gaps == 0].max()
            assert near.beyond <= beyond[gaps <= FLIGHT_ERROR].max() + 2 * FLIGHT_ERROR


def test_an_interval_in_which_a_flight_may_pass_the_end_of_a_line_is_decided_once_it_is_narrow():
    """Else a search would never end where heads fly round it. What is near counts as crossing, and only that."""
    draw = np.random.default_rng(12)
    row = LandingTarget(name="row", shape="line", points=((-9.0, -4.0), (0.0, -4.0)))
    past, beyond = draw.uniform(-0.05, 0.05, 200), draw.uniform(0.0, 2.0, 200)
    release = np.stack([past, np.zeros(200)], axis=1)
    landing = np.stack([past, -4.0 - beyond], axis=1)
    aims = room._Aims([row])
    value, lower = of(aims, 2, flights_of(release, landing, FLIGHT_ERROR / 3))
    near = (past > 0) & (past <= FLIGHT_ERROR / 3)

    assert np.all(value - lower <= FLIGHT_ERROR + 1e-12)
    assert value[past > FLIGHT_ERROR / 3] == pytest.approx(past[past > FLIGHT_ERROR / 3])
    far = near & (beyond > FLIGHT_ERROR)
    assert np.any(far)
    assert value[far] == pytest.approx(-np.hypot(past, beyond)[far])
    wide, _ = of(aims, 2, flights_of(release, landing, FLIGHT_ERROR))
    assert wide[far] == pytest.approx(past[far])


def test_a_proven_bound_holds_for_intervals_that_were_not_searched(monkeypatch):
    """All are so narrow that what is known, a little more than the least, leaves each of them out."""
    monkeypatch.setattr(room, "_COARSE", 0.01)
    ada = replace(CAST[0], lit=((4.5, 5.5),))
    least = -dense(ada, QUICKENING).flown.max()
    with nothing_kept():
        looks = room._Looks(list(room._lit_slices(0, ada)), QUICKENING, room._Aims(()))
        (seen,) = looks._searched([room._Job(0, 0, least + 0.04)], FLIGHT_ERROR)

    assert least - 0.05 <= seen.lower <= least


def test_sparse_samples_change_no_result(monkeypatch):
    """With samples four times as far apart the search must find what lies between them."""
    targets = spots((9.0, 9.0), (2.0, -3.0))
    close = flights_let_go(CAST, QUICKENING, targets)
    with nothing_kept():
        monkeypatch.setattr(room, "_COARSE", 4.0)
        far = flights_let_go(CAST, QUICKENING, targets)

    assert far.farthest[1].flight == pytest.approx(close.farthest[1].flight, abs=FLIGHT_ERROR)
    assert far.farthest[1].fastest == pytest.approx(close.farthest[1].fastest, abs=SPEED_ERROR)
    for (_, one), (_, other) in zip(far.nearest, close.nearest, strict=True):
        assert one.distance == pytest.approx(other.distance, abs=FLIGHT_ERROR)


def test_without_a_bound_it_says_so(monkeypatch):
    dancer, tempo = CASES["hoop"]
    _, proven = flights_let_go([dancer], tempo, ()).farthest
    loose = without_bounds(monkeypatch, dancer)
    with nothing_kept():
        _, found = flights_let_go([loose], tempo, ()).farthest
    (samples,) = WickCourses([loose], tempo).samples(1.0)
    margin = np.where(samples.proven, 0.0, samples.flights.slack)

    assert found.flight == pytest.approx(np.max(samples.flights.flown + margin))
    assert proven.proven
    assert not found.proven
    assert proven.flight - FLIGHT_ERROR <= found.flight <= proven.flight + 0.5


def test_nobody_unlit_is_asked(dance):
    with pytest.raises(ValueError, match="Ada is never lit"):
        flights_let_go([CAST[0], dance.dancer(lit=())], STEADY, ())
