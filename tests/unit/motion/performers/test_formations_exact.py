"""Every formation place by place, by hand, in one order: left to right and from the audience upstage."""

from itertools import permutations

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.performers.formations import (
    FORMATION_SHAPES,
    Places,
    _nearest,
    _taken,
    _unit,
    filled_shape,
    shape,
)

HIGH, DEEP = np.sqrt(3) / 2, np.sqrt(0.5)
UNITS = {
    ("line", 1): [(0, 0)],
    ("line", 3): [(0, 0), (1, 0), (2, 0)],
    ("wedge", 1): [(0, 0)],
    ("wedge", 2): [(0, 0), (-1, 1)],
    ("wedge", 6): [(0, 0), (-1, 1), (1, 1), (-2, 2), (2, 2), (-3, 3)],
    ("circle", 4): [(0, -1), (1, 0), (0, 1), (-1, 0)],
    ("circle", 3): [(0, -1), (HIGH, 0.5), (-HIGH, 0.5)],
    ("stagger", 1): [(0, 0)],
    ("stagger", 2): [(0, 0), (0.5, HIGH)],
    ("stagger", 5): [(0, 0), (1, 0), (2, 0), (0.5, HIGH), (1.5, HIGH)],
    ("diamond", 4): [(0, -1), (1, 0), (0, 1), (-1, 0)],
    ("diamond", 8): [
        (0, -1), (0.5, -0.5), (1, 0), (0.5, 0.5), (0, 1), (-0.5, 0.5), (-1, 0), (-0.5, -0.5),
    ],
    ("diamond", 5): [(0, -1), (0.8, -0.2), (0.4, 0.6), (-0.4, 0.6), (-0.8, -0.2)],
    ("box", 1): [(0, 0)],
    ("box", 4): [(-0.5, 0), (0.5, 0), (-0.5, 1), (0.5, 1)],
    ("box", 5): [(-1, 0), (0, 0), (1, 0), (-0.5, 1), (0.5, 1)],
    ("box", 7): [(-1, 0), (0, 0), (1, 0), (-1, 1), (0, 1), (1, 1), (0, 2)],
    ("face to face", 4): [(0, 0), (1, 0), (2.5, 0), (3.5, 0)],
    ("back to back", 2): [(0, 0), (1, 0)],
}  # fmt: skip


@pytest.mark.parametrize(("name", "n"), UNITS)
def test_places_by_hand(name, n):
    """Up to scale and shift; pairs stand one spacing apart, and one and a half from the next pair."""
    points, facings = _unit(name, n)
    assert_allclose(points, UNITS[name, n], atol=1e-15)
    quarter = {"face to face": np.pi / 2, "back to back": -np.pi / 2}.get(name, 0.0)
    assert_array_equal(facings, np.resize([quarter, -quarter], n))


def test_which_shapes_there_are():
    assert FORMATION_SHAPES == (
        "line", "wedge", "diamond", "circle", "box", "stagger", "face to face", "back to back",
    )  # fmt: skip


def test_scale_shift_and_turn_by_hand():
    """A wedge of three: points (0, 0), (−1, 1), (1, 1), nearest √2 apart, middle at (0, ½)."""
    found = shape("wedge", 3, centre=(10.0, 20.0), spacing=2 * np.sqrt(2), turn=np.pi / 2)
    # scaled twofold (0, −1), (−2, 1), (2, 1), then a quarter turn: (x, y) → (−y, x)
    assert_allclose(found.points, [(11, 20), (9, 18), (9, 22)], atol=1e-12)
    assert_array_equal(found.facings, np.zeros(3))
    eighth = shape("line", 2, spacing=2.0, turn=np.pi / 4)
    assert_allclose(eighth.points, [(-DEEP, -DEEP), (DEEP, DEEP)], atol=1e-12)
    plain = shape("line", 2)
    assert_array_equal(plain.points, [(-0.5, 0), (0.5, 0)])
    pair = shape("back to back", 2, turn=0.25)
    assert_allclose(pair.facings, [0.25 - np.pi / 2, 0.25 + np.pi / 2])


def test_the_nearest_two():
    points = np.array([(0.0, 0.0), (3.0, 4.0), (3.0, 16.0), (-8.0, 6.0)])
    assert _nearest(points) == 5.0
    assert _nearest(points[1:]) == pytest.approx(np.hypot(11, 2))


@pytest.mark.parametrize("spacing", [0.0, -1.0, 1000.0, float("nan")])
def test_spacings_out_of_range(spacing):
    with pytest.raises(ValueError, match="spacing must be above 0 and below 1000"):
        shape("line", 2, spacing=spacing)


def test_spacings_at_the_edge():
    assert_allclose(shape("line", 2, spacing=999.9).points[1, 0], 499.95)
    assert_allclose(shape("line", 2, spacing=0.5).points[1, 0], 0.25)
    assert_allclose(shape("line", 1, spacing=0.5, centre=(3.0, 4.0)).points, [(3, 4)])
    for n in (0, -1):
        with pytest.raises(ValueError, match="at least one person"):
            shape("line", n)
    with pytest.raises(ValueError, match="turn must be finite"):
        shape("line", 2, turn=float("inf"))


def test_filled_in_degrees():
    spots = filled_shape(
        "face to face", names=("Ada", "Bo"), centre=(1.0, 2.0), spacing=2.0, turn=90.0
    )
    assert list(spots) == ["Ada", "Bo"]
    assert spots["Ada"] == pytest.approx((1.0, 1.0, 180.0))
    assert spots["Bo"] == pytest.approx((1.0, 3.0, 0.0))
    line = filled_shape("line", names=("Ada", "Bo"), centre=(0.0, 0.0), spacing=1.0)
    assert line == {"Ada": (-0.5, 0.0, 0.0), "Bo": (0.5, 0.0, 0.0)}


def test_who_is_not_there_yet_does_not_count():
    """Nobody known: in order, as if no places were given; somebody known: all ways are weighed."""
    given = {"names": ("Ada", "Bo", "Cy"), "centre": (0.0, 0.0), "spacing": 1.0}
    plain = filled_shape("line", **given)
    assert filled_shape("line", **given, before={}) == plain
    assert filled_shape("line", **given, before={"Dee": (9, 0, 0)}) == plain
    one = filled_shape("line", **given, before={"Ada": (9, 0, 0)})
    assert one["Ada"] == (1.0, 0.0, 0.0)
    assert {one["Bo"], one["Cy"]} == {(-1.0, 0.0, 0.0), (0.0, 0.0, 0.0)}
    assert filled_shape("line", **given, before={"Ada": (9, 0, 0)}, fixed=True) == plain


def test_the_sum_of_the_squares_is_least_of_all_orders():
    """Against all 120 orders of five; the third is not there yet."""
    draw = np.random.default_rng(8)
    names = list("ABCDE")
    for _ in range(20):
        points = draw.uniform(-3, 3, (5, 2))
        before = {who: (*draw.uniform(-3, 3, 2), 0.0) for who in names if who != "C"}
        order = _taken(Places(points, np.zeros(5)), names, [0, 1, 3, 4], before)

        def cost(order, points=points, before=before):
            return sum(
                (before[who][0] - points[k, 0]) ** 2 + (before[who][1] - points[k, 1]) ** 2
                for who, k in zip(names, order, strict=True)
                if who in before
            )

        assert sorted(order) == list(range(5))
        assert cost(order) == pytest.approx(min(cost(each) for each in permutations(range(5))))
