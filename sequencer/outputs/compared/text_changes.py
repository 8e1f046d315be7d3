"""In which letters two show files differ, where what they say does not tell it: comments, spacing, or lines of no show."""

from collections import Counter
from collections.abc import Iterator

from sequencer.outputs.compared.show_changes import ChangeKind, ShowChange
from sequencer.show.differences import hunks
from sequencer.units import counted

_MOST_SHOWN = 3  # lines of a stretch that are told as they are


def line_changes(old: str, new: str) -> Iterator[ShowChange]:
    """Stretches of lines that differ."""
    was, now = old.splitlines(), new.splitlines()
    found = hunks(was, now)
    for hunk in found:
        before, after = was[hunk.start : hunk.end], now[hunk.first : hunk.last]
        kind: ChangeKind
        if not before:
            kind, words = "new", f"{_lines(after)} is new"
        elif not after:
            kind, words = "gone", f"{_lines(before)} is gone"
        else:
            kind, words = "changed", f"{_lines(after)} instead of {_lines(before)}"
        yield ShowChange(subject="other", kind=kind, words=f"line {hunk.first + 1}: {words}")  # fmt: skip
    if not found:
        yield ShowChange(subject="writing", kind="changed", words="line ends differ")


def _lines(lines: list[str]) -> str:
    if len(lines) > _MOST_SHOWN:
        return f"a stretch of {counted(len(lines), 'line')} from “{_printable(lines[0])}” on"
    return f"“{' / '.join(map(_printable, lines))}”"


def _printable(line: str) -> str:
    """A line of a file that may be anything, without letters that a terminal takes for orders."""
    return "".join(each if each.isprintable() else "·" for each in line.strip())


def mark_changes(old: bool, new: bool) -> Iterator[ShowChange]:
    """The mark with which some programs begin a text file, if only one of two files begins with it."""
    if old != new:
        words = f"the invisible mark at the start of the file (a byte order mark) is {'new' if new else 'gone'}"
        yield ShowChange(subject="writing", kind="new" if new else "gone", words=words)


def writing_changes(old: str, new: str, *, others: bool) -> Iterator[ShowChange]:
    """Comments that came and went; if nothing else differs, what is left.

    Parameters
    ----------
    old, new : str
        The two files.
    others : bool
        Whether anything else has been told.
    """
    was, now = _comments(old), _comments(new)
    for comment in (now - was).elements():
        others = True
        yield ShowChange(subject="writing", kind="new", words=f"the comment “{comment}” is new")
    for comment in (was - now).elements():
        others = True
        yield ShowChange(subject="writing", kind="gone", words=f"the comment “{comment}” is gone")
    if not others:
        ends = old.replace("\r\n", "\n") == new.replace("\r\n", "\n")
        words = (
            "line ends differ"
            if ends
            else "spacing, quotes or the order of keys or comments differ"
        )
        yield ShowChange(subject="writing", kind="changed", words=words)


def _comments(text: str) -> Counter[str]:
    """Everything behind a number sign that begins a comment."""
    found: Counter[str] = Counter()
    for line in text.splitlines():
        at = _comment_at(line)
        if at is not None:
            found[line[at + 1 :].strip()] += 1
    return found


def _comment_at(line: str) -> int | None:
    """Where a line's comment begins: at a number sign outside of quotes, at the line's start or behind a space."""
    quote = ""
    for k, letter in enumerate(line):
        if quote:
            quote = "" if letter == quote else quote
        elif letter in "'\"" and (k == 0 or line[k - 1] in " [{,:("):
            quote = letter
        elif letter == "#" and (k == 0 or line[k - 1] in " \t"):
            return k
    return None
