"""What a performer holds, in words."""

from math import degrees

from sequencer.outputs.sheets.page.wording import NB, metres
from sequencer.show.model import Performer
from sequencer.show.prop_records import PropRecord


def held_words(dancer: Performer, *, short: bool = False) -> tuple[str, ...]:
    """A line for both hands if they hold the same, otherwise one for each hand."""
    words_for = short_words if short else prop_words
    words = {side: words_for(prop) for side, prop in dancer.props.items()}
    if len(words) == 2 and len(set(words.values())) == 1:
        return (next(iter(words.values())),)
    return tuple(f"{side} hand: {words[side]}" for side in words)


def prop_words(prop: PropRecord) -> str:
    """Kind, size, mass and wicks of a prop."""
    held = prop.held()
    if held.flexible:
        line = "rope" if held.kind == "rope dart" else "tether"
        size = f"{line} {metres(held.length, decimals=2)}, head {_grams(held.mass)}"
    elif held.kind == "hoop":
        size = f"{metres(held.length, decimals=2)} across, {_grams(held.mass)}"
    elif held.kind == "fan":
        spread = f"over {degrees(held.spread):.0f}°" if held.wicks > 1 else "with one spoke"
        size = f"{metres(held.length, decimals=2)} {spread}, {_grams(held.mass)}"
    else:
        size = f"{metres(held.length + held.behind, decimals=2)}, {_grams(held.mass)}"
        if abs(held.length - held.behind) > 0.005:
            size += f", held {metres(held.behind, decimals=2)} from its rear end"
    wicks = len(held.heads)
    many = "wick radius" if wicks == 1 else f"{wicks} wicks of radius"
    return f"{held.kind}, {size}, {many} {1000 * held.wick_radius:.0f}{NB}mm"


def short_words(prop: PropRecord) -> str:
    """The same in brief, for a performer's sheet."""
    held = prop.held()
    if held.kind == "poi":
        return f"{metres(held.length, decimals=2)} tether, {_grams(held.mass)}"
    size = held.length + held.behind
    return f"{held.kind} {metres(size, decimals=2)}, {_grams(held.mass)}"


def _grams(mass: float) -> str:
    return f"{1000 * mass:.0f}{NB}g"
