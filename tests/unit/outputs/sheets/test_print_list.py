"""A folder holds the sheets of one print: what is of nobody any more is taken away, and nothing else."""

import errno
import json

import pytest

from sequencer.errors import InputError
from sequencer.files import write_set
from sequencer.outputs.sheets.print_list import PRINT_LIST_NAME, write_print


def test_a_sheet_of_nobody_is_removed_and_told(tmp_path):
    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"})
    removed = write_print(tmp_path, {"a.pdf": b"3", "c.pdf": b"4"})

    assert removed == [tmp_path / "b.pdf"]
    assert {p.name: p.read_bytes() for p in tmp_path.glob("*.pdf")} == {
        "a.pdf": b"3",
        "c.pdf": b"4",
    }
    assert set(json.loads((tmp_path / PRINT_LIST_NAME).read_text(encoding="utf-8"))["files"]) == {
        "a.pdf",
        "c.pdf",
    }


def test_what_somebody_changed_or_brought_stays(tmp_path):
    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"})
    (tmp_path / "b.pdf").write_bytes(b"with my notes")
    (tmp_path / "mine.pdf").write_bytes(b"mine")

    assert write_print(tmp_path, {"a.pdf": b"1"}) == []
    assert (tmp_path / "b.pdf").read_bytes() == b"with my notes"
    assert (tmp_path / "mine.pdf").exists()


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"[]",
        b'{"files": [1]}',
        b'{"files": {"../x.pdf": "0"}}',
        b"\xff\xfe",
        b'{"files": {"notes.txt": "0"}}',
    ],
)
def test_a_list_that_is_not_ours_removes_nothing(tmp_path, content):
    folder = tmp_path / "out"
    folder.mkdir()
    (tmp_path / "x.pdf").write_bytes(b"x")
    (folder / "notes.txt").write_bytes(b"n")
    (folder / PRINT_LIST_NAME).write_bytes(content)

    assert write_print(folder, {"a.pdf": b"1"}) == []
    assert (tmp_path / "x.pdf").exists()
    assert (folder / "notes.txt").exists()


def test_a_full_disk_leaves_the_old_set_whole(tmp_path, monkeypatch):
    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"})
    real = type(tmp_path).write_bytes
    written = []

    def full(path, content):
        written.append(path)
        if len(written) == 2:
            raise OSError(errno.ENOSPC, "no space")
        return real(path, content)

    monkeypatch.setattr(type(tmp_path), "write_bytes", full)
    with pytest.raises(InputError, match="the disk is full"):
        write_print(tmp_path, {"a.pdf": b"3", "b.pdf": b"4", "c.pdf": b"5"})

    assert {p.name: p.read_bytes() for p in tmp_path.glob("*.pdf")} == {
        "a.pdf": b"1",
        "b.pdf": b"2",
    }
    assert not list(tmp_path.glob(".partial-*"))


def test_all_of_a_set_is_written(tmp_path):
    write_set({tmp_path / "x" / "a": b"1", tmp_path / "x" / "b": b"2"})

    assert sorted(p.name for p in (tmp_path / "x").iterdir()) == ["a", "b"]
