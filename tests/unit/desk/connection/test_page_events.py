"""What pages are told, and when one is open."""

import asyncio
import json

from sequencer.desk.connection import page_events
from sequencer.desk.connection.page_events import EventAnswer, PageEvents
from tests.in_a_thread import run_apart


def parsed(content):
    events = []
    for part in content.decode().split("\n\n"):
        lines = dict(
            line.split(": ", 1) for line in part.split("\n") if line and not line.startswith(":")
        )
        if lines:
            events.append((lines["event"], json.loads(lines["data"])))
    return events


def run(work):
    return run_apart(work())


def test_a_page_is_told_how_things_are_and_then_what_happens():
    async def work():
        events = PageEvents()
        assert not events.met
        stream = events.stream(lambda: [("show", {"revision": 1})])
        got = [await anext(stream)]
        assert (events.pages, events.met, events.alone) == (1, True, 0.0)
        events.tell("staged", {"text": "a\nb\r\n\u2028"})
        events.tell("findings", {"n": 1})
        got.append(await anext(stream))
        events.end("over")
        got += [part async for part in stream]
        assert events.pages == 0
        return parsed(b"".join(got))

    assert run(work) == [
        ("show", {"revision": 1}),
        ("staged", {"text": "a\nb\r\n\u2028"}),
        ("findings", {"n": 1}),
        ("end", {"message": "over"}),
    ]


def test_what_happens_just_before_a_page_listens_is_told_all_the_same():
    """A page that is not told that the show is staged waits for its sheet without end."""

    async def work():
        events, staged = PageEvents(), []
        stream = events.stream(lambda: [("staged", {"revision": each}) for each in staged])
        staged.append(1)  # the answer has begun, and nobody listens yet
        events.tell("staged", {"revision": 1})
        got = await anext(stream)
        await stream.aclose()
        return parsed(got)

    assert run(work) == [("staged", {"revision": 1})]


def test_of_how_far_the_checks_are_only_the_newest_is_told():
    async def work():
        events = PageEvents()
        stream = events.stream()
        await anext(stream)
        for k in range(50):
            events.tell("checks", {"k": k})
            events.tell("findings", {"k": k})
        got = parsed(await anext(stream))
        await stream.aclose()
        return got

    got = run(work)
    assert [said["k"] for event, said in got if event == "checks"] == [49]
    assert [said["k"] for event, said in got if event == "findings"] == list(range(50))


def test_a_page_that_reads_nothing_is_let_go(monkeypatch):
    monkeypatch.setattr(page_events, "_MOST_WAITING", 5)

    async def work():
        events = PageEvents()
        stream = events.stream()
        await anext(stream)
        for k in range(20):
            events.tell("findings", {"k": k})
        rest = [part async for part in stream]
        return events.pages, len(rest)

    assert run(work)[0] == 0


def test_a_silent_stream_shows_that_it_lives(monkeypatch):
    monkeypatch.setattr(page_events, "BEAT", 0.01)

    async def work():
        stream = PageEvents().stream()
        got = [await anext(stream), await anext(stream)]
        await stream.aclose()
        return got

    assert run(work)[1].startswith(b":")


def test_a_page_that_leaves_is_no_page_at_once():
    async def work():
        events, sent, left = PageEvents(), [], asyncio.Event()

        async def receive():
            await left.wait()
            return {"type": "http.disconnect"}

        async def send(message):
            sent.append(message)

        answering = asyncio.create_task(EventAnswer(events.stream())({}, receive, send))
        while not events.pages:
            await asyncio.sleep(0)
        left.set()
        await asyncio.wait_for(answering, 60)
        assert events.pages == 0
        return sent[0]

    start = run(work)
    assert (b"content-type", b"text/event-stream; charset=utf-8") in start["headers"]
