"""Results of the checks: plain frozen records that every output can print."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields
from math import nan
from typing import TYPE_CHECKING, Any, Literal, TypeAlias, TypeVar

from sequencer.units import BarLengths, counted

if TYPE_CHECKING:
    import pandas as pd

    from sequencer.facts.cautions import Condition

Row = TypeVar("Row")

Severity = Literal["stop", "warn", "note"]
ReportTable: TypeAlias = Literal["findings", "clearances", "chances"]
SEVERITIES: tuple[Severity, ...] = ("stop", "warn", "note")


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One figure of a finding, and what it is held against."""

    quantity: str  # what is told, see docs/findings.md
    value: float
    limit: float
    unit: str
    least: bool = False  # the limit is the least that is asked for, not the most that is allowed

    @property
    def beyond(self) -> float:
        """By how much it breaks the limit [its unit]; negative if it keeps it."""
        return self.limit - self.value if self.least else self.value - self.limit

    @property
    def times(self) -> float:
        """How many times the most that is allowed it is, or how many times it falls short of the least [1]."""
        most, value = (self.value, self.limit) if self.least else (self.limit, self.value)
        return value / most if most > 0 else nan


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One result of a check on a show."""

    code: str  # short stable name in kebab case, see docs/findings.md
    severity: Severity
    who: tuple[str, ...]
    start: float | None  # [s] of the track; None if it applies to the whole show
    end: float | None  # [s]
    position: str | None  # bar.beat of the start
    message: str
    remedies: tuple[str, ...] = ()  # best first
    source: str = ""  # rule, book, edition; "common practice"; "this show"
    where: tuple[float, float] | None = None  # [m, stage frame] location on the plan
    figures: tuple[Figure, ...] = ()  # what the message says in numbers, as far as mends ask for it
    hands: tuple[Literal["left", "right"], ...] = ()  # the hands that it is of, if it is of hands

    def __post_init__(self) -> None:
        if self.severity not in SEVERITIES:
            raise ValueError(f"severity must be one of {SEVERITIES}, got {self.severity!r}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearance:
    """Smallest distance between two things over the whole show."""

    between: tuple[str, str]
    distance: float  # [m] smallest; a proven lower bound if `bound` is true
    required: float  # [m]
    at: float  # [s] when
    error: float  # [m] proven bound on the error of `distance`
    parts: tuple[str, str] = ("", "")  # the part of each that comes nearest
    where: tuple[float, float] | None = None  # [m, stage frame]
    bound: bool = False  # ruled out early: `distance` is a lower bound, not the minimum
    position: str | None = None  # bar.beat of `at`


@dataclass(frozen=True, slots=True, kw_only=True)
class Chance:
    """How often two performers came too close in one part of the plan, over many simulated runs with errors."""

    between: tuple[str, str]
    start: float  # [s] earliest over all runs
    end: float  # [s] latest over all runs
    position: str | None  # bar.beat of the start
    conflicts: int  # runs in which it happened
    runs: int
    chance: float  # share of the runs
    low: float  # exact binomial confidence interval at `Danced.confidence`
    high: float
    worst: float  # [m] smallest distance over all runs
    parts: tuple[str, str] = ("", "")  # of the two, that come so near
    apart: float | None = None  # [m] between these parts then, flames left out
    formation: str = ""  # held, or "walk to" the one walked to
    section: str = ""
    moves: tuple[str, str] = ("", "")  # what the two dance
    slices_from: str | None = None  # bar.beat at which the first slice begins
    slice_beats: float = 0.0  # [beats]
    slices: tuple[int, ...] = ()  # in how many runs they were nearest in each slice
    half: float | None = None  # share of the runs at half the spread
    twice: float | None = None  # share of the runs at twice the spread
    matters: str = ""  # kind of error without which it is least likely, if computed
    who: tuple[str, ...] = ()  # whose errors count most; both if they count alike
    without: Mapping[str, float] = field(default_factory=dict)  # chance without a kind of error
    without_who: Mapping[str, float] = field(default_factory=dict)  # without one's errors
    raises: tuple[str, ...] = ()  # kinds of error without which it is surely likelier


@dataclass(frozen=True, slots=True, kw_only=True)
class AnyChance:
    """How likely it is that any two come too close in a run, at one spread of the errors."""

    spread: float  # times the stated spread
    runs: int
    chance: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MissedCue:
    """One cue that one performer misses in one way, while all others dance the plan; and who comes too close."""

    who: str
    start: float  # [s] of the cue
    position: str  # bar.beat
    kind: str  # "a beat late", "a bar late", "an eight late", "left and right mixed up"
    begins: str  # the move or the walk that does
    meets: tuple[str, ...]  # nearest first
    worst: float  # [m] smallest distance, flames counted; negative where they overlap
    at: float  # [s]
    parts: tuple[str, str]  # own part and the nearest person's part that come so near
    harm: str  # the same in words
    apart: float | None = None  # [m] between these parts, flames left out


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksOff:
    """How far all marks on the floor may be off together before someone is too near to what stands still."""

    between: tuple[str, str]  # who, and what comes too close first
    at: float  # [s]
    position: str | None
    room: float  # [m] left in the plan
    spread: float  # [m] standard deviation in X and in Y
    most: float  # chance at most


@dataclass(frozen=True, slots=True, kw_only=True)
class Rehearsal:
    """One thing to rehearse or to mend, and what it makes of the chance that any two come too close in a run."""

    what: str
    who: tuple[str, ...]
    start: float  # [s]
    position: str | None
    before: float
    after: float
    mend: bool = False  # the plan is to be mended: no rehearsal helps
    gains: bool = True  # one run or more of those danced; else a cue to be sure of all the same


@dataclass(frozen=True, slots=True, kw_only=True)
class Danced:
    """The show simulated many times with random errors: what came too close, and how often."""

    runs: int
    seed: int
    required: float  # [m] between performers
    confidence: float  # of the confidence intervals
    spread: dict[str, float]  # standard deviations in m, rad, beats or 1, by kind of error
    chances: tuple[Chance, ...]  # most likely first
    pairs: int  # of performers that were checked
    clear: int  # pairs that never came too close
    clear_high: float  # upper end of the confidence interval for each of those
    own: Mapping[str, Mapping[str, float]] = field(
        default_factory=dict
    )  # of performers with their own
    by_log: tuple[
        str, ...
    ] = ()  # those of them whose place or timing is that of what was practised
    least: float = 0.05  # a chance that is surely this high is a finding
    anything: tuple[AnyChance, ...] = ()  # at the stated spread, at half and at twice of it
    missed: float = 0.0  # chance that a performer misses a cue in a run
    slips: int = 0  # ways in which one cue can be missed that were tried
    missed_cues: tuple[MissedCue, ...] = ()  # those that bring two too close, nearest first
    goes_wrong: float = 0.0  # chance that any two come too close in a run, missed cues included
    goes_wrong_low: float = 0.0
    goes_wrong_high: float = 0.0
    marks: MarksOff | None = None
    rehearse: tuple[Rehearsal, ...] = ()  # what makes most of that chance first


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """All findings and clearances of one show, worst first."""

    show: str
    findings: tuple[Finding, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    not_checked: tuple[str, ...] = ()  # what was not checked, one sentence each
    cautions: tuple[str, ...] = ()  # printed with every report of a lit show
    conditions: "frozenset[Condition]" = frozenset()  # of cautions, raised by the findings
    fuel_codes: frozenset[str] = frozenset()  # codes of findings listed on the fuel keeper's sheet
    blank_codes: frozenset[str] = frozenset()  # codes of findings on what nobody stated
    danced: Danced | None = None  # results of the simulation, if requested
    part: str = ""  # if only a part of the show was looked at: which, in words
    bars: BarLengths = field(
        default_factory=BarLengths
    )  # of the song, for counting positions aloud

    @property
    def ok(self) -> bool:
        """True if there are no STOP findings."""
        return not any(finding.severity == "stop" for finding in self.findings)

    def __repr__(self) -> str:
        counts = Counter(finding.severity for finding in self.findings)
        told = ", ".join(f"{counts[severity]} {severity}" for severity in SEVERITIES)
        return f"<Report on {self.show}: {told}, {counted(len(self.clearances), 'clearance')}>"

    def to_frame(self, table: ReportTable = "findings") -> "pd.DataFrame":
        """One table of the report as a pandas data frame.

        Parameters
        ----------
        table : {"findings", "clearances", "chances"}
            Findings, one per row: `code`, `severity`, `who` (tuple of names), `start` and `end` [s],
            `position` (bar.beat), `message`, `remedies` (tuple, best first), `source`, `x` and `y` [m,
            stage frame], `figures` (tuple of mappings of `quantity`, `value`, `limit`, `unit` and `least`), `hands`.
            Clearances, one per row: `first` and `second` (what comes close), `distance`, `required` and
            `error` [m], `at` [s], `position`, `first_part` and `second_part`, `bound` (whether `distance`
            is a lower bound only), `x` and `y` [m, stage frame].
            Chances from a simulated show, one per row: `first`, `second`, `start` and `end` [s],
            `position`, `conflicts`, `runs`, `chance`, `low` and `high` [1], `worst` [m], `first_part` and `second_part` that come so
            near, `apart` (how far apart these are without flames) [m], `formation`, `section` and `moves`
            (what the two dance), `slices_from`, `slice_beats` and `slices` (in how many runs they were nearest in each slice),
            `half` and `twice` [1], `matters`, `who` (tuple of names), `without` and `without_who` (mappings), `raises`.

        Returns
        -------
        frame : DataFrame
            In the report's order; unknown values are NaN or None.

        Raises
        ------
        ValueError
            If there is no such table.
        """
        import pandas as pd

        chances = () if self.danced is None else self.danced.chances
        tables: dict[str, tuple[type, tuple[Any, ...]]] = {
            "findings": (Finding, self.findings),
            "clearances": (Clearance, self.clearances),
            "chances": (Chance, chances),
        }
        if table not in tables:
            raise ValueError(f"table must be one of {', '.join(tables)}, got {table!r}")
        kind, rows = tables[table]
        return pd.DataFrame([_row(asdict(row)) for row in rows], columns=_columns(kind))


def restored_row(kind: type[Row], record: Mapping[str, Any]) -> Row:
    """A finding or a clearance from its fields, of which a list was a tuple; the inverse of `asdict` and JSON.

    Figures of a finding are restored with it.

    Raises
    ------
    TypeError
        If the record is none.
    """
    tuples = {
        name: tuple(value) if isinstance(value, list) else value for name, value in record.items()
    }
    if tuples.get("figures"):
        tuples["figures"] = tuple(Figure(**each) for each in tuples["figures"])
    return kind(**tuples)


_NUMBERS = {"start", "end"}  # columns that may be unknown
_PAIRS = {
    "between": ("first", "second"),
    "parts": ("first_part", "second_part"),
    "where": ("x", "y"),
}


def _columns(kind: type) -> list[str]:
    """Fields of a record; a field with two values becomes two columns."""
    names = [field.name for field in fields(kind)]
    return [column for name in names for column in _PAIRS.get(name, (name,))]


def _row(record: dict[str, Any]) -> dict[str, Any]:
    row: dict[str, Any] = {}
    for name, value in record.items():
        columns = _PAIRS.get(name)
        if columns is None:
            row[name] = value
        else:
            row |= dict(zip(columns, (nan, nan) if value is None else value, strict=True))
    return {
        name: nan if value is None and name in _NUMBERS else value for name, value in row.items()
    }
