"""What differs between two texts, as one stretch of letters."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TextChange:
    """A stretch of letters replaced by another."""

    start: int
    old: str
    new: str

    def on(self, text: str) -> str:
        """A text that has the old letters there, with the new ones."""
        return text[: self.start] + self.new + text[self.start + len(self.old) :]

    @property
    def back(self) -> "TextChange":
        """The way back."""
        return TextChange(self.start, self.new, self.old)


def change_between(before: str, after: str) -> TextChange:
    """The shortest stretch whose replacement makes one text the other."""
    most = min(len(before), len(after))
    start = _longest(most, lambda n: before[:n] == after[:n])
    end = _longest(most - start, lambda n: n == 0 or before[-n:] == after[-n:])
    return TextChange(start, before[start : len(before) - end], after[start : len(after) - end])


def _longest(most: int, alike: Callable[[int], bool]) -> int:
    """The largest number up to which all are alike."""
    low, high = 0, most
    while low < high:
        middle = (low + high + 1) // 2
        if alike(middle):
            low = middle
        else:
            high = middle - 1
    return low
