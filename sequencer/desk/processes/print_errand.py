"""Print-outs as errands: sheets, the rehearsal page, count tracks and exports, of the show as the page has it."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from sequencer.errors import InputError
from sequencer.progress import Progress

EXPORTS = ("page", "counts", "midi", "captions", "timetable", "timecode")
FOLDER = "exports"  # beside the show file


def printed_sheets(given: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """The sheets that are asked for, printed into the show's folder of exports.

    Parameters
    ----------
    given : mapping
        `path` and `text` of the show; `pack`, `only`, `people`, `paper`, `since`, `flown` as `sequencer sheet` takes them.
    progress : callable

    Returns
    -------
    printed : dict
        `files`, as paths; `ok`: whether the show may be danced, by what the checks look at; `said`, sentences besides.

    Raises
    ------
    InputError
        If the show cannot be printed.
    """
    from sequencer.tasks import print_sheets

    path = Path(given["path"])
    gone: list[str] = []
    old: list[Path] = []
    since = given["since"]
    with _mended_here():
        report, written = print_sheets(
            path,
            path.parent / FOLDER,
            paper=given["paper"],
            since=None if since is None else path.parent / since,
            pack=given["pack"],
            only=given["only"],
            for_whom=given["people"],
            flown=given["flown"],
            text=given["text"],
            progress=progress,
            removed=lambda path, why: gone.append(f"removed {path.name}: {why}"),
            outdated=old.append,
        )
    said = gone
    if old:
        names = ", ".join(each.name for each in old)
        said.append(f"not printed anew, and of an earlier version of the show: {names}")
    return {"files": [str(each) for each in written], "ok": report.ok, "said": said}


def rehearsal_files(given: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """Rehearsal page, count tracks and exports, written into the show's folder of exports.

    Parameters
    ----------
    given : mapping
        `path` and `text` of the show; `parts`, `speeds`, `song`, `counts`, `calls`, `split`, `small`, `each`, `timecodes`,
        `code_from`, `people`, `flown` as `sequencer rehearse` takes them, speeds as shares.
    progress : callable

    Returns
    -------
    written : dict
        As of `printed_sheets`; `ok` is None where nothing was checked, since nothing that was asked for needs it.

    Raises
    ------
    InputError
        If the show cannot be rehearsed.
    """
    from sequencer.tasks import write_rehearsal

    path = Path(given["path"])
    with _mended_here():
        report, written = write_rehearsal(
            path,
            path.parent / FOLDER,
            parts=given["parts"],
            speeds=given["speeds"],
            song=given["song"],
            counts=given["counts"],
            calls=given["calls"],
            split=given["split"],
            who=given["people"],
            flown=given["flown"],
            small=given["small"],
            each=given["each"],
            timecodes=given["timecodes"],
            code_from=given["code_from"],
            text=given["text"],
            progress=progress,
        )
    ok = None if report is None else report.ok
    return {"files": [str(each) for each in written], "ok": ok, "said": []}


@contextmanager
def _mended_here() -> Iterator[None]:
    """What cannot be written is mended otherwise on a page than on a command line."""
    try:
        yield
    except InputError as error:
        if error.code != "cannot-write":
            raise
        raise InputError(
            error.code, error.place, error.what, "make room, or allow writing there, and try it again"
        ) from error  # fmt: skip
