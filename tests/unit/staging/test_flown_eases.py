"""Which stretches of a hand are sought again, what takes their place, and that only what holds its limits stays."""

from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.trajectories.flown_hand import Course
from sequencer.staging import flown_eases
from sequencer.staging.flown_eases import AROUND_STRAIN, eased_hand, is_strained
from tests.unit.motion.trajectories.test_flown_hand import broken, circling, flown, standing

HARD = FlownLimits(hand_speed=99.0, hand_acceleration=99.0)


def pushed(hand):
    """Largest acceleration of a hand and the beat of it."""
    beats = np.linspace(0.1, 11.9, 5000)
    size = np.linalg.norm(hand.hand.at(beats, 2), axis=-1) * (100.0 / 60.0) ** 2
    return size.max(), beats[size.argmax()]


def test_a_hand_is_strained_by_pull_or_by_acceleration():
    hand = flown()
    course = Course(0.1, 11.9, circling, flown=True)  # at its ends the hand is set still
    most, _ = pushed(hand)
    for limit, strained in ((most / 1.09, False), (most / 1.12, True)):
        own = FlownLimits(hand_speed=99.0, hand_acceleration=limit)
        assert is_strained(hand, course, own, standing()) is strained
    assert not is_strained(hand, course, HARD, standing())
    assert is_strained(flown(kind=falling), course, HARD, standing())


def falling(beats):
    """A head that drops from beat 5 on and is caught: its tether pulls with little."""
    head, hand = circling(np.zeros_like(beats))
    drop = np.exp(-(((beats - 6.0) / 0.25) ** 2))
    return head + 0.2 * drop[:, None] * [0.0, 0.0, 1.0], hand


def test_what_is_strained_is_sought_with_beats_about_it_within_what_is_flown(monkeypatch):
    hand = flown()
    most, _ = pushed(hand)
    asked = []
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(flown_eases, "eased", asked.append)
    monkeypatch.setattr(flown_eases, "STRAINED", 0.99)
    limits = FlownLimits(hand_speed=99.0, hand_acceleration=most)
    same = eased_hand(
        None, "right", hand, limits=limits, ground=standing(), other=None, made=pytest.fail
    )
    assert same is hand  # nothing was found
    knots = np.arange(len(hand.pull)) * hand.head.step
    size = np.linalg.norm(hand.hand.at(knots, 2), axis=-1) * (100.0 / 60.0) ** 2
    bad = knots[(size > 0.99 * most) & (knots > 0.1) & (knots < 11.9)]
    assert len(asked) >= 1
    for beat in bad:
        low, high = next(span for span in asked if span[0] <= beat <= span[1])
        assert low <= max(beat - AROUND_STRAIN, 0.0) + hand.head.step
        assert high >= min(beat + AROUND_STRAIN, 12.0) - hand.head.step
    for (_, high), (low, _) in pairwise(asked):
        assert high < low
    for edge in np.ravel(asked):
        assert edge / hand.head.step == pytest.approx(round(edge / hand.head.step))


def test_what_is_drawn_is_not_sought(monkeypatch):
    """Only the first 4.1 beats of this hand are flown."""
    asked = []
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(flown_eases, "eased", asked.append)
    none = FlownLimits(hand_speed=99.0, hand_acceleration=1e-3)
    eased_hand(
        None, "right", broken(), limits=none, ground=standing(), other=None, made=pytest.fail
    )
    assert [round(edge, 1) for edge in np.ravel(asked)] == [0.0, 4.1]


def test_what_takes_a_stretch_s_place_and_what_is_left_of_the_others():
    old = [Course(0.0, 4.0, circling, True), Course(4.0, 6.0, circling, True), Course(6.0, 9.0, circling, False)]  # fmt: skip
    new = Course(3.0, 6.0, circling, True)
    spans = [(each.start, each.end) for each in flown_eases._with(old, [new])]
    assert spans == [(0.0, 3.0), (3.0, 6.0), (6.0, 9.0)]
    inside = flown_eases._with(old, [Course(1.0, 2.0, circling, True)])
    assert [(each.start, each.end) for each in inside][:3] == [(0.0, 1.0), (1.0, 2.0), (2.0, 4.0)]


def test_only_what_holds_its_limits_in_the_show_is_taken(monkeypatch):
    """Of two stretches one is strained in the hand that is made: that is made anew without it."""
    hand, made = flown(), []
    good, bad = Course(1.0, 2.0, circling, True), Course(5.0, 6.0, circling, True)
    monkeypatch.setattr(flown_eases, "_windows", lambda *_: [(1.0, 2.0), (5.0, 6.0)])
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(flown_eases, "eased", lambda span: good if span[0] == 1.0 else bad)
    monkeypatch.setattr(flown_eases, "is_strained", lambda _hand, course, *_: course is bad)

    def make(courses):
        made.append([each for each in courses if each in (good, bad)])
        return len(made)

    out = eased_hand(None, "right", hand, limits=HARD, ground=standing(), other=None, made=make)
    assert made == [[good, bad], [good]]
    assert out == 2


def test_what_is_strained_only_between_two_knots_is_sought_too():
    """As the check tells it: the acceleration is looked at half way as well."""
    count, step = 20 * 96, 1.0 / 96
    pushes = np.ones(2 * count + 1)
    pushes[2 * 960 + 1] = 100.0  # just after beat 10
    hand = SimpleNamespace(
        head=SimpleNamespace(step=step, start=0.0),
        pushes=lambda _beats_a_second: pushes,
        pull=np.ones(count + 1),
        courses=(Course(0.0, 20.0, None, flown=True),),
    )
    ground = SimpleNamespace(beats_a_second=lambda beats: np.ones(beats.shape))
    ((low, high),) = flown_eases._windows(hand, FlownLimits(hand_acceleration=80.0), ground)
    assert low < 10.0 < high
    assert flown_eases._windows(hand, FlownLimits(hand_acceleration=100.0), ground) == []
