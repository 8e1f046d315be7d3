"""Clicks of a count track as programs that know nothing of it find them.

Source: librosa's onset detection (spectral flux, S. Böck and G. Widmer 2013) and mir_eval's beat
measures (M. Davies et al., Evaluation methods for musical audio beat tracking algorithms, 2009). The
detector's own hop is 5.8 ms, hence 15 ms; the sample itself is checked in the unit tests.
"""

import numpy as np
import pytest

from sequencer.outputs.sound.counts import Mix, mixed

RATE = 22_050


@pytest.mark.parametrize("speed", [1.0, 0.6])
def test_onsets_are_found_on_the_beats(rounds, tmp_path, speed):
    import librosa
    import mir_eval

    staged = rounds.show(tmp_path)
    mix = Mix(song=None, counts="none", calls=False, speed=speed)
    track = mixed(staged, None, RATE, mix)[: 60 * RATE, 0]
    found = librosa.onset.onset_detect(
        y=track.astype(np.float32), sr=RATE, hop_length=128, units="time", backtrack=False
    )
    beats = np.array(staged.song.beats) / speed
    beats = beats[beats < 59.5]

    measured = mir_eval.onset.f_measure(beats, found[found < 59.5], window=0.015)
    assert measured[0] == 1.0
    assert mir_eval.beat.f_measure(beats, found[found < 59.5]) == 1.0
