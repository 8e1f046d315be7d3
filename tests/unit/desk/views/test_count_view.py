"""What a count that is thought of would move: held against counts that were made by hand."""

import json

import pytest

from sequencer.desk.views.count_view import count_view
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg, corrections: {}}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations:
  apart: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [3, 4]}}}
staging:
  - {formation: apart, from: 1.1}
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 8}
  - {who: Ash, from: "0:16.0", pattern: extension, beats: 4}
"""
HEARD = even_song(64, start=0.5, duration=33.0, sections={0.0: "A", 16.5: "B"})


def on_count(corrections):
    text = SHOW.replace("corrections: {}", f"corrections: {corrections}")
    return staged(show_from_document(parse_document(text, "s.yaml")), HEARD)


def viewed(corrections, before="{}"):
    after = on_count(corrections)
    view = count_view(after.song, after.tempo, on_count(before), after)
    return json.loads(json.dumps(view, allow_nan=False))


def test_the_same_count_moves_nothing():
    view = viewed("{metre: 4}")
    assert view["beats"] == {"same": 64, "moved": 0, "gone": 0, "come": 0}
    assert view["borders"] == []
    assert view["blocks"] == {"same": 3, "moved": 0, "most_s": 0, "told": []}


def test_half_as_fast_takes_every_second_beat_and_makes_moves_longer():
    view = viewed("{tempo: half}")
    assert view["beats"] == {"same": 32, "moved": 0, "gone": 32, "come": 0}
    assert view["bpm"] == pytest.approx(60)
    assert view["borders"] == []  # they were heard, and are moments of the track
    weave = view["blocks"]["told"][0]
    assert (weave["who"], weave["before"], weave["after"]) == (["Ash", "Birch"], "2.1", "2.1")
    assert (weave["before_s"], weave["after_s"]) == (pytest.approx(2.5), pytest.approx(4.5))
    assert weave["longer_s"] == pytest.approx(4.0)
    assert view["blocks"]["moved"] == 3  # the one at a moment of the track is longer too


def test_a_beat_that_is_nearly_a_new_beat_away_is_gone_and_has_not_moved():
    view = viewed("{tempo: half, shift: 30 ms}")
    assert view["beats"] == {"same": 0, "moved": 32, "gone": 32, "come": 0}


def test_another_one_moves_what_stands_in_bars():
    view = viewed("{one: 0:01.0}")
    assert view["beats"]["same"] == 64
    assert view["ones"]["same"] == 0
    assert view["blocks"]["moved"] == 2
    assert view["blocks"]["same"] == 1  # it stands at a moment of the track
    assert view["blocks"]["most_s"] == pytest.approx(0.5)


def test_a_shift_moves_beats_a_little_and_borders_that_are_counted():
    view = viewed("{shift: 40 ms, sections: [{from: 1.1, name: A}, {from: 9.1, name: C}]}")
    assert view["beats"]["moved"] == 64
    assert [(one["name"], one["before_s"]) for one in view["borders"]] == [("B", 16.5), ("C", None)]
    assert view["borders"][1]["after_s"] == pytest.approx(16.54)
    assert view["sections"][1]["position"] == "9.1"


def test_what_cannot_be_staged_is_not_known():
    after = on_count("{tempo: double}")
    view = count_view(after.song, after.tempo, None, None)
    assert view["blocks"] is None
    assert view["beats"] is None
    assert len(view["tempo"]["times"]) == 127
