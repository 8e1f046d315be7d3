"""Rests, holds and accents on the timeline: how long they last, what their beats go to, and what is refused."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.errors import InputError
from sequencer.motion.trajectories.rests import rest
from sequencer.staging.timeline import staged
from tests.stopped_show import EXTENSION, stopped_show

LINK = "{link: true, beats: 2}"


def spans(show, side="right"):
    """Kind, start and end of all that a hand does between its first and its last block."""
    own = [(s.kind[0], s.start, s.end) for s in show.dancers[0].trajectories[side].spans]
    blocks = [k for k, (kind, _, _) in enumerate(own) if kind == "b"]
    return own[blocks[0] : blocks[-1] + 1]


def fault(*entries, **more):
    with pytest.raises(InputError) as caught:
        stopped_show(*entries, **more)
    return str(caught.value)


def test_a_rest_takes_its_beats_and_hangs_between_braking_and_starting():
    """Four beats: one and a half to brake, a beat still, one and a half to start."""
    show = stopped_show(EXTENSION, "{rest: 4}", EXTENSION)
    assert spans(show) == [
        ("b", 8.0, 16.0), ("l", 16.0, 17.5), ("r", 17.5, 18.5), ("l", 18.5, 20.0), ("b", 20.0, 28.0),
    ]  # fmt: skip
    dancer = show.dancers[0]
    hanging = rest("left", dancer.body, dancer.props["left"]).at(np.zeros(1))
    there = dancer.trajectories["left"].at(np.array([17.5, 18.0, 18.5]))
    assert_allclose(there.hand, np.repeat(hanging.hand, 3, 0), atol=1e-12)
    assert_allclose(there.tether, np.repeat(hanging.tether, 3, 0), atol=1e-12)
    assert np.abs(there.hand_rate).max() < 1e-9


def test_without_the_rest_the_same_four_beats_are_one_link():
    show = stopped_show(EXTENSION, "{from: 6.1, pattern: extension, cycle: 2, beats: 8}")
    assert [kind for kind, _, _ in spans(show)] == ["b", "l", "b"]


def test_a_long_rest_is_danced_as_the_hole_it_stands_for():
    rested = stopped_show(EXTENSION, "{rest: 12}", EXTENSION)
    hole = stopped_show(EXTENSION, "{from: 8.1, pattern: extension, cycle: 2, beats: 8}")
    assert spans(rested) == spans(hole)
    beats = np.linspace(10.0, 40.0, 301)
    for side in ("left", "right"):
        a, b = (each.dancers[0].trajectories[side].at(beats) for each in (rested, hole))
        assert np.array_equal(a.hand, b.hand)
        assert np.array_equal(a.tether, b.tether)


@pytest.mark.parametrize(
    ("entries", "expected"),
    [
        ((EXTENSION, LINK, "{rest: 4}", LINK, EXTENSION), [("l", 16, 18), ("r", 18, 22), ("l", 22, 24)]),
        ((EXTENSION, LINK, "{rest: 4}", EXTENSION), [("l", 16, 18), ("r", 18, 20), ("l", 20, 22)]),
        ((EXTENSION, "{rest: 4}", LINK, EXTENSION), [("l", 16, 18), ("r", 18, 20), ("l", 20, 22)]),
        ((EXTENSION, LINK, "{hold: 2}", LINK, EXTENSION), [("l", 16, 18), ("r", 18, 20), ("l", 20, 22)]),
        ((EXTENSION, "{rest: 2}", "{rest: 2}", EXTENSION), [("l", 16, 17.5), ("r", 17.5, 18.5), ("l", 18.5, 20)]),
        ((EXTENSION, "{hold: 4}", EXTENSION), [("l", 16, 17), ("r", 17, 19), ("l", 19, 20)]),
    ],
)  # fmt: skip
def test_a_written_link_is_the_way_into_or_out_of_a_stop(entries, expected):
    assert spans(stopped_show(*entries))[1:-1] == expected


def test_a_written_link_leads_out_of_a_rest_before_the_first_block():
    show = stopped_show("{rest: 4}", "{link: true, beats: 3}", EXTENSION)
    first = show.dancers[0].trajectories["right"].spans[1]
    assert (first.kind, first.start, first.end) == ("link", 12.0, 15.0)


def test_a_hold_keeps_the_hand_and_lets_a_poi_hang():
    show = stopped_show(EXTENSION, "{hold: 4}", EXTENSION)
    way = show.dancers[0].trajectories["right"]
    seen = way.at(np.array([17.0, 18.0, 19.0]))
    assert_allclose(seen.tether, [[0, 0, -1]] * 3, atol=1e-12)
    assert np.abs(seen.hand_rate).max() < 1e-9
    # Carried on by 0.4 of what it would cover at its speed in the beat for which it brakes, and drawn in towards the
    # shoulder until it is within 0.88 of the arm.
    end = way.spans[2].at(np.array(16.0))
    body = show.dancers[0].body
    shoulder = body.shoulder("right")
    away = end.hand + 0.4 * end.hand_rate - shoulder
    assert np.linalg.norm(away) > 0.88 * body.arm_length
    away *= 0.88 * body.arm_length / np.linalg.norm(away)
    assert_allclose(seen.hand[0], shoulder + away, atol=1e-9)


def test_a_hold_keeps_a_club_as_it_points_after_braking():
    show = stopped_show(EXTENSION, "{hold: 2}", EXTENSION, prop="club")
    way = show.dancers[0].trajectories["right"]
    kinds = spans(show)[1:-1]
    assert kinds == [("l", 16, 16.5), ("r", 16.5, 17.5), ("l", 17.5, 18)]
    end = way.spans[2].at(np.array(16.0))
    seen = way.at(np.array([16.5, 17.5]))
    turned = np.arccos(np.clip(seen.tether @ end.tether, -1.0, 1.0))
    assert_allclose(turned, 0.4 * 0.5 * np.linalg.norm(end.tether_rate), atol=1e-9)
    assert np.abs(seen.tether_rate).max() < 1e-9


def test_a_hold_lasts_until_its_end_and_a_hole_follows_it_as_any_other():
    show = stopped_show(
        EXTENSION, "{hold: 4}", "{from: 7.1, pattern: extension, cycle: 2, beats: 8}"
    )
    assert spans(show)[1:-1] == [("l", 16, 17), ("r", 17, 20), ("l", 20, 24)]
    assert show.dancers[0].trajectories["right"].spans[4].label == "hold"


def test_a_final_hold_is_kept_and_then_let_down_to_rest():
    show = stopped_show(EXTENSION, "{hold: 4}")
    last = [
        (s.kind, s.label, s.start, s.end) for s in show.dancers[0].trajectories["left"].spans[-4:]
    ]
    assert last[0][:2] == ("link", "link")
    assert last[1] == ("rest", "hold", last[0][3], 20.0)
    assert last[2][:1] == ("link",)
    assert last[3][:2] == ("rest", "rest")


def test_a_stop_of_one_hand_leaves_the_other_dancing():
    show = stopped_show(
        EXTENSION,
        "{hands: right, from: 5.1, pattern: extension, cycle: 2, beats: 8}",
        "{hands: left, from: 5.1, rest: 8}",
        "{from: 7.1, pattern: extension, cycle: 2, beats: 8}",
    )
    assert [kind for kind, _, _ in spans(show, "left")] == ["b", "l", "r", "l", "b"]
    assert [kind for kind, _, _ in spans(show, "right")] == ["b", "b", "b"]
    assert show.stops[0].stopped == ("left",)


def test_a_mirrored_stop_changes_hands():
    show = stopped_show(EXTENSION, "{hands: left, mirrored: true, rest: 8}", EXTENSION)
    assert show.stops[0].stopped == ("right",)


def test_stops_of_a_phrase_come_with_it_and_accents_are_counted_in_it():
    phrases = "  hit: [{pattern: extension, cycle: 2, beats: 6}, {rest: 4}, {accent: 7}, {accent: 1.5, note: go}]\n"
    show = stopped_show("{phrase: hit, repeat: 2}", phrases=phrases)
    assert [(s.start, s.end, s.title) for s in show.stops] == [
        (14.0, 18.0, "stop for 4 beats"), (24.0, 28.0, "stop for 4 beats"),
    ]  # fmt: skip
    assert [(a.beat, a.note, a.phrase) for a in show.accents] == [
        (8.5, "go", "hit"), (14.0, "", "hit"), (18.5, "go", "hit"), (24.0, "", "hit"),
    ]  # fmt: skip


def test_accents_take_no_time_and_belong_to_those_named():
    show = stopped_show("{accent: 4.2}", "{from: 3.1, pattern: extension, cycle: 2, beats: 8}")
    assert [(a.who, a.beat) for a in show.accents] == [("Ash", 13.0)]
    assert [(b.start, b.end) for b in show.blocks] == [(8.0, 16.0)]


def test_a_changed_stop_changes_the_dance_that_is_taken_over():
    """Staged again after an edit, a show is as if staged from nothing."""
    before = stopped_show(EXTENSION, "{rest: 4}", EXTENSION)
    after = stopped_show(EXTENSION, "{hold: 4}", EXTENSION)
    again = staged(after.read, before.heard, before=before)
    assert spans(again) == spans(after) != spans(before)


@pytest.mark.parametrize(
    ("entries", "code", "line", "words"),
    [
        ((EXTENSION, "{rest: 2.5}", EXTENSION), "stop-too-short", 8, "needs 3 beats to stop, to be still and to start again"),
        ((EXTENSION, LINK, "{rest: 1.5}", EXTENSION), "stop-too-short", 9, "needs 2 beats to be still and to start again"),
        ((EXTENSION, "{hold: 2}", EXTENSION), "stop-too-short", 8, "needs 2.5 beats"),
        (("{hold: 4}", EXTENSION), "nothing-to-hold", 7, "nothing comes before Ash's hold"),
        ((EXTENSION, "{from: 6.1, hold: 4}"), "nothing-to-hold", 8, "extension ends at 5.1"),
        ((EXTENSION, "{hold: 4}", "{rest: 4}", EXTENSION), "rest-beside-hold", 9, "no pattern between them"),
        ((EXTENSION, "{from: 4.1, rest: 4}"), "blocks-overlap", 8, "runs to 5.1"),
        ((EXTENSION, "{rest: 400}"), "past-the-end", 8, "stop for 400 beats"),
        (("{accent: 99.1}", EXTENSION), "outside-the-track", 7, "99.1 is outside the track"),
        ((EXTENSION, "{rest: 4, until: 6.1}"), "bad-value", 8, "give the length of the rest once"),
        ((EXTENSION, "{rest: true}"), "bad-value", 8, "a rest needs a length in beats, such as rest: 4"),
        ((EXTENSION, "{rest: 0}"), "bad-value", 8, "0 beats is not more than 0"),
        ((EXTENSION, "{rest: 4, cycle: 2}"), "bad-value", 8, "cycle does not apply to a rest"),
        ((EXTENSION, "{hold: true, cycles: 2}"), "bad-value", 8, "counted in beats"),
        ((EXTENSION, "{rest: 4, pattern: extension}"), "bad-value", 8, "give one of pattern, phrase, link, rest"),
        ((EXTENSION, "{accent: 4.1, from: 3.1}"), "bad-value", 8, "from does not apply to an accent"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_where_it_is_written(entries, code, line, words):
    said = fault(*entries)
    assert said.startswith(f"s.yaml:{line}:")
    assert words in said
    assert code


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        ("{pattern: extension, beats: 4}, {accent: 9}", "the accent is on beat 9"),
        ("{pattern: extension, beats: 4}, {accent: 3.1}", "is not a beat of the phrase"),
        ("{accent: 1}", "has no steps but accents"),
        ("{rest: true}", "needs a length in beats"),
    ],
)
def test_what_cannot_be_in_a_phrase_is_refused(steps, words):
    said = fault("{phrase: hit}", phrases=f"  hit: [{steps}]\n")
    assert said.startswith("s.yaml:7:")
    assert words in said


def test_an_empty_hand_cannot_rest():
    said = fault(EXTENSION, "{hands: left, rest: 8}", prop="null, right: poi")
    assert "holds nothing in the left hand" in said
