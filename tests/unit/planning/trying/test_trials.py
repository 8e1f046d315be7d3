"""Changes tried on a show: what counts as cleared, as new, and as worse."""

from dataclasses import replace
from math import inf

import pytest

from sequencer.findings import Figure, Finding
from sequencer.planning.trying import trials as trials_module
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
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
        replace(slack, message=slack.message.replace("both hands", f"{side} hand"), hands=(side,))
        for side in ("left", "right")
    )
    assert left != slack
    only = FaultTrials(show=trials.show, _before={("tether-slack", ("Isa",)): [left]})
    assert only._new_or_worse([right], trials._plain) == (right,)
    assert only._new_or_worse([slack], trials._plain) == (slack,)
    assert trials._new_or_worse([left, right], trials._plain) == (), "half of it each"


def figure(quantity, value, limit=0.0, unit="m", *, least=False):
    return Figure(quantity=quantity, value=value, limit=limit, unit=unit, least=least)


def gap(value):
    return figure("gap to body", value, least=True)


def turns(value):
    return figure("turns", value, 2.5, "1/s")


def said(message, *figures):
    return Finding(
        code="self-hit", severity="stop", who=("Isa",), start=0.0, end=1.0, position="1.1",
        message=message, figures=figures,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("before", "after", "worse"),
    [
        ([gap(-0.02)], [gap(-0.04)], True),
        ([gap(-0.02)], [gap(-0.029)], False),  # less than is told of a length
        ([gap(-0.04)], [gap(-0.009)], False),
        ([figure("hand from shoulder", 0.664, 0.66)], [figure("hand from shoulder", 0.68, 0.66)], True),
        ([figure("hand from shoulder", 0.664, 0.66)], [figure("hand from shoulder", 0.65, 0.66)], False),
        ([turns(2.8)], [turns(3.2)], True),
        ([turns(2.8)], [turns(2.6)], False),
        ([turns(2.8)], [turns(2.81)], False),
        ([turns(2.8)], [turns(2.6), figure("pull", 70.0, 60.0, "N")], True),
        ([turns(2.8), figure("pull", 70.0, 60.0, "N")], [turns(2.6)], False),
        ([figure("tempo", 100, 140, "beats/min", least=True)], [figure("tempo", 100, 150, "beats/min", least=True)], True),
        ([figure("tempo", 100, 140, "beats/min", least=True)], [figure("tempo", 100, 130, "beats/min", least=True)], False),
        ([figure("tempo", 100, inf, "beats/min", least=True)], [figure("tempo", 100, inf, "beats/min", least=True)], False),
        ([figure("link", 1, 0, "beats"), figure("hand gap", 0.67, 0.03)], [figure("link", 2, 0, "beats"), figure("hand gap", 0.6, 0.03)], True),
        ([figure("link", 2, 0, "beats"), figure("hand gap", 0.67, 0.03)], [figure("link", 1, 0, "beats"), figure("hand gap", 0.3, 0.03)], False),
        ([gap(-0.02)], [], True),
        ([], [gap(-0.02)], True),
        ([gap(-0.02)], [turns(3.0)], True),
    ],
)  # fmt: skip
def test_what_is_worse_is_told_by_the_figures(before, after, worse):
    assert trials_module.worse(said("a: x", *before), said("b: y", *after)) is worse


@pytest.mark.parametrize(
    ("before", "after", "worse"),
    [
        ("nobody watches", "nobody watches now", True),
        ("nobody watches", "nobody watches", False),
        ("windmill, left hand: it goes slack", "stall, left hand: it goes slack", False),
    ],
)
def test_without_figures_only_the_same_is_no_worse(before, after, worse):
    assert trials_module.worse(said(before), said(after)) is worse


def test_a_first_look_is_made_once_and_counts_only_where_it_settles(trials, monkeypatch):
    looks = []
    monkeypatch.setattr(
        trials_module, "still_there",
        lambda _show, code, _block, changes, _more: looks.append(code) or changes[0][1] > 3,
    )  # fmt: skip
    (slack,) = trials.before["tether-slack", ("Isa",)]
    (block, *_), spent = trials.show.blocks, trials.spent
    assert trials.hopeless(slack, block, cycle(4))
    assert trials.hopeless(slack, block, cycle(4))
    assert not trials.hopeless(slack, block, cycle(2.25))
    assert looks == ["tether-slack"] * 2
    assert trials.spent == spent + 1
    flown = FaultTrials(show=trials.show, fly=True)
    assert not flown.hopeless(slack, block, cycle(4)), "what is slack as drawn may fly"


def test_of_what_only_the_worst_is_told_one_elsewhere_was_there_if_it_is_no_worse(trials):
    """Another block is the worst once the worst is mended; it may be anywhere, but not worse."""

    def let_go(beyond, start):
        return Finding(
            code="let-go-audience", severity="warn", who=("Isa",), start=start, end=None, position="1.1",
            message=f"{beyond}", figures=(figure("distance", -beyond, 1.0, least=True),),
        )  # fmt: skip

    only = FaultTrials(
        show=trials.show, _before={("let-go-audience", ("Isa",)): [let_go(67.0, 4.0)]}
    )
    elsewhere, farther = let_go(60.0, 20.0), let_go(68.0, 4.0)
    assert only._new_or_worse([elsewhere], trials._plain) == ()
    assert only._new_or_worse([farther], trials._plain) == (farther,)


def test_the_worst_of_a_block_stays_if_it_is_elsewhere_in_its_block():
    """The same pass comes again in every cycle: a block that ends earlier keeps it."""
    both = FaultTrials(
        show=staged(show_from_document(parse_document(TWO, "s.yaml")), even_song(48))
    )
    first, second = both.before["tether-slack", ("Isa",)]
    near = replace(first, code="flame-near-body", start=first.end - 0.05)
    earlier = replace(near, start=first.end - 3.0, message="elsewhere")
    only = FaultTrials(show=both.show, _before={("flame-near-body", ("Isa",)): [near]})
    assert only._stays(near, earlier, both._plain)
    other = replace(near, start=second.end - 1.0, end=second.end, message="elsewhere")
    assert not only._stays(near, other, both._plain)
    assert not only._stays(near, replace(earlier, who=("Ash",)), both._plain)


def test_the_worst_of_one_pattern_does_not_stand_for_another(trials):
    """A flame near the body is told of each pattern: another pattern that comes as near elsewhere is new."""

    def near(pattern, start, beyond=0.05):
        return Finding(
            code="flame-near-body", severity="warn", who=("Isa",), start=start, end=None, position="1.1",
            message=f"{pattern}, left hand: the burning wick lingers {beyond} m from the trunk", hands=("left",),
            figures=(gap(-beyond),),
        )  # fmt: skip

    only = FaultTrials(
        show=trials.show, _before={("flame-near-body", ("Isa",)): [near("windmill", 4.0)]}
    )
    later, other = near("windmill", 20.0), near("static-spin", 20.0)
    assert only._new_or_worse([later], trials._plain) == ()
    assert only._new_or_worse([other], trials._plain) == (other,)
    assert only._new_or_worse([near("windmill", 20.0, 0.08)], trials._plain) != ()


def test_a_flame_in_one_link_does_not_stand_for_one_in_another():
    """Of a pattern the nearest pass alone is told, wherever it comes back; each link is told by itself."""

    def near(label):
        return Finding(
            code="flame-near-body", severity="warn", who=("Isa",), start=4.0, end=5.0, position="1.1",
            message=f"{label}, left hand: the burning wick lingers 4 cm from the trunk at 0.8 m/s",
        )  # fmt: skip

    assert trials_module.of_one_worst(near("windmill"), near("windmill"))
    assert not trials_module.of_one_worst(near("windmill"), near("pendulum"))
    assert not trials_module.of_one_worst(near("link"), near("link"))
