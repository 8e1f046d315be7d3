"""The text of a show file under edits: only the letters concerned change, all others stay to the byte.

from sequencer.show.text.written import Written
What an edit comes to is known beforehand from plain values (`show.plain_edits`). The edited text is parsed, and taken only if
it says exactly that: an edit is made whole, or refused.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from sequencer.errors import InputError
from sequencer.show.model import Show
from sequencer.show.text.anchors import root_place, unshared
from sequencer.show.text.document import Document, parse_document
from sequencer.show.text.plain_edits import TextEdit, changed_plain
from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.splices import spliced
from sequencer.show.text.text_edits import Writer, comments_above, own_lines

SHOW_HEADINGS = tuple(
    info.alias or name for name, info in Show.model_fields.items()
)  # in their order


class ShowText:
    """A show file's text, and what it says.

    Parameters
    ----------
    text : str
    file : str
        Its name, for messages.

    Raises
    ------
    InputError
        If it is not YAML.
    """

    def __init__(self, text: str, file: str) -> None:
        self.text, self.file = text, file
        self.document: Document = parse_document(text, file)

    def __repr__(self) -> str:
        return f"<ShowText {self.file}: {len(self.text.splitlines())} lines>"

    @property
    def values(self) -> Any:
        """What it says, as plain values; never to be changed."""
        return self.document.values

    def value(self, *path: str | int) -> Any:
        """The plain value at a path; None if there is none."""
        found = self.values
        for key in path:
            try:
                found = found[key]
            except (KeyError, IndexError, TypeError):
                return None
        return found

    def row(self, path: ValuePath, *, comments: bool = False) -> Any:
        """An item of a list as it is written, to be put elsewhere.

        Parameters
        ----------
        path : path
        comments : bool
            Whether comments on the lines above come along.

        Raises
        ------
        ValueError
            If there is none.
        """
        holder = root_place(self.document).find(path[:-1])
        value, number = self.value(*path), holder.find(path[-1:]).number
        words = own_lines(self.text, holder, number, value)
        shares = words is None or any(mark in line for line in words.lines for mark in "&*")
        if words is None or shares:
            return value
        return (
            replace(words, above=comments_above(self.text, holder, number)) if comments else words
        )

    def edited(self, *edits: TextEdit) -> "ShowText":
        """The text after edits, made at once: every path is one of this text.

        Raises
        ------
        InputError
            If the place is written in a way that cannot be edited by itself.
        ValueError
            If a path does not exist.
        """
        expected = changed_plain(self.values, edits)
        text = unshared(self.text, self.file, [each.path for each in edits])
        after = _edited(text, self.file, edits)
        if after is None or after.values != expected:
            raise InputError(
                "cannot-edit-here",
                self.document.place(*edits[0].path),
                "this is written in a way that cannot be changed by itself",
                "write one entry or one key on each line",
            )
        return after


def _edited(text: str, file: str, edits: Sequence[TextEdit]) -> ShowText | None:
    document = parse_document(text, file)
    writer = Writer(text, root_place(document), document.values, SHOW_HEADINGS)
    after = spliced(text, writer.splices(edits))
    if after is None:
        return None
    try:
        return ShowText(after, file)
    except InputError:
        return None
