"""The longest way from people who stand to somebody who moves, proven over every moment.

Stage frame [m], time in beats. A distance to a moving place changes at most as fast as the place
moves, and so does the smallest of several; between samples it is bounded by that, so no moment is
missed. The same holds for ways round obstacles, as long as the place stays outside them.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import Sample, search
from sequencer.geometry.walking import NO_WAY, Ways
from sequencer.motion.performers.walks import WalkPath


@dataclass(frozen=True, slots=True, kw_only=True)
class Followed:
    """Somebody's way over the floor, from a beat to a beat."""

    who: str
    floor: WalkPath
    start: float  # [beats]
    end: float  # [beats]


@dataclass(frozen=True, slots=True, kw_only=True)
class Farthest:
    """Where the nearest post is farthest, or nearest."""

    distance: float  # [m] to the nearest post, largest or smallest over time; to 5 mm
    beat: float
    place: tuple[float, float]  # [m, stage frame] of the one who moves
    post: int  # the nearest post then
    spans: tuple[tuple[float, float], ...]  # [beats] in which it breaks the limit, or may


def farthest(followed: Sequence[Followed], ways: Sequence[Ways], limit: float) -> list[Farthest]:
    """Largest distance to the nearest post of everybody followed.

    Parameters
    ----------
    followed : sequence of Followed
    ways : sequence of callable
        For each of those followed, ways to the posts that count for them.
    limit : float
        Longest way allowed [m].

    Returns
    -------
    farthest : list of Farthest
        One for each, `distance` proven to 5 mm.

    Raises
    ------
    ValueError
        If somebody is followed for no time.

    Notes
    -----
    Source: branch and bound with a Lipschitz constant (`geometry.certified`).
    """
    return _searched(followed, ways, limit, sign=-1.0)


def closest(followed: Sequence[Followed], ways: Sequence[Ways], limit: float) -> list[Farthest]:
    """Smallest distance of everybody followed to the nearest post, and when it is under the limit.

    Source and error as `farthest`.
    """
    return _searched(followed, ways, limit, sign=1.0)


def _searched(
    followed: Sequence[Followed], ways: Sequence[Ways], limit: float, *, sign: float
) -> list[Farthest]:
    group: list[int] = []
    edges: list[tuple[float, float, float]] = []
    for index, each in enumerate(followed):
        if not each.end > each.start:
            raise ValueError(f"{each.who} is followed from {each.start} to {each.end}: no time")
        for start, end, bounds in each.floor.pieces(each.start, each.end):
            group.append(index)
            edges.append((start, end, bounds.speed))
    if not edges:
        return []
    rows = np.array(group, dtype=np.int64)
    starts, ends, speed = np.array(edges, dtype=np.float64).T

    def evaluate(r: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        value = np.empty(len(r))
        label = np.empty(len(r), dtype=np.int64)
        for index in np.unique(rows[r]):
            mine = np.flatnonzero(rows[r] == index)
            distances = np.minimum(ways[index](followed[index].floor.at(t[mine]).place), NO_WAY)
            label[mine] = np.argmin(distances, axis=1)
            value[mine] = sign * np.min(distances, axis=1)
        slack = speed[r] * half
        return Sample(value=value, lower=value - slack, upper=value + slack, label=label)

    required = np.full(len(followed), sign * limit)
    found = search(evaluate, group=rows, start=starts, end=ends, required=required)
    out = []
    for index, each in enumerate(followed):
        mine = np.flatnonzero(found.spans.group == index)
        place = each.floor.at(found.at[index]).place
        out.append(
            Farthest(
                distance=sign * float(found.value[index]),
                beat=float(found.at[index]),
                place=(float(place[0]), float(place[1])),
                post=int(found.label[index]),
                spans=tuple((float(found.spans.start[i]), float(found.spans.end[i])) for i in mine),
            )
        )
    return out
