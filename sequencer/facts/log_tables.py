"""Tables that people keep by hand or in a spreadsheet: how their text is read, and what stands between the cells."""

from collections.abc import Sequence
from pathlib import Path

from sequencer.errors import InputError, Place
from sequencer.given_files import TooLargeError, given_bytes

LARGEST_TABLE = 5_000_000  # bytes: a line a day and person for a troupe's lifetime


def table_text(path: Path, kind: str, smaller: str) -> str:
    """What a table says, to the letter.

    Parameters
    ----------
    path : Path
    kind : str
        What it is called in messages.
    smaller : str
        What to do about one that is larger.

    Raises
    ------
    FileNotFoundError
        If there is no such file.
    InputError
        If it cannot be read as text.
    """
    place = Place(str(path))
    try:
        return given_bytes(path, LARGEST_TABLE).decode("utf-8")
    except FileNotFoundError:
        raise
    except TooLargeError as error:
        large = f"this {kind} is larger than {LARGEST_TABLE // 1_000_000} MB"
        raise InputError("too-large", place, large, smaller) from error
    except UnicodeDecodeError as error:
        raise InputError(
            "not-text", place, "this is not UTF-8 text", "save it as CSV, UTF-8"
        ) from error
    except OSError as error:
        raise InputError(
            "cannot-read", place, f"this file cannot be read ({error.strerror})", "check the path"
        ) from error


def separator_of(text: str) -> str:
    """What stands between the cells of a table: a semicolon where its first line has more of these."""
    first = text.splitlines()[:1]
    return ";" if first and first[0].count(";") > first[0].count(",") else ","


def check_width(header: Sequence[str], cells: Sequence[str], place: Place, mend: str) -> None:
    """Refuse a line with more cells than the first: a comma inside a text or a number would shift all that follows.

    Raises
    ------
    InputError
        If there are more; `mend` is what to do about it.
    """
    if any(cell.strip() for cell in cells[len(header) :]):
        raise InputError(
            "bad-row", place, f"this line has {len(cells)} cells, the first line names {len(header)}", mend
        )  # fmt: skip
