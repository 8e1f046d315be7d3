"""What a conflict becomes once one kind of error, or one performer's errors, are taken away.

The same runs are danced again, with the same draws, around the conflict: some in which it happened and some in which it
did not. The first tell how often it goes away, the others how often it comes where it was not: props that move as
one may only be kept apart by somebody who is late.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from sequencer.arrays import Bools
from sequencer.checks.distances.binomial import ChanceChange, alike, changed
from sequencer.checks.distances.drift_runs import Work, drawn_dancer
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.drifting import ERROR_KINDS

TRIALS = 40  # runs with the conflict that are danced again, and as many without it
_HELPS = 0.8  # of a chance that is left at most without an error that is worth rehearsing
_COARSE = 0.01  # [m] tolerance of distances that are only counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Removed:
    """What a conflict of two performers becomes without an error."""

    chance: float = 0.0  # with all errors
    kinds: Mapping[str, ChanceChange] = field(
        default_factory=dict
    )  # without a kind of error of both
    people: Mapping[str, ChanceChange] = field(default_factory=dict)  # without all errors of one
    who: tuple[str, ...] = ()  # whose errors count most; both if they count alike

    @property
    def matters(self) -> str:
        """The kind of error without which it is least likely; empty if none by itself makes much of it."""
        most = _HELPS * self.chance
        helps = {kind: own.chance for kind, own in self.kinds.items() if own.chance <= most}
        return min(helps, key=lambda kind: helps[kind], default="")

    @property
    def raises(self) -> tuple[str, ...]:
        """Kinds of error without which it is surely likelier: the plan itself brings the two together."""
        return tuple(kind for kind, each in self.kinds.items() if each.low > 0)


def removed_errors(
    work: Work,
    pair: tuple[str, str],
    window: tuple[float, float],
    *,
    hit: Sequence[int],
    missed: Sequence[int],
) -> Removed:
    """What a conflict becomes without each kind of error, and without each performer's errors.

    Parameters
    ----------
    work : Work
    pair : (str, str)
    window : (float, float)
        Beats around the conflict.
    hit, missed : sequence of int
        Runs with the conflict and without it, all of them; the first `TRIALS` of each are danced again.
    """
    kinds = [
        kind
        for kind in ERROR_KINDS
        if any(getattr(work.spread_of(name), kind) > 0 for name in pair)
    ]
    again = [*hit[:TRIALS], *missed[:TRIALS]]
    under = np.array([_under(work, pair, window, run, kinds) for run in again]).reshape(
        len(again), -1
    )
    with_it = under[: len(hit[:TRIALS])]
    without = under[len(with_it) :]
    without = without[~without[:, 0]]  # what lies beside it is another conflict
    chance = len(hit) / (len(hit) + len(missed))
    of = [
        changed(
            chance,
            (int(np.sum(~with_it[:, k])), len(with_it)),
            (int(np.sum(without[:, k])), len(without)),
        )
        for k in range(1, under.shape[1])
    ]
    return Removed(
        chance=chance,
        kinds=dict(zip(kinds, of, strict=False)),
        people=dict(zip(pair, of[len(kinds) :], strict=True)),
        who=_who(pair, with_it[:, -2:]),
    )


def _under(
    work: Work,
    pair: tuple[str, str],
    window: tuple[float, float],
    run: int,
    kinds: Sequence[str],
) -> Bools:
    """Whether the two come too close in a run: as it is, without each kind of error, without each one's errors."""
    plan = [dancer for dancer in work.dancers if dancer.name in pair]
    drawn = [drawn_dancer(work, each, run) for each in plan]
    cast, pairs = [*drawn], [(0, 1)]
    for kind in kinds:
        pairs.append((len(cast), len(cast) + 1))
        cast += [drawn_dancer(work, e, run, work.spread_of(e.name).without(kind)) for e in plan]
    pairs += [(len(cast), 1), (0, len(cast) + 1)]
    cast += plan
    found = approaches(
        cast, *window, required=work.required, minima=False, tolerance=_COARSE, pairs=pairs
    )
    return np.isin(np.arange(len(pairs)), found.spans.group)


def _who(pair: tuple[str, str], still: Bools) -> tuple[str, ...]:
    """Whose errors count most: shape (n, 2), whether the conflict stays without the first's and without the second's."""
    first_only = int(np.sum(~still[:, 0] & still[:, 1]))
    second_only = int(np.sum(still[:, 0] & ~still[:, 1]))
    if alike(first_only, second_only):
        return pair
    return (pair[0],) if first_only > second_only else (pair[1],)
