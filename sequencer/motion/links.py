"""Links: computed bridges from one state to another.

A link's hand runs on quintics that meet position, velocity and acceleration at both ends
(handpaths.py); its tether on a path of sphere.py that does the same. Of the hand paths and tether paths
that there are, those are taken that keep the limits and the arm's reach, then those that stay `CLEAN` of
body and other prop, and among these the gentlest, a gap of less than `CLEAR` counting as less gentle.
All pairs are looked at coarsely, the best few finely; hand paths that are led aside only where the others
are not clean. That choice looks at samples, but every bound and every later check is proven.
Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

from dataclasses import dataclass, fields
from functools import cached_property, lru_cache
from math import isfinite
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.carriage import Carriage
from sequencer.motion.composed import ROUNDING
from sequencer.motion.handpaths import (
    PARTS,
    HandPaths,
    controls,
    hand_figures,
    hand_paths,
    places,
)
from sequencer.motion.law import Bounds
from sequencer.motion.link_gaps import (
    LOOKS,
    STRIDE,
    Around,
    around,
    least_gaps,
    rods_of,
    rough,
    shares,
)
from sequencer.motion.phases import STEP_RATE, smooth_step
from sequencer.motion.placing import sign_of
from sequencer.motion.rooms import REACH_SLACK, LinkLimits, Room, tether_figures
from sequencer.motion.sphere import (
    SAMPLES,
    Ends,
    directions,
    pointings,
    polynomial,
    sphere_candidates,
)
from sequencer.motion.state import Motion

STILL = 1e-6  # [1/beat] a tether that turns slower shows no axis of its own
CLEAN = 0.03  # [m] from body and other prop, as looked at: the checks then find 2 cm to spare
CLEAR = 0.08  # [m]: a link that keeps it is not made to keep more
CROWDED = 10.0  # [1/m] what a gap below `CLEAR` counts as, in shares of the limits of acceleration
LAST = LOOKS - 1
ROUND = 5e-4  # [m] by which gaps are not told apart
FIRST, FINALISTS = 4, 20  # pairs of hand path and tether path that are looked at finely
# Which way a hand path may be led aside: out, ahead, up [shares of the arm].
ASIDES = ((0.25, 0.0, 0.0), (0.5, 0.0, 0.0), (0.0, 0.3, 0.0), (0.25, 0.3, 0.0), (0.45, 0.45, 0.0),
          (0.0, 0.0, 0.3), (0.3, 0.0, 0.3), (0.3, -0.2, 0.0), (-0.2, 0.3, 0.0), (0.3, 0.0, -0.2))  # fmt: skip


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
        plane = _planes(self.frame, self.angles, self.tilt, x, tether)

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

    def reach_of(self, body: Body, side: Side) -> float:
        """Proven bound of how far the hand is from where the upright body's shoulder can give to [m]."""
        reach = hand_figures(self.hand, np.array([self.beats]), body=body, side=side)[0]
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
    """The limit that a link of an upright performer breaks, in words; empty if it keeps them all."""
    reach, arm = law.reach_of(room.body, room.side), room.arm
    if reach > arm + REACH_SLACK:
        return out_of_reach(reach, arm)
    return pace_broken(limits, law)


def out_of_reach(reach: float, arm: float) -> str:
    """That the hand would be farther away than an arm is long [m], in words."""
    return f"the hand would have to reach {reach:.2f} m, the arm is {arm:.2f} m long"


def pace_broken(limits: LinkLimits, law: LinkLaw) -> str:
    """The limit of speed or acceleration that a link breaks, in words; empty if it keeps them all."""
    bounds = law.bounds()
    for what, value, most, unit in (
        ("the hand would move", bounds.hand_speed, limits.hand_speed, "m a beat"),
        ("the prop would turn", bounds.turn_rate / (2 * np.pi), limits.turn_rate / (2 * np.pi), "loops a beat"),
        ("the hand would change its speed by", bounds.hand_acceleration, limits.hand_acceleration, "m a beat each beat"),
        ("the prop would change its turning by", bounds.turn_acceleration, limits.turn_acceleration, "rad a beat each beat"),
    ):  # fmt: skip
        if value > most:
            return f"{what} up to {value:.3g} {unit}, the limit is {most:.3g}"
    return ""


class Found(NamedTuple):
    """A link, and what its choice looked at."""

    law: LinkLaw
    kept: bool  # whether it keeps limits and reach
    gap: float  # [m] smallest from body and other prop; inf where there was no room to look at
    needed: float  # [m] gap at which it is clean: `CLEAN`, or what its ends leave it

    @property
    def clean(self) -> bool:
        """Whether nothing stands against it."""
        return self.kept and self.gap >= self.needed


def link(
    first: Motion,
    last: Motion,
    beats: float,
    room: Room | None = None,
    limits: LinkLimits | None = None,
    beside: Around | None = None,
) -> LinkLaw:
    """The bridge from one state to another; see `found_link`."""
    return found_link(first, last, beats, room, limits, beside).law


def found_link(
    first: Motion,
    last: Motion,
    beats: float,
    room: Room | None = None,
    limits: LinkLimits | None = None,
    beside: Around | None = None,
) -> Found:
    """The bridge from one state to another, and how good it is.

    Parameters
    ----------
    first, last : Motion
        One state each: arrays of shape (3,) [body frame].
    beats : float
    room : Room, optional
        Reach and body to respect as far as can be; without it the gentlest plain path is taken.
    limits : LinkLimits, optional
        Kept before all else, where they can be.
    beside : Around, optional
        What to keep clear of; the upright own body if not given.

    Returns
    -------
    found : Found

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
    return start + (end - start) * shares()


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
    beside: Around | None,
) -> Found:
    """The link between two packed states; kept, since shows are staged again and again in mending."""
    first, last = _unpacked(start_state), _unpacked(end_state)
    ways = _ways(first, last, beats, limits or LinkLimits())
    if room is None:
        start, end, span = _rows(first, 1), _rows(last, 1), np.array([beats])
        plain = hand_paths(start, end, span, shoulder=np.zeros(3), arm=1.0)[0]
        law = _law(plain, ways, int(np.argmin(ways.peak)), beats, first, last)
        return Found(law, kept=True, gap=np.inf, needed=CLEAN)
    search = _Search(
        first, last, beats, room, limits or LinkLimits(),
        beside or around(Carriage(body=room.body), looks(0.0, beats)), ways,
    )  # fmt: skip
    best = search.best(None)
    if best.kept and not best.found.clean:
        # Led aside only where the straighter ones keep the limits: whether a link of so many beats can be
        # danced at all does not depend on it.
        best = min(best, search.best(np.array(ASIDES)), key=lambda each: each.score)
    return best.found


class _Ways(NamedTuple):
    """Tether paths between two states, gentlest first."""

    frames: Floats  # (n, 3, 3)
    angles: Floats  # (n, 6, 2) [rad]
    peak: Floats  # (n,) [1/beat²] of the turning acceleration, as sampled
    over: Bools  # (n,) whether it breaks the limits


def _ways(first: Motion, last: Motion, beats: float, limits: LinkLimits) -> _Ways:
    """All tether paths that there are."""
    one = np.array([beats])
    found = list(sphere_candidates(stacked(first, last), one, peaks=False))
    found = [way for way in found if isfinite(way.peak[0])]
    if not found:
        raise ValueError("no path between the two tethers was found")
    frames = np.concatenate([way.frames for way in found])
    angles = np.concatenate([way.angles for way in found])
    x: Floats = np.arange(SAMPLES, dtype=np.float64) / (SAMPLES - 1)
    span = np.full(len(angles), beats)
    pushes = directions(np.zeros((1, 3, 3)), angles, x, span)[2]
    peak = np.linalg.norm(pushes, axis=-1).max(axis=1)
    over = ~limits.keep_turning(angles, span)
    order = np.lexsort((peak, over))
    return _Ways(frames[order], angles[order], peak[order], over[order])


class _Best(NamedTuple):
    """The best pair of one search."""

    score: tuple[float, float, float]  # limits broken, shortage, harshness
    found: Found

    @property
    def kept(self) -> bool:
        return self.found.kept


@dataclass(frozen=True, slots=True, eq=False)
class _Search:
    """One link's search: all hand paths with all tether paths."""

    first: Motion
    last: Motion
    beats: float
    room: Room
    limits: LinkLimits
    beside: Around
    ways: _Ways

    def best(self, asides: Floats | None) -> _Best:
        """The best pair of the plain hand paths, or of those led aside (n, 3) [shares of the arm]."""
        sets = self._hands(asides)
        spans = [np.full(len(paths.pieces), self.beats) for paths in sets]
        figures = [
            hand_figures(paths, span, body=self.room.body, side=self.room.side)
            for paths, span in zip(sets, spans, strict=True)
        ]
        reach, _, push = (np.concatenate(part) for part in zip(*figures, strict=True))
        over = ~np.concatenate(
            [self.limits.keep_moving(*pair, self.room) for pair in zip(sets, spans, strict=True)]
        )
        broken = over[:, None].astype(int) + self.ways.over
        harsh = (
            push[:, None] / self.limits.hand_acceleration
            + self.ways.peak / self.limits.turn_acceleration
        )
        far = 10.0 * np.maximum(reach - self.room.arm, 0.0)[:, None]
        # Pairs that break more limits than others need no look.
        h, w = np.nonzero(broken == broken.min())
        own, turned = np.unique(h, return_inverse=True)
        x = shares()[::STRIDE]
        hands = np.concatenate([places(paths, x) for paths in sets])[own]
        tethers, wide = self._turns(np.arange(len(self.ways.peak)), x)
        coarse = least_gaps(
            hands[:, None], tethers[None], wide[None], rods_of(rough(self.room.shape)),
            self.beside.arrays(STRIDE),
        )[turned, w]  # fmt: skip
        order = _order(*_scores(coarse, CLEAN, far[h, 0], harsh[h, w]))

        def finely(part: Ints) -> _Best:
            rows, turns = h[part], w[part]
            return self._finely(sets, rows, turns, far[rows, 0], harsh[rows, turns])

        best = finely(order[:FIRST])
        if not best.found.clean and len(order) > FIRST:
            best = min(best, finely(order[FIRST:FINALISTS]), key=lambda each: each.score)
        lawful = int(broken.min())
        return best._replace(
            score=(float(lawful), *best.score[1:]), found=best.found._replace(kept=lawful == 0)
        )

    def _hands(self, asides: Floats | None) -> list[HandPaths]:
        n = 1 if asides is None else len(asides)
        arm, out = self.room.arm, sign_of(self.room.side)
        return hand_paths(
            _rows(self.first, n), _rows(self.last, n), np.full(n, self.beats),
            shoulder=self.room.shoulder, arm=arm,
            aside=None if asides is None else asides * np.array([out, 1.0, 1.0]) * arm,
        )  # fmt: skip

    def _turns(self, rows: Ints, x: Floats) -> tuple[Floats, Floats]:
        """Tethers and what lies across them in the prop's plane, each (rows, k, 3)."""
        frames, angles = self.ways.frames[rows], self.ways.angles[rows]
        tethers = pointings(frames, angles, x)
        if not self.room.flat:
            return tethers, tethers
        planes = [
            _planes(frame, own, _tilts(frame, own, self.first, self.last), x, tether)
            for frame, own, tether in zip(frames, angles, tethers, strict=True)
        ]
        return tethers, np.asarray(np.cross(np.array(planes), tethers), dtype=np.float64)

    def _finely(self, sets: list[HandPaths], h: Ints, w: Ints, far: Floats, harsh: Floats) -> _Best:
        """The best of the pairs of hand path h and tether path w, by every look."""
        x = shares()
        tethers, wide = self._turns(w, x)
        hands = np.concatenate([places(_row(sets, int(row)), x) for row in h])
        rods, (starts, axes, radii) = rods_of(self.room.shape), self.beside.arrays()
        gaps = least_gaps(hands, tethers, wide, rods, (starts, axes, radii))
        ends = least_gaps(
            hands[0, ::LAST], tethers[0, ::LAST], wide[0, ::LAST], rods,
            (starts[:, ::LAST], axes[:, ::LAST], radii),
        )  # fmt: skip
        needed = min(CLEAN, float(ends) - ROUND)  # no link is clearer than its ends
        short, hard = _scores(gaps, needed, far, harsh)
        k = int(_order(short, hard)[0])
        law = _law(_row(sets, int(h[k])), self.ways, int(w[k]), self.beats, self.first, self.last)
        return _Best(
            score=(0.0, float(short[k]), float(hard[k])),
            found=Found(law, kept=True, gap=float(gaps[k]), needed=needed),
        )


def _scores(gaps: Floats, needed: float, far: Floats, harsh: Floats) -> tuple[Floats, Floats]:
    """What each pair lacks [m], and how harsh it is, too near counting as harsh."""
    short = np.round(np.maximum(needed - gaps, 0.0) + far, 3)
    return np.asarray(short), np.asarray(harsh + CROWDED * np.maximum(CLEAR - gaps, 0.0))


def _order(short: Floats, hard: Floats) -> Ints:
    """Pairs from the best on."""
    return np.asarray(np.lexsort((hard, short)), dtype=np.int64)


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


def _law(
    hand: HandPaths, ways: _Ways, row: int, beats: float, first: Motion, last: Motion
) -> LinkLaw:
    frame, angles = ways.frames[row], ways.angles[row]
    return LinkLaw(
        beats=beats, hand=hand, frame=frame, angles=angles, tilt=_tilts(frame, angles, first, last)
    )


def _row(sets: list[HandPaths], row: int) -> HandPaths:
    """One path of several stacks, counted through."""
    for paths in sets:
        if row < len(paths.pieces):
            return HandPaths(paths.knots, paths.pieces[row : row + 1])
        row -= len(paths.pieces)
    raise ValueError("there is no such path")


def _rows(motion: Motion, count: int) -> Motion:
    """One state as so many rows."""
    return Motion(
        **{
            each.name: np.repeat(getattr(motion, each.name)[None], count, 0)
            for each in fields(motion)
        }
    )


def _planes(
    frame: Floats, angles: Floats, tilt: tuple[float, float], x: Floats, tether: Floats
) -> Floats:
    """Planes of one tether path, shape (k, 3) [1, body frame]."""
    alpha, psi = polynomial(angles, x)[0].T
    up = np.stack(
        (-np.sin(psi) * np.cos(alpha), -np.sin(psi) * np.sin(alpha), np.cos(psi)), axis=-1
    )
    up = up @ frame
    turn = tilt[0] + (tilt[1] - tilt[0]) * smooth_step(x)[0]
    return np.asarray(np.cos(turn)[:, None] * up + np.sin(turn)[:, None] * np.cross(tether, up))


def _tilts(frame: Floats, angles: Floats, first: Motion, last: Motion) -> tuple[float, float]:
    """Tilt of the plane about the tether at both ends, the shorter way round [rad]."""
    start = _tilt(frame, angles, 0.0, first.plane)
    turn = _tilt(frame, angles, 1.0, last.plane) - start
    return start, start + (turn + np.pi) % (2 * np.pi) - np.pi


def _tilt(frame: Floats, angles: Floats, x: float, plane: Floats) -> float:
    alpha, psi = polynomial(angles, np.array([x]))[0][0]
    ca, sa, cp, sp = np.cos(alpha), np.sin(alpha), np.cos(psi), np.sin(psi)
    up = np.array([-sp * ca, -sp * sa, cp]) @ frame
    tether = np.array([cp * ca, cp * sa, sp]) @ frame
    return float(np.arctan2(plane @ np.cross(tether, up), plane @ up))
