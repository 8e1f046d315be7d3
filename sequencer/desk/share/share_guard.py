"""Who may ask a shared show: pages that it served itself, on the same network, by somebody who has joined; nobody changes anything.

The same dangers as for the page of whoever plans (`page_guard`), and strangers on the network: everything but the page's
files and the door asks for the token of somebody who was let in.
"""

import ipaddress

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from sequencer.desk.connection.page_guard import API, PAGE_HEADERS
from sequencer.desk.connection.page_values import json_bytes
from sequencer.desk.share.share_door import ShareDoor

GUEST_HEADER = "x-sequencer-guest"
JOIN = "/api/join"


class ShareGuard:
    """Refuses whoever may not watch, and whatever is more than watching.

    Parameters
    ----------
    app : ASGI application
    host : str
        `address:port` by which it is called.
    door : ShareDoor
    """

    def __init__(self, app: ASGIApp, *, host: str, door: ShareDoor) -> None:
        self._app, self._host, self._door = app, host, door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or refuse it."""
        if scope["type"] != "http":
            return

        async def guarded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(raw=message["headers"])
                for name, value in PAGE_HEADERS.items():
                    headers.setdefault(name, value)
                message["headers"] = headers.raw
            await send(message)

        status, why = self._refused(scope)
        if not status:
            await self._app(scope, receive, guarded)
            return
        error = {
            "code": "refused", "message": f"{why} [refused]", "what": why, "why": "",
            "mend": "type the code that whoever shares the show sees", "line": None, "column": None,
        }  # fmt: skip
        answer = Response(json_bytes({"error": error}), status, media_type="application/json")
        await answer(scope, receive, guarded)

    def _refused(self, scope: Scope) -> tuple[int, str]:
        """Status and reason of a refusal; 0 if there is none."""
        headers = Headers(scope=scope)
        why = self._from_elsewhere(scope, headers)
        if why:
            return 403, why
        path = scope["path"]
        if scope["method"] != ("POST" if path == JOIN else "GET"):
            return 405, "here a show can only be looked at"
        given = headers.getlist(GUEST_HEADER)
        known = len(given) == 1 and self._door.knows(given[0])
        if known or path == JOIN or not path.startswith(API):
            return 0, ""
        return 403, "the code has not been typed yet"

    def _from_elsewhere(self, scope: Scope, headers: Headers) -> str:
        """Why a request does not come from a page of this server; nothing if it does."""
        client, hosts = scope.get("client"), headers.getlist("host")
        if client is None or not is_nearby(client[0]):
            return "only this network may ask"
        if len(hosts) != 1 or hosts[0].lower() != self._host:
            return "this is another server's name"
        if any(own.lower() != f"http://{self._host}" for own in headers.getlist("origin")):
            return "a page of another site may not ask"
        sites = headers.getlist("sec-fetch-site") if scope["path"].startswith(API) else []
        if any(site not in {"same-origin", "none"} for site in sites):
            return "a page of another site may not ask"
        return ""


def is_nearby(address: str) -> bool:
    """Whether an address is one of a private network, or of this machine."""
    try:
        return ipaddress.ip_address(address).is_private
    except ValueError:
        return False
