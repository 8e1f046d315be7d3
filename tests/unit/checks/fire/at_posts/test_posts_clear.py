"""Posts in exits, on the lane, in scenery, in the crowd, away from their duty: each once, and a near miss."""

import json
import re

import pytest

from sequencer.checks.fire.at_posts.posts_clear import NO_WIDTH, posts
from tests.sites import SITE, site


def at(name, x, y):
    """Somebody's post, moved."""
    old = re.search(rf"name: {name}, post: (\[.*?\])", SITE)[0]
    return (old, f"name: {name}, post: [{x}, {y}]")


WAY = ("at: [16, -12], width: 3 m", "at: [16, -12], width: 3 m, way: [[14, -5]]")


@pytest.mark.parametrize(
    ("pairs", "found"),
    [
        ((), []),
        ([at("Rowan", 16, -11)], [("post-in-exit", "stop")]),
        ([at("Rowan", 16, -6)], []),
        # the exit is 2 m wide: 1 m to its side, 0.5 m for a person
        ([at("Hazel", -15.5, -10.6)], [("post-in-exit", "stop")]),
        ([at("Hazel", -14, -8.4)], []),
        # the way as entered, 3 m wide, leads through [14, -5]; as reckoned it only may
        ([WAY, at("Sorrel", 15.9, -5)], [("post-in-exit", "stop")]),
        ([WAY, at("Sorrel", 16.2, -4.6)], []),
        ([at("Linden", 14, -10.5)], [("post-in-exit", "warn")]),
        # the lane is 4 m wide, along Y = 4 from X = 12 on
        ([at("Linden", 16, 5.9)], [("post-in-lane", "stop")]),
        ([at("Linden", 16, 6.1)], []),
        ([at("Rowan", -13, 6)], [("post-in-scenery", "stop")]),
        ([at("Rowan", -11.9, 6)], []),
        # a guard stands at the edge, at most 1 m in the crowd and 5 m off it
        ([at("Hazel", 0, -10.1)], [("post-in-crowd", "stop")]),
        ([at("Hazel", 0, -9.9)], []),
        ([at("Hazel", 0, -3.9)], [("guard-away", "warn")]),
        ([at("Hazel", 0, -4.1)], []),
        ([at("Sorrel", 0, -9.2)], [("post-in-crowd", "stop")]),
        ([at("Sorrel", 0, -8.8)], []),
        ([at("Linden", 0, -15)], [("post-in-crowd", "warn")]),
        ([at("Linden", 40, -9.2)], []),  # beside the line, not behind it
        # the keeper stays within 3 m of the fuel at [11, 12]
        ([at("Tarn", 14.1, 12)], [("keeper-away", "stop")]),
        ([at("Tarn", 13.9, 12)], []),
        # 29 m off, as once passed by head-count alone
        ([at("Tarn", -16, 22)], [("keeper-away", "stop")]),
        # from the fuel, the nearest: hypot(11, 49) = 50.2 m, hypot(11, 48.7) = 49.9 m
        ([at("Linden", 0, 61)], [("post-far-off", "stop")]),
        ([at("Linden", 0, 60.7)], []),
    ],
)  # fmt: skip
def test_each_post_is_where_its_duty_is_and_in_nobodys_way(pairs, found):
    assert [(each.code, each.severity) for each in posts(site(*pairs)).findings] == found


@pytest.mark.parametrize(
    "moved",
    [at("Rowan", 16, -11), at("Hazel", -16, -10.6), at("Linden", 16, 4), at("Rowan", -13, 6), at("Hazel", 0, -12),
     at("Tarn", -16, 22), at("Linden", 0, 90), at("Sorrel", 3, -20)],
)  # fmt: skip
def test_where_it_is_told_to_go_nothing_is_wrong_and_it_is_out_of_every_reach(moved):
    found = posts(site(moved)).findings
    where = json.loads(re.search(r" to (\[.*\])$", found[0].remedies[0])[1])
    name = found[0].who[0]
    show = site(at(name, *where))

    assert posts(show).findings == ()
    for dancer in show.dancers:
        x, y = dancer.floor.place
        assert ((x - where[0]) ** 2 + (y - where[1]) ** 2) ** 0.5 > dancer.reach + 0.3 - 1e-9


def test_a_lane_of_unknown_width_is_taken_as_wide_as_is_said():
    """3.7 m: 1.85 m on each side."""
    bare = (", width: 4 m}", "}")

    assert posts(site()).not_checked == ()
    assert posts(site(bare)).not_checked == (NO_WIDTH,)
    assert posts(site(bare, at("Linden", 16, 5.8))).findings
    assert not posts(site(bare, at("Linden", 16, 5.9))).findings
