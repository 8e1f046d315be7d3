"""Tracks whose beats are known exactly, scored by mir_eval.

Source: M. E. P. Davies, N. Degara, M. D. Plumbley, Evaluation methods for musical audio beat tracking
algorithms, QMUL C4DM-TR-09-06 (2009): F-measure within 70 ms, as implemented by mir_eval.
"""

import mir_eval
import numpy as np
import pytest

from sequencer.listening.activations import activations_of
from sequencer.listening.beats import count_of
from sequencer.listening.signal.audio import SAMPLE_RATE
from sequencer.listening.signal.spectra import spectra_of
from tests.repeated import at_length


def metronome(tempo, metre, seconds=24.0, swing=None, noise_db=None, seed=0):
    """Clicks with a higher first one a bar; off-beats at `swing` of a beat; noise that far below."""
    beats = np.arange(0.5, seconds - 0.5, 60 / tempo)
    samples = np.zeros(int(seconds * SAMPLE_RATE))
    t = np.arange(int(0.04 * SAMPLE_RATE)) / SAMPLE_RATE
    fade = np.exp(-t * 70)

    def strike(at, pitch, level):
        start = int(at * SAMPLE_RATE)
        samples[start : start + len(t)] += level * np.sin(2 * np.pi * pitch * t) * fade

    for i, beat in enumerate(beats):
        strike(beat, 1600 if i % metre == 0 else 1000, 0.9 if i % metre == 0 else 0.6)
        if swing:
            strike(beat + swing * 60 / tempo, 700, 0.25)
    if noise_db is not None:
        power = np.sqrt(np.mean(samples**2)) * 10 ** (-noise_db / 20)
        samples += np.random.default_rng(seed).normal(0, power, len(samples))
    return samples.astype(np.float32), beats


def heard(samples):
    spectra = spectra_of([samples])
    return count_of(activations_of(spectra), spectra.duration, spectra.chroma)


@pytest.mark.parametrize("tempo", [50, 138, *at_length(72, 100, 176)])
def test_metronome_in_four(tempo):
    samples, beats = metronome(tempo, 4, seconds=24.0 if tempo < 60 else 16.0)

    count = heard(samples)

    assert mir_eval.beat.f_measure(beats, count.beats) > 0.97
    assert mir_eval.beat.f_measure(beats[::4], count.downbeats) > 0.95
    assert count.metre == 4


@pytest.mark.parametrize("tempo", [40, 240])
def test_metronome_at_the_ends_of_the_range_is_right_up_to_the_octave(tempo):
    samples, beats = metronome(tempo, 4, seconds=40.0)

    count = heard(samples)

    assert mir_eval.beat.continuity(beats, count.beats)[3] > 0.95  # AMLt


@pytest.mark.parametrize("metre", [2, 3, 5, 6, 7])
def test_metres(metre):
    samples, beats = metronome(112, metre, seconds=16.0)

    count = heard(samples)

    assert mir_eval.beat.f_measure(beats, count.beats) > 0.97
    assert count.metre == metre
    assert mir_eval.beat.f_measure(beats[::metre], count.downbeats) > 0.95


@pytest.mark.parametrize("tempo", [46, 220, *at_length(60, 200)])
def test_slow_ones_are_not_doubled_and_quick_ones_are_right_up_to_the_octave(tempo):
    samples, beats = metronome(tempo, 4, seconds=26.0)

    count = heard(samples)

    assert mir_eval.beat.continuity(beats, count.beats)[3] > 0.95  # AMLt
    if tempo < 120:
        assert mir_eval.beat.f_measure(beats, count.beats) > 0.97
        assert mir_eval.beat.f_measure(beats[::4], count.downbeats) > 0.95


@pytest.mark.parametrize("metre", [3, 4, *at_length(2, 5, 6, 7)])
def test_swung_in_every_metre(metre):
    samples, beats = metronome(112, metre, swing=2 / 3)

    count = heard(samples)

    assert mir_eval.beat.f_measure(beats, count.beats) > 0.97
    assert count.metre == metre
    assert mir_eval.beat.f_measure(beats[::metre], count.downbeats) > 0.95


@pytest.mark.parametrize(
    ("metre", "swing"),
    [(3, None), (4, 2 / 3), *at_length((4, None), (5, None), (6, None), (7, None), (2, 2 / 3))],
)
def test_metres_in_noise_as_strong_as_the_clicks(metre, swing):
    samples, beats = metronome(112, metre, swing=swing, noise_db=0)

    count = heard(samples)

    assert mir_eval.beat.f_measure(beats, count.beats) > 0.97
    assert count.metre == metre
    assert mir_eval.beat.f_measure(beats[::metre], count.downbeats) > 0.95


def test_beats_are_right_where_noise_hides_the_accents():
    """At 0 dB bars of two even clicks may be counted in pairs, as four: beats alone hold."""
    samples, beats = metronome(112, 2, noise_db=0)

    assert mir_eval.beat.f_measure(beats, heard(samples).beats) > 0.97


@pytest.mark.parametrize("seed", [1, 2])
def test_noise_before_the_first_click_is_no_beat(seed):
    samples, beats = metronome(112, 3, seconds=16.0, noise_db=10, seed=seed)

    assert heard(samples).beats[0] == pytest.approx(beats[0], abs=0.03)


@pytest.mark.parametrize("swing", [0.5, 2 / 3])
def test_off_beats_are_not_taken_for_beats(swing):
    samples, beats = metronome(96, 4, seconds=16.0, swing=swing)

    assert mir_eval.beat.f_measure(beats, heard(samples).beats) > 0.97


@pytest.mark.parametrize("noise_db", [20, 0])
def test_noise(noise_db):
    samples, beats = metronome(120, 4, seconds=16.0, noise_db=noise_db)

    assert mir_eval.beat.f_measure(beats, heard(samples).beats) > 0.95
