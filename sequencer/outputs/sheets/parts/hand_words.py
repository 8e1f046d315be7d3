"""What each hand does, in words.

Derived from the performer's laws, so that they are right for mirrored and opposite hands. Directions are as
the performer sees them; their names are common practice.
"""

from functools import lru_cache

from sequencer.geometry.bodies import Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.words.law_words import LawWords, law_words
from sequencer.outputs.words.place_words import danced_law
from sequencer.staging.staged import Block

_TIMING = {"together": "together", "split": "split time", "quarter": "quarter time"}
_DIRECTION = {"same": "same direction", "opposite": "opposite directions"}


def hand_lines(dancer: Dancer | None, block: Block) -> tuple[tuple[str, str], ...]:
    """Label and words for each hand; one entry if both do the same."""
    if block.link:
        return (("both", "computed bridge: let the props come round, do not stop"),)
    sides: list[Side] = [side for side in ("right", "left") if side in block.hands]
    words = {side: _short(hand_law_words(dancer, side, block)) for side in sides}
    if len({block.hands[side].pattern for side in sides}) > 1:
        for side in sides:
            words[side] = "; ".join(filter(None, (block.hands[side].pattern, words[side])))
    if len(sides) == 2 and words["right"] == words["left"]:
        return (("both", words["right"]),) if words["right"] else ()
    return tuple((side, words[side]) for side in sides if words[side])


def _short(words: LawWords | None) -> str:
    """What the prop does, and the hand if that adds anything."""
    if words is None or words.hand == "the hand stays still":
        return words.prop if words is not None else ""
    if words.hand == f"the hand circles in the {words.prop}":
        return f"{words.prop}; the hand circles the same way"
    return f"{words.prop}; {words.hand}"


def together_words(block: Block) -> str:
    """Timing and direction of the two hands; empty for one hand and for links."""
    if block.link or len(block.hands) < 2:
        return ""
    return f"{_TIMING[block.timing]}, {_DIRECTION[block.direction]}"


@lru_cache(maxsize=20_000)
def hand_law_words(dancer: Dancer | None, side: Side, block: Block) -> LawWords | None:
    """What one hand and its prop do in a block; None if its law is not available."""
    law = danced_law(dancer, side, block)
    return law_words(law) if law is not None else None
