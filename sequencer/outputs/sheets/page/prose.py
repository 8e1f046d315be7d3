"""Words on paper: lines broken to a width, never wider than it, with letters in the right order for every script.

Lengths in points. A word too long for a line is broken between letters, so that nothing ever leaves its
box; right-to-left script is reordered line by line.
"""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby
from typing import Any, Literal

from reportlab.lib.colors import Color
from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page import bidi
from sequencer.outputs.sheets.page.letters import (
    ASCENT,
    Face,
    clipped,
    printable,
    remembered,
    runs_of,
    width,
)
from sequencer.outputs.sheets.page.paper import INK, TEXT

Align = Literal["left", "right", "centre"]
_TOKEN = re.compile(r"[ \t]+|[^ \t]*?\w\w[-–—](?=\w\w)|[^ \t]+")
_NEAR = 1e-6


@dataclass(frozen=True, slots=True)
class TextSpan:
    """A stretch of text in one face, size and colour."""

    text: str
    face: Face = "Regular"
    size: float = TEXT
    colour: Color = INK


@dataclass(frozen=True, slots=True)
class Run:
    """Letters that are drawn in one call, left to right."""

    text: str
    face: Face
    size: float
    colour: Color
    width: float


@dataclass(frozen=True, slots=True)
class Line:
    """One line, its runs in the order of the page."""

    runs: tuple[Run, ...]
    size: float  # largest of the runs
    rtl: bool

    @property
    def width(self) -> float:
        """Length of the line."""
        return sum(run.width for run in self.runs)


class Prose(Flowable):  # type: ignore[misc]
    """Paragraphs of spans; a newline in a span ends a line.

    Parameters
    ----------
    spans : sequence of TextSpan, or TextSpan
    align : {"left", "right", "centre"}
        Alignment of the lines; a right-to-left paragraph set to "left" is aligned right.
    leading : float
        Line height over type size.
    role : str
        Role in the document's structure: "P", "H1", "H2", "H3", "TH", "TD".
    """

    def __init__(
        self,
        spans: Sequence[TextSpan] | TextSpan,
        *,
        align: Align = "left",
        leading: float = 1.26,
        before: float = 0.0,
        after: float = 0.0,
        role: str = "P",
        bookmark: tuple[str, int] | None = None,
    ) -> None:
        super().__init__()
        self.spans = (spans,) if isinstance(spans, TextSpan) else tuple(spans)
        self.align, self.leading, self.role, self.bookmark = align, leading, role, bookmark
        self.spaceBefore, self.spaceAfter = before, after
        self.lines: tuple[Line, ...] | None = None
        self._fixed = False
        self._room: float | None = (
            None  # that the lines were broken to: a table asks again and again
        )
        self.is_constant = False  # true: not compared with the last print
        self.is_aside = False  # true: a remark on what has changed, and no change itself

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """Break the lines; reportlab calls this."""
        if not self._fixed and self._room != room:
            self.lines, self._room = broken(self.spans, room), room
        self.width = room
        self.height = sum(line.size * self.leading for line in self.lines or ())
        return room, self.height

    def split(self, room: float, tall: float) -> list[Flowable]:
        """Split into two parts between lines, with at least two lines in each; empty if there are fewer."""
        self.wrap(room, tall)
        lines = self.lines or ()
        used, count = 0.0, 0
        for line in lines:
            used += line.size * self.leading
            if used > tall + _NEAR:
                break
            count += 1
        count = min(count, len(lines) - 2)
        if count < 2:
            return []
        return [self._part(lines[:count], first=True), self._part(lines[count:], first=False)]

    def _part(self, lines: tuple[Line, ...], *, first: bool) -> "Prose":
        part = Prose(self.spans, align=self.align, leading=self.leading, role=self.role)
        part.lines, part._fixed = lines, True
        if first:
            part.spaceBefore, part.bookmark = self.spaceBefore, self.bookmark
        else:
            part.spaceAfter = self.spaceAfter
        return part

    def draw(self) -> None:
        """Put the lines on the page; reportlab calls this."""
        canvas = self.canv
        if self.bookmark is not None:
            mark(canvas, *self.bookmark, top=self.height)
        begin = getattr(canvas, "begin_tag", None)
        if begin is not None:
            begin(self.role)
        top = self.height
        for line in self.lines or ():
            box = line.size * self.leading
            base = top - (box - line.size) / 2 - ASCENT * line.size
            set_line(canvas, line, self._start(line), base)
            top -= box
        if begin is not None:
            canvas.end_tag()

    def _start(self, line: Line) -> float:
        spare = self.width - line.width
        align = self.align
        if line.rtl:
            align = {"left": "right", "right": "left", "centre": "centre"}[align]  # type: ignore[assignment]
        return {"left": 0.0, "right": spare, "centre": spare / 2}[align]


def mark(canvas: Any, title: str, level: int, *, top: float) -> None:
    """Add an entry to the document's outline that links to here."""
    own = getattr(canvas, "mark", None)
    if own is None:
        outlined(canvas, title, level, top=top)
    else:
        own(title, level, top=top)


def outlined(canvas: Any, title: str, level: int, *, top: float) -> None:
    """Add the entry as the next one of the canvas's document."""
    canvas.outlined = getattr(canvas, "outlined", 0) + 1
    level = min(level, getattr(canvas, "outline_level", -1) + 1)  # no level may be skipped
    canvas.outline_level = level
    key = f"place-{canvas.outlined}"
    canvas.bookmarkHorizontal(key, 0, top + 12)
    canvas.addOutlineEntry(printable(title).replace("\n", " "), key, level, closed=level > 0)


def set_line(canvas: Any, line: Line, x: float, base: float) -> None:
    """Draw one line with its baseline at `base`."""
    for run in line.runs:
        canvas.setFillColor(run.colour)
        at = x
        for name, text in runs_of(run.text, run.face):
            canvas.setFont(name, run.size)
            canvas.drawString(at, base, text)
            at += width(text, run.face) * run.size
        x += run.width


def one_line(
    canvas: Any,
    x: float,
    base: float,
    span: TextSpan,
    *,
    room: float | None = None,
    align: Align = "left",
) -> float:
    """Draw a span on one line, cut with … to `room`; its width."""
    text = clipped(span.text, span.face, span.size, 1e9 if room is None else room)
    lines = broken((replace(span, text=text),), 1e9)
    if not lines:
        return 0.0
    line = lines[0]
    offset = {"left": 0.0, "right": -line.width, "centre": -line.width / 2}[align]
    set_line(canvas, line, x + offset, base)
    return line.width


@remembered
@lru_cache(maxsize=20_000)
def broken(spans: tuple[TextSpan, ...], room: float) -> tuple[Line, ...]:
    """Lines of the spans, none wider than `room`."""
    text, owners = "", bytearray()
    for index, span in enumerate(spans[:256]):
        shown = printable(span.text)
        text += shown
        owners += bytes([index]) * len(shown)
    lines: list[Line] = []
    start = 0
    for paragraph in text.split("\n"):
        paragraph_owners = owners[start : start + len(paragraph)]
        following = spans[owners[min(start, len(owners) - 1)]] if owners else None
        lines += _paragraph(paragraph, paragraph_owners, spans, room, following)
        start += len(paragraph) + 1
    return tuple(lines)


def _paragraph(
    text: str,
    owners: bytearray,
    spans: tuple[TextSpan, ...],
    room: float,
    fallback: TextSpan | None,
) -> list[Line]:
    if not text:
        return [Line((), fallback.size, False)] if fallback is not None else []
    mixed = bidi.is_mixed(text)
    base = bidi.base_level(text) if mixed else 0
    levels = bidi.levels(text, base) if mixed else []
    lines = []
    for begin, end in _breaks(text, owners, spans, room):
        stop = end
        while stop > begin and text[stop - 1] == " ":
            stop -= 1
        letters = list(text[begin:stop])
        line_owners = list(owners[begin:stop])
        if mixed:
            row = bidi.line_levels(text[begin:stop], levels[begin:stop], base)
            order = bidi.visual_order(row)
            letters = [bidi.mirrored(letters[i]) if row[i] % 2 else letters[i] for i in order]
            line_owners = [line_owners[i] for i in order]
        runs = []
        for owner, group in groupby(
            zip(line_owners, letters, strict=True), key=lambda pair: pair[0]
        ):
            span = spans[owner]
            shown = "".join(letter for _, letter in group if letter not in bidi.DIRECTION_MARKS)
            runs.append(
                Run(shown, span.face, span.size, span.colour, width(shown, span.face) * span.size)
            )
        size = max((run.size for run in runs), default=spans[owners[begin]].size)
        lines.append(Line(tuple(runs), size, base == 1))
    return lines


def _breaks(
    text: str, owners: bytearray, spans: tuple[TextSpan, ...], room: float
) -> list[tuple[int, int]]:
    """Where each line of a paragraph begins and ends."""
    lines = []
    begin, used = 0, 0.0
    for token in _TOKEN.finditer(text):
        long = _length(text, token.start(), token.end(), owners, spans)
        if used + long <= room + _NEAR or token[0].isspace():
            used += long
            continue
        if used > 0 and text[begin : token.start()].strip(" "):
            lines.append((begin, token.start()))
            begin, used = token.start(), 0.0
        if used + long <= room + _NEAR:  # `used` is left over from spaces at the start of a line
            used += long
            continue
        for i in range(token.start(), token.end()):  # a word longer than a line
            letter = _length(text, i, i + 1, owners, spans)
            if used + letter > room + _NEAR and i > begin and not unicodedata.combining(text[i]):
                lines.append((begin, i))
                begin, used = i, 0.0
            used += letter
    lines.append((begin, len(text)))
    return lines


def _length(
    text: str, start: int, end: int, owners: bytearray, spans: tuple[TextSpan, ...]
) -> float:
    first = owners[start]
    if owners[end - 1] == first:
        span = spans[first]
        return width(text[start:end], span.face) * span.size
    return sum(
        width(text[i], spans[owners[i]].face) * spans[owners[i]].size for i in range(start, end)
    )
