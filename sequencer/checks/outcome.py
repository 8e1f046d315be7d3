"""What one check hands back: findings, distances, and what it did not look at."""

from dataclasses import dataclass

from sequencer.findings import Clearance, Danced, Finding
from sequencer.motion.performers.dancer import Dancer
from sequencer.timing.tempo import TempoMap


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Mendable:
    """A finding for which mends can be worked out, and what it is about."""

    finding: Finding
    subject: object  # joints that fail alike, or two performers in conflict


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """Findings and clearances of one check, and sentences on what it left out."""

    findings: tuple[Finding, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    not_checked: tuple[str, ...] = ()
    mendable: tuple[Mendable, ...] = ()  # those of the findings that `planning` seeks mends for
    danced: Danced | None = None  # as danced, of the one check that dances the show

    def __repr__(self) -> str:
        return f"<Outcome: {len(self.findings)} findings, {len(self.clearances)} clearances>"

    def __add__(self, other: "Outcome") -> "Outcome":
        return Outcome(
            findings=self.findings + other.findings,
            clearances=self.clearances + other.clearances,
            not_checked=tuple(dict.fromkeys(self.not_checked + other.not_checked)),
            mendable=self.mendable + other.mendable,
            danced=other.danced or self.danced,
        )


@dataclass(frozen=True, slots=True)
class BeatClock:
    """Beats turned into what findings carry."""

    tempo: TempoMap

    def seconds(self, beat: float) -> float:
        """Seconds of the track."""
        return float(self.tempo.seconds_from_beats(beat))

    def position(self, beat: float) -> str:
        """Bar.beat, to the nearest 1/16 of a beat."""
        return str(self.tempo.position_of(round(beat * 16) / 16))


def length_words(metres: float) -> str:
    """A small length as people say it: millimetres under 1 cm, centimetres under 1 m."""
    size = abs(metres)
    if size < 0.00995:
        return f"{1000 * size:.0f} mm"
    return f"{100 * size:.0f} cm" if size < 0.995 else f"{size:.2f} m"


def deviation_words(beat: float, *dancers: Dancer) -> str:
    """What was taken off a distance for hands that leave their drawn paths; empty if nothing."""
    most = sum(float(dancer.deviations(beat).max()) for dancer in dancers)
    return f" (hand work: {100 * most:.0f} cm of it taken off)" if most else ""


def direction_words(by: tuple[float, float]) -> str:
    """A vector on the plan in a performer's words, such as "0.30 m upstage"."""
    x, y = by
    parts = []
    if abs(y) >= 0.005:
        parts.append(f"{abs(y):.2f} m {'upstage' if y > 0 else 'downstage'}")
    if abs(x) >= 0.005:
        parts.append(f"{abs(x):.2f} m to the audience's {'right' if x > 0 else 'left'}")
    return " and ".join(parts) or "not at all"
