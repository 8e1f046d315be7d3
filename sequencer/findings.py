"""Results of the checks: plain frozen records that every output can print."""

from dataclasses import dataclass
from typing import Literal

Severity = Literal["stop", "warn", "note"]
SEVERITIES: tuple[Severity, ...] = ("stop", "warn", "note")


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
    """How often two performers came too close at one moment of the show, over many simulated runs with errors."""

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
    matters: str = ""  # kind of error that by itself brings them nearest, if computed
    who: str = ""  # performer whose errors by themselves bring them nearest


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """All findings and clearances of one show, worst first."""

    show: str
    findings: tuple[Finding, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    not_checked: tuple[str, ...] = ()  # what was not checked, one sentence each
    cautions: tuple[str, ...] = ()  # printed with every report of a lit show
    danced: Danced | None = None  # results of the simulation, if requested

    @property
    def ok(self) -> bool:
        """True if there are no STOP findings."""
        return not any(finding.severity == "stop" for finding in self.findings)
