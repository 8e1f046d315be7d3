"""Fire breathing is found in whatever a show file says, and nothing else is taken for it."""

import pytest

from sequencer.checks.fire.not_planned import CHECK
from sequencer.safety.rules.circumstances import cautions_of
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: {title}
track: {{file: a.ogg}}
venue: {{stage: {{shape: round, width: 8 m}}, audience: [{{line: [[-5, -9], [5, -9]]}}]}}
cast: [{{name: Ada, stature: 1.7 m, prop: poi}}]
formations: {{here: {{spots: {{Ada: {{at: [0, 4]}}}}}}}}
staging: [{{formation: here, from: 1.1}}]
timeline: [{{from: 3.1, pattern: two-beat-weave, beats: 8, note: {note}}}]
"""


def show(title="Lantern", note="calm"):
    text = SHOW.format(title=title, note=note)
    return staged(show_from_document(parse_document(text, "a.yaml")), even_song(64))


@pytest.mark.parametrize(
    "words",
    [
        "fire breathing",
        "Fire-eater finale",
        "she breathes fire here",
        "eat the flame",
        "firebreath",
    ],
)
def test_fire_breathing_is_found_and_brings_its_caution(words):
    (finding,) = CHECK.outcome(show(note=words)).findings
    (named,) = CHECK.outcome(show(title=words)).findings

    assert finding.severity == named.severity == "stop"
    assert words in finding.message
    assert "Seattle" in finding.source
    # unlit as it is, the caution prints
    assert 23 in [each.number for each in cautions_of(show(), [CHECK.cautions[finding.code]])]


@pytest.mark.parametrize(
    "words", ["breathe", "out of stillness", "the fire breaks", "heat of fire"]
)
def test_other_words_are_not_taken_for_it(words):
    assert CHECK.outcome(show(note=words)).findings == ()
    assert cautions_of(show()) == ()
