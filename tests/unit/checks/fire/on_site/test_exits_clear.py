"""Exits in the fire, behind it, blocked and unknown: each broken once, and the same a little farther off."""

import json
import re
from math import hypot

import pytest

from sequencer.checks.fire.on_site.audience_room import audience_room
from sequencer.checks.fire.on_site.exits_clear import exits
from sequencer.safety.site_ground.ways_out import audience_gap, ways_out
from tests.sites import SITE, site

BOTH = SITE[SITE.index("  exits:") : SITE.index("  audience_size")]
GAP = 7.62  # [m] 20 ft and 5 ft more for several [A5]; as the audience


FAR = ("fuel_station: [11, 12]", "fuel_station: [-20, 14]")  # the fuel out of the way


def alone(**keys):
    """One exit called gate, in place of the two."""
    return (BOTH, f"  exits: [{json.dumps({'name': 'gate', 'width': 2, **keys})}]\n")


def told(*pairs):
    return [(each.code, each.severity) for each in exits(site(*pairs)).findings]


def test_the_distance_is_the_audience_s():
    one = ("who: all, from", "who: Wren, from")

    assert audience_gap(site()) == pytest.approx(GAP)
    assert audience_gap(site(one)) == pytest.approx(6.096)
    assert audience_gap(site(("crew:", "rules: {audience: 9 m}\ncrew:"))) == 9.0
    assert audience_gap(site(("crew:", "rules: {audience: 3 m}\ncrew:"))) == pytest.approx(GAP)


# Moss at [2, 4] reaches R; the exit, 2 m wide, is at its nearer side 1 m nearer: R + 7.62 + 1 from him.
@pytest.mark.parametrize(("short", "found"), [(0.02, True), (-0.02, False)])
def test_an_exit_is_as_far_from_every_flame_as_the_audience(short, found):
    moss = site().dancers[1]
    x = round(2 + moss.reach + GAP + 1 - short, 3)
    codes = told(alone(at=[x, 4], way=[[13, -8]]))

    assert ("exit-near-fire", "stop") in codes if found else codes == []


@pytest.mark.parametrize(
    ("pairs", "code"),
    [
        ((), None),
        ([alone(at=[0, 16]), FAR], "exit-behind-fire"),  # straight through the act
        ([alone(at=[0, 16], way=[[13, -2], [13, 12]]), FAR], None),  # led round
        ([alone(at=[0, 16], way=[[9, -2], [9, 12]]), FAR], "exit-behind-fire"),  # not far enough round
        ([alone(at=[-13, 6])], "exit-blocked"),  # inside the hut
        ([alone(at=[-13, 12], way=[[-13, -8]])], "exit-blocked"),  # the way leads through it
        ([alone(at=[-13, 12])], None),  # it is walked round
        ([alone(at=[14, -7]), ("fuel_station: [11, 12]", "fuel_station: [14, -2]")], "exit-by-fuel"),
        ([alone(at=[14, -7]), ("fuel_station: [11, 12]", "fuel_station: [14, -0.8]")], None),
        ([alone(at=[16, -12], width=None)], "not-recorded"),
        ([(BOTH, "")], "not-recorded"),
        # the lane is 4 m wide about Y = 4, from X = 20 to X = 12; what only touches it is beside it
        ([("at: [5, 4]", "at: [13, 5.9]")], "lane-blocked"),
        ([("at: [5, 4]", "at: [13, 6]")], None),
        ([("[-14, 4], [-12, 4], [-12, 8], [-14, 8]", "[14, 5], [15, 5], [15, 8], [14, 8]")], "lane-blocked"),
        ([("[-14, 4], [-12, 4], [-12, 8], [-14, 8]", "[14, 6], [15, 6], [15, 8], [14, 8]")], None),
        ([("[[20, 4], [12, 4]]", "[[20, 4], [3, 4]]"), ("at: [5, 4]", "at: [5, 7]")], "lane-blocked"),  # into Moss's reach
    ],
)  # fmt: skip
def test_one_thing_wrong_with_an_exit_is_found(pairs, code):
    found = exits(site(*pairs)).findings

    assert [each.code for each in found] == ([code] if code else [])
    for each in found:
        assert each.source
        assert each.remedies
        assert each.severity == "stop"


def test_an_exit_in_a_closed_yard_has_no_way():
    walls = "".join(
        f"\n    - {{name: w{k}, height: 2 m, outline: {outline}}}"
        for k, outline in enumerate(
            (
                "[[14, 10], [20, 10], [20, 11], [14, 11]]", "[[14, 15], [20, 15], [20, 16], [14, 16]]",
                "[[14, 10], [15, 10], [15, 16], [14, 16]]", "[[19, 10], [20, 10], [20, 16], [19, 16]]",
            )
        )
    )  # fmt: skip
    yard = ("  scenery:", "  scenery:" + walls)

    (found,) = exits(site(yard, alone(at=[17, 13]), FAR)).findings
    assert (found.code, "no way on foot" in found.message) == ("exit-blocked", True)


def test_what_is_led_round_as_told_is_right():
    (found,) = exits(site(alone(at=[0, 16]), FAR)).findings
    way = json.loads(re.search(r"way: (\[.*\])$", found.remedies[0])[1])

    assert found.message.startswith("the way to gate, as the shortest, comes within")
    assert told(alone(at=[0, 16], way=way), FAR) == []


def test_an_audience_from_which_the_fire_bars_every_exit_is_found():
    """A second line behind the stage, walled in at its back and sides: its only way out leads past the fire."""
    back = "    - {name: front, line: [[-12, -9], [12, -9]]}\n    - {name: back, line: [[-6, 18], [6, 18]]}\n"
    walls = (
        "\n    - {name: left, height: 2 m, outline: [[-8, 7], [-7, 7], [-7, 30], [-8, 30]]}"
        "\n    - {name: right, height: 2 m, outline: [[7, 7], [8, 7], [8, 30], [7, 30]]}"
        "\n    - {name: end, height: 2 m, outline: [[-8, 29], [8, 29], [8, 30], [-8, 30]]}"
    )
    second = ("    - {name: front, line: [[-12, -9], [12, -9]]}\n", back)
    shut = ("  scenery:", "  scenery:" + walls)
    open_end = ("  scenery:", "  scenery:" + walls[: walls.rindex("\n")])

    found = exits(site(second, shut)).findings
    assert [(each.code, each.where) for each in found] == [
        ("audience-cut-off", (-6.0, 18.0)), ("audience-cut-off", (6.0, 18.0))
    ]  # fmt: skip
    assert told(second, open_end) == []
    assert told(second) == []


def test_an_exit_that_does_not_count_lets_nobody_out():
    """The road, 3 m, alone: 78 a metre and minute [K7], 1170 in 5 min."""
    people = ("audience_size: 100", "audience_size: 1171")
    behind = ("at: [-16, -12], width: 2 m", "at: [0, 16], width: 9 m")

    assert [each.severity for each in audience_room(site(people)).findings] == ["warn"]
    (found,) = audience_room(site(people, behind)).findings
    assert found.severity == "stop"
    assert "only 1170 can leave" in found.message
    assert "not counted: lane" in found.message


def test_an_audience_that_is_too_near_does_not_take_every_exit_away():
    """Its own check finds it; the way from there leads away from the fire, or nearer to it."""
    near = ("[[-12, -9], [12, -9]]", "[[-6, -2], [6, -2]]")
    way = ("at: [16, -12], width: 3 m", "at: [16, -12], width: 3 m, way: [[6, -1]]")

    assert told(near) == []
    assert told(near, way) == [("exit-behind-fire", "stop")]


def test_somebody_posted_in_an_exit_or_its_entered_way_takes_it_away():
    def counted(*pairs):
        return [each.counted for each in ways_out(site(*pairs))]

    assert counted() == [True, True]
    assert counted(("post: [0, -5]", "post: [16, -10.5]")) == [True, False]
    assert counted(("post: [0, -5]", "post: [16, -9.9]")) == [
        True,
        True,
    ]  # 1.5 m and a person's 0.5 m
    entered = ("at: [16, -12], width: 3 m", "at: [16, -12], width: 3 m, way: [[14, -5]]")
    assert counted(entered, ("post: [0, -5]", "post: [14, -5]")) == [True, False]
    assert counted(("post: [0, -5]", "post: [13.9, -10.5]")) == [True, True]  # only reckoned


def test_the_way_is_the_shortest_from_the_audience_on():
    """From the line's end at [12, -9] to [16, -12]: 5 m."""
    road = ways_out(site())[1]

    assert road.way == ((12.0, -9.0), (16.0, -12.0))
    assert hypot(4, 3) == 5
