"""Results that a changed show takes over: those whose parts the change leaves as they were, and no others.

Expected by hand from what each heading of the show file decides.
"""

import datetime as dt
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.planning.trying.restaging import restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging import carrying
from sequencer.staging.carrying import (
    carry_results,
    files_beside,
    parts_content,
    same_files_beside,
)
from sequencer.staging.results import SHOW_PARTS, OfParts, OfPerformer
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations:
  wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}}}
staging:
  - {formation: wide, from: 1.1}
phrases:
  both:
    - {pattern: extension, cycle: 2, beats: 4, timing: together}
timeline:
  - {who: [Ash, Birch], from: 2.1, phrase: both}
  - {who: Birch, from: 4.1, pattern: two-beat-weave, cycle: 2, beats: 4}
fire:
  fuel: kerosene
  flame: 0.3 m
  burns: burns.csv
  lit: [{who: Ash, from: 1.1, until: 4.1}]
crew:
  - {name: Ivy, post: [-8, 6], duty: spotter}
rules: {file: [house.yaml]}
weather: {gusts: 8}
"""
ALL, BOTH, NONE = set(SHOW_PARTS), {"Ash", "Birch"}, set()
EDITS = {  # where, what; the parts that change, and whose dance does
    "nothing": (("title",), "Three", NONE, NONE),
    "a spot": (("formations", "wide", "spots", "Ash", "at"), [-3.5, 4.5], {"places"}, NONE),
    "a formation's moment": (("staging", 0, "from"), "1.2", {"places"}, NONE),
    "a block": (("timeline", 1, "shift"), 1, {"trajectories"}, {"Birch"}),
    "a note at a block": (("timeline", 1, "note"), "low", {"trajectories"}, NONE),
    "a phrase": (("phrases", "both", 0, "timing"), "split", {"trajectories"}, BOTH),
    "a burn": (("fire", "lit", 0, "until"), "4.3", {"burns"}, {"Ash"}),
    "a burn's words": (("fire", "lit", 0, "who"), ["Ash"], NONE, NONE),
    "who lights": (("fire", "lit", 0, "lit_by"), "Ivy", {"burns"}, NONE),
    "where they are lit": (("fire", "lit", 0, "lit_at"), [-6, 4], {"burns"}, NONE),
    "who puts out": (("fire", "lit", 0, "put_out_by"), "Ivy", {"burns"}, NONE),
    "the set of props": (("fire", "lit", 0, "props"), "second set", {"burns"}, NONE),
    "the handling": (("fire", "handling"), {"light": "4 s"}, {"fire"}, NONE),
    "the fuel": (("fire", "fuel"), "lamp-oil", {"fire"}, NONE),
    "the flame": (("fire", "flame"), 0.35, {"fire", "bodies"}, BOTH),
    "the stage": (("venue", "stage", "width"), "13 m", {"venue"}, NONE),
    "a post": (("crew", 0, "post"), [-8, 5], {"crew", "venue"}, NONE),
    "a spotter's name": (("crew", 0, "name"), "Moss", {"crew", "venue"}, NONE),
    "a year of birth": (("cast", 0, "birth_year"), 1990, ALL, {"Ash"}),
    "a stature": (("cast", 0, "stature"), 1.71, ALL, {"Ash"}),
    "a name": (("cast",), [{"name": "Elm", "stature": 1.7, "prop": "poi"}, {"name": "Birch", "stature": 1.6, "prop": "poi"}], ALL, BOTH),
    "the title": (("title",), "Four", ALL, BOTH),
    "the weather": (("weather", "gusts"), 6, ALL, BOTH),
    "the rules": (("rules", "between_performers"), 1.5, ALL, BOTH),
    "the count": (("track", "corrections"), {"shift": 0.05}, ALL, BOTH),
    "the show's patterns": (("patterns",), {"slow": {"law": "orbit", "set": {"ratio": 1}}}, ALL, BOTH),
}  # fmt: skip


@pytest.fixture(scope="module")
def before(tmp_path_factory):
    folder = tmp_path_factory.mktemp("show")
    (folder / "house.yaml").write_text("rules: []", encoding="utf-8")
    (folder / "burns.csv").write_text("date\n", encoding="utf-8")
    document = parse_document(SHOW, str(folder / "show.yaml"))
    return staged(show_from_document(document), even_song(24))


def _filled(show):
    show.results.update({OfParts("work", (part,)): part for part in SHOW_PARTS})
    show.results.update({OfParts("work", ()): "no part", OfParts("work", SHOW_PARTS): "all parts"})
    show.results.update({OfPerformer("dance", who): who for who in BOTH})
    show.results["anything else"] = "never"
    return show


@pytest.mark.parametrize("name", EDITS)
def test_results_hold_where_an_edit_changes_nothing_that_they_depend_on(before, name):
    path, value, parts, dances = EDITS[name]
    changes = [(path, value)]
    if name == "a name":
        changes += [
            (("formations", "wide", "spots"), {"Elm": {"at": [-4, 4]}, "Birch": {"at": [0, 4]}}),
            (("timeline", 0, "who"), ["Elm", "Birch"]),
            (("fire", "lit", 0, "who"), "Elm"),
        ]
    after = restaged(_filled(before), changes)
    names = [record.name for record in after.show.cast]

    carried = {
        value for key, value in after.results.items() if isinstance(key, OfParts | OfPerformer)
    }
    held = {"no part"} if parts != ALL else set()
    held |= {"all parts"} if not parts else set()
    assert carried == (ALL - parts) | held | ({*names} & BOTH) - dances
    assert "anything else" not in after.results


def _other_parts(before, after):
    """Parts whose content two shows do not share; all of them if they differ in what belongs to no part."""
    assert parts_content(before, ()) is not None
    if parts_content(before, ()) != parts_content(after, ()):
        return ALL
    return {
        each
        for each in SHOW_PARTS
        if parts_content(before, (each,)) != parts_content(after, (each,))
    }


@pytest.mark.parametrize("name", sorted({*EDITS} - {"a name"}))
def test_the_content_of_a_part_is_another_one_where_an_edit_changes_it(before, name):
    """As for what is carried over: the same for an edit that leaves the part as it was, to find it again."""
    path, value, parts, _ = EDITS[name]
    after = restaged(before, [(path, value)])
    assert _other_parts(before, after) == parts
    assert (parts_content(before, SHOW_PARTS) == parts_content(after, SHOW_PARTS)) == (not parts)
    after.results.clear()
    assert _other_parts(before, after) == parts  # staged in another process


def test_the_content_depends_on_all_that_belongs_to_no_part(before, monkeypatch):
    others = [
        replace(before, file=str(Path(before.file).with_name("other.yaml"))),
        replace(before, song=replace(before.song, energy=(0.5,))),
        replace(before, tempo=replace(before.tempo, first=before.tempo.first + 1)),
    ]
    assert all(_other_parts(before, other) == ALL for other in others)
    assert _other_parts(before, replace(before)) == NONE
    with monkeypatch.context() as patch:
        patch.setattr(carrying, "whole_code", lambda: b"other")
        assert _other_parts(before, replace(before)) == ALL
    now = dt.datetime(2090, 1, 1, tzinfo=dt.UTC)
    clock = SimpleNamespace(datetime=SimpleNamespace(now=lambda **_tz: now), UTC=dt.UTC)
    monkeypatch.setattr(carrying, "dt", clock)
    assert _other_parts(before, replace(before)) == ALL


def test_the_content_of_the_motion_is_that_of_trajectories_and_hand_work(before):
    ash, birch = before.dancers
    wider = {side: (*each, HandDeviation(0.0, 1.0, 0.3)) for side, each in ash.deviation.items()}
    shorter = {
        side: Trajectory(each.spans[:-1], each.space) for side, each in ash.trajectories.items()
    }
    leaning = Carriage(body=ash.body, held=(HeldPosture(4.0, 8.0, Posture(lean=0.1)),))
    for changed, parts in (
        ({"deviation": wider}, {"trajectories"}),
        ({"trajectories": shorter}, {"trajectories"}),
        ({"carriage": leaning}, {"bodies"}),
    ):
        after = replace(before, dancers=(replace(ash, **changed), birch))
        assert _other_parts(before, after) == parts


@pytest.mark.parametrize("name", ["house.yaml", "burns.csv"])
def test_a_file_beside_the_show_belongs_to_no_part_and_is_looked_at_again(before, name):
    file = Path(before.file).parent / name
    text = file.read_text(encoding="utf-8")
    assert same_files_beside(before)
    try:
        file.write_text(text + "# another line\n", encoding="utf-8")
        assert not same_files_beside(before)
        assert _other_parts(before, replace(before)) == ALL
    finally:
        file.write_text(text, encoding="utf-8")


def test_a_show_of_no_file_or_with_pattern_files_has_no_content(before):
    document = before.read.document
    named = replace(document, values={**document.values, "pattern_files": []})
    assert parts_content(replace(before, read=None), ()) is None
    assert parts_content(replace(before, read=replace(before.read, document=named)), ()) is None


def _carried(before, after):
    carry_results(_filled(before), after)
    return {value for key, value in after.results.items() if isinstance(key, OfParts | OfPerformer)}


def test_a_posture_belongs_to_the_body_and_to_one_performers_dance(before):
    ash, birch = before.dancers
    lean = HeldPosture(4.0, 8.0, Posture(lean=0.1))
    leaning = replace(ash, carriage=Carriage(body=ash.body, held=(lean,)))

    found = _carried(before, replace(before, dancers=(leaning, birch)))
    assert found == {*SHOW_PARTS, "no part", "Birch"} - {"bodies"}


def test_a_trajectory_made_anew_is_the_same_if_its_laws_are(before):
    ash, birch = before.dancers
    anew = {side: Trajectory(each.spans, each.space) for side, each in ash.trajectories.items()}
    other = {side: Trajectory(each.spans[:-1], each.space) for side, each in anew.items()}

    same = _carried(before, replace(before, dancers=(replace(ash, trajectories=anew), birch)))
    changed = _carried(before, replace(before, dancers=(replace(ash, trajectories=other), birch)))
    assert same == {*SHOW_PARTS, "no part", "all parts", *BOTH}
    assert changed == {*SHOW_PARTS, "no part", "Birch"} - {"trajectories"}


@pytest.mark.parametrize("name", ["house.yaml", "burns.csv"])
def test_nothing_holds_once_a_file_that_the_show_names_has_changed(before, name):
    files_beside(before)
    file = Path(before.file).parent / name
    text = file.read_text(encoding="utf-8")
    try:
        file.write_text(text + "# another line\n", encoding="utf-8")
        changed = _carried(before, replace(before))
        file.unlink()
        gone = _carried(before, replace(before))
    finally:
        before.results.pop(files_beside.__wrapped__, None)

    assert changed == gone == set()
    file.write_text(text, encoding="utf-8")


def test_nothing_holds_with_pattern_files_which_may_change_any_time(before):
    document = before.read.document
    named = replace(document, values={**document.values, "pattern_files": []})
    show = replace(before, read=replace(before.read, document=named))

    assert _carried(show, replace(show)) == set()


def test_nothing_holds_for_a_show_that_comes_from_no_file_or_another_one(before):
    assert _carried(before, replace(before, read=None)) == set()
    assert _carried(before, replace(before, file="other.yaml")) == set()


def test_a_result_that_a_show_has_already_is_kept(before):
    after = replace(before)
    key = OfParts("work", ("crew",))
    after.results[key] = "its"
    carry_results(_filled(before), after)

    assert after.results[key] == "its"


def test_nothing_holds_on_another_song_or_count(before):
    quieter = replace(before.song, energy=(0.5,))
    counted = replace(before.tempo, first=before.tempo.first + 1)

    assert _carried(before, replace(before, song=quieter)) == set()
    assert _carried(before, replace(before, tempo=counted)) == set()


def test_hand_work_that_has_changed_changes_the_dance(before):
    ash, birch = before.dancers
    wider = {side: (*each, HandDeviation(0.0, 1.0, 0.3)) for side, each in ash.deviation.items()}

    found = _carried(before, replace(before, dancers=(replace(ash, deviation=wider), birch)))
    assert found == {*SHOW_PARTS, "no part", "Birch"} - {"trajectories"}
