"""What each hand does, in words.

Read off the performer's own curves, so that mirrored and shifted blocks say what is danced. Directions are
as the performer sees them; their names are common practice.
"""

from functools import lru_cache
from typing import Literal

import numpy as np

from sequencer.motion.dancer import Dancer
from sequencer.motion.planes import plane_words
from sequencer.outputs.sheets.wording import listed
from sequencer.show.staged import Block

Side = Literal["left", "right"]
_SAMPLES = 32  # over one hand cycle: more than the plane changes of any toroid of 8 lobes
_TIMING = {"together": "together", "split": "split time", "quarter": "quarter time"}
_DIRECTION = {"same": "same direction", "opposite": "opposite directions"}


def hand_lines(dancer: Dancer | None, block: Block) -> tuple[tuple[str, str], ...]:
    """Label and words for each hand; one entry where both do the same."""
    if block.link:
        return (("both", "computed bridge: let the props come round, no stop"),)
    sides: list[Side] = [side for side in ("right", "left") if side in block.hands]
    words = {side: planes_in_words(dancer, side, block) for side in sides}
    if len({block.hands[side].pattern for side in sides}) > 1:
        words = {
            side: f"{block.hands[side].pattern}; {words[side]}"
            if words[side]
            else block.hands[side].pattern
            for side in sides
        }
    if len(sides) == 2 and words["right"] == words["left"]:
        return (("both", words["right"]),) if words["right"] else ()
    return tuple((side, words[side]) for side in sides if words[side])


def together_words(block: Block) -> str:
    """How the two hands go with each other; empty for one hand and for links."""
    if block.link or len(block.hands) < 2:
        return ""
    return f"{_TIMING[block.timing]}, {_DIRECTION[block.direction]}"


@lru_cache(maxsize=20_000)
def planes_in_words(dancer: Dancer | None, side: Side, block: Block) -> str:
    """Plane and direction of one hand's prop through a cycle of a block."""
    if dancer is None or side not in dancer.courses:
        return ""
    inner = min(0.3, 0.25 * (block.end - block.start))  # clear of the blends at the block's ends
    start, end = block.start + inner, block.end - inner
    beats = np.linspace(start, min(end, start + max(block.cycle, 1e-3)), _SAMPLES, dtype=np.float64)
    named: list[str] = []
    for n in dancer.courses[side].at(beats).plane:
        words = plane_words(n)
        if words.startswith("between"):
            continue
        words = words.split(", tilted")[0]
        if not named or named[-1] != words:
            named.append(words)
    unique = list(dict.fromkeys(named))
    if len(unique) == 1:
        return unique[0]
    if not unique:
        return plane_words(dancer.courses[side].at(np.array([start])).plane[0])
    kinds = list(dict.fromkeys(words.split(" plane")[0] for words in unique[1:]))
    return f"starts {unique[0]}; the plane bends through {listed(kinds)}"
