"""Stops that are written: how a prop comes to rest, or to be held, and how it starts again.

A rest leads to the hanging position of rests.py. A hold keeps the hand where the pattern before leaves it, carried on a
little as far as it goes while it brakes; a tether hangs straight down from it, a rigid prop stands still in the direction
to which it turned while it braked. Braking and starting take part of the stop's beats, unless a link is written
beside it: then they take that link's. Frame: body frame [m], rates per beat.
Source: shares by `hand_paths.STOP_SHARE`; the rest common practice.
"""

from collections.abc import Sequence
from typing import Literal, NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.laws.law import Law
from sequencer.motion.trajectories.bridges import BridgeEnds, Bridges, rest_span
from sequencer.motion.trajectories.one_link.hand_paths import STOP_SHARE, within_reach
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.one_link.link_search import axis_of
from sequencer.motion.trajectories.trajectory import Span
from sequencer.timing.position import TOUCH

STILL = 1.0  # [beats] least time for which a prop hangs at rest between two blocks
HELD = 0.5  # [beats] least time for which it is held
HANGS, STANDS = (
    (1.0, 1.5, 2.0),
    (1.0, 0.5),
)  # [beats] to brake or to start, tried in this order: a tether, a rigid prop
_STEEP = 1e-6  # [1] a plane's horizontal part below this has no direction


class HandStop(NamedTuple):
    """A stop of one hand."""

    start: float  # [show beats]
    end: float  # [show beats]
    kind: Literal["rest", "hold"]


def least_beats(*, kind: Literal["rest", "hold"], hangs: bool, brakes: bool, starts: bool) -> float:
    """Beats that a stop needs at least: to brake and to start within it, if it has to, and to be still.

    Parameters
    ----------
    kind : {"rest", "hold"}
    hangs : bool
        Whether the prop is a tether's.
    brakes, starts : bool
    """
    way = min(HANGS) if hangs or kind == "rest" else min(STANDS)
    return (brakes + starts) * way + (STILL if kind == "rest" else HELD)


def opened(
    first: Span,
    stops: Sequence[HandStop],
    straight: Sequence[tuple[float, float]],
    bridged: Bridges,
) -> Span | None:
    """The written link from a rest to the first block; None if there is none.

    Parameters
    ----------
    first : Span
    stops : sequence of HandStop
        Before it.
    straight : sequence of tuple of float
        Written links (start and end, show beats).
    bridged : Bridges
    """
    if not stops or not written(straight, stops[-1].end, first.start):
        return None
    end = stops[-1].end
    return bridged.link(rest_span(bridged.rest, end - STILL, end), first, end, first.start).span


def stopped(
    before: Span,
    after: Span | None,
    stops: Sequence[HandStop],
    straight: Sequence[tuple[float, float]],
    bridged: Bridges,
    *,
    hangs: bool,
) -> list[Span]:
    """What a hand does from a block to the end of the stops after it, and to the next block if a rest leads to it.

    Parameters
    ----------
    before : Span
    after : Span or None
        The next block, if there is one.
    stops : sequence of HandStop
        Between the two.
    straight : sequence of tuple of float
        Written links (start and end, show beats).
    bridged : Bridges
    hangs : bool
        Whether the prop hangs from a hand that holds still.

    Returns
    -------
    spans : list of Span
        Nothing if there is no stop.
    """
    if not stops:
        return []
    if stops[0].kind == "rest":
        return _rested(before, after, stops, straight, bridged)
    return _held(before, after, stops, straight, bridged, hangs=hangs)


def written(straight: Sequence[tuple[float, float]], start: float, end: float) -> bool:
    """Whether a link is written from one beat to another."""
    return any(abs(low - start) <= TOUCH and abs(high - end) <= TOUCH for low, high in straight)


def _rested(
    before: Span,
    after: Span | None,
    stops: Sequence[HandStop],
    straight: Sequence[tuple[float, float]],
    bridged: Bridges,
) -> list[Span]:
    low, high = stops[0].start, stops[-1].end
    begin, end = before.end, np.inf if after is None else after.start
    brakes = not written(straight, begin, low)
    starts = after is not None and not written(straight, high, end)
    room = (end if starts or after is None else high) - (begin if brakes else low)
    most = (room - STILL) / max(brakes + starts, 1)
    down = (
        bridged.to_rest(before, most)
        if brakes
        else bridged.link(before, rest_span(bridged.rest, low, low + STILL), begin, low).span
    )
    if after is None:
        return [down, rest_span(bridged.rest, down.end, max(down.end, high) + STILL)]
    up = (
        bridged.from_rest(after, most)
        if starts
        else bridged.link(rest_span(bridged.rest, high - STILL, high), after, high, end).span
    )
    return [down, rest_span(bridged.rest, down.end, up.start), up]


def _held(
    before: Span,
    after: Span | None,
    stops: Sequence[HandStop],
    straight: Sequence[tuple[float, float]],
    bridged: Bridges,
    *,
    hangs: bool,
) -> list[Span]:
    low, high = stops[0].start, stops[-1].end
    begin = before.end
    brakes = not written(straight, begin, low)
    starts = after is not None and after.start <= high + TOUCH
    most = (high - low - HELD) / max(brakes + starts, 1)
    ways = [n for n in (HANGS if hangs else STANDS) if n <= most + TOUCH] or [most]
    downs = [
        BridgeEnds(before, _hold(before, n, begin + n, high, bridged.space, hangs=hangs), begin, begin + n)
        for n in (ways if brakes else [low - begin])
    ]  # fmt: skip
    down, joined = bridged.best(downs)
    law = joined.after.law
    if not starts or after is None:
        return [down, _holding(law, down.end, high)]
    end = after.start
    ups = [BridgeEnds(_holding(law, down.end, end - n), after, end - n, end) for n in ways]
    up, _ = bridged.best(ups)
    return [down, _holding(law, down.end, up.start), up]


def _holding(law: Law, start: float, end: float) -> Span:
    return Span(start=start, end=end, law=law, origin=start, kind="rest", label="hold")


def _hold(
    before: Span, beats: float, start: float, end: float, space: HandSpace | None, *, hangs: bool
) -> Span:
    """The hand and prop held after braking for some beats from the end of a block."""
    return _holding(held(before, beats, space, hangs=hangs), start, end)


def held(before: Span, beats: float, space: HandSpace | None, *, hangs: bool) -> ComposedLaw:
    """A hand that holds still after it braked for some beats from the end of a block.

    Parameters
    ----------
    before : Span
    beats : float
    space : HandSpace, optional
        Within whose reach the hand comes to a stop.
    hangs : bool
        Whether the prop hangs straight down from the hand; otherwise it keeps the direction to which it turned.

    Returns
    -------
    law : ComposedLaw

    Notes
    -----
    Source: module docstring. Exact.
    """
    state = before.at(np.array(before.end))
    hand = state.hand + STOP_SHARE * beats * state.hand_rate
    if space is not None:
        hand = within_reach(hand, space.shoulder, space.arm)
    if hangs:
        tether: Floats = np.array([0.0, 0.0, -1.0])
        plane = state.plane * [1.0, 1.0, 0.0]
        size = float(np.linalg.norm(plane))
        plane = plane / size if size > _STEEP else np.array([-1.0, 0.0, 0.0])
    else:
        turn = STOP_SHARE * beats * float(np.linalg.norm(state.tether_rate))
        axis = axis_of(state)
        tether, plane = (_turned(each, axis, turn) for each in (state.tether, state.plane))
    x, y, z = (float(value) for value in hand)
    return ComposedLaw(
        hand=HandPath((x, y, z)),
        tether=(float(tether[0]), float(tether[1]), float(tether[2])),
        plane=(float(plane[0]), float(plane[1]), float(plane[2])),
        turns=(),
        period=1.0,
    )


def _turned(vector: Floats, axis: Floats, angle: float) -> Floats:
    """A vector turned about an axis; Rodrigues."""
    return np.asarray(
        vector * np.cos(angle)
        + np.cross(axis, vector) * np.sin(angle)
        + axis * (axis @ vector) * (1.0 - np.cos(angle))
    )
