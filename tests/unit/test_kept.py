"""Results kept in memory and on disk: the same result whatever happens to the file, and nothing mistaken.

Reference: the function called without the store.
"""

import os
import signal
import sqlite3
import subprocess
import sys
import threading
from contextlib import closing, nullcontext
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import pytest

from sequencer import content_keys, kept, kept_store
from sequencer.progress import Stopped


@pytest.fixture
def store(tmp_path, monkeypatch):
    """An empty folder, and a process that keeps nothing yet."""
    monkeypatch.setattr(kept_store, "store_path", lambda: tmp_path / "kept" / "results.sqlite3")
    monkeypatch.setattr(kept, "_STORE", kept_store.ResultStore(content_keys.code_unchanged))
    kept._MEMORY.clear()
    yield tmp_path / "kept" / "results.sqlite3"
    kept._STORE.close()
    kept._MEMORY.clear()


class Work:
    """Counts its calls."""

    def __init__(self, answer):
        self.answer, self.calls = answer, 0

    def __call__(self):
        self.calls += 1
        return self.answer


def ask(work, content=("a", 1.5)):
    return kept.kept("test", content, work, record=list, restore=tuple)


def next_process():
    """What a later process finds: memory is empty, and what waited has been written."""
    kept._STORE.flush()
    kept._STORE.close()
    kept._STORE = kept_store.ResultStore(content_keys.code_unchanged)
    kept._MEMORY.clear()


def test_a_result_is_computed_once_and_read_by_the_next_process(store):
    work = Work((0.1, 1 / 3, -0.0, float("inf"), 5e-324))
    first = ask(work)
    assert ask(work) is first
    assert work.calls == 1
    next_process()
    again = ask(work)
    assert work.calls == 1
    assert again is not first
    assert np.array_equal(
        np.array(again).view(np.int64), np.array(first).view(np.int64)
    )  # every bit


def test_other_content_is_another_result(store):
    assert ask(Work((1.0,)), ("a", 1.5)) == (1.0,)
    assert ask(Work((2.0,)), ("a", np.nextafter(1.5, 2))) == (2.0,)
    next_process()
    assert ask(Work((3.0,)), ("a", 1.5)) == (1.0,)
    assert kept.kept("other", ("a", 1.5), Work((4.0,)), record=list, restore=tuple) == (4.0,)


@dataclass(frozen=True)
class Foreign:
    size: float = 1.0


def test_what_has_no_content_key_is_computed_each_time(store):
    for content in ((lambda: 1,), (Foreign(),), ({1, 2},), (object(),)):
        work = Work((1.0,))
        ask(work, content)
        ask(work, content)
        assert work.calls == 2


def test_a_decorated_function_is_known_by_all_its_arguments(store):
    calls = []

    @kept.remembering(record=lambda x: x, restore=lambda x: x)
    def scaled(value, *, by=2.0):
        """Doc."""
        calls.append((value, by))
        return value * by

    assert [scaled(2.0), scaled(2.0), scaled(3.0), scaled(2.0, by=5.0)] == [4.0, 4.0, 6.0, 10.0]
    assert calls == [(2.0, 2.0), (3.0, 2.0), (2.0, 5.0)]
    assert scaled.__doc__ == "Doc."


def test_changed_formulas_find_nothing(store, monkeypatch):
    ask(Work((1.0,)))
    next_process()
    monkeypatch.setattr(content_keys, "formulas", lambda: b"others")
    assert ask(Work((2.0,))) == (2.0,)


def test_damage_at_any_byte_changes_no_result(store):
    answers = {k: (k + 1 / 3,) * 5 for k in range(40)}
    for k, answer in answers.items():
        ask(Work(answer), (k,))
    next_process()
    whole = store.read_bytes()
    for at in range(0, len(whole), 97):
        broken = bytearray(whole)
        broken[at] ^= 0x55
        store.write_bytes(bytes(broken))
        for k in (0, 17, 39):
            assert ask(Work(answers[k]), (k,)) == answers[k], at
        next_process()
    for size in (0, 1, 50, 4096, len(whole) // 2):
        store.write_bytes(whole[:size])
        assert ask(Work(answers[3]), (3,)) == answers[3], size
        next_process()


def test_a_record_changed_with_care_is_not_believed(store):
    ask(Work((1.0,)))
    next_process()
    with closing(sqlite3.connect(store)) as base, base:
        assert base.execute("UPDATE results SET record = '[2.0]'").rowcount == 1
    base.close()
    assert ask(Work((1.0,))) == (1.0,)


def test_no_database_is_begun_anew(store):
    store.parent.mkdir()
    store.write_text("no database", encoding="utf-8")
    ask(Work((1.0,)))
    next_process()
    work = Work((2.0,))
    assert ask(work) == (1.0,)
    assert work.calls == 0


@pytest.mark.parametrize("what", ["a folder in its place", "a file for a folder"])
def test_where_nothing_can_be_kept_everything_is_computed(store, what):
    if what == "a folder in its place":
        store.mkdir(parents=True)
    else:
        store.parent.write_text("", encoding="utf-8")
    work = Work((1.0,))
    ask(work)
    next_process()
    assert ask(work) == (1.0,)
    assert work.calls == 2


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="permissions do not bind here")
def test_a_folder_that_is_only_to_be_read_is_read(store):
    ask(Work((1.0,)))
    next_process()
    store.chmod(0o444)
    store.parent.chmod(0o555)
    try:
        assert ask(Work((2.0,))) == (1.0,)
        assert ask(Work((2.0,)), ("new",)) == (2.0,)
        next_process()
    finally:
        store.parent.chmod(0o755)


def test_a_full_disk_costs_only_what_is_kept(store, monkeypatch):
    def full(base, rows):
        raise sqlite3.OperationalError("database or disk is full")

    ask(Work((1.0,)))
    next_process()
    monkeypatch.setattr(kept_store, "_write", full)
    for k in range(4):
        assert ask(Work((k + 0.5,)), (k,)) == (k + 0.5,)
        kept._STORE.flush()
    assert ask(Work((9.0,)), (3,)) == (3.5,)


def test_another_process_at_work_is_not_waited_for_long(store, monkeypatch):
    monkeypatch.setattr(kept_store, "_PATIENCE", 0.01)
    ask(Work((1.0,)))
    next_process()
    other = sqlite3.connect(store, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    for k in range(5):
        assert ask(Work((k + 0.5,)), (k,)) == (k + 0.5,)
    kept._STORE.flush()
    other.execute("ROLLBACK")
    other.close()


def test_the_file_stays_small(store, monkeypatch):
    monkeypatch.setattr(kept_store, "MOST_ON_DISK", 50_000)
    monkeypatch.setattr(kept_store, "BUNDLE", 3)
    moments = iter(range(100))
    monkeypatch.setattr(kept_store.time, "time", lambda: next(moments))
    for k in range(30):
        ask(Work((float(k),) * 1000), (k,))
    next_process()
    assert 10_000 < store.stat().st_size <= 60_000  # of 150,000 bytes
    newest = Work((0.5,))
    assert ask(newest, (29,)) == (29.0,) * 1000
    assert ask(newest, (0,)) == (0.5,), "the oldest went first"


def test_the_memory_stays_small(store, monkeypatch):
    monkeypatch.setattr(kept, "MOST_IN_MEMORY", 3)
    for k in range(5):
        ask(Work((float(k),)), (k,))
    assert len(kept._MEMORY) == 3
    ask(Work((7.0,)), (2,))  # used again: it goes last
    ask(Work((5.0,)), (5,))
    assert content_keys.content_key("test", 2) in kept._MEMORY


def test_two_processes_and_a_killed_one_share_a_file(store):
    """Four write at once, one is killed meanwhile: the file is whole, and every result is right."""
    code = (
        "import sys, os\n"
        "from pathlib import Path\n"
        "from sequencer import kept, kept_store\n"
        f"kept_store.store_path = lambda: Path({str(store)!r})\n"
        "kept_store.BUNDLE = 5\n"
        "n = int(sys.argv[1])\n"
        "for k in range(200):\n"
        "    x = kept.kept('t', (k,), lambda: (k / 7,), record=list, restore=tuple)\n"
        "    assert x == (k / 7,), (k, x)\n"
        "    if n == 0 and k == 60: os._exit(9)\n"
    )
    running = [subprocess.Popen([sys.executable, "-c", code, str(n)]) for n in range(4)]
    assert [each.wait(120) for each in running] == [9, 0, 0, 0]
    for k in (0, 60, 199):
        assert kept.kept("t", (k,), Work((k / 7,)), record=list, restore=tuple) == (k / 7,)
    with closing(sqlite3.connect(store)) as base, base:
        assert base.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    base.close()


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no fork here")
def test_a_forked_process_opens_its_own(store):
    ask(Work((1.0,)))
    code = os.fork()
    if code == 0:
        good = ask(Work((2.0,))) == (1.0,) and ask(Work((3.0,)), ("child",)) == (3.0,)
        kept._STORE.flush()
        os._exit(0 if good else 1)
    assert os.waitpid(code, 0)[1] == 0
    next_process()
    assert ask(Work((9.0,)), ("child",)) == (3.0,)
    assert ask(Work((9.0,))) == (1.0,)


def test_what_json_cannot_hold_is_kept_in_memory_only(store):
    work = Work(np.int64(3))
    for _ in range(2):
        assert kept.kept("test", ("n",), work, record=lambda n: n, restore=int) == 3
    assert work.calls == 1
    next_process()
    assert kept.kept("test", ("n",), work, record=lambda n: n, restore=int) == 3
    assert work.calls == 2


def test_a_database_that_refuses_to_write_is_still_read(store, monkeypatch):
    def busy(base, rows):
        raise sqlite3.OperationalError("database is locked")

    ask(Work((1.0,)))
    next_process()
    monkeypatch.setattr(kept_store, "_write", busy)
    for k in range(5):
        ask(Work((0.5,)), (k,))
        kept._STORE.flush()
    kept._MEMORY.clear()
    assert ask(Work((2.0,))) == (1.0,)


def test_only_a_damaged_database_is_begun_anew(store, monkeypatch):
    def wrong(base, keys):
        raise sqlite3.ProgrammingError("a fault of the program")

    ask(Work((1.0,)))
    next_process()
    with monkeypatch.context() as patch:
        patch.setattr(kept_store, "_read", wrong)
        assert ask(Work((2.0,)), ("other",)) == (2.0,)
    next_process()
    assert ask(Work((3.0,))) == (1.0,)


def test_code_that_changed_while_it_ran_keeps_nothing(store, monkeypatch):
    """What runs is the old code, what the key is made of may be the new."""
    assert not content_keys._changed_since(content_keys._LOADED)
    monkeypatch.setattr(content_keys, "_LOADED", 0.0)
    ask(Work((1.0,)))
    next_process()
    assert ask(Work((2.0,))) == (2.0,)


def test_without_a_database_everything_is_computed(store, monkeypatch):
    monkeypatch.setattr(kept_store, "sqlite3", None)
    work = Work((1.0,))
    ask(work)
    kept._STORE = kept_store.ResultStore(content_keys.code_unchanged)
    kept._MEMORY.clear()
    assert ask(work) == (1.0,)
    assert work.calls == 2


def test_without_a_home_everything_is_computed(store, monkeypatch):
    def nowhere():
        raise RuntimeError("no home directory")

    monkeypatch.setattr(kept_store, "store_path", nowhere)
    assert ask(Work((1.0,))) == (1.0,)


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no fork here")
def test_a_process_forked_while_another_thread_reads_is_not_held_up(store):
    held, done = threading.Event(), threading.Event()

    def hold():
        with kept._STORE._lock:
            held.set()
            done.wait(30)

    thread = threading.Thread(target=hold)
    thread.start()
    held.wait(30)
    code = os.fork()
    if code == 0:
        signal.alarm(20)
        os._exit(0 if ask(Work((1.0,))) == (1.0,) else 1)
    done.set()
    thread.join()
    assert os.waitpid(code, 0)[1] == 0


def test_recent_results_are_those_of_their_keys_and_the_oldest_go_first(monkeypatch):
    """Two of a kind are kept; one without a key is computed each time."""
    monkeypatch.setattr(kept, "_RECENT", {})
    asked = []

    def squares(keys):
        def work(missing):
            asked.append([keys[k] for k in missing])
            return [None if keys[k] is None else keys[k] ** 2 for k in missing]

        return kept.recent_each("squares", keys, work, most=2)

    assert squares([3, 2, None]) == [9, 4, None]
    assert squares([2, None, 3]) == [4, None, 9]
    assert squares([5, 3]) == [25, 9]  # 2 was asked for longest ago
    assert squares([3, 2]) == [9, 4]
    assert asked == [[3, 2, None], [None], [5], [2]]
    assert kept.recent("other", 3, lambda: "three", most=1) == "three"
    assert kept.recent("other", 3, lambda: "anew", most=1) == "three"
    assert kept.recent("other", 4, lambda: "four", most=1) == "four"
    assert kept.recent("other", 3, lambda: "anew", most=1) == "anew"
    assert kept.recent("other", None, lambda: "each time", most=1) == "each time"
    assert squares([]) == []


def test_more_results_than_are_kept_are_all_returned(monkeypatch):
    monkeypatch.setattr(kept, "_RECENT", {})
    assert kept.recent_each("k", [1, 2, 3], lambda missing: missing, most=2) == [0, 1, 2]
    with pytest.raises(ValueError, match="zip"):
        kept.recent_each("k", [7, 8], lambda _missing: [1], most=2)


def test_what_a_worker_collects_is_known_here_even_where_nothing_can_be_written(store, monkeypatch):
    with kept.collected() as records:
        ask(Work((1.0,)))
        ask(Work((2.0,)), ("b",))
    next_process()
    work = Work((0.0,))
    assert ask(work) == (0.0,)  # the worker wrote nothing
    assert work.calls == 1
    assert len(records) == 2

    monkeypatch.setattr(kept_store.ResultStore, "_connection", lambda _: None)
    kept._MEMORY.clear()
    kept.take(records)
    kept._STORE.flush()
    other = Work((0.0,))
    assert ask(other) == (1.0,)
    assert ask(other, ("b",)) == (2.0,)
    assert other.calls == 0
    assert not kept._STORE._taken  # handed over once, and in memory from then on


def test_what_was_taken_is_written_for_the_next_process(store):
    with kept.collected() as records:
        ask(Work((1.0,)))
    kept._MEMORY.clear()
    kept.take(records)
    next_process()
    assert ask(Work((2.0,))) == (1.0,)


def lay(work, key=(b"a", 1.5), of="show"):
    """A result that a check of a show asks for, in a process of its own."""
    kept._RECENT.pop("small things", None)
    with kept.shelf(of):
        (found,) = kept.recent_each(
            "small things", [key], lambda _: [work()], most=9, record=list, restore=tuple
        )
    return found


def test_what_lies_on_a_shelf_is_found_by_the_next_process_that_asks_for_the_same(store):
    first = Work((0.1 + 0.2,))
    assert lay(first) == lay(Work((2.0,))) == (0.1 + 0.2,)
    next_process()
    assert lay(Work((3.0,))) == (0.1 + 0.2,)
    assert lay(Work((4.0,)), (b"a", 1.0)) == (4.0,)
    assert lay(Work((5.0,)), of="another show") == (5.0,)
    assert first.calls == 1


def test_on_a_shelf_lies_nothing_of_other_formulas(store, monkeypatch):
    lay(Work((1.0,)))
    monkeypatch.setattr(content_keys, "formulas", lambda: b"other")
    assert lay(Work((2.0,))) == (2.0,)


def test_without_a_shelf_a_recent_result_is_known_in_this_process_only(store):
    work = Work((1.0,))
    for _ in range(2):
        kept._RECENT.pop("small things", None)
        kept.recent("small things", b"key", work, most=9, record=list, restore=tuple)
        next_process()
    assert work.calls == 2


def test_a_key_is_asked_for_only_where_there_is_a_shelf(store):
    def no_key():
        raise AssertionError("not asked for")

    work = Work((1.0,))
    assert kept.shelved("t", no_key, work, record=list, restore=tuple) == (1.0,)
    for _ in range(2):
        with kept.shelf("show"):
            assert kept.shelved("t", lambda: 7, work, record=list, restore=tuple) == (1.0,)
        next_process()
    assert work.calls == 2


def test_what_was_found_before_an_error_lies_there_too(store):
    def fault():
        raise RuntimeError

    def check():
        with kept.shelf("show"):
            kept.shelved("t", lambda: 7, Work((1.0,)), record=list, restore=tuple)
            kept.shelved("t", lambda: 8, fault, record=list, restore=tuple)

    with pytest.raises(RuntimeError):
        check()
    next_process()
    with kept.shelf("show"):
        found = kept.shelved("t", lambda: 7, Work((2.0,)), record=list, restore=tuple)
    assert found == (1.0,)


def test_a_small_result_lies_on_the_shelf_besides_and_a_large_one_does_not(store):
    large = tuple(map(float, range(kept.SMALL_RECORD)))
    with kept.shelf("show"):
        ask(Work((1.0,)))
        ask(Work(large), ("large",))
    next_process()
    with closing(sqlite3.connect(store)) as base, base:
        base.execute("DELETE FROM results WHERE record LIKE '[%'")  # rows of their own
    base.close()
    with kept.shelf("show"):
        assert ask(Work((2.0,))) == (1.0,)
        assert ask(Work((2.0,)), ("large",)) == (2.0,)


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no fork here")
def test_a_forked_process_has_no_shelf(store):
    with kept.shelf("show"):
        code = os.fork()
        if code == 0:
            os._exit(0 if kept._SHELF.get() is None else 1)
        assert os.waitpid(code, 0)[1] == 0
        assert kept._SHELF.get() is not None


def test_where_nothing_can_be_written_a_shelf_changes_no_result(store, monkeypatch):
    monkeypatch.setattr(kept_store.ResultStore, "_connection", lambda _: None)
    assert lay(Work((1.0,))) == (1.0,)
    next_process()
    assert lay(Work((2.0,))) == (2.0,)


def test_bytes_are_kept_as_they_are(store):
    """What is no JSON is none for who asks for JSON, and comes back whole in the next process, or not at all if it is damaged."""
    key, record = content_keys.content_key("numbers"), bytes(range(256))
    asked = []

    def work():
        asked.append(1)
        return record

    def ask():
        return kept.kept_on_disk(key, work, record=lambda own: own, restore=lambda own: own)

    assert ask() == record
    next_process()
    assert ask() == record
    assert len(asked) == 1
    assert kept._STORE.text(key) is None
    with closing(sqlite3.connect(kept_store.store_path())) as base, base:
        base.execute("UPDATE results SET record = ?", (record[:-1],))
    next_process()
    assert ask() == record
    assert len(asked) == 2


def results_taking(monkeypatch, *seconds):
    """Results kept one after the other, each computed in so many seconds; those that are recorded by then."""
    clock, seen = [0.0], []
    monkeypatch.setattr(kept_store.time, "monotonic", lambda: clock[0])
    kept._STORE = kept_store.ResultStore(content_keys.code_unchanged)

    def work(k):
        clock[0] += seconds[k]
        return (k,)

    def record(result):
        seen.append(result)
        return list(result)

    for k in range(len(seconds)):
        kept.kept("test", (k,), lambda k=k: work(k), record=record, restore=tuple)
    return seen


def test_a_result_is_recorded_once_it_is_written(store, monkeypatch):
    """Whoever waits for it does not wait for that; it is found before as well."""
    seen = results_taking(monkeypatch, 0.1, 0.1, 0.1)
    assert seen == []
    kept._MEMORY.clear()
    assert kept.kept("test", (1,), Work((9.0,)), record=list, restore=tuple) == (1,)
    kept.put_away()
    assert seen == [(1,), (0,), (2,)]  # each once, the one that was asked for first
    next_process()
    assert ask(Work((9.0,)), (2,)) == (2,)


@pytest.mark.parametrize(
    ("seconds", "recorded"),
    [
        ((0.5, 1.5), []),
        ((2.5,), [(0,)]),  # what took long is written at once
        ((0.5, 2.5), [(0,), (1,)]),
        ((0.5, 1.5, 1.5, 0.5), [(0,), (1,), (2,)]),  # and nothing waits for long
    ],
)
def test_when_results_are_written(store, monkeypatch, seconds, recorded):
    assert results_taking(monkeypatch, *seconds) == recorded


def test_after_a_rest_the_first_result_waits_for_others(store, monkeypatch):
    """That it was asked for a moment ago shows that it took no time."""
    clock, seen = [0.0], []
    monkeypatch.setattr(kept_store.time, "monotonic", lambda: clock[0])
    kept._STORE = kept_store.ResultStore(content_keys.code_unchanged)
    for k in range(3):
        clock[0] += 60.0
        kept.kept(
            "test", (k,), Work((k,)), record=lambda own: seen.append(own) or [*own], restore=tuple
        )
        assert len(seen) == k
        kept.put_away()


def test_several_results_are_asked_for_together(store, monkeypatch):
    def each(work, count=450):
        contents = [(k,) for k in range(count)]
        return kept.kept_each("test", contents, work, record=list, restore=tuple)

    found = each(lambda missing: [(k / 3, k) for k in missing])
    next_process()
    asked, read = [], kept_store._read
    monkeypatch.setattr(
        kept_store, "_read", lambda base, keys: asked.append(len(keys)) or read(base, keys)
    )
    assert each(lambda missing: [(0.0, 0)] * len(missing), 451) == [*found, (0.0, 0)]
    assert asked == [200, 200, 51]
    assert each(None, 450) == found
    assert len(asked) == 3  # in memory by now


def test_a_damaged_one_of_several_is_computed_again(store):
    def each(work):
        return kept.kept_each("test", [(k,) for k in range(3)], work, record=list, restore=tuple)

    each(lambda missing: [(k,) for k in missing])
    kept.put_away()
    kept._STORE.close()
    with closing(sqlite3.connect(store)) as base, base:
        base.execute(
            "UPDATE results SET record = '[7]' WHERE key = ?",
            (content_keys.content_key("test", 1),),
        )
    next_process()
    assert each(lambda missing: [(10 * k,) for k in missing]) == [(0,), (10,), (2,)]


def test_a_worker_records_what_it_collects_at_once(store):
    with kept.collected() as records:
        ask(Work((1.5,)))
    assert [*records.values()] == ["[1.5]"]


class Result(NamedTuple):
    """One that its record may make trouble of."""

    number: float
    trouble: BaseException | None = None


def kept_of(result, name):
    def record(own):
        if own.trouble is not None:
            raise own.trouble
        return [own.number]

    return kept.kept(
        "test", (name,), lambda: result, record=record, restore=lambda own: Result(*own)
    )


TROUBLES = [AttributeError("a name"), KeyError("a key"), RecursionError(), OverflowError()]


@pytest.mark.parametrize("trouble", TROUBLES, ids=lambda own: type(own).__name__)
@pytest.mark.parametrize("on_shelf", [False, True])
def test_a_record_that_fails_costs_only_itself(store, trouble, on_shelf):
    """Its result is known in this process; what waits beside it is written, and whatever comes after it."""
    bad = Result(1.0, trouble)
    with kept.shelf("a show") if on_shelf else nullcontext():
        assert kept_of(Result(0.0), "before") == Result(0.0)
        assert kept_of(bad, "bad") is bad
        assert kept_of(Result(2.0), "after") == Result(2.0)
        kept.put_away()
        kept_of(Result(3.0), "later")
    next_process()
    for name, number in (("before", 0.0), ("after", 2.0), ("later", 3.0)):
        assert kept_of(Result(9.0), name) == Result(number)
    assert kept_of(Result(9.0), "bad") == Result(9.0)  # computed again


def test_a_large_record_that_fails_costs_only_itself(store):
    key = content_keys.content_key("large")
    assert kept.kept_on_disk(key, Work(4.0), record=lambda own: own.nothing, restore=float) == 4.0
    next_process()
    assert kept.kept_on_disk(key, Work(5.0), record=lambda own: own, restore=float) == 5.0


def test_a_store_holds_no_record_that_fails(store):
    """Written, asked for before that, or collected by a worker: each time it counts as missing, and nothing else does."""
    own, tried = kept._STORE, []

    def failing():
        tried.append(1)
        raise AttributeError("a name")

    own.put(b"bad", failing)
    own.put(b"good", "[1]")
    assert own.get_each((b"bad", b"good")) == {b"good": "[1]"}
    own.flush()
    assert tried == [1]  # it would fail again
    own.put(b"bad", failing)
    own.flush()
    with kept.collected() as records:
        own.put(b"bad", failing)
        own.put(b"better", lambda: "[2]")
    assert records == {b"better": "[2]"}
    own.close()
    again = kept_store.ResultStore(content_keys.code_unchanged)
    assert again.get_each((b"bad", b"good")) == {b"good": "[1]"}
    again.close()


@pytest.mark.parametrize("interruption", [KeyboardInterrupt, Stopped])
def test_what_was_being_written_when_interrupted_is_written_later(store, interruption):
    """Not dropped, as a record that fails is: an interruption is not the record's fault."""
    interruptions = [interruption()]

    def record():
        if interruptions:
            raise interruptions.pop()
        return "[1]"

    own = kept._STORE
    own.put(b"first", "[0]")
    own.put(b"second", record)
    with pytest.raises(interruption):
        own.flush()
    own.put(b"third", "[2]")
    own.flush()
    own.close()
    again = kept_store.ResultStore(content_keys.code_unchanged)
    assert again.texts((b"first", b"second", b"third")) == {
        b"first": "[0]", b"second": "[1]", b"third": "[2]",
    }  # fmt: skip
    again.close()
