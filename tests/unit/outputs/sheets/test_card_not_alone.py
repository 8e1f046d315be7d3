"""Nobody turns over the pocket card for one word."""

import pytest
from reportlab.platypus import Spacer

from sequencer.outputs.sheets.card import not_alone

ROOM, TALL = 100.0, 90.0


def heights(columns):
    return [[block.height for block in column] for column in columns]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ([[30, 30, 20], [10]], [[30, 30], [20, 10]]),
        ([[30, 30, 20], [10, 10]], [[30, 30, 20], [10, 10]]),
        ([[45, 40], [10]], [[45, 40], [10]]),  # then the one before would be left with one
        ([[5, 5, 80], [15]], [[5, 5, 80], [15]]),  # no room for both
        ([[30]], [[30]]),
    ],
)
def test_the_last_panel_holds_more_than_the_end(before, after):
    columns = [[Spacer(1, high) for high in column] for column in before]
    assert heights(not_alone(columns, ROOM, TALL)) == after
