"""Wind: Beaufort forces.

Source: Beaufort table (forces 3 to 5 read, the others from memory).
"""

from sequencer.facts.sources import data
from sequencer.units import SPEEDS


def beaufort(speed: float) -> int:
    """Beaufort force of a wind speed [m/s].

    Raises
    ------
    ValueError
        If the speed is negative.

    Notes
    -----
    Source: Beaufort table in whole miles an hour, as printed; a speed between two entries is
    rounded to the nearest mile an hour, a half upwards.
    """
    if not speed >= 0:
        raise ValueError(f"wind speed must be ≥ 0, got {speed!r}")
    miles = int(speed / SPEEDS["mph"] + 0.5 + 1e-9)
    return next(
        int(entry["force"])
        for entry in data("wind.json")["forces"]
        if entry["upper"] is None or miles <= entry["upper"]
    )
