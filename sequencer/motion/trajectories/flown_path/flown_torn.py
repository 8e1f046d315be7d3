"""Flown hands that would jump: nothing bounds how fast a tether turns whose ends may pass each other between two knots.

A hand follows from its head's path by the law of motion, with walking and turning. Where a performer is moved so hard that the pull
turns about within a knot, as on a walk of metres in a quarter of a second, the hand would have to leap to the other side of the
head. No distance can be proven there, and nobody dances it: what is drawn stands in, and what the hand would have had to do is
remembered, so that it is told.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import isfinite

from sequencer.arrays import Floats
from sequencer.motion.trajectories.flown_path.flown_hand import Course, FlownHand, Torn


def is_unbroken(hand: FlownHand) -> bool:
    """Whether something bounds how the tether turns throughout.

    Parameters
    ----------
    hand : FlownHand
    """
    return not _unbounded(hand)


def unbroken(
    hand: FlownHand,
    made: Callable[[Sequence[Course]], FlownHand],
    beats_a_second: Callable[[Floats], Floats],
) -> FlownHand:
    """The hand with finite bounds throughout: what is drawn stands in on as many courses as that takes, the fastest first.

    Parameters
    ----------
    hand : FlownHand
        Of courses as they were danced standing still; one that was eased holds its leap.
    made : callable
        The hand of some courses.
    beats_a_second : callable
        As in `Ground`.

    Notes
    -----
    Source: this project's own choice. It ends, since each time one course fewer is flown; where none is, the hand is as drawn.
    """
    torn: list[Torn] = []
    while bad := _unbounded(hand):
        rows = [_row(hand, k, beats_a_second) for k in _flown_near(hand, bad)]
        if not rows:
            break
        worst = max(rows, key=lambda row: (row.hand_speed, -row.start))
        torn.append(worst)
        hand = made(
            [each._replace(flown=each.flown and each.start != worst.start) for each in hand.courses]
        )
    return with_torn(hand, torn) if torn else hand


def with_torn(hand: FlownHand, torn: Sequence[Torn]) -> FlownHand:
    """The hand that remembers where it would have jumped.

    Parameters
    ----------
    hand : FlownHand
    torn : sequence of Torn
    """
    return replace(hand, torn=tuple(sorted(torn)))


def _unbounded(hand: FlownHand) -> list[tuple[float, float]]:
    """Pieces on which nothing bounds how the tether turns [show beats]; but the first and the last.

    There a hand whose courses begin or end in full swing is brought to rest by its spline, whatever is flown. The bound on the
    acceleration holds the square of the one on the rate: where that is not finite, neither is this.
    """
    first, last = hand.head.start, hand.head.start + hand.head.spans * hand.head.step
    return [
        (low, high)
        for low, high, bounds in hand.pieces(first, last)[1:-1]
        if not isfinite(bounds.turn_acceleration)
    ]


def _flown_near(hand: FlownHand, bad: Sequence[tuple[float, float]]) -> list[int]:
    """Flown courses on some pieces; where there are none, the nearest of each, since a hand comes back from what is flown beside it."""
    flown = [k for k, each in enumerate(hand.courses) if each.flown]
    within = [
        k
        for k in flown
        if any(low < hand.courses[k].end and hand.courses[k].start < high for low, high in bad)
    ]
    if within:
        return within

    def far(k: int, piece: tuple[float, float]) -> float:
        return max(hand.courses[k].start - piece[1], piece[0] - hand.courses[k].end)

    return sorted({min(flown, key=lambda k: far(k, piece)) for piece in bad}) if flown else []


def _row(hand: FlownHand, k: int, beats_a_second: Callable[[Floats], Floats]) -> Torn:
    course = hand.courses[k]
    speed, acceleration, head_speed = hand.largest_rates(course, beats_a_second)
    least, most = hand.least_pull(course), hand.largest_pull(course)
    return Torn(course.start, least, most, speed, acceleration, head_speed)
