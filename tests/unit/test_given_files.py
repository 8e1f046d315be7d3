"""Files that people name: real files only, and never more of one than it may hold."""

import os
import sys

import pytest

from sequencer.given_files import (
    TooLargeError,
    given_bytes,
    is_given_file,
    is_given_folder,
    is_there,
)


def test_a_file_is_read_to_its_limit_and_no_further(tmp_path):
    path = tmp_path / "a"
    path.write_bytes(b"x" * 1000)
    assert given_bytes(path, 1000) == b"x" * 1000
    with pytest.raises(TooLargeError):
        given_bytes(path, 999)


def test_a_folder_and_a_missing_file_are_told_apart(tmp_path):
    with pytest.raises(FileNotFoundError):
        given_bytes(tmp_path / "b", 10)
    with pytest.raises(OSError):  # noqa: PT011 (which one depends on the system)
        given_bytes(tmp_path, 10)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with names here")
def test_nobody_waits_for_a_pipe(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(OSError, match="a device or a pipe"):
        given_bytes(tmp_path / "pipe", 10)


@pytest.mark.skipif(sys.platform == "win32", reason="no such devices")
@pytest.mark.parametrize("device", ["/dev/zero", "/dev/null", "/dev/random"])
def test_no_device_is_read(device):
    with pytest.raises(OSError, match="a device or a pipe"):
        given_bytes(device, 10)


@pytest.mark.parametrize("name", ["x" * 5000, "x/" * 3000, "a\0b", "\udcff", "none"])
def test_a_name_that_nothing_can_have_names_nothing(tmp_path, name):
    assert not is_there(tmp_path / name)
    assert not is_given_file(tmp_path / name)
    assert not is_given_folder(tmp_path / name)


def test_what_is_there(tmp_path):
    (tmp_path / "a").touch()
    assert is_there(tmp_path / "a")
    assert is_there(tmp_path)
    assert is_given_file(tmp_path / "a")
    assert not is_given_file(tmp_path)
    assert is_given_folder(tmp_path)
    assert not is_given_folder(tmp_path / "a")
