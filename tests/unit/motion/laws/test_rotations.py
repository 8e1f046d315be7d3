"""Carried vectors and their bounds against the product rule, on Taylor coefficients multiplied out."""

from dataclasses import dataclass
from math import factorial, inf

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn, carried, spins_at, turned, turned_limits
from sequencer.motion.patterns.library import law_for

AXIS = (2 / 7, 3 / 7, 6 / 7)


@dataclass(frozen=True)
class Known:
    """A phase of which only the limits count."""

    own: tuple[float, float, float, float]

    def at(self, beats):
        raise NotImplementedError

    def limits(self):
        return self.own


def derivatives(turns, size, own):
    """Derivatives 1 to 4 at 0 of size·e^α·e^β·…, where α, β … and the vector have all limits at once.

    A turn by α is e^(α[a]ₓ) and |[a]ₓ| = 1, so its derivatives are bounded by those of e^α at α = 0;
    a product's by the product rule with every size in it. Source: complete Bell polynomials.
    """
    whole = np.array([c / factorial(k) for k, c in enumerate((size, *own))])
    for limits in turns:
        angle = np.array([0.0, *(c / factorial(k) for k, c in enumerate(limits, 1))])
        power = exponential = np.array([1.0, 0.0, 0.0, 0.0, 0.0])
        for k in range(1, 5):  # no higher power of the angle has a term of order 4
            power = np.convolve(power, angle)[:5]
            exponential = exponential + power / factorial(k)
        whole = np.convolve(whole, exponential)[:5]
    return [whole[k] * factorial(k) for k in (1, 2, 3, 4)]


@pytest.mark.parametrize(
    ("turns", "size", "own"),
    [
        ([(2, 3, 5, 7)], 1, (0, 0, 0, 0)),
        ([(2, 3, 5, 7)], 3, (11, 13, 17, 19)),
        ([(2, 3, 5, 7), (11, 0, 13, 1)], 2, (0, 5, 0, 3)),
        ([(1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0)], 1, (0, 0, 0, 1)),
        ([], 4, (1, 2, 3, 4)),
        ([(0.5, 0.25, 0.125, 0.75), (0.3, 0.2, 0.6, 0.1)], 0.5, (0.4, 0.7, 0.9, 0.3)),
    ],
    ids=["one", "of a moving vector", "two", "three, one order each", "none", "less than one"],
)
def test_limits_are_those_of_the_product_rule(turns, size, own):
    given = tuple(Turn(AXIS, Known(limits)) for limits in turns)

    assert_allclose(turned_limits(given, size, own), derivatives(turns, size, own), rtol=1e-12)


def test_what_is_not_bounded_stays_so_and_what_is_not_there_adds_nothing():
    turns = (Turn(AXIS, Known((0.0, 0.0, 0.0, inf))),)

    assert turned_limits(turns, 2.0) == (0.0, 0.0, 0.0, inf)
    assert turned_limits(turns, 0.0) == (0.0, 0.0, 0.0, 0.0)
    assert turned_limits(turns, 0.0, (1.0, 2.0, 3.0, 4.0)) == (1.0, 2.0, 3.0, 4.0)
    still = (Turn(AXIS, Known((0.0, 0.0, 0.0, 0.0))),)
    assert turned_limits(still, 2.0, (1.0, 2.0, inf, inf)) == (1.0, 2.0, inf, inf)


def test_an_axis_has_length_one():
    with pytest.raises(ValueError, match="axis must have length 1"):
        Turn((1.0, 1.0, 0.0), Wave())
    with pytest.raises(ValueError, match="axis must have length 1"):
        Turn((1.0, 0.0, 1e-4), Wave())
    Turn((1.0, 0.0, 1e-6), Wave())


def test_an_axis_may_be_off_by_a_billionth():
    """Its length squared, just inside and just outside 1e-9."""
    for sign in (1.0, -1.0):
        assert Turn((0.0, 1.0 + sign * 0.4e-9, 0.0), Wave()).angle == Wave()
        with pytest.raises(ValueError, match="axis must have length 1"):
            Turn((0.0, 1.0 + sign * 0.6e-9, 0.0), Wave())


def rows(parts):
    """A vector's coordinates as rows of one length."""
    return np.array(np.broadcast_arrays(*parts))


def times(a, b):
    """The product of two jets (value, first and second derivative): any calculus text."""
    return a[0] * b[0], a[1] * b[0] + a[0] * b[1], a[2] * b[0] + 2 * a[1] * b[1] + a[0] * b[2]


def spun(axis, angle, vector):
    """Rodrigues: v·cos α + (a × v)·sin α + a·(a·v)·(1 − cos α) with jets, rows of vectors."""
    a, c, s = np.array(axis), np.cos(angle[0]), np.sin(angle[0])
    cos = (c, -s * angle[1], -s * angle[2] - c * angle[1] ** 2)
    sin = (s, c * angle[1], c * angle[2] - s * angle[1] ** 2)
    rest = (1 - cos[0], -cos[1], -cos[2])
    crossed = tuple(np.cross(a, part) for part in vector)
    along = tuple((part @ a)[:, None] * a for part in vector)
    parts = (times(cos, vector), times(sin, crossed), times(rest, along))
    return tuple(sum(part[k] for part in parts) for k in range(3))


def test_nested_turns_are_products_of_rotations():
    """Value and derivatives of R(a, α)·R(b, β)·v(t), every one a jet written anew."""
    axes = (AXIS, (0.0, -0.8, 0.6))
    phases = (Wave(0.3, 1.1, ((0.4, 2.0, 0.5),)), Wave(-0.2, -0.7, ((0.3, 3.0, 0.1),)))
    beats = np.array([0.0, 0.4, 1.3])
    t = beats[:, None]
    alpha = (
        0.3 + 1.1 * t + 0.4 * np.cos(2 * t + 0.5),
        1.1 - 0.8 * np.sin(2 * t + 0.5),
        -1.6 * np.cos(2 * t + 0.5),
    )
    beta = (
        -0.2 - 0.7 * t + 0.3 * np.cos(3 * t + 0.1),
        -0.7 - 0.9 * np.sin(3 * t + 0.1),
        -2.7 * np.cos(3 * t + 0.1),
    )
    vector = (
        np.hstack((1 + 2 * t, t**2, -0.5 + t)),
        np.hstack((2 + 0 * t, 2 * t, 1 + 0 * t)),
        np.tile([0.0, 2.0, 0.0], (3, 1)),
    )
    whole = spun(axes[0], alpha, spun(axes[1], beta, vector))
    turns = tuple(Turn(axis, phase) for axis, phase in zip(axes, phases, strict=True))
    spins = spins_at(turns, beats)
    jet = tuple(tuple(part.T) for part in vector)
    for found, part in zip(carried(spins, jet), whole, strict=True):
        assert_allclose(rows(found), part.T, rtol=1e-12, atol=1e-13)
    assert_allclose(rows(turned(spins, jet[0])), whole[0].T, atol=1e-13)
    still = axes[1]  # in the inner axis: only the outer turn moves it
    assert_allclose(rows(turned(spins, still)), rows(turned(spins[1:], still)), atol=1e-15)
    jet = (AXIS, (0.0, 0.0, 0.0), (0.0, 0.0, 0.0))  # in the outer axis
    assert_allclose(rows(turned(spins, AXIS)), rows(carried(spins, jet)[0]))
    assert turned(spins[1:], AXIS) is AXIS  # nothing to turn: no row of equal columns


@pytest.mark.parametrize("sign", [1.0, -1.0])
@pytest.mark.parametrize("k", [0, 1, 2])
@pytest.mark.parametrize("steady", [True, False])
def test_a_turn_about_a_coordinate_axis_is_a_rotation_like_any_other(k, sign, steady):
    """The jets written anew, of a vector that moves and of one that does not, steadily turned or not."""
    axis = tuple(sign * np.eye(3)[k])
    sways = () if steady else ((0.4, 2.0, 0.5),)
    beats = np.array([0.0, 0.4, 1.3])
    t = beats[:, None]
    far = 0.0 if steady else 0.4
    angle = (
        0.3 + 1.1 * t + far * np.cos(2 * t + 0.5),
        1.1 - 2 * far * np.sin(2 * t + 0.5),
        -4 * far * np.cos(2 * t + 0.5),
    )
    spins = spins_at((Turn(axis, Wave(0.3, 1.1, sways)),), beats)
    moving = (
        np.hstack((1 + 2 * t, t**2, -0.5 + t)),
        np.hstack((2 + 0 * t, 2 * t, 1 + 0 * t)),
        np.tile([0.0, 2.0, 0.0], (3, 1)),
    )
    fixed = ((0.4, -0.7, 0.2), (0.3, 0.5, -0.6), (1.5, -0.8, 0.9))
    still = ((0.0, 0.6, 0.8), (0.0, 0.0, 0.0), (0.0, 0.0, 0.0))
    for jet, vector in (
        (tuple(tuple(part.T) for part in moving), moving),
        *((each, tuple(np.tile(part, (3, 1)) for part in each)) for each in (fixed, still)),
    ):
        for found, part in zip(carried(spins, jet), spun(axis, angle, vector), strict=True):
            assert_allclose(rows(found), part.T, rtol=1e-12, atol=1e-13)
        assert_allclose(rows(turned(spins, jet[0])), spun(axis, angle, vector)[0].T, atol=1e-13)


def test_a_vector_along_the_axis_is_one_to_rounding():
    """Off by 0.9e-15 it stays, off by 1.1e-15 it is turned: half a turn about z, by hand."""
    half = spins_at((Turn((0.0, 0.0, 1.0), Wave(offset=np.pi)),), np.zeros(2))
    near, far = ((off, 0.0, 1.0) for off in (0.9e-15, 1.1e-15))
    assert turned(half, near) is near
    assert_allclose(rows(turned(half, far))[0], -1.1e-15, rtol=1e-9)
    aside = (np.array([0.0, 1.0]), 0.0, 1.0)  # one of two rows along the axis
    assert_allclose(rows(turned(half, aside)), [[0, -1], [0, 0], [1, 1]], atol=1e-15)
    leaning = spins_at((Turn((0.0, -0.8, 0.6), Wave(offset=np.pi)),), np.zeros(2))
    near, far = ((off, -0.8, 0.6) for off in (1.2e-15, 1.3e-15))  # times 0.8
    assert turned(leaning, near) is near
    assert_allclose(rows(turned(leaning, far))[0], -1.3e-15, rtol=1e-9)


@pytest.mark.parametrize("name", ["toroid", "iso-bend-3", "two-beat-weave", "extension"])
def test_a_law_at_no_beats_has_no_states(name):
    law = law_for(name, {}, side="left", body=Body(stature=1.7), beats=4.0)
    state = law.at(np.zeros(0))
    assert state.hand.shape == state.tether.shape == state.plane.shape == (0, 3)
