"""Labels on a plan that never overlap: each takes the nearest free spot around its place.

A label without a free spot nearby is joined to its place by a thin line, or left out if it is optional.
Everything is measured in the picture's pixels, after the layout is fixed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from sequencer.outputs.plans.plan_style import PLAN_SOFT

LabelBox = tuple[float, float, float, float]  # left, bottom, right, top [px]
_GAP = 1.0  # [pt] between two words
_RINGS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A label that belongs to a place on the plan."""

    text: str
    at: tuple[float, float]  # [m]
    off: float = 0.0  # [m] space around the place that the label avoids, if it can
    ink: str
    size: float = 8.0  # [pt]
    bold: bool = False
    boxed: str | None = None  # ink of a frame around it
    needed: bool = True  # False: left out where there is no room near its place
    inside: bool = False  # the place itself is tried first
    first: tuple[float, float] = (0.0, -1.0)  # direction that is tried first
    upright: bool = False  # written from bottom to top
    rivals: tuple[
        tuple[float, float], ...
    ] = ()  # [m] it stands nearer to its own place than to these
    otherwise: str = ""  # written on a line to its place where no such place is free


def place_labels(
    axes: Any, labels: Sequence[Label], *, keep_out: Sequence[LabelBox] = ()
) -> list[bool]:
    """Write labels into axes whose layout is fixed; returns whether each found room.

    Parameters
    ----------
    axes : matplotlib Axes
    labels : sequence of Label
        The most important first.
    keep_out : sequence of (left, bottom, right, top)
        Boxes that no label may touch, except one written inside its place [px].
    """
    taken: list[LabelBox] = []
    frame = axes.get_window_extent()
    room: LabelBox = (frame.x0, frame.y0, frame.x1, frame.y1)
    placed = []
    for label in labels:
        spot = _placed(axes, label, room, taken, keep_out)
        tied = spot is None and bool(label.otherwise)
        if tied:
            bare = replace(label, text=label.otherwise, rivals=())
            spot = _placed(axes, bare, room, taken, keep_out)
        placed.append(spot is not None)
        if spot is None:
            continue
        rings, at, box = spot
        taken.append(box)
        if tied or rings > 2 or (label.inside and rings > 0):
            to = axes.transData.inverted().transform(at)
            axes.plot(
                [label.at[0], to[0]], [label.at[1], to[1]], color=PLAN_SOFT, linewidth=0.6, zorder=8.5,
                scalex=False, scaley=False,
            )  # fmt: skip
    return placed


def _placed(
    axes: Any,
    label: Label,
    room: LabelBox,
    taken: Sequence[LabelBox],
    keep_out: Sequence[LabelBox],
) -> tuple[int, tuple[float, float], LabelBox] | None:
    """Write a label at the first free place: its ring, its middle [px] and its box; None if there is none."""
    written = _written(axes, label)
    wide, tall = _measured(written)
    x, y = axes.transData.transform(label.at)
    metre = axes.transData.transform((1, 0))[0] - axes.transData.transform((0, 0))[0]
    pad = _GAP * axes.figure.dpi / 72 + (3 if label.boxed else 0)
    rivals = [tuple(axes.transData.transform(place)) for place in label.rivals]
    avoid = taken if label.inside else (*taken, *keep_out)
    for rings, (cx, cy) in _spots(label, (x, y), (wide, tall), label.off * abs(metre)):
        box = (cx - wide / 2 - pad, cy - tall / 2 - pad, cx + wide / 2 + pad, cy + tall / 2 + pad)
        free = _within(box, room) and not any(_meet(box, other) for other in avoid)
        if free and _is_own(box, (x, y), rivals):
            written.set_position(axes.transData.inverted().transform((cx, cy)))
            return rings, (cx, cy), box
        if rings > 2 and not label.needed:
            break
    written.remove()
    return None


def _is_own(box: LabelBox, at: tuple[float, float], rivals: Sequence[tuple[float, ...]]) -> bool:
    """Whether a box is nearer to its own place than to any other."""
    own = _from_box(box, at)
    return all(own < _from_box(box, rival) for rival in rivals)


def _from_box(box: LabelBox, place: Sequence[float]) -> float:
    return float(
        np.hypot(
            max(box[0] - place[0], place[0] - box[2], 0.0),
            max(box[1] - place[1], place[1] - box[3], 0.0),
        )
    )


def _written(axes: Any, label: Label) -> Any:
    box = {"facecolor": "white", "edgecolor": "none", "alpha": 0.8, "pad": 0.5}
    if label.boxed:
        box = {"facecolor": "white", "edgecolor": label.boxed, "linewidth": 0.8, "pad": 1.5}
    return axes.text(
        *label.at, label.text, color=label.ink, fontsize=label.size, ha="center", va="center",
        rotation=90 if label.upright else 0,
        fontweight="bold" if label.bold else "normal", zorder=9,
        bbox=None if label.inside else box,
    )  # fmt: skip


def _measured(written: Any) -> tuple[float, float]:
    found = written.get_window_extent()
    return float(found.width), float(found.height)


def _spots(
    label: Label, at: tuple[float, float], size: tuple[float, float], free: float
) -> Iterator[tuple[int, tuple[float, float]]]:
    """Candidate centres for a label, nearest first: its place, then rings around it, preferred direction first."""
    if label.inside:
        yield 0, at
    start = np.arctan2(label.first[1], label.first[0])
    for ring in range(1, _RINGS):
        turns = 8 if ring < 3 else 16
        order = sorted(range(turns), key=lambda k: (min(k, turns - k), k))
        for k in order:
            angle = start + 2 * np.pi * k / turns
            c, s = np.cos(angle), np.sin(angle)
            # The nearest edge of the label lies on the ring in every direction.
            reach = 0.5 * (abs(c) * size[0] + abs(s) * size[1]) + free + 3.0 * ring * ring**0.5
            yield ring, (at[0] + c * reach, at[1] + s * reach)


def _meet(one: LabelBox, other: LabelBox) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _within(box: LabelBox, room: LabelBox) -> bool:
    return box[0] >= room[0] and box[1] >= room[1] and box[2] <= room[2] and box[3] <= room[3]
