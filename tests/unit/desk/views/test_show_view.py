"""A staged show as a page draws it: held against the staged show and its file."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from sequencer.desk.views.show_view import show_view, song_view
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.danced_entries import entry_of_blocks
from sequencer.staging.timeline import staged
from tests.songs import even_song, silent_song

SHOW = """\
title: Phrases
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
phrases:
  inner: [{pattern: two-beat-weave, beats: 4}, {rest: 4}]
  outer: [{phrase: inner, repeat: 2}, {pattern: extension, beats: 4}]
formations:
  apart: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4], facing: 90}}}
  close: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [3, 6]}}}
  unused: {shape: line, centre: [0, 4], spacing: 2 m}
staging:
  - {formation: apart, from: 1.1}
  - {formation: close, from: 3.1, beats: 8, via: {Ash: [[-4, 6]]}}
timeline:
  - {who: all, from: 2.1, phrase: outer, canon: 4}
  - {who: Ash, phrase: outer}
  - {who: Birch, from: 14.1, pattern: two-beat-weave, beats: 4, note: hello}
  - {who: Birch, pattern: two-beat-weave, beats: 4}
  - {who: Birch, accent: 14.2}
"""


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(96))


@pytest.fixture(scope="module")
def view(show):
    return json.loads(json.dumps(show_view(show), allow_nan=False))


def test_every_block_knows_the_entry_that_it_comes_from(view):
    found = [(b["who"], b["start"], b["kind"], b["path"][0], b["entry"][1]) for b in view["blocks"]]
    outer = [(0, "pattern"), (4, "rest"), (8, "pattern"), (12, "rest"), (16, "pattern")]
    want = [("Ash", 4 + at, kind, "phrases", 0) for at, kind in outer]
    want += [("Birch", 8 + at, kind, "phrases", 0) for at, kind in outer]
    want += [("Ash", 24 + at, kind, "phrases", 1) for at, kind in outer]
    want += [("Birch", 52, "pattern", "timeline", 2), ("Birch", 56, "pattern", "timeline", 3)]
    assert sorted(found) == sorted(want)


def test_paths_lead_to_what_the_file_says_of_it(show, view):
    values = show.read.document.values
    for block in view["blocks"]:
        said = values
        for key in block["path"]:
            said = said[key]
        if block["kind"] == "pattern":
            assert said["pattern"] == block["title"]
            assert block["note"] == said.get("note", "")
    for accent in view["accents"]:
        assert values["timeline"][accent["path"][1]]["accent"] == accent["position"]
    for one in view["standings"]:
        assert values["staging"][one["path"][1]]["formation"] == one["formation"]


def test_walks_begin_and_end_where_the_formations_say(view):
    (ash, birch) = sorted(view["walks"], key=lambda one: one["who"])
    assert (ash["start"], ash["end"], ash["path"]) == (8, 16, ["staging", 1])
    assert (ash["points"][0], ash["points"][-1]) == ([-3, 4], [-2, 4])
    assert min(((x + 4) ** 2 + (y - 6) ** 2) for x, y in ash["points"]) < 0.1
    assert ash["length"] > 4.0
    assert (birch["points"][0], birch["points"][-1], birch["length"]) == ([3, 4], [3, 6], 2.0)


def test_formations_say_who_stands_where_and_when_they_are_taken(view):
    assert view["formations"]["apart"]["spots"] == {"Ash": [-3, 4, 0], "Birch": [3, 4, 90]}
    assert [view["formations"][name]["used"] for name in ("apart", "close", "unused")] == [
        [0],
        [1],
        [],
    ]
    assert view["formations"]["unused"]["spots"] is None


def test_beats_and_seconds_agree_with_the_count(show, view):
    for block in view["blocks"]:
        assert block["start_s"] == pytest.approx(show.seconds(block["start"]), abs=1e-6)
        assert block["position"] == show.position(block["start"])
    assert view["sections"][0]["end"] == pytest.approx(48.0)
    assert view["sections"][0]["end_beat"] == pytest.approx(96.0)


def test_sections_tell_how_they_were_heard_and_where_others_may_begin():
    """The file names them anew; the moments are those that were heard."""
    heard = even_song(96, sections={0.0: "A", 16.0: "B", 32.0: "A"})
    parts = [
        replace(s, variant=int(k > 1), confidence=0.9 - 0.2 * k)
        for k, s in enumerate(heard.sections)
    ]
    heard = replace(heard, sections=tuple(parts), turns=((24.0, 0.25), (32.0, 0.2)))
    named = "[{from: 1.1, name: in}, {from: 9.1, name: verse}, {from: 17.1, name: in}, {from: 20.1, name: out}]"
    text = SHOW.replace("file: song.ogg", f"file: song.ogg, corrections: {{sections: {named}}}")

    view = show_view(staged(show_from_document(parse_document(text, "s.yaml")), heard))

    told = [(each["mark"], each["border"]) for each in view["sections"]]
    assert told == [("in", None), ("verse", "perhaps"), ("in", "perhaps"), ("out", None)]
    assert view["turns"] == [{"start": 24.0, "bar": 13, "confidence": 0.25}]


@pytest.mark.parametrize("name", ["lantern_round", "night_ferry", "salt_wind"])
def test_every_block_of_a_demo_show_comes_from_an_entry_of_its_performer(name):
    from sequencer.tasks import stage_show

    show = stage_show(Path(__file__).parents[4] / "shows" / f"{name}.yaml")
    entries = entry_of_blocks(show)
    for block in (*show.blocks, *show.stops):
        entry = show.show.timeline[entries[id(block)]]
        assert block.who in entry.who or "all" in entry.who
        if entry.phrase is None:
            assert block.path == ("timeline", entries[id(block)])


def test_a_song_without_a_beat_has_a_view_too():
    view = song_view(silent_song())
    assert (view["times"], view["duration"]) == ([], 18.0)
    assert json.dumps(song_view(even_song(8)), allow_nan=False)
