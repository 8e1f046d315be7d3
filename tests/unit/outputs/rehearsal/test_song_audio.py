"""The embedded song is kept by its file: an unchanged one is neither read nor encoded again."""

import numpy as np
import pytest

from sequencer import content_keys, kept, kept_store
from sequencer.outputs.rehearsal import song_audio
from sequencer.outputs.rehearsal.song_audio import Sound, embedded_track

RATE = 44_100


@pytest.fixture(autouse=True)
def nothing_yet(tmp_path, monkeypatch):
    """A process that keeps nothing yet, and an encoder that only counts."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(kept, "_STORE", kept_store.ResultStore(content_keys.code_unchanged))
    monkeypatch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
    encoded = []

    def embedded(samples, rate):
        encoded.append((samples, rate))
        return Sound(kind="embedded", type="audio/mpeg", data=f"{len(encoded)}")

    monkeypatch.setattr(song_audio, "embedded", embedded)
    yield encoded
    kept._STORE.close()


def ask(track, during=lambda: None):
    def read():
        during()
        return np.zeros((4, 2)), RATE

    return embedded_track(track, read)


def test_an_unchanged_song_is_encoded_once_by_all_processes(tmp_path, nothing_yet):
    track = tmp_path / "song.wav"
    track.write_bytes(b"a song")
    first = ask(track)
    assert first == Sound(kind="embedded", type="audio/mpeg", data="1")
    kept._STORE.flush()
    kept._MEMORY.clear()
    assert ask(track) == first
    assert len(nothing_yet) == 1
    other = tmp_path / "copy.wav"
    other.write_bytes(b"a song")
    assert ask(other) == first


@pytest.mark.parametrize("what", ["song", "code", "encoder"])
def test_another_song_or_another_encoder_is_encoded_again(tmp_path, monkeypatch, what):
    track = tmp_path / "song.wav"
    track.write_bytes(b"a song")
    ask(track)
    if what == "song":
        track.write_bytes(b"another")
    elif what == "code":
        monkeypatch.setattr(content_keys, "whole_code", lambda: b"other")
    else:
        monkeypatch.setattr("soundfile.__libsndfile_version__", "0.0.1")
    assert ask(track).data == "2"


def test_a_song_that_changes_while_it_is_read_is_not_kept(tmp_path):
    track = tmp_path / "song.wav"
    track.write_bytes(b"a song")
    ask(track, during=lambda: track.write_bytes(b"another"))
    track.write_bytes(b"a song")
    assert ask(track).data == "2"
