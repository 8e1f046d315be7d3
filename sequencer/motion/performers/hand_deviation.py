"""Maximum deviation of each block's hand from its nominal path, used as a margin on distances to others.

If the head follows the law exactly, a passive tether needs the hand off its nominal path (hand work). Arm,
tether and head are widened by the block's largest such deviation, from the blend before it to the blend
after it. It is a stated margin, not a bound: how far the head strays if the hand keeps to its nominal path
instead is a matter of rehearsal, and is not computed. A rigid prop is turned by the hand and has none;
links and rests have none either: there the hand must steady the prop.
Source: docs/motion.md, section 6.
"""

from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import leaves
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Trajectory
from sequencer.timing.tempo import TempoMap


def hand_deviations_of(
    trajectory: Trajectory, prop: Prop, tempo: TempoMap
) -> tuple[HandDeviation, ...]:
    """The hand deviation of every block of one hand, by start; none for a rigid prop.

    Parameters
    ----------
    trajectory : Trajectory
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
