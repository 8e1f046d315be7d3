"""The block "As flown": what is told of a period, and in which words."""

from dataclasses import replace
from math import log
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer.geometry.posture import PosedBody
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.flown.flyable import WouldFly
from sequencer.outputs.patterns.flown_words import (
    _wobble_words,
    flown_lines,
    flown_record,
    flown_words,
    off_words,
    pushed,
    reading,
    would_fly_words,
)
from sequencer.outputs.patterns.one_pattern import OnePattern, one_pattern
from sequencer.outputs.patterns.pattern_cards import card_text


@pytest.fixture(scope="module")
def weave():
    return one_pattern("three-beat-weave")


def limited(one, **limits):
    """The same with an arm that can do less, so that its flown motion breaks limits."""
    weak = {
        side: replace(period, flying=replace(period.flying, limits=FlownLimits(**limits)))
        for side, period in one.flown.items()
    }
    other = replace(one)
    vars(other)["flown"] = weak
    return other


def test_figures_are_those_of_the_motion(weave):
    """Newton's second law with the head's accelerations as second differences; drag is under 1 % of the pull."""
    record, period = flown_record(weave, "right"), weave.flown["right"]
    beats = np.arange(0.0, 3.0, 1 / 256)
    step = 1e-3
    second = 60 / 100 * step
    path = [period.head.at(beats + off * step) for off in (-1, 0, 1)]
    felt = (path[2] - 2 * path[1] + path[0]) / second**2 + np.array([0.0, 0.0, 9.80665])
    pull = 0.2 * np.linalg.norm(felt, axis=-1)
    drawn = weave.laws["right"].at(beats)
    head = np.linalg.norm(path[1] - drawn.head(0.51), axis=-1)
    hand = period.hand.at(beats)
    away = hand - PosedBody(weave.body, weave.posture).shoulder("right")

    assert record["pull_n"] == pytest.approx(pull.max(), rel=0.01)
    assert record["least_pull_n"] == pytest.approx(pull.min(), rel=0.01)
    assert record["least_pull_weights"] == pytest.approx(pull.min() / (0.2 * 9.80665), rel=0.03)
    assert record["head_off_rms_m"] == pytest.approx(np.sqrt(np.mean(head**2)), rel=0.01)
    assert record["head_off_m"] == pytest.approx(head.max(), rel=0.01)
    assert record["hand_off_m"] == pytest.approx(
        np.linalg.norm(hand - drawn.hand, axis=-1).max(), rel=0.02
    )
    assert record["reach_m"] == pytest.approx(np.linalg.norm(away, axis=-1).max(), rel=0.01)
    doubled = record["head_off_for_hand_off"] ** (record["doubles_in_s"] / (2 * 0.6))
    assert doubled == pytest.approx(2.0)


def test_a_pattern_that_flies_is_told_in_values(weave):
    record = flown_record(weave, "right") | {
        "head_off_rms_m": 0.033,
        "head_off_m": 0.064,
        "hand_off_rms_m": 0.004,
        "hand_off_m": 0.079,
        "tether_off_degrees": 15.4,
        "least_pull_n": 6.84,
        "pull_n": 14.72,
        "least_pull_weights": 3.48,
        "hand_speed_m_s": 1.91,
        "hand_acceleration_m_s2": 28.2,
        "head_speed_m_s": 6.41,
    }
    # pulls to the nearest tenth, shares of the weight down, speeds up to two figures
    assert flown_lines(record, "tether")[:4] == [
        "reads clean",
        "head typically 3 cm off the drawing, 6 cm at most; hand typically under 1 cm, 8 cm at most; tether up to 15°",
        "pull 6.8 to 14.7 N, never less than 3.4 of the head's weight",
        "hand up to 2.0 m/s and 29 m/s², head up to 6.5 m/s",
    ]


def test_a_card_tells_reach_speed_and_pull_once_as_flown(weave):
    text = card_text(weave)
    assert "as flown: reads clean" in text
    assert "not looked at: the other hand's prop, where your arms are, walking and turning" in text
    assert text.count("m from the shoulder") == 2  # each hand's own
    assert "pull up to" not in text
    block = text[text.index("as flown") : text.index("as drawn:")]
    for told in ("pull ", "m/s²", "from the shoulder", "wobbles"):
        assert told in block
    assert flown_words(weave).startswith("reads clean, the head ")
    assert flown_words(weave).endswith(" cm off the drawing")


def test_what_reads_soft_is_farther_off():
    for off, reads in ((0.15, "clean"), (0.151, "soft")):
        assert reading(SimpleNamespace(broken=(), head_off=(off, 0.4))) == reads
    assert reading(SimpleNamespace(broken=("pull",), head_off=(0.02, 0.03))) == "not flown"


def test_of_two_hands_the_worse_is_told():
    one = one_pattern("static-spin")
    hands = (("left", 0.02), ("right", 0.16))
    vars(one)["flown"] = {s: SimpleNamespace(broken=(), head_off=(off, 0.3)) for s, off in hands}
    assert flown_words(one) == "reads soft, the head typically 16 cm off the drawing"


def test_a_pattern_that_cannot_be_flown_says_why_and_what_would_do(weave, monkeypatch):
    asked = []

    def nearest(_one, side):
        asked.append(side)
        return WouldFly(84.0, None, 0.4, None)

    monkeypatch.setattr(OnePattern, "would_fly", nearest)
    told = []
    weak = limited(weave, hand_speed=1.5, hand_acceleration=10.0)
    record = flown_record(weak, "right", lambda subject, _: told.append(subject))

    assert asked == ["right"]
    assert told == ["looking for a tempo at which three-beat-weave flies"]
    assert record["broken_limits"] == ["speed", "acceleration"]
    assert record["would_fly"] == {"slower": 84.0, "faster": None, "shorter": 0.4, "longer": None}
    lines = flown_lines(record, "tether")
    assert (
        lines[0] == "cannot be flown at this tempo: 84 beats a minute or a tether of 40 cm would do"
    )
    assert lines[1].startswith("the hand cannot keep up: it would move at 2.0 m/s, and 1.5 m/s is")
    assert lines[2].startswith("the hand would have to snatch: ")
    assert lines[3].startswith("the nearest motion: head typically 3 cm off")
    assert flown_words(weak) == "cannot be flown at this tempo (see its card): shown as drawn"
    assert weak.flown_laws is weak.laws
    card = card_text(weak)
    assert "as flown: cannot be flown at this tempo: 84" in card
    assert card.index("pull up to") > card.index("as drawn:")  # the drawing's own figures
    unsearched = flown_record(weak, "right", search=False)
    assert flown_lines(unsearched, "tether")[0] == "cannot be flown at this tempo"
    assert asked.count("right") == 2  # once more for the card, but not without a search


def test_each_limit_has_its_words(weave):
    record = flown_record(weave, "right") | {
        "reads": "not flown",
        "would_fly": WouldFly(None, None, None, None)._asdict(),
        "broken_limits": ["pull", "reach", "pattern"],
        "least_pull_weights": -0.14,
        "spare_reach_m": -0.08,
        "tether_off_degrees": 104.2,
        "pushed": True,
    }
    assert flown_lines(record, "rope")[:-1] == [
        "cannot be flown at this tempo: no tempo or rope near these would do",
        "the head stops above the hand: it would have to be pushed, and a rope only pulls",
        "the rope goes slack: the head falls out of its path (pull down to -0.1 of its weight)",
        "the arm is 8 cm too short",
        "the rope would be up to 104° off the drawing: nobody would see the pattern",
    ]


def test_every_way_to_make_it_fly_is_named():
    def said(*values):
        return would_fly_words(WouldFly(*values), "tether")

    assert said(84.0, 130.0, None, None) == "84 or 130 beats a minute would do"
    assert said(None, None, None, 0.62) == "a tether of 62 cm would do"
    assert said(84.0, None, 0.4, 0.62) == "84 beats a minute or a tether of 40 cm or 62 cm would do"
    assert said(None, None, None, None) == "no tempo or tether near these would do"


@pytest.mark.parametrize(
    ("name", "stops"),
    [("stall", True), ("level-stall", False), ("pendulum", False), ("static-spin", False)],
)
def test_only_a_head_that_stops_above_the_hand_would_have_to_be_pushed(name, stops):
    """A stall stops at the top, a level stall beside the hand; a pendulum stops below it, a spin not at all."""
    one = one_pattern(name)
    assert pushed(SimpleNamespace(law=one.laws["right"], flying=one.flying("right"))) == stops


@pytest.mark.parametrize(
    ("doubles", "asks"), [(0.26, "leaves time"), (0.24, "needs a steady hand")]
)
def test_there_is_time_if_a_wobble_grows_no_faster_than_a_hand_answers(doubles, asks):
    grown = 2 ** (1.2 / doubles)  # over two beats of 0.6 s
    record = {
        "head_off_for_hand_off": grown,
        "doubles_in_s": 1.2 * log(2) / log(grown),
        "tether_m": 0.5,
    }
    said = _wobble_words(record)
    assert asks in said
    assert f"takes the head {grown:.0f} cm off" in said
    lost = _wobble_words(record | {"tether_m": grown / 100 - 0.001})
    assert "loses the head within two beats if nobody steers" in lost
    assert (", yet leaves" in lost) == (asks == "leaves time")
    calm = _wobble_words(record | {"head_off_for_hand_off": 0.8, "doubles_in_s": None})
    assert "takes the head 1 cm off" in calm
    assert "leaves time" in calm


def test_a_prop_that_the_hand_turns_flies_as_drawn():
    one = one_pattern("extension", prop="club")
    assert flown_record(one, "right") is None
    assert flown_words(one) == ""
    assert one.flies
    assert "flies as drawn" in card_text(one)
    assert "as flown" not in card_text(one)


def test_less_than_half_a_centimetre_is_not_called_nothing():
    assert off_words(0.0049) == "under 1 cm"
    assert off_words(0.0051) == "1 cm"


def test_a_left_hand_that_reads_otherwise_is_told_in_full(weave, monkeypatch):
    monkeypatch.setattr(OnePattern, "would_fly", lambda *_: WouldFly(84.0, None, None, None))
    weak = limited(weave, hand_speed=1.5)
    other = replace(weave)
    vars(other)["flown"] = {"left": weak.flown["left"], "right": weave.flown["right"]}
    left = card_text(other).split("left hand, where it differs:")[1]
    assert "as flown: cannot be flown at this tempo: 84 beats a minute would do" in left
    assert "as drawn:" in left
    assert "pull up to" in left
    alike = card_text(weave).split("left hand, where it differs:")
    assert len(alike) == 1 or "as drawn:" not in alike[1].split("danced with")[0]
