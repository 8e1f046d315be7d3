"""A reading tells where its one lies against the count that is used, also after the count is corrected."""

import numpy as np
import pytest

from sequencer.outputs.song.song_report import metres_text, readings_text
from sequencer.timing.corrections import Corrections, corrected
from sequencer.timing.position import Clock
from sequencer.timing.song import Reading, Song

BEATS = tuple((1.0 + 0.5 * np.arange(64)).tolist())


def song(firsts=range(1, 64, 4), **given):
    return Song(
        track="song.ogg",
        sha256="0" * 64,
        duration=34.0,
        tempo=120.0,
        metre=4,
        beats=BEATS,
        downbeats=tuple(BEATS[i] for i in firsts),
        sections=(),
        **given,
    )


def reading(place, share=0.2, metre=4):
    return Reading(tempo=120.0, metre=metre, share=share, one=BEATS[place])


@pytest.mark.parametrize(("place", "later"), [(0, 3), (1, 0), (2, 1), (3, 2), (4, 3), (21, 0)])
def test_the_shift_is_counted_from_the_one_before(place, later):
    assert song().shift_of(reading(place)) == later


def test_the_shift_is_counted_from_the_last_one_also_after_a_short_bar():
    assert song([0, 4, 8, 10, 14, 18, 22]).shift_of(reading(15)) == 1


def test_a_reading_that_does_not_tell_its_one_has_no_shift():
    assert song().shift_of(Reading(tempo=120.0, metre=4, share=0.2)) == 0


def test_the_shift_is_that_of_the_count_as_it_is_corrected():
    given = song(readings=(reading(1, 0.6), reading(3, 0.3)))

    moved = corrected(given, Corrections(one=Clock(seconds=BEATS[3])))

    assert given.shift_of(given.readings[1]) == 2
    assert moved.shift_of(given.readings[1]) == 0
    assert moved.shift_of(given.readings[0]) == 2


def test_readings_are_told_with_where_their_one_lies():
    told = readings_text(song(readings=(reading(1, 0.5), reading(3, 0.3), reading(2, 0.15))))

    assert told == (
        "120.0 a minute in bars of 4 with the one 2 beats later (30%), "
        "120.0 a minute in bars of 4 with the one 1 beat later (15%)"
    )


def test_a_change_of_metre_is_told_with_bar_and_time():
    firsts = [*range(0, 36, 4), *range(36, 64, 3)]

    assert metres_text(song(firsts)) == "4 from bar 1, 3 from bar 10 (0:19.0)"
