"""From blocks to a trajectory: gaps are filled by links, via rest if there is time, and by the stops that are written."""

from collections.abc import Sequence

import numpy as np

from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Law
from sequencer.motion.trajectories.bridges import Bridges, LimitsAt, rest_span
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.stops import STILL, HandStop, opened, stopped
from sequencer.motion.trajectories.trajectory import Span, Trajectory, same_spans
from sequencer.timing.position import TOUCH

LEAD_IN = 2.0  # [beats] of a link into or out of rest


def assembled(
    blocks: Sequence[Span],
    rest: Law,
    *,
    straight: Sequence[tuple[float, float]] = (),
    lead: float = LEAD_IN,
    space: HandSpace | None = None,
    other: Trajectory | None = None,
    carriage: Carriage | None = None,
    stops: Sequence[HandStop] = (),
    hangs: bool = True,
    limits: LimitsAt | None = None,
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
    stops : sequence of HandStop
        By start, each in a gap, before the first block or after the last.
    hangs : bool
        Whether the prop hangs from a hand that holds still.
    limits : callable, optional
        The limits of a link from one show beat to another; default: those of any tempo.

    Returns
    -------
    trajectory : Trajectory
        A gap of up to twice `lead` without a stop is also a single link; a longer one goes via rest.

    Raises
    ------
    ValueError
        If blocks overlap or are out of order.
    """
    if not blocks:
        return Trajectory((rest_span(rest, 0.0, 1.0),), space)
    bridged = Bridges(rest, lead, space, other, carriage, limits)
    first, last = blocks[0], blocks[-1]
    begun = opened(
        first, [stop for stop in stops if stop.end <= first.start + TOUCH], straight, bridged
    )
    if begun is None:
        begun = bridged.from_rest(first, max(first.start, lead))
    spans = [rest_span(rest, begun.start - STILL, begun.start), begun, first]
    for after in blocks[1:]:
        before = spans[-1]
        gap = after.start - before.end
        if gap < -TOUCH:
            raise ValueError(f"blocks overlap: {before.end} … {after.start}")
        if gap > TOUCH:
            inside = [
                stop for stop in stops if before.end - TOUCH <= stop.start < after.start - TOUCH
            ]
            spans += _filled(before, after, straight, bridged, inside, hangs=hangs)
        spans.append(after)
    inside = [stop for stop in stops if stop.start >= last.end - TOUCH]
    spans += stopped(last, None, inside, straight, bridged, hangs=hangs)
    if spans[-1].kind != "rest" or spans[-1].label != "rest":
        spans.append(bridged.to_rest(spans[-1], np.inf))
        spans.append(rest_span(rest, spans[-1].end, spans[-1].end + STILL))
    return Trajectory(same_spans(spans), space)


def joined(
    before: Span,
    after: Span,
    rest: Law,
    *,
    space: HandSpace | None = None,
    other: Trajectory | None = None,
    carriage: Carriage | None = None,
    limits: LimitsAt | None = None,
) -> Trajectory:
    """Two blocks alone, with the link that fills the gap between them, as a written link does.

    Parameters
    ----------
    before, after : Span
        Without a gap if they touch.
    rest : Law
        State of the prop at rest.
    space, other, carriage, limits
        As in `assembled`.
    """
    if after.start - before.end <= TOUCH:
        return Trajectory((before, after), space)
    bridged = Bridges(rest, LEAD_IN, space, other, carriage, limits)
    link = bridged.link(before, after, before.end, after.start).span
    return Trajectory((before, link, after), space)


def _filled(
    before: Span,
    after: Span,
    straight: Sequence[tuple[float, float]],
    bridged: Bridges,
    stops: Sequence[HandStop],
    *,
    hangs: bool,
) -> list[Span]:
    """What fills the gap between two blocks."""
    filled = stopped(before, after, stops, straight, bridged, hangs=hangs)
    before = filled[-1] if filled else before
    start, end = before.end, after.start
    if end - start <= TOUCH:
        return filled
    requested = any(low <= start + TOUCH and high >= end - TOUCH for low, high in straight)
    if requested or end - start <= 2 * bridged.lead + TOUCH:
        return [*filled, bridged.link(before, after, start, end).span]
    most = max(bridged.lead, (end - start - STILL) / 2)
    down, up = bridged.to_rest(before, most), bridged.from_rest(after, most)
    return [*filled, down, rest_span(bridged.rest, down.end, up.start), up]
