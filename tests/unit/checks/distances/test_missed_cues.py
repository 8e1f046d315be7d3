"""What a missed cue does, against walks whose nearest distance is known."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.checks.distances.conflict_groups import Dances
from sequencer.checks.distances.drift_runs import Work
from sequencer.checks.distances.missed_cues import missed_cues
from sequencer.checks.distances.rehearse_first import (
    Advice,
    advice,
    gains,
    goes_wrong,
    worth_telling,
)
from sequencer.motion.performers.drifting import Spread
from sequencer.motion.performers.walks import Move
from sequencer.timing.tempo import TempoMap

TEMPO = TempoMap.steady(120, beats=64)


def slips(cast, end=32.0, required=0.3):
    work = Work(dancers=tuple(cast), span=(0.0, end), required=required, spread=Spread(), seed=0)
    return missed_cues(work, TEMPO)


def changing_places(dance):
    """Bodies only. Ada leaves her place from beat 8 to 12; Bo comes to it from 12 to 16."""
    ada = dance.dancer(
        "Ada", (0, 5), sides=(), moves=[Move(start=8, end=12, place=(0, 1), facing=0)]
    )
    bo = dance.dancer(
        "Bo", (6, 5), sides=(), moves=[Move(start=12, end=16, place=(0, 5), facing=0)]
    )
    return ada, bo


def test_who_does_not_leave_in_time_is_met(dance):
    """A beat late Ada is gone when Bo comes; an eight late she stands where Bo arrives: −2·half breadth."""
    cast = changing_places(dance)
    found = slips(cast)
    told = {(each.who, each.cue, each.kind): each for each in found}

    assert len(found) == len(told) == 2 * 3  # two cues, three ways: bodies have no hands to mix up
    assert {each.kind for each in found} == {"a beat late", "a bar late", "an eight late"}
    late = told["Ada", 8.0, "an eight late"]
    assert late.meets == ("Bo",)
    assert late.worst == pytest.approx(-2 * cast[0].body.half_breadth, abs=0.01)
    assert late.parts == ("body", "body")
    assert late.apart == 0.0
    assert 15.5 < late.at <= 16.5
    assert told["Ada", 8.0, "a beat late"].meets == ()
    assert told["Ada", 8.0, "a beat late"].apart is None
    assert told["Bo", 12.0, "an eight late"].meets == ()  # who comes late meets nobody


def test_a_bar_late_is_as_near_as_both_walks_say(dance):
    """Ada from 12 to 16 from (0, 5) to (0, 1), Bo meanwhile from (6, 5) to (0, 5): both by one law s.

    Their distance is |(6 − 6s, 4s)|, least at s = 36/52: √(36 − 36²/52) = 3.328; four beats late they walk together."""
    cast = changing_places(dance)
    radius = 2 * cast[0].body.half_breadth
    nearest = np.sqrt(36 - 36**2 / 52) - radius
    (one,) = [
        each
        for each in slips(cast, required=nearest + 0.2)
        if (each.who, each.kind) == ("Ada", "a bar late")
    ]
    assert one.worst == pytest.approx(nearest, abs=0.006)
    assert not [
        each
        for each in slips(cast, required=nearest - 0.05)
        if (each.who, each.kind) == ("Ada", "a bar late") and each.meets
    ]


def test_a_bar_is_that_of_the_song(dance):
    work = Work(
        dancers=changing_places(dance), span=(0.0, 32.0), required=0.3, spread=Spread(), seed=0
    )
    three = missed_cues(work, TempoMap.steady(120, beats=64, metre=3))
    eight = missed_cues(work, TempoMap.steady(120, beats=64, metre=8))
    assert len(three) == 6
    assert {each.kind for each in eight} == {"a beat late", "an eight late"}


def test_what_is_too_close_as_planned_is_no_slips_fault(dance):
    """Bo comes to where Ada stands, in the plan itself."""
    ada = dance.dancer("Ada", (0, 5), sides=())
    bo = dance.dancer(
        "Bo", (6, 5), sides=(), moves=[Move(start=12, end=16, place=(0.2, 5), facing=0)]
    )
    assert [each.meets for each in slips((ada, bo))] == [()] * 3


def test_left_and_right_mixed_up(dance):
    """Ada's left hand swings out sideways, her right forward; Bo stands at her right, and would be in the left's way.

    What the slip does on her right is what the plan would do to a Bo on her left: the other side of X = 0."""
    cast = [
        dance.dancer("Ada", (0, 5), moves=[Move(start=4, end=5, place=(0, 5.1), facing=0)]),
        dance.dancer("Bo", (-1.6, 5), sides=()),
    ]
    wheel = {"ratio": 1.0, "hand_radius": 0.1, "plane": "wheel"}
    right = dance.trajectory_of("orbit", wheel, side="right", body=cast[0].body)
    cast[0] = replace(cast[0], trajectories={**cast[0].trajectories, "right": right})
    (one,) = [each for each in slips(cast, end=16.0) if each.kind.startswith("left")]
    beats = np.linspace(4.0, 16.0, 4001)
    beyond = dance.sampled_distance(cast[0], dance.dancer("Bo", (1.6, 5), sides=()), beats)

    assert one.meets == ("Bo",)
    assert one.worst == pytest.approx(np.min(beyond), abs=0.01)
    assert one.parts == ("right flame", "body")  # the right hand dances the left's swing


def test_two_processes_find_the_same(dance):
    work = Work(
        dancers=changing_places(dance), span=(0.0, 32.0), required=0.3, spread=Spread(), seed=0
    )
    assert missed_cues(work, TEMPO, jobs=2) == missed_cues(work, TEMPO)


def test_the_chance_of_anything_by_hand(dance):
    """20 % by small errors; Ada's slips do harm 1 time in 3, Bo's never; one in ten runs each: 1 − 0.8·(1 − 0.1/3)."""
    found = slips(changing_places(dance))
    assert [bool(each.meets) for each in found if each.who == "Ada"] == [False, False, True]
    assert goes_wrong(0.2, 0.1, found) == pytest.approx(1 - 0.8 * (1 - 0.1 / 3))
    assert goes_wrong(0.2, 0.0, found) == pytest.approx(0.2)
    assert goes_wrong(0.0, 1.0, ()) == 0.0


def test_the_chance_of_anything_against_a_simulation(dance):
    """Drawn: small errors, and for each performer whether and which cue they miss; within four standard errors."""
    found, draw, n = slips(changing_places(dance)), np.random.default_rng(3), 40_000
    wrong = draw.random(n) < 0.1
    for who in ("Ada", "Bo"):
        own = np.array([bool(each.meets) for each in found if each.who == who])
        wrong |= (draw.random(n) < 0.3) & own[draw.integers(len(own), size=n)]
    told = goes_wrong(0.1, 0.3, found)
    assert abs(wrong.mean() - told) < 4 * np.sqrt(told * (1 - told) / n)


def test_cues_that_must_be_known_are_advice(dance):
    """Ada misses one of three ways in one run of ten: her cue at 8 takes 0.1/3 of the clear runs."""
    dances = Dances(groups=(), runs=((),) * 10, half=((),), twice=((),))
    (one,) = advice(dances, 0.1, slips(changing_places(dance)))
    assert (one.beat, one.who, one.kind, one.mend) == (8.0, ("Ada",), "", False)
    assert one.fall == pytest.approx(0.1 / 3)
    assert [each.kind for each in one.slips] == ["an eight late"]


def test_what_gains_less_than_a_run_is_no_advice_but_a_cue_is_told(dance):
    """0.1/3 is one run of 30. An error that takes no more away is left out; the cue stays, apart."""
    dances = Dances(groups=(), runs=((),) * 10, half=((),), twice=((),))
    (cue,) = advice(dances, 0.1, slips(changing_places(dance)))
    place = Advice(beat=8.0, who=("Ada",), kind="place", fall=cue.fall)
    mend = Advice(beat=8.0, who=("Ada", "Bo"), kind="", fall=0.0, mend=True)
    assert [gains(cue, runs) for runs in (10, 29, 30, 200)] == [False, False, True, True]
    assert worth_telling((place, cue, mend), 29) == (cue,)
    assert worth_telling((place, cue, mend), 30) == (place, cue)
