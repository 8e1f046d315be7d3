"""A changed show says in the next process what a check with nothing kept says, whatever has become of the cache.

Reference: the same file, with nothing kept.
"""

import hashlib
import shutil
import sqlite3
from contextlib import closing

import pytest

from sequencer import kept, kept_store, plugins, tasks
from sequencer.checks.fire.at_posts import lines_of_sight
from sequencer.listening import cache
from tests.next_process import next_process
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.wav}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations: {wide: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}}}}
staging: [{formation: wide, from: 1.1}]
timeline:
  - {who: Ash, from: 2.1, pattern: extension, cycle: 2, beats: 4}
  - {who: Birch, from: 2.1, pattern: static-spin, cycle: 1, beats: 4}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: Ash, from: 2.1, until: 3.1}]
crew: [{name: Ivy, post: [-8, 6], duty: spotter}]
"""
CHANGES = {
    "a block": ("cycle: 2, beats: 4", "cycle: 2, beats: 4, shift: 0.5"),
    "a spot": ("Birch: {at: [0, 4]}", "Birch: {at: [0.5, 4.5]}"),
    "a post": ("[-8, 6]", "[-8, 5]"),
}


@pytest.fixture(scope="module")
def warm(tmp_path_factory):
    """A show that was checked once, and the report of the changed show with nothing kept."""
    folder = tmp_path_factory.mktemp("show")
    track, path = folder / "song.wav", folder / "show.yaml"
    track.write_bytes(b"a song")
    digest = hashlib.sha256(b"a song").hexdigest()
    with pytest.MonkeyPatch.context() as patch:
        begin(patch, folder / "cache")
        cache.store(even_song(24, start=0.5, duration=13.0, track=track.name, sha256=digest))
        path.write_text(SHOW, encoding="utf-8")
        check_in_next_process(path)
        path.write_text(changed(*CHANGES), encoding="utf-8")
        with nothing_kept():
            return path, tasks.check_show(path)


@pytest.fixture
def show(warm, tmp_path, monkeypatch):
    """That show, in a cache of its own."""
    path, _ = warm
    shutil.copytree(path.parent / "cache", tmp_path / "cache")
    begin(monkeypatch, tmp_path / "cache")
    return path


def begin(patch, folder):
    for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        patch.setenv(name, str(folder))
    patch.setattr(plugins, "entries", lambda _group: [])


def changed(*names):
    text = SHOW
    for name in names:
        text = text.replace(*CHANGES[name])
    return text


def check_in_next_process(path):
    with next_process():
        return tasks.check_show(path)


def test_a_changed_show_says_what_a_check_with_nothing_kept_says(show, warm):
    """One thing changed after the other; what does not depend on it is found on disk."""
    for count in range(1, len(CHANGES) + 1):
        show.write_text(changed(*list(CHANGES)[:count]), encoding="utf-8")
        report = check_in_next_process(show)
    assert report == warm[1]


def test_a_check_that_does_not_depend_on_the_change_is_not_made(show, monkeypatch):
    made, run = [], lines_of_sight._outcome
    monkeypatch.setattr(
        lines_of_sight, "_outcome", lambda own, mends: made.append(own) or run(own, mends=mends)
    )
    for name, times in (("a block", 0), ("a post", 1)):
        show.write_text(changed(name), encoding="utf-8")
        check_in_next_process(show)
        assert len(made) == times


def damaged(store):
    with closing(sqlite3.connect(store)) as base, base:
        base.execute("UPDATE results SET record = replace(record, '1', '2')")
    base.close()


def cut_off(store):
    store.write_bytes(store.read_bytes()[: store.stat().st_size // 2])


@pytest.mark.parametrize("what", ["damaged", "cut off", "not to be written", "not to be opened"])
def test_whatever_has_become_of_the_cache_the_answer_is_the_same(show, warm, monkeypatch, what):
    show.write_text(changed(*CHANGES), encoding="utf-8")
    if what in ("damaged", "cut off"):
        (damaged if what == "damaged" else cut_off)(kept_store.store_path())
    elif what == "not to be written":

        def full(_base, _rows):
            raise sqlite3.OperationalError("database or disk is full")

        monkeypatch.setattr(kept_store, "_write", full)
    else:
        monkeypatch.setattr(kept_store.ResultStore, "_connection", lambda _: None)
    assert check_in_next_process(show) == warm[1]
    assert kept._SHELF.get() is None
