"""The usual line of a show file is read as the YAML parser reads it.

Reference: the tree that `composed` makes of the same text with ruamel.yaml.
"""

import random
from pathlib import Path

import pytest
from ruamel.yaml.error import YAMLError

from sequencer.show.text.nodes import composed
from sequencer.show.text.simple_rows import simple_row

SHOWS = sorted((Path(__file__).parents[4] / "shows").glob("*.yaml"))
ROWS = [
    line
    for path in SHOWS
    for line in path.read_text(encoding="utf-8").splitlines(keepends=True)
    if line.lstrip().startswith("- ")
]
LETTERS = "ab 1-.:,{}[]#'\"&*|>~/é+_\t\r"


def told(node):
    return (
        node.kind, node.start, node.line, node.column, node.end, node.text, node.empty, node.style, node.flow,
        node.anchor, node.tag, [told(each) for each in node.names], [told(each) for each in node.items],
    )  # fmt: skip


def parsed(text):
    try:
        return told(composed(text))
    except YAMLError:
        return None


def test_most_rows_of_the_shows_are_simple_and_read_alike():
    simple = [row for row in ROWS if simple_row(row) is not None]

    assert len(simple) > 0.8 * len(ROWS)
    assert [row for row in simple if told(simple_row(row)) != parsed(row)] == []


def test_a_damaged_row_is_read_alike_or_left_to_the_parser():
    draw = random.Random(3)  # noqa: S311  # no secret
    simple = 0
    for _ in range(4000):
        row = draw.choice(ROWS)
        for _ in range(draw.randint(1, 3)):
            at = draw.randrange(len(row))
            row = (
                row[:at] + draw.choice(["", draw.choice(LETTERS)]) + row[at + draw.randint(0, 1) :]
            )
        found = simple_row(row)
        if found is not None:
            simple += 1
            assert told(found) == parsed(row), row
    assert simple > 500


@pytest.mark.parametrize(
    "row",
    [
        "- {a: 1}  # said\n  # more\n\n",
        "  - {a: null, b: [x y, -2.5], c: {d: 15 cm}}\r\n",
        "- {a: 1}",
        "- {a: 1}#no comment\n",
        "- {a: 1} b\n",
        "- {a: 1}\n  b: 2\n",
    ],
)
def test_what_stands_behind_a_row(row):
    found = simple_row(row)

    assert found is None or told(found) == parsed(row)
    assert (found is None) == (row.startswith("- {a: 1}#") or " b" in row.split("}")[-1])
