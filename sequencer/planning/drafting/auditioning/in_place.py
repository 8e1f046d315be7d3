"""Whether a move is flown in its place in the song without strain: where the beat sways, what flies at a steady tempo may not."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

import numpy as np

from sequencer.content_keys import whole_code
from sequencer.kept import kept_each
from sequencer.planning.drafting.auditioning.candidates import (
    DraftMove,
    audition_show,
    dancing_alone,
    pattern_content,
)
from sequencer.planning.drafting.auditioning.passages import MoveLaws
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.in_flight.flown_strains import limits_missed_between
from sequencer.timing.tempo import TempoMap

_SWAYS = (
    4 / 3
)  # the fastest beat over the slowest: where they differ by less, hardly anything is strained that flies
_SWAYS_FOR_MANY = 1.15  # the same for more than one person, of whom one is strained sooner
_BESIDE = (
    8.0  # [beats] for which the move goes on: twice as many as are sought again beside a strain
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveInPlace:
    """A move that is danced from one beat of the song to another."""

    move: DraftMove
    start: float  # [beats]
    end: float  # [beats]


def sways(tempo: TempoMap, start: float, end: float, *, people: int = 1) -> bool:
    """Whether the beat sways so much between two beats that what flies at a steady tempo may be strained.

    Parameters
    ----------
    tempo : TempoMap
    start, end : float
        [beats]
    people : int
        Who all dance it.
    """
    most = _SWAYS if people == 1 else _SWAYS_FOR_MANY
    return tempo.fastest(start, end) > most * tempo.slowest(start, end)


def strained(dances: Sequence[MoveInPlace], laws: MoveLaws, tempo: TempoMap) -> list[str]:
    """Which limits each of some dances misses, standing still at the tempo of the moment; empty texts where it misses none.

    Parameters
    ----------
    dances : sequence of MoveInPlace
        Of moves that fly at a steady tempo.
    laws : MoveLaws
    tempo : TempoMap
        Of the song.

    Returns
    -------
    said : list of str
        Kept by their content.
    """
    stage = laws.stage
    if not any(prop.flexible for prop in stage.props.values()):
        return [""] * len(dances)
    counts = [_count(each, tempo) for each in dances]
    contents = [
        (
            whole_code(), each.move, each.start % 1, each.end - each.start, count.times,
            laws.of(each.move), pattern_content(stage, each.move), *stage.content,
        )
        for each, count in zip(dances, counts, strict=True)
    ]  # fmt: skip
    return kept_each(
        "moves in their places",
        contents,
        lambda missing: [_strained(dances[k], laws, counts[k]) for k in missing],
        record=str,
        restore=str,
    )


def _count(dance: MoveInPlace, tempo: TempoMap) -> TempoMap:
    """The beats of a dance, counted from the whole beat at or before its start; before and after them the nearest tempo continues."""
    first = floor(dance.start)
    times = tempo.seconds_from_beats(np.arange(first, ceil(dance.end) + 1))
    return TempoMap(times - times[0])


def _strained(dance: MoveInPlace, laws: MoveLaws, count: TempoMap) -> str:
    """What strains a hand: the move goes on for some beats before and behind, so that it is eased as it is between others."""
    danced, posture = laws.of(dance.move)
    start, beats = dance.start % 1, dance.end - dance.start
    dancer = dancing_alone(
        dance.move.pattern, danced, posture, laws.stage, beats=start + beats, beside=_BESIDE
    )
    show = audition_show([dancer], count, laws.stage.show)
    return ", ".join(limits_missed_between(flown_show(show), start, start + beats))
