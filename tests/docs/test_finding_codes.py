"""Every finding code is declared once, by its check; the page and the code are held to that."""

import ast
import re
from pathlib import Path

import pytest

from sequencer.checks import fault_kinds
from sequencer.checks.registry import BUILT_IN
from sequencer.facts.rule_kinds import RULE_KINDS

ROOT = Path(__file__).parents[2]
ROW = re.compile(r"^\| `([a-z][a-z0-9-]+)` \| ([a-z, ]+) \|", re.MULTILINE)
KEBAB = re.compile(r"^[a-z]+(-[a-z0-9]+)+$")


def documented():
    return ROW.findall((ROOT / "docs" / "findings.md").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def trees():
    return [
        (path, ast.parse(path.read_text(encoding="utf-8")))
        for path in sorted((ROOT / "sequencer").rglob("*.py"))
    ]


def test_rows_are_in_order_and_unique():
    codes = [code for code, _ in documented()]
    assert codes == sorted(set(codes))


def test_the_page_says_what_the_checks_declare():
    assert {code: tuple(said.split(", ")) for code, said in documented()} == {
        code: own for each in BUILT_IN for code, own in each.codes.items()
    }


def test_a_code_stands_in_one_layer(trees):
    """Names of rules and of errors are words of their own: some are spelt like a finding."""
    codes = {code for each in BUILT_IN for code in each.codes}
    other_words = set(RULE_KINDS)
    found = {}
    for path, tree in trees:
        errors = {
            id(node.args[0])
            for node in ast.walk(tree)
            if isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id == "InputError"
            and node.args
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and node.value in codes and id(node) not in errors:
                layer = path.relative_to(ROOT / "sequencer").parts[0]
                if not (layer in {"facts", "safety"} and node.value in other_words):
                    found.setdefault(node.value, set()).add(layer)

    assert found == {code: {"checks"} for code in codes}


def test_codes_that_checks_give_are_declared(trees):
    given = {
        leaf.value
        for path, tree in trees
        if "checks" in path.parts
        for node in ast.walk(tree)
        if isinstance(node, ast.keyword) and node.arg == "code"
        for leaf in ast.walk(node.value)
        if isinstance(leaf, ast.Constant) and KEBAB.match(str(leaf.value))
    }

    assert given
    assert given <= {code for each in BUILT_IN for code in each.codes}


def test_the_page_names_the_quantities_of_figures():
    page = (ROOT / "docs" / "findings.md").read_text(encoding="utf-8")
    named = {
        value
        for name, value in vars(fault_kinds).items()
        if name.isupper() and isinstance(value, str) and not KEBAB.match(value)
    }
    assert {"tempo", "turns", "gap to body"} <= named
    assert {value for value in named if f"`{value}`" not in page} == set()
