"""Blocks with parameters fitted to the performers who dance them.

A block is fitted unmirrored, at its slowest and fastest tempo. Performers who dance the same step of a show
with similar props share one shape (width, start and plane of the hand paths), each placed where it fits
them.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from math import ceil, floor

import numpy as np

from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import UPRIGHT
from sequencer.kept import recent
from sequencer.motion.fitting.fits import Dance, Fit
from sequencer.motion.fitting.search import fitted_together
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.props.prop import Prop
from sequencer.show import model
from sequencer.show.file_records.performer_record import Performer
from sequencer.staging.staged import Block, Path
from sequencer.timing.position import TOUCH
from sequencer.timing.tempo import TempoMap

CHANGED_OVER: Mapping[Side, Side] = {"left": "right", "right": "left"}
AS_THEY_ARE: Mapping[Side, Side] = {"left": "left", "right": "right"}
_MOST_TEMPI = 5_000  # spans of beats
_MOST_STEPS = 20_000  # of show files, whose fitted blocks are kept


def dance_of(
    block: Block,
    record: Performer,
    tempo: TempoMap,
    book: Mapping[str, Pattern],
    *,
    torque: float,
) -> Dance:
    """The fitting problem that a block sets its performer.

    Parameters
    ----------
    block : Block
        A block of patterns, not a link.
    record : model.Dancer
        The performer in the show's cast.
    tempo : TempoMap
    book : mapping of name to Pattern
    torque : float
        Maximum torque of a hand on a rigid prop [N·m].

    Raises
    ------
    ValueError
        If the performer's measurements are inconsistent.
    """
    own = sides_of(block)
    body, props = _measures(record)
    return Dance(
        parts={own[side]: (part.pattern, part.parameters) for side, part in block.hands.items()},
        timing=block.timing,
        direction=block.direction,
        cycle=block.cycle,
        tempo=_tempi(tempo, floor(block.start), ceil(block.end)),
        body=body,
        props={own[side]: props[side] for side in block.hands},
        book=book,
        torque=torque,
    )


def _tempi(tempo: TempoMap, first: int, last: int) -> tuple[float, float]:
    """The slowest and the fastest tempo from one whole beat to another [beats/min]; many blocks share theirs."""

    def work() -> tuple[TempoMap, tuple[float, float]]:
        per_minute = 60.0 * tempo.beats_per_second(np.arange(first, last + 1))
        return tempo, (float(per_minute.min()), float(per_minute.max()))

    # The map is held, so that its id stays its own.
    return recent("tempi", (id(tempo), first, last), work, most=_MOST_TEMPI)[1]


@lru_cache(maxsize=2048)
def _measures(record: Performer) -> tuple[Body, Mapping[Side, Prop]]:
    """Body and props of a performer at rest."""
    return record.body, {side: prop.held() for side, prop in record.props.items()}


def sides_of(block: Block) -> Mapping[Side, Side]:
    """The side of the pattern that each hand dances."""
    return CHANGED_OVER if block.mirrored else AS_THEY_ARE


def fitted_blocks(
    show: model.Show, blocks: Sequence[Block], tempo: TempoMap, book: Mapping[str, Pattern]
) -> tuple[Block, ...]:
    """The blocks with fitted values for the parameters that the show leaves open.

    Parameters
    ----------
    show : model.Show
    blocks : sequence of Block
    tempo : TempoMap
    book : mapping of name to Pattern
    """
    cast = {record.name: record for record in show.cast}
    steps: dict[Path, list[int]] = {}
    for k, block in enumerate(blocks):
        if not block.link:
            steps.setdefault(block.path, []).append(k)
    out = list(blocks)
    for where in steps.values():
        own = [blocks[k] for k in where]
        of = [cast[block.who] for block in own]
        fitted = _known_step(own, of, tempo, book, torque=show.limits.torque)
        for k, block in zip(where, fitted, strict=True):
            out[k] = block
    return _upright_together(tuple(out))


def _known_step(
    blocks: Sequence[Block],
    records: Sequence[Performer],
    tempo: TempoMap,
    book: Mapping[str, Pattern],
    *,
    torque: float,
) -> list[Block]:
    """The same as `_fitted_step`: an edit leaves most steps as they were, and the same objects."""
    held = (*blocks, *records, tempo, book)

    def work() -> tuple[object, list[Block]]:
        # They are held, so that their ids stay their own.
        return held, _fitted_step(blocks, records, tempo, book, torque=torque)

    return recent("fitted steps", (*map(id, held), torque), work, most=_MOST_STEPS)[1]


def _fitted_step(
    blocks: Sequence[Block],
    records: Sequence[Performer],
    tempo: TempoMap,
    book: Mapping[str, Pattern],
    *,
    torque: float,
) -> list[Block]:
    """The blocks of one step of the show file, fitted; of each the performer."""
    alike: dict[tuple[object, ...], dict[int, Dance]] = {}
    for k, (block, record) in enumerate(zip(blocks, records, strict=True)):
        try:
            dance = dance_of(block, record, tempo, book, torque=torque)
        except ValueError:
            continue  # an invalid body is reported at its position in the cast
        parts = repr(
            sorted((side, name, sorted(given)) for side, (name, given) in dance.parts.items())
        )
        kinds = tuple(sorted({prop.kind for prop in dance.props.values()}))
        key = (parts, kinds, block.timing, block.direction, block.cycle)
        alike.setdefault(key, {})[k] = dance
    out = list(blocks)
    for dances in alike.values():
        try:
            fits = fitted_together(list(dances.values()))
        except ValueError:
            continue  # block_laws reports it, with the position of the block
        for k, fit in zip(dances, fits, strict=True):
            out[k] = _with(blocks[k], fit)
    return out


def _with(block: Block, fit: Fit) -> Block:
    """A block with its fit applied."""
    own = sides_of(block)
    hands = {
        side: replace(part, fitted=dict(fit.values.get(own[side], {})))
        for side, part in block.hands.items()
    }
    posture = fit.posture.mirrored() if block.mirrored else fit.posture
    return replace(block, hands=hands, posture=posture)


def _upright_together(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The blocks, upright where blocks of the two hands overlap, because a body has only one posture."""
    of: dict[str, list[Block]] = {}
    for block in blocks:
        of.setdefault(block.who, []).append(block)

    def beside(block: Block) -> bool:
        return any(
            other is not block
            and other.start < block.end - TOUCH
            and block.start < other.end - TOUCH
            for other in of[block.who]
        )

    return tuple(
        block if block.posture.upright or not beside(block) else replace(block, posture=UPRIGHT)
        for block in blocks
    )
