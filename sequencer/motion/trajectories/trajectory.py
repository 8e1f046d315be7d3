"""One prop's trajectory through a show: laws in sequence, blended where they meet.

At a boundary b the two laws are blended over [b − w, b + w], w ≤ ¼ beat: with σ the minimum-jerk step,
h = (1 − σ)·h₁ + σ·h₂ and d the unit vector along m = (1 − σ)·d₁ + σ·d₂, which is twice continuously
differentiable. If the tethers are so far apart that m could vanish (or one of the laws is a link), the
blend is instead a link (links.py) from the state at b − w to the state at b + w. Laws that meet exactly are
not blended. Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

import struct
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import Any, Literal, NamedTuple

import numpy as np

from sequencer.arrays import Floats, crossed
from sequencer.content_keys import content_key
from sequencer.kept import kept, recent, recent_each, remembering
from sequencer.motion.laws.bound_table import BoundTable, table_of
from sequencer.motion.laws.law import Bounds, Law
from sequencer.motion.laws.phases import STEP_ACCELERATION, STEP_JERK, STEP_RATE, smooth_step
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.known_states import known_state
from sequencer.motion.trajectories.one_link.link_law import (
    LinkLaw,
    know_parts,
    law_record,
    restored_law,
)
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.one_link.links import link
from sequencer.timing.position import TOUCH
from sequencer.units import counted

SpanKind = Literal["block", "link", "rest"]

BLEND_HALF_WIDTH = 0.25  # [beats] of a blend
_SAME = 1e-9  # states closer than this coincide
_WIDEST = np.cos(np.radians(75.0))  # beyond this a link replaces the blend of two tethers
MOST_BLENDS = 20_000  # kept in the process
_BOUND_PIECES = 16  # number of parts of a blend with separate bounds


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A law at its place in the show's count."""

    start: float  # [show beats]
    end: float  # [show beats]
    law: Law
    origin: float  # [show beats] at which the law's beat is 0
    kind: SpanKind
    label: str

    def __post_init__(self) -> None:
        if not self.end > self.start:
            raise ValueError(f"a span must end after it starts, got {self.start} … {self.end}")

    def at(self, beats: Floats) -> Motion:
        """State of its law at show beats, shape (...)."""
        return self.law.at(np.asarray(beats, dtype=np.float64) - self.origin)

    def state_at(self, beat: float) -> Motion:
        """State of its law at one show beat, arrays of shape (3,) that nobody changes; see `known_state`."""
        return known_state(self.law, float(np.float64(beat) - self.origin))


class Blend(NamedTuple):
    """The transition between two spans at a boundary: none if `half` is 0, else a blend or a link."""

    boundary: float  # [show beats]
    half: float  # [beats]
    bridge: LinkLaw | None


def same_spans(spans: Sequence[Span]) -> tuple[Span, ...]:
    """The same spans, each one the object that another trajectory of this process has for it.

    What is known of an object, such as its content key, is found at once: an edit leaves most spans as they were.

    Parameters
    ----------
    spans : sequence of Span
    """
    # A span holds its law, so that its id stays its own; packed, since 0.0 and -0.0 are equal.
    keys = [
        (id(own.law), struct.pack("<3d", own.start, own.end, own.origin), own.kind, own.label)
        for own in spans
    ]
    found = recent_each("spans", keys, lambda some: [spans[k] for k in some], most=MOST_BLENDS)
    return tuple(found)


class TrajectoryPart(NamedTuple):
    """Some spans that follow each other, and the blends between them."""

    spans: tuple[Span, ...]
    blends: tuple[Blend, ...]


@dataclass(frozen=True, eq=False)
class Trajectory:
    """Spans that follow each other without a gap; outside them the first and the last law continue.

    Parameters
    ----------
    spans : tuple of Span
    space : HandSpace, optional
        Reach and body that links respect as far as possible.
    """

    spans: tuple[Span, ...]
    space: HandSpace | None = None  # for links between laws that cannot be blended
    blends: tuple[Blend, ...] = field(init=False)

    def __post_init__(self) -> None:
        if not self.spans:
            raise ValueError("a trajectory needs at least one span")
        for before, after in pairwise(self.spans):
            if abs(after.start - before.end) > TOUCH:
                raise ValueError(f"spans must follow each other: {before.end} … {after.start}")
        object.__setattr__(self, "blends", _blends(self.spans, self.space))

    def __repr__(self) -> str:
        first, last = self.spans[0].start, self.spans[-1].end
        return f"<Trajectory of {counted(len(self.spans), 'span')}, beats {first:g} … {last:g}>"

    @cached_property
    def content(self) -> bytes:
        """The content key of its laws; `TypeError` if another package's law is among them."""
        return content_key(self.spans, self.space, self.blends)

    def part(self, start: float, end: float) -> TrajectoryPart:
        """The spans and blends that decide its states between two beats."""
        ends, starts = self._blended
        low, high = bisect_left(ends, start - TOUCH), bisect_right(starts, end + TOUCH)
        return TrajectoryPart(self.spans[low : high + 1], self.blends[low:high])

    @cached_property
    def _blended(self) -> tuple[list[float], list[float]]:
        """Beats at which the blends end, and at which they begin."""
        return (
            [own.boundary + own.half for own in self.blends],
            [own.boundary - own.half for own in self.blends],
        )

    def at(self, beats: Floats) -> Motion:
        """State at show beats, shape (...), blends included.

        Notes
        -----
        Twice continuously differentiable; exact to rounding.
        """
        beats = np.asarray(beats, dtype=np.float64)
        row = beats.ravel()
        index = np.searchsorted(self._starts, row, side="right")
        parts = np.empty((7, row.size, 3))
        for k in np.unique(index):
            chosen = index == k
            parts[:, chosen] = _columns(self.spans[k].at(row[chosen]))
        for k in self._blends_near(row):
            blend = self.blends[k]
            if not blend.half:
                continue
            chosen = np.abs(row - blend.boundary) < blend.half
            if np.any(chosen):
                parts[:, chosen] = _columns(self._mixed(k, row[chosen]))
        return _motion(parts.reshape(7, *beats.shape, 3))

    @cached_property
    def _starts(self) -> Floats:
        """Beats at which the spans after the first begin."""
        return np.array([span.start for span in self.spans[1:]])

    def _blends_near(self, beats: Floats) -> range:
        """The blends that may reach some beats."""
        if not beats.size:
            return range(0)
        ends, starts = self._blended
        low = bisect_left(ends, float(beats.min()))
        return range(low, bisect_right(starts, float(beats.max())))

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces that cover [start, end], blends included."""
        starts, ends = self._edges
        some = self._pieces[bisect_right(ends, start) : bisect_left(starts, end)]
        return tuple((max(low, start), min(high, end), bounds) for low, high, bounds in some)

    def bound_table(self, start: float, end: float) -> BoundTable:
        """As `pieces`, as arrays."""
        starts, ends, bounds = self._table
        some = slice(
            int(np.searchsorted(ends, start, side="right")), int(np.searchsorted(starts, end))
        )
        return BoundTable(
            np.maximum(starts[some], start), np.minimum(ends[some], end), bounds[:, some]
        )

    @cached_property
    def _table(self) -> BoundTable:
        return table_of(self._pieces)

    @cached_property
    def _edges(self) -> tuple[list[float], list[float]]:
        """Beats at which the pieces begin, and at which they end."""
        return [piece[0] for piece in self._pieces], [piece[1] for piece in self._pieces]

    @cached_property
    def _pieces(self) -> tuple[tuple[float, float, Bounds], ...]:
        """Pieces over all beats: before and after the spans, their first and last laws go on."""
        laws = [*(span.law for span in self.spans), *(blend.bridge for blend in self.blends)]
        know_parts(law for law in laws if isinstance(law, LinkLaw))
        pieces: list[tuple[float, float, Bounds]] = []
        at = self.spans[0].start
        for k, span in enumerate(self.spans):
            last = k == len(self.spans) - 1
            stop = span.end if last else span.end - self.blends[k].half
            if stop > at + 1e-12:
                pieces += _span_pieces(span, at, stop)
                at = stop
            if not last:
                blended = self._blend_pieces(k)
                pieces += blended
                at = blended[-1][1] if blended else at
        return (
            (-np.inf, pieces[0][0], self.spans[0].law.bounds()),
            *pieces,
            (pieces[-1][1], np.inf, self.spans[-1].law.bounds()),
        )

    def _mixed(self, k: int, beats: Floats) -> Motion:
        blend = self.blends[k]
        if blend.bridge is not None:
            return blend.bridge.at(beats - (blend.boundary - blend.half))
        first, last = self.spans[k].at(beats), self.spans[k + 1].at(beats)
        width = 2 * blend.half
        step, rate, curve = smooth_step((beats - blend.boundary + blend.half) / width)
        s, s1, s2 = step[:, None], rate[:, None] / width, curve[:, None] / width**2

        def mixed(a: Floats, b: Floats) -> Floats:
            return np.asarray(a + s * (b - a))

        gap, gap1 = last.hand - first.hand, last.hand_rate - first.hand_rate
        apart, apart1 = last.tether - first.tether, last.tether_rate - first.tether_rate
        jet = (
            mixed(first.tether, last.tether),
            mixed(first.tether_rate, last.tether_rate) + s1 * apart,
            mixed(first.tether_acceleration, last.tether_acceleration)
            + 2 * s1 * apart1
            + s2 * apart,
        )
        tether, tether_rate, tether_acceleration = _normalised(*jet)
        return Motion(
            hand=mixed(first.hand, last.hand),
            hand_rate=mixed(first.hand_rate, last.hand_rate) + s1 * gap,
            hand_acceleration=mixed(first.hand_acceleration, last.hand_acceleration)
            + 2 * s1 * gap1
            + s2 * gap,
            tether=tether,
            tether_rate=tether_rate,
            tether_acceleration=tether_acceleration,
            plane=_plane_between(first.plane, last.plane, tether, step),
        )

    def _blend_pieces(self, k: int) -> list[tuple[float, float, Bounds]]:
        blend = self.blends[k]
        if blend.half == 0.0:
            return []
        start = blend.boundary - blend.half
        if blend.bridge is not None:
            return [(start + low, start + high, b) for low, high, b in blend.bridge.parts]
        before, after = self.spans[k : k + 2]

        def work() -> tuple[object, list[tuple[float, float, Bounds]]]:
            return (before, after, blend), _mix_pieces(before, after, blend)

        # An edit leaves most blends between the same objects; these are held, so that their ids stay their own.
        key = (id(before), id(after), id(blend))
        return recent("pieces of blends", key, work, most=MOST_BLENDS)[1]


def _span_pieces(span: Span, start: float, end: float) -> list[tuple[float, float, Bounds]]:
    if not isinstance(span.law, LinkLaw):
        return [(start, end, span.law.bounds())]
    parts = [(span.origin + low, span.origin + high, b) for low, high, b in span.law.parts]
    return [
        (max(low, start), min(high, end), b) for low, high, b in parts if high > start and low < end
    ]


def _blend_record(one: Blend) -> list[Any]:
    return [one.boundary, one.half, one.bridge and law_record(one.bridge)]


def _restored_blend(record: Sequence[Any]) -> Blend:
    boundary, half, bridge = record
    return Blend(boundary, half, bridge and restored_law(bridge))


def _blends(spans: tuple[Span, ...], space: HandSpace | None) -> tuple[Blend, ...]:
    """All blends, kept as one result; each is one of the recent ones too, for a trajectory that differs elsewhere."""
    pairs = list(pairwise(spans))
    if not pairs:
        return ()

    def restored(record: Sequence[Any]) -> tuple[Blend, ...]:
        found = [_restored_blend(one) for one in record]
        return tuple(_recent_blends(pairs, space, lambda k: found[k]))

    return kept(
        "blends", (spans, space),
        lambda: tuple(_recent_blends(pairs, space, lambda k: _found_blend(pairs[k], space))),
        record=lambda blends: [_blend_record(one) for one in blends], restore=restored,
    )  # fmt: skip


def _recent_blends(
    pairs: Sequence[tuple[Span, Span]], space: HandSpace | None, work: Callable[[int], Blend]
) -> list[Blend]:
    return recent_each(
        "blend", [_blend_key(pair, space) for pair in pairs], lambda some: [work(k) for k in some], most=MOST_BLENDS,
        record=_blend_record, restore=_restored_blend,
    )  # fmt: skip


def _blend_key(pair: tuple[Span, Span], space: HandSpace | None) -> bytes | None:
    """A content key of all that decides a blend; None beside a law of another package."""
    try:
        return content_key(*pair, space)
    except TypeError:
        return None


def _found_blend(pair: tuple[Span, Span], space: HandSpace | None) -> Blend:
    before, after = pair
    boundary = before.end
    first, last = before.state_at(boundary), after.state_at(boundary)
    # A flat prop must not flip over instantly if only the planes differ.
    compared = None if space is not None and space.flat else 6
    if np.max(np.abs(_columns(first)[:compared] - _columns(last)[:compared])) < _SAME:
        return Blend(boundary, 0.0, None)
    half = min(BLEND_HALF_WIDTH, (before.end - before.start) / 2, (after.end - after.start) / 2)
    return Blend(boundary, half, _bridge(before, after, half, space))


@remembering(
    record=lambda bridge: bridge and law_record(bridge),
    restore=lambda record: record and restored_law(record),
)
def _bridge(before: Span, after: Span, half: float, space: HandSpace | None) -> LinkLaw | None:
    """The link across a boundary; None if the two laws can be blended."""
    boundary = before.end
    if "link" not in (before.kind, after.kind) and _can_mix(before, after, boundary, half):
        return None
    return link(before.state_at(boundary - half), after.state_at(boundary + half), 2 * half, space)


def _can_mix(before: Span, after: Span, boundary: float, half: float) -> bool:
    """Whether the tethers are proven to stay within 75° of each other throughout the blend."""
    count = 129
    beats: Floats = boundary + half * np.linspace(-1.0, 1.0, count).astype(np.float64)
    cosine = np.sum(before.at(beats).tether * after.at(beats).tether, axis=-1)
    slope = before.law.bounds().turn_rate + after.law.bounds().turn_rate
    return bool(np.min(cosine) - slope * half / (count - 1) > _WIDEST)


def _mix_pieces(before: Span, after: Span, blend: Blend) -> list[tuple[float, float, Bounds]]:
    """Bounds on parts of a blend, by Taylor's theorem about the middle of each part.

    With r = |m|, d' and d'' follow from m' and m'': |d'| ≤ |m'|/r, across the tether
    |d''| ≤ (|m''| + 2|r'||d'|)/r, along it |d'|²; and |r'| ≤ max|dᵢ'|·|Δ| + σ'·|Δ|²/2 with Δ = d₂ − d₁,
    since dᵢ' is perpendicular to dᵢ and d lies between d₁ and d₂.
    """
    width = 2 * blend.half
    edges = blend.boundary - blend.half + np.linspace(0.0, width, _BOUND_PIECES + 1)
    middle: Floats = (edges[:-1] + edges[1:]).astype(np.float64) / 2
    delta = width / _BOUND_PIECES / 2
    a, b = before.law.bounds(), after.law.bounds()
    first, last = before.at(middle), after.at(middle)
    s1, s2, s3 = STEP_RATE / width, STEP_ACCELERATION / width**2, STEP_JERK / width**3

    def size(vectors: Floats) -> Floats:
        return np.asarray(np.linalg.norm(vectors, axis=-1))

    def local(rate: Floats, most: float, slope: float) -> Floats:
        return np.asarray(np.minimum(most, size(rate) + slope * delta))

    hand1 = np.maximum(
        local(first.hand_rate, a.hand_speed, a.hand_acceleration),
        local(last.hand_rate, b.hand_speed, b.hand_acceleration),
    )
    gap1 = size(last.hand_rate - first.hand_rate) + delta * (
        a.hand_acceleration + b.hand_acceleration
    )
    gap = size(last.hand - first.hand) + delta * gap1
    turn1 = np.maximum(
        local(first.tether_rate, a.turn_rate, a.turn_acceleration),
        local(last.tether_rate, b.turn_rate, b.turn_acceleration),
    )
    apart1 = size(last.tether_rate - first.tether_rate) + delta * (
        a.turn_acceleration + b.turn_acceleration
    )
    apart = np.minimum(size(last.tether - first.tether) + delta * apart1, 2.0)
    least = np.sqrt(np.maximum(1.0 - (apart / 2) ** 2, 0.25))  # |m|; _can_mix proved > cos 37.5°
    m1 = turn1 + s1 * apart
    m2 = max(a.turn_acceleration, b.turn_acceleration) + 2 * s1 * apart1 + s2 * apart
    shrink = turn1 * apart + s1 * apart**2 / 2
    d1 = m1 / least
    d2 = np.hypot((m2 + 2 * shrink * d1) / least, d1**2)
    hand2 = max(a.hand_acceleration, b.hand_acceleration) + 2 * s1 * gap1 + s2 * gap
    gap2 = a.hand_acceleration + b.hand_acceleration
    hand3 = max(a.hand_jerk, b.hand_jerk) + 3 * s1 * gap2 + 3 * s2 * gap1 + s3 * gap
    frame = _frame_rates(blend, (first, last), (a.frame_rate, b.frame_rate), middle, delta, d1, s1)
    speed = hand1 + s1 * gap
    reach = max(a.hand_reach, b.hand_reach)
    return [
        (
            float(edges[k]),
            float(edges[k + 1]),
            Bounds(
                hand_speed=float(speed[k]),
                hand_acceleration=float(hand2[k]),
                turn_rate=float(d1[k]),
                turn_acceleration=float(d2[k]),
                hand_reach=reach,
                hand_jerk=float(hand3[k]),
                frame_rate=float(frame[k]),
            ),
        )
        for k in range(_BOUND_PIECES)
    ]


def _frame_rates(
    blend: Blend,
    states: tuple[Motion, Motion],
    own: tuple[float, float],
    middle: Floats,
    delta: float,
    turn: Floats,
    step_rate: float,
) -> Floats:
    """Bounds on the rotation rate of the frame of tether and plane on each part of a blend.

    With p a law's plane and d the blended tether, p projected across d is p − (p·d)d divided by its length
    c = √(1 − (p·d)²); its rate is at most (2|p'| + 2|d'|)/c, and about d the frame turns at that rate plus
    the rate of the angle from the first plane to the last. The angle is discontinuous at half a turn: a
    part in which it may reach that proves nothing.
    """
    share = smooth_step((middle - blend.boundary + blend.half) / (2 * blend.half))[0][:, None]
    first, last = states
    mixed = first.tether + share * (last.tether - first.tether)
    tether = mixed / np.linalg.norm(mixed, axis=-1, keepdims=True)
    laid, rates = [], []
    for state, rate in zip(states, own, strict=True):
        lean = np.abs(np.sum(state.plane * tether, axis=-1)) + (rate + turn) * delta
        across = np.sqrt(np.maximum(1.0 - lean**2, 0.0))
        flat = state.plane - np.sum(state.plane * tether, axis=-1, keepdims=True) * tether
        laid.append(flat / np.maximum(np.linalg.norm(flat, axis=-1, keepdims=True), 1e-9))
        with np.errstate(divide="ignore"):
            rates.append(np.where(across > 0.1, 2 * (rate + turn) / across, np.inf))
    side = crossed(tether, laid[0])
    angle = np.arctan2(np.sum(side * laid[1], axis=-1), np.sum(laid[0] * laid[1], axis=-1))
    both = rates[0] + rates[1]
    widest = np.abs(angle) + both * delta
    roll = rates[0] + both + np.minimum(widest, np.pi) * step_rate
    return np.asarray(np.where(widest < np.pi, turn + roll, np.inf))


def _normalised(m: Floats, m1: Floats, m2: Floats) -> tuple[Floats, Floats, Floats]:
    size = np.linalg.norm(m, axis=-1, keepdims=True)
    d = m / size
    size1 = np.sum(d * m1, axis=-1, keepdims=True)
    d1 = (m1 - size1 * d) / size
    size2 = np.sum(d1 * m1 + d * m2, axis=-1, keepdims=True)
    return d, d1, (m2 - 2 * size1 * d1 - size2 * d) / size


def _plane_between(first: Floats, last: Floats, tether: Floats, step: Floats) -> Floats:
    """The first plane, projected across the tether and turned about it towards the last one."""

    def across(plane: Floats) -> Floats:
        flat = plane - np.sum(plane * tether, axis=-1, keepdims=True) * tether
        return np.asarray(flat / np.linalg.norm(flat, axis=-1, keepdims=True))

    start, end = across(first), across(last)
    side = crossed(tether, start)
    turn = np.arctan2(np.sum(side * end, axis=-1), np.sum(start * end, axis=-1)) * step
    return np.asarray(np.cos(turn)[:, None] * start + np.sin(turn)[:, None] * side)


def _columns(motion: Motion) -> Floats:
    return np.stack(
        (
            motion.hand,
            motion.hand_rate,
            motion.hand_acceleration,
            motion.tether,
            motion.tether_rate,
            motion.tether_acceleration,
            motion.plane,
        )
    )


def _motion(parts: Floats) -> Motion:
    return Motion(
        hand=parts[0],
        hand_rate=parts[1],
        hand_acceleration=parts[2],
        tether=parts[3],
        tether_rate=parts[4],
        tether_acceleration=parts[5],
        plane=parts[6],
    )
