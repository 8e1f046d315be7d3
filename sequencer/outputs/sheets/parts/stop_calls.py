"""What everybody does on the stop call, in one table: the same words on every sheet. Lengths in points."""

from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, heading
from sequencer.outputs.sheets.page.paper import CUE, GAP, SMALL, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import brief
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.duties.on_stop import AT_ONCE, stop_of


def stop_block(edition: Edition, room: float, *, close: bool = False) -> list[Flowable]:
    """Every role and person with what they do; `close` in smaller type."""
    size = SMALL + 0.5 if close else TEXT
    share = 0.16 if close else 0.25
    rows: list[list[Cell]] = [
        [
            Prose(
                TextSpan(brief(edition.in_order(part.role)), "Bold", TEXT if close else CUE),
                role="TD",
            ),
            Prose(TextSpan(edition.in_order("; ".join(part.does)), "Regular", size), role="TD"),
        ]
        for part in stop_of(edition.staged.show, edition.plan.lit_at_once)
    ]
    return [
        CondPageBreak(150),
        heading("On the stop call", level=2 if close else 1, before=4 if close else GAP * 1.2),
        Prose(TextSpan(AT_ONCE, "Bold", TEXT), after=2),
        grid(rows, [room * share, room * (1 - share)], pad=0.8 if close else 1.5),
    ]
