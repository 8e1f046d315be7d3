"""A second process that flies performers of an open show, so that two cores work at what takes longest.

The process that checks hands over a show as drawn with half of those who are not flown yet, flies the others, and takes whoever
the second process has not begun with by then. Once its part is flown, the second process works out what checks will ask of it.
What it finds comes back as records by content: the answer is the same to the last byte whoever flew. Where the second process is slow, hangs or dies, only time is lost: whoever is waited for is soon flown here too,
and no thread but the one that sends ever waits for the pipe.
"""

import os
import pickle
import signal
import threading
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import replace
from multiprocessing.connection import Connection
from time import monotonic
from typing import TYPE_CHECKING

from sequencer import kept
from sequencer.progress import Progress, Stopped, stop_if_unwanted, stoppable, within

if TYPE_CHECKING:
    from sequencer.motion.performers.dancer import Dancer
    from sequencer.staging.staged import Staged

_MOMENT = 0.02  # [s] between two looks whether somebody is flown
_PATIENCE = 2.0  # [s] after which whoever the second process has begun with is flown here too; a flight takes many times as long


def fly_for(pipe: Connection) -> None:
    """Fly whom the process that checks hands over, until its pipe ends.

    Parameters
    ----------
    pipe : Connection
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    second = SecondPilot(pipe)
    threading.Thread(target=_until_it_ends, args=(second.fly,), daemon=True).start()
    _until_it_ends(second.listen)


def _until_it_ends(work: Callable[[], None]) -> None:
    """Work that takes this process with it, also where it breaks, as on a message that is not whole: the other one then flies all."""
    with suppress(Exception):
        work()
    os._exit(0)


class SecondPilot:
    """The second process: it flies one performer after the other.

    Parameters
    ----------
    pipe : Connection
    """

    def __init__(self, pipe: Connection) -> None:
        self._pipe = pipe
        self._news = threading.Condition()
        self._turn = 0
        self._given: tuple[int, bytes, Sequence[str]] | None = None
        self._left: set[tuple[int, str]] = set()  # whom the other process flies itself

    def listen(self) -> None:
        """Take shows until the pipe ends."""
        while True:
            try:
                kind, turn, *rest = self._pipe.recv()
            except (EOFError, OSError):
                return
            with self._news:
                if kind == "fly":
                    self._turn, self._given, self._left = turn, (turn, *rest), set()
                    self._news.notify_all()
                elif kind == "leave":
                    self._left.add((turn, rest[0]))
                else:
                    self._turn = turn

    def fly(self) -> None:
        """Fly whoever is handed over."""
        while True:
            with self._news:
                while self._given is None:
                    self._news.wait()
                (turn, packed, names), self._given = self._given, None
            show = pickle.loads(packed)  # noqa: S301  # from our own process
            flown: list[Dancer] = []
            for name in names:
                if turn != self._turn:
                    break
                if (turn, name) not in self._left:
                    flown += self._fly_one(show, name, turn)
            self._look_ahead(show, flown, turn)

    def _fly_one(self, show: "Staged", name: str, turn: int) -> "list[Dancer]":
        """Fly one performer, who is returned if that came to an end."""
        from sequencer.staging.in_flight.flown_show import flown_performer

        out: list[Dancer] = []
        self._pipe.send(("begun", turn, name))
        # What is wrong is told by the process that checks, which finds this performer not flown.
        unwanted = stoppable(lambda: self._turn != turn)
        with kept.collected() as records, suppress(Stopped, Exception), unwanted:
            stop_if_unwanted()
            drawn = next(one for one in show.dancers if one.name == name)
            out.append(flown_performer(show, drawn))
        with suppress(OSError):
            self._pipe.send(
                ("flown", turn, name, records)
            )  # links that were found, also if stopped
        return out

    def _look_ahead(self, show: "Staged", flown: "Sequence[Dancer]", turn: int) -> None:
        """Work out what the checks will ask of flights, while the other process still flies."""
        from sequencer.checks.dance.flown_in_place import look_at_flight

        for dancer in flown:
            unwanted = stoppable(lambda: self._turn != turn)
            with kept.collected() as records, suppress(Stopped, Exception), unwanted:
                stop_if_unwanted()
                look_at_flight(show, dancer)
            if records:
                with suppress(OSError):
                    self._pipe.send(("looked at", turn, dancer.name, records))


class SharedFlight:
    """The flight of a show in two processes, as the one that checks sees it.

    Parameters
    ----------
    pipe : Connection, optional
        To the second process; without it everybody is flown here.
    """

    def __init__(self, pipe: Connection | None) -> None:
        self._pipe = pipe
        self._turn = 0
        self._shared: Staged | None = None  # the newest show that was handed over
        self._theirs: dict[str, bool] = {}  # by name, whether the second process has begun
        self._hangs = False  # it was waited for in vain, and has said nothing since
        self._outbox: list[tuple[object, ...]] = []  # all of the newest turn
        self._news = threading.Condition()  # held for a moment only, never while something is sent
        if pipe is not None:
            for work in (self._listen, self._send):
                threading.Thread(target=work, args=(pipe,), daemon=True).start()

    def begin(self, show: "Staged") -> None:
        """Hand half of those over who are not flown yet.

        Parameters
        ----------
        show : Staged
            As drawn.
        """
        from sequencer.staging.in_flight.flown_show import unflown

        if self._pipe is None or self._hangs or self._shared is show:
            return
        names = [each.name for each in unflown(show)]
        theirs = names[(len(names) + 1) // 2 :]
        if not theirs:
            return
        given = tuple(each for each in show.dancers if each.name in theirs)
        bare = replace(
            show, dancers=given, book={}, read=None, heard=None, blocks=(), stops=(), accents=()
        )
        try:
            packed = pickle.dumps(bare, pickle.HIGHEST_PROTOCOL)
        except (pickle.PicklingError, AttributeError, TypeError):
            return  # a law of another package that no process can be given
        with self._news:
            self._shared, self._theirs = show, dict.fromkeys(theirs, False)
            self._begin_turn("fly", packed, theirs)

    def stop(self) -> None:
        """Let the second process rest: nobody wants what it flies."""
        with self._news:
            if self._shared is not None:
                self._shared, self._theirs = None, {}
                self._begin_turn("stop")

    def fly(self, show: "Staged", progress: Progress | None = None) -> None:
        """Fly everybody in a show, here and in the second process.

        Parameters
        ----------
        show : Staged
            As drawn.
        progress : callable, optional

        Raises
        ------
        Stopped
            If nobody wants it any more.
        """
        from sequencer.staging.in_flight.flown_show import flown_performer, flown_show

        self.begin(show)
        theirs = list(self._theirs) if self._shared is show else []
        mine = [each for each in show.dancers if each.name not in theirs]
        share = len(mine) / max(len(show.dancers), 1)
        for k, dancer in enumerate(mine):
            low, high = share * k / len(mine), share * (k + 1) / len(mine)
            flown_performer(show, dancer, within(progress, low, high))
        for dancer in reversed([each for each in show.dancers if each.name in theirs]):
            self._fly_theirs(show, dancer, within(progress, share, share))
        flown_show(show, within(progress, share, 1.0))

    def _fly_theirs(self, show: "Staged", dancer: "Dancer", progress: Progress | None) -> None:
        """See that somebody is flown who was handed over: here, unless the second process comes to an end with them soon."""
        from sequencer.staging.in_flight.flown_show import flown_performer

        name = dancer.name
        if self._is_flown_there(name):
            # What the other process finds first ends this; if it dies, this goes on.
            there_first = stoppable(lambda: name not in self._theirs and self._pipe is not None)
            with suppress(Stopped), there_first:
                flown_performer(show, dancer, progress)
            stop_if_unwanted()
            if name in self._theirs:  # it was faster to fly them here
                self.stop()
        flown_performer(show, dancer, progress)  # if they are flown, they are known

    def _is_flown_there(self, name: str) -> bool:
        """Whether the second process still flies somebody after a short wait; whom it has not begun with is taken from it."""
        with self._news:
            if self._theirs.get(name) is False:
                del self._theirs[name]
                self._outbox.append(("leave", self._turn, name))
                self._news.notify_all()
            until = monotonic() + _PATIENCE
            while name in self._theirs:
                stop_if_unwanted()
                if monotonic() > until:
                    self._hangs = True
                    return True
                self._news.wait(_MOMENT)
            return False

    def _listen(self, pipe: Connection) -> None:
        while True:
            try:
                kind, turn, name, *rest = pipe.recv()
                if rest:
                    kept.take(rest[0])
            except Exception:  # noqa: BLE001  # the end of the pipe, or a message that is not whole
                break
            with self._news:
                self._hangs = False
                if turn == self._turn and name in self._theirs:
                    if kind == "begun":
                        self._theirs[name] = True
                    elif kind == "flown":
                        del self._theirs[name]
                    self._news.notify_all()
        with self._news:  # it has died: all is flown here
            self._pipe = None
            self._theirs = {}
            self._news.notify_all()

    def _begin_turn(self, kind: str, *given: object) -> None:
        """Say what is wanted from now on; what was not sent by now is wanted no more. With `_news` held."""
        self._turn += 1
        self._outbox = [(kind, self._turn, *given)]
        self._news.notify_all()

    def _send(self, pipe: Connection) -> None:
        """Send what is to be said, in one thread: a process that hangs lets the pipe fill up, and nobody else waits for it."""
        with suppress(OSError):
            while True:
                with self._news:
                    while not self._outbox and self._pipe is not None:
                        self._news.wait()
                    if self._pipe is None:
                        break
                    message = self._outbox.pop(0)
                pipe.send(message)
            pipe.close()  # so that the other process ends, where it lives
