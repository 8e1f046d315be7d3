"""Slices of a flown hand, each kept by all that decides it: in memory, and on disk for the next process.

A slice is kept as its numbers lie in memory: a show has hundreds, and as text they take twice as long to read.
Source: this project's own choice.
"""

import hashlib
from collections.abc import Callable
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.kept import kept_on_disk, known_on_disk, recent

SAID_KNOTS = 24  # of a piece whose coefficients are hashed together
MOST_SLICES = 600  # held in memory, some 80 kilobytes each
_SLICES = "flown slices"  # as they are kept


class HandSlice(NamedTuple):
    """Coefficients of both splines on some knots, and bounds on the pull there; of the last slice those of its end too."""

    head: Floats  # (n, 3) [m]
    hand: Floats  # (n, 3) [m]
    pull: Floats  # (k,) [1]
    most_pull: Floats  # (k,) [1]


def kept_slice(key: bytes | None, work: Callable[[], HandSlice]) -> HandSlice:
    """A slice, kept by its key; made each time if that is None."""
    if key is None:
        return work()
    return recent(
        _SLICES,
        key,
        lambda: kept_on_disk(key, work, record=_slice_record, restore=_slice_from),
        most=MOST_SLICES,
    )


def known_slice(key: bytes) -> HandSlice | None:
    """A slice that is kept, in memory or on disk; None if it is not."""

    def work() -> HandSlice:
        found = known_on_disk(key, restore=_slice_from)
        if not found:
            raise LookupError("a slice that is not kept")
        return found[0]

    try:
        return recent(_SLICES, key, work, most=MOST_SLICES)
    except LookupError:
        return None


def _slice_record(own: HandSlice) -> bytes:
    sizes = np.array([each.size for each in own], "<i8")
    return b"".join(
        [sizes.tobytes(), *(np.ascontiguousarray(each, "<f8").tobytes() for each in own)]
    )


def _slice_from(record: bytes) -> HandSlice:
    sizes = np.frombuffer(record, "<i8", count=len(HandSlice._fields))
    numbers = np.frombuffer(record, "<f8", offset=sizes.nbytes)
    if len(numbers) != sizes.sum() or sizes[0] != sizes[1]:
        raise ValueError("no slice")
    head, hand, pull, most = np.split(numbers, np.cumsum(sizes)[:-1])
    return HandSlice(head.reshape(-1, 3), hand.reshape(-1, 3), pull, most)


def said_by_piece(key: bytes | None, first: int, head: Floats, hand: Floats) -> list[bytes]:
    """Hashes of the coefficients of a slice, of each piece by itself; remembered, since a change leaves most as they were.

    Parameters
    ----------
    key : bytes or None
        Of the slice.
    first : int
        Number of its first knot, from beat 0; pieces end at whole multiples of `SAID_KNOTS`.
    head, hand : ndarray, shape (n, 3) [m]
    """

    def work() -> list[bytes]:
        inner = range((first // SAID_KNOTS + 1) * SAID_KNOTS - first, len(head), SAID_KNOTS)
        return [
            hashlib.blake2b(
                head[low:high].tobytes() + hand[low:high].tobytes(), digest_size=16
            ).digest()
            for low, high in pairwise((0, *inner, len(head)))
        ]

    known = None if key is None else (key, first, len(head))
    return recent("pieces of a slice", known, work, most=MOST_SLICES)
