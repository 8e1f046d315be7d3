"""The process that stages and checks an open show, so that the server answers at once whatever is worked out.

It is sent texts, and questions about the newest; it sends back what it finds, each with the run that it is about. A newer
text stops all work on the one before. It ends when it is told to, or when its pipe ends.
"""

import os
import queue
import signal
import threading
import time
from collections import OrderedDict
from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager, nullcontext
from dataclasses import asdict, dataclass
from functools import partial
from multiprocessing.connection import Connection
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sequencer import kept
from sequencer.desk.connection.page_values import error_values, fault_values, json_bytes
from sequencer.desk.views.made_ready import make_ready
from sequencer.desk.views.shared_flight import SharedFlight
from sequencer.errors import InputError, Place
from sequencer.progress import Progress, Stopped, stop_if_unwanted, stoppable

if TYPE_CHECKING:
    from sequencer.findings import Report
    from sequencer.planning.open_show import Answer, OpenShow
    from sequencer.show.reading import ReadShow
    from sequencer.show.show_text import ShowText
    from sequencer.staging.staged import Staged
    from sequencer.timing.song import Song

_MOST_STAGED = 4  # texts whose stagings are kept
_AT_REST = (
    2.0  # [s] without anything to do, after which the process is made ready for the next edit
)
_VIEW = 0.5  # [s] that checks wait for a view at most
_OFTEN = 0.2  # [s] between two words of progress
_URGENCY = {
    "trial": 0,
    "dance": 2,
    "sound": 2,
    "compare": 2,
    "switched": 2,
    "patterns": 3,
}  # of questions, the first answered first; 1 of all others
SUPERSEDED = "superseded"


def work_for(path: str, pipe: Connection, second: Connection | None = None) -> None:
    """Work for a server until its pipe ends.

    Parameters
    ----------
    path : str
        The show file.
    pipe : Connection
    second : Connection, optional
        To a process that helps to fly (`shared_flight`).
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the server ends this process
    worker = ShowWorker(path, pipe, second)
    for work in (worker.check, worker.answer_questions):
        threading.Thread(target=work, daemon=True).start()
    worker.listen()
    os._exit(0)  # whatever is still worked out: nobody wants it


@dataclass(frozen=True, slots=True)
class _Wanted:
    run: int  # one for each time that a text is sent, also if it is sent once more
    revision: int
    text: str


class ShowWorker:
    """Stages and checks the newest text of a show.

    Parameters
    ----------
    path : str
    pipe : Connection
    second : Connection, optional
        To a process that helps to fly.
    """

    def __init__(self, path: str, pipe: Connection, second: Connection | None = None) -> None:
        self._path, self._pipe = path, pipe
        self._sending = threading.Lock()
        self._staging = threading.Lock()
        self._news = threading.Condition()
        self._wanted: _Wanted | None = None
        self._turn = 0  # raised by all that ends the checks under way
        self._trials = 0  # under way or waiting
        self._viewing = False  # a page is being told what it draws
        self._flight = SharedFlight(second)
        self._questions: queue.PriorityQueue[tuple[int, int, str, dict[str, Any]]] = (
            queue.PriorityQueue()
        )
        self._listed = 0  # the newest question for a list of patterns
        self._stagings: OrderedDict[str, Staged | InputError] = OrderedDict()
        self._shown: ShowText | None = None
        self._last: Staged | None = None
        self._shown_view: tuple[int, Staged, bytes] | None = None  # the newest that was asked for
        self._song: Song | None = None
        self._open: OpenShow | None = None
        self._report: tuple[Staged, Report] | None = None
        self._complete = 0  # the newest run of which all is told
        self._told = 0.0

    # --- threads ---

    def listen(self) -> None:
        """Take texts and questions until the pipe ends."""
        while True:
            try:
                kind, *rest = self._pipe.recv()
            except (EOFError, OSError):
                return
            if kind == "end":
                return
            if kind == "anew":
                with self._staging:
                    self._stagings.clear()
            elif kind == "text":
                with self._news:
                    self._wanted = _Wanted(*rest)
                    self._turn += 1
                    self._news.notify_all()
                self._flight.stop()
            elif kind == "ask":
                number, what, given = rest
                if what == "trial":
                    with self._news:
                        self._trials += 1
                        self._turn += 1
                    self._flight.stop()
                elif what == "patterns":
                    self._listed = number
                self._questions.put((_URGENCY.get(what, 1), number, what, given))

    def check(self) -> None:
        """Stage and check each newest text."""
        turn = 0
        while True:
            wanted, turn = self._next(turn)
            if wanted.run == self._complete:
                continue  # a trial is over, and nothing has come of it
            try:
                with stoppable(partial(self._past, turn)):
                    self._check(wanted)
            except Stopped:
                self._flight.stop()
            except InputError as error:
                self._tell("failed", wanted.run, error=error_values(error, self._path))
            except Exception as error:  # noqa: BLE001 (a check that breaks must not end the page)
                self._tell("failed", wanted.run, error=fault_values(error))

    def _next(self, turn: int) -> tuple[_Wanted, int]:
        """Wait for what is to be looked at after a turn; where nothing comes for a while, the process is made ready for it."""
        rested = not self._complete  # at first everything is loaded as it is needed
        while True:
            with self._news:
                if self._wanted is not None and self._turn != turn and not self._trials:
                    return self._wanted, self._turn
                if self._news.wait(None if rested else _AT_REST):
                    continue
            make_ready()
            rested = True

    def _past(self, turn: int) -> bool:
        return self._turn != turn

    def _listed_anew(self, number: int) -> bool:
        """Whether a list of patterns has to wait: for a newer one, or for what somebody does to the show."""
        return self._trials > 0 or self._listed != number

    def _giving_way(self, what: str, number: int) -> AbstractContextManager[None]:
        """What takes long ends where somebody does something to the show; the page asks again."""
        if what == "patterns":
            return stoppable(partial(self._listed_anew, number))
        if what in {"compare", "switched", "room"}:
            return stoppable(lambda: self._trials > 0)
        return nullcontext()

    def answer_questions(self) -> None:
        """Answer one question after the other; what a page draws is told before the checks go on."""
        answers: dict[str, Callable[[Mapping[str, Any]], Any]] = {
            "trial": self._trial, "view": self._view, "cues": self._cues, "dance": self._dance,
            "song": self._song_view, "sound": self._sound, "patterns": self._patterns,
            "count": self._count, "taps": self._taps, "room": self._room,
            "compare": self._compare, "switched": self._switched,
        }  # fmt: skip
        while True:
            _, number, what, given = self._questions.get()
            self._viewing = what == "view"
            try:
                with self._giving_way(what, number):
                    stop_if_unwanted()
                    result, error = answers[what](given), None
            except Stopped:
                result, error = None, {"code": SUPERSEDED, **_SUPERSEDED}
            except InputError as fault:
                result, error = None, error_values(fault, self._path)
            except Exception as fault:  # noqa: BLE001 (told to the page)
                result, error = None, fault_values(fault)
            finally:
                with self._news:
                    if what == "trial":
                        self._trials -= 1
                        self._turn += 1
                    self._viewing = False
                    self._news.notify_all()
            self._send(("reply", number, result, error))

    # --- checks ---

    def _check(self, wanted: _Wanted) -> None:
        with kept.shelf(self._path) if self._open is None else nullcontext():
            try:
                show = self._staged(wanted.text, self._hearing(wanted.run))
            except InputError as error:
                self._tell("staged", wanted.run, error=error_values(error, self._path))
                return
            self._tell("staged", wanted.run, error=None)
            self._answers(wanted, show)

    def _answers(self, wanted: _Wanted, show: "Staged") -> None:
        from sequencer.planning.open_show import OpenShow

        if self._open is None:
            self._open = OpenShow(show, fly=self._flight.fly)
        elif self._open.show is not show:
            self._open.take(show)

        def told(subject: str, share: float) -> None:
            self._progress(wanted.run, subject, share)

        self._give_way()
        for answer in self._open.answers(progress=told):
            stop_if_unwanted()
            self._tell_answer(wanted, show, answer)
            if answer.check in answer.left:  # as drawn: by now joins and distances are told
                self._flight.begin(show)
            self._give_way()

    def _give_way(self) -> None:
        """Wait while a page is told what it draws: one interpreter does one thing at a time, and this takes but a moment."""
        with self._news:
            turn = self._turn
            self._news.wait_for(lambda: not self._viewing or self._past(turn), _VIEW)

    def _tell_answer(self, wanted: _Wanted, show: "Staged", answer: "Answer") -> None:
        from sequencer.desk.views.findings_view import finding_values, report_view
        from sequencer.outputs.report.printed import finite

        if answer.report is not None:
            self._report, self._complete = (show, answer.report), wanted.run
            name = Path(self._path).name
            whole = report_view(show, answer.report, wanted.text, name, answer.offered)
            self._tell("report", wanted.run, report=whole)
            return
        outcome = answer.outcome
        again = answer.check in answer.left  # as drawn first
        self._tell(
            "answer",
            wanted.run,
            check=answer.check,
            drawn=again,
            left=list(answer.left),
            findings=[finding_values(show, one, flown=not again) for one in outcome.findings],
            clearances=[finite(asdict(one)) for one in outcome.clearances],
            unseen=list(outcome.not_checked),
        )

    def _hearing(self, run: int) -> Progress:
        return lambda subject, share: self._progress(run, subject, share, hearing=True)

    def _progress(self, run: int, subject: str, share: float, *, hearing: bool = False) -> None:
        stop_if_unwanted()
        now = time.monotonic()
        if now - self._told > _OFTEN:
            self._told = now
            self._tell("progress", run, words=subject, share=round(share, 3), hearing=hearing)

    # --- staging ---

    def _staged(
        self, text: str, progress: Progress | None = None, *, aside: bool = False
    ) -> "Staged":
        """The show of a text on its song; one that is staged aside is not what the next one is staged from.

        Raises
        ------
        InputError
            If it cannot be staged.
        """
        from sequencer.show.operations.operation import read_again, shown_text
        from sequencer.staging.entries.written_count import other_count_fault
        from sequencer.staging.timeline import staged

        with self._staging:
            known = self._stagings.get(text)
            if known is None:
                try:
                    shown = shown_text(text, self._path)
                    read = read_again(shown, self._shown or shown)
                    self._shown = self._shown if aside else shown
                    song = self._heard(read, progress)
                    before = self._last
                    if before is not None and before.heard is not song:
                        before = None
                    try:
                        known = staged(read, song, before=before)
                    except InputError as error:
                        raise other_count_fault(read, song) or error from None
                    self._last = self._last if aside else known
                except InputError as error:
                    if error.code in {"no-track", "cannot-read"}:
                        raise  # it may be there the next time
                    known = error
                self._stagings[text] = known
                while len(self._stagings) > _MOST_STAGED:
                    self._stagings.popitem(last=False)
            if isinstance(known, InputError):
                raise known
            return known

    def _heard(self, read: "ReadShow", progress: Progress | None) -> "Song":
        from sequencer.tasks.songs import song_of

        self._song = song_of(read, known=self._song, without_track=True, progress=progress)
        return self._song

    def _read_and_heard(self, text: str) -> tuple["ReadShow", "Song"]:
        """What a text says, and its song as it was heard; the show may be one that cannot be staged."""
        from sequencer.show.operations.operation import read_again, shown_text

        shown = shown_text(text, self._path)
        read = read_again(shown, shown)
        return read, self._heard(read, None)

    def _newest(self) -> tuple[_Wanted, "Staged"]:
        wanted = self._wanted
        if wanted is None:
            raise Stopped
        return wanted, self._staged(wanted.text)

    # --- questions ---

    def _trial(self, given: Mapping[str, Any]) -> None:
        """Whether a text can be staged."""
        self._staged(given["text"])

    def _view(self, _given: Mapping[str, Any]) -> bytes:
        from sequencer.desk.views.show_view import show_view

        wanted, show = self._newest()
        if self._shown_view is None or self._shown_view[:2] != (wanted.revision, show):
            content = json_bytes({"revision": wanted.revision, **show_view(show)})
            self._shown_view = wanted.revision, show, content
        return self._shown_view[2]

    def _cues(self, _given: Mapping[str, Any]) -> bytes:
        """The run cues, as the operators' sheet prints them."""
        from sequencer.outputs.sheets.parts.run_cues import run_cues

        wanted, show = self._newest()
        return json_bytes(
            {"revision": wanted.revision, "cues": [asdict(each) for each in run_cues(show)]}
        )

    def _song_view(self, _given: Mapping[str, Any]) -> bytes:
        """What was heard in the track, also of a show that cannot be staged."""
        from sequencer.desk.views.show_view import song_view

        wanted = self._wanted
        if wanted is None:
            raise Stopped
        try:
            _, show = self._newest()
            song = show.song
        except InputError:
            _, song = self._read_and_heard(wanted.text)
        return json_bytes({"revision": wanted.revision, **song_view(song)})

    def _count(self, given: Mapping[str, Any]) -> bytes:
        """The count that a text comes to, and what it moves; also if the show cannot be danced on it."""
        from sequencer.desk.views.count_view import count_view
        from sequencer.desk.views.held_borders import held_count
        from sequencer.staging.entries.counted_song import as_counted

        wanted = self._wanted
        if wanted is None:
            raise Stopped
        try:
            now: Staged | None = self._staged(wanted.text)
        except InputError:
            now = None
        text, held = given["text"], None
        if given["hold"]:
            read, heard = self._read_and_heard(text)
            before = 0.0 if now is None else now.show.track.corrections.shift
            text, held = held_count(text, read, heard, given["hold"], before)
        try:
            after = self._staged(text)
            song, tempo, trouble = after.song, after.tempo, None
        except InputError as error:
            after, trouble = None, error_values(error, self._path)
            song, tempo = as_counted(*self._read_and_heard(text))
        values = count_view(song, tempo, now, after)
        return json_bytes({"revision": wanted.revision, "trouble": trouble, "held": held, **values})

    def _taps(self, given: Mapping[str, Any]) -> bytes:
        """What taps say about the count."""
        from sequencer.desk.views.tapped_count import tapped_count

        wanted, show = self._newest()
        corrections = show.show.track.corrections
        try:
            values = tapped_count(given["taps"], show.song, corrections, given["latency"])
        except ValueError as error:
            place = Place(Path(self._path).name)
            raise InputError("bad-taps", place, str(error), "tap along with the song") from error
        return json_bytes({"revision": wanted.revision, **values})

    def _dance(self, given: Mapping[str, Any]) -> bytes:
        from sequencer.checks.outcome import Outcome
        from sequencer.checks.suite import reported
        from sequencer.outputs.rehearsal.page_data import show_document
        from sequencer.staging.in_flight.flown_show import flown_show

        wanted, show = self._newest()

        def still_wanted(_subject: str = "", _share: float = 0.0) -> None:
            if self._wanted is not wanted:
                raise Stopped

        known = self._report
        report = known[1] if known and known[0] is show else reported(show, Outcome())
        with stoppable(lambda: self._wanted is not wanted):
            if given["flown"]:
                flown = flown_show(show, still_wanted)
                document = show_document(flown.staged, report, show)
            else:
                document = show_document(show, report)
        return json_bytes({"revision": wanted.revision, **document})

    def _sound(self, given: Mapping[str, Any]) -> tuple[str, bytes | str]:
        """The track's path, once it was heard; or as MP3."""
        from sequencer.tasks.songs import track_of

        _, show = self._newest()
        if show.read is None:
            raise Stopped
        track = track_of(show.read)
        if not track.is_file():
            raise InputError(
                "no-track", Place(Path(self._path).name), f"the track {show.show.track.file!r} is not there",
                "put it there: without it the page is silent",
            )  # fmt: skip
        if not given["mp3"]:
            return "path", str(track)
        return "mp3", _as_mp3(track)

    def _patterns(self, given: Mapping[str, Any]) -> bytes:
        from sequencer.desk.views.pattern_list import pattern_list

        wanted, show = self._newest()
        with stoppable(lambda: self._wanted is not wanted):
            return json_bytes({"revision": wanted.revision, **pattern_list(show, given)})

    def _room(self, given: Mapping[str, Any]) -> dict[str, Any]:
        """Where somebody new has room; staged aside, as for a comparison."""
        from sequencer.desk.file.show_operations import done_on
        from sequencer.desk.views.room_view import room_view

        wanted, show = self._newest()
        name = Path(self._path).name

        def with_them(spots: Mapping[str, Any]) -> "Staged":
            add = {"do": "add-performer", "performer": given["performer"], "spots": spots}
            return self._staged(done_on(wanted.text, name, add)[0], aside=True)

        anywhere = {
            key: {"at": [0, 0]}
            for key, one in show.show.formations.items()
            if one.spots is not None
        }
        first = with_them(anywhere)
        values = room_view(first, first.dancers[-1].name, with_them)
        return {"revision": wanted.revision, **values}

    def _compare(self, given: Mapping[str, Any]) -> bytes:
        """Two texts compared; what is staged for it changes nothing in how the newest one is staged."""
        from sequencer.desk.views.compared_view import comparison_view

        name = Path(self._path).name
        stage = partial(self._staged, aside=True)
        return json_bytes(comparison_view(given["old"], given["new"], stage, name))

    def _switched(self, given: Mapping[str, Any]) -> dict[str, Any]:
        """What a switch of who is there changed; staged aside, as for a comparison."""
        from sequencer.desk.views.switch_view import switch_view

        stage = partial(self._staged, aside=True)
        name = Path(self._path).name
        return switch_view(given["before"], given["after"], given["reports"], stage, name)

    # --- the pipe ---

    def _tell(self, kind: str, run: int, **said: Any) -> None:
        self._send((kind, run, said))

    def _send(self, message: tuple[Any, ...]) -> None:
        with self._sending:
            try:
                self._pipe.send(message)
            except (BrokenPipeError, OSError):
                os._exit(0)


def _as_mp3(track: Path) -> bytes:
    import base64

    from sequencer.outputs.rehearsal.song_audio import embedded_track
    from sequencer.outputs.sound.recording import read_recording

    return base64.b64decode(embedded_track(track, lambda: read_recording(track)).data)


_SUPERSEDED = {
    "message": "the show has changed meanwhile; ask again [superseded]",
    "what": "the show has changed meanwhile", "why": "", "mend": "ask again", "line": None, "column": None,
}  # fmt: skip
