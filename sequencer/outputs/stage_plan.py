"""The stage from above: who stands where and looks which way, reach, flames, crew, the closest pair.

Stage frame [m]; the audience is at the bottom of the sheet, as whoever stands in front of it sees it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.figure import Figure
from matplotlib.patches import Circle, Polygon

from sequencer.geometry.regions import Venue
from sequencer.motion.closest import Closest, closest
from sequencer.motion.dancer import Dancer
from sequencer.outputs.plan_style import (
    COOL,
    FAINT,
    FLAME,
    FLOOR,
    INK,
    SOFT,
    STOP,
    fitted_names,
    shown,
)

_BODY = 0.25  # [m] radius of the mark for a person, on a small stage


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPicture:
    """What a plan is drawn for."""

    title: str = ""
    required: float | None = None  # [m] between performers; None leaves the closest pair out
    reach: bool = True
    props: bool = True
    names: bool = True
    surroundings: bool = True  # False: the stage alone, as large as it goes
    mark: float = (
        0.016  # radius of a person's mark, of the picture's longer side, if that is larger
    )
    size: tuple[float, float] = (7.2, 7.2)  # [in]


def stage_plan(
    dancers: Sequence[Dancer], venue: Venue, beat: float, *, picture: PlanPicture | None = None
) -> Figure:
    """Plan of the stage at one beat.

    Parameters
    ----------
    dancers : sequence of Dancer
    venue : Venue
    beat : float
        Show beat.
    picture : PlanPicture, optional

    Returns
    -------
    figure : Figure
    """
    use = PlanPicture() if picture is None else picture
    figure = Figure(figsize=use.size, layout="constrained")
    axes = figure.subplots()
    draw_plan(axes, dancers, venue, beat, picture=use)
    axes.set_xlabel("metres from the centre line; the audience's left is on the left")
    axes.set_ylabel("metres upstage")
    if use.title:
        axes.set_title(shown(use.title), loc="left", fontsize=12, fontweight="bold", pad=18)
    _legend(axes, dancers, beat)
    return figure


def draw_plan(
    axes: Any, dancers: Sequence[Dancer], venue: Venue, beat: float, *, picture: PlanPicture
) -> None:
    """Draw a plan into axes that are there already."""
    left, down, right, up = extent(dancers, venue, surroundings=picture.surroundings)
    axes.set_xlim(left, right)
    axes.set_ylim(down, up)
    axes.set_aspect("equal")
    mark = max(_BODY, picture.mark * max(right - left, up - down))
    axes.set_axisbelow(True)
    axes.grid(visible=True, color=FAINT, linewidth=0.5)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    _venue(axes, venue, mark, picture)
    if not picture.surroundings:
        axes.text(
            0.5, 0.0, "▼ audience", transform=axes.transAxes, color=COOL, fontsize=8, va="bottom",
            ha="center", fontweight="bold",
        )  # fmt: skip
    marks = fitted_names([dancer.name for dancer in dancers])
    for dancer in dancers:
        _performer(axes, dancer, beat, marks[dancer.name], mark, picture)
    if picture.required is not None and len(dancers) > 1:
        _closest_pair(axes, dancers, beat, picture.required)


def extent(
    dancers: Sequence[Dancer], venue: Venue, *, surroundings: bool = True
) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of what must be seen [m]."""
    points: list[tuple[float, float]] = []
    for dancer in dancers:
        stops = [dancer.floor.place, *(move.place for move in dancer.floor.moves)]
        reach = min(dancer.reach, 2.5) if surroundings else 0.8
        points += [(x + s * reach, y + s * reach) for x, y in stops for s in (-1, 1)]
    if venue.stage is not None:
        points += list(venue.stage.outline)
    if surroundings:
        points += [corner for piece in venue.scenery for corner in piece.region.outline]
        points += [post.at for post in venue.posts]
    stage = np.array(points or [(-3.0, 0.0), (3.0, 6.0)])
    low, high = stage.min(axis=0) - 1.0, stage.max(axis=0) + 1.0
    for edge in venue.audience if surroundings else ():
        # Far ends of an audience line need not be seen; the near part must, with its name under it.
        line = np.array(edge.line)
        low[1] = min(low[1], max(line[:, 1].min(), low[1] - 12.0) - 0.06 * (high[1] - low[1]))
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def _venue(axes: Any, venue: Venue, mark: float, picture: PlanPicture) -> None:
    if venue.stage is not None:
        axes.add_patch(
            Polygon(venue.stage.outline, facecolor=FLOOR, edgecolor=INK, linewidth=1.4, zorder=0.5)
        )
        for hole in venue.stage.holes:
            axes.add_patch(
                Polygon(hole, facecolor="white", edgecolor=INK, hatch="xx", linewidth=1, zorder=0.6)
            )
    for edge in venue.audience:
        x, y = np.array(edge.line).T
        axes.plot(x, y, color=COOL, linewidth=4, solid_capstyle="butt", zorder=1)
        low, high = axes.get_xlim()
        inside = [
            k for k in range(len(x) - 1) if max(x[k], x[k + 1]) > low and min(x[k], x[k + 1]) < high
        ]
        k = inside[0] if inside else 0
        middle = (
            float(np.clip(0.5 * (x[k] + x[k + 1]), low + 1, high - 1)),
            0.5 * (y[k] + y[k + 1]),
        )
        axes.annotate(
            shown(edge.name.upper()),
            middle,
            xytext=(0, -5),
            textcoords="offset points",
            ha="center",
            va="top",
            color=COOL,
            fontsize=10,
            fontweight="bold",
            annotation_clip=True,
        )
    for piece in venue.scenery:
        axes.add_patch(
            Polygon(
                piece.region.outline,
                facecolor="white",
                edgecolor=SOFT,
                hatch="////" if piece.combustible else "..",
                linewidth=1,
                zorder=1,
            )
        )
        x, y = np.mean(piece.region.outline, axis=0)
        if picture.names:
            _label(axes, x, y + 2.2 * mark, shown(piece.name), INK)
    for post in venue.posts if picture.surroundings else ():
        axes.plot(*post.at, marker="s", markersize=9, color="white", mec=INK, mew=1.6, zorder=4)
        axes.plot(*post.at, marker="x", markersize=6, color=INK, mew=1.6, zorder=5)
        if picture.names:
            _label(axes, post.at[0], post.at[1] - 2.4 * mark, shown(post.name), INK)


def _label(axes: Any, x: float, y: float, text: str, ink: str) -> None:
    axes.text(
        x,
        y,
        text,
        color=ink,
        fontsize=8,
        ha="center",
        va="center",
        zorder=7,
        clip_on=True,
        bbox={"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 1},
    )


def _performer(
    axes: Any, dancer: Dancer, beat: float, letters: str, mark: float, picture: PlanPicture
) -> None:
    stand = dancer.floor.at(beat)
    x, y = (float(value) for value in stand.place)
    phi = float(stand.facing)
    lit = bool(dancer.is_lit(beat))
    if picture.reach:
        axes.add_patch(
            Circle(
                (x, y),
                dancer.reach,
                fill=False,
                edgecolor=SOFT,
                linestyle=(0, (4, 3)),
                linewidth=0.9,
            )
        )
    if picture.props:
        _props(axes, dancer, beat, lit=lit)
    nose = (x + 2.1 * mark * np.sin(phi), y - 2.1 * mark * np.cos(phi))
    wide = 0.95 * mark
    axes.add_patch(
        Polygon(
            [
                nose,
                (x + wide * np.cos(phi), y + wide * np.sin(phi)),
                (x - wide * np.cos(phi), y - wide * np.sin(phi)),
            ],
            facecolor=INK,
            edgecolor="white",
            linewidth=0.6,
            zorder=6.5,
        )
    )
    axes.add_patch(Circle((x, y), mark, facecolor="white", edgecolor=INK, linewidth=1.4, zorder=7))
    axes.text(
        x, y, letters, ha="center", va="center_baseline", fontsize=8, fontweight="bold", zorder=8,
        clip_on=True,
    )  # fmt: skip
    if picture.names:
        back = -1.0 if np.cos(phi) < -0.3 else 1.0  # behind the person, clear of the pointer
        _label(axes, x, y + back * 2.0 * mark, shown(dancer.name[:24]), INK)


def _props(axes: Any, dancer: Dancer, beat: float, *, lit: bool) -> None:
    at = np.array([float(beat)])
    for side, wicks in dancer.wick_places(at).items():
        prop = dancer.props[side]
        lines = [s for s in prop.solids if s.start != s.end]
        ends = dancer.spots(
            side, at, [spot[:2] for line in lines for spot in (line.start, line.end)]
        )
        for start, end in zip(ends[::2, 0], ends[1::2, 0], strict=True):
            axes.plot([start[0], end[0]], [start[1], end[1]], color=INK, linewidth=1.2, zorder=5)
        for wick in wicks[:, 0, :2]:
            if lit:
                axes.add_patch(
                    Circle(
                        wick,
                        prop.hot_radius,
                        facecolor=FLAME,
                        edgecolor=INK,
                        linewidth=0.8,
                        alpha=0.75,
                        hatch="..",
                        zorder=4,
                    )
                )
            axes.add_patch(
                Circle(
                    wick,
                    prop.wick_radius,
                    facecolor=INK if lit else "white",
                    edgecolor=INK,
                    zorder=6,
                )
            )


def _closest_pair(axes: Any, dancers: Sequence[Dancer], beat: float, required: float) -> None:
    best: Closest | None = None
    pair: tuple[Dancer, ...] = ()
    for i, first in enumerate(dancers):
        for second in dancers[i + 1 :]:
            near = closest(first, second, [beat])
            if best is None or near.distance[0] < best.distance[0]:
                best, pair = near, (first, second)
    if best is None:
        return
    (xa, ya), (xb, yb) = best.point[0, :, :2]
    ink = STOP if best.distance[0] < required else INK
    axes.plot([xa, xb], [ya, yb], color=ink, linewidth=1.8, linestyle=(0, (1, 1)), zorder=8)
    parts = [
        f"{shown(who.name)}'s {who.part_name(int(part))}"
        for who, part in zip(pair, best.part[0], strict=True)
    ]
    spot = {"facecolor": "white", "edgecolor": ink, "linewidth": 0.8, "pad": 1.5}
    axes.text(
        0.5 * (xa + xb), 0.5 * (ya + yb), f"{best.distance[0]:.2f} m", color=ink, fontsize=8,
        ha="center", va="center", zorder=9, bbox=spot, clip_on=True,
    )  # fmt: skip
    axes.text(
        0.0, 1.005, f"closest: {best.distance[0]:.2f} m, {' – '.join(parts)} (required {required:.2f} m)",
        color=ink, fontsize=8, transform=axes.transAxes, va="bottom",
    )  # fmt: skip


def _legend(axes: Any, dancers: Sequence[Dancer], beat: float) -> None:
    from matplotlib.lines import Line2D

    handles = [
        Line2D(
            [],
            [],
            marker="o",
            ls="",
            mfc="white",
            mec=INK,
            ms=9,
            label="performer, pointing where they look",
        ),
        Line2D([], [], color=SOFT, ls=(0, (4, 3)), label="reach: arm, prop, flame"),
    ]
    if any(dancer.is_lit(beat) for dancer in dancers):
        handles.append(Line2D([], [], marker="o", ls="", mfc=FLAME, mec=INK, ms=11, label="flame"))
    axes.legend(
        handles=handles,
        loc="upper center",
        bbox_to_anchor=(0.5, -0.09),
        ncols=len(handles),
        frameon=False,
        fontsize=8,
    )
