"""The stage from above, to scale: who stands where, what is combustible, who watches, and the distances kept.

Stage frame [m]: X to the audience's right is the page's right, Y upstage is up. Lengths on paper in points.
"""

from collections.abc import Callable, Sequence
from itertools import combinations
from math import cos, hypot, radians, sin
from typing import Any

from sequencer.outputs.sheets.page.free_room import Boxes, free_place, is_free
from sequencer.outputs.sheets.page.letters import clipped, width
from sequencer.outputs.sheets.page.paper import INK, PAPER, TINY, WATCH
from sequencer.outputs.sheets.page.pictograms import draw_sign
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.page.wording import metres
from sequencer.outputs.sheets.parts.stage_plans.ground import Circles, is_nearest
from sequencer.outputs.sheets.parts.stage_plans.people_drawing import PLAINLY, PeopleDrawing
from sequencer.outputs.sheets.parts.stage_plans.scene import ShownArea, once_shown
from sequencer.safety.site_ground.ways_out import ways_out
from sequencer.show.file_records.site import VenueRecord

_WIND = 22.0  # length of the wind's arrow
Draw = Callable[[Any, float, float], None]  # canvas, and the position of its middle [pt]
_Mark = tuple[ShownArea, str, Draw, float]  # box, words, drawing, and half the width


class StagePlan(PeopleDrawing):
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
                self.circles.leave(box, own, by=PLAINLY)
                and is_nearest(box, own, self.marks, by=PLAINLY)
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
