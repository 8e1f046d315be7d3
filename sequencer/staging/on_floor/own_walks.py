"""Each performer's own walks over the floor, in order: to formations, on from the wings, off into them, and round behind the stage.

Rows of formations may be shared by people whose walks overlap, and one person may come on and go off during one row: what somebody walks
follows from their own entrances and exits, never from where a row ends.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from sequencer.staging.staged import Coming, Standing
from sequencer.timing.position import TOUCH


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnWalk:
    """One walk of one performer."""

    start: float  # [beats]
    end: float  # [beats]
    spot: tuple[float, float, float]  # X [m], Y [m], facing [degrees] where it ends
    standing: Standing  # during which, or to which, it leads
    coming: Coming | None = None  # on from the wings, or off into them; None to a formation


def own_walks(name: str, stood: Sequence[Standing]) -> tuple[OwnWalk, ...]:
    """All walks and turns of somebody that change where they stand or face, without ways behind the stage.

    Parameters
    ----------
    name : str
    stood : sequence of Standing
        In order.
    """
    found: list[OwnWalk] = []
    here = stood[0].spots[name] if stood and name in stood[0].spots else None
    for walk in _walks(name, stood):
        if walk.spot != here:
            found.append(walk)
        here = walk.spot
    return tuple(found)


def _walks(name: str, stood: Sequence[Standing]) -> Iterator[OwnWalk]:
    for one in stood[1:]:
        own = [each for each in one.comings if each.who == name]
        for each in own:
            yield OwnWalk(start=each.start, end=each.end, spot=each.goal, standing=one, coming=each)
        if not own and name in one.spots and name not in one.waiting:
            yield OwnWalk(start=one.walk, end=one.start, spot=one.spots[name], standing=one)


def wings_changed(name: str, stood: Sequence[Standing]) -> tuple[tuple[Coming, Coming], ...]:
    """Exits of somebody who comes on again from another place, each with that entrance."""
    own = sorted(
        (each for one in stood for each in one.comings if each.who == name),
        key=lambda each: each.start,
    )
    return tuple(
        (before, after)
        for before, after in pairwise(own)
        if after.on and dist(before.place, after.place) > TOUCH
    )
