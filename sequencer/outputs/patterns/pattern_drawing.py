"""Drawings of patterns: three straight views and an oblique one, with the body to scale.

The head's trail is coloured by time (dark to light, legible to colour-blind readers) and can be followed in
grey by its numbered beats; nearer parts of the oblique trail are thicker. If the two hands differ,
both are drawn, the left hand's trail hollow. A poi or rope dart is drawn as it is flown, with the drawing of its law as
thin lines; where it cannot be flown, and with props that the hand turns, only the law is drawn. Body frame [m].
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from textwrap import fill

import numpy as np
from matplotlib import colormaps
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.collections import LineCollection
from matplotlib.colors import ListedColormap, Normalize
from matplotlib.figure import Figure

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT, PosedBody, Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.blocks import Timing
from sequencer.motion.performers.arms import elbow, given_shoulder
from sequencer.motion.props.prop import Prop
from sequencer.outputs.figures import plain_text
from sequencer.outputs.patterns.fit_words import danced_words, verdict, who_words
from sequencer.outputs.patterns.flown_words import flown_words
from sequencer.outputs.patterns.one_pattern import OnePattern

DRAWING_INK, HAND, DRAWING_SOFT, BODY, ARM = "#1b1b1b", "#b2182b", "#8a8a8a", "#e4e2dd", "#6b655b"
DRAWN = "#4d4d4d"  # the law's own paths, beside those that are flown
_THIN = 0.7
CHAIR = "#cdc9c0"  # of a seated performer, behind the legs
# viridis without its palest end, which is lost on white paper
TRAIL = ListedColormap(colormaps["viridis"](np.linspace(0.0, 0.9, 256)))
LEFT_TRAIL = ListedColormap(colormaps["YlOrBr"](np.linspace(1.0, 0.5, 256)))
LATE: Mapping[Timing, str] = {
    "together": "at the same time", "split": "half a turn later", "quarter": "a quarter of a turn later",
}  # fmt: skip
_PER_BEAT = 96
MOST_BEATS = 16.0
_FLAT = 0.02  # [m] in depth, below which nothing counts as nearer
_STEADY = 0.01  # of the cosine: a tether that always points equally far outward has no ins and outs
LABEL_OFF = 0.085  # of half a view: how far a number stands from its spot
ARROW = 0.17  # [m] length of the arrow at a start
_FARTHER = (
    1.0,
    1.6,
    2.3,
)  # times that a number may stand farther off where it would lie on another
# Half the size of a number at 8 pt, in the distance at which it stands: a view is about 265 pt wide.
_LETTER_WIDE, _EDGE, _LETTER_TALL = 0.24, 0.12, 0.5
_OVER = 1e6
SAME_SPOT = 0.09  # [m] within which beats of one trail share a label


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class View:
    """A straight projection: which directions are right and up on paper, and which way is nearer."""

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
    law: Motion | None = None  # as drawn, where `motion` is as flown

    @property
    def arm(self) -> Floats:
        """Shoulder at rest, shoulder brought along, elbow and hand at the start, shape (4, 3) [m, body frame]."""
        held = HeldPosture(0.0, float(self.beats[-1]), self.posture)
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
        motion = self.motion
        wide = np.cross(motion.plane[at], motion.tether[at])
        return np.stack([motion.hand[at] + a * motion.tether[at] + c * wide for a, c in places])


def drawn(one: OnePattern, side: Side = "right", *, flown: bool = False) -> Drawn:
    """The curves of one hand over one closing of both, at most 16 beats; if `flown`, as it is flown if it can be."""
    span = min(one.end, MOST_BEATS)
    beats: Floats = np.arange(round(span * _PER_BEAT) + 1, dtype=np.float64) / _PER_BEAT
    prop = one.dance.props[side]
    law = one.laws[side].at(beats)
    thin = flown and one.flown_laws is not one.laws
    return Drawn(
        motion=one.flown_laws[side].at(beats) if thin else law,
        law=law if thin else None,
        beats=beats,
        length=prop.length,
        body=one.body,
        prop=prop,
        side=side,
        posture=one.posture,
    )


def drawn_hands(one: OnePattern, *, flown: bool = False) -> list[Drawn]:
    """The right hand, and the left one too if it differs; see `drawn`."""
    sides: tuple[Side, ...] = ("right",) if one.alike else ("right", "left")
    return [drawn(one, side, flown=flown) for side in sides]


@plain_text
def pattern_figure(one: OnePattern) -> Figure:
    """Four views of a pattern as danced."""
    hands = drawn_hands(one, flown=True)
    figure = Figure(figsize=(8.27, 8.9), layout="constrained")
    given = ", ".join(f"{key} {value}" for key, value in one.given.items())
    said = [*danced_words(one), verdict(one.proven), flown_words(one)]
    words = "; ".join([who_words(one), *filter(None, said)])
    title = one.name + (f"   ({given})" if given else "")
    caption = fill(words.replace(" cm", "\u00a0cm"), 118)
    room = "\n" * (1 + caption.count("\n"))
    figure.suptitle(title + room, fontsize=15, fontweight="bold")
    figure.text(0.5, 0.962, caption, fontsize=8.5, ha="center", va="top", color="#333333")
    grid = figure.subplots(2, 2)
    for axes, view in zip(grid.ravel(), VIEWS, strict=True):
        draw_view(axes, hands, view)
        axes.set_title(view.title, fontsize=10)
    for shown in hands:
        bar = figure.colorbar(
            _scale(shown), ax=grid, orientation="horizontal", fraction=0.03, aspect=60, pad=0.02
        )
        hand = "" if one.alike else f" of the {shown.side} hand"
        bar.set_label(f"beat{hand} (numbers on the trail)", fontsize=9)
    figure.supxlabel(_legend(one, hands), fontsize=9)
    return figure


def _legend(one: OnePattern, hands: Sequence[Drawn]) -> str:
    """Legend of a drawing."""
    signs = ["grid 0.5 m", "● start, arrow: direction of the head", "dashed: hand", "△ in   ▽ out"]
    below = [f"grey: body, {one.body.stature:.2f} m; its arms at the start"]
    if any(shown.rear is not None for shown in hands):
        signs.append("dotted: rear head")
    if len(hands) > 1:
        below = ["solid, round beats: right hand", "hollow, square beats: left hand", *below]
    elif len(one.sides) > 1:
        below.append(f"right hand; the left does the same on its side, {LATE[one.dance.timing]}")
    lines = [signs, below]
    if any(shown.law is not None for shown in hands):
        dotted = " (left hand: dotted)" if len(hands) > 1 else ""
        lines.append(["thick: as flown", f"thin: as drawn{dotted}"])
    return "\n".join("    ".join(line) for line in lines)


def draw_view(axes: Axes, hands: Sequence[Drawn], view: View) -> None:
    """Body, and of each hand its path, the head's trail with beats, start and arrow, in one view."""
    draw_body(axes, hands[0].body, view, hands[0].posture)
    for shown in hands:
        draw_arm(axes, shown, view, wide=1.0)
        if shown.law is not None:
            # beside the hollow trail of a left hand a solid line would be taken for its edge
            head = (0, (1, 1.5)) if shown.side == "left" else "-"
            for path, dashes in (
                (shown.law.hand, (0, (4, 2))),
                (shown.law.head(shown.length), head),
            ):
                axes.plot(
                    *view.flat(path).T, color=DRAWN, linestyle=dashes, linewidth=_THIN, zorder=4.3
                )
        axes.plot(
            *view.flat(shown.motion.hand).T,
            color=HAND,
            linestyle=(0, (4, 2)),
            linewidth=1.2,
            zorder=3,
        )
        draw_trail(axes, shown, view, wide=2.4)
        if shown.rear is not None:
            axes.plot(
                *view.flat(shown.rear).T, color=DRAWING_INK, linestyle=":", linewidth=0.9, zorder=3
            )
        _ins_and_outs(axes, shown, view)
        draw_start(axes, view.flat(shown.head), shown.side, size=7)
    _beats(axes, hands, view)
    _frame(axes, hands, view)


def draw_trail(
    axes: Axes, shown: Drawn, view: View, *, wide: float, colour: str | None = None
) -> None:
    """The head's trail by time, or in one colour: nearer parts thicker, a left hand's hollow."""
    head = view.flat(shown.head)
    pieces = list(np.stack((head[:-1], head[1:]), axis=1))
    depth = shown.head @ view.near
    reach = float(np.ptp(depth))
    nearness = (depth[:-1] - depth.min()) / reach if reach > _FLAT else np.full(len(pieces), 0.5)
    left = shown.side == "left"
    thick = wide * (0.5 + nearness)
    # where trails coincide the right hand's is on top, with the left one's showing on both sides
    edge = LineCollection(pieces, linewidths=thick + 0.9 if left else thick, capstyle="round")
    edge.set_zorder(4.0 if left else 4.2)
    if colour is None:
        edge.set_cmap(LEFT_TRAIL if left else TRAIL)
        edge.set_array(shown.beats[:-1])
        edge.set_clim(0.0, float(shown.beats[-1]))
    else:
        edge.set_color(colour)
    axes.add_collection(edge)
    if left:
        axes.add_collection(
            LineCollection(
                pieces, colors="white", linewidths=thick - 0.2, capstyle="round", zorder=4.1
            )
        )


def draw_body(axes: Axes, body: Body, view: View, posture: Posture = UPRIGHT) -> None:
    """The body's outline to scale, in its posture; a wheelchair behind it."""
    wheels: dict[bool, list[Floats]] = {}
    for capsule in PosedBody(body, posture).capsules:
        outline = _stadium(view.flat(np.array([capsule.start, capsule.end])), capsule.radius)
        if capsule.name == "wheel":
            wheels.setdefault(capsule.start[0] > 0, []).append(outline)
            continue
        colour, order = (CHAIR, 0.9) if capsule.name == "chair" else (BODY, 1)
        axes.fill(*outline.T, color=colour, linewidth=0, zorder=order)
    for parts in wheels.values():  # the pieces of a wheel, drawn as one disc
        axes.fill(*_hull(np.concatenate(parts)).T, color=CHAIR, linewidth=0, zorder=0.9)


def _hull(points: Floats) -> Floats:
    """Corners of the convex hull of points (n, 2)."""
    from scipy.spatial import ConvexHull

    return np.asarray(points[ConvexHull(points).vertices])


def draw_arm(axes: Axes, shown: Drawn, view: View, *, wide: float) -> None:
    """The arm at the start: thin, its joints as dots."""
    line = view.flat(shown.arm)
    axes.plot(*line[1:].T, color=ARM, linewidth=wide, solid_capstyle="round", zorder=2.5)
    axes.plot(*line[:2].T, color=ARM, linewidth=2 * wide, solid_capstyle="round", zorder=2.5)
    axes.plot(*line[1:3].T, "o", color=ARM, markersize=3 * wide, zorder=2.5)


def _stadium(ends: Floats, radius: float) -> Floats:
    along = ends[1] - ends[0]
    turn = float(np.arctan2(along[1], along[0])) if np.linalg.norm(along) > 1e-9 else 0.0
    angle = np.linspace(-np.pi / 2, np.pi / 2, 24) + turn
    arc = radius * np.stack((np.cos(angle), np.sin(angle)), axis=-1)
    return np.concatenate((ends[1] + arc, ends[0] - arc))


def _beats(axes: Axes, hands: Sequence[Drawn], view: View) -> None:
    """Whole beats on the trails, with their numbers; beats at one spot share a label."""
    spots: list[tuple[Floats, str]] = []
    crowd: list[Floats] = []
    for shown in hands:
        head = view.flat(shown.head)
        closed = np.linalg.norm(shown.head[-1] - shown.head[0]) < 1e-6
        whole = np.arange(0, len(shown.beats) - (1 if closed else 0), _PER_BEAT)
        mark = "s" if shown.side == "left" else "o"
        for k in whole.tolist():
            draw_prop(axes, shown, view, k)
            if k:
                axes.plot(*head[k], mark, color="white", markeredgecolor=DRAWING_INK, markersize=4,
                          markeredgewidth=0.8, zorder=6)  # fmt: skip
        spots += labels(head[whole])
        crowd.append(head)
        crowd.append(view.flat(shown.motion.hand))
        crowd.append(head[whole])
    _numbers(axes, spots, np.concatenate(crowd), LABEL_OFF * _half(hands))


def _numbers(axes: Axes, spots: Sequence[tuple[Floats, str]], crowd: Floats, off: float) -> None:
    """Put each label on the side of its spot where least is drawn."""
    turns = np.linspace(0, 2 * np.pi, 16, endpoint=False)
    ring = np.stack((np.cos(turns), np.sin(turns)), axis=-1)
    ways = off * np.concatenate([far * ring for far in _FARTHER])
    taken: list[tuple[Floats, Floats]] = []  # middles and half sizes of the labels so far
    for spot, label in spots:
        # longer text stands farther away
        around = spot + ways * [1 + 0.14 * (len(label) - 1), 1]
        size = off * np.array([_LETTER_WIDE * len(label) + _EDGE, _LETTER_TALL])
        near = np.linalg.norm(crowd[None] - around[:, None], axis=-1)
        cost = np.sum(np.exp(-((near / (0.6 * off)) ** 2)), axis=1) + np.repeat(
            np.array(_FARTHER) - 1.0, len(turns)
        )
        for middle, half in taken:
            cost += _OVER * np.all(np.abs(around - middle) < size + half, axis=1)
        place = around[int(np.argmin(cost))]
        taken.append((place, size))
        crowd = np.concatenate((crowd, np.repeat(place[None], _PER_BEAT, axis=0)))
        axes.annotate(
            label, place, fontsize=8, ha="center", va="center", color=DRAWING_INK, zorder=9,
            bbox={"boxstyle": "round,pad=0.1", "facecolor": "white", "edgecolor": "none", "alpha": 0.6},
        )  # fmt: skip


def labels(spots: Floats) -> list[tuple[Floats, str]]:
    """Numbers of the beats at spots (n, 2) [m on paper]; beats that meet at a spot are numbered together."""
    groups: list[list[int]] = []
    for k, spot in enumerate(spots):
        near = [g for g in groups if np.linalg.norm(spots[g[0]] - spot) < SAME_SPOT]
        if near:
            near[0].append(k)
        else:
            groups.append([k])
    return [(spots[group[0]], ", ".join(map(str, group))) for group in groups]


def draw_prop(axes: Axes, shown: Drawn, view: View, at: int) -> None:
    """The prop itself at one instant: its parts, and the wicks beside the trail."""
    lines = [solid for solid in shown.prop.solids if solid.start != solid.end]
    ends = shown.spots(at, [spot[:2] for line in lines for spot in (line.start, line.end)])
    for start, end in zip(view.flat(ends[::2]), view.flat(ends[1::2]), strict=True):
        axes.plot(*np.stack((start, end)).T, color=DRAWING_SOFT, linewidth=0.7, zorder=2)
    beside = [s for s in shown.prop.heads if s.across or s.along != shown.length]
    if beside:
        wicks = view.flat(shown.spots(at, [spot[:2] for spot in beside]))
        axes.plot(*wicks.T, "o", color=DRAWING_SOFT, markersize=2.5, zorder=3)


def _ins_and_outs(axes: Axes, shown: Drawn, view: View) -> None:
    """Mark where the drawn tether points at the middle of the hand's path, or away from it."""
    law = shown.motion if shown.law is None else shown.law
    away = law.hand[:-1] - law.hand[:-1].mean(axis=0)
    size = np.linalg.norm(away, axis=1)
    if size.min() < 0.05:
        return
    outward = np.sum(law.tether[:-1] * away, axis=1) / size
    if np.ptp(outward) < _STEADY:
        return
    for sign, mark in ((-1.0, "^"), (1.0, "v")):
        level = sign * outward
        peak = (level > np.roll(level, 1)) & (level >= np.roll(level, -1)) & (level > 0.999)
        if 0 < peak.sum() <= 48:
            axes.plot(*view.flat(shown.head[:-1][peak]).T, mark, color="none", markeredgecolor=HAND,
                      markersize=9, markeredgewidth=1.0, zorder=5)  # fmt: skip


def draw_start(axes: Axes, head: Floats, side: Side, *, size: float) -> None:
    """Mark where a head starts, and its direction."""
    left = side == "left"
    axes.plot(*head[0], "s" if left else "o", color="white" if left else DRAWING_INK, markeredgecolor=DRAWING_INK,
              markeredgewidth=size / 6, markersize=size * (0.8 if left else 1.0), zorder=8)  # fmt: skip
    gone = np.linalg.norm(head - head[0], axis=1)
    far = np.flatnonzero(gone >= min(ARROW, 0.5 * float(gone.max())))
    if gone.max() > 0.02:
        axes.annotate(
            "", head[far[0]], xytext=head[0], zorder=8,
            arrowprops={"arrowstyle": "-|>", "color": DRAWING_INK, "lw": 0.23 * size,
                        "mutation_scale": 4 + size, "shrinkA": size / 2.3, "shrinkB": 0},
        )  # fmt: skip


def outline(shown: Drawn) -> Floats:
    """Points that enclose a hand's prop over all beats, shape (n, 3) [m, body frame]."""
    ends = [
        motion.hand
        + spot.along * motion.tether
        + spot.across * np.cross(motion.plane, motion.tether)
        for motion in (shown.motion, shown.law)
        if motion is not None
        for solid in shown.prop.solids
        for spot in (solid.start, solid.end)
    ]
    return np.concatenate(ends)


def _whole(hands: Sequence[Drawn]) -> Floats:
    """Points that enclose everything drawn."""
    body = [[0.3, 0, 0], [-0.3, 0, 0], [0, 0, hands[0].body.stature]]
    return np.concatenate((*(outline(shown) for shown in hands), body))


def _half(hands: Sequence[Drawn]) -> float:
    """Half the size that each view shows [m]: the same in all, so that they share one scale."""
    whole = _whole(hands)
    return max(float(np.ptp(each.flat(whole), axis=0).max()) for each in VIEWS) / 2 + 0.14


def _frame(axes: Axes, hands: Sequence[Drawn], view: View) -> None:
    half, points = _half(hands), view.flat(_whole(hands))
    middle = (points.max(axis=0) + points.min(axis=0)) / 2
    low, high = middle - half, middle + half
    axes.set_xlim(low[0], high[0])
    axes.set_ylim(low[1], high[1])
    axes.set_aspect("equal", adjustable="box")
    # ticks within the limits only: others would widen this view but not the next
    axes.set_xticks(np.arange(np.ceil(low[0] * 2) / 2, high[0], 0.5))
    axes.set_yticks(np.arange(np.ceil(low[1] * 2) / 2, high[1], 0.5))
    axes.tick_params(labelbottom=False, labelleft=False, length=0)
    axes.grid(color="#d9d9d9", linewidth=0.5, zorder=0)
    axes.set_axisbelow(True)
    for spine in axes.spines.values():
        spine.set_color("#c0c0c0")


def _scale(shown: Drawn) -> ScalarMappable:
    colours = LEFT_TRAIL if shown.side == "left" else TRAIL
    return ScalarMappable(Normalize(0.0, float(shown.beats[-1])), colours)
