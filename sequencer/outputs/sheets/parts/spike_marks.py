"""Floor marks of all formations, each measured from two fixed points, so that two people with tapes can set them out.

Stage frame [m]: X to the audience's right, Y upstage. Two lengths fix a place but for its mirror image on the other side of the
line through the two points; all marks upstage of that line are meant, others say so. Source: trilateration in the plane,
any text on surveying. Exact; printed to the centimetre.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

from sequencer.outputs.sheets.parts.scene import stage_outline
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged

Place = tuple[float, float]
_LEVEL = 0.05  # [m] corners no further upstage than this are on the front edge
_SAME = 0.02  # [m] spots nearer to each other share a mark


@dataclass(frozen=True, slots=True)
class FixedPoint:
    """A point of the stage from which marks are measured."""

    letter: str
    place: Place  # [m, stage frame]
    words: str


@dataclass(frozen=True, slots=True)
class SpikeMark:
    """A place on the floor that somebody stands at."""

    number: int  # from 1, from stage right to stage left as one reads a plan from downstage up
    place: Place  # [m, stage frame]
    lengths: Place  # [m] from A and from B
    behind: bool  # whether it is on the audience's side of the line through A and B
    uses: tuple[tuple[str, str], ...]  # formation and performer


def fixed_points(outline: Sequence[Place]) -> tuple[FixedPoint, FixedPoint]:
    """The two points: the ends of the stage's front edge, or of its widest line where the front is round or pointed.

    Parameters
    ----------
    outline : sequence of tuple of float
        Corners of the stage [m, stage frame].

    Returns
    -------
    a, b : FixedPoint
        A on stage right, B on stage left.
    """
    low = min(y for _, y in outline)
    wide = max(x for x, _ in outline) - min(x for x, _ in outline)
    front = [point for point in outline if point[1] <= low + _LEVEL]
    a, b = min(front), max(front)
    if b[0] - a[0] >= wide / 2:
        return (
            FixedPoint("A", a, "the front corner at stage right"),
            FixedPoint("B", b, "the front corner at stage left"),
        )
    a, b = min(outline), max(outline)
    return (
        FixedPoint("A", a, "the stage’s outermost point at stage right"),
        FixedPoint("B", b, "the stage’s outermost point at stage left"),
    )


@once_per_show
def spike_marks(staged: Staged) -> tuple[SpikeMark, ...]:
    """Every place of every formation once, from downstage up.

    Parameters
    ----------
    staged : Staged
    """
    a, b = fixed_points(stage_outline(staged))
    found: list[tuple[Place, list[tuple[str, str]]]] = []
    for standing in staged.standings:
        for who, (x, y, _) in standing.spots.items():
            if who in standing.waiting:
                continue
            uses = next((uses for place, uses in found if dist(place, (x, y)) < _SAME), None)
            if uses is None:
                uses = []
                found.append(((x, y), uses))
            if (standing.formation, who) not in uses:
                uses.append((standing.formation, who))
    found.sort(key=lambda each: (round(each[0][1], 2), each[0][0]))
    across = (b.place[0] - a.place[0], b.place[1] - a.place[1])
    return tuple(
        SpikeMark(
            number=k, place=place, lengths=(dist(a.place, place), dist(b.place, place)),
            behind=across[0] * (place[1] - a.place[1]) - across[1] * (place[0] - a.place[0]) < -_SAME,
            uses=tuple(uses),
        )
        for k, (place, uses) in enumerate(found, start=1)
    )  # fmt: skip


def mark_at(staged: Staged, place: Place) -> SpikeMark | None:
    """The mark of a place."""
    return next((mark for mark in spike_marks(staged) if dist(mark.place, place) < _SAME), None)
