"""The emergency card: what a caller says and whom to go to; what is not entered is a line to write on.

Lengths in points.
"""

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.blocks import Cell, grid, heading
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.paper import CUE, SMALL, SOFT, TEXT
from sequencer.outputs.sheets.prose import Prose, Span

_SHORT = 7  # lines for those who do not call themselves


def emergency_block(edition: Edition, room: float, *, short: bool = False) -> list[Flowable]:
    """The card, whole or down to the first aider; nothing where nothing burns and nothing is entered."""
    lines = edition.staged.show.emergency.lines
    if not edition.is_lit and not any(entered for _, entered in lines):
        return []
    lines = lines[:_SHORT] if short else lines
    blank = sum(entered is None for _, entered in lines)
    rows: list[list[Cell]] = [
        [
            Prose(Span(word, "Bold", TEXT), role="TD"),
            Prose(Span(edition.said(entered or " "), "Bold", CUE), role="TD"),
        ]
        for word, entered in lines
    ]
    pads = [("BOTTOMPADDING", (0, k), (-1, k), 9) for k, line in enumerate(lines) if not line[1]]
    title = "Emergency card: fill in on the day" if blank else "Emergency card"
    tail: list[Flowable] = []
    if blank and blank < len(lines):
        tail = [
            Prose(
                Span("Empty lines are not in the show file: write them in.", "Regular", SMALL, SOFT)
            )
        ]
    return [
        CondPageBreak(24.0 * len(lines) + 40),
        heading(title),
        grid(rows, [room * 0.32, room * 0.68], *pads, pad=2.5),
        *tail,
    ]
