"""What an earlier draft wrote: where the next search begins, and what another routine must differ from."""

from collections.abc import Mapping
from math import floor

import numpy as np

from sequencer.errors import InputError
from sequencer.planning.drafting.auditioning.cast_moves import likeness
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.finishing.slot_dances import LEAD_LINK
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.planning.drafting.optimising.choices import Counting
from sequencer.show.drafted import drafted_entries
from sequencer.staging.staged import Block
from sequencer.staging.timeline import staged


def standing(ground: DraftGround, setting: Setting) -> dict[int, Block]:
    """What is danced of each material in the file as it stands."""
    try:
        show = staged(ground.whole, ground.heard, before=ground.base)
    except InputError:  # such as an entry over what was drafted, which goes
        return {}
    now: dict[int, Block] = {}
    for slot in setting.slots:
        danced = (
            block
            for each in ground.dancing  # the lead first, if on the stage
            for block in show.blocks_of(each.name)
            if slot.start - 1e-6 <= block.start < slot.start + LEAD_LINK + 1 and not block.link
        )
        block = next(danced, None)
        if block is not None:
            now[slot.material] = block
    return now


def standing_picks(ground: DraftGround, setting: Setting) -> tuple[int, ...] | None:
    """The routine that an earlier draft wrote, where the search begins: of what costs the same, it stays."""
    if not drafted_entries(ground.document.values):
        return None
    picks = []
    now = standing(ground, setting)
    for piece in range(len(setting.uses)):
        block = now.get(piece)
        own = np.sum(list(setting.own_terms(piece).values()), axis=0)
        alike = np.array([likeness(move, block) for move in setting.cast.moves])
        picks.append(int(np.argmin(np.where(alike > 0, -alike, own - own.min()))))
    return tuple(picks)


def another_than(setting: Setting, now: Mapping[int, str]) -> tuple[Counting, ...]:
    """Ask for patterns other than those of now, in at least a third of the material and of the stretches.

    Parameters
    ----------
    setting : Setting
    now : mapping of int to str
        The pattern of each material.
    """
    pieces = range(len(setting.uses))
    alike = [np.array([float(name == now.get(m)) for name in setting.patterns]) for m in pieces]
    return tuple(
        Counting(
            name="another routine",
            counts=tuple(weigh * row for weigh, row in zip(each, alike, strict=True)),
            at_most=float(floor(2 * sum(each) / 3 + 1e-9)),
        )
        for each in ([1] * len(alike), [len(setting.uses[m]) for m in pieces])
    )
