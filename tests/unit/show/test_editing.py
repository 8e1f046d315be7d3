"""Edits keep comments, order and writing."""

import pytest

from sequencer.show.editing import edited_text

TEXT = """\
# the show
title: "Lanterns"   # its name
track: {file: song.ogg}
timeline:
  - {from: 17.10, pattern: weave, beats: 8}   # first

  # between
  - from: 19.1
    pattern: orbit
    with:
      lobes: 3   # odd
"""


def test_one_value_changes_and_nothing_else():
    edited = edited_text(TEXT, [(("timeline", 1, "with", "lobes"), 4)])
    assert edited == TEXT.replace("lobes: 3   # odd", "lobes: 4   # odd")


def test_braces_of_one_key_in_a_list_stay():
    text = "venue:\n  audience: [{line: [[-9, -4], [9, -4]]}]\ntitle: a\n"
    assert edited_text(text, [(("title",), "b")]) == text.replace("title: a", "title: b")


def test_bar_beat_keeps_its_text_and_comments_stay():
    edited = edited_text(TEXT, [(("timeline", 0, "beats"), 12), (("timeline", 1, "shift"), 2)])
    for kept in (
        "# the show",
        '"Lanterns"   # its name',
        "from: 17.10,",
        "# first",
        "# between",
        "# odd",
    ):
        assert kept in edited
    assert "beats: 12" in edited
    assert "shift: 2" in edited


def test_a_value_can_be_taken_out():
    assert "lobes" not in edited_text(TEXT, [(("timeline", 1, "with", "lobes"), None)])


def test_a_path_that_is_not_there_is_refused():
    with pytest.raises(ValueError, match="no timeline/7/with/lobes in the show file"):
        edited_text(TEXT, [(("timeline", 7, "with", "lobes"), 4)])
