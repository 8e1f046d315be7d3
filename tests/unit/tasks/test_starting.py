"""What `new` says of the routine that it drafts."""

from types import SimpleNamespace

import pytest
from click.testing import CliRunner

from sequencer.cli.new import new
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.drafting import draft_search
from sequencer.tasks import songs
from tests.songs import even_song

UNFLOWN = Finding(
    code="strained-as-flown", severity="warn", who=("Ash",), message="too hard", position="9.1",
    start=1.0, end=1.0,
)  # fmt: skip


def begun(monkeypatch, tmp_path, drafted):
    monkeypatch.setattr(songs, "hear_song", lambda *_g, **_k: even_song(64))
    monkeypatch.setattr(draft_search, "drafted_show", drafted)
    return CliRunner().invoke(
        new, [str(tmp_path / "mine.yaml"), "--track", str(tmp_path / "song.ogg")]
    )


@pytest.mark.parametrize("holds", [True, False])
def test_a_new_show_says_what_its_draft_leaves_open_and_what_of_it_does_not_fly(
    monkeypatch, tmp_path, holds
):
    said = {"unmet": ("a stop",), "left_open": ("0:10 to 0:15: quick",), "unflown": (UNFLOWN,)}
    short = said if holds else dict.fromkeys(said, ())
    run = begun(monkeypatch, tmp_path, lambda text, *_g, **_k: SimpleNamespace(text=text, **short))
    assert run.exit_code == 0
    lines = run.stderr.splitlines()
    wanted = [
        "left out: a stop",
        "left open: 0:10 to 0:15: quick",
        "cannot be flown yet (9.1): too hard",
    ]
    assert [each for each in wanted if each in lines] == (wanted if holds else [])
    assert "easy pattern" not in run.stderr
    assert "wrote " in run.stdout


def test_a_new_show_without_a_draft_says_why_and_what_is_in_it(monkeypatch, tmp_path):
    def none(*_g, **_k):
        raise InputError("no-beat", None, "no beat was heard", "tap along")

    run = begun(monkeypatch, tmp_path, none)
    assert run.exit_code == 0
    assert (
        "no routine could be drafted: no beat was heard; tap along; one easy pattern is laid into each section instead"
        in run.stderr.splitlines()
    )
    assert "pattern: " in (tmp_path / "mine.yaml").read_text(encoding="utf-8")
