"""The ground of a plan: stage, audience, scenery and frame, with labels that do not overlap.

Stage frame [m]: X to the audience's right is the page's right, Y upstage is up. Lengths on paper in points.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from math import hypot, inf
from typing import Any

from reportlab.lib.colors import Color
from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.free_room import Boxes, free_place, is_free
from sequencer.outputs.sheets.page.letters import Face, clipped, width
from sequencer.outputs.sheets.page.paper import HAIR, INK, MIST, PAPER, RULE, SOFT, TINY
from sequencer.outputs.sheets.page.prose import TextSpan, broken, one_line, set_line
from sequencer.outputs.sheets.page.wording import brief, metres
from sequencer.outputs.sheets.parts.stage_plans.scene import Scene, ShownArea, stage_outline, window
from sequencer.safety.site_ground.ways_out import ways_out
from sequencer.show.file_records.site import AudienceLine, VenueRecord

FOOT = 3  # lines under the drawing, at most
LEAST_LABEL = 24.0  # smallest space for words that must be shown
LABEL = 13.0  # height of the words above and below the drawing
_SAME = 1e-6  # between the middle of a mark and itself
Circle = tuple[float, float, float]  # middle and radius of a mark
MIST_DARK = Color(0.83, 0.845, 0.87)


def is_nearest(box: ShownArea, own: Circle, marks: Iterable[Circle], *, by: float) -> bool:
    """Whether a box is so much nearer to its own mark than to any other."""
    apart = _from_box(box, own) + by
    return all(
        apart < _from_box(box, mark)
        for mark in marks
        if hypot(mark[0] - own[0], mark[1] - own[1]) > _SAME
    )


def _from_box(box: ShownArea, mark: Circle) -> float:
    """Distance of a box from a mark's rim; negative if they overlap."""
    x = max(box[0] - mark[0], mark[0] - box[2], 0.0)
    y = max(box[1] - mark[1], mark[1] - box[3], 0.0)
    return hypot(x, y) - mark[2]


class Circles:
    """Marks of one size found by where they are, so that of many only those near a box are compared with it.

    Parameters
    ----------
    middles : iterable of (x, y)
    radius : float
    """

    def __init__(self, middles: Iterable[tuple[float, float]] = (), radius: float = 0.0) -> None:
        self._middles = Boxes((x, y, x, y) for x, y in middles)
        self._radius = radius

    def near(self, box: ShownArea) -> Iterator[Circle]:
        """Every mark whose middle is in a box, and some that are near it."""
        return ((x, y, self._radius) for x, y, _, _ in self._middles.near(box))

    def leave(self, box: ShownArea, own: Circle, *, by: float) -> bool:
        """Whether a box is so much nearer to its own mark than to any of these; see `is_nearest`."""
        out = max(_from_box(box, own) + by, 0.0) + self._radius + _SAME
        around = (box[0] - out, box[1] - out, box[2] + out, box[3] + out)
        return is_nearest(box, own, self.near(around), by=by)


class GroundDrawing(Flowable):  # type: ignore[misc]
    """Everything under the people on a plan; `taken` are the boxes that labels avoid."""

    def __init__(
        self, scene: Scene, *, tall: float, wide: float | None = None, scale: float | None = None
    ) -> None:
        super().__init__()
        self.scene, self._tall, self._wide, self._given = scene, tall, wide, scale
        self.taken = Boxes()
        self.circles = Circles()  # of the performers
        self.unnamed: list[Circle] = []  # of the crew, as long as no name stands beside it
        self.marks: list[Circle] = []  # of crew, exits and tools
        self.left_out = False  # whether somebody's or something's name found no room
        self._window = window(scene)

    @property
    def description(self) -> str:
        """What it shows, for comparison with another plan."""
        scene, show = self.scene, self.scene.staged.show
        reach = [(dancer.name, round(dancer.reach, 3)) for dancer in scene.staged.dancers]
        venue = show.venue
        ground: tuple[object, ...] = (venue.stage, venue.audience, venue.scenery)
        crew: list[object] = []
        if scene.crew:
            crew = [(post.name, post.post) for post in show.crew]
            ground += (venue.exits, venue.extinguishers, venue.fuel_station, venue.wind_from)
            ground += (venue.fire_lane, venue.gate, venue.spin_off)
            ground += (tuple(out.counted for out in ways_out(scene.staged)),)
        return f"[plan {scene.spots} {scene.ways} {scene.lit} {reach} {crew} {ground!r} {scene.landing} {scene.turned}"

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """As wide as the space, and as high as the stage at that scale."""
        room = min(room, self._wide or inf)
        low_x, low_y, high_x, high_y = self._window
        words = () if self.scene.bare else (TextSpan(self._audience_words(), "Bold", TINY, SOFT),)
        self.foot = broken(words, room)[:FOOT]
        inner = max(
            self._tall - self._below - self._above, 0.6 * self._tall
        )  # a long foot takes none of it
        self.scale = min(room / (high_x - low_x), inner / (high_y - low_y))
        if self._given is not None:
            self.scale = min(self.scale, self._given)
        self.width = room
        self.height = (high_y - low_y) * self.scale + self._below + self._above
        return self.width, self.height

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Paper point of a point of the stage."""
        low_x, low_y, high_x, high_y = self._window
        spare = self.width - (high_x - low_x) * self.scale
        if self.scene.turned:
            x, y = low_x + high_x - x, low_y + high_y - y
        return (x - low_x) * self.scale + spare / 2, (y - low_y) * self.scale + self._below

    @property
    def _below(self) -> float:
        """Height of the scale bar and of the audience's distances under the drawing."""
        return 1.0 if self.scene.bare else LABEL + 10.0 * len(self.foot)

    @property
    def _above(self) -> float:
        """Height of the names of the sides above it."""
        return 1.0 if self.scene.bare else LABEL

    def path(self, canvas: Any, points: Sequence[tuple[float, float]], *, close: bool) -> Any:
        """A path through points of the stage."""
        path = canvas.beginPath()
        path.moveTo(*self.at(*points[0]))
        for point in points[1:]:
            path.lineTo(*self.at(*point))
        if close:
            path.close()
        return path

    def area(self) -> ShownArea:
        """Left, low, width and height of the drawing."""
        low_x, low_y, high_x, high_y = self._window
        corner = (high_x, high_y) if self.scene.turned else (low_x, low_y)
        x, y = self.at(*corner)
        return x, y, (high_x - low_x) * self.scale, (high_y - low_y) * self.scale

    def clip(self, canvas: Any) -> None:
        """Keep to the drawing from now on."""
        clip = canvas.beginPath()
        clip.rect(*self.area())
        canvas.clipPath(clip, stroke=0, fill=0)

    def draw_ground(self, canvas: Any) -> None:
        """The ground around the stage."""
        canvas.setFillColor(MIST)
        canvas.rect(*self.area(), stroke=0, fill=1)

    def draw_stage(self, canvas: Any, venue: VenueRecord) -> None:
        """Stage with holes, and its centre line."""
        outline = stage_outline(self.scene.staged)
        canvas.setFillColor(PAPER)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.4)
        canvas.drawPath(self.path(canvas, outline, close=True), stroke=1, fill=1)
        for hole in venue.stage.holes:
            canvas.setFillColor(MIST)
            canvas.drawPath(self.path(canvas, hole, close=True), stroke=1, fill=1)
        ys = [y for _, y in outline]
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(HAIR)
        canvas.setDash(2, 3)
        canvas.line(*self.at(0, min(ys)), *self.at(0, max(ys)))
        canvas.setDash()

    def draw_audience(self, canvas: Any, venue: VenueRecord) -> None:
        """Every edge that the audience must not cross, with its name."""
        canvas.saveState()
        self.clip(canvas)
        for edge in venue.audience:
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(2.6)
            canvas.drawPath(self.path(canvas, edge.line, close=False), stroke=1, fill=0)
            canvas.setLineWidth(0.8)
            for (x0, y0), (x1, y1) in pairwise(edge.line):
                a, b = self.at(x0, y0), self.at(x1, y1)
                long = hypot(b[0] - a[0], b[1] - a[1])
                for k in range(int(long // 7) + 1):
                    t = k * 7 / long if long else 0.0
                    x, y = a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])
                    canvas.line(x, y, x - 2.5, y + (5 if self.scene.turned else -5))
        canvas.restoreState()
        for edge in () if self.scene.bare else venue.audience:
            self._name_audience(canvas, edge)

    def _name_audience(self, canvas: Any, edge: AudienceLine) -> None:
        """The name of an edge beside the line; at the frame if the edge is too far away."""
        import shapely

        line, view = shapely.LineString(edge.line), shapely.box(*self._window)
        words = edge.name.upper()
        seen = line.intersection(view)
        if seen.is_empty:
            words += f", {metres(line.distance(view), decimals=0)} further"
            x, y, _ = self.pinned(*line.interpolate(line.project(view.centroid)).coords[0])
            ends = [(x, y), (x, y)]
        else:
            longest = max(getattr(seen, "geoms", (seen,)), key=lambda part: part.length)
            ends = [self.at(*longest.coords[0]), self.at(*longest.coords[-1])]
        half = width(clipped(words, "Bold", TINY, self.width - 4), "Bold") * TINY / 2
        (x0, y0), (x1, y1) = ends
        flat = abs(x1 - x0) >= abs(y1 - y0)
        left, low, wide, tall = self.area()
        places = []
        for share in (0.5, 0.35, 0.65, 0.2, 0.8):
            x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
            sides = (
                ((0, 5), (0, -16), (0, 17)) if flat else ((-half - 7, -3), (half + 7, -3), (0, -16))
            )
            for dx, dy in sides:
                inner_x = min(max(x + dx, left + half + 2), left + wide - half - 2)
                places.append((inner_x, min(max(y + dy, low + 3), low + tall - 8)))
        self.label(
            canvas,
            words,
            places,
            face="Bold",
            colour=INK,
            centre=True,
            room=wide - 4,
            must=bool(seen.is_empty),
            shorten=not seen.is_empty,
        )

    def draw_scenery(self, canvas: Any, venue: VenueRecord) -> None:
        """Scenery; anything combustible is hatched."""
        canvas.saveState()
        self.clip(canvas)
        for thing in venue.scenery:
            path = self.path(canvas, thing.outline, close=True)
            canvas.setFillColor(MIST_DARK)
            canvas.setStrokeColor(SOFT)
            canvas.setLineWidth(0.8)
            canvas.drawPath(path, stroke=1, fill=1)
            if thing.combustible:
                self._hatch(canvas, thing.outline)
        canvas.restoreState()
        for thing in venue.scenery:
            xs, ys = [p[0] for p in thing.outline], [p[1] for p in thing.outline]
            x, y = self.at((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
            top = self.at(0, max(ys))[1] + 2
            low = self.at(0, min(ys))[1] - 11
            words = thing.name if thing.combustible else f"{thing.name} (non-combustible)"
            self.label(canvas, words, [(x, low), (x, top), (x, y - 4)], centre=True)

    def _hatch(self, canvas: Any, outline: Sequence[tuple[float, float]]) -> None:
        canvas.saveState()
        canvas.clipPath(self.path(canvas, outline, close=True), stroke=0, fill=0)
        points = [self.at(*p) for p in outline]
        x0, x1 = min(p[0] for p in points), max(p[0] for p in points)
        y0, y1 = min(p[1] for p in points), max(p[1] for p in points)
        canvas.setStrokeColor(SOFT)
        canvas.setLineWidth(0.5)
        at = x0 - (y1 - y0)
        while at < x1:
            canvas.line(at, y0, at + (y1 - y0), y1)
            at += 4.0
        canvas.restoreState()

    def draw_frame(self, canvas: Any) -> None:
        """Frame, scale bar and the names of the sides."""
        left, low, wide, tall = self.area()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(HAIR)
        canvas.rect(left, low, wide, tall, stroke=1, fill=0)
        if self.scene.bare:
            return
        turned = self.scene.turned
        middle = "AUDIENCE" if turned else "UPSTAGE"
        middle += " · rest: see list" if self.left_out else ""
        names = ((middle, "Bold"), ("stage right", "Regular"), ("stage left", "Regular"))
        if sum(width(words, face) * TINY for words, face in names) + 24 < wide:
            one_line(
                canvas,
                left + wide / 2,
                low + tall + 4,
                TextSpan(middle, "Bold", TINY, SOFT),
                align="centre",
            )
        sides = ("stage left", "stage right") if turned else ("stage right", "stage left")
        if sum(width(words, "Regular") * TINY for words in sides) + 8 > wide:
            sides = ("left", "right") if turned else ("right", "left")
        one_line(canvas, left, low + tall + 4, TextSpan(sides[0], "Regular", TINY, SOFT))
        one_line(
            canvas,
            left + wide,
            low + tall + 4,
            TextSpan(sides[1], "Regular", TINY, SOFT),
            align="right",
        )
        metre = next((m for m in (1, 2, 5, 10, 20, 50, 100) if m * self.scale >= 28), 100)
        base = low - 9.5
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.0)
        for k in range(2):
            canvas.setFillColor(INK if k == 0 else PAPER)
            canvas.rect(
                left + k * metre * self.scale / 2,
                base + 1,
                metre * self.scale / 2,
                3,
                stroke=1,
                fill=1,
            )
        one_line(
            canvas,
            left + metre * self.scale + 4,
            base,
            TextSpan(f"{metre}\u00a0m", "Regular", TINY, INK),
        )
        for k, line in enumerate(self.foot, start=1):
            at = max(min(left, self.width - line.width), 0.0)
            set_line(canvas, line, at, base - 10.0 * k)

    def _audience_words(self) -> str:
        """Distance of every edge of the audience from the stage."""
        import shapely

        stage = shapely.Polygon(stage_outline(self.scene.staged))
        distances = []
        for edge in self.scene.staged.show.venue.audience:
            far = shapely.LineString(edge.line).distance(stage)
            name = brief(edge.name, most=28)
            distances.append(f"{name} {metres(far)}" if far > 0.05 else f"{name} at the stage")
        return f"From the stage: {', '.join(distances)}"

    def label(
        self,
        canvas: Any,
        words: str,
        places: Sequence[tuple[float, float]],
        *,
        face: Face = "Regular",
        colour: Color = INK,
        centre: bool = False,
        room: float = 130.0,
        must: bool = False,
        shorten: bool = False,
        accept: Callable[[ShownArea], bool] | None = None,
    ) -> tuple[float, float] | None:
        """Write words at the first free place, and return that place.

        A place that is free is used only if it is one to `accept`.

        If all are taken nothing is drawn, because the list has every name; but words that `must` be read go to the
        nearest free space, and words with a `shorter` form stay in place. Nothing is drawn over anything else.
        """
        words = clipped(words, face, TINY, min(room, self.width - 4))
        long = width(words, face) * TINY
        left, low, wide, tall = self.area()
        boxes = []
        for x, y in places:
            start = x - long / 2 if centre else x
            boxes.append((start - 1, y - 2.5, start + long + 1, y + 6.5))
        area = (left, low, left + wide, low + tall)
        chosen = next(
            (
                k
                for k, box in enumerate(boxes)
                if is_free(box, area, self.taken) and (accept is None or accept(box))
            ),
            None,
        )
        if chosen is None and shorten and room > LEAST_LABEL:
            return self.label(
                canvas,
                words,
                places,
                face=face,
                colour=colour,
                centre=centre,
                room=room / 2,
                shorten=True,
                accept=accept,
            )
        if chosen is None and must:
            x, y = places[0]
            best = (x if centre else x + long / 2, y + 2)
            middle = free_place(best, (long + 2, 9), area, self.taken, accept=accept)
            if middle is not None:
                x, y = middle
                boxes.append((x - long / 2 - 1, y - 4.5, x + long / 2 + 1, y + 4.5))
                places = [*places, (x if centre else x - long / 2, y - 2)]
                chosen = len(boxes) - 1
        if chosen is None:
            self.left_out |= any(is_free(box, area, ()) for box in boxes)
            return None
        box, (_, y) = boxes[chosen], places[chosen]
        canvas.setFillColor(PAPER)
        canvas.roundRect(box[0] - 1, box[1], long + 4, 9.5, 2, stroke=0, fill=1)
        one_line(canvas, box[0] + 1, y, TextSpan(words, face, TINY, colour))
        self.taken.append(box)
        return places[chosen]

    def free_box(
        self, x: float, y: float, half: float, others: Sequence[ShownArea]
    ) -> ShownArea | None:
        """The nearest space not taken by another mark; None if there is none."""
        left, low, wide, tall = self.area()
        area = (left, low, left + wide, low + tall)
        middle = free_place((x, y), (2 * half, 14.0), area, others)
        if middle is None:
            return None
        return (middle[0] - half, middle[1] - 7, middle[0] + half, middle[1] + 7)

    def draw_leader(self, x: float, y: float, to_x: float, to_y: float) -> None:
        """A thin line from a true place to its mark."""
        canvas = self.canv
        canvas.setStrokeColor(INK)
        canvas.setFillColor(INK)
        canvas.setLineWidth(0.7)
        canvas.line(x, y, to_x, to_y)
        canvas.circle(x, y, 1.5, stroke=0, fill=1)

    def pinned(self, x: float, y: float) -> tuple[float, float, float]:
        """Paper point of a thing, at the edge if it is outside, and how far outside [m]."""
        low_x, low_y, high_x, high_y = self._window
        inset = 9.0 / self.scale
        own_x = min(max(x, low_x + inset), high_x - inset)
        own_y = min(max(y, low_y + inset), high_y - inset)
        far = hypot(x - own_x, y - own_y)
        return *self.at(own_x, own_y), far if far > inset else 0.0
