"""The process that checks: what it has said, and what becomes of it."""

import asyncio
import os
import signal

import pytest

from sequencer.desk.processes import worker_link
from sequencer.desk.processes.worker_link import AnswerError, WorkerLink
from tests.in_a_thread import run_apart

SHOW = """\
title: Silent
track: {file: nowhere.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 4}
"""


def finding(code, severity="warn", start=0.0):
    return {"code": code, "severity": severity, "start": start, "who": ["Ash"], "position": "1.1"}


def answer(check, left, *findings, drawn=False):
    said = {"check": check, "left": left, "findings": list(findings), "drawn": drawn}
    return ("answer", 1, said | {"clearances": [], "unseen": []})


def linked(work, monkeypatch, path):
    """Some work with a link whose process does nothing."""
    monkeypatch.setattr(WorkerLink, "_begin", lambda _self: None)
    monkeypatch.setattr(WorkerLink, "_put", lambda _self, _message: None)
    told = []

    async def run():
        link = WorkerLink(path, lambda event, said: told.append((event, said)))
        link.text(1, SHOW)
        work(link)

    run_apart(run())
    return told


def test_nothing_is_complete_before_the_whole_report(tmp_path, monkeypatch):
    def work(link):
        assert link.checks_values()["open"] is None
        link._take(("staged", 1, {"error": None}))
        link._take(
            answer(
                "distances",
                ["joins", "distances", "mends"],
                finding("too-close", "stop"),
                drawn=True,
            )
        )
        link._take(answer("joins", ["distances", "mends"], finding("needs-a-link")))
        said = link.findings_values()
        assert (said["open"], said["drawn"]) == (["distances", "mends"], ["distances"])
        assert (said["complete"], said["ok"]) == (False, None)
        assert [one["code"] for one in said["findings"]] == ["too-close", "needs-a-link"]
        link._take(answer("distances", ["mends"]))
        said = link.findings_values()
        assert [one["code"] for one in said["findings"]] == ["needs-a-link"]
        assert not said["complete"]
        link._take(answer("joins", ["distances", "mends"], finding("again")))  # after a trial
        assert link.checks_values()["open"] == ["mends"]
        report = {
            "ok": True,
            "findings": [],
            "entries": [],
            "clearances": [],
            "unseen": [],
            "cautions": [],
        }
        link._take(("report", 1, {"report": report}))
        assert (link.findings_values()["complete"], link.findings_values()["ok"]) == (True, True)
        link._take(answer("joins", ["distances", "mends"]))
        assert link.checks_values()["open"] == []

    told = linked(work, monkeypatch, tmp_path / "s.yaml")
    assert all(
        said["complete"] is (said["ok"] is not None) for event, said in told if event == "checks"
    )


def test_what_is_said_of_an_older_revision_is_not_heard(tmp_path, monkeypatch):
    def work(link):
        link.text(2, SHOW)
        link._take(answer("joins", [], finding("old")))
        link._take(("staged", 1, {"error": None}))
        assert link.checks.staged is None
        assert link.findings_values()["findings"] == []

    linked(work, monkeypatch, tmp_path / "s.yaml")


def test_nobody_waits_for_a_staging_that_broke(tmp_path, monkeypatch):
    def work(link):
        link._take(("failed", 1, {"error": {"message": "bug in sequencer (KeyError)"}}))
        assert link.checks.staged is False
        assert not link.checks_values()["complete"]

    told = linked(work, monkeypatch, tmp_path / "s.yaml")
    assert ("notice", {"message": "bug in sequencer (KeyError)", "severity": "warn"}) in told


def test_a_text_that_is_looked_at_once_more_is_answered_anew(tmp_path, monkeypatch):
    def work(link):
        link._take(answer("joins", [], finding("old")))
        link.look_anew()
        link._take(answer("joins", [], finding("late")))  # of the run before
        assert link.findings_values()["findings"] == []
        link._take(("answer", 2, answer("joins", [], finding("new"))[2]))
        assert [one["code"] for one in link.findings_values()["findings"]] == ["new"]

    linked(work, monkeypatch, tmp_path / "s.yaml")


def test_a_process_that_dies_begins_again_and_questions_to_it_are_answered(tmp_path):
    path = tmp_path / "s.yaml"
    path.write_text(SHOW, encoding="utf-8")
    told = []

    async def run():
        link = WorkerLink(path, lambda event, said: told.append((event, said)))
        try:
            link.text(1, SHOW)
            checks = await link.until_staged(1, 60)
            assert "cannot find the track" in checks.error["message"]
            os.kill(link._process.pid, signal.SIGSTOP)
            asking = asyncio.create_task(link.ask("view"))
            await asyncio.sleep(0.1)
            os.kill(link._process.pid, signal.SIGKILL)
            with pytest.raises(AnswerError) as error:
                await asyncio.wait_for(asking, 60)
            assert error.value.error["code"] == "gone"
            assert (await link.until_staged(1, 60)).error["code"] == "no-track"
            assert "cannot find" in (await link.trial(SHOW))["message"]
        finally:
            link.end()

    run_apart(run())
    assert "begin again" in next(said["message"] for event, said in told if event == "notice")


@pytest.mark.skipif(not hasattr(signal, "SIGSTOP"), reason="signals of Unix")
def test_the_end_takes_the_process_that_flies_with_it_also_where_that_hangs(tmp_path, monkeypatch):
    monkeypatch.setattr(worker_link, "_TWO_CORES", True)

    async def run():
        link = WorkerLink(tmp_path / "s.yaml", lambda _event, _said: None)
        second = link._second
        try:
            os.kill(second.pid, signal.SIGSTOP)
            link.end()
            assert second.exitcode == -signal.SIGKILL
        finally:
            second.kill()

    run_apart(run())


def test_a_process_that_dies_again_and_again_is_left(tmp_path, monkeypatch):
    monkeypatch.setattr(worker_link, "_MOST_DEATHS", 0)

    def work(link):
        link._pipe = object()
        link._gone(link._pipe)
        assert link.checks.staged is False
        assert not link.checks_values()["complete"]

    told = linked(work, monkeypatch, tmp_path / "s.yaml")
    assert "not begun any more" in told[-1][1]["message"]
