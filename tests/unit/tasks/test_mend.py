"""What an interruption leaves of a show that is being mended: every mend that was tried, whenever it comes."""

import pytest

from sequencer.planning.mending import Mended
from sequencer.tasks import mend
from sequencer.tasks.mend import MendingStopped, mend_show


@pytest.fixture
def file(tmp_path, monkeypatch):
    """A show file whose mends are those said here."""
    path = tmp_path / "show.yaml"
    path.write_text("title: before\n", encoding="utf-8")
    read = type("Read", (), {"show": type("S", (), {"track": type("T", (), {"file": "a.ogg"})})})
    monkeypatch.setattr(mend.shows, "stage_show", lambda *_, **__: None)
    monkeypatch.setattr(mend.shows, "hear_song", lambda _track: "song")
    monkeypatch.setattr(mend, "show_from_document", lambda _document: read)

    def joined(_text, _file, _song, *, progress, made):
        return Mended(text="title: joined\n", done=("a join",), left=())

    def spaced(_text, _file, _song, *, progress, made):
        made(Mended(text="title: one\n", done=("one",), left=()))
        return Mended(text="title: both\n", done=("one", "two"), left=("three",))

    monkeypatch.setattr(mend, "mended_dance", joined)
    monkeypatch.setattr(mend, "mended_spacing", spaced)
    return path


def test_all_mends_are_written_and_told(file):
    found = mend_show(file)
    assert (found.done, found.left) == (("a join", "one", "two"), ("three",))
    assert file.read_text(encoding="utf-8") == "title: both\n"


@pytest.mark.parametrize("after", [False, True])
def test_an_interruption_of_the_last_write_loses_no_mend(file, monkeypatch, after):
    """Before the file is replaced, or after."""
    plain, calls = mend.write_text, []

    def interrupted(path, text):
        calls.append(text)
        if after or len(calls) > 1:
            plain(path, text)
        if len(calls) == 1:
            raise KeyboardInterrupt

    monkeypatch.setattr(mend, "write_text", interrupted)
    with pytest.raises(MendingStopped) as stopped:
        mend_show(file)
    assert stopped.value.mended.done == ("a join", "one", "two")
    assert file.read_text(encoding="utf-8") == "title: both\n"
