"""Blocks and stops in words for the rehearsal page, each as it is and as its mirror image.

The page's Mirror shows the dance with left and right changed over; its words are then those of the image: the other
hand, and the other way round in the wall plane and the floor plane. In the wheel plane forward stays forward.
"""

import re
from dataclasses import replace
from typing import Any

import numpy as np

from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.sheets.parts.dance_rows.hand_words import spoken_hands, together_words
from sequencer.outputs.words.place_words import block_place, lie_words
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.setting_words import PATH_PARAMETERS, setting_words
from sequencer.outputs.words.stop_words import stop_words
from sequencer.staging.staged import Block, Staged
from sequencer.timing.position import TOUCH

# Names of patterns may have one of these words in them, joined by hyphens.
_SIDED = re.compile(r"(?<![\w-])(left|right|anticlockwise|clockwise)(?![\w-])")
_OTHER = {
    "left": "right", "right": "left", "clockwise": "anticlockwise", "anticlockwise": "clockwise",
}  # fmt: skip


def mirrored_words(text: str) -> str:
    """Words on a body as they are of its mirror image.

    Parameters
    ----------
    text : str
        Made by this program; what a person wrote stays as it is.
    """
    return _SIDED.sub(lambda found: _OTHER[found[1]], text)


def mirrored_station(station: Station) -> Station:
    """A station of the mirror image: x changes its sign, and of a plane's axis the two others do.

    Notes
    -----
    Source: an axis is a cross product of two vectors, so a reflection turns it round besides. Exact.
    """
    flip = np.array([-1.0, 1.0, 1.0])
    return replace(
        station, hand=station.hand * flip, tether=station.tether * flip, plane=-station.plane * flip
    )


def danced_words(block: Block, dancer: Dancer | None) -> list[str]:
    """How a block is danced, one line for each thing to know; without what a person wrote.

    Parameters
    ----------
    block : Block
    dancer : Dancer, optional
        Who dances it; hands and places are told as this performer dances them.
    """
    if block.stop:
        return [stop_words(block, dancer)]
    if block.link:
        return ["the way from one move into the next"]
    posture = block_posture(block, dancer).rstrip(".")
    lines = [
        spoken_hands(dancer, block),
        together_words(block),
        *_settings(block),
        _place(block, dancer),
        posture[:1].lower() + posture[1:],
        f"one round of the hand in {_beats(block.cycle)}",
        f"starts {_beats(block.shift)} into the pattern" if block.shift else "",
    ]
    return [line for line in lines if line]


def told_blocks(
    staged: Staged, order: dict[str, int]
) -> tuple[list[list[Any]], list[list[str]], list[list[str]]]:
    """Blocks and stops as [performer, start, end, words, kind]; the words they refer to, and those of the mirror image.

    Kind 1 is a link, 2 a stop. Words begin with the title.
    """
    texts: dict[tuple[tuple[str, ...], tuple[str, ...]], int] = {}
    blocks = []
    danced = sorted((*staged.blocks, *staged.stops), key=lambda each: (each.start, order[each.who]))
    for block in danced:
        title = block.title or "block"
        made = danced_words(block, staged.dancers[order[block.who]])
        written = [*filter(None, [block.note.strip()]), *_accents(staged, block)]
        own = (title, *made, *written)
        image = (title, *map(mirrored_words, made), *written)
        words = texts.setdefault((own, image), len(texts))
        kind = 2 if block.stop else int(block.link)
        start, end = round(float(block.start), 6), round(float(block.end), 6)
        blocks.append([order[block.who], start, end, words, kind])
    return blocks, [list(own) for own, _ in texts], [list(image) for _, image in texts]


def _settings(block: Block) -> list[str]:
    """What is set: once if it is the same for both hands, else by the hand."""
    told = {side: setting_words(part.parameters) for side, part in block.hands.items()}
    if len({tuple(words) for words in told.values()}) == 1:
        return next(iter(told.values()))
    return [f"{side}: {', '.join(words)}" for side, words in told.items() if words]


def _place(block: Block, dancer: Dancer | None) -> str:
    """Where the hands are, if that is not the usual place or somebody has set it."""
    is_set = any(
        name in part.parameters for part in block.hands.values() for name in PATH_PARAMETERS
    )
    if is_set and dancer is not None:
        return lie_words(block, dancer)
    return block_place(block, dancer)


def _beats(many: float) -> str:
    return f"{many:g} {'beat' if many == 1 else 'beats'}"


def _accents(staged: Staged, block: Block) -> list[str]:
    """A line for each accent within a block or stop."""
    return [
        " ".join(filter(None, ("hit", staged.aloud(each.beat), each.note and f"({each.note})")))
        for each in staged.accents_of(block.who)
        if block.start - TOUCH <= each.beat < block.end - TOUCH
    ]
