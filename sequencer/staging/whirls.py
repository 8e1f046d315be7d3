"""Blocks whose props would turn so often in a beat that nothing can be said of them."""

from math import ceil, inf, pi

from sequencer.motion.laws.law import Law
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Block

# Paths as flown have 96 knots a beat (`motion.trajectories.flown_hand`): above 15 turns a beat nothing is proven on them.
# At 30 beats a minute this is twice what the rules allow (2.5 a second).
MOST_TURNS = 12.0  # [1/beat]
_STEPS = 8  # in a beat, of the cycle that is named


def refuse_whirls(read: ReadShow, block: Block, law: Law) -> None:
    """Refuse a block in which a prop turns more than `MOST_TURNS` times a beat.

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
    turns = law.bounds().turn_rate / (2.0 * pi)
    if turns <= MOST_TURNS:
        return
    cycle = ceil(_STEPS * block.cycle * turns / MOST_TURNS) / _STEPS if turns < inf else inf
    raise read.fault(
        "turns-too-often", (*block.path, "cycle"),
        f"with a cycle of {block.cycle:g} beats, the prop of {block.title} would turn up to {turns:.0f} times in a beat; "
        f"nothing above {MOST_TURNS:g} can be checked, nor danced",
        f"write `cycle: {cycle:g}` or more" if cycle < inf else "choose another pattern",
    )  # fmt: skip
