"""Words under repertoires and wishes that mean nothing here: no pattern, no section of the song, or what is never danced."""

from collections.abc import Mapping

from sequencer.motion.patterns.library import Pattern
from sequencer.show.reading import ReadShow, nearest
from sequencer.show.wishes import STOP_MOVE, Repertoire, meant_by, words_for_nothing
from sequencer.timing.song import Song


def refuse_wishes(read: ReadShow, book: Mapping[str, Pattern], song: Song) -> None:
    """Refuse repertoires and wishes that cannot be meant.

    Parameters
    ----------
    read : ReadShow
    book : mapping of name to Pattern
    song : Song
        As the show counts it.

    Raises
    ------
    InputError
        For a word that means no pattern, a section that the song does not have, or a wish for what whoever leads never dances.
    """
    wishes = read.show.wishes
    repertoires = [record.repertoire for record in read.show.cast]
    if not wishes.moves and not wishes.character and not any(repertoires):
        return
    families = {name: pattern.family for name, pattern in book.items()}
    for path, word in words_for_nothing(repertoires, wishes, families):
        raise read.fault(
            "unknown-move", path, f"no pattern is called {word!r}, nor any kind of pattern",
            nearest(word, [*families, *dict.fromkeys(families.values())]),
        )  # fmt: skip
    sections = [*song.section_names(), *(section.label for section in song.sections)]
    named = [(("wishes", "character", name), name, "") for name in wishes.character]
    if not isinstance(wishes.stops, int):
        named += [
            (("wishes", "moves", STOP_MOVE), name, " to stop before") for name in wishes.stops
        ]
    for place, name, more in named:
        if name not in sections:
            raise read.fault(
                "unknown-section", place, f"the song has no section {name!r}{more}",
                nearest(name, list(dict.fromkeys(sections))),
            )  # fmt: skip
    _refuse_never(read, book, families)


def _refuse_never(read: ReadShow, book: Mapping[str, Pattern], families: Mapping[str, str]) -> None:
    """Refuse a wish for what whoever leads never dances, or cannot dance with this prop."""
    show = read.show
    if not show.cast:
        return
    lead = next((each for each in show.cast if each.name == show.wishes.lead), show.cast[0])
    never = {
        name
        for word in (lead.repertoire or Repertoire()).never
        for name in meant_by(word, families)
    }
    kinds = [prop.kind for prop in lead.props.values()]
    suited = {name for name, each in book.items() if all(each.suits(k, len(kinds)) for k in kinds)}
    for word, often in show.wishes.counted.items():
        if not set(meant_by(word, families)) & (suited - never):
            times = "once" if often == 1 else f"{often} times"
            raise read.fault(
                "wish-not-possible", ("wishes", "moves", word),
                f"{word} is wished {times}, but {lead.name}, who leads, never dances it, or not with this prop",
                f"take {word} out of `wishes`, or out of `never`, or use a prop that it is meant for",
            )  # fmt: skip
