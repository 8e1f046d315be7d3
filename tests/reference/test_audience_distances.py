"""Distances to an audience and between reaches, worked by hand from printed rules.

Sources: Grants Pass OR, fire art conditional-use permit, 2019-08-29 (20 ft from the fire-involved item,
5 ft more with several performers); Kansas City MO, code section 26-319 (10 ft); Montréal's list for
fire artists (5 m). A reach of 1.49 m is the 95th percentile's arm and a prop of 0.75 m (ANSUR II).
"""

from functools import partial

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.checks.distances.boundaries import audience_distance
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.regions import AudienceEdge
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.clearance.fixtures import encounters
from sequencer.motion.clearance.grid import cells

FOOT = 0.3048


@pytest.fixture
def at_reach(dance):
    """A performer whose proven envelope is 1.49 m wide: a static spin close to the shoulder."""

    def make(name, place, reach=1.49):
        ada = dance.dancer(name, place, hand_radius=0.0, flame=0.0, lit=((0, 8),))
        length = reach - ada.body.half_shoulder - ada.body.arm_length - 0.05
        ada = dance.dancer(name, place, hand_radius=0.0, flame=0.0, tether=length, lit=((0, 8),))
        assert_allclose(ada.reach, reach)
        assert ada.pieces(0, 8).reach.max() <= reach
        return ada

    return make


@pytest.mark.parametrize(
    ("centre", "lit", "rules", "passes"),
    [
        (7.5, 1, Requirements(audience=20 * FOOT), False),  # gap 6.01 m, 6.096 m needed
        (7.6, 1, Requirements(audience=20 * FOOT), True),
        (7.6, 2, Requirements(audience=20 * FOOT, audience_more=5 * FOOT), False),
        (9.2, 2, Requirements(audience=20 * FOOT, audience_more=5 * FOOT), True),
        (9.1, 2, Requirements(audience=20 * FOOT, audience_more=5 * FOOT), False),  # 9.11 m needed
        (4.54, 1, Requirements(audience=10 * FOOT), True),
        (4.53, 1, Requirements(audience=10 * FOOT), False),
        (6.49, 1, Requirements(audience=5.0), True),
        (6.48, 1, Requirements(audience=5.0), False),
    ],
)
def test_measured_from_the_envelope(at_reach, centre, lit, rules, passes):
    cast = [at_reach(f"d{k}", (30.0 * k, centre)) for k in range(lit)]
    line = AudienceEdge(line=((-100, 0), (100, 0)))
    needed = audience_distance(cast, rules)
    found = encounters(
        cast,
        cells(cast, 0, 8),
        line.prisms,
        measure="envelope",
        required=np.full(lit, needed - 1e-9),
        only_lit=True,
    )

    assert_allclose(found.distance, centre - 1.49, atol=0.001)
    assert (len(found.spans.group) == 0) == passes


@pytest.mark.parametrize(("apart", "gap"), [(2.9, -0.08), (2.98, 0.0), (3.6, 0.62)])
def test_two_reaches(dance, apart, gap):
    """Two reaches of 1.49 m: 2.9 m apart they overlap by 8 cm, 2.98 m apart they touch."""

    def at_reach_now(name, place):
        """A performer whose prop never leaves 1.49 m from the body's axis in these beats."""
        spin = partial(dance.dancer, name, place, hand_radius=0.0, flame=0.0)
        least = cells([spin(tether=0.6)], 0, 8).reach.max()
        return spin(tether=0.6 + 1.49 - least)

    pair = [at_reach_now("Ada", (0, 5)), at_reach_now("Bo", (apart, 5))]
    # far from what is required, a pair keeps the bound that follows from both reaches
    found = approaches(pair, 0, 8, required=-5.0)

    assert found.dismissed.all()
    assert_allclose(found.distance, gap, atol=0.001)
