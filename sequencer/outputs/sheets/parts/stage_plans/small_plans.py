"""A performer's formations in little room: the first with the crew, the others of the stage alone beside it. Lengths in points."""

from dataclasses import replace

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, heading
from sequencer.outputs.sheets.page.paper import SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import (
    is_crowded,
    moved_formations,
    nearest,
    number_key,
    scene_of,
)
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan

_COLUMNS, _FIRST = 6, 2  # of the page; of them the first plan takes
_BESIDE = 2 * (_COLUMNS - _FIRST)  # plans beside the first, in two rows
_GUTTER = 8.0
SMALL_TALL = (76.0, 64.0, 52.0)  # how high a plan beside the first may be
_WITH_NEAREST = 60.0  # from which height on it is also said who is nearest
_FIRST_TALL = 2.2  # of the height of a plan beside it


def small_plans(edition: Edition, page: Page, who: str, tall: float) -> list[Flowable]:
    """The plans, so high, under their heading; nothing where performers would hide each other."""
    order = moved_formations(edition.staged) if edition.staged.standings else ()
    column = page.inner / _COLUMNS
    later = [
        replace(scene_of(edition, index, focus=who, crew=False, close=True), bare=True)
        for index in order[1:]
    ]
    wide = column - _GUTTER
    if not later or any(is_crowded(scene, tall=tall, wide=wide) for scene in later):
        return []
    cells: list[Cell] = [
        [
            StagePlan(scene, tall=tall, wide=wide),
            *_words(edition, index, who, nearby=tall > _WITH_NEAREST),
        ]
        for scene, index in zip(later, order[1:], strict=True)
    ]
    first = StagePlan(
        scene_of(edition, order[0], focus=who),
        tall=_FIRST_TALL * tall,
        wide=_FIRST * column - _GUTTER,
    )
    beside = _rows(cells[:_BESIDE], _COLUMNS - _FIRST, column)
    widths = [_FIRST * column, page.inner - _FIRST * column]
    top: list[list[Cell]] = [[[first, *_words(edition, order[0], who, nearby=True)], [beside]]]
    story = [
        heading("Where you stand", level=2, before=4),
        *number_key(edition),
        grid(top, widths, pad=0, gutter=0, lines=False, by_cell=True),
    ]
    if below := cells[_BESIDE:]:
        story.append(_rows(below, _COLUMNS, column))
    return story


def _rows(cells: list[Cell], across: int, column: float) -> Flowable:
    padded = [*cells, *[""] * (-len(cells) % across)]
    rows = [padded[k : k + across] for k in range(0, len(padded), across)]
    return grid(rows, [column] * across, pad=1, gutter=_GUTTER, lines=False, by_cell=True)


def _words(edition: Edition, index: int, who: str, *, nearby: bool) -> list[Flowable]:
    staged = edition.staged
    standing = staged.standings[index]
    until = min(staged.seconds(standing.end), staged.song.duration)
    times = f"{clock(staged.seconds(standing.start))} – {clock(until)}"
    lines: list[Flowable] = [
        Prose(TextSpan(standing.formation, "Poster", TEXT), leading=1.1, role="H3"),
        Prose(TextSpan(times, "Bold", TEXT), leading=1.1),
    ]
    near = nearest(standing, who) if nearby and who in standing.spots else ""
    if near:
        words = f"nearest: {near.removesuffix(' between places')}"
        lines.append(Prose(TextSpan(words, "Regular", SMALL, SOFT), leading=1.1))
    return lines
