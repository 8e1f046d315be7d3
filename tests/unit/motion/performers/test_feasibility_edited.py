"""A flat prop whose way about its axis is not proven everywhere: an edit says what a check from nothing says."""

import numpy as np

from sequencer.geometry.bodies import SIDES
from sequencer.motion.performers.feasibility import frame_rates, props_gap
from tests.nothing_kept import nothing_kept
from tests.unit.checks.dance.solo import stage

FAN = "{kind: fan, length: 0.4, wicks: 5}"
FIRST = "".join(
    f"  - {{from: {bar}.1, pattern: pro-bend-4, cycle: 4, beats: 4, timing: together, with: {{across: -0.3, ahead: 0, up: 0, hand_radius: 0.2}}}}\n"
    for bar in (2,)
)
MORE = "  - {from: 3.1, pattern: anti-bend-5, cycle: 4, beats: 4, with: {across: -0.3, ahead: 0, up: 0, hand_radius: 0.2}}\n"


def gaps(show):
    """Of both props from each other, over each span of the right hand."""
    dancer = show.dancers[0]
    left, right = ((dancer.trajectories[side], dancer.props[side]) for side in SIDES)
    edges = [right[0].spans[0].start, *(span.end for span in right[0].spans)]
    proven = np.all(np.isfinite(frame_rates(right[0], edges)))
    return proven, props_gap(left, right, edges)


def test_a_fan_has_one_shape_whatever_was_known_before():
    proven, _ = gaps(stage(FIRST, held=FAN))
    assert proven
    proven, said = gaps(stage(FIRST + MORE, held=FAN))
    assert not proven, "now it is looked at in its envelope"
    with nothing_kept():
        anew = gaps(stage(FIRST + MORE, held=FAN))[1]
    assert repr(said) == repr(anew)  # nan is nan
