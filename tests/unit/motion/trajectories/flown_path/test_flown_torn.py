"""A hand that would jump: what is drawn stands in on the course that needs it, and what the hand would have to do is told."""

import json
from dataclasses import replace
from functools import cache
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.checks.dance.flown_in_place import strained
from sequencer.checks.suite import checked
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.trajectories.flown_path.flown_hand import Course, _OwnSlice, _piece_bounds
from sequencer.motion.trajectories.flown_path.flown_making import Ground, flown_hand
from sequencer.motion.trajectories.flown_path.flown_torn import (
    _flown_near,
    is_unbroken,
    unbroken,
    with_torn,
)
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight import flown_show as shows
from sequencer.staging.in_flight import flown_strains
from sequencer.staging.in_flight.flown_show import FlownShow, flown_show
from sequencer.staging.in_flight.flown_strains import missed_limits, strains
from sequencer.staging.timeline import staged
from tests.songs import even_song

# 3.6 m within an eighth of a second
SHOW = """\
title: Leap
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
formations:
  wide: {spots: {Birch: {at: [1, 2.5]}, Ash: {at: [-5, 6]}}}
  deep: {spots: {Birch: {at: [TO]}, Ash: {at: [-5, 6]}}}
staging:
  - {formation: wide, from: 1.1}
  - {formation: deep, from: 5.1, beats: BEATS}
timeline:
  - {from: 2.1, pattern: extension, cycle: 2, beats: 6, timing: together}
  - {from: 3.3, pattern: two-beat-weave, beats: 6}
  - {from: 8.1, pattern: extension, cycle: 2, beats: 6, timing: together}
"""


@cache
def flown(beats="1/4", tempo=120.0, to="0, 6"):
    text = SHOW.replace("BEATS", beats).replace("TO", to)
    read = show_from_document(parse_document(text, "s.yaml"))
    return flown_show(staged(read, even_song(48, tempo=tempo)))


def hands(show, who="Birch"):
    dancer = next(each for each in show.staged.dancers if each.name == who)
    return dancer.trajectories


def course_of(hand, row):
    return next(each for each in hand.courses if each.start == row.start)


def pieces(hand):
    return hand.pieces(hand.head.start, hand.head.start + hand.head.spans * hand.head.step)


def test_where_a_walk_would_make_a_hand_jump_the_drawing_stands_in():
    torn = {side: hand for side, hand in hands(flown()).items() if hand.torn}
    assert torn
    for hand in torn.values():
        for row in hand.torn:
            course = course_of(hand, row)
            assert course.start <= 16.0 < course.end  # the walk begins at 5.1
            assert not course.flown
            assert row.hand_acceleration > 1000.0
        assert [row.start for row in hand.torn] == [16.0]  # no more than is needed


def test_where_easing_the_walk_makes_the_hand_jump_only_that_passage_is_drawn():
    """What was eased holds the leap, whatever stands in beside it: the search goes back to what was not eased."""
    hand = hands(flown(tempo=60.0, to="-2, 8"))["right"]
    assert [row.start for row in hand.torn] == [10.5]
    assert all(np.isfinite(bounds.turn_rate) for _, _, bounds in pieces(hand))


def test_every_bound_is_finite_then_and_holds():
    for hand in hands(flown()).values():
        for low, high, bounds in pieces(hand):
            beats = np.linspace(low, high, 200)
            seen = hand.at(beats)
            assert np.isfinite(bounds.turn_rate)
            turned = np.linalg.norm(np.diff(seen.tether, axis=0), axis=-1) / np.diff(beats)
            assert turned.max() <= bounds.turn_rate * (1 + 1e-9)
            moved = np.linalg.norm(np.diff(seen.hand, axis=0), axis=-1) / np.diff(beats)
            assert moved.max() <= bounds.hand_speed * (1 + 1e-9)


def test_the_check_goes_through_and_tells_what_the_hand_would_have_to_do():
    show = flown()
    report = checked(show.drawn, flown=True)
    assert any(each.who == ("Birch",) for each in report.findings)
    found = [each for each in strains(show) if each.course.start <= 16.0 < each.course.end]
    assert {(each.who, each.side) for each in found} >= {
        ("Birch", side) for side, hand in hands(show).items() if hand.torn
    }
    limits = show.staged.show.limits
    assert all(missed_limits(each, limits, 0.6) for each in found)
    said = [each for each in strained(show.drawn) if "have to accelerate at" in each.message]
    assert any(each.figures[0].value > 1000.0 for each in said)


def test_nobody_else_and_no_slower_walk_is_touched():
    assert not any(hand.torn for hand in hands(flown(), "Ash").values())
    slow = flown("8")
    assert not any(hand.torn for hand in hands(slow).values())
    hand = hands(slow)["right"]
    assert unbroken(hand, pytest.fail, np.ones_like) is hand


def test_a_hand_that_begins_in_full_swing_is_flown():
    """Its spline is at rest at both ends, which nothing that is drawn there would change."""
    hand = hands(flown())["left"]
    swinging = next(each for each in hand.courses if each.flown and each.end - each.start > 5)
    inside = swinging._replace(start=swinging.start + 1.0, end=swinging.end - 1.0)
    drag = drag_of(flown().drawn.dancers[0].props["left"])
    ground = Ground(lambda _, at: at, lambda _, at: at, lambda beats: np.full(len(beats), 4.0))
    cut = flown_hand([inside], length=hand.length, drag=drag, drawn=hand.drawn, ground=ground)
    ends = pieces(cut)
    assert not np.isfinite([ends[0][2].turn_rate, ends[-1][2].turn_rate]).all()
    assert is_unbroken(cut)
    assert unbroken(cut, pytest.fail, np.ones_like) is cut


def test_margins_of_the_drawing_hold_where_it_stands_in():
    show = flown()
    for side, hand in hands(show).items():
        for row in hand.torn:
            course = course_of(hand, row)
            drawn = [
                each
                for each in show.drawn.dancers[0].deviation[side]
                if each.start < course.end and course.start < each.end
            ]
            assert drawn
            left = [(each.start, each.end) for each in show.staged.dancers[0].deviation[side]]
            for each in drawn:
                assert (max(each.start, course.start), min(each.end, course.end)) in left


def test_what_was_torn_is_kept_with_the_performer():
    show = flown()
    dancer, drawn = show.staged.dancers[0], show.drawn.dancers[0]
    own = shows._OnPaths(dancer.trajectories, dancer.deviation)
    record = json.loads(json.dumps(shows._record(own)))
    again = shows._restored(drawn, record)
    for side, hand in dancer.trajectories.items():
        assert again.trajectories[side].torn == hand.torn
        assert [each.flown for each in again.trajectories[side].courses] == [
            each.flown for each in hand.courses
        ]


def test_beside_a_drawing_the_nearest_flown_course_is_at_fault():
    def course(start, end, flown):
        return Course(start, end, None, flown)

    rows = [course(0, 4, True), course(4, 8, True), course(8, 12, False), course(12, 16, True)]
    hand = SimpleNamespace(courses=rows)
    assert _flown_near(hand, [(3.0, 3.5)]) == [0]
    assert _flown_near(hand, [(3.9, 4.1)]) == [0, 1]
    assert _flown_near(hand, [(9.0, 9.25)]) == [1]
    assert _flown_near(hand, [(11.5, 11.75)]) == [3]
    assert _flown_near(hand, [(9.0, 9.25), (11.5, 11.75)]) == [1, 3]
    assert _flown_near(SimpleNamespace(courses=rows[2:3]), [(9.0, 9.25)]) == []


def test_where_the_turning_is_not_bounded_its_acceleration_is_not_either():
    """One bound tells of both: the hand goes through its head, keeps close beside it, or passes it close by and further off."""
    step, beats = 0.125, np.arange(9.0) - 4.0

    def beside(distance):
        return np.array([0.0, distance, 0.0])

    head = np.stack([0.1 * beats, 0 * beats, 0 * beats], axis=1)
    for hand, bounded in (
        (-head, False), (head + beside(1e-9), True), (-head + beside(1e-3), False), (-head + beside(0.9), True),
    ):  # fmt: skip
        for each in _piece_bounds(_OwnSlice(0, step, head, hand, b"")):
            assert np.isfinite([each.turn_rate, each.turn_acceleration]).tolist() == [bounded] * 2


def test_a_hand_is_broken_where_nothing_bounds_its_turning():
    def hand(*accelerations):
        rows = [
            (float(k), k + 1.0, SimpleNamespace(turn_rate=1.0, turn_acceleration=own))
            for k, own in enumerate(accelerations)
        ]
        head = SimpleNamespace(start=0.0, spans=len(rows), step=1.0)
        return SimpleNamespace(head=head, pieces=lambda _first, _last: rows)

    assert is_unbroken(hand(1.0, 1e9, 1.0))
    assert not is_unbroken(hand(1.0, np.inf, 1.0))
    assert not is_unbroken(hand(1.0, 1.0, np.nan, 1.0))
    assert is_unbroken(hand(np.inf, 1.0, np.nan))  # brought to rest by the spline


def test_a_jump_within_wide_limits_is_told_all_the_same(monkeypatch):
    """Its bounds may say that it is slow and that the tether holds: no tether holds through a jump."""
    show = flown()
    dancer = show.staged.dancers[0]
    side, hand = next((side, own) for side, own in dancer.trajectories.items() if own.torn)
    (row,) = hand.torn
    mild = row._replace(
        least_pull=1.0, most_pull=1.0, hand_speed=1.0, hand_acceleration=1.0, head_speed=1.0
    )
    wide = show.staged.show.limits.model_copy(
        update={"hand_acceleration": 1e6, "hand_speed": 1e6, "head_speed": 1e6, "pull": 1e6}
    )
    own = show.staged.show.model_copy(update={"limits": wide})
    only = replace(dancer, trajectories={**dancer.trajectories, side: with_torn(hand, [mild])})
    monkeypatch.setattr(flown_strains, "recent", lambda _kind, _key, work, **_more: work())
    found = strains(
        FlownShow(
            staged=replace(show.staged, show=own, dancers=(only,)),
            drawn=replace(show.drawn, show=own, dancers=show.drawn.dancers[:1]),
        )
    )
    told = [each for each in found if each.side == side and each.course.start == row.start]
    assert [missed_limits(each, wide, dancer.body.arm_length) for each in told] == [("least_pull",)]
    assert (told[0].who, told[0].side, told[0].hand_speed) == ("Birch", side, 1.0)
