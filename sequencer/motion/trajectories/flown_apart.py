"""Both hands of a performer: links are flown again where the two props would meet.

Each hand is flown alone, which is right where the drawing keeps the props apart. Where they meet as flown during a link, that of
one hand is sought again with the other's path as something to keep clear of, then that of the other hand; the first that holds
every limit is taken. What cannot be solved so stays as it was, and the check of the flown show tells it: what is looked at here
at instants is proven there. Frame: body frame [m].
"""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_courses import Journey, Passage, bridged, courses_of
from sequencer.motion.trajectories.flown_hand import Course
from sequencer.motion.trajectories.flown_links import LEAST_BESIDE, Beside, gaps_between

_LOOKS = 48  # a beat


def kept_apart(ways: Mapping[Side, Journey], props: Mapping[Side, Prop]) -> Mapping[Side, Journey]:
    """The journeys of both hands, with other links where the props would meet in them.

    Parameters
    ----------
    ways : mapping of Side to Journey
        Of both hands, of passive props; of one hand alone nothing is changed.
    props : mapping of Side to Prop
    """
    if len(ways) < len(SIDES):
        return ways
    own = {side: list(way) for side, way in ways.items()}
    tried: set[tuple[Side, int]] = set()
    while True:
        paths = {side: _Path(courses_of(way), props[side]) for side, way in own.items()}
        found = next(_asked(own, paths, tried), None)
        if found is None:
            return own
        side, k = found
        tried.add(found)
        passage, other = own[side][k], paths[_OTHER[side]]
        if isinstance(passage, Passage):
            again = bridged(passage, _beside(other, passage.start))
            if again.flown:
                own[side][k] = again


_OTHER: Mapping[Side, Side] = {"left": "right", "right": "left"}


class _Path:
    """Where one hand and its prop are."""

    def __init__(self, courses: Sequence[Course], prop: Prop) -> None:
        self.courses, self.prop = courses, prop
        self._edges = np.array([each.start for each in courses[1:]])

    def at(self, beats: Floats) -> tuple[Floats, Floats]:
        """Head and hand at show beats, each shape (n, 3); before and after it they stay."""
        head, hand = np.empty((2, len(beats), 3))
        which = np.searchsorted(self._edges, beats, side="right")
        for k in np.unique(which).tolist():
            course, at = self.courses[k], which == k
            head[at], hand[at] = course.at(np.clip(beats[at], course.start, course.end))
        return head, hand


def _beside(path: _Path, start: float) -> Beside:
    return Beside(path.prop, lambda beats: path.at(start + beats))


def _asked(
    ways: Mapping[Side, Sequence[object]],
    paths: Mapping[Side, _Path],
    tried: set[tuple[Side, int]],
) -> Iterator[tuple[Side, int]]:
    """Passages in which the props meet and that were not sought again: those of the right hand first."""
    low = max(path.courses[0].start for path in paths.values())
    high = min(path.courses[-1].end for path in paths.values())
    if high <= low:
        return
    beats = np.linspace(low, high, int(np.ceil((high - low) * _LOOKS)) + 1, dtype=np.float64)
    left, right = (paths[side] for side in SIDES)
    gaps = gaps_between(right.prop, *right.at(beats), _beside(left, 0.0).capsules(beats))
    meet: Bools = gaps < LEAST_BESIDE
    for side in reversed(SIDES):
        for k, passage in enumerate(ways[side]):
            if isinstance(passage, Passage) and passage.flown and (side, k) not in tried:
                inside = (beats >= passage.start) & (beats <= passage.end)
                if np.any(meet & inside):
                    yield side, k
