"""What each hand does, in words.

Read off the performer's own laws, so that mirrored and opposite hands say what is danced. Directions are as
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
    """Label and words for each hand; one entry where both do the same."""
    if block.link:
        return (("both", "computed bridge: let the props come round, no stop"),)
    sides: list[Side] = [side for side in ("right", "left") if side in block.hands]
    words = {side: _short(hand_said(dancer, side, block)) for side in sides}
    if len({block.hands[side].pattern for side in sides}) > 1:
        for side in sides:
            words[side] = "; ".join(filter(None, (block.hands[side].pattern, words[side])))
    if len(sides) == 2 and words["right"] == words["left"]:
        return (("both", words["right"]),) if words["right"] else ()
    return tuple((side, words[side]) for side in sides if words[side])


def _short(said: LawWords | None) -> str:
    """What the prop does, and the hand where that says more."""
    if said is None or said.hand == "the hand stays":
        return said.prop if said is not None else ""
    if said.hand == f"the hand goes round in the {said.prop}":
        return f"{said.prop}; the hand goes round the same way"
    return f"{said.prop}; {said.hand}"


def together_words(block: Block) -> str:
    """How the two hands go with each other; empty for one hand and for links."""
    if block.link or len(block.hands) < 2:
        return ""
    return f"{_TIMING[block.timing]}, {_DIRECTION[block.direction]}"


@lru_cache(maxsize=20_000)
def hand_said(dancer: Dancer | None, side: Side, block: Block) -> LawWords | None:
    """What one hand and its prop do in a block; None where its law is not at hand."""
    law = danced_law(dancer, side, block)
    return law_words(law) if law is not None else None
