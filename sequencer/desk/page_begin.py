"""What a page asks for at the beginning: a show where there is none yet, and the song of one that lacks it."""

from collections.abc import Mapping
from typing import Any

from starlette.requests import ClientDisconnect, Request

from sequencer.desk.begin_errand import first_text
from sequencer.desk.show_server import ShowServer
from sequencer.desk.song_files import brought_song, song_path, songs_beside, written_path
from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.motion.props.prop import PROP_KINDS

BEGIN = "begin"  # the errand's kind
_MOST_DANCERS = 40
_LEVELS = (1, 2, 3, 4, 5)


async def begin_values(server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """What there is to begin with, and how far it is."""
    import asyncio

    from sequencer.tasks.starting import usual_title

    path = server.opened.path
    errand = server.errands.get(BEGIN)
    values = {"state": "none"} if errand is None else errand.values()
    suggested = server.suggested_track
    return {
        **values,
        "title": usual_title(path),
        "track": None if suggested is None else written_path(suggested, path.parent),
        "songs": await asyncio.to_thread(songs_beside, path.parent),
        "props": list(PROP_KINDS),
    }


async def begin_show(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Begin to make the show's first text.

    Raises
    ------
    InputError
        If there is a show already, or something is missing in what is given.
    """
    _only_once(server)
    path = server.opened.path
    track, title = given.get("track"), given.get("title")
    if not isinstance(track, str) or not (title is None or isinstance(title, str)):
        raise _bad("'track' and 'title' are words")
    asked = {
        "path": str(path), "track": str(song_path(track, path.parent)), "title": (title or "").strip() or None,
        "cast": _cast(given.get("cast")), "floor": _floor(given.get("floor")),
    }  # fmt: skip
    server.begin_errand(BEGIN, first_text, asked)
    return await begin_values(server, given)


async def stop_begin(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Give it up."""
    server.drop_errand(BEGIN)
    return await begin_values(server, given)


async def take_begun(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Take the first text as the show, and write the file.

    Raises
    ------
    InputError
        If it is not there any more, or the file cannot be written.
    """
    errand = server.errands.get(BEGIN)
    if errand is None or errand.result is None or given.get("number") != errand.number:
        raise InputError(
            "conflict", Place(server.opened.path.name), "this was taken already, or given up",
            "look at the show as it is now",
        )  # fmt: skip
    _only_once(server)
    server.drop_errand(BEGIN)
    await server.bring(server.opened.text, errand.result["text"], "begin the show")
    return await server.save()


async def choose_track(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Take another file as the show's song; where the show names the cut that it is for, it then names this one.

    Raises
    ------
    InputError
        If there is no such file, or the text is no show.
    """
    import asyncio

    words, revision = given.get("file"), given.get("revision")
    if not isinstance(words, str) or not isinstance(revision, int) or isinstance(revision, bool):
        raise _bad("'file' is a path, and 'revision' a whole number")
    folder = server.opened.path.parent
    path = song_path(words, folder)
    changes: list[list[Any]] = [[["track", "file"], written_path(path, folder)]]
    show = server.opened.read.show
    if show is not None and show.track.sha256 is not None:
        changes.append([["track", "sha256"], await asyncio.to_thread(sha256_of_file, path)])
    operation = {"do": "make-changes", "said": f"take {path.name} as the song", "changes": changes}
    return await server.do(operation, revision, anyway=bool(given.get("anyway", False)))


async def bring_song(server: ShowServer, request: Request) -> dict[str, Any]:
    """Put a song beside the show that comes as the body of a request; its name stands in the address.

    Raises
    ------
    InputError
        If it is no song, or cannot be written.
    """
    try:
        name = await brought_song(
            request.query_params.get("name", ""), request.stream(), server.opened.path.parent
        )
    except ClientDisconnect:
        raise _bad("it broke off") from None
    return {"file": name}


def _only_once(server: ShowServer) -> None:
    if server.opened.text.strip():
        raise InputError(
            "conflict", Place(server.opened.path.name), "there is a show in this file already",
            "look at the show as it is now",
        )  # fmt: skip


def _cast(given: Any) -> list[dict[str, Any]]:
    if not isinstance(given, list) or not 0 < len(given) <= _MOST_DANCERS:
        raise InputError(
            "nobody", Place("cast"), "nobody dances yet", "name at least one performer"
        )
    cast = [_dancer(each) for each in given]
    names = [each["name"] for each in cast]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise InputError(
            "same-name", Place("cast"), f"two are called {twice}", "give each a name of their own"
        )
    return cast


def _dancer(given: Any) -> dict[str, Any]:
    if not isinstance(given, dict):
        raise _bad("each of 'cast' is an object")
    name, stature = given.get("name"), given.get("stature")
    prop, level = given.get("prop", "poi"), given.get("level", 2)
    if not isinstance(name, str) or not isinstance(stature, str):
        raise _bad("'name' and 'stature' are words")
    if not name.strip():
        raise InputError(
            "no-name", Place("cast"), "somebody has no name", "write it, or take them out"
        )
    if prop not in PROP_KINDS:
        raise _bad(f"'prop' is one of {', '.join(PROP_KINDS)}")
    if level is not None and level not in _LEVELS:
        raise _bad("'level' is 1 to 5")
    return {"name": name.strip(), "stature": stature.strip(), "prop": prop, "level": level}


def _floor(given: Any) -> list[str]:
    if not isinstance(given, list) or len(given) != 2 or not all(isinstance(x, str) for x in given):
        raise _bad("'floor' is a width and a depth, in words")
    return [str(each).strip() for each in given]


def _bad(what: str) -> InputError:
    return InputError("bad-request", Place("request"), what, "see docs/desk.md")
