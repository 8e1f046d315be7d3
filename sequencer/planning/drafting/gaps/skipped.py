"""Places of a song over which nothing can be danced: where the count jumps, or a whole stretch; what is left open there, and in which words.

A count jumps where a beat lasts far longer or shorter than those around it, as where one was not heard, or one heard twice.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np

from sequencer.motion.trajectories.assembly import LEAD_IN
from sequencer.planning.drafting.gaps.slots import SHORTEST_STRETCH, Slot
from sequencer.timing.position import TOUCH
from sequencer.timing.tempo import TempoMap

_JUMPS = 1.5  # times as long as the beats around it, or as short: no player sways so much from one beat to the next
_AROUND = 5  # beats to each side that it is compared with
_FEWEST = 3  # of them, near an end; with fewer on a side, only the other counts
OFF_TEMPO = 1.15  # times as quick or slow as the song: from there on what fails is likely the count's fault, not the repertoire's
_STILL = 1.0  # [beats] of rest before and behind, as a flight is eased into what is beside it
_AS_FAR = 0.95  # of the farthest from the usual tempo: about as far


class Jump(NamedTuple):
    """A beat, or several in a row, far longer or shorter than those around."""

    start: float  # [beats]
    end: float  # [beats]
    lasts: float  # [s] the first of them
    usual: float  # [s] a beat around it


class Skipped(NamedTuple):
    """A span in which nobody dances, since nothing was found that can be danced there."""

    start: float  # [beats]
    end: float  # [beats]
    jump: Jump | None = None  # because of which


def jumps_of(tempo: TempoMap) -> tuple[Jump, ...]:
    """Where a count jumps, by start.

    Parameters
    ----------
    tempo : TempoMap

    Notes
    -----
    Source: the medians of the five beats before and the five behind; a design choice of this project. Where the tempo itself changes,
    however much, each beat is like those on one side.
    """
    lengths = np.diff(tempo.times)
    found: list[Jump] = []
    for k, own in enumerate(lengths):
        sides = lengths[max(k - _AROUND, 0) : k], lengths[k + 1 : k + 1 + _AROUND]
        usual = [float(np.median(side)) for side in sides if len(side) >= _FEWEST]
        if not usual or not (
            all(own >= _JUMPS * each for each in usual)
            or all(each >= _JUMPS * own for each in usual)
        ):
            continue
        start = float(tempo.first + k)
        if found and found[-1].end == start:
            found[-1] = found[-1]._replace(end=start + 1)
        else:
            found.append(Jump(start, start + 1, float(own), float(np.mean(usual))))
    return tuple(found)


def around_jump(jump: Jump, tempo: TempoMap) -> Skipped:
    """What is left open because of a jump: props are led to rest before it, and out of rest after it to the beginning of a bar."""
    return Skipped(*_with_ways(jump.start, jump.end, tempo), jump)


def _with_ways(start: float, end: float, tempo: TempoMap) -> tuple[float, float]:
    """A span with the ways into rest before it and out of rest behind, a beat away from it at least, to the beginning of a bar."""
    end += LEAD_IN + _STILL
    return start - LEAD_IN - _STILL, float(next((bar for bar in tempo.bars if bar >= end), end))


def skipped_for(
    some: Sequence[Slot],
    tempo: TempoMap,
    jumps: Sequence[Jump] | None = None,
    *,
    one_helps: bool = True,
) -> list[Skipped]:
    """What is left open for slots that share what is danced, where nothing that is known can be.

    As little as may help: where the count jumps in some of them, what is around the jumps; else those whose tempo is farthest from the
    song's, whole, and where that is far, the ways to rest and out of it before and behind, since at that tempo they would fail too. Where
    none is far from it, the tempo is not to blame: one of them, as the rest may do without it.

    Parameters
    ----------
    some : sequence of Slot
    tempo : TempoMap
    jumps : sequence of Jump, optional
        Those of the count, where they are known.
    one_helps : bool
        Whether one of those that are not far from the song's tempo may be enough; else all are left open.
    """
    jumps = jumps_of(tempo) if jumps is None else jumps
    inside = [jump for jump in jumps if any(in_slot(jump, slot) for slot in some)]
    if inside:
        return [around_jump(jump, tempo) for jump in inside]
    off = [off_tempo(slot, tempo) for slot in some]
    most = max(off, default=0.0)
    each = list(zip(some, off, strict=True))
    far = [(slot, own) for slot, own in each if own >= _AS_FAR * most]
    if most < OFF_TEMPO:
        far = [each[off.index(most)]] if one_helps and each else each
    spans = ((float(slot.start), float(slot.end), own) for slot, own in far)
    return [
        Skipped(*(_with_ways(start, end, tempo) if own >= OFF_TEMPO else (start, end)))
        for start, end, own in spans
    ]


def off_tempo(slot: Slot | Skipped, tempo: TempoMap) -> float:
    """How many times as quick or as slow as a beat of the song the one in a slot or a span is that is farthest from it; at least 1."""
    usual = float(np.median(np.diff(tempo.times)))
    span = slot.start, slot.end
    return max(usual * tempo.fastest(*span), 1.0 / (usual * tempo.slowest(*span)))


def in_slot(jump: Jump, slot: Slot) -> bool:
    """Whether any of a jump lies in a slot."""
    return jump.start < slot.end - TOUCH and jump.end > slot.start + TOUCH


def skipped_in_words(
    skipped: Sequence[Skipped],
    slots: Sequence[Slot],
    tempo: TempoMap,
    clock: Callable[[float], str],
) -> tuple[str, ...]:
    """Where nothing is drafted, as nothing can be danced there, in words.

    Parameters
    ----------
    skipped : sequence of Skipped
    slots : sequence of Slot
        What is drafted: what is left beside a span and too short for a move is open too.
    tempo : TempoMap
    clock : callable
        Minutes and seconds of a beat coordinate.
    """
    said = []
    first, last = tempo.knots[[0, -1]].tolist()  # the ways to rest may begin before and end behind
    position = tempo.position_text
    for span in sorted(skipped, key=lambda each: each[:2]):
        start, end, jump = span
        low = max((s.end for s in slots if s.end <= start + TOUCH), default=start)
        high = min((s.start for s in slots if s.start >= end - TOUCH), default=end)
        low = low if start - low < SHORTEST_STRETCH else start
        high = high if high - end < SHORTEST_STRETCH else end
        low, high = max(low, first), min(high, last)
        if jump is None:
            far = off_tempo(span, tempo) >= OFF_TEMPO
            look = "look whether the count is right there, or " if far else ""
            why = (
                f"nothing was found that can be danced there, so nothing is drafted; {look}"
                "add patterns under `repertoire`, `known`"
            )
        else:
            why = (
                f"the count jumps at {position(jump.start)} (a beat of {jump.lasts:.2f} s among others of {jump.usual:.2f} s), "
                "and nothing was found that can be danced over that, so nothing is drafted; look whether the count is right there"
            )
        said.append(f"{clock(low)} to {clock(high)} ({position(low)} to {position(high)}): {why}")
    return tuple(dict.fromkeys(said))
