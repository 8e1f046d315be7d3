"""The benchmark of flown patterns: what it counts, and that it tells a path that obeys mechanics from one that does not."""

import importlib.util
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from sequencer.motion.flown.periods import FlownPeriod
from tests.unit.motion.flown.flights import integrated, period_of

BENCHMARKS = Path(__file__).parents[2] / "benchmarks"


@pytest.fixture(scope="module")
def benchmark():
    before = list(sys.path)
    sys.path.insert(0, str(BENCHMARKS))
    spec = importlib.util.spec_from_file_location("flown_benchmark", BENCHMARKS / "flown.py")
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # its records look for their module by name
    spec.loader.exec_module(module)
    module.loop = lambda: 1.0  # so that times are in seconds
    yield module
    del sys.modules[spec.name], sys.modules["speed"]
    sys.path[:] = before


def test_figures_and_tables(benchmark, monkeypatch):
    monkeypatch.setattr(benchmark, "forward_error", lambda *_, **given: 1e-6 if given else 0.002)
    found = benchmark.figures(["inspin-flower-1"], ["static-spin"], (100.0,))
    (bare,) = found["bare"]
    assert (bare["alike"], bare["lobes_apart_cm"], bare["broken"]) == (1, None, [])
    assert 0 < bare["head_cm"][0] < bare["head_cm"][1] < 10
    summary = found["fitted"]["100"]
    assert {key: summary[key] for key in ("patterns", "fly", "clean", "broken")} == {
        "patterns": 1, "fly": 1, "clean": 1, "broken": {},
    }  # fmt: skip
    assert (summary["forward_mm"], summary["over_1_mm"], summary["by_beat_mm"]) == (2.0, 1, 0.001)
    said = benchmark.table_of(found)
    assert "inspin-flower-1" in said
    assert "100 static-spin: forward 2 mm, by beat 0.001 mm" in said


def test_forward_errors_are_those_of_another_integration(benchmark, monkeypatch):
    """tests/unit/motion/flown/flights.py integrates by polynomials of scipy; with other gravity the head leaves its path."""
    period = period_of("extension")
    looks = np.linspace(0.0, 1.0, 65)
    other = np.linalg.norm(integrated(period, looks) - period.head.at(looks), axis=1).max()
    assert benchmark.forward_error(period, beats=1.0, tolerance=1e-8) < 1e-5
    assert other < 1e-5
    given = benchmark.hand_at
    monkeypatch.setattr(
        benchmark, "hand_at", lambda *at: given(*at)._replace(acceleration=np.zeros(3))
    )
    assert benchmark.forward_error(period, beats=1.0, tolerance=1e-4) > 0.05


def test_lobes_apart(benchmark):
    """Nothing where lobes are flown alike; as much as one of them is moved by."""
    period = period_of("iso-bend-2")
    assert benchmark.lobes_apart(period) < 1e-9
    moved = period.head.coefficients.copy()
    around = len(moved) - 5
    half = (np.arange(len(moved)) % around) < around // 2
    moved[half] += [0.0, 0.02, 0.0]
    other = FlownPeriod(
        law=period.law, flying=period.flying, head=replace(period.head, coefficients=moved),
        alike=1, residual=0.0, moved=period.moved,
    )  # fmt: skip
    assert benchmark.lobes_apart(other) == pytest.approx(0.02, rel=1e-6)
