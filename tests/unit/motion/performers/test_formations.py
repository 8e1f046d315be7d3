import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose
from scipy.spatial.distance import pdist

from sequencer.motion.performers.formations import FORMATION_SHAPES, filled_shape, shape

PAIRS = {"face to face", "back to back"}


@pytest.mark.parametrize("name", FORMATION_SHAPES)
@pytest.mark.parametrize("n", [2, 4, 6, 8, 12])
def test_nearest_places_are_one_spacing_apart(name, n):
    places = shape(name, n, centre=(2, 5), spacing=1.8, turn=0.7)

    assert_allclose(pdist(places.points).min(), 1.8)
    assert places.points.shape == (n, 2)


@pytest.mark.parametrize("name", FORMATION_SHAPES)
def test_the_centre_is_the_middle(name):
    points = shape(name, 8, centre=(2, 5), spacing=1.8).points

    assert_allclose(0.5 * (points.min(axis=0) + points.max(axis=0)), [2, 5], atol=1e-12)


def test_a_line_runs_left_to_right():
    points = shape("line", 4, spacing=2).points

    assert_allclose(points, [[-3, 0], [-1, 0], [1, 0], [3, 0]])


def test_a_wedge_points_at_the_audience():
    points = shape("wedge", 5, spacing=1).points

    assert np.argmin(points[:, 1]) == 0
    assert_allclose(points[1:, 0].sum(), 0, atol=1e-12)


def test_a_diamond_of_four_has_its_corners():
    points = shape("diamond", 4, spacing=np.sqrt(2)).points

    assert_allclose(points, [[0, -1], [1, 0], [0, 1], [-1, 0]], atol=1e-12)


def test_a_circle_is_round():
    points = shape("circle", 7, spacing=1.5, centre=(1, 2)).points - [1, 2]
    middle = points.mean(axis=0)

    assert_allclose(np.hypot(*(points - middle).T), 0.75 / np.sin(np.pi / 7))


def test_a_box_and_a_stagger():
    assert_allclose(
        shape("box", 5).points,
        [[-1, -0.5], [0, -0.5], [1, -0.5], [-0.5, 0.5], [0.5, 0.5]],
    )
    assert_allclose(np.unique(shape("stagger", 5).points[:, 1]).size, 2)


@pytest.mark.parametrize(("name", "sign"), [("face to face", 1), ("back to back", -1)])
@pytest.mark.parametrize("turn", [0.0, 1.1])
def test_pairs_look_at_each_other_or_away(name, sign, turn):
    """A facing φ looks along (sin φ, −cos φ)."""
    places = shape(name, 4, spacing=1.5, turn=turn)
    look = np.stack([np.sin(places.facings), -np.cos(places.facings)], axis=1)
    across = (places.points[1] - places.points[0]) / 1.5

    assert_allclose(look[0], sign * across, atol=1e-12)
    assert_allclose(look[1], -sign * across, atol=1e-12)


@pytest.mark.parametrize(
    ("make", "match"),
    [
        (lambda: shape("star", 4), "not known; use one of line"),
        (lambda: shape("line", 0), "at least one"),
        (lambda: shape("face to face", 3), "even number"),
        (lambda: shape("line", 3, spacing=0), "spacing"),
        (lambda: shape("line", 3, spacing=float("nan")), "spacing"),
        (lambda: shape("line", 3, centre=(float("inf"), 0)), "centre"),
        (lambda: shape("line", 3, turn=float("nan")), "turn"),
        (lambda: filled_shape("line", names=["A", "A"], centre=(0, 0), spacing=1), "twice"),
    ],
)
def test_what_cannot_be_formed_is_refused(make, match):
    with pytest.raises(ValueError, match=match):
        make()


def test_one_person_stands_in_the_middle():
    for name in set(FORMATION_SHAPES) - PAIRS:
        assert_allclose(shape(name, 1, centre=(1, 2)).points, [[1, 2]])


places = st.lists(
    st.tuples(st.floats(-10, 10), st.floats(-10, 10)), min_size=6, max_size=6, unique=True
)


shapes = st.sampled_from(FORMATION_SHAPES)


def taken(before, name):
    """Where six people stand, and where they stand in a shape."""
    names = "ABCDEF"
    spots = filled_shape(
        name,
        names=names,
        centre=(0, 3),
        spacing=1.8,
        before={who: (*place, 0.0) for who, place in zip(names, before, strict=True)},
    )
    return np.array(before), np.array([spots[who][:2] for who in names])


@given(places, shapes)
def test_ways_keep_their_distance(before, name):
    """Whoever walks straight at the same time stays 1/√2 of the smaller distance apart.

    M. Turpin, N. Michael, V. Kumar, CAPT, Int. J. Robotics Research 33 (2014), theorem 1 (from memory).
    """
    start, goal = taken(before, name)
    share = np.linspace(0, 1, 101)[:, None, None]
    way = start + share * (goal - start)
    for i in range(6):
        for j in range(i):
            gap = np.hypot(*(way[:, i] - way[:, j]).T)
            assert gap.min() >= min(gap[0], gap[-1]) / np.sqrt(2) - 1e-6


@given(places, shapes)
def test_no_exchange_shortens_the_squares(before, name):
    start, goal = taken(before, name)
    cost = np.sum((start[:, None] - goal[None]) ** 2, axis=-1)
    for i in range(6):
        for j in range(i):
            assert cost[i, i] + cost[j, j] <= cost[i, j] + cost[j, i] + 1e-9


def test_people_take_the_nearest_places():
    spots = filled_shape(
        "line",
        names=("Ada", "Bo", "Cy"),
        centre=(0, 3),
        spacing=2,
        before={"Ada": (5, 3, 0), "Bo": (-5, 3, 0), "Cy": (0, 0, 90)},
    )

    assert spots == {"Ada": (2, 3, 0), "Bo": (-2, 3, 0), "Cy": (0, 3, 0)}


def test_a_given_order_is_kept():
    given_order = filled_shape(
        "line",
        names=("Ada", "Bo"),
        centre=(0, 3),
        spacing=2,
        fixed=True,
        before={"Ada": (5, 3, 0), "Bo": (-5, 3, 0)},
    )

    assert given_order == {"Ada": (-1, 3, 0), "Bo": (1, 3, 0)}


def test_who_comes_in_fills_what_is_left():
    spots = filled_shape(
        "line",
        names=("Ada", "Bo", "Cy"),
        centre=(0, 0),
        spacing=1,
        turn=90,
        before={"Cy": (0, -9, 0)},
    )

    assert_allclose(spots["Cy"], (0, -1, 0), atol=1e-12)
    assert len({tuple(np.round(spot, 6)) for spot in spots.values()}) == 3
