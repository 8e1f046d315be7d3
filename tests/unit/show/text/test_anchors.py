"""An edit of one use of a named value changes no other."""

import pytest

from sequencer.show.show_text import ShowText
from sequencer.show.text.document import parse_document
from sequencer.show.text.plain_edits import RowsIn, TakenOut, ValueSet

TEXT = """\
cast:
  - {name: A, prop: &poi {kind: poi, wick: 5 cm}}   # the first
  - {name: B, prop: *poi}
  - {name: C, prop: *poi}
"""


def edited(text, *edits):
    return ShowText(text, "s.yaml").edited(*edits).text


def test_an_alias_on_the_way_is_written_out():
    after = edited(TEXT, ValueSet(("cast", 1, "prop", "wick"), "6 cm"))
    assert after == TEXT.replace("B, prop: *poi", "B, prop: {kind: poi, wick: 6 cm}")


def test_a_name_is_handed_on_to_its_next_use():
    first = "{name: A, prop: {kind: poi, wick: 6 cm}}   # the first"
    after = edited(TEXT, ValueSet(("cast", 0, "prop", "wick"), "6 cm"))
    assert after.splitlines()[1] == f"  - {first}"
    assert after.splitlines()[2:] == [
        "  - {name: B, prop: &poi {kind: poi, wick: 5 cm}}", "  - {name: C, prop: *poi}",
    ]  # fmt: skip


@pytest.mark.parametrize("edit", [TakenOut(("cast", 0)), ValueSet(("cast", 0, "prop"), "staff")])
def test_what_is_taken_out_or_replaced_leaves_the_others_theirs(edit):
    values = parse_document(edited(TEXT, edit), "s.yaml").values
    assert [row["prop"] for row in values["cast"][-2:]] == [{"kind": "poi", "wick": "5 cm"}] * 2


def test_a_value_that_is_an_alias_is_replaced_at_once():
    after = edited(TEXT, ValueSet(("cast", 2, "prop"), {"kind": "poi", "wick": "7 cm"}))
    assert after == TEXT.replace("C, prop: *poi", "C, prop: {kind: poi, wick: 7 cm}")


def test_names_used_within_what_goes_are_no_matter():
    text = "a:\n  - [&x 1, *x]\n  - 2\n"
    assert edited(text, TakenOut(("a", 0))) == "a:\n  - 2\n"


def test_a_named_list_below_its_key_is_handed_on_in_one_line():
    text = "a: &x\n  - 1\n  - 2\nb: *x\n"
    after = edited(text, RowsIn(("a",), 1, (3,)))
    assert after == "a:\n  - 1\n  - 3\n  - 2\nb: &x [1, 2]\n"
