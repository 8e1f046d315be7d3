"""The state of a prop: its head from hand and tether, by hand."""

import numpy as np
from numpy.testing import assert_allclose

from sequencer.motion.laws.state import Motion


def test_a_head_lies_at_the_tether_s_end():
    """Hand plus length times tether, and so its rates; the turning axis is a cross product: by hand."""
    rows = [np.array([[a, b, c]]) for a, b, c in np.arange(21.0).reshape(7, 3) ** 2]
    motion = Motion(
        hand=rows[0], hand_rate=rows[1], hand_acceleration=rows[2], tether=rows[3],
        tether_rate=rows[4], tether_acceleration=rows[5], plane=rows[6],
    )  # fmt: skip
    assert_allclose(motion.head(0.5), rows[0] + rows[3] / 2)
    assert_allclose(motion.head_rate(0.5), rows[1] + rows[4] / 2)
    assert_allclose(motion.head_acceleration(0.5), rows[2] + rows[5] / 2)
    # (81, 100, 121) × (144, 169, 196)
    assert_allclose(
        motion.turning_axis, [[100 * 196 - 121 * 169, 121 * 144 - 81 * 196, 81 * 169 - 100 * 144]]
    )
    assert repr(motion) == "<Motion at 1 instant, body frame>"
    many = Motion(**dict.fromkeys(Motion.__dataclass_fields__, np.zeros((2, 3, 3))))
    assert repr(many) == "<Motion at 6 instants, body frame>"
