"""The stage from above, to scale: who stands where, what is combustible, who watches, and the distances kept.

Stage frame [m]: X to the audience's right is the page's right, Y upstage is up. Lengths on paper in points.
"""

from collections.abc import Callable, Sequence
from functools import cached_property
from itertools import combinations
from math import cos, hypot, inf, radians, sin
from typing import Any

from sequencer.outputs.sheets.page.free_room import Boxes, free_place, is_free
from sequencer.outputs.sheets.page.letters import clipped, width
from sequencer.outputs.sheets.page.paper import FLAME, INK, PAPER, RULE, SOFT, TINY, WATCH
from sequencer.outputs.sheets.page.pictograms import draw_sign, flame_mark
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.page.wording import metres
from sequencer.outputs.sheets.parts.ground import Circle, Circles, is_nearest
from sequencer.outputs.sheets.parts.scene import ShownArea, closest_spots, once_shown, way_length
from sequencer.outputs.sheets.parts.site_drawing import SiteDrawing
from sequencer.outputs.way_marks import Point, start_mark, way_arrow
from sequencer.safety.ways_out import ways_out
from sequencer.show.site import VenueRecord

_WIND = 22.0  # length of the wind's arrow
_PLAINLY, _ON_THREAD = 1.0, 0.2  # by how much a name is nearer to its own disc than to another's
_NAME = 92.0  # room for a performer's name
Draw = Callable[[Any, float, float], None]  # canvas, and the position of its middle [pt]
_Walk = tuple[Point, tuple[Point, Point]]  # its start; its arrow's middle and direction, on paper
_Mark = tuple[ShownArea, str, Draw, float]  # box, words, drawing, and half the width


class StagePlan(SiteDrawing):
    """The drawing of a scene, as large as the space allows."""

    def draw(self) -> None:
        """Put the plan on the page."""
        canvas, scene = self.canv, self.scene
        begin = getattr(canvas, "begin_tag", None)
        if begin is not None:
            side = "top" if scene.turned else "bottom"
            begin("Figure", f"Stage plan from above, audience at the {side}")
        venue = scene.staged.show.venue
        self.draw_ground(canvas)
        if scene.crew:
            self.draw_lane_and_zone(canvas, venue)
        self.draw_stage(canvas, venue)
        self.places, hidden = once_shown(scene, ("discs", self._laid), self._placed)
        self.left_out |= hidden
        half = self.disc + 1
        discs = [(x - half, y - half, x + half, y + half) for x, y in self.places.values()]
        self.marks, self.unnamed = [], []
        marks = self._safety_marks(venue, discs) if scene.crew else []
        self.taken = Boxes((*discs, *(box for box, _, _, _ in marks)))
        self._landing(canvas)
        self.circles = Circles(self.places.values(), self.disc)
        self.draw_audience(canvas, venue)
        self.draw_scenery(canvas, venue)
        if scene.crew:
            self.draw_ways_out(canvas)
            self.draw_rings(canvas, venue)
        self._name_landing(canvas)  # over all lines
        self._people(canvas)
        for box, _, draw, _ in marks:
            draw(canvas, (box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
        self._names(canvas, marks)
        if scene.crew:
            self._name_site(canvas, venue)
        self.draw_frame(canvas)
        if begin is not None:
            canvas.end_tag()

    def _landing(self, canvas: Any) -> None:
        """The area where a head that comes off may land, in long dashes."""
        canvas.saveState()
        self.clip(canvas)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.0)
        canvas.setDash(8, 3)
        for ring in self.scene.landing:
            canvas.drawPath(self.path(canvas, ring, close=True), stroke=1, fill=0)
        canvas.restoreState()

    def _name_landing(self, canvas: Any) -> None:
        for ring in self.scene.landing:
            x, y = self.at(*max(ring, key=lambda point: point[1]))
            places = [(x, y + 3), (x, y - 11), (x - 60, y - 11), (x + 60, y - 11)]
            self.label(
                canvas, "let-go range", places, face="Regular", colour=INK, centre=True, room=70.0
            )

    def _people(self, canvas: Any) -> None:
        """Performers with their walks and reaches, and the distances between them."""
        self._paths(canvas)
        self._reaches(canvas)
        if self.scene.distances:
            self._closest(canvas)
        if self.scene.dimensions:
            self._to_audience(canvas)
        self._performers(canvas)

    def _name_site(self, canvas: Any, venue: VenueRecord) -> None:
        """Names of lane, zone and rings, and the wind."""
        self.name_lane_and_zone(canvas, venue)
        self.name_rings(canvas, venue)
        if venue.wind_from is not None:
            self._wind(canvas, venue.wind_from)

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

    def _names(self, canvas: Any, marks: Sequence[_Mark]) -> None:
        """Performers' names at their discs, then the crew's, then the rest of the performers' farther off on a thread."""
        if self.scene.bare:
            return
        later = [name for name in self.places if not self._name_at_disc(canvas, name)]
        for box, words, _, away in marks:
            middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
            if self._beside(canvas, *middle, away, words):
                self.unnamed = [mark for mark in self.unnamed if mark[:2] != middle]
        for name in later:
            self._name_on_thread(canvas, name)

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
        found = self._write_name(canvas, name, near, rivals=(), nearer=_PLAINLY)
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

    @property
    def disc(self) -> float:
        """Radius of a performer's disc [pt]."""
        return max(6.2, min(8.5, self._apart * self.scale / 2 - 0.4))

    @cached_property
    def _apart(self) -> float:
        """How far the two nearest spots are apart [m]; kept, since every place that is tried for a name asks for it."""
        found = closest_spots(self.scene)
        return found if found < inf else 99.0

    def _safety_marks(self, venue: VenueRecord, discs: Sequence[ShownArea]) -> list[_Mark]:
        """Position, words and drawing of everything that the crew looks for; nothing overlaps."""
        marks_to_place: list[tuple[tuple[float, float], str, Draw, float]] = []
        for post in self.scene.staged.show.crew:
            number = self.scene.staged.post_number(post.name)
            marks_to_place.append(
                (
                    post.post,
                    self.scene.staged.taken_by(post.name),
                    _badge(f"S{number}"),
                    8.5 if number > 9 else 7.5,
                )
            )
        marks_to_place += [
            (
                out.at,
                f"{out.name}{'' if out.counted else ', does not count'}",
                _sign("E001", 12),
                6.5,
            )
            for out in ways_out(self.scene.staged)
        ]
        marks_to_place += [(e.at, "", _sign("F001", 12), 6.5) for e in venue.extinguishers]
        if venue.fuel_station is not None:
            marks_to_place.append((venue.fuel_station, "fuel station", _sign("W021", 14), 7.5))
        if venue.gate is not None:
            marks_to_place.append((venue.gate, "gate", _badge("G"), 7.5))
        placed: list[_Mark] = []
        crew = len(self.scene.staged.show.crew)
        for number, (at, name, draw, half) in enumerate(marks_to_place):
            x, y, out = self.pinned(*at)
            words = f"{name or 'extinguisher'}{_far(out)}" if name or out else ""
            box = self.free_box(x, y, half, [*discs, *(other for other, _, _, _ in placed)])
            if box is None:
                self.left_out = True
                continue
            moved = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
            if not out and hypot(moved[0] - x, moved[1] - y) > 1:
                self.draw_leader(x, y, *moved)
            placed.append((box, words, draw, half))
            self.marks.append((*moved, half))
            if number < crew:
                self.unnamed.append((*moved, half))
        return placed

    def _beside(self, canvas: Any, x: float, y: float, away: float, words: str) -> bool:
        """A mark's words beside it, if there is room for them."""
        if not words:
            return False
        long = width(clipped(words, "Regular", TINY, 110.0), "Regular") * TINY
        reach, own = away + 2 + long / 2, (x, y, away)
        found = self.label(
            canvas,
            words,
            [
                (x + reach, y - 3),
                (x - reach, y - 3),
                (x, y - away - 10),
                (x, y + away + 2),
                (x + away - long / 2, y - away - 10),
                (x - away + long / 2, y - away - 10),
                (x + away - long / 2, y + away + 2),
                (x - away + long / 2, y + away + 2),
            ],
            centre=True,
            room=110.0,
            accept=lambda box: (
                self.circles.leave(box, own, by=_PLAINLY)
                and is_nearest(box, own, self.marks, by=_PLAINLY)
            ),
        )
        return found is not None

    def _wind(self, canvas: Any, degrees: float) -> None:
        """An arrow in the wind's direction, if there is room for it; the words under the plan give it too."""
        left, low, wide, tall = self.area()
        half = _WIND / 2
        start = (left + half + 2, low + tall - half - 8)
        found = free_place(
            start, (_WIND, _WIND + 12), (left, low, left + wide, low + tall), self.taken
        )
        if found is None:
            return
        x, y = found[0], found[1] + 5
        self.taken.append((x - half, y - half - 11, x + half, y + half + 1))
        degrees += 180.0 if self.scene.turned else 0.0
        to = (-sin(radians(degrees)), cos(radians(degrees)))
        side = (to[1], -to[0])
        canvas.setStrokeColor(INK)
        canvas.setFillColor(INK)
        canvas.setLineWidth(1.6)
        reach = half - 1
        canvas.line(
            x - to[0] * reach, y - to[1] * reach, x + to[0] * (reach - 5), y + to[1] * (reach - 5)
        )
        head = canvas.beginPath()
        head.moveTo(x + to[0] * reach, y + to[1] * reach)
        for sign in (1, -1):
            head.lineTo(
                x + to[0] * (reach - 7) + sign * side[0] * 4,
                y + to[1] * (reach - 7) + sign * side[1] * 4,
            )
        head.close()
        canvas.drawPath(head, stroke=0, fill=1)
        one_line(canvas, x, y - half - 8, TextSpan("wind", "Regular", TINY, INK), align="centre")

    def _closest(self, canvas: Any) -> None:
        pairs = list(combinations(self.scene.spots.items(), 2))
        if not pairs:
            return
        (_, a), (_, b) = min(
            pairs,
            key=lambda pair: hypot(pair[0][1][0] - pair[1][1][0], pair[0][1][1] - pair[1][1][1]),
        )
        self._dimension(canvas, (a[0], a[1]), (b[0], b[1]))

    def _to_audience(self, canvas: Any) -> None:
        import shapely

        edges = [shapely.LineString(edge.line) for edge in self.scene.staged.show.venue.audience]
        best = min(
            (
                (shapely.Point(x, y).distance(edge), (x, y), edge)
                for x, y, _ in self.scene.spots.values()
                for edge in edges
            ),
            key=lambda item: item[0],
            default=None,
        )
        if best is not None:
            _, spot, edge = best
            near = edge.interpolate(edge.project(shapely.Point(spot)))
            low_x, low_y, high_x, high_y = self._window
            if (
                low_x <= near.x <= high_x and low_y <= near.y <= high_y
            ):  # otherwise given in words below
                self._dimension(canvas, spot, (near.x, near.y))

    def _dimension(self, canvas: Any, a: tuple[float, float], b: tuple[float, float]) -> None:
        long = hypot(a[0] - b[0], a[1] - b[1])
        p, q = self.at(*a), self.at(*b)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.9)
        canvas.line(*p, *q)
        words = metres(long, decimals=2)
        wide = width(words, "Bold") * TINY
        x, y = (p[0] + q[0]) / 2, (p[1] + q[1]) / 2
        on_paper = hypot(q[0] - p[0], q[1] - p[1])
        left, low, across_paper, tall = self.area()
        first = [(x, y)]
        if (
            0 < on_paper < wide + 2 * self.disc + 10
        ):  # no room between the discs, so beside the line
            across = ((p[1] - q[1]) / on_paper, (q[0] - p[0]) / on_paper)
            away = (self.disc + 9) * (1 if across[1] >= 0 else -1)
            first = [(x + across[0] * far, y + across[1] * far) for far in (away, -away)]
        else:
            first += [
                (p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])) for t in (0.4, 0.6, 0.3, 0.7)
            ]
        size = (wide + 6, 11.0)
        area = (left, low, left + across_paper, low + tall)
        found = next(
            (
                at
                for at in first
                if is_free(
                    (at[0] - size[0] / 2, at[1] - 5.5, at[0] + size[0] / 2, at[1] + 5.5),
                    area,
                    self.taken,
                )
            ),
            None,
        )
        if found is None:
            return  # over somebody's number it would be taken for theirs
        x, y = found
        canvas.setFillColor(PAPER)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.6)
        canvas.roundRect(x - wide / 2 - 3, y - 5.5, wide + 6, 11, 2, stroke=1, fill=1)
        one_line(canvas, x, y - 2.9, TextSpan(words, "Bold", TINY, INK), align="centre")
        self.taken.append((x - wide / 2 - 3, y - 5.5, x + wide / 2 + 3, y + 5.5))


def _around(x: float, y: float, radius: float, long: float) -> list[tuple[float, float]]:
    """Places for a name around a disc, farther and farther out, if those beside it are taken."""
    places = []
    for out in (8.0, 15.0, 22.0, 34.0, 48.0, 64.0):
        for k in range(24):
            turn = radians(15.0 * (k + 1))
            across = radius + out + abs(cos(turn)) * long / 2
            places.append((x + across * cos(turn), y + (radius + out) * sin(turn) - 3))
    return places


def _badge(words: str) -> Draw:
    half = 7.0 + 0.75 * (len(words) > 2)

    def draw(canvas: Any, x: float, y: float) -> None:
        canvas.setFillColor(WATCH)
        canvas.setStrokeColor(PAPER)
        canvas.setLineWidth(0.8)
        canvas.roundRect(x - half, y - 6.5, 2 * half, 13, 2, stroke=1, fill=1)
        one_line(canvas, x, y - 3, TextSpan(words, "Bold", TINY, PAPER), align="centre")

    return draw


def _sign(code: str, size: float) -> Draw:
    def draw(canvas: Any, x: float, y: float) -> None:
        draw_sign(canvas, code, x - size / 2, y - size / 2, size)

    return draw


def _far(out: float) -> str:
    return f", {out:.0f}\u00a0m further" if out else ""
