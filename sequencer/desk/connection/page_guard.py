"""Who may ask the server of an open show: pages that it served itself, on this machine, that know its secret.

A page of another site can send requests to a server on this machine, also under a name of its own that leads here. So every request
must name this server as its host, come from no other origin, and, but for the page itself, bring the secret.
Source: W3C Fetch Metadata; RFC 6454, The Web Origin Concept; DNS rebinding as described by C. Jackson and others, 2007 (from memory).
"""

import hmac
import ipaddress
from collections.abc import Iterable

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from sequencer.desk.connection.page_entry import ENTER
from sequencer.desk.connection.page_values import json_bytes

SECRET_HEADER = "x-sequencer-secret"  # noqa: S105 (a header's name)
API = "/api/"
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data: blob:; "
    "media-src 'self' blob:; font-src 'self'; worker-src 'self' blob:; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'"
)
PAGE_HEADERS = {
    "content-security-policy": _POLICY,
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
    "cache-control": "no-store",
}


class PageGuard:
    """Refuses whoever may not ask, before anything else is done; puts the policy on every answer.

    Parameters
    ----------
    app : ASGI application
    hosts : iterable of str
        `name:port` by which this server may be called.
    secret : str
    """

    def __init__(self, app: ASGIApp, *, hosts: Iterable[str], secret: str) -> None:
        self._app = app
        self._hosts = frozenset(hosts)
        self._origins = frozenset(f"http://{host}" for host in self._hosts)
        self._secret = secret.encode()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or refuse it."""
        if scope["type"] != "http":
            return  # nothing else is served: a WebSocket is closed by the server

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(raw=message["headers"])
                for name, value in PAGE_HEADERS.items():
                    headers.setdefault(name, value)
                message["headers"] = headers.raw
            await send(message)

        why = self._refused(scope)
        if why is None:
            await self._app(scope, receive, guarded)
            return
        error = {
            "code": "refused", "message": f"{why} [refused]", "what": why, "why": "",
            "mend": "open the address that `sequencer open` printed", "line": None, "column": None,
        }  # fmt: skip
        answer = Response(json_bytes({"error": error}), 403, media_type="application/json")
        await answer(scope, receive, guarded)

    def _refused(self, scope: Scope) -> str | None:
        """Why a request is refused; None if it is not."""
        headers = Headers(scope=scope)
        why = self._from_elsewhere(scope, headers)
        if why is not None or not scope["path"].startswith(API):
            return why
        given = headers.getlist(SECRET_HEADER)
        if len(given) == 1 and hmac.compare_digest(given[0].encode("latin-1"), self._secret):
            return None
        return "the secret is missing or wrong"

    def _from_elsewhere(self, scope: Scope, headers: Headers) -> str | None:
        """Why a request does not come from a page of this server."""
        client = scope.get("client")
        if client is None or not _is_this_machine(client[0]):
            return "only this machine may ask"
        hosts = headers.getlist("host")
        if len(hosts) != 1 or hosts[0].lower() not in self._hosts:
            return "this is another server's name"
        if any(origin.lower() not in self._origins for origin in headers.getlist("origin")):
            return "a page of another site may not ask"
        own = scope["path"].startswith((API, ENTER))
        sites = headers.getlist("sec-fetch-site") if own else []
        if any(site not in {"same-origin", "none"} for site in sites):
            return "a page of another site may not ask"
        return None


def _is_this_machine(address: str) -> bool:
    try:
        return ipaddress.ip_address(address).is_loopback
    except ValueError:
        return False
