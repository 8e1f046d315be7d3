"""Dancers who miss a cue: late for a while, or with left and right mixed up."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.slips import cues, late, mixed_up
from sequencer.motion.performers.walks import Move

MOVES = (
    Move(start=4.0, end=8.0, place=(2.0, 3.0), facing=1.0),
    Move(start=9.0, end=11.0, place=(2.0, 6.0), facing=0.0),
    Move(start=20.0, end=24.0, place=(0.0, 3.0), facing=0.0),
)


def test_a_cue_is_every_moment_at_which_something_begins(dance):
    ada = dance.dancer(moves=MOVES)
    assert cues(ada, 0.0, 30.0) == [(4.0, 9.0), (9.0, 20.0), (20.0, 30.0)]
    assert cues(ada, 4.0, 20.0) == [(9.0, 20.0)]  # what begins with the show, or ends it, is none
    assert cues(dance.dancer(), 0.0, 30.0) == []


def test_who_is_late_dances_what_was_danced_before(dance):
    ada = dance.dancer(moves=MOVES)
    slow, back = late(ada, 2.0, 20.0, 24.0)
    beats = np.linspace(20.0, 26.0, 61)

    assert back == 26.0
    for side in ("left", "right"):
        assert_allclose(
            slow.trajectories[side].at(beats).hand, ada.trajectories[side].at(beats - 2.0).hand
        )
    assert_allclose(slow.floor.at(beats).place, ada.floor.at(beats - 2.0).place)


def test_only_walks_from_the_cue_on_are_late_and_are_walked_to_their_end(dance):
    """Missed at 9, next cue at 10, where the walk still goes on: back two beats after its end at 11."""
    slow, back = late(dance.dancer(moves=MOVES), 2.0, 9.0, 10.0)
    assert [(m.start, m.end) for m in slow.floor.moves] == [(4, 8), (11, 13), (20, 24)]
    assert back == 13.0


def test_whoever_still_walks_sets_off_when_they_have_arrived(dance):
    """Four beats late from 4 to 8: the walk at 9 begins late too, since the one before lasts until 12."""
    slow, back = late(dance.dancer(moves=MOVES), 4.0, 4.0, 8.0)
    assert [(m.start, m.end) for m in slow.floor.moves] == [(8, 12), (12, 14), (20, 24)]
    assert back == 14.0
    slow, back = late(dance.dancer(moves=MOVES), 4.0, 4.0, 9.5)  # the second cue is missed as well
    assert back == 15.0
    assert [(m.start, m.end) for m in slow.floor.moves] == [(8, 12), (13, 15), (20, 24)]


def test_hand_work_comes_late_with_the_hands(dance):
    plan = replace(dance.dancer(), deviation={"left": (HandDeviation(4.0, 8.0, 0.2),)})
    slow, _ = late(plan, 2.0, 4.0, 8.0)
    assert slow.deviation["left"] == (HandDeviation(6.0, 10.0, 0.2),)


def test_mixed_up_is_a_mirror_image(dance):
    """Facing the audience at X = 0, all points are where the other side's were, with X the other way."""
    plan = dance.dancer(place=(0.0, 3.0), ratio=3.0, start=20.0)
    plan = replace(
        plan,
        trajectories={
            "left": plan.trajectories["left"],
            "right": dance.trajectory_of(
                "orbit", {"ratio": 1.0, "hand_radius": 0.2, "plane": "wheel"}, side="right",
                body=plan.body,
            ),
        },
        deviation={"left": (HandDeviation(0.0, 8.0, 0.2),)},
        carriage=Carriage(body=plan.body, held=(HeldPosture(2.0, 6.0, Posture(turn=0.3)),)),
    )  # fmt: skip
    other = mixed_up(plan)
    beats = np.linspace(0.0, 8.0, 81)
    points, rates = other.stage_points(beats)
    want, speeds = plan.stage_points(beats)
    swapped = [0, 1, 5, 6, 7, 2, 3, 4, 9, 8]
    mirror = np.array([-1.0, 1.0, 1.0])

    assert_allclose(points, want[swapped] * mirror, atol=1e-9)
    assert_allclose(rates, speeds[swapped] * mirror, atol=1e-9)
    assert other.deviation == {"right": plan.deviation["left"]}
    assert not np.allclose(points, want)


def test_its_bounds_hold(dance):
    other = mixed_up(dance.dancer(moves=MOVES))
    pieces = other.pieces(0.0, 24.0)
    for k, (low, high) in enumerate(zip(pieces.edges[:-1], pieces.edges[1:], strict=True)):
        _, rates = other.stage_points(np.linspace(low, high, 33)[1:-1])
        assert np.all(np.linalg.norm(rates, axis=-1).max(axis=1) <= pieces.speed[k] + 1e-9)


@pytest.mark.parametrize("sides", [(), ("left",)])
def test_one_hand_cannot_be_mixed_up(dance, sides):
    assert mixed_up(dance.dancer(sides=sides)) is None
