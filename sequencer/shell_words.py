"""Names put into commands that somebody is told to type: whatever a stranger called a file, no shell acts upon it."""

import os
import re
import shlex

from sequencer.files import AnyPath

_PLAIN = re.compile(r"[A-Za-z0-9_+:./-]+")
# Besides letters and digits of every script: what no shell acts upon between double quotes. A single % is no variable.
_QUIET = frozenset(" _@+=:,./-()[]{}#~&;'^<>|%")


def shell_word(words: str, *, windows: bool = os.name == "nt") -> str:
    """Some words as one word of a command, so that a shell hands them on as they are.

    Parameters
    ----------
    words : str
    windows : bool
        For the shells of Windows, of which no way of quoting is common to all: a letter that some of them acts upon even
        between double quotes becomes `?`, which fits any letter of a file's name there.

    Returns
    -------
    str
        The words as they are, or between quotes.

    Source of what shells act upon: their manuals, from memory.
    """
    if _PLAIN.fullmatch(words) or (windows and _PLAIN.fullmatch(words.replace("\\", "/"))):
        return words
    many = words.count("%") > 1
    quiet = _QUIET | {"\\"} if windows else _QUIET
    loud = {
        each for each in words if not (each.isalnum() or each in quiet) or (many and each == "%")
    }
    if not loud:
        return f'"{words}"'
    if not windows:
        return shlex.quote(words)
    return '"' + "".join("?" if each in loud else each for each in words) + '"'


def shell_path(path: AnyPath, *, windows: bool = os.name == "nt") -> str:
    """A file's path as one word of a command, also where it begins as an option does."""
    words = os.fspath(path)
    return shell_word(f"./{words}" if words.startswith("-") else words, windows=windows)
