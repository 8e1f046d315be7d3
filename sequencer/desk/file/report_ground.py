"""What a report of the checks stands on besides the show's text: the program, and the files that the show names."""

import datetime as dt
from functools import lru_cache
from pathlib import Path

from sequencer import content_keys, plugins
from sequencer.digests import sha256_of_file
from sequencer.errors import InputError
from sequencer.show.operations.operation import read_again, shown_text


def report_ground(show: Path, text: str) -> str | None:
    """A sum by which it is known whether a report of a text would still be the same.

    Parameters
    ----------
    show : Path
        The show file, beside which the others lie.
    text : str
        What it says, or said.

    Returns
    -------
    ground : str or None
        None where it cannot be known: the text is no show, a file that it names is missing, or plug-ins are at work.
    """
    if plugins.any_installed():
        return None
    try:
        digests = [sha256_of_file(show.parent / name) for name in _names(text, show.name)]
    except (OSError, ValueError, InputError):
        return None
    year = dt.datetime.now(tz=dt.UTC).year  # the age of a burn log counts in years
    return content_keys.content_key(content_keys.whole_code(), year, digests).hex()


@lru_cache(maxsize=64)  # a list of versions asks for each of them again and again
def _names(text: str, file: str) -> tuple[str, ...]:
    from sequencer.tasks.kept_reports import names_in

    shown = shown_text(text, file)
    return names_in(read_again(shown, shown).show)
