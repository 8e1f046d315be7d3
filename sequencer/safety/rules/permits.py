"""Whether a recorded permit is one for this show, and what it loosens.

Free text is not a permit: without a number, an issuer, both days and a place, or for another place or day, it
loosens nothing and the sheets stay drafts. Source: permits are for one place and date (Kansas City MO §26-319,
Grants Pass OR 8-29-19; read).
"""

from sequencer.show.file_records.evening import Permit
from sequencer.show.model import Show

MARKED_DRAFT = "every sheet is marked DRAFT"  # ends what is said of a permit that is missing
NONE_RECORDED = "no permit is recorded"


def permit_contradictions(show: Show) -> tuple[str, ...]:
    """What a permit says that does not fit the show: another place, a day on which it does not hold."""
    permit = show.rules.permit
    if permit is None:
        return ()
    found = []
    if permit.place is not None and _folded(permit.place) != _folded(show.venue.name):
        found.append(f"it is for {permit.place}, and the show is at {show.venue.name}")
    if show.night is not None and permit.start is not None and show.night < permit.start:
        found.append(f"it starts on {permit.start}, and the show is on {show.night}")
    if show.night is not None and permit.until is not None and show.night > permit.until:
        found.append(f"it ends on {permit.until}, and the show is on {show.night}")
    return tuple(found)


def permit_gaps(show: Show) -> tuple[str, ...]:
    """What keeps a permit from counting, in words; empty if it holds for this place and night."""
    permit = show.rules.permit
    if permit is None:
        return (NONE_RECORDED,)
    words = [f"{_WORDS[key]} is not stated" for key in permit.blanks]
    if show.night is None:
        words.append("the night of the performance is not stated")
    return (*words, *permit_contradictions(show))


def permit_that_holds(show: Show) -> Permit | None:
    """The permit, if it holds for this place and night."""
    return None if permit_gaps(show) else show.rules.permit


def permit_words(show: Show) -> str:
    """The permit as printed: with all it is for, or with what keeps it from counting."""
    permit = show.rules.permit
    if permit is None:
        return "none recorded"
    number = permit.number or "without a number"
    gaps = permit_gaps(show)
    if gaps:
        return f"{number}: does not count yet, {'; '.join(gaps)}"
    return f"{number}, {permit.issued_by}, {permit.start} to {permit.until}, {permit.place}"


_WORDS = {
    "number": "its number",
    "issued_by": "who issued it",
    "from": "its first day",
    "until": "its last day",
    "place": "its place",
}


def _folded(name: str) -> str:
    return " ".join(name.split()).casefold()
