"""Who may ask: pages of this server, on this machine, that know its secret."""

import pytest

from sequencer.desk.connection.page_guard import PageGuard
from tests.in_a_thread import run_apart

GOOD = {"host": "127.0.0.1:8123", "x-sequencer-secret": "s3cret"}


def asked(path="/api/show", headers=GOOD, client=("127.0.0.1", 5), more=(), kind="http"):
    """Status and headers of an answer, and whether the application was asked."""
    reached, sent = [], []

    async def app(_scope, _receive, send):
        reached.append(True)
        await send({"type": "http.response.start", "status": 200, "headers": []})
        await send({"type": "http.response.body", "body": b""})

    async def send(message):
        sent.append(message)

    raw = [*((name.encode(), value.encode()) for name, value in headers.items()), *more]
    scope = {"type": kind, "method": "GET", "path": path, "headers": raw, "client": client}
    guard = PageGuard(app, hosts=["127.0.0.1:8123"], secret="s3cret")  # noqa: S106
    run_apart(guard(scope, None, send))
    if not sent:
        return None, {}, bool(reached)
    return sent[0]["status"], dict(sent[0]["headers"]), bool(reached)


def test_a_page_of_this_server_may_ask():
    for headers in (
        GOOD,
        GOOD | {"origin": "http://127.0.0.1:8123"},
        GOOD | {"sec-fetch-site": "same-origin"},
        GOOD | {"sec-fetch-site": "none"},
    ):
        status, said, reached = asked(headers=headers)
        assert (status, reached) == (200, True)
        assert said[b"content-security-policy"].startswith(b"default-src 'none'")
        assert said[b"x-content-type-options"] == b"nosniff"
    assert asked("/", {"host": GOOD["host"]})[0] == 200
    assert (
        asked("/", {"host": GOOD["host"], "sec-fetch-site": "cross-site"})[0] == 200
    )  # a bookmark


@pytest.mark.parametrize(
    "headers",
    [
        {"host": "127.0.0.1:8123"},
        GOOD | {"x-sequencer-secret": "s3cre"},
        GOOD | {"x-sequencer-secret": ""},
        GOOD | {"x-sequencer-secret": "s3cret2"},
        GOOD | {"host": "127.0.0.1"},
        GOOD | {"host": "localhost:8123"},
        GOOD | {"host": "evil.example:8123"},
        {"x-sequencer-secret": "s3cret"},
        GOOD | {"origin": "null"},
        GOOD | {"origin": "http://127.0.0.1:8124"},
        GOOD | {"origin": "https://127.0.0.1:8123"},
        GOOD | {"origin": "http://evil.example"},
        GOOD | {"sec-fetch-site": "cross-site"},
        GOOD | {"sec-fetch-site": "same-site"},
    ],
)
def test_all_others_are_refused_before_anything_is_done(headers):
    status, said, reached = asked(headers=headers)
    assert (status, reached) == (403, False)
    assert b"content-security-policy" in said


def test_two_of_a_header_are_refused():
    assert asked(more=[(b"host", b"127.0.0.1:8123")])[0] == 403
    assert asked(more=[(b"x-sequencer-secret", b"s3cret")])[0] == 403
    assert asked(more=[(b"origin", b"http://127.0.0.1:8123"), (b"origin", b"null")])[0] == 403
    assert asked(headers={"host": GOOD["host"]}, more=[(b"x-sequencer-secret", b"\xff")])[0] == 403


@pytest.mark.parametrize("client", [None, ("192.168.1.7", 5), ("8.8.8.8", 5), ("testclient", 5)])
def test_another_machine_is_refused(client):
    assert asked(client=client)[0] == 403
    assert asked("/", {"host": GOOD["host"]}, client=client)[0] == 403


def test_nothing_but_http_is_served():
    assert asked(kind="websocket") == (None, {}, False)
