"""Phrases at the edges of sections, beats and stretches, counted by hand."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.timing.phrases import _starts, level_word, phrase_length, phrases
from tests.songs import even_song


def cut(song):
    return [(one.section, one.number, one.start, one.end, one.counts) for one in phrases(song)]


def test_a_beat_within_a_twentieth_of_a_second_of_a_border_is_on_it():
    """Beats each half second; borders 0.049 s and 0.051 s after the beat at 4 s, and as much before."""
    for border, first in ((4.049, 8), (4.051, 9), (3.951, 8), (3.949, 8), (3.549, 7)):
        found = cut(even_song(16, sections={0.0: "A", border: "B"}))
        assert sum(row[4] for row in found if row[0] == "A") == first, border
        assert next(row[2] for row in found if row[0] == "B") == first / 2


def test_beats_before_the_first_bar_are_in_no_phrase_and_the_last_ends_the_song():
    song = even_song(14, sections={0.0: "A"}, duration=7.3)
    late = replace(song, downbeats=song.beats[2::4])
    assert cut(late) == [("A", 1, 1.0, 5.0, 8), ("A", 2, 5.0, 7.3, 4)]


def test_a_phrase_ends_with_its_section_where_the_next_beat_comes_later():
    """A pause from 4 to 6 s: the section ends at 4.5, so does its phrase; one that ends at 5.96 by the beat."""
    song = even_song(16)
    beats = (*song.beats[:8], *(beat + 2.5 for beat in song.beats[8:]))
    for border, end in ((4.5, 4.5), (6.46, 6.5), (6.44, 6.44)):
        own = replace(
            song, beats=beats, downbeats=beats[::4], duration=11.0,
            sections=even_song(22, sections={0.0: "A", border: "B"}, duration=11.0).sections,
        )  # fmt: skip
        assert cut(own)[0] == ("A", 1, 0.0, end, 8)


def test_a_section_without_beats_has_no_phrases():
    song = even_song(16, sections={0.0: "A", 8.5: "B"}, duration=20.0)
    assert [row[0] for row in cut(song)] == ["A", "A"]
    assert phrases(replace(song, beats=song.beats[:1])) == ()
    assert phrases(replace(song, downbeats=())) == ()
    two = replace(song, beats=song.beats[:2], downbeats=song.beats[:1])
    assert [(row[2], row[4]) for row in cut(two)] == [(0.0, 2)]


@pytest.mark.parametrize(
    ("low", "high", "stretches", "starts"),
    [
        (0, 20, ((0, 4),), [0, 8, 16]),
        (3, 20, ((0, 4),), [0, 8, 16]),
        (0, 20, ((0, 4), (10, 3)), [0, 8, 10, 16]),
        (0, 10, ((0, 4), (10, 3)), [0, 8]),
        (0, 11, ((0, 4), (10, 3)), [0, 8, 10]),
        (10, 20, ((0, 4), (10, 3)), [0, 6]),
        (12, 20, ((0, 4), (10, 3), (14, 4)), [0, 2]),
        (0, 12, ((4, 4),), [0]),
    ],
)
def test_phrases_start_anew_where_the_count_does(low, high, stretches, starts):
    """Beats from `low` up to `high`; eights in four, sixes in three. Beats before any stretch are in none."""
    found = _starts(np.arange(low, high), stretches)
    if stretches[0][0] > low:
        assert found == [at - low for at in range(4, high, 8)]
    else:
        assert found == starts


def test_lengths_of_phrases_and_words_of_levels():
    assert [phrase_length(metre) for metre in (1, 2, 3, 4, 5, 7, 8, 16)] == [
        8,
        8,
        6,
        8,
        10,
        14,
        8,
        32,
    ]
    assert [level_word(level) for level in (2 / 3, 0.6666, 1 / 3, 0.3333)] == [
        "high", "middle", "middle", "low",
    ]  # fmt: skip
