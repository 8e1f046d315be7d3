"""Where heads go that come off is told once: by the table of rules and by the plan, in the motion that the report is of."""

import pytest

from sequencer.outputs.sheets.parts import edition as edition_module
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety import compliance as compliance_module
from tests.golden import rounds


@pytest.mark.parametrize("flown", [False, True])
def test_flights_let_go_are_of_the_motion_that_the_report_is_of(tmp_path, monkeypatch, flown):
    show = rounds.show(tmp_path)
    made = rounds.show(tmp_path)  # stands for the same show on its flown paths
    seen = []

    def landing_plan(motion):
        seen.append(motion)

    monkeypatch.setattr(
        edition_module, "flown_show", lambda _show: type("Flown", (), {"staged": made})
    )
    monkeypatch.setattr(compliance_module, "landing_plan", landing_plan)
    edition = Edition(staged=show, report=rounds.report(), flown=flown)
    assert edition.compliance
    assert seen == [made if flown else show]
    assert edition.motion is (made if flown else show)
