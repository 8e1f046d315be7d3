"""The addresses below which a page asks for an open show; docs/desk.md lists them with what they take and give."""

import json
import mimetypes
from collections.abc import Awaitable, Callable, Mapping
from importlib.resources import files
from math import isfinite
from typing import Any

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import FileResponse, Response
from starlette.routing import Route

from sequencer.desk.connection.page_events import EventAnswer
from sequencer.desk.connection.page_values import all_errors, error_values, json_bytes
from sequencer.desk.pages.page_begin import (
    begin_show,
    begin_values,
    bring_song,
    choose_track,
    stop_begin,
    take_begun,
)
from sequencer.desk.pages.page_drafts import begin_draft, draft_values, lay_draft, stop_draft
from sequencer.desk.pages.page_prints import (
    begin_rehearsal,
    begin_sheets,
    print_values,
    printable,
    stop_print,
)
from sequencer.desk.pages.page_tour import tour_seen, tour_values
from sequencer.desk.processes.worker_link import AnswerError
from sequencer.desk.show_server import ShowServer
from sequencer.errors import InputError, Place
from sequencer.show.text.file_text import LARGEST
from sequencer.timing.tapping import MOST_TAPS

_ASSETS = files("sequencer.desk") / "assets"
_MOST = 2 * LARGEST  # bytes of a body: a text with every letter escaped is longer than it
_STATUS = {
    "bad-operation": 400, "bad-request": 400, "no-track": 404, "no-file": 404, "conflict": 409,
    "superseded": 409, "outside": 409, "nothing-to-undo": 409, "nothing-to-redo": 409,
    "nothing-to-settle": 409, "no-version": 404, "version-there": 409, "cannot-write": 503, "staging": 503, "gone": 503, "fault": 500,
}  # fmt: skip
LONGEST_TRACK = 86_400.0  # [s]
_Asked = Callable[[ShowServer, Mapping[str, Any]], Awaitable[Any]]


def page_app(server: ShowServer) -> Starlette:
    """The application of an open show, without its guard."""
    posts: dict[str, _Asked] = {
        "operations": _do, "preview": _preview, "copied": _copied, "undo": _undo, "redo": _redo,
        "save": _save, "autosave": _autosave, "outside": _settle, "count": _count, "taps": _taps,
        "unshare": _unshare, "room": _room,
        "draft": begin_draft, "draft/stop": stop_draft, "draft/lay": lay_draft,
        "sheets": begin_sheets, "rehearsal": begin_rehearsal, "print/stop": stop_print,
        "begin": begin_show, "begin/stop": stop_begin, "begin/take": take_begun, "track": choose_track,
        "tour": tour_seen,
    }  # fmt: skip
    gets: dict[str, _Asked] = {
        "show": _show, "history": _history, "findings": _findings, "checks": _checks, "view": _view, "cues": _cues,
        "song": _song, "dance": _dance, "patterns": _patterns, "schema": _schema,
        "operations": _operations, "draft": draft_values, "print": print_values, "printable": printable,
        "begin": begin_values, "tour": tour_values, "share": _share, "switched": _switched,
    }  # fmt: skip
    routes = [
        *(Route(f"/api/{name}", _posted(server, work), methods=["POST"]) for name, work in posts.items()),
        *(Route(f"/api/{name}", _got(server, work), methods=["GET"]) for name, work in gets.items()),
        *_version_routes(server),
        Route("/api/events", _events(server), methods=["GET"]),
        Route("/api/track", _track(server, mp3=False), methods=["GET"]),
        Route("/api/song-file", _brought(server), methods=["POST"]),
        Route("/api/track.mp3", _track(server, mp3=True), methods=["GET"]),
        Route("/made/{word}/{name}", server.made.answer, methods=["GET"]),
        Route("/", _asset, methods=["GET"]),
        Route("/{name}", _asset, methods=["GET"]),
    ]  # fmt: skip
    return Starlette(routes=routes, exception_handlers={HTTPException: _no_such_address})


# --- questions ---


async def _show(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return server.state()


async def _share(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return server.share()


async def _switched(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    await server.staged()
    return await server.switched()


async def _unshare(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    server.unshare()
    return server.state()


async def _history(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return server.history()


async def _findings(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return server.link.findings_values()


async def _checks(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return server.link.checks_values()


async def _view(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    await server.staged()
    return await server.link.ask("view")


async def _cues(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    await server.staged()
    return await server.link.ask("cues")


async def _song(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    if server.link.checks.staged is None:
        await server.staged()
    return await server.link.ask("song")


async def _dance(server: ShowServer, given: Mapping[str, Any]) -> Any:
    await server.staged()
    return await server.link.ask("dance", flown=given.get("flown", "1") not in {"0", "false"})


async def _patterns(server: ShowServer, given: Mapping[str, Any]) -> Any:
    await server.staged()
    return await server.link.ask("patterns", **given)


async def _schema(_server: ShowServer, _given: Mapping[str, Any]) -> Any:
    from sequencer.facts.fuels import fuels
    from sequencer.show.pattern_form import pattern_form
    from sequencer.show.schemas.schema import show_schema, step_kinds

    known = {"fuel": sorted(each.name for each in fuels().values() if each.refused is None)}
    return {**show_schema(), "step_kinds": step_kinds(), "pattern_form": pattern_form(), "known": known}  # fmt: skip


async def _operations(_server: ShowServer, _given: Mapping[str, Any]) -> Any:
    from sequencer.desk.file.show_operations import operation_schemas

    return operation_schemas()


# --- changes ---


async def _do(server: ShowServer, given: Mapping[str, Any]) -> Any:
    anyway = bool(given.get("anyway", False))
    return await server.do(_operation(given), _number(given, "revision"), anyway=anyway)


async def _preview(server: ShowServer, given: Mapping[str, Any]) -> Any:
    return await server.preview(_operation(given), _number(given, "revision"))


async def _count(server: ShowServer, given: Mapping[str, Any]) -> Any:
    hold = given.get("hold")
    if hold is not None and not (
        isinstance(hold, list) and len(hold) <= MOST_TAPS and all(map(_is_second, hold))
    ):
        raise _bad("'hold' is a list of seconds of the track, or null")
    return await server.count(_operation(given), _number(given, "revision"), hold)


async def _taps(server: ShowServer, given: Mapping[str, Any]) -> Any:
    taps, latency = given.get("taps"), given.get("latency")
    if not isinstance(taps, list) or len(taps) > MOST_TAPS or not all(map(_is_second, taps)):
        raise _bad(f"'taps' is a list of at most {MOST_TAPS} seconds of the track")
    if latency is not None and not _is_second(latency):
        raise _bad("'latency' is a number of seconds, or null")
    await server.staged()
    return await server.link.ask("taps", taps=taps, latency=latency)


async def _room(server: ShowServer, given: Mapping[str, Any]) -> Any:
    performer = given.get("performer")
    if not isinstance(performer, Mapping):
        raise _bad("'performer' is a performer as the file says it")
    await server.staged()
    return await server.link.ask("room", performer=dict(performer))


def _is_second(value: object) -> bool:
    known = isinstance(value, int | float) and not isinstance(value, bool)
    return known and isfinite(float(value)) and abs(float(value)) <= LONGEST_TRACK  # type: ignore[arg-type]


async def _copied(server: ShowServer, given: Mapping[str, Any]) -> Any:
    from sequencer.desk.file.show_operations import copied_blocks

    text = server.opened.edits.at(_number(given, "revision"))
    if text is None:
        raise _bad("this was shown too long ago")
    return {"blocks": copied_blocks(text, server.opened.path.name, given.get("at"))}


async def _undo(server: ShowServer, given: Mapping[str, Any]) -> Any:
    return await server.turn("undo", _number(given, "revision", needed=False))


async def _redo(server: ShowServer, given: Mapping[str, Any]) -> Any:
    return await server.turn("redo", _number(given, "revision", needed=False))


async def _save(server: ShowServer, _given: Mapping[str, Any]) -> Any:
    return await server.save()


async def _autosave(server: ShowServer, given: Mapping[str, Any]) -> Any:
    wanted = given.get("autosave")
    if wanted not in {"file", "journal"}:
        raise _bad("'autosave' is 'file' or 'journal'")
    return await server.save_at_once(wanted=wanted == "file")


async def _settle(server: ShowServer, given: Mapping[str, Any]) -> Any:
    take, text = given.get("take"), given.get("text", "")
    if take not in {"mine", "theirs", "text"} or not isinstance(text, str):
        raise _bad("'take' is 'mine', 'theirs' or 'text', and 'text' is text")
    return await server.settle(str(take), text)


# --- versions ---


def _version_routes(server: ShowServer) -> list[Route]:
    from sequencer.desk.pages.version_answers import VersionAnswers

    own = VersionAnswers(server)

    async def listed(_server: ShowServer, _given: Mapping[str, Any]) -> Any:
        return await own.list_values()

    async def keep(_server: ShowServer, given: Mapping[str, Any]) -> Any:
        return await own.keep(_text(given, "name"), replace=given.get("replace") is True)

    async def delete(_server: ShowServer, given: Mapping[str, Any]) -> Any:
        return await own.delete(_text(given, "name"))

    async def go_back(_server: ShowServer, given: Mapping[str, Any]) -> Any:
        revision = _number(given, "revision")
        if given.get("step") is not None:
            return await own.go_back_to_step(_number(given, "step"), revision)
        return await own.go_back(_text(given, "name"), revision)

    async def compare(_server: ShowServer, given: Mapping[str, Any]) -> Any:
        return await own.compare(_text(given, "old"), _text(given, "new"))

    posts: dict[str, _Asked] = {
        "versions": keep,
        "versions/delete": delete,
        "versions/take": go_back,
    }
    gets: dict[str, _Asked] = {"versions": listed, "compare": compare}
    return [
        *(Route(f"/api/{name}", _posted(server, work), methods=["POST"]) for name, work in posts.items()),
        *(Route(f"/api/{name}", _got(server, work), methods=["GET"]) for name, work in gets.items()),
    ]  # fmt: skip


def _text(given: Mapping[str, Any], name: str) -> str:
    value = given.get(name)
    if not isinstance(value, str):
        raise _bad(f"{name!r} is text")
    return value


# --- plumbing ---


def _events(server: ShowServer) -> Callable[[Request], Awaitable[EventAnswer]]:
    async def answer(_request: Request) -> EventAnswer:  # in the server's loop, as all that is told
        return EventAnswer(server.stream())

    return answer


def _got(server: ShowServer, work: _Asked) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        return await _answered(server, work, dict(request.query_params))

    return answer


def _posted(server: ShowServer, work: _Asked) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        try:
            given = await _body(request)
        except InputError as error:
            return _error(server, error_values(error), changes=True)
        return await _answered(server, work, given, changes=True)

    return answer


async def _answered(
    server: ShowServer, work: _Asked, given: Mapping[str, Any], *, changes: bool = False
) -> Response:
    try:
        result = await work(server, given)
    except AnswerError as error:
        return _error(server, error.error, changes=changes)
    except InputError as error:
        name = server.opened.path.name
        several = all_errors(error, name)
        return _error(server, error_values(error, name), several, changes=changes)
    content = result if isinstance(result, bytes) else json_bytes(result)
    return Response(content, media_type="application/json")


def _error(
    server: ShowServer,
    error: dict[str, Any],
    several: list[dict[str, Any]] | None = None,
    *,
    changes: bool = False,
) -> Response:
    values: dict[str, Any] = {"error": error, "errors": several or [error]}
    if changes:
        values["revision"] = server.opened.revision
    status = _STATUS.get(str(error["code"]), 422)
    return Response(json_bytes(values), status, media_type="application/json")


async def _body(request: Request) -> dict[str, Any]:
    if request.headers.get("content-type", "").partition(";")[0].strip() != "application/json":
        raise _bad("the body is no JSON")
    parts: list[bytes] = []
    size = 0
    try:
        async for part in request.stream():
            size += len(part)
            if size > _MOST:
                raise _bad("the body is too large")
            parts.append(part)
        given = json.loads(b"".join(parts) or b"{}")
    except (ValueError, RecursionError, ClientDisconnect) as error:
        raise _bad("the body is no JSON") from error
    if not isinstance(given, dict):
        raise _bad("the body is no object")
    return given


def _operation(given: Mapping[str, Any]) -> Mapping[str, Any]:
    several = given.get("operations")
    if isinstance(several, list) and several and "operation" not in given:
        return {"do": "do-together", "operations": several}
    operation = given.get("operation")
    if not isinstance(operation, dict):
        raise _bad("'operation' is missing")
    return operation


def _number(given: Mapping[str, Any], name: str, *, needed: bool = True) -> Any:
    value = given.get(name)
    if value is None and not needed:
        return None
    if not isinstance(value, int) or isinstance(value, bool):
        raise _bad(f"{name!r} is a whole number")
    return value


def _bad(what: str) -> InputError:
    return InputError("bad-request", Place("request"), what, "see docs/desk.md")


def _track(server: ShowServer, *, mp3: bool) -> Callable[[Request], Awaitable[Response]]:
    async def answer(_request: Request) -> Response:
        try:
            await server.staged()
            kind, found = await server.link.ask("sound", mp3=mp3)
        except AnswerError as error:
            return _error(server, error.error)
        if kind == "path":
            media = mimetypes.guess_type(found)[0] or "application/octet-stream"
            return FileResponse(found, media_type=media)
        return Response(found, media_type="audio/mpeg")

    return answer


def _brought(server: ShowServer) -> Callable[[Request], Awaitable[Response]]:
    async def answer(request: Request) -> Response:
        return await _answered(server, lambda own, _given: bring_song(own, request), {})

    return answer


async def _asset(request: Request) -> Response:
    name = request.path_params.get("name", "page.html")
    found = _ASSETS / name
    if not name.startswith(".") and found.is_file():
        media = mimetypes.guess_type(name)[0] or "application/octet-stream"
        return Response(found.read_bytes(), media_type=media)
    if name == "page.html":
        return Response(_NO_PAGE, media_type="text/html; charset=utf-8")
    raise HTTPException(404)


async def _no_such_address(_request: Request, error: Exception) -> Response:
    status = error.status_code if isinstance(error, HTTPException) else 404
    what = "there is nothing at this address" if status == 404 else "this cannot be asked so"
    said = error_values(InputError("no-address", Place("request"), what, "see docs/desk.md"))
    return Response(json_bytes({"error": said}), status, media_type="application/json")


_NO_PAGE = b"""<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>sequencer</title>
<p>The server runs, but this copy of sequencer has no page in it: build it from its folder <code>web</code>.</p></html>
"""
