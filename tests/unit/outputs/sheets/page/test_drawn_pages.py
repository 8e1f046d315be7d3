"""Pages that are drawn again are the same bytes as pages that are laid out again.

Reference: the same sheet printed by itself, from its story.
"""

from dataclasses import replace

import pytest
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, Paragraph

from sequencer.outputs.sheets.page.drawn_pages import DrawnPages
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.writing import sheets_of


@pytest.fixture(scope="module")
def edition(rounds, tmp_path_factory):
    return Edition(staged=rounds.show(tmp_path_factory.mktemp("drawn")), report=rounds.report())


@pytest.fixture(scope="module")
def sheets(edition):
    return {sheet.name: sheet for sheet in sheets_of(edition)}


def chosen(sheets, *names):
    return [sheets[name] for name in names]


def test_each_sheet_is_the_same_whether_drawn_again_or_laid_out(edition, sheets):
    """Portrait with a plan, one side folded, and several pages with signs and an outline."""
    drawn = DrawnPages()
    post = next(name for name in sheets if name.startswith("post-1-"))
    some = chosen(sheets, post, "card-lucja", "fuel")
    whole = document_bytes(some, edition, "a4", "all", drawn)
    assert drawn.single == set()
    assert whole == document_bytes(some, edition, "a4", "all")
    for sheet in some:
        again = document_bytes([sheet], edition, "a4", sheet.title, drawn)
        assert again == document_bytes([sheet], edition, "a4", sheet.title)


def test_a_sheet_that_is_drawn_again_is_not_laid_out(edition, sheets):
    drawn, asked = DrawnPages(), []
    (sheet,) = chosen(sheets, "fuel")

    def story(page):
        asked.append(page)
        return sheet.story(page)

    counted = replace(sheet, story=story)
    for _ in range(3):
        document_bytes([counted], edition, "a4", "fuel", drawn)
    assert len(asked) == 1


class Numbered(Flowable):
    """Writes the number of its page, which is another in another file."""

    def draw(self):
        self.canv.drawString(0, 0, f"{self.canv.getPageNumber()}")


class PastTheMethods(Flowable):
    """Writes into the page's code itself."""

    def draw(self):
        self.canv._code.append("0 0 m 9 9 l S")
        self.canv.circle(5, 5, 5)


class AtTheEnd(Flowable):
    """The same, with nothing after it."""

    def draw(self):
        self.canv.circle(5, 5, 5)

    def drawOn(self, canvas, x, y, _sW=0):  # noqa: N802 - reportlab's names
        super().drawOn(canvas, x, y)
        canvas._code.append("0 0 m 9 9 l S")


@pytest.mark.parametrize(
    "odd",
    [
        Numbered,
        PastTheMethods,
        AtTheEnd,
        lambda: Paragraph("letters", ParagraphStyle("own", fontName="SequencerSheet-Regular")),
    ],
)
def test_what_belongs_to_one_file_is_laid_out_again(edition, sheets, odd):
    (fuel,) = chosen(sheets, "fuel")
    first = replace(
        fuel, name="first", story=lambda page: [Prose(TextSpan("abc")), *fuel.story(page)]
    )
    strange = replace(fuel, name="strange", story=lambda page: [odd(), *fuel.story(page), odd()])
    drawn = DrawnPages()
    whole = document_bytes([first, strange], edition, "a4", "all", drawn)
    assert whole == document_bytes([first, strange], edition, "a4", "all")
    assert drawn.single == {"strange"}
    assert drawn.knows("first")
    again = document_bytes([strange], edition, "a4", "one", drawn)
    assert again == document_bytes([strange], edition, "a4", "one")
