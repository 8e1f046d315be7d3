"""A report is kept by all that it depends on: whatever changes, the show is checked again, and nothing else does.

Reference: a check that counts its calls and answers differently each time; and every file that a real check
opens, as the interpreter itself sees it.
"""

import datetime as dt
import hashlib
import json
import os
import sqlite3
import sys
from contextlib import closing
from pathlib import Path
from types import SimpleNamespace

import pytest

from sequencer import content_keys, kept, kept_store, plugins
from sequencer.errors import InputError
from sequencer.findings import Clearance, Danced, Finding, Report
from sequencer.listening import cache
from sequencer.tasks import kept_reports
from sequencer.tasks.kept_reports import AskedReport, report_from_record, report_record
from sequencer.tasks.shows import check_show, stage_show
from sequencer.units import BarLengths
from tests.songs import even_song

SHOW = """\
title: Small
track: {file: song.wav, corrections: {beats: taps.txt}}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
pattern_files: [moves.yaml]
cast:
  - {name: Ash, stature: 1.7, birth_year: 1990, prop: {tether: 0.55}}
timeline:
  - {from: 3.1, pattern: close flower, beats: 8}
rules: {file: [ours.yaml]}
fire:
  fuel: kerosene
  flame: 0.3 m
  burns: burns.csv
  lit: [{who: all, from: 3.1, until: 5.1}]
"""
BESIDE = {
    "song.wav": "a song",
    "taps.txt": "".join(f"{0.5 + 0.5 * k}\n" for k in range(60)),
    "moves.yaml": "patterns:\n  close flower: {law: orbit, set: {ratio: -3, hand_radius: 0.25}}\n",
    "ours.yaml": 'name: ours\ntitle: Ours\nedition: "1"\nauthority: true\n'
    "rules:\n  - {rule: towels, value: 2, source: a by-law}\n",
    "burns.csv": "fuel,performer,burn\nkerosene,Ash,180\nkerosene,Ash,184\nkerosene,Ash,190\n",
}


@pytest.fixture
def store(tmp_path, monkeypatch):
    """A process that keeps nothing yet, and nobody else's packages."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path / "cache"))
    monkeypatch.setattr(kept, "_STORE", kept_store.ResultStore(content_keys.code_unchanged))
    monkeypatch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
    monkeypatch.setattr(plugins, "entries", lambda _group: [])
    yield tmp_path / "cache" / "sequencer"
    kept._STORE.close()


@pytest.fixture
def folder(tmp_path, store):
    """A show that names a file of every kind, and a song that was heard."""
    place = tmp_path / "shows"
    place.mkdir()
    for name, text in {**BESIDE, "show.yaml": SHOW}.items():
        (place / name).write_text(text, encoding="utf-8")
    hear(place / "song.wav")
    return place


def hear(track, **more):
    """Puts a song into the cache as what was heard in a file."""
    digest = hashlib.sha256(track.read_bytes()).hexdigest()
    song = even_song(80, start=0.5, duration=41.0, track=track.name, sha256=digest, **more)
    cache.store(song)
    return song


def next_process():
    kept._STORE.flush()
    kept._MEMORY.clear()


class Check:
    """Counts its calls, and finds something else each time."""

    def __init__(self):
        self.calls = 0

    def __call__(self, _show):
        self.calls += 1
        return Report(show=f"{self.calls}")


def ask(check, path, during=lambda: None):
    """What `check_show` does, with a show that nobody stages."""
    asked = AskedReport(path)
    if (known := asked.known()) is not None:
        return known
    track = path.parent / "song.wav"
    digest = hashlib.sha256(track.read_bytes()).hexdigest()
    show = SimpleNamespace(heard=cache.load(digest, track=track.name))
    during()
    return asked.of(show, check)


def test_an_unchanged_show_is_checked_once_by_all_processes(folder):
    check = Check()
    first = ask(check, folder / "show.yaml")
    next_process()
    assert ask(check, folder / "show.yaml") == first
    next_process()
    asked = AskedReport(folder / "show.yaml")
    assert asked.read is None  # not even read as YAML
    assert asked.known() == first
    assert check.calls == 1


@pytest.mark.parametrize("severity", ["stop", "warn"])
def test_a_report_that_was_danced_too_leaves_its_verdict(folder, severity):
    path = folder / "show.yaml"
    track = folder / "song.wav"
    show = SimpleNamespace(
        heard=cache.load(hashlib.sha256(track.read_bytes()).hexdigest(), track=track.name)
    )
    found = Finding(
        code="x", severity=severity, who=(), start=None, end=None, position=None, message=""
    )
    asked = AskedReport(path)
    assert asked.verdict() is None
    asked.keep_verdict(show, Report(show="x", findings=(found,)))
    next_process()
    asked = AskedReport(path)
    assert (asked.verdict(), asked.known()) == (severity != "stop", None)
    assert AskedReport(path, flown=True).verdict() is None
    path.write_text(f"{SHOW}# changed\n", encoding="utf-8")
    assert AskedReport(path).verdict() is None
    asked.keep_verdict(show, Report(show="x"))  # of the show as it was
    assert AskedReport(path).verdict() is None


def test_a_report_as_flown_is_not_that_as_drawn(folder):
    check = Check()
    ask(check, folder / "show.yaml")
    assert AskedReport(folder / "show.yaml", flown=True).known() is None
    assert AskedReport(folder / "show.yaml").known() is not None


@pytest.mark.parametrize("name", ["show.yaml", *BESIDE])
def test_a_change_of_any_file_is_checked_again(folder, name):
    check = Check()
    ask(check, folder / "show.yaml")
    with (folder / name).open("a", encoding="utf-8") as file:
        file.write("# changed\n")
    if name == "song.wav":
        hear(folder / name)
    assert ask(check, folder / "show.yaml").show == "2"
    assert ask(check, folder / "show.yaml").show == "2"


@pytest.mark.parametrize("what", ["song", "year", "name", "code", "package"])
def test_a_change_of_anything_else_is_checked_again(folder, monkeypatch, what):
    check, path = Check(), folder / "show.yaml"
    ask(check, path)
    if what == "song":  # heard otherwise, in the same file
        hear(folder / "song.wav", metre=3)
    elif what == "year":
        now = dt.datetime(2090, 1, 1, tzinfo=dt.UTC)
        later = SimpleNamespace(datetime=SimpleNamespace(now=lambda **_tz: now), UTC=dt.UTC)
        monkeypatch.setattr(kept_reports, "dt", later)
    elif what == "name":
        path = folder / ".." / folder.name / "show.yaml"
    elif what == "code":
        monkeypatch.setattr(content_keys, "whole_code", lambda: b"other")
    else:
        monkeypatch.setattr(
            plugins, "entries", lambda group: ["wax"] * (group == "sequencer.profiles")
        )
    assert ask(check, path).show == "2"


def test_with_another_package_every_check_is_made(folder, monkeypatch):
    monkeypatch.setattr(plugins, "entries", lambda _group: ["wax"])
    check = Check()
    assert [ask(check, folder / "show.yaml").show for _ in range(3)] == ["1", "2", "3"]


@pytest.mark.parametrize("name", ["show.yaml", *BESIDE])
def test_what_changes_while_it_is_checked_is_not_kept(folder, name):
    """Nobody knows which of the two was read."""

    def change():
        with (folder / name).open("a", encoding="utf-8") as file:
            file.write("# changed\n")

    check, old = Check(), (folder / name).read_bytes()
    for when in ("staged", "checked"):
        before = check.calls
        if when == "staged":
            ask(check, folder / "show.yaml", during=change)
        else:
            ask(lambda show: (change(), check(show))[1], folder / "show.yaml")
        (folder / name).write_bytes(old)
        assert ask(Check(), folder / "show.yaml").show == "1"
        assert check.calls == before + 1
        kept._MEMORY.clear()
        kept._STORE.close()
        kept._STORE._waiting.clear()


@pytest.mark.parametrize("name", ["show.yaml", *BESIDE])
def test_a_show_staged_after_a_change_does_not_get_the_report_from_before(folder, name):
    check = Check()
    ask(check, folder / "show.yaml")
    asked = AskedReport(folder / "show.yaml")
    digest = hashlib.sha256((folder / "song.wav").read_bytes()).hexdigest()
    with (folder / name).open("a", encoding="utf-8") as file:
        file.write("# changed\n")
    show = SimpleNamespace(heard=cache.load(digest, track="song.wav"))
    assert asked.of(show, check).show == "2"


def test_a_show_staged_on_another_song_is_not_mistaken(folder):
    check = Check()
    asked = AskedReport(folder / "show.yaml")
    asked.of(SimpleNamespace(heard=even_song(8)), check)
    assert ask(check, folder / "show.yaml").show == "2"


def test_a_damaged_record_is_computed_again(folder, store):
    check = Check()
    ask(check, folder / "show.yaml")
    next_process()
    kept._STORE.close()
    with closing(sqlite3.connect(store / "results-1.sqlite3")) as base, base:
        base.execute(
            'UPDATE results SET record = replace(record, \'"show": "1"\', \'"show": "9"\')'
        )
    base.close()
    assert ask(check, folder / "show.yaml").show == "2"


@pytest.mark.parametrize(
    ("name", "code"),
    [("show.yaml", "no-file"), ("moves.yaml", "no-file"), ("ours.yaml", "no-file")],
)
def test_a_file_that_is_gone_is_told_as_ever(folder, name, code):
    (folder / name).unlink()
    with pytest.raises(InputError) as caught:
        check_show(folder / "show.yaml")
    assert caught.value.code == code
    assert Path(caught.value.place.file).name in {name, "show.yaml"}


def test_a_check_opens_no_file_that_the_report_is_not_kept_by(folder, monkeypatch):
    """Every file below the show's folder that the interpreter opens, from staging to the last check."""
    opened, listening = set(), [True]

    def hook(event, arguments):
        if listening[0] and event == "open" and isinstance(arguments[0], str | bytes | Path):
            opened.add(Path(os.fsdecode(arguments[0])))

    sys.addaudithook(hook)
    from sequencer.planning.offers import checked_with_mends

    checked_with_mends(stage_show(folder / "show.yaml"))
    listening[0] = False
    read = {path.name for path in opened if folder in path.parents}
    asked = AskedReport(folder / "show.yaml")
    assert read == {"show.yaml", *kept_reports.names_in(asked.read.show)}
    assert read == {"show.yaml", *BESIDE}


FULL = Report(
    show="a.yaml",
    findings=(
        Finding(
            code="too-close", severity="stop", who=("Ash", "Birch"), start=0.1, end=1 / 3, position="3.1",
            message="…", remedies=("one", "two"), source="a rule", where=(1 / 7, -0.0),
        ),
        Finding(code="x", severity="note", who=(), start=None, end=None, position=None, message=""),
    ),
    clearances=(
        Clearance(between=("Ash", "front"), distance=float("inf"), required=5e-324, at=2 / 3, error=0.0,
                  parts=("head", ""), where=None, bound=True, position="1.1"),
    ),
    not_checked=("this",), cautions=("that", "those"), conditions=frozenset({"wind"}), fuel_codes=frozenset({"x", "y"}),
    blank_codes=frozenset({"z"}), bars=BarLengths(metre=3, others=((7, 5), (9, 2))),
)  # fmt: skip


def test_a_report_comes_back_to_the_last_digit():
    again = report_from_record(json.loads(json.dumps(report_record(FULL))))
    assert again == FULL
    assert again.bars.others == ((7, 5), (9, 2))
    for field in ("findings", "clearances", "not_checked", "cautions"):
        assert repr(getattr(again, field)) == repr(getattr(FULL, field))
    assert (type(again.conditions), type(again.fuel_codes)) == (frozenset, frozenset)
    assert again.blank_codes == {"z"}


def test_a_danced_report_is_not_recorded():
    danced = Danced(
        runs=1, seed=0, required=1.0, confidence=0.95, spread={}, chances=(), pairs=0, clear=0, clear_high=1.0
    )  # fmt: skip
    with pytest.raises(ValueError, match="danced"):
        report_record(Report(show="a", danced=danced))
