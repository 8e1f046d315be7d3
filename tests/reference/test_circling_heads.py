"""Two heads on circles in one plane, in closed form.

Source: law of cosines. Centres c apart, circles of radius ρ, same rate. In phase the heads stay c
apart; in opposition their distance is |c − 2ρ cos θ| along the line of centres and 2ρ sin θ across, least
at θ = 0: |c − 2ρ|; with a phase lag δ the chord between the two points of one circle is 2ρ sin(δ/2), so
the least distance is c − 2ρ sin(δ/2).
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.body_parts import PARTS

WICK, TETHER, HAND = 0.05, 0.6, 0.25


@pytest.mark.parametrize("centres", [2.4, 2.8])
@pytest.mark.parametrize("lag", [0.0, 90.0, 180.0, 250.0])
def test_least_distance(dance, centres, lag):
    """Extensions in the wall plane, one hand each, bare wicks: the heads' circles are ρ = 0.85 m."""
    ada, bo = (
        dance.dancer(
            name,
            (x, 5),
            ratio=1.0,
            hand_radius=HAND,
            tether=TETHER,
            flame=0.0,
            sides=("right",),
            lit=(),
            start=start,
        )
        for name, x, start in (("Ada", 0.0, -90.0), ("Bo", centres, -90.0 + lag))
    )
    found = approaches([ada, bo], 0, 16, required=5.0)
    rho = HAND + TETHER
    heads = centres - 2 * rho * np.sin(np.radians(lag) / 2) - 2 * WICK

    parts = [PARTS[k].name for k in found.part[0]]
    beats = np.linspace(0, 4, 40_001)
    gap = np.linalg.norm(ada.stage_points(beats)[0][7] - bo.stage_points(beats)[0][7], axis=-1)
    assert_allclose(gap.min() - 2 * WICK, heads, atol=1e-6)
    if parts == ["right head", "right head"]:
        assert_allclose(found.distance[0], heads, atol=0.005)
    else:
        assert found.distance[0] <= heads + 0.005
    if lag == 180.0:
        assert parts == ["right head", "right head"]
