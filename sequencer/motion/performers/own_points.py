"""The points of one hand and its prop as the body has them: shoulder, hand, far and rear end, wherever the performer stands.

At a single instant they are known for as many places on the floor as are tried. Body frame [m], beats.
"""

from typing import NamedTuple, Protocol

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.kept import recent
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.body_parts import FIRST_POINT, REAR
from sequencer.motion.props.prop import Prop

_MOST_INSTANTS = 5_000


class _Moves(Protocol):
    """A trajectory."""

    def at(self, beats: Floats) -> Motion:
        """State at show beats, body frame."""
        ...


class OwnPoint(NamedTuple):
    """One point."""

    number: int  # among those of `Dancer.stage_points`
    place: Floats  # (..., 3) [m, body frame]
    rate: Floats  # (..., 3) [m/beat, body frame]


def own_points(
    side: Side, prop: Prop, trajectory: _Moves, carriage: Carriage, beats: Floats
) -> list[OwnPoint]:
    """The points of one side at some beats; nobody changes them.

    Parameters
    ----------
    side : {"left", "right"}
    prop : Prop
        In that hand.
    trajectory : trajectory
        Of that prop.
    carriage : Carriage
    beats : ndarray, shape (...) [beats]

    Notes
    -----
    Source: docs/motion.md, section 2. Exact.
    """
    if beats.size != 1:
        return _points(side, prop, trajectory, carriage, beats)
    parts = prop, trajectory, carriage

    def work() -> tuple[object, list[OwnPoint]]:
        return parts, _points(side, prop, trajectory, carriage, beats)

    # The parts are held, so that their ids stay their own.
    key = (side, *map(id, parts), beats.shape, beats.tobytes())
    return recent("points at instants", key, work, most=_MOST_INSTANTS)[1]


def _points(
    side: Side, prop: Prop, trajectory: _Moves, carriage: Carriage, beats: Floats
) -> list[OwnPoint]:
    motion, first, far, row = trajectory.at(beats), FIRST_POINT[side], prop.ball[0], beats.ravel()
    at, rate = carriage.shoulder(row, side), carriage.shoulder_rate(row, side)
    shape = (*beats.shape, 3)
    found = [
        OwnPoint(first, at.reshape(shape), rate.reshape(shape)),
        OwnPoint(first + 1, motion.hand, motion.hand_rate),
        OwnPoint(first + 2, motion.head(far), motion.head_rate(far)),
    ]
    if prop.two_ended:
        behind = -prop.behind
        found.append(OwnPoint(REAR[side], motion.head(behind), motion.head_rate(behind)))
    return found
