"""Mends that move nobody alone: widen the formation, shift a canon, turn a facing, a shorter tether.

Each is tried from the smallest change up and offered only once it is proven. Stage frame [m], beats.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from sequencer.motion.approach import approaches
from sequencer.motion.dancer import Dancer
from sequencer.motion.drifting import DriftedCourse, later
from sequencer.motion.mending import elsewhere, moved

MendKind = Literal["widen", "shift", "turn", "tether"]
_FACTORS = tuple(1.0 + 0.1 * k for k in range(1, 11))
_SHIFTS = (0.5, -0.5, 1.0, -1.0, 2.0, -2.0)  # [beats]
_TURNS = tuple(math.radians(sign * angle) for angle in (30, 60, 90) for sign in (1, -1))
_SHORTER = (0.10, 0.20)  # [m]

Pair = tuple[Dancer, Dancer]
Span = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherMend:
    """A change after which a pair keeps its distance."""

    kind: MendKind
    who: str  # a performer; "" for the whole formation
    amount: float  # factor, beats, radians or metres, by kind
    distance: float  # [m] of the pair afterwards, or the requirement where it is more
    cost: float  # [m] about what a place would have to move to be as much of a change


def other_mends(
    dancers: Sequence[Dancer],
    first: int,
    second: int,
    *,
    conflict: Span,
    show: Span,
    required: float,
) -> tuple[OtherMend, ...]:
    """The smallest change of each kind that clears a pair, least change first.

    Parameters
    ----------
    dancers : sequence of Dancer
    first, second : int
        The pair.
    conflict : (float, float)
        Beats in which they come too close.
    show : (float, float)
        Beats of the whole show.
    required : float
        Distance that they must keep [m].

    Returns
    -------
    mends : tuple of OtherMend
        Each proven to clear the pair wherever the change acts.
    """
    pair = (dancers[first], dancers[second])
    held = [dancer.floor.held(*conflict) for dancer in pair]
    span = (
        max(show[0], min(low for low, _ in held)),
        min(show[1], max(high for _, high in held)),
    )

    def turned(dancer: Dancer, by: float) -> Dancer:
        floor = dancer.floor.moved((0.0, 0.0), start=conflict[0], end=conflict[1], turn=by)
        return replace(dancer, floor=floor)

    out = []
    for tries, always in (
        (_widened(dancers, first, second, conflict), False),
        (_changed(pair, _SHIFTS, _shifted, "shift", lambda by: 0.5 * abs(by)), True),
        (_changed(pair, _TURNS, turned, "turn", lambda by: 0.5 * abs(by)), False),
        (_changed(pair, _SHORTER, _shortened, "tether", lambda by: 4.0 * by), True),
    ):
        # A shift or a tether acts all show long, a place or a facing as long as it is held.
        found = _first_that_clears(tries, pair, conflict, show if always else span, required)
        if found is not None:
            out.append(found)
    return tuple(sorted(out, key=lambda mend: mend.cost))


def _first_that_clears(
    tries: Iterator[tuple[OtherMend, Pair]],
    pair: Pair,
    conflict: Span,
    show: Span,
    required: float,
) -> OtherMend | None:
    other: list[Span] | None = None
    for mend, after in tries:
        near = approaches(after, *conflict, required=required, minima=False)
        if len(near.spans.group):
            continue
        if other is None:
            other = elsewhere(pair, conflict, show, required)
        found = approaches(after, *show, required=required, minima=False).spans
        if all(
            any(low < end and high > start for low, high in other)
            for start, end in zip(found.start, found.end, strict=True)
        ):
            return replace(mend, distance=float(near.distance[0]))
    return None


def _changed(
    pair: Pair,
    amounts: Sequence[float],
    change: Callable[[Dancer, float], Dancer],
    kind: MendKind,
    cost: Callable[[float], float],
) -> Iterator[tuple[OtherMend, Pair]]:
    """One of the two changed, from the smallest amount up."""
    for amount in amounts:
        for k, dancer in enumerate(pair):
            if not dancer.props or (kind == "tether" and not _tethered(dancer)):
                continue
            after = (
                (change(dancer, amount), pair[1]) if k == 0 else (pair[0], change(dancer, amount))
            )
            mend = OtherMend(
                kind=kind, who=dancer.name, amount=amount, distance=0.0, cost=cost(amount)
            )
            yield mend, after


def _tethered(dancer: Dancer) -> bool:
    """Whether there is a line that may be made shorter."""
    return any(prop.flexible for prop in dancer.props.values())


def _shifted(dancer: Dancer, beats: float) -> Dancer:
    courses = {
        side: DriftedCourse(course, beats, 0.0, 1.0, (0.0, 0.0, 0.0))
        for side, course in dancer.courses.items()
    }
    return replace(dancer, courses=courses, leeway=later(dancer.leeway, beats))


def _shortened(dancer: Dancer, by: float) -> Dancer:
    props = {
        side: replace(prop, length=max(prop.length - by, 0.1)) if prop.flexible else prop
        for side, prop in dancer.props.items()
    }
    return replace(dancer, props=props)


def _widened(
    dancers: Sequence[Dancer], first: int, second: int, conflict: Span
) -> Iterator[tuple[OtherMend, Pair]]:
    """The places that all hold at the conflict, spread from their middle."""
    middle_beat = 0.5 * (conflict[0] + conflict[1])
    places = np.array([dancer.floor.at(middle_beat).place for dancer in dancers])
    off = places - places.mean(axis=0)
    for factor in _FACTORS:
        by = (factor - 1.0) * off
        after = [
            moved(dancers[k], (float(by[k, 0]), float(by[k, 1])), *conflict)
            for k in (first, second)
        ]
        mend = OtherMend(
            kind="widen",
            who="",
            amount=factor,
            distance=0.0,
            cost=float(np.hypot(by[:, 0], by[:, 1]).sum()),
        )
        yield mend, (after[0], after[1])
