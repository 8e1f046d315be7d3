"""Words under repertoires and wishes that mean nothing here: no pattern, no section of the song, or what is never danced."""

from collections.abc import Iterator, Mapping

from sequencer.errors import InputError
from sequencer.motion.patterns.library import Pattern
from sequencer.show.file_records.wishes import STOP_MOVE, Repertoire, meant_by, words_for_nothing
from sequencer.show.reading import ReadShow, nearest
from sequencer.timing.song import Song


def refuse_unknown_moves(read: ReadShow, book: Mapping[str, Pattern]) -> None:
    """Refuse words under repertoires and wishes that mean no pattern.

    Parameters
    ----------
    read : ReadShow
    book : mapping of name to Pattern

    Raises
    ------
    InputError
        For the first of them.
    """
    repertoires = [record.repertoire for record in read.show.cast]
    if not read.show.wishes.moves and not any(repertoires):
        return
    families = {name: pattern.family for name, pattern in book.items()}
    for path, word in words_for_nothing(repertoires, read.show.wishes, families):
        raise read.fault(
            "unknown-move", path, f"no pattern is called {word!r}, nor any kind of pattern",
            nearest(word, [*families, *dict.fromkeys(families.values())]),
        )  # fmt: skip


def wish_faults(read: ReadShow, book: Mapping[str, Pattern], song: Song) -> Iterator[InputError]:
    """Wishes that no draft can meet; what is danced does not depend on them.

    Parameters
    ----------
    read : ReadShow
    book : mapping of name to Pattern
    song : Song
        As the show counts it.

    Yields
    ------
    error : InputError
        For a section that the song does not have, or a wish for what whoever leads never dances or has no prop for.
    """
    wishes = read.show.wishes
    sections = [*song.section_names(), *(section.label for section in song.sections)]
    named = [(("wishes", "character", name), name, "") for name in wishes.character]
    if not isinstance(wishes.stops, int):
        named += [
            (("wishes", "moves", STOP_MOVE), name, " to stop before") for name in wishes.stops
        ]
    for place, name, more in named:
        if name not in sections:
            yield read.fault(
                "unknown-section", place, f"the song has no section {name!r}{more}",
                nearest(name, list(dict.fromkeys(sections))),
            )  # fmt: skip
    yield from _not_danced(read, book)


def _not_danced(read: ReadShow, book: Mapping[str, Pattern]) -> Iterator[InputError]:
    """Wishes for what whoever leads never dances, or cannot dance with this prop."""
    show = read.show
    if not show.cast:
        return
    families = {name: pattern.family for name, pattern in book.items()}
    lead = next((each for each in show.cast if each.name == show.wishes.lead), show.cast[0])
    never = {
        name
        for word in (lead.repertoire or Repertoire()).never
        for name in meant_by(word, families)
    }
    kinds = [prop.kind for prop in lead.props.values()]
    suited = {name for name, each in book.items() if all(each.suits(k, len(kinds)) for k in kinds)}
    for word, often in show.wishes.counted.items():
        meant = set(meant_by(word, families))
        if meant & (suited - never):
            continue
        times = "once" if often == 1 else f"{often} times"
        why, mend = (
            "has no prop for it",
            f"take {word} out of `wishes`, or use a prop that it is meant for",
        )
        if meant & suited:
            why, mend = "never dances it", f"take {word} out of `wishes`, or out of `never`"
        yield read.fault(
            "wish-not-possible", ("wishes", "moves", word),
            f"{word} is wished {times}, but {lead.name}, who leads, {why}", mend,
        )  # fmt: skip
