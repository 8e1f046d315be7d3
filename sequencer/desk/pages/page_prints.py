"""Sheets, rehearsal and exports that a page asks for: made of the show as the page has it, saved or not."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from sequencer.desk.connection.page_values import all_errors
from sequencer.desk.processes.print_errand import EXPORTS, FOLDER, printed_sheets, rehearsal_files
from sequencer.desk.processes.worker_link import AnswerError
from sequencer.desk.show_server import PRINT, ShowServer
from sequencer.errors import InputError, Place
from sequencer.timing.timecode import RATES, frame_labelled

_SPEEDS = (0.25, 2.0)  # least and most of a count track
_COUNTS = ("pitched", "spoken", "none")
_SONG = -9.0  # [dB] of the song in the count track, as usual


async def print_values(server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """How far the printing is, and what was made."""
    folder = server.opened.path.parent / FOLDER / server.opened.path.stem
    errand = server.errands.get(PRINT)
    if errand is None:
        return {"state": "none", "folder": str(folder)}
    made = None
    if errand.result is not None:
        made = {
            **errand.result,
            "files": [_file(server, Path(each)) for each in errand.result["files"]],
            "older": server.opened.text != errand.given["text"],
        }
    return {
        **errand.values(),
        "folder": str(folder),
        "asked": errand.given["asked"],
        "unsaved": errand.given["unsaved"],
        "made": made,
    }


def _file(server: ShowServer, path: Path) -> dict[str, Any]:
    size = path.stat().st_size if path.is_file() else 0
    return {"name": path.name, "address": server.made.address(path), "bytes": size}


async def printable(_server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """What can be asked for."""
    import asyncio

    return {
        "kinds": await asyncio.to_thread(_kinds), "exports": list(EXPORTS), "counts": list(_COUNTS)
    }  # fmt: skip


@lru_cache(maxsize=1)
def _kinds() -> list[dict[str, Any]]:
    from sequencer.outputs.sheets.writing import SHEET_KINDS

    return [
        {"name": each.name, "reader": each.reader, "holds": each.holds, "pack": each.pack}
        for each in SHEET_KINDS
    ]


async def begin_sheets(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Begin to print sheets; what is being made is given up.

    Raises
    ------
    InputError
        If what is asked for is not understood.
    AnswerError
        If the text is no show.
    """
    only, people = _words(given, "only"), _words(given, "people")
    everything = _flag(given, "everything")
    if everything and (only or people):
        raise _bad("'everything' is every sheet: leave out 'only' and 'people'")
    paper, since = given.get("paper", "a4"), given.get("since")
    if paper not in {"a4", "letter"}:
        raise _bad("'paper' is 'a4' or 'letter'")
    if since is not None and not isinstance(since, str):
        raise _bad("'since' is the path of a show file")
    asked = {
        "only": only, "people": people, "paper": paper, "since": since or None,
        "pack": not (everything or only or people), "flown": not _flag(given, "drawn"),
    }  # fmt: skip
    _begin(server, printed_sheets, asked, "sheets")
    return await print_values(server, given)


async def begin_rehearsal(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Begin to write rehearsal page, count tracks and exports; what is being made is given up.

    Raises
    ------
    InputError
        If what is asked for is not understood.
    AnswerError
        If the text is no show.
    """
    parts, speeds = _words(given, "parts"), given.get("speeds", [1.0])
    if not parts or not set(parts) <= set(EXPORTS):
        raise _bad(f"'parts' are among {', '.join(EXPORTS)}")
    if not isinstance(speeds, list) or not speeds or not all(map(_is_speed, speeds)):
        raise _bad("'speeds' are numbers from 0.25 to 2")
    counts = given.get("counts", "pitched")
    if counts not in _COUNTS:
        raise _bad(f"'counts' is one of {', '.join(_COUNTS)}")
    timecodes, code_from = _timecode(given)
    asked = {
        "small": _flag(given, "small"), "each": _flag(given, "each"), "timecodes": timecodes, "code_from": code_from,
        "parts": parts, "speeds": speeds, "counts": counts, "people": _words(given, "people"),
        "song": None if _flag(given, "clicks_only") else _SONG, "calls": not _flag(given, "no_calls"),
        "split": _flag(given, "split"), "flown": not _flag(given, "drawn"),
    }  # fmt: skip
    _begin(server, rehearsal_files, asked, "rehearsal")
    return await print_values(server, given)


def _timecode(given: Mapping[str, Any]) -> tuple[list[str], str]:
    """Rates of time code, and the label with which the track begins."""
    rates, label = given.get("timecodes", ["25"]), given.get("code_from", "00:00:00:00")
    if not isinstance(rates, list) or not rates or not all(each in RATES for each in rates):
        raise _bad(f"'timecodes' are among {', '.join(RATES)}")
    if not isinstance(label, str):
        raise _bad("'code_from' is a time code such as 01:00:00:00")
    for each in rates:
        try:
            frame_labelled(label, RATES[each])
        except ValueError as error:
            raise _bad(str(error)) from error
    return rates, label


async def stop_print(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Give up what is being made; files are whole or not there."""
    server.drop_errand(PRINT)
    return await print_values(server, given)


def _begin(server: ShowServer, work: Any, asked: Mapping[str, Any], kind: str) -> None:
    opened = server.opened
    fault = opened.read.fault
    if fault is not None:
        raise AnswerError(all_errors(fault, opened.path.name)[0])
    given = {**asked, "path": str(opened.path), "text": opened.text}
    server.begin_errand(
        PRINT, work, {**given, "asked": {"what": kind, **asked}, "unsaved": not opened.saved}
    )


def _words(given: Mapping[str, Any], key: str) -> list[str]:
    value = given.get(key, [])
    if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
        raise _bad(f"{key!r} is a list of words")
    return value


def _flag(given: Mapping[str, Any], key: str) -> bool:
    value = given.get(key, False)
    if not isinstance(value, bool):
        raise _bad(f"{key!r} is true or false")
    return value


def _is_speed(value: object) -> bool:
    number = isinstance(value, int | float) and not isinstance(value, bool)
    return number and _SPEEDS[0] <= value <= _SPEEDS[1]  # type: ignore[operator]


def _bad(what: str) -> InputError:
    return InputError("bad-request", Place("request"), what, "see docs/desk.md")
