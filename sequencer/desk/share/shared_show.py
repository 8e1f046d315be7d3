"""A show that is shared to be looked at: what watchers are told, and no more; each answer is worked out once for all of them."""

import asyncio
from collections.abc import AsyncGenerator, Awaitable, Callable, Iterator, Mapping
from contextlib import aclosing
from typing import Any

from sequencer.desk.connection.page_events import PageEvents
from sequencer.desk.connection.page_values import json_bytes
from sequencer.desk.share.share_door import ShareDoor
from sequencer.desk.show_server import ShowServer

MOST_STREAMS = 80  # pages that watch at once
_STATE = ("file", "revision", "readable", "saved")
_CHECKS = (
    "revision", "staged", "open", "done", "drawn", "words", "share", "hearing", "counts", "complete", "ok",
)  # fmt: skip
_TOLD = {
    "show": _STATE, "staged": ("revision",), "checks": _CHECKS,
    "findings": ("revision", "check", "as"), "end": ("message",),
}  # fmt: skip
_FINDINGS = (*_CHECKS, "findings", "entries", "unseen", "cautions")
_FINDING = (
    "id", "code", "severity", "who", "start", "end", "position", "message", "remedies", "source", "as",
)  # fmt: skip
EXPOSED = (
    "the sheet with everybody's name, where everybody stands and walks, the dance with everybody's height and the findings, "
    "and hears the song"
)


class SharedShow:
    """An open show as watchers see it.

    Parameters
    ----------
    server : ShowServer
    address : str
        At which it is shared.
    """

    def __init__(self, server: ShowServer, address: str) -> None:
        self._server, self.address = server, address
        self.door = ShareDoor()
        self.watchers = PageEvents()
        self.over = False
        self._known: dict[str, tuple[int, Any]] = {}  # answers by their names, with their revisions
        self._turns: dict[str, asyncio.Lock] = {}
        server.events.followers.append(self._follow)

    def __repr__(self) -> str:
        return f"<SharedShow at {self.address}, {self.watchers.pages} watch>"

    # --- for whoever plans ---

    def values(self) -> dict[str, Any]:
        """How it is shared, for the page of whoever plans."""
        return {
            "address": self.address, "code": self.door.code, "watching": self.watchers.pages,
            "exposed": EXPOSED, "shut": self.door.shut, "over": self.over,
        }  # fmt: skip

    def end(self, message: str) -> None:
        """Share it no longer."""
        if not self.over:
            self.over = True
            self.door.send_away()
            self.watchers.end(message)
            self.tell()

    def tell(self) -> None:
        """Tell whoever plans how it is shared now."""
        self._server.events.tell("share", self.values())

    # --- for those who watch ---

    def state(self) -> dict[str, Any]:
        """What is said of the show file: neither its text nor where it lies."""
        return _only(self._server.summary(), _STATE)

    def findings(self) -> dict[str, Any]:
        """What stands against the show, without mends and without places in the file."""
        found = _only(self._server.link.findings_values(), _FINDINGS)
        found["findings"] = [{**_only(one, _FINDING), "mends": [], "paths": []} for one in found["findings"]]  # fmt: skip
        return found

    async def once(self, name: str, work: Callable[[], Awaitable[Any]]) -> Any:
        """An answer about the newest revision, worked out once however many ask.

        Parameters
        ----------
        name : str
        work : callable
            Works it out.
        """
        async with self._turns.setdefault(name, asyncio.Lock()):
            revision = self._server.opened.revision
            known = self._known.get(name)
            if known is None or known[0] != revision:
                known = self._known[name] = revision, await work()
            return known[1]

    async def stream(self) -> AsyncGenerator[bytes, None]:
        """A watcher's stream of events, with how things are first."""
        try:
            async with aclosing(self.watchers.stream(self._how_things_are)) as stream:
                joined = False
                async for part in stream:
                    if not joined:
                        joined = True
                        self.tell()
                    yield part
        finally:
            self.tell()

    def _how_things_are(self) -> Iterator[tuple[str, Mapping[str, Any]]]:
        yield "show", self.state()
        yield "checks", _only(self._server.link.checks_values(), _CHECKS)

    def _follow(self, event: str, values: Mapping[str, Any]) -> None:
        if event in _TOLD:
            self.watchers.tell(event, _only(values, _TOLD[event]))


def _only(values: Mapping[str, Any], keys: tuple[str, ...]) -> dict[str, Any]:
    return {key: values[key] for key in keys if key in values}


def as_bytes(values: Any) -> bytes:
    """An answer as it is sent."""
    return values if isinstance(values, bytes) else json_bytes(values)
