"""A switch as JSON: the same as the records say, and findings only where both sides were looked at."""

import json

from sequencer.checks.dance.who_is_there import CHECK
from sequencer.checks.suite import reported
from sequencer.desk.views.findings_view import report_view
from sequencer.desk.views.switch_view import switch_view
from sequencer.staging.timeline import staged
from tests.songs import even_song
from tests.unit.show.test_tonight import SHOW, read

AWAY = SHOW + "tonight: {away: [Birch]}\n"


def stage(text):
    return staged(read("", text), even_song(80))


def report(text):
    show = stage(text)
    return report_view(show, reported(show, CHECK.outcome(show)), text, "s.yaml", ())


def test_findings_that_came_and_went_are_told_once_both_sides_were_looked_at():
    both = [report(SHOW), report(AWAY)]
    told = json.loads(json.dumps(switch_view(SHOW, AWAY, both, stage, "s.yaml")))
    assert [each["part"] for each in told["parts"]] == ["Birch"]
    came = [(each["kind"], each["severity"]) for each in told["findings"]["changes"]]
    assert came == [("new", "warn")] * 2 + [("new", "note")]
    back = switch_view(AWAY, SHOW, both[::-1], stage, "s.yaml")["findings"]
    assert {each["kind"] for each in back["changes"]} == {"gone"}


def test_what_was_not_looked_at_is_said():
    assert switch_view(SHOW, AWAY, [report(SHOW), None], stage, "s.yaml")["findings"] is None
    told = switch_view(SHOW, AWAY, [None, report(AWAY)], stage, "s.yaml")["findings"]
    assert told["unknown"][0].startswith("before the switch not all had been looked at")
    assert told["changes"] == ()
