"""Props as the motion laws see them: a head on a taut, massless tether."""

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TetheredProp:
    """A head on a taut, massless tether; rest values."""

    length: float  # [m] hand to centre of head
    mass: float  # [kg] of the head
    wick_radius: float  # [m]
    flame_reach: float = 0.0  # [m] beyond the wick

    def __post_init__(self) -> None:
        for name in ("length", "mass", "wick_radius"):
            value = getattr(self, name)
            if not (value > 0 and math.isfinite(value)):  # also catches nan
                raise ValueError(f"{name} must be positive, got {value!r}")
        if not (self.flame_reach >= 0 and math.isfinite(self.flame_reach)):
            raise ValueError(f"flame_reach must not be negative, got {self.flame_reach!r}")

    @property
    def hot_radius(self) -> float:
        """Radius of the ball that nobody may enter [m]."""
        return self.wick_radius + self.flame_reach
