"""Links: computed bridges from one state to another, and the law of rest.

A link's hand runs on quintics that meet position, velocity and acceleration at both ends
(handpaths.py); its tether on a path of sphere.py that does the same. Of the hand paths and tether paths
that there are, those are taken that stay within the arm's reach and clear of the own body, and among
these the gentlest; that choice looks at samples, but every bound and every later check is proven.
Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.composed import ROUNDING, ComposedLaw, HandPath
from sequencer.motion.handpaths import PARTS, HandPaths, controls, hand_figures, hand_paths
from sequencer.motion.law import Bounds
from sequencer.motion.link_gaps import body_gaps, other_gaps, shape_gap
from sequencer.motion.phases import STEP_RATE, smooth_step
from sequencer.motion.placing import sign_of
from sequencer.motion.rooms import REACH_SLACK, Beside, LinkLimits, Room, tether_figures
from sequencer.motion.sphere import (
    Ends,
    SpherePaths,
    directions,
    polynomial,
    sphere_candidates,
)
from sequencer.motion.state import Motion

STILL = 1e-6  # [1/beat] a tether that turns slower shows no axis of its own
CLEAR = 0.08  # [m] from the own body: a link that keeps it is not made to keep more
NEAR = 0.01  # [m] a gap that may be none between two looks
LOOKS = 65  # samples by which paths are chosen
CHOICES = 12  # gentlest tether paths that are looked at


@dataclass(frozen=True, kw_only=True, eq=False)
class LinkLaw:
    """A bridge of some beats; its polynomials go on outside them."""

    beats: float
    hand: HandPaths  # one path
    frame: Floats  # (3, 3) rows p₁, p₂, pole
    angles: Floats  # (6, 2) [rad] azimuth and elevation
    tilt: tuple[float, float]  # [rad] of the plane about the tether, at the start and at the end

    @property
    def period(self) -> float:
        """A link does not repeat."""
        return float("inf")

    def at(self, beats: Floats) -> Motion:
        """State at own beats, shape (...); exact to rounding."""
        beats = np.asarray(beats, dtype=np.float64)
        x = beats.ravel() / self.beats
        place, speed, push = hand_at(self.hand, self.beats, x)
        span = np.array([self.beats])
        tether, rate, acceleration = (
            part[0] for part in directions(self.frame[None], self.angles[None], x, span)
        )
        alpha, psi = polynomial(self.angles, x)[0].T
        up = np.stack(
            (-np.sin(psi) * np.cos(alpha), -np.sin(psi) * np.sin(alpha), np.cos(psi)), axis=-1
        )
        up = up @ self.frame
        tilt = self.tilt[0] + (self.tilt[1] - self.tilt[0]) * smooth_step(x)[0]
        plane = np.cos(tilt)[:, None] * up + np.sin(tilt)[:, None] * np.cross(tether, up)

        def shaped(part: Floats) -> Floats:
            return np.asarray(part).reshape(*beats.shape, 3)

        return Motion(
            hand=shaped(place),
            hand_rate=shaped(speed),
            hand_acceleration=shaped(push),
            tether=shaped(tether),
            tether_rate=shaped(rate),
            tether_acceleration=shaped(acceleration),
            plane=shaped(plane),
        )

    def bounds(self) -> Bounds:
        """Proven bounds over its own beats: the worst of its parts."""
        return worst(*(bounds for _, _, bounds in self.parts))

    def reach_from(self, point: Floats) -> float:
        """Proven bound of the hand's distance [m] from a point, shape (3,) [m, body frame]."""
        reach = hand_figures(self.hand, np.array([self.beats]), shoulder=point)[0]
        return float(reach[0]) * ROUNDING

    @cached_property
    def parts(self) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on each sixteenth of the link: (start, end, bounds) in own beats."""
        span = np.array([self.beats])
        hand = [self.hand.controls(order, span)[0] for order in range(4)]
        turn, push = (part[0] for part in tether_figures(self.angles[None], span))

        def size(order: int, axes: int = 3) -> Floats:
            norms: Floats = np.linalg.norm(hand[order][..., :axes], axis=-1).max(axis=1)
            return norms * ROUNDING

        # The frame of tether and plane: azimuth and elevation at right angles, and the tilt.
        bend = np.abs(controls(self.angles[None], 1))[0].max(axis=1) / self.beats
        roll = STEP_RATE * abs(self.tilt[1] - self.tilt[0]) / self.beats
        frame = (np.hypot(bend[:, 0], bend[:, 1]) + roll) * ROUNDING
        columns = (
            size(1), size(2), turn * ROUNDING, push * ROUNDING, size(0, 2), size(3), frame
        )  # fmt: skip
        step = self.beats / PARTS
        return tuple(
            (
                k * step,
                (k + 1) * step,
                Bounds(
                    hand_speed=float(columns[0][k]),
                    hand_acceleration=float(columns[1][k]),
                    turn_rate=float(columns[2][k]),
                    turn_acceleration=float(columns[3][k]),
                    hand_reach=float(columns[4][k]),
                    hand_jerk=float(columns[5][k]),
                    frame_rate=float(columns[6][k]),
                ),
            )
            for k in range(PARTS)
        )


def worst(*bounds: Bounds) -> Bounds:
    """Bounds that hold wherever one of the given ones does."""
    return Bounds(
        hand_speed=max(b.hand_speed for b in bounds),
        hand_acceleration=max(b.hand_acceleration for b in bounds),
        turn_rate=max(b.turn_rate for b in bounds),
        turn_acceleration=max(b.turn_acceleration for b in bounds),
        hand_reach=max(b.hand_reach for b in bounds),
        hand_jerk=max(b.hand_jerk for b in bounds),
        frame_rate=max(b.frame_rate for b in bounds),
    )


def axis_of(motion: Motion) -> Floats:
    """Unit turning axis of each state; the law's plane where the tether stands still.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (..., 3) [body frame].

    Returns
    -------
    axis : ndarray, shape (..., 3) [1, body frame]

    Notes
    -----
    Source: docs/motion.md, section 2. Exact.
    """
    axis = motion.turning_axis
    size = np.linalg.norm(axis, axis=-1, keepdims=True)
    return np.asarray(np.where(size > STILL, axis / np.maximum(size, STILL), motion.plane))


def stacked(first: Motion, last: Motion) -> Ends:
    """Ends of n sphere paths from n states to n states."""

    def pair(a: Floats, b: Floats) -> Floats:
        return np.stack((np.atleast_2d(a), np.atleast_2d(b)), axis=1)

    return Ends(
        tether=pair(first.tether, last.tether),
        rate=pair(first.tether_rate, last.tether_rate),
        acceleration=pair(first.tether_acceleration, last.tether_acceleration),
        axis=pair(axis_of(first), axis_of(last)),
    )


def limit_broken(limits: LinkLimits, law: LinkLaw, room: Room) -> str:
    """The limit that a link breaks, in words; empty if it keeps them all."""
    bounds = law.bounds()
    reach, arm = law.reach_from(room.shoulder), room.arm
    if reach > arm + REACH_SLACK:
        return f"the hand would have to reach {reach:.2f} m, the arm is {arm:.2f} m long"
    for what, value, most, unit in (
        ("the hand would move", bounds.hand_speed, limits.hand_speed, "m a beat"),
        ("the prop would turn", bounds.turn_rate / (2 * np.pi), limits.turn_rate / (2 * np.pi), "loops a beat"),
        ("the hand would change its speed by", bounds.hand_acceleration, limits.hand_acceleration, "m a beat each beat"),
        ("the prop would change its turning by", bounds.turn_acceleration, limits.turn_acceleration, "rad a beat each beat"),
    ):  # fmt: skip
        if value > most:
            return f"{what} up to {value:.3g} {unit}, the limit is {most:.3g}"
    return ""


def link(
    first: Motion,
    last: Motion,
    beats: float,
    room: Room | None = None,
    limits: LinkLimits | None = None,
    beside: Beside | None = None,
) -> LinkLaw:
    """The bridge from one state to another.

    Parameters
    ----------
    first, last : Motion
        One state each: arrays of shape (3,) [body frame].
    beats : float
    room : Room, optional
        Reach and body to respect as far as can be; without it the gentlest plain path is taken.
    limits : LinkLimits, optional
        Kept before all else, where they can be.
    beside : Beside, optional
        The other hand's prop, kept clear of like the body; see `beside_of`.

    Returns
    -------
    law : LinkLaw

    Raises
    ------
    ValueError
        If `beats` is not positive, or no path was found (which would take two ends near every pole).
    """
    if not (isfinite(beats) and beats > 0):
        raise ValueError(f"a link's beats must be positive, got {beats!r}")
    return _linked(_packed(first), _packed(last), beats, room, limits, beside)


def looks(start: float, end: float) -> Floats:
    """Beats between two at which a link looks at what it should keep clear of."""
    return start + (end - start) * _looks()


def beside_of(seen: Motion, room: Room) -> Beside:
    """The other hand's prop as a link keeps clear of it.

    Parameters
    ----------
    seen : Motion
        Of the other hand at `looks`: arrays of shape (k, 3) [body frame].
    room : Room
        The other hand's.
    """
    return Beside(hand=seen.hand.tobytes(), tether=seen.tether.tobytes(), room=room)


def _packed(motion: Motion) -> bytes:
    return np.stack(
        (
            motion.hand,
            motion.hand_rate,
            motion.hand_acceleration,
            motion.tether,
            motion.tether_rate,
            motion.tether_acceleration,
            motion.plane,
        )
    ).tobytes()


def _unpacked(packed: bytes) -> Motion:
    parts = np.frombuffer(packed).reshape(7, 3)
    return Motion(
        hand=parts[0],
        hand_rate=parts[1],
        hand_acceleration=parts[2],
        tether=parts[3],
        tether_rate=parts[4],
        tether_acceleration=parts[5],
        plane=parts[6],
    )


@lru_cache(maxsize=4096)
def _linked(
    start_state: bytes,
    end_state: bytes,
    beats: float,
    room: Room | None,
    limits: LinkLimits | None,
    other: Beside | None,
) -> LinkLaw:
    """The link between two packed states; kept, since shows are staged again and again in mending."""
    first, last = _unpacked(start_state), _unpacked(end_state)
    span = np.array([beats])
    ways = [way for way in sphere_candidates(stacked(first, last), span) if isfinite(way.peak[0])]
    if not ways:
        raise ValueError("no path between the two tethers was found")
    start, end = _rows(first), _rows(last)
    if room is None:
        plain = hand_paths(start, end, span, shoulder=np.zeros(3), arm=1.0)[0]
        return _law(plain, min(ways, key=lambda way: float(way.peak[0])), beats, first, last)
    keep = limits or LinkLimits()
    over = {id(way): not keep.keep_turning(way.angles, span)[0] for way in ways}
    ways = sorted(ways, key=lambda way: (over[id(way)], float(way.peak[0])))[:CHOICES]
    hands = hand_paths(start, end, span, shoulder=room.shoulder, arm=room.arm)
    x = _looks()
    tethers = np.stack([directions(w.frames, w.angles, x, span)[0][0] for w in ways])
    best, chosen = (3, 9, np.inf, np.inf), (hands[0], ways[0])
    for hand in hands:
        beyond = int(not keep.keep_moving(hand, span, room)[0])
        if beyond > best[0]:
            continue
        reach, _, push = (
            float(part[0]) for part in hand_figures(hand, span, shoulder=room.shoulder)
        )
        far = 10.0 * max(reach - room.arm, 0.0)
        own = (
            np.array(
                [shape_gap(_law(hand, way, beats, first, last).at(x * beats), room) for way in ways]
            )
            if room.solids
            else body_gaps(hand_at(hand, beats, x)[0], tethers, room)
        )
        gaps = own[None]
        if other is not None:
            gaps = np.stack((own, other_gaps(hand_at(hand, beats, x)[0], tethers, room, other)))
        touching = np.sum(gaps < NEAR, axis=0).tolist()
        shortage = np.sum(np.maximum(CLEAR - gaps, 0.0), axis=0).tolist()
        for way, meets, lack in zip(ways, touching, shortage, strict=True):
            short = round(lack + far, 2)
            gentle = push / keep.hand_acceleration + float(way.peak[0]) / keep.turn_acceleration
            score = (beyond + over[id(way)], meets, short, gentle)
            if score < best:
                best, chosen = score, (hand, way)
    return _law(*chosen, beats, first, last)


def hand_at(paths: HandPaths, beats: float, x: Floats) -> tuple[Floats, Floats, Floats]:
    """The first hand path and its derivatives by beats, at shares of its beats.

    Parameters
    ----------
    paths : HandPaths
    beats : float
    x : ndarray, shape (k,) [1]

    Returns
    -------
    hand, rate, acceleration : ndarray, shape (k, 3) [m, m/beat, m/beat², body frame]

    Notes
    -----
    Source: powers of each piece's own share. Exact to rounding.
    """
    knots = np.array(paths.knots) / PARTS
    index = np.clip(np.searchsorted(knots, x, side="right") - 1, 0, len(knots) - 2)
    parts = np.empty((3, len(x), 3))
    for k in np.unique(index):
        chosen = index == k
        width = knots[k + 1] - knots[k]
        found = polynomial(paths.pieces[0, k], (x[chosen] - knots[k]) / width)
        for order in range(3):
            parts[order, chosen] = found[order] / (beats * width) ** order
    return parts[0], parts[1], parts[2]


def _law(hand: HandPaths, way: SpherePaths, beats: float, first: Motion, last: Motion) -> LinkLaw:
    frame, angles = way.frames[0], way.angles[0]
    start = _tilt(frame, angles, 0.0, first.plane)
    turn = _tilt(frame, angles, 1.0, last.plane) - start
    turn = (turn + np.pi) % (2 * np.pi) - np.pi
    return LinkLaw(beats=beats, hand=hand, frame=frame, angles=angles, tilt=(start, start + turn))


def _looks() -> Floats:
    """Shares of a link at which paths are looked at."""
    return np.arange(LOOKS, dtype=np.float64) / (LOOKS - 1)


def _rows(motion: Motion) -> Motion:
    """One state as a row of one."""
    return Motion(
        hand=motion.hand[None],
        hand_rate=motion.hand_rate[None],
        hand_acceleration=motion.hand_acceleration[None],
        tether=motion.tether[None],
        tether_rate=motion.tether_rate[None],
        tether_acceleration=motion.tether_acceleration[None],
        plane=motion.plane[None],
    )


def rest(side: Side, body: Body, length: float) -> ComposedLaw:
    """Arms hanging, the tether straight down, clear of the legs and of the floor.

    Parameters
    ----------
    side : {"left", "right"}
    body : Body
    length : float
        Of the tether [m]; a long one lifts the hand, so that the head hangs 15 cm over the floor.

    Returns
    -------
    law : ComposedLaw
        At rest, plane said to be wheel, forward.
    """
    arm = body.arm_length
    aside = 0.12
    drop = body.shoulder_height - max(body.shoulder_height - 0.95 * arm, length + 0.15)
    shoulder = body.shoulder(side)
    out = body.half_breadth + aside - body.half_shoulder
    ahead = float(np.sqrt(max((0.95 * arm) ** 2 - drop**2 - out**2, 0.0))) if drop < 0 else 0.1
    place = shoulder + np.array([sign_of(side) * out, min(ahead, 0.3), -drop])
    return ComposedLaw(
        hand=HandPath((float(place[0]), float(place[1]), float(place[2]))),
        tether=(0.0, 0.0, -1.0),
        plane=(-1.0, 0.0, 0.0),
        turns=(),
        period=1.0,
    )


def _tilt(frame: Floats, angles: Floats, x: float, plane: Floats) -> float:
    alpha, psi = polynomial(angles, np.array([x]))[0][0]
    ca, sa, cp, sp = np.cos(alpha), np.sin(alpha), np.cos(psi), np.sin(psi)
    up = np.array([-sp * ca, -sp * sa, cp]) @ frame
    tether = np.array([cp * ca, cp * sa, sp]) @ frame
    return float(np.arctan2(plane @ np.cross(tether, up), plane @ up))
