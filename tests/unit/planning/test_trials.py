"""Changes tried on a show: what counts as cleared, as new, and as worse."""

from dataclasses import replace

import pytest

from sequencer.findings import Finding
from sequencer.planning import trials as trials_module
from sequencer.planning.trials import DanceEdit, FaultTrials, _worse, pace_share
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Slow
track: {file: song.ogg}
venue:
  stage: {shape: round, width: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
cast:
  - {name: Isa, stature: 1.7 m, prop: {tether: 0.45 m}}
timeline:
  - {from: 2.1, pattern: static-spin, timing: together, cycle: 6, beats: 8}
  - {link: true, beats: 2}
  - {pattern: static-spin, timing: together, beats: 8}
"""


@pytest.fixture(scope="module")
def trials():
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(48))
    return FaultTrials(show=show)


def cycle(value):
    return DanceEdit(words=f"{value}", changes=((("timeline", 0, "cycle"), value),))


def test_a_change_clears_a_fault_if_nothing_of_its_kind_is_left_there(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    assert trials.of([slack], cycle(1)).clear
    assert not trials.of([slack], cycle(5)).cleared
    assert trials.confirmed([slack], cycle(1)).clear
    assert trials.has([slack])


def test_a_change_after_which_too_much_would_have_to_be_flown_is_not_waited_for(
    trials, monkeypatch
):
    """As many flights as are waited for are made; one more and nothing is proven. What is flown anyway costs nothing."""
    (slack,) = trials.before["tether-slack", ("Isa",)]
    quick = trials.of([slack], cycle(1)).after
    sizes = {id(quick): set(range(15)), id(trials._plain): {0, 1, 2}}
    monkeypatch.setattr(trials_module, "needs_flights", lambda _show: True)
    monkeypatch.setattr(trials_module, "_flown_sizes", lambda show: sizes[id(show)])
    assert trials.confirmed([slack], cycle(1)).clear
    sizes[id(quick)].add(15)
    assert trials.confirmed([slack], cycle(1)) is None


def test_a_change_that_brings_another_fault_does_harm(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    trial = trials.of([slack], cycle(0.25))
    assert trial.cleared
    assert not trial.clear
    assert {each.code for each in trial.harm} >= {"too-fast-to-dance"}


def test_a_change_that_does_not_fit_is_none_and_each_is_tried_once(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    nowhere = DanceEdit(words="", changes=((("timeline", 9, "cycle"), 1),))
    assert trials.of([slack], nowhere) is None
    spent = trials.spent
    assert trials.of([slack], nowhere) is None
    assert trials.of([slack], cycle(1)).clear
    assert trials.spent == spent


def test_steps_are_made_one_after_the_other(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    assert trials.of([slack], cycle(0.25), cycle(1)).clear


def test_a_fault_elsewhere_is_another_one(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    later = Finding(
        code=slack.code, severity="stop", who=slack.who, start=slack.start + 5.0, end=slack.end + 5.0,
        position="9.1", message=slack.message,
    )  # fmt: skip
    assert not trials.has([later])
    assert trials._new_or_worse([later], trials._plain) == (later,)
    assert trials._new_or_worse([slack], trials._plain) == ()


def test_a_fault_of_before_stands_for_one_of_now(trials):
    """Two beside one that was there: the one that is most like it was there, the other is new."""
    (slack,) = trials.before["tether-slack", ("Isa",)]
    beside = replace(
        slack, start=slack.start + 0.2, message=slack.message.replace("static", "other")
    )
    assert trials._new_or_worse([beside], trials._plain) == ()
    assert trials._new_or_worse([beside, slack], trials._plain) == (beside,)
    assert trials._new_or_worse([slack, slack], trials._plain) != ()


TWO = SHOW.replace(
    "timing: together, beats: 8}\n", "timing: together, cycle: 6, beats: 8}\n"
).replace("  - {link: true, beats: 2}\n", "")


def test_a_fault_in_the_next_block_is_new_however_near_it_is_in_time():
    """Two blocks that meet: the fault of the first ends where that of the second begins."""
    both = FaultTrials(
        show=staged(show_from_document(parse_document(TWO, "s.yaml")), even_song(48))
    )
    first, second = both.before["tether-slack", ("Isa",)]
    near = replace(second, start=first.end + 0.1, message=first.message)
    only = FaultTrials(show=both.show, _before={("tether-slack", ("Isa",)): [first]})
    assert only._new_or_worse([near], both._plain) == (near,)
    assert only._new_or_worse([first], both._plain) == ()


def test_a_fault_of_the_other_hand_is_new(trials):
    (slack,) = trials.before["tether-slack", ("Isa",)]
    left, right = (
        replace(slack, message=slack.message.replace("both hands", f"{side} hand"))
        for side in ("left", "right")
    )
    assert left != slack
    only = FaultTrials(show=trials.show, _before={("tether-slack", ("Isa",)): [left]})
    assert only._new_or_worse([right], trials._plain) == (right,)
    assert only._new_or_worse([slack], trials._plain) == (slack,)
    assert trials._new_or_worse([left, right], trials._plain) == (), "half of it each"


@pytest.mark.parametrize(
    ("before", "after", "worse"),
    [
        ("the prop goes 2 cm into the trunk", "the prop goes 4 cm into the trunk", True),
        ("the prop goes 4 cm into the trunk", "the prop goes 9 mm into the trunk", False),
        ("3 cm from the leg", "8 mm from the leg", True),
        ("3 cm from the leg", "4 cm from the leg", False),
        ("comes within 0.05 m of the floor", "reaches 2 cm into the floor", True),
        ("4 mm out of reach: 0.664 m", "2 cm out of reach: 0.680 m", True),
        ("moves at up to 7 m/s (limit 6)", "moves at up to 8 m/s (limit 6)", True),
        ("moves at up to 7 m/s (limit 6)", "moves at up to 6.5 m/s (limit 6)", False),
        ("too sharply (203, limit 160)", "too sharply (170, limit 160)", False),
        ("it stays taut from 140.0 on", "it stays taut from 150.0 on", True),
        ("nobody watches", "nobody watches now", True),
        ("nobody watches", "nobody watches", False),
        ("windmill, left hand: it goes slack", "stall, left hand: it goes slack", False),
        ("it goes slack where it blends", "it stays taut from 150.0 on", True),
        ("moves at up to 7 m/s (limit 6)", "2 cm out of reach", True),
        ("the prop goes 2 cm into the trunk", "moves at up to 7 m/s (limit 6)", True),
        ("need a link of 1 beat (hand 67 cm)", "need a link of 2 beats (hand 80 cm)", True),
        ("no link joins them (hand 30 cm)", "no link joins them (hand 67 cm)", True),
        ("no link joins them (hand 67 cm)", "no link joins them (hand 30 cm)", False),
        ("need a link of 2 beats (hand 67 cm)", "need a link of 1 beat (hand 30 cm)", False),
    ],
)
def test_what_is_worse_is_read_from_the_figures(before, after, worse):
    assert _worse(before, after) is worse


def test_the_pace_that_may_do_is_read_from_the_figures():
    slack = "the tether goes slack at 100 beats a minute; it stays taut from 200.0 on"
    assert pace_share(slack) == pytest.approx(0.51)
    assert pace_share("the prop turns up to 5 times a second (limit 2.5)") == pytest.approx(1.96)
    assert pace_share("the hand accelerates at up to 320 m/s² (limit 80)") == pytest.approx(1.96)
    assert pace_share("the tethers touch") == 1.0
