"""A first look at a block that is changed: whether its fault is still there at some beats, whatever comes before and after.

A block between its blends is decided by itself, so that a value of the checks that is broken there stays broken, whichever
links are found beside it. Looking costs a fit of the pattern; the links, which cost more, are not sought.
"""

from collections.abc import Iterator

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.dance.feasible import NEARLY_STILL, STILL_SHARE
from sequencer.checks.fault_kinds import BEYOND_REACH, HIT, SLACK, TANGLE
from sequencer.errors import InputError
from sequencer.geometry.bodies import SIDES
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import (
    body_quantity,
    frame_rates,
    props_quantity,
    pull_quantity,
    reach_quantity,
    shape_of,
)
from sequencer.motion.performers.least_values import Quantity
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Trajectory
from sequencer.planning.trying.restaging import restaged_dancers
from sequencer.show.editing import Change, Insertion
from sequencer.staging.staged import Block, Staged

_LOOKS = 160  # beats of a block that are looked at
_MOST_BEATS = 16.0  # of it
_SURELY = 1.5  # times the error of a proven value by which it must be broken, and a rate by which it must be beyond one
_INSIDE = 0.01  # [beats] from a blend


def still_there(
    show: Staged,
    code: str,
    block: Block,
    changes: tuple[Change, ...],
    insertions: tuple[Insertion, ...] = (),
) -> bool:
    """Whether a block surely keeps a fault with a change; if not, nothing is known.

    Parameters
    ----------
    show : Staged
        Staged from a file, without a flight.
    code : str
        Of the fault, which lies in the block.
    block : Block
        As it is before the change, which leaves it where it is.
    changes, insertions
        As for `restaged`.
    """
    if code not in (BEYOND_REACH, TANGLE, SLACK, HIT):
        return False
    low, high = block.start + BLEND_HALF_WIDTH + _INSIDE, block.end - BLEND_HALF_WIDTH - _INSIDE
    middle = (low + high) / 2
    if high - low < 2 * BLEND_HALF_WIDTH:
        return False
    who = [each.name for each in show.dancers].index(block.who)
    try:
        seen = restaged_dancers(show, (who,), changes, insertions, at=middle, fly=False)
    except (InputError, ValueError):
        return False  # the trial says so
    if seen is None:
        return False
    half = min(high - low, _MOST_BEATS) / 2
    beats: Floats = np.linspace(middle - half, middle + half, _LOOKS, dtype=np.float64)
    return any(
        bool(np.any(values < bound)) for values, bound in _values(show, seen[0], code, beats)
    )


def _values(
    show: Staged, dancer: Dancer, code: str, beats: Floats
) -> Iterator[tuple[Floats, float]]:
    """The values of the checks at some beats, and what they are surely broken below."""
    hands = {
        side: own
        for side in SIDES
        if isinstance(own := dancer.trajectories.get(side), Trajectory) and _one_block(own, beats)
    }
    states = {side: own.at(beats) for side, own in hands.items()}
    ends = (float(beats[0]), float(beats[-1]))
    shapes = {
        side: shape_of(dancer.props[side], frame_rates(own, ends)) for side, own in hands.items()
    }
    if code == TANGLE:
        if len(hands) == len(SIDES):
            both = props_quantity(shapes=tuple(shapes[side] for side in SIDES))
            yield both.value(beats, *(states[side] for side in SIDES))[0], _broken(both)
        return
    for side, hand in hands.items():
        quantity: Quantity
        if code == BEYOND_REACH:
            quantity = reach_quantity(side=side, body=dancer.body, carriage=dancer.carriage)
            yield quantity.value(beats, states[side])[0], _broken(quantity)
        elif code == SLACK:
            if dancer.props[side].flexible:
                quantity = pull_quantity(
                    length=dancer.props[side].length, tempos=(show.tempo.beats_per_second,)
                )
                values = quantity.value(beats, states[side])[0]
                if not _nearly_stops(hand, states[side], beats, int(np.argmin(values))):
                    yield values, _broken(quantity)
        else:
            quantity = body_quantity(shape=shapes[side], body=dancer.body, carriage=dancer.carriage)
            yield quantity.value(beats, states[side])[0], _broken(quantity)


def _broken(quantity: Quantity) -> float:
    return -_SURELY * quantity.error


def _nearly_stops(trajectory: Trajectory, state: Motion, beats: Floats, at: int) -> bool:
    """Whether the prop may be said to stop at one of some beats, as in a stall, which is only noted."""
    span = next(span for span in trajectory.spans if span.start <= beats[at] <= span.end)
    turning = float(np.linalg.norm(state.tether_rate[at]))
    return turning < _SURELY * min(NEARLY_STILL, STILL_SHARE * span.law.bounds().turn_rate)


def _one_block(trajectory: Trajectory, beats: Floats) -> bool:
    """Whether one block goes from the first of some beats to the last."""
    return any(
        span.kind == "block"
        and span.start <= beats[0] - BLEND_HALF_WIDTH
        and beats[-1] + BLEND_HALF_WIDTH <= span.end
        for span in trajectory.spans
    )
