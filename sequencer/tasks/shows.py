"""What the commands on songs and shows do: listen, check, sheet, rehearse, trace."""

import json
import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from sequencer import kept
from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.findings import Report
from sequencer.given_files import is_there
from sequencer.progress import Progress, within
from sequencer.tasks.kept_reports import AskedReport

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
_CHECKED = 0.7  # of the progress where a check comes first


def hear_song(
    track: AnyPath,
    *,
    taps: AnyPath | None = None,
    again: bool = False,
    progress: Progress | None = None,
) -> "Song":
    """Beats, bars, sections and energy of a track; from the cache if it was analysed before.

    Parameters
    ----------
    track : path
    taps : path, optional
        The user's own beats, which replace the detected ones.
    again : bool
        Analyse again and ignore the cached result.
    progress : callable, optional

    Raises
    ------
    InputError
        If the file cannot be used as a song, or the given beats do not fit it.
    """
    from sequencer.listening.hearing import hear

    song = hear(Path(track), progress=progress, use_cache=not again)
    if taps is None:
        return song
    from sequencer.timing.corrections import corrected
    from sequencer.timing.taps import given_count

    try:
        return corrected(song, given_count(Path(taps)))
    except ValueError as error:
        raise InputError(
            "taps-do-not-fit", Place(str(taps)), str(error), "tap along to this exact track"
        ) from error


def click_song(song: "Song", track: AnyPath, path: AnyPath) -> None:
    """Write the track with a click on every beat, as WAV.

    Raises
    ------
    InputError
        If the track cannot be read, or the folder cannot be written.
    """
    from sequencer.outputs.sound.clicked import write_clicked

    write_clicked(song, Path(track), Path(path))


def song_text(song: "Song", track: AnyPath, *, as_json: bool) -> str:
    """The analysed song, as JSON or as a summary for people."""
    from sequencer.outputs.song import song_report

    if as_json:
        return song_report.song_json(song, Path(track))
    return song_report.song_summary(song)


def draw_song(song: "Song", chart: AnyPath) -> None:
    """Write the chart of a song, as PNG, SVG or PDF by the file's extension."""
    from sequencer.outputs.figures import write_figure
    from sequencer.outputs.song.song_chart import song_chart

    write_figure(song_chart(song), Path(chart))


def schema_text() -> str:
    """The JSON Schema of a show file."""
    from sequencer.show.schema import editor_schema

    return json.dumps(editor_schema(), indent=2, ensure_ascii=False)


def write_schema(path: AnyPath) -> Path:
    """Write the JSON Schema of one show, with its names, beside it; the show need not be without faults.

    Returns
    -------
    written : Path
        `mine.schema.json` beside `mine.yaml`.

    Raises
    ------
    InputError
        If the show file is no YAML, names a file of patterns that cannot be used, or the schema cannot be written.
    """
    from sequencer.files import write_text
    from sequencer.show.document import read_document
    from sequencer.show.schema import editor_schema
    from sequencer.show.schema_names import names_of
    from sequencer.tasks.vocabulary import book_from

    values = read_document(Path(path)).values
    values = values if isinstance(values, dict) else {}
    book = book_from(path if {"patterns", "pattern_files"} & set(values) else None)
    names = names_of(values, book)
    target = Path(path).with_suffix(".schema.json")
    write_text(target, json.dumps(editor_schema(names), indent=1, ensure_ascii=False) + "\n")
    return target


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
    analysed = song or _analysed(read, without_track=without_track, progress=hearing)
    refuse_another_cut(read, analysed.sha256)
    if jobs != 1 and part is None:
        from sequencer.tasks.working_out import work_out

        working = within(progress, _SONG, _WORKED_OUT)
        work_out(read, analysed, jobs=jobs, flown=flown, progress=working)
    if progress is not None:
        progress("putting the dances on the song", _SONG if jobs == 1 else _WORKED_OUT)
    try:
        return staged(read, analysed) if part is None else part.staged(read, analysed)
    except InputError as error:
        from sequencer.staging.written_count import other_count_fault

        raise other_count_fault(read, analysed) or error from None


def refuse_another_cut(read: "ReadShow", sha256: str) -> None:
    """Refuse a song that is not the recording whose hash a show names.

    Raises
    ------
    InputError
        If it is another, `another-cut`.
    """
    pinned = read.show.track.sha256
    if pinned is not None and pinned != sha256:
        raise read.fault(
            "another-cut", ("track", "sha256"), "the track is not the cut that the show was made for",
            f"use the old file, or recheck every block and write {sha256}",
        )  # fmt: skip


def song_of(
    read: "ReadShow",
    *,
    known: "Song | None" = None,
    without_track: bool = False,
    progress: Progress | None = None,
) -> "Song":
    """The analysed track of a show that has been read.

    Parameters
    ----------
    read : ReadShow
    known : Song, optional
        Heard before; taken if it is the show's.
    without_track : bool
        If the track is missing, use the cached analysis with the hash that the show names.
    progress : callable, optional

    Raises
    ------
    InputError
        If the track is not there, cannot be used, or is not the cut that the show was made for.
    """
    if known is not None and _is_its_song(read, known, without_track=without_track):
        song = known
    else:
        song = _analysed(read, without_track=without_track, progress=progress)
    refuse_another_cut(read, song.sha256)
    return song


def _is_its_song(read: "ReadShow", song: "Song", *, without_track: bool) -> bool:
    track = track_of(read)
    try:
        return song.track == track.name and song.sha256 == sha256_of_file(track)
    except FileNotFoundError:
        return without_track and song.sha256 == read.show.track.sha256
    except OSError:
        return False


def track_of(read: "ReadShow") -> Path:
    """Where the track of a show lies."""
    return Path(read.document.file).parent / read.show.track.file


def _analysed(read: "ReadShow", *, without_track: bool, progress: Progress | None) -> "Song":
    """The analysed track of a show, whichever cut it is."""
    track = track_of(read)
    if is_there(track):
        return hear_song(track, progress=progress)
    if without_track and (known := _cached_song(read.show.track.sha256, track)) is not None:
        return known
    raise read.fault(
        "no-track", ("track", "file"), f"cannot find the track {read.show.track.file!r} next to the show file",
        "write its path relative to the show file",
    )  # fmt: skip


def _cached_song(sha256: str | None, track: Path) -> "Song | None":
    from sequencer.listening import cache

    return None if sha256 is None else cache.load(sha256, track=track.name)


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


def print_sheets(
    path: AnyPath,
    out: AnyPath,
    *,
    paper: str = "a4",
    since: AnyPath | None = None,
    pack: bool = False,
    only: Sequence[str] = (),
    for_whom: Sequence[str] = (),
    flown: bool = True,
    turned: bool = False,
    phone: bool = False,
    text: str | None = None,
    progress: Progress | None = None,
    removed: Callable[[Path, str], None] | None = None,
    outdated: Callable[[Path], None] | None = None,
) -> tuple[Report, list[Path]]:
    """Check a show and print its run sheets into its own folder in `out`; every sheet, or those asked for.

    Parameters
    ----------
    path, out : path
    paper : {"a4", "letter"}
    since : path, optional
        The show file of the last print; lines that have changed since are marked.
    pack : bool
        Only what is carried on the night.
    only : sequence of str
        Only sheets of these kinds, as listed in docs/sheets.md.
    for_whom : sequence of str
        Only what these performers and crew members carry.
    flown : bool
        Whether passive props are checked as they can be flown, or as drawn with a margin for the hands.
    turned : bool
        Whether formations are seen from the performers' side, the audience at the top.
    phone : bool
        Whether the formations are written for phones too, as one small page.
    text : str, optional
        What the show file is taken to say, where that is not written yet.
    progress : callable, optional
    removed : callable, optional
        Called with each sheet of an earlier print that is removed, and why: nobody of that name is there.
    outdated : callable, optional
        Called with each sheet of an earlier print that is left, and is of another show than the one printed now.

    Raises
    ------
    InputError
        If the show or its track cannot be used, a kind, a name or such a sheet is not in the show, or the folder
        cannot be written.
    """
    from sequencer.outputs.sheets import write_sheets

    if only or for_whom:  # before the song is heard and the show is checked
        from sequencer.outputs.sheets.writing import check_choice

        asked = _read_as(path, text).show
        check_choice(asked, str(path), only=only, for_whom=for_whom)
    middle = _CHECKED if since is None else _CHECKED / 2
    show, report = _staged_and_checked(path, within(progress, 0.0, middle), flown=flown, text=text)
    before = before_report = None
    if since is not None:
        before, before_report = _staged_and_checked(
            since, within(progress, middle, _CHECKED), flown=flown
        )
    return report, write_sheets(
        show,
        report,
        Path(out) / Path(path).stem,
        paper=paper,
        since=before,
        since_report=before_report,
        pack=pack,
        only=only,
        for_whom=for_whom,
        flown=flown,
        turned=turned,
        phone=phone,
        progress=within(progress, _CHECKED, 1.0),
        removed=removed,
        outdated=outdated,
    )


def _staged_and_checked(
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
        read = asked.read or _read_as(path, text)
        show = stage_show(read, without_track=without_track, progress=heard)
        return show, _checked(show, asked, progress, flown=flown)


def _read_as(path: AnyPath, text: str | None) -> "ReadShow":
    """A show file as it is, or as it is taken to be."""
    from sequencer.show.document import parse_document
    from sequencer.show.reading import read_show, show_from_document

    if text is None:
        return read_show(Path(path))
    return show_from_document(parse_document(text.removeprefix("\ufeff"), str(path)))


def write_rehearsal(
    path: AnyPath,
    out: AnyPath,
    *,
    parts: Sequence[str],
    audio: str = "embed",
    speeds: Sequence[float] = (1.0,),
    song: float | None = -9.0,
    counts: str = "pitched",
    calls: bool = True,
    split: bool = False,
    who: Sequence[str] = (),
    flown: bool = True,
    part: "PartOfShow | None" = None,
    small: bool = False,
    each: bool = False,
    timecodes: Sequence[str] = ("25",),
    code_from: str = "00:00:00:00",
    text: str | None = None,
    progress: Progress | None = None,
) -> tuple[Report | None, list[Path]]:
    """Write a show's rehearsal files into its own folder in `out`; the page comes with the findings of a check.

    Parameters
    ----------
    path, out : path
    parts : sequence of {"page", "counts", "midi", "captions", "timetable", "timecode"}
    audio : {"embed", "link", "none"}
        How the page carries the song.
    speeds : sequence of float
        One count track for each; 1 is the original speed.
    song : float or None
        Level of the song in the count track [dB]; None leaves it out.
    counts : {"pitched", "spoken", "none"}
    calls, split : bool
        Whether to call sections; whether to put the song left and the counts right.
    who : sequence of str
        Performers whose changes are counted; everybody if empty.
    flown : bool
        Whether the page dances the show as it can be flown with a passive prop, and tells what was found of that; the
        drawing can be asked for on it.
    part : PartOfShow, optional
        Only this part.
    small, each : bool
        Whether count tracks are MP3, small enough for phones; whether everybody (of `who`, if given) gets one of their changes.
    timecodes : sequence of {"24", "25", "29.97df", "30"}
        Frame rates of time code, each of which is written.
    code_from : str
        The time code at which the track begins.
    text : str, optional
        What the show file is taken to say, where that is not written yet.
    progress : callable, optional

    Returns
    -------
    report : Report or None
        What the page shows; None if no page was asked for, since nothing else needs a check.
    written : list of Path

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the folder cannot be written.
    """
    from sequencer.outputs.exports.folder import ExportOptions, write_exports
    from sequencer.outputs.sound.counts import Mix

    report, begun = None, _HEARD
    if "page" in parts:
        begun = _CHECKED
        checking = within(progress, 0.0, begun)
        if part is None:
            show, report = _staged_and_checked(
                path, checking, without_track=True, flown=flown, text=text
            )
        else:
            show, report = part_of_show(
                _read_as(path, text), part, without_track=True, flown=flown, progress=checking
            )
    else:
        hearing = within(progress, 0.0, begun)
        read = _read_as(path, text)
        show = stage_show(read, without_track=True, part=part, progress=hearing)
    mix = Mix(song=song, counts=counts, calls=calls, split=split, who=tuple(who))
    wanted = ExportOptions(
        parts=tuple(parts), audio=audio, speeds=tuple(speeds), mix=mix, flown=flown,
        small=small, each=each, timecodes=tuple(timecodes), code_from=code_from,
    )  # fmt: skip
    if flown and "page" in parts:
        from sequencer.staging.flown_show import flown_show

        flown_show(show, within(progress, begun, 1.0))
    track = Path(path).parent / show.show.track.file
    folder = Path(out) / Path(path).stem
    writing = within(progress, begun, 1.0)
    return report, write_exports(show, report, track, folder, wanted, progress=writing)


def trace_show(
    path: AnyShow, *, rate: float, flown: bool = True, progress: Progress | None = None
) -> str:
    """Positions of every hand and prop over time, as CSV in the stage frame; with `flown`, passive props as they can be flown too.

    Raises
    ------
    InputError
        If the show or its track cannot be used.
    """
    from sequencer.outputs.exports.trace import trace_csv

    show = stage_show(path, progress=progress)
    if not flown:
        return trace_csv(show, rate=rate)
    from sequencer.staging.flown_show import flown_show

    return trace_csv(show, rate=rate, flown=flown_show(show, progress).staged)
