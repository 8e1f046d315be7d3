"""Nobody turns a page for one word, and no heading stands without what it is about."""

import pytest
from reportlab.platypus import CondPageBreak, Spacer

from sequencer.outputs.sheets.card import not_alone
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.formation_plans import formation_plans, height_of

ROOM, TALL = 100.0, 90.0


def heights(columns):
    return [[block.height for block in column] for column in columns]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ([[30, 30, 20], [10]], [[30, 30], [20, 10]]),
        ([[30, 30, 20], [10, 10]], [[30, 30, 20], [10, 10]]),
        ([[45, 40], [10]], [[45, 40], [10]]),  # then the one before would be left with one
        ([[5, 5, 80], [15]], [[5, 5, 80], [15]]),  # no room for both
        ([[30]], [[30]]),
    ],
)
def test_the_last_panel_holds_more_than_the_end(before, after):
    columns = [[Spacer(1, high) for high in column] for column in before]
    assert heights(not_alone(columns, ROOM, TALL)) == after


@pytest.mark.parametrize("focus", [None, "Łucja"])
def test_the_heading_of_the_plans_stays_with_the_first_row(rounds, tmp_path, focus):
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report())
    page = Page.of("a4")
    begins, *above, table = formation_plans(edition, page, focus=focus, across=2)
    assert isinstance(begins, CondPageBreak)
    # the rows that fit below the heading in the room that is asked for: at least one
    room = begins.height - height_of(above, page.inner)
    first = table.split(page.inner, room)
    assert len(first) == 2 or height_of([table], page.inner) <= room
