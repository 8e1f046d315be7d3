"""What was not looked at stands under its heading, wherever the page ends."""

import io
from dataclasses import replace

import pypdf
import pytest

from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import document_bytes
from sequencer.outputs.sheets.safety_sheet import safety_sheet


@pytest.mark.parametrize("count", [2, 8, 12, 16, 20, 24])
def test_the_heading_is_never_left_alone(rounds, tmp_path, count):
    unseen = tuple(
        f"the {k}th thing that nobody looked at, " + "at length " * 12 for k in range(count)
    )
    report = replace(rounds.report(), not_checked=unseen)
    edition = Edition(staged=rounds.show(tmp_path), report=report)
    data = document_bytes([safety_sheet(edition)], edition, "a4", "safety")
    texts = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages]
    (page,) = [text for text in texts if "Not looked at" in text]

    assert "the 0th thing" in page.replace("\n", " ")
