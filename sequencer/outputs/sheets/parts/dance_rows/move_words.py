"""What a performer has to be told of each move: only what is new since the same was told before.

Hands are told the first time a pattern comes, and again when they differ; timing when it changes; a canon or a mirror
where it begins. So a line says a name and what is new, which is what can be taken in at a glance.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sequencer.outputs.sheets.page.wording import NB, plural
from sequencer.outputs.sheets.parts.dance_rows.hand_words import spoken_hands, together_words
from sequencer.outputs.words.company_words import company_of_blocks
from sequencer.outputs.words.place_words import new_places
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.stop_words import stop_words
from sequencer.staging.results import result_of
from sequencer.staging.staged import Block, Staged


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveWords:
    """One move in words; what is as before is empty."""

    cue: str = ""  # to say or think
    hands: str = ""
    timing: str = ""  # timing and direction of the two hands
    pace: str = ""  # beats of one round, where the hands are told
    into: str = ""  # how far into the pattern it starts
    company: str = ""  # canon and mirror
    where: str = ""  # of the hands
    body: str = ""
    note: str = ""

    @property
    def brief(self) -> tuple[str, ...]:
        """What a pocket card says of it."""
        return tuple(filter(None, (self.hands, self.timing, self.into, self.company)))

    @property
    def whole(self) -> tuple[str, ...]:
        """What a sheet says of it on one line."""
        return tuple(filter(None, (self.hands, self.timing, self.pace, self.into, self.company)))


def told_moves(staged: Staged, who: str) -> Mapping[int, MoveWords]:
    """Words for each move and stop of one performer, by the block's id.

    Parameters
    ----------
    staged : Staged
    who : str
        Name of the performer.
    """
    return result_of(staged, ("told moves", who), lambda: _told(staged, who))


def _told(staged: Staged, who: str) -> Mapping[int, MoveWords]:
    dancer = next((each for each in staged.dancers if each.name == who), None)
    company = company_of_blocks(staged)
    places = new_places(dancer, staged.blocks_of(who)) if dancer is not None else {}
    hands_of: dict[str, str] = {}  # as last told, by the pattern's name
    postures: dict[str, str] = {}
    timing_before = ""
    out: dict[int, MoveWords] = {}
    for block in staged.blocks_of(who):
        if block.link:
            continue
        hands, pace = spoken_hands(dancer, block), _pace(staged, block)
        told = f"{hands}; {pace}"
        is_new = hands_of.get(block.title) != told
        hands_of[block.title] = told
        timing = together_words(block)
        posture = block_posture(block, dancer)
        is_bent = postures.get(block.title, "") != posture
        postures[block.title] = posture
        out[id(block)] = MoveWords(
            cue=" ".join(block.cue.split()),
            hands=hands if is_new else "",
            pace=pace if is_new else "",
            timing=timing if timing != timing_before else "",
            into=f"start {plural(block.shift, 'beat')} in" if block.shift else "",
            company=company.get(id(block), ""),
            where=places.get(block.start, "").replace(" cm", f"{NB}cm"),
            body=(posture or "Upright again.") if is_bent else "",
            note=block.note,
        )
        timing_before = timing or timing_before
    for stop in staged.stops_of(who):
        out[id(stop)] = MoveWords(
            cue=" ".join(stop.cue.split()), hands=stop_words(stop, dancer), note=stop.note
        )
    return out


def _pace(staged: Staged, block: Block) -> str:
    """Beats of one round of the hands, where the show file sets them."""
    at: Any = staged.show if staged.read is None else staged.read.written
    for key in block.path:
        at = at[key] if isinstance(key, int) or isinstance(at, dict) else getattr(at, str(key))
    return f"{plural(block.cycle, 'beat')} a round" if at.cycle is not None else ""
