"""The page of one pattern: it comes home, its stations are those of the build, it loops without a jump."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.outputs.patterns.one_pattern import OnePattern, one_pattern
from sequencer.outputs.rehearsal.pattern import pattern_document, pattern_page


@pytest.fixture(autouse=True)
def as_drawn(monkeypatch):
    """The drawing; what is flown has its own tests below."""
    monkeypatch.setattr(OnePattern, "flown", {})


def test_stations_are_those_of_the_build():
    document = pattern_document(one_pattern("pro-bend-4"))
    steps = one_pattern("pro-bend-4").stations()

    assert [beat for beat, *_ in document["stations"]] == [step.beat for step in steps[:-1]]
    assert document["stations"][0][1] == (
        "step 1 · hand at 6 o’clock · backward, wheel plane · next: hand to half past four; poi swings back towards "
        "you into the wall plane, anticlockwise"
    )


def test_odd_lobes_take_two_cycles_to_come_home():
    """docs/motion.md, section 3: the state after one cycle of odd N is reversed, after two it is not."""
    assert pattern_document(one_pattern("pro-bend-3"))["blocks"][0][2] == 6.0
    assert pattern_document(one_pattern("pro-bend-4"))["blocks"][0][2] == 4.0


def test_a_cycle_of_other_length_moves_the_stations():
    document = pattern_document(one_pattern("pro-bend-4", {"beats": 8}))

    assert document["stations"][-1][0] == 7.0
    assert document["duration"] == pytest.approx(8 * 60 / 100)


def test_a_pattern_without_stations_has_quarters():
    document = pattern_document(one_pattern("three-beat-weave"))

    assert document["stations"][1][1] == "quarter 2 of a round of the hand"


def test_the_whole_vocabulary_has_a_page():
    from sequencer.motion.patterns.library import patterns

    for name in patterns():
        document = pattern_document(one_pattern(name))
        assert document["error"]["measured"] < 2e-3
        assert document["duration"] > 0
        assert np.all(np.diff([beat for beat, *_ in document["stations"]]) > 0)


@pytest.mark.parametrize(
    ("given", "says"),
    [({"timing": "late"}, "timing must be"), ({"direction": "up"}, "direction must")],
)
def test_what_makes_no_sense_is_refused(given, says):
    with pytest.raises(ValueError, match=says):
        pattern_document(one_pattern("pro-bend-4", {}, **given))


def test_unknown_names_are_refused():
    with pytest.raises(ValueError, match="pro-bend"):
        pattern_page(one_pattern("pro-bnd-4"))


# --- what is flown ----------------------------------------------------------------------------------


def test_flown_is_danced_and_drawn_is_there_too():
    """Each motion's tracks are those of the page of that motion alone."""
    one, other = one_pattern("three-beat-weave"), one_pattern("static-spin", {"beats": 3})
    vars(one)["flown_laws"] = other.laws
    both = pattern_document(one)["cast"]
    tracks = [
        pattern_document(each)["cast"][0]["tracks"]
        for each in (one_pattern("three-beat-weave"), other)
    ]

    assert len(both) == 1
    assert tracks[0] != tracks[1]
    assert both[0]["drawn"] == tracks[0]
    assert both[0]["tracks"] == tracks[1]


def test_the_page_tells_how_it_is_flown(monkeypatch):
    monkeypatch.undo()
    document = pattern_document(one_pattern("three-beat-weave"))
    (lines,) = document["texts"]

    assert "danced as flown; key F: as drawn" in lines
    assert "as flown, reads clean" in lines
    assert sum(line.startswith("pull ") for line in lines) == 1
    assert document["not_checked"] == [
        "the other hand's prop, where your arms are, walking and turning, in how it is flown"
    ]


def test_a_prop_that_the_hand_turns_is_danced_as_drawn():
    document = pattern_document(one_pattern("three-beat-weave", prop="club"))

    assert "flies as drawn" in document["texts"][0]
    assert "drawn" not in document["cast"][0]
    assert document["not_checked"] == []


def test_what_cannot_be_flown_is_danced_as_drawn_and_says_so(monkeypatch):
    monkeypatch.undo()
    one = one_pattern("three-beat-weave")
    weak = FlownLimits(hand_speed=0.5)
    vars(one)["flown"] = {
        side: replace(period, flying=replace(period.flying, limits=weak))
        for side, period in one.flown.items()
    }
    monkeypatch.setattr(OnePattern, "would_fly", None)  # nobody searches for a page
    document = pattern_document(one)
    (lines,) = document["texts"]

    assert "cannot be flown at this tempo (see its card): shown as drawn" in lines
    assert any(line.startswith("the hand cannot keep up") for line in lines)
    assert not any("danced as flown" in line for line in lines)
    assert "drawn" not in document["cast"][0]
