"""Cautions: what a plan says besides its numbers, when, and to whom.

The first one stands on page one of every print-out of a lit show, and nothing switches it off.
"""

from collections.abc import Collection
from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

from sequencer.facts.sources import Source, data, source

Condition = Literal[
    "lit",
    "crew",
    "outdoors",
    "indoors",
    "wind",
    "radiant",
    "music",
    "without-permit",
    "long-song",
    "crew-short",
    "fire-breathing",
    "exits",
    "override",
    "missing",
]
Reader = Literal["performer", "pocket", "safety", "post", "operator", "fuel", "captain", "packet"]
CONDITIONS: tuple[Condition, ...] = get_args(Condition)
READERS: tuple[Reader, ...] = get_args(Reader)


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution."""

    number: int
    key: str
    when: Condition
    readers: tuple[Reader, ...]
    short: str  # for a screen or a pocket card
    text: str  # whole, for the sheet
    defers_to: str  # who decides
    sources: tuple[Source, ...]


@cache
def page_one() -> str:
    """What stands first on every print-out and on the command line when a lit show is checked."""
    return str(data("cautions.json")["page_one"])


@cache
def cautions() -> tuple[Caution, ...]:
    """All cautions, in their order."""
    table = []
    for entry in data("cautions.json")["cautions"]:
        fields = {**entry, "readers": tuple(entry["readers"])}
        fields["sources"] = tuple(source(key) for key in entry["sources"])
        table.append(Caution(**fields))
    return tuple(table)


def cautions_for(
    conditions: Collection[Condition], reader: Reader | None = None
) -> tuple[Caution, ...]:
    """Cautions that a reader gets; every reader's where none is named.

    Parameters
    ----------
    conditions : collection of str
        What is so in this show (`CONDITIONS`).
    reader : str, optional
        Whose sheet it is (`READERS`).

    Raises
    ------
    ValueError
        If a condition or the reader is not known: a misspelt one would lose a caution unseen.
    """
    unknown = sorted(set(conditions) - set(CONDITIONS))
    if unknown:
        raise ValueError(f"conditions must be of {CONDITIONS}, got {unknown}")
    if reader is not None and reader not in READERS:
        raise ValueError(f"reader must be one of {READERS}, got {reader!r}")
    return tuple(
        caution
        for caution in cautions()
        if caution.when in conditions and (reader is None or reader in caution.readers)
    )
