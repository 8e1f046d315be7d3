"""A draft that is offered, on disk until it is put in or given up."""

import os
import stat

import pytest

from sequencer.desk.file.kept_draft import KeptDraft

GIVEN = {
    "section": "verse",
    "span": None,
    "another": False,
    "seed": 3,
    "base": "a: 1\n",
    "text": "a: 1\n",
    "path": "x",
}
RESULT = {"text": "a: 2\n", "rows": [], "checked": True}


@pytest.fixture
def kept(tmp_path):
    return KeptDraft(tmp_path / ".mine.yaml.draft")


def test_what_was_kept_is_offered_again_to_the_text_that_it_is_for(kept, tmp_path):
    kept.keep(GIVEN, RESULT)
    (path,) = tmp_path.iterdir()
    if os.name == "posix":
        assert (
            stat.S_IMODE(path.stat().st_mode) == 0o600
        )  # whoever may not read the show may not read this
    again = KeptDraft(path).offered()
    assert again.result == RESULT
    assert again.given == {
        "section": "verse",
        "span": None,
        "another": False,
        "seed": 3,
        "base": "a: 1\n",
    }
    kept.forget()
    assert list(tmp_path.iterdir()) == []
    assert kept.offered() is None


@pytest.mark.parametrize("spoil", ["half", "letters", "letters of the show", "nested without end"])
def test_what_is_not_whole_is_taken_away(kept, tmp_path, spoil):
    kept.keep(GIVEN, RESULT)
    (path,) = tmp_path.iterdir()
    content = path.read_bytes()
    if spoil == "half":
        path.write_bytes(content[: len(content) // 2])
    elif spoil == "letters":
        path.write_bytes(content.replace(b"a: 2", b"a: 3"))
    elif spoil == "letters of the show":
        path.write_bytes(content.replace(b"a: 1", b"a: 0"))
    elif spoil == "nested without end":
        path.write_bytes(content.splitlines(keepends=True)[0] + b"[" * 200_000 + b"\n")
    assert kept.offered() is None
    assert list(tmp_path.iterdir()) == []


def test_where_nothing_can_be_written_it_is_only_on_the_page(tmp_path):
    kept = KeptDraft(tmp_path / "missing" / ".mine.yaml.draft")
    kept.keep(GIVEN, RESULT)
    assert kept.offered() is None
