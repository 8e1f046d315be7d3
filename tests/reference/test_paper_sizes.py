"""Paper of the sheets and of the pocket card against ISO 216.

Source: ISO 216, A series, as its encyclopaedia copy has it (read): A(n+1) is A(n) halved across, rounded
down to whole millimetres. US Letter 215.9 by 279.4 mm, from memory.
"""

from itertools import pairwise

import pytest

from sequencer.outputs.sheets.card import PANELS
from sequencer.outputs.sheets.page.paper import Page

MM = 72 / 25.4
SERIES = [(841, 1189), (594, 841), (420, 594), (297, 420), (210, 297), (148, 210), (105, 148)]


def test_each_size_is_half_of_the_one_before():
    for (wide, tall), (half_wide, half_tall) in pairwise(SERIES):
        assert (half_wide, half_tall) == (tall // 2, wide)


@pytest.mark.parametrize(("name", "wide", "tall"), [("a4", 210, 297), ("letter", 215.9, 279.4)])
def test_pages_have_the_sizes_of_the_standard(name, wide, tall):
    page = Page.of(name)

    assert page.width / MM == pytest.approx(wide, abs=0.01)
    assert page.height / MM == pytest.approx(tall, abs=0.01)


def test_a_folded_card_is_a7():
    """A sheet of A4 folded to eight: half of half of half, 74 by 105 mm before rounding down."""
    page = Page.of("a4", wide=True)

    assert PANELS == 8
    assert page.width / 4 / MM == pytest.approx(297 / 4, abs=0.01)
    assert int(page.width / 4 / MM + 1e-3) == 148 // 2
    assert int(page.height / 2 / MM + 1e-3) == 210 // 2
