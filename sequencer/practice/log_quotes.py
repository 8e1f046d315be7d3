"""Finds a double quote of a practice log that is opened and never closed: it would swallow every line after it."""

import csv
import io

from sequencer.errors import InputError, Place

_AFTER = "after"  # stands for a line that is added


def refuse_open_quote(text: str, file: str, separator: str) -> None:
    """Refuse a log in which a quote is still open at its end.

    Parameters
    ----------
    text : str
    file : str
        Its name, for messages.
    separator : str
        What stands between its cells.

    Raises
    ------
    InputError
        At the line and column of the cell that it opens, or if the text is no CSV.
    """
    reader = csv.reader(
        io.StringIO(f"{text.removeprefix(chr(0xFEFF))}\n{_AFTER}", newline=""),
        delimiter=separator,
    )
    line, last, begun = 1, [""], 1
    try:
        for row in reader:
            last, line, begun = row, begun, reader.line_num + 1
    except csv.Error as error:
        raise InputError(
            "no-practice-log", Place(file, begun), f"this is not CSV: {error}", "save it as CSV, UTF-8"
        ) from error  # fmt: skip
    if last != [_AFTER]:
        column = 1 + sum(len(cell) + 1 for cell in last[:-1])
        raise InputError(
            "open-quote", Place(file, line, column), "a double quote is opened here and never closed: every line after it would belong to this cell",
            "close it at the end of the cell",
        )  # fmt: skip
