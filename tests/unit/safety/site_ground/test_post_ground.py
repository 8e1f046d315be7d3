"""Posts that are proposed: never amid the fire, in an exit, on the lane, by the fuel or in the crowd."""

from dataclasses import replace
from math import dist

import pytest
from shapely import LineString, Point, unary_union

from sequencer.motion.performers.walks import WalkPath
from sequencer.safety.duties.watching import Duty
from sequencer.safety.safety_plan import safety_plan
from sequencer.safety.site_ground import post_ground
from sequencer.safety.site_ground.post_ground import OUTSIDE_ACT, post_faults, proposed_posts
from tests.sites import site

# Four round an empty middle: the place nearest to all of them is amid the fire, outside every reach.
RING = (
    ("cast:\n", ("cast:\n  - {name: Ash, stature: 1.7 m, prop: {tether: 55 cm}}\n"
     "  - {name: Cleo, stature: 1.7 m, prop: {tether: 55 cm}}\n")),
    ("Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}",
     "Wren: {at: [-4, 4]}, Moss: {at: [4, 4]}, Ash: {at: [0, 0]}, Cleo: {at: [0, 8]}"),
)  # fmt: skip
WALK = (
    ("spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}",
     ("spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}\n"
     "  wide: {spots: {Wren: {at: [-5, 7]}, Moss: {at: [5, 2]}}}")),
    ("  - {formation: pair, from: 1.1}\n",
     "  - {formation: pair, from: 1.1}\n  - {formation: wide, from: 21.1, beats: 16}\n"),
)  # fmt: skip
NEAR = (
    ("at: [16, -12], width: 3 m", "at: [9, -3], width: 3 m"),
    ("[[20, 4], [12, 4]]", "[[20, 4], [4.5, 4]]"),
)


@pytest.mark.parametrize("pairs", [(), RING, WALK, NEAR])
@pytest.mark.parametrize("number", [1, 2, 3])
def test_a_proposed_post_is_outside_reach_fire_exits_lane_fuel_and_crowd(pairs, number):
    show = site(*pairs)
    posting = proposed_posts(show, safety_plan(show), number=number)
    beats = [0.0, 20 * 4.0, 21 * 4.0, 24 * 4.0, 40 * 4.0]
    act = unary_union(
        [
            Point(dancer.floor.place_at(beat)).buffer(dancer.reach)
            for dancer in show.dancers for beat in beats
        ]
    ).convex_hull  # fmt: skip

    assert len(posting.places) == number
    for place in posting.places:
        assert str(place).count("-0.0,") == str(place).count("-0.0)") == 0
        spotter = Duty(who="new", place=place, duty="spotter")
        assert post_faults(show, spotter, place) == ()
        assert act.distance(Point(place)) >= 0.9 * OUTSIDE_ACT
        assert dist(place, (11, 12)) >= 3.0
        assert place[1] > -9
        assert LineString([(20, 4), (12, 4)]).distance(Point(place)) >= 2.0
        for dancer in show.dancers:
            near = min(dist(dancer.floor.place_at(beat), place) for beat in beats)
            assert near >= dancer.reach + 0.3


@pytest.mark.parametrize(
    "taken",
    [
        lambda at: ("at: [16, -12], width: 3 m", f"at: {at}, width: 1 m"),
        lambda at: ("at: [16, -12], width: 3 m", f"at: [16, -12], width: 1 m, way: [{at}]"),
        lambda at: ("[[20, 4], [12, 4]]", f"[[20, 4], {at}]"),
        lambda at: ("fuel_station: [11, 12]", f"fuel_station: {at}"),
    ],
)
def test_where_the_best_post_would_be_in_an_exit_a_way_the_lane_or_by_the_fuel_it_is_elsewhere(
    taken,
):
    show = site()
    best = proposed_posts(show, safety_plan(show), number=1).places[0]
    other = site(taken(list(best)))
    found = proposed_posts(other, safety_plan(other), number=1).places[0]

    assert dist(found, best) > 0.4
    assert post_faults(other, Duty(who="new", place=found, duty="spotter"), found) == ()
    assert dist(found, other.show.venue.fuel_station) >= 3.0


FIELD = (
    ("Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}", "Wren: {at: [-7, 4]}, Moss: {at: [7, 4]}"),
    ("width: 10 m", "width: 24 m"),
)


@pytest.mark.parametrize(
    ("within", "count"), [(None, 1), (7.6, 1), (7.4, 2), (3.2, 2), (1.5, None)]
)
def test_as_many_are_proposed_as_keep_the_walk(within, count):
    """14 m apart: one post, off the line between the reaches, is 7.5 m from both; two are near one each, and none is nearer than a reach."""
    show = site(*FIELD)
    posting = proposed_posts(show, safety_plan(show), number=1, within=within)

    assert (None if posting is None else len(posting.places)) == count
    assert posting is None or within is None or posting.way <= within


def test_where_no_number_can_keep_the_walk_none_is_sought(monkeypatch):
    """Eight lit performers 20 m apart, and at most four posts, none of them within 7 m of two."""
    sought = []
    search = post_ground.propose_posts
    monkeypatch.setattr(
        post_ground, "propose_posts", lambda *a, **k: sought.append(a[0]) or search(*a, **k)
    )
    show = site()
    plan = safety_plan(show)
    far = [
        replace(plan.followed[0], floor=WalkPath((20.0 * k, 4.0)))
        for k in range(8)
    ]  # fmt: skip

    assert proposed_posts(show, replace(plan, followed=tuple(far)), number=1, within=7.0) is None
    assert sought == []
    proposed_posts(show, replace(plan, followed=tuple(far[:4])), number=1, within=7.0)
    assert sought


def test_where_somebody_is_too_deep_in_the_act_none_is_sought(monkeypatch):
    """Five in a cross of 40 m: the middle is more than 14 m from all ground outside the act."""
    sought = []
    monkeypatch.setattr(post_ground, "propose_posts", lambda *a, **_: sought.append(a[0]))
    show = site(
        ("cast:\n", ("cast:\n  - {name: Ash, stature: 1.7 m, prop: {tether: 55 cm}}\n"
         "  - {name: Cleo, stature: 1.7 m, prop: {tether: 55 cm}}\n  - {name: Dara, stature: 1.7 m, prop: {tether: 55 cm}}\n")),
        ("Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}",
         "Wren: {at: [-20, 4]}, Moss: {at: [20, 4]}, Ash: {at: [0, -16]}, Cleo: {at: [0, 24]}, Dara: {at: [0, 4]}"),
        ("width: 10 m", "width: 60 m"),
    )  # fmt: skip
    plan = safety_plan(show)

    assert proposed_posts(show, plan, number=9, within=7.5) is None
    assert sought == []
    proposed_posts(show, plan, number=9, within=20.0)
    assert sought == [9]


def test_where_nobody_is_lit_none_is_proposed():
    dark = site(("  lit:\n    - {who: all, from: 1.1, until: 81.1}\n", ""))

    assert proposed_posts(dark, safety_plan(dark)) is None
