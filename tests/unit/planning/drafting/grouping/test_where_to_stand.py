"""Shapes that fit, who stands where, and walks, against enumeration and sampling."""

import math
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sequencer.checks.dance.travel import TravelLimits, peaks
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.regions import (
    AudienceEdge,
    Post,
    Region,
    Scenery,
    Venue,
    rectangle,
    round_stage,
)
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.planning.drafting.grouping.standing_room import standing_room
from sequencer.planning.drafting.grouping.where_to_stand import (
    GroupWalk,
    beats_to_walk,
    fitting_formations,
    group_walk,
    hidden,
    least_spacing,
    mirrored_partners,
)
from sequencer.timing.tempo import TempoMap

NAMES = ("Ash", "Bo", "Cy", "Di", "Ed", "Fay")


def room(width: float, depth: float):
    return standing_room(
        Venue(stage=rectangle(width, depth)),
        reach=1.5,
        girth=0.0,
        audience=0.0,
        required=Requirements(),
    )


def spots_of(points) -> dict[str, tuple[float, float, float]]:
    return {name: (float(x), float(y), 0.0) for name, (x, y) in zip(NAMES, points, strict=False)}


def test_spacing_keeps_the_two_longest_reaches_apart() -> None:
    assert least_spacing([1.0, 1.42, 1.3], 0.3) == pytest.approx(3.05)  # 3.02, to tape
    assert least_spacing([1.0, 1.0], 0.3) == pytest.approx(2.3)  # nothing to round
    assert least_spacing([1.0], 0.3) == 0.0


@pytest.mark.parametrize("n", [1, 2, 3, 4, 5, 6])
def test_formations_fit_and_keep_clear(n: int) -> None:
    floor = room(18.0, 11.0)
    reaches = [1.2 + 0.1 * k for k in range(n)]
    found = fitting_formations(NAMES[:n], reaches, required=0.3, room=floor)
    assert len({f.name for f in found}) >= (1 if n == 1 else 2)
    for one in found:
        assert set(one.spots) == set(NAMES[:n])
        for x, y, _ in one.spots.values():
            assert 9.0 - abs(x) >= 0.3 - 1e-9
            assert 0.3 - 1e-9 <= y <= 10.7 + 1e-9
        for (a, ra), (b, rb) in combinations(zip(NAMES, reaches, strict=False), 2):
            gap = math.dist(one.spots[a][:2], one.spots[b][:2])
            assert gap >= ra + rb + 0.3 - 1e-9
        assert one.hidden == hidden(one.spots)
        for value in (*one.centre, one.spacing):
            assert value / 0.05 == pytest.approx(round(value / 0.05), abs=1e-6)


def test_most_shapes_hide_nobody() -> None:
    least = {}
    for n in (4, 5):  # four in a circle are a diamond
        found = fitting_formations(NAMES[:n], [1.2] * n, required=0.3, room=room(18.0, 11.0))
        for one in found:
            least.setdefault(one.name, one)
    assert {"line", "wedge", "stagger", "diamond", "circle", "box", "face to face"} == set(least)
    assert all(not one.hidden for one in least.values())
    assert least["diamond"].turn != 0.0  # on its corner the last stands behind the first
    assert least["line"].turn == 0.0


def test_people_keep_their_sides() -> None:
    for one in fitting_formations(NAMES[:5], [1.0] * 5, required=0.3, room=room(20.0, 12.0)):
        if one.name in {"line", "wedge", "stagger"}:
            xs = [one.spots[name][0] for name in NAMES[:5]]
            assert xs == sorted(xs)


def test_where_nothing_fits_nothing_is_found() -> None:
    assert fitting_formations(NAMES[:4], [1.5] * 4, required=0.3, room=room(3.0, 3.0)) == ()
    nowhere = standing_room(
        Venue(stage=rectangle(6, 6), audience=(AudienceEdge(line=((-9, -1), (9, -1))),)),
        reach=1.5,
        girth=0.0,
        audience=7.6,
        required=Requirements(),
    )
    assert nowhere.is_empty
    assert fitting_formations(NAMES[:2], [1.5] * 2, required=0.3, room=nowhere) == ()
    with pytest.raises(ValueError, match="go together"):
        fitting_formations(NAMES[:2], [1.5], required=0.3, room=room(9, 9))


def test_the_middle_is_taken_even_beside_a_thing_that_stands_there() -> None:
    pole = Scenery(
        name="pole",
        region=Region(((-0.1, 4.9), (0.1, 4.9), (0.1, 5.1), (-0.1, 5.1))),
        height=3.0,
        combustible=False,
    )
    venue = Venue(stage=rectangle(12, 10), scenery=(pole,))
    floor = standing_room(venue, reach=1.5, girth=0.0, audience=0.0, required=Requirements())
    alone = fitting_formations(NAMES[:1], [1.5], required=0.3, room=floor)[0]
    x, y, _ = alone.spots["Ash"]
    assert x == 0.0
    assert math.dist((x, y), (0.0, 5.0)) >= 1.5 + 0.3


def test_room_keeps_each_distance() -> None:
    required = Requirements()
    bush = Scenery(name="bush", region=Region(((4, 8), (5, 8), (5, 9), (4, 9))), height=1.0)
    venue = Venue(
        stage=rectangle(30, 20),
        audience=(AudienceEdge(line=((-20, -4), (20, -4))),),
        scenery=(bush,),
        posts=(Post(name="lead", at=(-8.0, 10.0)),),
    )
    floor = standing_room(venue, reach=1.5, girth=0.2, audience=7.0, required=required)
    import shapely

    def inside(x: float, y: float) -> bool:
        return bool(shapely.contains_xy(floor, x, y))

    assert inside(-14.45, 12.0)
    assert not inside(-14.55, 12.0)  # 0.3 and the girth of 0.2 from the edge
    assert inside(-14.0, 4.55)
    assert not inside(-14.0, 4.45)  # −4 + 7 + 1.5
    combustible = 4.0 - required.combustible - 1.5
    assert inside(combustible - 0.05, 8.5)
    assert not inside(combustible + 0.05, 8.5)
    assert not inside(-8.0 + 1.75, 10.0)  # 0.3 of the post and the reach
    assert inside(-8.0 - 1.85, 10.0)
    with pytest.raises(ValueError, match="no stage"):
        standing_room(Venue(), reach=1.0, girth=0.0, audience=0.0, required=required)


def test_hidden_is_who_stands_behind_another() -> None:
    spots = {"a": (0.0, 5.0, 0.0), "b": (0.4, 3.0, 0.0), "c": (0.6, 4.0, 0.0), "d": (2.0, 9.0, 0.0)}
    assert set(hidden(spots)) == {("b", "a"), ("b", "c")}


points = st.lists(st.tuples(st.floats(-8, 8), st.floats(0, 8)), min_size=5, max_size=5, unique=True)


@given(points, points)
def test_nearest_on_the_way_is_that_of_a_dense_sample(first, second) -> None:
    before, after = spots_of(first), spots_of(second)
    walk = group_walk(before, after)
    share = np.linspace(0, 1, 2001)[:, None]
    ways = {
        n: np.array(before[n][:2]) * (1 - share) + np.array(after[n][:2]) * share for n in before
    }
    sampled = min(
        float(np.min(np.hypot(*(ways[a] - ways[b]).T))) for a, b in combinations(before, 2)
    )
    assert walk.nearest <= sampled + 1e-9
    assert walk.nearest >= sampled - 0.02  # what 2000 steps of at most 22 m can miss
    reached = group_walk(before, after, dict.fromkeys(before, 0.5))
    assert reached.nearest == pytest.approx(walk.nearest - 1.0)
    assert walk.squares == pytest.approx(
        sum(math.dist(before[n][:2], after[n][:2]) ** 2 for n in before)
    )
    assert walk.longest == pytest.approx(
        max(math.dist(before[n][:2], after[n][:2]) for n in before)
    )


@pytest.mark.parametrize("tempo", [80.0, 120.0, 128.0])
@pytest.mark.parametrize(("metres", "turn"), [(3.0, 0.0), (0.5, 180.0), (6.3, 90.0), (6.4, 0.0)])
def test_a_walk_gets_the_fewest_beats_that_the_check_surely_allows(
    tempo: float, metres: float, turn: float
) -> None:
    """Source: the check of walks, `checks.dance.travel.peaks`, on the path itself."""
    count = TempoMap.steady(tempo, beats=64)
    walk = GroupWalk(longest=metres, turn=turn, squares=0.0, nearest=9.0, pair=("", ""))
    beats = beats_to_walk(walk, count, 8.0)

    class Walker:
        floor: WalkPath

    limits = TravelLimits()
    fits = []
    # Places are written in whole centimetres; with a beat fewer it would be too fast, or within 3 % of it.
    for length, more in ((beats - 1, 1.03), (beats, 1.0)):
        walker = Walker()
        walker.floor = WalkPath(
            (0.0, 0.0),
            moves=(
                Move(
                    start=8.0,
                    end=8.0 + length,
                    place=(metres + 0.01 * math.sqrt(2), 0.0) if more == 1.0 else (metres, 0.0),
                    facing=math.radians(turn),
                ),
            ),
        )
        speed, rate = peaks(walker, walker.floor.moves[0], count)
        fits.append(more * speed <= limits.speed and more * rate <= limits.turn_rate)
    assert fits == [False, True]


def test_nobody_moves_in_no_beats() -> None:
    still = group_walk(spots_of([(0, 1)]), spots_of([(0, 1)]))
    assert beats_to_walk(still, TempoMap.steady(120.0, beats=16), 0.0) == 0
    assert still.nearest == math.inf


def test_partners_mirror_each_other() -> None:
    spots = spots_of([(-3.0, 2.0), (-1.0, 4.0), (0.0, 1.0), (1.1, 4.0), (3.0, 2.1)])
    assert mirrored_partners(spots) == ((("Ash", "Ed"), ("Bo", "Di")), ("Cy",))
    # more on one side than on the other: one stays alone
    uneven = spots_of([(-3.0, 2.0), (-1.0, 4.0), (3.0, 2.0)])
    assert mirrored_partners(uneven) == ((("Ash", "Cy"),), ("Bo",))
    assert mirrored_partners(spots_of([(1.0, 2.0)])) == ((), ("Ash",))


def test_every_spot_lies_on_a_round_stage() -> None:
    floor = standing_room(
        Venue(stage=round_stage(14.0)),
        reach=1.2,
        girth=0.0,
        audience=0.0,
        required=Requirements(),
    )
    found = fitting_formations(NAMES[:5], [1.2] * 5, required=0.3, room=floor)
    assert {"circle", "wedge"} <= {one.name for one in found}
    middle = 0.5 * (floor.bounds[1] + floor.bounds[3])
    for one in found:
        for x, y, _ in one.spots.values():
            assert math.hypot(x, y - middle) <= 7.0 - 0.3 + 1e-6
