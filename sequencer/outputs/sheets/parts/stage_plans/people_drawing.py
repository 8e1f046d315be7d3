"""Performers on a stage plan: their numbers, walks, reaches, and names that cannot be taken for another's.

Stage frame [m]: X to the audience's right is the page's right, Y upstage is up. Lengths on paper in points.
"""

from collections.abc import Sequence
from functools import cached_property
from math import cos, hypot, inf, radians, sin
from typing import Any

from sequencer.outputs.sheets.page.free_room import Boxes, free_place
from sequencer.outputs.sheets.page.letters import clipped, width
from sequencer.outputs.sheets.page.paper import FLAME, INK, PAPER, RULE, SOFT, TINY
from sequencer.outputs.sheets.page.pictograms import flame_mark
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.parts.stage_plans.ground import Circle, is_nearest
from sequencer.outputs.sheets.parts.stage_plans.scene import closest_spots, once_shown, way_length
from sequencer.outputs.sheets.parts.stage_plans.site_drawing import SiteDrawing
from sequencer.outputs.way_marks import Point, start_mark, way_arrow

PLAINLY, _ON_THREAD = 1.0, 0.2  # by how much a name is nearer to its own disc than to another's
_NAME = 92.0  # room for a performer's name
_Walk = tuple[Point, tuple[Point, Point]]  # its start; its arrow's middle and direction, on paper


class PeopleDrawing(SiteDrawing):
    """Those who dance, on the ground of a scene; where their names stand depends on what was drawn before."""

    @property
    def disc(self) -> float:
        """Radius of a performer's disc [pt]."""
        return max(6.2, min(8.5, self._apart * self.scale / 2 - 0.4))

    @cached_property
    def _apart(self) -> float:
        """How far the two nearest spots are apart [m]; kept, since every place that is tried for a name asks for it."""
        found = closest_spots(self.scene)
        return found if found < inf else 99.0

    @property
    def _laid(self) -> tuple[object, ...]:
        """All that it depends on where a point of the stage is on paper."""
        return self.area(), self._window, self.scale, self.scene.turned

    def _placed(self) -> tuple[dict[str, tuple[float, float]], bool]:
        """Where each performer's disc is drawn, at its place, or beside it if it would hide another's number; whether one is left out."""
        left, low, wide, tall = self.area()
        size = 2 * self.disc
        taken, hidden = Boxes(), False
        places = {}
        for name in self.scene.staged.show.names:
            if name not in self.scene.spots:
                continue
            at = self.at(*self.scene.spots[name][:2])
            area = (left, low, left + wide, low + tall)
            found = free_place(at, (size, size), area, taken, first=(at,))
            if (
                found is None
            ):  # more people than the drawing has room for: mentioned, never overdrawn
                hidden = True
                continue
            places[name] = x, y = found
            taken.append((x - size / 2, y - size / 2, x + size / 2, y + size / 2))
        return places, hidden

    def _walks(self) -> dict[str, _Walk]:
        """How each walk is drawn: where it begins, where its arrow is."""
        walks, discs = {}, list(self.places.values())
        for name, way in self.scene.ways.items():
            if way_length(way) >= 0.05:
                points = [self.at(*point) for point in way]
                start = start_mark(points, discs, self.disc + 4.0)
                walks[name] = (start, way_arrow(points, discs, self.disc + 6.0))
        return walks

    def _paths(self, canvas: Any) -> None:
        walks = once_shown(self.scene, ("walks", self._laid), self._walks)
        for name, (start, ((x, y), ahead)) in walks.items():
            strong = self.scene.focus in {None, name}
            canvas.setStrokeColor(INK if strong else RULE)
            canvas.setFillColor(PAPER)
            canvas.setLineWidth(1.1 if strong else 0.7)
            canvas.setDash(3, 2)
            way = self.scene.ways[name]
            canvas.drawPath(self.path(canvas, way, close=False), stroke=1, fill=0)
            canvas.setDash()
            canvas.circle(*start, 3.0, stroke=1, fill=1)
            canvas.setFillColor(INK if strong else RULE)
            head = canvas.beginPath()
            head.moveTo(x + 4.0 * ahead[0], y + 4.0 * ahead[1])
            for sign in (1, -1):
                head.lineTo(
                    x - 3.0 * ahead[0] + 3.0 * sign * ahead[1],
                    y - 3.0 * ahead[1] - 3.0 * sign * ahead[0],
                )
            head.close()
            canvas.drawPath(head, stroke=0, fill=1)

    def _reaches(self, canvas: Any) -> None:
        canvas.saveState()
        self.clip(canvas)
        burning = set(self.scene.lit)
        for dancer in self.scene.staged.dancers:
            if dancer.name not in self.scene.spots:
                continue
            x, y, _ = self.scene.spots[dancer.name]
            lit = dancer.name in burning
            canvas.setStrokeColor(FLAME if lit else SOFT)
            canvas.setLineWidth(1.2 if lit else 0.7)
            canvas.setDash(*(() if lit else (2.5, 2.0)))
            canvas.circle(*self.at(x, y), dancer.reach * self.scale, stroke=1, fill=0)
        canvas.setDash()
        canvas.restoreState()

    def _performers(self, canvas: Any) -> None:
        for name in self.places:
            self._arrow(canvas, name)
        radius, burning = self.disc, set(self.scene.lit)
        for name, (x, y) in self.places.items():
            if name in burning:
                flame_mark(canvas, x + radius * 0.95, y + radius * 0.5, 10, FLAME)
                self.taken.append(
                    (x + radius * 0.5, y, x + radius * 0.95 + 6, y + radius * 0.5 + 10)
                )
        for name in self.places:  # on top of everything else: a number is never hidden
            self._disc(canvas, name)

    def _arrow(self, canvas: Any, name: str) -> None:
        """Which way somebody faces, and a line to their place if the disc is beside it."""
        radius = self.disc
        x, y = self.places[name]
        true = self.at(*self.scene.spots[name][:2])
        if hypot(true[0] - x, true[1] - y) > 1:
            self.draw_leader(*true, x, y)
        facing = radians(self.scene.spots[name][2] + (180.0 if self.scene.turned else 0.0))
        tip = (sin(facing), -cos(facing))
        side = (cos(facing), sin(facing))
        canvas.setFillColor(INK if self.scene.focus in {None, name} else SOFT)
        arrow = canvas.beginPath()
        arrow.moveTo(x + tip[0] * (radius + 7), y + tip[1] * (radius + 7))
        for sign in (1, -1):
            arrow.lineTo(
                x + tip[0] * (radius - 1.5) + sign * side[0] * 5,
                y + tip[1] * (radius - 1.5) + sign * side[1] * 5,
            )
        arrow.close()
        canvas.drawPath(arrow, stroke=0, fill=1)

    def _disc(self, canvas: Any, name: str) -> None:
        """A performer's number."""
        x, y = self.places[name]
        dark = self.scene.focus in {None, name}
        canvas.setFillColor(INK if dark else PAPER)
        canvas.setStrokeColor(INK if dark else SOFT)
        canvas.setLineWidth(1.1)
        canvas.circle(x, y, self.disc, stroke=1, fill=1)
        number = str(self.scene.staged.number_of(name))
        size = 9.0 if self.disc > 7 else TINY
        one_line(
            canvas,
            x,
            y - 3.0,
            TextSpan(number, "Bold", size, PAPER if dark else INK),
            align="centre",
        )

    def _name_at_disc(self, canvas: Any, name: str) -> bool:
        """A performer's name beside the disc, if there is room for it."""
        x, y = self.places[name]
        radius, half = self.disc, self._half(name)
        near = [
            (x, y - radius - 15),
            (x, y + radius + 4),
            (x + radius + 6 + half, y - 4),
            (x - radius - 6 - half, y - 4),
        ]
        before = self.left_out
        found = self._write_name(canvas, name, near, rivals=(), nearer=PLAINLY)
        self.left_out = before  # it is tried once more
        return found is not None

    def _name_on_thread(self, canvas: Any, name: str) -> None:
        """A performer's name farther off, where it cannot be taken for another's; always on that performer's sheet."""
        x, y = self.places[name]
        half = self._half(name)
        away = self.disc + 1.5
        spots = _around(x, y, self.disc, 2 * half)
        reach = max(hypot(to_x - x, to_y - y) for to_x, to_y in spots) + away
        around_it = self.circles.near((x - reach, y - reach, x + reach, y + reach))
        apart = [(hypot(px - x, py - y), px, py) for px, py, _ in around_it]
        near = [
            (px, py) for far, px, py in sorted(apart) if far <= reach
        ]  # the first ones hide most
        around = [spot for spot in spots if self._is_clear((x, y), spot, away, near)]
        crossed = self._are_crossed((x, y), around)
        must = self.scene.focus == name
        # on a performer's sheet whose number is which stands above the plans: no line for it runs over words or marks
        around = [
            spot
            for bad in ((False, True) if must or self.scene.focus is None else (False,))
            for spot, own in zip(around, crossed, strict=True)
            if own is bad
        ]
        found = self._write_name(
            canvas,
            name,
            around or [(x, y)],
            rivals=self.unnamed,
            nearer=_ON_THREAD,
            must=must,
        )
        if found is not None:
            self._thread(canvas, (x, y), found, half)

    def _write_name(
        self,
        canvas: Any,
        name: str,
        places: Sequence[tuple[float, float]],
        *,
        rivals: Sequence[Circle],
        nearer: float,
        must: bool = False,
    ) -> tuple[float, float] | None:
        own = (*self.places[name], self.disc)
        return self.label(
            canvas,
            name,
            places,
            face="Bold" if self.scene.focus in {None, name} else "Regular",
            centre=True,
            room=_NAME,
            must=must,
            accept=lambda box: (
                self.circles.leave(box, own, by=nearer) and is_nearest(box, own, rivals, by=nearer)
            ),
        )

    @staticmethod
    def _half(name: str) -> float:
        """Half a name's width."""
        return width(clipped(name, "Bold", TINY, _NAME), "Bold") * TINY / 2

    @staticmethod
    def _is_clear(
        disc: tuple[float, float],
        label: tuple[float, float],
        away: float,
        discs: Sequence[tuple[float, float]],
    ) -> bool:
        """Whether a line from a disc to its name passes the middle of every other disc that far away."""
        (x, y), (to_x, to_y) = disc, label
        long = max(hypot(to_x - x, to_y - y), 1e-9)
        for px, py in discs:
            if hypot(px - x, py - y) < 1e-6:
                continue
            share = ((px - x) * (to_x - x) + (py - y) * (to_y - y)) / long**2
            share = min(max(share, 0.0), 1.0)
            off = hypot(x + share * (to_x - x) - px, y + share * (to_y - y) - py)
            if off < away:
                return False
        return True

    def _are_crossed(
        self, disc: tuple[float, float], labels: Sequence[tuple[float, float]]
    ) -> list[bool]:
        """Whether lines from a disc to places for its name would run over words or marks."""
        import shapely

        x, y = disc
        xs, ys = [x, *(at for at, _ in labels)], [y, *(at for _, at in labels)]
        near = dict.fromkeys(self.taken.near((min(xs), min(ys), max(xs), max(ys))))
        others = [box for box in near if not (box[0] <= x <= box[2] and box[1] <= y <= box[3])]
        if not others or not labels:
            return [False] * len(labels)
        lines = shapely.linestrings([[disc, label] for label in labels])
        boxes = shapely.box(*zip(*others, strict=True))
        found: list[bool] = shapely.intersects(lines[:, None], boxes).any(axis=1).tolist()
        return found

    def _thread(
        self, canvas: Any, disc: tuple[float, float], label: tuple[float, float], half: float
    ) -> None:
        """A thin line from a disc to its name if the name is away from it."""
        ahead = hypot(label[0] - disc[0], label[1] - disc[1])
        reach = min(half, abs(label[0] - disc[0])) / max(ahead, 1e-9)
        keep = max(
            1.0 - reach - 4.0 / max(ahead, 1e-9), 0.0
        )  # ends before the name, straight at it
        end = (disc[0] + keep * (label[0] - disc[0]), disc[1] + keep * (label[1] - disc[1]))
        far = hypot(end[0] - disc[0], end[1] - disc[1])
        share = min(self.disc / far, 1.0) if far else 1.0
        start = (disc[0] + share * (end[0] - disc[0]), disc[1] + share * (end[1] - disc[1]))
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.5)
        canvas.line(*start, *end)


def _around(x: float, y: float, radius: float, long: float) -> list[tuple[float, float]]:
    """Places for a name around a disc, farther and farther out, if those beside it are taken."""
    places = []
    for out in (8.0, 15.0, 22.0, 34.0, 48.0, 64.0):
        for k in range(24):
            turn = radians(15.0 * (k + 1))
            across = radius + out + abs(cos(turn)) * long / 2
            places.append((x + across * cos(turn), y + (radius + out) * sin(turn) - 3))
    return places
