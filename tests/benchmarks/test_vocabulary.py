"""The benchmark of the vocabulary: what it asks for, how it counts, and that it tells good from bad."""

import importlib.util
import json
import subprocess
import sys
from pathlib import Path

import pytest

from sequencer.motion.patterns.library import patterns
from sequencer.motion.performers.feasibility import GAP_ERROR

SCRIPT = Path(__file__).parents[2] / "benchmarks" / "vocabulary.py"


@pytest.fixture(scope="module")
def benchmark():
    before = list(sys.path)
    spec = importlib.util.spec_from_file_location("vocabulary_benchmark", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # its records look for their module by name
    spec.loader.exec_module(module)
    yield module
    del sys.modules[spec.name]
    sys.path[:] = before


@pytest.fixture
def cell(benchmark):
    def of(pattern, prop="poi", tether=0.5, tempo=100.0):
        return benchmark.Cell(prop=prop, pattern=pattern, stature=1.7, tether=tether, tempo=tempo)

    return of


def test_one_cell_from_the_command_line():
    asked = ["--prop", "poi", "--patterns", "extension", "--statures", "1.7", "--tethers", "0.5"]
    said = subprocess.run(
        [sys.executable, str(SCRIPT), *asked, "--tempi", "100", "--json", "--without-search"],
        capture_output=True, check=True, text=True,
    )  # fmt: skip
    poi = json.loads(said.stdout)["props"]["poi"]
    assert {key: poi[key] for key in ("cells", "no stop", "clear", "block", "way")} == {
        "cells": 1, "no stop": 1, "clear": 1, "block": 1, "way": 1,
    }  # fmt: skip
    assert poi["failing"] == []


def test_findings_keep_a_cell_from_passing(benchmark, cell):
    slow = benchmark.judged(cell("extension", tempo=3.0))
    assert slow.passed == ()
    assert "stop tether-slack" in slow.codes
    long = benchmark.judged(cell("extension", tether=1.5))
    assert long.passed == ("no stop",)
    assert "warn hits-floor" in long.codes
    refused = benchmark.judged(cell("extension", tether=50.0))
    assert (refused.passed, refused.codes) == ((), ("refused",))
    assert "50 m is outside" in refused.messages[0]


def test_what_is_too_near_is_told_by_stretch(benchmark, cell, monkeypatch):
    assert benchmark.judged(cell("extension")).passed == benchmark.QUESTIONS
    monkeypatch.setattr(benchmark, "SPARE", 0.6)
    near = benchmark.judged(cell("extension"))
    assert near.passed == ("no stop", "clear")
    assert {"near body, danced", "near body, on the way"} <= set(near.codes)


@pytest.mark.parametrize("prop", ["poi", "club", "fan"])
def test_room_to_spare_is_taken_off_the_gap(benchmark, cell, monkeypatch, prop):
    """Ten centimetres more to spare leave ten less, from the body and from the other prop."""
    (dancer,) = benchmark.staged_cell(cell("two-beat-weave", prop)).dancers
    found = []
    for spare in (0.8, 0.9):  # wide enough for every stretch to have something in the way
        monkeypatch.setattr(benchmark, "SPARE", spare)
        found.append(benchmark.gaps_of(dancer))
    assert {(stretch, what) for stretch, what, _ in found[0]} == {
        (stretch, what) for stretch in ("block", "way") for what in ("body", "prop")
    }
    for (_, _, less), (_, _, more) in zip(*found, strict=True):
        assert less.value - more.value == pytest.approx(0.1, abs=2 * GAP_ERROR)


def test_what_is_asked_for(benchmark):
    few = ((1.7, 1.8), (0.4, 0.5, 0.6), (100.0,))
    poi = benchmark.cells_of("poi", None, *few)
    assert len(poi) == len(patterns()) * 6
    assert len(benchmark.cells_of("club", ["extension", "stall"], *few)) == 2
    one, two = (benchmark.cells_of(prop, None, *few) for prop in ("staff", "two staffs"))
    assert {c.pattern for c in one} == {c.pattern for c in two if not patterns()[c.pattern].hybrid}
    for prop in benchmark.PROPS:
        name = benchmark.cells_of(prop, None, (1.7,), (0.5,), (100.0,))[0]
        (dancer,) = benchmark.staged_cell(name).dancers
        assert len(dancer.props) == benchmark.PROPS[prop].hands
    small = [name for name, each in patterns().items() if benchmark.is_small_toroid(each)]
    assert len(small) == 12


def test_figures_and_table(benchmark, cell):
    def result(pattern, tether, passed, *codes):
        return benchmark.Result(
            cell=cell(pattern, tether=tether), passed=benchmark.QUESTIONS[:passed], codes=codes,
            messages=codes,
        )  # fmt: skip

    rows = [
        result("iso-bend-2", 0.4, 4),
        result("iso-bend-2", 0.5, 2, "near body, danced"),
        result("iso-bend-2", 0.6, 0, "stop self-hit"),
        result("extension", 0.4, 4),
    ]
    figures = benchmark.figures_of(rows)
    assert [figures[q] for q in benchmark.QUESTIONS] == [3, 3, 2, 2]
    assert figures["toroids_2_to_5"] == {"cells": 2, "no stop": 2, "clear": 2, "block": 1, "way": 1}
    assert [row["way"] for row in figures["by_size"]] == [2, 0, 0]
    assert len(figures["failing"]) == 2
    assert json.loads(json.dumps(figures)) is not None
    table = benchmark.table_of("poi", figures)
    assert "iso-bend-2    1 of 3   near body, danced" in table
    assert "75 /  75 /  50 /  50" in table
