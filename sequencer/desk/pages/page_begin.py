"""What a page asks for at the beginning: a show where there is none yet, and the song of one that lacks it."""

from collections.abc import Mapping
from typing import Any

from starlette.requests import ClientDisconnect, Request

from sequencer.allowed_places import is_allowed
from sequencer.desk.pages.begin_form import bad_request, form_cast, form_floor
from sequencer.desk.pages.song_files import brought_song, song_path, songs_beside, written_path
from sequencer.desk.processes.begin_errand import first_text
from sequencer.desk.show_server import ShowServer
from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.motion.props.prop import PROP_KINDS

BEGIN = "begin"  # the errand's kind


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
        raise bad_request("'track' and 'title' are words")
    asked = {
        "path": str(path), "track": str(song_path(track, path.parent)), "title": (title or "").strip() or None,
        "cast": form_cast(given.get("cast")), "floor": form_floor(given.get("floor")),
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
        raise bad_request("'file' is a path, and 'revision' a whole number")
    folder = server.opened.path.parent
    path = song_path(words, folder)
    changes: list[list[Any]] = [[["track", "file"], written_path(path, folder)]]
    show = server.opened.read.show
    # a song elsewhere is read only because the show names its content
    if show is not None and (show.track.sha256 is not None or not is_allowed(path, folder)):
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
        raise bad_request("it broke off") from None
    return {"file": name}


def _only_once(server: ShowServer) -> None:
    """Refuse to begin where a show would be lost: on disk, or in steps that can be undone or done again."""
    if server.is_new:
        return
    what, mend = "there is a show in this file already", "look at the show as it is now"
    if not server.opened.text.strip():
        edits = server.opened.edits
        what = "a show was begun in this file already"
        way = "press Redo" if edits.undone else "press Undo" if edits.done else "open it again"
        mend = f"{way} to get it back, or begin another one in a file of another name"
    raise InputError("conflict", Place(server.opened.path.name), what, mend)
