"""The run sheets: PDF pages for performers and crew, one module per sheet."""

from collections.abc import Callable, Sequence
from pathlib import Path

from sequencer.findings import Report
from sequencer.staging.staged import Staged


def write_sheets(
    staged: Staged,
    report: Report,
    out: Path,
    *,
    paper: str = "a4",
    since: Staged | None = None,
    since_report: Report | None = None,
    pack: bool = False,
    only: Sequence[str] = (),
    for_whom: Sequence[str] = (),
    flown: bool = False,
    turned: bool = False,
    phone: bool = False,
    progress: Callable[[str, float], None] | None = None,
    removed: Callable[[Path, str], None] | None = None,
    outdated: Callable[[Path], None] | None = None,
) -> list[Path]:
    """Write the sheets of a show, and all of them as one file for one print job; every sheet, or those asked for.

    Parameters
    ----------
    staged : Staged
    report : Report
        Result of the checks; if anything stops the show, every page says so.
    out : Path
        Folder for this show's print-outs; created if missing.
    paper : {"a4", "letter"}
    since : Staged, optional
        The show as last printed: lines that have changed since are marked, each sheet against the same one of
        that show, whether or not it was printed then.
    since_report : Report, optional
        Result of the checks of that show.
    pack : bool
        Only what is carried on the night.
    only : sequence of str
        Only sheets of these kinds, such as "post"; the kinds are listed in docs/sheets.md.
    for_whom : sequence of str
        Only what these performers and crew members carry.
    flown : bool
        Whether the reports are of the shows as flown; then so is where heads go that come off.
    turned : bool
        Whether formations are seen from the performers' side, the audience at the top.
    phone : bool
        Whether the formations are written for phones too, as one small page.
    progress : callable, optional
        Called with what is going on, and the share done.
    removed : callable, optional
        Called with each sheet of an earlier print that is removed, and why: this print has all sheets of its kind, and
        none of that name.
    outdated : callable, optional
        Called with each sheet that is left from an earlier print, since this one leaves its kind out, and is of
        another show than the one printed now.

    Returns
    -------
    paths : list of Path
        The combined file first.

    Raises
    ------
    InputError
        If the folder cannot be written, or a kind, a name or such a sheet is not in the show.
    ValueError
        If the paper is not known.
    """
    from sequencer.outputs.sheets.choosing import SheetChoice
    from sequencer.outputs.sheets.writing import write

    return write(
        staged,
        report,
        out,
        paper=paper,
        since=since,
        since_report=since_report,
        choice=SheetChoice(pack=pack, only=tuple(only), for_whom=tuple(for_whom)),
        progress=progress,
        flown=flown,
        turned=turned,
        phone=phone,
        removed=removed,
        outdated=outdated,
    )
