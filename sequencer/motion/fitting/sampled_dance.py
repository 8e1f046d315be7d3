"""A dance sampled with one shape of the hands' paths: its margins wherever the hands are moved, and the best place.

Frame: body frame [m], beats. Source: search; the order of preference is a design choice of this project.
"""

from collections.abc import Mapping, Sequence
from functools import cached_property, lru_cache
from math import inf, isfinite, radians
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.geometry.field import CELL, table_of
from sequencer.geometry.posture import (
    UPRIGHT,
    Posture,
    capsule_ends,
    in_column,
    shoulders,
    to_trunk,
)
from sequencer.geometry.segments import point_segment, segment_segment
from sequencer.motion.fitting.fits import GOOD, REACH_SPARE, Dance, Fit, Margins
from sequencer.motion.fitting.pacing import TAUT, least_pull, twist
from sequencer.motion.fitting.prop_bodies import (
    Bodies,
    ball_about,
    balls_of,
    bodies_of,
    gaps_between,
    rows_of,
)
from sequencer.motion.laws.carriage import nearest_give
from sequencer.motion.patterns.library import find
from sequencer.motion.patterns.parameters import ParameterValue
from sequencer.motion.patterns.placing import sign_of

AT_EASE = 0.05  # [m] of spare arm length, below which stretching is penalised
STRETCHED = 0.1  # [1] weight of the missing length relative to a metre of margin
_STEP = 0.06  # [m] grid spacings
SURE, TIGHT = 0.032, 3.0  # [m] below which each missing metre of margin counts this many times more
COST = 0.06  # [1] weight of a metre's move relative to a metre of margin
EFFORT = np.array(
    [1.0, 1.0, 1.5]
)  # relative cost of moves out, ahead, up: arms tire when held high
PLACE_OFFSETS = ("across", "ahead", "up")
COARSE, _FINE = 10, 40  # samples per beat
OFTEN = 4  # times as many for two props that pass each other
_MANY = 4  # number of bodies above which a prop counts as complex
APART = 0.08  # [m] between balls that enclose two whole props, beyond which they are not examined in detail
_THIN = 8  # of the samples at which two props may be near, one in so many is looked at first
_ROUNDING = 1e-9  # [m]
MOST_LOOKS = 1024

Passing = tuple[Bodies, tuple[Floats, float]]  # the same with the balls about all of them


class Placing(NamedTuple):
    """Moves of the hands, the body's angles, and the resulting margins."""

    moves: Mapping[Side, Floats]  # (3,) each: outward, ahead, up [m]
    posture: Posture
    margins: Margins


class SampledDance:
    """A dance sampled with one path shape, and the bodies to keep clear of."""

    def __init__(self, dance: Dance, shape: Mapping[Side, Mapping[str, ParameterValue]]) -> None:
        self.dance, self.shape = dance, shape
        self.laws = dance.laws(shape)
        periods = [law.period for law in self.laws.values() if isfinite(law.period)]
        self.span = max(periods, default=4 * dance.cycle)
        count = int(min(MOST_LOOKS, max(96, np.ceil(_FINE * self.span))))
        self.beats: Floats = np.arange(count, dtype=np.float64) * (self.span / count)
        self.motions = {side: law.at(self.beats) for side, law in self.laws.items()}
        # Two props pass each other so fast that the motion between samples is not small compared with the gap.
        # A prop with many parts is costly and is sampled less often.
        self.often = OFTEN if all(len(p.solids) < _MANY for p in dance.props.values()) else 1
        thin = max(1, round(count / max(48.0, COARSE * self.span)))
        self.thin = slice(None, None, thin)
        self.usual: dict[Side, Floats] = {
            side: np.array([float(dance.values(side).get(name) or 0.0) for name in PLACE_OFFSETS])
            for side in dance.sides
        }
        self.sparse = slice(None, None, self.often * thin)
        self.free = [
            all(name in dance.open(side) for side in dance.sides) for name in PLACE_OFFSETS
        ]
        rooms = [
            find(name, dance.book).room({**given, **shape.get(side, {})}, side)
            for side, (name, given) in dance.parts.items()
        ]
        spans = [[getattr(room, name) for room in rooms] for name in PLACE_OFFSETS]
        self.ranges = [(max(s[0] for s in own), min(s[1] for s in own)) for own in spans]
        self.limits = np.array(self.ranges).T
        self.pull = self._pull()
        beats_per_second = dance.tempo[1] / 60.0
        rigid = [side for side in self.motions if not dance.props[side].flexible]
        twists = [twist(self.motions[side], dance.props[side], beats_per_second) for side in rigid]
        self.heavy = max(twists, default=0.0) > dance.torque

    @cached_property
    def bodies(self) -> dict[Side, Bodies]:
        """Each prop's bodies at the samples."""
        return {
            side: bodies_of(self.dance.props[side], motion) for side, motion in self.motions.items()
        }

    @cached_property
    def passing(self) -> dict[Side, Bodies]:
        """The same where two props are looked at as they pass each other, at more samples."""
        count = self.often * len(self.beats)
        often = np.arange(count, dtype=np.float64) * (self.span / count)
        return {
            side: bodies_of(self.dance.props[side], law.at(often))
            for side, law in (self.laws.items() if len(self.laws) == 2 else ())
        }

    @property
    def burdened(self) -> bool:
        """Whether a tether is hardly taut at the slowest tempo, or a prop too heavy to turn at the fastest, wherever the hands are."""
        return self.pull < TAUT or self.heavy

    def _pull(self) -> float:
        """Smallest pull of a tether over mass [m/s²], at the slowest tempo; inf without one."""
        beats_per_second = self.dance.tempo[0] / 60.0
        tethered = [side for side in self.motions if self.dance.props[side].flexible]
        return min(
            (
                least_pull(
                    self.motions[side],
                    length=self.dance.props[side].length,
                    beats_per_second=beats_per_second,
                )
                for side in tethered
            ),
            default=inf,
        )

    def placed(self) -> Placing:
        """The best position with the body upright."""
        still = {side: np.zeros(3) for side in self.dance.sides}
        (usual,) = self.places([still])
        if usual.margins.least >= GOOD or not any(self.free) or self.pull < 0:
            return usual
        coarse = self._coarse()
        tried = [usual, *self.places(coarse[:1])]
        # What would not win with any margin needs no look.
        known = max(map(self.score, tried))
        may_win = [moves for moves in coarse[1:] if self.score(self._ample(moves)) > known]
        return self._refined(max([*tried, *self.places(may_win)], key=self.score))

    def _ample(self, moves: Mapping[Side, Floats]) -> Placing:
        """A position as good as its moves allow: nothing near, and the arms at ease."""
        return Placing(moves, UPRIGHT, Margins(inf, inf, inf, self.pull))

    def leaning(self, fit: Fit) -> list[Placing]:
        """Positions near a fit's, in each of the three postures that gain most there, smallest first."""
        moves = self.moves_of(fit)
        postures = _postures(self.dance.body)
        if not postures:
            return []
        tried = self.places([moves] * len(postures), postures)
        order = sorted(range(len(tried)), key=lambda k: -self.score(tried[k]))[:3]
        return [self._refined(tried[k]) for k in sorted(order)]

    def score(self, place: Placing) -> float:
        """Margin minus the cost of the moves [m]."""
        moved = sum(float(np.linalg.norm(EFFORT * move)) for move in place.moves.values())
        slack = 1.0 if self.burdened else 0.0
        # Hands near full arm's length leave no room for links.
        stretched = STRETCHED * max(0.0, AT_EASE - place.margins.reach)
        least = place.margins.least
        tight = TIGHT * max(0.0, SURE - least)
        return min(least, GOOD) - tight - COST * moved / len(place.moves) - stretched - slack

    def fit(self, place: Placing) -> Fit:
        """A position as parameters."""
        values: dict[Side, dict[str, ParameterValue]] = {}
        for side, move in place.moves.items():
            own = dict(self.shape.get(side, {}))
            own |= {
                name: round(float(self.usual[side][k] + move[k]), 4)
                for k, name in enumerate(PLACE_OFFSETS)
                if self.free[k] and abs(move[k]) > 1e-9
            }
            if own:
                values[side] = own
        return Fit(values=values, posture=place.posture, margins=place.margins)

    def moves_of(self, fit: Fit) -> dict[Side, Floats]:
        """Offset of each hand from the pattern's default position in a fit: outward, ahead, up [m]."""
        return {
            side: np.array(
                [
                    float(fit.values.get(side, {}).get(n, usual[k]))
                    for k, n in enumerate(PLACE_OFFSETS)
                ]
            )
            - usual
            for side, usual in self.usual.items()
        }

    def places(
        self,
        moves: Sequence[Mapping[Side, Floats]],
        postures: Sequence[Posture] = (),
        near: Mapping[Side, Ints] | None = None,
    ) -> list[Placing]:
        """Positions with their margins; the performer's body is tested only at the samples known to be near it."""
        if not moves:
            return []
        body, sides = self.dance.body, self.dance.sides
        stances = list(postures) or [UPRIGHT] * len(moves)
        angles = np.array([posture.angles for posture in stances])
        if len(set(stances)) == 1:
            angles = angles[:1]
        steps = {
            side: np.stack([m[side] for m in moves]) * np.array([sign_of(side), 1.0, 1.0])
            for side in sides
        }
        # Capsules × positions × samples.
        lows, highs = (ends[:, :, None] for ends in capsule_ends(body, angles))
        radii = np.array([capsule.radius for capsule in body.capsules])[:, None]
        own = np.full(len(moves), inf)
        reach = np.full(len(moves), inf)
        for side in sides:
            step = steps[side][:, None]
            for solid, start, end in self.bodies[side]:
                ends = (start, end) if near is None else (start[near[side]], end[near[side]])
                if solid.start == solid.end:
                    gap = point_segment(ends[0] + step, lows, highs)
                else:
                    gap = segment_segment(ends[0] + step, ends[1] + step, lows, highs)[0]
                own = np.minimum(own, (gap.min(axis=2) - radii).min(axis=0) - solid.radius)
            left = self._reach(self.motions[side].hand + step, side, angles)
            reach = np.minimum(reach, left.min(axis=1))
        other = self._between(steps)
        return [
            Placing(
                each, stance, Margins(float(own[k]), float(other[k]), float(reach[k]), self.pull)
            )
            for k, (each, stance) in enumerate(zip(moves, stances, strict=True))
        ]

    def _reach(self, hands: Floats, side: Side, angles: Floats) -> Floats:
        """Spare arm length at positions of a hand (m, n, 3), body in m postures or one; shape (m, n) [m]."""
        body = self.dance.body
        away = hands - shoulders(body, angles, side)[:, None]
        if angles.any():
            rows = np.repeat(np.broadcast_to(angles, (len(hands), 5)), hands.shape[1], axis=0)
            away = to_trunk(away.reshape(-1, 3), rows).reshape(away.shape)
        beyond = away - nearest_give(body, away, side)
        return np.asarray(body.arm_length - np.sqrt(np.einsum("mni,mni->mn", beyond, beyond)))

    def _between(self, steps: Mapping[Side, Floats]) -> Floats:
        """Gap between the two props with the hands moved by steps (m, 3) [m, body frame], shape (m,)."""
        if len(steps) < 2:
            return np.full(len(next(iter(steps.values()))), inf)
        shift = steps["left"] - steps["right"]  # often the same: both hands are moved alike
        different = {each.tobytes(): k for k, each in enumerate(shift)}
        which = {key: n for n, key in enumerate(different)}
        found = self._pairs(shift[list(different.values())], slice(None))
        return found[[which[each.tobytes()] for each in shift]]

    def _pairs(self, shift: Floats, rows: slice) -> Floats:
        """Gap between the two props at some samples with the left one moved by m shifts, shape (m,)."""
        (left, ball), (right, other) = (self._passing_at(side, rows) for side in SIDES)
        way = [
            ball[0][:, k] + shift[:, k, None] - other[0][:, k] for k in range(3)
        ]  # coordinates apart, summed in the order of numpy's einsum
        apart = np.sqrt(way[0] * way[0] + way[2] * way[2] + way[1] * way[1]) - ball[1] - other[1]
        gap = np.asarray(apart.min(axis=1))
        place, look = np.nonzero(apart < APART)
        if not len(place):
            return gap
        near: Floats = np.full(len(shift), inf)
        # Some samples first: what is farther by the balls than the gap known by then needs no more.
        first = look % _THIN == 0
        for chosen in (first, ~first):
            places, looks = place[chosen], look[chosen]
            nearer = apart[places, looks] < near[places] + _ROUNDING
            places, looks = places[nearer], looks[nearer]
            if len(places):
                np.minimum.at(near, places, gaps_between(left, right, shift[places], looks))
        far = np.where(apart < APART, inf, apart).min(axis=1)
        return np.asarray(np.minimum(near, far))

    @cached_property
    def _passed(self) -> dict[tuple[object, ...], Passing]:
        """What `_passing_at` has found."""
        return {}

    def _passing_at(self, side: Side, rows: slice) -> Passing:
        """A prop's bodies at some samples, and the balls that enclose it there."""
        key = side, rows.start, rows.stop, rows.step
        if key not in self._passed:
            bodies = [(solid, start[rows], end[rows]) for solid, start, end in self.passing[side]]
            self._passed[key] = bodies, ball_about(bodies)
        return self._passed[key]

    def _coarse(self) -> list[dict[Side, Floats]]:
        """Best moves on the grid, using a table and few samples."""
        grids = [
            _STEP * np.arange(np.ceil(low / _STEP), np.floor(high / _STEP) + 1)
            if free
            else np.zeros(1)
            for (low, high), free in zip(self.ranges, self.free, strict=True)
        ]
        shape = tuple(len(grid) for grid in grids)
        offsets = np.stack(np.meshgrid(*grids, indexing="ij"), axis=-1).reshape(-1, 3)
        alone: dict[Side, Floats] = {
            side: self._alone(side, offsets).reshape(shape) for side in self.dance.sides
        }
        cost = COST * np.linalg.norm(EFFORT * offsets, axis=1).reshape(shape)
        if len(alone) == 1:
            ((side, own),) = alone.items()
            score = (np.minimum(own, GOOD) - cost).ravel()
            return [
                {side: offsets[i]}
                for i in np.argsort(-score, kind="stable")[:10]
                if score[i] > -0.2
            ]
        splits = self._splits()
        halves = _STEP * np.array(splits)
        across = np.zeros((len(grids[0]), 3))
        across[:, 0] = grids[0]
        shift = -2 * (across[:, None] + halves[None])
        pairs = self._pairs(shift.reshape(-1, 3), self.sparse)
        # Few samples can only overestimate the margin: what is too near by them needs no more.
        near = np.flatnonzero(pairs > 0)
        pairs[near] = self._pairs(shift.reshape(-1, 3)[near], slice(None, None, self.often))
        pairs = pairs.reshape(len(across), len(splits))
        out: list[tuple[float, dict[Side, Floats]]] = []
        for k, (split, half) in enumerate(zip(splits, halves, strict=True)):
            right, left = _shifted(alone["right"], split, 1), _shifted(alone["left"], split, -1)
            both = np.minimum(np.minimum(right, left), pairs[:, k, None, None])
            score = (np.minimum(both, GOOD) - cost).ravel() - COST * float(
                np.linalg.norm(EFFORT * half)
            )
            # Stable: where many positions score the same, every machine picks the same ones.
            top = np.argsort(-score, kind="stable")[:3]
            for i in sorted(top.tolist()):
                if score[i] > -0.2:
                    moves: dict[Side, Floats] = {
                        "right": offsets[i] + half,
                        "left": offsets[i] - half,
                    }
                    out.append((float(score[i]), moves))
        out.sort(key=lambda each: -each[0])
        return [moves for _, moves in out[:10]]

    def _splits(self) -> list[tuple[int, int, int]]:
        """Number of steps by which the right hand moves one way and the left the other."""
        ahead, up = ((0, 1, -1, 2, -2) if free else (0,) for free in self.free[1:])
        return [(0, a, u) for a in ahead for u in up if abs(a) + abs(u) <= 2]

    def _alone(self, side: Side, offsets: Floats) -> Floats:
        """Margin of one hand's prop from the performer's body, −inf out of reach, at n offsets, body upright."""
        out: Floats = np.full(len(offsets), -inf)
        moves = offsets * np.array([sign_of(side), 1.0, 1.0])
        hands = self.motions[side].hand
        hands = hands[:: max(1, len(hands) // 24)]
        near = np.flatnonzero(self._upright_reach(side, hands, moves) >= REACH_SPARE)
        if not len(near):
            return out
        points, radii = balls_of(self.dance.props[side], rows_of(self.motions[side], self.thin))
        table = table_of(self.dance.body)
        cells, steps = table.cells(points), np.rint(moves[near] / CELL).astype(np.int32)
        gaps = [table.least_moved(cells[radii == r], steps) - r for r in np.unique(radii)]
        out[near] = np.min(gaps, axis=0)
        return out

    def _upright_reach(self, side: Side, hands: Floats, moves: Floats) -> Floats:
        """Least spare arm length of a hand (n, 3) moved by m steps (m, 3), body upright, shape (m,) [m].

        The box that the shoulder moves in lies along the axes, and each axis has few distinct moves.
        """
        body = self.dance.body
        shoulder = shoulders(body, np.zeros((1, 5)), side)[0]
        squares, places = [], []
        for k in range(3):
            own, which = np.unique(moves[:, k], return_inverse=True)
            away = np.zeros((len(hands), len(own), 3))
            away[..., k] = hands[:, k, None] + own - shoulder[k]
            beyond = (away - nearest_give(body, away, side))[..., k]
            squares.append(beyond * beyond)
            places.append(which)
        aside = squares[0][:, :, None] + squares[2][:, None]
        far = np.array([(aside + ahead[:, None, None]).max(axis=0) for ahead in squares[1].T])
        return np.asarray(body.arm_length - np.sqrt(far[places[1], places[0], places[2]]))

    def _refined(self, best: Placing) -> Placing:
        """Refine by smaller steps of one move at a time, while they help."""
        sides, posture = self.dance.sides, best.posture
        ways: list[dict[Side, Floats]] = []
        for k in range(3):
            if self.free[k]:
                unit = np.eye(3)[k]
                ways += [dict.fromkeys(sides, sign * unit) for sign in (1.0, -1.0)]
                if len(sides) == 2 and k:
                    ways += [{"right": n * unit, "left": -n * unit} for n in (1.0, -1.0)]
        if not ways:
            return best
        near, vain = self._near(best), 0.0
        for step in (0.03, 0.03, 0.015, 0.015):
            if best.margins.least >= GOOD:
                break
            if step == vain:
                continue  # the same again
            moves = [
                {s: np.clip(best.moves[s] + step * way[s], *self.limits) for s in sides}
                for way in ways
            ]
            found = max(self.places(moves, [posture] * len(moves), near), key=self.score)
            if self.score(found) > self.score(best) + 1e-6:
                best = found
            else:
                vain = step
        return self.places([best.moves], [posture])[0]

    def _near(self, at: Placing) -> dict[Side, Ints]:
        """Samples at which a hand's prop is near the body, or nearly nearest."""
        out = {}
        table = table_of(self.dance.body, at.posture)
        for side in self.dance.sides:
            step = at.moves[side] * np.array([sign_of(side), 1.0, 1.0])
            points, radii = balls_of(self.dance.props[side], self.motions[side])
            gap = table.moved(table.cells(points + step), np.zeros((1, 3), np.int32))[:, 0] - radii
            gap = gap.reshape(-1, len(self.beats)).min(axis=0)
            out[side] = np.flatnonzero(gap <= gap.min() + 0.12)
        return out


def _shifted(values: Floats, split: tuple[int, int, int], sign: int) -> Floats:
    """Values at grid positions moved by a split, −inf beyond the grid."""
    out: Floats = np.full(values.shape, -inf)
    into, of = [], []
    for count, step in zip(values.shape, split, strict=True):
        move = sign * step
        into.append(slice(max(0, -move), count - max(0, move)))
        of.append(slice(max(0, move), count - max(0, -move)))
    out[tuple(into)] = values[tuple(of)]
    return out


@lru_cache(maxsize=64)
def _postures(body: Body) -> tuple[Posture, ...]:
    """Postures to try, smallest first."""
    angles = [
        {"lean": -5.0}, {"turn": 15.0}, {"turn": -15.0}, {"tilt": 15.0}, {"tilt": -15.0},
        {"nod": -12.0}, {"lean": -9.0}, {"lean": 8.0}, {"turn": 25.0}, {"turn": -25.0},
        {"turn": 15.0, "lean": -5.0}, {"turn": -15.0, "lean": -5.0},
    ]  # fmt: skip
    found = [Posture(**{k: radians(v) for k, v in each.items()}) for each in angles]
    inside = in_column(body, np.array([posture.angles for posture in found]))
    return tuple(p for p, good in zip(found, inside, strict=True) if good)
