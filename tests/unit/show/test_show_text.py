"""Edits change the letters that they concern, and no others; what cannot be written is refused."""

import random

import pytest

from sequencer.errors import InputError
from sequencer.show import show_text
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, RowsIn, TakenOut, ValueSet, changed_plain
from sequencer.show.text.splices import Splice
from sequencer.show.text.written import Written

ODD = """\
# top
title: 'It''s'   # its name
version: "1"
track: {file: a.ogg, corrections: {
    metre: 3, # three
    # about one
    one: 1.1,   # the one
  }}
venue:
  stage: &s
    shape: rectangle # sh
    width: 8 m

    # how deep
    depth: 8 m
  other: *s
  audience:   # here
    - {name: front row, line: [[-8, -6], [8, -6]]}
  exits: []   # none
  nil:
  note: |
    many
      lines

    here

  fold: >-
   a
   b
cast:
- name: A   # first
  # inner
  stature: 1.70 m
  prop: &poi {kind: poi, tether: 1}
- {name: B, prop: *poi}
-
  # odd
  name: C
  prop: *poi
- - x
  - y # yy
  # zz
  - z
timeline:
  # one
  - {a: 1}  # ra

  # two
  - b: 2
    c: [1, 2,
        3] # three
    long: "quoted
      over lines"
  # three
  - {c: plain text
      over lines, d: 4}
# end"""
VALUES = (
    "x", 4, 1.5, "1.8 m", True, "a: b", "# c", "", [1, 2], [], {}, {"k": "v", "l": [1]}, [{"a": 1}, {"b": 2}], "é ☃",
    "two\nlines", "it's", "null", "12:30", "1:02.5", {"a b": {"c": 1}}, None, "\x85\u2028", "- x", "&a", "*a", "%", " x ",
)  # fmt: skip


def edited(text, *edits):
    return ShowText(text, "s.yaml").edited(*edits).text


def paths(value, path=()):
    yield path, value
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()  # fmt: skip
    for key, own in items:
        yield from paths(own, (*path, key))


def drawn(draw, values):
    """An edit at random."""
    every = list(paths(values))
    while True:
        kind, (path, value) = draw.randrange(5), draw.choice(every)
        if kind == 0 and path:
            return ValueSet(path, draw.choice(VALUES))
        if kind == 1 and path:
            return TakenOut(path)
        if kind == 2 and isinstance(value, list):
            rows = [draw.choice(({"n": 3}, "s", [1, 2])) for _ in range(draw.randint(1, 2))]
            return RowsIn(path, draw.randint(0, len(value)), tuple(rows))
        if kind == 3 and path and isinstance(path[-1], str):
            return KeyNamed(path, draw.choice(("new", "new key", "é", "a#b", "x: y", "'")))
        if kind == 4 and isinstance(value, dict):
            key = draw.choice(("k 2", "title", "fire", "formations", "who"))
            return ValueSet((*path, key), draw.choice(VALUES))


@pytest.mark.parametrize(
    "text", [ODD, ODD + "\n", ODD.replace("\n", "\r\n")], ids=["open", "unix", "windows"]
)
def test_edits_of_an_odd_file_say_exactly_what_was_wanted(text):
    """Reference: the same edit on plain values. Only a key that is there already is refused."""
    draw = random.Random(5)  # noqa: S311  # no secret
    refused = 0
    for _ in range(60):
        now = ShowText(text, "s.yaml")
        for _ in range(4):
            edit = drawn(draw, now.values)
            try:
                after = now.edited(edit)
            except InputError:
                assert isinstance(edit, KeyNamed)
                refused += 1
                continue
            assert after.values == changed_plain(now.values, [edit])
            if "\r" in text:
                assert after.text.count("\r\n") == after.text.count("\n")
            now = after
    assert refused < 6


def test_edits_made_at_once_mean_places_of_the_text_as_it_was():
    text = "a: [1, 2, 3]\nb:\n  - {x: 1}\n  - {x: 2}\n  - {x: 3}\n"
    after = edited(
        text, TakenOut(("b", 0)), ValueSet(("b", 1, "x"), 9), RowsIn(("b",), 2, ({"x": 7},)), TakenOut(("a", 2))
    )  # fmt: skip
    assert after == "a: [1, 2]\nb:\n  - {x: 9}\n  - {x: 7}\n  - {x: 3}\n"


def test_an_entry_that_is_taken_out_leaves_the_comment_of_the_next_heading():
    text = "timeline:\n  # in the dark\n  - {a: 1}   # one\n\n  # and lights\n  - {b: 2}\n"
    assert edited(text, TakenOut(("timeline", 0))) == text.replace("  - {a: 1}   # one\n", "")
    assert edited(text, TakenOut(("timeline", 1))) == text.replace("  - {b: 2}\n", "")


def test_a_heading_takes_along_one_empty_line_that_set_it_apart():
    text = "a: 1\n\n# mine\nb:\n  c: 2\n\n\nd: 3\n\ne: {}\n"
    assert edited(text, TakenOut(("b",))) == "a: 1\n\n# mine\n\nd: 3\n\ne: {}\n"
    assert edited(text, TakenOut(("e",))) == "a: 1\n\n# mine\nb:\n  c: 2\n\n\nd: 3\n"
    assert edited(text, TakenOut(("a",))) == text.removeprefix("a: 1\n\n")
    close = "a: 1\nb: 2\nc: 3"
    assert edited(close, TakenOut(("b",))) == "a: 1\nc: 3"
    assert edited(close, TakenOut(("c",))) == "a: 1\nb: 2"
    assert edited(text, TakenOut(("d",)), TakenOut(("e",))) == "a: 1\n\n# mine\nb:\n  c: 2\n\n\n\n"


def test_the_last_entry_leaves_an_empty_list_and_all_comments():
    text = "timeline:   # ours\n  # in the dark\n  - {a: 1}   # one\n\n# fire\nfire: {}\n"
    nothing = edited(text, TakenOut(("timeline", 0)))
    assert nothing == "timeline: []   # ours\n  # in the dark\n\n# fire\nfire: {}\n"
    again = edited(nothing, RowsIn(("timeline",), 0, ({"b": 2},)))
    assert again == "timeline:   # ours\n  - {b: 2}\n  # in the dark\n\n# fire\nfire: {}\n"


def test_the_first_key_behind_a_dash_goes_and_the_next_moves_up():
    text = "t:\n  - a: 1   # one\n    b: 2\n  - c: 3\n    # four\n    d: 4\n"
    assert edited(text, TakenOut(("t", 0, "a"))) == text.replace("a: 1   # one\n    b", "b")
    assert edited(text, TakenOut(("t", 1, "c"))) == text.replace("- c: 3\n", "-\n")


@pytest.mark.parametrize(
    ("key", "says"),
    [
        ("a", "{b: 2,  # two\n   c: 3}"),
        ("b", "{a: 1,\n   c: 3}"),
        ("c", "{a: 1,\n   b: 2,  # two\n   }"),
    ],
)
def test_a_key_between_brackets_takes_its_comma_along(key, says):
    text = "k: {a: 1,\n   b: 2,  # two\n   c: 3}\nz: 1\n"
    assert edited(text, TakenOut(("k", key))) == f"k: {says}\nz: 1\n"


def test_several_keys_between_brackets_go_at_once():
    assert (
        edited("k: {a: 1, b: 2, c: 3}\n", TakenOut(("k", "a")), TakenOut(("k", "c")))
        == "k: {b: 2}\n"
    )
    assert edited("k: {a: 1, b: 2,}\n", TakenOut(("k", "a")), TakenOut(("k", "b"))) == "k: {}\n"


def test_quotes_stay_as_they_were():
    text = "a: \"1\"\nb: '2'\nc: 3\n"
    after = edited(text, *(ValueSet((key,), "it's") for key in "abc"))
    assert after == "a: \"it's\"\nb: 'it''s'\nc: it's\n"


def test_who_and_when_come_first_in_an_entry():
    text = "timeline:\n  - {pattern: a, beats: 2}\n  - {from: 1.1, pattern: a}\n"
    after = edited(
        text, ValueSet(("timeline", 0, "from"), "3.1"), ValueSet(("timeline", 0, "who"), "Ash")
    )
    assert "{from: 3.1, who: Ash, pattern: a, beats: 2}" in after
    after = edited(text, ValueSet(("timeline", 1, "who"), "Ash"))
    assert "{who: Ash, from: 1.1, pattern: a}" in after


def test_a_new_heading_stands_where_the_headings_order_has_it():
    text = "title: a\n# who\ncast: []\n# lit\nfire: {}\n"
    after = edited(text, ValueSet(("staging",), [{"formation": "wide", "from": "1.1"}]))
    assert after == text.replace("# lit", "staging:\n  - {formation: wide, from: 1.1}\n\n# lit")
    after = edited(text, ValueSet(("weather",), {"gusts": "6 m/s"}))
    assert after == text + "\nweather:\n  gusts: 6 m/s\n"


def test_a_row_of_several_lines_is_put_elsewhere_as_it_is():
    text = "p:\n  x:\n      - a: 1   # one\n        # inner\n        b: [1,\n            2]\n  y:\n  - {c: 1}\n"
    now = ShowText(text, "s.yaml")
    row = now.row(("p", "x", 0))
    assert row == Written(
        {"a": "1", "b": ["1", "2"]}, ("a: 1   # one", "# inner", "b: [1,", "    2]")
    )
    after = now.edited(RowsIn(("p", "y"), 1, (row,)))
    assert after.text == text + "  - a: 1   # one\n    # inner\n    b: [1,\n        2]\n"


def test_a_byte_order_mark_stays():
    text = "\ufefftitle: a\ntimeline: []\n"
    after = edited(text, RowsIn(("timeline",), 0, ({"a": 1},)), ValueSet(("title",), "b"))
    assert after == "\ufefftitle: b\ntimeline:\n  - {a: 1}\n"


def test_what_cannot_be_written_is_refused_with_its_place():
    with pytest.raises(InputError, match=r"^s\.yaml:2:6: this is written in a way .* on each line"):
        edited("k:\n  a: 1\n  b: 2\n", KeyNamed(("k", "a"), "b"))


@pytest.mark.parametrize("wrong", ["b: 2\n", "a: [", "a: 3\n"])
def test_a_text_that_says_anything_else_is_refused(wrong, monkeypatch):
    """Whatever the writer does: what was wanted, or nothing."""
    text = "a: 1\n"
    monkeypatch.setattr(
        show_text.Writer, "splices", lambda _self, _edits: [Splice(0, len(text), wrong)]
    )
    with pytest.raises(InputError, match="cannot be changed by itself"):
        edited(text, ValueSet(("a",), 2))


def test_a_path_that_is_not_there_is_a_value_error():
    with pytest.raises(ValueError, match="there is no a/7/b in the show file"):
        edited("a: [1]\n", ValueSet(("a", 7, "b"), 1))
