"""Which cues of a performer are new since the last print: those that match no cue of the old show."""

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import degrees
from typing import Any

from sequencer.outputs.sheets.parts.cues import Cue, cues_of
from sequencer.outputs.words.company_words import company_of_blocks
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.staging.staged import Block, Staged

Key = tuple[Hashable, ...]


@dataclass(frozen=True, eq=False)
class Changes:
    """A show compared with the one printed before it."""

    now: Staged
    before: Staged

    @property
    def label(self) -> str:
        """Version and date of the last print."""
        return f"version {self.before.show.version} · {self.before.show.date or 'no date'}"

    def is_new_cue(self, who: str, cue: Cue) -> bool:
        """Whether a performer's cue differs from every cue in the last print."""
        return cue_key(self.now, cue) not in self._old.get(who, ())

    @cached_property
    def _old(self) -> dict[str, tuple[Key, ...]]:
        return {
            name: tuple(cue_key(self.before, cue) for cue in cues_of(self.before, name))
            for name in self.before.show.names
        }


def cue_key(staged: Staged, cue: Cue) -> Key:
    """Everything on a line of a performer's sheet; times to a tenth of a second, places to a centimetre."""
    return (
        cue.kind,
        round(staged.seconds(cue.start), 1),
        staged.position(cue.start),
        round(cue.beats, 3),
        cue.lit,
        tuple(round(value, 2) for value in cue.spot),
        cue.formation,
        cue.walking,
        cue.note,
        tuple((round(x, 2), round(y, 2)) for x, y in cue.via),
        (*_block_key(cue.block), company_of_blocks(staged).get(id(cue.block), ""))
        if cue.block is not None
        else (),
        _burn_key(cue.burn) if cue.burn is not None else (),
    )


def _burn_key(burn: PlannedBurn) -> Key:
    """Who lights and puts out, where, for how long."""
    times = (burn.lighting_s, burn.wait_s, burn.queue_s, burn.putting_out_s)
    place = burn.lit_at or ()
    return (
        burn.lit_by,
        tuple(round(value, 2) for value in place),
        burn.put_out_by,
        burn.second_set,
        *(round(seconds, 1) for seconds in times),
    )


def _block_key(block: Block) -> Key:
    """What is danced, with fitted values to a centimetre and a degree."""
    hands = tuple(
        (side, part.pattern, repr(sorted({**_rounded(part.fitted), **part.parameters}.items())))
        for side, part in sorted(block.hands.items())
    )
    return (
        hands,
        tuple(round(degrees(angle)) for angle in block.posture.angles),
        block.timing,
        block.direction,
        round(block.cycle, 6),
        block.shift,
        block.mirrored,
        block.link,
        block.stop,
        block.stopped,
        block.note,
        block.cue,
    )


def _rounded(found: Mapping[str, Any]) -> dict[str, Any]:
    return {
        name: round(value, 2) if isinstance(value, float) else value
        for name, value in found.items()
    }
