"""The stage as somebody sees it who stands at one of its sides: ahead, behind, on the left and on the right.

Stage frame [m]: X to the audience's right, Y upstage. Own frame [m]: first to the right, then ahead; it is the
stage frame turned by quarter turns, so that the stage's edges stay square on paper. Common practice.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, degrees

from sequencer.outputs.sheets.page.wording import metres

Point = tuple[float, float]
_TURNS = {"front": (1, 0), "stage left": (0, 1), "back": (-1, 0), "stage right": (0, -1)}
_NAMES = {
    "front": "front of the stage",
    "back": "back of the stage, its front ahead of you",
    "stage left": "stage left side, the front on your left",
    "stage right": "stage right side, the front on your right",
}
_SECTORS = (
    "straight ahead",
    "ahead, to your right",
    "on your right",
    "behind you, to your right",
    "behind you",
    "behind you, to your left",
    "on your left",
    "ahead, to your left",
)
_THERE = 0.5  # [m] nearer than this there is no direction
_AT = 0.05  # [m] the same as zero on paper


@dataclass(frozen=True, slots=True)
class OwnSide:
    """One side of a stage, by the corners of the stage's bounding box."""

    name: str  # front, back, stage left, stage right
    low: Point  # [m, stage frame]
    high: Point

    def view(self, x: float, y: float) -> Point:
        """A point of the stage frame as seen from this side: to the right, and ahead [m]."""
        across, along = _TURNS[self.name]
        return x * across + y * along, y * across - x * along

    @property
    def words(self) -> str:
        """The side, and where the front is from there."""
        return _NAMES[self.name]

    def direction(self, start: Point, end: Point) -> str:
        """Where a point lies from another, looking at the stage from this side, by eighths of a turn."""
        (x0, y0), (x1, y1) = self.view(*start), self.view(*end)
        if abs(x1 - x0) < _THERE and abs(y1 - y0) < _THERE:
            return "beside you"
        return _SECTORS[round(degrees(atan2(x1 - x0, y1 - y0)) / 45.0) % 8]

    def place_words(self, x: float, y: float) -> str:
        """A point by the middle of this side and the stage's edge there."""
        corners = [self.view(*corner) for corner in (self.low, self.high)]
        (left, right), (edge, _) = (sorted(values) for values in zip(*corners, strict=True))
        across, ahead = self.view(x, y)
        aside, inside = across - (left + right) / 2, ahead - edge
        along = "at its middle"
        if abs(aside) >= _AT:
            along = f"{metres(abs(aside))} to the {'right' if aside > 0 else 'left'} of its middle"
        if abs(inside) < _AT:
            return f"{along}, on the edge"
        return f"{along}, {metres(abs(inside))} {'inside' if inside > 0 else 'outside'} the edge"


def own_side(outline: Sequence[Point], at: Point) -> OwnSide:
    """The side of a stage at which a point lies: the one it is nearest to, in shares of the stage's size.

    Parameters
    ----------
    outline : sequence of tuple of float
        Corners of the stage [m, stage frame].
    at : tuple of float
        The point [m, stage frame].
    """
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    low, high = (min(xs), min(ys)), (max(xs), max(ys))
    across = (2 * at[0] - low[0] - high[0]) / max(high[0] - low[0], 1e-9)
    along = (2 * at[1] - low[1] - high[1]) / max(high[1] - low[1], 1e-9)
    if abs(across) > abs(along):
        return OwnSide("stage left" if across > 0 else "stage right", low, high)
    return OwnSide("back" if along > 0 else "front", low, high)
