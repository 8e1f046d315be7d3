"""What the commands on shows stand on: a show staged and checked, whole or in part."""

import os
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from sequencer import kept
from sequencer.errors import InputError
from sequencer.files import AnyPath
from sequencer.findings import Report
from sequencer.progress import Progress, within
from sequencer.tasks.kept_reports import AskedReport
from sequencer.tasks.songs import analysed, refuse_another_cut

if TYPE_CHECKING:
    from sequencer.show.reading import ReadShow
    from sequencer.staging.staged import Staged
    from sequencer.tasks.dancing import Dancing
    from sequencer.tasks.part_of_show import PartOfShow
    from sequencer.timing.song import Song

AnyShow: TypeAlias = "AnyPath | ReadShow | Staged"
_SONG = 0.5  # of the progress of staging: the song is heard
_WORKED_OUT = 0.9  # the same with the dances worked out in several processes
_HEARD = 0.2  # of the progress of a check: the song is heard and the show staged


def stage_show(
    path: AnyShow,
    *,
    song: "Song | None" = None,
    without_track: bool = False,
    part: "PartOfShow | None" = None,
    jobs: int = 1,
    flown: bool = False,
    progress: Progress | None = None,
) -> "Staged":
    """Stage a show file: put it on its song, with every block turned into laws.

    Parameters
    ----------
    path : path, ReadShow or Staged
        A show file, or a show that has been read; a staged one is returned unchanged.
    song : Song, optional
        The analysed track; analysed here if not given.
    without_track : bool
        If the track is missing, use the cached analysis with the hash that the show names.
    part : PartOfShow, optional
        Stage only this part; the whole show if not given.
    jobs : int
        Processes that work out the dances; -1 for one per core.
    flown : bool
        Whether these processes fly them too, since the show is to be checked as flown.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show or its track cannot be used.
    """
    from sequencer.show.reading import ReadShow, read_show
    from sequencer.staging.staged import Staged
    from sequencer.staging.timeline import staged

    if isinstance(path, Staged):
        if part is not None:
            raise ValueError("a show that is staged has no part to be staged: give its file")
        return path
    read = path if isinstance(path, ReadShow) else read_show(Path(path))
    hearing = within(progress, 0.0, _SONG)
    heard = song or analysed(read, without_track=without_track, progress=hearing)
    refuse_another_cut(read, heard.sha256)
    if jobs != 1 and part is None:
        from sequencer.tasks.working_out import work_out

        working = within(progress, _SONG, _WORKED_OUT)
        work_out(read, heard, jobs=jobs, flown=flown, progress=working)
    if progress is not None:
        progress("putting the dances on the song", _SONG if jobs == 1 else _WORKED_OUT)
    try:
        return staged(read, heard) if part is None else part.staged(read, heard)
    except InputError as error:
        from sequencer.staging.entries.written_count import other_count_fault

        raise other_count_fault(read, heard) or error from None


def check_show(
    path: AnyShow,
    *,
    flown: bool = True,
    dancing: "Dancing | None" = None,
    part: "PartOfShow | None" = None,
    jobs: int = 1,
    progress: Progress | None = None,
) -> Report:
    """Run every check on a show, or those of what is danced on a part of it.

    Parameters
    ----------
    path : path, ReadShow or Staged
    flown : bool
        Whether passive props are checked as they can be flown, or as drawn with a margin for the hands.
    dancing : Dancing, optional
        How often and where to run the show, as drawn, with random human errors; not at all if left out.
    part : PartOfShow, optional
        Look only at this part of a show that is not staged yet, and not danced.
    jobs : int
        Processes that work out the dances of a show that is not staged yet; -1 for one per core.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show, its track or the cluster cannot be used, or the part is not in the song.
    ValueError
        If a part is to be danced, or of a show that is staged.
    """
    if part is not None:
        if dancing is not None:
            raise ValueError("only a whole show is danced with errors")
        return part_of_show(path, part, flown=flown, progress=progress)[1]
    if dancing is None and isinstance(path, str | os.PathLike):
        asked = AskedReport(Path(path), flown=flown)
        known = asked.known()
        if known is not None:
            return known
        heard = within(progress, 0.0, _HEARD)
        with kept.shelf(os.fspath(path)):
            show = stage_show(asked.read or path, jobs=jobs, flown=flown, progress=heard)
            return _checked(show, asked, progress, flown=flown)
    danced = AskedReport(Path(path), flown=flown) if isinstance(path, str | os.PathLike) else None
    show = stage_show(path, jobs=jobs, flown=flown, progress=within(progress, 0.0, _HEARD))
    from sequencer.planning.offers import checked_with_mends

    if dancing is None:
        return checked_with_mends(show, flown=flown, progress=progress)
    from sequencer.tasks.dancing import trials

    with trials(show, dancing) as how:
        report = checked_with_mends(show, flown=flown, trials=how, progress=progress)
    if danced is not None:
        danced.keep_verdict(show, report)
    return report


def part_of_show(
    path: AnyShow,
    part: "PartOfShow",
    *,
    without_track: bool = False,
    flown: bool = True,
    progress: Progress | None = None,
) -> "tuple[Staged, Report]":
    """A part of a show, staged, and its report, as flown or as drawn.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the part is not in the song.
    """
    from sequencer.planning.offers import checked_with_mends

    heard = within(progress, 0.0, _HEARD)
    show = stage_show(path, without_track=without_track, part=part, progress=heard)
    return show, checked_with_mends(show, flown=flown, progress=progress)


def _checked(
    show: "Staged", asked: AskedReport, progress: Progress | None, *, flown: bool = False
) -> Report:
    """The report of a show staged from a file: kept, if it is known; or from a check."""

    def check(show: "Staged") -> Report:
        from sequencer.planning.offers import checked_with_mends

        return checked_with_mends(show, flown=flown, progress=progress)

    return asked.of(show, check)


def report_text(report: Report, *, as_json: bool, width: int = 100) -> str:
    """Findings and clearances, as JSON or as a table for people."""
    from sequencer.outputs.report import printed

    return printed.report_json(report) if as_json else printed.report_table(report, width=width)


def staged_and_checked(
    path: AnyPath,
    progress: Progress | None,
    *,
    without_track: bool = False,
    flown: bool,
    text: str | None = None,
) -> "tuple[Staged, Report]":
    """A show file staged, and its report, as flown or as drawn."""
    asked = AskedReport(Path(path), flown=flown, text=text)
    heard = within(progress, 0.0, _HEARD)
    with kept.shelf(os.fspath(path)):
        read = asked.read or read_as(path, text)
        show = stage_show(read, without_track=without_track, progress=heard)
        return show, _checked(show, asked, progress, flown=flown)


def read_as(path: AnyPath, text: str | None) -> "ReadShow":
    """A show file as it is, or as it is taken to be."""
    from sequencer.show.reading import read_show, show_from_document
    from sequencer.show.text.document import parse_document

    if text is None:
        return read_show(Path(path))
    return show_from_document(parse_document(text.removeprefix("\ufeff"), str(path)))
