"""Blocks whose props would turn so often in a beat that nothing can be said of them."""

from math import ceil, inf, pi, sqrt

from sequencer.motion.laws.law import Law
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Block

# Paths as flown have 96 knots a beat (`motion.trajectories.flown_hand`): above 15 turns a beat nothing is proven on them, and
# searches take minutes long before. At 30 beats a minute this is more than the rules allow (2.5 turns a second).
MOST_TURNS = 8.0  # [1/beat]
_ROUNDING = 1e-6
_STEPS = 8  # in a beat, of the cycle that is named


def refuse_whirls(read: ReadShow, block: Block, law: Law) -> None:
    """Refuse a block in which a prop turns, or swings as hard as one that turns, more than `MOST_TURNS` times a beat.

    Parameters
    ----------
    read : ReadShow
    block : Block
    law : Law
        Of one of its hands.

    Raises
    ------
    ShowError
        With the cycle to write.
    """
    turns = sqrt(law.bounds().turn_acceleration) / (2.0 * pi)  # even turns are as hard as this
    if turns <= MOST_TURNS * (1.0 + _ROUNDING):
        return
    steps = _STEPS * block.cycle * turns / MOST_TURNS
    cycle = ceil(steps * (1.0 - _ROUNDING)) / _STEPS if turns < inf else inf
    raise read.fault(
        "turns-too-often", (*block.path, "cycle"),
        f"with a cycle of {block.cycle:g} beats, the prop of {block.title} would turn up to {turns:.1f} times in a beat; "
        f"nothing above {MOST_TURNS:g} can be checked, nor danced",
        f"write `cycle: {cycle:g}` or more" if cycle < inf else "choose another pattern",
    )  # fmt: skip
