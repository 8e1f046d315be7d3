"""SMPTE time code at 24, 25, 29.97 drop-frame and 30 frames a second, exact both ways.

Drop-frame runs at 30000/1001 frames a second. At the start of every minute but each tenth the frame
*numbers* 00 and 01 are skipped; no picture is dropped. It is written with ";" before the frames.
Time code wraps at 24 hours.

Source: SMPTE ST 12-1 (rule read second-hand).
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import NamedTuple

_MINUTE = 60 * 30 - 2  # frames of a minute that skips two numbers
_TEN_MINUTES = 10 * _MINUTE + 2


@dataclass(frozen=True, slots=True)
class Rate:
    """A frame rate and its counting mode."""

    name: str
    exact: Fraction  # [frames/s]
    nominal: int  # frame numbers per second
    drop: bool

    @property
    def day(self) -> int:
        """Frames in 24 hours of time code."""
        return 144 * _TEN_MINUTES if self.drop else 86_400 * self.nominal


RATES = {
    "24": Rate("24", Fraction(24), 24, drop=False),
    "25": Rate("25", Fraction(25), 25, drop=False),
    "29.97df": Rate("29.97df", Fraction(30_000, 1001), 30, drop=True),
    "30": Rate("30", Fraction(30), 30, drop=False),
}


def frame_at(seconds: float | Fraction, rate: Rate) -> int:
    """Frame shown at a time: the last one that has begun.

    Raises
    ------
    ValueError
        If the time is negative.

    Notes
    -----
    Source: SMPTE ST 12-1. Exact for a fraction; a float counts as the number it stands for, and a
    frame that begins within 1 ns of it counts as begun, so that the time at which a frame begins, as a float, gives that frame.
    """
    if not seconds >= 0:
        raise ValueError(f"seconds must not be negative, got {seconds!r}")
    exact = Fraction(seconds)
    if isinstance(seconds, float):
        exact += Fraction(1, 10**9)
    return floor(exact * rate.exact)


class TimeDigits(NamedTuple):
    """The numbers of a label."""

    hours: int
    minutes: int
    seconds: int
    frames: int


def digits_of(frame: int, rate: Rate) -> TimeDigits:
    """Numbers of a frame's label.

    Raises
    ------
    ValueError
        If the frame is negative.
    """
    if frame < 0:
        raise ValueError(f"frame must not be negative, got {frame}")
    number = frame % rate.day
    if rate.drop:
        tens, rest = divmod(number, _TEN_MINUTES)
        number += 18 * tens + 2 * max(0, (rest - 2) // _MINUTE)
    whole, frames = divmod(number, rate.nominal)
    minutes, seconds = divmod(whole, 60)
    hours, minutes = divmod(minutes, 60)
    return TimeDigits(hours, minutes, seconds, frames)


def timecode_of(frame: int, rate: Rate) -> str:
    """Label of a frame, hh:mm:ss:ff, or hh:mm:ss;ff where numbers are dropped.

    Raises
    ------
    ValueError
        If the frame is negative.
    """
    hours, minutes, seconds, frames = digits_of(frame, rate)
    mark = ";" if rate.drop else ":"
    return f"{hours:02d}:{minutes:02d}:{seconds:02d}{mark}{frames:02d}"


def frame_labelled(label: str, rate: Rate) -> int:
    """The frame of a day that has a label.

    Parameters
    ----------
    label : str
        hh:mm:ss:ff, with ";" before the frames or not.
    rate : Rate

    Raises
    ------
    ValueError
        If it is no label, or no frame of this rate has it.
    """
    found = re.fullmatch(r"(\d\d):(\d\d):(\d\d)[:;](\d\d)", label, re.ASCII)
    if found is None:
        raise ValueError(f"{label!r} is no time code; write hours:minutes:seconds:frames, such as 01:00:00:00")  # fmt: skip
    hours, minutes, seconds, frames = map(int, found.groups())
    if hours > 23 or minutes > 59 or seconds > 59 or frames >= rate.nominal:
        raise ValueError(
            f"{label!r} is no time code at {rate.name} frames a second: hours go to 23, minutes and seconds to 59, "
            f"frames to {rate.nominal - 1}"
        )
    number = rate.nominal * (3600 * hours + 60 * minutes + seconds) + frames
    if not rate.drop:
        return number
    if frames < 2 and seconds == 0 and minutes % 10:
        raise ValueError(f"drop-frame time code has no {label!r}: a minute that is no tenth begins with frame 02")  # fmt: skip
    whole = 60 * hours + minutes
    return number - 2 * (whole - whole // 10)
