"""Reach, tension and clearance of all performers' props on every span of theirs, proven in one search each.

The quantities are those of `motion.performers.feasibility`; all hands of a show are asked together, which is several
times quicker than one by one. Gaps [m], tension over mass [m/s²], times in beats.
"""

from collections.abc import Callable, Collection, Hashable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from sequencer.geometry.bodies import SIDES, Side
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import (
    body_quantity,
    frame_rates,
    props_quantity,
    pull_quantity,
    reach_quantity,
    shape_of,
)
from sequencer.motion.performers.least_values import Asked, Least, least_values
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.staging.results import OfPerformer, results_together
from sequencer.staging.staged import Staged


class Hand(NamedTuple):
    """One hand of a performer."""

    who: str
    side: Side


class SpanLeast(NamedTuple):
    """The smallest value on a span or a part of it."""

    span: Span
    least: Least


_Wanted = tuple[Sequence[Span], Asked]  # spans or parts of them, and the smallest value on each


def edges_of(trajectory: Trajectory) -> list[float]:
    """Beats at which the spans of a trajectory begin, and at which the last one ends."""
    return [trajectory.spans[0].start, *(span.end for span in trajectory.spans)]


def spare_reach(show: Staged) -> dict[Hand, list[SpanLeast]]:
    """Arm's length minus the hand's distance from its shoulder, on every span of each hand [m]."""

    def asked(hand: Hand, dancer: Dancer, trajectory: Trajectory) -> _Wanted:
        reach = reach_quantity(side=hand.side, body=dancer.body, carriage=dancer.carriage)
        return trajectory.spans, Asked(reach, (trajectory,), list(pairwise(edges_of(trajectory))))

    return _by_hand(show, "spare reach", asked)


def tether_pull(show: Staged) -> dict[Hand, list[SpanLeast]]:
    """Tension over mass on every block of each hand with a tethered prop [m/s²]."""

    def asked(hand: Hand, dancer: Dancer, trajectory: Trajectory) -> _Wanted | None:
        prop = dancer.props[hand.side]
        if not prop.flexible:
            return None
        blocks = [span for span in trajectory.spans if span.kind == "block"]
        pull = pull_quantity(length=prop.length, tempos=(show.tempo.beats_per_second,))
        return blocks, Asked(pull, (trajectory,), [(span.start, span.end) for span in blocks])

    return _by_hand(show, "pull", asked)


def gap_to_body(show: Staged, near: float) -> dict[Hand, list[SpanLeast]]:
    """Gap between each prop and its performer's body, as far as it is below `near` [m].

    Spans are cut where the performer is lit or put out: each pass counts as lit or not at its moment.
    """

    def asked(hand: Hand, dancer: Dancer, trajectory: Trajectory) -> _Wanted:
        edges, spans = _cut_at_fire(dancer, trajectory)
        quantity = body_quantity(
            shape=shape_of(dancer.props[hand.side], frame_rates(trajectory, edges)),
            body=dancer.body,
            carriage=dancer.carriage,
            enough=near,
        )
        return spans, Asked(quantity, (trajectory,), list(pairwise(edges)))

    return _by_hand(show, "gap to body", asked, near)


def gap_between_props(show: Staged) -> dict[str, list[tuple[float, float, Least]]]:
    """Gap between the two props of each performer who has two, between any two edges of either hand [m]."""
    keys = {each.name: OfPerformer("gap between props", each.name) for each in show.dancers}
    return results_together(show, keys, lambda missing: _between_props(show, missing))


def _between_props(
    show: Staged, who: Collection[str]
) -> dict[str, list[tuple[float, float, Least]]]:
    asked: dict[str, Asked] = {}
    for dancer in show.dancers:
        if dancer.name not in who:
            continue
        both = {hand.side: own for hand, _, own in _hands_of(dancer)}
        if len(both) < len(SIDES):
            continue
        # Rests and links of the two hands may end at different beats: the edges of each cut both.
        every = [edges_of(both[side]) for side in SIDES]
        low, high = max(own[0] for own in every), min(own[-1] for own in every)
        edges = sorted({edge for own in every for edge in own if low <= edge <= high})
        if len(edges) > 1:
            shapes = tuple(
                shape_of(dancer.props[side], frame_rates(both[side], edges)) for side in SIDES
            )
            trajectories = tuple(both[side] for side in SIDES)
            asked[dancer.name] = Asked(
                props_quantity(shapes=shapes), trajectories, list(pairwise(edges))
            )
    found = least_values(asked.values())
    none: dict[str, list[tuple[float, float, Least]]] = {name: [] for name in who}
    return none | {
        who: [(*interval, least) for interval, least in zip(own.intervals, each, strict=True)]
        for (who, own), each in zip(asked.items(), found, strict=True)
    }


def _by_hand(
    show: Staged,
    what: str,
    asked: Callable[[Hand, Dancer, Trajectory], _Wanted | None],
    besides: Hashable = None,
) -> dict[Hand, list[SpanLeast]]:
    """Results of every hand; all hands of performers whose dance has changed are asked together."""

    def work(missing: Collection[str]) -> dict[str, dict[Hand, list[SpanLeast]]]:
        wanted = [
            (hand, *own)
            for hand, dancer, trajectory in _hands(show)
            if hand.who in missing and (own := asked(hand, dancer, trajectory)) is not None
        ]
        found: dict[str, dict[Hand, list[SpanLeast]]] = {who: {} for who in missing}
        for hand, values in _on_spans(wanted).items():
            found[hand.who][hand] = values
        return found

    keys = {each.name: OfPerformer(what, each.name, besides) for each in show.dancers}
    each = results_together(show, keys, work)
    return {hand: values for own in each.values() for hand, values in own.items()}


def _hands(show: Staged) -> Iterator[tuple[Hand, Dancer, Trajectory]]:
    for dancer in show.dancers:
        yield from _hands_of(dancer)


def _hands_of(dancer: Dancer) -> Iterator[tuple[Hand, Dancer, Trajectory]]:
    for side in SIDES:
        trajectory = dancer.trajectories.get(side)
        if isinstance(trajectory, Trajectory):
            yield Hand(dancer.name, side), dancer, trajectory


def _on_spans(
    each: Iterable[tuple[Hand, Sequence[Span], Asked]],
) -> dict[Hand, list[SpanLeast]]:
    each = list(each)
    found = least_values(asked for *_, asked in each)
    return {
        hand: [SpanLeast(*pair) for pair in zip(spans, own, strict=True)]
        for (hand, spans, _), own in zip(each, found, strict=True)
    }


def _cut_at_fire(dancer: Dancer, trajectory: Trajectory) -> tuple[list[float], list[Span]]:
    """The spans cut where the performer is lit or put out, and the span that each part belongs to."""
    edges = edges_of(trajectory)
    fire = {edge for burn in dancer.lit for edge in burn}
    cut = sorted({*edges, *(edge for edge in fire if edges[0] < edge < edges[-1])})
    parts = np.searchsorted(edges, 0.5 * (np.array(cut[:-1]) + cut[1:]), side="right") - 1
    return cut, [trajectory.spans[int(k)] for k in parts]
