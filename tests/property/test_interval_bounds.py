"""The bounds that every proof rests on: nowhere in an interval is the distance below `lower`.

These tests look at single intervals of all widths, so that a wrong bound cannot hide behind a search that
cuts on for other reasons.
"""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.geometry.prisms import Prism, plane
from sequencer.geometry.regions import Region
from sequencer.motion.clearance.fixtures import _Kernel
from sequencer.motion.clearance.grid import cells
from sequencer.motion.clearance.pair_kernel import PairKernel
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.walks import Move


@pytest.mark.parametrize("seed", range(2))
@pytest.mark.parametrize("enough", [np.inf, 0.5])
def test_no_distance_of_a_pair_is_below_its_bound(dance, seed, enough):
    cast = dance.random_cast(2, seed=seed, beats=24, spacing=2.2)
    grid = cells(cast, 0, 24)
    draw = np.random.default_rng(seed)
    n = 80
    cell = draw.integers(len(grid.start), size=n)
    width = grid.end[cell] - grid.start[cell]
    half = 0.5 * width * 2.0 ** -draw.uniform(0, 8, n)
    centre = grid.start[cell] + half + draw.uniform(0, 1, n) * (width - 2 * half)
    kernel = PairKernel(grid, np.zeros(n, int), np.ones(n, int), cell)
    sample = kernel.sample(np.arange(n), centre, half, np.full(n, enough))

    gained = 0
    for k in range(n):
        near = np.linspace(centre[k] - half[k], centre[k] + half[k], 129)[1:-1]
        dense = dance.sampled_distance(*cast, near)
        assert sample.lower[k] <= dense.min() + 1e-9
        if np.isfinite(sample.value[k]):
            assert sample.upper[k] >= dense.max() - 1e-9
            # Parts that cannot come under `enough` may be left out of the value.
            assert sample.value[k] >= dense[63] - 1e-9
            assert sample.value[k] >= enough or abs(sample.value[k] - dense[63]) < 1e-9
            gained += sample.value[k] - sample.lower[k] < 0.1
    assert gained > 0 or enough < 1  # the bounds are of use, too


def test_the_bound_is_nearly_reached(dance):
    """Two heads at their nearest part by the second-order law: the bound may not be above, nor far below."""
    cast = [
        dance.dancer(n, (x, 5), ratio=1.0, sides=("right",), flame=0.0, lit=(), start=s)
        for n, x, s in (("Ada", 0.0, 180.0), ("Bo", 2.6, 0.0))
    ]
    grid = cells(cast, 0, 4)
    beats = np.linspace(0.01, 3.99, 4001)
    dense = dance.sampled_distance(*cast, beats)
    for top in (beats[np.argmin(dense)], beats[np.argmax(dense)]):
        cell = int(np.searchsorted(grid.edges, top) - 1)
        for half in (0.02, 0.05):
            if not grid.start[cell] <= top - half <= top + half <= grid.end[cell]:
                continue
            kernel = PairKernel(grid, np.array([0]), np.array([1]), np.array([cell]))
            sample = kernel.sample(
                np.array([0]), np.array([top]), np.array([half]), np.array([np.inf])
            )
            near = dance.sampled_distance(*cast, np.linspace(top - half, top + half, 201))
            assert near.min() - 0.1 < sample.lower[0] <= near.min() + 1e-9


@pytest.mark.parametrize("seed", range(2))
@pytest.mark.parametrize("measure", ["parts", "flames", "wicks", "envelope", "place"])
def test_no_distance_of_what_stands_still_is_below_its_bound(dance, seed, measure):
    cast = dance.random_cast(1, seed=seed, beats=24)
    grid = cells(cast, 0, 24)
    bent = Region(((1.0, 2), (2.5, 2), (2.5, 4), (1.6, 3)))
    prisms = (*bent.prisms(bottom=0.0, top=1.4), Prism(np.array([(-1.5, 2.0)])))
    if measure == "flames":
        prisms = (plane(bottom=2.6),)
    if measure == "wicks":  # a floor so high that the arm's length is what holds now and then
        prisms = (plane(top=0.4),)
        work = {
            "left": (HandDeviation(-1.0, 25.0, 0.5),),
            "right": (HandDeviation(-1.0, 25.0, 0.2),),
        }
        cast = [replace(each, deviation=work) for each in cast]
        grid = cells(cast, 0, 24)
    kernel = _Kernel(cast, grid, prisms, measure)
    draw = np.random.default_rng(seed)
    n = 64
    cell = draw.integers(len(grid.start), size=n)
    width = grid.end[cell] - grid.start[cell]
    half = 0.5 * width * 2.0 ** -draw.uniform(0, 7, n)
    centre = grid.start[cell] + half + draw.uniform(0, 1, n) * (width - 2 * half)

    def sampled(at, wide):
        return kernel.sampled(np.zeros(n, int), cell, at, wide, np.inf)

    whole = sampled(centre, half)
    for share in np.linspace(-0.98, 0.98, 13):
        points = sampled(centre + share * half, np.zeros(n))
        assert np.all(whole.lower <= points.value + 1e-9)
        assert np.all(whole.upper >= points.value - 1e-9)


@pytest.mark.parametrize("half", [0.1, 0.3, 0.6])
def test_a_way_that_bends_back_is_bounded_by_its_acceleration(dance, half):
    """At the far end of a bend nothing moves nearer yet: only the second order tells what comes."""
    bend = Move(start=0.0, end=4.0, place=(2.0, 6.0), facing=0.0, through=((3.0, 5.0),))
    cast = [
        dance.dancer("Ada", (0.0, 5.0), sides=(), lit=()),
        dance.dancer("Bo", (2.0, 4.0), sides=(), lit=(), moves=(bend,)),
    ]
    grid = cells(cast, 0, 4)
    cell = np.array([int(np.searchsorted(grid.edges, 2.0, side="right") - 1)])
    kernel = PairKernel(grid, np.array([0]), np.array([1]), cell)
    sample = kernel.sample(np.array([0]), np.array([2.0]), np.array([half]), np.array([np.inf]))
    near = dance.sampled_distance(*cast, np.linspace(2.0 - half, 2.0 + half, 201))
    assert near.min() < near[100] - 1e-4  # it does come nearer on both sides
    assert sample.lower[0] <= near.min() + 1e-9
