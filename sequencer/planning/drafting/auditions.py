"""The problem of a draft from its ground: moves are auditioned by everybody who dances, and hopeless wishes refused."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import zip_longest
from math import ceil, floor

import numpy as np

from sequencer.errors import InputError
from sequencer.motion.fitting.fits import GOOD
from sequencer.motion.fitting.windows import windows_of
from sequencer.motion.patterns.blocks import Direction, Timing
from sequencer.planning.drafting.candidates import (
    HANDS,
    Audition,
    DraftMove,
    Heard,
    auditioned,
    moves_for,
)
from sequencer.planning.drafting.draft_ground import DraftGround
from sequencer.planning.drafting.group_draft import GroupDraft
from sequencer.planning.drafting.passages import BESIDE, LINK_LENGTHS, MoveLaws
from sequencer.planning.drafting.repertoire import Material, fault_of_wish, material_for
from sequencer.planning.drafting.setting import Cast, Setting
from sequencer.planning.drafting.slots import Slot, occurrences
from sequencer.planning.drafting.staggering import longer
from sequencer.planning.drafting.weights import Weights
from sequencer.progress import Progress, within
from sequencer.show.wishes import meant_by

RANGE_STEP = (
    4.0  # [beats/min] to which ranges of tempos are widened, so that other songs find them known
)
_WIDE = 1.15  # the fastest tempo of a range over its slowest
_AT_ONCE = 20  # moves
_SHORTLISTED = 0.3  # of the progress of a group's auditions
_MOVES = 160  # about as many candidates are kept, over all patterns
_GROUP_MOVES = (
    96  # about as many are auditioned by a whole group: those in which the lead has most room
)
_EACH = (2, 6)  # least and most of one pattern


def setting_for(
    ground: DraftGround,
    slots: tuple[Slot, ...],
    group: GroupDraft,
    *,
    weights: Weights,
    seed: int,
    say: Progress,
) -> Setting:
    """The problem, with the moves that passed their auditions.

    Parameters
    ----------
    ground : DraftGround
    slots : tuple of Slot
    group : GroupDraft
    weights : Weights
    seed : int
    say : callable
        Told the share of the auditions.

    Raises
    ------
    InputError
        If a wish cannot be met by anything, or nothing that the performers know can be danced to this song.
    """
    material = _common(ground)
    ranges, of = tempo_ranges(ground, slots)
    stages = _stages(ground, ranges)
    every = [stage for own in stages for stage in own]
    moves = list(moves_for(material.names, every))
    if len(stages) > 1:
        moves = _shortlist(ground, moves, stages[0], within(say, 0.0, _SHORTLISTED) or say)
        say = within(say, _SHORTLISTED, 1.0) or say
    heard = _all_heard(moves, stages, say)
    passes = [
        [
            all(heard[n * len(ranges) + c][k].passes for n in range(len(stages)))
            for k in range(len(moves))
        ]
        for c in range(len(ranges))
    ]  # by range and move
    somewhere = [k for k in range(len(moves)) if any(row[k] for row in passes)]
    _refuse_hopeless(ground, moves, heard, somewhere, every)
    best_of = [
        max((row[k] for row in heard), key=lambda each: each.passes) for k in range(len(moves))
    ]
    chosen = _some(moves, best_of, somewhere, passes)
    ways = [
        (
            of[slot.material],
            frozenset(group.mirrored.get(k, ())),
            tuple(longer(group.late, k).items()),
        )
        for k, slot in enumerate(slots)
    ]
    kinds = list(dict.fromkeys(ways))
    tempos = _between(ground, slots, group)
    known = list(dict.fromkeys(tempos))
    return Setting(
        slots=slots,
        loudness=ground.loudness(slots),
        cast=Cast(
            moves=tuple(moves[k] for k in chosen),
            heard=tuple(best_of[k] for k in chosen),
            laws=tuple(
                tuple(
                    MoveLaws(
                        replace(own[c], mirrored=own[c].record.name in names),
                        longer=dict(more).get(own[c].record.name, 0),
                    )
                    for c, names, more in kinds
                )
                for own in stages
            ),
            ways=tuple(kinds.index(way) for way in ways),
            material=material,
            book=ground.base.book,
            tempos=tuple(known),
            passing=tuple(known.index(tempo) for tempo in tempos),
        ),
        wishes=ground.whole.show.wishes,
        weights=weights,
        walked=group.walked,
        late={k: max(each.values()) for k, each in group.late.items()},
        fixed=ground.fixed(),
        seed=seed,
        forbidden={
            (piece, n)
            for piece, c in enumerate(of)
            for n, k in enumerate(chosen)
            if not passes[c][k]
        },
    )


def _common(ground: DraftGround) -> Material:
    """What everybody who dances may be given; the lowest level counts."""
    each = [
        material_for(ground.whole, record, ground.base.book, wished=record is ground.lead)
        for record in ground.dancing
    ]
    known = [name for name in each[0].names if all(name in own.names for own in each)]
    learning = frozenset(name for name in known if any(name in own.learning for own in each))
    if not set(known) - learning:
        raise ground.fault(
            "nothing-in-common", ("cast",), "there is no pattern that everybody in the cast may dance",
            "raise a `level`, or name patterns for all under `repertoire`, `known`",
        )  # fmt: skip
    return Material(
        known=tuple(name for name in known if name not in learning),
        learning=learning,
        level=min(own.level for own in each),
    )


def _stages(ground: DraftGround, ranges: Sequence[tuple[float, float]]) -> list[list[Audition]]:
    """Everybody who dances, at each range of tempos."""
    return [
        [
            Audition(
                show=ground.base,
                record=record,
                tempo=tempo,
                lit=bool(ground.base.lit_of(record.name)),
                together=tuple(ground.dancing),
            )
            for tempo in ranges
        ]
        for record in ground.dancing
    ]


def tempo_ranges(
    ground: DraftGround, slots: Sequence[Slot]
) -> tuple[list[tuple[float, float]], tuple[int, ...]]:
    """Ranges of tempos in which moves are auditioned [beats/min], and which of them each material needs."""
    spans = []
    for own in occurrences(slots).values():
        beats = np.concatenate([np.arange(slot.start, slot.end) for slot in own])
        tempos = 60.0 * ground.base.tempo.beats_per_second(beats)
        spans.append(_widened(float(tempos.min()), float(tempos.max())))
    ranges: list[tuple[float, float]] = []
    of = [0] * len(spans)
    for k in sorted(range(len(spans)), key=lambda k: spans[k]):
        low, high = spans[k]
        if ranges and max(ranges[-1][1], high) <= _WIDE * ranges[-1][0]:
            ranges[-1] = (ranges[-1][0], max(ranges[-1][1], high))
        else:
            ranges.append((low, high))
        of[k] = len(ranges) - 1
    return ranges, tuple(of)


def _between(
    ground: DraftGround, slots: Sequence[Slot], group: GroupDraft
) -> list[tuple[float, float]]:
    """Slowest and fastest tempo on the way out of each slot [beats/min]: a beat that sways elsewhere is none of a link's."""
    met: dict[
        tuple[int, int], list[float]
    ] = {}  # what returns is passed alike, so at all its tempos
    pairs = [
        (slot.material, after.material)
        for slot, after in zip_longest(slots, slots[1:], fillvalue=slots[-1])
    ]
    for k, slot in enumerate(slots):
        late = max(group.late.get(k, {}).values(), default=0)
        start, end = slot.end - max(LINK_LENGTHS) - BESIDE, slot.end + late + BESIDE
        tempos = 60.0 * ground.base.tempo.beats_per_second(np.arange(start, end))
        met.setdefault(pairs[k], []).extend((float(tempos.min()), float(tempos.max())))
    return [_widened(min(met[pair]), max(met[pair])) for pair in pairs]


def _widened(low: float, high: float) -> tuple[float, float]:
    """A range of tempos to whole steps outside [beats/min]."""
    return (
        float(floor((low + 0.5) / RANGE_STEP)) * RANGE_STEP,
        float(ceil((high - 0.5) / RANGE_STEP)) * RANGE_STEP,
    )


def _shortlist(
    ground: DraftGround, moves: list[DraftMove], lead: Sequence[Audition], say: Progress
) -> list[DraftMove]:
    """The moves worth an audition by everybody: of each pattern those in which the lead alone has most room.

    All moves of a wished pattern stay, and all moves where the lead can dance none.
    """
    alone = [replace(stage, together=()) for stage in lead]
    heard = _all_heard(moves, [alone], say)
    passes = [[each.passes for each in row] for row in heard]
    somewhere = [k for k in range(len(moves)) if any(row[k] for row in passes)]
    if not somewhere:
        return moves
    best_of = [max((row[k] for row in heard), key=lambda h: h.passes) for k in range(len(moves))]
    families = {name: each.family for name, each in ground.base.book.items()}
    wished = {
        name for word in ground.whole.show.wishes.counted for name in meant_by(word, families)
    }
    kept = set(_some(moves, best_of, somewhere, passes, most=_GROUP_MOVES))
    return [move for k, move in enumerate(moves) if k in kept or move.pattern in wished]


def _all_heard(
    moves: Sequence[DraftMove], stages: Sequence[Sequence[Audition]], say: Progress
) -> list[list[Heard]]:
    """How each move fares on each stage of everybody; what one cannot dance nobody else tries at that tempo."""
    found: list[list[Heard]] = []
    out: dict[tuple[int, int], Heard] = {}  # (range, move) that failed
    whole = sum(len(own) for own in stages)
    for own in stages:
        for c, stage in enumerate(own):
            row = [out.get((c, k)) for k in range(len(moves))]
            left = [k for k, each in enumerate(row) if each is None]
            for n in range(0, len(left), _AT_ONCE):
                some = left[n : n + _AT_ONCE]
                done = (len(found) + n / max(len(left), 1)) / whole
                say(f"auditioning patterns for {stage.record.name}", done)
                for k, each in zip(some, auditioned([moves[k] for k in some], stage), strict=True):
                    row[k] = each
                    if not each.passes:
                        out[c, k] = each
            found.append([each for each in row if each is not None])
    return found


def _refuse_hopeless(
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


def _some(
    moves: Sequence[DraftMove],
    heard: Sequence[Heard],
    passing: Sequence[int],
    passes: Sequence[Sequence[bool]],
    *,
    most: int = _MOVES,
) -> list[int]:
    """Of each pattern the moves with most room; fewer of each where there are many patterns, about so many in all.

    Where few are kept, the second of a pattern times the hands in another way than the first, and each pattern in its own, so
    that all ways are left to choose from.
    """
    names = list(dict.fromkeys(moves[k].pattern for k in passing))
    least, greatest = _EACH
    each = max(least, min(greatest, most // max(len(names), 1)))
    out: list[int] = []
    for n, name in enumerate(names):
        own = [k for k in passing if moves[k].pattern == name]
        own.sort(key=lambda k: (not moves[k].usual, -min(heard[k].margin, GOOD)))
        own = _mixed(own, moves, n)
        chosen = set(own[:each])
        for row in passes:  # every range of tempos gets its share
            chosen |= set([k for k in own if row[k]][: max(1, each // 2)])
        out += sorted(chosen)
    return out


def _mixed(own: Sequence[int], moves: Sequence[DraftMove], turn: int) -> list[int]:
    """Moves of a pattern, best first, so that each way of timing the hands comes once before any comes again."""
    left, out = list(own), []
    ways = [HANDS[(turn + n) % len(HANDS)] for n in range(len(HANDS))]
    while left:
        known: set[tuple[Timing, Direction]] = set()
        first = left[0]
        wanted = sorted(left, key=lambda k: (k != first, ways.index(_hands(moves[k]))))
        for k in wanted:
            if _hands(moves[k]) not in known:
                known.add(_hands(moves[k]))
                out.append(k)
        left = [k for k in left if k not in out]
    return out


def _hands(move: DraftMove) -> tuple[Timing, Direction]:
    return move.timing, move.direction
