"""Ways out on the plan: where they begin, how near a flame comes to them, and who stands in them."""

import numpy as np
import pytest
from shapely import LineString, Point

from sequencer.safety.site_ground.ways_out import (
    fires_of,
    in_the_way,
    too_near,
    way_round_fire,
    ways_out,
)
from tests.sites import site

WALK = (
    ("spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}",
     ("spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}\n"
     "  wide: {spots: {Wren: {at: [-5, 7]}, Moss: {at: [5, 2]}}}")),
    ("  - {formation: pair, from: 1.1}\n",
     ("  - {formation: pair, from: 1.1}\n"
     "  - {formation: wide, from: 21.1, beats: 4, path: curved, via: {Wren: [[-6, 3]]}}\n")),
)  # fmt: skip


def test_no_flame_is_nearer_than_is_said_at_any_moment():
    """Against 20,000 moments of a curved walk at a run, with points on it between all samples."""
    fire = next(each for each in fires_of(site(*WALK)) if each.burn.who == "Wren")
    beats = np.linspace(80.0, 84.0, 20_001)
    walked = fire.burn.floor.at(beats).place

    for shape in (
        *(Point(walked[k]) for k in range(100, 20_000, 977)),
        Point(9, -3),
        LineString([(-9, 0), (9, 9)]),
    ):
        true = min(shape.distance(Point(place)) for place in walked[::20]) - fire.reach
        assert fire.gap(shape) <= true + 1e-9
        assert fire.gap(shape) >= true - 2 * fire.slack - 0.05
    assert 0.0 < fire.slack < 1.0


def test_who_comes_nearest_and_when_only_on_the_way():
    """Wren runs past [-6, 3] between beats 80 and 84, and stays 2 m and more away from it before and after."""
    show = site(*WALK)
    reach = show.dancers[0].reach
    near = too_near(Point(-6, 3), fires_of(show), 0.5)

    assert near is not None
    assert near[0] == "Wren"
    assert near[1] == pytest.approx(-reach, abs=0.02)
    assert 80.0 < near[2][0][0] < near[2][-1][1] < 84.0 or near[2][-1][1] > 84.0
    assert too_near(Point(40, 3), fires_of(show), 0.5) is None


def test_a_way_begins_at_the_nearest_point_of_the_audience_round_scenery():
    """A fence from [11, -12] to [19, -11] stands between the line's end and the road: round its left, or its right."""
    fence = (
        "  scenery:\n",
        "  scenery:\n    - {name: fence, height: 1 m, outline: [[11, -11], [19, -11], [19, -10], [11, -10]]}\n",
    )
    road = ways_out(site(fence))[1]

    assert road.way == ((11.0, -9.0), (11.0, -11.0), (16.0, -12.0))
    assert road.counted


def test_an_entered_way_begins_at_the_audience_s_point_nearest_to_it():
    entered = (
        "at: [16, -12], width: 3 m",
        "at: [16, -12], width: 3 m, way: [[4.25, -10], [16, -10]]",
    )
    road = ways_out(site(entered))[1]

    assert road.way == ((4.25, -9.0), (4.25, -10.0), (16.0, -10.0), (16.0, -12.0))
    assert in_the_way((10.0, -11.9), road)  # 1.5 m and a person's 0.5 m beside the leg
    assert not in_the_way((10.0, -12.1), road)
    assert not in_the_way((10.0, -11.9), road, way=False)


def test_a_way_round_the_fire_is_clear_of_it_and_of_scenery():
    show = site(("at: [-16, -12], width: 2 m", "at: [0, 20], width: 2 m"))
    way = way_round_fire(show, (0.0, -9.0), (0.0, 20.0))

    assert way is not None
    assert not too_near(LineString(way), fires_of(show), 7.62)
    assert all(round(value, 1) == value for point in way[1:-1] for value in point)
    shut = site(
        ("  scenery:\n", "  scenery:\n    - {name: wall, height: 2 m, outline: [[-90, 9], [90, 9], [90, 10], [-90, 10]]}\n"),
    )  # fmt: skip
    assert (-90.0, 9.0) in way_round_fire(shut, (0.0, -9.0), (0.0, 20.0))
