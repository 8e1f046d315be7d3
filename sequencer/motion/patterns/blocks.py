"""Blocks: the laws of both hands, from the terms of a show file."""

from collections.abc import Mapping
from typing import Literal

from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.transforms import mirrored as mirror_of
from sequencer.motion.laws.transforms import shifted
from sequencer.motion.patterns.library import Pattern, law_for, turn_beats

Timing = Literal["together", "split", "quarter"]
Direction = Literal["same", "opposite"]
_SHARE: dict[Timing, float] = {"together": 0.0, "split": 0.5, "quarter": 0.25}


def block_laws(
    parts: Mapping[Side, tuple[str, Mapping[str, object]]],
    *,
    timing: Timing,
    direction: Direction,
    cycle: float,
    shift: float = 0.0,
    mirrored: bool = False,
    body: Body,
    tethers: Mapping[Side, float],
    book: Mapping[str, Pattern] | None = None,
) -> dict[Side, Law]:
    """The law of each hand in a block; beat 0 of a law is the start of the block.

    The right hand leads; the left goes in the same or the opposite direction, and is level with it or half
    or a quarter of a turn further on in the pattern. A single hand leads.

    Parameters
    ----------
    parts : mapping
        Pattern and parameters of each hand in use. In a mirrored block, as danced, with the hands already
        swapped.
    timing : {"together", "split", "quarter"}
    direction : {"same", "opposite"}
    cycle : float
        Beats of one hand cycle.
    shift : float
        Beats into the pattern at the block's start.
    mirrored : bool
        Left and right swapped: each hand's law is the mirror image of the other's.
    body : Body
    tethers : mapping
        Length of each hand's prop [m].
    book : mapping, optional
        Patterns to use instead of the built-in ones.

    Returns
    -------
    laws : dict
        By side.

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    own = {_other(side): part for side, part in parts.items()} if mirrored else dict(parts)
    laws: dict[Side, Law] = {}
    for side in SIDES:
        if side not in own:
            continue
        name, parameters = own[side]
        second = side == "left" and "right" in own
        danced = _other(side) if mirrored else side
        law = law_for(
            name, parameters, side=side, body=body, beats=cycle, tether=tethers.get(danced),
            opposite=second and direction == "opposite", book=book,
        )  # fmt: skip
        late = 0.0
        if second:
            turn = turn_beats(name, parameters, beats=cycle, side=side, book=book)
            late = _SHARE[timing] * turn
        law = shifted(law, shift + late)
        laws[danced] = mirror_of(law) if mirrored else law
    return laws


def _other(side: Side) -> Side:
    return "left" if side == "right" else "right"
