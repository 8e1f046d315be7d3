"""What an interruption leaves of a show that is being mended: every mend that was tried, whenever it comes."""

import signal

import pytest

from sequencer import kept
from sequencer.errors import InputError
from sequencer.kept import recent, shelf
from sequencer.planning.mending import Mended
from sequencer.tasks import mend
from sequencer.tasks.mend import MendingStopped, mend_show


@pytest.fixture
def file(tmp_path, monkeypatch):
    """A show file whose mends are those said here."""
    path = tmp_path / "show.yaml"
    path.write_text("title: before\n", encoding="utf-8")
    show = type("S", (), {"track": type("T", (), {"file": "a.ogg"})})
    read = type("Read", (), {"show": show, "written": show})
    monkeypatch.setattr(mend.shows, "stage_show", lambda *_, **__: None)
    monkeypatch.setattr(mend.songs, "hear_song", lambda _track: "song")
    monkeypatch.setattr(mend, "show_from_document", lambda _document: read)

    def joined(_text, _file, _song, *, flown, progress, made, most=9):
        return Mended(text="title: joined\n", done=("a join",), left=())

    def spaced(_text, _file, _song, *, flown, progress, made, most=9):
        made(lambda: Mended(text="title: one\n", done=("one",), left=()))
        return Mended(text="title: both\n", done=("one", "two"), left=("three",))

    monkeypatch.setattr(mend, "mended_dance", joined)
    monkeypatch.setattr(mend, "mended_spacing", spaced)
    return path


def test_all_mends_are_written_and_told(file):
    found = mend_show(file)
    assert (found.done, found.left) == (("a join", "one", "two"), ("three",))
    assert file.read_text(encoding="utf-8") == "title: both\n"


def test_what_a_trial_finds_lies_where_a_check_of_the_file_looks(file, monkeypatch):
    def joined(text, *_, **__):
        recent("of a mend", "a key", lambda: 5, most=1, record=int, restore=int)
        return Mended(text=text, done=(), left=())

    monkeypatch.setattr(mend, "mended_dance", joined)
    mend_show(file)
    monkeypatch.setattr(kept, "_RECENT", {})
    with shelf(str(file)):
        assert recent("of a mend", "a key", lambda: 6, most=1, record=int, restore=int) == 5


@pytest.mark.parametrize("after", [False, True])
def test_an_interruption_of_the_last_write_loses_no_mend(file, monkeypatch, after):
    """Before the file is replaced, or after."""
    plain, calls = mend.write_disk_text, []

    def interrupted(path, text):
        calls.append(text)
        if after or len(calls) > 1:
            plain(path, text)
        if len(calls) == 1:
            raise KeyboardInterrupt

    monkeypatch.setattr(mend, "write_disk_text", interrupted)
    with pytest.raises(MendingStopped) as stopped:
        mend_show(file)
    assert stopped.value.mended.done == ("a join", "one", "two")
    assert file.read_text(encoding="utf-8") == "title: both\n"


def test_one_mend_only_where_one_is_asked_for(file):
    found = mend_show(file, one=True)
    assert found.done == ("a join",)
    assert file.read_text(encoding="utf-8") == "title: joined\n"


def test_a_file_saved_meanwhile_is_not_overwritten(file, monkeypatch):
    def spaced(_text, _file, _song, *, flown, progress, made, most=9):
        file.write_text("title: mine\n", encoding="utf-8")
        return Mended(text="title: both\n", done=("one",), left=())

    monkeypatch.setattr(mend, "mended_spacing", spaced)
    with pytest.raises(InputError, match="changed while it was being mended"):
        mend_show(file)
    assert file.read_text(encoding="utf-8") == "title: mine\n"


def test_a_file_saved_before_an_interruption_is_not_overwritten(file, monkeypatch):
    def spaced(_text, _file, _song, *, flown, progress, made, most=9):
        file.write_text("title: mine\n", encoding="utf-8")
        made(lambda: Mended(text="title: one\n", done=("one",), left=()))
        raise KeyboardInterrupt

    monkeypatch.setattr(mend, "mended_spacing", spaced)
    with pytest.raises(InputError, match="your change is kept"):
        mend_show(file)
    assert file.read_text(encoding="utf-8") == "title: mine\n"


@pytest.mark.parametrize("when", ["worked out", "written"])
def test_a_second_interruption_loses_no_mend(file, monkeypatch, when):
    """While the text of the first mend is worked out, which takes long, or while it is written."""
    plain = mend.write_disk_text

    def pressed_again(now):
        if now == when:
            signal.raise_signal(signal.SIGINT)

    def worked_out():
        pressed_again("worked out")
        return Mended(text="title: one\n", done=("one",), left=())

    def written(path, text):
        pressed_again("written")
        plain(path, text)

    def spaced(_text, _file, _song, *, flown, progress, made, most=9):
        made(worked_out)
        raise KeyboardInterrupt

    monkeypatch.setattr(mend, "write_disk_text", written)
    monkeypatch.setattr(mend, "mended_spacing", spaced)
    with pytest.raises(MendingStopped) as stopped:
        mend_show(file)
    assert stopped.value.mended.done == ("a join", "one")
    assert file.read_text(encoding="utf-8") == "title: one\n"


def test_an_interruption_before_the_first_mend_leaves_the_file(file, monkeypatch):
    def joined(_text, _file, _song, *, flown, progress, made, most=9):
        raise KeyboardInterrupt

    monkeypatch.setattr(mend, "mended_dance", joined)
    with pytest.raises(KeyboardInterrupt) as stopped:
        mend_show(file)
    assert not isinstance(stopped.value, MendingStopped)
    assert file.read_text(encoding="utf-8") == "title: before\n"


@pytest.mark.parametrize("flown", [True, False])
def test_a_file_is_mended_as_flown_unless_the_drawing_is_asked_for(file, monkeypatch, flown):
    asked = []

    def none(text, _file, _song, *, flown, progress, made):
        asked.append(flown)
        return Mended(text=text, done=(), left=())

    monkeypatch.setattr(mend, "mended_dance", none)
    monkeypatch.setattr(mend, "mended_spacing", none)
    mend_show(file, **({} if flown else {"flown": False}))
    assert asked == [flown, flown]
