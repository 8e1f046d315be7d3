"""What lies beside a stranger's show under the names that the desk uses itself: it is never followed, read, written or taken away."""

import os
import sys

import pytest

from sequencer.desk.file import opened_file
from sequencer.desk.file.file_on_disk import Hold
from sequencer.desk.file.kept_draft import KeptDraft
from sequencer.desk.file.kept_switch import KeptSwitch
from sequencer.desk.file.last_switch import LastSwitch
from sequencer.desk.file.opened_file import OpenedFile
from sequencer.desk.file.plain_file import ForeignFileError, plain_handle
from sequencer.desk.file.step_journal import StepJournal, read_journal
from sequencer.errors import InputError

posix = pytest.mark.skipif(sys.platform == "win32", reason="links and pipes of POSIX systems")
PRECIOUS = "what somebody wrote\n"
GIVEN = {"section": None, "span": None, "another": False, "seed": 0, "base": "a: 1\n"}


def use_switch(place):
    kept = KeptSwitch(place)
    assert kept.found() is None
    kept.keep(LastSwitch(before="a", after="b", tonight={}, revision=1, report_before=None))
    kept.forget()


def use_draft(place):
    kept = KeptDraft(place)
    assert kept.offered() is None
    kept.keep(GIVEN, {"text": "a: 2\n"})
    kept.forget()


def use_journal(place):
    assert read_journal(place)[0] == []
    journal = StepJournal(place)
    with pytest.raises(InputError, match="something else has this name, and is left alone"):
        journal.begin("text")
    with pytest.raises(InputError, match="left alone"):
        journal.add({"step": "one"})
    journal.remove()


def use_hold(place):
    with pytest.raises(InputError, match="something else has its name"):
        Hold(place, place.with_name("mine.yaml"))


USES = (use_switch, use_draft, use_journal, use_hold)


@pytest.fixture
def place(tmp_path):
    (tmp_path / "shows").mkdir()
    (tmp_path / "precious.txt").write_text(PRECIOUS, encoding="utf-8")
    return tmp_path / "shows" / ".mine.yaml.kept"


@pytest.mark.parametrize("use", USES)
@pytest.mark.parametrize(
    "kind", [pytest.param("link", marks=posix), "second name", "notes", "numbers"]
)
def test_a_file_of_somebody_else_stays_as_it_is(place, use, kind):
    precious = place.parent.parent / "precious.txt"
    if kind == "link":
        place.symlink_to("../precious.txt")
    elif kind == "second name":
        os.link(precious, place)
    else:
        place.write_text(PRECIOUS if kind == "notes" else '{"journals": 3}\n', encoding="utf-8")
    before, number = place.read_bytes(), place.lstat().st_ino
    use(place)
    assert (place.read_bytes(), place.lstat().st_ino) == (before, number)
    assert place.is_symlink() is (kind == "link")
    assert precious.read_text(encoding="utf-8") == PRECIOUS
    assert [each.name for each in place.parent.iterdir()] == [place.name]


@posix
@pytest.mark.parametrize("use", USES)
def test_a_link_is_not_followed_even_to_a_file_that_was_written_here(place, use):
    real = place.parent.parent / ".other.yaml.kept"
    if use is use_hold:
        real.write_text('{"process": 1, "since": "20:00"}', encoding="utf-8")
    else:
        StepJournal(real).begin("text", {"step": "one"})
    before = real.read_bytes()
    place.symlink_to(real)
    use(place)
    assert place.is_symlink()
    assert real.read_bytes() == before


@posix
@pytest.mark.parametrize("use", USES)
@pytest.mark.parametrize("kind", ["nowhere", "pipe", "folder"])
def test_what_is_no_file_stays_as_it_is(place, use, kind):
    if kind == "nowhere":
        place.symlink_to("../new.txt")
    elif kind == "pipe":
        os.mkfifo(place)
    else:
        place.mkdir()
    before = place.lstat()
    use(place)
    assert os.path.samestat(place.lstat(), before)
    assert sorted(each.name for each in place.parent.parent.iterdir()) == ["precious.txt", "shows"]


@posix
def test_a_link_that_comes_once_it_was_looked_at_is_not_followed(place, monkeypatch):
    place.symlink_to("../precious.txt")
    monkeypatch.setattr(type(place), "lstat", type(place).stat)  # as if it was a file just before
    with pytest.raises(ForeignFileError):
        plain_handle(place, os.O_RDWR)


def test_the_journal_lies_in_the_cache_where_something_else_has_its_name(tmp_path, monkeypatch):
    (tmp_path / "cache").mkdir()
    monkeypatch.setattr(
        opened_file, "cache_place", lambda path, kind: tmp_path / "cache" / f"{path.name}.{kind}"
    )
    path = tmp_path / "mine.yaml"
    path.write_text("title: One\n", encoding="utf-8")
    (tmp_path / ".mine.yaml.journal").write_text(PRECIOUS, encoding="utf-8")
    opened = OpenedFile(path)
    opened.take("title: Two\n", "work")
    opened.take("title: Three\n", "work")
    assert (opened.kept_where, opened.trouble) == ("cache", None)
    opened._hold.let_go()  # as if it was killed
    again = OpenedFile(path)
    assert again.text == "title: Three\n"
    again._hold.let_go()
    assert (tmp_path / ".mine.yaml.journal").read_text(encoding="utf-8") == PRECIOUS


@posix
def test_a_journal_whose_place_a_link_takes_meanwhile_goes_on_in_the_cache(tmp_path, monkeypatch):
    (tmp_path / "cache").mkdir()
    monkeypatch.setattr(
        opened_file, "cache_place", lambda path, kind: tmp_path / "cache" / f"{path.name}.{kind}"
    )
    path = tmp_path / "mine.yaml"
    path.write_text("title: One\n", encoding="utf-8")
    (tmp_path / "precious.txt").write_text(PRECIOUS, encoding="utf-8")
    opened = OpenedFile(path)
    opened.take("title: Two\n", "work")
    journal = tmp_path / ".mine.yaml.journal"
    journal.unlink()
    opened.take("title: Three\n", "work")
    assert opened.kept_where == "beside"  # begun anew: nothing is put behind lines that are gone
    assert not read_journal(journal)[2]
    journal.unlink()
    journal.symlink_to("precious.txt")
    opened.take("title: Four\n", "work")
    assert (opened.kept_where, opened.trouble) == ("cache", None)
    assert (tmp_path / "precious.txt").read_text(encoding="utf-8") == PRECIOUS
    opened._hold.let_go()
    again = OpenedFile(path)
    assert again.text == "title: Four\n"
    again._hold.let_go()
