"""One check of a show: what it found lies on the shelf for a show whose parts are the same, and for no other.

Reference: the check run again.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from sequencer import kept, plugins
from sequencer.checks.check import Check
from sequencer.checks.outcome import (
    Mendable,
    Outcome,
    outcome_record,
    restored_outcome,
)
from sequencer.findings import Clearance, Danced, Finding
from sequencer.planning.trying.restaging import restaged
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.next_process import next_process
from tests.songs import even_song

SHOW = """\
title: Alone
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 14 m, depth: 9 m}, audience: [{line: [[-7, -9], [7, -9]]}]}
cast: [{name: Ash, stature: 1.7, prop: {tether: 0.45}}]
formations: {in: {spots: {Ash: {at: [0, 4]}}}}
staging: [{formation: in, from: 1.1}]
timeline: [{who: Ash, from: 2.1, pattern: extension, cycle: 2, beats: 4}]
rules: {file: [house.yaml]}
"""
FOUND = Outcome(
    findings=(
        Finding(
            code="late", severity="warn", who=("Ash",), start=0.1 + 0.2, end=None, position="2.1",
            message="too late", remedies=("sooner", "not at all"), source="this show", where=(0.1, 4.0),
        ),
    ),
    clearances=(
        Clearance(
            between=("Ash", "the post"), distance=1 / 3, required=0.5, at=1.5, position="1.1",
            parts=("left head", "post"), error=0.005, where=None,
        ),
    ),
    not_checked=("Whether it rains was not checked.",),
)  # fmt: skip
DANCED = Danced(
    runs=1, seed=0, required=1.0, confidence=0.9, spread={}, chances=(), pairs=0, clear=0, clear_high=0.0
)  # fmt: skip


@pytest.fixture
def show(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path / "cache"))
    monkeypatch.setattr(plugins, "entries", lambda _group: [])
    (tmp_path / "house.yaml").write_text("rules: []", encoding="utf-8")
    document = parse_document(SHOW, str(tmp_path / "show.yaml"))
    return staged(show_from_document(document), even_song(24))


class Run:
    """What a check finds, and how often it was asked."""

    def __init__(self, outcome=FOUND):
        self.outcome, self.calls = outcome, 0

    def __call__(self, _show):
        self.calls += 1
        return self.outcome


def ask(run, show, *, depends_on=("crew", "venue"), name="late"):
    """The outcome in a process of its own, with a shelf."""
    check = Check(name=name, run=run, codes={"late": ("warn",)}, depends_on=depends_on)
    fresh = replace(show)
    with next_process(), kept.shelf("show.yaml"):
        return check.outcome(fresh)


def test_the_next_process_finds_the_outcome_of_a_show_whose_parts_are_the_same(show):
    run = Run()
    other = restaged(show, [(("timeline", 0, "shift"), 1)])
    assert ask(run, show) == ask(run, other) == ask(run, show) == FOUND
    assert run.calls == 1


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("venue", "stage", "width"), "13 m"),
        (("crew",), [{"name": "Ivy", "post": [-8, 6], "duty": "spotter"}]),
        (("title",), "Other"),
    ],
)
def test_a_show_with_another_part_is_checked(show, path, value):
    run = Run()
    ask(run, show)
    ask(run, restaged(show, [(path, value)]))
    assert run.calls == 2


def test_another_check_and_one_of_the_whole_show_are_made(show):
    run = Run()
    ask(run, show)
    ask(run, show, name="other")
    for _ in range(2):
        ask(run, show, name="whole", depends_on=Check.__dataclass_fields__["depends_on"].default)
    assert run.calls == 4


@pytest.mark.parametrize(
    "more",
    [
        {"mendable": (Mendable(finding=FOUND.findings[0], subject=()),)},
        {"things": ((FOUND.findings[0], "the post"),)},
        {"danced": DANCED},
    ],
    ids=["mendable", "things", "danced"],
)
def test_an_outcome_that_holds_parts_of_its_show_is_found_again(show, more):
    run = Run(replace(FOUND, **more))
    ask(run, show)
    ask(run, show)
    assert run.calls == 2


def test_with_another_package_every_check_is_made(show, monkeypatch):
    run = Run()
    ask(run, show)
    monkeypatch.setattr(plugins, "entries", lambda _group: ["wax"])
    ask(run, show)
    assert run.calls == 2


def test_where_a_file_changes_while_it_is_read_nothing_is_kept(show):
    file = Path(show.file).parent / "house.yaml"

    class Changing(Run):
        def __call__(self, own):
            file.write_text("rules: []  # other", encoding="utf-8")
            return super().__call__(own)

    run = Changing()
    ask(run, show)
    file.write_text("rules: []", encoding="utf-8")
    ask(run, show)
    assert run.calls == 2


def test_a_code_that_is_not_declared_stops_the_check_with_a_shelf_too(show):
    other = replace(FOUND.findings[0], code="early")
    with pytest.raises(ValueError, match="'early' as 'warn', which it does not declare"):
        ask(Run(Outcome(findings=(other,))), show)


def test_an_outcome_comes_back_from_its_record_to_the_last_digit():
    assert restored_outcome(outcome_record(FOUND)) == FOUND
    assert restored_outcome(outcome_record(Outcome())) == Outcome()
