"""The moves that a draft chooses from: who dances them in which way, and how large and fast they look beside each other."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.patterns.library import Pattern
from sequencer.planning.drafting.auditioning.candidates import DraftMove, Heard
from sequencer.planning.drafting.auditioning.passages import MoveLaws, PassageTempos
from sequencer.planning.drafting.auditioning.repertoire import Material
from sequencer.planning.drafting.auditioning.sizes import written
from sequencer.staging.staged import Block

_SAME_SIZE, _SAME_SPEED = 0.02, 0.05  # [m, m/beat] moves that differ by less look alike


@dataclass(frozen=True, kw_only=True)
class Cast:
    """What one performer, or a group together, may dance: moves that passed their auditions."""

    moves: tuple[DraftMove, ...]
    heard: tuple[Heard, ...]
    laws: tuple[
        tuple[MoveLaws, ...], ...
    ]  # of each performer, in each way: at a tempo, mirrored or not
    ways: tuple[
        int, ...
    ]  # of each slot, which of these ways: tempos, who is mirrored, who is how late
    material: Material
    book: Mapping[str, Pattern]
    tempos: tuple[PassageTempos, ...] = ()  # of passages
    passing: tuple[
        int, ...
    ] = ()  # of the passage out of each slot, which of these; () for the moves' own
    sizable: tuple[bool, ...] = ()  # which moves can be drawn smaller or larger; () for none


def plane_of(pattern: Pattern) -> str:
    """The plane in which a pattern is danced, or what stands for it."""
    try:
        return str(pattern.values({}).get("plane") or pattern.right.kind.name)
    except ValueError:
        return ""


def effects(patterns: Sequence[str], sizes: Sequence[float], speeds: Sequence[float]) -> Floats:
    """How large and fast each move looks among all that could be danced, as a rank from 0 to 1, shape (n,) [1].

    Parameters
    ----------
    patterns : sequence of str
        Of each move; all moves of a pattern together count as much as those of any other.
    sizes : sequence of float
        [m]; those that differ by less than an eye sees are equal.
    speeds : sequence of float
        [m/beat]

    Notes
    -----
    Source: weighted mean ranks, their definition: as loudness is ranked within the song, so that the loudest third of a song gets
    the largest third of the repertoire, however many of it are of one size. From end to end, exact.
    """
    names, own = np.unique(np.array(patterns), return_inverse=True)
    share = 1.0 / (np.bincount(own)[own] * len(names))

    def ranks(values: Sequence[float], apart: float) -> Floats:
        steps = np.round(np.asarray(values, dtype=np.float64) / apart)
        below = (steps[None, :] < steps[:, None]) @ share
        equal = (steps[None, :] == steps[:, None]) @ share
        return np.asarray(below + 0.5 * equal)

    found = 0.9 * ranks(sizes, _SAME_SIZE) + 0.1 * ranks(speeds, _SAME_SPEED)
    low, wide = found.min(), np.ptp(found)
    return np.asarray((found - low) / wide if wide > 0 else np.full(len(found), 0.5))


def likeness(move: DraftMove, block: Block | None) -> int:
    """How much of a move is what a block has: 0 for another move, 1 for the same in another size, 2 for the same."""
    if block is None or (move.pattern, move.timing, move.direction) != (
        block.title,
        block.timing,
        block.direction,
    ):
        return 0
    if abs(move.cycle - block.cycle) > 1e-6:
        return 0
    size = {} if move.sized is None else written(*move.sized)
    return 2 if all(part.parameters == size for part in block.hands.values()) else 1
