"""The benchmark of flown links and shows: what it counts, and that it sees a law or a minimum that is broken."""

import importlib.util
import sys
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.flown_motion import FlownLimits
from sequencer.timing.tempo import TempoMap
from tests.unit.motion.flown.flights import period_of
from tests.unit.staging.in_flight.test_flown_show import flown, staged_show

BENCHMARKS = Path(__file__).parents[2] / "benchmarks"


def loaded(name):
    spec = importlib.util.spec_from_file_location(f"{name}_benchmark", BENCHMARKS / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # its records look for their module by name
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def pairs():
    return loaded("flown_pairs")


@pytest.fixture(scope="module")
def routines():
    return loaded("flown_routines")


def link(*broken):
    return SimpleNamespace(broken=broken, missed=lambda: dict.fromkeys(broken, 0.5))


def hands(pairs):
    own = period_of("extension")
    weak = replace(own, flying=replace(own.flying, limits=FlownLimits(hand_speed=0.1)))
    return [pairs.Flown(name, own) for name in ("a", "b")] + [pairs.Flown("lame", weak)]


def test_links_are_counted_by_the_fewest_beats_that_hold(pairs, monkeypatch):
    """Every link between the two that fly takes two beats; every other has none, for want of reach."""

    def asked(before, after, beats, _flying):
        both = all(own.__self__.flies for own in (before, after))
        return link(*(() if both and beats >= 2.0 else ("reach",)))

    monkeypatch.setattr(pairs, "flown_link", asked)
    found = pairs.pair_figures(hands(pairs), 100)
    assert (found["possible"], len(found["rows"])) == (6, 6)
    assert found["both fly"]["links"] == 2
    assert found["both fly"]["within"] == {"1": 0, "2": 2, "3": 2, "4": 2}
    assert found["others"]["within"] == {"1": 0, "2": 0, "3": 0, "4": 0}
    assert found["others"]["broken"] == {"reach": 4}
    assert len(pairs.pair_figures(hands(pairs), 3)["rows"]) == 3


def test_rests_are_counted_both_ways(pairs, monkeypatch):
    """Into a pattern in three beats, out of it never: told by which end hangs still."""

    def asked(before, _after, beats, _flying):
        still = np.max(np.abs(before(0.0).path[1:])) == 0.0
        return link(*(() if still and beats >= 3.0 else ("pull",)))

    monkeypatch.setattr(pairs, "flown_link", asked)
    found = pairs.rest_figures(hands(pairs))
    assert found["from rest, flies"]["within"] == {"1": 0, "1.5": 0, "2": 0, "3": 2, "4": 2}
    assert found["to rest, flies"]["within"] == dict.fromkeys(("1", "1.5", "2", "3", "4"), 0)
    assert found["to rest, others"]["broken"] == {"pull": 1}
    figures = {"patterns": 3, "fly": 2, "rest": found}
    figures["pairs"] = pairs.pair_figures(hands(pairs), 1)
    assert any("to rest, a: pull" in line for line in pairs.links_text(figures))


def test_states_are_those_of_the_period(pairs):
    """A pattern's end is its start again, a period later."""
    one = pairs.vocabulary(["extension"])[0]
    assert one.flies
    start, end = one.state(0.0), one.state(one.period.law.period)
    assert_allclose(end.path, start.path, atol=1e-9)
    assert_allclose(start.path[1], one.period.head.at(np.zeros(1), 1)[0])


def test_a_show_obeys_mechanics_and_one_without_weight_does_not(routines, monkeypatch):
    """Source: Newton's second law; a head that nothing pulls down leaves its path at once."""
    made = flown().staged
    dancer = made.dancers[0]
    moved = routines._Moved(dancer, "right", dancer.trajectories["right"], made.tempo)
    assert routines.windows(9.0, 14.0) == [(9.0, 13.0), (13.0, 14.0)]
    spans = [(10.0, 14.0), (9.0, 9.5)]
    kept = moved.strays(spans)
    assert kept.max() < 1e-3
    assert moved.strays(spans[1:]) == pytest.approx(kept[1:], rel=1e-6)
    monkeypatch.setattr(routines, "GRAVITY", np.zeros(3))
    assert moved.strays(spans).min() > 0.05


def test_what_a_hand_feels_and_does_is_held_to_its_limits(routines, monkeypatch):
    monkeypatch.setattr(
        routines._Moved, "strays", lambda _, spans: np.linspace(0.0001, 0.002, len(spans))
    )
    found = routines._motion_figures(flown())
    assert found["courses"] == 6
    assert found["windows"] > 6
    assert 0 < found["over_1_mm"] < found["windows"]
    assert found["forward_mm"] == pytest.approx(2.0)
    assert 0.3 < found["least_pull"] < 1.0
    assert not any("pull" in each for each in found["missed"])
    monkeypatch.setattr(routines, "LEAST_PULL", 1.5)  # more than a prop at rest pulls
    assert any(": pull" in each for each in routines._motion_figures(flown())["missed"])


def test_the_largest_acceleration_is_at_its_beat(routines):
    """By central differences of the dancer's own hand, inside the block."""
    made = flown().staged
    dancer = made.dancers[0]
    push, at = routines._Moved(dancer, "right", dancer.trajectories["right"], made.tempo).push(
        9.0, 15.0
    )
    step = 1e-3  # [beats]
    beats = np.linspace(9.0, 15.0, 3001)
    own = [dancer.stage_points(beats + k * step)[0][6] for k in (-1, 0, 1)]
    size = np.linalg.norm(own[0] - 2 * own[1] + own[2], axis=1) / (0.6 * step) ** 2
    assert push == pytest.approx(size.max(), rel=1e-3)
    assert at == pytest.approx(beats[size.argmax()], abs=0.01)


def test_blocks_and_passages_are_counted(routines):
    found = routines._flying(flown())
    assert found["blocks"] == {"all": 2, "fly": 2, "broken": {}}
    assert (found["passages"]["all"], found["passages"]["fly"]) == (4, 0)


def test_a_minimum_that_is_too_large_is_told(routines, monkeypatch):
    """Sampling is the outside: a proof that promises 2 cm more than there is is broken."""
    monkeypatch.setattr(routines, "RATE", 100.0)
    made, given = flown(), routines.approaches
    times = {}
    found = routines._distance_figures(staged_show(), made, times)
    assert (found["pairs"], found["broken_minima"]) == (1, 0)
    assert found["largest_error_mm"] < 15.0  # sampled 20 times more sparsely than in the benchmark
    assert set(times) == {"distances drawn", "distances flown"}

    def promised(*args, **more):
        own = given(*args, **more)
        return replace(own, distance=own.distance + 0.02)

    monkeypatch.setattr(routines, "approaches", promised)
    assert routines._distance_figures(staged_show(), made, {})["broken_minima"] == 1


def test_seconds_of_an_even_tempo(routines):
    """Source: 100 beats a minute are 0.6 s each."""
    beats = np.linspace(-1.0, 12.0, 2000)
    seconds = routines.seconds_a_beat(TempoMap.steady(100.0, beats=16), beats)
    assert_allclose(seconds, 0.6, atol=1e-9)
