"""The run sheets: PDF pages for performers and crew, one module per sheet."""

from collections.abc import Callable
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
    progress: Callable[[str, float], None] | None = None,
    removed: Callable[[Path], None] | None = None,
) -> list[Path]:
    """Write every sheet of a show, and all of them as one file for one print job.

    Parameters
    ----------
    staged : Staged
    report : Report
        Result of the checks; if anything stops the show, every page says so.
    out : Path
        Folder for this show's print-outs; created if missing.
    paper : {"a4", "letter"}
    since : Staged, optional
        The show as last printed: lines that have changed since are marked, on every sheet.
    since_report : Report, optional
        Result of the checks of that show.
    progress : callable, optional
        Called with what is going on, and the share done.
    removed : callable, optional
        Called with each sheet of the last print that is removed because this print has none of that name.

    Returns
    -------
    paths : list of Path
        The combined file first.

    Raises
    ------
    InputError
        If the folder cannot be written.
    ValueError
        If the paper is not known.
    """
    from sequencer.outputs.sheets.writing import write

    return write(
        staged,
        report,
        out,
        paper=paper,
        since=since,
        since_report=since_report,
        progress=progress,
        removed=removed,
    )
