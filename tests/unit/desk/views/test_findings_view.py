"""Findings with what they are about, and mends as operations. Reference: the changes that were tried."""

import pytest

from sequencer.desk.connection.page_values import with_ids
from sequencer.desk.file.line_merge import changed_lines
from sequencer.desk.file.show_operations import done_on
from sequencer.desk.views.findings_view import finding_values, mend_operation, report_view
from sequencer.planning.open_show import OpenShow
from sequencer.planning.trying.restaging import changed_values
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two   # kept
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations:
  near: {spots: {Ash: {at: [-0.6, 4]}, Birch: {at: [0.6, 4]}}}
staging:
  - {formation: near, from: 1.1}
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 4}
  - {who: Birch, from: 3.1, pattern: pro-bend-4, beats: 8}
"""


@pytest.fixture(scope="module")
def asked():
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(24))
    *_, last = OpenShow(show).answers()
    return show, last, report_view(show, last.report, SHOW, "s.yaml", last.offered)


def test_a_mend_as_an_operation_says_what_was_tried(asked):
    show, last, _ = asked
    assert last.offered
    for mend in last.offered:
        after, words = done_on(SHOW, "s.yaml", mend_operation(mend))
        assert "# kept" in after
        assert words == mend.words
        tried = show.read.document.values
        for step in mend.steps:
            tried = changed_values(tried, step.changes, step.insertions)
        once, again = (
            show_from_document(parse_document(text, "s.yaml")).show
            for text in (after, _as_text(tried))
        )
        assert once == again


def _as_text(values):
    import json

    return json.dumps(values)


def test_each_mend_stands_at_its_finding_with_the_lines_that_it_changes(asked):
    _, last, view = asked
    mends = [(one, mend) for one in view["findings"] for mend in one["mends"]]
    assert len(mends) >= 1
    for finding, mend in mends:
        assert mend["words"] in finding["remedies"]
        after, _ = done_on(SHOW, "s.yaml", mend["operation"])
        assert mend["lines"] == changed_lines(SHOW, after) != []
    assert view["ok"] is last.report.ok


def test_a_finding_is_about_what_its_performers_dance_then(asked):
    show, last, view = asked
    joins = [one for one in view["findings"] if one["code"] == "needs-a-link"]
    assert joins
    assert all(["timeline", 1] in one["paths"] for one in joins)
    whole = next((one for one in last.report.findings if one.start is None), None)
    if whole is not None:
        assert finding_values(show, whole, flown=False)["paths"] == []


def test_findings_keep_their_names_from_check_to_check(asked):
    _, _, view = asked
    names = [one["id"] for one in view["findings"]]
    assert len(set(names)) == len(names)
    plain = [{key: own for key, own in one.items() if key != "id"} for one in view["findings"]]
    assert [one["id"] for one in with_ids(plain)] == names
