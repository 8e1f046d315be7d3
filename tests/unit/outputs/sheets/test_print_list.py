"""A folder holds the sheets of the last prints: what is of nobody any more is taken away, and nothing else."""

import errno
import json

import pytest

from sequencer.errors import InputError
from sequencer.files import write_set
from sequencer.outputs.sheets.print_list import PRINT_LIST_NAME, PrintChanges, write_print

NOTHING = PrintChanges(removed=(), outdated=())


def held(folder):
    return {path.name: path.read_bytes() for path in folder.glob("*.pdf")}


def listed(folder):
    return json.loads((folder / PRINT_LIST_NAME).read_text(encoding="utf-8"))["files"]


def test_a_sheet_of_nobody_is_removed_and_told(tmp_path):
    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"})
    changes = write_print(tmp_path, {"a.pdf": b"3", "c.pdf": b"4"})

    assert changes == PrintChanges(removed=(tmp_path / "b.pdf",), outdated=())
    assert held(tmp_path) == {"a.pdf": b"3", "c.pdf": b"4"}
    assert set(listed(tmp_path)) == {"a.pdf", "c.pdf"}


def test_a_print_of_some_leaves_the_others_and_a_later_one_can_still_remove_them(tmp_path):
    write_print(tmp_path, {"all.pdf": b"1", "post-1.pdf": b"2", "card-1.pdf": b"3"}, show="one")
    write_print(
        tmp_path,
        {"all.pdf": b"4", "post-2.pdf": b"5"},
        covers=lambda name: name.startswith("post"),
        show="one",
    )

    assert held(tmp_path) == {"all.pdf": b"4", "post-2.pdf": b"5", "card-1.pdf": b"3"}
    assert write_print(tmp_path, {"all.pdf": b"6"}, show="one").removed == (
        tmp_path / "card-1.pdf",
        tmp_path / "post-2.pdf",
    )


def test_what_is_left_of_another_show_is_told(tmp_path):
    def none(_name):
        return False

    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"}, show="one")

    assert write_print(tmp_path, {"a.pdf": b"1"}, covers=none, show="one") == NOTHING
    assert write_print(tmp_path, {"a.pdf": b"3"}, covers=none, show="two").outdated == (
        tmp_path / "b.pdf",
    )
    (tmp_path / "b.pdf").unlink()
    assert write_print(tmp_path, {"a.pdf": b"3"}, covers=none, show="two") == NOTHING


def test_what_somebody_changed_or_brought_stays(tmp_path):
    write_print(tmp_path, {"a.pdf": b"1", "b.pdf": b"2"})
    (tmp_path / "b.pdf").write_bytes(b"with my notes")
    (tmp_path / "mine.pdf").write_bytes(b"mine")

    assert write_print(tmp_path, {"a.pdf": b"1"}) == NOTHING
    assert (tmp_path / "b.pdf").read_bytes() == b"with my notes"
    assert (tmp_path / "mine.pdf").exists()


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"[]",
        b'{"files": [1]}',
        b'{"files": {}, "shows": [1]}',
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

    assert write_print(folder, {"a.pdf": b"1"}) == NOTHING
    assert (tmp_path / "x.pdf").exists()
    assert (folder / "notes.txt").exists()


def test_a_list_without_shows_is_read_too(tmp_path):
    """As version 1 of the list was: every file of it may be removed, and is of a show that is not known."""
    digest = "6b86b273ff34fce19d6b804eff5a3f5747ada4eaa22f1d49c01e52ddb7875b4b"  # SHA-256 of "1"
    (tmp_path / "b.pdf").write_bytes(b"1")
    old = json.dumps({"files": {"b.pdf": digest}})
    (tmp_path / PRINT_LIST_NAME).write_text(old, encoding="utf-8")

    changes = write_print(tmp_path, {"a.pdf": b"2"}, covers=lambda _name: False, show="one")
    assert changes.outdated == (tmp_path / "b.pdf",)
    assert write_print(tmp_path, {"a.pdf": b"2"}).removed == (tmp_path / "b.pdf",)


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

    assert held(tmp_path) == {"a.pdf": b"1", "b.pdf": b"2"}
    assert not list(tmp_path.glob(".partial-*"))


def test_all_of_a_set_is_written(tmp_path):
    write_set({tmp_path / "x" / "a": b"1", tmp_path / "x" / "b": b"2"})

    assert sorted(p.name for p in (tmp_path / "x").iterdir()) == ["a", "b"]
