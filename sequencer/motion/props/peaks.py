"""Largest speed, pull, twist and flight along a law, as printed on cards, proven to about one per cent.

With h the hand, d the tether, n the plane, λ the tempo in beats a second and g = (0, 0, −9.80665) m/s²:

    hand            λ|h'|                          changes at most at λ·|h''|
    a wick          λ|h' + a·d' + c·(n × d)'|      at λ·(|h''| + |a||d''|), beside the axis λ·(|h''| + ρ|u''|)
    pull            m|λ²(h'' + r·d'') − g|         at m·λ²(|h'''| + r|d'''|), r to the centre of mass
    twist           |d × (λ²(I·d'' + m·r·h'') − m·r·g)|
                    at λ²(I(|d'||d''| + |d'''|) + m·r(|d'||h''| + |h'''|)) + m·r·|g||d'|
    flight          v_xy·(v_z + √(v_z² + 2|g|z))/|g|, at the rates of v and z times its own slopes

all derivatives per beat, ρ the distance of a wick from the hand and |u''| a bound for every unit vector
fixed to the prop. Pull is the tension of a passive tether if the head follows its nominal path: the tether
then lies along the force. Each is searched by branch and bound over the span (geometry/certified.py), so no
moment is missed.
The velocity of a wick off the axis is a difference over 2·10⁻⁶ beats, its error included in the bound.
Frame: body frame [m]; motion along the walking path is not included.
Source: Newton's and Euler's laws, any mechanics text; docs/motion.md, section 6.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import inf, isfinite, sqrt
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.certified import Sample, search
from sequencer.motion.laws.law import Bounds, Law
from sequencer.motion.props.prop import Prop, PropPoint
from sequencer.motion.props.tension import GRAVITY, farthest_flight

SHARE = 0.005  # relative error of a largest value
_GRID = 512  # samples that estimate its size before the search
_STEP = 1e-6  # [beats] half the difference step for a wick off the axis
OFF_GROUND = 0.10  # [m] lower wicks are treated as at this height: the range's slope with height would be unlimited
LEAST = {
    "speed": 0.01,
    "pull": 0.1,
    "twist": 0.05,
    "flight": 0.05,
}  # [m/s, N, N·m, m] minimum absolute errors

Values = Callable[[Floats], Floats]


class Sought(NamedTuple):
    """A function of time and its bounds."""

    value: Values  # function of beats
    slope: float  # [value/beat] proven bound on its derivative; not finite if nothing is proven
    coarse: float  # proven bound on the value itself, without a search
    kind: str  # a key of LEAST
    error: float = 0.0  # rounding error of the values


SoughtOn = Callable[[Law, Prop, float, Bounds | None], Sought]


@dataclass(frozen=True, slots=True, kw_only=True)
class Peak:
    """Largest value over a span; if a search is impossible, only its bound."""

    found: float  # attained at some moment
    most: float  # proven: never larger than this
    at: float  # [beats]; nan if only the bound is known

    @property
    def known(self) -> bool:
        """Whether the value itself is known, not just a bound."""
        return isfinite(self.at)


def fastest_hand(law: Law, *, beats_per_second: float, start: float, end: float) -> Peak:
    """Largest speed of the hand [m/s].

    Parameters
    ----------
    law : Law
    beats_per_second : float
        Tempo [beats/s].
    start, end : float
        Span in the law's beats.
    """
    return _peak(hand_speed(law, beats_per_second), start, end)


def fastest_wick(
    law: Law, *, prop: Prop, beats_per_second: float, start: float, end: float
) -> Peak:
    """Largest speed of any wick [m/s].

    Parameters
    ----------
    law : Law
    prop : Prop
    beats_per_second : float
        Tempo [beats/s].
    start, end : float
        Span in the law's beats.
    """
    return _peak(wick_speed(law, prop, beats_per_second), start, end)


def hardest_pull(
    law: Law, *, prop: Prop, beats_per_second: float, start: float, end: float
) -> Peak:
    """Largest force between hand and prop [N]; for a tethered prop, its tension in flight.

    Parameters
    ----------
    law : Law
    prop : Prop
    beats_per_second : float
        Tempo [beats/s].
    start, end : float
        Span in the law's beats.
    """
    return _peak(pulling(law, prop, beats_per_second), start, end)


def hardest_twist(
    law: Law, *, prop: Prop, beats_per_second: float, start: float, end: float
) -> Peak:
    """Largest torque of the hand on a rigid prop [N·m], except about the prop's own axis.

    Parameters
    ----------
    law : Law
    prop : Prop
    beats_per_second : float
        Tempo [beats/s].
    start, end : float
        Span in the law's beats.
    """
    return _peak(twisting(law, prop, beats_per_second), start, end)


def farthest_let_go(
    law: Law, *, prop: Prop, beats_per_second: float, start: float, end: float
) -> Peak:
    """Largest flight distance of a wick over level ground if it comes off at the worst moment [m], without drag.

    Parameters
    ----------
    law : Law
    prop : Prop
    beats_per_second : float
        Tempo [beats/s].
    start, end : float
        Span in the law's beats.

    Notes
    -----
    Source: module docstring. Wicks below 10 cm are treated as at 10 cm, which errs on the far side. Slopes:
    with v the highest speed and T = (v + √(v² + 2gz))/g the longest flight, T by v_xy, 2v/g by v_z,
    v/√(2gz) by z.
    """
    return _peak(flying(law, prop, beats_per_second, start, end), start, end)


def hand_speed(law: Law, beats_per_second: float) -> Sought:
    """Speed of the hand [m/s]."""
    bounds = law.bounds()

    def speed(t: Floats) -> Floats:
        return np.asarray(beats_per_second * np.linalg.norm(law.at(t).hand_rate, axis=-1))

    return Sought(
        speed,
        beats_per_second * bounds.hand_acceleration,
        beats_per_second * bounds.hand_speed,
        "speed",
    )


def wick_speed(
    law: Law, prop: Prop, beats_per_second: float, bounds: Bounds | None = None
) -> Sought:
    """Speed of the fastest wick [m/s]; `bounds` are those of a part of the law, if only that is looked at."""
    bounds = bounds or law.bounds()

    def speed(t: Floats) -> Floats:
        each = [np.linalg.norm(_velocity(law, spot, t), axis=-1) for spot in prop.heads]
        return np.asarray(beats_per_second * np.max(each, axis=0))

    slope = max(_acceleration(bounds, spot) for spot in prop.heads)
    coarse = beats_per_second * prop.fastest(bounds)
    return Sought(
        speed, beats_per_second * slope, coarse, "speed", beats_per_second * _timing(prop, slope)
    )


def pulling(law: Law, prop: Prop, beats_per_second: float, bounds: Bounds | None = None) -> Sought:
    """Force between hand and prop [N]; `bounds` are those of a part of the law, if only that is looked at."""
    bounds = bounds or law.bounds()
    mass, place = prop.mass, prop.centre_of_mass

    def force(t: Floats) -> Floats:
        felt = beats_per_second**2 * law.at(t).head_acceleration(place)
        felt[..., 2] += GRAVITY
        return np.asarray(mass * np.linalg.norm(felt, axis=-1))

    slope = mass * beats_per_second**2 * (bounds.hand_jerk + abs(place) * bounds.turn_jerk)
    coarse = mass * (beats_per_second**2 * bounds.head_acceleration(abs(place)) + GRAVITY)
    return Sought(force, slope, coarse, "pull")


def twisting(law: Law, prop: Prop, beats_per_second: float, bounds: Bounds | None = None) -> Sought:
    """Torque of the hand on a rigid prop [N·m]; `bounds` are those of a part of the law, if only that is looked at."""
    bounds, inertia = bounds or law.bounds(), prop.inertia
    carried = prop.mass * prop.centre_of_mass
    size = abs(carried)

    def torque(t: Floats) -> Floats:
        motion = law.at(t)
        driven = beats_per_second**2 * (
            inertia * motion.tether_acceleration + carried * motion.hand_acceleration
        )
        driven[..., 2] += carried * GRAVITY
        return np.asarray(np.linalg.norm(np.cross(motion.tether, driven), axis=-1))

    turn, acceleration = bounds.turn_rate, bounds.turn_acceleration
    slope = size * GRAVITY * turn + beats_per_second**2 * (
        inertia * (turn * acceleration + bounds.turn_jerk)
        + size * (turn * bounds.hand_acceleration + bounds.hand_jerk)
    )
    coarse = (
        beats_per_second**2 * (inertia * acceleration + size * bounds.hand_acceleration)
        + size * GRAVITY
    )
    return Sought(torque, slope, coarse, "twist")


def flying(law: Law, prop: Prop, beats_per_second: float, start: float, end: float) -> Sought:
    """Range of the wick that flies farthest, released at each moment [m]."""
    bounds = law.bounds()
    acceleration = max(_acceleration(bounds, spot) for spot in prop.heads)
    fastest = beats_per_second * prop.fastest(bounds)
    beats = start + (end - start) * np.arange(_GRID + 1, dtype=np.float64) / _GRID
    reach = fastest / beats_per_second * (end - start) / _GRID / 2
    highest = max(float(_place(law, spot, beats)[..., 2].max()) for spot in prop.heads) + reach

    def flight(t: Floats) -> Floats:
        most = np.zeros(t.shape)
        for spot in prop.heads:
            velocity = beats_per_second * _velocity(law, spot, t)
            height = np.maximum(_place(law, spot, t)[..., 2], OFF_GROUND)
            rise = velocity[..., 2]
            aloft = (rise + np.sqrt(rise**2 + 2 * GRAVITY * height)) / GRAVITY
            most = np.maximum(most, np.linalg.norm(velocity[..., :2], axis=-1) * aloft)
        return most

    aloft = (fastest + sqrt(fastest**2 + 2 * GRAVITY * max(highest, OFF_GROUND))) / GRAVITY
    by_speed = aloft + 2 * fastest / GRAVITY
    by_height = fastest / sqrt(2 * GRAVITY * OFF_GROUND)
    slope = by_speed * beats_per_second * acceleration + by_height * fastest / beats_per_second
    coarse = farthest_flight(fastest, max(highest, OFF_GROUND))
    return Sought(
        flight, slope, coarse, "flight", by_speed * beats_per_second * _timing(prop, acceleration)
    )


def peak_beyond(
    sought: SoughtOn,
    law: Law,
    pieces: Sequence[tuple[float, float, Bounds]],
    *,
    prop: Prop,
    beats_per_second: float,
    most: float,
    share: float,
) -> float | None:
    """The largest value over pieces of a law, where it is beyond a limit.

    Parameters
    ----------
    sought : callable
        `wick_speed`, `pulling` or `twisting`.
    law : Law
    pieces : sequence of (start, end, bounds)
        That follow each other, each with proven bounds of its own [the law's beats].
    prop : Prop
    beats_per_second : float
        Tempo [beats/s].
    most : float
        The limit [unit of the value].
    share : float
        Of the limit, or of the largest value if that is more, by which the value may be too small [1].

    Returns
    -------
    value : float or None
        Attained at some moment; a bound where no slope is bounded or the values themselves are too inexact. None if no value
        is beyond the limit by more than twice its share, which is proven.

    Notes
    -----
    Source: branch and bound with the slope of each piece (geometry/certified.py).
    """
    asked = [sought(law, prop, beats_per_second, bounds) for *_, bounds in pieces]
    over = [k for k, own in enumerate(asked) if own.coarse > most]
    if not over:
        return None
    if not all(isfinite(asked[k].slope) for k in over):
        return max(own.coarse for own in asked)
    value, error = asked[0].value, max(asked[k].error for k in over)
    slopes = np.array([asked[k].slope for k in over])
    low, high = (np.array([pieces[k][end] for k in over]) for end in (0, 1))
    seen = float(np.max(value(np.concatenate((low, (low + high) / 2, high)))))

    def evaluate(rows: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        here, lost = -value(t), slopes[rows] * half + error
        return Sample(here, here - lost, here + lost, np.zeros(t.shape, np.int64))

    found = search(
        evaluate, group=np.zeros(len(over), np.int64), start=low, end=high, required=np.array([-np.inf]),
        best=np.array([-most]), tolerance=max(share * max(most, seen), 4 * error),
    )  # fmt: skip
    if isfinite(found.at[0]):
        return -float(found.value[0])
    bound = -float(found.lower[0])
    return bound if bound > most * (1 + 2 * share) else None  # too inexact to tell


def _acceleration(bounds: Bounds, spot: PropPoint) -> float:
    """Bound on a wick's acceleration [m/beat²]."""
    turn = bounds.frame_acceleration if spot.across else bounds.turn_acceleration
    return bounds.hand_acceleration + spot.off * turn


def _timing(prop: Prop, acceleration: float) -> float:
    """Error of a velocity computed as a difference [m/beat]."""
    return _STEP * acceleration if any(spot.across for spot in prop.heads) else 0.0


def _place(law: Law, spot: PropPoint, beats: Floats) -> Floats:
    motion = law.at(beats)
    place = motion.hand + spot.along * motion.tether
    if spot.across:
        place = place + spot.across * np.cross(motion.plane, motion.tether)
    return np.asarray(place)


def _velocity(law: Law, spot: PropPoint, beats: Floats) -> Floats:
    """Velocity of a wick, shape (..., 3) [m/beat]; off the axis by differences, since laws do not give the plane's rate."""
    if not spot.across:
        return law.at(beats).head_rate(spot.along)
    later, earlier = (_place(law, spot, beats + step) for step in (_STEP, -_STEP))
    return np.asarray((later - earlier) / (2 * _STEP))


def _peak(sought: Sought, start: float, end: float) -> Peak:
    """Largest value over a span; `coarse` if no bound on its derivative is proven."""
    if not isfinite(sought.slope):
        return Peak(found=-inf, most=sought.coarse, at=float("nan"))
    grid = start + (end - start) * np.arange(_GRID + 1, dtype=np.float64) / _GRID
    tolerance = max(SHARE * float(np.max(sought.value(grid))), LEAST[sought.kind])

    def evaluate(_rows: Ints, t: Floats, half: Floats, _enough: Floats) -> Sample:
        here, lost = -sought.value(t), sought.slope * half
        return Sample(here, here - lost, here + lost, np.zeros(t.shape, np.int64))

    found = search(
        evaluate, group=np.zeros(_GRID, np.int64), start=grid[:-1], end=grid[1:],
        required=np.array([-np.inf]), best=np.array([np.inf]), tolerance=tolerance,
    )  # fmt: skip
    return Peak(
        found=-float(found.value[0]),
        most=min(-float(found.lower[0]) + sought.error, sought.coarse),
        at=float(found.at[0]),
    )
