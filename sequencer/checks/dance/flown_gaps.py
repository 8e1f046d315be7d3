"""What has to be bridged between motions that can be flown, and what cannot be bridged as it is.

A link is flown from the flown motion before it to that after it, or from or to a prop that hangs at rest; two blocks that
join without a link get a bridge of half a beat of each. Which of a hand's cannot be flown is kept by all that decides how its
performer flies.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import groupby, pairwise
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.dance.flown_blocks import MOST_HANDS, FlownBlock, ShowHand, flies
from sequencer.content_keys import content_key, whole_code
from sequencer.kept import recent
from sequencer.motion.flown.flown_motion import FlownMotion, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.trajectories.flown_path.flown_links import (
    FlownLink,
    GripLimits,
    StateAt,
    flown_link,
    surely_flies,
)
from sequencer.motion.trajectories.one_link.head_states import HeadState, hanging, state_in
from sequencer.motion.trajectories.trajectory import Span
from sequencer.progress import Progress, stop_if_unwanted

_HALF = 0.5  # [beats] of each block that a bridge takes
_MOST_KEPT = 20_000  # links
_SAME = 1e-6  # share of a state by which two count as one


class FlownGap(NamedTuple):
    """What is to be bridged: a link, or the half beats about a border without one."""

    hand: ShowHand
    start: float  # [show beats]
    end: float  # [show beats]
    before: Span
    after: Span
    flying: Flying
    linked: bool

    @property
    def beats(self) -> float:
        """Its length."""
        return self.end - self.start

    @property
    def label(self) -> str:
        """What is joined, in words."""
        if self.before.kind == "rest":
            return f"from rest into {self.after.label}"
        if self.after.kind == "rest":
            return f"{self.before.label} to rest"
        return f"{self.before.label} into {self.after.label}"

    def flown(self, beats: float | None = None) -> FlownLink:
        """Flown as it is, or as a link of so many beats between the two."""
        return flown_link(*self._ends(beats), self.flying)

    @property
    def surely_flies(self) -> bool:
        """Whether a quick look finds a way to fly it that pulls no harder, and is no faster, than the show allows."""
        limits = self.hand.show.show.limits
        grip = GripLimits(pull=limits.pull, head_speed=limits.head_speed)
        return self.goes_on or surely_flies(*self._ends(None), self.flying, grip)

    def _ends(self, beats: float | None) -> tuple[StateAt, StateAt, float]:
        """The motions before and after it, and its length, as it is or as a link of so many beats."""
        start, end = (
            (self.start, self.end) if beats is None else (self.before.end, self.after.start)
        )
        before, after = (_state_of(self.hand, span) for span in (self.before, self.after))
        return (
            lambda beat: before(start + beat),
            lambda beat: after(end + beat),
            self.beats if beats is None else beats,
        )

    @property
    def content(self) -> bytes | None:
        """All that decides how it is flown; None if that is not known."""
        ends = []
        for span in (self.before, self.after):
            flying = self.hand.flyer.flying(span.start, span.end) if span.kind == "block" else None
            ends.append((span, flying))
        try:
            return content_key(whole_code(), ends, self.start, self.end, self.flying, self.linked)
        except TypeError:  # a law of another package
            return None

    @property
    def goes_on(self) -> bool:
        """Whether the two meet without a bridge, as flown."""
        if self.linked:
            return False
        border = self.before.end
        first, last = (
            _state_of(self.hand, span)(border).path for span in (self.before, self.after)
        )
        size = np.maximum(np.linalg.norm(first, axis=-1), 1.0)
        return bool(np.all(np.linalg.norm(last - first, axis=-1) <= _SAME * size))


def gaps_between(
    hands: Sequence[ShowHand], blocks: Sequence[FlownBlock]
) -> tuple[list[FlownGap], bool]:
    """Every link and border between motions that can be flown, and whether any was left out.

    Parameters
    ----------
    hands : sequence of ShowHand
    blocks : sequence of FlownBlock
        What was flown of them.
    """
    flies = {id(each.span) for each in blocks if each.flies}
    out, left = [], False
    for hand in hands:
        for gap in _gaps_of(hand):
            ends = [span for span in (gap.before, gap.after) if span.kind == "block"]
            if all(id(span) in flies for span in ends):
                out.append(gap)
            else:
                left = True
    return out, left


def _gaps_of(hand: ShowHand) -> Iterator[FlownGap]:
    spans = hand.spans
    for before, link, after in zip(spans, spans[1:], spans[2:], strict=False):
        if link.kind == "link" and "block" in (before.kind, after.kind):
            yield _gap(hand, link.start, link.end, before, after, linked=True)
    for before, after in pairwise(spans):
        if before.kind == after.kind == "block":
            low, high = (min(_HALF, (each.end - each.start) / 2) for each in (before, after))
            border = before.end
            yield _gap(hand, border - low, border + high, before, after, linked=False)


def _gap(
    hand: ShowHand, start: float, end: float, before: Span, after: Span, *, linked: bool
) -> FlownGap:
    beside = after if after.kind == "block" else before
    posture = hand.flyer.flying(beside.start, beside.end).posture
    flying = replace(hand.flyer.flying(start, end), posture=posture)
    return FlownGap(hand, start, end, before, after, flying, linked)


def _state_of(hand: ShowHand, span: Span) -> Callable[[float], HeadState]:
    """The flown head of a block or a rest at show beats."""
    if span.kind != "block":
        still = hanging(span.law, hand.prop.length)
        return lambda _beat: still
    motion: FlownMotion = flown_period(span.law, hand.flyer.flying(span.start, span.end))

    def at(beat: float) -> HeadState:
        own = (beat - span.origin) % span.law.period  # the same digits each time it comes round
        instant: Floats = np.array([own])
        return state_in(motion, span.law.at(instant).plane[0], own)

    return at


def fails_between(hand: ShowHand, start: float, end: float) -> bool:
    """Whether a link or a border within some beats cannot be flown, if what it joins can.

    Parameters
    ----------
    hand : ShowHand
    start, end : float
        [show beats]
    """
    return any(
        _fails(gap)
        for gap in _gaps_of(hand)
        if gap.start < end
        and start < gap.end
        and all(span.kind != "block" or flies(hand, span) for span in (gap.before, gap.after))
    )


class FailedGap(NamedTuple):
    """A link that cannot be flown as it is."""

    gap: FlownGap
    link: FlownLink


def failed_gaps(gaps: Sequence[FlownGap], progress: Progress | None) -> list[FailedGap]:
    """Those that cannot be flown as they are.

    Parameters
    ----------
    gaps : sequence of FlownGap
        Hand by hand.
    progress : callable, optional
    """
    out, done = [], 0
    for _, each in groupby(gaps, key=lambda gap: id(gap.hand)):
        own = list(each)
        hand = own[0].hand
        key = hand.key
        failing = recent(
            "links of a hand that cannot be flown",
            None if key is None else ("links", key, hand.side, tuple((gap.start, gap.end) for gap in own)),
            partial(_failing, own, progress, done, len(gaps)), most=MOST_HANDS,
            record=lambda found: found, restore=lambda record: [int(k) for k in record],
        )  # fmt: skip
        links = recent(
            "links of a hand as far as they can be flown",
            None if key is None else (key, hand.side, tuple((own[k].start, own[k].end) for k in failing)),
            partial(_links_of, own, failing), most=MOST_HANDS,
        )  # fmt: skip
        out += [FailedGap(own[k], link) for k, link in zip(failing, links, strict=True)]
        done += len(own)
    return out


def _links_of(gaps: Sequence[FlownGap], which: Sequence[int]) -> list[FlownLink]:
    return [gaps[k].flown() for k in which]


def _failing(gaps: Sequence[FlownGap], progress: Progress | None, done: int, of: int) -> list[int]:
    out = []
    for k, gap in enumerate(gaps):
        if progress is not None:
            progress("flying the links", (done + k) / of)
        stop_if_unwanted()
        fails = recent(
            "links that cannot be flown", gap.content, partial(_fails, gap), most=_MOST_KEPT,
            record=bool, restore=bool,
        )  # fmt: skip
        if fails:
            out.append(k)
    return out


def _fails(gap: FlownGap) -> bool:
    """Whether a gap has to be bridged and cannot be."""
    return not gap.goes_on and bool(gap.flown().broken)
