"""Bounds of carried vectors against the product rule, differentiated by sympy."""

from dataclasses import dataclass
from math import inf

import numpy as np
import pytest
import sympy
from numpy.testing import assert_allclose

from sequencer.motion.laws.phases import Wave
from sequencer.motion.laws.rotations import Turn, carried, turned, turned_limits

T = sympy.Symbol("t")
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
    whole = sum((c * T**k / sympy.factorial(k) for k, c in enumerate((size, *own))), sympy.S(0))
    for limits in turns:
        angle = sum(c * T**k / sympy.factorial(k) for k, c in enumerate(limits, 1))
        whole *= sympy.exp(angle)
    return [float(sympy.diff(whole, T, k).subs(T, 0)) for k in (1, 2, 3, 4)]


@pytest.mark.parametrize(
    ("turns", "size", "own"),
    [
        ([(2, 3, 5, 7)], 1, (0, 0, 0, 0)),
        ([(2, 3, 5, 7)], 3, (11, 13, 17, 19)),
        ([(2, 3, 5, 7), (11, 0, 13, 1)], 2, (0, 5, 0, 3)),
        ([(1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0)], 1, (0, 0, 0, 1)),
        ([], 4, (1, 2, 3, 4)),
    ],
    ids=["one", "of a moving vector", "two", "three, one order each", "none"],
)
def test_limits_are_those_of_the_product_rule(turns, size, own):
    given = tuple(Turn(AXIS, Known(limits)) for limits in turns)

    assert_allclose(turned_limits(given, size, own), derivatives(turns, size, own), rtol=1e-12)


def test_what_is_not_bounded_stays_so_and_what_is_not_there_adds_nothing():
    turns = (Turn(AXIS, Known((0.0, 0.0, 0.0, inf))),)

    assert turned_limits(turns, 2.0) == (0.0, 0.0, 0.0, inf)
    assert turned_limits(turns, 0.0) == (0.0, 0.0, 0.0, 0.0)
    assert turned_limits(turns, 0.0, (1.0, 2.0, 3.0, 4.0)) == (1.0, 2.0, 3.0, 4.0)


def test_an_axis_has_length_one():
    with pytest.raises(ValueError, match="axis must have length 1"):
        Turn((1.0, 1.0, 0.0), Wave())
    with pytest.raises(ValueError, match="axis must have length 1"):
        Turn((1.0, 0.0, 1e-4), Wave())
    Turn((1.0, 0.0, 1e-6), Wave())


def test_nested_turns_are_products_of_matrices():
    """Value and derivatives of R(a, α)·R(b, β)·v(t), with both matrices as sympy's exponential."""
    axes = (AXIS, (0.0, -0.8, 0.6))
    phases = (Wave(0.3, 1.1, ((0.4, 2.0, 0.5),)), Wave(-0.2, -0.7, ((0.3, 3.0, 0.1),)))
    alpha = 0.3 + 1.1 * T + 0.4 * sympy.cos(2.0 * T + 0.5)
    beta = -0.2 - 0.7 * T + 0.3 * sympy.cos(3.0 * T + 0.1)
    vector = sympy.Matrix([1 + 2 * T, T**2, -0.5 + T])

    def rotation(axis, angle):
        x, y, z = axis
        cross = sympy.Matrix([[0, -z, y], [z, 0, -x], [-y, x, 0]])
        return sympy.eye(3) + sympy.sin(angle) * cross + (1 - sympy.cos(angle)) * cross**2

    whole = rotation(axes[0], alpha) * rotation(axes[1], beta) * vector
    beats = np.array([0.0, 0.4, 1.3])

    def along(matrix, k):
        exact = sympy.lambdify(T, matrix.diff(T, k), cse=True)
        return np.stack([exact(b)[:, 0] for b in beats], axis=1)

    jet = tuple(along(vector, k) for k in range(3))
    found = carried(
        tuple(Turn(axis, phase) for axis, phase in zip(axes, phases, strict=True)), jet, beats
    )
    for k, part in enumerate(found):
        assert_allclose(part, along(whole, k), rtol=1e-9, atol=1e-9)
    turns = tuple(Turn(axis, phase) for axis, phase in zip(axes, phases, strict=True))
    assert_allclose(turned(turns, jet[0], beats), found[0], atol=1e-12)
    still = np.array(axes[1])[:, None]  # in the inner axis: only the outer turn moves it
    assert_allclose(turned(turns, still, beats), turned(turns[:1], still, beats), atol=1e-15)
    within = np.array(AXIS)[:, None]  # in the outer axis
    assert_allclose(
        turned(turns, within, beats), carried(turns, (within, 0 * within, 0 * within), beats)[0]
    )
