"""How the first page gets the server's secret: by a ticket that is good once, and not for long.

A browser is started with the page's address on its command line, which others on the same machine may read. So that address holds
no secret but a ticket; the page trades it as soon as it is loaded, and whoever reads it later gets nothing. On Linux the system
tells whose the other end of a connection is, so that there nobody else can be quicker either.
"""

import hmac
import json
import os
import secrets
import sys
import time
from pathlib import Path

from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response
from starlette.types import ASGIApp, Receive, Scope, Send

from sequencer.desk.connection.page_values import error_values, json_bytes
from sequencer.errors import InputError, Place

ENTER = "/enter"
GOOD_FOR = 120.0  # [s] from when it was made: a browser may start slowly
_MOST = 1_000  # bytes of a request
_CONNECTIONS = Path("/proc/net/tcp")


class PageEntry:
    """Trades a ticket for the secret, once; hands all else on.

    Parameters
    ----------
    app : ASGI application
    secret : str
    """

    def __init__(self, app: ASGIApp, *, secret: str) -> None:
        self._app, self._secret = app, secret
        self._ticket = ""
        self._until = 0.0

    def __repr__(self) -> str:
        return f"<PageEntry, {'a ticket is out' if self._ticket else 'no ticket is out'}>"

    def ticket(self) -> str:
        """A new ticket; an older one is good no more."""
        self._ticket = secrets.token_urlsafe(32)
        self._until = time.monotonic() + GOOD_FOR
        return self._ticket

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request for the secret, or hand another one on."""
        if scope["type"] != "http" or scope["path"] != ENTER:
            await self._app(scope, receive, send)
            return
        given = await _ticket_in(Request(scope, receive)) if scope["method"] == "POST" else ""
        if self._is_good(given) and _is_ours(scope):
            self._ticket = ""
            answer = Response(json_bytes({"secret": self._secret}), media_type="application/json")
        else:
            said = error_values(_REFUSED)
            answer = Response(json_bytes({"error": said}), 403, media_type="application/json")
        await answer(scope, receive, send)

    def _is_good(self, given: str) -> bool:
        known = self._ticket.encode()
        good = bool(known) and hmac.compare_digest(given.encode("utf-8", "replace"), known)
        return good and time.monotonic() < self._until


async def _ticket_in(request: Request) -> str:
    """The ticket that a request brings; empty if it brings none."""
    content = b""
    try:
        async for part in request.stream():
            content += part
            if len(content) > _MOST:
                return ""
        given = json.loads(content)
    except (ValueError, RecursionError, ClientDisconnect):
        return ""
    ticket = given.get("ticket") if isinstance(given, dict) else None
    return ticket if isinstance(ticket, str) else ""


def _is_ours(scope: Scope) -> bool:
    """Whether the other end of a connection is this user's, as far as the system tells."""
    client, server = scope.get("client"), scope.get("server")
    if not sys.platform.startswith("linux") or client is None or server is None:
        return True
    try:
        table = _CONNECTIONS.read_text(encoding="ascii")
    except OSError:
        return True
    owner = owner_in(table, client[1], server[1])
    return owner is None or owner == os.getuid()


def owner_in(table: str, client: int, server: int) -> int | None:
    """Whose process holds the client's end of a connection between two ports of this machine; None if the table does not say.

    Parameters
    ----------
    table : str
        As Linux gives it in `/proc/net/tcp`.
    client, server : int
        Ports.

    Notes
    -----
    Source: proc_pid_net(5) of the Linux man pages: local and remote address in hexadecimal, then state, queues, timer,
    retransmissions, and the user's number.
    """
    for line in table.splitlines()[1:]:
        parts = line.split()
        try:
            local, remote = (int(parts[k].rpartition(":")[2], 16) for k in (1, 2))
            if (local, remote) == (client, server):
                return int(parts[7])
        except (IndexError, ValueError):
            continue
    return None


_REFUSED = InputError(
    "refused", Place("ticket"), "this address has been used already, or is too old",
    "open the page again from the terminal, where `sequencer open` printed its address",
)  # fmt: skip
