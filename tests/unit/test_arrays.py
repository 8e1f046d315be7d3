"""Arithmetic of short arrays against numpy's own."""

import numpy as np
import pytest
from numpy.testing import assert_array_equal

from sequencer.arrays import crossed


@pytest.mark.parametrize("shapes", [((3,), (3,)), ((4, 1, 3), (5, 3)), ((0, 3), (3,))])
def test_a_cross_product_is_numpys_to_the_last_digit(shapes):
    a, b = (np.random.default_rng(k).normal(size=shape) for k, shape in enumerate(shapes))
    assert_array_equal(crossed(a, b), np.cross(a, b))
