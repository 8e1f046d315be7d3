"""Dances worked out elsewhere: the check finds them known and says the same. With real processes, and Ctrl-C: tests/cli."""

from concurrent.futures.process import BrokenProcessPool

import pytest

from sequencer import content_keys, kept, kept_store
from sequencer.checks.dance import as_flown, feasible, joins
from sequencer.progress import Stopped, stoppable
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.tasks import working_out
from tests.songs import even_song

SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-6, -9], [6, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.55}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.45}}
  - {name: Cedar, stature: 1.7, prop: {tether: 0.55}}
formations:
  apart: {spots: {Ash: {at: [-3, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [3, 4]}}}
staging:
  - {formation: apart, from: 1.1}
timeline:
  - {from: 3.1, pattern: static-spin, beats: 8}
  - {who: [Ash, Cedar], from: 6.1, pattern: two-beat-weave, beats: 8}
"""
SONG = even_song(110, start=0.5, duration=30.0)


def read(text=SHOW):
    return show_from_document(parse_document(text, "s.yaml"))


class Store:
    """Where results go: nothing is found but what was taken."""

    def __init__(self):
        self.taken, self.found, self.asked = {}, [], None

    def get(self, key):
        return self.taken.get(key)

    def text(self, key):
        found = self.get(key)
        return found if isinstance(found, str) else None

    def texts(self, keys):
        return {key: found for key in keys if (found := self.text(key)) is not None}

    def put(self, key, record):
        if self.asked is None:
            self.found.append(key)
        else:
            self.asked[key] = record() if callable(record) else record

    def begin_collecting(self, records):
        before, self.asked = self.asked, records
        return before

    def take(self, records):
        self.taken.update(records)


@pytest.fixture
def process(monkeypatch):
    """Begins a process in which nothing is known, with its store."""

    def begin():
        monkeypatch.setattr(kept, "_STORE", Store())
        monkeypatch.setattr(kept, "_MEMORY", type(kept._MEMORY)())
        return kept._STORE

    return begin


def checked(flown):
    show = staged(read(), SONG)
    every = (joins, feasible, as_flown) if flown else (joins, feasible)
    return [each.CHECK.outcome(show) for each in every]


@pytest.mark.parametrize("flown", [False, True])
def test_what_was_worked_out_elsewhere_is_not_worked_out_again(process, monkeypatch, flown):
    alone = process()
    findings = [each.findings for each in checked(flown)]
    assert alone.found

    process()
    monkeypatch.setattr(kept, "_RECENT", {})
    groups = working_out.alike(read().show.cast, 2)
    records = [working_out._records(read(), SONG, names, flown=flown) for names in groups]

    here = process()
    monkeypatch.setattr(kept, "_RECENT", {})
    monkeypatch.setattr(working_out, "_EACH", 1)
    monkeypatch.setattr(working_out, "in_workers", lambda *_args, **_named: iter(records))
    said = []
    working_out.work_out(
        read(), SONG, jobs=2, flown=flown, progress=lambda _, share: said.append(share)
    )
    assert [each.findings for each in checked(flown)] == findings
    assert here.found == []
    assert said == [0.0, 0.5, 1.0]


def test_performers_alike_stand_together_in_parts_of_one_size():
    cast = read().show.cast
    assert working_out.alike(cast, 2) == [("Birch", "Ash"), ("Cedar",)]
    assert working_out.alike(cast, 100) == [("Birch",), ("Ash",), ("Cedar",)]
    assert working_out.alike(cast, 1) == [("Birch", "Ash", "Cedar")]


def test_some_performers_are_staged_as_among_all():
    show, some = staged(read(), SONG), staged(read(), SONG, only=["Cedar"])
    assert [each.name for each in some.dancers] == ["Cedar"]
    assert {each.who for each in some.blocks} == {"Cedar"}
    assert some.span == show.span
    for side, own in show.dancers[2].trajectories.items():
        assert some.dancers[0].trajectories[side].content == own.content


def test_a_show_that_cannot_be_staged_is_left_to_the_check(process):
    process()
    faulty = read(SHOW.replace("static-spin", "no-such-spin"))
    assert working_out._records(faulty, SONG, ["Ash"]) == {}


def test_with_one_process_nothing_is_worked_out_beforehand(process):
    store = process()
    working_out.work_out(read(), SONG, jobs=1)
    assert store.found == []
    assert store.taken == {}


def test_work_that_is_unwanted_stops(process, monkeypatch):
    store = process()
    monkeypatch.setattr(working_out, "in_workers", lambda *_args, **_named: iter([{b"k": "1"}]))
    with pytest.raises(Stopped), stoppable(lambda: True):
        working_out.work_out(read(), SONG, jobs=2)
    assert store.taken == {}


def test_a_worker_that_was_killed_leaves_the_rest_to_the_check(process, monkeypatch):
    store, shares = process(), []

    def found(_work, _parts, *, jobs):
        yield {b"a": "1"}
        raise BrokenProcessPool("killed")

    monkeypatch.setattr(working_out, "in_workers", found)
    working_out.work_out(
        read(), SONG, jobs=2, progress=lambda _subject, share: shares.append(share)
    )
    assert store.taken == {b"a": "1"}
    assert len(shares) == 2
    assert shares[-1] < 1.0


def test_what_was_taken_is_given_once_and_then_only_waits_to_be_written():
    store = kept_store.ResultStore(content_keys.code_unchanged)
    store.take({b"a": "1"})
    assert store.get(b"a") == "1"
    assert store._taken == {}
    assert store._waiting == {b"a": "1"}
