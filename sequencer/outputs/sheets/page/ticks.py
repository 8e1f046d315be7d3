"""Lines with an empty box to tick. Lengths in points."""

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.paper import INK, TEXT
from sequencer.outputs.sheets.page.prose import Prose, TextSpan

_BOX = 9.0
_GAP = 6.0


class TickLine(Flowable):  # type: ignore[misc]
    """A box with words beside it that wrap with a hanging indent."""

    def __init__(self, words: str, size: float = TEXT) -> None:
        super().__init__()
        self._height = 0.0
        self.words = Prose(TextSpan(words or " ", "Regular", size), role="TD")

    def wrap(self, room: float, tall: float) -> tuple[float, float]:
        """Its words' height beside the box."""
        _, height = self.words.wrap(room - _BOX - _GAP, tall)
        self._height = max(height, _BOX + 3)
        return room, self._height

    def draw(self) -> None:
        """Put box and words on the page."""
        canvas = self.canv
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.9)
        canvas.rect(0.5, self._height - _BOX - 2.5, _BOX, _BOX, stroke=1, fill=0)
        self.words.drawOn(canvas, _BOX + _GAP, self._height - self.words.height)


def ticked(words: str) -> TickLine:
    """A line to tick; an empty one if there are no words."""
    return TickLine(words)
