"""Each term of the bounds on one part over an interval: Taylor's theorem with the cell's speed and acceleration.

A height that is z at the middle, with the rate v (by differences here) and |second derivative| ≤ a, is at
least z − |v|h − a·h²/2 within h of it, and by the speed s at least z − s·h; the larger of the two holds.
The cells' bounds are replaced by drawn ones, so that neither always decides.
"""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.prisms import Prism, plane
from sequencer.motion.clearance import fixtures
from sequencer.motion.clearance.grid import cells
from sequencer.motion.performers.body_parts import FRONT_PARTS, PARTS, HandDeviation
from sequencer.motion.props.prop import Prop

HEIGHT = -0.3  # [m] of the floor here: not 0, so that a sum may not stand for a difference


@pytest.fixture
def setting(dance):
    """A dancer, its cells with drawn bounds, the middles of the cells, and states by differences."""
    ada = dance.dancer(ratio=-2.0, tether=0.5, hand_radius=0.2, plane="wheel", lit=((4.0, 8.0),))
    grid = cells([ada], 0, 8)
    draw = np.random.default_rng(5)
    grid = replace(
        grid,
        speed=draw.uniform(0.5, 4.0, grid.speed.shape),
        acceleration=draw.uniform(0.0, 40.0, grid.acceleration.shape),
        hand_speed=draw.uniform(0.0, 2.0, grid.hand_speed.shape),
    )
    centre = 0.5 * (grid.start + grid.end)
    points = ada.stage_points(centre)[0]
    later, earlier = (ada.stage_points(centre + step)[0] for step in (1e-5, -1e-5))
    return ada, grid, centre, points, (later - earlier) / 2e-5


def sampled(ada, grid, prism, measure, centre, half, enough=np.inf):
    c = np.arange(len(centre))
    kernel = fixtures._Kernel([ada], grid, [prism], measure)
    return kernel.sampled(np.zeros_like(c), c, centre, half, enough)


@pytest.mark.parametrize("part", range(len(FRONT_PARTS)))
def test_a_part_over_the_floor(setting, monkeypatch, part):
    """The nearest point of a capsule over a floor is its lower end: n points up, both ends bound it."""
    ada, grid, centre, points, rates = setting
    monkeypatch.setitem(fixtures._MEASURED, "parts", (part,))
    half = np.linspace(0.001, 0.2, len(centre))
    found = sampled(ada, grid, plane(top=HEIGHT), "parts", centre, half)

    kind, side = FRONT_PARTS[part].kind, FRONT_PARTS[part].side
    ends = sorted({FRONT_PARTS[part].start, FRONT_PARTS[part].end})
    radius = ada.radii(points, ada.is_lit(centre))[part]
    growth = 0.0
    if kind == "arm":
        growth = ada.body.elbow_slope * grid.hand_speed[0, :, 0 if side == "left" else 1]
    z, v = points[ends, :, 2] - HEIGHT, np.abs(rates[ends, :, 2])
    a, s = grid.acceleration[0][:, ends].T, grid.speed[0][:, ends].T
    value = z.min(axis=0) - radius
    fast = (s.max(axis=0) + growth) * half
    taylor = (z - (v + growth) * half - 0.5 * a * half**2).min(axis=0) - radius
    long = np.linalg.norm(points[ends[-1]] - points[ends[0]], axis=-1)
    expected = np.maximum(np.maximum(taylor, value - fast), value - fast - 0.5 * long)
    assert np.all(z > 0.05)
    assert_allclose(found.value, value, atol=1e-7)
    assert_allclose(found.upper, value + fast, atol=1e-7)
    assert_allclose(found.lower, expected, atol=1e-6)
    assert np.all(found.label == part)


@pytest.mark.parametrize("part", [0, 1, 2])
def test_a_part_that_is_far_enough_is_bounded_by_its_ends_alone(setting, monkeypatch, part):
    """No point of a segment is farther than half its length from the nearer end (triangle inequality)."""
    ada, grid, centre, points, _ = setting
    monkeypatch.setitem(fixtures._MEASURED, "parts", (part,))
    half = np.linspace(0.001, 0.2, len(centre))
    found = sampled(ada, grid, plane(top=HEIGHT), "parts", centre, half, enough=-np.inf)
    ends = [FRONT_PARTS[part].start, FRONT_PARTS[part].end]
    radius = ada.radii(points, ada.is_lit(centre))[part]
    growth = 0.0
    if FRONT_PARTS[part].kind == "arm":
        side = 0 if FRONT_PARTS[part].side == "left" else 1
        growth = ada.body.elbow_slope * grid.hand_speed[0, :, side]
    z = (points[ends, :, 2] - HEIGHT).min(axis=0)
    long = np.linalg.norm(points[ends[1]] - points[ends[0]], axis=-1)
    fast = (grid.speed[0][:, ends].max(axis=1) + growth) * half
    assert np.all(np.isinf(found.value))
    assert np.all(np.isinf(found.upper))
    assert_allclose(found.lower, z - long / 2 - fast - radius, atol=1e-9)


@pytest.mark.parametrize(("measure", "off"), [("place", 0.0), ("envelope", 1.0)])
def test_the_axis_from_a_post(dance, measure, off):
    """Someone who stands 5 m away along a slant: speed and acceleration are the cell's alone, the rate is 0."""
    ada = dance.dancer(place=(3.0, 4.0))
    grid = cells([ada], 0, 4)
    grid = replace(grid, speed=0 * grid.speed + 0.8, acceleration=0 * grid.acceleration + 6.0)
    centre = 0.5 * (grid.start + grid.end)
    half = np.linspace(0.01, 0.6, len(centre))
    post = Prism(np.zeros((1, 2)))
    found = sampled(ada, grid, post, measure, centre, half)
    radius = off * max(ada.reach, float(grid.drawn.max()))
    assert_allclose(found.value, 5.0 - radius)
    assert_allclose(found.upper, 5.0 - radius + 0.8 * half)
    assert_allclose(found.lower, 5.0 - radius - np.minimum(0.8 * half, 3.0 * half**2))
    assert np.all(found.label == 0)


@pytest.mark.parametrize("deviation", [0.0, 0.05, 0.4, 3.0])
def test_a_wick_over_the_floor(setting, monkeypatch, deviation):
    """max(z − w, min(z, E)), with E from lengths of the body: shoulder less arm, tether and wick."""
    ada, grid, centre, points, rates = setting
    work = dict.fromkeys(("left", "right"), (HandDeviation(-1.0, 9.0, deviation),))
    near = replace(ada, deviation=work)
    wick = next(k for k, part in enumerate(PARTS) if part.kind == "head" and part.side == "right")
    monkeypatch.setitem(fixtures._MEASURED, "wicks", (wick,))
    half = np.linspace(0.001, 0.3, len(centre))
    drawn = replace(cells([near], 0, 8), speed=grid.speed, acceleration=grid.acceleration)
    assert_allclose(drawn.edges, grid.edges)
    found = sampled(near, drawn, plane(top=HEIGHT), "wicks", centre, half)

    point = PARTS[wick].start
    prop = ada.props["right"]
    lowest = (
        ada.carriage.lowest_shoulder - ada.body.arm_length - prop.length - prop.wick_radius - HEIGHT
    )
    z = points[point, :, 2] - HEIGHT - prop.wick_radius
    v, a, s = (
        np.abs(rates[point, :, 2]),
        grid.acceleration[0, :, point],
        grid.speed[0, :, point],
    )

    def told(height):
        return np.maximum(height - deviation, np.minimum(height, lowest))

    drop = np.minimum(s * half, v * half + 0.5 * a * half**2)
    assert_allclose(found.value, told(z), atol=1e-9)
    assert_allclose(found.lower, told(z - drop), atol=1e-6)
    assert_allclose(found.upper, told(z + s * half), atol=1e-9)
    assert {True, False} == set((s * half < v * half + 0.5 * a * half**2).tolist())


@pytest.mark.parametrize("measure", ["flames", "wicks"])
def test_a_hand_without_a_prop_has_no_flame(dance, measure):
    ada = dance.dancer(sides=("right",), tether=0.5)
    grid = cells([ada], 0, 8)
    centre = 0.5 * (grid.start + grid.end)
    prism = plane(top=0.0)
    found = sampled(ada, grid, prism, measure, centre, 0 * centre)
    points = ada.stage_points(centre)[0]
    head = next(part.start for part in PARTS if part.kind == "head" and part.side == "right")
    radius = ada.props["right"].wick_radius + (0.3 if measure == "flames" else 0.0)
    assert_allclose(found.value, points[head, :, 2] - radius, atol=1e-9)


def test_the_flame_is_what_a_head_gains_when_lit(dance):
    ada = dance.dancer(tether=0.5, flame=0.25, sides=("right",))
    by = {(part.kind, part.side): fixtures._flame(ada, k) for k, part in enumerate(PARTS)}
    assert by["head", "right"] == pytest.approx(0.25)
    assert by["head", "left"] == by["arm", "right"] == 0.0
    staff = Prop(length=0.6, behind=0.6, mass=0.8, wick_radius=0.04, kind="staff", flame_reach=0.2)
    held = replace(ada, props={"right": staff})
    assert PARTS[8].name == "right rear end"
    assert fixtures._flame(held, 8) == pytest.approx(0.2)
