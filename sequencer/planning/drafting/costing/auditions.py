"""The problem of a draft from its ground: moves are auditioned by everybody who dances, and hopeless wishes refused."""

from collections.abc import Collection, Hashable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import zip_longest
from math import ceil, floor

import numpy as np

from sequencer.motion.fitting.fits import Fit
from sequencer.motion.trajectories.assembly import LEAD_IN
from sequencer.planning.drafting.auditioning.candidates import (
    Audition,
    DraftMove,
    Heard,
    auditioned,
    moves_for,
)
from sequencer.planning.drafting.auditioning.cast_moves import Cast
from sequencer.planning.drafting.auditioning.passages import (
    BESIDE_LINK,
    LINK_LENGTHS,
    FlownTempos,
    MoveLaws,
    PassageTempos,
)
from sequencer.planning.drafting.auditioning.repertoire import Material, material_for
from sequencer.planning.drafting.auditioning.shortlist import (
    in_order,
    kept_of_each,
    lacking,
    some_of,
    taken,
    without_hopeless,
)
from sequencer.planning.drafting.auditioning.sizes import (
    can_be_sized,
    first_found,
    is_seen,
    keeps_shape,
    sizes_of,
    to_size,
)
from sequencer.planning.drafting.costing.refusal import refuse_hopeless
from sequencer.planning.drafting.costing.setting import Setting
from sequencer.planning.drafting.costing.weights import Weights
from sequencer.planning.drafting.gaps.draft_ground import DraftGround
from sequencer.planning.drafting.gaps.slots import Fixed, Slot, occurrences
from sequencer.planning.drafting.grouping.group_draft import GroupDraft
from sequencer.planning.drafting.grouping.staggering import longer
from sequencer.progress import Progress, within
from sequencer.show.file_records.wishes import meant_by
from sequencer.timing.position import TOUCH
from sequencer.timing.tempo import TempoMap

RANGE_STEP = (
    4.0  # [beats/min] to which ranges of tempos are widened, so that other songs find them known
)
_WIDE, _WIDER = (
    1.15,
    1.3,
)  # the fastest tempo of a range over its slowest; of one that holds another
_USUAL_LINK = 2  # [beats] of the link behind a move
_AT_ONCE = 20  # moves
_ALONE = 0.2  # of the progress of a group's auditions
_MOVES, _GROUP_MOVES = 120, 96  # about as many candidates are kept, over all patterns

# How a slot is danced: the range of tempos, who is mirrored, how much longer each dances, who is off the stage
_Way = tuple[int, frozenset[str], tuple[tuple[str, int], ...], frozenset[str]]


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
    stages = _stages(ground, ranges, group.room)
    every = [stage for own in stages for stage in own]
    most = _MOVES if len(stages) == 1 else _GROUP_MOVES
    moves, heard = _in_waves(
        list(moves_for(material.names, every)), stages, most, say, wished=_wished(ground)
    )
    passes = _passes(heard, len(ranges))
    somewhere = [k for k in range(len(moves)) if any(row[k] for row in passes)]
    refuse_hopeless(ground, moves, heard, somewhere, every)
    chosen = some_of(moves, _best_of(heard), somewhere, passes, most=most)
    moves, heard = _with_sizes(moves, heard, to_size(moves, chosen, most), stages, say)
    passes, best_of = _passes(heard, len(ranges)), _best_of(heard)
    chosen += [k for k in range(len(moves)) if moves[k].drawn]
    ways: list[_Way] = [
        (
            of[slot.material],
            frozenset(group.mirrored.get(k, ())),
            tuple(longer(group.late, k).items()),
            group.off.get(k, frozenset()),
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
            laws=tuple(_laws_in(own, kinds) for own in stages),
            ways=tuple(kinds.index(way) for way in ways),
            material=material,
            book=ground.base.book,
            tempos=tuple(known),
            passing=tuple(known.index(tempo) for tempo in tempos),
            sizable=tuple(can_be_sized(moves[k], every[0]) for k in chosen),
        ),
        wishes=ground.whole.show.wishes,
        weights=weights,
        walked=group.walked,
        late={k: max(each.values()) for k, each in group.late.items()},
        beside_rest=tuple(_beside_rest(slots, ground.fixed(), group.off)),
        first=outermost_first([own[0].body.arm_length for own in stages]),
        fixed=ground.fixed(),
        seed=seed,
        tempo=ground.base.tempo,
        forbidden={
            (piece, n)
            for piece, c in enumerate(of)
            for n, k in enumerate(chosen)
            if not passes[c][k]
        },
    )


def outermost_first(lengths: Sequence[float]) -> tuple[int, ...]:
    """The order in which performers try: the longest arms, the shortest, the next longest and so on, as what both ends can dance most between them can.

    Parameters
    ----------
    lengths : sequence of float
        Of each one's arms [m].
    """
    left = sorted(range(len(lengths)), key=lambda n: lengths[n])
    return tuple(left.pop(-1 if k % 2 == 0 else 0) for k in range(len(lengths)))


def _laws_in(own: Sequence[Audition], kinds: Sequence[_Way]) -> tuple[MoveLaws, ...]:
    """A performer's laws in each way of dancing a slot; in those of one tempo and side they are the same, and shared."""
    name, shared, found = own[0].record.name, dict[tuple[int, bool], MoveLaws](), []
    for c, mirrored, more, off in kinds:
        alike = c, name in mirrored
        longer, dances = dict(more).get(name, 0), name not in off
        if alike not in shared:
            shared[alike] = MoveLaws(replace(own[c], mirrored=alike[1]))
        found.append(shared[alike].otherwise(longer=longer, dances=dances))
    return tuple(found)


def _beside_rest(
    slots: Sequence[Slot], fixed: Sequence[Fixed], off: Mapping[int, Collection[str]]
) -> Iterator[tuple[int, bool, bool]]:
    """Slots with a rest before or behind them, of anybody; what leaves no time for one is linked to them.

    Whoever is off the stage in the slot before begins from rest, and whoever is off in the one behind comes to rest.
    """
    near = 2 * LEAD_IN
    starts = {float(slot.start) for slot in slots} | {each.start for each in fixed}
    ends = {float(slot.end) for slot in slots} | {each.end for each in fixed}
    for k, slot in enumerate(slots):
        begins = not any(-TOUCH <= slot.start - end <= near + TOUCH for end in ends)
        stops = not any(-TOUCH <= start - slot.end <= near + TOUCH for start in starts)
        begins |= bool(set(off.get(k - 1, ())) - set(off.get(k, ())))
        stops |= bool(set(off.get(k + 1, ())) - set(off.get(k, ())))
        if begins or stops:
            yield k, begins, stops


def _passes(heard: Sequence[Sequence[Heard]], ranges: int) -> list[list[bool]]:
    """At each range of tempos, whether each move passes for everybody."""
    return [
        [all(each.passes for each in column) for column in zip(*heard[c::ranges], strict=True)]
        for c in range(ranges)
    ]


def _best_of(heard: Sequence[Sequence[Heard]]) -> list[Heard]:
    """Of each move, how it fares on a stage where it passes, if there is one."""
    return [max(column, key=lambda each: each.passes) for column in zip(*heard, strict=True)]


def _with_sizes(
    moves: list[DraftMove],
    heard: list[list[Heard]],
    some: Sequence[int],
    stages: Sequence[Sequence[Audition]],
    say: Progress,
) -> tuple[list[DraftMove], list[list[Heard]]]:
    """Moves with some of them drawn small and large too, as far as that passes and is seen; and how all fare."""
    book, ranges, usual = stages[0][0].show.book, len(stages[0]), _best_of(heard)

    def tried(wave: Sequence[DraftMove]) -> list[list[Heard] | None]:
        alike = [move for move in wave if all(keeps_shape(move, e) for own in stages for e in own)]
        rows = dict(zip(alike, _rows_and_best(alike, stages, say, ranges), strict=True))
        return [
            rows[move][0]
            if move in rows
            and is_seen(usual[moves.index(move.as_usual)], rows[move][1], move.drawn)
            else None
            for move in wave
        ]

    found = first_found([queue for k in some for queue in sizes_of(moves[k], book)], tried)
    more = [list(column) for column in zip(*(row for _, row in found), strict=True)]
    if not more:
        return moves, heard
    return [*moves, *(move for move, _ in found)], [
        [*row, *added] for row, added in zip(heard, more, strict=True)
    ]


def _rows_and_best(
    wave: Sequence[DraftMove], stages: Sequence[Sequence[Audition]], say: Progress, ranges: int
) -> list[tuple[list[Heard], Heard]]:
    """How each of some moves fares on each stage of everybody; and, at a range of tempos where it passes for all, on the first."""
    out = []
    for row in _heard_by_all(wave, stages, say) if wave else ():
        able = (c for c in range(ranges) if all(each.passes for each in row[c::ranges]))
        c = next(able, None)
        out.append((row, Heard(passes=False) if c is None else row[c]))
    return out


def _common(ground: DraftGround) -> Material:
    """What everybody who dances may be given; the lowest level counts."""
    each = [material_for(ground.whole, record, ground.base.book) for record in ground.dancing]
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


def _stages(
    ground: DraftGround, ranges: Sequence[tuple[float, float]], room: float = 0.0
) -> list[list[Audition]]:
    """Everybody who dances, at each range of tempos, with so much room around everybody [m]."""
    fits: dict[Hashable, list[Fit]] = {}
    return [
        [
            Audition(
                show=ground.base,
                record=record,
                tempo=tempo,
                lit=True,  # or fire that is added later would warn
                together=tuple(ground.dancing),
                room=room,
                fits=fits,
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
        for n, (slowest, fastest) in enumerate(ranges):
            whole = min(slowest, low), max(fastest, high)
            wide = _WIDER if whole in (spans[k], ranges[n]) else _WIDE
            if whole[1] <= wide * whole[0]:
                ranges[n], of[k] = whole, n
                break
        else:
            ranges.append((low, high))
            of[k] = len(ranges) - 1
    return ranges, tuple(of)


def _between(ground: DraftGround, slots: Sequence[Slot], group: GroupDraft) -> list[PassageTempos]:
    """The tempos on the way out of each slot: a beat that sways elsewhere is none of a link's."""
    tempo = ground.base.tempo
    met: dict[tuple[int, int], list[float]] = {}
    flown: dict[tuple[int, int], list[dict[FlownTempos, None]]] = {}
    pairs = list(zip_longest(slots, slots[1:], fillvalue=slots[-1]))
    # What returns is passed alike, so at all its tempos.
    for k, (slot, after) in enumerate(pairs):
        pair = slot.material, after.material
        late = {0, *group.late.get(k, {}).values()}
        start, end = slot.end - max(LINK_LENGTHS) - BESIDE_LINK, slot.end + max(late) + BESIDE_LINK
        tempos = 60.0 * tempo.beats_per_second(np.arange(start, end))
        met.setdefault(pair, []).extend((float(tempos.min()), float(tempos.max())))
        rows = flown.setdefault(pair, [{} for _ in (0, *LINK_LENGTHS)])
        for n, row in zip((0, *LINK_LENGTHS), rows, strict=True):
            row.update((_flown_tempos(tempo, slot, after, n, by), None) for by in sorted(late))
    return [
        PassageTempos(
            between=_widened(min(met[pair]), max(met[pair])),
            flown=tuple(_quickest_and_slowest(row) for row in flown[pair]),
            links=tuple(_fastest_link(row) for row in flown[pair]),
        )
        for slot, after in pairs
        for pair in [(slot.material, after.material)]
    ]


def _fastest_link(row: Collection[FlownTempos]) -> float:
    """The fastest beat of links of one length, to a whole step above; as in a show, which judges a link by its own beats.

    A beat beside it that is far faster is none of the link's, but of the move's that is danced then: its audition was at that tempo.
    """
    fastest = max(link for _, link, _ in row)
    return _widened(fastest, fastest)[1]


def _quickest_and_slowest(each: Collection[FlownTempos]) -> tuple[FlownTempos, ...]:
    """Of tempos at which a link is flown, those with the quickest and the slowest link: what flies at both nearly always does between."""
    in_order = sorted(each, key=lambda own: (own[1], own[0], own[2]))
    return tuple(dict.fromkeys((in_order[-1], in_order[0])))


def _flown_tempos(tempo: TempoMap, slot: Slot, after: Slot, link: int, late: int) -> FlownTempos:
    """At which tempos a show flies a slot's move, a link of so many beats, and the next slot's move [beats/min]."""
    begins = float(slot.end + late)
    ends = [
        (min(float(slot.start), begins - link - 1), begins - link),
        (begins - link, begins if link else begins + 1),
        (begins, max(float(after.end - _USUAL_LINK), begins + 1)),
    ]
    before, between, behind = (float(round(60.0 * tempo.fastest(*span))) for span in ends)
    return before, between, behind


def _widened(low: float, high: float) -> tuple[float, float]:
    """A range of tempos to whole steps outside [beats/min]."""
    return (
        float(floor((low + 0.5) / RANGE_STEP)) * RANGE_STEP,
        float(ceil((high - 0.5) / RANGE_STEP)) * RANGE_STEP,
    )


def _in_waves(
    moves: Sequence[DraftMove],
    stages: Sequence[Sequence[Audition]],
    most: int,
    say: Progress,
    *,
    wished: frozenset[str] = frozenset(),
) -> tuple[list[DraftMove], list[list[Heard]]]:
    """The moves that were auditioned, and how each fares on each stage: of each pattern until enough pass.

    In a group the lead tries each move alone before everybody does, since that is quicker. Of a cycle of which two failed the others
    are not tried, since they mostly fail alike, unless a wish names the pattern.
    """
    ranges = len(stages[0])
    waiting = in_order(moves, stages[0][0].show.book)
    enough = kept_of_each(len(waiting), most)
    found: dict[int, list[Heard]] = {}
    passed = {name: [0] * (1 + ranges) for name in waiting}  # somewhere; at each range of tempos
    while wave := [
        k for name, queue in waiting.items() for k in taken(queue, lacking(passed[name], enough))
    ]:
        told = within(say, len(found) / len(moves), (len(found) + len(wave)) / len(moves)) or say
        for k, row in zip(wave, _heard_by_all([moves[k] for k in wave], stages, told), strict=True):
            found[k] = row
            able = [all(each.passes for each in row[c::ranges]) for c in range(ranges)]
            count = passed[moves[k].pattern]
            count[0] += any(able)
            for c, each in enumerate(able):
                count[1 + c] += each
        for name in {moves[k].pattern for k in wave} - wished:
            without_hopeless(waiting[name], moves, found, passed[name], enough)
    tried = sorted(found)
    return [moves[k] for k in tried], [
        [found[k][n] for k in tried] for n in range(len(stages) * ranges)
    ]


def _wished(ground: DraftGround) -> frozenset[str]:
    """Patterns that a wish may mean."""
    families = {name: each.family for name, each in ground.base.book.items()}
    wishes = ground.whole.show.wishes
    return frozenset(name for word in wishes.counted for name in meant_by(word, families))


def _heard_by_all(
    moves: Sequence[DraftMove], stages: Sequence[Sequence[Audition]], say: Progress
) -> list[list[Heard]]:
    """How each of some moves fares on each stage of everybody."""
    if len(stages) == 1:
        return [list(row) for row in zip(*_all_heard(moves, stages, say), strict=True)]
    lead = [replace(stage, together=()) for stage in stages[0]]
    alone = _all_heard(moves, [lead], within(say, 0.0, _ALONE) or say)
    # Who fails alone fails among all: the others need not try.
    failed = {
        (c, k): each for c, row in enumerate(alone) for k, each in enumerate(row) if not each.passes
    }
    rows = _all_heard(moves, stages, within(say, _ALONE, 1.0) or say, failed)
    return [list(row) for row in zip(*rows, strict=True)]


def _all_heard(
    moves: Sequence[DraftMove],
    stages: Sequence[Sequence[Audition]],
    say: Progress,
    failed: Mapping[tuple[int, int], Heard] | None = None,
) -> list[list[Heard]]:
    """How each move fares on each stage of everybody; what one cannot dance nobody else tries at that tempo."""
    found: list[list[Heard]] = []
    out = dict(failed or {})  # (range, move) that failed
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
