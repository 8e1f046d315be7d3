"""Both hands of a performer: links are flown again where the two props would meet.

Each hand is flown alone, which is right where the drawing keeps the props apart. Where they meet as flown during a link, that of
one hand is sought again with the other's path as something to keep clear of, then that of the other hand; the first that holds
every limit is taken. What cannot be solved so stays as it was, and the check of the flown show tells it: what is looked at here
at instants is proven there. Frame: body frame [m].
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import recent
from sequencer.motion.flown.apart import LEAST_BESIDE, gaps_between, prop_capsules
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_path.flown_courses import (
    Journey,
    Passage,
    bridged,
    courses_of,
)
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.motion.trajectories.flown_path.flown_making import clipped

_LOOKS = 48  # a beat
_MOST_REMEMBERED = 5_000  # links of this process


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
    hands = {side: _Hand(way, props[side]) for side, way in ways.items()}
    left, right = (hands[side] for side in SIDES)
    low = max(hand.courses[0].start for hand in hands.values())
    high = min(hand.courses[-1].end for hand in hands.values())
    if high <= low:
        return ways
    for hand, other in ((right, left), (left, right)):
        for k, passage in enumerate(hand.way):
            if not (isinstance(passage, Passage) and passage.flown):
                continue
            start, end = max(passage.start, low), min(passage.end, high)
            if _least_gap(right, left, start, end) < LEAST_BESIDE:
                again = _again(passage, other)
                if again.flown:
                    hand.take(k, again)
    return {side: hand.way for side, hand in hands.items()}


class _Hand:
    """One hand's journey, to be changed, and where it leads."""

    def __init__(self, way: Journey, prop: Prop) -> None:
        self.way, self.prop = list(way), prop
        self.courses: Sequence[Course] = courses_of(way)

    def take(self, k: int, passage: Passage) -> None:
        """Fly a passage otherwise."""
        self.way[k] = passage
        self.courses = courses_of(self.way)

    def at(self, beats: Floats) -> tuple[Floats, Floats]:
        """Head and hand at show beats, each shape (n, 3); before and after it they stay."""
        head, hand = np.empty((2, len(beats), 3))
        edges = np.array([each.start for each in self.courses[1:]])
        which = np.searchsorted(edges, beats, side="right")
        for k in np.unique(which).tolist():
            course, own = self.courses[k], which == k
            head[own], hand[own] = course.at(np.clip(beats[own], course.start, course.end))
        return head, hand


def _least_gap(right: _Hand, left: _Hand, start: float, end: float) -> float:
    """Least distance of both hands' props at whole looks between two beats [m]; inf if there is none."""

    def work() -> float:
        beats: Floats = np.arange(np.ceil(start * _LOOKS), np.floor(end * _LOOKS) + 1.0) / _LOOKS
        return float(np.min(_gaps(right, left, beats))) if len(beats) else float("inf")

    key = _key(right, left, start, end)
    return recent(
        "both hands in a link", key, work, most=_MOST_REMEMBERED, record=float, restore=float
    )


def _again(passage: Passage, other: _Hand) -> Passage:
    """A passage flown clear of the other hand."""
    near = clipped(other.courses, passage.start, passage.end)
    key = None
    if near is not None and passage.content is not None:
        key = content_key(passage.content, near, other.prop)
    if key is None:
        return bridged(passage, other.prop, other.at)
    # the link alone: what it joins is held by the passage itself
    link = recent(
        "links flown clear",
        key,
        lambda: bridged(passage, other.prop, other.at).link,
        most=_MOST_REMEMBERED,
    )
    return passage if link is passage.link else replace(passage, link=link)


def _key(right: _Hand, left: _Hand, start: float, end: float) -> bytes | None:
    """All that decides where both hands are between two beats; None if that is not known."""
    near = [clipped(hand.courses, start, end) for hand in (right, left)]
    if None in near:
        return None
    return content_key(near, start, end, right.prop, left.prop)


def _gaps(one: _Hand, other: _Hand, beats: Floats) -> Floats:
    """Distance of both hands' props at show beats, shape (n,) [m]."""
    return gaps_between(one.prop, *one.at(beats), prop_capsules(other.prop, *other.at(beats)))
