"""The chance that any two come too close once an error is taken away everywhere: counted by runs, not by conflicts.

Whoever stands too far left does so through every move danced there, so that one error shows in many scenes of one run; a
conflict by itself then tells little of what its error costs. Some runs in which anything went wrong and some in
which nothing did are danced again around every conflict that is explained, and those with a conflict around each of their
own: a run is clear only if all of them are.
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import partial
from typing import NamedTuple

from sequencer.checks.distances.binomial import ChanceChange, changed
from sequencer.checks.distances.drift_runs import Run, Work
from sequencer.checks.distances.removed_errors import (
    AS_IT_IS,
    ConflictPlace,
    DancedAgain,
    Without,
    again_with,
    kinds_of,
)
from sequencer.checks.distances.runs_again import sorted_runs
from sequencer.workers import in_workers

At = tuple[int, int]  # a conflict: place in the order of pairs, and scene


class Removal(NamedTuple):
    """Errors that are taken away in the whole show: some kinds, of some performers."""

    who: tuple[str, ...]
    kinds: tuple[str, ...]

    def way(self, work: Work, pair: tuple[str, str]) -> Without:
        """What of it concerns a pair."""
        return Without(
            *(
                tuple(k for k in kinds_of(work, name) if name in self.who and k in self.kinds)
                for name in pair
            )
        )


def removed_everywhere(
    work: Work,
    removals: Iterable[Removal],
    runs: Sequence[Run],
    places: Mapping[At, ConflictPlace],
    explained: Mapping[At, DancedAgain],
    *,
    jobs: int = 1,
    backend: str | None = None,
) -> dict[Removal, ChanceChange]:
    """The chance that any two come too close without some errors, each taken away in the whole show.

    Parameters
    ----------
    work : Work
    removals : iterable of Removal
    runs : sequence of Run
        All of them.
    places : mapping
        Of every conflict of the runs.
    explained : mapping
        Conflicts around which `SortedRuns.again` were danced again; a run without one there may get one.
    jobs, backend
        As for `in_workers`.
    """
    by_sort = sorted_runs(runs)
    again = by_sort.again()
    each = list(dict.fromkeys(removals))
    found = in_workers(
        partial(_still, work, each, places, explained),
        [(run, runs[run]) for run in again],
        jobs=jobs,
        backend=backend,
    )
    still = dict(zip(again, found, strict=True))
    return {
        removal: changed(
            by_sort.chance,
            *(
                (
                    sum(still[run][k] is not wrong for run in again if bool(runs[run]) is wrong),
                    sum(bool(runs[run]) is wrong for run in again),
                )
                for wrong in (True, False)
            ),
        )
        for k, removal in enumerate(each)
    }


def _still(
    work: Work,
    removals: Sequence[Removal],
    places: Mapping[At, ConflictPlace],
    explained: Mapping[At, DancedAgain],
    numbered: tuple[int, Run],
) -> list[bool]:
    """Whether anything goes wrong in a run without each of some errors."""
    number, run = numbered
    own = [(near.pair, near.scene) for near in run]
    open_ = list[tuple[At, Removal, Without]]()
    wrong = set[Removal]()
    for at in dict.fromkeys([*own, *explained]):
        for removal in removals:
            way = removal.way(work, places[at].pair)
            known = _known(explained.get(at), number, way, in_it=at in own)
            if known is None:
                open_.append((at, removal, way))
            elif known:
                wrong.add(removal)
    for at in dict.fromkeys(at for at, _, _ in open_):
        asked = [(way, r) for where, r, way in open_ if where == at and r not in wrong]
        if not asked:
            continue
        ways = tuple(dict.fromkeys(way for way, _ in asked))
        again = again_with(work, places[at], (number,), ways)
        wrong |= {r for way, r in asked if again.near[0, ways.index(way)]}
    return [removal in wrong for removal in removals]


def _known(again: DancedAgain | None, run: int, way: Without, *, in_it: bool) -> bool | None:
    """Whether two come too close around a conflict in a run, as far as that is known."""
    if way == AS_IT_IS:
        return in_it
    if again is None or way not in again.ways:
        return None
    return bool(again.near[again.runs.index(run), again.ways.index(way)])
