"""Costs of pairs of slots moved onto the slots, where they show what each candidate costs at the least."""

from collections.abc import Mapping, Sequence

import numpy as np

from sequencer.arrays import Floats


def shifted(
    costs: Sequence[Floats], pairs: Mapping[tuple[int, int], Floats], sweeps: int
) -> tuple[list[Floats], dict[tuple[int, int], Floats]]:
    """Costs of slots and pairs that add up to the same for every choice; the least of each adds up to more.

    Parameters
    ----------
    costs : sequence of ndarray, each of shape (n_k,) [1]
        Finite.
    pairs : mapping of (i, j), i < j, to ndarray of shape (n_i, n_j) [1]
        With a finite entry in every row and column.
    sweeps : int
        How often all pairs are gone through, forward and back.

    Returns
    -------
    costs : list of ndarray, each of shape (n_k,) [1]
    pairs : dict of ndarray, each of shape (n_i, n_j) [1]
        At least 0, with a 0 in every row and column, where a sweep was made.

    Notes
    -----
    Source: dual block-coordinate ascent with handshakes, S. Tourani et al., MPLP++, ECCV 2018 (from memory). Every step leaves
    the sum as it is and raises Σ min costs, which no choice goes below.
    """
    slots = [np.array(c) for c in costs]
    left = {pair: np.array(table) for pair, table in pairs.items()}
    forward = sorted(left)
    for sweep in range(2 * sweeps):
        for i, j in forward if sweep % 2 == 0 else reversed(forward):
            table = left[i, j]
            table += slots[i][:, None]
            table += slots[j]
            slots[i] = 0.5 * table.min(axis=1)
            table -= slots[i][:, None]
            slots[j] = table.min(axis=0)
            table -= slots[j]
            rest = table.min(axis=1)
            table -= rest[:, None]
            slots[i] += rest
    return slots, left
