"""What is set of a move besides its name and its counts, value by value: pace, the pattern's parameters, company, body."""

from collections.abc import Iterator
from math import degrees
from typing import Any

from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.sheets.page.wording import place_words, plural
from sequencer.outputs.sheets.parts.cues import Cue
from sequencer.outputs.words.company_words import company_of_blocks
from sequencer.outputs.words.place_words import block_place
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.stop_words import stop_words
from sequencer.staging.staged import Block, HandWords, Staged

SET = "set "  # starts what a parameter is called
_ANGLES = ("turn", "lean", "side", "nod", "tilt")
_ALONE = "without canon or mirror"


def danced_values(staged: Staged, dancer: Dancer | None, block: Block) -> dict[str, str]:
    """Each value of a move or a stop, by what it is called; a parameter as "amplitude 80°"."""
    if block.stop:
        return {"held": stop_words(block, dancer)}
    return {
        "pace": f"{plural(block.cycle, 'beat')} a round",
        **dict(_parameters(staged, block)),
        "company": company_of_blocks(staged).get(id(block), "") or _ALONE,
        "swapped": f"left and right {'changed over' if block.mirrored else 'not changed over'}",
        "where": block_place(block, dancer) or "hands in their usual place",
        "body": block_posture(block, dancer).rstrip(".").lower() or "upright",
    }


def finer_values(cue: Cue) -> dict[str, str]:
    """What is too fine for words on a sheet, or told there by other words: only for whoever asks what has changed."""
    x, y, facing = cue.spot
    out = {
        "formation": f"formation {cue.formation}",
        "spot": f"{place_words(x, y)}, facing {facing:g}°",
        "way": "; ".join(f"past the point {place_words(*point)}" for point in cue.via)
        or "straight there",
        "walking": "on the way when it starts" if cue.walking else "there when it starts",
        "beats": f"{cue.beats:g} beats",
    }
    if cue.block is not None:
        for side, part in sorted(cue.block.hands.items()):
            for name, value in part.fitted.items():
                out[f"{side} {name}"] = f"{side} hand: {_named(name)} {_plain(value)}"
        angles = zip(_ANGLES, cue.block.posture.angles, strict=True)
        out["angles"] = ", ".join(f"{name} {degrees(angle):.0f}°" for name, angle in angles)
    return out


def _parameters(staged: Staged, block: Block) -> Iterator[tuple[str, str]]:
    """Parameters of the pattern, with its own where none is set; by hand where the two differ."""
    values = {side: _values(staged, part) for side, part in sorted(block.hands.items())}
    for name in dict.fromkeys(name for each in values.values() for name in each):
        told = {side: each[name] for side, each in values.items() if name in each}
        if len(set(told.values())) == 1:
            yield f"{SET}{name}", f"{_named(name)} {next(iter(told.values()))}"
        else:
            each_hand = (f"{side} {words}" for side, words in told.items())
            yield f"{SET}{name}", f"{_named(name)} {', '.join(each_hand)}"


def _values(staged: Staged, part: HandWords) -> dict[str, str]:
    pattern = staged.book.get(part.pattern)
    if pattern is None:
        return {name: _plain(value) for name, value in part.parameters.items()}
    return {
        each.name: _worded(each, part.parameters.get(each.name, each.default))
        for each in pattern.parameters
        if part.parameters.get(each.name, each.default) is not None
    }


def _worded(parameter: Parameter, given: object) -> str:
    value = parameter.read(given)
    if parameter.kind == "length":
        return f"{round(100 * float(value), 1):g} cm"
    return f"{_plain(value)}{'°' if parameter.kind == 'angle' else ''}"


def _named(name: str) -> str:
    return {"hand_radius": "radius"}.get(name, name.replace("_", " "))


def _plain(value: Any) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)
