"""Tempi and tethers at which a pattern would fly: each value flies, the next one towards what is danced does not."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from sequencer.motion.flown import flyable
from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.motion.flown.flyable import would_fly
from sequencer.motion.flown.period_search import flown_period
from tests.unit.motion.flown.flights import flying, law_of


def test_a_tempo_that_is_named_has_been_flown(monkeypatch):
    """With real searches, of a gentle hand, at tempi so far apart that few are needed."""
    monkeypatch.setattr(flyable, "_FARTHEST", 1.05)
    gentle = flying(limits=FlownLimits(hand_acceleration=8.0))
    law = law_of("extension")

    def flown(tempo):
        return flown_period(law, replace(gentle, tempo=tempo))

    found = flyable._nearest(flown, 100.0, 1.12, 4.0)
    assert found in (104.0, 108.0, 112.0)
    assert flown(found).broken == ()
    assert flown(found - 4.0).broken


@pytest.fixture
def limited(monkeypatch):
    """Patterns that fly between two tempi and two tethers, whatever their law; counts what is tried."""
    tried = []

    def flown(law, own):
        tried.append((own.tempo, own.prop.length))
        held = 70.0 <= own.tempo <= 90.0 and law["tether"] == own.prop.length
        return SimpleNamespace(broken=() if held or own.prop.length <= 0.385 else ("pull",))

    monkeypatch.setattr(flyable, "flown_period", flown)
    return tried


def test_the_nearest_value_on_each_side(limited):
    found = would_fly(lambda tether: {"tether": tether}, flying(tempo=100.0))
    assert found == (90.0, None, 0.38, None)
    assert len(limited) < 40
    # no farther than a factor of 1.6, and a stride
    assert max(tempo for tempo, _ in limited) <= 1.6 * 1.12 * 100
    assert min(length for _, length in limited) >= 0.45 / 1.6 / 1.12 - 0.01


def test_one_that_is_too_slow_is_sought_upwards(limited):
    found = would_fly(lambda tether: {"tether": tether}, flying(tempo=55.0))
    assert found.faster == 70.0
    assert found.slower is None
