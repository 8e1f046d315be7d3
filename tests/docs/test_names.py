"""One name for one thing: classes, modules and public constants of the package.

Source: this project's contributor guide, "Words".
"""

import ast
from collections import defaultdict
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "sequencer"
VERB = "cli"  # a verb's module is named as it is typed
TWINS = {"patterns", "song"}  # a subject's room, and what is printed of it


@pytest.fixture(scope="module")
def modules():
    return [
        (path.relative_to(PACKAGE), ast.parse(path.read_text(encoding="utf-8")))
        for path in sorted(PACKAGE.rglob("*.py"))
    ]


def _several(found):
    return {name: sorted(map(str, places)) for name, places in found.items() if len(places) > 1}


def test_no_two_modules_or_packages_have_one_name(modules):
    found = defaultdict(set)
    for path, _ in modules:
        named = path.parent if path.name == "__init__.py" else path.with_suffix("")
        if path.parts[0] != VERB and named.name:
            found[named.name].add(named)

    assert {name: places for name, places in _several(found).items() if name not in TWINS} == {}


def test_no_class_name_means_two_things(modules):
    found = defaultdict(set)
    for path, tree in modules:
        for node in tree.body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                found[node.name].add(path)

    assert _several(found) == {}


def test_no_public_constant_has_two_values(modules):
    found = defaultdict(set)
    for path, tree in modules:
        for node in tree.body:
            if isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None:
                targets = node.targets if isinstance(node, ast.Assign) else [node.target]
                names = {leaf.id for target in targets for leaf in ast.walk(target)
                         if isinstance(leaf, ast.Name)}  # fmt: skip
                for name in names:
                    if not name.startswith("_"):
                        found[name].add((ast.unparse(node.value), path))

    several = {name: {value for value, _ in places} for name, places in found.items()}
    for name in ("CHECK", "NOT_CHECKED"):  # one of each check
        several.pop(name)
    assert {name for name, values in several.items() if len(values) > 1} == set()
