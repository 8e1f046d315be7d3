"""The addresses below which a shared show is looked at: questions, the door, the page, and nothing that changes anything."""

import json
import math
import mimetypes
from collections.abc import Awaitable, Callable
from importlib.resources import files
from typing import Any

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from sequencer.desk.connection.page_events import EventAnswer
from sequencer.desk.connection.page_values import error_values, json_bytes
from sequencer.desk.processes.worker_link import AnswerError
from sequencer.desk.share.share_door import NotLetInError
from sequencer.desk.share.shared_show import MOST_STREAMS, SharedShow, as_bytes
from sequencer.desk.show_server import ShowServer
from sequencer.errors import InputError, Place

_ASSETS = files("sequencer.desk") / "assets" / "watch"
_MOST = 1_000  # bytes of a code with all around it
# What those who watch are told in place of a message, which may say where a file lies or what the show file says.
_NOT_NOW = "the show cannot be shown just now; whoever plans it sees why"
_NO_SHOW = "there is no show here yet; wait until whoever shares it has begun one"
_PLAINLY = {
    "no-show": _NO_SHOW,
    "no-track": "the song is not there just now; whoever plans the show sees why",
    "superseded": "the show has changed meanwhile; it is shown again in a moment",
    "staging": "the show is still being put on its song; it is shown in a moment",
}


def share_app(server: ShowServer, shared: SharedShow) -> Starlette:
    """The application of a shared show, without its guard."""

    def asked(what: str, **given: Any) -> Callable[[], Awaitable[Any]]:
        async def work() -> Any:
            await _staged(server)
            return await server.link.ask(what, **given)

        return work

    async def sound() -> Any:
        await _staged(server)
        _, found = await server.link.ask("sound", mp3=True)
        return found

    gets: dict[str, Callable[[], Awaitable[Any]]] = {
        "view": asked("view"), "song": asked("song"), "dance": asked("dance", flown=False),
    }  # fmt: skip
    routes = [
        Route("/api/join", _door(shared), methods=["POST"]),
        Route("/api/show", _said(shared.state), methods=["GET"]),
        Route("/api/findings", _said(shared.findings), methods=["GET"]),
        *(
            Route(f"/api/{name}", _once(shared, name, work), methods=["GET"])
            for name, work in gets.items()
        ),
        Route("/api/track.mp3", _once(shared, "track", sound, "audio/mpeg"), methods=["GET"]),
        Route("/api/events", _events(shared), methods=["GET"]),
        Route("/", _asset, methods=["GET"]),
        Route("/{name}", _asset, methods=["GET"]),
    ]
    return Starlette(routes=routes, exception_handlers={HTTPException: _no_such_address})


async def _staged(server: ShowServer) -> None:
    """Wait until there is something to look at; who watches cannot begin a show."""
    if not server.opened.text.strip():
        raise AnswerError({"code": "no-show", "message": _NO_SHOW})
    await server.staged()


def _said(work: Callable[[], Any]) -> Callable[[Request], Awaitable[Response]]:
    async def answer(_request: Request) -> Response:
        return Response(json_bytes(work()), media_type="application/json")

    return answer


def _once(
    shared: SharedShow,
    name: str,
    work: Callable[[], Awaitable[Any]],
    media: str = "application/json",
) -> Callable[[Request], Awaitable[Response]]:
    async def answer(_request: Request) -> Response:
        try:
            return Response(as_bytes(await shared.once(name, work)), media_type=media)
        except AnswerError as error:
            code = error.error["code"]
            said = {"code": code, "message": _PLAINLY.get(code, _NOT_NOW)}
            return Response(json_bytes({"error": said}), 409, media_type="application/json")

    return answer


def _door(shared: SharedShow) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        client = request.client
        try:
            token = shared.door.join(await _code(request), "" if client is None else client.host)
        except NotLetInError as error:
            said = {"code": "not-let-in", "message": error.words, "wait": math.ceil(error.wait)}
            headers = {"retry-after": str(math.ceil(error.wait))} if error.wait else {}
            shared.tell()  # whoever shares it sees when nobody can join any more
            return Response(
                json_bytes({"error": said}), error.status, headers, media_type="application/json"
            )
        return Response(json_bytes({"token": token}), media_type="application/json")

    return answer


async def _code(request: Request) -> str:
    """The code that was typed; what is none counts as a wrong one."""
    parts = b""
    async for part in request.stream():
        parts += part
        if len(parts) > _MOST:
            return ""
    try:
        given = json.loads(parts)
    except (ValueError, RecursionError):
        return ""
    code = given.get("code") if isinstance(given, dict) else None
    return code if isinstance(code, str) else ""


def _events(shared: SharedShow) -> Callable[[Request], Awaitable[Any]]:
    async def answer(_request: Request) -> Any:
        if shared.over or shared.watchers.pages >= MOST_STREAMS:
            said = {"code": "full", "message": "too many watch already"}
            return Response(json_bytes({"error": said}), 403, media_type="application/json")
        return EventAnswer(shared.stream())

    return answer


async def _asset(request: Request) -> Response:
    name = request.path_params.get("name", "page.html")
    found = _ASSETS / name
    if name in {"page.html", "page.js", "page.css", "dance.js"} and found.is_file():
        media = mimetypes.guess_type(name)[0] or "application/octet-stream"
        return Response(found.read_bytes(), media_type=media)
    raise HTTPException(404)


async def _no_such_address(_request: Request, error: Exception) -> Response:
    status = error.status_code if isinstance(error, HTTPException) else 404
    said = error_values(
        InputError("no-address", Place("request"), "there is nothing at this address", "see docs/desk.md")
    )  # fmt: skip
    return Response(json_bytes({"error": said}), status, media_type="application/json")
