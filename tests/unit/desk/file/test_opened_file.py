"""An open show file: its journal, what a crash leaves, and others who change it."""

import random
import shutil

import pytest

from sequencer.desk.file import opened_file
from sequencer.desk.file.opened_file import OpenedFile
from sequencer.errors import InputError

SHOW = """\
title: Two   # a comment
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 4}
"""


@pytest.fixture
def path(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    path = tmp_path / "folder" / "s.yaml"
    path.parent.mkdir()
    path.write_text(SHOW, encoding="utf-8")
    return path


_OPENED = []


@pytest.fixture(autouse=True)
def _let_go():
    yield
    while _OPENED:
        crashed(_OPENED.pop())


def open_at(path):
    _OPENED.append(OpenedFile(path))
    return _OPENED[-1]


def titled(opened, title, revision=None):
    planned = opened.planned(
        {"do": "change-titles", "values": {"title": title}}, revision or opened.revision
    )
    opened.take(*planned)


def crashed(opened):
    """The process has died: its hold is gone, and nothing else was done."""
    opened._hold._file.close()


def test_nothing_lies_beside_a_show_that_was_only_looked_at(path):
    opened = open_at(path)
    assert (opened.text, opened.saved, opened.recovered) == (SHOW, True, None)
    opened.close()
    assert [one.name for one in path.parent.iterdir()] == ["s.yaml"]


def test_after_a_crash_everything_is_there_with_the_way_back(path):
    opened = open_at(path)
    for title in ("A", "B", "C"):
        titled(opened, title)
    opened.undo()
    opened.undo()
    opened.redo()
    text = opened.text
    crashed(opened)
    again = open_at(path)
    assert again.text == text
    assert "came back" in again.recovered
    assert not again.saved
    assert path.read_text(encoding="utf-8") == SHOW
    again.redo()
    assert "title: C" in again.text
    for _ in range(3):
        again.undo()
    assert again.text == SHOW
    with pytest.raises(InputError, match="nothing to undo"):
        again.undo()
    again.close()
    assert [one.name for one in path.parent.iterdir()] == ["s.yaml"]


def test_a_journal_cut_anywhere_gives_back_all_whole_steps(path):
    opened = open_at(path)
    texts = [opened.text]
    for k in range(12):
        titled(opened, f"Title {k}")
        texts.append(opened.text)
    crashed(opened)
    journal = path.with_name(".s.yaml.journal")
    content = journal.read_bytes()
    lines = content.splitlines(keepends=True)
    draw = random.Random(1)  # noqa: S311
    for _ in range(20):
        cut = draw.randrange(len(lines[0]), len(content) + 1)
        journal.write_bytes(content[:cut])
        again = open_at(path)
        whole = content[:cut].count(b"\n") - 1
        assert again.text == texts[whole]
        titled(again, "More")  # what is done next is kept behind them
        crashed(again)
        last = open_at(path)
        assert "title: More" in last.text
        last.undo()
        assert last.text == texts[whole]
        crashed(last)


def test_a_damaged_journal_is_kept_and_what_can_be_read_of_it_comes_back(path):
    opened = open_at(path)
    titled(opened, "A")
    titled(opened, "B")
    crashed(opened)
    journal = path.with_name(".s.yaml.journal")
    lines = journal.read_bytes().splitlines(keepends=True)
    journal.write_bytes(lines[0] + lines[1] + lines[2].replace(b"B", b"X"))
    again = open_at(path)
    assert "title: A" in again.text
    assert "part of its journal could not be read" in again.recovered
    damaged = path.with_name(".s.yaml.journal-damaged")
    kept = damaged.read_bytes()
    titled(again, "C")
    crashed(again)
    last = open_at(path)
    assert "title: C" in last.text
    crashed(last)
    with journal.open("ab") as more:
        more.write(b"no step\n")
    assert "title: C" in open_at(path).text
    assert damaged.read_bytes() == kept  # what was kept before stays
    assert path.with_name(".s.yaml.journal-damaged-2").exists()


@pytest.mark.parametrize(
    "line",
    [b'{"step":"x","at":Infinity,"out":0,"in":"","sum":"","time":""}', b"[" * 200_000],
    ids=["a place that is none", "nested without end"],
)
def test_a_line_that_nobody_wrote_here_is_damaged(path, line):
    opened = open_at(path)
    titled(opened, "A")
    crashed(opened)
    with path.with_name(".s.yaml.journal").open("ab") as more:
        more.write(line + b"\n")
    again = open_at(path)
    assert "title: A" in again.text
    assert "part of its journal could not be read" in again.recovered


def test_what_was_saved_is_not_told_as_lost_after_a_crash(path):
    opened = open_at(path)
    titled(opened, "A")
    opened.save()
    crashed(opened)
    again = open_at(path)
    assert (again.saved, again.recovered) == (True, None)
    again.undo()
    assert again.text == SHOW


def test_the_file_changed_while_nobody_had_it_open_is_brought_together_with_the_journal(path):
    opened = open_at(path)
    titled(opened, "A")
    crashed(opened)
    path.write_text(SHOW.replace("beats: 4", "beats: 8"), encoding="utf-8")
    again = open_at(path)
    assert "title: A" in again.text
    assert "beats: 8" in again.text
    crashed(again)
    path.write_text(SHOW.replace("Two", "Three"), encoding="utf-8")
    third = open_at(path)
    assert "title: A" in third.text
    assert "title: Three" in third.outside.text


def test_comments_line_ends_and_the_byte_order_mark_stay(path):
    content = b"\xef\xbb\xbf" + SHOW.replace("\n", "\r\n").encode()
    path.write_bytes(content)
    opened = open_at(path)
    titled(opened, "A")
    opened.save()
    assert path.read_bytes() == content.replace(b"title: Two", b"title: A")
    opened.take(*opened.planned({"do": "replace-text", "text": SHOW}, opened.revision))
    opened.save()
    assert path.read_bytes() == content


def test_a_link_stays_a_link(path, tmp_path):
    link = tmp_path / "link.yaml"
    link.symlink_to(path)
    opened = open_at(link)
    titled(opened, "A")
    opened.save()
    assert link.is_symlink()
    assert "title: A" in path.read_text(encoding="utf-8")


def test_an_operation_on_an_old_revision_is_brought_together_or_refused(path):
    opened = open_at(path)
    titled(opened, "A")
    change = {"do": "change-person", "group": "cast", "name": "Ash", "values": {"stature": 1.6}}
    opened.take(*opened.planned(change, 1))
    assert "title: A" in opened.text
    assert "stature: 1.6" in opened.text
    with pytest.raises(InputError, match="changed meanwhile"):
        titled(opened, "B", revision=1)
    with pytest.raises(InputError, match="too long ago"):
        titled(opened, "B", revision=77)
    # each is a show by itself, and both together are none: the phrase is gone that the other uses
    opened.take(*opened.planned({"do": "replace-text", "text": SHOW + "phrases:\n  p: [{rest: 2}]\n"}, opened.revision))  # fmt: skip
    before = opened.revision
    used = opened.text.replace("pattern: two-beat-weave, beats: 4", "phrase: p")
    opened.take(*opened.planned({"do": "replace-text", "text": used}, before))
    with pytest.raises(InputError, match="they do not go together"):
        opened.planned({"do": "delete-phrase", "name": "p"}, before)


def test_a_change_outside_that_is_no_show_is_not_mixed_into_what_was_done_here(path):
    opened = open_at(path)
    path.write_text(SHOW.replace("cast:", "casting:"), encoding="utf-8")
    opened.look()
    assert not opened.read.is_show  # nothing was done here: it is shown as it is
    opened.undo()
    titled(opened, "A")
    path.write_text(SHOW.replace("timeline:", "timelines:"), encoding="utf-8")
    assert "both are kept" in opened.look()
    assert "title: A" in opened.text
    opened.settle("theirs")
    assert "timelines:" in opened.text
    opened.undo()
    assert "title: A" in opened.text


def test_settling_keeps_each_text_one_step_back(path):
    opened = open_at(path)
    titled(opened, "A")
    path.write_text(SHOW.replace("Two", "Three"), encoding="utf-8")
    opened.look()
    with pytest.raises(InputError, match="changed outside"):
        opened.save()
    opened.settle("text", SHOW.replace("Two", "Four"))
    assert "title: Four" in opened.text
    opened.undo()
    assert "title: Three" in opened.text
    opened.undo()
    assert "title: A" in opened.text
    with pytest.raises(InputError, match="not changed outside"):
        opened.settle("mine")
    opened.save()
    assert "title: A" in path.read_text(encoding="utf-8")


def test_a_file_that_was_taken_away_is_written_again(path):
    opened = open_at(path)
    path.unlink()
    assert "gone" in opened.look()
    assert not opened.saved
    titled(opened, "A")
    crashed(opened)
    again = open_at(path)  # the journal has it
    assert "title: A" in again.text
    again.save()
    assert "title: A" in path.read_text(encoding="utf-8")


def test_saving_at_once(path):
    opened = open_at(path)
    opened.autosave = True
    titled(opened, "A")
    assert "title: A" in path.read_text(encoding="utf-8")
    assert opened.saved
    opened.undo()
    assert path.read_text(encoding="utf-8") == SHOW


def test_where_nothing_can_be_put_beside_it_the_journal_lies_in_the_cache(path, monkeypatch):
    monkeypatch.setattr(opened_file, "can_write_beside", lambda _path: False)
    opened = open_at(path)
    titled(opened, "A")
    assert opened.kept_where == "cache"
    with pytest.raises(InputError, match="open already"):
        open_at(path)
    crashed(opened)
    assert [one.name for one in path.parent.iterdir()] == ["s.yaml"]
    assert "title: A" in open_at(path).text


def test_a_folder_that_becomes_unwritable_or_full_loses_nothing(path, monkeypatch):
    opened = open_at(path)
    titled(opened, "A")
    shutil.rmtree(path.parent)
    path.parent.write_text("a file where the folder was", encoding="utf-8")
    titled(opened, "B")
    assert (opened.kept_where, opened.trouble) == ("cache", None)
    with pytest.raises(InputError, match="nothing is lost"):
        opened.save()
    path.parent.unlink()
    path.parent.mkdir()
    path.write_text(SHOW, encoding="utf-8")
    crashed(opened)
    again = open_at(path)
    assert "title: B" in again.text

    def full(_path):
        raise InputError(
            "cannot-write", opened_file.Place("x"), "cannot write this file: the disk is full", ""
        )

    again._journal.path.unlink()
    again._journal.path.mkdir()  # nothing can be written there
    monkeypatch.setattr(opened_file, "cache_place", lambda *_: path / "no" / "such")
    titled(again, "C")
    assert again.kept_where == "memory"
    assert "lost if this ends" in again.trouble
    again._journal.path.rmdir()
    titled(again, "D")
    assert again.trouble is None


def test_saving_looks_at_the_file_first_and_overwrites_nothing_unseen(path):
    opened = open_at(path)
    titled(opened, "A")
    theirs = SHOW.replace("Two", "Three")
    path.write_text(theirs, encoding="utf-8")
    with pytest.raises(InputError, match="changed outside"):
        opened.save()
    assert path.read_text(encoding="utf-8") == theirs
    opened.settle("theirs")
    titled(opened, "B")
    path.write_text(theirs.replace("beats: 4", "beats: 8"), encoding="utf-8")
    opened.save()
    said = path.read_text(encoding="utf-8")
    assert "title: B" in said
    assert "beats: 8" in said


def test_a_show_that_is_not_there_yet_is_begun_saved_and_never_undone_to_nothing(path):
    path.unlink()
    with pytest.raises(InputError, match="file not found"):
        OpenedFile(path)
    opened = OpenedFile(path, new=True)
    assert (opened.text, opened.saved, opened.read.is_show) == ("", True, False)
    assert opened.look() is None
    opened.take(opened.together("", SHOW), "begin")
    assert not opened.saved
    opened.save()
    assert path.read_text(encoding="utf-8") == SHOW
    titled(opened, "One")
    opened.undo()
    assert opened.to_undo is None
    with pytest.raises(InputError, match="nothing to undo"):
        opened.undo()
    assert (opened.text, opened.saved) == (SHOW, True)
    opened.redo()
    opened.undo()
    opened.take("", "all of it taken out")  # that is a step like any other
    opened.undo()
    opened.close()
    assert [one.name for one in path.parent.iterdir()] == ["s.yaml"]


def test_one_that_was_begun_and_not_saved_is_there_again_after_a_crash(path):
    path.unlink()
    opened = OpenedFile(path, new=True)
    opened.take(SHOW, "begin")
    crashed(opened)
    again = OpenedFile(path, new=True)
    assert (again.text, again.saved) == (SHOW, False)
    again.save()
    again.close()
    assert path.read_text(encoding="utf-8") == SHOW


def test_killed_as_a_save_was_done_and_again_later_it_knows_what_it_had_saved(path):
    """The file was replaced, the journal not told: what is done after that is no change against somebody else's."""
    opened = open_at(path)
    titled(opened, "One")
    said = opened.text
    crashed(opened)
    path.write_text(said, encoding="utf-8", newline="")
    again = open_at(path)
    assert again.recovered is None  # the file says all of it
    titled(again, "Another")
    crashed(again)
    last = open_at(path)
    assert last.outside is None
    last.save()
    assert path.read_text(encoding="utf-8") == last.text
    assert "Another" in last.text
