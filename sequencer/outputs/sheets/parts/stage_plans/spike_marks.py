"""Floor marks of all formations, each measured from two fixed points, so that two people with tapes can set them out.

Stage frame [m]: X to the audience's right, Y upstage. Two lengths fix a place but for its mirror image on the other side of the
line through the two points; the side of most marks is meant, the others say so. Source: trilateration in the plane,
any text on surveying. Exact; printed to the centimetre.
"""

from dataclasses import dataclass
from math import dist, hypot

from sequencer.outputs.sheets.parts.stage_plans.baseline import (
    WEAK,
    FixedPoint,
    Place,
    baseline,
    side_words,
    spread,
)
from sequencer.outputs.sheets.parts.stage_plans.scene import stage_outline
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged

_SAME = 0.02  # [m] spots nearer to each other share a mark


@dataclass(frozen=True, slots=True)
class SpikeMark:
    """A place on the floor that somebody stands at."""

    number: int  # from 1, from stage right to stage left as one reads a plan from downstage up
    place: Place  # [m, stage frame]
    lengths: Place  # [m] from A and from B
    behind: (
        bool  # whether it is on the other side of the line through A and B than most, see `sides`
    )
    uses: tuple[tuple[str, str], ...]  # formation and performer

    spread: float  # [1] how far it may be off for each that both tapes are off

    @property
    def weak(self) -> bool:
        """Whether the two tapes cross too flatly to set it out with them."""
        return self.spread > WEAK


@once_per_show
def fixed_points(staged: Staged) -> tuple[FixedPoint, FixedPoint]:
    """The two points that all marks are measured from.

    Parameters
    ----------
    staged : Staged
    """
    return baseline(stage_outline(staged), [place for place, _ in _places(staged)])


def _places(staged: Staged) -> list[tuple[Place, list[tuple[str, str]]]]:
    """Every place of every formation once, from downstage up, with who stands there in which formation."""
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
    return found


def sides(staged: Staged) -> tuple[str, str]:
    """On which side of the line from A to B the marks are, and on which those that are `behind`, in words."""
    usual, other = side_words(*fixed_points(staged))
    return (other, usual) if _most_are_below(staged) else (usual, other)


def _most_are_below(staged: Staged) -> bool:
    below = [_is_below(place, *fixed_points(staged)) for place, _ in _places(staged)]
    return 2 * sum(below) > len(below)


def _is_below(place: Place, a: FixedPoint, b: FixedPoint) -> bool:
    """Whether it is on the audience's side of the line from A to B."""
    across, up = b.place[0] - a.place[0], b.place[1] - a.place[1]
    aside = across * (place[1] - a.place[1]) - up * (place[0] - a.place[0])
    return aside < -_SAME * hypot(across, up)


@once_per_show
def spike_marks(staged: Staged) -> tuple[SpikeMark, ...]:
    """Every place of every formation once, from downstage up.

    Parameters
    ----------
    staged : Staged
    """
    a, b = fixed_points(staged)
    most = _most_are_below(staged)
    return tuple(
        SpikeMark(
            number=k, place=place, lengths=(dist(a.place, place), dist(b.place, place)),
            behind=_is_below(place, a, b) != most,
            uses=tuple(uses), spread=spread(place, a.place, b.place),
        )
        for k, (place, uses) in enumerate(_places(staged), start=1)
    )  # fmt: skip


def mark_at(staged: Staged, place: Place) -> SpikeMark | None:
    """The mark of a place."""
    return next((mark for mark in spike_marks(staged) if dist(mark.place, place) < _SAME), None)
