"""How far each block's hand must leave its drawn path, as the margin that distances to others carry.

Where the head follows the law exactly a passive tether needs the hand elsewhere than drawn (hand work).
Arm, tether and head are taken wider by the block's largest such deviation, from a blend before it to a
blend after it. It is a stated margin, not a bound: how far the head strays where the hand keeps to the
drawing instead is a matter of rehearsal, and not computed. A rigid prop is turned by the hand
and has none; links and rests have none of their own: there the hand must steady the prop.
Source: docs/motion.md, section 6.
"""

from sequencer.motion.performers.parts import HandDeviation
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import leaves
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Trajectory
from sequencer.timing.tempo import TempoMap


def hand_deviations_of(
    trajectory: Trajectory, prop: Prop, tempo: TempoMap
) -> tuple[HandDeviation, ...]:
    """The margin of every block of one hand, by start; none for a rigid prop.

    Parameters
    ----------
    course : Trajectory
    prop : Prop
    tempo : TempoMap
    """
    if not prop.flexible:
        return ()
    return tuple(
        HandDeviation(
            start=span.start - BLEND_HALF_WIDTH,
            end=span.end + BLEND_HALF_WIDTH,
            size=leaves(
                span.law,
                length=prop.length,
                tempo=60.0 * tempo.fastest(span.start, span.end),
                start=span.start - span.origin,
                end=span.end - span.origin,
            ),
        )
        for span in trajectory.spans
        if span.kind == "block"
    )
