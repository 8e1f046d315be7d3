"""Wind: Beaufort forces, and limits borrowed from open burning.

No authority text that was read gives a number for fire performers; the limits are those for open-air fires,
and every use says so. Source: Beaufort table (forces 3 to 5 read, the others from memory).
"""

from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source
from sequencer.units import SPEEDS


@dataclass(frozen=True, slots=True, kw_only=True)
class WindLimit:
    """A wind above which open-air fires are not lit."""

    speed: float  # [m/s]
    printed: str
    what: str
    source: Source


def beaufort(speed: float) -> int:
    """Beaufort force of a wind speed [m/s].

    Raises
    ------
    ValueError
        If the speed is negative.

    Notes
    -----
    Source: Beaufort table in whole miles per hour, as printed; a speed between two entries is rounded to the
    nearest mile per hour, halves upwards.
    """
    if not speed >= 0:
        raise ValueError(f"wind speed must be ≥ 0, got {speed!r}")
    miles = int(speed / SPEEDS["mph"] + 0.5 + 1e-9)
    return next(
        int(entry["force"])
        for entry in data("wind.json")["forces"]
        if entry["upper"] is None or miles <= entry["upper"]
    )


@cache
def wind_limits() -> tuple[WindLimit, ...]:
    """Limits of open burning."""
    return tuple(
        WindLimit(**{**entry, "source": source(entry["source"])})
        for entry in data("wind.json")["limits"]
    )
