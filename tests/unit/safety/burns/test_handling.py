"""Who is lit and put out when, worked out by hand; a second of walk for each metre here."""

from math import dist, inf
from types import SimpleNamespace

import pytest

from sequencer.geometry.walking import WalkableFloor
from sequencer.safety.burns.handling import (
    USUAL_TIMES,
    HandlingTurn,
    handling_times,
    lighting_turns,
    putting_out_turns,
    seconds_words,
    waiting_order,
    walk_seconds,
)
from sequencer.show.model import Handling


def turn(moment, spare=0.0, by="Sorrel", x=0.0):
    return HandlingTurn(by=by, moment=moment, spare=spare, place=(x, 0.0))


@pytest.mark.parametrize(
    ("turns", "expected"),
    [
        ([turn(10.0)], [(5.0, 10.0)]),
        # the most to spare first, then 3 m to walk; equals in the order of the cast
        ([turn(10.0, 1.0), turn(10.0, 9.0, x=3.0)], [(5.0, 10.0), (-3.0, 2.0)]),
        ([turn(10.0), turn(10.0)], [(0.0, 5.0), (5.0, 10.0)]),
        # two people side by side; nobody named is one person; a name in other letters is the same one
        ([turn(10.0), turn(10.0, by="Moth")], [(5.0, 10.0), (5.0, 10.0)]),
        ([turn(10.0, by=None), turn(10.0, by=None)], [(0.0, 5.0), (5.0, 10.0)]),
        ([turn(10.0), turn(10.0, by="SORREL")], [(0.0, 5.0), (5.0, 10.0)]),
        # an earlier start: over as it has to be, or sooner where the way to the next leaves less
        ([turn(10.0), turn(30.0)], [(5.0, 10.0), (25.0, 30.0)]),
        ([turn(10.0), turn(17.0, x=3.0)], [(4.0, 9.0), (12.0, 17.0)]),
    ],
)  # fmt: skip
def test_lighting_is_over_in_time_for_everybody(turns, expected):
    found = lighting_turns(dict(enumerate(turns)), each=5.0, walk=dist)
    assert [found[k] for k in range(len(turns))] == expected


@pytest.mark.parametrize(
    ("turns", "expected"),
    [
        ([turn(10.0)], [(10.0, 15.0)]),
        ([turn(10.0, 9.0), turn(10.0, 1.0, x=3.0)], [(18.0, 23.0), (10.0, 15.0)]),
        ([turn(10.0), turn(10.0)], [(10.0, 15.0), (15.0, 20.0)]),
        ([turn(10.0), turn(10.0, by="Moth")], [(10.0, 15.0), (10.0, 15.0)]),
        ([turn(10.0), turn(15.0)], [(10.0, 15.0), (15.0, 20.0)]),
        # at 15 s two are waiting: the one with less to spare, though the other has waited longer
        ([turn(10.0), turn(11.0, 9.0), turn(14.0, 1.0)], [(10.0, 15.0), (20.0, 25.0), (15.0, 20.0)]),
        ([turn(10.0), turn(11.0, 9.0), turn(15.5, 1.0)], [(10.0, 15.0), (15.0, 20.0), (20.0, 25.0)]),
    ],
)  # fmt: skip
def test_whoever_has_least_to_spare_is_put_out_first(turns, expected):
    found = putting_out_turns(dict(enumerate(turns)), each=5.0, walk=dist)
    assert [found[k] for k in range(len(turns))] == expected


def test_times_that_are_not_entered_are_usual_ones_and_marked():
    """The design's choices: 10 s, 10 s, 10 min, 20 s."""
    assert dict(USUAL_TIMES) == {"light": 10.0, "put_out": 10.0, "cool": 600.0, "swap": 20.0}
    times = handling_times(SimpleNamespace(handling=Handling(light=4, cool=90)))
    assert (times.light, times.put_out, times.cool, times.swap) == (4.0, 10.0, 90.0, 20.0)
    assert times.words("light") == times.words("cool") == ""
    assert times.words("put_out") == " (assumed, not measured)"
    assert times.words("light", "swap") == " (assumed, not measured)"
    assert handling_times(None).assumed == set(USUAL_TIMES)


def test_a_walk_is_slow_and_goes_round_what_stands_in_the_way():
    """3.5 ft/s (MUTCD history paper): 1.0668 m/s. Round a wall 1 m thick, 3 m to the left: 5 + 1 + 5 m."""
    assert walk_seconds(WalkableFloor())((0.0, 0.0), (0.0, 8.0)) == pytest.approx(8.0 / 1.0668)
    assert walk_seconds(WalkableFloor())((0.0, 0.0), (0.0, 0.005)) == 0.0
    wall = ((-3.0, 4.0), (9.0, 4.0), (9.0, 5.0), (-3.0, 5.0))
    assert walk_seconds(WalkableFloor((wall,)))((0.0, 0.0), (0.0, 9.0)) == pytest.approx(
        11.0 / 1.0668
    )
    pen = ((-9.0, 4.0), (9.0, 4.0), (9.0, 12.0), (-9.0, 12.0))
    inside = walk_seconds(WalkableFloor((pen,)), no_way=inf)
    assert inside((0.0, 0.0), (0.0, 8.0)) == inf
    assert walk_seconds(WalkableFloor((pen,)))((0.0, 0.0), (0.0, 8.0)) == 0.0


@pytest.mark.parametrize(
    ("waiting", "flexible", "words"),
    [
        ("on the ground", True, "Lay the heads on bare ground, tethers to your side, until 3.1"),
        ("on the ground", False, "Lay the props on bare ground, flames away from you, until 3.1"),
        (
            "swinging",
            True,
            "Lay the heads on bare ground while they are lit, tethers to your side; then keep them swinging (a pendulum), clear of your legs, until 3.1",
        ),
        (None, True, "Hold the props still, flames clear of your hands and legs, until 3.1"),
        ("hanging", True, "Hold the props still, flames clear of your hands and legs, until 3.1"),
    ],
)
def test_an_order_says_how_lit_props_wait(waiting, flexible, words):
    assert waiting_order(waiting, flexible=flexible, until="until 3.1") == words


def test_a_length_is_rounded_up():
    assert [seconds_words(s) for s in (8.0, 8.01, 119.0, 120.0, 600.0, 208.4)] == [
        "8 s", "9 s", "119 s", "2 min", "10 min", "3 min 29 s",
    ]  # fmt: skip


@pytest.mark.parametrize("key", ["light", "put_out", "cool", "swap"])
def test_nothing_is_handled_in_no_time(key):
    """A wick that is put out is hot, and a torch has to be held to it: 0 s is a slip of the pen."""
    assert Handling(**{key: 0.1})
    with pytest.raises(ValueError, match="greater than 0"):
        Handling(**{key: 0})
