"""The panels of a pocket card, and what is drawn on them. Lengths in points."""

from collections.abc import Sequence
from typing import Any

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.letters import clipped
from sequencer.outputs.sheets.page.paper import (
    INK,
    LEAD_SIZE,
    PAPER,
    RULE,
    SMALL,
    SOFT,
    TINY,
    Page,
)
from sequencer.outputs.sheets.page.pictograms import stop_mark
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.page.wording import brief
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import stripes

PANELS = 8
PANEL_PAD = (
    21.0  # margin of a panel: the edge that home printers cannot print, and room for a thumb
)
PANEL_FOOT = 15.0
_RULED = 19.0  # between lines to write on
_TOP = ((0, 5), (1, 4), (2, 3), (3, 2))  # column and page of the upper row, which is upside down
_LOW = ((0, 6), (1, 7), (2, 8), (3, 1))


def high(room: float, part: Flowable) -> float:
    """Height of a part of a panel, with the space after it."""
    return float(part.wrap(room, 1e9)[1] + (part.getSpaceAfter() or 0))


class Warned(Flowable):  # type: ignore[misc]
    """The warning that the show has a STOP, on a dark field with stripes."""

    def __init__(self, words: str) -> None:
        super().__init__()
        self.words = words

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """One line high."""
        self.width = room
        return room, 20.0

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        canvas.setFillColor(INK)
        canvas.rect(0, 3, self.width, 16, stroke=0, fill=1)
        stripes(canvas, 0, 3, 14, 16)
        stripes(canvas, self.width - 14, 3, 14, 16)
        words = clipped(self.words, "Bold", SMALL, self.width - 32)
        one_line(canvas, self.width / 2, 8, TextSpan(words, "Bold", SMALL, PAPER), align="centre")


class RuledPanel(Flowable):  # type: ignore[misc]
    """A panel to write on."""

    def __init__(self, room: float, tall: float, title: str) -> None:
        super().__init__()
        self.width, self.height, self.words = room, tall, title

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """The whole panel."""
        return self.width, self.height

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        one_line(canvas, 0, self.height - LEAD_SIZE, TextSpan(self.words, "Poster", LEAD_SIZE))
        canvas.begin_artifact()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        level = self.height - LEAD_SIZE - 2 * _RULED
        while level > 4:
            canvas.line(0, level, self.width, level)
            level -= _RULED
        canvas.end_tag()


class StopSign(Flowable):  # type: ignore[misc]
    """The stop mark."""

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """As high as the mark."""
        self.width = room
        return room, 50.0

    def draw(self) -> None:
        """Put it on the page."""
        stop_mark(self.canv, 0, 0, 48, INK)
        one_line(self.canv, 24, 18.5, TextSpan("STOP", "Poster", 16, PAPER), align="centre")


class Fold(Flowable):  # type: ignore[misc]
    """Eight panels on one sheet."""

    def __init__(
        self,
        edition: Edition,
        who: str,
        panels: Sequence[Sequence[Flowable]],
        page: Page,
        *,
        sheet: int,
        sheets: int,
    ) -> None:
        super().__init__()
        self.edition, self.who, self.panels, self.page = edition, who, panels, page
        self.sheet, self.sheets = sheet, sheets

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """The whole sheet."""
        self.width, self.height = self.page.width, self.page.height
        return self.width, self.height

    def draw(self) -> None:
        """Put the panels on the page."""
        canvas = self.canv
        wide, tall = self.width / 4, self.height / 2
        for column, panel in _LOW:
            canvas.saveState()
            canvas.translate(column * wide, 0)
            self._panel(canvas, panel, wide, tall)
            canvas.restoreState()
        for column, panel in _TOP:
            canvas.saveState()
            canvas.translate((column + 1) * wide, 2 * tall)
            canvas.rotate(180)
            self._panel(canvas, panel, wide, tall)
            canvas.restoreState()
        self._folds(canvas, wide, tall)

    def _panel(self, canvas: Any, number: int, wide: float, tall: float) -> None:
        content = self.panels[number - 1] if number <= len(self.panels) else []
        top = tall - PANEL_PAD
        for part in content:
            _, high = part.wrap(wide - 2 * PANEL_PAD, top)
            top -= high
            part.drawOn(canvas, PANEL_PAD, top)
            top -= getattr(part, "spaceAfter", 0) or 0
        page = (self.sheet - 1) * PANELS + number
        words = f"{self.edition.number_of(self.who)}  {brief(self.who, most=18)} · page {page} of {self.sheets * PANELS}"
        one_line(
            canvas,
            PANEL_PAD,
            PANEL_PAD + 5,
            TextSpan(words, "Regular", TINY, SOFT),
            room=wide - 2 * PANEL_PAD,
        )

    def _folds(self, canvas: Any, wide: float, tall: float) -> None:
        canvas.begin_artifact()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.setDash(3, 3)
        for column in (1, 2, 3):
            canvas.line(column * wide, 0, column * wide, 2 * tall)
        canvas.line(0, tall, wide, tall)
        canvas.line(3 * wide, tall, 4 * wide, tall)
        canvas.setDash()
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.0)
        canvas.line(wide, tall, 3 * wide, tall)
        canvas.end_tag()
