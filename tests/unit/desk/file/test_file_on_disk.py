"""A show file to the byte, and held by one process only."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from sequencer.desk.file.file_on_disk import Hold, can_write_beside
from sequencer.errors import InputError
from sequencer.files import write_bytes
from sequencer.show.text.file_text import DiskText, disk_text, write_disk_text


@pytest.mark.parametrize(
    "content", [b"", b"a: 1\r\nb: 2\r\n", b"\xef\xbb\xbfa: 1\n", "火: ø".encode()]
)
def test_a_file_comes_back_to_the_byte(tmp_path, content):
    path = tmp_path / "s.yaml"
    path.write_bytes(content)
    said = disk_text(path)
    write_disk_text(tmp_path / "t.yaml", said)
    assert (tmp_path / "t.yaml").read_bytes() == content
    assert not said.text.startswith("\ufeff")


@pytest.mark.parametrize(
    ("content", "code"),
    [(None, "no-file"), (b"\xff\xfe", "not-text"), (b"x" * 4_000_001, "too-large")],
)
def test_what_is_no_show_file_is_refused(tmp_path, content, code):
    if content is not None:
        (tmp_path / "s.yaml").write_bytes(content)
    with pytest.raises(InputError) as error:
        disk_text(tmp_path / "s.yaml")
    assert error.value.code == code
    with pytest.raises(InputError, match="this is a folder"):
        disk_text(tmp_path)


def test_a_folder_that_cannot_be_written_is_seen(tmp_path, monkeypatch):
    assert can_write_beside(tmp_path / "s.yaml")
    assert list(tmp_path.iterdir()) == []

    def refused(*_args, **_named):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("pathlib.Path.touch", refused)
    assert not can_write_beside(tmp_path / "s.yaml")
    with pytest.raises(InputError, match="no permission"):
        write_disk_text(tmp_path / "s.yaml", DiskText("x"))


def test_a_second_hold_is_refused_with_who_has_it(tmp_path):
    place, path = tmp_path / ".s.open", tmp_path / "s.yaml"
    first = Hold(place, path)
    with pytest.raises(InputError, match=f"open already, in process {os.getpid()} since"):
        Hold(place, path)
    assert json.loads(place.read_bytes())["process"] == os.getpid()
    first.let_go()
    assert not place.exists()
    Hold(place, path).let_go()


def test_a_hold_left_by_a_process_that_died_is_none(tmp_path):
    place = tmp_path / ".s.open"
    code = (
        "import os, sys; from pathlib import Path; from sequencer.desk.file.file_on_disk import Hold; "
        f"own = Hold(Path({str(place)!r}), Path('s')); os.kill(os.getpid(), 9)"
    )
    subprocess.run([sys.executable, "-c", code], check=False)
    assert place.exists()
    Hold(place, tmp_path / "s.yaml").let_go()


def test_what_a_killed_trial_leaves_is_swept_like_any_scratch_file(tmp_path, monkeypatch):
    monkeypatch.setattr(Path, "unlink", lambda _path: None)  # as if killed before it
    assert can_write_beside(tmp_path / "show.yaml")
    monkeypatch.undo()
    (left,) = tmp_path.iterdir()
    os.utime(left, (1, 1))
    write_bytes(tmp_path / "a", b"a")
    assert [path.name for path in tmp_path.iterdir()] == ["a"]
