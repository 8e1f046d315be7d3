"""Which patterns a performer may be given, from the cast's level and repertoire, and the wishes."""

from collections.abc import Mapping
from dataclasses import dataclass

from sequencer.errors import InputError
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.props.prop import PropKind
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.wishes import USUAL_LEVEL, Repertoire, meant_by
from sequencer.show.reading import ReadShow

# Not drafted unless named: two that are only as good as the parameters written for them, and one that needs a turn.
BY_NAME_ONLY = frozenset({"orbit", "toroid", "body-turn"})


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
        If nothing is left, or nothing is known for the prop.
    """
    index = read.show.cast.index(record)
    families = {name: pattern.family for name, pattern in book.items()}
    own = record.repertoire or Repertoire()

    def meant(words: tuple[str, ...]) -> set[str]:
        each = [meant_by(word, families) for word in words]
        return {
            name for names in each for name in names if len(names) == 1 or name not in BY_NAME_ONLY
        }

    never, learning, known = meant(own.never), meant(own.learning), meant(own.known)
    level = record.level
    if level is None and not known:
        level = USUAL_LEVEL
    allowed = {
        name
        for name, each in book.items()
        if level is not None and each.difficulty <= level and name not in BY_NAME_ONLY
    }
    hands = len(record.props)
    kinds: list[PropKind] = [prop.kind for prop in record.props.values()]
    suited = {name for name, each in book.items() if all(each.suits(kind, hands) for kind in kinds)}
    if not suited:
        raise read.fault(
            "nothing-for-this-prop", ("cast", index), f"no pattern is meant for {record.name}'s {kinds[0]}",
            "add one under `patterns`, or write this routine by hand",
        )  # fmt: skip
    brought = _wished(read, book, suited - never, allowed | known)
    # What is known by name is used whatever it was meant for.
    usable = ((allowed & suited) | known | brought) - never
    if not usable - (learning - brought):
        raise read.fault(
            "empty-repertoire", ("cast", index), f"{record.name} is left without a pattern to draft from",
            "raise `level`, name patterns under `repertoire`, `known`, or take some out of `never`",
        )  # fmt: skip
    learnt = (learning & (suited | known)) - never - brought
    ordered = tuple(name for name in book if name in usable and name not in learnt)
    named = [book[name].difficulty for name in ordered]
    return Material(
        known=ordered,
        learning=frozenset(learnt),
        level=level if level is not None else max(named, default=USUAL_LEVEL),
    )


def _wished(
    read: ReadShow, book: Mapping[str, Pattern], able: set[str], allowed: set[str]
) -> set[str]:
    """Patterns that a wish brings: by their own names, or the easiest of a kind of which the performer has none."""
    families = {name: pattern.family for name, pattern in book.items()}
    wished: set[str] = set()
    for word, often in read.show.wishes.counted.items():
        meant = set(meant_by(word, families))
        if meant == {word}:
            wished |= meant & able
        elif not meant & able & allowed:
            wished |= set(
                sorted((meant & able) - BY_NAME_ONLY, key=lambda name: book[name].difficulty)[
                    :often
                ]
            )
    return wished


def fault_of_wish(read: ReadShow, word: str, what: str, mend: str) -> InputError:
    """That a wish cannot be met."""
    return read.fault("wish-not-possible", ("wishes", "moves", word), what, mend)
