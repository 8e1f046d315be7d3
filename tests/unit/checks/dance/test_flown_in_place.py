"""Flown hands in their places: strains that are made up, and splines that touch or do not."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.dance import flown_in_place as module
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.trajectories.flown_hand import Course, FlownHand
from sequencer.staging.flown_strains import Strain
from tests.unit.checks.dance.solo import stage

SPIN = "  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8, timing: together}\n"


def test_a_hand_that_walking_strains_is_told(monkeypatch):
    """Once for each place, by what it misses: the pull first, since of a slack tether nothing else means anything."""
    show = stage(SPIN)
    hard = Strain(
        "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 0.5, 95.4, 0.1, True
    )
    slack = hard._replace(side="right", least_pull=0.12, moving=False)
    far = hard._replace(hand_acceleration=50.0, spare_reach=-0.034)
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: (hard, slack, far))
    first, second, third = module.strained(show)
    assert (first.code, first.severity, first.who, first.position) == (
        "strained-as-flown", "warn", ("Ash",), "3.2",
    )  # fmt: skip
    assert first.message.startswith("static-spin, left hand: while walking or turning there")
    assert first.message.endswith("accelerate at 95 m/s², the limit is 80")
    assert len(first.remedies) == 2
    assert [(each.quantity, each.value, each.limit) for each in first.figures] == [
        ("hand acceleration", 95.4, 80)
    ]
    assert [each.quantity for each in second.figures] == ["least pull", "hand acceleration"]
    arm = show.dancers[0].body.arm_length
    assert [(each.quantity, each.value) for each in third.figures][-1] == (
        "hand from shoulder", pytest.approx(arm + 0.034),
    )  # fmt: skip
    assert (first.hands, second.hands) == (("left",), ("right",))
    assert second.message.endswith("pulls with only 0.12 of the head's weight, and needs 0.3")
    assert "at the tempo of the moment" in second.message
    assert len(second.remedies) == 1
    assert "3 cm out of reach" in third.message or "4 cm out of reach" in third.message


def test_speed_and_pull_of_the_flight_are_told_by_their_limits(monkeypatch):
    show = stage(SPIN)
    calm = Strain(
        "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 1.0, 20.0, 0.1, False
    )
    found = (
        calm._replace(hand_speed=7.25), calm._replace(most_pull=75.0, wick_speed=24.0),
        calm._replace(wick_speed=24.0),
    )  # fmt: skip
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: found)
    fast, hard, swung = module.strained(show)
    assert fast.message.endswith("the hand would have to move at 7.2 m/s, the limit is 6")
    assert hard.message.endswith("the prop pulls with 75 N, the limit is 60")
    assert swung.message.endswith("the wick moves at 24.0 m/s, the limit is 20")
    assert [each.quantity for each in hard.figures] == ["pull", "wick speed"]
    assert [each.quantity for each in fast.figures] == ["hand speed"]


def test_what_follows_from_what_could_not_be_flown_is_told_once(monkeypatch):
    """The link that could not be flown is told by itself; whoever changes the show must not lead there all the same."""
    show = stage(SPIN)
    hard = Strain(
        "Ash", "left", Course(9.0, 12.0, lambda beats: (beats, beats), True), 0.5, 95.4, 0.1, True, follows=True
    )  # fmt: skip
    monkeypatch.setattr(module, "flown_show", lambda show: show)
    monkeypatch.setattr(module, "strains", lambda _flown: (hard,))
    assert list(module.strained(show)) == []
    assert [each.code for each in module.strained(show, followers=True)] == ["strained-as-flown"]


def through(hand, head, length=0.5):
    """A hand that stands still over eight beats, and its head, as two splines."""
    splines = [
        EvenSpline(start=0.0, step=0.5, coefficients=np.tile(place, (21, 1)))
        for place in (head, hand)
    ]
    return FlownHand(
        head=splines[0], hand=splines[1], length=length, drawn=stage(SPIN).dancers[0].trajectories["left"],
        courses=(), pull=np.ones(17), most_pull=np.ones(17),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("left", "right", "codes"),
    [
        (((-0.6, 0.5, 1.4), (-0.6, 0.5, 0.9)), ((0.6, 0.5, 1.4), (0.6, 0.5, 0.9)), []),
        (((-0.2, 0.5, 1.2), (0.3, 0.5, 1.2)), ((0.2, 0.5, 1.2), (-0.3, 0.5, 1.2)), ["props-meet-as-flown"]),
        (((-0.5, 0.0, 1.2), (0.0, 0.0, 1.2)), ((0.6, 0.5, 1.4), (0.6, 0.5, 0.9)), ["hits-body-as-flown"]),
    ],
    ids=["apart", "crossed", "in the trunk"],
)  # fmt: skip
def test_props_that_meet_or_go_into_the_body_as_flown_are_told_once(
    monkeypatch, left, right, codes
):
    """Crossed tethers meet by plane geometry; a head on the body's axis is in the trunk."""
    show = stage(SPIN)
    (dancer,) = show.dancers
    hands = {"left": through(*left), "right": through(*right)}
    flown = replace(show, dancers=(replace(dancer, trajectories=hands),))
    monkeypatch.setattr(module, "flown_show", lambda _show: SimpleNamespace(staged=flown))
    told = list(module.touching(show))
    assert [each.code for each in told] == codes
    assert all((each.severity, each.who) == ("warn", ("Ash",)) for each in told)
    quantities = {"props-meet-as-flown": "gap between props", "hits-body-as-flown": "gap to body"}
    assert all(each.figures[0].quantity == quantities[each.code] for each in told)
    assert all(each.figures[0].beyond > 0 for each in told)
    assert all(each.start == show.seconds(0.0) for each in told)  # one passage, from its first beat
