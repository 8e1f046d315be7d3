"""Whatever was done is given back: after a crash at any moment, a full disk, a damaged journal, changes from elsewhere."""

import os
import random
import signal
import subprocess
import sys
import time

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.block_operations import PutBlock, StretchBlock
from sequencer.show.operations.heading_operations import ChangeTitles
from sequencer.show.operations.history import History
from sequencer.show.operations.journal import Journal, journal_path
from sequencer.show.operations.operation import apply
from tests.unit.show.operations.duo import SHOW

REST = StretchBlock(at=("timeline", 4), beats=8)
TITLE = ChangeTitles(values={"title": "Late"})
WORKER = """
import sys
from pathlib import Path
from sequencer.show.operations.journal import Journal
from tests.unit.show.operations.test_journal import step
journal = Journal(Path(sys.argv[1]))
print("open", journal.history.revision, flush=True)
while True:
    step(journal.history)
    print(journal.history.revision, flush=True)
    if journal.history.revision % 10 == 0:
        journal.save()
"""


def step(history):
    """One step that follows from the revision alone: mostly forth, at times back."""
    if history.revision % 7 == 6:
        assert history.undo()
    else:
        history.do(StretchBlock(at=("timeline", 4), beats=history.revision + 10))


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "mine.yaml"
    path.write_bytes(SHOW.encode())
    return path


def test_work_that_was_not_saved_is_given_back_with_all_that_can_be_undone(path):
    journal = Journal(path)
    after = journal.history.do(REST)
    journal.history.do(TITLE)
    journal.history.undo()
    again = Journal(path)
    assert again.given_back
    assert not again.saved
    assert (again.history.text, again.history.revision) == (after, 3)
    assert again.history.can_undo == ("stretch to 8 beats",)
    assert again.history.can_redo == ("change title",)
    assert path.read_text() == SHOW


def test_what_is_saved_stands_in_the_file_and_the_journal_goes(path):
    journal = Journal(path)
    after = journal.history.do(REST)
    journal.save()
    assert path.read_bytes().decode() == after
    assert journal.saved
    assert not Journal(path).given_back
    journal.close()
    assert not journal_path(path).exists()
    journal = Journal(path)
    journal.history.do(TITLE)
    journal.close()
    assert Journal(path).history.text == apply(after, TITLE)


def test_a_crash_right_behind_the_writing_of_the_file_is_no_change_from_elsewhere(
    path, monkeypatch
):
    journal = Journal(path)
    after = journal.history.do(REST)
    monkeypatch.setattr(journal, "_keep", lambda _line: None)
    journal.save()
    again = Journal(path)
    assert again.saved
    assert again.outside is None
    assert again.history.text == after


@pytest.mark.parametrize("cut", range(1, 60, 7))
def test_a_line_that_was_cut_off_is_left_out(path, cut):
    journal = Journal(path)
    after = journal.history.do(REST)
    journal.history.do(TITLE)
    whole = journal_path(path).read_bytes()
    journal_path(path).write_bytes(whole[:-cut])
    again = Journal(path)
    assert again.history.text == after
    assert again.history.do(TITLE) == apply(after, TITLE)  # it goes on where it was cut
    assert Journal(path).history.text == apply(after, TITLE)
    assert not list(path.parent.glob("*.damaged"))


def test_what_cannot_be_read_in_the_middle_is_kept_in_a_copy(path):
    journal = Journal(path)
    journal.history.do(REST)
    size = len(journal_path(path).read_bytes())
    journal.history.do(TITLE)
    journal.history.do(PutBlock(into=("timeline",), block={"rest": 2}))
    whole = bytearray(journal_path(path).read_bytes())
    whole[size + 20] ^= 1
    journal_path(path).write_bytes(bytes(whole))
    assert Journal(path).history.text == apply(SHOW, REST)
    (copy,) = path.parent.glob(".mine.yaml.journal.damaged")
    assert copy.read_bytes() == bytes(whole)


def test_what_is_no_journal_is_refused_and_stays(path):
    journal_path(path).write_bytes(b"my notes\n")
    with pytest.raises(InputError, match="this is no journal of a show file; move it elsewhere"):
        Journal(path)
    assert journal_path(path).read_bytes() == b"my notes\n"


def test_a_step_that_cannot_be_kept_is_not_done(path, monkeypatch):
    journal = Journal(path)
    after = journal.history.do(REST)
    real = os.write

    def half(file, line):
        real(file, line[: len(line) // 2])
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "write", half)
    with pytest.raises(InputError, match="the disk is full"):
        journal.history.do(TITLE)
    assert (journal.history.text, journal.history.revision) == (after, 1)
    monkeypatch.undo()
    assert journal.history.do(TITLE) == apply(after, TITLE)
    assert Journal(path).history.text == apply(after, TITLE)


def test_changes_from_elsewhere_are_merged_and_never_overwritten(path):
    journal = Journal(path)
    journal.history.do(REST)
    theirs = SHOW.replace("title: Duo", "title: Late   # theirs")
    path.write_bytes(theirs.encode())
    assert journal.outside == theirs
    with pytest.raises(
        InputError, match=r"mine\.yaml: the file has been changed by something else"
    ):
        journal.save()
    assert path.read_bytes().decode() == theirs
    assert journal.take_in().text == apply(theirs, REST) == journal.history.text
    assert journal.outside is None
    assert Journal(path).history.text == apply(theirs, REST)
    assert Journal(path).outside is None
    journal.save()
    assert path.read_bytes().decode() == apply(theirs, REST)
    assert journal.history.can_undo == ("changed elsewhere", "stretch to 8 beats")


def test_what_clashes_with_changes_from_elsewhere_changes_nothing(path):
    journal = Journal(path)
    after = journal.history.do(REST)
    path.write_bytes(SHOW.replace("{rest: 4}", "{rest: 6}").encode())
    (clash,) = journal.take_in().conflicts
    assert (clash.ours, clash.theirs) == ("8", "6")
    assert journal.history.text == after
    assert journal.outside is not None


def test_line_ends_and_a_byte_order_mark_stay(path):
    path.write_bytes(b"\xef\xbb\xbf" + SHOW.replace("\n", "\r\n").encode())
    journal = Journal(path)
    journal.history.do(REST)
    journal.save()
    assert path.read_bytes() == b"\xef\xbb\xbf" + apply(SHOW, REST).replace("\n", "\r\n").encode()


def killed_again_and_again(path, times, draw, longest):
    """How many steps were done by a process that is killed at random moments; every one that was answered is there."""
    history, texts = History(SHOW), [SHOW]
    for _ in range(times):
        with subprocess.Popen(
            [sys.executable, "-c", WORKER, str(path)], stdout=subprocess.PIPE, text=True
        ) as child:
            answered = int(child.stdout.readline().split()[1])
            time.sleep(draw.uniform(0.0, longest))
            child.send_signal(signal.SIGKILL)
            lines = child.stdout.read().split("\n")[:-1]
            answered = max([answered, *map(int, lines)])
        now = Journal(path).history
        assert now.revision in (answered, answered + 1)  # at most the step under way is more
        while len(texts) <= now.revision:
            step(history)
            texts.append(history.text)
        assert now.text == texts[now.revision]
        assert path.read_bytes().decode() in texts
    return len(texts) - 1


@pytest.mark.skipif(sys.platform == "win32", reason="no SIGKILL there")
def test_killed_at_any_moment_nothing_is_lost(path):
    """Killed at random moments, again and again: every step that was answered is there, with its text."""
    draw = random.Random(1)  # noqa: S311  # no secret
    assert killed_again_and_again(path, 6, draw, 0.3) > 10
