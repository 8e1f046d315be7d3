"""A block in words: its title, and lines on how it is danced."""

from collections.abc import Mapping
from typing import Any

from sequencer.motion.patterns.timing_words import timing_words
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.words.place_words import block_place
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.stop_words import stop_words
from sequencer.staging.staged import Block


def block_words(block: Block, dancer: Dancer | None = None) -> list[str]:
    """Title first, then one line each for timing, parameters, fitted place, posture, mirroring and note.

    Parameters
    ----------
    block : Block
    dancer : Dancer, optional
        Who dances it; adds where the hands are placed and how far the shoulders come along.

    Notes
    -----
    If the hands differ, each hand gets its own line.
    """
    lines = [block.title or "block"]
    if block.stop:
        return [*lines, stop_words(block, dancer), *_note(block)]
    if block.link:
        return [*lines, "a computed bridge between two blocks", *_note(block)]
    hands = list(block.hands.items())
    if len(hands) == 2:
        lines.append(timing_words(block.timing, block.direction))
    elif hands:
        lines.append(f"{hands[0][0]} hand only")
    parts = {(hand.pattern, parameters_text(hand.parameters)) for _, hand in hands}
    if len(parts) == 1:
        text = next(iter(parts))[1]
        lines += [text] if text else []
    else:
        lines += [
            f"{side}: {hand.pattern} {parameters_text(hand.parameters)}".rstrip()
            for side, hand in hands
        ]
    place = block_place(block, dancer)
    lines += [place] if place else []
    posture = block_posture(block, dancer).rstrip(".")
    lines += [posture[0].lower() + posture[1:]] if posture else []
    lines.append(f"one hand cycle in {block.cycle:g} {'beat' if block.cycle == 1 else 'beats'}")
    if block.shift:
        many = "beat" if block.shift == 1 else "beats"
        lines.append(f"starts {block.shift:g} {many} into the pattern")
    if block.mirrored:
        lines.append("left and right changed over")
    return [*lines, *_note(block)]


def parameters_text(parameters: Mapping[str, Any]) -> str:
    """Parameters as `lobes 4 · bend pro`."""
    return " · ".join(
        f"{key.replace('_', ' ')} {_value(value)}" for key, value in parameters.items()
    )


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, list | tuple):
        return ", ".join(_value(each) for each in value)
    return str(value)


def _note(block: Block) -> list[str]:
    return [block.note.strip()] if block.note.strip() else []
