"""Every public docstring that speaks of an array gives its shape, its unit and a source."""

import ast
import re
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "sequencer"
ARRAY = re.compile(r"^\s*\w[\w, *]*\s*:.*\b(array_like|ndarray)\b")
SHAPED = re.compile(r"shape \(.*\) \[.+\]")


def public(tree):
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            yield node


def faults_of(tree):
    """What a module's docstrings lack, in words."""
    module = ast.get_docstring(tree)
    if not module:
        yield "the module does not say its duty"
    for node in public(tree):
        text = ast.get_docstring(node) or ""
        arrays = [line for line in text.splitlines() if ARRAY.match(line)]
        yield from (f"{node.name}: {line.strip()}" for line in arrays if not SHAPED.search(line))
        if arrays and isinstance(node, ast.FunctionDef) and "Source:" not in f"{text}{module}":
            yield f"{node.name}: no Source"


def test_every_module_says_its_duty_and_every_array_its_shape_unit_and_source():
    paths = sorted(PACKAGE.rglob("*.py"))
    faults = [
        f"{path.relative_to(PACKAGE)}: {fault}"
        for path in paths
        for fault in faults_of(ast.parse(path.read_text(encoding="utf-8")))
    ]

    assert len(paths) > 200
    assert faults == []


FAULTY = '''
def a(x):
    """Of nothing.

    x : array_like
    """
'''


def test_what_lacks_is_found():
    assert list(faults_of(ast.parse(FAULTY))) == [
        "the module does not say its duty",
        "a: x : array_like",
        "a: no Source",
    ]
