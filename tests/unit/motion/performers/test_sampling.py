"""States without repeats: each index leads to the state of its dancer at its beat."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.ensemble import Ensemble
from sequencer.motion.performers.sampling import states


@pytest.mark.parametrize("kept", [8, 10])
def test_each_state_once_and_where_its_index_says(dance, kept):
    """Dancer by dancer by `stage_points` and `shells`; repeats of a dancer at a beat share a state."""
    cast = [
        dance.dancer("Ada", (0.0, 3.0), lit=((0.0, 2.0),)),
        replace(
            dance.dancer("Bo", (2.0, 3.0), ratio=-2.0),
            deviation={"left": (HandDeviation(1.0, 3.0, 0.2),)},
        ),
        dance.dancer("Cy", (4.0, 2.0), stature=1.9),
    ]
    beats = np.array([2.5, 1.5, 2.5, 0.5, 1.5, 2.5])
    who = [np.array([2, 0, 2, 1, 0, 1]), np.array([0, 1, 1, 2, 1, 2])]
    found, index = states(Ensemble(cast), who, beats, kept)

    pairs = {(k, beat) for each in who for k, beat in zip(each, beats, strict=True)}
    assert len(found.points) == len(found.rates) == len(found.radii) == len(pairs)
    assert len(index) == 2
    seen = {}
    for each, rows in zip(who, index, strict=True):
        assert rows.shape == (6,)
        for k, beat, row in zip(each, beats, rows, strict=True):
            assert seen.setdefault(row, (k, beat)) == (k, beat)
            points, rates = cast[k].stage_points(np.array([beat]))
            assert_allclose(found.points[row], points[:kept, 0], atol=1e-12)
            assert_allclose(found.rates[row], rates[:kept, 0], atol=1e-12)
            shells = cast[k].shells(points, np.array([beat]))[:, 0]
            assert_allclose(found.radii[row], shells[: 9 if kept == 10 else 7], atol=1e-12)
    assert set(seen.values()) == pairs


def test_one_dancer_at_one_beat(dance):
    ada = Ensemble([dance.dancer()])
    found, index = states(ada, [np.array([0])], np.array([1.0]), 8)
    assert found.points.shape == (1, 8, 3)
    assert_array_equal(index, [[0]])
