"""Mends of the dance: each is made in the file, and the file is checked from its text."""

from types import SimpleNamespace

import pytest

from sequencer.checks.suite import checked
from sequencer.planning import dance_mends
from sequencer.planning.dance_mends import causes, sought
from sequencer.planning.ladders import Ladder
from sequencer.planning.trials import DanceEdit, FaultTrials, faults_of
from sequencer.show.document import parse_document
from sequencer.show.editing import edited_text
from sequencer.show.reading import show_from_document
from sequencer.staging.timeline import staged
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
    assert mend.words.endswith(" cm (now 40 cm)")
    numbers = mend.words.removeprefix("ahead ").split(" cm")[0].split(" to ")
    for number in numbers:
        after = stage(text.replace("ahead: 40 cm", f"ahead: {number} cm"))
        assert code not in {each.code for each in faults_of(after)}
    ((path, value),) = mend.steps[0].changes
    assert path == ("timeline", 0, "with", "ahead")
    assert value == f"{numbers[-1]} cm", "the smallest change is the one that is written"


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
        show=show, spent=0, of=lambda _faults, *_steps: breaks,
        confirmed=lambda _faults, *_steps: clear,
    )  # fmt: skip
    for of_the_look in (True, False):
        ladder = Ladder(name="x", rungs=[edit], of_the_look=of_the_look)
        monkeypatch.setattr(dance_mends, "_ladders", lambda _show, _cause, own=ladder: iter([own]))
        (mend,) = sought(trials, cause).mends
        assert len(mend.steps) == 2
        assert mend.of_the_look is of_the_look
