"""A steady count of one's own in a show file: what it comes to, and what is refused."""

import pytest

from sequencer.errors import InputError
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.staging.counted_song import as_counted
from tests.songs import even_song, silent_song

SHOW = """\
title: One
track:
  file: song.ogg
  corrections: {given}
venue:
  stage: {{shape: rectangle, width: 14 m, depth: 9 m}}
  audience: [{{line: [[-7, -9], [7, -9]]}}]
cast:
  - {{name: Ash, stature: 1.7, prop: {{tether: 0.45}}}}
timeline: []
"""


def counted(given, song):
    return as_counted(show_from_document(parse_document(SHOW.format(given=given), "s.yaml")), song)


def test_a_song_without_a_beat_is_counted_by_hand():
    song, tempo = counted("{steady: {tempo: 90, at: 0:03.0}, metre: 3}", silent_song())
    assert song.tempo == pytest.approx(90)
    assert float(tempo.seconds_from_beats(tempo.bar_start(2))) == pytest.approx(1.0 + 2.0)
    assert song.metre == 3


def test_half_and_the_one_hold_on_top_of_it():
    song, tempo = counted(
        "{steady: {tempo: 120, at: 0:01.0}, tempo: half, one: 0:04.0}", even_song(64)
    )
    assert song.tempo == pytest.approx(60)
    assert min(abs(down - 4.0) for down in song.downbeats) < 1e-9
    assert tempo.metre == 4


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("{steady: {tempo: 120, at: 3.1}}", "3.1 is not a moment of the track"),
        ("{steady: {tempo: 120, at: 9:00.0}}", "outside the track"),
        ("{steady: {tempo: 120, at: 0:01.0}, beats: taps.csv}", "a file of beats as well"),
        ("{steady: {tempo: 900, at: 0:01.0}}", "400"),
        ("{steady: {tempo: 120}}", "'at' is missing"),
    ],
)
def test_what_is_no_count_is_refused_with_its_line(given, words):
    with pytest.raises(InputError) as refused:
        counted(given, even_song(64))
    assert words in str(refused.value)
    assert "s.yaml:4:" in str(refused.value)
