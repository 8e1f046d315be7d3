"""Distances of a show file mended as flown: who is clear as flown is left alone, and what is written keeps apart as flown."""

import pytest

from sequencer.checks.suite import checked
from sequencer.planning.mending import mended_spacing
from sequencer.planning.mends import flown_spacing
from sequencer.planning.mends.flown_spacing import close_as_flown, spaced_as_flown
from sequencer.planning.mends.space_mends import too_close
from sequencer.planning.trying.flown_trials import FlownTrials
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.tasks.mend import mend_show
from tests.songs import even_song

SONG = even_song(32)
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 8 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.45}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  close: {spots: {Ash: {at: [-1, 4]}, Birch: {at: [APART, 4]}}}
staging:
  - {formation: close, from: 1.1}
timeline:
  - {from: 3.1, pattern: anti-bend-4, beats: 12, timing: together}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{from: 1.1, until: 8.1}]
"""
CLEAR, CLOSE = SHOW.replace("APART", "1.6"), SHOW.replace("APART", "0.9")


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), SONG)


def test_a_pair_that_is_too_close_only_as_drawn_is_left_alone():
    show = stage(CLEAR)
    assert too_close(show)
    assert close_as_flown(show) == ()
    spaced = mended_spacing(CLEAR, "s.yaml", SONG, flown=True)
    assert (spaced.text, spaced.done, spaced.left) == (CLEAR, (), ())
    assert mended_spacing(CLEAR, "s.yaml", SONG).done


def test_who_is_too_close_as_flown_is_moved_until_clear_as_flown():
    before = checked(stage(CLOSE), flown=True)
    spaced = mended_spacing(CLOSE, "s.yaml", SONG, flown=True)
    assert len(spaced.done) == 1
    assert spaced.left == ()
    show = stage(spaced.text)
    assert close_as_flown(show) == ()
    assert too_close(show)  # with the margin of the drawing they would have to go on
    found, known = (
        {(each.code, each.who) for each in report.findings if each.severity != "note"}
        for report in (checked(show, flown=True), before)
    )
    assert found == known - {("too-close", ("Ash", "Birch"))}


def test_where_no_place_helps_what_helps_as_drawn_is_tried_as_flown(monkeypatch):
    show = stage(CLOSE)
    (conflict,) = close_as_flown(show)
    monkeypatch.setattr(flown_spacing, "mends_as_flown", lambda *_: iter(()))
    found = list(spaced_as_flown(show, conflict))
    assert found
    for _, after in found:
        assert close_as_flown(after) == ()
    monkeypatch.setattr(FlownTrials, "harm", lambda *_: ("worse",))
    assert list(spaced_as_flown(show, conflict)) == []
    monkeypatch.undo()
    monkeypatch.setattr(flown_spacing, "mends_as_flown", lambda *_: iter(()))
    monkeypatch.setattr(flown_spacing, "close_as_flown", lambda _show: (conflict,))
    assert list(spaced_as_flown(show, conflict)) == []


@pytest.mark.parametrize("flown", [True, False])
def test_a_file_is_mended_as_flown_unless_the_drawing_is_asked_for(flown, tmp_path, monkeypatch):
    path = tmp_path / "s.yaml"
    path.write_text(CLEAR, encoding="utf-8")
    (tmp_path / "song.ogg").write_bytes(b"")
    monkeypatch.setattr("sequencer.tasks.songs.hear_song", lambda *_args, **_named: SONG)
    mended = mend_show(path, flown=flown)
    assert (mended.text == CLEAR) is flown
    assert any("close" in each for each in mended.done) is not flown
