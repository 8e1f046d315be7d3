"""The show's own patterns, and the files of patterns that it uses."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, ClassVar

from sequencer.show.operations.operation import Operation, RowValues, refusal
from sequencer.show.operations.rows import (
    every_block,
    keys_set,
    names_in,
    refuse_move_taken,
    row_at,
    spoken,
)
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import KeyNamed, RowsIn, TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath

_PATTERNS = "patterns"
_FILES = "pattern_files"
_MOST_TOLD = 3  # places that a sentence tells


@dataclass(frozen=True, slots=True, kw_only=True)
class AddPattern(Operation):
    """A pattern of the show's own."""

    KIND: ClassVar[str] = "add-pattern"
    name: str
    pattern: RowValues  # as the file says it

    @property
    def words(self) -> str:
        """What it does."""
        return f"add the pattern {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        refuse_move_taken(text, self.name)
        if not text.value(_PATTERNS):
            return text.edited(ValueSet((_PATTERNS,), {self.name: dict(self.pattern)}))
        return text.edited(ValueSet((_PATTERNS, self.name), dict(self.pattern)))


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePattern(Operation):
    """Keys of one of the show's own patterns set, or taken out."""

    KIND: ClassVar[str] = "change-pattern"
    name: str
    values: RowValues  # by key; null takes a key out

    @property
    def words(self) -> str:
        """What it does."""
        return f"change {', '.join(self.values)} of {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        path = (_PATTERNS, _key_of(text, self.name))
        row_at(text, path)
        return text.edited(*keys_set(text, path, self.values))


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePattern(Operation):
    """Another name for one of the show's own patterns, wherever it is named."""

    KIND: ClassVar[str] = "rename-pattern"
    old: str
    new: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"call the pattern {self.old!r} {self.new!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        key = _key_of(text, self.old)
        refuse_move_taken(text, self.new, self.old)
        edits: list[TextEdit] = [
            KeyNamed(path, self.new) if is_key else ValueSet(path, self.new)
            for path, is_key in _mentions(text, self.old)
        ]
        return text.edited(*edits, KeyNamed((_PATTERNS, key), self.new))


@dataclass(frozen=True, slots=True, kw_only=True)
class DeletePattern(Operation):
    """One of the show's own patterns taken out, if nothing dances or names it."""

    KIND: ClassVar[str] = "delete-pattern"
    name: str

    @property
    def words(self) -> str:
        """What it does."""
        return f"delete the pattern {self.name!r}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        key = _key_of(text, self.name)
        uses = [path for path, _ in _mentions(text, self.name)]
        if uses:
            told = [spoken(_holder(path)) for path in uses]
            places = ", ".join(dict.fromkeys(told[:_MOST_TOLD]))
            more = f" and {len(told) - _MOST_TOLD} more" if len(told) > _MOST_TOLD else ""
            raise refusal(
                text, uses[0], f"the pattern {self.name!r} is still named in {places}{more}",
                "write another one there, or take that out first",
            )  # fmt: skip
        if len(text.value(_PATTERNS)) == 1:
            return text.edited(TakenOut((_PATTERNS,)))  # an empty heading says nothing
        return text.edited(TakenOut((_PATTERNS, key)))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetPatternFiles(Operation):
    """The files of patterns that the show uses, by their paths from its folder; none takes the heading out."""

    KIND: ClassVar[str] = "set-pattern-files"
    files: tuple[str, ...]

    @property
    def words(self) -> str:
        """What it does."""
        return f"pattern files: {', '.join(self.files) or 'none'}"

    def on(self, text: ShowText) -> ShowText:
        """The text with it."""
        old = text.value(_FILES)
        if not self.files:
            return text if old is None else text.edited(TakenOut((_FILES,)))
        if not isinstance(old, list):
            return text.edited(ValueSet((_FILES,), list(self.files)))
        kept = [k for k, file in enumerate(old) if str(file) in self.files]
        stay = [str(old[k]) for k in kept]
        if stay != list(self.files[: len(stay)]):
            return text.edited(ValueSet((_FILES,), list(self.files)))
        # Comments of those that stay are kept.
        gone: list[TextEdit] = [TakenOut((_FILES, k)) for k in range(len(old)) if k not in kept]
        new = self.files[len(stay) :]
        return text.edited(*gone, *([RowsIn((_FILES,), len(old), new)] if new else []))


def _key_of(text: ShowText, name: str) -> str:
    """The pattern's name as the file writes it."""
    known = text.value(_PATTERNS)
    for key in known if isinstance(known, dict) else ():
        if names_in(key) == names_in(name):
            return str(key)
    raise ValueError(f"the show has no pattern {name!r} of its own")


def _mentions(text: ShowText, name: str) -> Iterator[tuple[ValuePath, bool]]:
    """Where a pattern is named, in the file's order of headings; and whether it is named by a key."""
    for path, row in every_block(text):
        if isinstance(row, dict):
            for place in (("pattern",), ("left", "pattern"), ("right", "pattern")):
                yield from _named(text, (*path, *place), name)
    own = text.value(_PATTERNS)
    for key in own if isinstance(own, dict) else ():
        yield from _named(text, (_PATTERNS, key, "needs"), name)
    cast = text.value("cast")
    for k in range(len(cast) if isinstance(cast, list) else 0):
        for key in ("known", "learning", "never"):
            yield from _named(text, ("cast", k, "repertoire", key), name)
    moves = text.value("wishes", "moves")
    for key in moves if isinstance(moves, dict) else ():
        if names_in(key) == names_in(name):
            yield ("wishes", "moves", key), True


def _named(text: ShowText, path: ValuePath, name: str) -> Iterator[tuple[ValuePath, bool]]:
    """A name at a path, or those of a list there that are it."""
    value: Any = text.value(*path)
    places = [(*path, k) for k in range(len(value))] if isinstance(value, list) else [path]
    for place in places:
        found = text.value(*place)
        if isinstance(found, str) and names_in(found) == names_in(name):
            yield place, False


def _holder(path: ValuePath) -> ValuePath:
    """What a person looks for to change a mention: the entry or step, the heading's record."""
    if path[0] == "phrases":
        return path[:3]
    return path[:2] if path[0] in ("timeline", "cast", _PATTERNS) else path[:1]
