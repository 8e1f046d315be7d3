"""Drawings of patterns: three straight views and an oblique one, the body to scale.

The head's trail is coloured by time (dark to light, legible to colour-blind eyes) and told apart in grey
by numbered beats; nearer parts of the oblique trail are thicker. Body frame [m].
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite

import numpy as np
from matplotlib import colormaps
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.collections import LineCollection
from matplotlib.colors import ListedColormap, Normalize
from matplotlib.figure import Figure
from matplotlib.layout_engine import ConstrainedLayoutEngine

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.arms import elbow, given_shoulder
from sequencer.motion.carriage import Carriage, Held
from sequencer.motion.kinds import DEFAULT_TETHER
from sequencer.motion.library import Pattern, cycle_beats, find, law_for, patterns
from sequencer.motion.props import Prop
from sequencer.motion.rows import STATURE
from sequencer.motion.state import Motion

INK, HAND, SOFT, BODY, ARM = "#1b1b1b", "#b2182b", "#8a8a8a", "#e4e2dd", "#6b655b"
CHAIR = "#cdc9c0"  # of a seated performer, behind the legs
# viridis without its palest end, which is lost on white paper
TRAIL = ListedColormap(colormaps["viridis"](np.linspace(0.0, 0.9, 256)))
PER_BEAT = 96
MOST_BEATS = 16.0
PER_PAGE = 20


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class View:
    """A straight projection: what lies to the right and up on paper, and which way is nearer."""

    title: str
    right: tuple[float, float, float]
    up: tuple[float, float, float]

    @property
    def near(self) -> Floats:
        """Unit vector towards the eye, shape (3,) [1, body frame]."""
        return np.asarray(np.cross(self.right, self.up), dtype=np.float64)

    def flat(self, points: Floats) -> Floats:
        """Points, shape (..., 3) [m], on paper, shape (..., 2) [m]."""
        return np.stack((points @ np.array(self.right), points @ np.array(self.up)), axis=-1)


_TURN, _TILT = np.radians(35.0), np.radians(22.0)
VIEWS = (
    View(title="from behind: as the performer sees it", right=(1, 0, 0), up=(0, 0, 1)),
    View(title="from the performer's right", right=(0, 1, 0), up=(0, 0, 1)),
    View(title="from above", right=(1, 0, 0), up=(0, 1, 0)),
    View(
        title="oblique, from behind on the right",
        right=(float(np.cos(_TURN)), float(np.sin(_TURN)), 0.0),
        up=(
            float(-np.sin(_TURN) * np.sin(_TILT)),
            float(np.cos(_TURN) * np.sin(_TILT)),
            float(np.cos(_TILT)),
        ),
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Drawn:
    """A pattern's curves, ready to draw."""

    motion: Motion
    beats: Floats  # (n,)
    length: float  # [m]
    body: Body
    prop: Prop
    side: Side = "right"
    posture: Posture = UPRIGHT

    @property
    def arm(self) -> Floats:
        """Where the arm hangs from, shoulder given, elbow and hand at the start, shape (4, 3) [m, body frame]."""
        held = Held(0.0, float(self.beats[-1]), self.posture)
        carriage = Carriage(body=self.body, held=(held,))
        start, hand = self.beats[:1], self.motion.hand[:1]
        shoulder = given_shoulder(carriage, start, hand, self.side)
        bend = elbow(self.body, shoulder, hand, self.side)
        return np.concatenate((carriage.shoulder(start, self.side), shoulder, bend, hand))

    @property
    def head(self) -> Floats:
        """Path of the head, or of the end before the hand, shape (n, 3) [m, body frame]."""
        return self.motion.head(self.length)

    @property
    def rear(self) -> Floats | None:
        """Path of the head behind the hand, shape (n, 3) [m, body frame]; None without one."""
        return self.motion.head(-self.prop.behind) if self.prop.burns_behind else None

    def spots(self, at: int, places: Sequence[tuple[float, float]]) -> Floats:
        """Places on the prop (along, across) at one instant, shape (k, 3) [m, body frame]."""
        own = self.motion
        wide = np.cross(own.plane[at], own.tether[at])
        return np.stack([own.hand[at] + a * own.tether[at] + c * wide for a, c in places])


def drawn(
    name: str,
    parameters: Mapping[str, object],
    *,
    side: Side = "right",
    body: Body | None = None,
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
    posture: Posture = UPRIGHT,
) -> Drawn:
    """The curves of a pattern over one closing, at most 16 beats; of a poi unless a prop is given.

    The body is upright unless a posture is given.
    """
    own = body or Body(stature=STATURE)
    length = prop.length if prop else None
    law = law_for(name, parameters, side=side, body=own, tether=length, book=book)
    cycle = cycle_beats(name, parameters, book)
    span = min(law.period if isfinite(law.period) else 2 * cycle, MOST_BEATS)
    beats: Floats = np.arange(round(span * PER_BEAT) + 1, dtype=np.float64) / PER_BEAT
    tether = find(name, book).values(parameters, side).get("tether") or length or DEFAULT_TETHER
    held = prop or Prop(length=float(tether), mass=0.2, wick_radius=0.05)
    if held.flexible:
        held = replace(held, length=float(tether))
    return Drawn(
        motion=law.at(beats),
        beats=beats,
        length=held.length,
        body=own,
        prop=held,
        side=side,
        posture=posture,
    )


def pattern_figure(
    name: str,
    parameters: Mapping[str, object],
    *,
    side: Side = "right",
    body: Body | None = None,
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
    posture: Posture = UPRIGHT,
) -> Figure:
    """Four views of a pattern, danced with a poi unless a prop is given, by an upright body unless a posture is.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    shown = drawn(name, parameters, side=side, body=body, prop=prop, book=book, posture=posture)
    figure = Figure(figsize=(8.27, 8.6), layout="constrained")
    set_words = ", ".join(f"{key} {value}" for key, value in parameters.items())
    if prop is not None and prop.kind != "poi":
        set_words = ", ".join(filter(None, (prop.kind, set_words)))
    figure.suptitle(
        name + (f"   ({set_words})" if set_words else ""), fontsize=15, fontweight="bold"
    )
    grid = figure.subplots(2, 2)
    for axes, view in zip(grid.ravel(), VIEWS, strict=True):
        draw_view(axes, shown, view, detail=True)
        axes.set_title(view.title, fontsize=10)
    bar = figure.colorbar(
        _scale(shown), ax=grid, orientation="horizontal", fraction=0.03, aspect=50, pad=0.02
    )
    bar.set_label("beat (numbers on the trail)", fontsize=9)
    figure.supxlabel(
        "grid 0.5 m    ● start, arrow: the way the head goes    dashed: hand    "
        + ("dotted: rear head    " if shown.rear is not None else "")
        + f"△ in   ▽ out    grey: body, {shown.body.stature:.2f} m; its arm at the start", fontsize=9,
    )  # fmt: skip
    return figure


def vocabulary_figure(
    book: Mapping[str, Pattern] | None = None,
    *,
    names: tuple[str, ...] | None = None,
    page: int = 1,
) -> Figure:
    """A page of small drawings in a grid, twenty a page; the oblique view of each pattern."""
    known = patterns() if book is None else book
    chosen = (tuple(known) if names is None else names)[PER_PAGE * (page - 1) : PER_PAGE * page]
    if not chosen:
        raise ValueError(f"there is no page {page}")
    figure = Figure(figsize=(8.27, 11.69), layout=ConstrainedLayoutEngine(h_pad=0.14))
    figure.suptitle("Vocabulary", fontsize=14, fontweight="bold")
    grid = figure.subplots(5, 4)
    for axes in grid.ravel():
        axes.set_axis_off()
    for axes, name in zip(grid.ravel(), chosen, strict=False):
        draw_view(axes, drawn(name, {}, book=known), VIEWS[3], detail=False)
        axes.set_title(name, fontsize=8)
        axes.text(
            0.5, -0.02, f"{known[name].family}, difficulty {known[name].difficulty}",
            transform=axes.transAxes, ha="center", va="top", fontsize=6.5, color="#444444",
        )  # fmt: skip
    figure.supxlabel(
        "● start   numbers: beats   dashed: hand   each seen obliquely from behind on the right",
        fontsize=8,
    )
    return figure


def vocabulary_figures(book: Mapping[str, Pattern] | None = None) -> list[Figure]:
    """All pages of the vocabulary, twenty patterns a page."""
    count = len(patterns() if book is None else book)
    return [vocabulary_figure(book, page=page) for page in range(1, -(-count // PER_PAGE) + 1)]


def draw_view(axes: Axes, shown: Drawn, view: View, *, detail: bool) -> None:
    """Body, hand path, head trail with beats, start and arrow in one view."""
    draw_body(axes, shown.body, view, shown.posture)
    _arm(axes, shown, view, detail=detail)
    hand, head = view.flat(shown.motion.hand), view.flat(shown.head)
    axes.plot(
        *hand.T, color=HAND, linestyle=(0, (4, 2)), linewidth=1.2 if detail else 0.8, zorder=3
    )
    pieces = np.stack((head[:-1], head[1:]), axis=1)
    depth = shown.head @ view.near
    reach = float(np.ptp(depth))
    nearness = (depth[:-1] - depth.min()) / reach if reach > 1e-6 else np.full(len(pieces), 0.5)
    thick = 2.4 if detail else 1.6
    trail = LineCollection(
        list(pieces), cmap=TRAIL, linewidths=thick * (0.5 + nearness), capstyle="round", zorder=4
    )
    trail.set_array(shown.beats[:-1])
    trail.set_clim(0.0, float(shown.beats[-1]))
    axes.add_collection(trail)
    if shown.rear is not None:
        axes.plot(*view.flat(shown.rear).T, color=INK, linestyle=":", linewidth=0.9, zorder=3)
    _beats(axes, shown, view, detail=detail)
    if detail:
        _ins_and_outs(axes, shown, view)
    _start(axes, head, detail=detail)
    _frame(axes, shown, view, detail=detail)


def draw_body(axes: Axes, body: Body, view: View, posture: Posture = UPRIGHT) -> None:
    """The body's outline to scale, given way; a wheelchair behind it."""
    wheels: dict[bool, list[Floats]] = {}
    for capsule in PosedBody(body, posture).capsules:
        outline = _stadium(view.flat(np.array([capsule.start, capsule.end])), capsule.radius)
        if capsule.name == "wheel":
            wheels.setdefault(capsule.start[0] > 0, []).append(outline)
            continue
        colour, order = (CHAIR, 0.9) if capsule.name == "chair" else (BODY, 1)
        axes.fill(*outline.T, color=colour, linewidth=0, zorder=order)
    for parts in wheels.values():  # what a wheel is made of, as the disc that it is
        axes.fill(*_hull(np.concatenate(parts)).T, color=CHAIR, linewidth=0, zorder=0.9)


def _hull(points: Floats) -> Floats:
    """Corners of the convex hull of points (n, 2)."""
    from scipy.spatial import ConvexHull

    return np.asarray(points[ConvexHull(points).vertices])


def _arm(axes: Axes, shown: Drawn, view: View, *, detail: bool) -> None:
    """The arm at the start: thin, its joints as dots."""
    line = view.flat(shown.arm)
    wide = 1.0 if detail else 0.6
    axes.plot(*line[1:].T, color=ARM, linewidth=wide, solid_capstyle="round", zorder=2.5)
    axes.plot(*line[:2].T, color=ARM, linewidth=2 * wide, solid_capstyle="round", zorder=2.5)
    axes.plot(*line[1:3].T, "o", color=ARM, markersize=3 * wide, zorder=2.5)


def _stadium(ends: Floats, radius: float) -> Floats:
    along = ends[1] - ends[0]
    turn = float(np.arctan2(along[1], along[0])) if np.linalg.norm(along) > 1e-9 else 0.0
    angle = np.linspace(-np.pi / 2, np.pi / 2, 24) + turn
    arc = radius * np.stack((np.cos(angle), np.sin(angle)), axis=-1)
    return np.concatenate((ends[1] + arc, ends[0] - arc))


def _beats(axes: Axes, shown: Drawn, view: View, *, detail: bool) -> None:
    head = view.flat(shown.head)
    whole = np.arange(0, len(shown.beats), PER_BEAT)
    closed = np.linalg.norm(shown.head[-1] - shown.head[0]) < 1e-6
    for k in whole[: -1 if closed and len(whole) > 1 else None]:
        if detail:
            _shape(axes, shown, view, int(k))
        if k:
            axes.plot(*head[k], "o", color="white", markeredgecolor=INK, markersize=4 if detail else 2.5,
                      markeredgewidth=0.8, zorder=6)  # fmt: skip
        if detail or len(whole) <= 7:
            away = head[k] - head.mean(axis=0)
            size = float(np.linalg.norm(away)) or 1.0
            axes.annotate(f"{k // PER_BEAT}", head[k], xytext=9 * away / size if detail else 6 * away / size,
                          textcoords="offset points", fontsize=8 if detail else 5.5, ha="center",
                          va="center", color=INK, zorder=7)  # fmt: skip


def _shape(axes: Axes, shown: Drawn, view: View, at: int) -> None:
    """The prop itself at one instant: what it is made of, and the wicks beside the trail."""
    lines = [solid for solid in shown.prop.solids if solid.start != solid.end]
    ends = shown.spots(at, [spot[:2] for line in lines for spot in (line.start, line.end)])
    for start, end in zip(view.flat(ends[::2]), view.flat(ends[1::2]), strict=True):
        axes.plot(*np.stack((start, end)).T, color=SOFT, linewidth=0.7, zorder=2)
    beside = [s for s in shown.prop.heads if s.across or s.along != shown.length]
    if beside:
        wicks = view.flat(shown.spots(at, [spot[:2] for spot in beside]))
        axes.plot(*wicks.T, "o", color=SOFT, markersize=2.5, zorder=3)


def _ins_and_outs(axes: Axes, shown: Drawn, view: View) -> None:
    """Where the tether points at the middle of the hand's path, or away from it."""
    away = shown.motion.hand[:-1] - shown.motion.hand[:-1].mean(axis=0)
    size = np.linalg.norm(away, axis=1)
    if size.min() < 0.05:
        return
    outward = np.sum(shown.motion.tether[:-1] * away, axis=1) / size
    for sign, mark in ((-1.0, "^"), (1.0, "v")):
        level = sign * outward
        peak = (level > np.roll(level, 1)) & (level >= np.roll(level, -1)) & (level > 0.999)
        if 0 < peak.sum() <= 48:
            axes.plot(*view.flat(shown.head[:-1][peak]).T, mark, color="none", markeredgecolor=HAND,
                      markersize=9, markeredgewidth=1.0, zorder=5)  # fmt: skip


def _start(axes: Axes, head: Floats, *, detail: bool) -> None:
    axes.plot(*head[0], "o", color=INK, markersize=7 if detail else 4, zorder=8)
    step = min(12, len(head) - 1)
    if np.linalg.norm(head[step] - head[0]) > 0.02:
        axes.annotate(
            "", head[step], xytext=head[0], zorder=8,
            arrowprops={"arrowstyle": "-|>", "color": INK, "lw": 1.6 if detail else 1.0,
                        "shrinkA": 3, "shrinkB": 0},
        )  # fmt: skip


def _frame(axes: Axes, shown: Drawn, view: View, *, detail: bool) -> None:
    # the same span in all views, so that they are drawn to one scale
    wide = np.cross(shown.motion.plane, shown.motion.tether)
    ends = [
        shown.motion.hand + spot.along * shown.motion.tether + spot.across * wide
        for solid in shown.prop.solids
        for spot in (solid.start, solid.end)
    ]
    solid = np.concatenate((*ends, [[0.3, 0, 0], [-0.3, 0, 0], [0, 0, 1.7]]))
    flats = [each.flat(solid) for each in VIEWS]
    half = max(float(np.ptp(flat, axis=0).max()) for flat in flats) / 2 + 0.1
    points = view.flat(solid)
    middle = (points.max(axis=0) + points.min(axis=0)) / 2
    low, high = middle - half, middle + half
    axes.set_xlim(low[0], high[0])
    axes.set_ylim(low[1], high[1])
    axes.set_aspect("equal", adjustable="box")
    if not detail:
        return
    # ticks within the limits only: others would widen this view, and not the next
    axes.set_xticks(np.arange(np.ceil(low[0] * 2) / 2, high[0], 0.5))
    axes.set_yticks(np.arange(np.ceil(low[1] * 2) / 2, high[1], 0.5))
    axes.tick_params(labelbottom=False, labelleft=False, length=0)
    axes.grid(color="#d9d9d9", linewidth=0.5, zorder=0)
    axes.set_axisbelow(True)
    for spine in axes.spines.values():
        spine.set_color("#c0c0c0")


def _scale(shown: Drawn) -> ScalarMappable:
    return ScalarMappable(Normalize(0.0, float(shown.beats[-1])), TRAIL)
