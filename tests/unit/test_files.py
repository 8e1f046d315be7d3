"""Writing is whole or not at all."""

import errno
import os
import stat
import subprocess
import sys
import time
from pathlib import Path

import pytest

from sequencer.errors import InputError
from sequencer.files import making_folder, replacing, write_bytes, write_set, write_text


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_and_its_folders_are_made(tmp_path):
    write_text(tmp_path / "a" / "b" / "火 ø.txt", "one\ntwo\n")
    assert (tmp_path / "a" / "b" / "火 ø.txt").read_bytes() == b"one\ntwo\n"


def test_a_full_disk_leaves_the_old_file_and_nothing_else(tmp_path, monkeypatch):
    target = tmp_path / "show.yaml"
    target.write_text("old", encoding="utf-8")

    def full(self, *_args, **_kwargs):
        with Path.open(self, "wb") as handle:
            handle.write(b"ha")  # half of it arrives
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(InputError, match=r"show\.yaml: cannot write this file: the disk is full"):
        write_bytes(target, b"half of it")
    assert target.read_text(encoding="utf-8") == "old"
    assert names(tmp_path) == ["show.yaml"]


@pytest.mark.skipif(sys.platform != "linux", reason="/dev/full is Linux's")
def test_a_write_that_the_system_refuses_is_one_line(tmp_path):
    with pytest.raises(InputError, match="the disk is full") as told, replacing(tmp_path / "x.bin"):  # fmt: skip
        Path("/dev/full").write_bytes(b"x")
    assert (
        told.value.mend == "choose another folder, or make room"
    )  # no option, which not every verb has
    assert names(tmp_path) == []


@pytest.mark.parametrize(
    ("number", "why"),
    [
        (errno.EROFS, "the disk is read-only"), (errno.EDQUOT, "the disk quota is used up"), (errno.EACCES, "no permission"),
        (errno.EPERM, "no permission"), (errno.ENAMETOOLONG, "too long"), (errno.EIO, "Input/output error"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("what", ["touch", "mkdir"])
def test_a_folder_that_takes_nothing_is_one_line(tmp_path, monkeypatch, number, why, what):
    """A disk that is read-only refuses even to take away what is not there."""

    def refused(*_given, **_more):
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(Path, what, refused)
    if number == errno.EROFS:
        monkeypatch.setattr(Path, "unlink", refused)
    with pytest.raises(InputError, match=why):
        write_text(tmp_path / "a.yaml", "new")
    with pytest.raises(InputError, match=why):
        write_set({tmp_path / "b.yaml": b"new", tmp_path / "c.yaml": b"new"})
    if what == "mkdir":
        with pytest.raises(InputError, match=why), making_folder(tmp_path / "new"):
            pass
    assert names(tmp_path) == []


@pytest.mark.skipif(sys.platform != "linux", reason="made with a mount of Linux's")
@pytest.mark.skipif(getattr(os, "geteuid", lambda: 1)() != 0, reason="only root mounts")
def test_a_disk_that_is_really_full_or_read_only_is_one_line(tmp_path):
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    if subprocess.run(mount, capture_output=True, check=False).returncode:
        pytest.skip("nothing can be mounted here")
    try:
        (disk / "a.yaml").write_text("old", encoding="utf-8")
        with pytest.raises(InputError, match="the disk is full"):
            write_bytes(disk / "a.yaml", bytes(100_000))
        subprocess.run(["mount", "-o", "remount,ro", str(disk)], check=True)
        with pytest.raises(InputError, match="the disk is read-only"):
            write_text(disk / "a.yaml", "new")
        assert names(disk) == ["a.yaml"]
        assert (disk / "a.yaml").read_text(encoding="utf-8") == "old"
    finally:
        subprocess.run(["umount", str(disk)], check=True)


@pytest.mark.skipif(not hasattr(os, "fork"), reason="processes are begun otherwise there")
def test_two_processes_that_write_the_same_files_leave_whole_ones(tmp_path):
    """As two prints into one folder: at no moment is a file missing or mixed, once it was there."""
    files = [tmp_path / "out" / name for name in ("a.pdf", "b.pdf")]
    for path in files:
        write_bytes(path, b"0" * 50_000)
    writers = []
    for letter in (b"1", b"2"):
        if (child := os.fork()) == 0:
            try:
                for _ in range(12):
                    write_set(dict.fromkeys(files, letter * 50_000))
                os._exit(0)
            finally:
                os._exit(1)
        writers.append(child)
    seen: set[tuple[int, int]] = set()
    ended: dict[int, int] = {}
    while len(ended) < len(writers):
        seen |= {(len(said := path.read_bytes()), len(set(said))) for path in files}
        looked = [os.waitpid(each, os.WNOHANG) for each in writers if each not in ended]
        ended |= {child: status for child, status in looked if child}
    assert set(ended.values()) == {0}
    assert seen == {(50_000, 1)}
    assert names(files[0].parent) == ["a.pdf", "b.pdf"]


def test_an_interruption_leaves_nothing(tmp_path):
    def interrupted():
        with replacing(tmp_path / "x.pdf") as scratch:
            scratch.write_bytes(b"half")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        interrupted()
    assert names(tmp_path) == []


def test_an_interruption_as_the_scratch_file_is_made_leaves_nothing(tmp_path, monkeypatch):
    plain = Path.touch

    def pressed(self, *args, **more):
        plain(self, *args, **more)
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "touch", pressed)
    with pytest.raises(KeyboardInterrupt):
        write_text(tmp_path / "a" / "x.txt", "x")
    assert names(tmp_path / "a") == []


def test_a_file_in_the_way_of_a_folder_is_one_line(tmp_path):
    (tmp_path / "exports").write_text("a file", encoding="utf-8")
    with pytest.raises(InputError, match="cannot write this file"):
        write_text(tmp_path / "exports" / "sheet.pdf", "x")


@pytest.mark.skipif(sys.platform == "win32", reason="POSIX permissions")
def test_permissions_of_a_replaced_file_stay(tmp_path):
    target = tmp_path / "a.yaml"
    target.write_text("old", encoding="utf-8")
    target.chmod(0o640)
    write_text(target, "new")
    assert stat.S_IMODE(target.stat().st_mode) == 0o640


def test_a_scratch_file_of_another_process_stays_and_a_forgotten_one_goes(tmp_path):
    young, old = tmp_path / ".partial-young.yaml", tmp_path / ".partial-old.yaml"
    for path, age in ((young, 600), (old, 7200)):
        path.write_text("half", encoding="utf-8")
        os.utime(path, (time.time() - age, time.time() - age))
    write_text(tmp_path / "a.yaml", "new")
    assert young.exists()
    assert not old.exists()


@pytest.mark.skipif(getattr(os, "geteuid", lambda: 0)() == 0, reason="rights do not bind here")
def test_a_file_that_may_only_be_read_is_replaced_in_a_folder_that_may_be_written(tmp_path):
    (tmp_path / "a.yaml").write_text("old", encoding="utf-8")
    (tmp_path / "a.yaml").chmod(0o444)
    write_text(tmp_path / "a.yaml", "new")
    assert (tmp_path / "a.yaml").read_text(encoding="utf-8") == "new"


def test_a_new_folder_is_there_whole_or_not_at_all(tmp_path):
    with making_folder(tmp_path / "a" / "new") as scratch:
        (scratch / "deep").mkdir()
        (scratch / "deep" / "x").write_bytes(b"x")
        assert names(tmp_path / "a") == [scratch.name]
    assert (tmp_path / "a" / "new" / "deep" / "x").read_bytes() == b"x"
    assert names(tmp_path / "a") == ["new"]
    with pytest.raises(KeyError), making_folder(tmp_path / "b") as scratch:
        fails_in(scratch)
    assert names(tmp_path) == ["a"]


def fails_in(scratch):
    (scratch / "x").write_bytes(b"x")
    raise KeyError


def test_a_folder_that_comes_to_be_there_meanwhile_stays(tmp_path):
    with (
        pytest.raises(InputError, match="nothing is overwritten"),
        making_folder(tmp_path / "new") as scratch,
    ):
        also_written(scratch, tmp_path / "new")
    assert names(tmp_path) == ["new"]
    assert (tmp_path / "new" / "x").read_bytes() == b"theirs"


def also_written(scratch, folder):
    (scratch / "x").write_bytes(b"mine")
    folder.mkdir()
    (folder / "x").write_bytes(b"theirs")


def test_a_forgotten_scratch_folder_goes(tmp_path):
    old = tmp_path / ".partial-old"
    old.mkdir()
    (old / "x").write_bytes(b"x")
    os.utime(old, (time.time() - 7200, time.time() - 7200))
    (tmp_path / ".partial-now").mkdir()
    write_bytes(tmp_path / "a", b"a")
    assert names(tmp_path) == [".partial-now", "a"]


@pytest.mark.parametrize("given", ["", ".", "/", "..", "foo/..", "foo/../..", "./."])
def test_a_new_folder_has_a_name(tmp_path, monkeypatch, given):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(InputError, match="nothing is overwritten"), making_folder(Path(given)):
        pass
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("given", ["a/b/new", "a/../b/new"])
def test_folders_above_are_not_left_behind(tmp_path, monkeypatch, given):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(KeyError), making_folder(Path(given)) as scratch:
        fails_in(scratch)
    assert not list(tmp_path.iterdir())
    with making_folder(Path(given)):
        pass
    assert Path(given).resolve().is_dir()
