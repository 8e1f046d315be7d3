"""States of many dancers at many instants, each computed once however many pairs need it."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.performers.body_parts import parts_of
from sequencer.motion.performers.ensemble import Ensemble


class States(NamedTuple):
    """Points, rates and radii of u states."""

    points: Floats  # (u, p, 3) [m, stage frame]
    rates: Floats  # (u, p, 3) [m/beat]
    radii: Floats  # (u, k) [m] of each part


def states(
    ensemble: Ensemble, who: Sequence[Ints], beats: Floats, kept: int
) -> tuple[States, list[Ints]]:
    """States of the requested dancers, without repeats.

    Parameters
    ----------
    ensemble : Ensemble
    who : sequence of ndarray, shape (n,) [1]
        One array or more of indices of dancers, all for the same beats.
    beats : ndarray, shape (n,) [beats]
    kept : int
        Number of points per dancer, see `Cells.points`.

    Returns
    -------
    states : States
    index : list of ndarray, shape (n,) [1]
        For each array of `who`, the indices of its states.

    Notes
    -----
    Source: `Dancer.stage_points`. Exact to rounding.
    """
    times, place = np.unique(beats, return_inverse=True)
    n = len(times)
    codes, index = np.unique(
        np.concatenate([each * n + place for each in who]), return_inverse=True
    )
    owner, instant = codes // n, times[codes % n]
    parts = len(parts_of(kept))
    points, rates = ensemble.stage_points(owner, instant, kept)
    radii = np.empty((len(codes), parts))
    for look, own in enumerate(np.split(*_by_look(ensemble.looks[owner], len(ensemble.alike)))):
        if len(own):
            one, at = ensemble.alike[look], instant[own]
            radii[own] = one.radii(points[own].transpose(1, 0, 2), one.is_lit(at))[:parts].T
    edges = np.concatenate([[0], np.flatnonzero(np.diff(owner)) + 1, [len(codes)]])
    for low, high in pairwise(edges.tolist()):
        dancer = ensemble.dancers[owner[low]]
        if dancer.deviation:
            radii[low:high] += dancer.widened(instant[low:high])[:parts].T
    return States(points, rates, radii), list(np.split(index, len(who)))


def _by_look(looks: Ints, count: int) -> tuple[Ints, Ints]:
    """Rows in order of their looks, and where each look but the first begins among them."""
    order = np.argsort(looks, kind="stable")
    return order, np.searchsorted(looks[order], np.arange(1, count))
