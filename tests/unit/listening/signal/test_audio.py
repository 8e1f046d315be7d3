"""Files of every kind are heard, or refused in one clear line."""

import numpy as np
import pytest
import soundfile

from sequencer.errors import InputError
from sequencer.listening.hearing import hear
from sequencer.listening.signal.audio import SAMPLE_RATE, AudioFile, is_audio_name, sha256_of
from sequencer.listening.signal.spectra import FRAMES, spectra_of


def clicks(seconds=12.0, tempo=120.0, rate=44100, offset=0.25):
    """Decaying bursts on the beats, every fourth one lower and louder."""
    samples = np.zeros(int(seconds * rate))
    t = np.arange(int(0.06 * rate)) / rate
    for i, at in enumerate(np.arange(offset, seconds - 0.1, 60 / tempo)):
        pitch, level = (180.0, 0.8) if i % 4 == 0 else (900.0, 0.5)
        start = int(at * rate)
        samples[start : start + len(t)] += level * np.sin(2 * np.pi * pitch * t) * np.exp(-t * 60)
    return samples


def decoded(path):
    track = AudioFile(path)
    return np.concatenate(list(track.blocks())), track


@pytest.mark.parametrize(
    "name", ["a.wav", "b.flac", "c.ogg", "d.mp3", "火 Łø עברית.wav", "a" * 200 + ".ogg"]
)
def test_formats_and_names(tmp_path, name):
    path = tmp_path / name
    soundfile.write(path, clicks(5.0), 44100)

    samples, track = decoded(path)

    assert track.duration == pytest.approx(5.0, abs=0.06)  # mp3 pads to whole frames
    assert len(samples) == pytest.approx(track.duration * SAMPLE_RATE, abs=2)


@pytest.mark.parametrize(
    ("rate", "subtype"),
    [(8000, "PCM_16"), (22050, "PCM_U8"), (96000, "PCM_24"), (192000, "FLOAT"), (48000, "DOUBLE")],
)
def test_rates_and_depths_agree(tmp_path, rate, subtype):
    path = tmp_path / "x.wav"
    soundfile.write(path, clicks(6.0, rate=rate), rate, subtype=subtype)

    samples, track = decoded(path)

    assert track.duration == pytest.approx(6.0, abs=1e-3)
    onset = np.argmax(np.abs(samples) > 0.1) / SAMPLE_RATE
    assert onset == pytest.approx(0.25, abs=0.002)


def test_streamed_spectra_do_not_depend_on_blocks():
    samples = clicks(5.0, rate=SAMPLE_RATE).astype(np.float32)

    whole = spectra_of([samples])
    pieces = spectra_of(np.split(samples, [1, 300, 5000, 5001, 40000]))

    np.testing.assert_array_equal(whole.mel, pieces.mel)
    np.testing.assert_array_equal(whole.chroma, pieces.chroma)
    assert len(whole.mel) == pytest.approx(5 * FRAMES, abs=1)


def test_opposed_channels_are_heard(tmp_path):
    path = tmp_path / "opposed.wav"
    one = clicks(12.0)
    soundfile.write(path, np.stack([one, -one], axis=1), 44100)

    song = hear(path, use_cache=False)

    assert song.tempo == pytest.approx(120, rel=0.02)


def damaged(tmp_path, kind):  # noqa: C901, PLR0912 (one case a kind of damage)
    path = tmp_path / f"{kind}.wav"
    match kind:
        case "folder":
            path.mkdir()
        case "empty":
            path.touch()
        case "text":
            path = tmp_path / "text.mp3"
            path.write_text("this is no music, " * 500, encoding="utf-8")
        case "nan":
            samples = clicks(6.0)
            samples[100000] = np.nan
            soundfile.write(path, samples, 44100, subtype="FLOAT")
        case "short":
            soundfile.write(path, clicks(1.0), 44100)
        case "no-samples":
            soundfile.write(path, np.zeros(0), 44100)
        case "cut":
            soundfile.write(path, clicks(8.0), 44100)
            path.write_bytes(path.read_bytes()[:400_000])
        case "cut-flac":
            path = tmp_path / "cut.flac"
            soundfile.write(path, np.random.default_rng(1).normal(0, 0.1, 44100 * 8), 44100)
            path.write_bytes(path.read_bytes()[:400_000])
        case "cut-ogg":
            path = tmp_path / "cut.ogg"
            soundfile.write(path, clicks(20.0), 44100)
            path.write_bytes(path.read_bytes()[: int(path.stat().st_size * 0.7)])
        case "silent":
            soundfile.write(path, np.zeros(44100 * 8), 44100)
        case "constant":
            level = np.tile(np.float32([0.9, -0.3]), (44100 * 8, 1))
            soundfile.write(path, level, 44100, subtype="FLOAT")
        case "slow":
            soundfile.write(path, clicks(8.0), 1)
        case "fast":
            soundfile.write(path, clicks(8.0), 2_000_000)
        case "bytes":
            path.write_bytes(np.random.default_rng(1).bytes(20_000))
    return path


@pytest.mark.parametrize(
    ("kind", "code"),
    [
        ("missing", "track-not-found"),
        ("folder", "track-is-folder"),
        ("empty", "track-empty"),
        ("text", "track-not-audio"),
        ("nan", "track-not-finite"),
        ("short", "track-too-short"),
        ("no-samples", "track-too-short"),
        ("cut", "track-damaged"),
        ("cut-flac", "track-damaged"),
        ("cut-ogg", "track-damaged"),
        ("silent", "track-silent"),
        ("constant", "track-silent"),
        ("slow", "track-damaged"),
        ("fast", "track-damaged"),
        ("bytes", "track-not-audio"),
    ],
)
def test_what_cannot_be_heard_is_refused(tmp_path, kind, code):
    path = damaged(tmp_path, kind)

    with pytest.raises(InputError) as caught:
        hear(path, use_cache=False)

    assert caught.value.code == code
    assert str(path) in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_song_on_a_constant_level_is_heard(tmp_path):
    path = tmp_path / "lifted.wav"
    soundfile.write(path, 0.05 * clicks(12.0) + 0.8, 44100, subtype="FLOAT")
    assert len(hear(path, use_cache=False).beats) > 4


def test_hash_is_that_of_the_bytes(tmp_path):
    """Source: FIPS 180-2, SHA-256 of the message "abc"."""
    path = tmp_path / "abc"
    path.write_bytes(b"abc")

    assert sha256_of(path).startswith("ba7816bf8f01cfea414140de5dae2223")


def test_names_of_audio(tmp_path):
    assert is_audio_name(tmp_path / "Song.MP3")
    assert not is_audio_name(tmp_path / ".song.mp3")
    assert not is_audio_name(tmp_path / "notes.txt")
