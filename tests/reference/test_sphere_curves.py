"""Tethers of iso-bends against curves on the sphere, and exact derivatives against a computer algebra system.

Sources: Viviani's curve (sphere of radius 1 cut by a cylinder of diameter 1 through its centre; its
length is 4√2·E(½)) and Clelia curves (longitude in a fixed ratio to latitude): J. D. Lawrence, A Catalog of
Special Plane Curves and A. Gray, Modern Differential Geometry of Curves and Surfaces; from memory.
sympy is the independent reference for derivatives.
"""

import numpy as np
import pytest
import sympy
from numpy.testing import assert_allclose
from scipy.special import ellipe

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.planar import orbit
from sequencer.motion.patterns.toroid import toroid

BODY = Body(stature=1.7)


def iso(lobes, beats=None):
    return toroid(
        lobes=lobes, bend="iso", hand_radius=0.2, place=0.0, beats=beats or float(lobes), body=BODY
    )


def test_one_lobe_iso_bend_draws_vivianis_curve():
    """d lies on the cylinder x² + z² = ∓x (axis along y) and is as long as the textbook says."""
    t = np.linspace(0, 1, 20_001)
    d = iso(1).at(t).tether
    x, _, z = d.T

    assert_allclose(x**2 + z**2 + x, 0, atol=1e-12)
    length = np.linalg.norm(np.diff(d, axis=0), axis=1).sum()
    assert_allclose(length, 4 * np.sqrt(2) * ellipe(0.5), rtol=1e-7)


@pytest.mark.parametrize("lobes", range(1, 8))
def test_iso_bends_draw_clelia_curves(lobes):
    """Latitude grows N times as fast as longitude."""
    u = np.linspace(
        0.01, np.pi / (2 * lobes) - 0.01, 50
    )  # between in and first crossing of the axis
    d = iso(lobes).at(u / (2 * np.pi) * lobes).tether
    longitude = np.unwrap(np.arctan2(d[:, 2], d[:, 0]))
    latitude = np.arcsin(-d[:, 1])

    slope = np.diff(latitude) / np.diff(longitude)
    assert_allclose(np.abs(slope), lobes, rtol=1e-9)


def symbolic(lobes, sign, start):
    """d, d', d'' of a toroid by the formula of docs/motion.md, wall plane from the right, per radian."""
    u = sympy.symbols("u", real=True)
    outward = sympy.Matrix([sympy.cos(u), 0, sympy.sin(u)])
    along = sympy.Matrix([-sympy.sin(u), 0, sympy.cos(u)])
    axis = outward.cross(along)
    half = sympy.pi / 2
    beta = sign * (half - start * half * sympy.cos(sympy.Rational(lobes, 2) * u))
    n = sympy.cos(beta) * along + sympy.sin(beta) * axis
    phi = sympy.pi + lobes * u
    d = sympy.cos(phi) * outward + sympy.sin(phi) * n.cross(outward)
    return [sympy.lambdify(u, list(d.diff(u, k) if k else d), "numpy") for k in range(3)]


@pytest.mark.parametrize(("lobes", "bend"), [(3, "pro"), (4, "anti"), (5, "anti")])
@pytest.mark.parametrize("start", [1, -1])
def test_toroid_derivatives_are_the_symbolic_ones(lobes, bend, start):
    law = toroid(
        lobes=lobes, bend=bend, start=start, hand_radius=0.2, place=0.0, beats=2 * np.pi, body=BODY
    )
    u = np.linspace(0, 4 * np.pi, 41)
    motion = law.at(u)
    exact = symbolic(lobes, 1 if bend == "pro" else -1, start)
    for own, reference in zip(
        (motion.tether, motion.tether_rate, motion.tether_acceleration), exact, strict=True
    ):
        assert_allclose(own, np.array([reference(x) for x in u]), atol=1e-9)


def test_orbit_derivatives_are_the_symbolic_ones():
    t = sympy.symbols("t", real=True)
    radius, ratio = sympy.Rational(3, 10), -3
    hand = sympy.Matrix([radius * sympy.cos(t), 0, radius * sympy.sin(t)])
    tether = sympy.Matrix([sympy.cos(ratio * t + 1), 0, sympy.sin(ratio * t + 1)])
    law = orbit(ratio=-3, hand_radius=0.3, start=0.0, lag=1.0, beats=2 * np.pi, body=BODY)
    at = np.linspace(-3, 9, 25)
    motion = law.at(at)
    for curve, names in (
        (hand, ("hand_rate", "hand_acceleration")),
        (tether, ("tether_rate", "tether_acceleration")),
    ):
        for k, name in enumerate(names, start=1):
            exact = sympy.lambdify(t, list(curve.diff(t, k)), "numpy")
            expected = np.array([np.array(exact(x), float) for x in at])
            assert_allclose(getattr(motion, name), expected, atol=1e-12)
