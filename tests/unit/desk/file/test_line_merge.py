"""Two changes of one text: both stay, or none is taken."""

from hypothesis import given
from hypothesis import strategies as st

from sequencer.desk.file.line_merge import changed_lines, line_hunks, merged_text

BASE = "a\nb\nc\nd\ne\n"


def test_changes_in_different_places_are_both_there():
    assert merged_text(BASE, "A\nb\nc\nd\ne\n", "a\nb\nc\nd\nE\n") == "A\nb\nc\nd\nE\n"
    assert merged_text(BASE, "a\nb\nd\ne\n", "a\nb\nc\nd\ne\nf\n") == "a\nb\nd\ne\nf\n"


def test_neighbouring_lines_may_be_changed_by_one_side_each():
    assert merged_text(BASE, "a\nB\nc\nd\ne\n", "a\nb\nC\nd\ne\n") == "a\nB\nC\nd\ne\n"
    assert merged_text(BASE, "a\nb\nx\nc\nd\ne\n", "a\nb\nC\nd\ne\n") == "a\nb\nx\nC\nd\ne\n"


def test_one_place_changed_by_both_is_a_conflict_unless_they_say_the_same():
    assert merged_text(BASE, "a\nB\nc\nd\ne\n", "a\nx\nc\nd\ne\n") is None
    assert merged_text(BASE, "a\nb\nx\nc\nd\ne\n", "a\nb\ny\nc\nd\ne\n") is None
    assert merged_text(BASE, "a\nd\ne\n", "a\nb\nC\nd\ne\n") is None
    same = "a\nB\nc\nd\ne\n"
    assert merged_text(BASE, same, same) == same
    assert merged_text(BASE, "a\nB\nc\nd\nE\n", same) == "a\nB\nc\nd\nE\n"


def test_a_last_line_without_an_end_gets_one_before_what_follows():
    assert merged_text("a\nb", "a\nb\nc", "A\nb") in {"A\nb\nc", None}
    assert merged_text("a\nb", "x\na\nb", "a\nb") == "x\na\nb"


TEXTS = st.lists(st.sampled_from(["a\n", "b\n", "c\r\n", "\n", "- x: 1\n"]), max_size=8).map(
    "".join
)


@given(TEXTS, TEXTS, TEXTS)
def test_what_one_side_leaves_alone_is_as_the_other_has_it(base, mine, theirs):
    assert merged_text(base, mine, base) == mine
    assert merged_text(base, base, theirs) == theirs
    both = merged_text(base, mine, theirs)
    assert both == merged_text(base, theirs, mine)
    if both is not None:  # nothing that either side put in is lost
        for text in (mine, theirs):
            for hunk in line_hunks(base, text):
                assert "".join(hunk.lines) in both


@given(TEXTS, TEXTS)
def test_hunks_lead_from_one_text_to_the_other(before, after):
    lines, out, at = before.splitlines(keepends=True), [], 0
    for hunk in line_hunks(before, after):
        out += [*lines[at : hunk.start], *hunk.lines]
        at = hunk.end
    assert "".join([*out, *lines[at:]]) == after


def test_changed_lines_are_counted_from_one_and_told_without_their_ends():
    assert changed_lines("a\r\nb\r\n", "a\r\nc\r\nd\r\n") == [
        {"line": 2, "out": ["b"], "in": ["c", "d"]}
    ]
