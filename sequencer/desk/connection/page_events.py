"""What the server tells its pages, as server-sent events; a page is open as long as its stream is.

Source: WHATWG HTML, server-sent events (the event stream format).
"""

import asyncio
import time
from collections.abc import AsyncGenerator, Callable, Iterable, Mapping
from contextlib import aclosing
from typing import Any

from starlette.types import Receive, Scope, Send

from sequencer.desk.connection.page_values import json_bytes

BEAT = 10.0  # [s] between two signs of life on a stream that has nothing to tell
_MOST_WAITING = 2_000  # events that a page may leave unread, as one that sleeps does
_LATEST = {"checks", "show"}  # of which only the newest matters


class PageEvents:
    """The streams of all pages that are open."""

    def __init__(self) -> None:
        self._streams: list[_Stream] = []
        self._left = time.monotonic()  # when the last page left
        self.followers: list[Callable[[str, Mapping[str, Any]], None]] = []  # are told as well
        self.met = False  # whether any page has come yet
        self.ended = False

    def __repr__(self) -> str:
        return f"<PageEvents: {len(self._streams)} pages>"

    @property
    def pages(self) -> int:
        """How many pages are open."""
        return len(self._streams)

    @property
    def alone(self) -> float:
        """For how long no page has been open [s]."""
        return 0.0 if self._streams else time.monotonic() - self._left

    def tell(self, event: str, values: Mapping[str, Any]) -> None:
        """Tell every page something."""
        text = _event(event, values)
        for stream in list(self._streams):
            stream.put(event, text)
        for follow in self.followers:
            follow(event, values)

    def end(self, message: str) -> None:
        """Tell every page that the server ends, and end its stream."""
        self.tell("end", {"message": message})
        self.ended = True
        for stream in list(self._streams):
            stream.close()

    async def stream(
        self, first: Callable[[], Iterable[tuple[str, Mapping[str, Any]]]] = tuple
    ) -> AsyncGenerator[bytes, None]:
        """A page's stream.

        Parameters
        ----------
        first : callable
            How things are, as (event, values), which it is told at once. It is asked once the stream is among those that are
            told: of what happens between the two, a page would never hear.
        """
        own = _Stream()
        self._streams.append(own)
        self.met = True
        try:
            yield b": open\n\n" + b"".join(_event(event, values) for event, values in first())
            while not own.closed:
                yield await own.next()
        finally:
            self._streams.remove(own)
            self._left = time.monotonic()


class _Stream:
    def __init__(self) -> None:
        self.closed = False
        self._last = False  # what is waiting is the last that is told
        self._waiting: dict[object, bytes] = {}  # in the order in which it is told
        self._news = asyncio.Event()

    def put(self, event: str, text: bytes) -> None:
        key: object = event if event in _LATEST else object()
        self._waiting.pop(key, None)
        self._waiting[key] = text
        if len(self._waiting) > _MOST_WAITING:
            self.closed = True  # it comes again and is told how things are then
        self._news.set()

    def close(self) -> None:
        self._last = True
        self._news.set()

    async def next(self) -> bytes:
        if not self._waiting and not self._last:
            self._news.clear()
            try:
                await asyncio.wait_for(self._news.wait(), BEAT)
            except TimeoutError:
                return b": still here\n\n"
        text = b"".join(self._waiting.values())
        self._waiting.clear()
        self.closed = self.closed or self._last
        return text


class EventAnswer:
    """The answer that is a page's stream; it ends as soon as the page is gone.

    Parameters
    ----------
    stream : async generator of bytes
    """

    def __init__(self, stream: AsyncGenerator[bytes, None]) -> None:
        self._stream = stream

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Send what there is to tell until the page leaves or the server ends."""
        del scope
        headers = [
            (b"content-type", b"text/event-stream; charset=utf-8"),
            (b"x-accel-buffering", b"no"),
        ]
        await send({"type": "http.response.start", "status": 200, "headers": headers})
        telling = asyncio.create_task(self._tell(send))
        leaving = asyncio.create_task(_left(receive))
        try:
            await asyncio.wait((telling, leaving), return_when=asyncio.FIRST_COMPLETED)
        finally:
            for task in (telling, leaving):
                task.cancel()
            await asyncio.gather(telling, leaving, return_exceptions=True)

    async def _tell(self, send: Send) -> None:
        async with aclosing(self._stream) as stream:
            async for part in stream:
                await send({"type": "http.response.body", "body": part, "more_body": True})
        await send({"type": "http.response.body", "body": b"", "more_body": False})


async def _left(receive: Receive) -> None:
    while (await receive())["type"] != "http.disconnect":
        pass


def _event(event: str, values: Mapping[str, Any]) -> bytes:
    return b"event: " + event.encode() + b"\ndata: " + json_bytes(values) + b"\n\n"
