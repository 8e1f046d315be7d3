"""The run sheets: PDF pages for performers and crew, one module a sheet."""

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
        What the checks said; what stands against the show is printed on every page.
    out : Path
        Folder of this show's print-outs; made if missing.
    paper : {"a4", "letter"}
    since : Staged, optional
        The show of the last print: lines that differ from it are marked, on every sheet.
    since_report : Report, optional
        What the checks said of it.
    progress : callable, optional
        Told what is going on, and the share that is done.
    removed : callable, optional
        Told each sheet of the last print that is taken away because this one has none of its name.

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
