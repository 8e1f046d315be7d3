"""A show as flown: who is flown, in which frame, with which margins, and how near they come."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.registry import checks
from sequencer.geometry.posture import Posture
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.trajectories.flown_path import flown_courses
from sequencer.motion.trajectories.flown_path.flown_courses import Passage, Stay
from sequencer.motion.trajectories.flown_path.flown_hand import Course, FlownHand
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight import flown_show as module
from sequencer.staging.in_flight.flown_show import flown_hands, flown_show, is_flown, performer_key
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.songs import even_song
from tests.unit.motion.trajectories.forward import off_its_path

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, right: {HELD}}
  - {name: Birch, stature: 1.7, right: {HELD}}
formations:
  apart: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4], facing: 90}}}
  near: {spots: {Ash: {at: [-1, 5], facing: 70}, Birch: {at: [1.4, 5], facing: 20}}}
  off: {spots: {Ash: {at: [-5, 5], facing: 70}, Birch: {at: [5, 5], facing: 20}}}
staging:
  - {formation: apart, from: 1.1}
  - {formation: near, from: 3.1, beats: 8}
  - {formation: off, from: 6.1, beats: 8}
timeline:
  - {from: 3.1, pattern: extension, beats: 8}
limits: {hand_speed: 5.5 m/s, hand_acceleration: 70}
"""
POI = "tether: 0.45"
SIZE = 0.1  # [m] of the drawn margins
LEAN, FARTHER = Posture(lean=0.1), Posture(lean=0.12)  # [rad]


def staged_show(held=POI, tempo=100.0):
    text = SHOW.replace("HELD", held)
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(32, tempo=tempo))


@cache
def flown():
    """The show, its links as drawn: they are not what is tested here."""
    with pytest.MonkeyPatch.context() as patch, nothing_kept():
        patch.setattr(flown_courses, "flown_link", lambda *_: None)
        made = flown_show(staged_show())
        assert made.hands  # with these links too
        return made


def beats(count=1201):
    return np.linspace(5.0, 27.0, count)


def test_every_hand_with_a_passive_prop_is_flown():
    made = flown()
    assert set(made.hands) == {("Ash", "right"), ("Birch", "right")}
    assert all(is_flown(dancer) for dancer in made.staged.dancers)
    assert not any(is_flown(dancer) for dancer in staged_show().dancers)
    kinds = [type(each) for each in made.hands["Ash", "right"]]
    assert kinds == [Stay, Passage, Stay, Passage, Stay]


def test_who_flies_is_as_the_file_says():
    """Source: the show's tempo and limits; a flame changes no flight."""
    show = staged_show()
    flying = flown().hands["Ash", "right"][2].flying
    assert (flying.tempo, flying.side) == (100.0, "right")
    assert flying.body == show.dancers[0].body
    assert (flying.limits.hand_speed, flying.limits.hand_acceleration) == (5.5, 70.0)
    assert flying.prop.flame_reach == 0.0


def test_the_law_of_motion_holds_while_they_walk_and_turn():
    """Source: scipy in the stage frame, with the points that distances are measured on; 1 mm over four beats."""
    for dancer in flown().staged.dancers:
        count = np.linspace(9.0, 15.0, 1201)
        points = dancer.stage_points(count)[0]
        error = off_its_path(
            count * 0.6, points[6], points[7], span=(10.0 * 0.6, 14.0 * 0.6),
            length=dancer.props["right"].length, drag=drag_of(dancer.props["right"]),
        )  # fmt: skip
        assert error < 1e-3


def test_a_prop_at_rest_leans_while_its_performer_walks():
    """From beat 20 they walk off with the prop at rest: by a plumb line in a frame that accelerates, tan = a/g."""
    for dancer in flown().staged.dancers:
        assert dancer.trajectories["right"].drawn.spans[-1].end < 28.0  # before the walk ends
        count = np.linspace(20.5, 27.5, 30)
        push = dancer.floor.at(count).place_acceleration / 0.6**2
        points = dancer.stage_points(count)[0]
        tether = points[7] - points[6]
        lean = -tether[:, :2] / tether[:, 2:]  # to the same side as the hand is pulled from
        still = count > 19.0 + 2.0
        # the head is carried without a turn of its own: facing hardly changes on that walk
        assert_allclose(lean[still], -push[still] / 9.80665, atol=0.02)
        assert np.abs(lean[still]).max() > 0.05


def test_rests_last_from_before_the_first_walk_until_after_the_last():
    """Walks of the file, and a beat on either side; who stands keeps the courses of the dance."""
    show = staged_show()
    courses = flown_courses.courses_of(flown().hands["Ash", "right"])
    ends = courses[0].start, courses[-1].end
    for floor, expected in (
        (walk(-4.0, 1.0), (-5.0, ends[1])),
        (walk(30.0, 36.0), (ends[0], 37.0)),
        (walk(8.0, 12.0), ends),
        (WalkPath((0.0, 4.0)), ends),
    ):
        own = replace(show.dancers[0], floor=floor)
        longer = module._while_walking(list(courses), own)
        assert (longer[0].start, longer[-1].end) == expected
        assert longer[1:-1] == courses[1:-1]


def walk(start, end):
    return WalkPath((0.0, 4.0), moves=(Move(start=start, end=end, place=(1.0, 4.0), facing=0.0),))


def test_before_and_after_all_walks_props_hang_still():
    for dancer in flown().staged.dancers:
        for beat in (-5.0, 40.0):
            motion = dancer.trajectories["right"].at(np.array(beat))
            assert_allclose(motion.tether, [0.0, 0.0, -1.0], atol=1e-9)
            assert_allclose(motion.hand_rate, 0.0, atol=1e-9)


def test_ground_turns_as_the_dancer_does_and_back():
    """Source: `Dancer.stage_points`, which does the same for its own points."""
    show = staged_show()
    for dancer in show.dancers:
        ground = module._ground_of(show, dancer)
        count = beats(50)
        body = dancer.trajectories["right"].at(count).hand
        stage = dancer.stage_points(count)[0][6]
        assert_allclose(ground.to_stage(count, body), stage, atol=1e-12)
        assert_allclose(ground.to_body(count, stage), body, atol=1e-12)
        assert_allclose(ground.beats_a_second(count), 100.0 / 60.0)


def test_margins_stay_only_where_the_drawing_stands_in():
    """Of margins before, across, within, around and after the only course that is not flown."""
    courses = [
        Course(0.0, 4.0, None, flown=True),
        Course(4.0, 6.0, None, flown=False),
        Course(6.0, 9.0, None, flown=True),
    ]
    spans = ((0.0, 4.0), (3.0, 5.0), (4.5, 5.5), (1.0, 8.0), (6.0, 9.0))
    margins = tuple(HandDeviation(*span, SIZE) for span in spans)
    left = module._left(margins, courses)
    assert [own[:2] for own in left] == [(4.0, 5.0), (4.5, 5.5), (4.0, 6.0)]
    assert {own.size for own in left} == {SIZE}


def test_a_flown_block_has_no_margin_where_the_drawn_one_has():
    """Drawn, the block has one from a quarter of a beat before it to as much after it: that stays on the drawn links."""
    drawn, made = staged_show().dancers[0], flown().staged.dancers[0]
    assert [own[:2] for own in drawn.deviation["right"]] == [(7.75, 16.25)]
    assert [own[:2] for own in made.deviation["right"]] == [(7.75, 8.0), (16.0, 16.25)]
    assert np.all(made.deviations(np.linspace(8.1, 15.9, 50)) == 0.0)


def test_rigid_props_are_as_drawn():
    """A staff is turned by the hand: it flies as drawn."""
    show = staged_show("kind: staff")
    made = flown_show(show)
    assert made.hands == {}
    for before, after in zip(show.dancers, made.staged.dancers, strict=True):
        assert after.trajectories["right"] is before.trajectories["right"]
        assert after.deviation == before.deviation
        assert not is_flown(after)


def test_hands_are_flown_once_for_a_show_and_told(monkeypatch):
    monkeypatch.setattr(flown_courses, "flown_link", lambda *_: None)
    show, told = staged_show(), []
    with nothing_kept():
        made = flown_show(show, lambda words, share: told.append((words, share)))
    assert flown_show(show) is made
    assert made.hands == flown_hands(show)
    words, shares = zip(*told, strict=True)
    assert set(words) == {"flying Ash's part", "flying Birch's part"}
    assert list(shares) == sorted(shares)
    assert 0.0 <= shares[0] <= shares[-1] < 1.0


def test_the_same_show_twice_to_the_last_digit():
    again = flown.__wrapped__()
    for one, other in zip(flown().staged.dancers, again.staged.dancers, strict=True):
        first, second = (each.trajectories["right"] for each in (one, other))
        assert isinstance(first, FlownHand)
        assert first.hand.coefficients.tobytes() == second.hand.coefficients.tobytes()
        assert first.head.coefficients.tobytes() == second.head.coefficients.tobytes()


def test_distances_on_flown_paths_against_sampling(dance):
    """At 2 kHz: never more than 5 mm from the smallest that is sampled, and never above it by more."""
    cast = flown().staged.dancers
    found = approaches(cast, 8.0, 16.0, required=1.0)
    count = np.arange(8.0, 16.0, 100.0 / 60.0 / 2000.0)
    sampled = dance.sampled_distance(*cast, count).min()
    assert sampled - 0.005 <= found.distance[0] <= sampled + 0.005
    assert not found.dismissed[0]


def test_checks_of_a_flown_show_are_computed_for_it():
    """Source: `Check.outcome_of` is for a show whose motion is not its file's: what lies on the shelf is another show's."""
    (check,) = [each for each in checks() if each.name == "distances"]
    made = flown().staged
    (row,) = [
        each for each in check.outcome_of(made).clearances if set(each.between) == {"Ash", "Birch"}
    ]
    found = approaches(made.dancers, *made.span, required=row.required)
    assert row.distance == pytest.approx(float(found.distance[0]))
    assert any("as flown" in each for each in check.outcome_of(made).not_checked)


def test_a_performer_is_known_by_all_that_decides_how_they_fly():
    """The same in a show that leaves them as they are, also where it is made of other objects."""
    show = staged_show()
    own, other = show.dancers
    key = performer_key(show, own)
    again = staged_show()
    assert performer_key(again, again.dancers[0]) == key
    assert performer_key(show, replace(own)) == key
    held = replace(own.props["right"], length=0.5)
    changed = [
        replace(own, props={**own.props, "right": held}),
        replace(own, body=replace(own.body, stature=1.71)),
        replace(own, deviation={"right": (HandDeviation(1.0, 2.0, 0.1),)}),
        replace(own, floor=other.floor),
        *(
            replace(own, carriage=Carriage(body=own.body, held=(HeldPosture(*span, lean),)))
            for span, lean in (((8.0, 16.0), LEAN), ((8.0, 16.0), FARTHER), ((9.0, 16.0), LEAN))
        ),
    ]
    keys = {performer_key(show, each) for each in changed}
    assert len(keys) == 7
    assert key not in keys
    faster = staged_show(tempo=101.0)
    assert performer_key(faster, faster.dancers[0]) != key
