"""Where the music has not begun or has ended nothing is a beat; in a break the judgement stands."""

import numpy as np
import pytest
from threadpoolctl import threadpool_info

from sequencer.listening import activations, network
from sequencer.listening.activations import activations_of
from sequencer.listening.signal.spectra import (
    FRAMES,
    HOP,
    SILENT_LEVEL,
    Spectra,
    levelled,
    loud_level,
    spectra_of,
)

LOUD, QUIET = -1.0, -6.0  # [log10 magnitude]
N = 600


def spectra(*stretches, n=N):
    """Sound of (first, last frame, level) and silence elsewhere."""
    mel = np.full((n, 80), QUIET, np.float16)
    for first, last, level in stretches:
        mel[first : last + 1, 20] = level
    return Spectra(mel, np.zeros((n // 5, 12), np.float16), np.zeros(n // 5), n / FRAMES)


@pytest.fixture(autouse=True)
def judgement(monkeypatch):
    """A judge that finds beats and downbeats everywhere, at odds that tell them apart."""
    given = {"odds": (3.0, 1.0), "metres": (0.0, 1.0, 2.0, 5.0, 2.0, 1.0, 0.0)}

    def judged(bands):
        given["bands"] = bands
        given["threads"] = [pool["num_threads"] for pool in threadpool_info()]
        n = len(bands)
        return (
            np.tile(np.float32(given["odds"]), (n, 1)),
            np.tile(np.float32(given["metres"]), (n, 1))
            + np.arange(n, dtype=np.float32)[:, None],  # the same for all metres: no matter
        )

    monkeypatch.setattr(network, "judged", judged)
    return given


class TestSilenceAround:
    # a click alone, the music with a break in it, a click alone
    sound = spectra((60, 60, LOUD), (150, 280, LOUD), (340, 450, LOUD), (540, 540, LOUD))

    def test_no_beat_before_the_first_sound_and_after_the_last(self):
        heard = activations_of(self.sound)

        for odds in (heard.beat, heard.downbeat):
            assert np.all(odds[: 60 - 8] < -8)
            assert np.all(odds[540 + 8 :] < -8)

    def test_a_beat_may_lie_just_beside_its_sound(self):
        heard = activations_of(self.sound)

        assert np.all(heard.beat[60 - 4 : 540 + 4] == 3.0)
        assert np.all(heard.downbeat[60 - 4 : 540 + 4] == 1.0)

    def test_sound_from_the_first_frame_to_the_last(self):
        heard = activations_of(spectra((2, N - 3, LOUD)))

        assert np.all(heard.beat == 3.0)
        assert np.all(heard.downbeat == 1.0)

    @pytest.mark.parametrize(("below", "audible"), [(68, True), (74, False)])
    def test_sound_counts_down_to_72_db_below_the_loud_parts(self, below, audible):
        """Source: the module's own bound."""
        faint = LOUD - below / 20

        heard = activations_of(spectra((100, 199, faint), (200, 399, LOUD), (400, 499, faint)))

        assert np.all((heard.beat[105:190] == 3.0) == audible)
        assert np.all((heard.beat[410:495] == 3.0) == audible)


class TestSilentTrack:
    @pytest.mark.parametrize("n", [0, 50])
    def test_nothing_is_judged(self, n, judgement):
        heard = activations_of(spectra(n=n))

        assert "bands" not in judgement
        assert heard.beat.shape == heard.downbeat.shape == (n,)
        assert np.all(heard.beat < -8)
        assert np.all(heard.downbeat < -8)
        assert heard.bands.shape == (n, 80)
        assert not heard.bands.any()
        np.testing.assert_allclose(np.exp(heard.metres), np.full(8, 1 / 8))

    @pytest.mark.parametrize(("above", "silent"), [(-0.05, True), (0.05, False)])
    def test_a_track_is_silent_by_its_loud_parts(self, above, silent, judgement):
        heard = activations_of(spectra((0, N - 1, SILENT_LEVEL + above)))

        assert ("bands" not in judgement) is silent
        assert np.all((heard.beat < -8) == silent)


class TestJudgement:
    def test_it_rests_on_levelled_bands(self, judgement):
        sound = spectra((50, 500, LOUD))

        heard = activations_of(sound)

        np.testing.assert_array_equal(judgement["bands"], levelled(sound.mel, sound.loud))
        np.testing.assert_array_equal(heard.bands, judgement["bands"])
        assert heard.bands.max() == pytest.approx(1.0, abs=1e-3)

    def test_one_core_judges(self, judgement):
        activations_of(spectra((50, 500, LOUD)))

        assert set(judgement["threads"]) <= {1}

    def test_metres_are_mean_log_probabilities_and_no_bar_has_none(self, judgement):
        metres = activations_of(spectra((50, 500, LOUD))).metres

        chance = np.exp(judgement["metres"])
        assert metres.shape == (8,)
        assert metres[0] < -50
        np.testing.assert_allclose(np.exp(metres[1:]), chance / chance.sum(), atol=1e-5)

    def test_great_scores_do_not_overflow(self, judgement):
        judgement["metres"] = (0.0, 0.0, 0.0, 4000.0, 0.0, 0.0, 0.0)

        metres = activations_of(spectra((50, 500, LOUD))).metres

        assert metres[4] == pytest.approx(0.0, abs=1e-6)
        assert np.all(np.isfinite(metres))
        assert metres[3] == pytest.approx(-4000.0)

    def test_double_precision(self):
        heard = activations_of(spectra((50, 500, LOUD)))

        assert heard.beat.dtype == heard.downbeat.dtype == heard.metres.dtype == np.float64


class TestNothingHeard:
    """The network counts on through noise and silence as if it heard."""

    def bands(self, *parts):
        return np.concatenate([np.asarray(part, np.float32) for part in parts])

    def hiss(self, n, seed=0):
        """Bands of n frames of white noise."""
        samples = np.random.default_rng(seed).normal(0, 0.1, max(n, 1) * HOP).astype(np.float32)
        mel = spectra_of([samples]).mel[:n]
        return levelled(mel, loud_level(mel) + 1.0) if n else np.zeros((0, 80))

    def music(self, n):
        strokes = np.full((n, 80), 0.2)
        strokes[::25, 10:30] = 0.9
        return strokes + 0.01 * np.random.default_rng(1).normal(size=(n, 80))

    def test_only_noise_between_music_is_noise(self):
        noise = activations.nothing_heard(
            self.bands(self.music(600), self.hiss(800), self.music(600))
        )

        assert not noise[:570].any()
        assert noise[640:1360].all()
        assert not noise[1430:].any()

    @pytest.mark.parametrize("every", [25, 75])
    def test_strokes_in_noise_are_no_noise(self, every):
        bands = self.bands(self.hiss(1500))
        bands[::every, 20:24] = bands[1::every, 20:24] = 1.1

        assert not activations.nothing_heard(bands).any()

    def test_a_tone_in_noise_is_no_noise(self):
        bands = self.bands(self.hiss(800))
        bands[:, 30] += 0.4

        assert not activations.nothing_heard(bands).any()

    def test_four_seconds_of_silence_are_nothing_and_a_break_is_not(self):
        silence = np.zeros((600, 80))
        long = activations.nothing_heard(self.bands(self.music(400), silence, self.music(400)))
        short = activations.nothing_heard(
            self.bands(self.music(400), silence[:190], self.music(400))
        )

        assert long[440:960].all()
        assert not long[:400].any()
        assert not long[1000:].any()
        assert not short.any()

    @pytest.mark.parametrize("n", [0, 1, 3, 199])
    def test_less_than_four_seconds_are_not_judged(self, n):
        assert activations.nothing_heard(self.bands(self.hiss(n))).tolist() == [False] * n

    def test_it_is_the_same_in_blocks(self, monkeypatch):
        bands = self.bands(self.music(700), self.hiss(900, seed=3), self.music(311))
        whole = activations.nothing_heard(bands)

        monkeypatch.setattr(activations, "_BLOCK", 137)

        np.testing.assert_array_equal(activations.nothing_heard(bands), whole)
        assert whole.any()
