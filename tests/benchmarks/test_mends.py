"""A sample of the faults that benchmarks/mends.py plants: each gets a mend, and each mend holds in the file."""

import importlib.util
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from sequencer.findings import Figure, Finding
from sequencer.planning.mends.dance_mends import DanceMend, FoundMends
from tests.repeated import at_length

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
    module._SEVERAL = 0.0
    yield module
    del sys.modules["mends_benchmark"]


@pytest.mark.parametrize("number", [1, 3, 4, 6, *at_length(0, 2, 5)])
def test_a_planted_fault_gets_a_mend_that_holds(benchmark, number):
    (row,) = benchmark.rows_of([KINDS[number % len(KINDS)]], [number], seed=11)
    assert row["mends"], row["message"]
    assert row["wrong"] == []


def test_what_is_told_holds_among_several_faults(benchmark, monkeypatch):
    """There may be none: a link that fails in another way with the mend counts as worse, until the other fault is mended."""
    monkeypatch.setattr(benchmark, "_SEVERAL", 1.0)
    (row,) = benchmark.rows_of(["slack"], [5], seed=11)
    assert row["faults"] >= 2
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


def test_a_fault_in_the_next_block_is_not_the_one_before(benchmark):
    """However near in time: a fault in one block never stands for one in another, nor for one of the other hand."""
    _, show, found = benchmark.planted(np.random.default_rng([11, 3]), "slack", seed=11)
    fault = found[0]
    assert benchmark._alike(show, fault, show, fault)
    blocks = [block for block in show.blocks_of("Isa") if not block.link]
    k = benchmark._block_of(show, fault)[0] - 1
    other = blocks[k + 1] if k + 1 < len(blocks) else blocks[k - 1]
    moved = replace(fault, start=show.seconds(other.start), end=show.seconds(other.end))
    assert not benchmark._alike(show, moved, show, fault)
    left, right = (replace(fault, hands=(side,)) for side in ("left", "right"))
    assert not benchmark._alike(show, left, show, right)
    assert benchmark._alike(show, left, show, replace(fault, hands=("left", "right")))


def test_some_shows_have_several_faults(benchmark, monkeypatch):
    monkeypatch.setattr(benchmark, "_SEVERAL", 1.0)
    solo, _, found = benchmark.planted(np.random.default_rng([11, 5]), "slack", seed=11)
    assert sum(bool(block.given or "cycle" in block.more) for block in solo.blocks) >= 2
    assert len(found) >= 2


def test_of_what_only_the_worst_is_told_one_no_worse_may_be_anywhere(benchmark):
    def let_go(beyond, start):
        figure = Figure(quantity="distance", value=-beyond, limit=1.0, unit="m", least=True)
        return Finding(
            code="let-go-audience", severity="warn", who=("Isa",), start=start, end=None, position="1.1",
            message="", figures=(figure,),
        )  # fmt: skip

    assert benchmark._alike(None, let_go(60.0, 20.0), None, let_go(67.0, 4.0))
    assert not benchmark._alike(None, let_go(68.0, 20.0), None, let_go(67.0, 4.0))
