"""Props as used by the motion laws: shapes that hang from, or are held in, one hand.

Everything lies in the prop's plane: a point of a prop is (along, across), in metres from the hand
along the law's direction d and along w = n × d. A tethered prop (poi, rope dart) is a head on a taut,
massless line; a rigid one (staff, club, fan, hoop) is turned by the hand.

For distances to others every prop is enclosed in three bodies that depend only on d, so no rate of the
plane is needed and everything stays proven: a capsule on the axis (the shaft), a ball at its far end that
encloses every wick there, and a ball at its rear end. A fan's ball is as wide as the fan, a hoop's as the
hoop: conservative across the plane, in which the real prop is flat. Clearance from the performer's body and
between the two props is checked with the true shape (`solids`).
Source: sizes are common practice; the enclosing balls are plane geometry, stated at `Prop.ball`.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from sequencer.arrays import Floats, as_number, as_whole, crossed
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion

PropKind: TypeAlias = Literal["poi", "rope dart", "staff", "club", "fan", "hoop"]
PROP_KINDS: tuple[PropKind, ...] = ("poi", "rope dart", "staff", "club", "fan", "hoop")
# Number of hands that usually hold one each; a staff is danced singly or as a pair; common practice.
USUAL_HANDS: Mapping[PropKind, tuple[int, ...]] = {
    "poi": (2,), "rope dart": (1,), "staff": (1, 2), "club": (2,), "fan": (2,), "hoop": (2,),
}  # fmt: skip

TETHER_RADIUS = 0.01  # [m] half the thickness of a chain or leash; common practice
SHAFT_RADIUS = {"poi": TETHER_RADIUS, "rope dart": TETHER_RADIUS, "staff": 0.015, "club": 0.025,
                "fan": TETHER_RADIUS, "hoop": 0.012}  # [m] half the thickness; common practice  # fmt: skip
CHORDS = 24  # chords that approximate a hoop's rim
_UNITS = {
    "length": "m", "mass": "kg", "wick_radius": "m", "flame_reach": "m", "behind": "m",
    "spread": "rad", "head_mass": "kg",
}  # fmt: skip


class PropPoint(NamedTuple):
    """A point of a prop, relative to the hand [m]."""

    along: float
    across: float = 0.0

    @property
    def off(self) -> float:
        """Distance from the hand [m]."""
        return math.hypot(self.along, self.across)


class Solid(NamedTuple):
    """All points of a prop within `radius` [m] of a segment."""

    name: str
    start: PropPoint
    end: PropPoint
    radius: float


@dataclass(frozen=True, kw_only=True)
class Prop:
    """A prop in one hand; values at rest.

    Parameters
    ----------
    length : float
        Hand to the farthest wick [m]: the tether, the longer arm of a staff, a fan's spokes, a hoop's
        diameter.
    mass : float
        Mass of the head of a tethered prop, or of the whole rigid prop [kg].
    wick_radius, flame_reach : float
        Radius of each wick, and length of flame beyond it [m].
    kind : str
    behind : float
        Hand to the rear end [m], for a staff or club.
    wicks : int
        Number of wicks of a fan or hoop.
    spread : float
        Angle between a fan's outer spokes [rad].
    head_mass : float
        Of each head of a rigid prop, a part of `mass` [kg].
    """

    length: float
    mass: float
    wick_radius: float
    flame_reach: float = 0.0
    kind: PropKind = "poi"
    behind: float = 0.0
    wicks: int = 1
    spread: float = 0.0
    head_mass: float = 0.0

    def __post_init__(self) -> None:
        for name, unit in _UNITS.items():
            as_number(name, getattr(self, name), unit)
        as_whole("wicks", self.wicks)
        for name in ("length", "mass", "wick_radius"):
            value = getattr(self, name)
            if not (value > 0 and math.isfinite(value)):  # also catches nan
                raise ValueError(f"{name} must be positive, got {value!r}")
        for name in ("flame_reach", "behind", "head_mass"):
            value = getattr(self, name)
            if not (value >= 0 and math.isfinite(value)):
                raise ValueError(f"{name} must not be negative, got {value!r}")
        self._check_kind()

    def _check_kind(self) -> None:
        if self.kind not in PROP_KINDS:
            raise ValueError(f"kind must be one of {', '.join(PROP_KINDS)}, got {self.kind!r}")
        if self.behind and self.kind not in ("staff", "club"):
            raise ValueError(f"a {self.kind} has nothing behind the hand, got {self.behind!r}")
        if self.wicks != 1 and self.kind not in ("fan", "hoop"):
            raise ValueError(f"a {self.kind} has one wick at each end, got {self.wicks!r}")
        if not 1 <= self.wicks <= 24:
            raise ValueError(f"wicks must be 1 to 24, got {self.wicks!r}")
        most = math.pi if self.kind == "fan" else 0.0
        if not 0 <= self.spread <= most:
            raise ValueError(f"spread must be 0 to {most:.2f} rad, got {self.spread!r}")
        if self.head_mass * len(self.heads) > self.mass:
            raise ValueError(f"the heads weigh more than the {self.kind} as a whole")

    @property
    def flexible(self) -> bool:
        """Whether the head is held by a line, which can only pull."""
        return self.kind in ("poi", "rope dart")

    @property
    def hot_radius(self) -> float:
        """Radius of the ball about a wick that must stay clear [m]."""
        return self.wick_radius + self.flame_reach

    @property
    def shaft_radius(self) -> float:
        """Radius of the capsule on the axis [m]; for a narrow fan it encloses all spokes."""
        if self.kind == "fan" and self.spread < math.pi / 2:
            return self.ball[1] + SHAFT_RADIUS["fan"]
        return SHAFT_RADIUS[self.kind]

    @cached_property
    def heads(self) -> tuple[PropPoint, ...]:
        """Centres of the wicks, the farthest along first."""
        if self.kind == "staff":
            return (PropPoint(self.length), PropPoint(-self.behind))
        if self.kind == "fan":
            share = (
                [k / (self.wicks - 1) - 0.5 for k in range(self.wicks)] if self.wicks > 1 else [0.0]
            )
            spots = [
                PropPoint(
                    self.length * math.cos(s * self.spread), self.length * math.sin(s * self.spread)
                )
                for s in share
            ]
            return tuple(sorted(spots, key=lambda spot: (-round(spot.along, 12), spot.across)))
        if self.kind == "hoop":
            # Evenly round the rim, the hand between two wicks.
            first = 0.0 if self.wicks % 2 else math.pi / self.wicks
            turns = [first + 2 * math.pi * k / self.wicks for k in range(self.wicks)]
            radius = self.length / 2
            spots = [PropPoint(radius + radius * math.cos(t), radius * math.sin(t)) for t in turns]
            return tuple(sorted(spots, key=lambda spot: (-round(spot.along, 12), spot.across)))
        return (PropPoint(self.length),)

    @cached_property
    def ball(self) -> tuple[float, float]:
        """Position along the axis and radius [m] of a ball that encloses the wicks' centres at the far end.

        Notes
        -----
        A fan's wicks lie on an arc of radius ρ over ±A, A ≤ 90°: from (ρ cos A, 0) one at angle α is at
        ρ√(1 − 2 cos α cos A + cos²A), largest at α = A, where it is ρ sin A. For a hoop it is the hoop's
        circle.
        """
        if self.kind == "fan" and self.wicks > 1:
            half = self.spread / 2
            return self.length * math.cos(half), self.length * math.sin(half)
        if self.kind == "hoop":
            return self.length / 2, self.length / 2
        return self.length, 0.0

    @property
    def cold_radius(self) -> float:
        """Radius of the ball at the far end, unlit [m]."""
        girth = self.ball[1]
        return girth + (
            max(self.wick_radius, SHAFT_RADIUS[self.kind]) if girth else self.wick_radius
        )

    @property
    def burning_radius(self) -> float:
        """Radius of the ball at the far end, lit [m]."""
        return max(self.cold_radius, self.ball[1] + self.hot_radius)

    @property
    def two_ended(self) -> bool:
        """Whether the prop extends behind the hand."""
        return self.behind > 0

    @property
    def burns_behind(self) -> bool:
        """Whether there is a wick at the rear end."""
        return self.kind == "staff"

    @property
    def farthest(self) -> float:
        """Hand to the farthest wick's centre or end [m]."""
        return max(self.length, self.behind)

    def fastest(self, bounds: Bounds) -> float:
        """Bound on the speed of its wicks [m/beat].

        Notes
        -----
        |h'| + |a||d'| on the axis; off it the rate of the whole frame is needed, and if that is not proven,
        only wicks on the axis are covered.
        """
        most = 0.0
        for spot in self.heads:
            turn = bounds.turn_rate
            if spot.across and math.isfinite(bounds.frame_rate):
                turn = bounds.frame_rate
            most = max(most, spot.off * turn)
        return bounds.hand_speed + most

    def fastest_each(self, bounds: Sequence[Bounds]) -> Floats:
        """The same of n bounds at once, shape (n,) [m/beat], to the last digit."""
        numbers = [(each.hand_speed, each.turn_rate, each.frame_rate) for each in bounds]
        hand, turn, frame = np.array(numbers).reshape(-1, 3).T
        whole = np.where(np.isfinite(frame), frame, turn)
        most = np.zeros(len(numbers))
        for spot in self.heads:
            np.maximum(most, spot.off * (whole if spot.across else turn), out=most)
        return np.asarray(hand + most)

    @property
    def centre_of_mass(self) -> float:
        """Centre of mass along the axis, from the hand [m].

        Notes
        -----
        Tethered: the head. Rigid: the frame's mass spread evenly over its rods, its spokes or its rim,
        and the heads.
        """
        if self.flexible:
            return self.length
        frame = self.mass - self.head_mass * len(self.heads)
        own = {"staff": (self.length - self.behind) / 2, "club": (self.length - self.behind) / 2,
               "hoop": self.length / 2}.get(self.kind)  # fmt: skip
        if own is None:
            own = sum(spot.along for spot in self.heads) / len(self.heads) / 2
        heads = self.head_mass * sum(spot.along for spot in self.heads)
        return (frame * own + heads) / self.mass

    @property
    def inertia(self) -> float:
        """Moment of inertia about the hand and the plane's normal [kg·m²].

        Notes
        -----
        Rod about a point on it (a³ + b³)/(3(a + b)), ring about its rim 2mR², each with its heads as
        points (any mechanics text).
        """
        heads = self.head_mass * sum(spot.off**2 for spot in self.heads)
        frame = self.mass - self.head_mass * len(self.heads)
        if self.flexible:
            return self.mass * self.length**2
        if self.kind == "hoop":
            return frame * 2 * (self.length / 2) ** 2 + heads
        if self.kind == "fan":
            return frame * self.length**2 / 3 + heads
        rod = (self.length**3 + self.behind**3) / (3 * (self.length + self.behind))
        return frame * rod + heads

    @cached_property
    def solids(self) -> tuple[Solid, ...]:
        """The true shape, unlit, as capsules and balls; frame first, then wicks."""
        hand, frame = PropPoint(0.0), []
        radius = SHAFT_RADIUS[self.kind]
        if self.kind == "fan":
            frame = [Solid("fan", hand, spot, radius) for spot in self.heads]
        elif self.kind == "hoop":
            # A chord deviates from its arc by at most R(1 − cos(π/CHORDS)).
            rim = self.length / 2
            points = [
                PropPoint(rim - rim * math.cos(t), rim * math.sin(t))
                for t in (2 * math.pi * k / CHORDS for k in range(CHORDS + 1))
            ]
            wide = radius + rim * (1 - math.cos(math.pi / CHORDS))
            frame = [Solid("hoop", a, b, wide) for a, b in pairwise(points)]
        else:
            name = {"poi": "tether", "rope dart": "rope"}.get(self.kind, self.kind)
            frame = [Solid(name, PropPoint(-self.behind), PropPoint(self.length), radius)]
        wicks = [Solid("head", spot, spot, self.wick_radius) for spot in self.heads]
        return (*frame, *wicks)

    @cached_property
    def envelope(self) -> tuple[Solid, ...]:
        """Bodies on the axis that enclose all solids, used for distances to others."""
        end = PropPoint(self.ball[0])
        name = self.solids[0].name
        out = [
            Solid(name, PropPoint(-self.behind), end, self.shaft_radius),
            Solid("head", end, end, self.cold_radius),
        ]
        if self.burns_behind:
            out.append(
                Solid("head", PropPoint(-self.behind), PropPoint(-self.behind), self.wick_radius)
            )
        return tuple(out)


def placed(solids: Sequence[Solid], motion: Motion) -> list[tuple[Floats, Floats]]:
    """Both ends of every body of a prop.

    Parameters
    ----------
    solids : sequence of Solid
    motion : Motion
        Arrays of shape (..., 3) [body frame].

    Returns
    -------
    ends : list of (start, end), each ndarray, shape (..., 3) [m, body frame]

    Notes
    -----
    Source: module docstring. Exact.
    """
    wide = any(spot.across for solid in solids for spot in (solid.start, solid.end))
    aside = crossed(motion.plane, motion.tether) if wide else motion.plane

    def put(spot: PropPoint) -> Floats:
        along = motion.hand if spot.along == 0 else motion.hand + spot.along * motion.tether
        return along if spot.across == 0 else np.asarray(along + spot.across * aside)

    return [(put(solid.start), put(solid.end)) for solid in solids]
