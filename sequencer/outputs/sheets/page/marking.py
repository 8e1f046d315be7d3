"""Marks against the last print: a bar in the margin beside every line that the last print does not hold.

A sheet is told twice, of the show as it is and of the show as it was; lines are compared as they read. So
whatever a sheet prints is marked when it changes, on every sheet alike. Lengths in points.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from reportlab.platypus import Flowable, Table

from sequencer.outputs.sheets.page.bars import Barred, Grid, parts_of
from sequencer.outputs.sheets.page.elements import box
from sequencer.outputs.sheets.page.paper import SMALL, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import brief, plural

GONE_TOLD, GONE_LETTERS = 4, 70  # lines that are gone are told so many, so long
PICTURE = "["  # begins what a drawing says it shows: for comparing, not for reading


@dataclass(slots=True)
class Change:
    """What differs on one sheet."""

    new: int = 0
    gone: list[str] = field(default_factory=list)


class ChangesNote(Flowable):  # type: ignore[misc]
    """Where a sheet says how it differs from the last print; nothing where none is given."""

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """No room at all."""
        return 0.0, 0.0

    def draw(self) -> None:
        """Nothing."""


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
    lines: list[Flowable] = [Prose(TextSpan(said, "Bold", TEXT))]
    told = [f"“{brief(words, most=GONE_LETTERS)}”" for words in change.gone[:GONE_TOLD]]
    if told:
        more = len(change.gone) - len(told)
        tail = f" and {more} more" if more > 0 else ""
        lines.append(Prose(TextSpan(f"No longer there: {'; '.join(told)}{tail}", "Regular", SMALL)))
    for index, part in enumerate(story):
        if isinstance(part, ChangesNote):
            story[index] = box(lines, room)
            break
    for part in story:
        for panel in getattr(part, "panels", ()):
            for index, own in enumerate(panel):
                if isinstance(own, ChangesNote):
                    panel[index] = Prose(TextSpan(said, "Bold", 8.0), leading=1.15)
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
            for part in parts_of(cell):
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
        parts = [part for cell in cells for part in parts_of(cell)]
        next(part for part in parts if isinstance(part, Flowable)).is_new = True

    return mark
