"""Wishes that no draft can meet: noted by the check, while the show opens and its routine stands."""

import pytest

from sequencer.checks.dance.wishes_kept import CHECK
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 8 m, depth: 8 m}, audience: [{line: [[-8, -6], [8, -6]]}]}
cast: [{name: Wren, stature: 1.7 m, prop: PROP, level: 5, repertoire: {never: [line]}}]
formations: {mark: {spots: {Wren: {at: [0, 4]}}}}
staging: [{formation: mark, from: 1.1}]
timeline: []
wishes: {WISHES}
"""


def noted(wishes, prop="poi"):
    text = SHOW.replace("WISHES", wishes).replace("PROP", prop)
    return CHECK.outcome(staged(show_from_document(parse_document(text, "s.yaml")), even_song(64)))


@pytest.mark.parametrize(
    ("wishes", "prop", "says"),
    [
        ("character: {chorus: full}", "poi", "line 8: the song has no section 'chorus'"),
        ("moves: {stop: before chorus}", "poi", "line 8: the song has no section 'chorus' to stop before"),
        ("moves: {line: 1}", "poi", "line 8: line is wished once, but Wren, who leads, never dances it"),
        ("moves: {hybrid: 2}", "staff", "line 8: hybrid is wished 2 times, but Wren, who leads, has no prop for it"),
    ],
)  # fmt: skip
def test_what_no_draft_can_meet_is_a_note(wishes, prop, says):
    (finding,) = noted(wishes, prop).findings
    assert (finding.code, finding.severity, finding.message) == ("wish-for-nothing", "note", says)
    assert all(finding.remedies)


def test_what_can_be_met_is_not_noted():
    assert noted("moves: {hybrid: 2}").findings == ()
