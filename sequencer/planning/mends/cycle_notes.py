"""A note on a cycle that the show leaves open: what stands written then stays, whatever becomes of tempo and props."""

from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.planning.edits.as_written import plain
from sequencer.planning.edits.join_edits import step_at
from sequencer.planning.trying.restaging import restaged, with_everybody
from sequencer.planning.trying.trials import DanceEdit
from sequencer.show.editing import Change
from sequencer.staging.staged import Block, Staged

CHOOSE = "or choose another `cycle`"
_EXACT = 1e-9  # [beats]


def cycle_written(show: Staged, note: Finding) -> DanceEdit | None:
    """The change that writes down the cycle which a note is about, wherever its performers dance that pattern.

    Returns
    -------
    edit : DanceEdit or None
        Tried: everything is danced as before, tonight and by the whole cast. None where the number that can be written is not
        the very cycle, or one entry has another cycle for somebody else.
    """
    of = next((block for block in show.blocks_of(note.who[0]) if _at(show, block, note)), None)
    if of is None:
        return None
    open_ones = [
        block
        for block in show.blocks
        if block.title == of.title and not block.link and step_at(show, block.path).cycle is None
    ]
    paths = {block.path for block in open_ones if block.who in note.who}
    cycles = {block.cycle for block in open_ones if block.path in paths}
    value = plain(of.cycle)
    if any(abs(cycle - value) > _EXACT for cycle in cycles):
        return None  # without a show staged for it
    changes: tuple[Change, ...] = tuple(
        ((*path, "cycle"), value) for path in sorted(paths, key=str)
    )
    edit = DanceEdit(
        words=f"keep it at {of.cycle:.4g} beats a cycle, whatever the count or the prop: write `cycle: {of.cycle:.4g}`",
        changes=changes,
        value=of.cycle,
    )
    return edit if _danced_the_same(show, edit) and _by_everybody(show, edit) else None


def _at(show: Staged, block: Block, note: Finding) -> bool:
    """Whether a block is the one that a note tells."""
    begins = note.start is not None and abs(show.seconds(block.start) - note.start) < _EXACT
    return begins and note.message.startswith(f"{block.title} takes ")


def _by_everybody(show: Staged, edit: DanceEdit) -> bool:
    """Whether those who are away tonight, or whose part is taken, dance the same with a change too."""
    if show.show.tonight is None:
        return True
    try:
        return _danced_the_same(with_everybody(show), edit)
    except InputError:
        return False


def _danced_the_same(show: Staged, edit: DanceEdit) -> bool:
    """Whether everybody dances the same with a change, block by block."""
    try:
        after = restaged(show, edit.changes)
    except InputError:
        return False
    return [_danced(block) for block in after.blocks] == [_danced(block) for block in show.blocks]


def _danced(block: Block) -> tuple[object, ...]:
    hands = sorted((side, hand.pattern, repr(hand.values)) for side, hand in block.hands.items())
    return block.who, block.start, block.end, block.cycle, block.shift, hands
