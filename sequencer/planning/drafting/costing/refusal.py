"""The one line that refuses a draft: a wish that nothing can meet, or where there was least to choose from."""

from collections import Counter
from collections.abc import Callable, Sequence

import numpy as np

from sequencer.errors import InputError
from sequencer.motion.fitting.windows import windows_of
from sequencer.planning.drafting.auditioning.candidates import Audition, DraftMove, Heard
from sequencer.planning.drafting.auditioning.repertoire import fault_of_wish
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.show.file_records.wishes import meant_by


def narrowest(setting: Setting, position: Callable[[float], str]) -> str:
    """Where the fewest passages were left, and what most often spoke against the others, in words; empty if nowhere any failed.

    Parameters
    ----------
    setting : Setting
        Of a search that found nothing.
    position : callable
        bar.beat of a beat coordinate.
    """
    rows = []
    for a, b in setting.neighbours:
        here, there = (
            np.array(
                [
                    (setting.slots[k].material, n) not in setting.forbidden
                    for n in range(setting.count)
                ]
            )
            for k in (a, b)
        )
        left = np.isfinite(setting.link_table(a, b)) & here[:, None] & there
        why = [
            text
            for key, text in setting.bad.items()
            if key[1] + key[2] == setting.slots[a].beats and key[4:] == setting.ways(a, b)
        ]
        if why or not left.all():
            rows.append((int(left.sum()), a, Counter(why).most_common(1)))
    if not rows:
        return ""
    count, a, common = min(rows, key=lambda row: row[:2])
    one, other = setting.slots[a], setting.slots[a + 1]
    said = (
        f"least is left from {one.section} to {other.section} at {position(other.start)}, "
        f"{count} of {setting.count**2} pairs of moves"
    )
    return said + (f" ({common[0][0]})" if common else "")


def refuse_hopeless(
    ground: DraftGround,
    moves: Sequence[DraftMove],
    heard: Sequence[Sequence[Heard]],
    passing: Sequence[int],
    stages: Sequence[Audition],
) -> None:
    """Refuse wishes that nothing can meet, and a repertoire of which nothing can be danced."""
    worst = [
        next((n for n, row in enumerate(heard) if not row[k].passes), 0) for k in range(len(moves))
    ]  # of each move, who fails
    families = {name: each.family for name, each in ground.base.book.items()}
    able = {moves[k].pattern for k in passing}
    for word, often in ground.whole.show.wishes.counted.items():
        meant = set(meant_by(word, families))
        if meant & able:
            continue
        own = [k for k in range(len(moves)) if moves[k].pattern in meant]
        if not own:
            raise _not_in_repertoire(ground, word, often)
        k = own[0]
        stage = stages[worst[k]]
        raise fault_of_wish(
            ground.whole, word,
            f"{word} cannot be danced to this song by {stage.record.name}: {heard[worst[k]][k].why}",
            _relaxing(moves[k], stage),
        )  # fmt: skip
    if not passing:
        stage, why = stages[worst[0]], heard[worst[0]][0].why
        index = ground.whole.show.names.index(stage.record.name)
        raise ground.fault(
            "nothing-fits", ("cast", index),
            f"no pattern of {stage.record.name}'s can be danced to this song: {moves[0].pattern}: {why}",
            _relaxing(moves[0], stage),
        )  # fmt: skip


def _not_in_repertoire(ground: DraftGround, word: str, often: int) -> InputError:
    times = "once" if often == 1 else f"{often} times"
    return fault_of_wish(
        ground.whole, word, f"{word} is wished {times}, but is not in the repertoire",
        "add it under `repertoire`, `known`, or raise `level`",
    )  # fmt: skip


def _relaxing(move: DraftMove, stage: Audition) -> str:
    """What would let a move pass, in words."""
    opens = windows_of(stage.dance(move)).opens
    if opens:
        return f"it fits with {opens[0]}"
    return "choose another pattern, a shorter tether, or count the song with `tempo: half`"
