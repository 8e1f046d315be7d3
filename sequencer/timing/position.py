"""Moments of a show as people write them: bar.beat, m:ss.s, or an edge of a section.

Bars and beats count from 1; a fraction of a beat follows a plus: `17.3+1/2`. Bars before the song's
first full bar are 0, −1, …
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

TOUCH = 1e-6  # [beats] moments this close count as the same: such blocks are adjacent

# No more digits than any song needs, nor any number takes.
_BAR_BEAT = re.compile(r"^(-?\d{1,9})\.(\d{1,9})(?:\+(\d{1,9}/\d{1,9}|\d{0,9}\.\d{1,40}))?$")
_CLOCK = re.compile(r"^(\d{1,9}):([0-5]?\d(?:\.\d+)?)$")
_EDGE = re.compile(r"^(?:(start|end) of )?(\S.*)$")


@dataclass(frozen=True, slots=True)
class Position:
    """A bar and a beat in it, both counted from 1."""

    bar: int
    beat: Fraction = Fraction(1)

    def __post_init__(self) -> None:
        if self.beat < 1:
            raise ValueError(f"beats count from 1, got {self.beat}")

    def __str__(self) -> str:
        whole, rest = divmod(self.beat, 1)
        if not rest:
            return f"{self.bar}.{whole}"
        fine = rest.limit_denominator(16)
        tail = str(fine) if fine == rest else f"{float(rest):.3f}"[1:]
        return f"{self.bar}.{whole}+{tail}"


@dataclass(frozen=True, slots=True)
class Clock:
    """Seconds of the track."""

    seconds: float

    def __str__(self) -> str:
        return clock_text(self.seconds)


@dataclass(frozen=True, slots=True)
class SectionEdge:
    """Where a section of the song starts or ends."""

    name: str
    edge: Literal["start", "end"] = "start"

    def __str__(self) -> str:
        return f"{self.edge} of {self.name}"


Moment = Position | Clock | SectionEdge


def parse_moment(text: str) -> Moment:
    """Parse a moment.

    Parameters
    ----------
    text : str
        `17.3`, `17.3+1/2`, `1:02.5`, `verse 2`, `end of verse 2`.

    Returns
    -------
    moment : Position, Clock or SectionEdge

    Raises
    ------
    ValueError
        If it is none of these.
    """
    text = text.strip()
    if match := _BAR_BEAT.match(text):
        if match[3] and re.search(r"/0+$", match[3]):
            raise ValueError(f"the fraction of a beat in {text!r} has a denominator of 0")
        beat = Fraction(match[2]) + (Fraction(match[3]) if match[3] else 0)
        if match[3] and Fraction(match[3]) >= 1:
            raise ValueError(f"the fraction of a beat in {text!r} must be below 1")
        return Position(int(match[1]), beat)
    if match := _CLOCK.match(text):
        return Clock(60 * int(match[1]) + float(match[2]))
    if re.match(r"^[\d.:+\-/]+$", text) or not (match := _EDGE.match(text)):
        raise ValueError(
            f"{text!r} is not a moment of the song; write bar.beat (17.3), m:ss.s (1:02.5) or a section"
        )
    return SectionEdge(match[2], "end" if match[1] == "end" else "start")


def clock_text(seconds: float, *, decimals: int = 1) -> str:
    """Seconds as m:ss.s; rounding carries into the minutes.

    Raises
    ------
    ValueError
        If `seconds` is not finite.
    """
    step = 10**decimals
    ticks = round(abs(seconds) * step)
    minutes, rest = divmod(ticks, 60 * step)
    width = 2 if decimals == 0 else 3 + decimals
    sign = "-" if seconds < 0 and ticks else ""
    return f"{sign}{minutes}:{rest / step:0{width}.{decimals}f}"


def moment_words(seconds: float) -> str:
    """A moment of the track, or before it: "3:01.8", "0:30.2 before the track"."""
    if seconds < -0.05:
        return f"{clock_text(-seconds)} before the track"
    return clock_text(abs(seconds))
