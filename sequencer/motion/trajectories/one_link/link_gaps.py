"""Gap between a prop and the bodies around it on a link, at a few samples: for selection, not proof.

A prop is a set of rods on rays from the hand; the bodies to keep clear of are capsules with moving ends.
The nearest points of a rod h + s·u and an axis p + t·a follow from dot products of u, a and h − p, which
many hand paths and tether paths share. A hoop's rim is represented by the points where its chords meet.
Frame: body frame [m].
Source: nearest points of segments, `geometry.segments`; nothing is implied between samples.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.small_code import SmallCode, small_code_for
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import PropPoint, Solid, placed

GAP_LOOKS = 257  # samples for the final choice
STRIDE = 8  # every so many samples, one is used for the first choice
RIM_SPARE = 0.01  # [m] by which a rim may be nearer between two of its points
_MANY = 6  # bodies of a prop beyond which the first choice uses fewer of them
_TINY = 1e-12
_AT_ONCE = 2**14  # numbers that are worked on together: more of them leave the fastest memory


class Rod(NamedTuple):
    """Part of a prop: from `low` to `high` on a ray from the hand [m]."""

    along: float  # the ray's direction, along the tether
    across: float  # and across it, in the prop's plane
    low: float
    high: float
    radius: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """Bodies to keep clear of during a link, at its samples; packed, so that links can be cached."""

    starts: bytes  # (bodies, LOOKS, 3) [m, body frame]
    ends: bytes  # the same
    radii: tuple[float, ...]  # [m]

    def arrays(self, stride: int = 1) -> tuple[Floats, Floats, Floats]:
        """Starts, axes (bodies, samples, 3) [m] and radii [m], at every nth sample."""
        low, high = (
            np.frombuffer(part).reshape(len(self.radii), GAP_LOOKS, 3)[:, ::stride]
            for part in (self.starts, self.ends)
        )
        return low, high - low, np.array(self.radii)


def sample_fractions() -> Floats:
    """Fractions of a link at which it is sampled, shape (LOOKS,) [1]."""
    return np.arange(GAP_LOOKS, dtype=np.float64) / (GAP_LOOKS - 1)


def around(
    carriage: Carriage, beats: Floats, other: tuple[Motion, Sequence[Solid]] | None = None
) -> Around:
    """Bodies that a link keeps clear of: the performer's moving body, and the other hand's prop.

    Parameters
    ----------
    carriage : Carriage
    beats : ndarray, shape (GAP_LOOKS,) [show beats]
    other : tuple of Motion and sequence of Solid, optional
        States of the other hand at these beats, arrays of shape (LOOKS, 3), and its prop's bodies.

    Returns
    -------
    around : Around
    """
    low, high = carriage.capsule_ends(beats)
    radii = [capsule.radius for capsule in carriage.body.capsules]
    starts, ends = list(low), list(high)
    if other is not None:
        motion, solids = other
        solids = rough(solids)
        for (start, end), solid in zip(placed(solids, motion), solids, strict=True):
            starts.append(start)
            ends.append(end)
            radii.append(solid.radius)
    return Around(
        starts=np.array(starts).tobytes(), ends=np.array(ends).tobytes(), radii=tuple(radii)
    )


def rough(solids: Sequence[Solid]) -> tuple[Solid, ...]:
    """Fewer bodies for a complex prop: a fan's spokes as thick as their wicks, a hoop of eight chords."""
    if len(solids) <= _MANY:
        return tuple(solids)
    frame = [solid for solid in solids if solid.name != "head"]
    heads = [solid for solid in solids if solid.name == "head"]
    thick = max(solid.radius for solid in solids)
    if frame[0].name == "fan":
        return tuple(Solid("fan", PropPoint(0.0), head.start, head.radius) for head in heads)
    # A chord over an eighth deviates from its arc by at most R(1 − cos(π/8)).
    wide = thick + max(solid.end.along for solid in frame) / 2 * (1 - math.cos(math.pi / 8))
    return tuple(
        Solid(a.name, a.start, b.end, wide) for a, b in zip(frame[::3], frame[2::3], strict=True)
    )


def rods_of(solids: Sequence[Solid]) -> tuple[Rod, ...]:
    """A prop's bodies as rods on rays from the hand."""
    rods = []
    for solid in solids:
        far = max(solid.start, solid.end, key=lambda spot: spot.off)
        along, across = far.along / far.off, far.across / far.off
        aside = solid.start.along * across - solid.start.across * along
        if abs(aside) > _TINY**0.5:
            far, radius = solid.start, solid.radius + RIM_SPARE
            rods.append(Rod(far.along / far.off, far.across / far.off, far.off, far.off, radius))
            continue
        low, high = sorted(
            spot.along * along + spot.across * across for spot in (solid.start, solid.end)
        )
        rods.append(Rod(along, across, low, high, solid.radius))
    return tuple(rods)


def least_gaps(
    hand: Floats,
    tether: Floats,
    wide: Floats,
    rods: Sequence[Rod],
    bodies: tuple[Floats, Floats, Floats],
) -> Floats:
    """Smallest gap between prop and bodies over the samples.

    Parameters
    ----------
    hand, tether, wide : ndarray, shape (..., k, 3) [m and 1, body frame]
        Position of the hand, direction of the tether, and the perpendicular direction in the prop's plane;
        broadcast against each other.
    rods : sequence of Rod
    bodies : tuple of (starts, axes, radii)
        As returned by `Around.arrays`, for k samples [m].

    Returns
    -------
    gaps : ndarray, shape (...) [m]

    Notes
    -----
    Source: module docstring. Exact at the samples.
    """
    starts, axes, radii = bodies
    pairs = max(math.prod(each.shape[:-2]) for each in (hand, tether, wide))
    code = small_code_for(200.0 + 0.1 * pairs * hand.shape[-2] * len(radii) * len(rods))
    if code is not None:
        return _compiled(code, hand, tether, wide, rods, bodies)
    lead = (1,) * (max(hand.ndim, tether.ndim) - 2)
    own = _parts(hand)
    rays = {(rod.along, rod.across): _ray(rod, tether, wide) for rod in rods}  # often one
    along = {way: _dot(ray, own) for way, ray in rays.items()}
    shape = next(iter(along.values())).shape
    least = np.full(shape[:-1], np.inf)
    some = max(1, _AT_ONCE // math.prod(shape))
    for first in range(0, len(radii), some):
        part = slice(first, first + some)
        low, axis = (
            tuple(each.reshape(-1, *lead, shape[-1]) for each in _parts(ends[part]))
            for ends in (starts, axes)
        )
        length = np.maximum(_dot(axis, axis), _TINY)
        away = tuple(a - b for a, b in zip(own, low, strict=True))
        far, foot = _dot(away, away), _dot(away, axis)
        lean = {way: _dot(ray, axis) for way, ray in rays.items()}
        level = {way: along[way] - _dot(ray, low) for way, ray in rays.items()}
        for rod in rods:
            way = rod.along, rod.across
            square = _squares(rod, length, far, foot, lean[way], level[way])
            near = np.sqrt(np.maximum(square.min(axis=-1), 0.0))
            thick = (radii[part] + rod.radius).reshape(-1, *lead)
            least = np.minimum(least, (near - thick).min(axis=0))
    return least


def _compiled(
    code: SmallCode,
    hand: Floats,
    tether: Floats,
    wide: Floats,
    rods: Sequence[Rod],
    bodies: tuple[Floats, Floats, Floats],
) -> Floats:
    """The same by machine code, in every digit."""
    shape = np.broadcast_shapes(hand.shape, tether.shape, wide.shape)
    wholes = len(bodies[2]), shape[-2], 3
    # Where arrays lie is all that the machine code is given: that they are as it reads them is seen to here.
    props = [_rows(each, shape) for each in (hand, tether, wide)]
    around = [_rows(each, wholes) for each in bodies[:2]]
    radii = np.ascontiguousarray(bodies[2], dtype=np.float64)
    least: Floats = np.empty(shape[:-2])
    code.pair_gaps(
        *props, np.array(rods, dtype=np.float64), *around, radii, least,
        math.prod(shape[:-2]), shape[-2], len(radii), len(rods),
    )  # fmt: skip
    return least


def _rows(array: Floats, shape: tuple[int, ...]) -> Floats:
    """An array of a shape, row by row in memory."""
    return np.ascontiguousarray(np.broadcast_to(array, shape), dtype=np.float64)


def _squares(
    rod: Rod, length: Floats, far: Floats, foot: Floats, lean: Floats, level: Floats
) -> Floats:
    """Squared distances of a rod and axes, from their dot products."""
    if rod.low == rod.high:
        place: Floats | float = rod.low
        spot = _between((foot + rod.low * lean) / length, 0.0, 1.0)
    else:
        steep = np.maximum(length - lean * lean, _TINY)
        place = _between((lean * foot - level * length) / steep, rod.low, rod.high)
        spot = _between((foot + place * lean) / length, 0.0, 1.0)
        place = _between(spot * lean - level, rod.low, rod.high)
    square = far + place * (place + 2.0 * level)
    return np.asarray(square + spot * (spot * length - 2.0 * (place * lean + foot)))


def _between(values: Floats, low: float, high: float) -> Floats:
    """Values clipped in place: half the time of `np.clip` on arrays as small as these."""
    np.maximum(values, low, out=values)
    return np.minimum(values, high, out=values)


_Parts = tuple[Floats, ...]  # x, y and z apart: several times quicker than rows of three


def _parts(vectors: Floats) -> _Parts:
    return tuple(np.ascontiguousarray(vectors[..., k]) for k in range(3))


def _ray(rod: Rod, tether: Floats, wide: Floats) -> _Parts:
    if rod.across == 0.0:
        return _parts(tether if rod.along == 1.0 else rod.along * tether)
    return _parts(rod.along * tether + rod.across * wide)


def _dot(a: _Parts, b: _Parts) -> Floats:
    """Dot products, summed in the order of numpy's einsum."""
    return np.asarray(a[0] * b[0] + a[2] * b[2] + a[1] * b[1])
