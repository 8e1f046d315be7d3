"""Bars are found by first beats that sound unlike the others, and only by them."""

import numpy as np
import pytest

from sequencer.listening.signal.accents import plain_accents
from sequencer.listening.signal.spectra import FRAMES

METRES = (2, 3, 4, 5, 6, 7)
BEAT = 0.5  # [s]


def played(firsts, n=42, *, accent=0.5, bands=3, late=0, noise=0.0, seed=0):
    """Bands and beats: a sound of one frame a beat, brighter at the beats named."""
    beats = 1.0 + BEAT * np.arange(n)
    heard = np.zeros((round((beats[-1] + 1) * FRAMES), 80), np.float32)
    rng = np.random.default_rng(seed)
    for i, frame in enumerate(np.round(beats * FRAMES).astype(int)):
        heard[frame + late, :10] = 1.0
        if i in firsts:
            heard[frame + late, 40 : 40 + bands] = accent
        heard[frame + late] += rng.normal(0, noise, 80).astype(np.float32)
    return heard, beats


def silenced(heard, beats, *which, to=0.0):
    quiet = heard.copy()
    for i in which:
        frame = round(beats[i] * FRAMES)
        quiet[frame - 3 : frame + 4] *= to
    return quiet


def explained(sounds, firsts):
    """Share of the sum of squares between two groups, from its definition."""
    groups = sounds[firsts], sounds[~firsts]
    whole = np.sum((sounds - sounds.mean(axis=0)) ** 2)
    within = sum(np.sum((group - group.mean(axis=0)) ** 2) for group in groups)
    return 1 - within / whole


@pytest.mark.parametrize(("metre", "phase"), [(m, p) for m in METRES for p in range(m)])
def test_accents_tell_metre_and_first_beat(metre, phase):
    share, *found = plain_accents(*played(range(phase, 42, metre)), METRES)

    assert found == [metre, phase]
    assert share == pytest.approx(1.0, abs=1e-6)


def test_of_a_kick_and_a_louder_snare_the_kick_is_first():
    """Twos alone do not tell which half is first: the deep one, however wide the other sounds."""
    beats = 1.0 + 0.5 * np.arange(40)
    bands = np.zeros((1100, 80), np.float32)
    frames = np.round(beats * 50).astype(int)
    bands[frames[1::2], :8] = 0.9
    bands[frames[::2], 6:] = 0.7

    assert plain_accents(bands, beats, METRES)[1:] == (2, 1)


@pytest.mark.parametrize("metre", [3, 4, 7])
@pytest.mark.parametrize("noise", [0.02, 0.1])
def test_the_share_is_that_of_the_variance(metre, noise):
    heard, beats = played(range(1, 42, metre), noise=noise)

    share, *found = plain_accents(heard, beats, METRES)

    # the noise is below 0 in half the bands, where the silence beside it is louder
    sounds = np.maximum(heard[np.round(beats * FRAMES).astype(int)], 0).astype(float)
    assert found == [metre, 1]
    assert share == pytest.approx(explained(sounds, np.arange(42) % metre == 1), abs=1e-6)
    assert 0.1 < share < 0.98


def test_equal_beats_have_no_accents():
    assert plain_accents(*played([]), METRES)[0] == 0.0


def test_beats_that_differ_at_random_are_hardly_explained():
    for seed in range(5):
        assert plain_accents(*played([], noise=0.2, seed=seed), METRES)[0] < 0.2


@pytest.mark.parametrize(("accent", "heard"), [(0.1, True), (0.06, False)])
def test_a_faint_accent_in_one_band_is_heard_down_to_a_tenth(accent, heard):
    share = plain_accents(*played(range(0, 42, 4), accent=accent, bands=1), METRES)[0]

    assert share == pytest.approx(1.0 if heard else 0.0, abs=1e-6)


class TestSilence:
    def test_one_silent_beat_does_not_win(self):
        bands, beats = played([])

        assert plain_accents(silenced(bands, beats, 7), beats, METRES)[0] == 0.0

    def test_silent_beats_are_left_out_and_the_count_goes_on(self):
        bands, beats = played(range(2, 42, 5))

        share, *found = plain_accents(silenced(bands, beats, 0, 8, 20, 21), beats, METRES)

        assert found == [5, 2]
        assert share == pytest.approx(1.0, abs=1e-6)

    @pytest.mark.parametrize(("to", "left_out"), [(0.4, True), (0.6, False)])
    def test_less_than_half_as_loud_is_silent(self, to, left_out):
        bands, beats = played(range(2, 42, 5))

        share, *found = plain_accents(silenced(bands, beats, 8, 20, 21, to=to), beats, METRES)

        assert found == [5, 2]
        assert (share > 0.999) is left_out

    def test_all_beats_of_one_kind_in_silence(self):
        bands, beats = played([], noise=0.05)

        assert plain_accents(silenced(bands, beats, *range(1, 42, 2)), beats, METRES)[0] < 0.5

    def test_one_loud_beat_does_not_silence_the_others(self):
        bands, beats = played(range(2, 42, 5))
        bands[round(beats[12] * FRAMES)] *= 2.2

        assert plain_accents(bands, beats, METRES)[1:] == (5, 2)


class TestFew:
    @pytest.mark.parametrize(("n", "share"), [(0, 0.0), (1, 0.0), (7, 0.0), (8, 1.0)])
    def test_eight_beats_are_needed(self, n, share):
        bands, beats = played(range(0, 42, 2))

        assert plain_accents(bands, beats[:n], METRES)[0] == pytest.approx(share, abs=1e-6)

    def test_nothing_is_told_of_few_beats(self):
        assert plain_accents(*played(range(0, 7, 2), n=7), METRES) == (0.0, 4, 0)

    @pytest.mark.parametrize(("n", "found"), [(12, False), (13, True)])
    def test_a_metre_needs_four_first_beats(self, n, found):
        """Bars of four: the fourth begins with the thirteenth beat."""
        share, metre, _ = plain_accents(*played(range(0, n, 4), n=n), METRES)

        assert ((metre, round(share, 6)) == (4, 1.0)) is found

    def test_no_sound_at_all(self):
        none = np.zeros((0, 80), np.float32)

        assert plain_accents(none, np.arange(1.0, 20.0), METRES) == (0.0, 4, 0)


def test_only_the_metres_given_are_weighed():
    share, metre, _ = plain_accents(*played(range(0, 42, 3)), (2, 4, 5))

    assert metre != 3
    assert share < 0.5


def test_the_shorter_bar_wins_where_both_fit():
    """Each first beat of a bar of three begins every other bar of six, too."""
    share, *found = plain_accents(*played(range(1, 42, 3)), (6, 3))

    assert found == [3, 1]
    assert share == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize(("late", "heard"), [(-2, 0), (-1, 1), (0, 1), (1, 1), (2, 1), (3, 0)])
def test_a_beat_is_heard_from_a_frame_before_to_two_after(late, heard):
    bands, beats = played(range(0, 42, 4), late=late)
    bands[:, 79] = 0.5  # so that nothing is silent

    assert plain_accents(bands, beats, METRES)[0] == pytest.approx(heard, abs=1e-6)


def test_beats_at_both_ends_of_the_sound():
    bands, beats = played(range(0, 42, 4))
    early, late = round(beats[0] * FRAMES), round(beats[-1] * FRAMES)

    share, *found = plain_accents(bands[early : late + 1], beats - beats[0], METRES)
    beyond = plain_accents(bands, np.append(beats, beats[-1] + 60.0), METRES)

    assert found == [4, 0]
    assert share > 0.6  # of the last beat hardly anything is heard
    assert beyond[1:] == (4, 0)


def test_the_end_of_the_sound_is_not_heard_at_its_beginning():
    bands, beats = played(range(0, 42, 4))
    bands = bands[round(beats[0] * FRAMES) :]
    bands[-1, 70:] = 1.0

    share = plain_accents(bands, beats - beats[0], METRES)[0]

    assert share == pytest.approx(1.0, abs=1e-6)
