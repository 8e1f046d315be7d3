"""The server's end of the process that stages and checks: what it has found so far, and questions to it.

All of it runs in the server's event loop, but for the thread that listens to the pipe.
"""

import asyncio
import multiprocessing
import os
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Any

from sequencer.desk.connection.page_values import with_ids
from sequencer.desk.processes.show_worker import SUPERSEDED, work_for
from sequencer.desk.views.shared_flight import fly_for
from sequencer.findings import SEVERITIES

Told = Callable[[str, dict[str, Any]], None]  # an event's name and what it says
_MOST_DEATHS, _WITHIN = (
    3,
    60.0,
)  # of the process, in so many seconds, before it is not started again
_TWO_CORES = (os.cpu_count() or 1) > 1
_ANSWER = 30.0  # [s] after which a trial is taken for granted


class AnswerError(Exception):
    """A question that has no answer."""

    def __init__(self, error: dict[str, Any]) -> None:
        super().__init__(error["message"])
        self.error = error


@dataclass(slots=True)
class Checks:
    """What is known of one revision."""

    revision: int
    staged: bool | None = None  # None: not known yet
    error: dict[str, Any] | None = None  # why it cannot be staged
    left: Sequence[str] | None = (
        None  # checks without their last answer; None: none has answered yet
    )
    answers: dict[str, dict[str, Any]] = field(default_factory=dict)  # by check
    report: dict[str, Any] | None = None
    doing: dict[str, Any] | None = None  # the newest progress

    @property
    def complete(self) -> bool:
        """Whether everything has been looked at."""
        return self.report is not None

    @property
    def findings(self) -> list[dict[str, Any]]:
        """All findings so far, worst first, then by time."""
        if self.report is not None:
            return list(self.report["findings"])
        found = [one for answer in self.answers.values() for one in answer["findings"]]
        return sorted(found, key=_worst_first)


class WorkerLink:
    """Texts and questions to the process that checks, and what it says.

    Parameters
    ----------
    path : Path
        The show file.
    told : callable
        Is given each event, in the server's loop.
    """

    def __init__(self, path: Path, told: Told) -> None:
        self._path, self._told = path, told
        self._loop = asyncio.get_running_loop()
        self._text: tuple[int, str] | None = None
        self._questions: dict[int, asyncio.Future[Any]] = {}
        self._number = 0
        self._run = 0
        self._deaths: list[float] = []
        self._ended = False
        self._second: BaseProcess | None = None  # flies for the one that checks
        self.checks = Checks(0)
        self._news = asyncio.Event()
        self._begin()

    def __repr__(self) -> str:
        return f"<WorkerLink of {self._path.name}, revision {self.checks.revision}>"

    # --- what the server asks ---

    def text(self, revision: int, text: str) -> None:
        """Give it the newest text; all work on the one before ends."""
        self._text = revision, text
        self._run += 1
        self.checks = Checks(revision)
        self._stir()
        self._put(("text", self._run, revision, text))

    def look_anew(self) -> None:
        """Look at the newest text once more: a file that it names is another one now."""
        if self._text is not None:
            self._put(("anew",))
            self.text(*self._text)

    def unreadable(self, revision: int) -> None:
        """Say that the newest text is no show: nothing of it can be looked at."""
        self._text = None
        self.checks = Checks(revision, staged=False)
        self._stir()

    async def ask(self, what: str, **given: Any) -> Any:
        """The answer to a question about the newest text.

        Raises
        ------
        AnswerError
            If there is none.
        """
        self._number += 1
        number = self._number
        future: asyncio.Future[Any] = self._loop.create_future()
        self._questions[number] = future
        try:
            self._put(("ask", number, what, given))
            return await future
        finally:
            self._questions.pop(number, None)

    async def trial(self, text: str) -> dict[str, Any] | None:
        """Why a text cannot be staged; None if it can, or if that takes too long to wait for."""
        try:
            await asyncio.wait_for(self.ask("trial", text=text), _ANSWER)
        except AnswerError as error:
            return None if error.error["code"] in {SUPERSEDED, "fault", "gone"} else error.error
        except TimeoutError:
            return None
        return None

    async def until_staged(self, revision: int, seconds: float) -> Checks:
        """What is known once a revision, or a newer one, is staged or cannot be.

        Raises
        ------
        TimeoutError
            If that takes longer.
        """
        async with asyncio.timeout(seconds):
            while self.checks.revision < revision or self.checks.staged is None:
                await self._news.wait()
        return self.checks

    def end(self) -> None:
        """End the process."""
        self._ended = True
        self._put(("end",))
        self._process.join(1.0)
        if self._process.is_alive():
            self._process.kill()
            self._process.join(2.0)
        self._end_second()
        self._listening.join(2.0)  # it reads to the end; a pipe is not closed while it is read
        self._pipe.close()

    # --- what it says ---

    def _begin(self) -> None:
        context = multiprocessing.get_context("spawn")
        self._pipe, other = context.Pipe()
        shared, second = context.Pipe() if _TWO_CORES else (None, None)
        self._process = context.Process(
            target=work_for,
            args=(str(self._path), other, shared),
            name="checks of an open show",
            daemon=True,
        )
        self._process.start()
        other.close()
        if shared is not None and second is not None:  # it ends with the process that checks
            self._second = context.Process(
                target=fly_for, args=(second,), name="flights of an open show", daemon=True
            )
            self._second.start()
            shared.close()
            second.close()
        self._listening = threading.Thread(target=self._listen, args=(self._pipe,), daemon=True)
        self._listening.start()

    def _end_second(self) -> None:
        """End the process that flies, also where it hangs: nothing that only it knows is lost."""
        if self._second is not None:
            self._second.kill()
            self._second.join(2.0)

    def _listen(self, pipe: Connection) -> None:
        while True:
            try:
                message = pipe.recv()
            except (EOFError, OSError):
                break
            self._in_loop(self._take, message)
        self._in_loop(self._gone, pipe)

    def _in_loop(self, call: Callable[[Any], None], given: object) -> None:
        try:
            self._loop.call_soon_threadsafe(call, given)
        except RuntimeError:  # the loop is closed: nobody listens any more
            return

    def _put(self, message: tuple[Any, ...]) -> None:
        try:
            self._pipe.send(message)
        except OSError:
            return  # it has died; the thread that listens says so

    def _gone(self, pipe: Connection) -> None:
        """Start the process again after it died."""
        if self._ended or pipe is not self._pipe:
            return
        error = {
            "code": "gone", "message": "the checks ended unexpectedly; ask again", "why": "",
            "what": "the checks ended unexpectedly", "mend": "ask again", "line": None, "column": None,
        }  # fmt: skip
        for future in list(self._questions.values()):
            if not future.done():
                future.set_exception(AnswerError(error))
        self._end_second()
        now = time.monotonic()
        self._deaths = [*(each for each in self._deaths if now - each < _WITHIN), now]
        if len(self._deaths) > _MOST_DEATHS:
            words = "the checks end again and again, and are not begun any more; nothing of the show is lost"
            self.checks.error, self.checks.staged = {**error, "message": words}, False
            self._stir()
            self._told("notice", {"message": words, "severity": "warn"})
            return
        self._told(
            "notice",
            {"message": "the checks ended unexpectedly and begin again", "severity": "warn"},
        )
        self._begin()
        if self._text is not None:
            self.text(*self._text)

    def _take(self, message: tuple[Any, ...]) -> None:
        kind, *rest = message
        if kind == "reply":
            self._reply(*rest)
            return
        run, said = rest
        if run != self._run or self._text is None:
            return  # it is about an older text
        takes = {
            "staged": self._staged, "failed": self._failed, "progress": self._progress,
            "answer": self._answer, "report": self._report,
        }  # fmt: skip
        takes[kind](self.checks, said)
        self._told("checks", self.checks_values())
        self._stir()

    def _reply(self, number: int, result: Any, error: dict[str, Any] | None) -> None:
        future = self._questions.get(number)
        if future is None or future.done():
            return
        if error is None:
            future.set_result(result)
        else:
            future.set_exception(AnswerError(error))

    def _staged(self, checks: Checks, said: dict[str, Any]) -> None:
        checks.error = said["error"]
        checks.staged = checks.error is None
        self._told("staged", {"revision": checks.revision, "error": checks.error})

    def _failed(self, checks: Checks, said: dict[str, Any]) -> None:
        checks.error = said["error"]
        if checks.staged is None:  # nobody waits for a staging that broke
            checks.staged = False
        self._told("notice", {"message": said["error"]["message"], "severity": "warn"})

    def _progress(self, checks: Checks, said: dict[str, Any]) -> None:
        checks.doing = said

    def _answer(self, checks: Checks, said: dict[str, Any]) -> None:
        """Take a check's answer; after a trial it may be said once more, and changes nothing."""
        last = {name for name, own in checks.answers.items() if not own["drawn"]}
        if checks.complete or said["check"] in last:
            return
        checks.left = [name for name in said["left"] if name not in last]
        checks.doing = None
        checks.answers[said["check"]] = said
        self._told(
            "findings",
            {
                "revision": checks.revision,
                "check": said["check"],
                "as": "drawn" if said["drawn"] else "flown",
            },
        )

    def _report(self, checks: Checks, said: dict[str, Any]) -> None:
        checks.left, checks.doing, checks.report = (), None, said["report"]
        self._told("findings", {"revision": checks.revision, "check": "mends", "as": "flown"})

    def _stir(self) -> None:
        self._news.set()
        self._news = asyncio.Event()

    # --- as a page reads it ---

    def checks_values(self) -> dict[str, Any]:
        """How far the checks are: never complete before all has been looked at."""
        checks = self.checks
        severities = [one["severity"] for one in checks.findings]
        return {
            "revision": checks.revision,
            "staged": checks.staged,
            "open": None if checks.left is None else list(checks.left),
            "done": [name for name in checks.answers if name not in (checks.left or ())],
            "drawn": self._drawn(),
            "words": None if checks.doing is None else checks.doing["words"],
            "share": None if checks.doing is None else checks.doing["share"],
            "hearing": bool(checks.doing and checks.doing["hearing"]),
            "counts": {severity: severities.count(severity) for severity in SEVERITIES},
            "complete": checks.complete,
            "ok": checks.report["ok"] if checks.report is not None else None,
            "error": checks.error,
        }

    def findings_values(self) -> dict[str, Any]:
        """All that is known of the newest text."""
        checks = self.checks
        if checks.report is not None:
            return {**self.checks_values(), **checks.report}
        answers = checks.answers.values()
        return {
            **self.checks_values(),
            "findings": with_ids(checks.findings),
            "clearances": [one for answer in answers for one in answer["clearances"]],
            "unseen": list(dict.fromkeys(one for answer in answers for one in answer["unseen"])),
            "cautions": [],
        }

    def _drawn(self) -> list[str]:
        return [name for name, answer in self.checks.answers.items() if answer["drawn"]]


def _worst_first(finding: dict[str, Any]) -> tuple[int, float, str, list[str]]:
    start = -1.0 if finding["start"] is None else finding["start"]
    return SEVERITIES.index(finding["severity"]), start, finding["code"], list(finding["who"])
