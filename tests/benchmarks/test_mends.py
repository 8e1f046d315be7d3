"""A sample of the faults that benchmarks/mends.py plants: each gets a mend, and each mend holds in the file."""

import importlib.util
import sys
from pathlib import Path

import numpy as np
import pytest

from sequencer.planning.dance_mends import DanceMend, FoundMends

SCRIPT = Path(__file__).parents[2] / "benchmarks" / "mends.py"
KINDS = ("own body", "link", "reach", "slack", "pace", "floor", "shift")


@pytest.fixture(scope="module")
def benchmark():
    """The benchmark, with easy patterns only, which are quick to fit."""
    spec = importlib.util.spec_from_file_location("mends_benchmark", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    sys.modules["mends_benchmark"] = module
    spec.loader.exec_module(module)
    module.FULL = module.CALM = ("two-beat-weave", "three-beat-weave", "static-spin", "extension")
    module.PERFORMERS, module.SOLOS = ((118.0, 1.7, 0.45),), 2
    yield module
    del sys.modules["mends_benchmark"]


@pytest.mark.parametrize("number", range(10))
def test_a_planted_fault_gets_a_mend_that_holds(benchmark, number):
    (row,) = benchmark.rows_of([KINDS[number % len(KINDS)]], [number], seed=11)
    assert row["mends"], row["message"]
    assert row["wrong"] == []


def test_what_a_mend_leaves_or_brings_is_told(benchmark):
    """The judge of the benchmark itself: a mend that does nothing, and a fault that was not there."""
    solo, _, found = benchmark.planted(np.random.default_rng([11, 3]), "slack", seed=11)
    fault = found[0]
    idle = FoundMends(mends=(DanceMend(words="idle", steps=(), after=None),))
    told = benchmark.wrong_with(idle, solo, found, [fault], flown=False)
    assert told == ["idle: tether-slack is still there"]
    told = benchmark.wrong_with(idle, solo, [], [], flown=False)
    assert f"idle: tether-slack at {fault.position} is new" in told
