"""What the commands that write a show for others do: sheets, rehearsal files, positions."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.files import AnyPath
from sequencer.findings import Report
from sequencer.progress import Progress, within
from sequencer.tasks.shows import AnyShow, part_of_show, read_as, stage_show, staged_and_checked

if TYPE_CHECKING:
    from sequencer.tasks.part_of_show import PartOfShow

_HEARD = 0.2  # of the progress where nothing is checked: the song is heard and the show staged
_CHECKED = 0.7  # of the progress where a check comes first


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

        asked = read_as(path, text).show
        check_choice(asked, str(path), only=only, for_whom=for_whom)
    middle = _CHECKED if since is None else _CHECKED / 2
    show, report = staged_and_checked(path, within(progress, 0.0, middle), flown=flown, text=text)
    before = before_report = None
    if since is not None:
        before, before_report = staged_and_checked(
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
            show, report = staged_and_checked(
                path, checking, without_track=True, flown=flown, text=text
            )
        else:
            show, report = part_of_show(
                read_as(path, text), part, without_track=True, flown=flown, progress=checking
            )
    else:
        hearing = within(progress, 0.0, begun)
        read = read_as(path, text)
        show = stage_show(read, without_track=True, part=part, progress=hearing)
    mix = Mix(song=song, counts=counts, calls=calls, split=split, who=tuple(who))
    wanted = ExportOptions(
        parts=tuple(parts), audio=audio, speeds=tuple(speeds), mix=mix, flown=flown,
        small=small, each=each, timecodes=tuple(timecodes), code_from=code_from,
    )  # fmt: skip
    if flown and "page" in parts:
        from sequencer.staging.in_flight.flown_show import flown_show

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
    from sequencer.staging.in_flight.flown_show import flown_show

    return trace_csv(show, rate=rate, flown=flown_show(show, progress).staged)
