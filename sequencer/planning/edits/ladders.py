"""Ladders: changes of one kind to mend a fault of the dance, smallest first, each rung to be tried on the show."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sequencer.planning.trying.trials import DanceEdit

RangeWords = Callable[
    [DanceEdit, DanceEdit], str
]  # of the rungs with the smallest and the largest value


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ladder:
    """Changes of one kind, smallest first."""

    name: str  # what is changed, as in "tried: …"
    of: str = ""  # the pattern that is changed, where that does not go without saying
    rungs: Sequence[DanceEdit]
    most: int = 8  # rungs that are tried
    step: float = 0.0  # of the rungs' values: those no farther apart make a range; none if 0
    widest: int = 2  # steps of a told range
    approach: Sequence[
        DanceEdit
    ] = ()  # rungs on the way to where it fits by itself, the nearest to the value as it stands first
    range_words: RangeWords | None = None
    now: float | None = None  # the value as it stands, if values nearer to it are to be sought
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

    def along(self, rung: DanceEdit, *, up: bool) -> list[DanceEdit]:
        """The rungs beyond one that are tried for a range: every one that it would tell."""
        return [own for own, _ in zip(self.beyond(rung, up=up), range(self.widest), strict=False)]

    def told(self, low: DanceEdit, high: DanceEdit) -> str:
        """A range of rungs and what it costs."""
        if self.range_words is None:
            raise ValueError(f"{self.name!r} is not told as a range")
        cost = spanned_cost(low.cost, high.cost)
        words = self.range_words(low, high)
        return f"{words} ({cost})" if cost else words


def spanned_cost(low: str, high: str) -> str:
    """What the two ends of a range cost, in one: "ends 0.5 beats earlier", "ends 2 beats earlier": "ends 0.5 to 2 beats earlier".

    Parameters
    ----------
    low, high : str
        In either order; both are told, the one after the other, if they differ in more than one number and its noun.
    """
    ends = sorted((low.split(" "), high.split(" ")), key=_first_number)
    less, more = ends
    if len(less) == len(more):
        others = [
            k for k, (one, other) in enumerate(zip(less, more, strict=True))
            if one.rstrip("s") != other.rstrip("s")
        ]  # fmt: skip
        if not others:
            return " ".join(more)
        if len(others) == 1 and all(_is_number(each[others[0]]) for each in ends):
            k = others[0]
            return " ".join([*more[:k], less[k], "to", *more[k:]])
    return f"{low}, or {high}" if low and high else low or high


def _first_number(words: Sequence[str]) -> float:
    return next((float(word) for word in words if _is_number(word)), 0.0)


def _is_number(word: str) -> bool:
    return word.replace(".", "", 1).isdigit()
