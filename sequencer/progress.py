"""Progress callback for long work: its subject, and the fraction done, 0 … 1."""

from collections.abc import Callable
from typing import TypeAlias

Progress: TypeAlias = Callable[[str, float], None]


def within(progress: Progress | None, start: float, end: float) -> Progress | None:
    """The progress of one part of some work, which goes from `start` to `end` of the whole."""
    if progress is None:
        return None

    def part(subject: str, share: float) -> None:
        progress(subject, start + (end - start) * min(max(share, 0.0), 1.0))

    return part
