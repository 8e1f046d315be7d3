"""One prop's whole show: laws one after the other, blended where they meet."""

from dataclasses import dataclass
from typing import Literal

from sequencer.arrays import Floats
from sequencer.motion.law import Bounds, Law
from sequencer.motion.state import Motion

SpanKind = Literal["block", "link", "rest"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A law in its place on the show's count."""

    start: float  # [show beats]
    end: float  # [show beats]
    law: Law
    origin: float  # [show beats] where the law's own beat is 0
    kind: SpanKind
    label: str

    def __post_init__(self) -> None:
        if not self.end > self.start:
            raise ValueError(f"a span must end after it starts, got {self.start} … {self.end}")


@dataclass(frozen=True, slots=True, eq=False)
class Course:
    """Spans that follow each other without a gap.

    Before the first and after the last span their laws go on.
    """

    spans: tuple[Span, ...]

    def at(self, beats: Floats) -> Motion:
        """State at show beats, blends at the joins included; see `Span`."""
        raise ValueError("a course needs at least one span")

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on every piece of [start, end], blends included."""
        raise ValueError(f"a course needs at least one span in {start} … {end}")
