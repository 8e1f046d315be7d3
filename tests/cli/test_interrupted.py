"""Ctrl-C in the middle of the long commands: status 130, one plain line, nothing half-written, nothing lost.

The signal comes at a moment that is known: as a result is found, or in the middle of what is written. It is a
real one, which the process sends itself.
"""

import os
import shutil
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner

from sequencer import content_keys, kept, kept_store, tasks
from sequencer.cli import main
from sequencer.outputs.exports import folder as exports
from sequencer.outputs.sheets import writing
from sequencer.planning import mending
from tests.nothing_kept import nothing_kept
from tests.repeated import at_length

GO_ON = "interrupted; nothing was half-written, and what was worked out so far is kept: ask again to go on"


def strike():
    signal.raise_signal(signal.SIGINT)


@pytest.fixture(autouse=True)
def struck():
    """A shell that runs the tests in its background lets them ignore SIGINT."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.fixture(scope="module")
def heard(stage_folder):
    """The cache of all tests, which knows the song from now on."""
    assert run("listen", stage_folder / "song.wav").exit_code == 0
    return Path(os.environ["XDG_CACHE_HOME"], "sequencer")


@pytest.fixture
def show(stage_folder, heard, tmp_path, monkeypatch):
    """A show in a process that keeps nothing yet but the song."""
    place = tmp_path / "own"
    place.mkdir()
    for name in ("song.wav", "show.yaml"):
        shutil.copy(stage_folder / name, place / name)
    know_the_song(heard, tmp_path / "cache", monkeypatch)
    return place / "show.yaml"


def know_the_song(heard, cache, monkeypatch):
    """A process begins with a cache of its own, in which are the song and the fits."""
    for name in ("heard", "fits"):  # a fit has a cache of its own
        if (heard / name).is_dir():
            shutil.copytree(heard / name, cache / "sequencer" / name)
    for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(cache))
    begin_process(monkeypatch)


def begin_process(monkeypatch):
    monkeypatch.setattr(kept, "_STORE", kept_store.ResultStore(content_keys.code_unchanged))
    monkeypatch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
    monkeypatch.setattr(content_keys, "_DIGESTS", {})
    monkeypatch.setattr(kept, "_RECENT", {})


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def assert_interrupted(result):
    assert result.exit_code == 130
    assert result.stdout == ""
    assert result.stderr.splitlines() == [GO_ON]


def found(monkeypatch, *, stop_at=None):
    """Keys of results as they are found; SIGINT after the one of that number."""
    keys, keep = [], kept._kept_by

    def keeping(key, result, record):
        kept_result = keep(key, result, record)
        keys.append(key)
        if len(keys) == stop_at:
            strike()
        return kept_result

    monkeypatch.setattr(kept, "_kept_by", keeping)
    return keys


def test_an_interrupted_check_goes_on_from_where_it_was(show, monkeypatch):
    with monkeypatch.context() as patch:
        first = found(patch, stop_at=5)
        assert_interrupted(run("check", show, "--json"))
    assert len(first) == 5
    kept._end()  # what the interpreter does when it ends
    begin_process(monkeypatch)
    with monkeypatch.context() as patch:
        second = found(patch)
        resumed = run("check", show, "--json")
    assert resumed.exit_code in {0, 1}
    assert second
    assert not set(first) & set(second)
    with nothing_kept():
        assert run("check", show, "--json").stdout == resumed.stdout


def test_an_interrupted_mend_leaves_the_file_as_it_was(show, monkeypatch):
    before = show.read_bytes()
    monkeypatch.setattr(mending, "_space_mended_as_flown", lambda _draft: strike())
    assert_interrupted(run("check", show, "--mend"))
    assert show.read_bytes() == before
    assert sorted(path.name for path in show.parent.iterdir()) == ["show.yaml", "song.wav"]


TOO_CLOSE = """\
title: Three
track: {file: song.wav}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.7, prop: {tether: 0.45}}
  - {name: Cedar, stature: 1.7, prop: {tether: 0.45}}
formations:
  close: {spots: {Ash: {at: [-1, 4]}, Birch: {at: [0.4, 4]}, Cedar: {at: [5, 4]}}}
  wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [4, 4]}}}
  back: {spots: {Ash: {at: [-5, 5]}, Birch: {at: [-0.7, 5]}, Cedar: {at: [0.7, 5]}}}
staging:
  - {formation: close, from: 1.1}
  - {formation: wide, from: 3.1, beats: 4}
  - {formation: back, from: 5.1, beats: 4}
timeline:
  - {from: 1.2, pattern: static-spin, cycle: 1, beats: 5, timing: together}
  - {from: 6.2, pattern: static-spin, cycle: 1, beats: 3, timing: together}
"""


@pytest.fixture(scope="module")
def whole(stage_folder, heard, tmp_path_factory):
    """The mend that nobody interrupts, and the cache of the process that made it."""
    cache = tmp_path_factory.mktemp("whole")
    path = stage_folder / "whole.yaml"
    path.write_text(TOO_CLOSE, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        know_the_song(heard, cache, patch)
        made = tasks.mend_show(path)
        kept._end()
    assert len(made.done) >= 2
    return made, cache


@pytest.mark.parametrize("when", ["writing", "checking", *at_length("mending")])
def test_an_interrupted_mend_keeps_what_it_has_mended(show, whole, monkeypatch, when):
    """After the first mend, while that is written, or once all are made: the file has them, and the rest goes on."""
    whole, cache = whole
    shutil.copytree(cache, os.environ["XDG_CACHE_HOME"], dirs_exist_ok=True)  # what it found
    show.write_text(TOO_CLOSE, encoding="utf-8")
    step, done, replace = mending._space_mended_as_flown, [], Path.replace

    def stepping(draft):
        if done and when == "mending":
            strike()
        done.append(step(draft))
        return done[-1]

    with monkeypatch.context() as patch:
        patch.setattr(mending, "_space_mended_as_flown", stepping)
        if when == "writing":  # the first signal ends the mending, the second comes at the disk
            patch.setattr(
                mending, "_space_mended_as_flown", lambda own: strike() if done else stepping(own)
            )
            patch.setattr(Path, "replace", lambda *given: (strike(), replace(*given))[1])
        if when == "checking":
            patch.setattr(tasks, "check_show", lambda *_given, **_more: strike())
        result = run("check", show, "--mend")
    assert (result.exit_code, result.stdout) == (130, "")
    text = show.read_text(encoding="utf-8")
    assert sorted(path.name for path in show.parent.glob("*")) == ["show.yaml", "song.wav"]
    walks = sum("walk" in words for words in whole.done if not words.startswith("walking"))
    assert walks == 2, "mended before the distances"
    made = len(whole.done) if when == "checking" else walks + 1
    are = f"{made} mends are"
    assert result.stderr.splitlines() == [
        f"interrupted; {are} in the file, tried on the whole show: ask again to go on"
    ]
    assert text == (whole.text if when == "checking" else done[0][0].text)
    again = tasks.mend_show(show)
    assert again.text == whole.text
    assert len(again.done) == len(whole.done) - made


@pytest.mark.parametrize("when", ["printing", "writing", "replacing"])
def test_an_interrupted_print_leaves_the_last_one_or_makes_the_new(show, monkeypatch, when):
    """Until the first file is replaced, none is; from then on, all are."""
    out = show.parent / "out"
    old = out / "show" / "all-sheets.pdf"
    old.parent.mkdir(parents=True)
    old.write_bytes(b"old")
    if when == "printing":
        monkeypatch.setattr(writing, "document_bytes", lambda *_given: strike())
    else:
        monkeypatch.setattr(writing, "document_bytes", lambda *_given: b"%PDF")
        name = "write_bytes" if when == "writing" else "replace"
        act, done = getattr(Path, name), []

        def acting(path, other):
            result = act(path, other)
            done.append(path)
            if len(done) == 2:
                strike()
            return result

        monkeypatch.setattr(Path, name, acting)
    assert_interrupted(run("sheet", show, "--out", out))
    files = sorted(path.name for path in old.parent.iterdir())
    if when == "replacing":
        assert len(files) > 5
        assert {path.read_bytes() for path in old.parent.glob("*.pdf")} == {b"%PDF"}
    else:
        assert files == ["all-sheets.pdf"]
        assert old.read_bytes() == b"old"


def test_an_interrupted_rehearsal_leaves_whole_files(show, monkeypatch):
    out = show.parent / "out"
    replaced = []
    act = Path.write_text

    def writing_text(path, text, **more):
        act(path, text[: len(text) // 2], **more)
        replaced.append(path)
        strike()

    with monkeypatch.context() as patch:
        patch.setattr(Path, "write_text", writing_text)
        patch.setattr(exports, "write_midi", lambda path, _staged: path.write_bytes(b"cues"))
        (out / "show").mkdir(parents=True)
        assert_interrupted(
            run("rehearse", show, "--out", out, "--only", "midi", "--only", "captions")
        )
    assert len(replaced) == 1
    assert [path.name for path in (out / "show").iterdir()] == ["cues.mid"]


WHOLE_PROCESS = """\
import signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
from sequencer import kept, kept_store, tasks
from sequencer.tasks import shows

def check_show(path, **more):
    for k in range(3):
        kept.keep("found", (k,), [k], record=list)
    signal.raise_signal(signal.SIGINT)

shows.check_show = check_show
from sequencer.__main__ import main
main()
"""


def test_what_was_found_is_on_disk_when_the_process_has_ended(tmp_path, monkeypatch):
    for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(tmp_path))
    done = subprocess.run(
        [sys.executable, "-c", WHOLE_PROCESS, "check", "any.yaml"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 130
    assert done.stdout == ""
    assert done.stderr.splitlines() == [GO_ON]
    (path,) = tmp_path.rglob("results-*.sqlite3")
    with closing(sqlite3.connect(path)) as base, base:
        assert base.execute("SELECT count(*) FROM results").fetchall() == [(3,)]
    base.close()


def test_an_interruption_while_results_are_written_loses_none(show, monkeypatch):
    write = kept_store._write

    def interrupted(*_given):
        monkeypatch.setattr(kept_store, "_write", write)
        strike()

    kept.keep("found", ("a",), [1.0], record=list)
    monkeypatch.setattr(kept_store, "_write", interrupted)
    with pytest.raises(KeyboardInterrupt):
        kept._STORE.flush()
    kept._end()
    begin_process(monkeypatch)
    assert kept.known("found", ("a",), restore=tuple) == ((1.0,),)
