"""Laws derived from laws: mirrored, or shifted in time and pace.

The mirror is the body's sagittal plane x = 0. Positions, rates and tethers change the sign of x; a
plane is an axial vector, so it keeps x and changes y and z: forward wheels stay forward, clockwise in
the wall plane becomes anticlockwise. Bounds stay proven. Frame: body frame [m].
Source: reflection of polar and axial vectors, any text on vector algebra. Exact.
"""

from dataclasses import dataclass, replace

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.law import Bounds, Law
from sequencer.motion.laws.state import Motion
from sequencer.units import counted

_POLAR = np.array([-1.0, 1.0, 1.0])


@dataclass(frozen=True, slots=True)
class Mirrored:
    """A law mirrored in x = 0."""

    law: Law

    def __repr__(self) -> str:
        return f"<Mirrored {self.law!r}>"

    @property
    def period(self) -> float:
        """As for the law itself."""
        return self.law.period

    def at(self, beats: Floats) -> Motion:
        """State at the law's beats, shape (...)."""
        seen = self.law.at(beats)
        return Motion(
            hand=seen.hand * _POLAR,
            hand_rate=seen.hand_rate * _POLAR,
            hand_acceleration=seen.hand_acceleration * _POLAR,
            tether=seen.tether * _POLAR,
            tether_rate=seen.tether_rate * _POLAR,
            tether_acceleration=seen.tether_acceleration * _POLAR,
            plane=seen.plane * -_POLAR,
        )

    def bounds(self) -> Bounds:
        """As for the law itself."""
        return self.law.bounds()


@dataclass(frozen=True, slots=True)
class Retimed:
    """A law that starts `shift` beats in and runs at `pace` of its beats per beat."""

    law: Law
    shift: float = 0.0  # [beats of the law]
    pace: float = 1.0  # [beats of the law per beat], positive

    def __post_init__(self) -> None:
        if not (self.pace > 0 and np.isfinite(self.pace) and np.isfinite(self.shift)):
            raise ValueError(f"a law's pace must be positive, got {self.pace!r}")

    def __repr__(self) -> str:
        return (
            f"<Retimed by {counted(float(self.shift), 'beat')}, {self.pace:g} a beat: {self.law!r}>"
        )

    @property
    def period(self) -> float:
        """The law's period at the new pace."""
        return self.law.period / self.pace

    def at(self, beats: Floats) -> Motion:
        """State at the law's beats, shape (...)."""
        seen = self.law.at(self.shift + self.pace * np.asarray(beats, dtype=np.float64))
        if self.pace == 1.0:
            return seen
        return replace(
            seen,
            hand_rate=seen.hand_rate * self.pace,
            hand_acceleration=seen.hand_acceleration * self.pace**2,
            tether_rate=seen.tether_rate * self.pace,
            tether_acceleration=seen.tether_acceleration * self.pace**2,
        )

    def bounds(self) -> Bounds:
        """The law's bounds, scaled."""
        own = self.law.bounds()
        if self.pace == 1.0:
            return own
        return Bounds(
            hand_speed=own.hand_speed * self.pace,
            hand_acceleration=own.hand_acceleration * self.pace**2,
            turn_rate=own.turn_rate * self.pace,
            turn_acceleration=own.turn_acceleration * self.pace**2,
            hand_reach=own.hand_reach,
            hand_jerk=own.hand_jerk * self.pace**3,
            turn_jerk=own.turn_jerk * self.pace**3,
            frame_rate=own.frame_rate * self.pace,
            frame_acceleration=own.frame_acceleration * self.pace**2,
        )


def mirrored(law: Law) -> Law:
    """The law mirrored; mirroring twice returns the original law."""
    return law.law if isinstance(law, Mirrored) else Mirrored(law)


def shifted(law: Law, beats: float) -> Law:
    """The law started some of its beats in; shifts add up."""
    if isinstance(law, Retimed) and law.pace == 1.0:
        return shifted(law.law, law.shift + beats)
    return law if beats == 0.0 else Retimed(law, beats)
