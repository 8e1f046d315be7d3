"""How far the cast is from the plan: what `check --danced` draws. Standard deviations of normal errors.

No published spread of fire spinners was found; the defaults are this tool's own and common practice. A
rehearsal filmed from above gives better ones.
"""

import math
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema

from sequencer import units
from sequencer.motion.performers.drifting import Spread
from sequencer.show.record import Record


def _spread(
    table: dict[str, float], default: str, most: float, *examples: str
) -> tuple[BeforeValidator, WithJsonSchema]:
    def read(value: Any) -> float:
        amount = units.quantity(value, table, default=default)
        if not 0 <= amount <= most:
            raise ValueError(f"{value!s} is outside 0 … {most:g} {default}".rstrip())
        return amount

    told = f"a number in {default}" if default else "a share; of 1 unless % follows"
    return BeforeValidator(read), WithJsonSchema(
        {"type": ["string", "number"], "description": told, "examples": list(examples)}
    )


_Offset = Annotated[float, *_spread(units.LENGTHS, "m", 2.0, "15 cm")]
Turn = Annotated[float, *_spread(units.ANGLES, "°", 180.0, "8.6")]
Lag = Annotated[float, *_spread({"beats": 1.0, "beat": 1.0}, "beats", 2.0, "0.1")]
Share = Annotated[float, *_spread({"": 1.0, "%": 0.01}, "", 0.05, "0.1 %")]


class Drift(Record):
    """How far people are from the plan, for `check --danced`: standard deviations."""

    place: _Offset = Field(
        0.15, description="of every place held, across and along (common practice)"
    )
    facing: Turn = Field(8.6, description="of every facing held (common practice)")
    timing: Lag = Field(
        0.1, description="early or late all show long, each performer (common practice)"
    )
    tempo: Share = Field(
        0.001, description="of the own tempo; 0.1 % is a beat in a thousand (common practice)"
    )
    tether: _Offset = Field(0.01, description="of the length of a tether (common practice)")
    hand: _Offset = Field(
        0.05, description="of where the hands' path lies, each way (common practice)"
    )

    def spread(self) -> Spread:
        """The same in SI and radians."""
        return Spread(
            place=self.place,
            facing=math.radians(self.facing),
            timing=self.timing,
            tempo=self.tempo,
            tether=self.tether,
            hand=self.hand,
        )
