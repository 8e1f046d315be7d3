"""What the watch and the lines of sight find is kept through changes of the dance: they depend on the plan alone."""

from dataclasses import replace
from math import radians

import pytest

from sequencer.checks.fire.at_posts import lines_of_sight, watch_kept
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import lasting
from sequencer.staging.carrying import carry_results, same_parts
from tests.sites import site


@pytest.mark.parametrize(
    ("module", "work"), [(watch_kept, "sight_findings"), (lines_of_sight, "_hidden")]
)
def test_a_change_of_the_dance_is_no_change_of_the_watch(monkeypatch, module, work):
    """Each trial of a mend restages the show: what would be found again is not sought again. Another walk is another watch."""
    show = site()
    first = module.CHECK.faults(show)
    turned = tuple(
        replace(each, carriage=lasting(each.body, Posture(turn=radians(20))))
        for each in show.dancers
    )
    after = replace(show, dancers=turned)
    assert "bodies" not in same_parts(show, after)
    carry_results(show, after)
    asked, own = [], getattr(module, work)
    monkeypatch.setattr(
        module, work, lambda *given, **named: asked.append(work) or own(*given, **named)
    )
    assert module.CHECK.faults(after) == first
    assert asked == []
    moved = site(("Wren: {at: [-2, 4]}", "Wren: {at: [-2.5, 4]}"))
    carry_results(show, moved)
    module.CHECK.faults(moved)
    assert asked
