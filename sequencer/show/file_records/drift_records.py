"""How far the cast deviates from the plan, for `check --danced`: standard deviations of normal errors.

No published figures for fire spinners were found; the defaults are this tool's estimates from common
practice. A rehearsal filmed from above gives better values.
"""

import math
from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema

from sequencer import units
from sequencer.motion.performers.drifting import MeasuredSpread, Spread
from sequencer.show.file_records.field_kinds import Name
from sequencer.show.file_records.record import Record


def _spread(
    table: dict[str, float], default: str, most: float, *examples: str
) -> tuple[BeforeValidator, WithJsonSchema]:
    def read(value: Any) -> float:
        amount = units.quantity(value, table, default=default)
        if not 0 <= amount <= most:
            raise ValueError(f"{value!s} is outside 0 … {most:g} {default}".rstrip())
        return amount

    description = (
        f"a number in {default}" if default else "a fraction of 1, or a percentage followed by %"
    )
    return BeforeValidator(read), WithJsonSchema(
        {"type": ["string", "number"], "description": description, "examples": list(examples)}
    )


_Offset = Annotated[float, *_spread(units.LENGTHS, "m", 2.0, "15 cm")]
Turn = Annotated[float, *_spread(units.ANGLES, "°", 180.0, "8.6")]
Lag = Annotated[float, *_spread({"beats": 1.0, "beat": 1.0}, "beats", 2.0, "0.1")]
Share = Annotated[float, *_spread({"": 1.0, "%": 0.01}, "", 0.05, "0.1 %")]


Missed = Annotated[float, *_spread({"": 1.0, "%": 0.01}, "", 1.0, "2 %")]
_Marks = Annotated[float, *_spread(units.LENGTHS, "m", 2.0, "10 cm")]


class OwnDrift(Record):
    """How far one performer deviates from the plan, where it is known: standard deviations; as for all where left out."""

    place: _Offset | None = Field(None, description="of every position held, in x and in y")
    facing: Turn | None = Field(None, description="of every facing held")
    timing: Lag | None = Field(None, description="constant lead or lag over the whole show")
    tempo: Share | None = Field(None, description="of the tempo")
    tether: _Offset | None = Field(None, description="of the length of a tether")
    hand: _Offset | None = Field(None, description="of the position of the hand's path")


class Drift(Record):
    """How far people deviate from the plan, for `check --danced`: standard deviations."""

    place: _Offset = Field(
        0.15, description="of every position held, in x and in y (common practice)"
    )
    facing: Turn = Field(8.6, description="of every facing held (common practice)")
    timing: Lag = Field(
        0.1,
        description="each performer's constant lead or lag over the whole show (common practice)",
    )
    tempo: Share = Field(
        0.001,
        description="of each performer's tempo; 0.1 % is one beat in a thousand (common practice)",
    )
    tether: _Offset = Field(0.01, description="of the length of a tether (common practice)")
    hand: _Offset = Field(
        0.05, description="of the position of the hand's path, in each direction (common practice)"
    )

    missed: Missed = Field(
        0.02,
        description="each performer's chance of missing one cue in a run: a beat, a bar or an eight late, or with left "
        "and right mixed up (common practice)",
    )
    marks: _Marks = Field(
        0.05,
        description="by which all marks on the floor are off together, in x and in y (common practice)",
    )
    people: dict[Name, OwnDrift] = Field(
        default_factory=dict, description="performers who deviate by their own, by name"
    )

    def own_spreads(
        self, logged: Mapping[str, MeasuredSpread], cast: Collection[str]
    ) -> dict[str, Spread]:
        """Spreads of those who have their own.

        Parameters
        ----------
        logged : mapping of name to MeasuredSpread
            What a log of rehearsals says; what the show says of somebody comes before it.
        cast : collection of str
            Who dances; of others nothing is taken.
        """
        base = self.spread()
        out = {}
        for name in cast:
            log, own = logged.get(name, MeasuredSpread()), self.people.get(name, OwnDrift())
            said = {
                "place": own.place if own.place is not None else log.place,
                "timing": own.timing if own.timing is not None else log.timing,
                "facing": None if own.facing is None else math.radians(own.facing),
                "tempo": own.tempo,
                "tether": own.tether,
                "hand": own.hand,
            }
            known = {
                kind: value
                for kind, value in said.items()
                if value is not None and not math.isnan(value)
            }
            if known:
                out[name] = replace(base, **known)
        return out

    def spread(self) -> Spread:
        """The same values in SI units and radians."""
        return Spread(
            place=self.place,
            facing=math.radians(self.facing),
            timing=self.timing,
            tempo=self.tempo,
            tether=self.tether,
            hand=self.hand,
        )
