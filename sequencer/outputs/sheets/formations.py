"""The formations of a show as plans with a key: who stands where. Lengths in points."""

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

import numpy as np
from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.blocks import Cell, grid, heading
from sequencer.outputs.sheets.cues import is_lit
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.paper import CUE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.plan import StagePlan
from sequencer.outputs.sheets.prose import Prose, Span
from sequencer.outputs.sheets.scene import Scene, Way
from sequencer.outputs.sheets.wording import brief, clock, facing_words, metres, place_words, plural
from sequencer.show.staged import Staged, Standing

PLAN_TALL, OWN_TALL = 268.0, 208.0  # of a plan beside its words: the crew's, a performer's
WAY_POINTS = 33  # of a walk, for drawing: a chord misses a quarter circle by 0.03 %


def lit_in(staged: Staged, standing: Standing) -> tuple[str, ...]:
    """Who burns at any time while a formation is held."""
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
) -> Scene:
    """One formation of the show, with the ways walked to it."""
    staged = edition.staged
    standing = staged.standings[index]
    return Scene(
        staged=staged,
        spots=dict(standing.spots),
        ways=ways_to(staged, standing) if index else {},
        lit=lit_in(staged, standing),
        focus=focus,
        crew=crew,
        dimensions=dimensions,
    )


def ways_to(staged: Staged, standing: Standing) -> dict[str, Way]:
    """The ways that are walked to a formation, as they curve."""
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
    crew: bool = True,
    title: str = "Where you stand",
) -> list[Flowable]:
    """A plan and its words for every formation, one below the other."""
    staged = edition.staged
    if not staged.standings:
        return []
    room = page.inner
    left = room * 0.62
    tall = PLAN_TALL if focus is None else OWN_TALL
    rows: list[list[Cell]] = []
    for index, standing in enumerate(staged.standings):
        if (
            focus is not None
            and index
            and standing.spots.get(focus) == staged.standings[index - 1].spots.get(focus)
        ):
            moved = [
                n
                for n in standing.spots
                if standing.spots[n] != staged.standings[index - 1].spots.get(n)
            ]
            if not moved:
                continue
        plan = StagePlan(
            scene_of(edition, index, focus=focus, crew=crew), tall=tall, wide=left - 10
        )
        rows.append([plan, _words(edition, index, focus)])
    return [
        CondPageBreak(tall + 60),
        heading(title),
        grid(rows, [left, room - left], pad=6, gutter=14),
    ]


def _words(edition: Edition, index: int, focus: str | None) -> list[Flowable]:
    staged = edition.staged
    standing = staged.standings[index]
    until = min(staged.seconds(standing.end), staged.song.duration)
    lines: list[Flowable] = [
        Prose(
            Span(
                standing.formation,
                "Poster",
                17,
            ),
            leading=1.15,
            role="H3",
        ),
        Prose(
            [
                Span(f"{clock(staged.seconds(standing.start))} – {clock(until)}", "Bold", CUE),
                Span(f"   bar {staged.position(standing.start)}", "Regular", TEXT, SOFT),
            ]
        ),
    ]
    if standing.start - standing.walk > 1e-6:
        lines.append(
            Prose(
                Span(
                    f"walk from {clock(staged.seconds(standing.walk))}, bar {staged.position(standing.walk)}, "
                    f"{plural(standing.start - standing.walk, 'beat')}",
                    "Regular",
                    TEXT,
                )
            )
        )
    if focus is not None and focus in standing.spots:
        x, y, facing = standing.spots[focus]
        lines += [
            Spacer(1, 4),
            Prose(Span(place_words(x, y), "Bold", CUE)),
            Prose(Span(f"face {facing_words(facing)}", "Regular", CUE)),
        ]
        near = nearest(standing, focus)
        if near:
            lines.append(Prose(Span(f"nearest: {near}", "Regular", TEXT, SOFT)))
        return lines
    lines.append(Spacer(1, 3))
    for name, (x, y, _) in list(standing.spots.items())[:14]:
        lines.append(
            Prose(
                [
                    Span(f"{edition.number_of(name)} ", "Bold", SMALL),
                    Span(f"{brief(name)}: ", "Bold", SMALL),
                    Span(place_words(x, y), "Regular", SMALL),
                ]
            )
        )
    if len(standing.spots) > 14:
        lines.append(
            Prose(
                Span(
                    f"and {len(standing.spots) - 14} more, by number on the plan",
                    "Regular",
                    SMALL,
                    SOFT,
                )
            )
        )
    return lines


def nearest(standing: Standing, who: str) -> str:
    """The nearest other place of a formation, and how far it is."""
    x, y, _ = standing.spots[who]
    others = [
        (hypot(a - x, b - y), name) for name, (a, b, _) in standing.spots.items() if name != who
    ]
    if not others:
        return ""
    far, name = min(others)
    return f"{brief(name)}, {metres(far)} between places"


def changes(staged: Staged) -> Sequence[tuple[Standing, Standing]]:
    """Each formation with the one before it."""
    return tuple(pairwise(staged.standings))
