"""Marks against the last print: a bar in the margin beside every line that is not in the last print.

Each sheet is built twice, from the current and the previous show, and its lines are compared as text. So
anything that a sheet prints is marked when it changes, on every sheet alike. Lengths in points.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from typing import Any, TypeAlias

from reportlab.platypus import Flowable, Table

from sequencer.outputs.sheets.page.bars import Barred, Grid, parts_of
from sequencer.outputs.sheets.page.elements import box
from sequencer.outputs.sheets.page.letters import clipped
from sequencer.outputs.sheets.page.paper import SMALL, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import brief, plural

GONE_LISTED, GONE_LETTERS = 4, 70  # how many removed lines are listed, and how long each may be
OTHER_LISTED = 8  # how many changed lines are told as they were and as they are
_ALIKE = 0.6  # share of letters that two lines have in common to be one line that changed; a design choice
_BESIDE = 2  # words told on either side of those that differ
_CELL = " · "  # between the cells of a row
_Unit: TypeAlias = tuple[str, Callable[[], None], bool]
PICTURE = "["  # starts the description of a drawing: for comparison, not for reading


@dataclass(slots=True)
class Change:
    """The differences on one sheet."""

    new: list[str] = field(default_factory=list)
    told: int = 0  # lines that read as before and say themselves what has changed
    gone: list[str] = field(default_factory=list)
    other: list[tuple[str, str]] = field(default_factory=list)  # lines as they were and as they are


class ChangesNote(Flowable):  # type: ignore[misc]
    """Placeholder for the note on how a sheet differs from the last print; empty if there is none.

    With a size of type, the note is one line of it, without the lines that were removed.
    """

    def __init__(self, size: float | None = None) -> None:
        super().__init__()
        self.size = size

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """No room at all."""
        return 0.0, 0.0

    def draw(self) -> None:
        """Nothing."""


def words_of(part: Any) -> str:
    """The text of something on a sheet; for a drawing, a description of what it shows."""
    if getattr(part, "is_aside", False):  # says itself what changed
        part = ""
    if isinstance(part, str):
        return part
    if isinstance(part, list | tuple):
        return _CELL.join(filter(None, map(words_of, part)))
    if isinstance(part, Prose):
        return "".join(span.text for span in part.spans).strip()
    if isinstance(part, Table):
        return words_of([list(row) for row in part._cellvalues])  # noqa: SLF001
    if isinstance(part, Barred):
        return words_of(part.inner)
    text = getattr(part, "description", None) or getattr(part, "words", "")
    return words_of(text) if isinstance(text, Prose | list) else str(text)


def _says_changed(part: Any) -> bool:
    """Whether something on a sheet, or a part of it, says itself what changed."""
    if isinstance(part, list | tuple):
        return any(map(_says_changed, part))
    return bool(getattr(part, "is_aside", False))


def lines_of(story: Sequence[Flowable]) -> list[str]:
    """The text of a sheet, line by line."""
    return [words for words, _, _ in _units(list(story))]


def marked(
    story: list[Flowable], before: Sequence[Flowable] | None, *, against: str, room: float
) -> list[Flowable]:
    """A sheet's story with bars, and a note on what has changed.

    Parameters
    ----------
    story : list of Flowable
    before : sequence of Flowable, optional
        The same sheet of the last print; None if there was none.
    against : str
        Version and date of the last print.
    room : float
        Width of the note.
    """
    left = Counter(lines_of(before)) if before is not None else Counter()
    change = Change()
    units = [unit for unit in _units(story) if unit[0]]
    for words, mark, told in units:
        if left[words] > 0:
            left[words] -= 1
            if told:
                change.told += 1
                mark()
        elif before is not None:
            change.new.append(words)
            mark()
    change.gone = [
        words
        for words, count in left.items()
        if words and not words.startswith(PICTURE)
        for _ in range(count)
    ]
    change.other = _counterparts(change)
    note = (
        _note_text(change, against) if before is not None else f"Not in the last print ({against})."
    )
    return _noted(story, note, change, room)


def _note_text(change: Change, against: str) -> str:
    lines = len(change.new) + change.told
    if not lines and not change.gone:
        return f"Since {against}: no changes on this sheet."
    removed = len(change.gone) - len(change.other)
    return (
        f"Since {against}: {plural(lines, 'line')} new or changed, "
        f"each with a bar in the margin; {removed or 'none'} removed."
    )


def _counterparts(change: Change) -> list[tuple[str, str]]:
    """Lines that are gone, each with the new line that says most of the same, in the order of the sheet."""
    left = list(change.gone)
    found = []
    for words in change.new:
        if words.startswith(PICTURE) or not left:
            continue
        near, old = max((SequenceMatcher(None, each, words).ratio(), each) for each in left)
        if near >= _ALIKE:
            left.remove(old)
            found.append((old, words))
    return found


def _told(old: str, now: str) -> str:
    """What differs between two lines, cell by cell: the old words and the new, after what names the line."""
    olds, news = old.split(_CELL), now.split(_CELL)
    was = _CELL.join(cell for cell in olds if cell not in news)
    is_ = _CELL.join(cell for cell in news if cell not in olds)
    was, is_ = (words or "nothing" for words in _around(was, is_))
    name = next((cell for cell in news if cell in olds), "")
    lead = f"{brief(name, most=GONE_LETTERS)}: " if name else ""
    return f"{lead}“{brief(is_, most=GONE_LETTERS)}” was “{brief(was, most=GONE_LETTERS)}”"


def _around(was: str, now: str) -> tuple[str, str]:
    """Two long texts from shortly before the first word in which they differ to shortly after the last."""
    olds, news = was.split(" "), now.split(" ")
    if max(len(was), len(now)) <= GONE_LETTERS or not was or not now:
        return was, now
    short = min(len(olds), len(news))
    same = next((k for k in range(short) if olds[k] != news[k]), short)
    end = next((k for k in range(short - same) if olds[-1 - k] != news[-1 - k]), short - same)

    def part(words: list[str]) -> str:
        first, last = max(same - _BESIDE, 0), min(len(words) - end + _BESIDE, len(words))
        lead, tail = "… " if first else "", " …" if last < len(words) else ""
        return f"{lead}{' '.join(words[first:last])}{tail}"

    return part(olds), part(news)


def _noted(story: list[Flowable], note: str, change: Change, room: float) -> list[Flowable]:
    """The story with its note in place."""
    lines: list[Flowable] = [Prose(TextSpan(note, "Bold", TEXT))]
    told = [_told(old, now) for old, now in change.other[:OTHER_LISTED]]
    if told:
        more = len(change.other) - len(told)
        tail = f"; and {more} more" if more > 0 else ""
        lines.append(Prose(TextSpan(f"Now and before: {'; '.join(told)}{tail}", "Regular", SMALL)))
    matched = Counter(old for old, _ in change.other)
    removed = list((Counter(change.gone) - matched).elements())
    gone = [f"“{brief(words, most=GONE_LETTERS)}”" for words in removed[:GONE_LISTED]]
    if gone:
        more = len(removed) - len(gone)
        tail = f" and {more} more" if more > 0 else ""
        lines.append(Prose(TextSpan(f"Removed: {'; '.join(gone)}{tail}", "Regular", SMALL)))
    for index, part in enumerate(story):
        if isinstance(part, ChangesNote):
            story[index] = (
                box(lines, room) if part.size is None else _one_line(note, part.size, room)
            )
            break
    for part in story:
        for panel in getattr(part, "panels", ()):
            for index, piece in enumerate(panel):
                if isinstance(piece, ChangesNote):
                    panel[index] = Prose(TextSpan(note, "Bold", 8.0), leading=1.15)
    return story


def _one_line(note: str, size: float, room: float) -> Flowable:
    return Prose(TextSpan(clipped(note, "Bold", size, room), "Bold", size))


def _units(story: list[Any]) -> Iterator[_Unit]:
    """Each line with its text, a function that marks it, and whether it says itself that it changed."""
    for index, part in enumerate(story):
        panels = getattr(part, "panels", None)
        if panels is not None:
            for panel in panels:
                yield from _units(panel)
        elif isinstance(part, Grid):
            yield from _in_grid(part)
        elif not getattr(part, "is_constant", False):
            yield words_of(part), _barring(story, index), _says_changed(part)


def _in_grid(grid: Grid) -> Iterator[_Unit]:
    for number, row in enumerate(grid._cellvalues):  # noqa: SLF001
        if number < int(grid.repeatRows or 0):
            continue
        if not grid.by_cell:
            yield words_of(list(row)), _flagging(row), _says_changed(list(row))
            continue
        for cell in row:
            parts = []
            for part in parts_of(cell):
                if isinstance(part, Grid):
                    yield from _in_grid(part)
                else:
                    parts.append(part)
            yield words_of(parts), _flagging(parts), _says_changed(parts)


def _barring(story: list[Any], index: int) -> Callable[[], None]:
    def mark() -> None:
        story[index] = Barred(story[index])

    return mark


def _flagging(cells: Sequence[Any]) -> Callable[[], None]:
    def mark() -> None:
        parts = [part for cell in cells for part in parts_of(cell)]
        next(part for part in parts if isinstance(part, Flowable)).is_new = True

    return mark
