"""What changed since the last print, line by line: a line is new where the old show has none that reads alike."""

from collections import Counter
from collections.abc import Hashable
from dataclasses import dataclass
from functools import cached_property

from sequencer.outputs.sheets.cues import Cue, cues_of
from sequencer.show.staged import Block, Lit, Staged

Key = tuple[Hashable, ...]


@dataclass(frozen=True, eq=False)
class Changes:
    """A show against the one that was printed before it."""

    now: Staged
    before: Staged

    @property
    def said(self) -> str:
        """Version and date of the last print."""
        return f"version {self.before.show.version} · {self.before.show.date or 'no date'}"

    def is_new_cue(self, who: str, cue: Cue) -> bool:
        """Whether a performer's cue reads otherwise than any in the last print."""
        return cue_key(self.now, cue) not in self._old.get(who, ())

    def is_new_burn(self, burn: Lit) -> bool:
        """Whether a burn differs from every one in the last print."""
        return burn_key(self.now, burn) not in {
            burn_key(self.before, old) for old in self.before.lit
        }

    def counts(self, who: str) -> tuple[int, int]:
        """How many of a performer's lines are new or changed, and how many are gone."""
        now = Counter(cue_key(self.now, cue) for cue in cues_of(self.now, who))
        old = Counter(self._old.get(who, ()))
        return (now - old).total(), (old - now).total()

    @cached_property
    def _old(self) -> dict[str, tuple[Key, ...]]:
        return {
            name: tuple(cue_key(self.before, cue) for cue in cues_of(self.before, name))
            for name in self.before.show.names
        }


def cue_key(staged: Staged, cue: Cue) -> Key:
    """All that a line of a performer's sheet says; times to a tenth of a second, places to a centimetre."""
    return (
        cue.kind,
        round(staged.seconds(cue.start), 1),
        staged.position(cue.start),
        round(cue.beats, 3),
        cue.lit,
        tuple(round(value, 2) for value in cue.spot),
        cue.formation,
        cue.walking,
        tuple((round(x, 2), round(y, 2)) for x, y in cue.via),
        _block_key(cue.block) if cue.block is not None else (),
    )


def burn_key(staged: Staged, burn: Lit) -> Key:
    """Who burns from when to when."""
    return burn.who, round(staged.seconds(burn.start), 1), round(staged.seconds(burn.end), 1)


def _block_key(block: Block) -> Key:
    hands = tuple(
        (side, part.pattern, repr(sorted(part.parameters.items())))
        for side, part in sorted(block.hands.items())
    )
    return (
        hands,
        block.timing,
        block.direction,
        round(block.cycle, 6),
        block.shift,
        block.mirrored,
        block.link,
        block.note,
    )
