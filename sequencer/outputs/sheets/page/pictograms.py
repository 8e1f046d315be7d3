"""Safety signs with their ISO 7010 meanings, redrawn from plain shapes.

Shapes and colours show the kind (ISO 3864): red square for fire equipment, green for a safe condition, red
ring and bar for a prohibition, yellow triangle for a warning, blue disc for a mandatory action. Each can be
recognised by its shape alone, so that it still works in grey print.
"""

from collections.abc import Callable
from math import cos, pi, sin, sqrt
from typing import Any

from reportlab.lib.colors import Color, HexColor, black, white
from reportlab.platypus import Flowable

# screen values near RAL 3001, 1003, 5005 and 6032 (from memory)
RED, YELLOW, BLUE, GREEN = (HexColor(c) for c in ("#9B111E", "#F9A800", "#005387", "#00694B"))

Canvas = Any
Points = tuple[tuple[float, float], ...]


def draw_sign(canvas: Canvas, code: str, x: float, y: float, size: float) -> None:
    """Draw one sign with its lower left corner at (x, y) [pt].

    Raises
    ------
    ValueError
        If the code is none of `CODES`.
    """
    if code not in _SIGNS:
        raise ValueError(f"code must be one of {', '.join(_SIGNS)}, got {code!r}")
    ground, symbol = _SIGNS[code]
    canvas.saveState()
    canvas.translate(x, y)
    canvas.scale(size / 100.0, size / 100.0)
    canvas.setLineJoin(1)
    canvas.setLineCap(1)
    ground(canvas)
    symbol(canvas)
    if ground is _prohibition:
        _bar(canvas)
    canvas.restoreState()


class SignMark(Flowable):  # type: ignore[misc]
    """A sign that stands in a table or between paragraphs."""

    def __init__(self, code: str, size: float) -> None:
        super().__init__()
        self.code, self.size = code, size

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Its square."""
        return self.size, self.size

    def draw(self) -> None:
        """Put it on the page."""
        draw_sign(self.canv, self.code, 0, 0, self.size)


def _poly(canvas: Canvas, points: Points, fill: Color | None = white, stroke: float = 0.0) -> None:
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    path.close()
    if fill is not None:
        canvas.setFillColor(fill)
    if stroke:
        canvas.setLineWidth(stroke)
    canvas.drawPath(path, stroke=int(stroke > 0), fill=int(fill is not None))


def _square(colour: Color) -> Callable[[Canvas], None]:
    def ground(canvas: Canvas) -> None:
        canvas.setFillColor(colour)
        canvas.roundRect(0, 0, 100, 100, 5, stroke=0, fill=1)
        canvas.setStrokeColor(white)
        canvas.setLineWidth(2.5)
        canvas.roundRect(4, 4, 92, 92, 4, stroke=1, fill=0)

    return ground


def _warning(canvas: Canvas) -> None:
    tall = 100 * sqrt(3) / 2
    canvas.setStrokeColor(black)
    _poly(canvas, ((4, 6), (96, 6), (50, 6 + tall * 0.93)), YELLOW, 7)


def _mandatory(canvas: Canvas) -> None:
    canvas.setFillColor(BLUE)
    canvas.circle(50, 50, 50, stroke=0, fill=1)


def _prohibition(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.circle(50, 50, 50, stroke=0, fill=1)


def _bar(canvas: Canvas) -> None:
    canvas.setStrokeColor(RED)
    canvas.setLineWidth(10)
    canvas.circle(50, 50, 45, stroke=1, fill=0)
    reach = 45 / sqrt(2)
    canvas.line(50 - reach, 50 + reach, 50 + reach, 50 - reach)


def _flames(canvas: Canvas, x: float, y: float, size: float, colour: Color) -> None:
    """One flame, `size` wide, its foot at (x, y)."""
    path = canvas.beginPath()
    s = size / 100
    path.moveTo(x, y)
    path.curveTo(x - 55 * s, y + 5 * s, x - 55 * s, y + 60 * s, x - 14 * s, y + 88 * s)
    path.curveTo(x - 18 * s, y + 70 * s, x - 8 * s, y + 62 * s, x - 2 * s, y + 58 * s)
    path.curveTo(x + 2 * s, y + 92 * s, x + 10 * s, y + 112 * s, x + 22 * s, y + 128 * s)
    path.curveTo(x + 16 * s, y + 96 * s, x + 60 * s, y + 62 * s, x + 48 * s, y + 26 * s)
    path.curveTo(x + 42 * s, y + 8 * s, x + 24 * s, y, x, y)
    path.close()
    canvas.setFillColor(colour)
    canvas.drawPath(path, stroke=0, fill=1)


def _extinguisher(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.roundRect(44, 14, 26, 54, 7, stroke=0, fill=1)
    canvas.rect(52, 66, 10, 10, stroke=0, fill=1)
    canvas.setStrokeColor(white)
    canvas.setLineWidth(5)
    canvas.line(46, 78, 72, 84)
    path = canvas.beginPath()
    path.moveTo(54, 77)
    path.curveTo(28, 80, 34, 58, 34, 34)
    canvas.drawPath(path, stroke=1, fill=0)
    _flames(canvas, 20, 14, 20, white)


def _blanket(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.rect(16, 60, 40, 24, stroke=0, fill=1)
    _poly(canvas, ((20, 56), (52, 56), (58, 20), (48, 27), (36, 16), (26, 26), (14, 20)))
    _flames(canvas, 76, 18, 30, white)


def _exit(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.rect(56, 14, 30, 72, stroke=0, fill=1)
    canvas.setFillColor(white)
    canvas.circle(34, 72, 8, stroke=0, fill=1)
    canvas.setStrokeColor(white)
    canvas.setLineWidth(8)
    canvas.line(33, 60, 38, 40)
    canvas.line(38, 40, 50, 28)
    canvas.line(38, 40, 24, 22)
    canvas.line(34, 58, 48, 52)
    canvas.line(33, 57, 20, 48)


def _cross(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.rect(40, 16, 20, 68, stroke=0, fill=1)
    canvas.rect(16, 40, 68, 20, stroke=0, fill=1)


def _telephone(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.roundRect(14, 62, 72, 16, 7, stroke=0, fill=1)
    canvas.rect(14, 52, 16, 18, stroke=0, fill=1)
    canvas.rect(70, 52, 16, 18, stroke=0, fill=1)
    _poly(canvas, ((34, 58), (66, 58), (78, 20), (22, 20)))
    canvas.setFillColor(GREEN)
    canvas.circle(50, 37, 9, stroke=0, fill=1)


def _assembly(canvas: Canvas) -> None:
    for dx in (-1, 1):
        for dy in (-1, 1):
            tip = (50 + dx * 16, 50 + dy * 16)
            canvas.setStrokeColor(white)
            canvas.setLineWidth(7)
            canvas.line(50 + dx * 38, 50 + dy * 38, *tip)
            canvas.line(*tip, tip[0] + dx * 14, tip[1])
            canvas.line(*tip, tip[0], tip[1] + dy * 14)
    canvas.setFillColor(white)
    canvas.circle(50, 50, 7, stroke=0, fill=1)


def _match(canvas: Canvas) -> None:
    canvas.setStrokeColor(black)
    canvas.setLineWidth(7)
    canvas.line(50, 16, 50, 46)
    _flames(canvas, 50, 42, 34, black)


def _cigarette(canvas: Canvas) -> None:
    canvas.setFillColor(black)
    canvas.rect(18, 38, 46, 12, stroke=0, fill=1)
    canvas.rect(68, 38, 6, 12, stroke=0, fill=1)
    canvas.rect(77, 38, 4, 12, stroke=0, fill=1)
    canvas.setStrokeColor(black)
    canvas.setLineWidth(4)
    path = canvas.beginPath()
    path.moveTo(76, 56)
    path.curveTo(76, 70, 62, 64, 62, 76)
    canvas.drawPath(path, stroke=1, fill=0)


def _flammable(canvas: Canvas) -> None:
    _flames(canvas, 49, 22, 30, black)
    canvas.setFillColor(black)
    canvas.rect(30, 14, 40, 5, stroke=0, fill=1)


def _hot(canvas: Canvas) -> None:
    canvas.setFillColor(black)
    canvas.rect(28, 14, 44, 6, stroke=0, fill=1)
    canvas.setStrokeColor(black)
    canvas.setLineWidth(4.5)
    for x in (38, 50, 62):
        path = canvas.beginPath()
        path.moveTo(x, 25)
        path.curveTo(x - 8, 33, x + 8, 38, x, 47)
        canvas.drawPath(path, stroke=1, fill=0)


def _general(canvas: Canvas) -> None:
    canvas.setFillColor(black)
    _poly(canvas, ((45, 60), (55, 60), (53, 30), (47, 30)), black)
    canvas.circle(50, 21, 4.5, stroke=0, fill=1)


def _ears(canvas: Canvas) -> None:
    canvas.setFillColor(white)
    canvas.circle(50, 48, 22, stroke=0, fill=1)
    canvas.setStrokeColor(white)
    canvas.setLineWidth(7)
    canvas.arc(22, 24, 78, 86, 0, 180)
    canvas.roundRect(18, 38, 12, 22, 5, stroke=0, fill=1)
    canvas.roundRect(70, 38, 12, 22, 5, stroke=0, fill=1)


_SIGNS: dict[str, tuple[Callable[[Canvas], None], Callable[[Canvas], None]]] = {
    "E001": (_square(GREEN), _exit),
    "E003": (_square(GREEN), _cross),
    "E004": (_square(GREEN), _telephone),
    "E007": (_square(GREEN), _assembly),
    "F001": (_square(RED), _extinguisher),
    "F016": (_square(RED), _blanket),
    "P002": (_prohibition, _cigarette),
    "P003": (_prohibition, _match),
    "W001": (_warning, _general),
    "W017": (_warning, _hot),
    "W021": (_warning, _flammable),
    "M003": (_mandatory, _ears),
}
CODES = tuple(_SIGNS)


def flame_mark(canvas: Canvas, x: float, y: float, size: float, colour: Color) -> None:
    """A flame, `size` high, its foot at (x, y) [pt]: somebody burns here."""
    canvas.saveState()
    _flames(canvas, x, y, size / 1.28, colour)
    canvas.restoreState()


def stop_mark(canvas: Canvas, x: float, y: float, size: float, colour: Color) -> None:
    """A solid octagon with its lower left corner at (x, y) [pt]: stop."""
    middle, radius = size / 2, size / 2 / cos(pi / 8)
    points = tuple(
        (
            x + middle + radius * cos(pi / 8 + k * pi / 4),
            y + middle + radius * sin(pi / 8 + k * pi / 4),
        )
        for k in range(8)
    )
    _poly(canvas, points, colour)
