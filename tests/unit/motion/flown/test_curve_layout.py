"""Spans and their coefficients: sums are the adjoints of what they sum, copies are turned."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

from sequencer.motion.flown.curve_layout import GAUSS_PLACES, CurveLayout, whole
from sequencer.motion.flown.even_splines import EvenSpline, closed

DRAW = np.random.default_rng(11)
THIRD = Rotation.from_rotvec([0.2, 2.0, -0.4]).as_matrix()
STEP = 0.2


def turned(spans=4, copies=3, turn=THIRD):
    """A part of a period whose copies are turned, as the search makes it."""
    taken = np.arange(spans)[:, None] + np.arange(6)
    powers = np.array([np.linalg.matrix_power(turn, k) for k in range(copies)])
    return CurveLayout(
        step=STEP, taken=taken % spans, count=spans, turned=powers[(taken // spans) % copies],
        copies=powers, centre=np.zeros(3),
    )  # fmt: skip


GRIDS = pytest.mark.parametrize("grid", [whole(4, STEP), turned()], ids=["whole", "turned"])


@GRIDS
def test_sums_are_adjoint_to_what_they_sum(grid):
    """⟨local x, b⟩ = ⟨x, gradient b⟩ and local xᵀ·M·local y = xᵀ·matrix·y: the definition of an adjoint."""
    x, y = DRAW.normal(size=(2, grid.count, 3))
    blocks = DRAW.normal(size=(grid.spans, 6, 3))
    assert np.sum(grid.local(x) * blocks) == pytest.approx(x.ravel() @ grid.gradient(blocks))
    matrices = DRAW.normal(size=(grid.spans, 6, 3, 6, 3))
    wanted = np.einsum("kia,kiajb,kjb", grid.local(x), matrices, grid.local(y))
    assert x.ravel() @ grid.matrix(matrices) @ y.ravel() == pytest.approx(wanted)


@GRIDS
def test_means_are_exact_for_polynomials_of_degree_seven(grid):
    """Gauss–Legendre with four points (any text on quadrature)."""
    assert grid.shares.sum() == pytest.approx(1.0)
    for power in range(8):
        assert np.sum(grid.shares[0] * GAUSS_PLACES**power) * grid.spans == pytest.approx(
            1 / (power + 1)
        )


def test_a_part_with_its_copies_is_one_spline_round():
    """The whole period's coefficients, copy by copy, give the same curve on the part as the grid does."""
    turn = Rotation.from_rotvec([0.0, 2 * np.pi / 3, 0.0]).as_matrix()
    grid = turned(turn=turn)
    own = DRAW.normal(size=(grid.count, 3))
    around = np.einsum("nab,kb->nka", grid.copies, own).reshape(-1, 3)
    curve = EvenSpline(start=0.0, step=STEP, coefficients=closed(around), periodic=True)
    beats = STEP * (np.arange(grid.spans)[:, None] + GAUSS_PLACES)
    for order in range(5):
        seen = np.einsum("pj,kja->kpa", grid.pieces(5)[0, order], grid.local(own))
        assert_allclose(seen, curve.at(beats, order), rtol=1e-9, atol=1e-8)
    # and each copy is the part once more, turned
    assert_allclose(curve.at(beats + STEP * grid.spans), curve.at(beats) @ turn.T, atol=1e-12)


def test_a_whole_curve_takes_coefficients_in_order():
    grid = whole(3, STEP)
    assert (grid.spans, grid.count) == (3, 8)
    own = DRAW.normal(size=(8, 3))
    assert_allclose(grid.local(own)[2], own[2:8])
    assert_allclose(grid.copies, np.eye(3)[None])
