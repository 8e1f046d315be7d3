"""A flat prop whose way about its axis is not proven everywhere: an edit says what a check from nothing says."""

import numpy as np

from sequencer import kept
from sequencer.checks.dance.feasible import feasible
from sequencer.motion.performers.feasibility import _frame_rates
from tests.unit.checks.dance.solo import stage

FAN = "{kind: fan, length: 0.4, wicks: 5}"
FIRST = "".join(
    f"  - {{from: {bar}.1, pattern: pro-bend-4, cycle: 4, beats: 4, timing: together, with: {{across: -0.3}}}}\n"
    for bar in (2, 3, 4)
)
MORE = "  - {from: 5.1, pattern: anti-bend-5, cycle: 4, beats: 4, with: {across: -0.3}}\n"


class Nothing:
    """Keeps nothing."""

    def get(self, _key):
        return None

    def put(self, _key, _record):
        pass


def rates(show):
    trajectory = show.dancers[0].trajectories["right"]
    return _frame_rates(trajectory, [trajectory.spans[0].start, trajectory.spans[-1].end])


def test_a_fan_is_looked_at_in_one_shape_whatever_was_known_before(monkeypatch):
    before = stage(FIRST, held=FAN)
    feasible(before)
    after = stage(FIRST + MORE, held=FAN)
    assert np.all(np.isfinite(rates(before)))
    assert not np.all(np.isfinite(rates(after))), "now it is looked at in its envelope"
    said = feasible(after)
    monkeypatch.setattr(kept, "_STORE", Nothing())
    kept._MEMORY.clear()
    assert said.findings == feasible(stage(FIRST + MORE, held=FAN)).findings
