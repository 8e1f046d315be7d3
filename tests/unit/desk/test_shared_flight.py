"""A flight in two processes: as flown in one, to the last byte, whatever becomes of the second process."""

import multiprocessing
import pickle
import threading
from contextlib import contextmanager
from time import monotonic, sleep

import pytest

from sequencer import kept
from sequencer.desk import shared_flight as module
from sequencer.desk.shared_flight import SharedFlight, fly_for
from sequencer.progress import Stopped, stoppable
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.staging import flown_show as flying
from sequencer.staging.flown_show import flown_show, unflown
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.songs import even_song

SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
  - {name: Cedar, stature: 1.8, prop: {tether: 0.45}}
formations:
  row: {spots: {Ash: {at: [-4, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [4, 4]}}}
staging:
  - {formation: row, from: 1.1}
timeline:
  - {from: 2.1, pattern: extension, beats: 4}
"""


def a_show(text=SHOW):
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(16))


def told(show):
    """All that decides how a show flies."""
    record = flying._record
    return [
        record(flying._OnPaths(each.trajectories, each.deviation))
        for each in flown_show(show).staged.dancers
    ]


@contextmanager
def second_process():
    """The pipe to one, and the process."""
    context = multiprocessing.get_context("spawn")
    here, there = context.Pipe()
    process = context.Process(target=fly_for, args=(there,), daemon=True)
    process.start()
    there.close()
    try:
        yield here, process
    finally:
        process.kill()
        process.join(10)
        here.close()


@pytest.fixture(scope="module")
def alone():
    with nothing_kept():
        return told(a_show())


@pytest.fixture
def fresh(tmp_path):
    """Nothing is known, and nothing is found on disk but what this test puts there."""
    with nothing_kept(), pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept, "_STORE", kept.ResultStore(lambda: False))
        patch.setenv("XDG_CACHE_HOME", str(tmp_path))
        patch.setenv("LOCALAPPDATA", str(tmp_path))
        yield


def test_two_processes_fly_a_show_as_one_does(fresh, alone, monkeypatch):
    flew = []
    work = flying._flown
    monkeypatch.setattr(
        flying, "_flown", lambda show, one, say: flew.append(one.name) or work(show, one, say)
    )
    show = a_show()
    with second_process() as (pipe, _):
        flight = SharedFlight(pipe)
        flight.begin(show)
        sleep_until(lambda: not flight._theirs)  # it has flown its part before we begin
        flight.fly(show)
    assert flew == ["Ash", "Birch"]  # Cedar is known from the other process
    assert unflown(show) == ()
    assert told(show) == alone


def sleep_until(true, seconds=60):
    end = monotonic() + seconds
    while not true():
        assert monotonic() < end
        sleep(0.01)


def test_without_a_second_process_all_are_flown_here(fresh, alone):
    show = a_show()
    SharedFlight(None).fly(show)
    assert told(show) == alone


def test_a_second_process_that_dies_costs_time_only(fresh, alone):
    show = a_show()
    with second_process() as (pipe, process):
        flight = SharedFlight(pipe)
        process.kill()
        process.join(10)
        flight.fly(show)
        assert told(show) == alone
        flight.begin(a_show(SHOW.replace("extension", "two-beat-weave")))
        assert not flight._theirs


class Silent:
    """A pipe to a process that never comes to anything, or says only what it is told to."""

    def __init__(self, *said):
        self.said, self.sent = list(said), []

    def recv(self):
        if self.said:
            return self.said.pop(0)
        threading.Event().wait()
        raise EOFError

    def send(self, message):
        self.sent.append(message)


def test_whoever_the_second_process_has_not_begun_with_is_flown_here(fresh, alone):
    show = a_show()
    pipe = Silent()
    SharedFlight(pipe).fly(show)
    assert told(show) == alone
    assert [message[0] for message in pipe.sent] == ["fly", "leave"]
    assert (pipe.sent[0][3], pipe.sent[1][2]) == (["Cedar"], "Cedar")


def test_what_the_other_process_could_not_fly_is_flown_here(fresh, alone):
    show = a_show()
    pipe = Silent(("begun", 1, "Cedar"), ("flown", 1, "Cedar", {}))
    flight = SharedFlight(None)
    flight._pipe = pipe
    flight.begin(show)
    threading.Thread(target=flight._listen, args=(pipe,), daemon=True).start()
    flight.fly(show)
    assert told(show) == alone


def test_a_newer_show_ends_the_wait_and_lets_the_second_process_rest(fresh):
    show, pipe = a_show(), Silent()
    flight = SharedFlight(pipe)
    flight.begin(show)
    flight._theirs["Cedar"] = True  # it has begun, and takes for ever
    for each in show.dancers[:2]:
        flying.flown_performer(show, each)
    since = monotonic()
    with pytest.raises(Stopped), stoppable(lambda: monotonic() > since + 0.2):
        flight.fly(show)
    flight.stop()
    flight.stop()
    assert [message[0] for message in pipe.sent] == ["fly", "stop"]
    assert pipe.sent[1][1] > pipe.sent[0][1]


def test_the_second_process_leaves_what_nobody_wants(fresh):
    show = a_show()
    packed = pickle.dumps(
        module.replace(show, book={}, read=None, heard=None), pickle.HIGHEST_PROTOCOL
    )
    with second_process() as (pipe, _):
        pipe.send(("fly", 1, packed, ["Ash", "Birch", "Cedar"]))
        assert pipe.recv() == ("begun", 1, "Ash")
        pipe.send(("stop", 2))
        kind, turn, name, _ = pipe.recv()
        assert (kind, turn, name) == ("flown", 1, "Ash")
        assert not pipe.poll(1.0)
        pipe.send(("fly", 3, packed, ["Birch"]))
        assert pipe.recv() == ("begun", 3, "Birch")


def test_a_show_that_is_flown_already_is_not_handed_over(fresh):
    show, pipe = a_show(), Silent()
    flown_show(show)
    SharedFlight(pipe).fly(show)
    assert pipe.sent == []
