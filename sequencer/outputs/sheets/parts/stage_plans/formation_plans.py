"""The formations of a show as plans with a key: who stands where. Lengths in points."""

from collections.abc import Collection, Sequence
from itertools import pairwise
from math import hypot, inf

import numpy as np
from reportlab.platypus import CondPageBreak, Flowable

from sequencer.outputs.sheets.page.elements import Cell, grid, heading
from sequencer.outputs.sheets.page.paper import CUE, LEAD_SIZE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    brief,
    clock,
    metres,
    place_words,
    plural,
)
from sequencer.outputs.sheets.parts.cues import is_lit
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stage_plans.scene import Scene, Way, closest_spots
from sequencer.outputs.words.entrance_words import comings_words, only_entrances
from sequencer.staging.results import result_of
from sequencer.staging.staged import Staged, Standing

PLAN_SHARE = 0.8  # greatest height of a plan over the width of its column
OWN_SHARE = 0.66  # the same on a performer's sheet
GUTTER = 12.0
TALLEST = 268.0
LEAST_APART = 12.6  # between two performers' discs on paper
_KEYED = 120  # performers in the key of numbers, at most
WAY_POINTS = 33  # points per walk, for drawing: a chord misses a quarter circle by 0.03 %


def lit_in(staged: Staged, standing: Standing) -> tuple[str, ...]:
    """Who is lit at any time while a formation is held."""
    return tuple(
        name
        for name in staged.show.names
        if is_lit(staged, name, standing.start)
        or any(standing.start < burn.start < standing.end for burn in staged.lit_of(name))
    )


def scene_of(
    edition: Edition,
    index: int,
    *,
    focus: str | None = None,
    crew: bool = True,
    dimensions: bool = False,
    close: bool = False,
) -> Scene:
    """One formation of the show, with the walks into it."""
    staged = edition.staged
    standing = staged.standings[index]
    return Scene(
        staged=staged,
        spots=dict(standing.spots),
        ways=ways_into(staged, index),
        lit=result_of(staged, ("lit in", index), lambda: lit_in(staged, standing)),
        focus=focus,
        crew=crew,
        distances=focus is None,  # otherwise given under the plan
        dimensions=dimensions,
        turned=edition.turned and not dimensions,
        close=close,
        shown=index,
    )


def ways_into(staged: Staged, index: int) -> dict[str, Way]:
    """The paths walked to a formation by its number, found once for all sheets; none to the first."""

    def work() -> dict[str, Way]:
        return ways_to(staged, staged.standings[index]) if index else {}

    return result_of(staged, ("ways into", index), work)


def ways_to(staged: Staged, standing: Standing) -> dict[str, Way]:
    """The paths walked to a formation, with their curves."""
    if standing.start - standing.walk < 1e-6:
        return {}
    beats = np.linspace(standing.walk, standing.start, WAY_POINTS, dtype=np.float64)
    return {
        dancer.name: tuple((float(x), float(y)) for x, y in dancer.floor.at(beats).place)
        for dancer in staged.dancers
        if dancer.name in standing.spots
    }


def formation_plans(
    edition: Edition,
    page: Page,
    *,
    focus: str | None = None,
    title: str = "Where you stand",
    chosen: Collection[int] | None = None,
    across: int = 2,
    share: float | None = None,
) -> list[Flowable]:
    """Plans with their words, side by side: of every formation, or of the chosen ones.

    Parameters
    ----------
    edition, page
    focus : str, optional
        Whose plans they are.
    title : str
    chosen : collection of int, optional
    across : int
        Plans side by side, at most.
    share : float, optional
        Greatest height of a plan over the width of its column; default: as is usual for whom it is.
    """
    staged = edition.staged
    if not staged.standings:
        return []
    order = moved_formations(staged) if chosen is None else tuple(sorted(chosen))
    across = _across(edition, order, page.inner, across, crew=focus is None)
    column = page.inner / across
    usual = PLAN_SHARE if focus is None and chosen is None else OWN_SHARE
    most = min(column * (share or usual), TALLEST)
    cells: list[Cell] = []
    style: list[tuple[object, ...]] = []
    wide_first = focus is not None and len(order) > 1 and across > 2
    for index in order:
        # a performer's later plans leave the crew out, so that the rest is drawn larger
        crew = focus is None or index == order[0]
        scene = scene_of(edition, index, focus=focus, crew=crew)
        large = wide_first and index == order[0]
        wide, tall = (2 * column, 1.3 * most) if large else (column, most)
        plan = StagePlan(scene, tall=tall, wide=wide - GUTTER)
        cells.append([plan, *_words(edition, index, focus, named=chosen is None)])
        if large:
            cells.append("")
            style.append(("SPAN", (0, 0), (1, 0)))
    cells += [""] * (-len(cells) % across)
    rows = [cells[k : k + across] for k in range(0, len(cells), across)]
    widths = [column] * across
    above = [heading(title), *(() if focus is None and chosen is None else number_key(edition))]
    first = grid(rows[:1], widths, *style[:1], pad=3, gutter=GUTTER, by_cell=True)
    return [
        CondPageBreak(min(height_of([*above, first], page.inner) + 2, page.tall)),
        *above,
        grid(rows, widths, *style, pad=3, gutter=GUTTER, by_cell=True),
    ]


def height_of(parts: Sequence[Flowable], room: float) -> float:
    """How high some parts are, one under the other."""
    return sum(
        part.wrap(room, inf)[1] + part.getSpaceBefore() + part.getSpaceAfter()
        for part in parts
        if not isinstance(part, CondPageBreak)
    )


def number_key(edition: Edition) -> list[Flowable]:
    """Whose number is which, where the words under the plans do not say so."""
    names = edition.staged.show.names
    if len(names) < 2:
        return []
    spans = []
    for name in names[:_KEYED]:
        spans += [
            TextSpan(f"{edition.number_of(name)}{NB}", "Bold", SMALL),
            TextSpan(f"{brief(name, most=24)}   ", "Regular", SMALL),
        ]
    return [Prose(spans, after=2)]


def is_crowded(scene: Scene, *, tall: float, wide: float) -> bool:
    """Whether two performers would overlap on a plan of that size."""
    plan = StagePlan(scene, tall=tall, wide=wide)
    plan.wrap(wide, 1e9)
    return closest_spots(scene) * plan.scale < LEAST_APART


def _across(edition: Edition, order: Sequence[int], room: float, most: int, *, crew: bool) -> int:
    """How many plans fit side by side with everybody on them still distinct."""
    for across in range(most, 1, -1):
        wide = room / across - GUTTER
        scenes = (scene_of(edition, index, crew=crew) for index in order)
        if not any(is_crowded(scene, tall=wide * PLAN_SHARE, wide=wide) for scene in scenes):
            return across
    return 1


def moved_formations(staged: Staged) -> tuple[int, ...]:
    """Formations in which anybody's spot differs from the one before; always includes the first."""
    standings = staged.standings
    return tuple(
        index
        for index, standing in enumerate(standings)
        if index == 0 or dict(standing.spots) != dict(standings[index - 1].spots)
    )


def _words(edition: Edition, index: int, focus: str | None, *, named: bool) -> list[Flowable]:
    staged = edition.staged
    standing = staged.standings[index]
    until = min(staged.seconds(standing.end), staged.song.duration)
    until_text = f"{clock(staged.seconds(standing.start))} – {clock(until)}"
    lines: list[Flowable] = [
        Prose(TextSpan(standing.formation, "Poster", LEAD_SIZE), leading=1.15, role="H3"),
        Prose(
            [
                TextSpan(until_text, "Bold", CUE),
                TextSpan(f"   bar {staged.position(standing.start)}", "Regular", TEXT, SOFT),
            ]
        ),
    ]
    if focus is None and standing.start - standing.walk > 1e-6:
        does = comings_words(standing.comings) if only_entrances(standing) else "walk"
        walk = (
            f"{does} from {clock(staged.seconds(standing.walk))}, bar {staged.position(standing.walk)}, "
            f"{plural(standing.start - standing.walk, 'beat')}"
        )
        lines.append(Prose(TextSpan(walk, "Regular", SMALL)))
    if focus is not None and focus in standing.spots:
        near = nearest(standing, focus)
        if near:
            lines.append(Prose(TextSpan(f"nearest: {near}", "Regular", SMALL, SOFT)))
        return lines
    if not named:
        return lines
    for name, (x, y, _) in list(standing.spots.items())[:14]:
        who = TextSpan(f"{edition.number_of(name)} {brief(name)}: ", "Bold", SMALL)
        place = f"{wings_words(staged, standing, name)}{place_words(x, y)}"
        lines.append(Prose([who, TextSpan(place, "Regular", SMALL)]))
    if len(standing.spots) > 14:
        more = f"and {len(standing.spots) - 14} more, by number on the plan"
        lines.append(Prose(TextSpan(more, "Regular", SMALL, SOFT)))
    return lines


def wings_words(staged: Staged, standing: Standing, who: str) -> str:
    """What is said before a place of somebody who is not yet there when a formation is taken, or waits in the wings; else nothing."""
    for each in staged.comings:
        if each.who == who and each.start < standing.start - 1e-6 < each.end - 2e-6:
            return f"on the way {'on' if each.on else 'off'}: "
    return "in the wings, " if who in standing.waiting else ""


def nearest(standing: Standing, who: str) -> str:
    """The nearest other spot of a formation, and its distance."""
    x, y, _ = standing.spots[who]
    others = [
        (hypot(a - x, b - y), name) for name, (a, b, _) in standing.spots.items() if name != who
    ]
    if not others:
        return ""
    far, name = min(others)
    return f"{brief(name)}, {metres(far)} between places"


def changes(staged: Staged) -> Sequence[tuple[Standing, Standing]]:
    """Each formation with its predecessor."""
    return tuple(pairwise(staged.standings))
