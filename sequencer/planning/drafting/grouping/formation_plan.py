"""Which formation a group takes in each part of a song: seen by all, fitting the music, with little walking between."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

import numpy as np

from sequencer.arrays import Floats
from sequencer.planning.drafting.grouping.where_to_stand import (
    GroupFormation,
    beats_to_walk,
    group_walk,
)
from sequencer.planning.drafting.optimising.choices import Choices, Undecided, best
from sequencer.timing.tempo import TempoMap

_LOUD: Mapping[str, float] = {  # [1] loudness rank that a shape suits: common practice
    "line": 0.9, "wedge": 1.0, "stagger": 0.7, "box": 0.6, "diamond": 0.4, "face to face": 0.2, "circle": 0.1,
}  # fmt: skip
_UNLIKE = 2.0  # what a shape costs that suits the opposite of the music
_WALKED = 0.15  # per metre of the mean way
_STAYED = 1.0  # where two parts in succession look the same
_MOVED = 1e-9  # [m] rounding
_EFFORT = 200  # [million table entries]
_SHORT = 16.0  # [beats] a part that is no longer may hide somebody


@dataclass(frozen=True, slots=True, kw_only=True)
class FormationPart:
    """A part of the song for which a group stands."""

    label: str  # parts with one label are danced from one formation
    start: float  # [beats]
    end: float  # [beats]
    loudness: float  # [1] rank from 0 to 1
    walk: float  # [beats] at the most for the walk to it, from `start` on


@dataclass(frozen=True, slots=True, kw_only=True)
class FormationStep:
    """A formation taken, and the walk that leads to it."""

    formation: GroupFormation
    start: float  # [beats] when the walk starts
    beats: int  # of the walk; 0 for the first, and where nobody moves


def formation_plan(
    parts: Sequence[FormationPart],
    formations: Sequence[GroupFormation],
    *,
    walking: Mapping[str, float],
    required: float,
    tempo: TempoMap,
) -> tuple[FormationStep, ...] | None:
    """The formation of each part.

    Parameters
    ----------
    parts : sequence of FormationPart
        In order.
    formations : sequence of GroupFormation
        All of the same people.
    walking : mapping of name to float
        Reach of each in what is danced on walks [m].
    required : float
        Between any part of one and any part of another [m].
    tempo : TempoMap

    Returns
    -------
    steps : tuple of FormationStep, or None
        One for each part. None where no choice of these formations is seen by all and can be walked: longer walks, easier
        patterns on them, or wider formations would help.

    Notes
    -----
    Source: the search of `choices`; its costs are this project's choice. On every walk any two stay clear by their reach, see
    `group_walk`; what follows a part's last beat is not looked at.
    """
    if not parts or not formations:
        return None
    slots = list(dict.fromkeys(part.label for part in parts))
    table = _Walks(formations, walking, required, tempo)
    costs = [np.zeros(len(formations)) for _ in slots]
    for part in parts:
        costs[slots.index(part.label)] += [_fits(part, formation) for formation in formations]
    passages: dict[tuple[int, int], Floats] = {}
    for before, after in pairwise(parts):
        i, j = slots.index(before.label), slots.index(after.label)
        if i == j:
            continue
        cost = table.costs(after)
        pair, cost = ((i, j), cost) if i < j else ((j, i), cost.T)
        passages[pair] = passages[pair] + cost if pair in passages else cost
    try:
        chosen = best(Choices(costs=tuple(costs), passages=passages), effort=_EFFORT)
    except Undecided:
        return None
    if chosen is None:
        return None
    picks = dict(zip(slots, chosen.picks, strict=True))
    taken = [picks[part.label] for part in parts]
    return tuple(
        FormationStep(
            formation=formations[here],
            start=part.start,
            beats=0 if k == 0 else table.beats(taken[k - 1], here, part.start),
        )
        for k, (part, here) in enumerate(zip(parts, taken, strict=True))
    )


def _fits(part: FormationPart, formation: GroupFormation) -> float:
    """What a formation costs in a part."""
    if formation.hidden and part.end - part.start > _SHORT:
        return inf
    return _UNLIKE * abs(_LOUD.get(formation.name, 0.5) - part.loudness)


class _Walks:
    """What it takes to walk from each formation to each."""

    def __init__(
        self,
        formations: Sequence[GroupFormation],
        walking: Mapping[str, float],
        required: float,
        tempo: TempoMap,
    ) -> None:
        self.formations, self.tempo = formations, tempo
        self.walks = [
            [group_walk(one.spots, other.spots, walking) for other in formations]
            for one in formations
        ]
        self.required = required

    def beats(self, one: int, other: int, start: float) -> int:
        """Of a walk [beats]."""
        return beats_to_walk(self.walks[one][other], self.tempo, start)

    def costs(self, after: FormationPart) -> Floats:
        """Of each passage into a part, shape (formations, formations) [1]."""
        n = len(self.formations)
        found = np.zeros((n, n))
        for a in range(n):
            for b in range(n):
                walk = self.walks[a][b]
                if walk.longest < _MOVED:
                    found[a, b] = _STAYED
                elif walk.nearest < self.required or self.beats(a, b, after.start) > after.walk:
                    found[a, b] = inf
                else:
                    people = len(self.formations[a].spots)
                    found[a, b] = _WALKED * float(np.sqrt(walk.squares / people))
                    # The same shape a little wider is no new picture: then nobody need walk.
                    if self.formations[a].name == self.formations[b].name:
                        found[a, b] += _STAYED
        return found
