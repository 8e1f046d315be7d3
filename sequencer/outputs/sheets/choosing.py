"""Which sheets of a show are printed: the pack for the night, chosen kinds, what one person carries, or all."""

import difflib
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sequencer.errors import InputError, Place
from sequencer.show.model import Show

_MOST_NEAR = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetChoice:
    """What is asked for; everything where nothing is."""

    pack: bool = False  # what is carried on the night
    only: tuple[str, ...] = ()  # kinds of sheets
    for_whom: tuple[str, ...] = ()  # performers and crew members

    @property
    def is_everything(self) -> bool:
        """Whether every sheet is asked for."""
        return not (self.pack or self.only or self.for_whom)


def people_asked(show: Show, names: Iterable[str], file: str) -> tuple[str, ...]:
    """Names as the show spells them; any case will do.

    Raises
    ------
    InputError
        If nobody of that name is in the show, with near names.
    """
    known = {_folded(each): each for each in (*show.names, *(post.name for post in show.crew))}
    found = []
    for name in names:
        if _folded(name) not in known:
            raise _unknown(
                "no-such-person",
                file,
                f"nobody in the cast or crew is called {name!r}",
                name,
                known,
            )
        found.append(known[_folded(name)])
    return tuple(dict.fromkeys(found))


def kinds_asked(kinds: Iterable[str], known: Sequence[str], file: str) -> tuple[str, ...]:
    """Kinds of sheets, each once.

    Raises
    ------
    InputError
        If a kind is not known, with near ones.
    """
    names = {_folded(each): each for each in known}
    found = []
    for kind in kinds:
        if _folded(kind) not in names:
            raise _unknown(
                "no-such-sheet", file, f"there is no kind of sheet {kind!r}", kind, names
            )
        found.append(names[_folded(kind)])
    return tuple(dict.fromkeys(found))


def nothing_asked(choice: SheetChoice, file: str) -> InputError:
    """The error where what is asked for has no sheet in this show."""
    what = " or ".join(choice.only) or "such"
    whom = f" for {' or '.join(choice.for_whom)}" if choice.for_whom else ""
    return InputError(
        "no-sheet", Place(file), f"this show has no {what} sheet{whom}", "ask for another kind, or leave the choice out"
    )  # fmt: skip


def _unknown(code: str, file: str, what: str, asked: str, known: dict[str, str]) -> InputError:
    near = difflib.get_close_matches(_folded(asked), known, n=_MOST_NEAR, cutoff=0.5)
    names = [known[each] for each in near]
    if names:
        return InputError(
            code, Place(file), f"{what}: did you mean {' or '.join(names)}?", "write one of these"
        )
    listed = ", ".join(known.values()) or "nobody"
    return InputError(code, Place(file), what, f"choose from: {listed}")


def _folded(text: str) -> str:
    return unicodedata.normalize("NFC", text).casefold().strip()
