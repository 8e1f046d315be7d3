"""Which patterns a performer may be given, from the cast's level and repertoire, and the wishes."""

from collections.abc import Mapping
from dataclasses import dataclass

from sequencer.errors import InputError
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.props.prop import PropKind
from sequencer.show.model import Performer
from sequencer.show.reading import ReadShow
from sequencer.show.wishes import USUAL_LEVEL, Repertoire, Wishes, meant_by


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Patterns that a performer may be given."""

    known: tuple[str, ...]  # in the order of the vocabulary
    learning: frozenset[str]  # only where a wish names them, or the music is calm
    level: int  # 1 to 5

    @property
    def names(self) -> tuple[str, ...]:
        """All of them."""
        return (*self.known, *(name for name in sorted(self.learning) if name not in self.known))


def material_for(read: ReadShow, record: Performer, book: Mapping[str, Pattern]) -> Material:
    """What a performer may be given.

    Parameters
    ----------
    read : ReadShow
    record : Performer
    book : mapping of name to Pattern

    Raises
    ------
    InputError
        If nothing is left, a wish is for what is never danced, or nothing is known for the prop.
    """
    index = read.show.cast.index(record)
    families = {name: pattern.family for name, pattern in book.items()}
    own = record.repertoire or Repertoire()

    def meant(words: tuple[str, ...]) -> set[str]:
        return {name for word in words for name in meant_by(word, families)}

    never, learning, known = meant(own.never), meant(own.learning), meant(own.known)
    level = record.level
    if level is None and not known:
        level = USUAL_LEVEL
    allowed = {name for name, each in book.items() if level is not None and each.difficulty <= level}
    hands = len(record.props)
    kinds: list[PropKind] = [prop.kind for prop in record.props.values()]
    suited = {name for name, each in book.items() if all(each.suits(kind, hands) for kind in kinds)}
    if not suited:
        raise read.fault(
            "nothing-for-this-prop", ("cast", index), f"no pattern is meant for {record.name}'s {kinds[0]}",
            "add one under `patterns`, or write this routine by hand",
        )  # fmt: skip
    wished = _wished(read, read.show.wishes, families, suited - never)
    # What is known by name is used whatever it was meant for; a wish alone brings what the level leaves out.
    usable = ((allowed & suited) | known | (wished & suited)) - never
    if not usable - (learning - wished):
        raise read.fault(
            "empty-repertoire", ("cast", index), f"{record.name} is left without a pattern to draft from",
            "raise `level`, name patterns under `repertoire`, `known`, or take some out of `never`",
        )  # fmt: skip
    ordered = tuple(name for name in book if name in usable and name not in learning)
    named = [book[name].difficulty for name in ordered]
    return Material(
        known=ordered,
        learning=frozenset(learning & usable | (learning & suited) - never),
        level=level if level is not None else max(named, default=USUAL_LEVEL),
    )


def _wished(
    read: ReadShow, wishes: Wishes, families: Mapping[str, str], able: set[str]
) -> set[str]:
    """Patterns that a wish names by their own names, or the only ones of a kind that is wished."""
    wished: set[str] = set()
    for word, often in wishes.counted.items():
        meant = set(meant_by(word, families))
        if not meant & able:
            raise read.fault(
                "wish-not-possible", ("wishes", "moves", word),
                f"{word} is wished {often} times, but nobody who leads may or can dance it",
                f"take {word} out of `wishes`, or out of `never`, or use a prop that it is meant for",
            )  # fmt: skip
        wished |= meant & able
    return wished


def fault_of_wish(read: ReadShow, word: str, what: str, mend: str) -> InputError:
    """That a wish cannot be met."""
    return read.fault("wish-not-possible", ("wishes", "moves", word), what, mend)
