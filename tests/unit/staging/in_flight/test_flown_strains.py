"""What is strained in its place: against the flown splines looked at densely, and what follows from a drawn path beside it."""

import json
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.staging.in_flight import flown_strains as module
from sequencer.staging.in_flight.flown_show import FlownShow
from sequencer.staging.in_flight.flown_strains import BESIDE_DRAWN, away_from, strains
from tests.unit.staging.in_flight.test_flown_show import flown


def limited(**limits):
    """The show, flown as it is, with other limits for what is told."""
    made = flown()
    own = made.drawn.show.model_copy(
        update={"limits": made.drawn.show.limits.model_copy(update=limits)}
    )
    return FlownShow(staged=replace(made.staged, show=own), drawn=replace(made.drawn, show=own))


def hand_of(show, who, side):
    return {own.name: own for own in show.staged.dancers}[who].trajectories[side]


def test_what_is_strained_is_told_by_the_limits_of_its_show():
    """A hand that may push with 5 m/s² is strained in every block; what is told of one show is not told of another."""
    assert strains(limited(hand_acceleration=500.0)) == ()
    tight = limited(hand_acceleration=5.0)
    found = strains(tight)
    assert {(each.who, each.side) for each in found} == {("Ash", "right"), ("Birch", "right")}
    for each in found:
        hand = hand_of(tight, each.who, each.side)
        assert each.course in hand.courses
        assert each.hand_acceleration > 5.0 * 1.1
        pace = tight.staged.tempo.beats_per_second
        beats = np.linspace(each.course.start, each.course.end, 20_001)[1:-1]
        rates = [np.linalg.norm(hand.hand.at(beats, k), axis=-1) * pace(beats) ** k for k in (1, 2)]
        assert rates[1].max() <= each.hand_acceleration < 1.02 * rates[1].max()
        assert rates[0].max() <= each.hand_speed < 1.02 * rates[0].max()
        assert each.least_pull == hand.least_pull(each.course)
    assert [each.course.start for each in found] == sorted(each.course.start for each in found)
    assert strains(limited(hand_acceleration=500.0)) == ()


@pytest.mark.parametrize(
    ("name", "told", "not_told"),
    [("hand_speed", 1.13, 1.08), ("head_speed", 1.02, 1.002), ("pull", 1.03, 1.002)],
)
def test_what_is_too_fast_or_too_hard_is_strained(name, told, not_told):
    """Times its limit, by the flight's own splines: a hand may go a tenth faster, its prop only by what its bounds are off."""
    made = limited()
    pace = made.staged.tempo.beats_per_second
    most = 0.0
    for dancer in made.staged.dancers:
        hand = dancer.trajectories["right"]
        beats = np.linspace(8.0, 24.0, 20_001)
        if name == "pull":
            weight = dancer.props["right"].mass * 9.80665
            own = hand.pull[np.isfinite(hand.pull)] * weight  # as bounded from below
        else:
            path = hand.hand if name == "hand_speed" else hand.head
            own = np.linalg.norm(path.at(beats, 1), axis=-1) * pace(beats)
        most = max(most, float(own.max()))
    easy = {"hand_acceleration": 500.0}
    assert strains(limited(**easy, **{name: most / told}))
    assert strains(limited(**easy, **{name: most / not_told})) == ()


@pytest.mark.parametrize(("shorter", "told"), [(0.0, False), (0.1, True)])
def test_reach_is_searched_and_not_sampled(monkeypatch, shorter, told):
    """An arm so long that the hand is just within reach at its farthest, or 8 cm shorter of it."""
    made = limited()
    (dancer, *_) = made.staged.dancers
    hand = dancer.trajectories["right"]
    beats = np.linspace(8.0, 24.0, 40_001)
    far = float(np.max(dancer.carriage.beyond(beats, hand.hand.at(beats), "right")))
    for name in ("recent", "kept"):
        monkeypatch.setattr(module, name, lambda _kind, _key, work, **_more: work())
    grown = replace(dancer.body, arm=far - shorter)
    own = replace(made.staged, dancers=(replace(dancer, body=grown),))
    found = strains(
        FlownShow(staged=own, drawn=replace(made.drawn, dancers=made.drawn.dancers[:1]))
    )
    assert bool(found) is told
    if told:
        assert min(each.spare_reach for each in found) == pytest.approx(-shorter, abs=0.003)


def course(start, end, flown):
    return Course(start, end, lambda beats: (beats, beats), flown)


def test_what_follows_from_a_drawn_path_lies_beside_it():
    own = course(9.0, 30.0, True)
    ends = {
        (before, after): (away.start, away.end)
        for before in (None, 1) for after in (None, 1)
        for away in (away_from(own, before, after),)
    }  # fmt: skip
    assert ends == {
        (None, None): (9.0, 30.0), (1, None): (9.0 + BESIDE_DRAWN, 30.0), (None, 1): (9.0, 30.0 - BESIDE_DRAWN),
        (1, 1): (9.0 + BESIDE_DRAWN, 30.0 - BESIDE_DRAWN),
    }  # fmt: skip
    short = away_from(course(1.0, 2.0, True), 1, 1)
    assert short.end <= short.start == 2.0


WAYS = (
    course(7.0, 8.0, False), course(8.0, 9.0, False), course(9.0, 30.0, True), course(30.0, 31.0, False),
    course(31.0, 39.0, False),
)  # fmt: skip
BEFORE, AFTER = (8.0, 9.0), (30.0, 31.0)


@pytest.mark.parametrize(
    ("hurried", "follows"),
    [
        ((10.0,), ((BEFORE,),)),
        ((29.0,), ((AFTER,),)),
        ((10.0, 29.0), ((BEFORE, AFTER),)),
        ((20.0,), ()),
        ((10.0, 20.0), ()),
    ],
)
def test_a_strain_follows_from_what_it_is_missed_away_from(monkeypatch, hurried, follows):
    """A hand that is hurried at some beats; what is before its course and after it is drawn."""
    assert strained_row(monkeypatch, hurried, "block").follows == follows


def test_a_link_stands_in_with_the_pattern_it_leads_to(monkeypatch):
    """A drawn link beside a pattern that cannot be flown: what is told of that pattern is what it follows from."""
    assert strained_row(monkeypatch, (10.0,), "link").follows == (((7.0, 9.0),),)
    assert strained_row(monkeypatch, (29.0,), "link").follows == (((30.0, 39.0),),)
    row = strained_row(monkeypatch, (10.0, 29.0), "link")
    kept = json.loads(json.dumps(list(row)))
    assert module._row_from(kept) == row


def strained_row(monkeypatch, hurried, kind):
    dancer = limited().staged.dancers[0]

    def figures(_dancer, _side, _hand, courses, _pace):
        def hurries(each):
            return any(each.start <= beat <= each.end for beat in hurried)

        return [
            module.CourseFigures(1.0, 500.0 if hurries(each) else 1.0, 1.0, 1.0, 1.0, 0.1)
            if each.flown else None
            for each in courses
        ]  # fmt: skip

    monkeypatch.setattr(module, "_figures", figures)
    drawn = SimpleNamespace(spans=[SimpleNamespace(kind=kind, start=0.0, end=50.0)])
    hand = replace(dancer.trajectories["right"], courses=WAYS, drawn=drawn)
    show = SimpleNamespace(show=limited().drawn.show, tempo=limited().drawn.tempo)
    (row,) = module._strained(show, replace(dancer, trajectories={"right": hand}))
    assert (row.side, row.course) == ("right", 2)
    return row
