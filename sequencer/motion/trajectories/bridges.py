"""The links of one hand: what they keep clear of, how many beats they take, and the best of several.

A link is kept by its content, in beats from its start, so that the same one later in a show is found at once.
"""

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from sequencer.geometry.posture import Posture
from sequencer.kept import kept, recent
from sequencer.motion.laws.carriage import Carriage
from sequencer.motion.laws.law import Law
from sequencer.motion.trajectories.one_link.link_gaps import Around, around
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_search import FoundLink
from sequencer.motion.trajectories.one_link.links import (
    found_link,
    link_record,
    restored_link,
    sample_beats,
)
from sequencer.motion.trajectories.trajectory import Span, Trajectory

_OURS = frozenset(("sequencer", "builtins"))
_MOST_LINKS = 20_000  # that are known by their objects
LEADS = (1.5, 2.0, 0.5)  # multiples of the usual beats, tried if a link of those is not clean


LimitsAt = Callable[[float, float], LinkLimits]


class BridgeEnds(NamedTuple):
    """What a link leads from and to, and its beats."""

    before: Span
    after: Span
    start: float  # [show beats]
    end: float  # [show beats]


def rest_span(law: Law, start: float, end: float) -> Span:
    """A hand at rest from one show beat to another."""
    return Span(start=start, end=end, law=law, origin=start, kind="rest", label="rest")


def _exact(beat: float) -> bool:
    """Whether sums and differences of such beats, and of 256ths between them, are exact: a multiple of 2⁻²⁰."""
    return abs(beat) < 2.0**20 and (beat * 2.0**20).is_integer()


def _by_objects(content: Sequence[Any]) -> Hashable | None:
    """A key that contents share only if their numbers and limits are the same, and all else the same objects.

    None if another package's law is among them by itself: of what it does nothing is known. Whoever keeps the key holds
    the content, so that the objects' ids stay their own.
    """
    if any(type(each).__module__.partition(".")[0] not in _OURS for each in content):
        return None
    return tuple(map(_number_or_object, content))


def _number_or_object(each: Any) -> Hashable:
    if isinstance(each, float):
        return each.hex()  # 0.0 and -0.0 are equal, and not the same
    if isinstance(each, list | tuple):
        return tuple(map(_number_or_object, each))
    return each if isinstance(each, LinkLimits | Posture | str) else id(each)


@dataclass(frozen=True, slots=True)
class Bridge:
    """A link at its place in the trajectory."""

    span: Span
    found: FoundLink


@dataclass(frozen=True, slots=True)
class Bridges:
    """Constraints on the links of one hand."""

    rest: Law
    lead: float
    space: HandSpace | None
    other: Trajectory | None
    carriage: Carriage | None
    limits: LimitsAt | None = (
        None  # of a link from one show beat to another; default: those of any tempo
    )

    def from_rest(self, after: Span, most: float) -> Span:
        """The link from rest to a block, of at most a number of beats."""
        end = after.start
        return self.best(
            [
                BridgeEnds(rest_span(self.rest, end - n - 1.0, end - n), after, end - n, end)
                for n in self._leads(most)
            ]
        )[0]

    def to_rest(self, before: Span, most: float) -> Span:
        """The link from a block to rest, of at most a number of beats."""
        start = before.end
        return self.best(
            [
                BridgeEnds(
                    before, rest_span(self.rest, start + n, start + n + 1.0), start, start + n
                )
                for n in self._leads(most)
            ]
        )[0]

    def _leads(self, most: float) -> list[float]:
        """Numbers of beats that are tried: the usual one first, or as many as there are if that is fewer."""
        longer = [share * self.lead for share in LEADS if share * self.lead <= most]
        return list(dict.fromkeys((min(self.lead, most), *longer)))

    def best(self, ends: Sequence[BridgeEnds]) -> tuple[Span, BridgeEnds]:
        """The first clean link, or else the nearest to clean, and what it joins."""
        tried = []
        for each in ends:
            bridge = self.link(*each)
            if bridge.found.clean:
                return bridge.span, each
            tried.append((bridge, each))
        nearest, joined = max(tried, key=lambda each: each[0].found.merit)
        return nearest.span, joined

    def link(self, before: Span, after: Span, start: float, end: float) -> Bridge:
        """The link between two spans."""
        content = self._content(before, after, start, end)

        def work() -> tuple[object, FoundLink]:
            found = kept(
                "bridge",
                content,
                lambda: self._found(before, after, start, end),
                record=link_record,
                restore=restored_link,
            )
            return content, found

        # An edit leaves most links between the same objects: these are known by them at once.
        _, found = recent("bridges of objects", _by_objects(content), work, most=_MOST_LINKS)
        span = Span(start=start, end=end, law=found.law, origin=start, kind="link", label="link")
        return Bridge(span, found)

    def _content(self, before: Span, after: Span, start: float, end: float) -> tuple[Any, ...]:
        """All that a link depends on, in beats from its start: the same again later in a show is the same link."""
        times = [start, end, before.origin, after.origin]
        ends = before.law, start - before.origin, after.law, end - after.origin
        content: list[Any] = [*ends, end - start, self.space, self._limits(start, end)]
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
        first, last = before.state_at(start), after.state_at(end)
        obstacles = self._obstacles(start, end)
        limits = self._limits(start, end)
        return found_link(
            first, last, end - start, self.space, limits=limits, obstacles=obstacles, keep=False
        )

    def _limits(self, start: float, end: float) -> LinkLimits | None:
        return self.limits and self.limits(start, end)

    def _obstacles(self, start: float, end: float) -> Around | None:
        """The performer's body as it moves, and the other hand's prop."""
        if self.space is None:
            return None
        beats, seen = sample_beats(start, end), None
        if self.other is not None and self.other.space is not None:
            seen = self.other.at(beats), self.other.space.shape
        return around(self.carriage or Carriage(body=self.space.body), beats, seen)
