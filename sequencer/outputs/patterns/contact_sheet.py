"""The contact sheet: every pattern drawn small, one row per pattern, as bodies of different sizes dance it.

Both hands, seen from the side that shows the pattern best: flat ones straight on (wall plane from behind, wheel plane
from the side, floor plane from above), toroids along the axis of the hand's circle, so that their lobes can
be counted, nearer parts thicker; all others obliquely. The right hand's trail is solid, the left
hand's hollow, so that they can be distinguished in grey print. One scale per row. A4; body frame [m].
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from textwrap import fill

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import PosedBody
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.motion.props.prop import PropKind
from sequencer.outputs.figures import plain_text
from sequencer.outputs.patterns.fit_words import (
    cycle_words,
    number_words,
    prop_words,
    short,
    verdict,
)
from sequencer.outputs.patterns.one_pattern import TEMPO, OnePattern, one_pattern
from sequencer.outputs.patterns.pattern_drawing import (
    DRAWING_INK,
    HAND,
    VIEWS,
    Drawn,
    View,
    draw_arm,
    draw_body,
    draw_prop,
    draw_start,
    draw_trail,
    drawn,
    outline,
)
from sequencer.progress import Progress

BODIES = tuple(Body(stature=stature) for stature in (1.50, 1.70, 1.95))
COLUMNS, ROWS = 3, 6
_WIDE, TALL = 8.27, 11.69  # [in] A4
LEFT, NAMES, TOP, BOTTOM = 0.05, 0.16, 0.915, 0.055  # [share of the page]
COLOURS = {
    "right": "#1f4e8c",
    "left": "#b35806",
}  # blue and brown: distinct to colour-blind readers
NAMED = 0.01  # [share of the page] height above a cell from which its name is printed there
LETTERS = 34  # letters in a line under a cell
_FLAT = 0.25  # [m] a trail no deeper than this is shown straight on
TOO_TIGHT = "#a50f15"
BEHIND, SIDE, ABOVE, OBLIQUE = VIEWS
STRAIGHT = {0: (SIDE, "from the right"), 1: (BEHIND, "from behind"), 2: (ABOVE, "from above")}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Row:
    """Cells drawn to the same scale and from the same side."""

    family: str
    cells: tuple[OnePattern, ...]


@plain_text
def contact_sheet(
    chosen: Sequence[Pattern],
    bodies: Sequence[Body] = BODIES,
    *,
    prop: PropKind = "poi",
    tempo: float = TEMPO,
    timing: Timing = "split",
    direction: Direction = "same",
    book: Mapping[str, Pattern] | None = None,
    progress: Progress | None = None,
) -> list[Figure]:
    """The pages, by family.

    Parameters
    ----------
    chosen : sequence of Pattern
    bodies : sequence of Body
        One column each; with a single body there are three patterns to a row instead.
    prop, tempo, timing, direction, book
        As in `one_pattern`; the prop in its usual size for each body.
    progress : callable, optional
        Called with a subject and the share done.
    """
    families = list(dict.fromkeys(pattern.family for pattern in chosen))
    ordered = sorted(chosen, key=lambda pattern: families.index(pattern.family))
    say, count = progress or (lambda _subject, _share: None), len(ordered) * len(bodies)
    danced: list[tuple[OnePattern, ...]] = []
    for k, pattern in enumerate(ordered):
        say("fitting patterns to bodies", k * len(bodies) / count)
        danced.append(
            tuple(
                one_pattern(
                    pattern.name, tempo=tempo, timing=timing, direction=direction, prop=prop,
                    body=body, book=book,
                )
                for body in bodies
            )
        )  # fmt: skip
    rows = _rows(danced)
    pages = _pages(rows)
    figures = []
    for number, page in enumerate(pages, 1):
        say("drawing", (number - 1) / len(pages))
        figures.append(_page(page, bodies, f"{number} of {len(pages)}"))
    return figures


def _rows(danced: Sequence[tuple[OnePattern, ...]]) -> list[Row]:
    """One row per pattern; three patterns to a row when only one body dances."""
    if len(danced[0]) > 1:
        return [Row(family=cells[0].pattern.family, cells=cells) for cells in danced]
    rows = []
    for family, members in groupby(
        (cells[0] for cells in danced), key=lambda one: one.pattern.family
    ):
        cells = list(members)
        rows += [
            Row(family=family, cells=tuple(cells[k : k + COLUMNS]))
            for k in range(0, len(cells), COLUMNS)
        ]
    return rows


def _pages(rows: Sequence[Row]) -> list[list[Row]]:
    """At most six rows to a page, spread evenly."""
    count = -(-len(rows) // ROWS)
    ends = [round(k * len(rows) / count) for k in range(count + 1)]
    return [list(rows[start:end]) for start, end in pairwise(ends)]


def _page(rows: Sequence[Row], bodies: Sequence[Body], number: str) -> Figure:
    figure = Figure(figsize=(_WIDE, TALL))
    first = rows[0].cells[0]
    several = len(bodies) > 1
    figure.text(LEFT, 0.972, "Vocabulary", fontsize=15, fontweight="bold", va="top")
    how = f"{first.tempo:g} beats a minute"
    if len(first.sides) > 1:
        how += f", {timing_words(first.dance.timing, first.dance.direction)}"
    figure.text(
        0.95, 0.968, f"{how}      {number}", fontsize=8.5, va="top", ha="right", color="#444444"
    )
    names = NAMES if several else 0.0
    width, height = (0.95 - LEFT - names) / COLUMNS, (TOP - BOTTOM) / ROWS
    for k, each in enumerate(rows[0].cells if several else (first,)):
        prop_text = prop_words(each.prop, len(each.sides))
        words = (
            f"{each.body.stature:.2f} m\n{prop_text}"
            if several
            else f"{each.body.stature:.2f} m, {prop_text}"
        )
        place = LEFT + names + (k + 0.5) * width if several else 0.5
        figure.text(
            place, TOP + 0.021, words, fontsize=8.5, fontweight="bold", ha="center", va="center"
        )
    before = ""
    for k, row in enumerate(rows):
        top = TOP - k * height
        figure.add_artist(_rule(top, heavy=row.family != before))
        if several:
            _names(figure, row, top, before)
        elif row.family != before:
            figure.text(
                LEFT, top - 0.004, row.family.upper(), fontsize=7.5, va="top", color="#444444"
            )
        box = LEFT + names, top, width, height
        _row(figure, row, box, head=0.004 if several else 0.02 if row.family == before else 0.033)
        before = row.family
    hollow = "    hollow, □ start: left hand" if len(first.sides) > 1 else ""
    figure.text(
        0.5, 0.03,
        f"solid, ● start: right hand{hollow}    dashed: hand paths    one scale per row\n"
        "cm: the smallest gap between a prop and the body, or between the two props",
        fontsize=8, ha="center", va="center", color="#333333", linespacing=1.4,
    )  # fmt: skip
    return figure


def _rule(height: float, *, heavy: bool) -> Line2D:
    return Line2D(
        (LEFT, 0.95), (height, height), color=DRAWING_INK if heavy else "#c4c4c4",
        linewidth=1.0 if heavy else 0.5,
    )  # fmt: skip


def _names(figure: Figure, row: Row, top: float, before: str) -> None:
    """Words beside a row."""
    pattern = row.cells[0].pattern
    if row.family != before:
        figure.text(LEFT, top - 0.008, row.family.upper(), fontsize=7.5, va="top", color="#444444")
    name = fill(pattern.name, 17)
    figure.text(
        LEFT, top - 0.026, name, fontsize=9.5, fontweight="bold", va="top", linespacing=1.15
    )
    marks = "■" * pattern.difficulty + "□" * (5 - pattern.difficulty)
    lines = [marks, view_of(row.cells)[1]]
    cycles = {cycle_words(one) for one in row.cells}
    lines += [f"cycle: {words}" for words in cycles if len(cycles) == 1]
    figure.text(
        LEFT, top - 0.028 - 0.0145 * (name.count("\n") + 1), "\n".join(lines), fontsize=7.5, va="top",
        color="#444444", linespacing=1.5,
    )  # fmt: skip


def _row(
    figure: Figure, row: Row, place: tuple[float, float, float, float], *, head: float
) -> None:
    """A row's cells, with their names above them where there is room."""
    left, top, width, height = place
    view, seen = view_of(row.cells)
    titled = head > NAMED
    hands = [[drawn(one, side) for side in one.sides] for one in row.cells]
    paced = not titled and len({cycle_words(each) for each in row.cells}) > 1
    captions = [fill(_caption(one) + _pace(one, paced), LETTERS) for one in row.cells]
    box = (
        width * 0.97,
        height - head - 0.01 - 0.0095 * (1 + max(each.count("\n") for each in captions)),
    )
    half = _half(hands, view, box)
    for k, (one, curves) in enumerate(zip(row.cells, hands, strict=True)):
        middle = left + k * width + box[0] / 2
        axes = figure.add_axes((left + k * width, top - head - box[1], *box))
        _cell(axes, curves, view, half)
        if titled:
            title = f"{one.name}  ({seen})"
            figure.text(
                middle,
                top - head + 0.013,
                title,
                fontsize=8.5,
                fontweight="bold",
                ha="center",
                va="top",
            )
        good = not verdict(one.proven)
        figure.text(
            middle, top - head - box[1] - 0.002, captions[k], fontsize=7, ha="center", va="top",
            color=DRAWING_INK if good else TOO_TIGHT, fontweight="normal" if good else "bold",
        )  # fmt: skip


def _half(hands: Sequence[Sequence[Drawn]], view: View, box: tuple[float, float]) -> Floats:
    """Half the width and height that every cell of a row shows on paper [m]."""
    spans = (
        np.array([np.ptp(_seen(curves, view), axis=0) for curves in hands]).max(axis=0) / 2 + 0.06
    )
    shape = np.array([box[0] * _WIDE, box[1] * TALL])
    return np.asarray(shape * float(np.max(spans / shape)))


def _seen(curves: Sequence[Drawn], view: View) -> Floats:
    """Points that a cell must show, on paper: props, hands, and the body from the hips up."""
    posed = PosedBody(curves[0].body, curves[0].posture)
    upper = [
        np.array(end) + capsule.radius * np.array(way)
        for capsule in posed.capsules
        if not capsule.name.endswith(("leg", "foot", "thigh", "shank"))
        for end in (capsule.start, capsule.end)
        for way in (view.right, view.up, -np.array(view.right), -np.array(view.up))
    ]
    return view.flat(np.concatenate([*(outline(shown) for shown in curves), np.array(upper)]))


def _cell(axes: Axes, curves: Sequence[Drawn], view: View, half: Floats) -> None:
    seen = _seen(curves, view)
    middle = (seen.max(axis=0) + seen.min(axis=0)) / 2
    axes.set_xlim(middle[0] - half[0], middle[0] + half[0])
    axes.set_ylim(middle[1] - half[1], middle[1] + half[1])
    axes.set_axis_off()
    draw_body(axes, curves[0].body, view, curves[0].posture)
    for shown in curves:
        colour = COLOURS[shown.side]
        draw_arm(axes, shown, view, wide=0.7)
        draw_prop(axes, shown, view, 0)
        axes.plot(
            *view.flat(shown.motion.hand).T,
            color=HAND,
            linestyle=(0, (3, 1.5)),
            linewidth=0.7,
            zorder=3,
        )
        left = shown.side == "left"
        draw_trail(axes, shown, view, wide=1.4, colour=colour)
        if shown.rear is not None:
            axes.plot(*view.flat(shown.rear).T, color=colour, linewidth=1.0, zorder=3.9,
                      linestyle=(0, (4, 1)) if left else (0, (1, 1)))  # fmt: skip
        draw_start(axes, view.flat(shown.head), shown.side, size=4)


def view_of(cells: Sequence[OnePattern]) -> tuple[View, str]:
    """The view that shows a pattern best, and its name."""
    shown = drawn(cells[0], cells[0].sides[-1])
    if cells[0].pattern.family == "toroid":
        return STRAIGHT[int(np.argmin(np.ptp(shown.motion.hand, axis=0)))]
    axis = int(np.argmax(np.abs(shown.motion.plane).mean(axis=0)))
    if np.ptp(shown.head[:, axis]) <= _FLAT:
        return STRAIGHT[axis]
    return OBLIQUE, "obliquely, from behind"


def _caption(one: OnePattern) -> str:
    """The gap that is left, or why the pattern does not fit."""
    margins = one.proven.margins
    least = min(margins.body, margins.other)
    where = "from the body" if margins.body == least else "between the props"
    return verdict(one.proven) or f"{short(least)} {where}"


def _pace(one: OnePattern, shown_pace: bool) -> str:
    return f"; {number_words(one.cycle)} beats" if shown_pace else ""
