"""Which of many runs are danced again to see what an error does: as few as tell, and the same ones for all conflicts."""

from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.checks.distances.drift_runs import Run

TRIALS = 32  # runs with a conflict that are danced again, and as many without it


@dataclass(frozen=True, slots=True, kw_only=True)
class SortedRuns:
    """The runs in which anything went wrong, and those in which nothing did."""

    wrong: tuple[int, ...]
    clear: tuple[int, ...]

    @property
    def chance(self) -> float:
        """That anything goes wrong in a run."""
        return len(self.wrong) / (len(self.wrong) + len(self.clear))

    def again(self) -> tuple[int, ...]:
        """Those that are danced again around every conflict that is explained: the first of each sort."""
        return (*self.wrong[:TRIALS], *self.clear[:TRIALS])

    def having(self, hit: Sequence[int]) -> tuple[int, ...]:
        """Runs that stand for all with one conflict: the first."""
        return tuple(hit[:TRIALS])

    def without(self, hit: Sequence[int]) -> tuple[int, ...]:
        """Runs that stand for all without one conflict: of each sort as many as its share of them, the first."""
        others = [run for run in self.wrong if run not in set(hit)]
        missed = len(others) + len(self.clear)
        count = min(TRIALS, missed)
        clear = round(count * len(self.clear) / max(missed, 1))
        return (*self.clear[:clear], *others[: count - clear])


def sorted_runs(runs: Sequence[Run]) -> SortedRuns:
    """Runs by whether anything went wrong."""
    return SortedRuns(
        wrong=tuple(k for k, run in enumerate(runs) if run),
        clear=tuple(k for k, run in enumerate(runs) if not run),
    )
