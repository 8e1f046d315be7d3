"""A performer with body, props and way over the floor, as points that move in the stage frame.

Stage frame [m]: origin where the centre line meets the downstage edge, X to the audience's right,
Y upstage, Z up. A performer with facing 0 faces the audience: body y = −Y, body x = −X.

Everything runs in beats. Distances do not depend on how fast the music is, and a tempo map only
renames instants, so what is proven over beats holds over seconds.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple, Protocol

import numpy as np
from numpy.typing import ArrayLike

from sequencer.arrays import Bools, Floats, as_floats
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.motion.floor import FloorPath
from sequencer.motion.law import Bounds
from sequencer.motion.props import TetheredProp
from sequencer.motion.state import Motion

TETHER_RADIUS = 0.01  # [m] half the thickness of a chain or leash; common practice

PartKind = Literal["body", "arm", "tether", "head"]


class PropCourse(Protocol):
    """What a dancer needs of a prop's course; `motion.course.Course` is one."""

    def at(self, beats: Floats) -> Motion:
        """State at show beats, body frame."""
        ...

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces of [start, end]."""
        ...


class Part(NamedTuple):
    """A capsule between two of a dancer's points."""

    name: str
    kind: PartKind
    side: Side | None
    start: int  # index of a point
    end: int  # index of a point, the same for a ball


# Points: foot and top of the body's axis, then shoulder, hand and head of the left and the right.
# All dancers have all of them; those of a side without a prop lie on the body's axis.
N_POINTS = 8
PARTS = (
    Part("body", "body", None, 0, 1),
    Part("left arm", "arm", "left", 2, 3),
    Part("left tether", "tether", "left", 3, 4),
    Part("left head", "head", "left", 4, 4),
    Part("right arm", "arm", "right", 5, 6),
    Part("right tether", "tether", "right", 6, 7),
    Part("right head", "head", "right", 7, 7),
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pieces:
    """Proven bounds over contiguous spans of beats; n spans, m = 8 points."""

    edges: Floats  # (n + 1,) [beats]
    speed: Floats  # (n, m) [m/beat] of each point
    acceleration: Floats  # (n, m) [m/beat²]
    reach: Floats  # (n,) [m] of every part's surface from the body's axis, on the plan
    drift: Floats  # (n,) [m/beat] speed of the place
    swing: Floats  # (n, 2) [m/beat] speed of left and right hand in the body frame


@dataclass(frozen=True, kw_only=True, eq=False)
class Dancer:
    """A performer through a whole show.

    Parameters
    ----------
    name : str
    body : Body
    props : mapping of side to TetheredProp
    courses : mapping of side to course
        One for each prop; the hand of a side without a prop is taken to hang by the body.
    floor : FloorPath
    lit : sequence of (start, end)
        Spans of beats in which the heads burn.
    """

    name: str
    body: Body
    props: Mapping[Side, TetheredProp]
    courses: Mapping[Side, PropCourse]
    floor: FloorPath
    lit: tuple[tuple[float, float], ...] = ()

    def __post_init__(self) -> None:
        if set(self.props) != set(self.courses):
            raise ValueError(
                f"{self.name}: every prop needs a course and every course a prop, "
                f"got {sorted(self.props)} and {sorted(self.courses)}"
            )
        for start, end in self.lit:
            if not end > start:
                raise ValueError(
                    f"{self.name}: a burn must end after it starts, got {start}, {end}"
                )

    @property
    def reach(self) -> float:
        """Arm, tether, wick and flame stretched out from the body's axis [m]; 0 without props."""
        return max(
            (self.body.arm_length + prop.length + prop.hot_radius for prop in self.props.values()),
            default=self.body.half_breadth,
        )

    def is_lit(self, beats: ArrayLike) -> Bools:
        """Whether the heads burn, ends of the spans included.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        lit : ndarray, shape (...) [1]

        Notes
        -----
        Source: the show's own spans. Exact.
        """
        beat = as_floats("beats", beats)
        lit = np.zeros(beat.shape, dtype=np.bool_)
        for start, end in self.lit:
            lit |= (beat >= start) & (beat <= end)
        return lit

    def stage_points(self, beats: ArrayLike) -> tuple[Floats, Floats]:
        """Foot and top of the body's axis, then shoulder, hand and head of each side, and their rates.

        Parameters
        ----------
        beats : array_like, shape (...) [beats]

        Returns
        -------
        points : ndarray, shape (8, ..., 3) [m, stage frame]
        rates : ndarray, shape (8, ..., 3) [m/beat, stage frame]

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
        points[1:, ..., 2] = self.body.column.end[2]
        cos, sin = -np.cos(stand.facing), -np.sin(stand.facing)  # half a turn on: body y is −Y
        turning = stand.facing_rate
        for side in self.props:
            motion = self.courses[side].at(beat)
            length = self.props[side].length
            shoulder = self.body.shoulder(side)
            for i, (place, rate) in enumerate(
                (
                    (shoulder, np.zeros(3)),
                    (motion.hand, motion.hand_rate),
                    (motion.head(length), motion.head_rate(length)),
                ),
                start=_FIRST[side],
            ):
                x = cos * place[..., 0] - sin * place[..., 1]
                y = sin * place[..., 0] + cos * place[..., 1]
                points[i, ..., 0] += x
                points[i, ..., 1] += y
                points[i, ..., 2] = place[..., 2]
                rates[i, ..., 0] += cos * rate[..., 0] - sin * rate[..., 1] - turning * y
                rates[i, ..., 1] += sin * rate[..., 0] + cos * rate[..., 1] + turning * x
                rates[i, ..., 2] = rate[..., 2]
        return points, rates

    def radii(self, points: Floats, lit: Bools) -> Floats:
        """Radius of every part.

        Parameters
        ----------
        points : ndarray, shape (8, ..., 3) [m, stage frame]
            As `stage_points` gives them.
        lit : ndarray, shape (...) [1]
            Whether the heads burn.

        Returns
        -------
        radii : ndarray, shape (7, ...) [m]

        Notes
        -----
        Source: `Body.elbow_room` for the arms; wick and flame as the show states them. Upper bounds.
        """
        out = np.full((len(PARTS), *lit.shape), self.body.half_breadth)
        for k, part in enumerate(PARTS):
            if part.side is None or part.side not in self.props:
                continue
            if part.kind == "arm":
                span = np.linalg.norm(points[part.end] - points[part.start], axis=-1)
                out[k] = self.body.limb_radius + self.body.elbow_room(span)
            elif part.kind == "tether":
                out[k] = TETHER_RADIUS
            else:
                prop = self.props[part.side]
                out[k] = np.where(lit, prop.hot_radius, prop.wick_radius)
        return out

    def pieces(self, start: float, end: float) -> Pieces:
        """Proven bounds of every point on contiguous spans between two beats.

        Raises
        ------
        ValueError
            If `end` is not after `start`, or a course's bound is not finite.

        Notes
        -----
        In the stage frame a point at distance ρ from the axis moves at most at v + |φ'|ρ + |p'| and
        accelerates at most with a + (|φ''| + φ'²)ρ + 2|φ'||p'| + |p''|.
        """
        if not end > start:
            raise ValueError(f"end must come after start, got {start} and {end}")
        floor = self.floor.pieces(start, end)
        courses = {side: self.courses[side].pieces(start, end) for side in self.props}
        edges = np.unique(
            [start, end]
            + [edge for piece in floor for edge in piece[:2]]
            + [edge for course in courses.values() for piece in course for edge in piece[:2]]
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
        reach = np.full(n, self.body.half_breadth)
        swing = np.zeros((n, 2))
        for side, course in courses.items():
            bounds = [course[i][2] for i in _which(course, middle)]
            prop = self.props[side]
            hand = np.array([(b.hand_reach, b.hand_speed, b.hand_acceleration) for b in bounds]).T
            if not np.all(np.isfinite(hand)):
                raise ValueError(f"{self.name}: a bound is not finite, nothing can be proven")
            length = prop.length
            head = np.array(
                [
                    (b.hand_reach + length, b.head_speed(length), b.head_acceleration(length))
                    for b in bounds
                ]
            ).T
            shoulder = np.zeros((3, n))
            shoulder[0] = self.body.half_shoulder
            for i, own in enumerate((shoulder, hand, head), start=_FIRST[side]):
                rho, dp, ddp = own[0], own[1], own[2]
                speed[:, i] = v + w * rho + dp
                acceleration[:, i] = a + (dw + w * w) * rho + 2 * w * dp + ddp
            swing[:, SIDES.index(side)] = hand[1]
            arm = np.maximum(hand[0], self.body.half_shoulder) + self.body.limb_radius
            elbow = float(self.body.elbow_room(0.0))
            reach = np.maximum(reach, np.maximum(arm + elbow, head[0] + prop.hot_radius))
        return Pieces(
            edges=edges, speed=speed, acceleration=acceleration, reach=reach, drift=v, swing=swing
        )


_FIRST: dict[Side, int] = {"left": 2, "right": 5}  # index of each side's shoulder


def _which(pieces: tuple[tuple[float, float, object], ...], beats: Floats) -> list[int]:
    starts = np.array([piece[0] for piece in pieces])
    found = np.searchsorted(starts, beats, side="right") - 1
    return [int(i) for i in np.clip(found, 0, len(pieces) - 1)]
