"""Marks against the last print: a bar in the margin beside every line that the last print does not hold.

A sheet is told twice, of the show as it is and of the show as it was; lines are compared as they read. So
whatever a sheet prints is marked when it changes, on every sheet alike. Lengths in points.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from reportlab.platypus import Flowable, Table

from sequencer.outputs.sheets.paper import INK, SMALL, TEXT
from sequencer.outputs.sheets.prose import Prose, Span
from sequencer.outputs.sheets.wording import brief, plural

BAR, AWAY = 2.6, 7.0  # width of a bar, and how far left of its line it stands
GONE_TOLD, GONE_LETTERS = 4, 70  # lines that are gone are told so many, so long
PICTURE = "["  # begins what a drawing says it shows: for comparing, not for reading


@dataclass(slots=True)
class Change:
    """What differs on one sheet."""

    new: int = 0
    gone: list[str] = field(default_factory=list)


class Grid(Table):  # type: ignore[misc]
    """A table that draws bars beside changed rows; with `by_cell`, beside changed cells.

    Which ones is written on what they hold, so that it stays with them where the table breaks.
    """

    by_cell = False

    def split(self, *room: float) -> list[Flowable]:
        """Parts that know what is by cell."""
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
                if any(getattr(part, "is_new", False) for part in _parts(cell)):
                    x = self._colpositions[column if self.by_cell else 0]
                    draw_bar(self.canv, x, low, top)
                    if not self.by_cell:
                        break


class Barred(Flowable):  # type: ignore[misc]
    """Something with a bar beside it."""

    def __init__(self, inner: Flowable) -> None:
        super().__init__()
        self.inner = inner
        self.spaceBefore, self.spaceAfter = inner.getSpaceBefore(), inner.getSpaceAfter()

    def wrap(self, room: float, tall: float) -> tuple[float, float]:
        """As large as what it holds."""
        self.width, self.height = self.inner.wrap(room, tall)
        return self.width, self.height

    def split(self, room: float, tall: float) -> list[Flowable]:
        """Each part with its bar."""
        return [Barred(part) for part in self.inner.split(room, tall)]

    def draw(self) -> None:
        """Put it on the page."""
        self.inner.drawOn(self.canv, 0, 0)
        draw_bar(self.canv, 0.0, 0.0, self.height)


class ChangesNote(Flowable):  # type: ignore[misc]
    """Where a sheet says how it differs from the last print; nothing where none is given."""

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """No room at all."""
        return 0.0, 0.0

    def draw(self) -> None:
        """Nothing."""


def draw_bar(canvas: Any, x: float, low: float, top: float) -> None:
    """One bar in the margin; readers that hear the page are told what it means."""
    begin = getattr(canvas, "begin_tag", None)
    if begin is not None:
        begin("Figure", "changed since the last print")
    canvas.saveState()
    canvas.setFillColor(INK)
    canvas.rect(x - AWAY, low + 0.8, BAR, max(top - low - 1.6, 2.0), stroke=0, fill=1)
    canvas.restoreState()
    if begin is not None:
        canvas.end_tag()


def words_of(part: Any) -> str:
    """How something on a sheet reads; of a drawing, what it shows."""
    if isinstance(part, str):
        return part
    if isinstance(part, list | tuple):
        return " · ".join(filter(None, map(words_of, part)))
    if isinstance(part, Prose):
        return "".join(span.text for span in part.spans).strip()
    if isinstance(part, Table):
        return words_of([list(row) for row in part._cellvalues])  # noqa: SLF001
    if isinstance(part, Barred):
        return words_of(part.inner)
    said = getattr(part, "said", None) or getattr(part, "words", "")
    return words_of(said) if isinstance(said, Prose | list) else str(said)


def lines_of(story: Sequence[Flowable]) -> list[str]:
    """Everything a sheet says, line by line."""
    return [words for words, _ in _units(list(story))]


def marked(
    story: list[Flowable], before: Sequence[Flowable] | None, *, against: str, room: float
) -> list[Flowable]:
    """A sheet's story with bars, and a note of what differs.

    Parameters
    ----------
    story : list of Flowable
    before : sequence of Flowable, optional
        The same sheet of the last print; None where that had none.
    against : str
        Version and date of the last print.
    room : float
        Width of the note.
    """
    left = Counter(lines_of(before)) if before is not None else Counter()
    change = Change()
    units = [unit for unit in _units(story) if unit[0]]
    for words, mark in units:
        if left[words] > 0:
            left[words] -= 1
        elif before is not None:
            change.new += 1
            mark()
    change.gone = [
        words
        for words, count in left.items()
        if words and not words.startswith(PICTURE)
        for _ in range(count)
    ]
    said = _said(change, against) if before is not None else f"Not in the last print, {against}."
    return _noted(story, said, change, room)


def _said(change: Change, against: str) -> str:
    if not change.new and not change.gone:
        return f"Against {against}: nothing changed on this sheet."
    return (
        f"Against {against}: {plural(change.new, 'line')} new or changed, "
        f"each with a bar in the margin; {len(change.gone) or 'none'} gone."
    )


def _noted(story: list[Flowable], said: str, change: Change, room: float) -> list[Flowable]:
    """The story with its note in place."""
    from sequencer.outputs.sheets.blocks import box

    lines: list[Flowable] = [Prose(Span(said, "Bold", TEXT))]
    told = [f"“{brief(words, most=GONE_LETTERS)}”" for words in change.gone[:GONE_TOLD]]
    if told:
        more = len(change.gone) - len(told)
        tail = f" and {more} more" if more > 0 else ""
        lines.append(Prose(Span(f"No longer there: {'; '.join(told)}{tail}", "Regular", SMALL)))
    for index, part in enumerate(story):
        if isinstance(part, ChangesNote):
            story[index] = box(lines, room)
            break
    for part in story:
        for panel in getattr(part, "panels", ()):
            for index, own in enumerate(panel):
                if isinstance(own, ChangesNote):
                    panel[index] = Prose(Span(said, "Bold", 8.0), leading=1.15)
    return story


def _units(story: list[Any]) -> Iterator[tuple[str, Callable[[], None]]]:
    """Each line with what it says and how it is marked."""
    for index, part in enumerate(story):
        panels = getattr(part, "panels", None)
        if panels is not None:
            for panel in panels:
                yield from _units(panel)
        elif isinstance(part, Grid):
            yield from _in_grid(part)
        elif not getattr(part, "is_constant", False):
            yield words_of(part), _barring(story, index)


def _in_grid(grid: Grid) -> Iterator[tuple[str, Callable[[], None]]]:
    for number, row in enumerate(grid._cellvalues):  # noqa: SLF001
        if number < int(grid.repeatRows or 0):
            continue
        if not grid.by_cell:
            yield words_of(list(row)), _flagging(row)
            continue
        for cell in row:
            own = []
            for part in _parts(cell):
                if isinstance(part, Grid):
                    yield from _in_grid(part)
                else:
                    own.append(part)
            yield words_of(own), _flagging(own)


def _barring(story: list[Any], index: int) -> Callable[[], None]:
    def mark() -> None:
        story[index] = Barred(story[index])

    return mark


def _flagging(cells: Sequence[Any]) -> Callable[[], None]:
    def mark() -> None:
        parts = [part for cell in cells for part in _parts(cell)]
        next(part for part in parts if isinstance(part, Flowable)).is_new = True

    return mark


def _parts(cell: Any) -> Sequence[Any]:
    return cell if isinstance(cell, list | tuple) else (cell,)
