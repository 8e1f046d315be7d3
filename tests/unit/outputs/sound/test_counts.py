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
    counted,
    counts_before,
    mixed,
    played,
    section_calls,
)
from sequencer.outputs.sound.recording import write_recording

RATE = 22_050
CLICKS_ONLY = Mix(song=None, counts="none", calls=False)


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("counts"))


def count_track(staged, samples, rate, mix):
    return mixed(staged, played(samples, mix), rate, mix)


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

    write_recording(path, count_track(staged, noise, RATE, Mix(song=song, counts=counts)), RATE)
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
    mine = [block for block in staged.blocks_of("Łucja") if not block.link]
    own = {round(block.start, 6) for block in mine}
    other = {round(b.start, 6) for b in staged.blocks_of("火花") if not b.link} - own

    chosen = set(changes(staged, ("Łucja",)))

    assert own <= chosen
    assert other
    assert not other & chosen


def test_counts_lead_into_the_pattern_and_not_into_its_link(staged):
    """One change is one cue: where a link leads from one pattern to another, that is where the other begins."""
    blocks = staged.blocks_of("Łucja")
    links = [block for block in blocks if block.link]
    assert links
    starts = {round(block.start, 6) for block in blocks if not block.link}
    ends = {round(block.end, 6) for block in blocks}
    at = set(changes(staged, ("Łucja",)))
    assert all(
        round(link.start, 6) not in at for link in links if round(link.start, 6) not in starts
    )
    last = max(ends)
    assert last in at  # nothing follows
    assert at <= starts | {
        end for end in ends if end not in {round(b.start, 6) for b in blocks}
    } | {round(each.beat, 6) for each in staged.accents_of("Łucja")} | {
        round(stop.start, 6) for stop in staged.stops_of("Łucja")
    }


def test_spoken_counts_are_five_to_eight_before_the_one(staged):
    words = counted(staged, RATE * 100, RATE, Mix(clicks=False, counts="spoken", calls=False))
    change = next(at for at in changes(staged) if at >= 8 and all(abs(at - each) > 4.5 for each in changes(staged) if each < at))  # fmt: skip
    for left, number in ((4, 5), (3, 6), (2, 7), (1, 8)):
        at = round(staged.seconds(change - left) * RATE)
        word = spoken(number, RATE)
        assert_allclose(words[at : at + len(word)], word, atol=1e-12)


# Importance of octave bands for speech (ANSI S3.5-1997, table 3; from memory).
BANDS = {250: 0.0617, 500: 0.1671, 1000: 0.2373, 2000: 0.2648, 4000: 0.2142, 8000: 0.0549}


def intelligibility(word, noise, rate):
    """Speech intelligibility index by octave bands, without masking between bands: 0 to 1."""
    bins = np.fft.rfftfreq(len(word), 1 / rate)
    powers = [np.abs(np.fft.rfft(own)) ** 2 for own in (word, noise)]
    total = 0.0
    for middle, weight in BANDS.items():
        inside = (bins >= middle / np.sqrt(2)) & (bins < middle * np.sqrt(2))
        if inside.any():
            ratio = 10 * np.log10(powers[0][inside].sum() / powers[1][inside].sum())
            total += weight * np.clip((ratio + 15) / 30, 0, 1)
    return total


def test_spoken_counts_are_understood_over_a_loud_song(staged):
    """An index under 0.45 is called poor, over 0.75 good (ANSI S3.5-1997; from memory): 0.6 is in the middle of what is between.

    The song is pink noise with the loudness of a loud master, a tenth under full scale in its effective value.
    """
    rng = np.random.default_rng(3)
    count = RATE * 100
    spectrum = np.fft.rfft(rng.standard_normal(count))
    spectrum[1:] /= np.sqrt(np.arange(1, len(spectrum)))
    pink = np.fft.irfft(spectrum, count)
    pink *= 10 ** (-12 / 20) / np.sqrt(np.mean(pink**2))
    plain = Mix(clicks=False, calls=False, counts="spoken")
    words = counted(staged, count, RATE, plain)
    track = count_track(staged, pink[:, None], RATE, plain)[:count, 0]
    largest = np.abs(track).max()
    song = track - words if largest < 0.87 else None
    assert song is not None  # nothing was turned down as a whole
    found = []
    for change, left in counts_before(changes(staged)):
        at = round(staged.seconds(change) * RATE)
        if left and at + RATE < count:
            word = spoken(9 - left, RATE)
            found.append(intelligibility(word, song[at : at + len(word)], RATE))
    assert len(found) > 20
    assert min(found) >= 0.6


def test_between_the_words_the_song_is_as_loud_as_without(staged):
    song = np.full((RATE * 100, 1), 0.25)
    spoken_over = count_track(staged, song, RATE, Mix(clicks=False, calls=False, counts="spoken"))
    plain = count_track(staged, song, RATE, Mix(clicks=False, calls=False, counts="none"))
    first = min(changes(staged))
    quiet = slice(0, round(staged.seconds(first - 4) * RATE) - RATE // 10)
    assert quiet.stop > RATE
    assert_array_equal(spoken_over[quiet], plain[quiet])


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


def test_the_same_show_gives_the_same_bytes(staged, tmp_path):
    a, b = tmp_path / "a.wav", tmp_path / "b.wav"
    for path in (a, b):
        write_recording(path, count_track(staged, None, RATE, Mix(counts="spoken")), RATE)

    assert a.read_bytes() == b.read_bytes()


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [("speed", 0.1, "speed must be"), ("song", 3.0, "level must be"), ("counts", "sung", "one of")],
)
def test_what_makes_no_sense_is_refused(field, value, says):
    with pytest.raises(ValueError, match=says):
        Mix(**{field: value})
