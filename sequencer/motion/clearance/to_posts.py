"""The longest walk from people at fixed posts to a moving performer, proven over all time.

Stage frame [m], time in beats. A distance to a moving position changes at most as fast as the position
moves, and so does the smallest of several; that bounds it between samples, so no moment is missed. The same
holds for paths round obstacles, as long as the position stays outside them.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import CertifiedMinima, Sample, search
from sequencer.geometry.walking import NO_WAY, Ways
from sequencer.motion.performers.walks import WalkPath, WalkPaths


@dataclass(frozen=True, slots=True, kw_only=True)
class Followed:
    """A person's walking path over a span of beats."""

    who: str
    floor: WalkPath
    start: float  # [beats]
    end: float  # [beats]


@dataclass(frozen=True, slots=True, kw_only=True)
class Farthest:
    """The moment when the nearest post is farthest, or nearest."""

    distance: float  # [m] distance to the nearest post, largest or smallest over time; to 5 mm
    beat: float
    place: tuple[float, float]  # [m, stage frame] position of the moving person
    post: int  # the nearest post at that moment
    spans: tuple[
        tuple[float, float], ...
    ]  # [beats] spans in which it breaks, or may break, the limit


def farthest(followed: Sequence[Followed], ways: Sequence[Ways], limit: float) -> list[Farthest]:
    """Largest distance to the nearest post, for each person followed.

    Parameters
    ----------
    followed : sequence of Followed
    ways : sequence of callable
        For each person followed, walking distances to the posts that count for them.
    limit : float
        Longest walk allowed [m].

    Returns
    -------
    farthest : list of Farthest
        One for each, `distance` proven to 5 mm.

    Raises
    ------
    ValueError
        If a person is followed over an empty span.

    Notes
    -----
    Source: branch and bound with a Lipschitz constant (`geometry.certified`).
    """
    return _searched(followed, ways, limit, sign=-1.0)


def closest(followed: Sequence[Followed], ways: Sequence[Ways], limit: float) -> list[Farthest]:
    """Smallest distance to the nearest post, for each person followed, and when it is below the limit.

    Source and error as `farthest`.
    """
    return _searched(followed, ways, limit, sign=1.0)


def beyond(followed: Sequence[Followed], ways: Sequence[Ways], limit: float) -> list[bool]:
    """Whether each person followed is, or may be, farther than the limit at some moment: `farthest` gives spans for them.

    Source and error as `farthest`; where it is so is not sought, which takes far fewer samples.
    """
    if not followed:
        return []
    found = _Search(followed, ways, sign=-1.0).minima(-limit, best=np.full(len(followed), -np.inf))
    broken = set(found.spans.group.tolist())
    return [index in broken for index in range(len(followed))]


def _searched(
    followed: Sequence[Followed], ways: Sequence[Ways], limit: float, *, sign: float
) -> list[Farthest]:
    if not followed:
        return []
    found = _Search(followed, ways, sign=sign).minima(sign * limit)
    spans = zip(*(each.tolist() for each in (found.spans.start, found.spans.end)), strict=True)
    broken: list[list[tuple[float, float]]] = [[] for _ in followed]
    for index, span in zip(found.spans.group.tolist(), spans, strict=True):
        broken[index].append(span)
    out = []
    for index, each in enumerate(followed):
        place = each.floor.at(found.at[index]).place
        out.append(
            Farthest(
                distance=sign * float(found.value[index]),
                beat=float(found.at[index]),
                place=(float(place[0]), float(place[1])),
                post=int(found.label[index]),
                spans=tuple(broken[index]),
            )
        )
    return out


class _Search:
    """Distances of people followed to the nearest of their posts, with their bounds."""

    def __init__(self, followed: Sequence[Followed], ways: Sequence[Ways], *, sign: float) -> None:
        group: list[int] = []
        edges: list[tuple[float, float, float]] = []
        for index, each in enumerate(followed):
            if not each.end > each.start:
                raise ValueError(
                    f"{each.who} is followed from {each.start} to {each.end}, an empty span"
                )
            for start, end, bounds in each.floor.pieces(each.start, each.end):
                group.append(index)
                edges.append((start, end, bounds.speed))
        self._rows: Ints = np.array(group, dtype=np.int64)
        self._starts, self._ends, self._speed = np.array(edges, dtype=np.float64).reshape(-1, 3).T
        self._groups, self._sign = len(followed), sign
        self._floors = WalkPaths([each.floor for each in followed])
        own: dict[int, int] = {}  # many people may have the same posts
        self._same: Ints = np.array(
            [own.setdefault(id(one), len(own)) for one in ways], dtype=np.int64
        )
        self._ways = [ways[int(np.argmax(self._same == k))] for k in range(len(own))]

    def minima(self, required: float, *, best: Floats | None = None) -> CertifiedMinima:
        """Smallest signed distance of each person, and the spans in which it is below what is required."""
        return search(
            self._sampled,
            group=self._rows,
            start=self._starts,
            end=self._ends,
            required=np.full(self._groups, required),
            best=best,
        )

    def _sampled(self, r: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        order = np.argsort(self._rows[r], kind="stable")
        index = self._rows[r][order]
        edges = np.flatnonzero(np.diff(index, prepend=-1, append=self._groups))
        slices = [(int(index[low]), low, high) for low, high in pairwise(edges.tolist())]
        places = np.empty((len(r), 2))
        places[order] = self._floors.at(slices, t[order]).place
        value = np.empty(len(r))
        label = np.empty(len(r), dtype=np.int64)
        same = self._same[self._rows[r]]
        for k in np.unique(same):
            mine = np.flatnonzero(same == k)
            distances = np.minimum(self._ways[k](places[mine]), NO_WAY)
            label[mine] = np.argmin(distances, axis=1)
            value[mine] = self._sign * np.min(distances, axis=1)
        slack = self._speed[r] * half
        return Sample(value=value, lower=value - slack, upper=value + slack, label=label)
