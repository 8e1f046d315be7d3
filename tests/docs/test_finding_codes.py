"""Every finding code that the checks can give is documented, and no other."""

import ast
import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
ROW = re.compile(r"^\| `([a-z][a-z0-9-]+)` \|", re.MULTILINE)
KEBAB = re.compile(r"^[a-z]+(-[a-z0-9]+)+$")


def documented():
    return ROW.findall((ROOT / "docs" / "findings.md").read_text(encoding="utf-8"))


def test_rows_are_in_order_and_unique():
    codes = documented()
    assert codes == sorted(set(codes))


def test_documented_codes_stand_in_the_checks():
    words = {
        node.value
        for path in (ROOT / "sequencer" / "checks").rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant)
        and isinstance(node.value, str)
        and KEBAB.match(node.value)
    }
    missing = set(documented()) - words
    assert missing == set()


def test_codes_given_by_checks_are_documented():
    given = set()
    for path in (ROOT / "sequencer" / "checks").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.keyword) and node.arg == "code":
                given |= {
                    leaf.value
                    for leaf in ast.walk(node.value)
                    if isinstance(leaf, ast.Constant) and KEBAB.match(str(leaf.value))
                }
    assert given - set(documented()) == set()
