"""Count tracks: clicks on the beat to the sample, counts before changes, peaks, split, slow versions."""

from dataclasses import replace

import numpy as np
import pytest
import soundfile as sf
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.outputs.sound.clicks import call_steps, click, spoken, tone
from sequencer.outputs.sound.counts import (
    Mix,
    changes,
    count_track,
    counted,
    counts_before,
    section_calls,
    stretched,
    write_count_track,
)

RATE = 22_050
CLICKS_ONLY = Mix(song=None, counts="none", calls=False)


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("counts"))


def onsets(track):
    """Samples that are loud after 20 ms of silence."""
    loud = np.flatnonzero(np.abs(track) > 0.2)
    fresh = np.diff(loud, prepend=-RATE) > RATE // 50
    return loud[fresh]


def test_clicks_lie_on_the_beats_to_the_sample(staged):
    track = count_track(staged, None, RATE, CLICKS_ONLY)

    found = onsets(track[:, 0])
    beats = staged.tempo.seconds_from_beats(np.arange(0, len(staged.song.beats)))

    assert_array_equal(found[: len(beats)], np.round(beats * RATE))


@pytest.mark.parametrize("speed", [0.4, 0.7, 1.1])
def test_clicks_of_slow_versions_too(staged, speed):
    track = count_track(staged, None, RATE, replace(CLICKS_ONLY, speed=speed))

    beats = np.array(staged.song.beats[:200])

    assert_array_equal(onsets(track[:, 0])[:200], np.round(beats / speed * RATE))


def test_the_first_beat_of_a_bar_sounds_different(staged):
    track = count_track(staged, None, RATE, CLICKS_ONLY)[:, 0]
    at = onsets(track)
    heights = []
    for start in at[:16]:
        spectrum = np.abs(np.fft.rfft(track[start : start + 1024]))
        heights.append(np.argmax(spectrum) * RATE / 1024)

    first, others = heights[::4], [h for i, h in enumerate(heights) if i % 4]
    assert min(first) > 1.3 * max(others)


def test_a_click_starts_with_its_largest_sample():
    for first in (True, False):
        sound = click(RATE, first=first)
        assert np.argmax(np.abs(sound)) == 0


@pytest.mark.parametrize("song", [0.0, -9.0])
@pytest.mark.parametrize("counts", ["pitched", "spoken"])
def test_peaks_stay_below_full_scale(staged, song, counts, tmp_path):
    """Under −1 dBFS in the file itself, even over a song that is as loud as can be."""
    noise = np.sign(np.random.default_rng(5).standard_normal((RATE * 192, 2)))
    path = tmp_path / "counts.wav"

    write_count_track(path, staged, noise, RATE, Mix(song=song, counts=counts))
    written, rate = sf.read(path)

    assert rate == RATE
    assert np.max(np.abs(written)) < 10 ** (-1 / 20)


def test_split_puts_the_song_left_and_the_counts_right(staged):
    song = np.full((RATE * 192, 1), 0.25)
    track = count_track(staged, song, RATE, Mix(song=0.0, split=True))
    alone = counted(staged, len(track), RATE, Mix())

    assert_allclose(track[: RATE * 190, 0], track[0, 0])
    assert np.corrcoef(track[:, 1], alone)[0, 1] > 1 - 1e-12


def test_without_a_song_there_is_silence_between_clicks(staged):
    track = count_track(staged, np.ones((RATE * 192, 1)), RATE, CLICKS_ONLY)
    first = round(staged.song.beats[0] * RATE)

    assert np.max(np.abs(track[:first])) == 0.0


def test_counts_go_down_to_each_change_and_never_over_the_one_before():
    assert counts_before((8.0, 10.0)) == [
        (4.0, 4), (5.0, 3), (6.0, 2), (7.0, 1), (8.0, 0), (9.0, 1), (10.0, 0),
    ]  # fmt: skip


def test_changes_are_those_of_the_chosen_performers(staged):
    mine = staged.blocks_of("Łucja")
    own = {block.start for block in mine} | {block.end for block in mine}
    other = {block.start for block in staged.blocks_of("火花")} - own

    chosen = set(changes(staged, ("Łucja",)))

    assert {round(beat, 6) for beat in own} <= chosen
    assert other
    assert not {round(beat, 6) for beat in other} & chosen


def test_like_sections_have_like_calls_one_bar_ahead(staged):
    calls = section_calls(staged)
    names = [section.label for section in staged.song.sections]
    motifs = [tuple(step for _, step in calls[3 * i : 3 * i + 3]) for i in range(len(names))]

    same = {name: {m for n, m in zip(names, motifs, strict=True) if n == name} for name in names}
    assert all(len(found) == 1 for found in same.values())
    assert len(set(motifs)) == len(set(names))
    start = round(float(staged.tempo.beats_from_seconds(staged.song.sections[2].start)))
    assert calls[6][0] == start - 4


def test_calls_of_twenty_families_differ():
    assert len({call_steps(i) for i in range(20)}) == 20


def test_words_differ_and_are_short():
    words = [spoken(n, RATE) for n in range(1, 9)]

    assert all(0.15 < len(word) / RATE < 0.5 for word in words)
    assert len({len(word) for word in words}) == 8
    with pytest.raises(ValueError, match="not for 9"):
        spoken(9, RATE)


def test_a_tone_has_the_pitch_that_it_says():
    """A4 is 440 Hz (ISO 16); twelve semitones double it."""
    sound = tone(RATE, 12, 1.0)
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(len(sound))))

    assert np.argmax(spectrum) * RATE / len(sound) == pytest.approx(880.0, abs=1.5)


def test_stretching_keeps_the_pitch_and_the_time():
    t = np.arange(4 * RATE) / RATE
    song = 0.5 * np.sin(2 * np.pi * 440 * t)[:, None]
    song[: 2 * RATE] = 0.0  # it starts to sound at 2 s

    slow = stretched(song, 0.5)[:, 0]
    loud = np.flatnonzero(np.abs(slow) > 0.2)[0] / RATE
    middle = slow[5 * RATE : 7 * RATE]
    spectrum = np.abs(np.fft.rfft(middle * np.hanning(len(middle))))

    assert len(slow) == pytest.approx(8 * RATE, abs=1)
    assert loud == pytest.approx(4.0, abs=0.05)  # one window of the vocoder at 22 kHz
    assert np.argmax(spectrum) / 2 == pytest.approx(440.0, abs=1.0)


def test_the_same_show_gives_the_same_bytes(staged, tmp_path):
    a, b = tmp_path / "a.wav", tmp_path / "b.wav"
    for path in (a, b):
        write_count_track(path, staged, None, RATE, Mix(counts="spoken"))

    assert a.read_bytes() == b.read_bytes()


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [("speed", 0.1, "speed must be"), ("song", 3.0, "level must be"), ("counts", "sung", "one of")],
)
def test_what_makes_no_sense_is_refused(field, value, says):
    with pytest.raises(ValueError, match=says):
        Mix(**{field: value})
