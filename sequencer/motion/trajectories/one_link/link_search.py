"""The search of one link: hand paths and tether paths, and the pair of them that is danced.

The hand follows quintics that match position, velocity and acceleration at both ends (hand_paths.py); the
tether follows a path from sphere.py that does the same. Among the candidate hand and tether paths, those
within the limits and the arm's reach come first, then those that stay `CLEAN` of body and other prop, and
among these the gentlest, with a penalty for gaps below `CLEAR`. All pairs are sampled coarsely, the best
few finely; displaced hand paths, and tether paths that halt at either end, are tried only if the others are
not clean. Within the limits of a show, a way on which the hand would stand for long and then dart gives way to
one on which it moves on, wherever there is one as clear. The selection uses samples, but every bound and every
later check is proven. Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints, crossed
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.placing import sign_of
from sequencer.motion.trajectories.one_link.hand_paths import (
    BOUND_PIECES,
    STOP_SHARE,
    Piecewise,
    figures_of_each,
    halting,
    hand_paths,
    jets,
    known_portions,
    moving_paths,
    places,
    plain_path,
    whole,
)
from sequencer.motion.trajectories.one_link.link_gaps import (
    GAP_LOOKS,
    STRIDE,
    Around,
    around,
    least_gaps,
    rods_of,
    rough,
    sample_fractions,
)
from sequencer.motion.trajectories.one_link.link_law import LinkLaw, planes_of, up_from
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.sphere import (
    LOOPS,
    SPHERE_SAMPLES,
    Ends,
    every_path,
    moved,
    pointings,
    polynomial,
)

STILL_SPEED = 1e-6  # [1/beat] a tether turning slower than this has no visible axis
CLEAN = 0.03  # [m] from body and other prop, at the samples: the checks then find 2 cm to spare
CLEAR = 0.08  # [m]: beyond this a larger gap has no value
CROWDED = 10.0  # [1/m] penalty for a gap below `CLEAR`, in fractions of the acceleration limits
LAST = GAP_LOOKS - 1
_ROUND = 5e-4  # [m] below which gaps count as equal
FIRST, FINALISTS = 4, 20  # pairs of hand path and tether path that are sampled finely
_SOME = 16  # pairs that are sampled coarsely at first
DARTS = 2.0  # `darting` above which a more even way is sought
FAR_ENOUGH = 0.15  # [m] a shorter way is covered in a quarter of a link without haste
TWIST_LOOKS = 65  # samples of the twist of a hand
NEARLY_TWISTED = 0.98  # of the limit: between two samples the twist may be a little more
TWISTED = 1e6  # harshness of a pair that twists the hand too hard: more than any other
HALTS = (4, 2)  # sixteenths of a link within which a tether comes to a stop
# Displacements of a hand path: out, ahead, up [fractions of the arm].
ASIDES = ((0.25, 0.0, 0.0), (0.5, 0.0, 0.0), (0.0, 0.3, 0.0), (0.25, 0.3, 0.0), (0.45, 0.45, 0.0),
          (0.0, 0.0, 0.3), (0.3, 0.0, 0.3), (0.3, -0.2, 0.0), (-0.2, 0.3, 0.0), (0.3, 0.0, -0.2))  # fmt: skip


def axis_of(motion: Motion) -> Floats:
    """Unit turning axis of each state; the law's plane if the tether is at rest.

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
    return np.asarray(
        np.where(size > STILL_SPEED, axis / np.maximum(size, STILL_SPEED), motion.plane)
    )


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


def darting(law: LinkLaw) -> float:
    """How unevenly the hand covers its way: its speed in the quickest quarter of the link, over that of its middle three.

    The first and the last eighth, in which it leaves one pattern and takes up the next, are left out. Sampled, for
    choosing only.

    Parameters
    ----------
    law : LinkLaw

    Returns
    -------
    ratio : float
        [1] 1 if it moves at one speed, 1.4 on a minimum-jerk way from stop to stop, 3 if it stands and then darts; 1 as
        well if that quarter is shorter than `FAR_ENOUGH`.
    """
    looks = places(_row([law.hand], 0), sample_fractions())[0]
    eighth = (len(looks) - 1) // 8
    way = np.concatenate(([0.0], np.cumsum(np.linalg.norm(np.diff(looks, axis=0), axis=-1))))
    middle = way[eighth:-eighth]
    quarters = middle[2 * eighth :] - middle[: -2 * eighth]
    if float(quarters.max()) < FAR_ENOUGH:
        return 1.0
    return float(quarters.max() * 3 / (middle[-1] - middle[0]))


class FoundLink(NamedTuple):
    """A link, and the criteria by which it was chosen."""

    law: LinkLaw
    kept: bool  # whether it is within limits and reach
    gap: float  # [m] smallest gap from body and other prop; inf without a hand space
    needed: float  # [m] gap at which it is clean: `CLEAN`, or what its ends allow
    twisted: bool = False  # whether the hand would have to twist a rigid prop too hard, by samples

    @property
    def clean(self) -> bool:
        """Whether it is within limits and keeps its gap."""
        return self.kept and self.gap >= self.needed and not self.twisted

    @property
    def merit(self) -> tuple[bool, float, bool, float]:
        """By which links that are not clean are compared, the larger the better: who meets a body twists in vain."""
        spare = self.gap - self.needed
        return self.kept, min(spare, 0.0), not self.twisted, spare


def searched(
    first: Motion,
    last: Motion,
    beats: float,
    space: HandSpace | None,
    limits: LinkLimits | None,
    obstacles: Around | None,
) -> FoundLink:
    """The link between two states, sought anew; see `links.found_link`."""
    keep = limits or LinkLimits()
    ways = _ways(first, last, beats, keep)
    if space is None:
        start, end, span = _rows(first, 1), _rows(last, 1), np.array([beats])
        plain = plain_path(start, end, span)
        law = _law(plain, ways, int(np.argmin(ways.peak)), beats, first, last)
        return FoundLink(law, kept=True, gap=np.inf, needed=CLEAN)
    obstacles = obstacles or around(Carriage(body=space.body), sample_fractions())
    search = _Search(first, last, beats, space, keep, obstacles)
    best = search.best(None, ways)
    # Displaced paths, or halts, only if the straighter ones are within the limits: whether a link of this many beats can be danced at all does not depend on them. Within the limits of a show everything is tried.
    anything = limits not in (None, LinkLimits())
    asides = np.array(ASIDES)
    for halt in (0, *HALTS):
        if (best.found.kept or anything) and not best.found.clean:
            turns = _ways(first, last, beats, keep, halt=halt) if halt else ways
            best = min(best, search.best(asides, turns), key=lambda each: each.score)
    if anything and (best.darts or not best.found.clean):
        for own in (None, asides):
            even = search.best(own, ways, moving=True)
            # At the same faults the even way is taken, whatever its harshness.
            faults = even.faults, best.faults
            if faults[0] < faults[1] or (faults[0] == faults[1] and best.darts and not even.darts):
                best = even
            if best.found.clean and not best.darts:
                break
    return best.found


class _Ways(NamedTuple):
    """Tether paths between two states, gentlest first."""

    frames: Floats  # (n, 3, 3)
    angles: Piecewise  # n paths [rad]
    peak: Floats  # (n,) [1/beat²] of the turning acceleration, as sampled
    over: Bools  # (n,) whether it breaks the limits


def _ways(first: Motion, last: Motion, beats: float, limits: LinkLimits, *, halt: int = 0) -> _Ways:
    """All tether paths, direct or with halts a number of sixteenths from each end."""
    frames, angles_, usable = every_path(stacked(first, last), np.array([beats]))
    good = usable[:, 0]
    if not good.any():
        raise ValueError("no path between the two tethers was found")
    plain = angles_[good].reshape(-1, *angles_.shape[-2:])
    frames = frames[good, 0].repeat(len(LOOPS), axis=0)
    angles = _halting(plain, halt) if halt else whole(plain)
    x: Floats = np.arange(SPHERE_SAMPLES, dtype=np.float64) / (SPHERE_SAMPLES - 1)
    span = np.full(len(plain), beats)
    turns = _jets(angles, beats, x)
    peak = np.linalg.norm(moved(None, *turns)[2], axis=-1).max(axis=1)
    over = ~limits.keep_turning(angles, span)
    order = np.lexsort((peak, over))
    chosen = Piecewise(angles.knots, angles.pieces[order])
    return _Ways(frames[order], chosen, peak[order], over[order])


def _halting(plain: Floats, halt: int) -> Piecewise:
    """The same paths with halts, with the fewest loops between them, one more or one fewer."""
    ends = [np.stack(polynomial(plain, np.array([x])), axis=1)[:, :, 0] for x in (0.0, 1.0)]
    share = STOP_SHARE * halt / BOUND_PIECES
    ahead = ends[1][:, 0, 0] - ends[0][:, 0, 0] - share * (ends[0][:, 1, 0] + ends[1][:, 1, 0])
    # Candidates come in threes, a loop apart; they are centred on the one that turns least.
    middle = ahead.reshape(-1, len(LOOPS))[:, 1]
    ends[1][:, 0, 0] -= 2 * np.pi * np.round(middle / (2 * np.pi)).repeat(len(LOOPS))
    return halting(ends[0], ends[1], halt)


def _jets(paths: Piecewise, beats: float, x: Floats) -> Floats:
    """Value, rate and acceleration by beats of n paths, shape (3, n, k, m)."""
    return jets(paths, beats, known_portions(paths.knots, x.tobytes()))


class _Best(NamedTuple):
    """The best pair of one search."""

    score: tuple[float, float, float]  # limits exceeded, missing gap, harshness
    found: FoundLink

    @property
    def faults(self) -> tuple[float, float, bool]:
        """What is wrong with it, the worst first."""
        return *self.score[:2], self.found.twisted

    @property
    def darts(self) -> bool:
        """Whether the hand stands for long, and then covers most of its way in what is left."""
        return darting(self.found.law) > DARTS


@dataclass(frozen=True, slots=True, eq=False)
class _Search:
    """One link's search: all hand paths with all tether paths."""

    first: Motion
    last: Motion
    beats: float
    space: HandSpace
    limits: LinkLimits
    obstacles: Around

    def best(self, asides: Floats | None, ways: _Ways, *, moving: bool = False) -> _Best:
        """The best pair of a tether path with a plain hand path, or with a displaced one.

        `asides` are (n, 3) [fractions of the arm]; `moving` takes paths on which the hand does not stand.
        """
        sets = self._hands(asides, moving_paths if moving else hand_paths)
        span = np.full(len(sets[0].pieces), self.beats)
        reach, speed, acceleration = figures_of_each(
            sets, span, body=self.space.body, side=self.space.side
        )
        over = ~self.limits.keep_figures((reach, speed, acceleration), self.space)
        broken = over[:, None].astype(int) + ways.over
        harsh = (
            acceleration[:, None] / self.limits.hand_acceleration
            + ways.peak / self.limits.turn_acceleration
        )
        far = 10.0 * np.maximum(reach - self.space.arm, 0.0)
        # Pairs that exceed more limits than others need no sampling.
        h, w = np.nonzero(broken == broken.min())
        far, harsh, heavy = far[h], harsh[h, w], self._heavy(sets, ways)[h, w]
        harsh = (
            harsh + TWISTED * heavy
        )  # what twists too hard comes last of all that are as clear, the hardest at the end
        ranking = _Ranking(far, harsh, self._coarsely(sets, ways, h, w))

        def finely(part: Ints) -> _Best:
            return self._finely(sets, ways, h[part], w[part], far[part], harsh[part])

        best = finely(ranking.first(FIRST))
        if not best.found.clean and len(h) > FIRST:
            more = ranking.first(FINALISTS)[FIRST:]
            best = min(best, finely(more), key=lambda each: each.score)
        lawful = int(broken.min())
        return best._replace(
            score=(float(lawful), *best.score[1:]), found=best.found._replace(kept=lawful == 0)
        )

    def _heavy(self, sets: list[Piecewise], ways: _Ways) -> Floats:
        """Twist of the hand on a rigid prop over its limit, by samples, of all pairs, (hands, ways); 0 where it is kept."""
        hands, inertia, carried = (
            sum(len(p.pieces) for p in sets),
            self.space.inertia,
            self.space.carried,
        )
        if not inertia or self.limits.torque == np.inf:  # a line hangs from the hand
            return np.zeros((hands, len(ways.peak)))
        x = np.arange(TWIST_LOOKS, dtype=np.float64) / (TWIST_LOOKS - 1)
        tether, _, bend = moved(ways.frames, *_jets(ways.angles, self.beats, x))
        drive = inertia * bend  # (ways, k, 3)
        if carried:
            pull = np.concatenate([_jets(paths, self.beats, x)[2] for paths in sets])
            weight = np.array([0.0, 0.0, self.limits.gravity])
            drive = drive + carried * (pull[:, None] + weight)  # (hands, ways, k, 3)
        twist = np.linalg.norm(crossed(np.broadcast_to(tether, drive.shape), drive), axis=-1)
        share = twist.max(axis=-1) / self.limits.torque
        over = np.where(share > NEARLY_TWISTED, share, 0.0)
        return np.asarray(np.broadcast_to(over, (hands, len(ways.peak))))

    def _coarsely(
        self, sets: list[Piecewise], ways: _Ways, h: Ints, w: Ints
    ) -> Callable[[Ints], Floats]:
        """Gaps of some of the pairs of hand path h and tether path w, at few samples."""
        x = sample_fractions()[::STRIDE]
        hands = np.concatenate([places(paths, x) for paths in sets])
        tethers, wide = self._turns(ways, np.arange(len(ways.peak)), x)
        rods, bodies = rods_of(rough(self.space.shape)), self.obstacles.arrays(STRIDE)

        def gaps(part: Ints) -> Floats:
            turns = w[part]
            return least_gaps(hands[h[part]], tethers[turns], wide[turns], rods, bodies)

        return gaps

    def _hands(
        self, asides: Floats | None, make: Callable[..., list[Piecewise]] = hand_paths
    ) -> list[Piecewise]:
        n = 1 if asides is None else len(asides)
        arm, out = self.space.arm, sign_of(self.space.side)
        return make(
            _rows(self.first, n), _rows(self.last, n), np.full(n, self.beats),
            shoulder=self.space.shoulder, arm=arm,
            aside=None if asides is None else asides * np.array([out, 1.0, 1.0]) * arm,
        )  # fmt: skip

    def _turns(self, ways: _Ways, rows: Ints, x: Floats) -> tuple[Floats, Floats]:
        """Tethers and the perpendicular directions in the prop's plane, each (rows, k, 3)."""
        frames = ways.frames[rows]
        turns = places(Piecewise(ways.angles.knots, ways.angles.pieces[rows]), x)
        tethers = pointings(frames, turns)
        if not self.space.flat:
            return tethers, tethers
        planes = [
            planes_of(frame, own, _tilts(frame, own, self.first, self.last), x, tether)
            for frame, own, tether in zip(frames, turns, tethers, strict=True)
        ]
        return tethers, crossed(np.array(planes), tethers)

    def _finely(
        self, sets: list[Piecewise], ways: _Ways, h: Ints, w: Ints, far: Floats, harsh: Floats
    ) -> _Best:
        """The best of the pairs of hand path h and tether path w, over all samples."""
        x = sample_fractions()
        tethers, wide = self._turns(ways, w, x)
        hands = np.concatenate([places(_row(sets, int(row)), x) for row in h])
        rods, (starts, axes, radii) = rods_of(self.space.shape), self.obstacles.arrays()
        ends = least_gaps(
            hands[0, ::LAST], tethers[0, ::LAST], wide[0, ::LAST], rods,
            (starts[:, ::LAST], axes[:, ::LAST], radii),
        )  # fmt: skip
        needed = min(CLEAN, float(ends) - _ROUND)  # no link has a larger gap than its ends

        def gaps(part: Ints) -> Floats:
            return least_gaps(hands[part], tethers[part], wide[part], rods, (starts, axes, radii))

        ranking = _Ranking(far, harsh, gaps, needed=needed, at_first=1)
        k = int(ranking.first(1)[0])
        law = _law(_row(sets, int(h[k])), ways, int(w[k]), self.beats, self.first, self.last)
        twisted = bool(harsh[k] >= TWISTED / 2)
        return _Best(
            score=(0.0, float(ranking.short[k]), float(ranking.hard[k])),
            found=FoundLink(
                law, kept=True, gap=float(ranking.gaps[k]), needed=needed, twisted=twisted
            ),
        )


class _Ranking:
    """Pairs by what they lack, then by how hard they are; gaps are found only for those that may come first."""

    def __init__(
        self,
        far: Floats,
        harsh: Floats,
        gaps: Callable[[Ints], Floats],
        *,
        needed: float = CLEAN,
        at_first: int = _SOME,
    ) -> None:
        self._far, self._harsh, self._find, self._needed = far, harsh, gaps, needed
        self._some = at_first
        # Where a gap is not known yet, the best that any could make of the pair.
        self.gaps: Floats = np.full(len(far), np.inf)
        self.short, self.hard = _scores(self.gaps, needed, far, harsh)
        self._known = np.zeros(len(far), dtype=np.bool_)

    def first(self, count: int) -> Ints:
        """The first pairs, best first; fewer if there are no more."""
        some = self._some
        while True:
            order = _order(self.short, self.hard)
            if self._known[order[:count]].all():
                return order[:count]
            part = order[~self._known[order]][:some]
            self.gaps[part] = self._find(part)
            self.short[part], self.hard[part] = _scores(
                self.gaps[part], self._needed, self._far[part], self._harsh[part]
            )
            self._known[part] = True
            some *= 2


def _scores(gaps: Floats, needed: float, far: Floats, harsh: Floats) -> tuple[Floats, Floats]:
    """Missing gap of each pair [m], and its harshness, which includes being too near."""
    short = np.round(np.maximum(needed - gaps, 0.0) + far, 3)
    return np.asarray(short), np.asarray(harsh + CROWDED * np.maximum(CLEAR - gaps, 0.0))


def _order(short: Floats, hard: Floats) -> Ints:
    """Pairs, best first."""
    return np.asarray(np.lexsort((hard, short)), dtype=np.int64)


def _law(
    hand: Piecewise, ways: _Ways, row: int, beats: float, first: Motion, last: Motion
) -> LinkLaw:
    return law_along(hand, ways.frames[row], _row([ways.angles], row), beats, first, last)


def law_along(
    hand: Piecewise, frame: Floats, angles: Piecewise, beats: float, first: Motion, last: Motion
) -> LinkLaw:
    """The link along one hand path and one tether path, its plane tilting the shorter way round.

    Parameters
    ----------
    hand, angles : Piecewise
        One path each.
    frame : ndarray, shape (3, 3) [1]
        Of the tether path.
    beats : float
    first, last : Motion
        One state each: arrays of shape (3,) [body frame].
    """
    tilt = _tilts(frame, places(angles, np.array([0.0, 1.0]))[0], first, last)
    return LinkLaw(beats=beats, hand=hand, frame=frame, angles=angles, tilt=tilt)


def _row(sets: list[Piecewise], row: int) -> Piecewise:
    """One path of several stacks, counted through."""
    for paths in sets:
        if row < len(paths.pieces):
            return Piecewise(paths.knots, paths.pieces[row : row + 1])
        row -= len(paths.pieces)
    raise ValueError("there is no such path")


def _rows(motion: Motion, count: int) -> Motion:
    """One state repeated in a number of rows."""
    return Motion(
        **{
            each.name: np.repeat(getattr(motion, each.name)[None], count, 0)
            for each in fields(motion)
        }
    )


def _tilts(frame: Floats, turns: Floats, first: Motion, last: Motion) -> tuple[float, float]:
    """Tilt of the plane about the tether at both ends, the shorter way round [rad].

    `turns`: azimuth and elevation, (k, 2), the first and the last at the ends.
    """
    tilts = []
    for turn, state in ((turns[0], first), (turns[-1], last)):
        up, plane = up_from(turn) @ frame, state.plane
        tilts.append(float(np.arctan2(plane @ crossed(state.tether, up), plane @ up)))
    return tilts[0], tilts[0] + (tilts[1] - tilts[0] + np.pi) % (2 * np.pi) - np.pi
