"""A small plan for one post at one moment, seen from its own side of the stage: that post is at the bottom.

It shows only what matters there: "you", whom to watch, the next watcher, the nearest extinguisher, the exits; other
performers are empty rings. Every word is as large as the page's least type; a name stands nearer to its own
mark than to any other, or it is left out, since the row beside the plan has it. Lengths on paper in points.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, pi, sin
from typing import Any, Literal

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.free_room import Box, free_place, is_free
from sequencer.outputs.sheets.page.letters import clipped, printable, width
from sequencer.outputs.sheets.page.paper import DARK_SIZE, HAIR, INK, MIST, PAPER, RULE, SOFT, WATCH
from sequencer.outputs.sheets.page.pictograms import draw_sign
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.parts.own_side import Point

MarkKind = Literal["performer", "you", "crew", "extinguisher", "exit", "other"]
_SIGNS: dict[MarkKind, str] = {"extinguisher": "F001", "exit": "E001"}
_SIGN = 18.0
_RING = 5.0  # radius of a performer who is not watched
_DISC = 10.5  # least radius of one who is
_CHIP = 19.0  # height of a post's mark
_ROOM = 13.0  # between the places shown and the frame
_LEAST_SEEN = 7.0  # [m] a plan never shows less: one person alone would fill it
_CLEARLY = 1.5  # how many times nearer a name is to its own mark than to another performer's; a design choice
_AROUND = 24  # directions in which room for a name is sought
_STEPS = tuple(2.0 * k for k in range(1, 80))
_OUTWARD = (2.0, 6.0, 12.0, 20.0)  # gaps between a mark and its name


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanMark:
    """One person or thing; places as seen from the post's side [m]."""

    kind: MarkKind
    at: Point
    words: str = ""  # in the mark
    name: str = ""  # beside it
    way: tuple[Point, ...] = ()  # walked from there


@dataclass(frozen=True, slots=True, kw_only=True)
class PostScene:
    """What one post sees at one moment; places as seen from its side [m]."""

    stage: tuple[Point, ...]
    audience: tuple[tuple[Point, ...], ...]
    marks: tuple[PlanMark, ...]  # what must be found first comes first


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedMark:
    """A mark on paper, with the place of its name."""

    mark: PlanMark
    x: float
    y: float
    half: float  # half its width
    name: str = ""  # as printed; empty where there is no room for it
    name_box: Box | None = None

    @property
    def box(self) -> Box:
        """Around the mark."""
        tall = self.half if self.mark.kind in {"performer", "other"} else _tall(self.mark.kind)
        return (self.x - self.half, self.y - tall, self.x + self.half, self.y + tall)


class PostPlan(Flowable):  # type: ignore[misc]
    """The drawing of a scene in a given room."""

    def __init__(self, scene: PostScene, *, wide: float, tall: float) -> None:
        super().__init__()
        self.scene, self.width, self.height = scene, wide, tall
        self._frame = _window(scene)
        low_x, low_y, high_x, high_y = self._frame
        self._scale = min(
            (wide - 2 * _ROOM) / (high_x - low_x), (tall - 2 * _ROOM) / (high_y - low_y)
        )
        self.placed = self._with_rings(_named(self._placed(), self._area))

    @property
    def description(self) -> str:
        """What it shows, for comparison with another plan."""
        return f"[post plan {self.scene!r}"

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """The room it was given."""
        return self.width, self.height

    def at(self, point: Point) -> Point:
        """Paper point of a place."""
        low_x, low_y, high_x, _ = self._frame
        spare = self.width - 2 * _ROOM - (high_x - low_x) * self._scale
        return (
            _ROOM + spare / 2 + (point[0] - low_x) * self._scale,
            _ROOM + (point[1] - low_y) * self._scale,
        )

    @property
    def _area(self) -> Box:
        return (1.0, 1.0, self.width - 1.0, self.height - 1.0)

    def _placed(self) -> list[PlacedMark]:
        """Every mark at its place, or beside it where another one is; at the frame where it is far away."""
        found: list[PlacedMark] = []
        left, low, right, high = self._area
        for mark in self.scene.marks:
            if mark.kind == "other":
                continue
            half = _half(mark)
            tall = half if mark.kind == "performer" else _tall(mark.kind)
            x, y = self.at(mark.at)
            at = (
                min(max(x, left + half), right - half),
                min(max(y, low + tall), high - tall),
            )
            taken = [each.box for each in found]
            first = _along(at) if at[1] > y else (at,)  # never drawn ahead of what it is behind
            place = free_place(at, (2 * half, 2 * tall), self._area, taken, first=first)
            if place is not None:
                found.append(PlacedMark(mark=mark, x=place[0], y=place[1], half=half))
        return found

    def _with_rings(self, named: Sequence[PlacedMark]) -> tuple[PlacedMark, ...]:
        """The other performers too, each where it hides nothing and no name could be taken for its own."""
        out = list(named)
        taken = [each.box for each in named]
        taken += [each.name_box for each in named if each.name_box is not None]
        for mark in self.scene.marks:
            if mark.kind != "other":
                continue
            x, y = self.at(mark.at)
            ring = PlacedMark(mark=mark, x=x, y=y, half=_RING)
            clear = all(
                is_nearest(each.name_box, each, [ring])
                for each in named
                if each.name_box is not None
            )
            if clear and is_free(ring.box, self._area, taken):
                out.append(ring)
                taken.append(ring.box)
        return tuple(out)

    def draw(self) -> None:
        """Put the plan on the page."""
        canvas = self.canv
        begin = getattr(canvas, "begin_tag", None)
        if begin is not None:
            names = [f"{each.mark.words} {each.mark.name}".strip() for each in self.placed]
            begin("Figure", f"Plan from your side of the stage: {', '.join(filter(None, names))}")
        self._ground(canvas)
        for each in self.placed:
            self._way(canvas, each)
        for each in self.placed:
            _draw_mark(canvas, each)
        for each in self.placed:
            if each.name_box is not None:
                _draw_name(canvas, each)
        if begin is not None:
            canvas.end_tag()

    def _ground(self, canvas: Any) -> None:
        """The stage, and the edges of the audience, as far as they are in the frame."""
        canvas.saveState()
        clip = canvas.beginPath()
        clip.rect(0, 0, self.width, self.height)
        canvas.clipPath(clip, stroke=0, fill=0)
        canvas.setFillColor(MIST)
        canvas.rect(0, 0, self.width, self.height, stroke=0, fill=1)
        canvas.setFillColor(PAPER)
        canvas.setStrokeColor(SOFT)
        canvas.setLineWidth(1.2)
        canvas.drawPath(self._path(canvas, self.scene.stage, close=True), stroke=1, fill=1)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(4.0)
        for line in self.scene.audience:
            canvas.drawPath(self._path(canvas, line, close=False), stroke=1, fill=0)
        canvas.restoreState()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(HAIR)
        canvas.rect(0, 0, self.width, self.height, stroke=1, fill=0)

    def _path(self, canvas: Any, points: Sequence[Point], *, close: bool) -> Any:
        path = canvas.beginPath()
        path.moveTo(*self.at(points[0]))
        for point in points[1:]:
            path.lineTo(*self.at(point))
        if close:
            path.close()
        return path

    def _way(self, canvas: Any, placed: PlacedMark) -> None:
        """Where somebody walks, and a line to their true place if the mark is beside it."""
        mark = placed.mark
        canvas.setStrokeColor(INK)
        true = self.at(mark.at)
        inside = is_free((*true, *true), self._area, ())
        if inside and hypot(true[0] - placed.x, true[1] - placed.y) > 1:
            canvas.setLineWidth(0.9)
            canvas.line(*true, placed.x, placed.y)
        if len(mark.way) < 2:
            return
        canvas.saveState()
        canvas.setLineWidth(1.6)
        canvas.setDash(4, 2.5)
        canvas.drawPath(self._path(canvas, mark.way, close=False), stroke=1, fill=0)
        canvas.restoreState()
        _arrow_head(canvas, self.at(mark.way[-2]), self.at(mark.way[-1]))


def _along(at: Point) -> tuple[Point, ...]:
    """A place, and places on its left and right, nearest first."""
    return (at, *((at[0] + side * step, at[1]) for step in _STEPS for side in (1.0, -1.0)))


def _window(scene: PostScene) -> Box:
    """What is shown: who is watched, else everybody, with the post at the bottom; the rest is drawn at the frame."""
    own = next(mark.at for mark in scene.marks if mark.kind == "you")
    named = [mark for mark in scene.marks if mark.kind in {"performer", "you"}]
    seen = [mark for mark in scene.marks if mark.kind == "other" and mark.at[1] > own[1]]
    seen = seen if len(named) == 1 else []
    points = [mark.at for mark in (*named, *seen)]
    points += [point for mark in named for point in mark.way]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    wide, tall = max(xs) - min(xs), max(ys) - min(ys)
    aside = max(_LEAST_SEEN - wide, 0.0) / 2
    return (
        min(xs) - aside,
        min(ys),
        max(xs) + aside,
        max(ys) + max(_LEAST_SEEN - tall, 0.0),
    )


def _tall(kind: MarkKind) -> float:
    return _SIGN / 2 if kind in _SIGNS else _CHIP / 2


def _half(mark: PlanMark) -> float:
    """Half the width of a mark."""
    if mark.kind in _SIGNS:
        return _SIGN / 2
    if mark.kind == "other":
        return _RING
    long = width(printable(mark.words), "Poster") * DARK_SIZE / 2
    return max(_DISC, long + 2.5) if mark.kind == "performer" else long + 5.0


def _named(placed: Sequence[PlacedMark], area: Box) -> tuple[PlacedMark, ...]:
    """The marks with places for their names, the first found first."""
    out = list(placed)
    taken = [each.box for each in placed]
    for index, each in enumerate(placed):
        if not each.mark.name:
            continue
        others = [other for k, other in enumerate(placed) if k != index]
        name = clipped(each.mark.name, "Bold", DARK_SIZE, 0.4 * (area[2] - area[0]))
        box = _name_box(each, name, others, area, taken)
        if box is not None:
            out[index] = PlacedMark(
                mark=each.mark, x=each.x, y=each.y, half=each.half, name=name, name_box=box
            )
            taken.append(box)
    return tuple(out)


def _name_box(
    own: PlacedMark,
    name: str,
    others: Sequence[PlacedMark],
    area: Box,
    taken: Sequence[Box],
) -> Box | None:
    """Room for a name beside its mark, where no other mark is as near; None if there is none."""
    half, tall = width(name, "Bold") * DARK_SIZE / 2 + 1.0, DARK_SIZE * 0.55
    for out in _OUTWARD:
        for k in range(_AROUND):
            turn = 2 * pi * k / _AROUND
            across, up = cos(turn), sin(turn)
            x = own.x + across * (own.half + out + half)
            y = own.y + up * (own.half + out + tall)
            box = (x - half, y - tall, x + half, y + tall)
            if is_free(box, area, taken) and is_nearest(box, own, others):
                return box
    return None


def is_nearest(box: Box, own: PlacedMark, others: Sequence[PlacedMark]) -> bool:
    """Whether a name in a box is nearer to its own mark than to every other, clearly so where that is a performer's."""
    return all(
        (_CLEARLY if other.mark.kind in {"performer", "other"} else 1.0) * gap_to_middle(box, own)
        < gap_to_middle(box, other)
        and _gap_to_edge(box, own) < _gap_to_edge(box, other)
        for other in others
    )


def gap_to_middle(box: Box, placed: PlacedMark) -> float:
    """Distance from a box to the middle of a mark."""
    return hypot(
        max(box[0] - placed.x, placed.x - box[2], 0.0),
        max(box[1] - placed.y, placed.y - box[3], 0.0),
    )


def _gap_to_edge(box: Box, placed: PlacedMark) -> float:
    left, low, right, high = placed.box
    return hypot(max(box[0] - right, left - box[2], 0.0), max(box[1] - high, low - box[3], 0.0))


def _draw_mark(canvas: Any, placed: PlacedMark) -> None:
    mark, x, y = placed.mark, placed.x, placed.y
    if mark.kind in _SIGNS:
        draw_sign(canvas, _SIGNS[mark.kind], x - _SIGN / 2, y - _SIGN / 2, _SIGN)
        return
    dark = mark.kind != "other"
    canvas.setFillColor({"crew": WATCH, "other": PAPER}.get(mark.kind, INK))
    canvas.setStrokeColor(PAPER if dark else SOFT)
    canvas.setLineWidth(1.2)
    if mark.kind in {"performer", "other"}:
        canvas.circle(x, y, placed.half, stroke=1, fill=1)
    else:
        left, low, right, high = placed.box
        canvas.roundRect(left, low, right - left, high - low, 3, stroke=1, fill=1)
    if dark:
        span = TextSpan(mark.words, "Poster", DARK_SIZE, PAPER)
        one_line(canvas, x, y - DARK_SIZE * 0.35, span, align="centre")


def _draw_name(canvas: Any, placed: PlacedMark) -> None:
    left, low, right, high = placed.name_box or placed.box
    canvas.setFillColor(PAPER)
    canvas.roundRect(left, low, right - left, high - low, 2, stroke=0, fill=1)
    base = (low + high) / 2 - DARK_SIZE * 0.35
    one_line(
        canvas, (left + right) / 2, base, TextSpan(placed.name, "Bold", DARK_SIZE), align="centre"
    )


def _arrow_head(canvas: Any, start: Point, end: Point) -> None:
    """The end of a way."""
    long = max(hypot(end[0] - start[0], end[1] - start[1]), 1e-9)
    ahead = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    canvas.setFillColor(INK)
    head = canvas.beginPath()
    head.moveTo(*end)
    for side in (1, -1):
        head.lineTo(
            end[0] - 9 * ahead[0] - side * 4.5 * ahead[1],
            end[1] - 9 * ahead[1] + side * 4.5 * ahead[0],
        )
    head.close()
    canvas.drawPath(head, stroke=0, fill=1)
