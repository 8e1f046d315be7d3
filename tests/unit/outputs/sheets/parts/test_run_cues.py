"""Entrances and exits in run cues, a performer's cues, the timetable and a comparison."""

from sequencer.outputs.compared.comparing import ComparedText, compared
from sequencer.outputs.exports.timetable import timetable
from sequencer.outputs.sheets.parts.cues import cues_of
from sequencer.outputs.sheets.parts.dance_rows.folding import folded, onward_words, walk_words
from sequencer.outputs.sheets.parts.run_cues import run_cues
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import wings_words
from tests.unit.staging.on_floor.test_entrances import OFF, ON, SHOW, made


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
        ("wait", 0.0, 16.0, True), ("walk", 16.0, 24.0, False), ("wait", 24.0, 48.0, False),
        ("walk", 32.0, 40.0, False), ("walk", 48.0, 52.0, False), ("wait", 52.0, 96.0, True),
    ]  # fmt: skip
    on, off = cues[1], cues[4]
    assert (
        walk_words(on)
        .replace("\u00a0", " ")
        .startswith("8 beats from the wings, stage left, to line; end 2.0 m to stage left")
    )
    assert (
        walk_words(off)
        .replace("\u00a0", " ")
        .startswith("4 beats into the wings, stage right; end 6.0 m to stage right")
    )


def test_whoever_goes_off_and_comes_on_elsewhere_is_told_to_get_round():
    back = "  - {who: Bo, comes_on: 20.1, beats: 4, side: stage left}\n"
    show = made(SHOW + ON + OFF + back)
    waits = [cue for cue in cues_of(show, "Bo") if cue.kind == "wait" and cue.in_wings]
    assert [None if cue.onward is None else cue.onward.start for cue in waits] == [None, 76.0]
    words = onward_words(waits[1].onward).replace("\u00a0", " ")
    assert words == (
        "get round to stage left, behind the stage: 6.0 m to stage left, 6.0 m upstage"
    )
    lines = [line for line in folded(cues_of(show, "Bo")) if line.cue.onward is not None]
    assert len(lines) == 1  # never folded into another line, however short
    same = made(SHOW + ON + OFF + back.replace("stage left", "stage right"))
    assert all(cue.onward is None for cue in cues_of(same, "Bo"))


def test_a_rest_once_somebody_is_on_is_not_told_before_they_come_on():
    danced = SHOW.replace(
        "  - {who: Ada", "  - {who: Bo, from: 8.1, pattern: extension, beats: 4}\n  - {who: Ada"
    )
    lines = folded(cues_of(made(danced + ON), "Bo"))
    assert [(line.cue.kind, line.cue.start, len(line.then)) for line in lines[:4]] == [
        ("wait", 0.0, 0), ("walk", 16.0, 0), ("wait", 24.0, 0), ("move", 28.0, 0),
    ]  # fmt: skip


def test_nobody_is_told_that_they_walk_while_somebody_else_comes_on():
    danced = SHOW.replace("from: 1.1, pattern", "from: 6.1, pattern")
    move = next(cue for cue in cues_of(made(danced + ON), "Ada") if cue.kind == "move")
    assert (move.start, move.walking) == (20.0, False)
    on_the_way = SHOW.replace("from: 1.1, pattern", "from: 10.1, pattern")
    move = next(cue for cue in cues_of(made(on_the_way + ON), "Ada") if cue.kind == "move")
    assert (move.start, move.walking, move.spot[:2]) == (36.0, True, (-2.0, 6.0))


def test_places_in_the_wings_and_on_the_way_are_told_as_such():
    show = made(SHOW + ON.replace("5.1", "9.3") + OFF)
    told = [wings_words(show, one, "Bo") for one in show.standings]
    assert told == ["in the wings, ", "on the way on: ", "in the wings, "]
    assert {wings_words(show, one, "Ada") for one in show.standings} == {""}


def test_a_formation_in_the_timetable_is_of_those_on_stage():
    rows = [row for row in timetable(made(SHOW + ON + OFF)) if row["kind"] == "formation"]
    assert [row["who"] for row in rows] == ["Ada", "all", "all", "Ada"]
    rows = [row for row in timetable(made(SHOW)) if row["kind"] == "formation"]
    assert [row["who"] for row in rows] == ["all", "all"]


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
