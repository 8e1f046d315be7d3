"""A stop that is written on the timeline, in a performer's words."""

from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.staging.staged import Block

_SEVERAL = {"poi": "poi"}


def stop_words(block: Block, dancer: Dancer | None = None) -> str:
    """What a performer does at a stop: "arms down, poi held clear of your legs".

    Parameters
    ----------
    block : Block
        A stop.
    dancer : Dancer, optional
        Whose; names the props.

    Raises
    ------
    ValueError
        If the block is no stop.
    """
    if block.stop is None:
        raise ValueError(f"{block!r} is no stop")
    held = dancer.props if dancer is not None else {}
    sides: list[Side] = [side for side in SIDES if side in block.stopped]
    kinds = dict.fromkeys(held[side].kind for side in sides if side in held)
    one = len(sides) == 1
    many = len(kinds) == 1 and len([side for side in sides if side in held]) == 2
    what = " and ".join(_SEVERAL.get(kind, f"{kind}s") if many else kind for kind in kinds)
    what = what or "props"
    whose = f"{sides[0]} hand: " if one and len(held) != 1 else ""
    if block.stop == "rest":
        return f"{whose}{'arm' if one else 'arms'} down, {what} held clear of your legs"
    still = f"{'hand' if one else 'hands'} still where the pattern before leaves {'it' if one else 'them'}"
    hangs = [held[side].flexible for side in sides if side in held]
    if not hangs:
        return f"{whose}{still}"
    if all(hangs):
        return f"{whose}{still}, {what} hanging straight down"
    if any(hangs):
        return f"{whose}{still}, what hangs on a line straight down, the other prop still as it points then"
    return f"{whose}{still}, {what} still as {'they point' if many else 'it points'} then"
