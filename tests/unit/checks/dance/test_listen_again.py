"""Doubt about the count is told where somebody dances, and nowhere else."""

from dataclasses import replace

import pytest

from sequencer.checks.dance.listen_again import listen_again
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: One
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.4}}
timeline:
  - {from: 3.1, pattern: two-beat-weave, beats: 16}
"""


@pytest.fixture
def song():
    """120 a minute, bar n from 2 (n − 1) s on; bars 3 to 6 are danced."""
    return even_song(80, bar_confidence=(0.9,) * 20)


def said(song):
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), song)
    return listen_again(show).findings


def unsure(song, *bars):
    shares = tuple(0.1 if k + 1 in bars else 0.9 for k in range(20))
    return replace(song, bar_confidence=shares)


def test_a_sure_count_is_not_spoken_of(song):
    assert said(song) == ()


def test_unsure_bars_that_are_danced_are_noted_with_their_place(song):
    (finding,) = said(unsure(song, 5, 6, 12))

    assert (finding.code, finding.severity) == ("listen-here", "note")
    assert "bars 5–6" in finding.message
    assert (finding.start, finding.end) == (8.0, 12.0)
    assert finding.position == "5.1"


def test_bars_next_to_the_dance_are_not_of_it(song):
    assert said(unsure(song, 2, 7)) == ()


def test_a_dance_over_a_span_without_a_beat_is_warned_of(song):
    (finding,) = said(replace(song, unsteady=((9.0, 11.0), (20.0, 30.0))))

    assert (finding.code, finding.severity) == ("no-steady-beat", "warn")
    assert "0:09.0 to 0:11.0" in finding.message
