"""What is told of a flown hand in place of its drawing: flames by dense sampling of the flight, pace by its turns alone."""

from functools import cache
from itertools import pairwise

import numpy as np
import pytest

from sequencer.checks.dance import feasible as drawn_check
from sequencer.checks.dance import flown_in_place
from sequencer.checks.dance.as_flown import as_flown
from sequencer.checks.dance.feasible import feasible
from sequencer.checks.dance.flown_feasible import (
    CHECK_AS_FLOWN,
    OF_THE_FLIGHT,
    feasible_as_flown,
    flight_faults,
)
from sequencer.checks.dance.flown_in_place import own_gaps
from sequencer.checks.suite import examined
from sequencer.findings import Figure
from sequencer.geometry.segments import segment_segment
from sequencer.motion.performers.feasibility import GAP_ERROR
from sequencer.motion.props.prop import SHAFT_RADIUS
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.in_flight.flown_strains import strains
from tests.nothing_kept import nothing_kept
from tests.unit.checks.dance import solo
from tests.unit.checks.dance.solo import SHOW, stage

WEAVES = """\
  - {from: 3.1, pattern: two-beat-weave, cycle: 2, beats: 14, timing: together}
  - {link: true, beats: 2}
  - {pattern: pro-bend-4, cycle: 4, beats: 14, timing: together}
"""


@cache
def show():
    return stage(WEAVES)


def sampled(dancer, side, low, high):
    """The least distance of tether and head from trunk, head and legs at 4,000 places, by segments."""
    hand = dancer.trajectories[side]
    beats = np.linspace(low, high, 4_000)
    held, head = hand.hand.at(beats), hand.head.at(beats)
    prop, least = dancer.props[side], np.inf
    for capsule, start, end in zip(
        dancer.body.capsules, *dancer.carriage.capsule_ends(beats), strict=True
    ):
        for a, radius in ((held, SHAFT_RADIUS[prop.kind]), (head, prop.wick_radius)):
            gap = segment_segment(a, head, start, end)[0] - radius - capsule.radius
            least = min(least, float(gap.min()))
    return least


def test_gaps_of_a_flight_are_those_of_its_own_beats(monkeypatch):
    """Every beat against sampling: stretches of the same length are not taken for one another."""
    wide = "limits: {own_body: 0.3}\nfire:\n"
    monkeypatch.setattr(solo, "SHOW", solo.SHOW.replace("fire:\n", wide))
    own = stage(WEAVES)
    (dancer,) = flown_show(own).staged.dancers
    near = 0
    for side in ("left", "right"):
        for low, high, least in own_gaps(own, dancer).of(side):
            seen = sampled(dancer, side, low, high)
            if least.label < 0:
                assert seen >= 0.3 - 1e-9
            else:
                near += 1
                assert seen - GAP_ERROR <= least.value <= seen + GAP_ERROR, (side, low)
                assert low <= least.beat <= high
    assert near >= 10


def test_flames_near_the_body_are_those_of_the_flight():
    """Each as near as a beat of the flight in its pattern or link is, and not where only the drawing comes near."""
    (dancer,) = flown_show(show()).staged.dancers
    told = [each for each in feasible_as_flown(show()).findings if each.code == "flame-near-body"]
    assert told
    for each in told:
        beat = float(show().tempo.beats_from_seconds(np.array(each.start)))
        value = each.figures[0].value
        gaps = [
            least.value for side in each.hands for low, high, least in own_gaps(show(), dancer).of(side)
            if low <= beat <= high
        ]  # fmt: skip
        assert min(gaps) == pytest.approx(value)
    drawn = {
        each.figures[0].value
        for each in feasible(show()).findings
        if each.code == "flame-near-body"
    }
    assert drawn != {each.figures[0].value for each in told}


def test_who_is_not_lit_has_no_flame_near(monkeypatch):
    """With no flame only what goes into the body is sought."""
    late = solo.SHOW.replace("{who: Ash, from: 1.1, until", "{who: Ash, from: 18.1, until")
    assert late != solo.SHOW
    monkeypatch.setattr(solo, "SHOW", late)
    dark = stage(WEAVES)
    assert [f for f in feasible_as_flown(dark).findings if f.code == "flame-near-body"] == []
    (dancer,) = flown_show(dark).staged.dancers
    assert all(least.label < 0 for low, _, least in own_gaps(dark, dancer).of("left") if low < 60.0)


def nears(of, low, high):
    """How near the left prop comes to the body on the stretches between two beats, where that was asked."""
    (dancer,) = flown_show(of).staged.dancers
    return [
        (start, end, least.value)
        for start, end, least in own_gaps(of, dancer).of("left")
        if low <= start and end <= high and least.label >= 0
    ]


def test_a_flame_that_is_lit_within_a_slice_is_sought_from_then_on(monkeypatch):
    """Slices are sixteen beats: who is lit at beat 24 has a flame in half of that from 16 to 32."""
    wide = solo.SHOW.replace("fire:\n", "limits: {own_body: 0.3}\nfire:\n")
    monkeypatch.setattr(solo, "SHOW", wide)
    through_it = nears(stage(WEAVES), 24.0, 32.0)
    late = wide.replace("{who: Ash, from: 1.1, until", "{who: Ash, from: 7.1, until")
    assert late != wide
    monkeypatch.setattr(solo, "SHOW", late)
    assert nears(stage(WEAVES), 24.0, 32.0) == through_it != []


def test_what_counts_as_near_is_known_apart(monkeypatch):
    """The same dance with another limit: what was found for one is not told of the other."""
    with nothing_kept():
        counts = []
        for limit in ("0.3", "0.05"):
            text = SHOW.replace("fire:\n", f"limits: {{own_body: {limit}}}\nfire:\n")
            monkeypatch.setattr(solo, "SHOW", text)
            counts.append(len(nears(stage(WEAVES), 0.0, 48.0)))
    assert counts[0] > counts[1]


def test_slices_that_are_searched_together_are_each_as_alone(monkeypatch):
    """To the last digit: what is known of one must not depend on what was asked with it."""
    wide = solo.SHOW.replace("fire:\n", "limits: {own_body: 0.3}\nfire:\n")
    monkeypatch.setattr(solo, "SHOW", wide)
    (dancer,) = flown_show(stage(WEAVES)).staged.dancers
    windows = list(flown_in_place._windows(dancer, flown_in_place._stretches_of(dancer), 0.3))
    assert len(windows) > 2
    with nothing_kept():
        together = flown_in_place._gaps_in(windows)
    with nothing_kept():
        alone = [flown_in_place._gaps_in([each])[0] for each in windows]
    assert repr(together) == repr(alone)  # a beat may be nan
    assert len({repr(each) for each in alone}) == len(windows)


TURNS = """\
  - {from: 3.1, pattern: two-beat-weave, cycle: 2, beats: 16, hands: left}
  - {from: 12.1, pattern: two-beat-weave, cycle: 2, beats: 16, hands: right}
"""


def test_hands_that_dance_in_turns_both_have_flames(monkeypatch):
    """Each over all that it flies, against sampling; a finding of each."""
    wide = SHOW.replace("fire:\n", "limits: {own_body: 0.2}\nfire:\n")
    monkeypatch.setattr(solo, "SHOW", wide)
    own = stage(TURNS)
    (dancer,) = flown_show(own).staged.dancers
    assert (
        dancer.trajectories["left"].head.end < dancer.trajectories["right"].head.start
    )  # one after the other
    for side in ("left", "right"):
        head = dancer.trajectories[side].head
        found = own_gaps(own, dancer).of(side)
        assert (found[0][0], found[-1][1]) == (head.start, head.end)
        assert all(before[1] == after[0] for before, after in pairwise(found))
        near = [each for each in found if each[2].label >= 0]
        assert near
        for low, high, least in near:
            assert sampled(dancer, side, low, high) == pytest.approx(least.value, abs=GAP_ERROR)
    told = [each for each in feasible_as_flown(own).findings if each.code == "flame-near-body"]
    assert {each.hands for each in told} == {("left",), ("right",)}


STALLED = """\
  - {from: 3.1, pattern: stall, beats: 8, timing: together}
  - {link: true, beats: 2}
  - {pattern: extension, cycle: 2, beats: 4, timing: together}
  - {link: true, beats: 2}
  - {pattern: stall, beats: 8, timing: together}
"""


RUN = SHOW.replace(
    "at: [0, 4]}}\n", "at: [-4, 4]}}\n  over: {spots: {Ash: {at: [4, 4]}}}\n"
).replace("from: 1.1}\n", "from: 1.1}\n  - {formation: over, from: START, beats: 4}\n", 1)


def test_a_strain_beside_a_stall_is_told(monkeypatch):
    """Nothing asks for a mend of a stall: what is strained beside it by running across the stage would be lost."""
    monkeypatch.setattr(solo, "SHOW", RUN.replace("START", "5.3"))
    told = [each for each in as_flown(stage(STALLED)).findings if each.code == "strained-as-flown"]
    assert {each.hands for each in told} == {("left",), ("right",)}
    assert all("accelerate" in each.message for each in told)


HURRIED = """\
  - {from: 3.1, pattern: two-beat-weave, cycle: 2, beats: 8, timing: together}
  - {link: true, beats: 1}
  - {pattern: extension, cycle: 2, beats: 6, timing: together}
"""


def test_a_strain_beside_a_link_that_is_told_follows_from_it(monkeypatch):
    """Running ends where the link of the left hand fails, which warns; the strain after it is of nothing else."""
    limits = "limits: {hand_acceleration: 40}\nfire:\n"
    monkeypatch.setattr(solo, "SHOW", RUN.replace("START", "4.3").replace("fire:\n", limits))
    own = stage(HURRIED)
    (strain,) = strains(flown_show(own))
    assert (strain.side, strain.follows) == ("left", (((16.0, 17.0),),))
    codes = [(each.code, each.position) for each in as_flown(own).findings]
    assert ("link-cannot-be-flown", "5.1") in codes
    assert "strained-as-flown" not in dict(codes)


FAST = (
    Figure(quantity="hand speed", value=9.0, limit=6.0, unit="m/s"),
    Figure(quantity="turns", value=3.1, limit=2.5, unit="1/s"),
)


@pytest.mark.parametrize(
    ("figures", "told"),
    [
        (FAST, ["two-beat-weave, left hand: the prop turns up to 3.1 times a second (limit 2.5)"]),
        (FAST[:1], []),
    ],
)
def test_of_a_drawing_s_pace_only_the_turns_are_told(monkeypatch, figures, told):
    words = (
        "the hand moves at up to 9.0 m/s (limit 6)",
        "the prop turns up to 3.1 times a second (limit 2.5)",
    )

    def pace(case, side):
        span = case.trajectory(side).spans[2]
        if side == "right":
            return []
        return [
            case.finding(
                "too-fast-to-dance", "warn", span, "two-beat-weave, left hand: " + "; ".join(words[: len(figures)]),
                (), hands=(side,), figures=figures,
            )
        ]  # fmt: skip

    monkeypatch.setattr(drawn_check, "_pace", pace)
    own = stage(WEAVES)
    found = [each for each in feasible_as_flown(own).findings if each.code == "too-fast-to-dance"]
    assert [each.message for each in found] == told
    assert [each.message for each in flight_faults(own) if each.code == "too-fast-to-dance"] == told
    assert len([each for each in feasible(own).findings if each.code == "too-fast-to-dance"]) == 1


def test_what_stands_in_is_told_as_drawn(monkeypatch):
    """A circle of twelve beats is far too slow to fly: its drawing is what there is."""
    monkeypatch.setattr(solo, "SHOW", solo.SHOW.replace("fire:\n", "limits: {pull: 1.5}\nfire:\n"))
    slow = stage("  - {from: 3.1, pattern: extension, cycle: 12, beats: 12}\n")
    courses = flown_show(slow).staged.dancers[0].trajectories["left"].courses
    assert not any(each.flown for each in courses if each.start <= 12.0 < each.end)
    drawn, flown = (
        [each for each in run(slow).findings if each.code == "too-fast-to-dance"]
        for run in (feasible, feasible_as_flown)
    )
    assert flown == drawn != []


def test_sentences_on_what_was_not_checked_are_those_of_the_flight():
    said = CHECK_AS_FLOWN.outcome(show()).not_checked
    assert not any("walking" in each or "in blocks only" in each for each in said)
    assert any("walking" in each for each in feasible(show()).not_checked)
    outcome, _ = examined(show(), flown=True)
    assert not any("how near a flame" in each for each in outcome.not_checked)
    assert {each.code for each in outcome.findings if each.code in OF_THE_FLIGHT} <= set(
        OF_THE_FLIGHT
    )
    assert [each for each in outcome.findings if each.code == "flame-near-body"] == [
        each for each in feasible_as_flown(show()).findings if each.code == "flame-near-body"
    ]
