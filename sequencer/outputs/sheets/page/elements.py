"""Elements that several sheets share: titles, tables, boxes, badges. Lengths in points."""

from collections.abc import Sequence
from typing import Any, TypeAlias

from reportlab.lib.colors import Color
from reportlab.platypus import Flowable, TableStyle

from sequencer.outputs.sheets.page.bars import Grid
from sequencer.outputs.sheets.page.letters import font_name, printable, width
from sequencer.outputs.sheets.page.paper import (
    CUE,
    FLAME,
    GAP,
    GIANT,
    HAIR,
    HEAD,
    INK,
    LEAD_SIZE,
    MIST,
    PAPER,
    RULE,
    SMALL,
    SOFT,
    TEXT,
    TINY,
    TITLE,
)
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, broken, one_line
from sequencer.outputs.sheets.page.wording import brief

Cell: TypeAlias = Any  # a flowable, a list of them, or text
SEVERITY_WORDS = {"stop": "STOP", "warn": "WARN", "note": "NOTE"}


def kicker(words: str, *, colour: Color = SOFT) -> Prose:
    """Small capitals above a title."""
    return Prose(TextSpan(words.upper(), "Bold", SMALL, colour), role="P", after=1)


def heading(words: str, *, level: int = 1, before: float = GAP * 1.2) -> Prose:
    """A heading with an entry in the outline."""
    return Prose(
        TextSpan(words, "Poster", HEAD if level == 1 else LEAD_SIZE, INK),
        before=before,
        after=4,
        leading=1.2,
        role=f"H{min(level + 1, 3)}",
        bookmark=(words, level),
    )


def fitted(
    words: str,
    room: float,
    *,
    most: int = 2,
    sizes: Sequence[float] = (GIANT, TITLE, HEAD, LEAD_SIZE),
) -> Prose:
    """A title in the largest size that keeps it to `most` lines; in the smallest size, as many lines as it needs."""
    for size in sizes:
        if len(broken((TextSpan(words, "Poster", size),), room)) <= most:
            break
    return Prose(TextSpan(words, "Poster", size, INK), leading=1.16, role="H1")


def grid(
    rows: Sequence[Sequence[Cell]],
    widths: Sequence[float],
    *style: tuple[Any, ...],
    repeat: int = 0,
    pad: float = 3.0,
    gutter: float = 8.0,
    lines: bool = True,
    by_cell: bool = False,
    heights: Sequence[float | None] | None = None,
) -> Grid:
    """A table that breaks between rows and repeats its head; with `by_cell`, changes are marked cell by cell.

    Rows are as high as their content, or as `heights` has them.
    """
    base: list[tuple[Any, ...]] = [
        (
            "FONTNAME",
            (0, 0),
            (-1, -1),
            font_name("Regular"),
        ),  # otherwise reportlab uses a face that is not embedded
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), gutter),
        ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), pad),
        ("BOTTOMPADDING", (0, 0), (-1, -1), pad),
    ]
    if lines:
        base.append(("LINEBELOW", (0, 0), (-1, -1), HAIR, RULE))
    table = Grid(
        [list(row) for row in rows],
        colWidths=list(widths),
        rowHeights=None if heights is None else list(heights),
        repeatRows=repeat,
        style=TableStyle([*base, *style]),
        hAlign="LEFT",
    )
    table.by_cell = by_cell
    return table


def named_rows(lines: Sequence[tuple[str, str]], room: float, *, share: float) -> Grid:
    """A table of names in bold and a description of each; the names take `share` of the width."""
    rows: list[list[Cell]] = [
        [
            Prose(TextSpan(name, "Bold", TEXT), role="TD"),
            Prose(TextSpan(words, "Regular", TEXT), role="TD"),
        ]
        for name, words in lines
    ]
    return grid(rows, [room * share, room * (1 - share)], pad=2)


def head_cell(words: str) -> Prose:
    """The head of a column."""
    return Prose(TextSpan(words, "Bold", SMALL, SOFT), role="TH")


def box(
    content: list[Flowable], room: float, *, ground: Color | None = MIST, edge: Color | None = None
) -> Grid:
    """Content on a tinted field."""
    style: list[tuple[Any, ...]] = [
        ("FONTNAME", (0, 0), (-1, -1), font_name("Regular")),
        ("LEFTPADDING", (0, 0), (-1, -1), 9),
        ("RIGHTPADDING", (0, 0), (-1, -1), 9),
        ("TOPPADDING", (0, 0), (-1, -1), 6),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 7),
    ]
    if ground is not None:
        style.append(("BACKGROUND", (0, 0), (-1, -1), ground))
    if edge is not None:
        style.append(("BOX", (0, 0), (-1, -1), 1.2, edge))
    return Grid([[content]], colWidths=[room], style=TableStyle(style), hAlign="LEFT")


class Disc(Flowable):  # type: ignore[misc]
    """A performer's number, as on the plan."""

    def __init__(self, words: str, size: float, *, colour: Color = INK) -> None:
        super().__init__()
        self.words, self.size, self.colour = words, size, colour

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Its square."""
        return self.size, self.size

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        canvas.setFillColor(self.colour)
        canvas.circle(self.size / 2, self.size / 2, self.size / 2, stroke=0, fill=1)
        type_size = max(TINY, self.size * 0.55)
        one_line(
            canvas,
            self.size / 2,
            self.size / 2 - type_size * 0.35,
            TextSpan(self.words, "Poster", type_size, PAPER),
            align="centre",
        )


class LitMark(Flowable):  # type: ignore[misc]
    """Lit or out, by shape and word: a dark field with a flame, or an empty frame."""

    def __init__(self, words: str, *, lit: bool, wide: float = 40.0, tall: float = 19.0) -> None:
        super().__init__()
        self.words, self.lit, self.wide, self.tall = words, lit, wide, tall

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Its field."""
        return self.wide, self.tall

    def draw(self) -> None:
        """Put it on the page."""
        from sequencer.outputs.sheets.page.pictograms import flame_mark

        canvas = self.canv
        colour = PAPER if self.lit else SOFT
        if self.lit:
            canvas.setFillColor(FLAME)
            canvas.roundRect(0, 0, self.wide, self.tall, 2.5, stroke=0, fill=1)
            flame_mark(canvas, 9, self.tall / 2 - 6.5, 13, PAPER)
        else:
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(1.0)
            canvas.roundRect(0.5, 0.5, self.wide - 1, self.tall - 1, 2.5, stroke=1, fill=0)
        left = 17.0 if self.lit else 0.0
        one_line(
            canvas,
            left + (self.wide - left - (3 if self.lit else 0)) / 2,
            self.tall / 2 - 3.7,
            TextSpan(self.words, "Bold", TEXT if len(self.words) < 5 else SMALL, colour),
            align="centre",
        )


def shared(natural: Sequence[float], room: float) -> list[float]:
    """Widths that add up to `room`: narrow columns keep theirs, wide ones share what is left."""
    spare = room - sum(natural)
    if spare >= 0:
        return [width + spare / len(natural) for width in natural]
    found = [0.0] * len(natural)
    left = room
    order = sorted(range(len(natural)), key=natural.__getitem__)
    for done, index in enumerate(order):
        found[index] = min(natural[index], left / (len(order) - done))
        left -= found[index]
    return found


def facts_row(pairs: Sequence[tuple[str, str]], room: float) -> Grid:
    """Small label above a strong value, side by side."""
    pairs = [
        (label, "\n".join(brief(line, most=80) for line in value.split("\n")))
        for label, value in pairs
    ]
    natural = [
        max(
            *(width(printable(line), "Bold") * CUE for line in value.split("\n")),
            width(label, "Regular") * SMALL,
        )
        + 12
        for label, value in pairs
    ]
    widths = shared(natural, room)
    cells: list[Cell | str] = [
        [
            Prose(TextSpan(label, "Regular", SMALL, SOFT)),
            Prose(TextSpan(value, "Bold", CUE, INK), leading=1.2),
        ]
        for label, value in pairs
    ]
    return grid([cells], widths, pad=3, lines=False, by_cell=True)
