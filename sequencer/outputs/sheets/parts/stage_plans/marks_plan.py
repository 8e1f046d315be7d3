"""The plan of all floor marks, with the two fixed points that they are measured from. Lengths in points."""

from typing import Any

from sequencer.outputs.sheets.page.free_room import Boxes
from sequencer.outputs.sheets.page.letters import width
from sequencer.outputs.sheets.page.paper import INK, PAPER, RULE, TINY
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.scene import Scene
from sequencer.outputs.sheets.parts.stage_plans.site_drawing import SiteDrawing
from sequencer.outputs.sheets.parts.stage_plans.spike_marks import fixed_points, spike_marks

_CROSS = 4.2  # half the size of a mark
_DISC = 7.0


class MarksPlan(SiteDrawing):
    """Crosses with numbers; threads from A and B to the first of them show how to measure."""

    def __init__(self, edition: Edition, *, tall: float) -> None:
        self.spikes = spike_marks(edition.staged)
        self.fixed = fixed_points(edition.staged)
        spots = {str(mark.number): (*mark.place, 0.0) for mark in self.spikes}
        scene = Scene(
            staged=edition.staged,
            spots=spots,
            crew=False,
            distances=False,
            turned=edition.turned,
            close=True,
        )
        super().__init__(scene, tall=tall)

    def draw(self) -> None:
        """Put it on the page."""
        canvas, venue = self.canv, self.scene.staged.show.venue
        canvas.begin_tag("Figure", "Floor marks from above")
        self.draw_ground(canvas)
        self.draw_stage(canvas, venue)
        points = {mark.number: self.at(*mark.place) for mark in self.spikes}
        corners = [self.at(*point.place) for point in self.fixed]
        halves = [*((at, _CROSS) for at in points.values()), *((at, _DISC) for at in corners)]
        self.taken = Boxes((x - h, y - h, x + h, y + h) for (x, y), h in halves)
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.6)
        canvas.setDash(2, 2)
        for corner in corners:
            canvas.line(*corner, *points[self.spikes[0].number])
        canvas.setDash()
        for number, (x, y) in points.items():
            self._mark(canvas, str(number), x, y)
        for point, (x, y) in zip(self.fixed, corners, strict=True):
            canvas.setFillColor(INK)
            canvas.setStrokeColor(PAPER)
            canvas.circle(x, y, _DISC, stroke=1, fill=1)
            words = TextSpan(point.letter, "Bold", TINY + 1, PAPER)
            one_line(canvas, x, y - 3.2, words, align="centre")
        self.draw_audience(canvas, venue)
        self.draw_frame(canvas)
        canvas.end_tag()

    def _mark(self, canvas: Any, number: str, x: float, y: float) -> None:
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(1.3)
        canvas.line(x - _CROSS, y - _CROSS, x + _CROSS, y + _CROSS)
        canvas.line(x - _CROSS, y + _CROSS, x + _CROSS, y - _CROSS)
        half = width(number, "Bold") * 9.0 / 2 + 1
        near = [
            (_CROSS + half + 1, -3.0),
            (-_CROSS - half - 1, -3.0),
            (0.0, _CROSS + 2),
            (0.0, -_CROSS - 9),
        ]
        places = [(x + dx, y + dy) for dx, dy in near]
        self.label(canvas, number, places, face="Bold", colour=INK, centre=True, must=True)
