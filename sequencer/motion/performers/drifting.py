"""A dancer with human error: position, facing, timing, tempo, tether and hands drawn at random.

Each error is a change to the dancer's records, so everything proven for the plan is also proven for the
drawn dancer. Somebody is as unsure of where they are on a walk as at its ends (`performers.walks`), and dances and
walks by one and the same count. Body frame and stage frame [m], beats.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, replace

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.laws.bound_table import BoundTable, bound_table
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop

_WIDEST = math.nextafter(10.0, 0.0)  # [m, rad, beats] of any spread
_LOOSEST_TEMPO = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Standard deviations of people's deviations from the plan.

    No published figures for fire spinners were found: the defaults are this tool's estimates (common
    practice), and a rehearsal filmed from above gives better values.
    """

    place: float = 0.15  # [m] of every position held, in each of X and Y
    facing: float = math.radians(8.6)  # [rad] of every facing held
    timing: float = 0.10  # [beats] constant lead or lag over the whole show
    tempo: float = 0.001  # [1] of the tempo: 0.1 % is a beat in a thousand
    tether: float = 0.01  # [m]
    hand: float = 0.05  # [m] of the hand's path, in each of x, y and z

    def __post_init__(self) -> None:
        for name in ERROR_KINDS:
            value = getattr(self, name)
            if not 0 <= value <= _WIDEST:  # also catches nan
                raise ValueError(f"{name} must be 0 to 10, got {value!r}")
        if self.tempo > _LOOSEST_TEMPO:
            raise ValueError(f"tempo must be at most {_LOOSEST_TEMPO}, got {self.tempo!r}")

    def only(self, kind: str) -> "Spread":
        """Spread with only one kind of error."""
        return replace(self, **{name: 0.0 for name in ERROR_KINDS if name != kind})

    def without(self, kind: str) -> "Spread":
        """Spread with every kind of error but one."""
        return replace(self, **{kind: 0.0})

    def times(self, factor: float) -> "Spread":
        """Every kind of error so many times as wide, as far as a spread can be."""
        wider = {name: min(factor * getattr(self, name), _WIDEST) for name in ERROR_KINDS}
        wider["tempo"] = min(wider["tempo"], _LOOSEST_TEMPO)
        return Spread(**wider)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredSpread:
    """How far one performer strays by a log of rehearsals; None or nan where nothing was measured."""

    place: float | None = None  # [m] root mean square about the plan, in each of X and Y
    timing: float | None = None  # [beats] root mean square about the plan


ERROR_KINDS = ("place", "facing", "timing", "tempo", "tether", "hand")
assert tuple(field.name for field in fields(Spread)) == ERROR_KINDS  # noqa: S101 - of the two lines above


@dataclass(frozen=True, slots=True, eq=False)
class DriftedTrajectory:
    """A trajectory with a time lag, a different tempo and a shifted hand."""

    trajectory: PropTrajectory
    late: float  # [beats] at the middle
    middle: float  # [beats] at which the tempo error vanishes
    stretch: float  # [1] of the tempo, near 1
    aside: tuple[float, float, float]  # [m, body frame]

    def at(self, beats: Floats) -> Motion:
        """State at show beats."""
        s = self.stretch
        planned = self.trajectory.at(self.planned_beats(np.asarray(beats, dtype=np.float64)))
        return Motion(
            hand=planned.hand + np.array(self.aside),
            hand_rate=planned.hand_rate * s,
            hand_acceleration=planned.hand_acceleration * (s * s),
            tether=planned.tether,
            tether_rate=planned.tether_rate * s,
            tether_acceleration=planned.tether_acceleration * (s * s),
            plane=planned.plane,
        )

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces of [start, end]."""
        s = self.stretch
        out = []
        for low, high, own in self.trajectory.pieces(
            float(self.planned_beats(np.array(start))), float(self.planned_beats(np.array(end)))
        ):
            out.append(
                (
                    (low - self.middle) / s + self.middle + self.late,
                    (high - self.middle) / s + self.middle + self.late,
                    Bounds(
                        hand_speed=own.hand_speed * s,
                        hand_acceleration=own.hand_acceleration * s * s,
                        turn_rate=own.turn_rate * s,
                        turn_acceleration=own.turn_acceleration * s * s,
                        hand_reach=own.hand_reach + math.hypot(*self.aside[:2]),
                        frame_rate=own.frame_rate * s,
                    ),
                )
            )
        # Rounding must not open a gap at the ends.
        first, last = out[0], out[-1]
        out[0] = (start, first[1], first[2])
        out[-1] = (out[-1][0], end, last[2])
        return tuple(out)

    def bound_table(self, start: float, end: float) -> BoundTable:
        """As `pieces`, as arrays."""
        s = self.stretch
        own = bound_table(
            self.trajectory,
            float(self.planned_beats(np.array(start))),
            float(self.planned_beats(np.array(end))),
        )
        starts, ends = (
            (each - self.middle) / s + self.middle + self.late for each in (own.starts, own.ends)
        )
        # Rounding must not open a gap at the ends.
        starts[0], ends[-1] = start, end
        reach, speed, acceleration, turn, turn_change = own.bounds
        aside = math.hypot(*self.aside[:2])
        bounds = np.stack(
            [reach + aside, speed * s, acceleration * s * s, turn * s, turn_change * s * s]
        )
        return BoundTable(starts, ends, bounds)

    def planned_beats(self, beats: Floats) -> Floats:
        """Beats of the plan that are danced at show beats."""
        return np.asarray(self.middle + (beats - self.late - self.middle) * self.stretch)


def later(
    deviation: Mapping[Side, tuple[HandDeviation, ...]],
    beats: float,
    middle: float = 0.0,
    stretch: float = 1.0,
) -> dict[Side, tuple[HandDeviation, ...]]:
    """The same hand deviation, delayed and at another tempo, matching `DriftedTrajectory`."""
    return {
        side: tuple(
            HandDeviation(
                (each.start - middle) / stretch + middle + beats,
                (each.end - middle) / stretch + middle + beats,
                each.size,
            )
            for each in own
        )
        for side, own in deviation.items()
    }


def drifted(dancer: Dancer, spread: Spread, draw: np.random.Generator, middle: float) -> Dancer:
    """One random draw of a dancer.

    Parameters
    ----------
    dancer : Dancer
    spread : Spread
    draw : numpy.random.Generator
        Uses the same random numbers whatever the spread, so that kinds of error can be compared.
    middle : float
        Beat at which a tempo error has no effect [beats].
    """
    n = len(dancer.floor.moves) + 1
    places = draw.normal(size=(n, 2)) * spread.place
    facings = draw.normal(size=n) * spread.facing
    late = float(draw.normal()) * spread.timing
    stretch = 1.0 + float(np.clip(draw.normal(), -4, 4)) * spread.tempo
    trajectories: dict[Side, PropTrajectory] = {}
    props: dict[Side, Prop] = {}
    for side in SIDES:
        longer, aside = float(draw.normal()), draw.normal(size=3) * spread.hand
        if side not in dancer.props:
            continue
        prop = dancer.props[side]
        # A rigid prop keeps its length.
        length = max(prop.length + longer * spread.tether, 0.5 * prop.length)
        props[side] = replace(prop, length=length) if prop.flexible else prop
        trajectories[side] = DriftedTrajectory(
            dancer.trajectories[side],
            late,
            middle,
            stretch,
            (float(aside[0]), float(aside[1]), float(aside[2])),
        )
    return replace(
        dancer,
        props=props,
        trajectories=trajectories,
        floor=_walked(
            dancer.floor, places, facings, lambda beat: (beat - middle) / stretch + middle + late
        ),
        lit=dancer.lit,
        deviation=later(dancer.deviation, late, middle, stretch),
    )


def _walked(
    floor: WalkPath,
    places: Floats,
    facings: Floats,
    when: Callable[[float], float],
) -> WalkPath:
    """The same walks at their own time, each place held off by a vector of its own."""
    strays = [
        (float(x), float(y), float(turn)) for (x, y), turn in zip(places, facings, strict=True)
    ]
    return replace(
        floor,
        moves=tuple(
            replace(move, start=when(move.start), end=when(move.end)) for move in floor.moves
        ),
        off=tuple((when(start), when(end)) for start, end in floor.off),
        strays=tuple(strays),
    )
