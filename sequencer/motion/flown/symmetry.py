"""Which part of a period is drawn once and then again, turned or mirrored.

A drawing repeats after a k-th of its period if hand and head there are those at the start moved by one rotation or
reflection about their common middle. Of a drawing that repeats after any time at all, such as a spin or an extension,
no part is taken. Source: W. Kabsch, Acta Crystallographica A32, 1976 (from memory), for the rotation.
"""

from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.law import Law

MOST_ALIKE = 12
_SAMPLES = 27720  # parts a period is sampled in must divide it: the least common multiple of 1 … 12
_EACH = 330  # of those, one in so many is looked at
_SAME = 1e-7  # [m]
_ODD = 137  # samples of a shift that is no simple part of the period


class Repeat(NamedTuple):
    """A drawing's repeats within its period."""

    parts: int  # equal parts of the period; 1: none
    turn: Floats  # (3, 3) rotation or reflection from each part to the next
    centre: Floats  # (3,) [m, body frame] about which
    level: bool  # whether up stays up


def repeat_of(law: Law, length: float) -> Repeat:
    """The most parts of a law's period that are alike.

    Parameters
    ----------
    law : Law
        With a period.
    length : float
        Of the tether [m].

    Notes
    -----
    Source: module docstring. Compared at 84 instants, to 10⁻⁷ m.
    """
    return _most(law, length, level=False)


def level_repeat_of(law: Law, length: float) -> Repeat:
    """The same, but only where up stays up, so that gravity repeats as well."""
    return _most(law, length, level=True)


def _most(law: Law, length: float, *, level: bool) -> Repeat:
    base = np.arange(0, _SAMPLES, _EACH, dtype=np.float64)
    here = _drawn(law, length, base)
    centre = here.reshape(-1, 3).mean(axis=0)
    none = Repeat(1, np.eye(3), centre, True)
    if _turn(here - centre, _drawn(law, length, base + _ODD) - centre) is not None:
        return none
    for parts in range(MOST_ALIKE, 1, -1):
        turn = _turn(here - centre, _drawn(law, length, base + _SAMPLES // parts) - centre)
        if turn is not None:
            flat = bool(abs(turn[2, 2] - 1.0) < _SAME)
            if flat or not level:
                return Repeat(parts, turn, centre, flat)
    return none


def _drawn(law: Law, length: float, samples: Floats) -> Floats:
    motion = law.at(samples * (law.period / _SAMPLES))
    return np.stack((motion.hand, motion.head(length)), axis=1)


def _turn(before: Floats, after: Floats) -> Floats | None:
    """The rotation or reflection that leads from one set of points to another, or None.

    Both do for points in a plane: then one that keeps up, and of two such the rotation.
    """
    a, b = before.reshape(-1, 3), after.reshape(-1, 3)
    left, _, right = np.linalg.svd(a.T @ b)
    turns = [(left @ np.diag([1.0, 1.0, last]) @ right).T for last in (1.0, -1.0)]
    turns = [turn for turn in turns if np.max(np.abs(a @ turn.T - b)) < _SAME]
    turns.sort(key=lambda turn: (abs(turn[2, 2] - 1.0) >= _SAME, np.linalg.det(turn) < 0))
    return np.asarray(turns[0]) if turns else None
