"""The demo's track against its truth, heard by ears that are not ours.

Sources: mir_eval's F-measure of beats (window 70 ms, the first 5 s left out) after Davies, Degara
and Plumbley, Evaluation Methods for Musical Audio Beat Tracking Algorithms, 2009; the tracker is
librosa's, after Ellis, Beat Tracking by Dynamic Programming, 2007. Libraries: mir_eval, librosa.
"""

import json
import re
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
import soundfile

from sequencer.listening.hearing import hear
from sequencer.listening.signal.energy import mean_energy
from sequencer.planning.drafting.gaps.music import heard_music
from tests.repeated import at_length

FOLDER = Path(__file__).parents[2] / "audio_samples"
SCRIPT = FOLDER / "compose.py"
TRUTH = FOLDER / "cinder_ferry.truth.json"
TRACK = FOLDER / "cinder_ferry.ogg"
CODEC_SNR_DB = 10.0  # Vorbis at its smallest keeps the wave to 18.6 dB here; 1 ms late gives 1.3


def composed(*options):
    """What the script prints when run as a user would."""
    command = [sys.executable, str(SCRIPT), *map(str, options)]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


@pytest.fixture(scope="module")
def truth():
    return json.loads(TRUTH.read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def track():
    return soundfile.read(TRACK)


@pytest.fixture(scope="module")
def heard(track):
    """The track as librosa likes it: mono, 22,050 Hz."""
    import librosa

    samples, rate = track
    return librosa.resample(samples.mean(axis=1), orig_sr=rate, target_sr=22_050)


def test_the_truth_is_rebuilt_byte_for_byte(tmp_path):
    composed("--truth-only", "--out", tmp_path)
    assert (tmp_path / TRUTH.name).read_bytes() == TRUTH.read_bytes()


def test_the_truth_follows_from_the_tempi_by_hand(truth):
    downbeats = truth["downbeats"]
    slow_bar, fast_bar = 240 / 100, 240 / 112
    climb = sum(60 / (100 + 1.5 * beat) for beat in range(8))
    bar_57 = 0.5 + 54 * slow_bar + climb
    assert downbeats[8] == pytest.approx(0.5 + 8 * slow_bar, abs=1e-6)
    assert downbeats[56] == pytest.approx(bar_57, abs=1e-6)
    assert truth["last_stroke"] == pytest.approx(bar_57 + 22 * fast_bar, abs=1e-6)
    assert truth["duration"] == pytest.approx(bar_57 + 24 * fast_bar + 1, abs=1e-6)
    assert truth["beats"][::4] == downbeats


def test_the_sections_cover_the_music_in_whole_bars(truth):
    parts = truth["sections"]
    for before, after in pairwise(parts):
        assert before["end"] == after["start"]
        assert before["last_bar"] + 1 == after["first_bar"]
    assert {part["last_bar"] - part["first_bar"] + 1 for part in parts} == {8, 16}
    assert [part["start"] for part in parts] == [
        truth["downbeats"][part["first_bar"] - 1] for part in parts
    ]


def test_the_file_is_whole_and_does_not_clip(truth, track):
    samples, rate = track
    assert len(samples) / rate == pytest.approx(truth["duration"], abs=1 / rate)
    assert 10 ** (-3 / 20) < np.abs(samples).max() < 10 ** (-1 / 20)
    ends = np.concatenate([samples[: round(0.4 * rate)], samples[-round(0.8 * rate) :]])
    assert np.abs(ends).max() < 10 ** (-60 / 20)


def test_the_script_plays_the_same_samples_twice_and_they_are_the_track(truth, track, tmp_path):
    first = composed("--bars", 57, 59, "--out", tmp_path)
    again = composed("--bars", 57, 59, "--out", tmp_path)
    assert re.fullmatch(r"samples sha256 [0-9a-f]{64}\n", first)
    assert first == again
    excerpt, rate = soundfile.read(tmp_path / "cinder_ferry_57-59.ogg")
    whole, _ = track
    from_bar_58 = round((truth["downbeats"][57] - truth["downbeats"][56]) * rate)
    start = round(truth["downbeats"][57] * rate)  # bar 57 still holds the tail of bar 56
    count = round(2 * rate)
    meant = excerpt[from_bar_58:][:count]
    error = whole[start:][:count] - meant
    assert 10 * np.log10((meant**2).sum() / (error**2).sum()) > CODEC_SNR_DB


@pytest.mark.parametrize(("first_bar", "last_bar"), [(9, 24), (25, 32), (33, 48), (57, 72)])
def test_librosa_hears_the_beats_of_the_steady_parts(truth, heard, first_bar, last_bar):
    import librosa
    import mir_eval

    start, stop = truth["downbeats"][first_bar - 1], truth["downbeats"][last_bar]
    part = heard[round(start * 22_050) : round(stop * 22_050)]
    _, beats = librosa.beat.beat_track(y=part, sr=22_050, units="time")
    exact = np.array([beat for beat in truth["beats"] if start <= beat < stop]) - start
    trimmed = [mir_eval.beat.trim_beats(times) for times in (exact, beats)]
    assert mir_eval.beat.f_measure(*trimmed) >= 0.9


def test_repeats_are_heard_as_repeats(truth, heard):
    import librosa

    def harmony(bar):
        """Chroma over eight bars, brought to one length whatever the tempo."""
        start, stop = (round(truth["downbeats"][at - 1] * 22_050) for at in (bar, bar + 8))
        chroma = librosa.feature.chroma_stft(y=heard[start:stop], sr=22_050)
        return chroma[:, np.linspace(0, chroma.shape[1] - 1, 128).astype(int)].ravel()

    bars = (25, 41, 65, 17, 33, 49, 57)  # refrain three times, full verse twice, break, drive
    alike = np.corrcoef([harmony(bar) for bar in bars])
    refrains = alike[:3, :3][np.triu_indices(3, k=1)]
    assert refrains.min() > 0.7
    assert alike[3, 4] > 0.7
    assert max(alike[:3, 3:].max(), alike[3:5, 5:].max(), alike[5, 6]) < 0.4


def loud_master(samples):
    """The track pressed as loud as masters get: compressed 10 to 1 over a window of 50 ms, then limited."""
    power = np.convolve(np.mean(samples**2, axis=1), np.ones(2205) / 2205, mode="same")
    level = 10 * np.log10(power + 1e-12)
    gain = 10 ** (np.where(level > -40.0, -0.9 * (level + 40.0), 0.0) / 20)
    return np.tanh(samples * gain[:, None] * 60.0) * 0.98


@pytest.mark.parametrize("master", [loud_master, *at_length(None)])
def test_energy_and_eights_follow_the_score(truth, track, tmp_path, master):
    """Source: the score: a calm intro and break, fuller verses, the fullest refrains; `audio_samples/README.md`."""
    samples, rate = track
    path = tmp_path / "track.wav"
    soundfile.write(path, samples if master is None else master(samples), rate)
    song = hear(path, use_cache=False)

    levels = {}
    for part in truth["sections"]:
        energy = mean_energy(np.array(song.energy), song.duration, part["start"], part["end"])
        levels.setdefault(part["label"], []).append(energy)
    full, calm = min(levels["refrain"]), max(*levels["intro"], *levels["break"])
    assert full > 0.65
    assert calm < 0.35
    assert full > max(levels["verse"]) > calm

    eights = heard_music(song, song.tempo_map()).eights
    count = song.tempo_map()
    refrains = [p for p in truth["sections"] if p["label"] == "refrain"]
    middles = [float(count.seconds_from_beats((e.start + e.end) / 2)) for e in eights]
    inside = [any(p["start"] < m < p["end"] for p in refrains) for m in middles]
    ranks = np.array([e.loudness for e in eights])
    assert ranks[inside].min() > np.median(ranks)
    assert len(eights) == pytest.approx(40, abs=2)  # 80 bars are 40 eights


def test_strokes_are_heard_on_the_beats_of_the_score(truth):
    """Source: the truth's beats; librosa's spectral flux hears most of our strokes too (within 50 ms)."""
    import librosa

    song = hear(TRACK)
    onsets = np.array(song.onsets)
    beats = np.array(truth["beats"])
    steady = beats[(beats > 20) & (beats < 115)]
    apart = np.abs(onsets[None] - steady[:, None]).min(axis=1)
    assert np.mean(apart < 0.03) > 0.97
    samples, rate = soundfile.read(TRACK)
    mono = librosa.resample(samples.mean(axis=1), orig_sr=rate, target_sr=22_050)
    theirs = librosa.onset.onset_detect(y=mono, sr=22_050, units="time")
    strong = onsets[np.array(song.onset_strengths) > 0.5]
    near = np.abs(theirs[None] - strong[:, None]).min(axis=1)
    assert np.mean(near < 0.05) > 0.9
