"""A block as the search for fitting parameters asks for it: not mirrored, at its slowest and fastest tempo."""

from collections.abc import Mapping

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.fits import Dance
from sequencer.motion.library import Pattern
from sequencer.show import model
from sequencer.show.staged import Block
from sequencer.timing.tempo import TempoMap

CHANGED_OVER: Mapping[Side, Side] = {"left": "right", "right": "left"}
AS_THEY_ARE: Mapping[Side, Side] = {"left": "left", "right": "right"}


def dance_of(
    block: Block,
    record: model.Dancer,
    tempo: TempoMap,
    book: Mapping[str, Pattern],
    *,
    torque: float,
) -> Dance:
    """What a block asks of its performer.

    Parameters
    ----------
    block : Block
        Of patterns, not a link.
    record : model.Dancer
        The performer in the show's cast.
    tempo : TempoMap
    book : mapping of name to Pattern
    torque : float
        With which a hand may twist a rigid prop at most [N·m].

    Raises
    ------
    ValueError
        If the performer's measures do not go together.
    """
    own = sides_of(block)
    beats = np.arange(np.floor(block.start), np.ceil(block.end) + 0.5)
    pace = 60.0 * tempo.rates(beats)
    return Dance(
        parts={own[side]: (part.pattern, part.parameters) for side, part in block.hands.items()},
        timing=block.timing,
        direction=block.direction,
        cycle=block.cycle,
        tempo=(float(pace.min()), float(pace.max())),
        body=record.body,
        props={own[side]: record.props[side].held() for side in block.hands},
        book=book,
        torque=torque,
    )


def sides_of(block: Block) -> Mapping[Side, Side]:
    """Which side of the pattern each hand dances."""
    return CHANGED_OVER if block.mirrored else AS_THEY_ARE
