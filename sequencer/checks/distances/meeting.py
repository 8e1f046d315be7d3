"""Two who meet as danced: which parts, how far apart these are without flames, and the same as performers say it.

Distances that are checked reach from the edge of one flame to that of another, and count how far hands may be off their
paths. How deep two such edges overlap is no distance that anybody sees; how near the heads come is.
"""

from typing import NamedTuple

import numpy as np

from sequencer.motion.clearance.nearest import closest_at
from sequencer.motion.performers.body_parts import PARTS
from sequencer.motion.performers.dancer import Dancer

_FLAME = "flame"
_BARE = {"left", "right", "rear"}  # before "flame", where a head burns and not a fan or a hoop
_NONE = 0.005  # [m] apart, or less: told as touching


class NearParts(NamedTuple):
    """The parts of two that come nearest, and how far apart they are without flames."""

    parts: tuple[str, str]
    apart: float  # [m] between body, arm, tether or head themselves; 0 where they overlap


def meeting(first: Dancer, second: Dancer, beat: float) -> NearParts:
    """Which parts of two come nearest at a beat, flames counted, and how far apart those are without flames.

    Parameters
    ----------
    first, second : Dancer
    beat : float
    """
    near = closest_at(first, second, beat)
    one, other = (int(part) for part in near.part[0])
    between = float(np.linalg.norm(near.point[0, 1] - near.point[0, 0]))
    return NearParts(
        parts=(_part(first, one, beat), _part(second, other, beat)),
        apart=max(between - _bare_radius(first, one) - _bare_radius(second, other), 0.0),
    )


def _part(dancer: Dancer, part: int, beat: float) -> str:
    """The name of a part that is met; what burns then is met by its flame."""
    name = dancer.part_name(part)
    burns = dancer.burns(part) and bool(dancer.is_lit(beat))
    return f"{name.removesuffix(' head')} {_FLAME}" if burns else name


def _bare_radius(dancer: Dancer, part: int) -> float:
    """Radius of a part without its flame, with hands on their paths [m]."""
    own = PARTS[part]
    if own.side is None or own.side not in dancer.props:
        return dancer.body.girth
    prop = dancer.props[own.side]
    if own.kind == "arm":
        return dancer.body.limb_radius
    if own.kind == "head":
        return prop.cold_radius
    return prop.wick_radius if dancer.burns(part) else prop.shaft_radius


def met_words(
    two: tuple[str, str], parts: tuple[str, str], worst: float, apart: float | None
) -> str:
    """Whose part comes how near to whose.

    Parameters
    ----------
    two : (str, str)
        Names.
    parts : (str, str)
        As `NearParts.parts`.
    worst : float
        Between their edges, flames and hands off their paths counted [m]; negative where these overlap.
    apart : float or None
        As `NearParts.apart` [m]; None: not known.
    """
    own, theirs = (f"{who}'s {part}" for who, part in zip(two, parts, strict=True))
    burning = tuple(part.endswith(_FLAME) for part in parts)
    if worst >= 0:
        near = f"{own} comes within {100 * worst:.0f} cm of {theirs}"
    elif all(burning):
        near = f"{own} meets {theirs}"
    elif burning[0]:
        near = f"{own} reaches {theirs}"
    elif burning[1]:
        near = f"{own} gets into {theirs}"
    else:
        touches = "can touch" if apart is None or apart > _NONE else "runs into"
        near = f"{own} {touches} {theirs}"
    return f"{near}{_apart_words(parts, burning, worst, apart)}"


def _apart_words(
    parts: tuple[str, str], burning: tuple[bool, ...], worst: float, apart: float | None
) -> str:
    """How far apart the two are without flames, where that says more."""
    if apart is None or (not any(burning) and (worst >= 0 or apart <= _NONE)):
        return ""
    hot = list(dict.fromkeys(_burns(part) for part in parts if part.endswith(_FLAME)))
    if all(burning):
        what = f"{hot[0]}s" if len(hot) == 1 else " and ".join(hot)
        return f" ({what} {'touching' if apart <= _NONE else f'{100 * apart:.0f} cm apart'})"
    if any(burning):
        return f" (the {hot[0]} {'touching' if apart <= _NONE else f'{100 * apart:.0f} cm away'})"
    return f" ({100 * apart:.0f} cm apart with hands exactly on their paths)"


def _burns(part: str) -> str:
    """What burns in a flame."""
    held = part.split()[-2]
    return "head" if held in _BARE else held
