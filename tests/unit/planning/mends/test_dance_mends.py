"""Mends of the dance: each is made in the file, and the file is checked from its text."""

import re
from types import SimpleNamespace

import pytest

from sequencer.checks.suite import checked
from sequencer.planning.edits.ladders import Ladder, spanned_cost
from sequencer.planning.mends import dance_mends
from sequencer.planning.mends.dance_mends import causes, sought
from sequencer.planning.trying.fault_places import FaultPlace
from sequencer.planning.trying.trial_limits import Allowance
from sequencer.planning.trying.trials import DanceEdit, FaultTrials, faults_of
from sequencer.show.editing import edited_text
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song

HEAD = """\
title: Mends
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
cast:
"""
SOLO = "  - {name: Isa, stature: 1.7 m, prop: {tether: 0.45 m}}\n"
BOTH = SOLO + "  - {name: Ash, stature: 1.75 m, prop: {tether: 0.45 m}}\n"
STAFF = "  - {name: Isa, stature: 1.8 m, right: {kind: staff, length: 1.3 m, mass: 750 g}}\n"
WALKS = """\
formations:
  near: {spots: {Isa: {at: [-4, 4]}, Ash: {at: [4, 4]}}}
  far: {spots: {Isa: {at: [-4, 8]}, Ash: {at: [4, 4]}}}
staging:
  - {formation: near, from: 1.1}
  - {formation: far, from: 3.1, beats: 3}
"""
PLAIN = "pattern: static-spin, timing: together"
TRIED = {
    "slack": (SOLO, f"  - {{from: 2.1, {PLAIN}, cycle: 6, beats: 8}}\n", "tether-slack", "a cycle of "),
    "pace": (SOLO, f"  - {{from: 2.1, {PLAIN}, cycle: 0.25, beats: 8}}\n", "too-fast-to-dance", "a cycle of "),
    "reach": (SOLO, f"  - {{from: 2.1, {PLAIN}, with: {{ahead: 40 cm}}, beats: 8}}\n", "hand-out-of-reach", "ahead "),
    "link": (
        SOLO,
        "  - {from: 2.1, pattern: windmill, beats: 7}\n  - {link: true, beats: 0.5}\n  - {pattern: extension-with-antispin, beats: 8}\n",
        "link-too-hard",
        "give the link ",
    ),
    "twist": (
        STAFF,
        "  - {from: 2.1, pattern: extension, cycle: 1.5, beats: 14}\n  - {link: true, beats: 1}\n  - {pattern: wheel-spin, cycle: 1.5, beats: 8}\n",
        "link-too-hard",
        "give the link ",
    ),
    "walk": (BOTH + WALKS, f"  - {{who: Isa, from: 2.1, {PLAIN}, beats: 8}}\n", "walks-too-fast", "give the walk "),
}  # fmt: skip


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(64))


def text_of(cast, timeline):
    return f"{HEAD}{cast}timeline:\n{timeline}"


@pytest.mark.parametrize("name", TRIED)
def test_a_mend_holds_in_the_file_and_names_its_number(name):
    cast, timeline, code, words = TRIED[name]
    text = text_of(cast, timeline)
    show = stage(text)
    found = faults_of(show)
    (cause, *_) = [each for each in causes(show, found) if each.code == code]
    answer = sought(FaultTrials(show=show), cause)
    assert answer.mends[0].words.startswith(words)
    for mend in answer.mends:
        changed = text
        for step in mend.steps:
            changed = edited_text(changed, list(step.changes), step.insertions)
        after = [each for each in checked(stage(changed)).findings if each.severity != "note"]
        assert code not in {each.code for each in after}
        assert {each.code for each in after} <= {each.code for each in found}
        assert [each.code for each in faults_of(mend.after)] == [each.code for each in after]


def test_a_unit_stays_and_a_range_is_clear_to_both_ends():
    cast, timeline, code, _ = TRIED["reach"]
    text = text_of(cast, timeline)
    show = stage(text)
    (cause, *_) = [each for each in causes(show, faults_of(show)) if each.code == code]
    mend = sought(FaultTrials(show=show), cause, most=1).mends[0]
    assert " cm (now 40 cm) (the circle " in mend.words
    assert mend.words.endswith(" cm nearer to you)")
    numbers = mend.words.removeprefix("ahead ").split(" cm")[0].split(" to ")
    for number in numbers:
        after = stage(text.replace("ahead: 40 cm", f"ahead: {number} cm"))
        assert code not in {each.code for each in faults_of(after)}
    ((path, value),) = mend.steps[0].changes
    assert path == ("timeline", 0, "with", "ahead")
    assert value == f"{numbers[-1]} cm", "the smallest change is the one that is written"


def test_the_smallest_change_is_offered_though_the_pattern_fits_best_far_from_it():
    """The window for the pattern by itself asks for more room than the checks do: here it ends far below 45 cm."""
    text = text_of(
        SOLO.replace("0.45 m", "0.51 m"),
        "  - {from: 2.1, pattern: three-beat-weave, with: {ahead: 50 cm}, beats: 12}\n",
    )
    show = stage(text)
    (cause, *_) = [
        each for each in causes(show, faults_of(show)) if each.code == "hand-out-of-reach"
    ]
    mend = sought(FaultTrials(show=show), cause, most=1).mends[0]
    ((_, value),) = mend.steps[0].changes
    number = int(value.removesuffix(" cm"))
    assert 45 < number < 50
    nearer = stage(text.replace("ahead: 50 cm", f"ahead: {number + 1} cm"))
    assert cause.code in {each.code for each in faults_of(nearer)}


def test_a_cycle_far_too_long_is_told_as_all_that_do_and_may_be_left_out():
    text = text_of(
        SOLO, "  - {from: 2.1, pattern: extension, timing: together, beats: 16, cycle: 30}\n"
    )
    show = stage(text)
    (cause, *_) = [each for each in causes(show, faults_of(show)) if each.code == "tether-slack"]
    first, second = sought(FaultTrials(show=show), cause, most=2).mends
    low, high = first.words.removeprefix("a cycle of ").split(" beats")[0].split(" to ")
    assert float(low) < 3 <= float(high)
    assert "beats a circle quicker" in first.words
    assert second.words.startswith("leave cycle out: the tool then takes ")
    assert second.steps[0].changes == ((("timeline", 0, "cycle"), None),)


def test_a_cycle_far_too_long_between_blocks_that_touch_is_told_with_a_number():
    """A quarter of its circle fits the block, so what keeps that taut says little of the whole circle."""
    text = text_of(
        SOLO,
        "".join(f"  - {{{start}{PLAIN}{cycle}, beats: 8}}\n" for start, cycle in
                (("from: 2.1, ", ""), ("", ", cycle: 30"), ("", ""))),
    )  # fmt: skip
    show = stage(text)
    (cause, *_) = [each for each in causes(show, faults_of(show)) if each.code == "tether-slack"]
    words = sought(FaultTrials(show=show), cause, most=1).mends[0].words
    assert words.startswith("a cycle of 1.5 to 2.5 beats")
    assert "(now 30)" in words


def test_a_range_of_a_link_says_who_gives_the_beats():
    cast, timeline, code, _ = TRIED["link"]
    show = stage(text_of(cast, timeline))
    (cause, *_) = [each for each in causes(show, faults_of(show)) if each.code == code]
    words = sought(FaultTrials(show=show), cause, most=1).mends[0].words
    assert re.fullmatch(
        r"give the link 1 to (\S+) beats \(now 0.5\) \(windmill before it ends 0.5 to (\S+) beats earlier\)",
        words,
    )


@pytest.mark.parametrize(
    ("low", "high", "told"),
    [
        ("ends 0.5 beats earlier", "ends 2 beats earlier", "ends 0.5 to 2 beats earlier"),
        ("ends 1 beat earlier", "ends 2 beats earlier", "ends 1 to 2 beats earlier"),
        ("29 beats a circle quicker", "27 beats a circle quicker", "27 to 29 beats a circle quicker"),
        ("it ends 1 beat earlier", "it starts 1 beat later", "it ends 1 beat earlier, or it starts 1 beat later"),
        ("nothing else moves", "nothing else moves", "nothing else moves"),
        ("", "", ""),
    ],
)  # fmt: skip
def test_what_both_ends_of_a_range_cost_is_told_in_one(low, high, told):
    assert spanned_cost(low, high) == told


def stand_in(clear, staged_clear):
    """Trials in which some values are clear as drawn, and some as staged."""

    def trial(values):
        return lambda _faults, *steps: SimpleNamespace(
            after="after",
            cleared=steps[-1].value in values,
            harm=(),
            clear=steps[-1].value in values,
        )

    return SimpleNamespace(
        show=None, spent=0, looked=0, allowance=Allowance(), of=trial(clear), confirmed=trial(staged_clear),
        hopeless=lambda _fault, _block, step: step.value not in clear,
    )  # fmt: skip


def rungs(*values):
    return [DanceEdit(words=f"{value}", value=value) for value in values]


def test_both_ends_of_a_range_are_tried_as_staged(monkeypatch):
    cause = SimpleNamespace(faults=(), place=FaultPlace(who="Isa"))
    ladder = Ladder(
        name="x", rungs=rungs(1, 2, 3, 4, 5), step=1.0, widest=4,
        range_words=lambda low, high: f"{low.value} to {high.value}",
    )  # fmt: skip
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    (mend,) = sought(stand_in({1, 2, 3, 4, 5}, {1, 2, 3}), cause).mends
    assert mend.words == "1 to 3"
    (mend,) = sought(stand_in({1, 2, 3, 4, 5}, {1, 2, 3, 4, 5}), cause).mends
    assert mend.words == "1 to 5"
    (mend,) = sought(stand_in({1, 2, 3, 4, 5}, {1}), cause).mends
    assert mend.words == "1"


def test_the_least_change_next_to_one_that_is_clear_is_taken(monkeypatch):
    """Of a value of 9, those tried first are 8 and 4; 5 and 6 do too, 6 only as drawn."""
    cause = SimpleNamespace(faults=(), place=FaultPlace(who="Isa"))
    ladder = Ladder(name="x", rungs=rungs(8, 4, 7, 6, 5), most=2, step=1.0, now=9.0)
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    (mend,) = sought(stand_in({4, 5, 6}, {4, 5}), cause).mends
    assert mend.steps[0].value == 5


def test_a_range_holds_only_what_was_tried_and_no_more_than_is_told(monkeypatch):
    cause = SimpleNamespace(faults=(), place=FaultPlace(who="Isa"))
    ladder = Ladder(
        name="x", rungs=rungs(9, 8, 7, 6, 5, 4, 3), step=1.0, widest=3,
        range_words=lambda low, high: f"{low.value} to {high.value}",
    )  # fmt: skip
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    for clear, told in ((set(range(3, 10)), "6 to 9"), ({9, 8, 6}, "8 to 9"), ({9, 7, 6}, "9")):
        (mend,) = sought(stand_in(clear, clear), cause).mends
        assert mend.words == told
        assert [own.value for own in mend.span] == (
            list(range(int(told[0]), 10)) if "to" in told else []
        )


@pytest.mark.parametrize("clear", [50, 51, 52, 63, 69, 75, 76, 88, 99, 100])
def test_the_way_to_where_it_fits_is_cut_in_halves_and_what_is_hopeless_never_staged(
    monkeypatch, clear
):
    """Of 50 values on the way some are hopeless at a first look: a few looks find the first that may do."""
    place = FaultPlace(who="Isa", blocks=("a block",))
    cause = SimpleNamespace(faults=("a fault",), place=place)
    way = rungs(*range(100, 50, -1))
    ladder = Ladder(
        name="x", rungs=[*way, *rungs(50, 49)], most=3, step=1.0, now=101.0, approach=way
    )
    looked, tried = [], []
    trials = stand_in(set(range(clear + 1)), set(range(clear + 1)))
    seen, made = trials.hopeless, trials.of
    trials.hopeless = lambda fault, block, step: (
        looked.append(step.value) or seen(fault, block, step)
    )
    trials.of = lambda faults, *steps: tried.append(steps[-1].value) or made(faults, *steps)
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    (mend,) = sought(trials, cause, ranged=False).mends
    assert mend.steps[0].value == clear
    assert tried == [clear]
    assert len(set(looked)) <= 8
    trials.hopeless = lambda _fault, _block, _step: True
    tried.clear()
    assert sought(trials, cause).mends == ()
    assert tried == []


@pytest.mark.parametrize("now", [None, 0.0])
def test_where_many_values_break_a_join_only_one_in_three_is_tried_on(monkeypatch, now):
    """Only of places and sizes, where what is clear is sought on from there; of shifts each is another."""
    show = SimpleNamespace(tempo=TempoMap.steady(120.0))
    cause = SimpleNamespace(faults=("a fault",), place=FaultPlace(who="Isa"))
    ladder = Ladder(name="x", rungs=rungs(*range(1, 21)), most=20, step=1.0 if now is not None else 0.0, now=now)  # fmt: skip
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    tried = []
    join = SimpleNamespace(code="needs-a-link", position="3.1")

    def of(_faults, *steps):
        value = steps[-1].value
        tried.append(value)
        clear = value in (13, 14, 15)
        return SimpleNamespace(after=show, cleared=True, harm=() if clear else (join,), clear=clear)

    trials = stand_in((), ())
    trials.of, trials.confirmed = of, of
    (mend,) = sought(trials, cause, ranged=False).mends
    assert mend.steps[0].value == 13
    looked = list(dict.fromkeys(tried))
    assert looked[:6] == [1, 2, 3, 4, 5, 6]
    if now is None:
        assert looked == list(range(1, 14))
    else:
        assert looked[6:9] == [9, 12, 15]  # then back from 15 to where it is no longer clear
        assert set(looked[9:]) == {12, 13, 14} - {12}


def test_values_that_break_a_join_count_only_in_a_row(monkeypatch):
    show = SimpleNamespace(tempo=TempoMap.steady(120.0))
    cause = SimpleNamespace(faults=("a fault",), place=FaultPlace(who="Isa"))
    ladder = Ladder(name="x", rungs=rungs(*range(1, 21)), most=20, step=1.0, now=0.0)
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([ladder]))
    tried = []
    join, hit = (
        SimpleNamespace(code=code, position="3.1") for code in ("needs-a-link", "self-hit")
    )

    def of(_faults, *steps):
        tried.append(steps[-1].value)
        harm = (hit,) if tried[-1] % 5 == 0 else (join,)
        return SimpleNamespace(after=show, cleared=True, harm=harm, clear=False)

    trials = stand_in((), ())
    trials.of = of
    monkeypatch.setattr(dance_mends, "_followed", lambda *_: [])
    assert sought(trials, cause, ranged=False).mends == ()
    assert tried == list(range(1, 21))


def test_where_one_kind_has_helped_the_others_are_tried_less(monkeypatch):
    cause = SimpleNamespace(faults=(), place=FaultPlace(who="Isa"))
    first, second, third = Ladder(name="a", rungs=rungs(1)), Ladder(name="b", rungs=rungs(*range(10, 30)), most=9), Ladder(name="c", rungs=rungs(2), last=True)  # fmt: skip
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([first, second, third]))
    tried = []
    trials = stand_in({1}, {1})
    made = trials.of
    trials.of = lambda faults, *steps: tried.append(steps[-1].value) or made(faults, *steps)
    found = sought(trials, cause)
    assert [mend.steps[0].value for mend in found.mends] == [1]
    assert tried == [1, 10, 11, 12]
    assert found.tried == ("a", "b")


def test_a_link_is_tried_at_a_join_that_a_change_breaks_though_there_are_many_shifts(monkeypatch):
    cast, timeline, code, _ = TRIED["link"]
    show = stage(text_of(cast, timeline))
    (cause, *_) = [each for each in causes(show, faults_of(show)) if each.code == code]
    trials = stand_in((), {99})
    trials.of = lambda _faults, *_steps: SimpleNamespace(
        after=show, cleared=True, harm=cause.faults, clear=False
    )
    first = Ladder(name="pace", rungs=rungs(1))
    others = [Ladder(name="shift", rungs=rungs(*range(12))), Ladder(name="link", rungs=rungs(99))]
    monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause: iter([first]))
    monkeypatch.setattr(dance_mends, "passage_ladders", lambda *_args, **_named: others)
    (mend,) = sought(trials, cause).mends
    assert [step.value for step in mend.steps] == [1, 99]


def test_one_step_danced_by_two_is_one_cause():
    show = stage(
        text_of(
            BOTH + WALKS.replace("beats: 3", "beats: 12"),
            f"  - {{from: 2.1, {PLAIN}, cycle: 6, beats: 8}}\n",
        )
    )
    found = causes(show, faults_of(show))
    (cause,) = [each for each in found if each.code == "tether-slack"]
    assert [fault.who for fault in cause.faults] == [("Isa",), ("Ash",)]
    mend = sought(FaultTrials(show=show), cause, most=1).mends[0]
    assert "tether-slack" not in {each.code for each in faults_of(mend.after)}


def test_another_pattern_is_of_the_look_with_a_mend_of_a_join_too(monkeypatch):
    """It is offered, and never written: also where the join after it is mended with it."""
    cast, timeline, code, _ = TRIED["link"]
    show = stage(text_of(cast, timeline))
    faults = faults_of(show)
    (cause, *_) = [each for each in causes(show, faults) if each.code == code]
    edit = DanceEdit(words="dance windmill", changes=())
    clear = SimpleNamespace(after=show, cleared=True, harm=(), clear=True)
    breaks = SimpleNamespace(after=show, cleared=True, harm=cause.faults, clear=False)
    trials = SimpleNamespace(
        show=show, spent=0, looked=0, allowance=Allowance(), of=lambda _faults, *_steps: breaks,
        confirmed=lambda _faults, *_steps: clear,
    )  # fmt: skip
    for of_the_look in (True, False):
        ladder = Ladder(name="x", rungs=[edit], of_the_look=of_the_look)
        monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause, own=ladder: iter([own]))
        (mend,) = sought(trials, cause).mends
        assert len(mend.steps) == 2
        assert mend.of_the_look is of_the_look
