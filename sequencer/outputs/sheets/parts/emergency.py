"""The emergency card: what a caller says and whom to go to; blanks are lines to write on.

Lengths in points.
"""

from math import inf

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, heading
from sequencer.outputs.sheets.page.paper import CUE, SMALL, SOFT, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.parts.edition import Edition

_SHORT = (
    0,
    1,
    2,
    3,
    5,
    6,
)  # lines for those at a post: number, caller, address, gate, meeting point, first aid


def emergency_block(edition: Edition, room: float, *, short: bool = False) -> list[Flowable]:
    """The card, in full or down to the first aider; nothing if nobody is lit and nothing is entered."""
    lines = edition.staged.show.emergency.lines
    if not edition.is_lit and not any(entered for _, entered in lines):
        return []
    lines = tuple(lines[k] for k in _SHORT) if short else lines
    blank = sum(entered is None for _, entered in lines)
    cells: list[list[Cell]] = [
        [
            Prose(TextSpan(word, "Bold", SMALL if short else TEXT), role="TD"),
            Prose(
                TextSpan(edition.in_order(entered or " "), "Bold", TEXT if short else CUE),
                role="TD",
            ),
        ]
        for word, entered in lines
    ]
    if short:
        half = (len(cells) + 1) // 2
        cells += [["", ""]] * (2 * half - len(cells))
        rows = [left + right for left, right in zip(cells[:half], cells[half:], strict=True)]
        widths = [room * 0.19, room * 0.31] * 2
    else:
        rows, widths = cells, [room * 0.32, room * 0.68]
    pads = [
        ("BOTTOMPADDING", (0, k), (-1, k), 5.5)
        for k, row in enumerate(rows)
        if not short and not lines[k][1]
    ]
    title = "Emergency card: fill in on the day" if blank else "Emergency card"
    tail: list[Flowable] = []
    if blank and blank < len(lines):
        tail = [
            Prose(
                TextSpan(
                    "Fill in the empty lines: they are not in the show file.",
                    "Regular",
                    SMALL,
                    SOFT,
                )
            )
        ]
    table = grid(rows, widths, *pads, pad=2.5, by_cell=short)
    return [
        CondPageBreak(table.wrap(room, inf)[1] + 46),  # with its heading and the line below it
        heading(title),
        table,
        *tail,
    ]
