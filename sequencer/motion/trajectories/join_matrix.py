"""The joins of a whole vocabulary: the verdict for every ordered pair, computed together.

Each pattern ends after one hand cycle with its default parameters, and the next starts at its beginning.
Verdicts are those of joining.py; the expensive part, the links, is tested against the limits for all pairs
at once.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from math import nan
from typing import Any

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.law_kinds import DEFAULT_TETHER
from sequencer.motion.patterns.library import Pattern, cycle_beats, law_for, patterns
from sequencer.motion.patterns.samples import CARD_STATURE
from sequencer.motion.trajectories.joining import (
    LINK_BEATS,
    VERDICTS,
    Tolerances,
    VerdictKind,
    gap_between,
    shifts_of,
)
from sequencer.motion.trajectories.one_link.hand_paths import hand_paths, whole
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_search import stacked
from sequencer.motion.trajectories.one_link.sphere import sphere_candidates


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JoinMatrix:
    """Verdicts of every ordered pair; rows are the first pattern."""

    names: tuple[str, ...]
    kind: Ints  # (n, n) index into `VERDICTS`
    shift: Floats  # (n, n) [beats]; nan if a shift is not the remedy
    link_beats: Floats  # (n, n) [beats]; nan if no link is needed, or none was found

    def verdict(self, first: str, following: str) -> VerdictKind:
        """One pair's verdict."""
        return VERDICTS[int(self.kind[self.names.index(first), self.names.index(following)])]

    def counts(self) -> dict[VerdictKind, int]:
        """Number of pairs with each verdict."""
        found = Counter(int(value) for value in self.kind.ravel())
        return {verdict: found.get(k, 0) for k, verdict in enumerate(VERDICTS)}


def join_matrix(
    book: Mapping[str, Pattern] | None = None,
    *,
    names: tuple[str, ...] | None = None,
    side: Side = "right",
    body: Body | None = None,
    length: float = DEFAULT_TETHER,
    tolerances: Tolerances | None = None,
    limits: LinkLimits | None = None,
) -> JoinMatrix:
    """The join matrix of a vocabulary.

    Parameters
    ----------
    book : mapping, optional
        Patterns; default: the built-in ones.
    names : tuple of str, optional
        Names to include; default: all.
    side : {"left", "right"}
    body : Body, optional
        Default: 1.70 m tall.
    length : float
        Length of the tether [m].
    tolerances : Tolerances, optional
    limits : LinkLimits, optional

    Returns
    -------
    matrix : JoinMatrix
    """
    known = patterns() if book is None else book
    chosen = tuple(known) if names is None else names
    tolerances, limits = tolerances or Tolerances(), limits or LinkLimits()
    space = HandSpace(body=body or Body(stature=CARD_STATURE), side=side, length=length)
    laws = [
        law_for(name, {}, side=side, body=space.body, tether=length, book=known) for name in chosen
    ]
    ends = _joined(
        [law.at(np.array([cycle_beats(n, {}, known)])) for n, law in zip(chosen, laws, strict=True)]
    )
    shifts = [shifts_of(law) for law in laws]
    owner = np.repeat(np.arange(len(laws)), [len(row) for row in shifts])
    starts = _joined([law.at(row) for law, row in zip(laws, shifts, strict=True)])
    gaps = gap_between(_at(ends, (slice(None), None)), _at(starts, (None, slice(None))), length)
    joins, reversed_ = gaps.within(tolerances), gaps.reversed_in_place(tolerances)
    n = len(laws)
    kind = np.full((n, n), VERDICTS.index("needs a link"))
    shift, beats = np.full((n, n), nan), np.full((n, n), nan)
    every = np.concatenate(shifts)
    for k in range(n):
        own = np.flatnonzero(owner == k)
        fits = joins[:, own]
        any_fit = fits.any(axis=1)
        first = every[own][fits.argmax(axis=1)]
        kind[any_fit, k] = VERDICTS.index("joins after a shift")
        kind[reversed_[:, own[0]], k] = VERDICTS.index("wrong way round")
        kind[fits[:, 0], k] = VERDICTS.index("joins")
        shifted = kind[:, k] == VERDICTS.index("joins after a shift")
        shift[shifted, k] = first[shifted]
    rows, columns = np.nonzero(kind == VERDICTS.index("needs a link"))
    begin = np.array([np.flatnonzero(owner == k)[0] for k in range(n)])
    found = _shortest(_at(ends, rows), _at(starts, begin[columns]), space, limits)
    beats[rows, columns] = found
    lost = np.isnan(found)
    kind[rows[lost], columns[lost]] = VERDICTS.index("cannot join")
    return JoinMatrix(names=chosen, kind=kind, shift=shift, link_beats=beats)


def _shortest(first: Motion, last: Motion, space: HandSpace, limits: LinkLimits) -> Floats:
    """Beats of the first link within the limits for n pairs of states; nan if there is none."""
    count = len(first.hand)
    found = np.full(count, nan)
    for beats in LINK_BEATS:
        left = np.flatnonzero(np.isnan(found))
        if not left.size:
            break
        a, b, span = _at(first, left), _at(last, left), np.full(left.size, beats)
        moves: Bools = np.zeros(left.size, dtype=np.bool_)
        for hand in hand_paths(a, b, span, shoulder=space.shoulder, arm=space.arm):
            moves |= limits.keep_moving(hand, span, space)
        left = left[moves]
        a, b, span = _at(first, left), _at(last, left), np.full(left.size, beats)
        turns: Bools = np.zeros(left.size, dtype=np.bool_)
        for way in sphere_candidates(stacked(a, b), span, peaks=False):
            rest = np.flatnonzero(~turns & np.isfinite(way.peak))
            turns[rest] = limits.keep_turning(whole(way.angles[rest]), span[rest])
        found[left[turns]] = beats
    return found


def _joined(motions: list[Motion]) -> Motion:
    return Motion(
        hand=np.concatenate([m.hand for m in motions]),
        hand_rate=np.concatenate([m.hand_rate for m in motions]),
        hand_acceleration=np.concatenate([m.hand_acceleration for m in motions]),
        tether=np.concatenate([m.tether for m in motions]),
        tether_rate=np.concatenate([m.tether_rate for m in motions]),
        tether_acceleration=np.concatenate([m.tether_acceleration for m in motions]),
        plane=np.concatenate([m.plane for m in motions]),
    )


def _at(motion: Motion, index: Any) -> Motion:
    parts = [
        part[index]
        for part in (
            motion.hand,
            motion.hand_rate,
            motion.hand_acceleration,
            motion.tether,
            motion.tether_rate,
            motion.tether_acceleration,
            motion.plane,
        )
    ]
    return Motion(
        hand=parts[0],
        hand_rate=parts[1],
        hand_acceleration=parts[2],
        tether=parts[3],
        tether_rate=parts[4],
        tether_acceleration=parts[5],
        plane=parts[6],
    )
