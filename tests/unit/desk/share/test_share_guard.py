"""Who may watch: pages of this server, on the same network, by somebody who was let in; and nothing but looking."""

import pytest

from sequencer.desk.share.share_door import ShareDoor
from sequencer.desk.share.share_guard import ShareGuard, is_nearby
from tests.in_a_thread import run_apart

HOST = "192.168.1.5:4848"


def asked(path="/api/show", method="GET", client="192.168.1.9", more=(), **headers):
    """Status of an answer, its headers, and whether the application was asked."""
    reached, sent = [], []
    door = ShareDoor()
    token = door.join(door.code, "192.168.1.9")
    said = {"host": HOST, "x_sequencer_guest": token} | headers

    async def app(_scope, _receive, send):
        reached.append(True)
        await send({"type": "http.response.start", "status": 200, "headers": []})
        await send({"type": "http.response.body", "body": b""})

    async def send(message):
        sent.append(message)

    raw = [
        (name.replace("_", "-").encode(), value.encode("latin-1"))
        for name, value in said.items()
        if value is not None
    ]
    scope = {
        "type": "http", "method": method, "path": path, "headers": [*raw, *more],
        "client": None if client is None else (client, 5),
    }  # fmt: skip
    run_apart(ShareGuard(app, host=HOST, door=door)(scope, None, send))
    return sent[0]["status"], dict(sent[0]["headers"]), bool(reached)


def test_who_was_let_in_may_look():
    for headers in ({}, {"origin": f"http://{HOST}"}, {"sec_fetch_site": "same-origin"}):
        status, said, reached = asked(**headers)
        assert (status, reached) == (200, True)
        assert said[b"content-security-policy"].startswith(b"default-src 'none'")
        assert said[b"cache-control"] == b"no-store"
    assert asked("/", x_sequencer_guest=None)[0] == 200
    assert asked("/page.js", x_sequencer_guest=None)[0] == 200
    assert asked("/api/join", "POST", x_sequencer_guest=None)[0] == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"x_sequencer_guest": None}, {"x_sequencer_guest": ""}, {"x_sequencer_guest": "guess"},
        {"x_sequencer_guest": "\xff\xfe"}, {"host": None}, {"host": "192.168.1.5"}, {"host": "localhost:4848"},
        {"host": "evil.example:4848"}, {"origin": "null"}, {"origin": "http://evil.example"},
        {"origin": "https://192.168.1.5:4848"}, {"sec_fetch_site": "cross-site"}, {"sec_fetch_site": "same-site"},
        {"client": "8.8.8.8"}, {"client": None}, {"client": "2a00::1"}, {"client": "nonsense"},
    ],
)  # fmt: skip
def test_all_others_are_refused(headers):
    status, said, reached = asked(**headers)
    assert (status, reached) == (403, False)
    assert b"content-security-policy" in said


def test_two_tokens_or_two_hosts_are_none():
    assert asked(more=[(b"x-sequencer-guest", b"guess")])[0] == 403
    assert asked(more=[(b"host", b"evil.example")])[0] == 403


@pytest.mark.parametrize(
    "method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "CONNECT", "HEAD"]
)
@pytest.mark.parametrize(
    "path", ["/api/show", "/api/operations", "/api/save", "/api/undo", "/", "/api/join"]
)
def test_nothing_but_looking(method, path):
    if (method, path) == ("POST", "/api/join"):
        return
    status, _, reached = asked(path, method)
    assert (status, reached) == (405, False)


def test_what_is_nearby():
    assert all(
        map(is_nearby, ("10.1.2.3", "192.168.0.1", "172.16.0.1", "127.0.0.1", "169.254.1.1"))
    )
    assert not any(map(is_nearby, ("8.8.8.8", "1.1.1.1", "", "x", "192.168.0.1.evil.example")))
