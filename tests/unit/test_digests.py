"""Digests of files. Reference: SHA-256 of the bytes as they are now."""

import hashlib
import os
from pathlib import Path

import pytest

from sequencer import digests
from sequencer.digests import sha256_of_file


@pytest.fixture
def song(tmp_path, monkeypatch):
    """A file that was written long ago, and the times that it was read."""
    path, opened, reading = tmp_path / "song.wav", [], Path.open
    path.write_bytes(b"a song")

    def opening(self, *mode, **more):
        opened.append(self)
        return reading(self, *mode, **more)

    monkeypatch.setattr(digests, "_DIGESTS", {})
    monkeypatch.setattr(Path, "open", opening)
    later = path.stat().st_ctime + 60.0
    monkeypatch.setattr(digests.time, "time", lambda: later)
    return path, opened


def truth(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def test_a_file_that_stays_as_it_is_is_read_once(song):
    path, opened = song
    assert sha256_of_file(path) == sha256_of_file(path) == sha256_of_file(path)
    assert len(opened) == 1
    assert sha256_of_file(path) == truth(path)


def test_a_file_of_the_same_length_with_its_old_time_is_read_again(song):
    path, _ = song
    before, old = sha256_of_file(path), path.stat()
    other = path.with_name("other.wav")
    other.write_bytes(b"A SONG")
    os.utime(other, ns=(old.st_atime_ns, old.st_mtime_ns))
    other.replace(path)
    assert sha256_of_file(path) == truth(path) != before


def test_what_was_written_a_moment_ago_is_read_each_time(song, monkeypatch):
    """The clock of a file system may stand still between two writes."""
    path, opened = song
    now = path.stat().st_ctime + 1.0
    monkeypatch.setattr(digests.time, "time", lambda: now)
    for _ in range(2):
        sha256_of_file(path)
    assert len(opened) == 2


def test_a_file_that_changes_while_it_is_read_is_not_remembered(song, monkeypatch):
    path, _ = song
    file_digest = hashlib.file_digest

    def meanwhile(file, name):
        found = file_digest(file, name)
        path.write_bytes(b"another song")
        return found

    with monkeypatch.context() as patch:
        patch.setattr(digests.hashlib, "file_digest", meanwhile)
        sha256_of_file(path)
    assert sha256_of_file(path) == truth(path)


def test_a_file_that_is_gone_is_no_file(song):
    path, _ = song
    sha256_of_file(path)
    path.unlink()
    with pytest.raises(FileNotFoundError):
        sha256_of_file(path)
