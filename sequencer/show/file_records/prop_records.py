"""A prop as written in the show file: its kind, and the sizes that apply to that kind.

Default sizes are common practice: those that scale with the body (tether, rope, staff) are a fraction of
the performer's stature, and staffs and hoops held in pairs are smaller, so that each clears the body and
the other. Lengths in metres, masses in kilograms.
"""

import math
from collections.abc import Mapping
from typing import Annotated, Any, Literal, Self

from pydantic import (
    Field,
    ModelWrapValidatorHandler,
    PrivateAttr,
    ValidationInfo,
    field_validator,
    model_validator,
)

from sequencer.motion.props.prop import Prop, PropKind
from sequencer.show.file_records.field_kinds import Degrees, Length, Mass
from sequencer.show.file_records.record import Record

# Fields of each kind besides wick and fuel, and their defaults; common practice.
DEFAULTS: Mapping[str, Mapping[str, float | None]] = {
    "poi": {"tether": None, "head_mass": 0.2, "wick": 0.05},
    "rope dart": {"tether": None, "head_mass": 0.2, "wick": 0.05},
    "staff": {"length": None, "grip": None, "mass": 0.8, "head_mass": 0.15, "wick": 0.04},
    "club": {"length": 0.55, "grip": 0.10, "mass": 0.35, "head_mass": 0.1, "wick": 0.04},
    "fan": {"length": 0.40, "spread": 120.0, "wicks": 5, "mass": 0.5, "head_mass": 0.04, "wick": 0.03},
    "hoop": {"diameter": None, "wicks": 4, "mass": 0.6, "head_mass": 0.04, "wick": 0.03},
}  # fmt: skip
# Accepted range of each size [m, degrees].
RANGES: Mapping[str, tuple[float, float]] = {
    "tether": (0.05, 5.0),
    "length": (0.10, 3.0),
    "diameter": (0.20, 2.0),
    "grip": (0.0, 2.0),
    "spread": (10.0, 180.0),
    "wick": (0.005, 0.30),
}
_UNITS = {"spread": "°"}


USUAL_STATURE = 1.70  # [m] assumed where no performer is given
# Common practice, relative to the performer's stature: the tether of a poi, the rope let out, and the length of a staff, single or one of a pair.
TETHER_SHARE, ROPE_SHARE = 0.30, 0.39
STAFF_SHARE, PAIRED_STAFF_SHARE = 0.80, 0.60
HOOP, PAIRED_HOOP = 0.85, 0.60  # [m] diameter: single, and each of a pair; common practice


class PropRecord(Record):
    """The prop in one hand; the allowed keys depend on its kind."""

    kind: PropKind = Field(
        "poi",
        description="poi: a head on a tether; rope dart: the same on a longer rope, in one hand; staff; club; "
        "fan; hoop, held at its rim",
    )
    tether: Length | None = Field(
        None,
        description="poi, rope dart: hand to the centre of the head; for a rope, the length let out (default: 0.30 of "
        "the stature, for a rope 0.39; common practice)",
    )
    length: Length | None = Field(
        None,
        description="staff, club: end to end (default: a single staff 0.80 of the stature, each of a pair 0.60, a club "
        "0.55 m; common practice); fan: hand to its wicks (default: 0.4 m)",
    )
    grip: Length | Literal[0] | None = Field(
        None,
        description="staff, club: hand to the rear end; default: the middle of a staff, 10 cm for a club",
    )
    diameter: Length | None = Field(
        None,
        description="hoop: outer diameter (default: single 0.85 m, each of a pair 0.60 m; common practice)",
    )
    spread: Degrees | None = Field(
        None, description="fan: angle between its outer spokes (default: 120)"
    )
    wicks: Annotated[int, Field(ge=1, le=12)] | None = Field(
        None,
        description="fan: number on an arc (default: 5); hoop: number round the rim (default: 4), the hand between two",
    )
    mass: Mass | None = Field(
        None,
        description="staff, club, fan, hoop: total mass, soaked (default: 0.8, 0.35, 0.5, 0.6 kg)",
    )
    head_mass: Mass | None = Field(
        None,
        description="mass of each head, soaked (default: 200 g for poi and rope dart, 150 g for a staff, 100 g for a "
        "club, 40 g for fan and hoop)",
    )
    wick: Length | None = Field(
        None,
        description="radius of each wick (default: 5 cm for poi and rope dart, 4 cm for staff and club, 3 cm for fan "
        "and hoop)",
    )
    fuel_mass: Mass | None = Field(None, description="fuel left in one wick after spinning off")

    _assumed: tuple[str, ...] = PrivateAttr(())

    @model_validator(mode="wrap")
    @classmethod
    def _filled(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        """Fill in the kind's defaults, and remember which."""
        kind = data.get("kind", "poi") if isinstance(data, dict) else None
        if not isinstance(kind, str) or kind not in DEFAULTS:
            return handler(data)
        usual = {k: v for k, v in DEFAULTS[kind].items() if v is not None and k not in data}
        return handler({**usual, **data}).with_assumed(*usual)

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
        # Without a given size, the grip can only be checked once the stature is known.
        whole = self if self.size else self.sized().model_copy(update={"grip": None})
        whole.held()
        return self

    @property
    def size(self) -> float | None:
        """Tether, length or diameter, whichever the kind has [m]; None if not given."""
        return self.tether or self.length or self.diameter

    def sized(self, stature: float = USUAL_STATURE, *, paired: bool = False) -> "PropRecord":
        """The same prop, with the usual size of its kind if the file gives none.

        Parameters
        ----------
        stature : float
            Of the performer who holds it [m].
        paired : bool
            Whether the other hand holds one of the same kind.

        Notes
        -----
        Source: common practice, rounded to the centimetre. A pair of staffs is short enough to clear the
        body, a pair of hoops to clear each other.
        """
        if self.size is not None:
            return self
        usual = {
            "poi": ("tether", TETHER_SHARE * stature),
            "rope dart": ("tether", ROPE_SHARE * stature),
            "staff": ("length", (PAIRED_STAFF_SHARE if paired else STAFF_SHARE) * stature),
            "hoop": ("diameter", PAIRED_HOOP if paired else HOOP),
        }
        name, metres = usual[self.kind]  # sizes of clubs and fans come from `DEFAULTS`
        sized = self.model_copy(update={name: round(metres, 2)})
        return sized.with_assumed(name, *self._assumed)

    def with_assumed(self, *keys: str) -> Self:
        """The same record, which remembers that some keys were filled in."""
        self._assumed = keys
        return self

    @property
    def assumed(self) -> tuple[str, ...]:
        """Keys that the file does not give, filled in with what is usual: nobody measured them."""
        return self._assumed

    def held(self, flame_reach: float = 0.0) -> Prop:
        """The prop as used by the laws; a size not given is taken for a stature of 1.70 m.

        Parameters
        ----------
        flame_reach : float
            Length of a moving wick's flame beyond the wick [m].

        Raises
        ------
        ValueError
            If its sizes are inconsistent.
        """
        if self.size is None:
            return self.sized().held(flame_reach)
        flexible = self.tether is not None
        length, behind = self.size, 0.0
        if self.grip is not None and self.grip >= length:
            raise ValueError(
                f"the grip is {self.grip:g} m from the rear end, but the length is only {length:g} m"
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
        """Number of wicks."""
        return len(self.held().heads)

    @property
    def fuel(self) -> float | None:
        """Fuel in all its wicks [kg]; None if not weighed."""
        return None if self.fuel_mass is None else self.fuel_mass * self.wick_count


def usual_prop(kind: PropKind, *, stature: float = USUAL_STATURE, paired: bool = False) -> Prop:
    """A prop of a kind with its usual sizes (common practice).

    Parameters
    ----------
    kind : str
    stature : float
        Of the performer who holds it [m].
    paired : bool
        Whether the other hand holds one of the same kind.
    """
    return PropRecord(kind=kind).sized(stature, paired=paired).held()
