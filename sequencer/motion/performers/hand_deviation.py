"""Maximum deviation of each block's hand from its nominal path, used as a margin on distances to others.

If the head follows the law exactly, a passive tether needs the hand off its nominal path (hand work). Arm,
tether and head are widened by the block's largest such deviation, from the blend before it to the blend
after it. It is a stated margin, not a bound: how far the head strays if the hand keeps to its nominal path
instead is a matter of rehearsal, and is not computed. Where it is large and the block can be flown (docs/motion.md, section 6),
the margin is instead the farthest that head or hand are off the drawing as flown and
2 cm, standing still at a steady tempo: a margin still, no bound (a check as flown measures the flown paths themselves). A rigid prop is turned by the hand and has none;
links and rests have none either: there the hand must steady the prop.
Source: docs/motion.md, section 6.
"""

from sequencer.kept import recent
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.motion.performers.flown_figures import FlyingHand
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import leaves
from sequencer.motion.trajectories.trajectory import BLEND_HALF_WIDTH, Span, Trajectory
from sequencer.timing.tempo import TempoMap

_MOST_BLOCKS = 20_000  # whose hand work is kept
LARGE = 0.40  # [m] of hand work; a block that needs more is flown for its margin


def hand_deviations_of(
    trajectory: Trajectory, prop: Prop, tempo: TempoMap, *, hand: FlyingHand | None = None
) -> tuple[HandDeviation, ...]:
    """The hand deviation of every block of one hand, by start; none for a rigid prop.

    Parameters
    ----------
    trajectory : Trajectory
    prop : Prop
    tempo : TempoMap
    hand : FlyingHand, optional
        Who flies the blocks whose hand work is large; without, every margin is hand work.
    """
    if not prop.flexible:
        return ()
    return tuple(
        HandDeviation(
            start=span.start - BLEND_HALF_WIDTH,
            end=span.end + BLEND_HALF_WIDTH,
            size=_size(span, prop, tempo, hand),
        )
        for span in trajectory.spans
        if span.kind == "block"
    )


def _size(block: Span, prop: Prop, tempo: TempoMap, hand: FlyingHand | None) -> float:
    pace = 60.0 * tempo.fastest(block.start, block.end)

    def sought() -> tuple[Span, float]:
        start, end = block.start - block.origin, block.end - block.origin
        # The span is held, so that its id stays its own.
        return block, leaves(block.law, length=prop.length, tempo=pace, start=start, end=end)

    _, work = recent("hand work", (id(block), prop.length, pace), sought, most=_MOST_BLOCKS)
    if work <= LARGE or hand is None or not hand.worth_flying(block):
        return work
    flown = hand.figures(block)
    return flown.margin if flown is not None and flown.flies else work
