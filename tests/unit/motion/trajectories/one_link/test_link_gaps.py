"""Gaps at a link's looks: rods and bodies by hand, nearest points by a second way."""

from dataclasses import fields
from math import cos, pi, sqrt

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop, PropPoint, Solid
from sequencer.motion.trajectories.one_link import link_gaps as module
from sequencer.motion.trajectories.one_link.link_gaps import (
    Around,
    Rod,
    around,
    least_gaps,
    rods_of,
    rough,
    sample_fractions,
)

X, Y, Z = np.eye(3)
BODY = Body(stature=1.7)


def test_the_numbers_of_the_looks():
    """This project's choices, typed here again: a changed one changes which link is chosen."""
    assert (module.GAP_LOOKS, module.STRIDE, module.RIM_SPARE) == (257, 8, 0.01)
    assert (module._MANY, module._TINY) == (6, 1e-12)


def test_looks_are_256_equal_steps():
    found = sample_fractions()
    assert_array_equal(found, np.linspace(0, 1, 257))


def test_bodies_around_are_packed_and_thinned_out():
    """Two bodies whose ends tell body and look: starts, axes from start to end, radii."""
    starts, ends = np.random.default_rng(1).normal(size=(2, 2, 257, 3))
    packed = Around(starts=starts.tobytes(), ends=ends.tobytes(), radii=(0.1, 0.2))
    for stride in (1, 8, 100):
        low, axes, radii = packed.arrays(stride)
        assert_array_equal(low, starts[:, ::stride])
        assert_array_equal(axes, (ends - starts)[:, ::stride])
        assert_array_equal(radii, [0.1, 0.2])
    assert_array_equal(packed.arrays()[0], starts)


def test_around_are_the_body_and_the_other_hands_prop():
    """The body's capsules first, as they stand; then the prop's bodies from its hand along its tether."""
    carriage, beats = Carriage(body=BODY), sample_fractions()
    low, axes, radii = around(carriage, beats).arrays()
    capsules = BODY.capsules
    assert_allclose(low[:, 0], [c.start for c in capsules])
    assert_allclose((low + axes)[:, -1], [c.end for c in capsules])
    assert list(radii) == [c.radius for c in capsules]
    rows = {each.name: np.zeros((257, 3)) for each in fields(Motion)}
    rows |= {"hand": beats[:, None] * Y, "tether": np.tile(-Z, (257, 1))}
    solids = Prop(length=0.5, mass=0.2, wick_radius=0.04).solids
    more, far, wide = around(carriage, beats, (Motion(**rows), solids)).arrays()
    n = len(capsules)
    assert_array_equal(more[:n], low)
    assert list(wide) == [*radii, 0.01, 0.04]
    assert_allclose(more[n], beats[:, None] * Y)
    assert_allclose(far[n], np.tile(-0.5 * Z, (257, 1)))
    assert_allclose(more[n + 1], beats[:, None] * Y - 0.5 * Z)
    assert_allclose(far[n + 1], 0.0, atol=1e-15)


def test_another_hands_complex_prop_is_taken_roughly():
    hoop = Prop(kind="hoop", length=0.8, mass=0.6, wicks=4, wick_radius=0.03).solids
    rows = {each.name: np.tile(X, (257, 1)) for each in fields(Motion)} | {
        "plane": np.tile(Z, (257, 1))
    }
    found = around(Carriage(body=BODY), sample_fractions(), (Motion(**rows), hoop))
    assert len(found.radii) == len(BODY.capsules) + 8


def test_a_simple_prop_is_looked_at_as_it_is():
    """Up to six bodies: a fan of three spokes, and one of four, which has eight."""

    def fan(wicks):
        return Prop(
            kind="fan", length=0.4, mass=0.5, wicks=wicks, spread=2.0, wick_radius=0.03
        ).solids

    assert len(fan(3)) == 6
    assert rough(fan(3)) == fan(3)
    assert rough(list(fan(3))) == fan(3)
    heads = [each for each in fan(4) if each.name == "head"]
    found = rough(fan(4))
    assert [(each.name, each.start, each.end, each.radius) for each in found] == [
        ("fan", (0.0, 0.0), head.start, 0.03) for head in heads
    ]


@pytest.mark.parametrize(("wick", "thick"), [(0.03, 0.03), (0.001, None)])
def test_a_hoop_is_looked_at_as_eight_chords(wick, thick):
    """As thick as its thickest body, and as an eighth's arc leaves its chord: R(1 − cos(π/8)) more."""
    solids = Prop(kind="hoop", length=0.8, mass=0.6, wicks=4, wick_radius=wick).solids
    found = rough(solids)
    frame = [each for each in solids if each.name == "hoop"]
    thick = thick or frame[0].radius
    assert len(found) == 8
    for k, each in enumerate(found):
        t = [2 * pi * (k + m) / 8 for m in (0, 1)]
        assert each.name == "hoop"
        assert_allclose(each.start, [0.4 - 0.4 * cos(t[0]), 0.4 * np.sin(t[0])], atol=1e-12)
        assert_allclose(each.end, [0.4 - 0.4 * cos(t[1]), 0.4 * np.sin(t[1])], atol=1e-12)
        assert each.radius == pytest.approx(thick + 0.4 * (1 - cos(pi / 8)))


RODS = {  # a body's ends, and the rod: its ray, from where to where, and how thick
    "tether": ((0.0, 0.0), (0.5, 0.0), (1.0, 0.0, 0.0, 0.5, 0.02)),
    "head": ((0.5, 0.0), (0.5, 0.0), (1.0, 0.0, 0.5, 0.5, 0.02)),
    "staff, longer ahead": ((-0.3, 0.0), (0.5, 0.0), (1.0, 0.0, -0.3, 0.5, 0.02)),
    "staff, longer behind": ((-0.5, 0.0), (0.3, 0.0), (-1.0, 0.0, -0.3, 0.5, 0.02)),
    "spoke": ((0.0, 0.0), (0.3, 0.4), (0.6, 0.8, 0.0, 0.5, 0.02)),
    "outer half of a spoke, from without": ((0.3, 0.4), (0.15, 0.2), (0.6, 0.8, 0.25, 0.5, 0.02)),
    "wick of a spoke": ((0.3, -0.4), (0.3, -0.4), (0.6, -0.8, 0.5, 0.5, 0.02)),
    "sideways": ((0.0, 0.1), (0.0, -0.4), (0.0, -1.0, -0.1, 0.4, 0.02)),
    "chord": ((0.3, 0.4), (0.6, 0.0), (0.6, 0.8, 0.5, 0.5, 0.03)),
    "chord, nearer end first": ((0.0, 0.25), (0.6, 0.8), (0.0, 1.0, 0.25, 0.25, 0.03)),
    "all but on its ray": ((0.5, 0.9e-6), (1.0, 0.0), (1.0, 0.0, 0.5, 1.0, 0.02)),
    "just off its ray": ((0.5, 1.1e-6), (1.0, 0.0), (1.0, 2.2e-6, 0.5, 0.5, 0.03)),
}


@pytest.mark.parametrize("name", RODS)
def test_a_body_is_a_rod_on_a_ray_or_a_ball_where_chords_meet(name):
    """By plane geometry; a ball is a centimetre thicker. The other bodies do not matter."""
    start, end, wanted = RODS[name]
    solids = [Solid(name, PropPoint(*start), PropPoint(*end), 0.02)]
    other = Solid("other", PropPoint(0.0), PropPoint(0.7), 0.05)
    found = rods_of([other, *solids, other])
    assert len(found) == 3
    assert_allclose(found[1], wanted, atol=1e-12)
    assert_allclose(found[0], (1.0, 0.0, 0.0, 0.7, 0.05))
    assert (found[1].low == found[1].high) == (wanted[2] == wanted[3])


def test_a_ray_goes_along_and_across():
    tether, wide = np.tile(X, (4, 1)), np.tile(Y, (4, 1))
    for along, across in (
        (1, 0),
        (-1, 0),
        (0.5, 0),
        (0, 1),
        (0, -1),
        (0.6, 0.8),
        (1, 0.5),
        (-0.6, -0.8),
    ):
        found = module._ray(Rod(along, across, 0.0, 1.0, 0.1), tether, wide)
        assert_allclose(np.transpose(found), along * tether + across * wide)


def nearest(hand, ray, low, high, start, axis):
    """Distance of two segments: the smallest of |h + s·r − b − t·a| inside, or on one of four edges.

    Source: a convex quadratic on a rectangle is least where its gradient vanishes, or on an edge.
    """

    def size(s, t):
        return sqrt(((hand + s * ray - start - t * axis) ** 2).sum())

    def along(point, direction, most):  # the share at which a line comes nearest to the origin
        square = direction @ direction
        return 0.0 if square == 0 else min(max(-(point @ direction) / square, most[0]), most[1])

    away = hand - start
    found = [size(s, along(away + s * ray, -axis, (0, 1))) for s in (low, high)]
    found += [size(along(away - t * axis, ray, (low, high)), t) for t in (0, 1)]
    matrix = np.array([[ray @ ray, -ray @ axis], [-ray @ axis, axis @ axis]])
    if np.linalg.det(matrix) > 1e-9:
        s, t = np.linalg.solve(matrix, [-away @ ray, away @ axis])
        if low <= s <= high and 0 <= t <= 1:
            found.append(size(s, t))
    return min(found)


SHAPES = {
    "tether": [Rod(1.0, 0.0, 0.0, 0.6, 0.01)],
    "head": [Rod(1.0, 0.0, 0.6, 0.6, 0.05)],
    "staff": [Rod(-1.0, 0.0, -0.4, 0.7, 0.02)],
    "spoke": [Rod(0.6, 0.8, 0.1, 0.5, 0.01)],
    "fan": [Rod(0.8, 0.6, 0.0, 0.4, 0.01), Rod(0.8, -0.6, 0.4, 0.4, 0.03), Rod(0.0, 1.0, 0.0, 0.4, 0.01)],
}  # fmt: skip


@pytest.mark.parametrize("spread", [0.3, 1.0])
@pytest.mark.parametrize("shape", SHAPES)
def test_the_least_gap_is_that_of_the_nearest_points(shape, spread):
    """Three hand paths and four tether paths at five looks, two capsules and a ball."""
    draw = np.random.default_rng(7)
    hand = spread * draw.normal(size=(3, 1, 5, 3))
    frames = np.linalg.qr(draw.normal(size=(1, 4, 5, 3, 3)))[0]
    tether, wide = frames[..., 0, :], frames[..., 1, :]
    starts, axes = draw.normal(size=(2, 3, 5, 3)) * spread
    axes[2] = 0.0  # a ball
    axes[1, 2] = 0.7 * tether[0, 1, 2]  # parallel at one look
    radii = np.array([0.1, 0.02, 0.15])
    found = least_gaps(hand, tether, wide, SHAPES[shape], (starts, axes, radii))
    assert found.shape == (3, 4)
    for h in range(3):
        for w in range(4):
            wanted = min(
                nearest(
                    hand[h, 0, k], rod.along * tether[0, w, k] + rod.across * wide[0, w, k],
                    rod.low, rod.high, starts[b, k], axes[b, k],
                ) - radii[b] - rod.radius
                for rod in SHAPES[shape] for b in range(3) for k in range(5)
            )  # fmt: skip
            assert found[h, w] == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize("at_once", [1, 15, 40])
def test_bodies_in_groups_are_as_near_as_all_at_once(monkeypatch, at_once):
    """One, one and a rest, or several of seven bodies at a time."""
    draw = np.random.default_rng(8)
    hand, tether = draw.normal(size=(2, 3, 5, 3))
    starts, axes = draw.normal(size=(2, 7, 5, 3))
    bodies = starts, axes, draw.uniform(0.0, 0.2, 7)
    whole = least_gaps(hand, tether, tether, SHAPES["staff"], bodies)
    monkeypatch.setattr(module, "_AT_ONCE", at_once)
    assert_array_equal(least_gaps(hand, tether, tether, SHAPES["staff"], bodies), whole)


def test_the_least_gap_by_hand():
    """A rod along x from the origin to 0.6, thick 0.01: beside it, beyond its end, behind its hand, through it."""
    hand, tether, wide = np.zeros((1, 3)), X[None], Y[None]
    rod = [Rod(1.0, 0.0, 0.0, 0.6, 0.01)]

    def gap(start, axis, radius=0.1, rods=rod):
        bodies = np.array([[start]], float), np.array([[axis]], float), np.array([radius])
        return float(least_gaps(hand, tether, wide, rods, bodies))

    assert gap((0.3, 0.5, 0), (0, 0, 0)) == pytest.approx(0.39)
    assert gap((0.3, 0.5, -1), (0, 0, 2)) == pytest.approx(0.39)
    assert gap((0.9, 0.4, 0), (0, 0, 0)) == pytest.approx(0.39)  # 3 4 5
    assert gap((-0.3, 0.4, 0), (0, 0, 0)) == pytest.approx(0.39)
    assert gap((0.3, 0, -1), (0, 0, 2)) == pytest.approx(-0.11)
    assert gap((0.2, 0.5, 0), (0.3, 0, 0)) == pytest.approx(0.39)  # parallel
    assert gap((0.9, 0.4, 0), (1, 0, 0)) == pytest.approx(0.39)  # parallel, beyond
    end = [Rod(1.0, 0.0, 0.6, 0.6, 0.05)]
    assert gap((0.6, -1, 0.5), (0, 2, 0), rods=end) == pytest.approx(0.35)
    assert gap((0.3, 0.4, 0), (0, 1, 0), rods=end) == pytest.approx(0.35)
    assert gap((0.3, 0.4, 0), (0, -0.0, 0), rods=end) == pytest.approx(0.35)
    assert gap((0.9, 1.4, 0), (0, -1, 0), rods=end) == pytest.approx(0.35)


def test_the_nearest_of_several_bodies_and_looks_counts():
    """Three looks and two bodies: whichever comes nearest, first or last."""
    hand, tether = np.zeros((3, 3)), np.tile(X, (3, 1))
    rods = [Rod(1.0, 0.0, 0.0, 0.5, 0.0)]
    for body in range(2):
        for look in range(3):
            starts = np.tile(3 * Y, (2, 3, 1))
            starts[body, look] = 0.7 * Z
            bodies = starts, np.zeros((2, 3, 3)), np.array([0.1, 0.2])
            assert float(least_gaps(hand, tether, tether, rods, bodies)) == pytest.approx(
                0.6 - 0.1 * body
            )
