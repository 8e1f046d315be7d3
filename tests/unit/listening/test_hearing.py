"""From a file to a song: what is found, what is honestly not found, and what is kept."""

import json

import mir_eval
import numpy as np
import pytest
import soundfile

from sequencer.listening import cache
from sequencer.listening.hearing import hear, heard_tracks, song_json, tracks_in

RATE = 22050


@pytest.fixture(autouse=True)
def _own_cache(tmp_path, monkeypatch):
    monkeypatch.setattr(cache, "folder", lambda: tmp_path / "cache")


def written(tmp_path, samples, name="track.wav"):
    path = tmp_path / name
    soundfile.write(path, np.clip(samples, -1, 1), RATE)
    return path


def music(seconds=40.0, tempo=110.0, metre=4):
    """Drums and a chord a bar that changes its register halfway."""
    rng = np.random.default_rng(3)
    samples = rng.normal(0, 1e-3, int(seconds * RATE))
    t = np.arange(int(0.5 * RATE)) / RATE
    for i, at in enumerate(np.arange(0.4, seconds - 1, 60 / tempo)):
        place = i % metre
        start = int(at * RATE)
        drum = (
            np.sin(2 * np.pi * 60 * t) * np.exp(-t * 25)
            if place == 0
            else rng.normal(0, 0.3, len(t)) * np.exp(-t * 60)
        )
        samples[start : start + len(t)] += 0.6 * drum
        base = (220 if at < seconds / 2 else 523) * (1 if (i // metre) % 2 else 1.25)
        if place == 0:
            for step in (1, 1.26, 1.5):
                samples[start : start + len(t)] += 0.1 * np.sin(2 * np.pi * base * step * t)
    return samples


def test_song_is_whole_and_consistent(tmp_path):
    song = hear(written(tmp_path, music()))

    assert song.tempo == pytest.approx(110, rel=0.01)
    assert song.metre == 4
    assert set(song.downbeats) <= set(song.beats)
    assert list(song.beats) == sorted(set(song.beats))
    assert len(song.bar_confidence) == len(song.downbeats)
    assert song.sections[0].start == 0
    assert song.sections[-1].end == song.duration
    assert all(a.end == b.start for a, b in zip(song.sections[:-1], song.sections[1:], strict=True))
    assert all(s.start in song.downbeats for s in song.sections[1:])
    assert sum(r.share for r in song.readings) <= 1 + 1e-6
    assert song.tempo_map().metre == 4


def noise(seconds=20.0):
    return np.random.default_rng(5).normal(0, 0.2, int(seconds * RATE))


def one_click(seconds=20.0):
    samples = np.zeros(int(seconds * RATE))
    samples[RATE * 7 : RATE * 7 + 200] = 0.8
    return samples


def babble(seconds=24.0):
    """Voiced bursts of uneven length and pitch with uneven pauses, as in speech."""
    rng = np.random.default_rng(11)
    samples, at = rng.normal(0, 1e-3, int(seconds * RATE)), 0.2
    while at < seconds - 1:
        length = rng.uniform(0.08, 0.35)
        t = np.arange(int(length * RATE)) / RATE
        pitch = rng.uniform(90, 220) * (1 + 0.1 * np.sin(2 * np.pi * rng.uniform(2, 5) * t))
        phase = 2 * np.pi * np.cumsum(pitch) / RATE
        voice = sum(np.sin(k * phase) / k * rng.uniform(0.2, 1) for k in range(1, 12))
        samples[int(at * RATE) : int(at * RATE) + len(t)] += 0.2 * voice * np.hanning(len(t))
        at += length + rng.choice([0.03, 0.1, 0.5, 0.9], p=[0.5, 0.25, 0.15, 0.1]) * rng.uniform(
            0.5, 1.5
        )
    return samples


@pytest.mark.parametrize("samples", [noise(), one_click()], ids=["noise", "one click"])
def test_no_beat_is_said_to_be_none(tmp_path, samples):
    song = hear(written(tmp_path, samples))

    assert song.beats == ()
    assert song.tempo == 0
    assert song.confidence["beats"] == 0
    assert song.unsteady == ((0.0, pytest.approx(song.duration, abs=0.01)),)
    assert len(song.sections) == 1


def test_speech_is_not_counted_with_confidence(tmp_path):
    song = hear(written(tmp_path, babble()))

    assert song.confidence["beats"] < 0.5
    assert song.beats == () or song.unsteady or song.confidence["downbeats"] < 0.4


def test_a_beat_after_a_long_silence_names_the_silence(tmp_path):
    samples = np.concatenate([np.zeros(RATE * 15), music(30.0)])

    song = hear(written(tmp_path, samples))

    assert song.beats[0] > 14.5
    assert song.unsteady[0][0] == 0
    assert song.unsteady[0][1] == pytest.approx(song.beats[0], abs=0.1)


def test_noise_between_music_is_no_steady_beat(tmp_path):
    rng = np.random.default_rng(2)
    quiet = rng.normal(0, 0.1, RATE * 16)
    samples = np.concatenate([music(24.0), quiet, music(24.0)])

    song = hear(written(tmp_path, samples))

    assert any(a < 32 < b for a, b in song.unsteady)
    inside = [
        share for at, share in zip(song.downbeats, song.bar_confidence, strict=True) if 27 < at < 38
    ]
    assert all(share < 0.3 for share in inside)  # counted on, at no confidence
    sure = [share for at, share in zip(song.downbeats, song.bar_confidence, strict=True) if at < 20]
    assert np.mean(sure) > 0.6
    assert song.unsure_bars()


@pytest.mark.parametrize("kind", ["clipped", "eight bits", "opposed", "fast", "low"])
def test_badly_made_files_are_counted_like_good_ones(tmp_path, kind):
    """Source of the measure: mir_eval, F-measure of beats within 70 ms."""
    samples, rate, subtype = music(24.0), RATE, "PCM_16"
    truth = np.arange(0.4, 23.0, 60 / 110)
    match kind:
        case "clipped":
            samples = np.clip(samples * 20, -0.98, 0.98)
        case "eight bits":
            samples, subtype = samples * 0.3, "PCM_U8"
        case "opposed":
            samples = np.stack([samples, -samples], axis=1)
        case "fast":
            samples, rate = np.repeat(samples, 9)[: 24 * 192_000], 192_000
            truth = truth * RATE * 9 / 192_000
        case "low":
            samples, rate = samples[::2], RATE // 2
    path = tmp_path / "track.wav"
    soundfile.write(path, np.clip(samples, -1, 1), rate, subtype=subtype)

    song = hear(path)

    assert mir_eval.beat.f_measure(truth, np.array(song.beats)) > 0.95
    assert song.metre == 4


def test_the_same_file_gives_the_same_bytes(tmp_path):
    path = written(tmp_path, music(20.0))

    first = json.dumps(song_json(hear(path, use_cache=False), path))
    second = json.dumps(song_json(hear(path, use_cache=False), path))

    assert first == second


def test_json_has_the_agreed_names(tmp_path):
    path = written(tmp_path, music(20.0))

    told = song_json(hear(path), path)

    assert {
        "track",
        "duration",
        "tempo",
        "meter",
        "beats",
        "downbeats",
        "sections",
        "confidence",
    } <= set(told)
    wanted = {"start", "end", "label", "energy", "variant", "confidence"}
    assert set(told["sections"][0]) == wanted
    json.dumps(told, allow_nan=False)


def test_progress_never_goes_back(tmp_path):
    shares = []

    hear(written(tmp_path, music(20.0)), progress=lambda _what, share: shares.append(share))

    assert shares == sorted(shares)
    assert shares[-1] == 1.0


class TestCache:
    def test_second_hearing_comes_from_the_cache(self, tmp_path):
        path = written(tmp_path, music(20.0))
        said = []

        first = hear(path)
        second = hear(path, progress=lambda what, _share: said.append(what))

        assert first == second
        assert "this song was heard before" in said

    def test_a_changed_file_is_heard_afresh(self, tmp_path):
        path = written(tmp_path, music(20.0, tempo=110))
        hear(path)
        written(tmp_path, music(20.0, tempo=140))

        assert hear(path).tempo == pytest.approx(140, rel=0.02)

    @pytest.mark.parametrize(
        "damage",
        [
            lambda text: text[: len(text) // 2],
            lambda text: text.replace('"tempo": 1', '"tempo": 2', 1),
            lambda text: text.replace('"analysis"', '"analysed"'),
            lambda _text: "[]",
            lambda _text: "",
            lambda _text: "null",
        ],
    )
    def test_damaged_entries_are_not_believed(self, tmp_path, damage):
        path = written(tmp_path, music(20.0))
        song = hear(path)
        (entry,) = (tmp_path / "cache").glob("*.json")
        entry.write_text(damage(entry.read_text(encoding="utf-8")), encoding="utf-8")

        assert cache.load(song.sha256, track="x") is None
        assert hear(path) == song
        assert cache.load(song.sha256, track=path.name) == song

    def test_an_entry_under_another_name_is_not_believed(self, tmp_path):
        song = hear(written(tmp_path, music(20.0)))
        (entry,) = (tmp_path / "cache").glob("*.json")
        other = "0" * 64
        entry.rename(entry.with_name(entry.name.replace(song.sha256, other)))

        assert cache.load(other, track="x") is None

    def test_a_cache_that_cannot_be_written_is_no_failure(self, tmp_path, monkeypatch):
        (tmp_path / "file").write_text("in the way", encoding="utf-8")
        monkeypatch.setattr(cache, "folder", lambda: tmp_path / "file" / "below")

        assert hear(written(tmp_path, music(20.0))).beats


def test_many_tracks_come_in_order_with_their_faults(tmp_path):
    good = written(tmp_path, music(12.0), "b.wav")
    bad = tmp_path / "a.mp3"
    bad.write_text("no music", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("x", encoding="utf-8")

    paths = tracks_in(tmp_path)
    found = dict(heard_tracks(paths, jobs=1, use_cache=False))

    assert paths == [bad, good]
    assert found[bad].code == "track-not-audio"
    assert found[good].beats
