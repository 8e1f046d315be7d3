"""A file that changes while a routine is drafted is left alone."""

from types import SimpleNamespace

import pytest

from sequencer.errors import InputError
from sequencer.planning.drafting import draft_search, drafted_routine
from sequencer.tasks import drafts


@pytest.fixture
def show(tmp_path, monkeypatch):
    path = tmp_path / "s.yaml"
    path.write_text("as it was", encoding="utf-8")
    monkeypatch.setattr("sequencer.show.text.document.parse_document", lambda *_: None)
    monkeypatch.setattr("sequencer.show.reading.show_from_document", lambda _: None)
    monkeypatch.setattr(drafts.songs, "song_of", lambda *_, **__: None)
    return path


def drafting(monkeypatch, path, *, edited, stopped):
    def drafted(text, *_, **__):
        if edited:
            path.write_text("an edit", encoding="utf-8")
        draft = SimpleNamespace(text=text + ", and drafted")
        if stopped:
            raise drafted_routine.DraftingStopped(draft)
        return draft

    monkeypatch.setattr(draft_search, "drafted_show", drafted)


@pytest.mark.parametrize("stopped", [False, True])
def test_an_edit_made_meanwhile_is_kept(show, monkeypatch, stopped):
    drafting(monkeypatch, show, edited=True, stopped=stopped)
    with pytest.raises(InputError, match="changed while") as caught:
        drafts.draft_show(show)
    assert caught.value.code == "changed-meanwhile"
    assert show.read_text(encoding="utf-8") == "an edit"


def test_an_interrupted_draft_is_written(show, monkeypatch):
    drafting(monkeypatch, show, edited=False, stopped=True)
    with pytest.raises(drafted_routine.DraftingStopped):
        drafts.draft_show(show)
    assert show.read_text(encoding="utf-8") == "as it was, and drafted"


def test_a_routine_that_was_checked_stays_when_the_next_is_interrupted(show, monkeypatch):
    before = show.read_text(encoding="utf-8")

    def drafted(*_given, **_named):
        raise drafted_routine.DraftingStopped(SimpleNamespace(text="half"), over_another=True)

    monkeypatch.setattr(draft_search, "drafted_show", drafted)
    with pytest.raises(drafted_routine.DraftingStopped) as caught:
        drafts.draft_show(show)
    assert not caught.value.written
    assert show.read_text(encoding="utf-8") == before


def test_only_shown_is_not_written(show, monkeypatch):
    drafting(monkeypatch, show, edited=True, stopped=False)
    assert drafts.draft_show(show, write=False).text == "as it was, and drafted"
    assert show.read_text(encoding="utf-8") == "an edit"
