"""Adds lines to a practice log: what is there stays to the letter, in the order of its own columns.

The file is written whole beside the old one and takes its name at once; two calls at the same time add one after the
other.
"""

import csv
import io
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.facts.log_tables import separator_of
from sequencer.files import replacing, telling
from sequencer.practice.log_quotes import refuse_open_quote
from sequencer.practice.log_reading import header_of, log_text
from sequencer.practice.logged_run import LOG_COLUMNS


def append_runs(path: Path, rows: Sequence[Mapping[str, str]]) -> None:
    """Add lines to a practice log, which is begun where there is none.

    Parameters
    ----------
    path : Path
    rows : sequence of mapping of str to str
        Cells by the names of their columns.

    Raises
    ------
    InputError
        If the log is no practice log, lacks a column for a value, is open in a spreadsheet, or cannot be written; it
        is as before then.
    """
    _refuse_open(path)
    path = path.resolve()  # a link stays a link
    _refuse_open(path)
    with _alone(path.parent):
        text = added_to(log_text(path), rows, str(path))
        try:
            with replacing(path) as scratch:
                scratch.write_bytes(text.encode("utf-8"))
        except InputError as error:
            raise InputError(
                error.code, error.place, error.what, "the log lies beside the show: make that folder one that you may write to, or make room",
            ) from error  # fmt: skip


def added_to(text: str | None, rows: Sequence[Mapping[str, str]], file: str) -> str:
    """The text of a log with more lines; its line ends, separator and columns are kept.

    Parameters
    ----------
    text : str or None
        None: no log yet.
    rows : sequence of mapping of str to str
    file : str
        Its name, for messages.

    Raises
    ------
    InputError
        If its first line names no columns of a practice log, or lacks one for a value, or a quote is open at its end.
    """
    if text is None or not text.removeprefix("\ufeff").strip():
        before = (text or "").removesuffix("\n") + ",".join(LOG_COLUMNS) + "\n"
        return added_to(before, rows, file)
    separator, end = separator_of(text), "\r\n" if "\r\n" in text else "\n"
    refuse_open_quote(text, file, separator)
    first = next(
        csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=separator)
    )
    header = header_of(first, file)
    lacking = [
        name
        for row in rows
        for name, cell in row.items()
        if cell and name not in header and not _is_known_anyhow(name, row, header)
    ]
    if lacking:
        raise InputError(
            "no-such-column", Place(file, 1, 1), f"the first line has no column {lacking[0]!r} to write this into",
            f"add {separator}{lacking[0]} to its end",
        )  # fmt: skip
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter=separator, lineterminator=end)
    writer.writerows([row.get(name, "") for name in header] for row in rows)
    gap = "" if text.endswith(("\n", "\r")) else end
    return text + gap + out.getvalue()


def _is_known_anyhow(name: str, row: Mapping[str, str], header: Sequence[str]) -> bool:
    """Whether a cell may be left out of a log without its column: unlit is usual; an exercise is known by its name or by all of its loop."""

    def has(*names: str) -> bool:
        return all(each in header and row.get(each) for each in names)

    if name == "lit":
        return row["lit"] == "no"
    if name == "what":
        return has("from", "until")
    return name in {"from", "until"} and has("what")


def _refuse_open(path: Path) -> None:
    open_in = path.with_name(f".~lock.{path.name}#")  # how office suites mark a table that is open
    if open_in.exists():
        raise InputError(
            "log-is-open", Place(str(path)), "this log is open in a spreadsheet, which would write over the new line",
            f"save and close it there first; if it is not open, delete {open_in.name}",
        )  # fmt: skip


@contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Let another call that adds to a log of this folder wait until the body is done, where the system can."""
    if sys.platform == "win32":  # a folder cannot be locked there
        yield
        return
    import fcntl

    with telling(folder):
        handle = os.open(folder, os.O_RDONLY)
        try:
            fcntl.flock(handle, fcntl.LOCK_EX)
        except OSError:
            os.close(handle)
            raise
    try:
        yield
    finally:
        os.close(handle)
