"""When a finding is, as the sheets say it."""

from sequencer.findings import Finding
from sequencer.outputs.sheets.page.wording import NB, clock_fine
from sequencer.outputs.sheets.parts.notices import _when


def finding(start, position):
    return Finding(
        code="post-out-of-reach", severity="stop", who=("Isa",), start=start, end=start, position=position, message="far"
    )  # fmt: skip


def test_the_bar_is_told_in_the_song_and_not_before_it():
    assert _when(finding(None, None)) == "whole show"
    assert _when(finding(16.0, "8.1+1/2")) == f"{clock_fine(16.0)} the and of bar{NB}8.1"
    assert _when(finding(-16.0, "-6.1+1/2")) == clock_fine(-16.0)
