"""Ladders: changes of one kind to mend a fault of the dance, smallest first, each rung to be tried on the show."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sequencer.planning.trials import DanceEdit

RangeWords = Callable[
    [DanceEdit, DanceEdit], str
]  # of the rungs with the smallest and the largest value


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ladder:
    """Changes of one kind, smallest first."""

    name: str  # what is changed, as in "tried: …"
    rungs: Sequence[DanceEdit]
    most: int = 8  # rungs that are tried
    step: float = 0.0  # of the rungs' values: those no farther apart make a range; none if 0
    range_words: RangeWords | None = None
    last: bool = False  # tried only where nothing before it helps
    of_the_look: bool = (
        False  # it makes another dance of it: offered, and written only if asked for
    )

    def beyond(self, rung: DanceEdit, *, up: bool) -> Iterator[DanceEdit]:
        """The rungs next to one in value, one step after the other."""
        last = rung.value
        for own in sorted(self.rungs, key=lambda each: each.value if up else -each.value):
            far = own.value - last if up else last - own.value
            if far <= 1e-9:
                continue
            if far > self.step * 1.001:
                return
            last = own.value
            yield own
