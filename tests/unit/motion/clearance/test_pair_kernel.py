"""Every term of the bounds on a pair, against plain loops over points and parts with drawn states and bounds.

A point that is at z along a direction, with the rate v, |second derivative| ≤ a and speed ≤ s, stays below
z + min(|v|h + a·h²/2, s·h) within h (Taylor's theorem; the mean value theorem). States and the cells' bounds
are drawn, so that each of the terms decides somewhere.
"""

from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.clearance import pair_kernel
from sequencer.motion.clearance.pair_kernel import PairKernel
from sequencer.motion.performers.sampling import States

# Ends of each part, by hand; with rear ends a tether begins there, without them at the hand.
PARTS = {
    10: [(0, 1), (2, 3), (8, 4), (4, 4), (5, 6), (9, 7), (7, 7), (8, 8), (9, 9)],
    8: [(0, 1), (2, 3), (3, 4), (4, 4), (5, 6), (6, 7), (7, 7)],
}
ARM_OF = {1: 0, 4: 1}  # left and right arm among the parts
ARM_AT = {2: 0, 3: 0, 5: 1, 6: 1}  # shoulders and hands among the points


@pytest.mark.parametrize(
    ("points", "first", "last"),
    [
        (10, [0, 0, 1, 1, 2, 4, 4, 5, 2, 5], [0, 0, 1, 1, 3, 4, 4, 6, 7, 8]),
        (8, [0, 0, 1, 1, 2, 4, 4, 5], [0, 0, 1, 2, 3, 4, 5, 6]),
    ],
)
def test_points_and_parts_that_end_there(points, first, last):
    layout = pair_kernel._layout.__wrapped__(points)
    assert_array_equal(layout.starts, [a for a, _ in PARTS[points]])
    assert_array_equal(layout.ends, [b for _, b in PARTS[points]])
    assert_array_equal(layout.first, first)
    assert_array_equal(layout.last, last)
    assert_array_equal(layout.arms, list(ARM_AT))


class Pairs:
    """Rows of pairs of two of three drawn dancers in one of two cells, states drawn for each row."""

    def __init__(self, points, seed, *, n=6, spread=0.4, apart=1.5, speed=1.0):
        draw = np.random.default_rng(seed)
        self.n, self.p = n, points
        k = len(PARTS[points])
        self.first, self.second = draw.integers(0, 3, (2, n))
        self.cell = draw.integers(0, 2, n)
        self.half = draw.uniform(0.02, 0.3, n)
        places = spread * draw.normal(size=(2 * n, points, 3))
        places[:n] += [[[apart, 0.5 * apart, 0.1]]]
        self.state = States(
            places,
            speed * draw.normal(size=(2 * n, points, 3)),
            draw.uniform(0.02, 0.3, (2 * n, k)),
        )
        # The states of the second dancers come first, so that indices are told apart.
        self.a, self.b = n + draw.permutation(n), draw.permutation(n)
        self.speed = draw.uniform(0.2, 2.0, (3, 2, points))
        self.acceleration = draw.uniform(0.0, 8.0, (3, 2, points))
        self.swing = draw.uniform(0.0, 1.5, (3, 2, 2))
        self.slopes = draw.uniform(0.5, 2.0, 3)
        grid = SimpleNamespace(
            ensemble=SimpleNamespace(elbow_slopes=self.slopes), points=points, speed=self.speed,
            acceleration=self.acceleration, hand_speed=self.swing,
        )  # fmt: skip
        self.kernel = PairKernel(grid, self.first, self.second, self.cell)

    def growth(self, who, cell, arm):
        return self.slopes[who] * self.swing[who, cell, arm]

    def change(self, at, who, row, point, n):
        """How far a point may go along n."""
        w, cell = self.half[row], self.cell[row]
        rate = abs(float(self.state.rates[at, point] @ n))
        bend = 0.5 * self.acceleration[who, cell, point] * w * w
        return min(rate * w + bend, self.speed[who, cell, point] * w)

    def level(self, at, who, row, n):
        out = -np.inf
        for point in range(self.p):
            thick = max(
                self.state.radii[at, k] for k, part in enumerate(PARTS[self.p]) if point in part
            )
            if point in ARM_AT:
                thick += self.growth(who, self.cell[row], ARM_AT[point]) * self.half[row]
            along = float(self.state.points[at, point] @ n)
            out = max(out, along + self.change(at, who, row, point, n) + thick)
        return out

    def separated(self, row):
        a, b = self.a[row], self.b[row]
        way = self.state.points[b, 0] - self.state.points[a, 0]
        size = np.linalg.norm(way)
        n = way / size if size > 1e-9 else np.array([1.0, 0, 0])
        return -self.level(b, self.second[row], row, -n) - self.level(a, self.first[row], row, n)

    def box(self, at, who, row, part, axes):
        """Low and high along each axis, and the radius, of a part's axis over the interval."""
        low, high = [], []
        for n in axes:
            ends = [
                (float(self.state.points[at, e] @ n), self.change(at, who, row, e, n))
                for e in PARTS[self.p][part]
            ]
            low.append(min(z - c for z, c in ends))
            high.append(max(z + c for z, c in ends))
        thick = self.state.radii[at, part]
        if part in ARM_OF:
            thick += self.growth(who, self.cell[row], ARM_OF[part]) * self.half[row]
        return np.array(low), np.array(high), thick

    def axes(self, row):
        way = self.state.points[self.b[row], 0] - self.state.points[self.a[row], 0]
        size = np.hypot(way[0], way[1])
        x = np.array([way[0] / size, way[1] / size, 0.0]) if size > 1e-9 else np.array([1.0, 0, 0])
        return x, np.array([-x[1], x[0], 0.0]), np.array([0, 0, 1.0])

    def boxes_apart(self, row, p, q):
        axes = self.axes(row)
        low_a, high_a, thick_a = self.box(self.a[row], self.first[row], row, p, axes)
        low_b, high_b, thick_b = self.box(self.b[row], self.second[row], row, q, axes)
        gap = np.maximum(np.maximum(low_b - high_a, low_a - high_b), 0.0)
        return float(np.linalg.norm(gap)) - thick_a - thick_b

    def witness(self, row, p, q, nearest_points):
        """Value, lower and upper bound for two parts, from their nearest points."""
        a, b, w, cell = self.a[row], self.b[row], self.half[row], self.cell[row]
        i, j = self.first[row], self.second[row]
        ends_a, ends_b = PARTS[self.p][p], PARTS[self.p][q]
        pts = self.state.points
        x, y, size = nearest_points(*(pts[a, e] for e in ends_a), *(pts[b, e] for e in ends_b))
        fast = [
            max(self.speed[who, cell, e] for e in ends) for who, ends in ((i, ends_a), (j, ends_b))
        ]
        growth = [
            self.growth(who, cell, ARM_OF[part]) if part in ARM_OF else 0.0
            for who, part in ((i, p), (j, q))
        ]
        proven = 0.0
        if size > 1e-9:
            n = (y - x) / size
            proven = min(
                float((pts[b, e] - pts[a, d]) @ n)
                - abs(float((self.state.rates[b, e] - self.state.rates[a, d]) @ n)) * w
                - 0.5 * (self.acceleration[i, cell, d] + self.acceleration[j, cell, e]) * w * w
                for d in ends_a for e in ends_b
            )  # fmt: skip
        proven = max(proven, size - sum(fast) * w)
        radii = self.state.radii[a, p] + self.state.radii[b, q]
        value = size - radii
        return value, proven - radii - sum(growth) * w, value + (sum(fast) + sum(growth)) * w

    def parts(self, row, enough, nearest_points):
        lower = value = upper = np.inf
        label = -1
        count = len(PARTS[self.p])
        for p in range(count):
            for q in range(count):
                gap = self.boxes_apart(row, p, q)
                if gap >= enough:
                    lower = min(lower, gap)
                    continue
                f, low, high = self.witness(row, p, q, nearest_points)
                if f < value:
                    value, label = f, p * 9 + q
                lower, upper = min(lower, low), min(upper, high)
        return value, lower, upper, label

    def asked(self, enough):
        rows = np.arange(self.n)
        return self.kernel._parts(
            self.state, self.a, self.b, self.first, self.second, self.cell, self.half, np.broadcast_to(enough, rows.shape)
        )  # fmt: skip


@pytest.mark.parametrize("points", [8, 10])
@pytest.mark.parametrize("speed", [0.2, 3.0])
def test_two_dancers_on_both_sides_of_a_direction(points, speed):
    pairs = Pairs(points, 1, n=12, speed=speed)
    # One pair in one place, one less than a metre apart: along x, and along their way.
    pairs.state.points[pairs.b[0], 0] = pairs.state.points[pairs.a[0], 0]
    pairs.state.points[pairs.b[1], 0] = pairs.state.points[pairs.a[1], 0] + [0.1, -0.3, 0.2]
    found = pairs.kernel._separated(
        pairs.state, pairs.a, pairs.b, pairs.first, pairs.second, pairs.cell, pairs.half
    )
    assert_allclose(found, [pairs.separated(row) for row in range(12)], atol=1e-9)


@pytest.mark.parametrize("points", [8, 10])
@pytest.mark.parametrize("enough", [-np.inf, 0.3, np.inf])
@pytest.mark.parametrize("seed", [2, 3])
def test_every_part_against_every_other(nearest_points, points, enough, seed):
    """None looked at closely, some, and all; seeds near each other and apart."""
    pairs = Pairs(
        points, seed, n=3, apart=0.2 if seed == 2 else 1.5, speed=0.3 if seed == 2 else 2.0
    )
    pairs.state.points[pairs.b[0], 0, :2] = pairs.state.points[pairs.a[0], 0, :2]
    pairs.state.points[pairs.b[1], 0, :2] = pairs.state.points[pairs.a[1], 0, :2] + [0.1, -0.3]
    before = pairs.state.radii.copy()
    found = pairs.asked(enough)
    expected = [pairs.parts(row, enough, nearest_points) for row in range(3)]
    assert_allclose(np.array(found).T, [(v, low, up, k) for v, low, up, k in expected], atol=1e-9)
    assert_array_equal(pairs.state.radii, before)


def test_each_row_has_an_enough_of_its_own(nearest_points):
    """Rows of which nothing needs a closer look, between others."""
    pairs = Pairs(8, 4, n=5, apart=1.0)
    enough = np.array([0.4, -np.inf, 0.2, -np.inf, np.inf])
    found = pairs.asked(enough)
    expected = [pairs.parts(row, enough[row], nearest_points) for row in range(5)]
    assert_allclose(np.array(found).T, expected, atol=1e-9)
    assert [label >= 0 for label in found.label] == [True, False, True, False, True]


def test_a_box_just_far_enough_is_enough():
    """The least gap of all boxes, taken as enough itself, leaves nothing to look at."""
    pairs = Pairs(8, 5, n=4)
    least = pairs.asked(-np.inf).lower
    assert_array_equal(pairs.asked(least).value, np.full(4, np.inf))
    assert_array_equal(pairs.asked(least).lower, least)
    assert np.all(np.isfinite(pairs.asked(np.nextafter(least, np.inf)).value))


def test_parts_that_meet_have_no_direction_but_never_less_than_their_radii(nearest_points):
    """Two crossing bars and all else in one place: the axes are 0 apart and cannot be less."""
    pairs = Pairs(10, 6, n=2)
    for at, bar in ((pairs.a, [1.0, 0, 0]), (pairs.b, [0, 1.0, 0])):
        pairs.state.points[at] = 0.0
        pairs.state.points[at, 0] = np.array(bar)
        pairs.state.points[at, 1] = -np.array(bar)
    found = pairs.asked(np.inf)
    assert_allclose(
        np.array(found).T, [pairs.parts(row, np.inf, nearest_points) for row in range(2)], atol=1e-9
    )


def test_of_parts_as_near_the_first_is_named():
    pairs = Pairs(10, 7, n=2)
    pairs.state.points[:] = 0.0
    pairs.state.radii[:] = 0.25
    assert_array_equal(pairs.asked(np.inf).label, [0, 0])
    pairs.state.radii[pairs.a[1], [4, 6]] = 0.5
    pairs.state.radii[pairs.b[1], [3, 8]] = 0.5
    assert_array_equal(pairs.asked(np.inf).label, [0, 4 * 9 + 3])


def test_a_direction_of_a_nanometre_is_none(nearest_points):
    """Positions that far apart along y count as the same: the boxes lie along x; farther apart they turn."""
    for off in (0.9e-9, 1e-9, 1.1e-9):
        pairs = Pairs(8, 8, n=1, apart=0.3)
        pairs.state.points[:, 0] = 0.0
        pairs.state.points[pairs.b[0], 0, 1] = off
        expected = pairs.parts(0, -np.inf, nearest_points)
        assert_allclose(np.array(pairs.asked(-np.inf)).T, [expected], atol=1e-7)
        found = pairs.kernel._separated(
            pairs.state, pairs.a, pairs.b, pairs.first, pairs.second, pairs.cell, pairs.half
        )
        assert_allclose(found, [pairs.separated(0)], atol=1e-7)


@pytest.mark.parametrize("points", [8, 10])
def test_parts_are_looked_at_only_where_a_direction_does_not_tell(
    monkeypatch, nearest_points, points
):
    """Rows in another order; the larger of both lower bounds holds, and equal to enough is enough."""
    pairs = Pairs(points, 9, n=6, apart=2.0)
    apart = np.array([pairs.separated(row) for row in range(6)])
    rows = np.array([4, 0, 5, 2, 1, 3])
    own = pairs.kernel._separated(
        pairs.state, pairs.a, pairs.b, pairs.first, pairs.second, pairs.cell, pairs.half
    )
    enough = np.where(np.arange(6) % 2, own, np.inf)[rows]
    asked = []

    def states(ensemble, who, beats, kept):
        asked.append((ensemble, who, beats, kept))
        return pairs.state, [pairs.a[rows], pairs.b[rows]]

    monkeypatch.setattr(pair_kernel, "states", states)
    centre = np.linspace(1, 2, 6)
    found = pairs.kernel.sample(rows, centre, pairs.half[rows], enough)
    ensemble, who, beats, kept = asked[0]
    assert ensemble is pairs.kernel.grid.ensemble
    assert_array_equal(who, [pairs.first[rows], pairs.second[rows]])
    assert (beats is centre, kept) == (True, points)
    for k, row in enumerate(rows):
        if row % 2:
            assert (found.value[k], found.upper[k], found.label[k]) == (np.inf, np.inf, -1)
            assert found.lower[k] == pytest.approx(apart[row])
            continue
        value, lower, upper, label = pairs.parts(row, np.inf, nearest_points)
        assert (found.value[k], found.upper[k]) == pytest.approx((value, upper))
        assert found.lower[k] == pytest.approx(max(lower, apart[row]))
        assert found.label[k] == label


def test_nothing_to_look_at_closely(monkeypatch):
    pairs = Pairs(8, 10, n=2)
    monkeypatch.setattr(pair_kernel, "states", lambda *_all: (pairs.state, [pairs.a, pairs.b]))
    found = pairs.kernel.sample(np.arange(2), np.zeros(2), pairs.half, np.full(2, -np.inf))
    assert_array_equal(found.value, [np.inf] * 2)
    assert_allclose(found.lower, [pairs.separated(row) for row in range(2)])
