"""A ticket is good once, for a while, and for this user."""

import json
import os

import pytest

from sequencer.desk.connection import page_entry
from sequencer.desk.connection.page_entry import GOOD_FOR, PageEntry, owner_in
from tests.in_a_thread import run_apart

# As the manual page proc_pid_net(5) describes it; ports 0x1F90 = 8080 and 0xC350 = 50000.
TABLE = """\
  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode
   0: 0100007F:1F90 00000000:0000 0A 00000000:00000000 00:00000000 00000000  1000        0 111 1
   1: 0100007F:1F90 0100007F:C350 01 00000000:00000000 00:00000000 00000000  1000        0 222 1
   2: 0100007F:C350 0100007F:1F90 01 00000000:00000000 00:00000000 00000000  1001        0 333 1
"""


def asked(entry, body, *, path="/enter", method="POST", client=("127.0.0.1", 50_000)):
    """Status and body of an answer."""
    sent = []
    content = body if isinstance(body, bytes) else json.dumps(body).encode()

    async def receive():
        return {"type": "http.request", "body": content, "more_body": False}

    async def send(message):
        sent.append(message)

    scope = {
        "type": "http", "method": method, "path": path, "headers": [], "client": client,
        "server": ("127.0.0.1", 8080), "query_string": b"",
    }  # fmt: skip
    run_apart(entry(scope, receive, send))
    return (sent[0]["status"], json.loads(sent[1]["body"])) if sent else None


def entry_of():
    reached = []

    async def app(scope, _receive, _send):
        reached.append(scope["path"])

    return PageEntry(app, secret="s3cret"), reached  # noqa: S106


def test_a_ticket_is_good_once():
    entry, reached = entry_of()
    ticket = entry.ticket()
    assert "s3cret" not in ticket
    assert asked(entry, {"ticket": "another"})[0] == 403
    assert asked(entry, {"ticket": ticket}) == (200, {"secret": "s3cret"})
    status, said = asked(entry, {"ticket": ticket})
    assert status == 403
    assert "used already" in said["error"]["message"]
    assert reached == []
    asked(entry, {}, path="/api/show")
    assert reached == ["/api/show"]


@pytest.mark.parametrize("body", [b"", b"[]", b"{", b'{"ticket": 3}', b'{"ticket": ""}', b"x" * 5000, b'{"ticket": "\\ud800"}'])  # fmt: skip
def test_what_is_no_ticket_is_refused(body):
    entry, _ = entry_of()
    assert asked(entry, body)[0] == 403  # none is out
    entry.ticket()
    assert asked(entry, body)[0] == 403
    assert asked(entry, body, method="GET")[0] == 403


def test_it_is_good_for_a_while_and_a_newer_one_takes_its_place(monkeypatch):
    entry, _ = entry_of()
    now = page_entry.time.monotonic()
    old = entry.ticket()
    ticket = entry.ticket()
    assert asked(entry, {"ticket": old})[0] == 403
    monkeypatch.setattr(page_entry.time, "monotonic", lambda: now + GOOD_FOR + 1)
    assert asked(entry, {"ticket": ticket})[0] == 403


def test_the_table_says_whose_the_other_end_is():
    assert owner_in(TABLE, 50_000, 8080) == 1001
    assert owner_in(TABLE, 8080, 50_000) == 1000
    assert owner_in(TABLE, 50_001, 8080) is None
    assert owner_in("heads\nhalf a line\n", 1, 2) is None


@pytest.mark.skipif(os.name == "nt", reason="users of Unix")
def test_another_users_process_gets_nothing(tmp_path, monkeypatch):
    table = tmp_path / "tcp"
    monkeypatch.setattr(page_entry, "_CONNECTIONS", table)
    monkeypatch.setattr(page_entry.sys, "platform", "linux")
    entry, _ = entry_of()
    ticket = entry.ticket()
    table.write_text(TABLE.replace("1001", str(os.getuid() + 1)))
    assert asked(entry, {"ticket": ticket})[0] == 403
    table.write_text(TABLE.replace("1001", str(os.getuid())))
    assert asked(entry, {"ticket": ticket})[0] == 200
    table.unlink()  # the system does not tell
    assert asked(entry, {"ticket": entry.ticket()})[0] == 200
