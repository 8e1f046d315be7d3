"""A dancer who misses a cue: late with all that follows for a while, or with left and right mixed up.

Each slip is a change of the dancer's own records, and holds between two beats only: from the cue until they have found
back in. Body frame [m], beats.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.laws.transforms import Mirrored
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.drifting import DriftedTrajectory, later
from sequencer.motion.performers.walks import Move
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.timing.position import TOUCH

_OTHER: dict[Side, Side] = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class MixedUp:
    """The other hand's trajectory, mirrored in the body's sagittal plane."""

    trajectory: PropTrajectory

    def at(self, beats: Floats) -> Motion:
        """State at show beats."""
        return Mirrored(self.trajectory).at(beats)  # type: ignore[arg-type]  # of which only `at` is used

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds: those of what is mirrored."""
        return self.trajectory.pieces(start, end)


def move_starts(dancer: Dancer) -> list[float]:
    """Beats at which another move of either hand begins, with the link that leads into it.

    Parameters
    ----------
    dancer : Dancer
        As drawn: of other trajectories nothing is known.
    """
    out: set[float] = set()
    for hand in dancer.trajectories.values():
        if not isinstance(hand, Trajectory):
            continue
        label, begun = "", None
        for span in hand.spans:
            if span.kind == "link":
                begun = span.start
                continue
            if span.label != label or begun is not None:
                out.add(span.start if begun is None else begun)
            label, begun = span.label, None
    return sorted(out)


def cues(dancer: Dancer, start: float, end: float) -> list[tuple[float, float]]:
    """Moments at which a dancer has to begin something, each with when the next one comes.

    Parameters
    ----------
    dancer : Dancer
    start, end : float [beats]
        Of the show; what begins with it has no cue.
    """
    begins = sorted({*move_starts(dancer)[1:], *(move.start for move in dancer.floor.moves)})
    inside = [beat for beat in begins if start + TOUCH < beat < end - TOUCH]
    return list(pairwise([*inside, end]))


def late(dancer: Dancer, beats: float, cue: float, until: float) -> tuple[Dancer, float]:
    """A dancer who begins too late at a cue.

    Parameters
    ----------
    dancer : Dancer
    beats : float
        How late [beats].
    cue, until : float
        From when, and when the next cue comes [beats].

    Returns
    -------
    dancer : Dancer
        True to life from `cue` to `back` only: before it on time, and after it again.
    back : float [beats]
        When they have found back in: what was begun late is danced and walked to its end.
    """
    moves, back = _late_moves(dancer.floor.moves, beats, cue, until)
    return replace(
        dancer,
        trajectories={
            side: DriftedTrajectory(own, beats, 0.0, 1.0, (0.0, 0.0, 0.0))
            for side, own in dancer.trajectories.items()
        },
        floor=replace(dancer.floor, moves=moves),
        deviation=later(dancer.deviation, beats),
    ), back


def _late_moves(
    moves: Sequence[Move], beats: float, cue: float, until: float
) -> tuple[tuple[Move, ...], float]:
    """Walks of which those that begin from the cue on are late; also when it is over."""
    back, out = until, list[Move]()
    for move in moves:
        begun, ended = move.start, move.end
        if cue - TOUCH <= begun < back - TOUCH:
            back = max(back, ended)
            begun, ended = begun + beats, ended + beats
        if out and begun < out[-1].end:  # whoever still walks sets off when they have arrived
            begun, ended = out[-1].end, out[-1].end + (ended - begun)
        out.append(replace(move, start=begun, end=ended))
    pushed = (
        own.end for own, move in zip(out, moves, strict=True) if 0 < own.start - move.start != beats
    )
    return tuple(out), max([back + beats, *pushed])


def mixed_up(dancer: Dancer) -> Dancer | None:
    """A dancer whose hands dance each other's part, mirrored; None if not both hold a prop."""
    if len(dancer.props) < 2:
        return None
    held = tuple(each._replace(posture=each.posture.mirrored()) for each in dancer.carriage.held)
    return replace(
        dancer,
        trajectories={side: MixedUp(dancer.trajectories[_OTHER[side]]) for side in dancer.props},
        deviation={_OTHER[side]: own for side, own in dancer.deviation.items()},
        carriage=replace(dancer.carriage, held=held),
    )
