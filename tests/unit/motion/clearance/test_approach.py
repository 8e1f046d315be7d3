from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.grid import cells
from sequencer.motion.clearance.nearest import closest
from sequencer.motion.performers.body_parts import PARTS
from sequencer.motion.performers.walks import Move, WalkPath
from tests.nothing_kept import nothing_kept


def test_agrees_with_dense_sampling(dance):
    cast = dance.random_cast(4, seed=3)
    found = approaches(cast, 0, 64, required=0.3)
    beats = np.linspace(0, 64, 64 * 400 + 1)

    assert np.any(found.dismissed == 0)
    for k, (i, j) in enumerate(zip(found.first, found.second, strict=True)):
        dense = dance.sampled_distance(cast[i], cast[j], beats)
        if found.dismissed[k]:
            assert found.distance[k] <= dense.min()
            continue
        # The proven value is within 5 mm of the true one; sampling can only be too large.
        assert found.distance[k] <= dense.min() + 0.005
        assert found.distance[k] >= dense.min() - 0.01
        assert_allclose(
            dance.sampled_distance(cast[i], cast[j], [found.at[k]]), found.distance[k], atol=1e-9
        )
        own = found.spans.group == k
        under = beats[dense < 0.3]
        inside = np.zeros(len(under), bool)
        for low, high in zip(found.spans.start[own], found.spans.end[own], strict=True):
            inside |= (under >= low - 1e-9) & (under <= high + 1e-9)
            middle = np.linspace(low, high, 50)
            assert dance.sampled_distance(cast[i], cast[j], middle).min() < 0.305
        assert np.all(inside)


def test_far_apart_is_dismissed_with_a_bound(dance):
    cast = [dance.dancer("Ada", (0, 3)), dance.dancer("Bo", (30, 3))]
    found = approaches(cast, 0, 64, required=0.3)

    assert found.dismissed[0]
    assert found.evaluations == 0
    assert 25 < found.distance[0] < 30
    assert tuple(found.part[0]) == (-1, -1)


def test_flames_count_only_while_lit(dance):
    def gap(lit):
        cast = [dance.dancer(n, (x, 3), lit=lit, flame=0.3) for n, x in (("Ada", 0), ("Bo", 2.6))]
        found = approaches(cast, 0, 32, required=5.0)
        return found.distance[0], found.at[0]

    always, never = gap(((0, 32),))[0], gap(())[0]
    early, at = gap(((0.0, 8.0),))

    assert never - 0.61 < always < never - 0.2
    assert_allclose(early, always, atol=0.006)
    assert at < 8.0


def test_crossing_paths_are_found(dance):
    ada = dance.dancer("Ada", (-3, 3), moves=(Move(start=4, end=12, place=(3, 3), facing=0),))
    bo = dance.dancer("Bo", (0, 0), moves=(Move(start=4, end=12, place=(0, 6), facing=0),))
    found = approaches([ada, bo], 0, 16, required=0.3)

    assert found.distance[0] < -0.4
    assert 7 < found.at[0] < 9
    assert len(found.spans.group) >= 1


def test_order_of_the_cast_does_not_matter(dance):
    cast = dance.random_cast(3, seed=8)
    one, other = approaches(cast, 0, 32, required=0.3), approaches(cast[::-1], 0, 32, required=0.3)

    assert_allclose(np.sort(one.distance), np.sort(other.distance), atol=0.005)


def test_one_dancer_has_no_pairs(dance):
    found = approaches([dance.dancer()], 0, 8, required=0.3)

    assert len(found.distance) == 0


def test_two_in_one_place(dance):
    cast = [dance.dancer("Ada", (0, 3)), dance.dancer("Bo", (0, 3))]
    found = approaches(cast, 0, 8, required=0.3)

    assert found.distance[0] < -0.4
    assert_allclose(found.spans.start, [0])
    assert_allclose(found.spans.end, [8])


def test_cells_never_straddle_a_change_of_flame(dance):
    ada = dance.dancer(lit=((1.23, 4.56),))
    grid = cells([ada], 0, 8)

    assert {1.23, 4.56} <= set(grid.edges)
    assert list(grid.lit[0]) == [bool(1.23 <= x <= 4.56) for x in 0.5 * (grid.start + grid.end)]


def test_unbounded_motion_is_refused(dance):
    ada = dance.dancer()

    class Wild:
        def __init__(self, trajectory):
            self.at = trajectory.at
            self.pieces = lambda start, end: tuple(
                (
                    low,
                    high,
                    type(b)(**{**{s: getattr(b, s) for s in b.__slots__}, "hand_speed": np.inf}),
                )
                for low, high, b in trajectory.pieces(start, end)
            )

    wild = dance.dancer("Bo")
    object.__setattr__(wild, "trajectories", {k: Wild(c) for k, c in wild.trajectories.items()})
    with pytest.raises(ValueError, match="not finite"):
        approaches([ada, wild], 0, 8, required=0.3)


def test_nearest_parts(dance):
    cast = [dance.dancer("Ada", (0, 3), sides=()), dance.dancer("Bo", (1, 3), sides=())]
    near = closest(*cast, [0.0, 1.0])

    assert_allclose(near.distance, 1 - 2 * cast[0].body.half_breadth)
    assert [PARTS[k].name for k in near.part[0]] == ["body", "body"]
    assert_allclose(near.direction, [[1, 0, 0], [1, 0, 0]])


def test_a_cast_of_five_hundred(dance):
    """Cost grows with neighbours: on a wide field nobody is sampled."""
    ada = dance.dancer("d0", (0, 0), lit=())
    cast = [
        replace(ada, name=f"d{k}", floor=WalkPath((6.0 * (k % 25), 6.0 * (k // 25))))
        for k in range(500)
    ]
    found = approaches(cast, 0, 4, required=0.3)

    assert len(found.distance) == 500 * 499 // 2
    assert np.all(found.dismissed == 1)
    assert found.evaluations == 0
    assert found.distance.min() > 0.3


def test_near_in_no_single_cell(dance):
    """Windows of beats cannot tell two apart who follow each other; single cells can."""
    walk = (Move(start=1, end=15, place=(12, 3), facing=0),)
    ada = dance.dancer("Ada", (0, 3), moves=walk, lit=())
    bo = dance.dancer("Bo", (6, 3), moves=(Move(start=1, end=15, place=(18, 3), facing=0),), lit=())
    found = approaches([ada, bo], 0, 16, required=0.3)

    assert found.dismissed[0] == 1
    assert found.evaluations == 0
    assert 0.3 < found.distance[0] < 6


def test_without_minima_only_the_verdict_is_worked_out(dance):
    cast = dance.random_cast(4, seed=3)
    with nothing_kept():
        whole = approaches(cast, 0, 64, required=0.3)
    with nothing_kept():
        short = approaches(cast, 0, 64, required=0.3, minima=False)

    assert short.evaluations < whole.evaluations
    assert_allclose(np.minimum(whole.distance, 0.3), np.minimum(short.distance, 0.3), atol=0.006)
    assert set(short.spans.group) == set(whole.spans.group)
