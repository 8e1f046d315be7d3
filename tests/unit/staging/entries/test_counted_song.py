"""A steady count of one's own in a show file: what it comes to, and what is refused."""

from dataclasses import replace

import pytest

from sequencer.errors import InputError
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.counted_song import as_counted
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
    ("given", "at", "words", "mend"),
    [
        (
            "{steady: {tempo: 120, at: 9:00.0}}", "9:00.0", "the one at 9:00.0 is outside the track",
            "write when you count a one, from 0:00.0 to 0:32.0, the end of the track",
        ),
        (
            "{steady: {tempo: 20, at: 0:01.0}}", "20", "the track has no two beats", "write a faster tempo",
        ),
        (
            "{sections: [{from: 0:00.0, name: A}, {from: 2.1, name: B}, {from: 2.1, name: C}]}", "[{from",
            "sections 'B' and 'C' start at the same place", "a moment of its own",
        ),
        (
            "{sections: [{from: 0:00.0, name: A}, {from: nowhere, name: B}]}", "[{from",
            "there is no section 'nowhere'", "as m:ss.s or bar.beat",
        ),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_told_where_it_stands_and_how_to_mend_it(given, at, words, mend):
    song = even_song(64)
    if "faster" in mend:
        song = replace(song, duration=2.5)
    with pytest.raises(InputError) as refused:
        counted(given, song)
    assert words in str(refused.value)
    assert mend in str(refused.value)
    place = 1 + f"  corrections: {given}".index(at)
    assert f"s.yaml:4:{place}:" in str(refused.value)


def test_sections_may_be_given_in_any_order():
    song, _ = counted(
        "{sections: [{from: 5.1, name: C}, {from: 0:00.0, name: A}, {from: 3.1, name: B}]}",
        even_song(64),
    )
    assert [each.label for each in song.sections] == ["A", "B", "C"]


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
