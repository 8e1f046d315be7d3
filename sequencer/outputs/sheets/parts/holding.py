"""What a performer holds, in words."""

from math import degrees

from sequencer.outputs.sheets.page.wording import NB, metres
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.file_records.prop_records import PropRecord


def held_words(dancer: Performer, *, short: bool = False) -> tuple[str, ...]:
    """A line for both hands if they hold the same, otherwise one for each hand."""
    words_for = short_words if short else prop_words
    words = {side: words_for(prop) for side, prop in dancer.props.items()}
    if len(words) == 2 and len(set(words.values())) == 1:
        return (next(iter(words.values())),)
    return tuple(f"{side} hand: {words[side]}" for side in words)


def prop_words(prop: PropRecord) -> str:
    """Kind, size, mass and wicks of a prop."""
    shape = prop.held()
    if shape.flexible:
        line = "rope" if shape.kind == "rope dart" else "tether"
        size = f"{line} {metres(shape.length, decimals=2)}, head {_grams(shape.mass)}"
    elif shape.kind == "hoop":
        size = f"{metres(shape.length, decimals=2)} across, {_grams(shape.mass)}"
    elif shape.kind == "fan":
        spread = f"over {degrees(shape.spread):.0f}°" if shape.wicks > 1 else "with one spoke"
        size = f"{metres(shape.length, decimals=2)} {spread}, {_grams(shape.mass)}"
    else:
        size = f"{metres(shape.length + shape.behind, decimals=2)}, {_grams(shape.mass)}"
        if abs(shape.length - shape.behind) > 0.005:
            size += f", held {metres(shape.behind, decimals=2)} from its rear end"
    wicks = len(shape.heads)
    many = "wick radius" if wicks == 1 else f"{wicks} wicks of radius"
    words = f"{shape.kind}, {size}, {many} {1000 * shape.wick_radius:.0f}{NB}mm"
    return f"{words} ({assumed_words(prop)})" if prop.assumed else words


def assumed_words(prop: PropRecord) -> str:
    """Which sizes of a prop nobody measured."""
    return f"assumed, not measured: {', '.join(_SIZES[key] for key in prop.assumed)}"


_SIZES = {
    "tether": "tether",
    "length": "length",
    "diameter": "diameter",
    "grip": "grip",
    "mass": "mass",
    "head_mass": "head mass",
    "wick": "wick",
    "wicks": "number of wicks",
    "spread": "spread",
}


def short_words(prop: PropRecord) -> str:
    """The same in brief, for a performer's sheet."""
    shape = prop.held()
    mark = " (assumed, not measured)" if {"tether", "length", "diameter"} & {*prop.assumed} else ""
    if shape.kind == "poi":
        return f"{metres(shape.length, decimals=2)}{mark} tether, {_grams(shape.mass)}"
    size = shape.length + shape.behind
    return f"{shape.kind} {metres(size, decimals=2)}{mark}, {_grams(shape.mass)}"


def _grams(mass: float) -> str:
    return f"{1000 * mass:.0f}{NB}g"
