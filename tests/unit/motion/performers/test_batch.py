"""Laws evaluated together are the laws one by one, however they are wrapped and however late it is."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import Retimed, mirrored
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers.batch import Laws

BODY = Body(stature=1.72)
WRAPPINGS = (
    lambda law: law,
    mirrored,
    lambda law: Retimed(law, 0.7, 1.3),
    lambda law: Retimed(mirrored(Retimed(law, 0.7, 1.3)), 0.4, 0.8),
    lambda law: mirrored(Retimed(Retimed(law, 0.25, 0.5), 1.5, 2.0)),
)


@pytest.mark.parametrize("wrapping", range(len(WRAPPINGS)))
def test_every_pattern_in_every_wrapping(wrapping):
    laws = [
        WRAPPINGS[wrapping](law_for(name, {}, side=side, body=BODY))
        for name in patterns()
        for side in ("left", "right")
    ]
    beats = np.linspace(-7.3, 41.9, 60)  # many cycles, and before the start
    which = np.repeat(np.arange(len(laws)), len(beats))
    seen = Laws(laws).at(which, np.tile(beats, len(laws)))
    for k, law in enumerate(laws):
        own = law.at(beats)
        for part, expected in zip(
            seen, (own.hand, own.hand_rate, own.tether, own.tether_rate), strict=True
        ):
            assert_allclose(part[:, which == k].T, expected, atol=1e-9)
