"""What is strained in its place: against the flown splines looked at densely, and what follows from a drawn path beside it."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.motion.trajectories.flown_hand import Course
from sequencer.staging import flown_strains as module
from sequencer.staging.flown_show import FlownShow
from sequencer.staging.flown_strains import BESIDE_DRAWN, away_from_drawn, strains
from tests.unit.staging.test_flown_show import flown


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


@pytest.mark.parametrize("name", ["hand_speed", "head_speed", "pull"])
def test_what_is_too_fast_or_too_hard_is_strained(name):
    """By a limit a fifth below what the flight comes to, by its own splines; not by one a fifth above."""
    made = limited()
    pace = made.staged.tempo.beats_per_second
    most = 0.0
    for dancer in made.staged.dancers:
        hand = dancer.trajectories["right"]
        beats = np.linspace(8.0, 24.0, 20_001)
        if name == "pull":
            weight = dancer.props["right"].mass * 9.80665
            own = hand.pull[np.isfinite(hand.pull)] * weight
        else:
            path = hand.hand if name == "hand_speed" else hand.head
            own = np.linalg.norm(path.at(beats, 1), axis=-1) * pace(beats)
        most = max(most, float(own.max()))
    easy = {"hand_acceleration": 500.0}
    assert strains(limited(**easy, **{name: most / 1.1 / 1.2}))
    assert strains(limited(**easy, **{name: most / 1.1 * 1.2})) == ()


@pytest.mark.parametrize(("shorter", "told"), [(0.0, False), (0.1, True)])
def test_reach_is_searched_and_not_sampled(monkeypatch, shorter, told):
    """An arm so long that the hand is just within reach at its farthest, or 8 cm shorter of it."""
    made = limited()
    (dancer, *_) = made.staged.dancers
    hand = dancer.trajectories["right"]
    beats = np.linspace(8.0, 24.0, 40_001)
    far = float(np.max(dancer.carriage.beyond(beats, hand.hand.at(beats), "right")))
    monkeypatch.setattr(module, "recent", lambda _kind, _key, work, **_more: work())
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
    way = [
        course(0.0, 8.0, True),
        course(8.0, 9.0, False),
        course(9.0, 30.0, True),
        course(30.0, 31.0, True),
    ]
    away = [away_from_drawn(way, k) for k in range(4)]
    assert (away[0].start, away[0].end) == (0.0, 8.0 - BESIDE_DRAWN)
    assert (away[2].start, away[2].end) == (9.0 + BESIDE_DRAWN, 30.0)
    assert away[3] == way[3]
    short = [course(0.0, 1.0, False), course(1.0, 2.0, True), course(2.0, 3.0, False)]
    assert away_from_drawn(short, 1).end <= away_from_drawn(short, 1).start == 2.0


@pytest.mark.parametrize(("beat", "follows"), [(10.0, True), (20.0, False)])
def test_a_strain_away_from_what_is_drawn_does_not_follow_from_it(monkeypatch, beat, follows):
    """A hand that is hurried at one beat; the course before it is drawn."""
    dancer = limited().staged.dancers[0]
    ways = (course(8.0, 9.0, False), course(9.0, 30.0, True))

    def figures(_dancer, _side, _hand, courses, _pace):
        return [
            module._Figures(1.0, 500.0 if each.start <= beat <= each.end else 1.0, 1.0, 1.0, 1.0, 0.1)
            if each.flown else None
            for each in courses
        ]  # fmt: skip

    monkeypatch.setattr(module, "_figures", figures)
    hand = replace(dancer.trajectories["right"], courses=ways)
    show = SimpleNamespace(show=limited().drawn.show, tempo=limited().drawn.tempo)
    ((row),) = module._strained(show, replace(dancer, trajectories={"right": hand}))
    assert (row.course, row.follows) == (1, follows)
