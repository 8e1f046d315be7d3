"""Small plans of all formations in order: who stands where, and who walks there from where, from when to when."""

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.figure import Figure

from sequencer.geometry.regions import Venue
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.figures import plain_text
from sequencer.outputs.plans.plan_extent import extent
from sequencer.outputs.plans.plan_style import COOL, PLAN_INK, PLAN_SOFT, shown
from sequencer.outputs.plans.stage_plan import (
    PlanPicture,
    draw_shapes,
    mark_radius,
    name_key,
    write_names,
)
from sequencer.outputs.way_marks import start_mark, way_arrow
from sequencer.timing.position import clock_text
from sequencer.timing.tempo import TempoMap
from sequencer.units import counted

_COLUMNS = 3
_WIDE = 2.9  # [in] of one plan
_WAY = 33  # points of a walk: a chord misses a quarter circle by 0.03 %
_STILL = 0.05  # [m] a shorter walk is none


@dataclass(frozen=True, slots=True, kw_only=True)
class FormationTaken:
    """A formation and the walk to it."""

    name: str
    walk: float  # [beats] at which the walk begins; equal to `start` if nobody walks
    start: float  # [beats] at which everybody has arrived


@plain_text
def formation_strip(
    dancers: Sequence[Dancer],
    venue: Venue,
    tempo: TempoMap,
    formations: Sequence[FormationTaken],
    *,
    title: str = "",
    turned: bool = False,
) -> Figure:
    """Small plans of all formations in order, each with its walks and when they begin and end.

    Parameters
    ----------
    dancers : sequence of Dancer
    venue : Venue
    tempo : TempoMap
    formations : sequence of FormationTaken
    title : str
    turned : bool
        Whether they are seen from the performers' side, the audience at the top.

    Returns
    -------
    figure : Figure

    Raises
    ------
    ValueError
        If there is no formation.
    """
    if not formations:
        raise ValueError("formations must hold at least one formation")
    rows = int(np.ceil(len(formations) / _COLUMNS))
    columns = min(_COLUMNS, len(formations))
    left, down, right, up = extent(dancers, venue, surroundings=False)
    tall = _WIDE * (up - down) / (right - left)
    plain = PlanPicture(
        reach=False, props=False, surroundings=False, size=(_WIDE * columns + 0.3, 0.0),
        mark=0.034 if len(dancers) <= 12 else 0.022,
    )  # fmt: skip
    key = name_key(dancers, plain)
    high = (tall + 0.85) * rows + 0.6 + 0.16 * (key.count("\n") + bool(key))
    figure = Figure(figsize=(plain.size[0], high), layout="constrained")
    grid = figure.subplots(rows, columns, squeeze=False)
    for k, axes in enumerate(grid.ravel()):
        if k >= len(formations):
            axes.set_visible(False)
            continue
        one = formations[k]
        draw_shapes(axes, dancers, venue, one.start, picture=plain)
        if k:
            _ways(axes, dancers, one, mark_radius(axes, plain))
        axes.tick_params(labelsize=7)
        if turned:
            axes.invert_xaxis()
            axes.invert_yaxis()
        side = "▲ audience" if turned else "▼ audience"
        axes.set_xlabel(side, color=COOL, fontsize=8, fontweight="bold", labelpad=1)
        first = "\n".join(textwrap.wrap(f"{k + 1}  {shown(one.name)}", 34)[:2])
        axes.set_title(f"{first}\n{_when(tempo, one)}", loc="left", fontsize=8.5)
    where = "at the top" if turned else "at the bottom"
    words = f"metres; the audience is {where}; dashed: the walk, from the ring along the arrow"
    figure.supxlabel(f"{words}\n{key}" if key else words, fontsize=8, color=PLAN_SOFT)
    if title:
        figure.suptitle(shown(title), x=0.01, ha="left", fontsize=12, fontweight="bold")
    figure.draw_without_rendering()
    figure.set_layout_engine("none")
    for axes, one in zip(grid.ravel(), formations, strict=False):
        write_names(axes, dancers, one.start, picture=plain)
    return figure


def _when(tempo: TempoMap, one: FormationTaken) -> str:
    """When the walk begins and ends, and its counts."""

    def moment(beat: float) -> str:
        second = float(int(float(tempo.seconds_from_beats(beat)) + 1e-6))  # never read too late
        return f"{clock_text(second, decimals=0)} ({tempo.position_text(beat)})"

    beats = one.start - one.walk
    if beats < 1e-6:
        return f"from {moment(max(one.start, 0.0))}"
    return f"walk {moment(one.walk)} to {moment(one.start)}\n{counted(round(beats, 3), 'count')}"


def _ways(axes: Any, dancers: Sequence[Dancer], one: FormationTaken, mark: float) -> None:
    """Each walk to a formation as a dashed line, with a ring where it begins and an arrow that points ahead."""
    stood = [tuple(dancer.floor.at(np.array([one.start])).place[0].tolist()) for dancer in dancers]
    beats = np.linspace(one.walk, one.start, _WAY, dtype=np.float64)
    for dancer in dancers:
        way = dancer.floor.at(beats).place
        if float(np.sum(np.linalg.norm(np.diff(way, axis=0), axis=1))) < _STILL:
            continue
        axes.plot(*way.T, color=PLAN_INK, linewidth=0.8, linestyle=(0, (4, 2)), zorder=2)
        points = [(float(x), float(y)) for x, y in way]
        (x, y), ahead = way_arrow(points, stood, 1.5 * mark)
        axes.annotate(
            "", (x + 0.05 * ahead[0], y + 0.05 * ahead[1]), (x, y),
            arrowprops={"arrowstyle": "-|>", "color": PLAN_INK, "lw": 0.8}, zorder=2.2,
        )  # fmt: skip
        axes.plot(
            *start_mark(points, stood, 1.3 * mark),
            "o",
            color="white",
            markeredgecolor=PLAN_INK,
            markersize=4.5,
            markeredgewidth=0.9,
            zorder=2.1,
        )
