"""Bars against the last print: whatever a sheet prints is marked when it changes, and nothing else."""

import pytest
from reportlab.platypus import PageBreak

from sequencer.outputs.sheets.page.bars import AWAY, BAR, Barred, Grid
from sequencer.outputs.sheets.page.elements import grid
from sequencer.outputs.sheets.page.marking import ChangesNote, lines_of, marked
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.writing import sheets_of

CHANGES = {
    # what is edited in the show file, and which sheets print it
    "post": ("post: [-7, 4]", "post: [-7.4, 4]", {"safety", "post-1-ewa", "plan-packet"}),
    "fuel on site": ("fuel_on_site: 2 L", "fuel_on_site: 3 L", {"fuel", "plan-packet"}),
    "formation": (
        "Łucja: {at: [0, 2]}",
        "Łucja: {at: [0.4, 2]}",
        {"formation-book", "performer-lucja", "card-lucja", "post-1-ewa", "safety"},
    ),
    "burn": (
        'from: "66.1", until: "89.1"',
        'from: "67.1", until: "89.1"',
        {"operator", "night", "fuel", "safety", "card-lucja", "performer-soren", "plan-packet"},
    ),
    "soak": ("fuel_mass: 50 g", "fuel_mass: 55 g", {"fuel", "night", "plan-packet"}),
    "equipment": ("[whistle, radio]", "[whistle, horn]", {"post-3-mira", "safety", "plan-packet"}),
    "pattern": ("pro-bend-3", "pro-bend-5", {"build-steps", "performer-noa-u5e2u5d1u5e8u5d9u5ea"}),
    "rules": ("rules: {}", "rules: {permit: FP-1}", {"night", "safety", "plan-packet"}),
}
UNTOUCHED = {"post": {"operator", "fuel", "card-lucja"}, "fuel on site": {"card-lucja", "operator"}}


def bars(story):
    """Lines of a sheet's story that carry a bar."""
    found = 0
    for part in story:
        found += isinstance(part, Barred)
        for panel in getattr(part, "panels", ()):
            found += bars(panel)
        if isinstance(part, Grid):
            cells = [cell for row in part._cellvalues for cell in row]
            inner = [
                one
                for cell in cells
                for one in (cell if isinstance(cell, list | tuple) else [cell])
            ]
            found += sum(getattr(one, "is_new", False) for one in inner)
            found += bars(inner)
    return found


@pytest.mark.parametrize("change", CHANGES)
def test_every_sheet_that_prints_a_change_marks_it(rounds, tmp_path, change):
    old, new, sheets = CHANGES[change]
    asked = sheets | UNTOUCHED.get(change, set())
    text = rounds.ROUND + "rules: {}\n"
    assert old in text
    said = rounds.report()
    before = Edition(staged=rounds.show(tmp_path, text, name="old.yaml"), report=said)
    now = Edition(staged=rounds.show(tmp_path, text.replace(old, new)), report=said, before=before)
    marks = {
        sheet.name: bars(sheet.story(Page.of("a4", wide=sheet.wide)))
        for sheet in sheets_of(now)
        if sheet.name in asked
    }

    assert {name for name in sheets if not marks[name]} == set()
    assert {name for name in UNTOUCHED.get(change, ()) if marks[name]} == set()


def words(*texts):
    return [Prose(TextSpan(text)) for text in texts]


def test_rows_keep_their_bars_where_a_table_breaks():
    table = grid([words(f"row {k}", "x") for k in range(30)], [60, 60])
    story = marked(
        [ChangesNote(), table],
        [grid([words(f"row {k}", "x") for k in range(0, 30, 2)], [60, 60])],
        against="version 1",
        room=120,
    )
    table = story[1]
    table.wrap(120, 1e9)
    parts = table.split(120, 100.0)
    rows = [row for part in parts for row in part._cellvalues]

    assert len(parts) > 1
    assert all(isinstance(part, Grid) for part in parts)
    assert [bool(getattr(row[0][0], "is_new", False)) for row in rows] == [
        k % 2 == 1 for k in range(30)
    ]


def test_a_line_told_twice_is_new_once():
    story = marked(words("a", "b", "b"), words("b", "a"), against="version 1", room=100)

    assert [type(part).__name__ for part in story] == ["Prose", "Prose", "Barred"]


def test_a_sheet_that_is_new_as_a_whole_says_so_instead_of_marking_everything():
    story = marked([ChangesNote(), *words("a")], None, against="version 1", room=300)

    assert lines_of(story)[0] == "Not in the last print (version 1)."
    assert type(story[1]).__name__ == "Prose"


def test_what_is_gone_is_told_with_its_old_words():
    story = marked([ChangesNote(), *words("wind 3")], words("wind 2"), against="v1", room=300)

    assert "none removed" in lines_of(story)[0]
    assert "“wind 3” was “wind 2”" in lines_of(story)[0]


def test_of_a_row_only_the_cells_that_differ_are_told():
    story = marked(
        [ChangesNote(), *words("Wren · 14 counts · 0:48")],
        words("Wren · 12 counts · 0:48"),
        against="v1",
        room=300,
    )

    assert "Now and before: Wren: “14 counts” was “12 counts”" in lines_of(story)[0]


def test_a_line_that_is_like_none_is_removed():
    story = marked(
        [ChangesNote(), *words("mooring post")], words("fan 12 kg"), against="v1", room=300
    )

    assert "1 removed" in lines_of(story)[0]
    assert "Removed: “fan 12 kg”" in lines_of(story)[0]


def test_what_says_nothing_is_never_marked():
    story = marked([PageBreak()], [], against="version 1", room=100)

    assert isinstance(story[0], PageBreak)


def test_bars_stand_in_the_margin():
    assert AWAY > BAR


def test_of_a_long_line_the_words_around_the_difference_are_told():
    long = "walk to the diamond past the point near the post, end {} upstage on the centre line and face the audience"
    story = marked(
        [ChangesNote(), *words(long.format("3 m"))],
        words(long.format("4 m")),
        against="v1",
        room=300,
    )

    assert "“… post, end 3 m upstage …” was “… post, end 4 m upstage …”" in lines_of(story)[0]
