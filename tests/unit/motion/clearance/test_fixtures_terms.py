"""Distances from what stands still: each term and each choice, on drawn states and bounds.

The nearest points of a prism are those of its own tests (geometry); what is made of them is written out here,
one row at a time.
"""

from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry import prisms
from sequencer.geometry.certified import Sample, Spans
from sequencer.geometry.prisms import Prism, plane
from sequencer.motion.clearance import fixtures
from sequencer.motion.clearance.by_slice import RowMinima
from sequencer.motion.clearance.fixtures import encounters
from sequencer.motion.performers.sampling import States

# By hand: ends of each part of a performer of eight points, and of ten with rear ends.
ENDS = {
    8: [(0, 1), (2, 3), (3, 4), (4, 4), (5, 6), (6, 7), (7, 7)],
    10: [(0, 1), (2, 3), (8, 4), (4, 4), (5, 6), (9, 7), (7, 7), (8, 8), (9, 9)],
}
ARM_OF = {1: 0, 4: 1}
SIDE_OF = {
    1: "left",
    2: "left",
    3: "left",
    7: "left",
    4: "right",
    5: "right",
    6: "right",
    8: "right",
}
HEADS = (3, 6, 7, 8)
BOX = Prism(np.array([[0.0, 0], [1.0, 0], [1.0, 0.8], [0.0, 0.8]]), 0.0, 1.2)
POST = Prism(np.array([[-1.5, 0.3]]))


def performer(sides=("left", "right"), *, slope=1.0, reach=1.0, behind=True):
    """As much of a dancer as is asked: no head burns but of a hand that holds something."""
    prop = SimpleNamespace(
        flame_reach=0.2, burning_radius=0.35, cold_radius=0.1, wick_radius=0.05, farthest=0.5
    )
    return SimpleNamespace(
        props=dict.fromkeys(sides, prop), reach=reach, body=SimpleNamespace(elbow_slope=slope, arm_length=0.6),
        carriage=SimpleNamespace(lowest_shoulder=1.3),
        carries=lambda part: part == 0 or (SIDE_OF[part] in sides and (part < 7 or behind)),
        burns=lambda part: part in HEADS and SIDE_OF[part] in sides,
        deviations=lambda beats: np.stack([0.1 * beats, 0.3 * beats]),
    )  # fmt: skip


@pytest.fixture(autouse=True)
def few_steps(monkeypatch):
    """A coarse search along a segment costs less; its points are the same for both sides here."""
    monkeypatch.setattr(prisms, "_STEPS", 8)


class Rows:
    """Rows of three performers in three cells, with a state each; the second lacks a left prop."""

    def __init__(self, measure, pieces, seed, *, points=8, n=8, spread=0.7):
        draw = np.random.default_rng(seed)
        self.dancers = [
            performer(),
            performer(("right",), slope=2.0, reach=9.0),
            performer((), slope=0.5),
        ]
        self.n, self.p, self.prisms = n, points, pieces
        self.i, self.c = draw.integers(0, 3, n), draw.integers(0, 3, n)
        self.i[:3] = range(3)
        self.half = draw.uniform(0.01, 0.3, n)
        self.centre = np.linspace(1.0, 2.0, n)
        self.state = States(
            spread * draw.normal(size=(n, points, 3)) + [0.5, 0.4, 0.9],
            draw.normal(size=(n, points, 3)),
            draw.uniform(0.02, 0.2, (n, len(ENDS[points]))),
        )
        self.at = draw.permutation(n)
        self.segments = {}
        self.grid = SimpleNamespace(
            points=points, ensemble="ensemble", lit=np.array([[True, False, True]] * 2 + [[False] * 3]),
            speed=draw.uniform(0.2, 2.0, (3, 3, points)), acceleration=draw.uniform(0, 8, (3, 3, points)),
            hand_speed=draw.uniform(0, 1.5, (3, 3, 2)), drawn=draw.uniform(0.5, 2.0, (3, 3)),
            place=draw.uniform(-4, 4, (3, 3, 2)), place_uncertainty=draw.uniform(0, 0.3, (3, 3)),
            reach=draw.uniform(0.5, 1.5, (3, 3)), cuts=np.array([0, 2, 3]),
            keys=((None, None),) * 3, floors=((None, None),) * 3, within=(("edges 0", points), ("edges 1", points)),
        )  # fmt: skip
        self.kernel = fixtures._Kernel(self.dancers, self.grid, pieces, measure)

    def sampled(self, monkeypatch, enough=np.inf):
        def states(ensemble, who, beats, kept):
            assert (ensemble, kept) == ("ensemble", self.p)
            assert_array_equal(who, [self.i])
            assert beats is self.centre
            return self.state, [self.at]

        monkeypatch.setattr(fixtures, "states", states)
        return self.kernel.sampled(
            self.i, self.c, self.centre, self.half, np.broadcast_to(enough, self.n)
        )

    def segment(self, part, prism):
        """Distance and nearest points of a part and a prism in every row."""
        if (part, prism) not in self.segments:
            a, b = (self.state.points[self.at, e] for e in ENDS[self.p][part])
            self.segments[part, prism] = prism.nearest_of_segment(a, b)
        return self.segments[part, prism]

    def one(self, row, part, prism, radius, growth, enough, ends=None):
        """Value, lower and upper bound of one part against one prism."""
        at, w, who = self.at[row], self.half[row], (self.i[row], self.c[row])
        ends = sorted(set(ends or ENDS[self.p][part]))
        pts = [self.state.points[at, e] for e in ends]
        fast = (max(self.grid.speed[(*who, e)] for e in ends) + growth) * w
        gaps = [float(prism.nearest(p)[0]) for p in pts]
        far = min(gaps) - float(np.linalg.norm(pts[-1] - pts[0])) / 2 - fast - radius
        if len(ends) == 2 and far >= enough:
            return np.inf, far, np.inf
        if len(ends) == 2:
            size, on, foot = (x[row] for x in self.segment(part, prism))
        else:
            size, on, foot = gaps[0], pts[0], prism.nearest(pts[0])[1]
        proven = 0.0
        if size > 1e-9:
            n = (on - foot) / size
            proven = min(
                float(p @ n)
                - (abs(float(self.state.rates[at, e] @ n)) + growth) * w
                - 0.5 * self.grid.acceleration[(*who, e)] * w * w
                for e, p in zip(ends, pts, strict=True)
            ) - float(prism.level(n))
        value = size - radius
        return value, max(far, proven - radius, value - fast), value + fast

    def expected(
        self,
        parts,
        size_of,
        enough=np.inf,
        has=lambda dancer, part: dancer.carries(part),
        ends=None,
    ):
        out = []
        for row in range(self.n):
            value = lower = upper = np.inf
            label = -1
            for part in parts:
                if not has(self.dancers[self.i[row]], part):
                    continue
                for prism in self.prisms:
                    radius, growth = size_of(row, part)
                    v, low, high = self.one(row, part, prism, radius, growth, enough, ends)
                    if v < value:
                        value, label = v, part
                    lower, upper = min(lower, low), min(upper, high)
            out.append((value, lower, upper, label))
        return out

    def thick(self, row, part):
        """Radius of a part, and how fast an arm's grows."""
        i, c = self.i[row], self.c[row]
        growth = (
            self.dancers[i].body.elbow_slope * self.grid.hand_speed[i, c, ARM_OF[part]]
            if part in ARM_OF
            else 0.0
        )
        return self.state.radii[self.at[row], part], growth


@pytest.mark.parametrize(
    ("points", "enough", "seed"), [(8, 0.3, 1), (8, -np.inf, 1), (10, 0.3, 2), (10, np.inf, 2)]
)
def test_all_parts_against_all_pieces(monkeypatch, points, enough, seed):
    """Some pieces are entered, some far; empty hands have no parts, nor do parts beyond the points kept."""
    rows = Rows("parts", (BOX, POST), seed, points=points)
    expected = rows.expected(range(len(ENDS[points])), rows.thick, enough)
    assert_allclose(np.array(rows.sampled(monkeypatch, enough)).T, expected, atol=1e-6)


@pytest.mark.parametrize("points", [8, 10])
def test_flames_are_of_heads_that_burn(monkeypatch, points):
    rows = Rows("flames", (BOX, POST), 3, points=points)
    heads = [part for part in HEADS if part < len(ENDS[points])]
    expected = rows.expected(heads, rows.thick, has=lambda dancer, part: dancer.burns(part))
    found = rows.sampled(monkeypatch)
    assert_allclose(np.array(found).T, expected, atol=1e-9)
    assert np.isinf(found.value[rows.i == 2]).all()


@pytest.mark.parametrize("measure", ["place", "envelope"])
def test_the_axis_is_its_foot_alone(monkeypatch, measure):
    """An envelope is the reach, or what is drawn anywhere if that is more."""
    rows = Rows(measure, (BOX, POST), 4)
    reach = [
        max(each.reach, float(own.max()))
        for each, own in zip(rows.dancers, rows.grid.drawn, strict=True)
    ]
    assert reach[0] > 1.0
    assert reach[1] == 9.0
    expected = rows.expected(
        [0],
        lambda row, _part: (reach[rows.i[row]] if measure == "envelope" else 0.0, 0.0),
        ends=(0,),
    )
    assert_allclose(np.array(rows.sampled(monkeypatch)).T, expected, atol=1e-9)


def test_wicks_are_without_their_flames_over_two_floors(monkeypatch):
    """max(z − w, min(z, E)) for each hand's own deviation w, by which a radius is widened already.

    A flame is taken off only where it is lit.
    """
    floors = (plane(top=0.2), plane(top=0.25))
    rows = Rows("wicks", floors, 5, points=10)
    found = rows.sampled(monkeypatch)
    for row in range(rows.n):
        i, c, at, w = rows.i[row], rows.c[row], rows.at[row], rows.half[row]
        dancer, best = rows.dancers[i], (np.inf, np.inf, np.inf, -1)
        for part in HEADS:
            if not dancer.burns(part):
                continue
            point = ENDS[10][part][0]
            flame = (0.25 if part < 7 else 0.2) if rows.grid.lit[i, c] else 0.0
            off = (0.1 if SIDE_OF[part] == "left" else 0.3) * rows.centre[row]
            for top in (0.2, 0.25):
                z = (
                    rows.state.points[at, point, 2]
                    - top
                    - (rows.state.radii[at, part] - flame)
                    + off
                )
                lowest = 1.3 - 0.6 - 0.5 - 0.05 - top
                fast = rows.grid.speed[i, c, point] * w
                bend = 0.5 * rows.grid.acceleration[i, c, point] * w * w
                drop = min(fast, abs(rows.state.rates[at, point, 2]) * w + bend)

                def told(height, off=off, lowest=lowest):
                    return max(height - off, min(height, lowest))

                label = part if told(z) < best[0] else best[3]
                best = (
                    min(best[0], told(z)), min(best[1], told(z - drop)), min(best[2], told(z + fast)), label,
                )  # fmt: skip
        assert [x[row] for x in found] == pytest.approx(list(best), abs=1e-9)


def test_what_is_far_enough_by_its_ends_is_met_exactly(monkeypatch):
    """The bound itself as enough: nothing is looked at; a hair more, and it is."""
    monkeypatch.setitem(fixtures._MEASURED, "parts", (0,))
    rows = Rows("parts", (POST,), 6)
    least = rows.sampled(monkeypatch, -np.inf).lower
    assert np.isinf(rows.sampled(monkeypatch, least).value).all()
    assert np.isfinite(rows.sampled(monkeypatch, np.nextafter(least, np.inf)).value).all()


def test_inside_nothing_is_proven_but_the_radius(monkeypatch):
    """A body in a box has no direction out; its axis is 0 away and cannot be less."""
    rows = Rows("parts", (Prism(10 * (BOX.corners - 0.5)),), 7)
    found = rows.sampled(monkeypatch)
    expected = rows.expected(range(7), rows.thick)
    assert_allclose(np.array(found).T, expected, atol=1e-9)
    held = rows.i == 2
    assert_allclose(found.lower[held], -rows.state.radii[rows.at[held], 0])


@pytest.mark.parametrize("measure", ["place", "envelope", "parts", "flames", "wicks"])
def test_bounds_on_the_plan_cell_by_cell(measure):
    """From the middle of a cell: less how far one strays from there, and how far one reaches."""
    rows = Rows(measure, (BOX, POST), 8)
    found = rows.kernel.apart()
    for i in range(3):
        for c in range(3):
            x, y = rows.grid.place[i, c]
            box = np.hypot(max(-x, x - 1.0, 0.0), max(-y, y - 0.8, 0.0))
            near = min(box, np.hypot(x + 1.5, y - 0.3))
            reach = {"place": 0.0, "envelope": max(rows.dancers[i].reach, rows.grid.drawn[i].max())}
            own = reach.get(measure, rows.grid.reach[i, c])
            assert found[i, c] == pytest.approx(near - rows.grid.place_uncertainty[i, c] - own)


def test_the_lowest_wick_hangs_straight_down():
    assert fixtures.lowest_wick(performer(("left",)), "left") == pytest.approx(
        1.3 - 0.6 - 0.5 - 0.05
    )
    assert fixtures.lowest_wick(performer(("left",)), "right") == np.inf


def test_a_flame_is_what_a_head_or_rear_end_gains():
    own = [fixtures._flame(performer(("left",)), part) for part in range(9)]
    assert own == pytest.approx([0, 0, 0, 0.25, 0, 0, 0, 0.2, 0])


# What is searched


class Told:
    """A kernel that is told the bounds by cell; what the search is given, and what it finds."""

    def __init__(self, gap, found=None):
        self.gap, self.own, self.given = np.array(gap), found, {}

    def apart(self):
        return self.gap

    def keys(self, *, only_lit):
        return ("keys", only_lit)

    def searched(self, *_all, tolerance):
        return tolerance

    def sampled(self, *given):
        return given

    def search(self, **given):
        self.given = given
        n = len(self.gap)
        none = np.zeros(0)
        nothing = RowMinima(
            value=np.full(n, np.inf), at=np.full(n, np.nan), label=np.full(n, -1),
            spans=Spans(group=none.astype(np.int64), start=none, end=none), evaluations=0,
        )  # fmt: skip
        return SimpleNamespace(found=lambda: self.own or nothing)


def met(monkeypatch, kernel, measure="parts", required=0.3, lit=None, props=None, **more):
    n, c = kernel.gap.shape
    monkeypatch.setattr(fixtures, "_Kernel", lambda *_all: kernel)
    monkeypatch.setattr(fixtures, "SlicedSearch", kernel.search)
    grid = SimpleNamespace(
        lit=np.ones((n, c), bool) if lit is None else np.array(lit),
        start=np.arange(c) * 1.0,
        end=np.arange(c) * 2.0 + 1,
    )
    dancers = [SimpleNamespace(props=own) for own in (props or [{"left": 1}] * n)]
    return encounters(
        dancers, grid, (plane(top=0.0),), measure=measure, required=np.full(n, required), **more
    )


def test_what_is_found_is_told_and_else_the_bound(monkeypatch):
    """The first was found at 65 cm; of the second only the bound is known, least in its first cell."""
    own = RowMinima(
        value=np.array([0.65, np.inf]), at=np.array([2.5, np.nan]), label=np.array([5, -1]),
        spans=Spans(group=np.array([1]), start=np.array([0.1]), end=np.array([0.2])), evaluations=30,
    )  # fmt: skip
    gap = [[0.29, 0.3, 0.6, 0.694, 0.695, 0.8], [0.3, 0.5, 0.9, 0.4, 2.0, 0.35]]
    kernel = Told(gap, own)
    found = met(monkeypatch, kernel, tolerance=0.15, only_lit=True)
    assert_allclose(found.distance, [0.65, 0.3])
    assert_allclose(found.at, [2.5, 0.5])  # the first cell's middle, where the bound is least
    assert found.part.tolist() == [5, -1]
    assert found.bound.tolist() == [False, True]
    assert (found.evaluations, found.spans) == (30, own.spans)
    assert_array_equal(kernel.given["gap"], gap)
    assert kernel.given["required"].tolist() == [0.3, 0.3]
    assert (kernel.given["tolerance"], kernel.given["key"]) == (0.15, ("keys", True))
    assert kernel.given["search"]() == 0.15
    who, cell, beats, half, enough = kernel.given["sample"]("who", "cell", np.array([1.0, 2.0]))
    assert (who, cell, beats.tolist(), half.tolist()) == ("who", "cell", [1.0, 2.0], [0.0, 0.0])
    assert enough == np.inf


def test_nothing_near_is_a_bound(monkeypatch):
    found = met(monkeypatch, Told([[0.5, 0.3, 0.4]]))
    assert (found.distance[0], found.at[0], found.part[0]) == (0.3, 2.0, -1)  # middle of [1, 3]
    assert found.bound[0]


@pytest.mark.parametrize(
    ("measure", "only_lit", "asked"),
    [
        ("parts", False, [(0, 0), (0, 1), (1, 0), (1, 1)]),
        ("parts", True, [(0, 0), (1, 1)]),
        ("flames", False, [(0, 0)]),
        ("wicks", False, [(0, 0), (0, 1)]),
        ("wicks", True, [(0, 0)]),
        ("envelope", True, [(0, 0), (1, 1)]),
    ],
)
def test_only_what_is_lit_and_held_is_searched(monkeypatch, measure, only_lit, asked):
    """The second holds nothing: it has neither flames nor wicks. Flames are looked at only while lit."""
    kernel = Told([[0.1, 0.1], [0.1, 0.1]])
    met(
        monkeypatch,
        kernel,
        measure,
        lit=[[True, False], [False, True]],
        props=[{"left": 1}, {}],
        only_lit=only_lit,
    )
    looked = np.argwhere(np.isfinite(kernel.given["gap"]))
    assert [tuple(each) for each in looked.tolist()] == asked


def test_what_is_not_looked_at_is_not_a_bound(monkeypatch):
    found = met(monkeypatch, Told([[0.1, 0.5]]), lit=[[False, True]], only_lit=True)
    assert (found.distance[0], found.at[0]) == (0.5, 2.0)
    found = met(monkeypatch, Told([[0.1, 0.5]]), lit=[[False, False]], only_lit=True)
    assert found.distance[0] == np.inf


def test_a_dancer_is_known_by_the_slice_the_object_and_what_is_measured():
    def keys(measure="parts", seed=1, pieces=(BOX,), *, only_lit=False):
        rows = Rows(measure, pieces, seed)
        rows.grid.keys = (("a0", "a1"), ("b0", None), ("a0", "c1"))
        return rows.kernel.keys(only_lit=only_lit)

    key = keys()
    assert key(0, 0) == key(2, 0)  # the same content, whoever it is
    others = [key(0, 0), key(0, 1), key(1, 0), keys("flames")(0, 0), keys(only_lit=True)(0, 0),
              keys(pieces=(POST,))(0, 0), keys("envelope")(0, 0), keys("envelope", 2)(0, 0)]  # fmt: skip
    assert len(set(others)) == len(others)  # another seed has another envelope
    assert key(1, 1) is None


def test_a_search_is_of_the_rows_and_cells_asked(monkeypatch):
    rows = Rows("parts", (BOX,), 9)
    rows.grid.start, rows.grid.end = np.array([0.0, 1, 2]), np.array([1.0, 2, 4])
    seen = {}

    def search(sample, **more):
        seen.update(more)
        return sample(np.array([2, 0]), "centre", "half", "enough")

    monkeypatch.setattr(fixtures, "search", search)
    monkeypatch.setattr(fixtures._Kernel, "sampled", lambda _self, *all_: Sample(*all_[:4]))
    who, cell = np.array([2, 0, 1]), np.array([1, 2, 0])
    found = rows.kernel.searched(who, cell, "group", "required", "best", tolerance=0.02)
    assert_array_equal(found[0], [1, 2])
    assert_array_equal(found[1], [0, 1])
    assert found[2:] == ("centre", "half")
    assert (seen["group"], seen["apart"]) == ("group", True)
    assert_array_equal((seen["start"], seen["end"]), ([1, 2, 0], [2, 4, 1]))
    assert (seen["required"], seen["best"], seen["tolerance"]) == ("required", "best", 0.02)
