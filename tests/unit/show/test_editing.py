"""Edits keep comments, order and writing."""

import pytest

from sequencer.show.editing import edited_text
from sequencer.show.show_text import ShowText

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


SPOTS = """\
formations:
  # everybody in a row
  row: {spots: {Ash: {at: [-1, 4]}, Birch: {at: [0, 4], facing: 90}}}  # close
  wide:
    spots:
      Ash: {at: [-2, 4]}  # Ash's own
      Birch:
        at: [0, 4]
"""


def counted(monkeypatch):
    """The changes of each edit that is made of a text."""
    seen = []
    edited = ShowText.edited

    def noted(self, *edits):
        seen.append(len(edits))
        return edited(self, *edits)

    monkeypatch.setattr(ShowText, "edited", noted)
    return seen


def test_changes_beside_each_other_are_made_at_once(monkeypatch):
    changes = [
        (("formations", name, "spots", who, "at"), [x, y])
        for name, y in (("row", 5.0), ("wide", 6.5))
        for who, x in (("Ash", -3.25), ("Birch", 1.5))
    ] + [(("formations", "wide", "spots", "Ash", "facing"), 180)]
    alone = SPOTS
    for change in changes:
        alone = edited_text(alone, [change])
    seen = counted(monkeypatch)
    assert edited_text(SPOTS, changes) == alone
    assert seen == [5]
    assert "# close" in alone
    assert "Ash: {at: [-3.25, 5]}" in alone


def test_a_change_within_what_another_sets_is_made_after_it(monkeypatch):
    seen = counted(monkeypatch)
    spot = ("formations", "wide", "spots", "Birch")
    text = edited_text(SPOTS, [(spot, {"at": [1, 1]}), ((*spot, "at"), [2, 2])])
    assert ShowText(text, "a file").values["formations"]["wide"]["spots"]["Birch"] == {
        "at": ["2", "2"]
    }
    gone = edited_text(SPOTS, [(("formations", "row"), None), ((*spot, "facing"), 90)])
    assert "row:" not in gone
    assert "facing: 90" in gone
    assert seen == [1, 1, 1, 1]
