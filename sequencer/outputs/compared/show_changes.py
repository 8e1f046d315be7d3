"""What differs between two texts of a show, as plain frozen records that a page, a terminal or a program can print."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from sequencer.findings import Severity
from sequencer.show.text.plain_values import ValuePath
from sequencer.units import counted

ChangeSubject = Literal[
    "dance",
    "entries",
    "floor",
    "song",
    "cast",
    "crew",
    "place",
    "fire",
    "rules",
    "other",
    "writing",
]
ChangeKind = Literal["new", "gone", "moved", "changed"]
SUBJECT_WORDS: dict[ChangeSubject, str] = {
    "dance": "what is danced",
    "entries": "how the dance is put down",
    "floor": "where everybody stands and walks",
    "song": "the song and its count",
    "cast": "the cast",
    "crew": "the crew",
    "place": "the place",
    "fire": "fire",
    "rules": "rules and limits",
    "other": "title and other headings",
    "writing": "how it is written",
}
_COMMENTS = "comments and spelling"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotMove:
    """Somebody or something that stands elsewhere [m, stage frame]."""

    who: str
    before: tuple[float, float]
    after: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowChange:
    """One thing that differs."""

    subject: ChangeSubject
    kind: ChangeKind
    words: str  # one sentence without its full stop
    who: tuple[str, ...] = ()
    spans: tuple[tuple[float, float], ...] = ()  # [beats] where it is in the newer text
    before: tuple[tuple[float, float], ...] = ()  # [beats] where it was in the older one
    position: str | None = None  # bar.beat of the first of these
    moves: tuple[SpotMove, ...] = ()
    old: tuple[ValuePath, ...] = ()  # what it is of in the older file
    new: tuple[ValuePath, ...] = ()
    keys: frozenset[str] = frozenset()  # of those entries, that it tells of

    @property
    def beat(self) -> float | None:
        """When it begins, as it is now, or as it was if it is gone; None if it is at no moment of the song."""
        return min((start for start, _ in self.spans or self.before), default=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Eight:
    """A row of the sheet, and which changes fall into it."""

    bar: int  # its first
    start: float  # [beats]
    beats: float
    section: str
    changes: tuple[int, ...]  # numbers in the list of all


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingChange:
    """How what a check says differs."""

    kind: ChangeKind
    severity: Severity  # as it is now; as it was, of one that is gone
    position: str | None
    message: str
    before: str = ""  # what it said, of one that is changed


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingsCompared:
    """How the findings of two texts differ, as far as both were checked."""

    unknown: tuple[str, ...] = ()  # why they cannot be compared, a sentence each
    changes: tuple[FindingChange, ...] = ()
    same: int = 0  # findings that both have
    unseen: tuple[str, ...] = ()  # what differs in what was not looked at, a sentence each

    @property
    def words(self) -> str:
        """All of it in one line."""
        if self.unknown:
            return "; ".join(self.unknown)
        kinds = Counter(each.kind for each in self.changes)
        said = [f"{kinds[kind]} {kind}" for kind in ("new", "gone", "changed") if kinds[kind]] or [
            "none new, none gone"
        ]
        return f"findings: {', '.join(said)}, {self.same} as before"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowComparison:
    """All that differs between two texts of a show."""

    old: str  # what each is called
    new: str
    identical: bool  # letter by letter
    changes: tuple[ShowChange, ...] = ()
    eights: tuple[Eight, ...] = ()  # rows in which something differs, in order
    findings: FindingsCompared = field(default_factory=FindingsCompared)
    faults: tuple[str, ...] = ()  # why the dance could not be compared, a sentence each

    @property
    def says_the_same(self) -> bool:
        """Whether both say the same, however they are written."""
        return all(each.subject == "writing" for each in self.changes)

    @property
    def elsewhere(self) -> tuple[int, ...]:
        """Numbers of the changes that are at no moment of the song."""
        placed = {number for row in self.eights for number in row.changes}
        return tuple(k for k in range(len(self.changes)) if k not in placed)

    @property
    def line(self) -> str:
        """What differs, in one line."""
        if self.identical:
            return "the same, letter by letter"
        if self.says_the_same:
            return "only comments or spelling differ"
        return changes_line(self.changes)


def changes_line(changes: Iterable[ShowChange]) -> str:
    """How many changes there are of each subject."""
    found = Counter[ChangeSubject](each.subject for each in changes)
    told = [
        f"{counted(found[subject], 'change')} in {_COMMENTS if subject == 'writing' else words}"
        for subject, words in SUBJECT_WORDS.items()
        if found[subject]
    ]
    return ", ".join(told)
