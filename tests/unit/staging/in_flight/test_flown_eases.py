"""Which stretches of a hand are sought again, what takes their place, and that only what holds its limits stays."""

from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.staging.in_flight import flown_eases
from sequencer.staging.in_flight.flown_eases import AROUND_STRAIN, eased_hand, strain_of
from tests.unit.motion.trajectories.flown_path.test_flown_hand import (
    broken,
    circling,
    flown,
    standing,
)

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
    for over, share in ((1.09, 0.0), (1.12, 0.12)):
        own = FlownLimits(hand_speed=99.0, hand_acceleration=most / over)
        assert strain_of(hand, course, own, standing()) == pytest.approx(share, abs=1e-3)
    assert strain_of(hand, course, HARD, standing()) == 0.0
    loose = flown(kind=falling)
    missed = 1.0 - loose.least_pull(course) / LEAST_PULL
    assert missed > 0.1
    tireless = FlownLimits(hand_speed=99.0, hand_acceleration=1e6)
    assert strain_of(loose, course, tireless, standing()) == pytest.approx(missed)


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
    monkeypatch.setattr(
        flown_eases, "eased", lambda span: asked.append(span) or Course(*span, circling, True)
    )
    monkeypatch.setattr(flown_eases, "STRAINED", 0.99)
    monkeypatch.setattr(flown_eases, "_CALMS", (96,))
    limits = FlownLimits(hand_speed=99.0, hand_acceleration=most)
    same = eased_hand(
        None,
        "right",
        hand,
        limits=limits,
        ground=standing(),
        other=None,
        made=lambda _courses: hand,
    )
    assert same is hand  # nothing that is less strained was found
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
    for low, high in asked:
        assert low / hand.head.step == pytest.approx(round(low / hand.head.step))
        # every knot of what is sought, twelve a beat or more, is one of the hand's
        assert (high - low) * 12 == pytest.approx(round((high - low) * 12))


def test_what_is_drawn_is_not_sought(monkeypatch):
    """Only the first 4.1 beats of this hand are flown."""
    asked = []
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(
        flown_eases, "eased", lambda span: asked.append(span) or Course(*span, circling, True)
    )
    monkeypatch.setattr(flown_eases, "_CALMS", (96,))
    none = FlownLimits(hand_speed=99.0, hand_acceleration=1e-3)
    hand = broken()
    eased_hand(
        None, "right", hand, limits=none, ground=standing(), other=None, made=lambda _courses: hand
    )
    assert [round(edge, 1) for edge in np.ravel(asked)] == [0.0, 4.1]


def test_what_takes_a_stretch_s_place_and_what_is_left_of_the_others():
    old = [Course(0.0, 4.0, circling, True), Course(4.0, 6.0, circling, True), Course(6.0, 9.0, circling, False)]  # fmt: skip
    new = Course(3.0, 6.0, circling, True)
    spans = [(each.start, each.end) for each in flown_eases._with(old, [new])]
    assert spans == [(0.0, 3.0), (3.0, 6.0), (6.0, 9.0)]
    inside = flown_eases._with(old, [Course(1.0, 2.0, circling, True)])
    assert [(each.start, each.end) for each in inside][:3] == [(0.0, 1.0), (1.0, 2.0), (2.0, 4.0)]


def strained(monkeypatch, before, after):
    """What is made of a hand of which one stretch is eased to nothing and another one from some strain to another."""
    hand, made = flown(), []
    good, bad = Course(1.0, 2.0, circling, True), Course(5.0, 6.0, circling, True)
    monkeypatch.setattr(flown_eases, "_CALMS", (96,))
    monkeypatch.setattr(flown_eases, "_windows", lambda *_: [(1.0, 2.0), (5.0, 6.0)])
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(flown_eases, "eased", lambda span: good if span[0] == 1.0 else bad)
    monkeypatch.setattr(
        flown_eases,
        "strain_of",
        lambda own, course, *_: before if own is hand else after if course is bad else 0.0,
    )

    def make(courses):
        made.append([each.start for each in courses if each in (good, bad)])
        return len(made)

    out = eased_hand(None, "right", hand, limits=HARD, ground=standing(), other=None, made=make)
    assert out == len(made)
    return made


def test_only_what_is_less_strained_in_the_show_than_before_is_taken(monkeypatch):
    """Of two stretches one is as strained in the hand that is made: that is made anew without it."""
    assert strained(monkeypatch, 0.5, 0.5) == [[1.0, 5.0], [1.0]]
    assert strained(monkeypatch, 0.5, 0.6) == [[1.0, 5.0], [1.0]]
    assert strained(monkeypatch, 0.5, 0.2) == [[1.0, 5.0]], "what is left is told"


def looked_at(pushes, limit=80.0):
    """The stretches of a hand of twenty beats that pushes so on its spans."""
    hand = SimpleNamespace(
        head=SimpleNamespace(step=1.0 / 96, start=0.0),
        pushes=lambda _beats_a_second: pushes,
        pull=np.ones(20 * 96 + 1),
        courses=(Course(0.0, 20.0, None, flown=True),),
    )
    ground = SimpleNamespace(beats_a_second=lambda beats: np.ones(beats.shape))
    return flown_eases._windows(hand, FlownLimits(hand_acceleration=limit), ground, 96)


def test_what_is_strained_only_between_two_knots_is_sought_too():
    """As the check tells it: on every span."""
    pushes = np.ones(20 * 96)
    pushes[960] = 100.0  # just after beat 10
    ((low, high),) = looked_at(pushes)
    assert low < 10.0 < high
    assert looked_at(pushes, 100.0) == []


def test_a_stretch_begins_and_ends_where_the_hand_is_least_hurried():
    """Of the beat from the fifth to the fourth before what is strained, and of that after it; the last knot is a twelfth's."""
    pushes = np.full(20 * 96, 50.0)
    pushes[960] = 100.0  # beat 10
    for beat in (5.25, 14.0 + 2 / 3):
        around = round(96 * beat)
        pushes[around - 5 : around + 5] = 10.0
    pushes[96 * 4 : 96 * 4 + 20] = pushes[96 * 16 : 96 * 16 + 20] = 0.0  # calmer, but too far
    ((low, high),) = looked_at(pushes)
    assert (low, high) == (pytest.approx(5.25, abs=0.05), pytest.approx(14.0 + 2 / 3, abs=0.05))


def test_strains_that_share_their_surroundings_are_one_stretch():
    pushes = np.full(20 * 96, 50.0)
    pushes[[96 * 4, 96 * 13]] = 100.0
    assert len(looked_at(pushes)) == 1
    pushes[96 * 13], pushes[96 * 16] = 50.0, 100.0
    assert len(looked_at(pushes)) == 2


def test_what_is_strained_after_all_is_sought_with_other_surroundings(monkeypatch):
    """Each time in the hand that came of the last; once nothing is strained, no more is sought."""
    hand, asked = flown(), []
    course = Course(3.0, 9.0, circling, True)

    def windows(_hand, _limits, _ground, calm):
        asked.append(calm)
        return [(3.0, 9.0)] if len(asked) < 3 else []

    monkeypatch.setattr(flown_eases, "_windows", windows)
    monkeypatch.setattr(flown_eases, "_stretch", lambda *given: given[3])
    monkeypatch.setattr(flown_eases, "eased", lambda _span: course)
    made = []
    monkeypatch.setattr(
        flown_eases, "_less_strained", lambda own, *_: made.append(own) or f"hand {len(made)}"
    )
    out = eased_hand(None, "right", hand, limits=HARD, ground=standing(), other=None, made=None)
    assert out == "hand 2"
    assert made == [hand, "hand 1"]
    assert len(set(asked)) == 3
