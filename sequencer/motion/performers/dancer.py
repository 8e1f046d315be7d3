"""A performer with body, props and walking path, as points moving in the stage frame.

Stage frame [m]: origin where the centre line meets the downstage edge, X to the audience's right,
Y upstage, Z up. A performer with facing 0 faces the audience: body y = −Y, body x = −X.

Everything runs in beats. Distances do not depend on the tempo, and a tempo map only relabels instants, so
what is proven over beats also holds over seconds.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Protocol

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Bools, Floats, as_floats
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.kept import recent
from sequencer.motion.laws.bound_table import bound_table
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import FIRST_POINT, N_POINTS, PARTS, REAR, HandDeviation
from sequencer.motion.performers.own_points import own_points
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.units import counted

_MOST_STEPS = 500


class PropTrajectory(Protocol):
    """The trajectory interface that a dancer needs; implemented by `motion.trajectories.trajectory.Trajectory`."""

    def at(self, beats: Floats) -> Motion:
        """State at show beats, body frame."""
        ...

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces of [start, end]."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pieces:
    """Proven bounds over contiguous spans of beats; n spans, m = 10 points."""

    edges: Floats  # (n + 1,) [beats]
    speed: Floats  # (n, m) [m/beat] of each point
    acceleration: Floats  # (n, m) [m/beat²]
    reach: Floats  # (n,) [m] largest horizontal distance of any part's surface from the body's axis
    drawn: Floats  # (n,) [m] the same without hand deviation
    place_speed: Floats  # (n,) [m/beat] speed of the performer's position
    hand_speed: (
        Floats  # (n, 2) [m/beat] speed at which each hand moves away from or towards its shoulder
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class Dancer:
    """A performer through a whole show.

    Parameters
    ----------
    name : str
    body : Body
    props : mapping of side to Prop
        A hand may be empty.
    trajectories : mapping of side to Trajectory
        One for each prop; a hand without a prop is assumed to hang by the body.
    floor : WalkPath
    lit : sequence of (start, end)
        Spans of beats in which the heads burn.
    deviation : mapping of side to HandDeviation
        Margin by which arm, prop and wicks of a side are widened while it lasts; the larger if two overlap.
    carriage : Carriage, optional
        Postures of the body; default: upright throughout. Trunk and head always stay within the column, so
        for distances to others it affects only the shoulders.
    """

    name: str
    body: Body
    props: Mapping[Side, Prop]
    trajectories: Mapping[Side, PropTrajectory]
    floor: WalkPath
    lit: tuple[tuple[float, float], ...] = ()
    deviation: Mapping[Side, tuple[HandDeviation, ...]] = field(default_factory=dict)
    carriage: Carriage = None  # type: ignore[assignment]  # upright, set below

    def __post_init__(self) -> None:
        if self.carriage is None:
            object.__setattr__(self, "carriage", Carriage(body=self.body))
        if set(self.props) != set(self.trajectories):
            raise ValueError(
                f"{self.name}: every prop needs a trajectory and every trajectory a prop, "
                f"got {sorted(self.props)} and {sorted(self.trajectories)}"
            )
        for start, end in self.lit:
            if not end > start:
                raise ValueError(
                    f"{self.name}: a burn must end after it starts, got {start}, {end}"
                )

    def __repr__(self) -> str:
        held = ", ".join(f"{prop.kind} {side}" for side, prop in self.props.items()) or "no prop"
        return (
            f"<Dancer {self.name}: {self.body.stature:g} m tall, {held}, "
            f"{counted(len(self.lit), 'burn')}, reach {self.reach:.2f} m>"
        )

    @property
    def reach(self) -> float:
        """Reach of arm, prop, wick and flame stretched sideways from the body's axis [m]; at least the body's column.

        Includes the largest lean of the trunk, but not the movement of the shoulder.
        """
        arm = self.carriage.shoulder_reach + self.body.arm_length
        held = (arm + prop.farthest + prop.hot_radius for prop in self.props.values())
        return max(self.body.girth, *held, 0.0)

    @cached_property
    def _grip_reach(self) -> float:
        """Bound on a grip's horizontal distance from the body's axis, the shoulder moved as far as it can be [m]."""
        give = float(np.hypot(*np.abs(self.body.shoulder_give).max(axis=0)[:2]))
        return self.carriage.shoulder_reach + give + self.body.arm_length

    @property
    def overhead(self) -> float:
        """Height of arm, prop, wick and flame stretched straight up [m]; 0 with empty hands."""
        held = (
            self.body.overhead_grip + prop.farthest + prop.hot_radius
            for prop in self.props.values()
        )
        return max(held, default=0.0)

    def is_lit(self, beats: ArrayLike) -> Bools:
        """Whether the heads are lit, including both ends of each span.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        lit : ndarray, shape (...) [1]

        Notes
        -----
        Source: the show's lit spans. Exact.
        """
        beat = as_floats("beats", beats)
        lit = np.zeros(beat.shape, dtype=np.bool_)
        for start, end in self.lit:
            lit |= (beat >= start) & (beat <= end)
        return lit

    def stage_points(self, beats: ArrayLike) -> tuple[Floats, Floats]:
        """Foot and top of the body's axis, shoulder, hand and far end of each side, rear ends; and their velocities.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        points : ndarray, shape (10, ..., 3) [m, stage frame]
        rates : ndarray, shape (10, ..., 3) [m/beat, stage frame]

        Notes
        -----
        Source: motion of a point in a turning frame (any mechanics textbook). Exact.
        """
        beat = as_floats("beats", beats)
        stand = self.floor.at(beat)
        points = np.zeros((N_POINTS, *beat.shape, 3))
        rates = np.zeros_like(points)
        points[..., :2] = stand.place
        rates[..., :2] = stand.place_rate
        points[1:, ..., 2] = self.carriage.column_top
        cos, sin = (
            -np.cos(stand.facing),
            -np.sin(stand.facing),
        )  # rotated by half a turn: body y is −Y
        turning = stand.facing_rate
        for side in self.props:
            prop, first, rear = self.props[side], FIRST_POINT[side], REAR[side]
            own = own_points(side, prop, self.trajectories[side], self.carriage, beat)
            for i, place, rate in own:
                x = cos * place[..., 0] - sin * place[..., 1]
                y = sin * place[..., 0] + cos * place[..., 1]
                points[i, ..., 0] += x
                points[i, ..., 1] += y
                points[i, ..., 2] = place[..., 2]
                rates[i, ..., 0] += cos * rate[..., 0] - sin * rate[..., 1] - turning * y
                rates[i, ..., 1] += sin * rate[..., 0] + cos * rate[..., 1] + turning * x
                rates[i, ..., 2] = rate[..., 2]
            if not prop.two_ended:
                points[rear], rates[rear] = points[first + 1], rates[first + 1]
        return points, rates

    @property
    def two_ended(self) -> bool:
        """Whether any prop extends behind the hand."""
        return any(prop.two_ended for prop in self.props.values())

    def carries(self, part: int) -> bool:
        """Whether a part exists: parts of an empty hand do not, nor does a rear end that the prop lacks."""
        side = PARTS[part].side
        if side is None:
            return True
        prop = self.props.get(side)
        return prop is not None and (PARTS[part].kind != "rear" or prop.two_ended)

    def burns(self, part: int) -> bool:
        """Whether a part has wicks."""
        kind, side = PARTS[part].kind, PARTS[part].side
        if side is None or side not in self.props or kind not in ("head", "rear"):
            return False
        return kind == "head" or self.props[side].burns_behind

    def part_name(self, part: int) -> str:
        """Display name of a part."""
        own = PARTS[part]
        if own.side is None or own.side not in self.props or own.kind == "arm":
            return own.name
        prop = self.props[own.side]
        if own.kind == "tether":
            return f"{own.side} {prop.solids[0].name}"
        if own.kind == "rear":
            return f"{own.side} {'rear head' if prop.burns_behind else 'knob'}"
        return f"{own.side} {prop.kind if prop.ball[1] else 'head'}"

    def wick_places(self, beats: ArrayLike) -> dict[Side, Floats]:
        """Centre of every wick.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        places : dict
            For each side with a prop, an array of shape (k, ..., 3) [m, stage frame] in the order of
            `Prop.heads`.

        Notes
        -----
        Source: h + along·d + across·(n × d), turned and moved with the performer. Exact.
        """
        beat = as_floats("beats", beats)
        return {
            side: self.spots(side, beat, [(s.along, s.across) for s in prop.heads])
            for side, prop in self.props.items()
        }

    def spots(self, side: Side, beats: Floats, places: Sequence[tuple[float, float]]) -> Floats:
        """Points of a prop (along, across) in the stage frame.

        Parameters
        ----------
        side : {"left", "right"}
        beats : ndarray, shape (...) [beats]
        places : sequence of (float, float)
            From the hand [m].

        Returns
        -------
        points : ndarray, shape (k, ..., 3) [m, stage frame]

        Notes
        -----
        Source: docs/motion.md, section 2. Exact.
        """
        stand, motion = self.floor.at(beats), self.trajectories[side].at(beats)
        aside = np.cross(motion.plane, motion.tether)
        own = np.stack([motion.hand + a * motion.tether + c * aside for a, c in places])
        cos, sin = -np.cos(stand.facing), -np.sin(stand.facing)
        out = np.empty_like(own)
        out[..., 0] = stand.place[..., 0] + cos * own[..., 0] - sin * own[..., 1]
        out[..., 1] = stand.place[..., 1] + sin * own[..., 0] + cos * own[..., 1]
        out[..., 2] = own[..., 2]
        return out

    def deviations(self, beats: ArrayLike) -> Floats:
        """Margins for the deviation of the left and the right hand from their nominal paths.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        deviations : ndarray, shape (2, ...) [m]

        Notes
        -----
        Source: `deviation`, the larger of the two where spans meet. Exact.
        """
        beat = as_floats("beats", beats)
        out = np.zeros((2, *beat.shape))
        for k, side in enumerate(SIDES):
            edges, sizes = self._steps[side]
            if len(edges):
                before = np.searchsorted(edges, beat, side="left")
                after = np.searchsorted(edges, beat, side="right")
                out[k] = np.maximum(sizes[before], sizes[after])
        return out

    @cached_property
    def _steps(self) -> dict[Side, tuple[Floats, Floats]]:
        """Edges of each side's hand deviation, and its size before, between and after them."""
        # The same deviation is part of many dancers: it is held with its steps, so that its id stays its own.
        _, steps = recent(
            "deviation steps",
            (id(self.deviation), *sorted(self.props)),
            lambda: (self.deviation, self._new_steps()),
            most=_MOST_STEPS,
        )
        return steps

    def _new_steps(self) -> dict[Side, tuple[Floats, Floats]]:
        out: dict[Side, tuple[Floats, Floats]] = {}
        for side in SIDES:
            own = self.deviation.get(side, ()) if side in self.props else ()
            edges = np.unique([edge for each in own for edge in each[:2]])
            sizes = np.zeros(len(edges) + 1)
            for each in own:
                low, high = np.searchsorted(edges, each[:2])
                sizes[low + 1 : high + 1] = np.maximum(sizes[low + 1 : high + 1], each.size)
            out[side] = edges, sizes
        return out

    @property
    def changes(self) -> Floats:
        """Beats at which a radius jumps: heads lit or put out, change of hand deviation; shape (k,)."""
        steps = [edges for edges, _ in self._steps.values()]
        return np.asarray(np.unique(np.concatenate([np.ravel(self.lit), *steps])))

    def shells(self, points: Floats, beats: ArrayLike) -> Floats:
        """Radius of every part, including flames and hand deviation at each instant.

        Parameters
        ----------
        points : ndarray, shape (10, ..., 3) [m, stage frame]
            As returned by `stage_points`.
        beats : array_like, shape (...) [beats]

        Returns
        -------
        radii : ndarray, shape (9, ...) [m]

        Notes
        -----
        Source: `radii`, plus `deviations` for the arm and everything the hand holds. Upper bounds.
        """
        out = self.radii(points, self.is_lit(beats))
        return out + self.widened(beats) if self.deviation else out

    def widened(self, beats: ArrayLike) -> Floats:
        """By how much the radius of every part is widened for hands off their paths.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        more : ndarray, shape (9, ...) [m]

        Notes
        -----
        Source: `deviations`. Upper bounds.
        """
        more = self.deviations(beats)
        out = np.zeros((len(PARTS), *more.shape[1:]))
        for k, part in enumerate(PARTS):
            if part.side in self.props:
                out[k] = more[SIDES.index(part.side)]
        return out

    @property
    def look(self) -> tuple[object, ...]:
        """What decides `radii` and `is_lit`: dancers who are alike in it have the same radii at the same points."""
        props = tuple(
            (
                side, prop.burning_radius, prop.cold_radius, prop.hot_radius, prop.wick_radius,
                prop.shaft_radius, prop.burns_behind,
            )
            for side, prop in sorted(self.props.items())
        )  # fmt: skip
        return id(self.body), self.lit, props

    def radii(self, points: Floats, lit: Bools) -> Floats:
        """Radius of every part, with hands on their nominal paths.

        Parameters
        ----------
        points : ndarray, shape (10, ..., 3) [m, stage frame]
            As returned by `stage_points`.
        lit : ndarray, shape (...) [1]
            Whether the heads are lit.

        Returns
        -------
        radii : ndarray, shape (9, ...) [m]

        Notes
        -----
        Source: `Body.elbow_room` for the arms; wick and flame as given in the show. Upper bounds.
        """
        out = np.full((len(PARTS), *lit.shape), self.body.girth)
        for k, part in enumerate(PARTS):
            if part.side is None or part.side not in self.props:
                continue
            if part.kind == "arm":
                span = np.linalg.norm(points[part.end] - points[part.start], axis=-1)
                out[k] = self.body.limb_radius + self.body.elbow_room(span)
                continue
            prop = self.props[part.side]
            if part.kind == "head":
                out[k] = np.where(lit, prop.burning_radius, prop.cold_radius)
            elif part.kind == "rear" and prop.burns_behind:
                out[k] = np.where(lit, prop.hot_radius, prop.wick_radius)
            else:
                out[k] = prop.shaft_radius
        return out

    def pieces(self, start: float, end: float) -> Pieces:
        """Proven bounds for every point on contiguous spans between two beats.

        Raises
        ------
        ValueError
            If `end` is not after `start`, or a trajectory's bound is not finite.

        Notes
        -----
        In the stage frame a point at distance ρ from the axis moves at most at v + |φ'|ρ + |p'| and
        accelerates at most with a + (|φ''| + φ'²)ρ + 2|φ'||p'| + |p''|.
        """
        if not end > start:
            raise ValueError(f"end must come after start, got {start} and {end}")
        floor = self.floor.pieces(start, end)
        trajectories = {
            side: bound_table(self.trajectories[side], start, end) for side in self.props
        }
        edges = np.unique(
            [start, end]
            + [edge for piece in floor for edge in piece[:2]]
            + [edge for table in trajectories.values() for edge in (*table.starts, *table.ends)]
            + [edge for own, _ in self._steps.values() for edge in own]
            + self.carriage.edges.tolist()
        )
        edges = edges[(edges >= start) & (edges <= end)]
        middle = 0.5 * (edges[:-1] + edges[1:])
        ground = np.array(
            [
                (b.speed, b.acceleration, b.turn_rate, b.turn_acceleration)
                for b in (floor[i][2] for i in _which(floor, middle))
            ]
        ).T
        v, a, w, dw = ground
        n = len(middle)
        speed = np.repeat(v[:, None], N_POINTS, axis=1)
        acceleration = np.repeat(a[:, None], N_POINTS, axis=1)
        reach = np.full(n, self.body.girth)
        drawn, more = reach.copy(), self.deviations(middle)
        swing = np.zeros((n, 2))
        for side, table in trajectories.items():
            bounds = table.bounds[:, np.searchsorted(table.starts, middle, side="right") - 1]
            prop = self.props[side]
            hand = bounds[:3]
            if not np.all(np.isfinite(bounds[:5])):
                raise ValueError(f"{self.name}: a bound is not finite, nothing can be proven")
            gives = self.carriage.shoulder_bounds(edges[:-1], edges[1:])
            shoulder = np.stack((np.full(n, self.carriage.shoulder_reach), *gives))
            first = FIRST_POINT[side]
            moving = {
                first: shoulder,
                first + 1: hand,
                first + 2: _end(bounds, prop.ball[0]),
                REAR[side]: _end(bounds, prop.behind),
            }
            for i, own in moving.items():
                rho, dp, ddp = own[0], own[1], own[2]
                speed[:, i] = v + w * rho + dp
                acceleration[:, i] = a + (dw + w * w) * rho + 2 * w * dp + ddp
            swing[:, SIDES.index(side)] = hand[1] + gives[0]
            arm = np.maximum(hand[0], self.carriage.shoulder_reach) + self.body.limb_radius
            elbow = float(self.body.elbow_room(0.0))
            far = hand[0] + prop.farthest + prop.hot_radius
            own_reach = np.maximum(arm + elbow, far)
            drawn = np.maximum(drawn, own_reach)
            # A hand off its drawn path is still held by its arm, from a shoulder that may have moved.
            held = max(prop.farthest + prop.hot_radius, self.body.limb_radius)
            stretched = self._grip_reach + held
            off = np.minimum(own_reach + more[SIDES.index(side)], stretched)
            reach = np.maximum(reach, np.maximum(own_reach, off))
        return Pieces(
            edges=edges,
            speed=speed,
            acceleration=acceleration,
            reach=reach,
            drawn=drawn,
            place_speed=v,
            hand_speed=swing,
        )


def _end(bounds: Floats, length: float) -> Floats:
    """Reach, speed and acceleration of a point on the axis, shape (3, n); as `Bounds.head_speed`."""
    return np.stack(
        [bounds[0] + length, bounds[1] + length * bounds[3], bounds[2] + length * bounds[4]]
    )


def _which(pieces: tuple[tuple[float, float, object], ...], beats: Floats) -> list[int]:
    """The piece that each beat lies in; pieces cover all of them."""
    starts = np.array([piece[0] for piece in pieces])
    return [int(i) - 1 for i in np.searchsorted(starts, beats, side="right")]
