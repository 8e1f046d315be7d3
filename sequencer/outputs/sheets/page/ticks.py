"""Boxes to tick with words beside them, one after the other as in a paragraph. Lengths in points."""

from collections.abc import Sequence

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.letters import ASCENT
from sequencer.outputs.sheets.page.paper import INK, TEXT
from sequencer.outputs.sheets.page.prose import Line, TextSpan, broken, set_line

_BOX = 0.82  # side of a box, in type sizes
_BESIDE = 0.35  # between a box and its words
_BETWEEN = 0.9  # between two boxes
_LEADING = 1.28


class TickRun(Flowable):  # type: ignore[misc]
    """Words, each with an empty box before it; what does not fit on a line begins the next one.

    They may follow a `title`, in bold.
    """

    def __init__(self, words: Sequence[str], size: float = TEXT, *, title: str = "") -> None:
        super().__init__()
        self._items, self.size, self._title = list(words), size, title
        self._placed: list[
            tuple[float, int, Line, bool]
        ] = []  # x, line, words, whether a box begins it

    @property
    def words(self) -> list[str]:
        """All of it, for comparison with another print."""
        return [*filter(None, (self._title,)), *self._items]

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """As high as its lines."""
        size = self.size
        inset = (_BOX + _BESIDE) * size
        self._placed = []
        at, line = 0.0, 0
        if self._title:
            lines = broken((TextSpan(self._title, "Bold", size),), room)
            self._placed += [(0.0, k, part, False) for k, part in enumerate(lines)]
            at, line = lines[-1].width + _BETWEEN * size, len(lines) - 1
        for words in self._items:
            lines = broken((TextSpan(words, "Regular", size),), room - inset)
            fits = len(lines) == 1 and at + inset + lines[0].width <= room + 1e-6
            if at and not fits:
                at, line = 0.0, line + 1
            for number, part in enumerate(lines):
                line += bool(number)
                self._placed.append((at + inset, line, part, not number))
            at += inset + lines[-1].width + _BETWEEN * size if lines else 0.0
        self.width, self.height = room, (line + 1) * _LEADING * size
        return self.width, self.height

    def draw(self) -> None:
        """Put boxes and words on the page."""
        canvas, size = self.canv, self.size
        begin = getattr(canvas, "begin_tag", None)
        if begin is not None:
            begin("TD")
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.9)
        for x, line, words, is_first in self._placed:
            top = self.height - line * _LEADING * size
            base = top - (_LEADING - 1) * size / 2 - ASCENT * size
            if is_first:
                side = _BOX * size
                canvas.rect(
                    x - side - _BESIDE * size, base - 0.1 * size, side, side, stroke=1, fill=0
                )
            set_line(canvas, words, x, base)
        if begin is not None:
            canvas.end_tag()
