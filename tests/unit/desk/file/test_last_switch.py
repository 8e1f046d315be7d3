"""The last switch of who is there: by whichever way it came, from the last show that was looked at."""

import os
import stat

import pytest

from sequencer.desk.file.kept_switch import KeptSwitch
from sequencer.desk.file.last_switch import LastSwitch, SwitchMemory

AWAY = {"away": ["Birch"]}


def report(word):
    return {"findings": [word], "unseen": []}


def test_a_switch_is_noticed_with_what_was_found_before_and_after():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "other title", None, report("all"))
    assert memory.last is None
    memory.take(2, "away", AWAY, report("other title"))
    assert (memory.last.before, memory.last.after, memory.last.revision) == ("other title", "away", 2)  # fmt: skip
    assert memory.last.report_before == report("other title")
    assert memory.last.report_after is None
    memory.checked(report("away"))
    memory.checked(report("too late"))
    assert memory.last.report_after == report("away")


def test_what_was_found_is_kept_once_something_else_is_changed_and_never_of_another_text():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "away", AWAY, report("all"))
    memory.take(2, "more", AWAY, report("away"))
    assert memory.last.report_after == report("away")

    memory.take(3, "all again", None, None)
    memory.take(4, "another title", None, None)
    memory.checked(report("another title"))
    assert memory.last.report_after is None


def test_two_switches_that_the_checks_had_no_time_for_are_one():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "Birch away", AWAY, report("all"))
    memory.take(2, "both away", {"away": ["Birch", "Cedar"]}, None)
    assert (memory.last.before, memory.last.after, memory.last.revision) == ("all", "both away", 2)
    assert memory.last.report_before == report("all")

    memory.take(3, "Cedar away", {"away": ["Cedar"]}, report("both away"))
    assert (memory.last.before, memory.last.report_before) == ("both away", report("both away"))


def test_an_empty_heading_is_nobody():
    memory = SwitchMemory()
    memory.take(0, "all", None, None)
    memory.take(1, "empty", {}, None)
    assert memory.last is None


def test_of_a_show_in_which_somebody_is_away_from_the_beginning_the_switch_is_from_everybody():
    memory = SwitchMemory(None, lambda text: f"everybody of {text}")
    memory.take(1, "away", AWAY, None)
    assert memory.last == LastSwitch(
        before="everybody of away", after="away", tonight=AWAY, revision=1, report_before=None
    )
    memory.checked(report("away"))
    assert memory.last.report_after == report("away")

    nobody_away = SwitchMemory(None, lambda text: f"everybody of {text}")
    nobody_away.take(1, "all", None, None)
    assert nobody_away.last is None
    no_show = SwitchMemory(None)
    no_show.take(1, "away", AWAY, None)
    assert no_show.last is None


KEPT = LastSwitch(
    before="all", after="away", tonight=AWAY, revision=7, report_before=report("all"), report_after=report("away")
)  # fmt: skip


@pytest.fixture
def kept(tmp_path):
    return KeptSwitch(tmp_path / ".mine.yaml.switch")


def again(kept, text, tonight):
    """What a memory knows once the show is opened again."""
    memory = SwitchMemory(kept.found(), lambda text: f"everybody of {text}")
    memory.take(1, text, tonight, None)
    return memory.last


def test_the_switch_that_was_kept_is_known_when_the_show_is_opened_again(kept, tmp_path):
    kept.keep(KEPT)
    (path,) = tmp_path.iterdir()
    if os.name == "posix":
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
    last = again(kept, "away", AWAY)
    assert (last.before, last.after, last.revision) == ("all", "away", 1)
    assert (last.report_before, last.report_after) == (report("all"), report("away"))
    changed = again(kept, "away, with another title", AWAY)
    assert (changed.after, changed.revision) == ("away", 0)  # the show has been changed since
    other = again(kept, "another one away", {"away": ["Cedar"]})
    assert (other.before, other.after) == ("everybody of another one away", "another one away")
    assert again(kept, "all", None) is None
    kept.forget()
    assert list(tmp_path.iterdir()) == []


def test_a_switch_that_the_checks_had_not_looked_at_is_looked_at_when_the_show_is_opened_again(
    kept,
):
    kept.keep(LastSwitch(before="all", after="away", tonight=AWAY, revision=7, report_before=None))
    memory = SwitchMemory(kept.found())
    memory.take(1, "away", AWAY, None)
    memory.checked(report("away"))
    assert (memory.last.report_before, memory.last.report_after) == (None, report("away"))


@pytest.mark.parametrize(
    "spoil", ["half", "letters", "a person", "a finding", "another file", "nested without end"]
)
def test_a_switch_that_is_not_whole_is_none(kept, tmp_path, spoil):
    kept.keep(KEPT)
    (path,) = tmp_path.iterdir()
    content = path.read_bytes()
    first, _line = content.splitlines(keepends=True)
    spoilt = {
        "half": content[: len(content) // 2],
        "letters": content.replace(b"away", b"awry"),
        "a person": content.replace(b"Birch", b"Cedar"),
        "a finding": content.replace(b'["all"]', b'["none"]'),
        "another file": b"title: x\n",
        "nested without end": first + b"[" * 200_000 + b"\n",
    }
    assert spoilt[spoil] != content
    path.write_bytes(spoilt[spoil])
    assert kept.found() is None
    path.unlink()
    assert kept.found() is None
