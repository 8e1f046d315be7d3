"""No heading stands at the foot of a page without the plans that it is about."""

from math import inf

import pytest
from reportlab.platypus import CondPageBreak

from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import formation_plans, height_of


@pytest.mark.parametrize("focus", [None, "Łucja"])
def test_the_heading_of_the_plans_stays_with_the_first_row(rounds, tmp_path, focus):
    edition = Edition(staged=rounds.show(tmp_path), report=rounds.report())
    page = Page.of("a4")
    begins, *above, table = formation_plans(edition, page, focus=focus, across=2)
    assert isinstance(begins, CondPageBreak)
    # the rows that fit below the heading in the room that is asked for: at least one
    room = begins.height - height_of(above, page.inner)
    table.wrap(page.inner, inf)
    first = table.split(page.inner, room)
    assert len(first) == 2 or height_of([table], page.inner) <= room
