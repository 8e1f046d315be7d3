"""Pairs told apart by their reach balls against scipy's KD-tree, an independent neighbour search."""

import numpy as np
from scipy.spatial import cKDTree

from sequencer.motion.clearance.approach import approaches


def test_only_neighbours_are_sampled(dance):
    draw = np.random.default_rng(2)
    places = draw.uniform(0, 30, (40, 2))
    cast = [dance.dancer(f"d{k}", tuple(xy), lit=()) for k, xy in enumerate(places)]
    reach = cast[0].pieces(0, 4).reach.max()
    found = approaches(cast, 0, 4, required=0.3)

    sampled = {
        (int(i), int(j))
        for i, j, far in zip(found.first, found.second, found.dismissed, strict=True)
        if not far
    }
    assert sampled == cKDTree(places).query_pairs(2 * reach + 0.3)
