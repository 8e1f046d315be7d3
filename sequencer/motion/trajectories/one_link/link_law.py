"""The law of a link: the hand on a piecewise quintic, the tether on a path over the sphere, the plane tilting with it.

Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from sequencer.arrays import Floats, crossed
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.phases import STEP_ACCELERATION, STEP_RATE, smooth_step
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.hand_paths import (
    BOUND_PIECES,
    Piecewise,
    hand_figures,
    jets,
    portions,
)
from sequencer.motion.trajectories.one_link.link_limits import tether_bounds
from sequencer.motion.trajectories.one_link.sphere import moved
from sequencer.units import counted


@dataclass(frozen=True, kw_only=True, eq=False)
class LinkLaw:
    """A transition of some beats; its polynomials extend beyond them."""

    beats: float
    hand: Piecewise  # one path
    frame: Floats  # (3, 3) rows p₁, p₂, pole
    angles: Piecewise  # one path [rad] of azimuth and elevation
    tilt: tuple[float, float]  # [rad] of the plane about the tether, at the start and at the end

    def __repr__(self) -> str:
        return f"<LinkLaw of {counted(float(self.beats), 'beat')}>"

    @property
    def period(self) -> float:
        """inf: a link does not repeat."""
        return float("inf")

    def at(self, beats: Floats) -> Motion:
        """State at the link's beats, shape (...); exact to rounding."""
        beats = np.asarray(beats, dtype=np.float64)
        x = beats.ravel() / self.beats
        place, speed, hand_acceleration = hand_at(self.hand, self.beats, x)
        turns = hand_at(self.angles, self.beats, x)
        tether, rate, acceleration = (
            part[0] for part in moved(self.frame[None], *(turn[None] for turn in turns))
        )
        plane = planes_of(self.frame, turns[0], self.tilt, x, tether)

        def shaped(part: Floats) -> Floats:
            return np.asarray(part).reshape(*beats.shape, 3)

        return Motion(
            hand=shaped(place),
            hand_rate=shaped(speed),
            hand_acceleration=shaped(hand_acceleration),
            tether=shaped(tether),
            tether_rate=shaped(rate),
            tether_acceleration=shaped(acceleration),
            plane=shaped(plane),
        )

    def bounds(self) -> Bounds:
        """Proven bounds over its beats: the worst of its parts."""
        return self._bounds

    @cached_property
    def _bounds(self) -> Bounds:
        return worst(*(bounds for _, _, bounds in self.parts))

    def reach_of(self, body: Body, side: Side) -> float:
        """Proven bound on the hand's distance from the nearest position of the upright body's shoulder [m]."""
        reach = hand_figures(self.hand, np.array([self.beats]), body=body, side=side)[0]
        return float(reach[0]) * ROUNDING_UP

    @cached_property
    def parts(self) -> "LinkParts":
        """Proven bounds on each sixteenth of the link: (start, end, bounds) in the link's beats."""
        return _parts_of([self])[0]


LinkParts = tuple[tuple[float, float, Bounds], ...]


def know_parts(laws: Iterable[LinkLaw]) -> None:
    """Work out the parts of some links together, of which each then knows its own."""
    alike: dict[tuple[int, ...], list[LinkLaw]] = {}
    for law in dict.fromkeys(laws):
        if "parts" not in vars(law):
            alike.setdefault((*law.hand.knots, *law.angles.knots), []).append(law)
    for some in alike.values():
        for law, parts in zip(some, _parts_of(some), strict=True):
            vars(law)["parts"] = parts


def _parts_of(laws: Sequence[LinkLaw]) -> list[LinkParts]:
    """The parts of links whose paths have the same knots."""
    hands, angles = (
        Piecewise(each[0].knots, np.concatenate([own.pieces for own in each]))
        for each in ([law.hand for law in laws], [law.angles for law in laws])
    )
    beats = np.array([law.beats for law in laws])
    hand = [hands.controls(order, beats) for order in range(4)]
    tether = tether_bounds(angles, beats)
    turn, acceleration = tether.turn, tether.acceleration

    def size(order: int, axes: int | None = None) -> Floats:
        norms: Floats = np.linalg.norm(hand[order][..., :axes], axis=-1).max(axis=2)
        return norms * ROUNDING_UP

    # The frame of tether and plane turns with ω = α'p + ψ'e + τ'd, the pole p across e; so |u'| ≤ |ω| and
    # |u''| ≤ |ω'| + |ω|² for whatever is fixed to it, with |e'| = |α'|.
    (bend, curve), (rise, lift) = tether.azimuth, tether.elevation
    tilt, long = np.array([abs(law.tilt[1] - law.tilt[0]) for law in laws])[:, None], beats[:, None]
    roll = STEP_RATE * tilt / long
    frame = np.hypot(bend, rise) + roll
    twirl = np.hypot(curve, lift) + bend * rise
    square = np.array([law.beats**2 for law in laws])[:, None]
    twirl += STEP_ACCELERATION * tilt / square + roll * turn
    columns = np.stack((
        size(1), size(2), turn * ROUNDING_UP, acceleration * ROUNDING_UP, size(0, 2), size(3),
        frame * ROUNDING_UP, (twirl + frame**2) * ROUNDING_UP, tether.jerk * ROUNDING_UP,
    ), axis=-1)  # fmt: skip
    return [
        tuple(
            (k * step, (k + 1) * step, Bounds(**dict(zip(_BOUNDS, own, strict=True))))
            for k, own in enumerate(rows)
        )
        for step, rows in zip((beats / BOUND_PIECES).tolist(), columns.tolist(), strict=True)
    ]


_BOUNDS = (
    "hand_speed",
    "hand_acceleration",
    "turn_rate",
    "turn_acceleration",
    "hand_reach",
    "hand_jerk",
    "frame_rate",
    "frame_acceleration",
    "turn_jerk",
)  # of a part, in the order of their rows


def worst(*bounds: Bounds) -> Bounds:
    """Bounds that cover all of the given ones."""
    return Bounds(
        hand_speed=max(b.hand_speed for b in bounds),
        hand_acceleration=max(b.hand_acceleration for b in bounds),
        turn_rate=max(b.turn_rate for b in bounds),
        turn_acceleration=max(b.turn_acceleration for b in bounds),
        hand_reach=max(b.hand_reach for b in bounds),
        hand_jerk=max(b.hand_jerk for b in bounds),
        frame_rate=max(b.frame_rate for b in bounds),
        frame_acceleration=max(b.frame_acceleration for b in bounds),
        turn_jerk=max(b.turn_jerk for b in bounds),
    )


def hand_at(paths: Piecewise, beats: float, x: Floats) -> tuple[Floats, Floats, Floats]:
    """The first of some paths and its derivatives by beats, at fractions of its duration.

    Parameters
    ----------
    paths : Piecewise
    beats : float
    x : ndarray, shape (k,) [1]

    Returns
    -------
    value, rate, acceleration : ndarray, shape (k, m) [m, m/beat, m/beat², body frame, or rad and so on]

    Notes
    -----
    Source: polynomial in each piece's local fraction. Exact to rounding.
    """
    one = Piecewise(paths.knots, paths.pieces[:1])
    value, rate, acceleration = jets(one, beats, portions(paths.knots, x))[:, 0]
    return value, rate, acceleration


def planes_of(
    frame: Floats, turns: Floats, tilt: tuple[float, float], x: Floats, tether: Floats
) -> Floats:
    """Planes of one tether path with its azimuth and elevation (k, 2), shape (k, 3) [1, body frame]."""
    up = up_from(turns) @ frame
    turn = tilt[0] + (tilt[1] - tilt[0]) * smooth_step(x)[0]
    return np.asarray(np.cos(turn)[:, None] * up + np.sin(turn)[:, None] * crossed(tether, up))


def up_from(turns: Floats) -> Floats:
    """The direction perpendicular to a tether towards the pole, in the frame's axes."""
    alpha, psi = turns[..., 0], turns[..., 1]
    down = -np.sin(psi)
    found: Floats = np.empty((*psi.shape, 3))
    found[..., 0], found[..., 1] = down * np.cos(alpha), down * np.sin(alpha)
    found[..., 2] = np.cos(psi)
    return found


def law_record(law: LinkLaw) -> dict[str, Any]:
    """A link's law as JSON, every digit kept."""
    return {
        "beats": law.beats,
        "hand": [law.hand.knots, law.hand.pieces.tolist()],
        "angles": [law.angles.knots, law.angles.pieces.tolist()],
        "frame": law.frame.tolist(),
        "tilt": law.tilt,
    }


def restored_law(record: Mapping[str, Any]) -> LinkLaw:
    """The law of a record."""
    hand, angles = (
        Piecewise(tuple(knots), np.array(pieces, dtype=np.float64))
        for knots, pieces in (record["hand"], record["angles"])
    )
    return LinkLaw(
        beats=record["beats"],
        hand=hand,
        frame=np.array(record["frame"], dtype=np.float64),
        angles=angles,
        tilt=(record["tilt"][0], record["tilt"][1]),
    )
