"""What a hand flies from span to span of its trajectory: blocks as flown periods, and the links between them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial
from math import isfinite

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import FlownMotion, Flying
from sequencer.motion.flown.period_search import flown_period, period_apart
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_path.flown_hand import Course
from sequencer.motion.trajectories.flown_path.flown_links import (
    Beside,
    FlownLink,
    PlacesAt,
    flown_link,
)
from sequencer.motion.trajectories.one_link.head_states import (
    HeadState,
    hanging,
    motion_of,
    state_in,
)
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.one_link.links import found_link
from sequencer.motion.trajectories.trajectory import Span, Trajectory

HALF = 0.5  # [beats] of a block on either side of a boundary, in which it is left or reached
_SAME = 1e-6  # [m and per beat] states that agree need no link
_MOST_REMEMBERED = 5_000  # periods and links of this process
_DOWN = -1.0 + 1e-9  # [1] upward part of a tether that hangs

FlyingOf = Callable[[float, float], Flying]  # show beats → who flies what between them


@dataclass(frozen=True, kw_only=True, eq=False)
class Stay:
    """A block or a rest: what a hand flies between links.

    Parameters
    ----------
    span : Span
    flying : Flying
    period : FlownPeriod or None
        The block's period as flown, whether it holds its limits or not; None of a rest and of a law without a period.
    """

    span: Span
    flying: Flying
    period: FlownPeriod | None

    @cached_property
    def content(self) -> bytes | None:
        """All that decides where head and hand are at show beats; None if that is not known."""
        try:
            if self.flown and self.period is not None:
                own = self.period.head, self.flying, self.span.origin, self.span.law
                return content_key("flown", *own)
            return content_key("drawn", self.span.law, self.span.origin, self.flying)
        except TypeError:  # a law of another package
            return None

    @cached_property
    def flown(self) -> bool:
        """Whether it is flown: a rest hangs straight down, a block's period holds its limits."""
        if (
            self.span.kind == "rest"
        ):  # a rope longer than an arm's height lies on its way to the floor
            return bool(self.span.law.at(np.zeros(1)).tether[0, 2] < _DOWN)
        return self.period is not None and not self.period.broken

    def at(self, beats: Floats) -> tuple[Floats, Floats]:
        """Head and hand at show beats, each shape (n, 3) [m, body frame]."""
        if self.flown and self.period is not None:
            return self.period.places(beats - self.span.origin)
        drawn = self.span.at(beats)
        return drawn.head(self.flying.prop.length), drawn.hand

    def state(self, beat: float) -> HeadState:
        """The head's state at a show beat, if it is flown."""
        if self.period is None:
            return hanging(self.span.law, self.flying.prop.length)
        own = (beat - self.span.origin) % self.span.law.period  # the same digits each time round
        return state_in(self.period, self.span.law.at(np.array([own])).plane[0], own)

    def motion(self, beat: float) -> Motion:
        """Hand and tether at a show beat, as flown or as drawn."""
        if self.flown:
            return motion_of(self.state(beat), self.flying)
        return self.span.at(np.array(beat))


@dataclass(frozen=True, kw_only=True, eq=False)
class Passage:
    """A link, or half a beat on either side of a boundary.

    Parameters
    ----------
    before, after : Stay
    start, end : float
        [show beats]
    link : FlownLink or None
        As flown, whether it holds its limits or not; None if what it joins is not flown.
    flying : Flying
        Who flies it.
    """

    before: Stay
    after: Stay
    start: float
    end: float
    link: FlownLink | None
    flying: Flying

    @cached_property
    def content(self) -> bytes | None:
        """All that decides where head and hand are at show beats; None if that is not known."""
        if self.before.content is None or self.after.content is None:
            return None
        link = None if self.link is None else (self.link.head, self.link.beats)
        try:
            return content_key(
                self.before.content, self.after.content, self.before.span.end,
                self.after.span.start, self.start, self.end, self.flying, link, self.flown,
            )  # fmt: skip
        except TypeError:
            return None

    @cached_property
    def flown(self) -> bool:
        """Whether it is flown."""
        return self.link is not None and not self.link.broken


Journey = Sequence[Stay | Passage]


def journey(
    trajectory: Trajectory,
    flying_of: FlyingOf,
    *,
    worth: Callable[[Span], bool] = lambda _span: True,
    told: Callable[[float], None] | None = None,
    other: Journey = (),
) -> Journey:
    """What a hand flies: stays, and the passages between those whose states differ.

    Parameters
    ----------
    trajectory : Trajectory
        As drawn, of a passive prop.
    flying_of : callable
        Who flies what from one show beat to another.
    worth : callable, optional
        Whether a block is worth a search; default: every one is.
    told : callable, optional
        Called with the beat that is reached.
    other : Journey, optional
        Of the other hand: blocks danced beside one of its blocks are flown clear of that.
    """
    beside = {
        (each.span.start, each.span.end, each.span.origin): each.period
        for each in other
        if isinstance(each, Stay) and each.flown and each.period is not None
    }
    out: list[Stay | Passage] = []
    for span in trajectory.spans:
        if told is not None:
            told(span.start)
        if span.kind == "link":
            continue
        flying = flying_of(span.start, span.end)
        period = None
        if span.kind == "block" and isfinite(span.law.period) and worth(span):
            held = beside.get((span.start, span.end, span.origin))
            period = _period(span.law, flying, held)
        stay = Stay(span=span, flying=flying, period=period)
        last = next((each for each in reversed(out) if isinstance(each, Stay)), None)
        if last is not None:
            out += _passage(last, stay, flying_of)
        out.append(stay)
    return out


def _period(law: Law, flying: Flying, beside: FlownPeriod | None) -> FlownPeriod:
    """A period as flown, clear of that of the other hand; the same object as long as it is remembered."""
    try:
        other = None if beside is None else (beside.head, beside.flying, beside.law.period)
        key = content_key(law, flying, other)
    except TypeError:
        key = None

    def work() -> FlownPeriod:
        period = flown_period(law, flying)
        return period if beside is None or period.broken else period_apart(period, beside)

    return recent("periods as flown", key, work, most=_MOST_REMEMBERED)


def _passage(before: Stay, after: Stay, flying_of: FlyingOf) -> Iterator[Passage]:
    start, end = before.span.end, after.span.start
    if end - start < _SAME:
        if _agree(before.motion(start), after.motion(start)):
            return
        half = min(
            HALF,
            (before.span.end - before.span.start) / 2,
            (after.span.end - after.span.start) / 2,
        )
        start, end = start - half, end + half
    beside = after if after.span.kind == "block" else before
    flying = replace(flying_of(start, end), posture=beside.flying.posture)
    passage = Passage(before=before, after=after, start=start, end=end, link=None, flying=flying)
    if before.flown and after.flown:
        link = recent(
            "links as flown", passage.content, lambda: bridged(passage).link, most=_MOST_REMEMBERED
        )
        passage = replace(passage, link=link)
    yield passage


def bridged(passage: Passage, prop: Prop | None = None, other: PlacesAt | None = None) -> Passage:
    """A passage between what is flown, with its link.

    Parameters
    ----------
    passage : Passage
    prop : Prop, optional
        The other hand's, which is kept clear of.
    other : callable, optional
        Where that is: show beats to head and hand.
    """
    beside = None
    if prop is not None and other is not None:
        beside = Beside(
            prop,
            lambda beats: other(passage.start + beats),
            lambda beats: passage.before.at(passage.start + beats),
            lambda beats: passage.after.at(passage.start + beats),
        )
    link = flown_link(
        lambda later: passage.before.state(passage.start + later),
        lambda earlier: passage.after.state(passage.end + earlier),
        passage.end - passage.start,
        passage.flying,
        beside,
    )
    return replace(passage, link=link)


def _agree(first: Motion, last: Motion) -> bool:
    return all(
        float(np.max(np.abs(a - b))) < _SAME
        for a, b in (
            (first.hand, last.hand),
            (first.hand_rate, last.hand_rate),
            (first.hand_acceleration, last.hand_acceleration),
            (first.tether, last.tether),
            (first.tether_rate, last.tether_rate),
            (first.tether_acceleration, last.tether_acceleration),
        )
    )


def courses_of(way: Journey) -> list[Course]:
    """Where head and hand are, course by course; what cannot be flown is as drawn.

    Parameters
    ----------
    way : Journey
        Of at least one stay.
    """
    out: list[Course] = []
    for k, each in enumerate(way):
        if isinstance(each, Passage):
            out.append(_bridge(each))
            continue
        earlier, later = way[k - 1] if k else None, way[k + 1] if k + 1 < len(way) else None
        start = _ends(earlier)[1] if isinstance(earlier, Passage) else each.span.start
        end = _ends(later)[0] if isinstance(later, Passage) else each.span.end
        if end > start:
            out.append(Course(start, end, each.at, each.flown, each.content))
    return out


def _ends(passage: Passage) -> tuple[float, float]:
    """Where its bridge begins and ends [show beats]."""
    if passage.flown and passage.link is not None:
        head = passage.link.head
        return passage.start + head.start, passage.start + head.end
    return passage.start, passage.end


def _bridge(passage: Passage) -> Course:
    low, high = _ends(passage)
    flying = passage.before.flying
    if passage.flown and passage.link is not None:
        own = partial(_flown_at, passage.link, passage.start)
        return Course(low, high, own, flown=True, content=passage.content)
    space = HandSpace(body=flying.body, side=flying.side, length=flying.prop.length)

    def link() -> LinkLaw:
        motions = passage.before.motion(low), passage.after.motion(high)
        return found_link(*motions, high - low, space).law

    law = recent("links that stand in", passage.content, link, most=_MOST_REMEMBERED)

    def drawn(beats: Floats) -> tuple[Floats, Floats]:
        seen = law.at(beats - low)
        return seen.head(flying.prop.length), seen.hand

    return Course(low, high, drawn, flown=False, content=passage.content)


def _flown_at(link: FlownMotion, origin: float, beats: Floats) -> tuple[Floats, Floats]:
    return link.places(beats - origin)
