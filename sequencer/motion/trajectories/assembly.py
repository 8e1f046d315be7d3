"""From blocks to a trajectory: gaps are filled by links, via rest if there is time."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from sequencer.kept import kept
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Law
from sequencer.motion.trajectories.link_gaps import Around, around
from sequencer.motion.trajectories.link_limits import HandSpace
from sequencer.motion.trajectories.links import (
    FoundLink,
    found_link,
    link_record,
    restored_link,
    sample_beats,
)
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.timing.position import TOUCH

LEAD_IN = 2.0  # [beats] of a link into or out of rest
LEADS = (1.5, 2.0, 0.5)  # multiples of it, tried if a link of `lead` beats is not clean
_STILL = 1.0  # [beats] minimum rest left by longer links


def assembled(
    blocks: Sequence[Span],
    rest: Law,
    *,
    straight: Sequence[tuple[float, float]] = (),
    lead: float = LEAD_IN,
    space: HandSpace | None = None,
    other: Trajectory | None = None,
    carriage: Carriage | None = None,
) -> Trajectory:
    """The trajectory of one prop through its blocks.

    Parameters
    ----------
    blocks : sequence of Span
        By start, not overlapping.
    rest : Law
        State of the prop before, between and after them.
    straight : sequence of tuple of float
        Gaps (start and end, show beats) to bridge by a single link, however long.
    lead : float
        Beats of a link between a block and rest, if that link is clean; otherwise 1.5, 2 or ½ times as many
        beats, whichever is clean first, else the best of them.
    space : HandSpace, optional
        Reach and body that links respect as far as possible.
    other : Trajectory, optional
        Trajectory of the other hand: links keep clear of its prop as of the body.
    carriage : Carriage, optional
        Motion of the body; default: upright.

    Returns
    -------
    trajectory : Trajectory
        A gap of up to twice `lead` is also a single link; a longer one goes via rest.

    Raises
    ------
    ValueError
        If blocks overlap or are out of order.
    """
    if not blocks:
        return Trajectory((_rest(rest, 0.0, 1.0),), space)
    bridged = _Bridges(rest, lead, space, other, carriage)
    first = blocks[0]
    begun = bridged.from_rest(first, max(first.start, lead))
    spans = [_rest(rest, begun.start - _STILL, begun.start), begun, first]
    for after in blocks[1:]:
        before = spans[-1]
        gap = after.start - before.end
        if gap < -TOUCH:
            raise ValueError(f"blocks overlap: {before.end} … {after.start}")
        if gap > TOUCH:
            spans += _filled(before, after, straight, bridged)
        spans.append(after)
    ended = bridged.to_rest(spans[-1], np.inf)
    spans += [ended, _rest(rest, ended.end, ended.end + _STILL)]
    return Trajectory(tuple(spans), space)


def joined(
    before: Span,
    after: Span,
    rest: Law,
    *,
    space: HandSpace | None = None,
    other: Trajectory | None = None,
    carriage: Carriage | None = None,
) -> Trajectory:
    """Two blocks alone, with the link that fills the gap between them, as a written link does.

    Parameters
    ----------
    before, after : Span
        Without a gap if they touch.
    rest : Law
        State of the prop at rest.
    space, other, carriage
        As in `assembled`.
    """
    if after.start - before.end <= TOUCH:
        return Trajectory((before, after), space)
    bridged = _Bridges(rest, LEAD_IN, space, other, carriage)
    link = bridged.link(before, after, before.end, after.start).span
    return Trajectory((before, link, after), space)


def _filled(
    before: Span, after: Span, straight: Sequence[tuple[float, float]], bridged: "_Bridges"
) -> list[Span]:
    start, end = before.end, after.start
    requested = any(low <= start + TOUCH and high >= end - TOUCH for low, high in straight)
    if requested or end - start <= 2 * bridged.lead + TOUCH:
        return [bridged.link(before, after, start, end).span]
    most = max(bridged.lead, (end - start - _STILL) / 2)
    down, up = bridged.to_rest(before, most), bridged.from_rest(after, most)
    return [down, _rest(bridged.rest, down.end, up.start), up]


def _rest(law: Law, start: float, end: float) -> Span:
    return Span(start=start, end=end, law=law, origin=start, kind="rest", label="rest")


def _exact(beat: float) -> bool:
    """Whether sums and differences of such beats, and of 256ths between them, are exact: a multiple of 2⁻²⁰."""
    return abs(beat) < 2.0**20 and (beat * 2.0**20).is_integer()


@dataclass(frozen=True, slots=True)
class _Bridge:
    """A link at its place in the trajectory."""

    span: Span
    found: FoundLink


@dataclass(frozen=True, slots=True)
class _Bridges:
    """Constraints on the links of one hand."""

    rest: Law
    lead: float
    space: HandSpace | None
    other: Trajectory | None
    carriage: Carriage | None

    def from_rest(self, after: Span, most: float) -> Span:
        """The link from rest to a block, of at most a number of beats."""
        end = after.start
        return self._best(
            [
                (_rest(self.rest, end - n - 1.0, end - n), after, end - n, end)
                for n in self._leads(most)
            ]
        )

    def to_rest(self, before: Span, most: float) -> Span:
        """The link from a block to rest, of at most a number of beats."""
        start = before.end
        return self._best(
            [
                (before, _rest(self.rest, start + n, start + n + 1.0), start, start + n)
                for n in self._leads(most)
            ]
        )

    def _leads(self, most: float) -> list[float]:
        return [self.lead, *(share * self.lead for share in LEADS if share * self.lead <= most)]

    def _best(self, ends: Sequence[tuple[Span, Span, float, float]]) -> Span:
        """The first clean link, or else the nearest to clean."""
        tried = []
        for each in ends:
            bridge = self.link(*each)
            if bridge.found.clean:
                return bridge.span
            tried.append(bridge)
        return max(
            tried, key=lambda each: (each.found.kept, each.found.gap - each.found.needed)
        ).span

    def link(self, before: Span, after: Span, start: float, end: float) -> _Bridge:
        """The link between two spans."""
        found = kept(
            "bridge",
            self._content(before, after, start, end),
            lambda: self._found(before, after, start, end),
            record=link_record,
            restore=restored_link,
        )
        span = Span(start=start, end=end, law=found.law, origin=start, kind="link", label="link")
        return _Bridge(span, found)

    def _content(self, before: Span, after: Span, start: float, end: float) -> tuple[Any, ...]:
        """All that a link depends on, in beats from its start: the same again later in a show is the same link."""
        times = [start, end, before.origin, after.origin]
        ends = before.law, start - before.origin, after.law, end - after.origin
        content: list[Any] = [*ends, end - start, self.space]
        if self.other is not None and self.other.space is not None:
            spans, blends = self.other.part(start, end)
            for span in spans:
                times += [span.start, span.origin]
                content += [span.law, start - span.origin]
            for blend in blends:
                times += [blend.boundary, blend.half]
                content += [blend.boundary - start, blend.half, blend.bridge]
            content += [[span.start - start for span in spans[1:]], self.other.space.shape]
        if self.carriage is not None:
            body, held = self.carriage.part(start, end)
            for each in held:
                times += each[:2]
                content += [each.start - start, each.end - start, each.posture]
            content.append(body)
        if not all(map(_exact, times)):
            content.append(start)  # differences are rounded, and not alike everywhere
        return tuple(content)

    def _found(self, before: Span, after: Span, start: float, end: float) -> FoundLink:
        first, last = before.at(np.array(start)), after.at(np.array(end))
        obstacles = self._obstacles(start, end)
        return found_link(first, last, end - start, self.space, obstacles=obstacles)

    def _obstacles(self, start: float, end: float) -> Around | None:
        """The performer's body as it moves, and the other hand's prop."""
        if self.space is None:
            return None
        beats, seen = sample_beats(start, end), None
        if self.other is not None and self.other.space is not None:
            seen = self.other.at(beats), self.other.space.shape
        return around(self.carriage or Carriage(body=self.space.body), beats, seen)
