"""The journal: what is in it is on disk, and half a line is no line."""

import errno
import os
import stat
from pathlib import Path

import pytest

from sequencer.desk.file.step_journal import StepJournal, read_journal, text_sum
from sequencer.errors import InputError


def test_lines_come_back_in_their_order(tmp_path):
    journal = StepJournal(tmp_path / "j")
    journal.begin("the text\r\n", {"step": "one"})
    journal.add({"step": "zwei – 火"})
    entries, size, damaged = read_journal(tmp_path / "j")
    assert [entry.get("step") for entry in entries] == [None, "one", "zwei – 火"]
    assert entries[0]["disk"] == "the text\r\n"
    assert (size, damaged) == ((tmp_path / "j").stat().st_size, False)


@pytest.mark.parametrize("cut", range(1, 40))
def test_a_half_written_line_is_left_out_and_written_over(tmp_path, cut):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text", {"step": "one"})
    whole = (tmp_path / "j").read_bytes()
    last = whole.splitlines(keepends=True)[-1]
    cut = min(cut, len(last))
    (tmp_path / "j").write_bytes(whole[: len(whole) - cut])
    entries, size, damaged = read_journal(tmp_path / "j")
    assert (len(entries), damaged) == (1, False)
    again = StepJournal(tmp_path / "j")
    again.go_on(size)
    again.add({"step": "two"})
    assert [entry.get("step") for entry in read_journal(tmp_path / "j")[0]] == [None, "two"]


def test_what_is_no_journal_is_said_to_be_damaged(tmp_path):
    assert read_journal(tmp_path / "none") == ([], 0, False)
    for content in (b"hello\n", b'{"journal": 99}\n', b"[1]\n", b"\x00\xff\n"):
        (tmp_path / "j").write_bytes(content)
        assert read_journal(tmp_path / "j") == ([], 0, True)
    (tmp_path / "j").unlink()
    journal = StepJournal(tmp_path / "j")
    journal.begin("text", {"step": "one"}, {"step": "two"})
    lines = (tmp_path / "j").read_bytes().splitlines(keepends=True)
    (tmp_path / "j").write_bytes(lines[0] + b"garbage\n" + lines[2])
    entries, size, damaged = read_journal(tmp_path / "j")
    assert (len(entries), size, damaged) == (1, len(lines[0]), True)


def test_a_full_disk_is_said_and_what_was_not_written_is_written_with_the_next_line(
    tmp_path, monkeypatch
):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text")
    write = os.write

    def full(handle, content):
        write(handle, bytes(content)[:5])  # half of it arrives
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "write", full)
    with pytest.raises(InputError, match="the disk is full"):
        journal.add({"step": "one"})
    assert len(read_journal(tmp_path / "j")[0]) == 1
    monkeypatch.setattr(os, "write", write)
    journal.add({"step": "two"})
    assert [entry.get("step") for entry in read_journal(tmp_path / "j")[0]] == [None, "one", "two"]


def test_a_line_that_is_nested_without_end_is_damaged(tmp_path):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text", {"step": "one"})
    size = (tmp_path / "j").stat().st_size
    with (tmp_path / "j").open("ab") as more:
        more.write(b"[" * 200_000 + b"\n")
    entries, whole, damaged = read_journal(tmp_path / "j")
    assert (len(entries), whole, damaged) == (2, size, True)


def test_begun_anew_it_is_the_old_one_until_the_new_one_is_whole(tmp_path, monkeypatch):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text", {"step": "one"})
    before = (tmp_path / "j").read_bytes()

    def full(_path, content):
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(Path, "write_bytes", full)
        with pytest.raises(InputError, match="the disk is full"):
            journal.begin("another text")
    assert (tmp_path / "j").read_bytes() == before
    assert [each.name for each in tmp_path.iterdir()] == ["j"]
    journal.add({"step": "two"})
    first, second = read_journal(tmp_path / "j")[0]
    assert (first["disk"], second["step"]) == ("another text", "two")
    if os.name == "posix":
        assert stat.S_IMODE((tmp_path / "j").stat().st_mode) == 0o600


def test_no_line_is_put_behind_others_that_are_gone_or_have_a_second_name(tmp_path):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text", {"step": "one"})
    assert journal.stands
    os.link(tmp_path / "j", tmp_path / "backup")
    before = (tmp_path / "backup").read_bytes()
    assert not journal.stands
    with pytest.raises(InputError, match="left alone"):
        journal.add({"step": "two"})
    assert (tmp_path / "backup").read_bytes() == before
    journal.begin("text")
    assert journal.stands
    assert (tmp_path / "backup").read_bytes() == before
    (tmp_path / "j").unlink()
    assert not journal.stands
    with pytest.raises(InputError, match="cannot write"):
        journal.add({"step": "two"})
    (tmp_path / "j").write_bytes(before[:5])
    assert not journal.stands


def test_a_text_is_known_by_its_sum():
    assert text_sum("a") != text_sum("b")
    assert text_sum("\ud800")


def test_what_was_half_written_is_gone_even_where_the_next_line_is_shorter(tmp_path):
    journal = StepJournal(tmp_path / "j")
    journal.begin("text")
    size = (tmp_path / "j").stat().st_size
    with (tmp_path / "j").open("ab") as more:
        more.write(b'{"step":"' + b"x" * 500)
    journal.add({"step": "one"})
    entries, whole, damaged = read_journal(tmp_path / "j")
    assert ([one.get("step") for one in entries], damaged) == ([None, "one"], False)
    assert size < whole == (tmp_path / "j").stat().st_size
