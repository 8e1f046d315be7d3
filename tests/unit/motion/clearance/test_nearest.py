"""Nearest parts at instants: every part against every other, one instant at a time, on drawn points."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.clearance import nearest, slices
from sequencer.motion.clearance.nearest import closest, closest_at
from sequencer.motion.clearance.slices import slice_edges, slice_keys
from tests.nothing_kept import nothing_kept

# Ends of body, arms, tethers, heads and rear ends among a dancer's ten points; without rear ends a tether
# begins at the hand. By hand, from the list of points in the notation of a performer.
WITH_REAR = [(0, 1), (2, 3), (8, 4), (4, 4), (5, 6), (9, 7), (7, 7), (8, 8), (9, 9)]
FRONT = [(0, 1), (2, 3), (3, 4), (4, 4), (5, 6), (6, 7), (7, 7)]


class Drawn:
    """A performer of ten given points and nine radii at each instant."""

    def __init__(self, points, radii, two_ended=False):
        self.points, self.thick, self.two_ended = points, radii, two_ended

    def stage_points(self, beats):
        assert len(beats) == self.points.shape[1]
        return self.points, None

    def shells(self, points, beats):
        assert points is self.points
        assert len(beats) == self.points.shape[1]
        return self.thick


def drawn(seed, n, centre=0.0, two_ended=False):
    draw = np.random.default_rng(seed)
    points = draw.normal(size=(10, n, 3)) + np.array([centre, 0.0, 0.0])
    return Drawn(points, draw.uniform(0.01, 0.3, (9, n)), two_ended)


@pytest.mark.parametrize("rear", [(False, False), (True, False), (False, True)])
@pytest.mark.parametrize("off", [0.0, 6.0])
def test_the_nearest_of_all_parts_instant_by_instant(nearest_points, rear, off):
    """Near enough that insides of segments are nearest, and so far apart that ends are."""
    n = 7
    one, two = drawn(1, n, 0.0, rear[0]), drawn(2, n, off, rear[1])
    found = closest(one, two, np.arange(n))
    parts = WITH_REAR if any(rear) else FRONT
    seen = set()
    for k in range(n):
        best = (np.inf,)
        for p, (a, b) in enumerate(parts):
            for q, (c, d) in enumerate(parts):
                x, y, size = nearest_points(
                    one.points[a, k], one.points[b, k], two.points[c, k], two.points[d, k]
                )
                gap = size - one.thick[p, k] - two.thick[q, k]
                if gap < best[0]:
                    best = gap, (p, q), x, y, size
        gap, pair, x, y, size = best
        seen |= {pair}
        assert found.distance[k] == pytest.approx(gap, abs=1e-12)
        assert tuple(found.part[k]) == pair
        assert_allclose(found.point[k], [x, y], atol=1e-9)
        assert_allclose(found.direction[k], (y - x) / size, atol=1e-9)
    assert len(seen) > 3


def test_of_parts_as_near_the_first_is_named_and_axes_that_meet_have_no_direction():
    one = Drawn(np.zeros((10, 2, 3)), np.full((9, 2), 0.1))
    points = np.zeros((10, 2, 3))
    points[:, 1, 1] = 0.3
    found = closest(one, Drawn(points, np.full((9, 2), 0.2)), [0.0, 1.0])
    assert_allclose(found.distance, [-0.3, 0.0], atol=1e-12)
    assert_array_equal(found.part, [[0, 0], [0, 0]])
    assert_array_equal(found.direction, [[0, 0, 0], [0, 1, 0]])


@pytest.mark.parametrize(("apart", "told"), [(0.9e-9, 0.0), (1e-9, 0.0), (1.1e-9, 1.0)])
def test_a_direction_is_told_beyond_a_nanometre(apart, told):
    points = np.zeros((10, 1, 3))
    points[..., 2] = apart
    found = closest(
        Drawn(np.zeros((10, 1, 3)), np.zeros((9, 1))), Drawn(points, np.zeros((9, 1))), [0.0]
    )
    assert_allclose(found.direction, [[0, 0, told]], atol=1e-9)


def test_no_instants_have_nothing_near():
    empty = Drawn(np.zeros((10, 0, 3)), np.zeros((9, 0)))
    found = closest(empty, empty, [])
    assert (found.distance.shape, found.part.shape, found.point.shape) == ((0,), (0, 2), (0, 2, 3))


def test_at_an_instant_it_is_kept_by_what_decides_it(dance, monkeypatch):
    """The same as asked of arrays; asked again, or of others who move alike there, it is not computed again."""
    one, two = dance.random_cast(2, seed=3)
    asked = []

    def counted(*given):
        asked.append(given)
        return closest(*given)

    monkeypatch.setattr(nearest, "closest", counted)
    with nothing_kept():
        found = closest_at(one, two, 20.3)
        plain = closest(one, two, [20.3])
        for name in ("distance", "part", "point", "direction"):
            assert_array_equal(getattr(found, name), getattr(plain, name))
        assert closest_at(one, replace(two, name="Cy"), 20.3) is found
        assert len(asked) == 1
        moves = [*two.floor.moves]
        later = replace(moves[-1], place=(9.0, 9.0))  # beats 52 to 58
        there = replace(two, floor=replace(two.floor, moves=(*moves[:-1], later)))
        assert closest_at(one, there, 20.3) is found
        assert closest_at(one, there, 53.0).distance[0] > closest_at(one, two, 53.0).distance[0]
        assert closest_at(two, one, 20.3) is not found
        assert closest_at(one, two, 20.4) is not found
        assert closest_at(one, two, 16.0) is not closest_at(one, two, 16.0)  # between two slices


def test_by_slices_that_are_known_already_it_is_the_same(dance, monkeypatch):
    """Kept by the slices of a whole show, of which all keys are known."""
    one, two = dance.random_cast(2, seed=3)
    edges = slice_edges(0.0, 60.0)
    with nothing_kept():
        plain = [closest_at(one, two, beat) for beat in (20.3, 40.0)]
        for each in (one, two):
            slice_keys(each, edges)
        monkeypatch.setattr(slices, "_moving_keys", None)
        for beat, own in zip((20.3, 40.0), plain, strict=True):
            found = closest_at(one, two, beat, edges=edges)
            assert (found.distance, found.part.tolist()) == (own.distance, own.part.tolist())
            assert closest_at(one, two, beat, edges=edges) is found
