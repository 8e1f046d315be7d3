"""Exits in figures: those that do not count say why, and their width is in no sum."""

import pytest

from sequencer.findings import Report
from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.parts.audience import audience_block
from sequencer.outputs.sheets.parts.edition import Edition
from tests.sites import site

ROAD = "at: [16, -12], width: 3 m"


def said(*pairs):
    edition = Edition(staged=site(*pairs), report=Report(show="s"))
    return "\n".join(lines_of(audience_block(edition, 480.0))).replace("\u00a0", " ")


def test_exits_that_count_are_summed():
    """78 a metre and minute [K7]: 2 m let 780 out in 5 min, with the 3 m of the other 1950."""
    words = said()

    assert "Exit road · 3.00 m\n" in words
    assert "does not count" not in words
    assert "780 · 1950" in words


@pytest.mark.parametrize(
    ("road", "why"),
    [
        ("at: [0, 16], width: 3 m", "does not count: its way passes"),
        ("at: [8, 6], width: 3 m", "flame comes too near"),
        ("at: [-13, 6], width: 3 m", "does not count: it stands inside hut"),
        ("at: [15, 9], width: 3 m", "the fuel is too near"),
        ("at: [8, 0], width: 3 m", "Sorrel is posted in it"),
        ("at: [16, -12]", "width ____ m"),
    ],
)
def test_an_exit_that_does_not_count_says_why(road, why):
    words = said((ROAD, road))

    assert why in words
    assert "780 · 780" in words  # the lane's 2 m alone, which is then not taken as lost
