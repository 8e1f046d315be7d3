"""What each hand does, as one performer tells another: "poi clockwise, hand anticlockwise, wall plane".

Derived from the performer's laws, so that they are right for mirrored and opposite hands. Directions are as
the performer sees them; their names are common practice.
"""

import re
from dataclasses import replace
from functools import lru_cache

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.patterns.planes import plane_words
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.words.law_words import LawWords, law_words
from sequencer.outputs.words.place_words import danced_law, danced_span
from sequencer.staging.staged import Block

_SEEN = re.compile(r"(?P<plane>\w+ plane), (?P<way>[\w ]+)(?P<rest>, .*)?")
_BENDS = re.compile(r"the plane bends, starting (?:with )?(?P<first>.*)")
_BENT = re.compile(
    r"(?P<noun>.+) bends, starting (?P<first>(?P<way>[^,;]+), (?P<plane>[^;]+)); hand (?P<hand>.*)"
)
_CLOCK = re.compile(r"\b(anti)?clockwise\b")


def spoken_hands(dancer: Dancer | None, block: Block) -> str:
    """What both hands do in a block: once if they do the same, else each by its side; empty for a link.

    Parameters
    ----------
    dancer : Dancer, optional
        Whose hands; the words are for this performer, mirrored or not.
    block : Block
    """
    sides: list[Side] = [side for side in ("right", "left") if side in block.hands]
    words = {side: _spoken(dancer, side, block) for side in sides}
    if len({block.hands[side].pattern for side in sides}) > 1:
        for side in sides:
            words[side] = ": ".join(filter(None, (block.hands[side].pattern, words[side])))
        return "; ".join(f"{side} {words[side]}" for side in sides)
    told = [side for side in sides if words[side]]
    if len(told) == 2 and words["right"] != words["left"]:
        if words["left"] == _mirrored(words["right"]):
            return f"right {words['right']}; left mirrors it"
        bent = _both_bend(words["right"], words["left"])
        return bent or f"right {words['right']}; left {words['left']}"
    if not told:
        return ""
    alone = f"{told[0]} hand only: " if len(sides) == 1 and _holds_two(dancer) else ""
    return f"{alone}{words[told[0]]}"


def together_words(block: Block) -> str:
    """Timing and direction of the two hands; empty for one hand and for links."""
    if block.link or len(block.hands) < 2:
        return ""
    return timing_words(block.timing, block.direction)


@lru_cache(maxsize=20_000)
def hand_law_words(dancer: Dancer | None, side: Side, block: Block) -> LawWords | None:
    """What one hand and its prop do in a block; None if its law is not available."""
    law = danced_law(dancer, side, block)
    return law_words(law) if law is not None else None


def _holds_two(dancer: Dancer | None) -> bool:
    return dancer is not None and len(dancer.props) == 2


def _spoken(dancer: Dancer | None, side: Side, block: Block) -> str:
    words = hand_law_words(dancer, side, block)
    if words is None:
        return ""
    if _BENDS.fullmatch(words.prop):
        words = replace(words, prop=f"the plane bends, starting with {_first(dancer, side, block)}")
    held = dancer.props.get(side) if dancer is not None else None
    return said(words, held.kind if held is not None else "prop")


def _first(dancer: Dancer | None, side: Side, block: Block) -> str:
    """The nearest plane, and the direction, in which a block that bends begins, `shift` counted in."""
    span = danced_span(dancer, side, block)
    if span is None:
        return ""
    seen = plane_words(span.at(np.array([block.start])).plane[0])
    if seen.startswith("between "):
        seen = seen.removeprefix("between ").partition(" and ")[0]
    return seen.partition(", tilted")[0]


def said(words: LawWords, noun: str) -> str:
    """One hand and its prop in a breath.

    Parameters
    ----------
    words : LawWords
    noun : str
        What the hand holds.
    """
    hand = words.hand.removeprefix("the hand ")
    if words.prop == "the prop hangs without turning":
        return f"{noun} hangs without turning{_hand(hand)}"
    if words.prop.startswith("back and forth in the "):
        plane = words.prop.removeprefix("back and forth in the ")
        return f"{noun} back and forth, {plane}{_hand(hand)}"
    if bends := _BENDS.fullmatch(words.prop):
        return f"{noun} bends, starting {_way(bends['first'])}{_hand(hand)}"
    prop, ring = _SEEN.fullmatch(words.prop), _SEEN.fullmatch(hand.removeprefix("circles in the "))
    if prop is None or ring is None or prop["plane"] != ring["plane"] or ring["rest"]:
        return f"{noun} {_way(words.prop)}{_hand(hand)}"
    rest = prop["rest"] or ""
    if prop["way"] == ring["way"]:
        return f"{noun} and hand {prop['way']}, {prop['plane']}{rest}"
    return f"{noun} {prop['way']}, hand {ring['way']}, {prop['plane']}{rest}"


def _hand(hand: str) -> str:
    """What the hand does, after what the prop does; nothing if it stays still."""
    if hand == "stays still":
        return ""
    if hand.startswith("circles in the "):
        return f"; hand {_way(hand.removeprefix('circles in the '))}"
    return f"; hand {hand.removeprefix('moves ')}"


def _way(seen: str) -> str:
    """A plane and direction with the direction first: "forward, wheel plane"."""
    match = _SEEN.fullmatch(seen)
    return f"{match['way']}, {match['plane']}{match['rest'] or ''}" if match else seen


def _both_bend(right: str, left: str) -> str:
    """Two hands that bend alike, but begin in other directions; empty if they differ in more."""
    one, other = _BENT.fullmatch(right), _BENT.fullmatch(left)
    if one is None or other is None or one["noun"] != other["noun"]:
        return ""
    starts = f"right {one['first']}, left {other['first']}"
    if one["plane"] == other["plane"]:
        starts = f"right {one['way']}, left {other['way']}, {one['plane']}"
    hands = f"; right hand {one['hand']}, left {other['hand']}"
    if one["hand"] == other["hand"]:
        hands = f"; hands {one['hand']}"
    elif other["hand"] == _mirrored(one["hand"]):
        hands = f"; right hand {one['hand']}, left mirrors it"
    return f"{one['noun']} bend, starting {starts}{hands}"


def _mirrored(words: str) -> str:
    """Words of the mirror image, left and right swapped: the wheel plane's directions stay."""
    return _CLOCK.sub(lambda found: "clockwise" if found[1] else "anticlockwise", words)
