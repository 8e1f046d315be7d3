"""Where every number comes from, and how far it was checked.

Each number of the package names a source by its key, and a mark says how it was come by. A mark is
printed with the number wherever it is quoted; nothing from memory is passed off as read.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any, Literal, cast

Mark = Literal[
    "read",
    "read second-hand",
    "from memory",
    "computed",
    "design choice",
    "common practice",
    "as entered",
]
READING_MARKS: tuple[Mark, ...] = (
    "read",
    "read second-hand",
    "from memory",
    "computed",
    "design choice",
    "common practice",
    "as entered",  # by the user
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One document, page or data set."""

    key: str  # short name by which data refer to it
    title: str
    date: str  # edition or date as printed; empty where the page shows none
    where: str  # where it was read
    mark: Mark

    @property
    def citation(self) -> str:
        """Title, date and mark on one line, for findings and print-outs."""
        date = f", {self.date}" if self.date else ""
        return f"{self.title}{date} [{self.key}; {self.mark}]"


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """A quantity between two values, each of which may be unknown."""

    low: float | None
    high: float | None
    source: Source
    mark: Mark
    note: str = ""

    def __post_init__(self) -> None:
        if self.low is None and self.high is None:
            raise ValueError("a range needs at least one value")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"a range must rise, got {self.low} to {self.high}")

    @property
    def lowest(self) -> float:
        """The low end, or the high one where only that is known."""
        return cast("float", self.high if self.low is None else self.low)

    @property
    def highest(self) -> float:
        """The high end, or the low one where only that is known."""
        return cast("float", self.low if self.high is None else self.high)

    @property
    def citation(self) -> str:
        """Source and mark on one line."""
        return cited(self.source, self.mark)


def cited(source: Source, mark: Mark | None = None) -> str:
    """Citation of a source, with the number's own mark where it differs from the source's."""
    if mark is None or mark == source.mark:
        return source.citation
    date = f", {source.date}" if source.date else ""
    return f"{source.title}{date} [{source.key}; {mark}]"


@cache
def sources() -> Mapping[str, Source]:
    """All sources by key."""
    table = [Source(**entry) for entry in data("sources.json")["sources"]]
    return {source.key: source for source in table}


def source(key: str) -> Source:
    """The source of a key.

    Raises
    ------
    ValueError
        If there is none: a number without a source is refused.
    """
    try:
        return sources()[key]
    except KeyError:
        raise ValueError(
            f"{key!r} is no source of this package, so the number is refused"
        ) from None


def range_from(entry: Mapping[str, Any] | None) -> Range | None:
    """The range that a data entry holds, None where the sources show nothing.

    Raises
    ------
    ValueError
        If its source is missing or unknown.
    """
    if entry is None:
        return None
    origin = source(str(entry.get("source", "")))
    return Range(
        low=entry["low"],
        high=entry["high"],
        source=origin,
        mark=mark_of(entry, origin),
        note=entry.get("note", ""),
    )


def mark_of(entry: Mapping[str, Any], origin: Source) -> Mark:
    """Mark of one number: its own where it has one, else its source's.

    Raises
    ------
    ValueError
        If the mark is none of `READING_MARKS`.
    """
    mark = entry.get("mark", origin.mark)
    if mark not in READING_MARKS:
        raise ValueError(f"mark must be one of {READING_MARKS}, got {mark!r}")
    return cast("Mark", mark)


def data(name: str) -> Any:
    """Content of one of the package's JSON files."""
    text = files("sequencer.facts").joinpath("data").joinpath(name).read_text(encoding="utf-8")
    return json.loads(text)
