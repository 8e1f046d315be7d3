"""Tempi and tethers at which a pattern would fly: each value flies, the next one towards what is danced does not."""

from types import SimpleNamespace

import pytest

from sequencer.motion.flown import flyable
from sequencer.motion.flown.flyable import would_fly
from tests.unit.motion.flown.flights import flying


def test_a_tempo_that_is_named_has_been_flown():
    """The nearest multiple of the step that flies, itself tried, with one that does not fly a step before it."""
    tried = {}

    def flies(tempo):
        tried[tempo] = tempo >= 106.0
        return tried[tempo]

    assert flyable._nearest(flies, 100.0, 1.12, 4.0) == 108.0
    assert tried[108.0]
    assert not tried[104.0]


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


def test_it_is_told_before_each_flight_how_far_the_search_has_come(limited):
    shares = []
    flyable.would_fly(lambda tether: {"tether": tether}, flying(), shares.append)
    assert len(shares) == len(limited)
    assert shares == sorted(shares)
    assert 0.0 <= shares[0] < shares[-1] < 1.0
