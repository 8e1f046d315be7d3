"""From blocks to a course: gaps are filled by links, through rest where there is time for it."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.motion.course import TOUCH, Course, Span
from sequencer.motion.law import Law
from sequencer.motion.links import beside_of, link, looks
from sequencer.motion.rooms import Room

LEAD = 2.0  # [beats] of a link into or out of rest


def assembled(
    blocks: Sequence[Span],
    rest: Law,
    *,
    straight: Sequence[tuple[float, float]] = (),
    lead: float = LEAD,
    room: Room | None = None,
    other: Course | None = None,
) -> Course:
    """The course of one prop through its blocks.

    Parameters
    ----------
    blocks : sequence of Span
        By start, not overlapping.
    rest : Law
        What the prop does before, between and after them.
    straight : sequence of tuple of float
        Gaps (start and end, show beats) that are to be bridged by one link, however long.
    lead : float
        Beats of a link between a block and rest.
    room : Room, optional
        Reach and body that links respect as far as can be.
    other : Course, optional
        Of the other hand: its prop is kept clear of like the body.

    Returns
    -------
    course : Course
        A gap of up to twice `lead` is one link, too; a longer one goes through rest.

    Raises
    ------
    ValueError
        If blocks overlap or are out of order.
    """
    if not blocks:
        return Course((_rest(rest, 0.0, 1.0),), room)
    spans: list[Span] = []
    bridged = _Bridges(room, other)
    first = blocks[0]
    spans.append(_rest(rest, first.start - lead - 1.0, first.start - lead))
    spans += [bridged.link(spans[-1], first, first.start - lead, first.start), first]
    for after in blocks[1:]:
        before = spans[-1]
        gap = after.start - before.end
        if gap < -TOUCH:
            raise ValueError(f"blocks overlap: {before.end} … {after.start}")
        if gap > TOUCH:
            spans += _filled(before, after, rest, straight, lead, bridged)
        spans.append(after)
    last = spans[-1]
    still = _rest(rest, last.end + lead, last.end + lead + 1.0)
    spans += [bridged.link(last, still, last.end, last.end + lead), still]
    return Course(tuple(spans), room)


def _filled(
    before: Span,
    after: Span,
    rest: Law,
    straight: Sequence[tuple[float, float]],
    lead: float,
    bridged: "_Bridges",
) -> list[Span]:
    start, end = before.end, after.start
    asked = any(low <= start + TOUCH and high >= end - TOUCH for low, high in straight)
    if asked or end - start <= 2 * lead + TOUCH:
        return [bridged.link(before, after, start, end)]
    still = _rest(rest, start + lead, end - lead)
    return [
        bridged.link(before, still, start, still.start),
        still,
        bridged.link(still, after, still.end, end),
    ]


def _rest(law: Law, start: float, end: float) -> Span:
    return Span(start=start, end=end, law=law, origin=start, kind="rest", label="rest")


@dataclass(frozen=True, slots=True)
class _Bridges:
    """What links of one hand respect."""

    room: Room | None
    other: Course | None

    def link(self, before: Span, after: Span, start: float, end: float) -> Span:
        """The link between two spans."""
        beside = None
        if self.other is not None and self.other.room is not None:
            beside = beside_of(self.other.at(looks(start, end)), self.other.room)
        first, last = before.at(np.array(start)), after.at(np.array(end))
        bridge = link(first, last, end - start, self.room, beside=beside)
        return Span(start=start, end=end, law=bridge, origin=start, kind="link", label="link")
