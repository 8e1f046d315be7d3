"""The faults that the mutation run plants: each term of a formula, nothing that cannot matter."""

import ast
import importlib.util
import json
import sys
from pathlib import Path

import pytest

pytest.importorskip("cosmic_ray")
BENCHMARKS = Path(__file__).parents[2] / "benchmarks"
SCRIPT = BENCHMARKS / "mutants.py"
MODULE = '''"""A module: 1 + 2."""

__all__ = ["a" + "b"]
LIMIT: float = 3 * 2


@cache(maxsize=64)
def bound(a: int | None, *, b: float = 0.5) -> int | None:
    """Adds 1 + 2."""
    if a > b and b > 0:
        raise ValueError(f"{a + 1} over {b + 2}")
    pairs = zip(a, b, strict=True)
    return a - b * 2 + f(a)(b)
'''


@pytest.fixture(scope="module")
def mutants():
    spec = importlib.util.spec_from_file_location("mutants_benchmark", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # its records look for their module by name
    spec.loader.exec_module(module)
    yield module
    del sys.modules[spec.name]


@pytest.fixture
def changes(mutants, tmp_path):
    (tmp_path / "own.py").write_text(MODULE, encoding="utf-8")
    planted = [mutants.planted(tmp_path, place) for place in mutants.places(tmp_path, "own.py")]
    return {(each.operator, each.before, each.after) for each, _ in filter(None, planted)}


def test_each_operand_is_left_out_in_turn_and_a_difference_keeps_its_sign(changes):
    line = "return a - b * 2 + f(a)(b)"
    dropped = {after for name, before, after in changes if (name, before) == ("DropOperand", line)}

    assert dropped == {
        "return -b * 2 + f(a)(b)",
        "return a + f(a)(b)",
        "return a - b * 2",
        "return a - 2 + f(a)(b)",
        "return a - b + f(a)(b)",
    }


def test_signs_edges_and_numbers_are_changed(changes):
    after = {after for _, _, after in changes}

    assert "return a + b * 2 + f(a)(b)" in after
    assert "return a - b / 2 + f(a)(b)" in after
    assert "return a - b * 3 + f(a)(b)" in after
    assert {"if a >= b and b > 0:", "if a <= b and b > 0:", "if a > b or b > 0:"} <= after
    assert {"if a > b:", "if b > 0:", "if a > b and b > 1:"} <= after
    assert {"LIMIT: float = 4 * 2", "LIMIT: float = 3", "LIMIT: float = 3 / 2"} <= after
    assert "def bound(a: int | None, *, b: float=1.5) -> int | None:" in after


def test_what_cannot_matter_is_left_alone(changes):
    touched = {before for _, before, _ in changes}

    assert touched == {
        "LIMIT: float = 3 * 2",
        "def bound(a: int | None, *, b: float=0.5) -> int | None:",
        "if a > b and b > 0:",
        "return a - b * 2 + f(a)(b)",
    }


def test_what_is_said_to_be_equivalent_still_stands_in_its_module():
    """A statement that was changed or renamed takes its reason with it: it must be judged anew."""
    groups = json.loads((BENCHMARKS / "mutants_equivalent.json").read_text(encoding="utf-8"))
    keys = [key for group in groups for key in group["mutants"]]
    assert len(keys) == len(set(keys))
    assert all(group["why"].endswith(".") for group in groups)
    lines = {}
    for key in keys:
        module, _, change = key.split(" | ", 2)
        if module not in lines:
            tree = ast.parse((BENCHMARKS.parent / module).read_text(encoding="utf-8"))
            lines[module] = {line.strip() for line in ast.unparse(tree).splitlines()}
        assert any(change.startswith(f"{line} -> ") for line in lines[module] if line), key
