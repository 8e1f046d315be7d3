"""A flight in two processes: as flown in one, to the last byte, whatever becomes of the second process."""

import multiprocessing
import os
import pickle
import signal
import threading
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path
from time import monotonic, sleep

import pytest

from sequencer import kept
from sequencer.checks.dance.flown_in_place import look_at_flight
from sequencer.desk.views import shared_flight as module
from sequencer.desk.views.shared_flight import SharedFlight, fly_for
from sequencer.motion.performers import least_values
from sequencer.progress import Stopped, stop_if_unwanted, stoppable
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight import flown_show as flying
from sequencer.staging.in_flight import flown_strains
from sequencer.staging.in_flight.flown_show import flown_show, unflown
from sequencer.staging.timeline import staged
from tests.nothing_kept import nothing_kept
from tests.slow_flight import fly_slowly
from tests.songs import even_song

ROOT = Path(__file__).parents[4]
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
def second_process(work=fly_for):
    """The pipe to one, and the process."""
    context = multiprocessing.get_context("spawn")
    here, there = context.Pipe()
    process = context.Process(target=work, args=(there,), daemon=True)
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(ROOT)  # given on: a process that begins anew finds `tests` too
        process.start()
    there.close()
    try:
        yield here, process
    finally:
        process.kill()
        process.join(10)
        with suppress(
            OSError
        ):  # the thread that sends to it may be closing the pipe at this moment
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
        sleep_until(lambda: flight._pipe is None)
        flight.begin(a_show(SHOW.replace("extension", "two-beat-weave")))
        assert not flight._theirs


class Silent:
    """A pipe to a process that never comes to anything, or says only what it is told to, once it is given a show."""

    def __init__(self, *said):
        self.said, self.sent, self.given = list(said), [], threading.Event()

    def recv(self):
        if self.said:
            self.given.wait()
            return self.said.pop(0)
        threading.Event().wait()
        raise EOFError

    def send(self, message):
        self.sent.append(message)
        self.given.set()

    def close(self):
        pass


def test_whoever_the_second_process_has_not_begun_with_is_flown_here(fresh, alone):
    show = a_show()
    pipe = Silent()
    SharedFlight(pipe).fly(show)
    assert told(show) == alone
    sleep_until(lambda: len(pipe.sent) == 2)
    assert [message[0] for message in pipe.sent] == ["fly", "leave"]
    assert (pipe.sent[0][3], pipe.sent[1][2]) == (["Cedar"], "Cedar")


def test_what_the_other_process_could_not_fly_is_flown_here(fresh, alone):
    show = a_show()
    flight = SharedFlight(Silent(("begun", 1, "Cedar"), ("flown", 1, "Cedar", {})))
    flight.fly(show)
    assert told(show) == alone


def test_whoever_is_waited_for_in_vain_is_flown_here_and_nobody_waits_again(
    fresh, alone, monkeypatch
):
    monkeypatch.setattr(module, "_PATIENCE", 0.1)
    show, pipe = a_show(), Silent(("begun", 1, "Cedar"))
    flight = SharedFlight(pipe)
    flight.begin(show)
    sleep_until(lambda: flight._theirs == {"Cedar": True})
    flight.fly(show)
    assert told(show) == alone
    flight.begin(a_show(SHOW.replace("extension", "two-beat-weave")))
    assert flight._theirs == {}
    sleep_until(lambda: len(pipe.sent) == 2)
    assert [message[0] for message in pipe.sent] == ["fly", "stop"]  # it may rest


def test_what_the_second_process_finds_first_ends_the_same_work_here(fresh, alone, monkeypatch):
    monkeypatch.setattr(module, "_PATIENCE", 0.0)
    show, begun, ends = a_show(), threading.Event(), []
    work = flying._flown

    def flown(show, one, say):
        if one.name == "Cedar" and not begun.is_set():
            begun.set()
            sleep_until(stop_if_unwanted, 30)  # it never comes to an end by itself
        ends.append(one.name)
        return work(show, one, say)

    monkeypatch.setattr(flying, "_flown", flown)
    flight = SharedFlight(Silent(("begun", 1, "Cedar")))
    flight.begin(show)
    sleep_until(lambda: flight._theirs == {"Cedar": True})

    def other():
        begun.wait()
        with flight._news:
            del flight._theirs["Cedar"]

    threading.Thread(target=other, daemon=True).start()
    flight.fly(show)
    assert ends == ["Ash", "Birch", "Cedar"]  # it did not come with a record, so it is flown again
    assert told(show) == alone


def test_a_newer_show_ends_the_wait_and_lets_the_second_process_rest(fresh):
    show, pipe = a_show(), Silent(("begun", 1, "Cedar"))  # it has begun, and takes for ever
    flight = SharedFlight(pipe)
    flight.begin(show)
    sleep_until(lambda: flight._theirs == {"Cedar": True})
    for each in show.dancers[:2]:
        flying.flown_performer(show, each)
    since = monotonic()
    with pytest.raises(Stopped), stoppable(lambda: monotonic() > since + 0.2):
        flight.fly(show)
    flight.stop()
    flight.stop()
    sleep_until(lambda: len(pipe.sent) == 2)
    assert [message[0] for message in pipe.sent] == ["fly", "stop"]
    assert pipe.sent[1][1] > pipe.sent[0][1]


def test_a_full_pipe_keeps_nobody_waiting_but_the_thread_that_sends(fresh):
    class Full(Silent):
        def send(self, message):
            super().send(message)
            threading.Event().wait()

    pipe, show = Full(), a_show()
    flight = SharedFlight(pipe)

    flight.begin(show)
    sleep_until(lambda: pipe.sent)  # and never comes back from sending it

    def talk():
        for _ in range(5):
            flight.stop()
            flight.begin(show)
        flight.stop()

    talking = threading.Thread(target=talk, daemon=True)
    talking.start()
    talking.join(30)
    assert not talking.is_alive()
    assert len(pipe.sent) == 1
    assert [message[0] for message in flight._outbox] == ["stop"]  # what waits is the newest


def goes_on(begun, heard):
    """For a while, and on a machine that has much else to do until both kinds were heard."""
    past = monotonic() - begun
    return past < 1.5 or (past < 60 and len({message[0] for message in heard}) < 2)


def test_two_threads_talk_to_the_second_process_and_each_message_comes_whole(fresh):
    """The checks hand over shows while the thread that takes questions says stop."""
    show = a_show()
    here, there = multiprocessing.get_context("spawn").Pipe()
    heard, broken = [], []

    def hear():
        try:
            while not heard or heard[-1][0] != "last":
                heard.append(there.recv())
        except Exception as error:  # noqa: BLE001  # whatever breaks
            broken.append(error)

    hearing = threading.Thread(target=hear, daemon=True)
    hearing.start()
    flight = SharedFlight(here)
    big = b"x" * 300_000
    begun = monotonic()

    def hand_over():
        while goes_on(begun, heard):
            with flight._news:
                flight._shared = show
                flight._begin_turn("fly", big, ["Cedar"])

    def stop():
        while goes_on(begun, heard):
            flight.stop()

    talking = [threading.Thread(target=each, daemon=True) for each in (hand_over, stop)]
    for each in talking:
        each.start()
    for each in talking:
        each.join(90)
    with flight._news:
        flight._begin_turn("last")
    hearing.join(60)
    assert not broken
    turns = [message[1] for message in heard]
    assert turns == sorted(set(turns))
    assert turns[-1] == flight._turn
    assert {message[0] for message in heard} == {"fly", "stop", "last"}
    assert all(message[2] == big for message in heard if message[0] == "fly")


def packed(show):
    bare = module.replace(show, book={}, read=None, heard=None)
    return pickle.dumps(bare, pickle.HIGHEST_PROTOCOL)


@pytest.mark.parametrize("broken", ["message", "show"])
def test_what_is_broken_ends_the_second_process_quietly(fresh, capfd, broken):
    with second_process() as (pipe, process):
        if broken == "message":
            pipe.send_bytes(b"\x80\x05no pickle")
        else:
            pipe.send(("fly", 1, b"no show", ["Ash"]))
        process.join(30)
        assert process.exitcode == 0
    assert capfd.readouterr().err == ""


def test_a_broken_message_of_the_second_process_leaves_all_to_be_flown_here(fresh, alone):
    here, there = multiprocessing.get_context("spawn").Pipe()
    flight = SharedFlight(here)
    there.send_bytes(b"\x80\x05no pickle")
    sleep_until(lambda: flight._pipe is None)
    show = a_show()
    flight.fly(show)
    assert told(show) == alone
    assert there.poll(30)
    with pytest.raises(EOFError):  # and it is told that nobody listens
        there.recv()


@pytest.mark.skipif(not hasattr(signal, "SIGSTOP"), reason="signals of Unix")
def test_a_second_process_that_hangs_costs_time_only(fresh, alone, monkeypatch):
    monkeypatch.setattr(module, "_PATIENCE", 0.2)
    show = a_show()
    with second_process(fly_slowly) as (pipe, process):
        flight = SharedFlight(pipe)
        flight.begin(show)
        sleep_until(lambda: flight._theirs == {"Cedar": True})
        os.kill(process.pid, signal.SIGSTOP)  # while it flies
        flight.fly(show)
        assert flight._hangs
        assert told(show) == alone
        other = a_show(SHOW.replace("extension", "two-beat-weave"))
        flight.fly(other)  # it is not asked again
        assert unflown(other) == ()
        os.kill(process.pid, signal.SIGCONT)
        sleep_until(lambda: not flight._hangs)  # it is back
        third = a_show(SHOW.replace("beats: 4", "beats: 6"))
        flight.begin(third)
        sleep_until(lambda: not flight._theirs)
        assert [each.name for each in unflown(third)] == ["Ash", "Birch"]


def test_a_second_process_that_is_killed_while_it_flies_costs_time_only(fresh, alone):
    show = a_show()
    with second_process(fly_slowly) as (pipe, process):
        flight = SharedFlight(pipe)
        flight.begin(show)
        sleep_until(lambda: flight._theirs == {"Cedar": True})
        process.kill()
        flight.fly(show)
        assert told(show) == alone
        sleep_until(lambda: flight._pipe is None)


def test_edits_while_both_fly_end_as_flown_from_nothing(fresh):
    """Six texts, each taking the place of the one before while both processes fly it."""
    texts = [SHOW.replace("[-4, 4]", f"[-4.{k}, 4]") for k in range(6)]
    texts = [text.replace("beats: 4", f"beats: {4 + k}") for k, text in enumerate(texts)]
    ended = []
    with second_process(partial(fly_slowly, long=0.5)) as (pipe, _):
        flight = SharedFlight(pipe)
        for text in texts[:-1]:
            show, given = a_show(text), threading.Event()

            def edit(show=show, given=given):
                sleep_until(lambda: True in flight._theirs.values() or not unflown(show))
                given.set()
                flight.stop()

            editing = threading.Thread(target=edit, daemon=True)
            editing.start()
            with suppress(Stopped), stoppable(given.is_set):
                flight.fly(show)
                ended.append(text)
            editing.join(60)
        last = a_show(texts[-1])
        flight.fly(last)
        shared = told(last)
        assert unflown(last) == ()
    assert len(ended) < len(texts) - 1  # some were under way when they were edited
    with nothing_kept():
        assert told(a_show(texts[-1])) == shared


def test_the_second_process_leaves_what_nobody_wants(fresh):
    show = a_show()
    given = packed(show)
    with second_process(fly_slowly) as (pipe, _):
        pipe.send(("fly", 1, given, ["Ash", "Birch", "Cedar"]))
        assert pipe.recv() == ("begun", 1, "Ash")
        pipe.send(("stop", 2))
        kind, turn, name, _ = pipe.recv()
        assert (kind, turn, name) == ("flown", 1, "Ash")
        assert not pipe.poll(1.0)
        pipe.send(("fly", 3, given, ["Birch"]))
        assert pipe.recv() == ("begun", 3, "Birch")


def test_what_checks_ask_of_a_flight_is_worked_out_by_whoever_flew_it(fresh, monkeypatch):
    show = a_show()
    with second_process() as (pipe, _):
        flight = SharedFlight(pipe)
        took, take = [], kept.take
        monkeypatch.setattr(
            kept, "take", lambda records: took.append(len(records)) or take(records)
        )
        flight.begin(show)
        sleep_until(lambda: len(took) == 2)  # the flight, and what was looked at

    def searched(*_):
        raise AssertionError("it is known")

    monkeypatch.setattr(least_values, "_searched", searched)
    monkeypatch.setattr(flown_strains, "_strained", searched)
    cedar = show.dancers[2]
    look_at_flight(show, flying.flown_performer(show, cedar))
    with pytest.raises(AssertionError, match="it is known"):  # nobody has looked at Ash
        look_at_flight(show, flying.flown_performer(show, show.dancers[0]))


def test_nothing_is_looked_at_for_a_show_that_nobody_wants(fresh):
    show = a_show()
    with second_process() as (pipe, _):
        pipe.send(("fly", 1, packed(show), ["Cedar"]))
        while pipe.recv()[0] != "flown":
            pass
        pipe.send(("stop", 2))
        pipe.send(("fly", 3, packed(a_show(SHOW.replace("beats: 4", "beats: 6"))), ["Birch"]))
        told_since = []
        while not told_since or told_since[-1][0] != "looked at" or told_since[-1][1] != 3:
            told_since.append(pipe.recv()[:3])
    said = [each for each in told_since if each[1] == 3]
    assert said == [("begun", 3, "Birch"), ("flown", 3, "Birch"), ("looked at", 3, "Birch")]


def test_a_show_that_is_flown_already_is_not_handed_over(fresh):
    show, pipe = a_show(), Silent()
    flown_show(show)
    SharedFlight(pipe).fly(show)
    assert pipe.sent == []
