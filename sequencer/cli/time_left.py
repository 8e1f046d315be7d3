"""How long work will still take, judged by its pace so far; nothing is said while that would be a guess."""

from itertools import pairwise

_LEAST_TIME = 2.0  # [s] watched before anything is said
_LEAST_STEPS = 4  # of progress
_LEAST_SHARE = 0.1  # of the work
_EVEN = 1.6  # the two halves of what was watched differ in pace by this factor at most


class TimeLeft:
    """Watches moments and shares done; a share that falls back begins another piece of work."""

    def __init__(self) -> None:
        self._seen: list[tuple[float, float]] = []  # [s], share

    def passed(self, moment: float, share: float) -> None:
        """Take note of the share done at a moment [s]."""
        if self._seen and share < self._seen[-1][1]:
            self._seen = []
        if not self._seen or share > self._seen[-1][1]:
            self._seen.append((moment, share))

    @property
    def seconds(self) -> float | None:
        """Seconds left, by the slower half of what was watched; None if the pace is not known or not even."""
        if len(self._seen) <= _LEAST_STEPS:
            return None
        (begun, first), (now, done) = self._seen[0], self._seen[-1]
        if now - begun < _LEAST_TIME or done - first < _LEAST_SHARE:
            return None
        middle = min(self._seen[1:-1], key=lambda seen: abs(seen[1] - (first + done) / 2))
        halves = pairwise([self._seen[0], middle, self._seen[-1]])
        paces = [(b - a) / (after - before) for (a, before), (b, after) in halves]  # [s] for all
        if max(paces) > _EVEN * min(paces):
            return None
        return (1.0 - done) * max(paces)


def time_words(seconds: float) -> str:
    """Seconds left, as one says them: rounded up to 5 s, from a minute and a half on to minutes."""
    if seconds > 90.0:
        return f"about {-(-seconds // 60):.0f} min left"
    return f"about {max(-(-seconds // 5) * 5, 5):.0f} s left"
