"""Cells: what they bound holds at every moment in them, and no more loosely than it must."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.clearance.approach import _reach_bounds
from sequencer.motion.clearance.grid import cells
from sequencer.motion.performers.parts import HandDeviation
from sequencer.motion.performers.walks import Move


def walker(dance, name, place, to, *, start=0.0, end=8.0, **more):
    return dance.dancer(
        name, place, moves=(Move(start=start, end=end, place=to, facing=0.0),), **more
    )


def test_a_place_strays_from_that_at_the_middle_as_far_as_its_speed_takes_it(dance):
    """A walk of 4 m in 8 beats, fastest at its middle, where it does 15/8 of 4/8 m a beat."""
    ada = walker(dance, "Ada", (0.0, 3.0), (4.0, 3.0))
    grid = cells([ada], 0.0, 9.0)
    for k, (low, high) in enumerate(zip(grid.start, grid.end, strict=True)):
        places = ada.floor.at(np.linspace(low, high, 1001)).place
        off = np.linalg.norm(places - grid.place[0, k], axis=1).max()
        assert off <= grid.place_uncertainty[0, k] + 1e-12
    middle = int(np.searchsorted(grid.start, 4.0))
    assert grid.place_uncertainty[0, middle] == pytest.approx(15 / 8 * 0.5 / 2)
    assert_allclose(grid.place_uncertainty[0, grid.start >= 8.0], 0.0)


def test_cells_are_cut_at_beats_bounds_and_changes_and_hold_the_largest_of_each(dance):
    ada = dance.dancer(
        moves=(Move(start=0.6, end=2.1, place=(1.0, 4.0), facing=2.0),), lit=((1.3, 2.7),)
    )
    ada = replace(ada, deviation={"left": (HandDeviation(0.2, 3.4, 0.1),)})
    grid = cells([ada], 0.1, 4.4)
    # Bounds of a walk from 0.6 to 2.1 are rounded to quarters, what jumps is not.
    assert_allclose(
        grid.edges, [0.1, 0.2, 0.25, 0.5, 1.0, 1.3, 2.0, 2.7, 3.0, 3.4, 3.5, 4.0, 4.4], atol=1e-12
    )
    assert list(grid.lit[0]) == [1.3 <= low < 2.7 for low in grid.start]
    assert_allclose(grid.place[0], ada.floor.at((grid.start + grid.end) / 2).place)
    for k, (low, high) in enumerate(zip(grid.start, grid.end, strict=True)):
        own = ada.pieces(low, high)
        assert_allclose(grid.speed[0, k], own.speed.max(axis=0)[:8])
        assert_allclose(grid.acceleration[0, k], own.acceleration.max(axis=0)[:8])
        assert grid.reach[0, k] == pytest.approx(own.reach.max())
        assert grid.drawn[0, k] == pytest.approx(own.drawn.max())
        assert_allclose(grid.hand_speed[0, k], own.hand_speed.max(axis=0))


def places_apart(one, two, beats):
    return np.linalg.norm(one.floor.at(beats).place - two.floor.at(beats).place, axis=1)


@pytest.mark.parametrize("span", [(0.0, 8.0), (0.0, 40.0), (3.2, 3.9), (4.1, 4.9)])
def test_reach_balls_are_never_nearer_than_said(dance, span):
    """Two who walk past each other, against their places at instants; within one cell as well."""
    one = walker(dance, "Ada", (-3.0, 3.0), (3.0, 3.0))
    two = walker(dance, "Bo", (4.0, 6.0), (-2.0, 7.0), start=1.0, end=7.0)
    grid = cells([one, two], *span)
    bound, when = _reach_bounds(grid, np.array([0]), np.array([1]))
    dense = places_apart(one, two, np.linspace(*span, 4001)).min()

    assert bound[0] <= dense - one.reach - two.reach + 1e-9
    assert span[0] <= when[0] <= span[1]


def test_reach_balls_of_who_stands_are_exact_and_the_nearest_window_counts(dance):
    """Standing: distance of the places less both reaches. Sixteen beats apart, then near, then apart."""
    near = (Move(start=16.0, end=24.0, place=(5.0, 3.0), facing=0.0),
            Move(start=32.0, end=40.0, place=(9.0, 3.0), facing=0.0))  # fmt: skip
    one, two = dance.dancer("Ada", (0.0, 3.0)), dance.dancer("Bo", (9.0, 3.0), moves=near)
    bare = cells([one, two], 0.0, 16.0)
    bound, when = _reach_bounds(bare, np.array([0]), np.array([1]))
    reach = bare.reach.max(axis=1).sum()
    assert bound[0] == pytest.approx(9.0 - reach)
    assert when[0] == pytest.approx(8.0)
    still = cells([one, dance.dancer("Cy", (9.0, 3.0))], 0.0, 48.0)
    bound, when = _reach_bounds(still, np.array([0]), np.array([1]))
    assert (bound[0], when[0]) == pytest.approx((9.0 - reach, 8.0))  # of equal ones the earliest
    grid = cells([one, two], 0.0, 56.0)
    bound, when = _reach_bounds(grid, np.array([0]), np.array([1]))
    assert 5.0 - reach - 4.5 < bound[0] <= 5.0 - reach
    assert 16.0 <= when[0] <= 40.0
