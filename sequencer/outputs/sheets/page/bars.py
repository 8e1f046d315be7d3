"""Change bars in the margin beside lines that are not in the last print. Lengths in points."""

import math
from collections.abc import Sequence
from typing import Any

from reportlab.platypus import Flowable, Table

from sequencer.outputs.sheets.page.paper import INK

BAR, AWAY = 2.6, 7.0  # width of a bar, and how far left of its line it stands


class Grid(Table):  # type: ignore[misc]
    """A table that draws bars beside changed rows; with `by_cell`, beside changed cells.

    The mark is stored on the cells' content, so that it survives when the table breaks across pages.
    """

    by_cell = False

    def split(self, *room: float) -> list[Flowable]:
        """The parts of a split table, which keep `by_cell`. A row is cut where no page has room for it below the head."""
        first = int(self.repeatRows)
        heights = [tall or 0.0 for tall in self._rowHeights[: first + 1]]
        page = getattr(self, "_frame", None)  # whose lying pages have less room than upright ones
        most = math.inf if page is None else page._aH - sum(heights[:first])  # noqa: SLF001 (no public name)
        self.splitInRow = int(heights[-1] > most)
        parts = super().split(*room)
        for part in parts:
            part.by_cell = self.by_cell
        return list(parts)

    def draw(self) -> None:
        """The table, then its bars."""
        super().draw()
        for row, cells in enumerate(self._cellvalues):
            top, low = self._rowpositions[row], self._rowpositions[row + 1]
            for column, cell in enumerate(cells):
                if any(getattr(part, "is_new", False) for part in parts_of(cell)):
                    x = self._colpositions[column if self.by_cell else 0]
                    draw_bar(self.canv, x, low, top)
                    if not self.by_cell:
                        break


class Barred(Flowable):  # type: ignore[misc]
    """A flowable with a bar beside it."""

    def __init__(self, inner: Flowable) -> None:
        super().__init__()
        self.inner = inner
        self.spaceBefore, self.spaceAfter = inner.getSpaceBefore(), inner.getSpaceAfter()

    def wrap(self, room: float, tall: float) -> tuple[float, float]:
        """As large as its content."""
        self.width, self.height = self.inner.wrap(room, tall)
        return self.width, self.height

    def split(self, room: float, tall: float) -> list[Flowable]:
        """Each part with its bar."""
        return [Barred(part) for part in self.inner.split(room, tall)]

    def draw(self) -> None:
        """Put it on the page."""
        self.inner.drawOn(self.canv, 0, 0)
        draw_bar(self.canv, 0.0, 0.0, self.height)


def draw_bar(canvas: Any, x: float, low: float, top: float) -> None:
    """One bar in the margin; screen readers are told what it means."""
    begin = getattr(canvas, "begin_tag", None)
    if begin is not None:
        begin("Figure", "changed since the last print")
    canvas.saveState()
    canvas.setFillColor(INK)
    canvas.rect(x - AWAY, low + 0.8, BAR, max(top - low - 1.6, 2.0), stroke=0, fill=1)
    canvas.restoreState()
    if begin is not None:
        canvas.end_tag()


def parts_of(cell: Any) -> Sequence[Any]:
    """The content of one table cell."""
    return cell if isinstance(cell, list | tuple) else (cell,)
