"""The process that checks: what goes first, what ends what, and how it rests."""

import gc
import sqlite3
import sys
import threading
import weakref
from contextlib import closing
from time import monotonic, sleep
from types import SimpleNamespace

import pytest

from sequencer import kept, kept_store
from sequencer.desk.processes import show_worker as module
from sequencer.desk.processes.show_worker import ShowWorker
from sequencer.desk.views import show_view
from sequencer.desk.views.made_ready import make_ready
from sequencer.motion.flown.compiled import solver
from sequencer.progress import stop_if_unwanted


class Pipe:
    """What is told to the worker, and what it says."""

    def __init__(self):
        self._in, self._news = [], threading.Condition()
        self.said = []

    def tell(self, *message):
        with self._news:
            self._in.append(message)
            self._news.notify()

    def recv(self):
        with self._news:
            self._news.wait_for(lambda: self._in)
            return self._in.pop(0)

    def send(self, message):
        self.said.append(message)


class Flight:
    """The flight in two processes, which only counts how often it was stopped."""

    def __init__(self):
        self.stopped = 0

    def stop(self):
        self.stopped += 1


@pytest.fixture
def work(tmp_path):
    """A worker whose threads run, and its pipe."""
    pipe = Pipe()
    worker = ShowWorker(str(tmp_path / "show.yaml"), pipe)
    worker._flight = Flight()
    yield worker, pipe
    pipe.tell("end")


def begin(worker):
    for each in (worker.check, worker.answer_questions, worker.listen):
        threading.Thread(target=each, daemon=True).start()


def until(true, seconds=30):
    end = monotonic() + seconds
    while not true():
        assert monotonic() < end
        sleep(0.005)


def test_what_a_page_draws_is_told_before_the_checks_go_on(work, monkeypatch):
    worker, pipe = work
    viewing, go_on, order = threading.Event(), threading.Event(), []

    def view(_given):
        viewing.set()
        assert go_on.wait(30)
        order.append("view")
        return b""

    def check(_wanted):
        assert viewing.wait(30)
        threading.Timer(0.2, go_on.set).start()
        worker._give_way()
        order.append("checks")

    monkeypatch.setattr(module, "_VIEW", 30.0)
    monkeypatch.setattr(worker, "_view", view)
    monkeypatch.setattr(worker, "_check", check)
    begin(worker)
    pipe.tell("ask", 1, "view", {})
    pipe.tell("text", 1, 1, "a")
    until(lambda: len(order) == 2)
    assert order == ["view", "checks"]


def test_checks_wait_for_no_other_question_and_not_for_ever(work, monkeypatch):
    worker, pipe = work
    asked, go_on, waited = threading.Event(), threading.Event(), []
    monkeypatch.setattr(worker, "_song_view", lambda _given: asked.set() or go_on.wait(60))
    monkeypatch.setattr(module, "_VIEW", 20.0)

    def check(_wanted):
        assert asked.wait(30)
        since = monotonic()
        worker._give_way()
        waited.append(monotonic() - since)
        monkeypatch.setattr(module, "_VIEW", 0.3)
        worker._viewing = True  # and a view that takes long
        worker._give_way()
        waited.append(monotonic() - since)

    monkeypatch.setattr(worker, "_check", check)
    begin(worker)
    pipe.tell("ask", 1, "song", {})
    pipe.tell("text", 1, 1, "a")
    until(lambda: len(waited) == 2, 60)
    go_on.set()
    assert waited[0] < 20.0  # for which it waits at most
    assert waited[1] >= 0.3


@pytest.mark.parametrize("news", [("text", 2, 2, "b"), ("ask", 1, "trial", {"text": "b"})])
def test_a_newer_text_or_a_trial_ends_the_checks_and_the_flight_at_once(work, monkeypatch, news):
    worker, pipe = work
    begun, ended = threading.Event(), threading.Event()

    def check(wanted):
        if wanted.run > 1:
            return
        begun.set()
        try:
            while True:
                stop_if_unwanted()
                sleep(0.001)
        finally:
            ended.set()

    monkeypatch.setattr(worker, "_check", check)
    trial = threading.Event()
    monkeypatch.setattr(worker, "_trial", lambda _given: trial.wait(30))
    begin(worker)
    pipe.tell("text", 1, 1, "a")
    assert begun.wait(30)
    before = worker._flight.stopped
    pipe.tell(*news)
    assert ended.wait(30)
    assert worker._flight.stopped > before
    trial.set()


def test_it_is_made_ready_once_it_rests_after_a_whole_report(work, monkeypatch):
    worker, pipe = work
    ready, checked = [], []

    def check(wanted):
        checked.append(wanted.run)
        worker._complete = wanted.run if wanted.run > 1 else 0

    monkeypatch.setattr(module, "_AT_REST", 0.1)
    monkeypatch.setattr(module, "make_ready", lambda: ready.append(list(checked)))
    monkeypatch.setattr(worker, "_check", check)
    begin(worker)
    pipe.tell("text", 1, 1, "a")
    until(lambda: checked == [1])
    sleep(0.4)
    assert ready == []  # nothing is known yet that would be put away
    pipe.tell("text", 2, 2, "b")
    until(lambda: ready)
    sleep(0.4)
    assert ready == [[1, 2]]  # once, not again and again
    pipe.tell("text", 3, 3, "c")
    until(lambda: len(ready) == 2)


def test_a_process_that_is_made_ready_has_loaded_what_flights_need():
    solver.cache_clear()
    try:
        make_ready()
        assert "scipy.linalg" in sys.modules
        assert solver.cache_info().currsize == 1
        assert gc.get_freeze_count() > 1_000
    finally:
        gc.unfreeze()


def test_results_of_the_last_edit_are_written_when_it_rests(tmp_path, monkeypatch):
    monkeypatch.setattr(kept_store, "store_path", lambda: tmp_path / "results.sqlite3")
    store = kept_store.ResultStore(lambda: True)
    monkeypatch.setattr(kept, "_STORE", store)
    try:
        store.put(b"key", lambda: "[1]")
        make_ready()
    finally:
        gc.unfreeze()
        store.close()
    with closing(sqlite3.connect(tmp_path / "results.sqlite3")) as base:
        assert base.execute("SELECT record FROM results").fetchall() == [("[1]",)]


def test_garbage_that_was_put_away_is_collected_when_it_rests_again():
    class Cycle:
        pass

    gone = []
    try:
        own = Cycle()
        own.itself = own
        weak = weakref.finalize(own, gone.append, True)
        make_ready()
        del own
        gc.collect()
        assert weak.alive  # frozen: not looked at
        make_ready()
        assert gone == [True]
    finally:
        gc.unfreeze()


def test_a_view_is_worked_out_once_for_each_revision_and_staging(work, monkeypatch):
    worker, _ = work
    made, now = [], [SimpleNamespace(revision=1), "a show"]
    monkeypatch.setattr(worker, "_newest", lambda: tuple(now))
    monkeypatch.setattr(show_view, "show_view", lambda show: made.append(show) or {"title": show})
    assert worker._view({}) == worker._view({}) == b'{"revision":1,"title":"a show"}'
    assert made == ["a show"]
    now[1] = "staged anew"
    assert worker._view({}) == b'{"revision":1,"title":"staged anew"}'
    now[0] = SimpleNamespace(revision=2)
    assert worker._view({}) == b'{"revision":2,"title":"staged anew"}'
