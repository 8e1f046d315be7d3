"""Build steps in words: the clock, counts that can be said, what comes next, and rounds that are folded."""

from math import cos, radians, sin

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.build_steps import build_steps
from sequencer.motion.patterns.library import law_for
from sequencer.outputs.words.station_words import (
    clock_view,
    clock_words,
    clocks_words,
    folded_steps,
    hand_words,
    spoken_count,
    started_at,
    step_words,
)

HOURS = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
]
TOROIDS = ("iso-bend-3", "pro-bend-3", "pro-bend-4", "pro-bend-5", "anti-bend-3", "anti-bend-5")


@pytest.mark.parametrize(
    ("angle", "words"),
    [
        (90, "12 o’clock"), (0, "3 o’clock"), (-90, "6 o’clock"), (180, "9 o’clock"),
        (-45, "half past four"), (105, "half past eleven"), (75, "half past twelve"), (45, "half past one"),
        (-37.5, "quarter past four"), (-52.5, "quarter to five"), (97.5, "quarter to twelve"),
        (82.5, "quarter past twelve"), (67.5, "quarter to one"), (-63.7, "5 o’clock"), (-56.3, "5 o’clock"),
        (-56.2, "quarter to five"), (810, "12 o’clock"),
    ],
)  # fmt: skip
def test_places_by_the_clock(angle, words):
    """By hand: an hour is 30 degrees, 12 is up, and the hours go clockwise."""
    assert clock_words(angle) == words


def test_places_in_a_row_by_the_clock():
    assert clocks_words(["6 o’clock", "4 o’clock", "2 o’clock"]) == "6, 4, 2 o’clock"
    halves = ["6 o’clock", "half past four", "3 o’clock"]
    assert clocks_words(halves) == "6 o’clock, half past four, 3 o’clock"
    assert hand_words("half past four") == "hand at half past four"
    assert hand_words("the middle") == "hand in the middle"


@pytest.mark.parametrize(
    ("beat", "said"), [(0, "1"), (0.5, "1 and"), (3, "4"), (2.5, "3 and"), (1 / 3, "1.33")]
)
def test_counts_as_they_are_said(beat, said):
    """The first count of a move is 1."""
    assert spoken_count(beat) == said


def test_an_odd_pro_bend_goes_backward_forward_backward_at_six_o_clock():
    """The point of an odd toroid; docs/motion.md, section 3.4: after one cycle the sense is reversed."""
    stations = build_steps("pro-bend-3", {})
    words = step_words(stations)
    at_six = [(said.hand, said.way, said.plane) for said in (words[0], words[6], words[12])]
    assert at_six == [
        ("6 o’clock", "backward", "wheel plane"),
        ("6 o’clock", "forward", "wheel plane"),
        ("6 o’clock", "backward", "wheel plane"),
    ]
    assert (
        words[5].then
        == "hand to 6 o’clock; poi swings down and under into the wheel plane, forward"
    )
    assert words[-1].then == ""
    assert clock_view(stations) == "as you see it"


def test_the_clock_is_where_the_hand_is():
    """The hand of each station, put back from its words, is no more than half a quarter of an hour off."""
    parts = {"past": 0.25, "to": -0.25}
    for name in TOROIDS:
        stations = build_steps(name, {})
        hands = np.array([station.hand for station in stations])
        middle = hands[:-1].mean(axis=0)
        for station, said in zip(stations, step_words(stations), strict=True):
            named, *rest = reversed(said.hand.replace(" o’clock", "").split())
            hour = int(named) if named.isdigit() else 1 + HOURS.index(named)
            hour += parts[rest[0]] * (1 + ("half" in rest)) if rest else 0
            angle = radians(90 - 30 * hour)
            away = station.hand - middle
            away = away / np.linalg.norm(away)
            assert away @ [cos(angle), 0, sin(angle)] > cos(radians(3.8)), (name, said.hand)


@pytest.mark.parametrize("name", TOROIDS)
def test_what_is_folded_away_is_as_in_the_first_round(name):
    stations = build_steps(name, {})
    steps = folded_steps(stations)
    rounds = stations[-2].cycle
    once = (len(stations) - 1) // rounds
    assert [step.first.number for step in steps] == list(range(1, once + 1))
    for step in steps:
        if rounds == 1:
            assert step.again is None
            continue
        second = stations[step.first.number - 1 + once]
        same = np.allclose(second.tether, step.first.tether) and np.allclose(
            second.plane, step.first.plane
        )
        assert (step.again is None) == same
        if step.again is not None:
            assert step.again is second
    if rounds == 2:
        # ins come the other way round, outs as before: the plane of an out is the wall plane both times
        assert {step.first.half for step in steps if step.again is not None} == {"in"}


@pytest.mark.parametrize("shift", [0.0, 0.25, 1.0, 1.5, 2.75, 5.0, 7.5])
def test_steps_that_begin_later_are_where_the_law_then_is(shift):
    """Each station against the law itself at its count after the shift."""
    whole = build_steps("pro-bend-3", {}, cycle=3.0)
    law = law_for("pro-bend-3", {}, side="right", body=Body(stature=1.70), beats=3.0)
    steps = started_at(whole, shift)
    assert [step.number for step in steps] == list(range(1, len(whole) + 1))
    beats = np.array([step.beat for step in steps])
    assert 0 <= beats[0] < 0.5
    assert np.allclose(np.diff(beats), 0.5)
    motion = law.at(beats + shift)
    assert np.allclose([step.hand for step in steps], motion.hand, atol=1e-9)
    assert np.allclose([step.plane for step in steps], motion.plane, atol=1e-9)
    assert [step.cycle for step in steps[:-1]] == [1] * 6 + [2] * 6
