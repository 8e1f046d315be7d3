"""A build step as a drawing on a sheet. Lengths in points."""

from collections.abc import Sequence
from typing import Any

from reportlab.lib.colors import Color, HexColor
from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.paper import INK, PAPER, RULE, SOFT
from sequencer.outputs.station_picture import Stroke, Tone

_TONES: dict[Tone, Color] = {
    "ink": INK, "soft": SOFT, "arm": HexColor("#8B857B"), "body": HexColor("#E4E2DD"),
}  # fmt: skip


class StepMark(Flowable):  # type: ignore[misc]
    """Strokes in a square frame; `seen` is the middle and half the side of what it shows [m]."""

    def __init__(
        self,
        strokes: Sequence[Stroke],
        seen: tuple[float, float, float],
        *,
        side: float,
        words: str,
    ) -> None:
        super().__init__()
        self.strokes, self.seen, self.side, self.words = strokes, seen, side, words

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Its square."""
        self.width = self.height = self.side
        return self.side, self.side

    def draw(self) -> None:
        """Put it on the page."""
        canvas = self.canv
        canvas.begin_tag("Figure", self.words)
        canvas.saveState()
        frame = canvas.beginPath()
        frame.rect(0, 0, self.side, self.side)
        canvas.clipPath(frame, stroke=0, fill=0)
        canvas.setLineCap(1)
        canvas.setLineJoin(1)
        for stroke in self.strokes:
            self._stroke(canvas, stroke)
        canvas.restoreState()
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.rect(0, 0, self.side, self.side, stroke=1, fill=0)
        canvas.end_tag()

    def _stroke(self, canvas: Any, stroke: Stroke) -> None:
        x, y, half = self.seen
        scale = self.side / (2 * half)
        points = (stroke.points - [x - half, y - half]) * scale
        ink = _TONES[stroke.tone]
        canvas.setStrokeColor(ink)
        canvas.setFillColor(ink if stroke.kind != "ring" else PAPER)
        canvas.setLineWidth(max(0.4, stroke.width * self.side / 78.0))
        if stroke.kind in {"dot", "ring"}:
            canvas.setLineWidth(1.0)
            canvas.circle(
                *points[0], stroke.width * scale, stroke=int(stroke.kind == "ring"), fill=1
            )
            return
        path = canvas.beginPath()
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
        if stroke.kind == "fill":
            path.close()
        canvas.drawPath(path, stroke=int(stroke.kind == "line"), fill=int(stroke.kind == "fill"))
