"""What a hand holds, as the show file has it: a kind, and the sizes that mean something for that kind.

Sizes that are left out are common practice: those that go with the body (tether, rope, staff) are a share
of the performer's stature, and staffs and hoops held two at a time are smaller, so that each passes the
body and the other. Lengths in metres, masses in kilograms.
"""

import math
from collections.abc import Mapping
from typing import Annotated, Any, Literal, Self

from pydantic import Field, ValidationInfo, field_validator, model_validator

from sequencer.motion.props.prop import Prop, PropKind
from sequencer.show.field_kinds import Degrees, Length, Mass
from sequencer.show.record import Record

# What each kind has besides wick and fuel, and what it is where the file does not say; common practice.
DEFAULTS: Mapping[str, Mapping[str, float | None]] = {
    "poi": {"tether": None, "head_mass": 0.2, "wick": 0.05},
    "rope dart": {"tether": None, "head_mass": 0.2, "wick": 0.05},
    "staff": {"length": None, "grip": None, "mass": 0.8, "head_mass": 0.15, "wick": 0.04},
    "club": {"length": 0.55, "grip": 0.10, "mass": 0.35, "head_mass": 0.1, "wick": 0.04},
    "fan": {"length": 0.40, "spread": 120.0, "wicks": 5, "mass": 0.5, "head_mass": 0.04, "wick": 0.03},
    "hoop": {"diameter": None, "wicks": 4, "mass": 0.6, "head_mass": 0.04, "wick": 0.03},
}  # fmt: skip
# From and to what a size is believed [m, degrees].
RANGES: Mapping[str, tuple[float, float]] = {
    "tether": (0.05, 5.0),
    "length": (0.10, 3.0),
    "diameter": (0.20, 2.0),
    "grip": (0.0, 2.0),
    "spread": (10.0, 180.0),
    "wick": (0.005, 0.30),
}
_UNITS = {"spread": "°"}


USUAL_STATURE = 1.70  # [m] of whoever is meant where nobody is named
# Common practice, over the stature of whoever holds it: the tether of a poi, the rope that is let out, and
# the length of a staff, one alone and each of a pair.
TETHER_SHARE, ROPE_SHARE = 0.30, 0.39
STAFF_SHARE, PAIRED_STAFF_SHARE = 0.80, 0.60
HOOP, PAIRED_HOOP = 0.85, 0.60  # [m] across: one alone, each of a pair; common practice


class PropRecord(Record):
    """What one hand holds; which keys there are depends on the kind."""

    kind: PropKind = Field(
        "poi",
        description="poi: a head on a tether; rope dart: the same on a longer rope, in one hand; staff; club; "
        "fan; hoop, held at its rim",
    )
    tether: Length | None = Field(
        None,
        description="poi, rope dart: hand to the centre of the head; of a rope what is let out (0.30 of the "
        "stature, a rope 0.39, if not said: common practice)",
    )
    length: Length | None = Field(
        None,
        description="staff, club: from end to end (a staff alone 0.80 of the stature, each of two 0.60, a club "
        "0.55 m if not said: common practice); fan: hand to its wicks (0.4 m)",
    )
    grip: Length | Literal[0] | None = Field(
        None,
        description="staff, club: hand to the rear end; the middle of a staff and 10 cm of a club if not said",
    )
    diameter: Length | None = Field(
        None,
        description="hoop: across the rim (one alone 0.85 m, each of two 0.60 m if not said: common practice)",
    )
    spread: Degrees | None = Field(
        None, description="fan: angle between its outer spokes (120 if not said)"
    )
    wicks: Annotated[int, Field(ge=1, le=12)] | None = Field(
        None,
        description="fan: on an arc (5 if not said); hoop: round the rim (4), the hand between two",
    )
    mass: Mass | None = Field(
        None,
        description="staff, club, fan, hoop: of the whole, soaked (0.8, 0.35, 0.5, 0.6 kg if not said)",
    )
    head_mass: Mass | None = Field(
        None,
        description="of each head, soaked (200 g of poi and rope dart, 150 g of a staff, 100 g of a club, 40 g "
        "of fan and hoop if not said)",
    )
    wick: Length | None = Field(
        None,
        description="radius of each wick (5 cm of poi and rope dart, 4 cm of staff and club, 3 cm of fan and "
        "hoop if not said)",
    )
    fuel_mass: Mass | None = Field(
        None, description="fuel soaked into one wick, after the spin-off"
    )

    @model_validator(mode="before")
    @classmethod
    def _filled(cls, data: Any) -> Any:
        """With what the kind has where nothing is said."""
        kind = data.get("kind", "poi") if isinstance(data, dict) else None
        if not isinstance(kind, str) or kind not in DEFAULTS:
            return data
        return {**{k: v for k, v in DEFAULTS[kind].items() if v is not None}, **data}

    @field_validator(
        "tether", "length", "grip", "diameter", "spread", "wicks", "mass", mode="before"
    )
    @classmethod
    def _of_its_kind(cls, value: Any, info: ValidationInfo) -> Any:
        kind, name = info.data.get("kind"), str(info.field_name)
        if kind is None:
            return value
        if value is not None and name not in DEFAULTS[kind]:
            known = ", ".join([*DEFAULTS[kind], "fuel_mass"])
            raise ValueError(f"a {kind} has no {name}; it has {known}")
        return value

    @field_validator("tether", "length", "grip", "diameter", "spread", "wick")
    @classmethod
    def _believed(cls, value: float | None, info: ValidationInfo) -> float | None:
        name = str(info.field_name)
        low, high = RANGES[name]
        if value is not None and not low <= value <= high:
            unit = _UNITS.get(name, " m")
            raise ValueError(f"{value:g}{unit} is outside {low:g} … {high:g}{unit}")
        return value

    @model_validator(mode="after")
    def _whole(self) -> Self:
        # Where the size is not said, whether the grip fits it is known only with the stature.
        whole = self if self.size else self.sized().model_copy(update={"grip": None})
        whole.held()
        return self

    @property
    def size(self) -> float | None:
        """Tether, length or diameter, whichever the kind has [m]; None where it is not said."""
        return self.tether or self.length or self.diameter

    def sized(self, stature: float = USUAL_STATURE, *, paired: bool = False) -> "PropRecord":
        """The same prop, with the usual size of its kind where the file says none.

        Parameters
        ----------
        stature : float
            Of whoever holds it [m].
        paired : bool
            Whether the other hand holds one of the same kind.

        Notes
        -----
        Source: common practice, to the whole centimetre. A pair of staffs is short enough to pass the
        body, a pair of hoops to pass each other.
        """
        if self.size is not None:
            return self
        usual = {
            "poi": ("tether", TETHER_SHARE * stature),
            "rope dart": ("tether", ROPE_SHARE * stature),
            "staff": ("length", (PAIRED_STAFF_SHARE if paired else STAFF_SHARE) * stature),
            "hoop": ("diameter", PAIRED_HOOP if paired else HOOP),
        }
        name, metres = usual[self.kind]  # clubs and fans have theirs from `DEFAULTS`
        return self.model_copy(update={name: round(metres, 2)})

    def held(self, flame_reach: float = 0.0) -> Prop:
        """The prop as the laws see it; where its size is not said, that of a stature of 1.70 m.

        Parameters
        ----------
        flame_reach : float
            Of a moving wick's flame beyond the wick [m].

        Raises
        ------
        ValueError
            If its parts do not go together.
        """
        if self.size is None:
            return self.sized().held(flame_reach)
        flexible = self.tether is not None
        length, behind = self.size, 0.0
        if self.grip is not None and self.grip >= length:
            raise ValueError(
                f"the hand holds it {self.grip:g} m from the rear end of only {length:g} m"
            )
        if self.kind in ("staff", "club"):
            behind = length / 2 if self.grip is None else self.grip
            length -= behind
        return Prop(
            kind=self.kind,
            length=length,
            behind=behind,
            mass=(self.head_mass if flexible else self.mass) or 0.0,
            head_mass=0.0 if flexible else self.head_mass or 0.0,
            wicks=self.wicks or 1,
            spread=math.radians(self.spread or 0.0) if self.kind == "fan" else 0.0,
            wick_radius=self.wick or 0.0,
            flame_reach=flame_reach,
        )

    @property
    def wick_count(self) -> int:
        """How many wicks burn."""
        return len(self.held().heads)

    @property
    def fuel(self) -> float | None:
        """Fuel in all its wicks [kg]; None where it is not weighed."""
        return None if self.fuel_mass is None else self.fuel_mass * self.wick_count


def usual_prop(kind: PropKind, *, stature: float = USUAL_STATURE, paired: bool = False) -> Prop:
    """A prop of a kind with the sizes that are common practice.

    Parameters
    ----------
    kind : str
    stature : float
        Of whoever holds it [m].
    paired : bool
        Whether the other hand holds one of the same kind.
    """
    return PropRecord(kind=kind).sized(stature, paired=paired).held()
