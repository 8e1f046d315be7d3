"""A song's bars, runs, stretches and names, counted by hand."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.timing.song import SURE_CONFIDENCE
from tests.songs import even_song, silent_song


def test_a_song_says_what_it_is():
    song = even_song(9, sections={0.0: "A", 2.0: "B"}, duration=65.0, track="t.ogg")
    assert repr(song) == ("<Song t.ogg: 1:05.0 min, 120.0 beats/min, 9 beats, 3 bars, 2 sections>")


def test_sections_have_names_of_their_own():
    song = even_song(16, sections={0.0: "A", 1.0: "B", 2.0: "A", 3.0: "C", 4.0: "A"})
    assert song.section_names() == ("A 1", "B", "A 2", "C", "A 3")


@pytest.mark.parametrize(
    ("seconds", "name"),
    [
        (-1e-5, ""), (-0.5e-6, "A"), (0.0, "A"), (1.999998, "A"), (1.9999995, "B"), (2.0, "B"),
        (3.9, "B"), (4.0, ""),
    ],
)  # fmt: skip
def test_a_section_holds_its_start_to_a_millionth_and_not_its_end(seconds, name):
    assert even_song(8, sections={0.0: "A", 2.0: "B"})._section_at(seconds) == name


def test_the_map_counts_from_the_first_downbeat():
    song = even_song(12)
    late = replace(song, downbeats=(song.beats[2], song.beats[5], song.beats[9]), metre=3)
    count = late.tempo_map()
    assert (count.first, count.bars, count.metre) == (-2, (0, 3, 7), 3)
    assert count.times.tolist() == list(song.beats)
    two = replace(song, beats=song.beats[:2], downbeats=song.beats[:1])
    assert two.tempo_map().times.tolist() == [0.0, 0.5]
    with pytest.raises(ValueError, match="no steady beat"):
        replace(song, beats=song.beats[:1]).tempo_map()
    with pytest.raises(ValueError, match="at least one"):
        replace(song, downbeats=()).tempo_map()


@pytest.mark.parametrize(
    ("unsure", "spans"),
    [
        ([], ()),
        ([1], ((1, 1),)),
        ([1, 3, 5], ((1, 5),)),
        ([1, 4], ((1, 1), (4, 4))),
        ([2, 3, 6, 8, 11, 12], ((2, 3), (6, 8), (11, 12))),
    ],
)
def test_unsure_bars_within_two_of_each_other_are_one_span(unsure, spans):
    """Half sure is sure enough."""
    assert SURE_CONFIDENCE == 0.5
    shares = tuple(0.49 if bar in unsure else 0.5 for bar in range(1, 13))
    assert even_song(48, bar_confidence=shares).unsure_bars() == spans


def runs(*lengths):
    """A song with bars of these lengths, and one more beat-long bar at the end that has no length yet."""
    return even_song(lengths=[*lengths, 4])


def test_eight_equal_bars_establish_a_metre():
    assert runs(*[4] * 8).metres() == ((1, 4),)
    assert runs(*[3] * 7).metres() == ((1, 4),)  # too few: the song's own
    assert runs(*[3] * 8).metres() == ((1, 3),)
    assert runs(*[4] * 9, *[3] * 8, *[4] * 7).metres() == ((1, 4), (10, 3))
    assert runs(*[4] * 9, *[3] * 8, *[4] * 8).metres() == ((1, 4), (10, 3), (18, 4))
    assert runs(2, *[4] * 8, 3, *[4] * 8).metres() == ((2, 4),)
    assert silent_song().metres() == ((1, 4),)


def test_odd_bars_are_those_of_another_length_than_their_run():
    assert runs(*[4] * 8).odd_bars() == ()
    assert runs(2, *[4] * 8, 3, *[4] * 8).odd_bars() == ((1, 2), (10, 3))
    assert runs(*[4] * 8, *[3] * 8).odd_bars() == ()
    assert runs(*[4] * 8, 5, *[3] * 8, 2).odd_bars() == ((9, 5), (18, 2))


def test_the_count_restarts_at_the_first_bar_after_odd_ones_and_at_changes():
    assert runs(*[4] * 8).stretches() == ((0, 4),)
    assert runs(*[4] * 8, *[3] * 8).stretches() == ((0, 4), (32, 3))
    assert runs(2, *[4] * 8, 3, *[4] * 8).stretches() == ((0, 4), (2, 4), (37, 4))
    assert runs(*[4] * 8, 5, *[3] * 8, 2).stretches() == ((0, 4), (37, 3), (63, 3))
    assert silent_song().stretches() == ()


def test_tables_by_name():
    song = even_song(8, sections={0.0: "A", 2.0: "B"}, bar_confidence=(0.25, 0.75))
    bars = song.to_frame()
    assert bars["section"].tolist() == ["A", "B"]
    assert bars["confidence"].tolist() == [0.25, 0.75]
    assert bars["start"].tolist() == [0.0, 2.0]
    beats = song.to_frame("beats")
    assert np.allclose(beats["seconds"], song.beats)
    rows = song.to_frame("sections")
    assert rows.columns.tolist() == ["section", "label", "start", "end", "energy"]
    assert rows.to_numpy().tolist() == [["A", "A", 0.0, 2.0, 0.0], ["B", "B", 2.0, 4.0, 0.0]]
    with pytest.raises(ValueError, match="one of bars, beats, sections"):
        song.to_frame("verses")
