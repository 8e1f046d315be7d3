"""Moments that hang on a section's name as it was heard are noted, once for all of them."""

import pytest

from sequencer.checks.dance.named_sections import CHECK
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: One
track: {{file: song.ogg{given}}}
venue:
  stage: {{shape: rectangle, width: 10 m, depth: 8 m}}
  audience: [{{line: [[-6, -9], [6, -9]]}}]
cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.4}}}}
formations: {{mid: {{spots: {{Ash: {{at: [0, 4]}}}}}}}}
staging: [{{formation: mid, from: {stands}}}]
timeline:
  - {{from: {first}, until: {last}, pattern: two-beat-weave}}
"""
NAMED = ", corrections: {sections: [{from: 1.1, name: A}, {from: 9.1, name: B}]}"


def noted(first="3.1", last="7.1", stands="1.1", given=""):
    text = SHOW.format(first=first, last=last, stands=stands, given=given)
    song = even_song(80, sections={0.0: "A", 16.0: "B"})
    show = staged(show_from_document(parse_document(text, "s.yaml")), song)
    return CHECK.outcome(show).findings


def test_bars_are_what_they_are():
    assert noted() == ()
    assert noted(given=NAMED) == ()


@pytest.mark.parametrize(
    ("said", "many", "names"),
    [
        ({"first": "B", "last": "end of B"}, "2 moments of the show are", "(B)"),
        ({"last": "end of A"}, "1 moment of the show is", "(A)"),
        ({"stands": "A", "last": "B"}, "2 moments of the show are", "(A, B)"),
    ],
)
def test_heard_names_are_noted_once_wherever_they_stand(said, many, names):
    (finding,) = noted(**said)
    assert (finding.code, finding.severity) == ("sections-as-heard", "note")
    assert many in finding.message
    assert names in finding.message
    assert all(finding.remedies)


def test_names_that_somebody_gave_hold():
    assert noted(first="B", last="end of B", given=NAMED) == ()
    assert noted(first="B", last="end of B", given=NAMED.replace("name: B", "name: chorus").replace("from: 1.1, name: A", "from: 1.1, name: B")) == ()  # fmt: skip


def test_a_name_given_where_a_heard_one_begins_does_not_hold():
    (finding,) = noted(first="drive", last="end of drive", given=", corrections: {sections: [{from: B, name: drive}]}")  # fmt: skip
    assert "(B, drive)" in finding.message
