"""Operations made of others, changes that a mend proposes, and the way back from an operation."""

from dataclasses import dataclass
from typing import ClassVar

from pydantic import JsonValue

from sequencer.show.editing import edited_in_turn
from sequencer.show.operations.operation import AnyOperation, Operation, RowValues, refusal
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_values import ValuePath
from sequencer.show.text.text_change import TextChange, change_between


@dataclass(frozen=True, slots=True, kw_only=True)
class DoTogether(Operation):
    """Several operations one after the other, as one: all of them, or none."""

    KIND: ClassVar[str] = "do-together"
    operations: tuple[AnyOperation, ...]
    said: str = ""  # what they do, in words

    @property
    def words(self) -> str:
        """What it does."""
        return self.said or "; ".join(each.words for each in self.operations)

    def on(self, text: ShowText) -> ShowText:
        """The text with all."""
        for each in self.operations:
            text = each.on(text)
        return text


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeChanges(Operation):
    """Values set and entries put in, as a mend proposes them."""

    KIND: ClassVar[str] = "make-changes"
    said: str  # what they do, in words
    changes: tuple[tuple[ValuePath, JsonValue], ...] = ()  # null takes a key out
    insertions: tuple[tuple[ValuePath, int, RowValues], ...] = ()  # a list, a place in it, an entry

    @property
    def words(self) -> str:
        """What it does."""
        return self.said

    def on(self, text: ShowText) -> ShowText:
        """The text with all."""
        insertions = [(path, index, dict(row)) for path, index, row in self.insertions]
        steps = [(self.changes, insertions)]
        return ShowText(edited_in_turn(text.text, steps, file=text.file), text.file)


@dataclass(frozen=True, slots=True, kw_only=True)
class PutBack(Operation):
    """Letters of the file put back to what they were."""

    KIND: ClassVar[str] = "put-back"
    start: int  # letters before them
    old: str  # what they are
    new: str  # what they were
    said: str = ""  # what is taken back, in words

    @property
    def words(self) -> str:
        """What it does."""
        return f"take back: {self.said}" if self.said else "take back"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        if text.text[self.start : self.start + len(self.old)] != self.old:
            raise refusal(
                text, (), "this has been changed since, so it cannot be taken back",
                "take back what was done later first",
            )  # fmt: skip
        change = TextChange(self.start, self.old, self.new)
        return ShowText(change.on(text.text), text.file)


def inverse(before: str, after: str, said: str = "") -> PutBack:
    """The operation that leads from the text after an operation back to the one before, byte for byte.

    Parameters
    ----------
    before, after : str
    said : str
        What is taken back, in words.
    """
    change = change_between(after, before)
    return PutBack(start=change.start, old=change.old, new=change.new, said=said)
