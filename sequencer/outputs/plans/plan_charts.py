"""Charts of where flames have been, and of the closest pair over time."""

from collections.abc import Sequence

import numpy as np
from matplotlib.figure import Figure

from sequencer.arrays import Floats
from sequencer.geometry.regions import Venue
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.figures import plain_text
from sequencer.outputs.plans.plan_extent import extent, seen_edge
from sequencer.outputs.plans.plan_labels import Label, place_labels
from sequencer.outputs.plans.plan_style import COOL, PLAN_FLAME, PLAN_INK, STOP, shown
from sequencer.outputs.plans.stage_plan import PlanPicture, draw_shapes
from sequencer.timing.position import clock_text
from sequencer.timing.tempo import TempoMap

_CELL = 0.1  # [m] cell size of the flame map


@plain_text
def flame_map(
    dancers: Sequence[Dancer],
    venue: Venue,
    tempo: TempoMap,
    *,
    start: float,
    end: float,
    per_beat: int = 32,
    title: str = "",
) -> Figure:
    """How many seconds a flame covers each spot of the plan between two beats.

    Parameters
    ----------
    dancers : sequence of Dancer
    venue : Venue
    tempo : TempoMap
    start, end : float
        Beats.
    per_beat : int
        Instants sampled in each beat; this picture proves nothing.
    title : str

    Returns
    -------
    figure : Figure
    """
    left, down, right, up = extent(dancers, venue)
    seconds, x, y = flame_seconds(
        dancers, tempo, (left, down, right, up), start=start, end=end, per_beat=per_beat
    )
    figure = Figure(figsize=(7.2, 7.0), layout="constrained")
    axes = figure.subplots()
    draw_shapes(axes, (), venue, start, picture=PlanPicture(reach=False, names=False))
    axes.set_xlim(left, right)
    axes.set_ylim(down, up)
    image = axes.imshow(
        np.ma.masked_less_equal(seconds.T, 0.0),
        origin="lower",
        extent=(x[0], x[-1], y[0], y[-1]),
        cmap="magma_r",
        zorder=2,
        alpha=0.9,
        interpolation="nearest",
    )
    longest = float(seconds.max())
    if longest > 0:
        levels = sorted({longest / 8, longest / 2})
        lines = axes.contour(
            0.5 * (x[1:] + x[:-1]),
            0.5 * (y[1:] + y[:-1]),
            seconds.T,
            levels=levels,
            colors=PLAN_INK,
            linewidths=0.8,
            zorder=3,
        )
        axes.clabel(
            lines,
            fmt=lambda value: f"{value:.0f} s" if value >= 1 else f"{value:.1f} s",
            fontsize=8,
        )
    figure.colorbar(image, ax=axes, label="seconds with a flame over the spot", shrink=0.7)
    axes.set_xlabel("metres from the centre line")
    axes.set_ylabel("metres upstage")
    if title:
        axes.set_title(shown(title), loc="left", fontsize=12, fontweight="bold")
    figure.draw_without_rendering()
    figure.set_layout_engine("none")
    edges = [(edge.name, *seen_edge(edge, axes)) for edge in venue.audience]
    place_labels(
        axes,
        [
            Label(text=shown(name.upper()), at=at, off=0.2, ink=COOL, size=10, bold=True, first=out)
            for name, at, out in edges
        ],
    )
    return figure


def flame_seconds(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    box: tuple[float, float, float, float],
    *,
    start: float,
    end: float,
    per_beat: int = 32,
) -> tuple[Floats, Floats, Floats]:
    """Seconds that a flame covers each cell of a plan.

    Parameters
    ----------
    dancers : sequence of Dancer
    tempo : TempoMap
    box : tuple of float
        Left, bottom, right, top [m, stage frame].
    start, end : float
        Beats.
    per_beat : int
        Instants sampled in each beat.

    Returns
    -------
    seconds : ndarray, shape (nx, ny) [s]
        Two flames over one cell count once.
    x : ndarray, shape (nx + 1,) [m, stage frame]
    y : ndarray, shape (ny + 1,) [m, stage frame]

    Notes
    -----
    Source: counting samples. Error: one sample's time at every pass, one cell (0.1 m) at the edge.
    """
    left, down, right, up = box
    x = np.arange(left, right + _CELL, _CELL)
    y = np.arange(down, up + _CELL, _CELL)
    seconds: Floats = np.zeros((len(x) - 1, len(y) - 1))
    middle = np.stack(np.meshgrid(0.5 * (x[1:] + x[:-1]), 0.5 * (y[1:] + y[:-1]), indexing="ij"))
    beats = np.arange(start, end, 1.0 / per_beat) + 0.5 / per_beat
    each = np.diff(tempo.seconds_from_beats(np.append(beats - 0.5 / per_beat, end)))
    heads = [
        (wick, dancer.props[side].hot_radius, dancer.is_lit(beats))
        for dancer in dancers
        for side, wicks in dancer.wick_places(beats).items()
        for wick in wicks
    ]
    for k, length in enumerate(each):
        covered = np.zeros(seconds.shape, dtype=np.bool_)
        for points, radius, lit in heads:
            if not lit[k]:
                continue
            i, j = (points[k, :2] - (left, down)) / _CELL
            n = int(np.ceil(radius / _CELL)) + 1
            rows = slice(max(int(i) - n, 0), int(i) + n + 1)
            columns = slice(max(int(j) - n, 0), int(j) + n + 1)
            gap = middle[:, rows, columns] - points[k, :2, None, None]
            covered[rows, columns] |= gap[0] ** 2 + gap[1] ** 2 <= radius**2
        seconds[covered] += length
    return seconds, np.asarray(x, dtype=np.float64), np.asarray(y, dtype=np.float64)


@plain_text
def closest_chart(
    dancers: Sequence[Dancer],
    tempo: TempoMap,
    *,
    start: float,
    end: float,
    required: float,
    per_beat: int = 16,
    title: str = "",
) -> Figure:
    """Distance of the closest pair over time, with the required distance and the proven spans below it.

    Parameters
    ----------
    dancers : sequence of Dancer
        At least two.
    tempo : TempoMap
    start, end : float
        Beats.
    required : float
        Distance that performers must keep [m].
    per_beat : int
        Instants drawn in each beat; the spans and the lowest point are proven, the line is sampled.
    title : str

    Returns
    -------
    figure : Figure

    Raises
    ------
    ValueError
        If there are fewer than two performers.
    """
    if len(dancers) < 2:
        raise ValueError("a closest pair needs at least two performers")
    found = approaches(dancers, start, end, required=required)
    beats = np.arange(start, end, 1.0 / per_beat)
    least = np.full(len(beats), np.inf)
    for k in np.flatnonzero(found.dismissed == 0):
        near = closest(dancers[found.first[k]], dancers[found.second[k]], beats)
        least = np.minimum(least, near.distance)
    seconds = tempo.seconds_from_beats(beats)
    figure = Figure(figsize=(9.0, 3.2), layout="constrained")
    axes = figure.subplots()
    top = max(2.0, 3 * required)
    axes.plot(seconds, np.minimum(least, top), color=PLAN_INK, linewidth=0.7)
    axes.axhline(required, color=STOP, linestyle="--", linewidth=1.2)
    axes.text(
        1.0, required, f" {required:.2f} m\n required", color=STOP, va="center", fontsize=8,
        transform=axes.get_yaxis_transform(),
    )  # fmt: skip
    for low, high in zip(found.spans.start, found.spans.end, strict=True):
        a, b = tempo.seconds_from_beats([low, high])
        axes.axvspan(
            a, b, facecolor=PLAN_FLAME, edgecolor=STOP, hatch="//", alpha=0.5, linewidth=0.5
        )
    best = int(np.argmin(found.distance))
    if not found.dismissed[best]:
        at = float(tempo.seconds_from_beats(found.at[best]))
        axes.plot(at, found.distance[best], marker="v", color=STOP, markersize=8, clip_on=False)
        names = shown(f"{dancers[found.first[best]].name} – {dancers[found.second[best]].name}")
        least_m = float(found.distance[best])
        words = f"{least_m:.2f} m" if least_m >= 0 else f"overlap of {-least_m:.2f} m"
        title_text = f"closest: {words} at {clock_text(at)}, {names} (required {required:.2f} m)"
        axes.set_title(title_text, loc="left", fontsize=8)
    axes.set_xlim(float(seconds[0]), float(tempo.seconds_from_beats(end)))
    axes.set_ylim(min(0.0, float(found.distance[best]) - 0.1), top)
    axes.set_xlabel("time [s]")
    axes.set_ylabel(f"closest pair [m]\n({top:.0f} m or more at the top)")
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    if title:
        figure.suptitle(shown(title), x=0.01, ha="left", fontsize=12, fontweight="bold")
    return figure
