"""What a check returns: findings, clearances, and sentences on what it did not check."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

from sequencer.findings import Clearance, Danced, Finding, restored_row
from sequencer.kept import recent
from sequencer.motion.performers.dancer import Dancer
from sequencer.timing.tempo import TempoMap
from sequencer.units import aloud, at_aloud, counted

_MOST_MOMENTS = 50_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Mendable:
    """A finding that `planning` can seek mends for, and what it is about."""

    finding: Finding
    subject: object  # joints that fail alike, or the conflict of two performers


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """Findings and clearances of one check, and sentences on what it did not check."""

    findings: tuple[Finding, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    not_checked: tuple[str, ...] = ()
    mendable: tuple[Mendable, ...] = ()  # findings that `planning` seeks mends for
    things: tuple[tuple[Finding, str], ...] = ()  # the still thing that a finding is about, by name
    danced: Danced | None = None  # from the one check that dances the show

    def __repr__(self) -> str:
        findings = counted(len(self.findings), "finding")
        return f"<Outcome: {findings}, {counted(len(self.clearances), 'clearance')}>"

    def __add__(self, other: "Outcome") -> "Outcome":
        return Outcome(
            findings=self.findings + other.findings,
            clearances=self.clearances + other.clearances,
            not_checked=tuple(dict.fromkeys(self.not_checked + other.not_checked)),
            mendable=self.mendable + other.mendable,
            things=self.things + other.things,
            danced=other.danced or self.danced,
        )


def outcome_record(outcome: Outcome) -> list[Any]:
    """An outcome as JSON values.

    Raises
    ------
    ValueError
        If mends can be sought for it, or the show was danced: such an outcome holds parts of its show.
    """
    if outcome.mendable or outcome.things or outcome.danced is not None:
        raise ValueError("an outcome with parts of its show is not recorded")
    rows = ([asdict(each) for each in some] for some in (outcome.findings, outcome.clearances))
    return [*rows, outcome.not_checked]


def restored_outcome(record: Sequence[Any]) -> Outcome:
    """The inverse of `outcome_record`."""
    findings, clearances, not_checked = record
    return Outcome(
        findings=tuple(restored_row(Finding, each) for each in findings),
        clearances=tuple(restored_row(Clearance, each) for each in clearances),
        not_checked=tuple(not_checked),
    )


@dataclass(frozen=True, slots=True)
class BeatClock:
    """Converts beats to the seconds and positions that findings give."""

    tempo: TempoMap

    def seconds(self, beat: float) -> float:
        """Seconds of the track."""
        return self._moment(beat)[0]

    def position(self, beat: float) -> str:
        """Bar.beat, to the nearest 1/16 of a beat."""
        return self._moment(beat)[1]

    def aloud(self, beat: float) -> str:
        """Bar.beat as it can be counted, for sentences."""
        return aloud(self.position(beat), self.tempo.bar_lengths)

    def at_aloud(self, beat: float) -> str:
        """When something is, as it can be counted: `at 25.2`, `just after 25.2`."""
        return at_aloud(self.position(beat), self.tempo.bar_lengths)

    def _moment(self, beat: float) -> tuple[float, str]:
        def work() -> tuple[float, str, TempoMap]:
            seconds = float(self.tempo.seconds_from_beats(beat))
            # The tempo is held with them, so that its id stays its own.
            return seconds, str(self.tempo.position_of(round(beat * 16) / 16)), self.tempo

        return recent("moments", (id(self.tempo), beat), work, most=_MOST_MOMENTS)[:2]


def place_text(place: tuple[float, float]) -> str:
    """A place as the show file has it, to 10 cm and never with -0.0."""
    x, y = (f"{round(value, 1) + 0.0:.1f}" for value in place)
    return f"[{x}, {y}]"


def deviation_words(beat: float, *dancers: Dancer) -> str:
    """How much was taken off a distance for hand deviation, in words; empty if none."""
    most = sum(float(dancer.deviations(beat).max()) for dancer in dancers)
    return f" ({100 * most:.0f} cm taken off for hand work)" if most else ""


def direction_words(by: tuple[float, float]) -> str:
    """A vector on the plan in a performer's words, such as "0.30 m upstage"."""
    x, y = by
    parts = []
    if abs(y) >= 0.005:
        parts.append(f"{abs(y):.2f} m {'upstage' if y > 0 else 'downstage'}")
    if abs(x) >= 0.005:
        parts.append(f"{abs(x):.2f} m to the audience's {'right' if x > 0 else 'left'}")
    return " and ".join(parts) or "not at all"
