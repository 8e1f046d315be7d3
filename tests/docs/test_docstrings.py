"""Every public docstring that speaks of an array gives its shape, its unit and a source."""

import ast
import re
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "sequencer"
ARRAY = re.compile(r"^\s*\w[\w, *]*\s*:.*\b(array_like|ndarray)\b")
SHAPED = re.compile(r"shape \(.*\) \[.+\]")


def public(tree):
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            yield node


@pytest.mark.parametrize(
    "path", sorted(PACKAGE.rglob("*.py")), ids=lambda p: str(p.relative_to(PACKAGE))
)
def test_arrays_in_public_docstrings_have_shape_unit_and_source(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    module = ast.get_docstring(tree) or ""
    faults = []
    for node in public(tree):
        text = ast.get_docstring(node) or ""
        arrays = [line for line in text.splitlines() if ARRAY.match(line)]
        faults += [f"{node.name}: {line.strip()}" for line in arrays if not SHAPED.search(line)]
        if arrays and isinstance(node, ast.FunctionDef) and "Source:" not in text + module:
            faults.append(f"{node.name}: no Source")
    assert faults == []


@pytest.mark.parametrize(
    "path", sorted(PACKAGE.rglob("*.py")), ids=lambda p: str(p.relative_to(PACKAGE))
)
def test_every_module_says_its_duty(path):
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
