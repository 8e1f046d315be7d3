"""Long work in a process of its own: what is told of it, and its end."""

import asyncio
from pathlib import Path

import pytest

from sequencer.desk.processes.errand import Errand
from tests import errand_works
from tests.in_a_thread import run_apart


@pytest.fixture(autouse=True)
def found_by_other_processes(monkeypatch):
    """Another process finds the tests' work where this one does, however pytest was started."""
    monkeypatch.syspath_prepend(Path(__file__).parents[4])


def done(work, given, *, during=lambda _errand: None):
    """An errand once it is over, and all that was told of it."""

    async def run():
        told = []
        news = asyncio.Event()

        def tell(errand):
            told.append(errand.values())
            news.set()

        errand = Errand(work, given, tell)
        while errand.state == "working":
            await asyncio.wait_for(news.wait(), 60)
            news.clear()
            during(errand)
        errand.end()
        return errand, told

    return run_apart(run())


def test_what_comes_of_it_is_handed_over():
    errand, told = done(errand_works.adds, {"a": 2, "b": 3})
    assert (errand.state, errand.result, errand.error) == ("done", 5, None)
    assert (told[0]["state"], told[0]["words"], told[0]["share"]) == ("working", "adding", 0.5)
    assert told[-1]["state"] == "done"
    assert len({one["number"] for one in told}) == 1


def test_an_error_of_the_user_is_told_without_its_folder():
    errand, _ = done(errand_works.refuses, {"path": "/somewhere/s.yaml"})
    assert errand.state == "failed"
    assert errand.error["message"].startswith("s.yaml:3: nothing can be made; learn more")


@pytest.mark.parametrize(
    ("work", "code"), [(errand_works.breaks, "fault"), (errand_works.dies, "gone")]
)
def test_a_fault_ends_nothing_else(work, code):
    errand, _ = done(work, {})
    assert (errand.state, errand.error["code"]) == ("failed", code)


def test_it_is_stopped_and_hands_over_its_best():
    errand, told = done(errand_works.goes_on, {"best": True}, during=Errand.stop)
    assert errand.state == "done"
    assert errand.result["done"] > 0
    assert any(one["stopping"] for one in told)
    errand, _ = done(errand_works.goes_on, {"best": False}, during=Errand.stop)
    assert errand.state == "stopped"
    assert errand.words == "stopped before there was anything to show"


def test_it_is_given_up_and_nothing_more_is_told():
    async def run():
        told = []
        errand = Errand(errand_works.goes_on, {}, told.append)
        await asyncio.sleep(0.5)
        errand.end()
        known = len(told)
        await asyncio.sleep(0.3)
        return errand, known, len(told)

    errand, known, after = run_apart(run())
    assert errand.state == "stopped"
    assert known == after
    assert not errand._process.is_alive()
