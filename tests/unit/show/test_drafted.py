import pytest

from sequencer.errors import InputError
from sequencer.show.drafted import (
    DraftedRow,
    drafted_entries,
    drafted_phrases,
    is_drafted,
    mark_of,
    without_drafted,
    written_row,
)
from sequencer.show.drafted_lines import drafted_text
from sequencer.show.text.document import parse_document

PLAIN = """\
title: T   # mine
timeline:
  # first
  - {from: 1.1, pattern: windmill, beats: 8}   # keep
  - {from: 9.1, pattern: line, beats: 8}
# behind
crew: []
"""


def parsed(text):
    return parse_document(text, "s.yaml")


def draft(text, rows, *, phrases=None, keep=(), starts=None):
    given = {0: 0.0, 1: 32.0} if starts is None else starts
    return drafted_text(
        text, parsed(text), keep=keep, phrases=phrases or {}, rows=rows, starts=given
    )


def row(at, values):
    return DraftedRow(values=values, at=at)


def test_a_row_is_drafted_only_as_long_as_it_says_the_same():
    values = {"from": "1.1", "pattern": "line", "beats": 14, "link": True, "cycle": 2.5}
    (read,) = parsed(f"timeline: [{written_row(values)}]").values["timeline"]
    assert is_drafted(read)
    assert is_drafted({**values, "drafted": "true"})
    for key, value in (("beats", "13"), ("note", "mine"), ("from", "1.2")):
        assert not is_drafted({**read, key: value}), key
    assert not is_drafted({key: value for key, value in read.items() if key != "drafted"})
    assert len({mark_of({"beats": n}) for n in range(200)}) == 200


@pytest.mark.parametrize(
    "name", ["yes", "A: b", "null", "12", "verse 1", "Refrain’s", "- x", "1.5e3"]
)
def test_names_are_written_so_that_they_are_read_again(name):
    values = {"phrase": name, "from": "3.1+1/2"}
    (read,) = parsed(f"timeline:\n  - {written_row(values)}\n").values["timeline"]
    assert read["phrase"] == name
    assert is_drafted(read)


def test_entries_are_put_in_by_time_and_nothing_else_changes():
    text = draft(
        PLAIN,
        [
            row(0.5, {"from": "1.2", "pattern": "a"}),
            row(16.0, {"from": "5.1", "rest": 4}),
            row(40.0, {"from": "11.1"}),
        ],
    )
    lines = text.splitlines()
    before = PLAIN.splitlines()
    assert [line for line in lines if "drafted" not in line] == before
    assert ["drafted" in line for line in lines] == [False] * 4 + [True] * 2 + [False, True] + [
        False
    ] * 2


def test_an_entry_that_follows_another_is_not_parted_from_it():
    text = PLAIN.replace("{from: 9.1, pattern", "{pattern")
    out = draft(text, [row(4.0, {"from": "2.1", "pattern": "a"})], starts={0: 0.0, 1: 0.0})
    assert out.index("windmill") < out.index("pattern: line") < out.index("drafted")


def test_what_was_drafted_is_taken_out_again():
    phrases = {"A": [{"pattern": "line", "beats": 8}]}
    once = draft(PLAIN, [row(16.0, {"from": "5.1", "phrase": "A"})], phrases=phrases)
    document = parsed(once)
    assert drafted_phrases(document.values) == {"A"}
    assert drafted_entries(document.values) == (1,)
    assert "phrases" in document.values
    assert without_drafted(document.values)["timeline"] == parsed(PLAIN).values["timeline"]
    again = draft(
        once, [row(16.0, {"from": "5.1", "phrase": "A"})], phrases=phrases, starts={0: 0.0, 2: 32.0}
    )
    assert again == once
    gone = draft(once, [], starts={0: 0.0, 2: 32.0})
    assert parsed(gone).values == parsed(PLAIN).values


def test_a_phrase_that_was_changed_stays_with_the_entry_that_uses_it():
    once = draft(
        PLAIN,
        [row(16.0, {"from": "5.1", "phrase": "A"})],
        phrases={"A": [{"pattern": "line", "beats": 8}]},
    )
    mine = once.replace("{pattern: line, beats: 8, drafted", "{pattern: line, beats: 7, drafted")
    assert mine != once
    values = parsed(mine).values
    assert drafted_entries(values) == ()
    assert without_drafted(values) == values


def test_line_ends_and_byte_order_mark_stay():
    rows = [row(16.0, {"from": "5.1", "pattern": "a"})]
    windows = "\ufeff" + PLAIN.replace("\n", "\r\n")
    out = drafted_text(
        windows,
        parsed(windows.removeprefix("\ufeff")),
        keep=(),
        phrases={},
        rows=rows,
        starts={0: 0.0, 1: 32.0},
    )
    assert out == "\ufeff" + draft(PLAIN, rows).replace("\n", "\r\n")


@pytest.mark.parametrize("timeline", ["timeline: []   # empty", "timeline:", "timeline: ~", ""])
def test_an_empty_timeline_is_filled(timeline):
    text = f"title: T\n{timeline}\ncrew: []\n"
    rows = [row(0.0, {"from": "1.1", "pattern": "a"})]
    out = draft(text, rows, phrases={"B": [{"pattern": "b", "beats": 2}]}, starts={})
    values = parsed(out).values
    assert [each["pattern"] for each in values["timeline"]] == ["a"]
    assert list(values["phrases"]) == ["B"]
    assert values["title"] == "T"
    assert ("# empty" in out) == ("# empty" in text)


def test_a_timeline_on_one_line_is_refused_with_its_place():
    text = "title: T\ntimeline: [{from: 1.1, pattern: a, beats: 2}]\n"
    with pytest.raises(InputError, match=r"s\.yaml:2:11: .*one entry on each line"):
        draft(text, [row(8.0, {"from": "3.1"})], starts={0: 0.0})


def test_a_block_entry_over_several_lines_is_taken_out_whole():
    marked = mark_of({"from": "9.1", "pattern": "line", "beats": "8"})
    text = PLAIN.replace(
        "  - {from: 9.1, pattern: line, beats: 8}\n",
        f"  - from: 9.1\n    pattern: line\n    beats: 8   # two\n    drafted: {marked}\n",
    )
    out = draft(text, [], starts={0: 0.0})
    assert out == PLAIN.replace("  - {from: 9.1, pattern: line, beats: 8}\n", "")


def test_in_a_file_that_is_not_in_order_of_time_entries_come_behind():
    text = PLAIN.replace("from: 1.1", "from: 21.1")
    out = draft(text, [row(40.0, {"from": "11.1", "rest": 4})], starts={0: 80.0, 1: 32.0})
    assert out.index("21.1") < out.index("9.1") < out.index("11.1")


def test_a_comment_of_a_person_behind_a_drafted_entry_stays():
    once = draft(PLAIN, [DraftedRow(values={"from": "5.1", "rest": 4}, at=16.0, remark="G")])
    mine = once.replace("   # G", "   # G: breathe here")
    assert mine != once
    new = DraftedRow(values={"from": "5.1", "rest": 8}, at=16.0, remark="G")
    again = draft(mine, [new], starts={0: 0.0, 2: 32.0})
    assert "  # G: breathe here\n" in again
    assert "# G: breathe" not in draft(once, [new], starts={0: 0.0, 2: 32.0})
    assert again.replace("  # G: breathe here\n", "") == draft(
        once, [new], starts={0: 0.0, 2: 32.0}
    )


@pytest.mark.parametrize("rows", [[row(40.0, {"from": "11.1", "rest": 8})], []])
def test_a_drafted_last_line_without_an_end_is_replaced(rows):
    text = PLAIN.partition("# behind")[0]
    once = draft(text, [row(40.0, {"from": "11.1", "rest": 4})]).rstrip("\n")
    assert drafted_entries(parsed(once).values) == (2,)
    assert draft(once, rows) == draft(text, rows)


def test_a_last_line_of_a_person_without_an_end_gets_one():
    text = PLAIN.partition("# behind")[0]
    rows = [row(40.0, {"from": "11.1", "rest": 4})]
    assert draft(text.rstrip("\n"), rows) == draft(text, rows)
