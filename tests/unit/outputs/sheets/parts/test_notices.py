"""When a finding is, as the sheets say it."""

from types import SimpleNamespace

from sequencer.findings import Finding, Report
from sequencer.outputs.sheets.page.wording import NB, clock_fine
from sequencer.outputs.sheets.parts.notices import _when
from sequencer.units import BarLengths

WALTZ = SimpleNamespace(report=Report(show="s.yaml", bars=BarLengths(metre=3)))


def finding(start, position):
    return Finding(
        code="post-out-of-reach", severity="stop", who=("Isa",), start=start, end=start, position=position, message="far"
    )  # fmt: skip


def test_the_bar_is_told_in_the_song_and_not_before_it():
    assert _when(finding(None, None), WALTZ) == "whole show"
    assert _when(finding(16.0, "8.1+1/2"), WALTZ) == f"{clock_fine(16.0)} the and of bar{NB}8.1"
    assert _when(finding(-16.0, "-6.1+1/2"), WALTZ) == clock_fine(-16.0)
    last = _when(finding(16.0, "8.3+7/8"), WALTZ)
    assert last == f"{clock_fine(16.0)} just before bar{NB}9.1"
