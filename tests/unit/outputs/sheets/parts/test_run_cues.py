"""Entrances and exits in run cues, a performer's cues, the timetable and a comparison."""

from sequencer.outputs.compared.comparing import ComparedText, compared
from sequencer.outputs.exports.timetable import timetable
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.folding import walk_words
from sequencer.outputs.sheets.parts.run_cues import run_cues
from tests.unit.staging.test_entrances import OFF, ON, SHOW, made


def test_run_cues_tell_entrances_and_exits_once_for_all_who_go_together():
    both = "entrances:\n  - {who: all, comes_on: 5.1, beats: 8, side: upstage}\n" + OFF
    dark = SHOW.replace("pattern: extension, beats: 32", "rest: 4")
    found = [(cue.position, cue.what.replace("\u00a0", " ")) for cue in run_cues(made(dark + both))]
    assert ("5.1", "Ada and Bo come on from upstage, 8 beats") in found
    assert ("13.1", "Bo goes off to stage right, 4 beats") in found
    assert ("9.1", "walk to deep, 8 beats") in found
    assert not any("walk to line" in what for _, what in found)


def test_a_performer_waits_in_the_wings_until_they_come_on():
    cues = [cue for cue in cues_of(made(SHOW + ON + OFF), "Bo") if cue.kind != "end"]
    assert [(cue.kind, cue.start, cue.end, cue.in_wings) for cue in cues] == [
        ("wait", 0.0, 16.0, True), ("walk", 16.0, 24.0, False), ("wait", 16.0, 52.0, False),
        ("walk", 32.0, 40.0, False), ("walk", 48.0, 52.0, False), ("wait", 52.0, 96.0, True),
    ]  # fmt: skip
    on, off = cues[1], cues[4]
    assert (
        walk_words(on)
        .replace("\u00a0", " ")
        .startswith("8 beats from the wings to line; end 2.0 m to stage left")
    )
    assert (
        walk_words(off)
        .replace("\u00a0", " ")
        .startswith("4 beats into the wings, stage right; end 6.0 m to stage right")
    )


def test_the_timetable_has_a_row_for_each_who_comes_or_goes():
    rows = [row for row in timetable(made(SHOW + ON + OFF)) if row["kind"] in ("entrance", "exit")]
    assert [(row["kind"], row["who"], row["what"]) for row in rows] == [
        ("entrance", "Bo", "comes on from stage left"), ("exit", "Bo", "goes off to stage right"),
    ]  # fmt: skip


def test_a_comparison_tells_an_entrance_once():
    old, new = ComparedText("old", SHOW), ComparedText("new", SHOW + ON)
    changes = compared(old, new, made, file="s.yaml").changes
    assert [each.words for each in changes if each.subject == "floor"] == [
        "entrance of Bo is new: who Bo, comes on 5.1, beats 8, side stage left"
    ]
