"""Walking round obstacles and seeing past them: each path measured by hand."""

from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry import walking
from sequencer.geometry.walking import NO_WAY, WalkableFloor

SQUARE = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
FAR = ((4.0, 0.0), (6.0, 0.0), (6.0, 5.0), (4.0, 5.0))
YARD = tuple(
    ((x, y), (u, y), (u, v), (x, v))
    for x, y, u, v in ((-3, -3, 3, -2), (-3, 2, 3, 3), (-3, -2, -2, 2), (2, -2, 3, 2))
)
R2 = np.sqrt(2.0)


@pytest.fixture(params=[1, 5, 200_000])
def chunk(request, monkeypatch):
    """Lines tested at a time: the result hangs on none of these."""
    monkeypatch.setattr(walking, "_CHUNK", request.param)


@pytest.mark.usefixtures("chunk")
def test_a_way_is_straight_or_bends_at_corners():
    """Round a square of 2 m: along one side, past one corner, touching a corner or a side, or straight."""
    ways = WalkableFloor((SQUARE,)).ways_to([(3.0, 1.0), (1.0, -1.0), (3.0, -1.0)])
    found = ways(np.array([[-1.0, 1.0], [-1.0, -1.0], [-1.0, 0.0], [3.0, 0.0]]))
    expected = [
        [2 + 2 * R2, 2 * R2, R2 + np.hypot(3, 1)],
        [np.hypot(3, 1) + R2, 2.0, 4.0],
        [1 + 2 + R2, min(np.hypot(2, 1), 1 + R2), np.hypot(4, 1)],
        [1.0, np.hypot(2, 1), 1.0],
    ]
    assert_allclose(found, expected, atol=1e-9)


@pytest.mark.usefixtures("chunk")
def test_a_way_leads_between_two_obstacles_and_past_both():
    floor = WalkableFloor((SQUARE, FAR))
    ways = floor.ways_to([(7.0, 4.0), (3.0, 4.0), (-1.0, 1.0)])
    found = ways(np.array([[-1.0, 1.0], [3.0, -2.0]]))
    over = R2 + np.hypot(4, 3) + 2 + R2  # (0, 2) to (4, 5), along its top to (6, 5), to (7, 4)
    under = R2 + 6 + np.hypot(1, 4)  # (0, 0) to (6, 0), to (7, 4)
    assert over < under
    assert_allclose(
        found,
        [
            [over, R2 + np.hypot(3, 2), 0.0],
            [np.hypot(3, 2) + np.hypot(1, 4), 6.0, np.hypot(3, 2) + R2],
        ],
        atol=1e-9,
    )


def test_a_walled_yard_has_no_way_in():
    floor = WalkableFloor(YARD)
    ways = floor.ways_to([(0.0, 0.0), (5.0, 0.0)])
    found = ways(np.array([[1.0, 1.0], [-4.0, 0.0]]))
    assert_allclose(found[0, 0], R2)
    assert np.isinf(found[0, 1])
    assert np.isinf(found[1, 0])
    assert_allclose(found[1, 1], np.hypot(1, 3) + 6 + np.hypot(2, 3))  # past two corners
    assert NO_WAY == 1e6  # a thousand kilometres: farther than any way, and still a number


def test_an_empty_floor_is_crossed_straight_and_seen_across():
    places = np.array([[0.0, 0.0], [3.0, 4.0], [6.0, 8.0]])
    targets = [(0.0, 0.0), (3.0, 0.0)]
    assert_allclose(
        WalkableFloor().ways_to(targets)(places),
        [[0, 3], [5, 4], [10, np.hypot(3, 8)]],
    )
    gaps = WalkableFloor().sight_to(targets)(places)
    assert gaps.shape == (3, 2)
    assert np.all(np.isinf(gaps))


def test_sight_keeps_a_gap_from_the_nearest_obstacle():
    gaps = WalkableFloor((SQUARE, FAR)).sight_to([(-1.0, -1.0), (3.0, -3.0)])
    found = gaps(np.array([[3.0, -1.0], [-1.0, 3.0], [3.5, 9.0], [1.0, 5.0]]))
    assert_allclose(found[0], [1.0, R2], atol=1e-9)
    assert_allclose(found[1, 0], 1.0)
    assert found[1, 1] == 0.0
    assert found[2, 0] == 0.0
    # 0.5 to 1 m beside the lines x = 4 and x = 2: the line from (3, −3) to (3.5, 9) leans 1 in 24
    right = (1 - 8 / 24) / np.hypot(1, 1 / 24)  # of (4, 5): at 8 m up it stands at 3 + 1/3
    left = (1 + 3 / 24) / np.hypot(1, 1 / 24)  # of (2, 0)
    assert_allclose(found[2, 1], min(right, left), atol=1e-9)


def test_no_places_have_no_ways_and_no_targets_none():
    assert walking._CHUNK == 20_000  # approved: bounds the memory, some 6 MB of lines
    assert WalkableFloor((SQUARE,)).ways_to([])(np.zeros((2, 2))).shape == (2, 0)
    assert WalkableFloor((SQUARE,))._open(np.zeros((0, 2)), np.zeros((3, 2))).shape == (0, 3)
    assert WalkableFloor((SQUARE,)).ways_to([(5.0, 5.0)])(np.zeros((0, 2))).shape == (0, 1)


@pytest.mark.parametrize(
    ("starts", "ends", "rows"),
    [(5, 5, [2, 2, 1]), (3, 20, [1, 1, 1]), (13, 1, [12, 1]), (13, 0, [12, 1]), (4, 6, [2, 2])],
)
def test_as_many_rows_are_tested_at_a_time_as_make_a_dozen_lines(starts, ends, rows, monkeypatch):
    monkeypatch.setattr(walking, "_CHUNK", 12)
    real, seen = walking._lines, []
    monkeypatch.setattr(walking, "_lines", lambda a, b: seen.append(len(a)) or real(a, b))
    draw = np.random.default_rng(1)
    found = WalkableFloor((SQUARE,))._open(
        draw.uniform(3, 9, (starts, 2)), draw.uniform(3, 9, (ends, 2))
    )
    assert seen == rows
    assert found.shape == (starts, ends)
    assert found.all()


def test_one_obstacle_far_aside_is_walked_round_too():
    """Its corners are those of the outline, X first: along its downstage side, 2 m and twice √2."""
    ways = WalkableFloor((FAR,)).ways_to([(7.0, 1.0)])
    assert_allclose(ways(np.array([[3.0, 1.0]])), [[2 + 2 * R2]], atol=1e-9)


def test_ways_and_sights_come_out_the_same_in_small_parts(monkeypatch):
    floor = WalkableFloor((SQUARE, FAR))
    draw = np.random.default_rng(2)
    places, targets = draw.uniform(-3, 9, (40, 2)), draw.uniform(-3, 9, (5, 2))
    whole = [floor.ways_to(targets)(places), floor.sight_to(targets)(places)]
    monkeypatch.setattr(walking, "_CHUNK", 7)
    assert np.array_equal(floor.ways_to(targets)(places), whole[0])
    assert np.array_equal(floor.sight_to(targets)(places), whole[1])
    assert 0 < np.count_nonzero(whole[1] == 0.0) < whole[1].size


@pytest.mark.usefixtures("chunk")
@pytest.mark.parametrize(
    ("start", "end", "path"),
    [
        ((-1.0, 1.0), (3.0, 1.0), 2),  # round the square, on either side
        ((-1.0, -1.0), (3.0, -1.0), 0),  # straight
        ((-1.0, 0.5), (5.0, 6.0), 1),  # past one corner
        ((3.0, 1.0), (7.0, 1.0), 2),
    ],
)
def test_the_path_bends_at_corners_and_is_as_long_as_the_way(start, end, path):
    floor = WalkableFloor((SQUARE, FAR))
    found = floor.path_between(start, end)
    legs = [np.hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(found)]

    assert (found[0], found[-1], len(found) - 2) == (start, end, path)
    assert set(found[1:-1]) <= {*SQUARE, *FAR}
    assert all(floor.is_open(a, b) for a, b in pairwise(found))
    assert sum(legs) == pytest.approx(floor.ways_to([end])(np.array([start]))[0, 0])


def test_out_of_a_closed_yard_there_is_no_path():
    assert WalkableFloor(YARD).path_between((0.0, 0.0), (9.0, 0.0)) is None
    assert WalkableFloor().path_between((0.0, 0.0), (9.0, 0.0)) == ((0.0, 0.0), (9.0, 0.0))
    assert not WalkableFloor(YARD).is_open((0.0, 0.0), (9.0, 0.0))
