"""What the site needs besides the stage: fire lane and gate, the spin-off zone, ways to the exits, rings round the fuel.

Stage frame [m]; lengths on paper in points. Everything is drawn under the people, in thin or dashed lines that differ
in grey as well; each name keeps clear of all others.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import hypot
from typing import Any

from sequencer.geometry.regions import Point
from sequencer.outputs.sheets.page.paper import HAIR, INK, PAPER, SOFT, WATCH
from sequencer.outputs.sheets.page.wording import metres
from sequencer.outputs.sheets.parts.stage_plans.ground import GroundDrawing
from sequencer.safety.site_ground.site_lines import fuel_rings, lane_outline, lane_words
from sequencer.safety.site_ground.ways_out import WayOut, ways_out
from sequencer.show.file_records.site import VenueRecord

_RING_WORDS = 170.0  # room for the words at a ring
_AROUND = ((0, -1), (0, 1), (-1, 0), (1, 0), (-0.7, -0.7), (0.7, -0.7), (-0.7, 0.7), (0.7, 0.7))
_HEAD = 5.0  # length of an arrow's head
_WAY = (5.0, 2.5)  # dashes of a way that counts
_NO_WAY = (1.2, 2.4)  # and of one that does not


class SiteDrawing(GroundDrawing):
    """The ground of a plan with lane, gate, zone, ways and rings."""

    def draw_lane_and_zone(self, canvas: Any, venue: VenueRecord) -> None:
        """The fire lane and the zone for soaking and spinning off, as areas."""
        canvas.saveState()
        self.clip(canvas)
        canvas.setLineWidth(0.8)
        if venue.fire_lane is not None:
            canvas.setFillColor(PAPER)
            canvas.setStrokeColor(INK)
            canvas.setDash(7, 3)
            canvas.drawPath(
                self.path(canvas, lane_outline(venue.fire_lane), close=True), stroke=1, fill=1
            )
        if venue.spin_off is not None:
            canvas.setStrokeColor(SOFT)
            canvas.setDash(1.5, 2)
            canvas.drawPath(self.path(canvas, venue.spin_off, close=True), stroke=1, fill=0)
        canvas.setDash()
        canvas.restoreState()

    def name_lane_and_zone(self, canvas: Any, venue: VenueRecord) -> None:
        """Their names, in them or beside them."""
        if venue.fire_lane is not None:
            words = lane_words(venue.fire_lane).replace(" m", "\u00a0m")
            self._name_area(canvas, lane_outline(venue.fire_lane), words)
        if venue.spin_off is not None:
            self._name_area(canvas, venue.spin_off, "spin-off zone")

    def draw_ways_out(self, canvas: Any) -> None:
        """The way to each exit, from the audience's edge on, with an arrow; dotted if the exit does not count."""
        canvas.saveState()
        self.clip(canvas)
        for out in ways_out(self.scene.staged):
            if len(out.way) > 1:
                self._way_out(canvas, out)
        canvas.restoreState()

    def draw_rings(self, canvas: Any, venue: VenueRecord) -> None:
        """Rings round the fuel: no flame and no audience inside them."""
        if venue.fuel_station is None:
            return
        canvas.saveState()
        self.clip(canvas)
        canvas.setStrokeColor(WATCH)
        canvas.setLineWidth(0.8)
        canvas.setDash(1, 2.5)
        for radius, _ in fuel_rings(self.scene.staged):
            canvas.circle(*self.at(*venue.fuel_station), radius * self.scale, stroke=1, fill=0)
        canvas.setDash()
        canvas.restoreState()

    def name_rings(self, canvas: Any, venue: VenueRecord) -> None:
        """What each ring means, on it."""
        if venue.fuel_station is None:
            return
        x, y = self.at(*venue.fuel_station)
        for radius, kept_out in fuel_rings(self.scene.staged):
            words = f"{metres(radius, decimals=2)}: {kept_out}"
            reach = radius * self.scale
            places = [(x + dx * reach, y + dy * reach - 3) for dx, dy in _AROUND]
            self.label(canvas, words, places, colour=WATCH, centre=True, room=_RING_WORDS)

    def _way_out(self, canvas: Any, out: WayOut) -> None:
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.0)
        canvas.setDash(*(_WAY if out.counted else _NO_WAY))
        canvas.drawPath(self.path(canvas, out.way, close=False), stroke=1, fill=0)
        canvas.setDash()
        points = [self.at(*point) for point in out.way]
        for a, b in pairwise(points):
            _arrow_head(canvas, a, b)

    def _name_area(self, canvas: Any, outline: Sequence[Point], words: str) -> None:
        """A name in an area, or beside it; in what is seen of it."""
        import shapely

        seen = shapely.Polygon(outline).intersection(shapely.box(*self._window))
        if seen.is_empty:
            return
        x, y = self.at(seen.centroid.x, seen.centroid.y)
        _, low, _, high = seen.bounds
        below, above = self.at(0.0, low)[1] - 10, self.at(0.0, high)[1] + 3
        self.label(canvas, words, [(x, y - 3), (x, below), (x, above)], colour=INK, centre=True)


def _arrow_head(canvas: Any, start: tuple[float, float], end: tuple[float, float]) -> None:
    """A head in the middle of a leg, where no mark hides it."""
    long = hypot(end[0] - start[0], end[1] - start[1])
    if long < 2 * _HEAD:
        return
    to = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    tip = ((start[0] + end[0]) / 2 + to[0] * _HEAD / 2, (start[1] + end[1]) / 2 + to[1] * _HEAD / 2)
    head = canvas.beginPath()
    head.moveTo(*tip)
    for sign in (1, -1):
        head.lineTo(
            tip[0] - to[0] * _HEAD + sign * to[1] * _HEAD / 2,
            tip[1] - to[1] * _HEAD - sign * to[0] * _HEAD / 2,
        )
    head.close()
    canvas.setFillColor(INK)
    canvas.setLineWidth(HAIR)
    canvas.drawPath(head, stroke=0, fill=1)
