"""One hand through a whole show as it can be flown: its blocks' flown periods, joined by flown links.

A block with a passive prop is danced as its flown period, whose state at the block's ends is left and reached by flown links:
over the gap where there is one, else over half a beat on either side of the boundary. Where a block or a link cannot be
flown, what is drawn stands in for it, and says so: a drawn link from the flown states at its ends, or the block's law. There
the hand comes back within a beat from where walking, turning and tempo have it at the last flown instant.

What is published are two splines over the whole show at 96 knots a beat: the head's path, through all that, and the hand
that the law of motion gives it in the stage frame, with walking and turning and the tempo of the moment; so that every
distance can be proven on the hulls of their control points. Between knots the hand is off the law of motion by at most
(‖h''‖ + ‖h̃''‖)·δ²/8, under 1 mm for a hand within its limits. How they are made: `flown_making`.
Frame: body frame [m], beats, unless stated.
"""

import hashlib
import struct
from base64 import b64decode, b64encode
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import pairwise
from math import ceil, floor
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.content_keys import content_key
from sequencer.kept import recent
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, pieces, together
from sequencer.motion.flown.tether import held, turning
from sequencer.motion.laws.composed import ROUNDING_UP
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.flown_path.flown_bounds import largest_rates
from sequencer.motion.trajectories.flown_path.hand_slices import (
    MOST_SLICES,
    SAID_KNOTS,
    said_by_piece,
)
from sequencer.motion.trajectories.trajectory import Trajectory

SHOW_KNOTS = 96  # a beat
SLICE_KNOTS = 16 * SHOW_KNOTS  # of a slice that is made and kept by itself
_MOST_BOUNDS = 3_000  # slices whose bounds are remembered, some 20 kilobytes each
_PER_PIECE = 24  # knots of a piece with bounds of its own
_INSIDE = 1e-6  # [knots] within a span: at a knot the tempo may change


class Course(NamedTuple):
    """Where head and hand are over some beats."""

    start: float  # [show beats]
    end: float  # [show beats]
    at: Callable[[Floats], tuple[Floats, Floats]]  # show beats → head, hand (n, 3) [m, body frame]
    flown: bool  # False: what is drawn stands in
    content: bytes | None = None  # of all that decides `at`; None if that is not known


class Torn(NamedTuple):
    """What a hand would have to do on a course that was flown, until it was found that it would jump there (`flown_torn`)."""

    start: float  # of the course [show beats]
    least_pull: float  # in the head's weights
    most_pull: float
    hand_speed: float  # [m/s]
    hand_acceleration: float  # [m/s²]
    head_speed: float  # [m/s]


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownHand:
    """Head and hand over a whole show; before and after it they stay.

    Parameters
    ----------
    head, hand : EvenSpline
        In show beats, on the same knots [m, body frame].
    length : float
        Of the tether [m].
    drawn : Trajectory
        What it is drawn as: its spans, and the planes that their laws name.
    courses : tuple of Course
        What they were made of.
    pull, most_pull : ndarray, shape (knots,) [1]
        On the hand on the spans beside every knot, never less and never more, in the head's weights; inf and 0 where what is
        drawn stands in.
    slices : tuple of bytes or None
        Keys by which the slices are kept that it is made of; None of one that is not kept.
    torn : tuple of Torn
        Courses on which what is drawn stands in since the hand would jump.
    """

    head: EvenSpline
    hand: EvenSpline
    length: float
    drawn: Trajectory
    courses: tuple[Course, ...]
    pull: Floats
    most_pull: Floats
    slices: tuple[bytes | None, ...] = ()
    torn: tuple[Torn, ...] = ()

    def part(self, start: float, end: float) -> bytes:
        """A hash of all that decides its states, but their planes, and their bounds between two beats."""
        step, begin, spans = self.head.step, self.head.start, self.head.spans
        first = int(min(max(floor((start - begin) / step), 0), spans)) - 2 * _PER_PIECE
        last = int(min(max(ceil((end - begin) / step), 0), spans)) + 2 * _PER_PIECE
        found = self._parts.get((first, last))
        if found is None:
            offset = round(begin / step) % SAID_KNOTS  # of its first knot in a piece
            low, high = max(first + offset, 0), last + DEGREE + offset
            own = slice(low // SAID_KNOTS, high // SAID_KNOTS + 1)
            said = struct.pack("<3d2q", begin, step, self.length, first, min(last, spans))
            found = hashlib.blake2b(
                said + b"".join(self._pieces_said[own]), digest_size=20
            ).digest()
            self._parts[first, last] = found
        return found

    @cached_property
    def _parts(self) -> dict[tuple[int, int], bytes]:
        """Parts by their knots: each is asked for by several searches."""
        return {}

    @cached_property
    def _slices_said(self) -> list[list[bytes]]:
        """Hashes of the coefficients of each slice, piece by piece; remembered by its key, since a change leaves most as they were."""
        first = round(self.head.start / self.head.step)
        cuts = [low - first for low, _ in slices_between(first, first + self.head.spans)]
        keys = self.slices if len(self.slices) == len(cuts) else (None,) * len(cuts)
        head, hand = self.head.coefficients, self.hand.coefficients
        return [
            said_by_piece(key, first + low, head[low:high], hand[low:high])
            for key, low, high in zip(keys, cuts, [*cuts[1:], None], strict=True)
        ]

    @cached_property
    def _pieces_said(self) -> list[bytes]:
        """The same of all slices, one piece after the other."""
        return [each for own in self._slices_said for each in own]

    @cached_property
    def content(self) -> bytes:
        """What stands for it in a content key: both splines, what it is drawn as, and which of its courses are flown."""
        courses = [(each.start, each.end, each.flown) for each in self.courses]
        head, hand = self.head, self.hand
        return content_key(
            (head.start, head.step, self.length), head.coefficients, hand.coefficients, self.pull,
            self.drawn, courses,
        )  # fmt: skip

    def least_pull(self, course: Course) -> float:
        """Least pull on a course, in the head's weights; proven."""
        return float(np.min(self.pull[self._knots(course)]))

    def largest_pull(self, course: Course) -> float:
        """Largest pull on a course, in the head's weights; proven."""
        return float(np.max(self.most_pull[self._knots(course)]))

    def hand_acceleration(
        self, course: Course, beats_a_second: Callable[[Floats], Floats]
    ) -> float:
        """Largest acceleration of the hand in the body's frame on a course [m/s²]; proven."""
        inside = self._spans(course)
        return float(np.max(self._rates[1, inside] * self.fastest(beats_a_second, inside) ** 2))

    def largest_rates(
        self, course: Course, beats_a_second: Callable[[Floats], Floats]
    ) -> tuple[float, float, float]:
        """Largest speed [m/s] and acceleration [m/s²] of the hand, and speed of the head [m/s], as `hand_acceleration`; proven."""
        inside = self._spans(course)
        paces = self.fastest(beats_a_second, inside)
        going, bent, swung = self._rates[:, inside]
        most = (np.max(each) for each in (going * paces, bent * paces**2, swung * paces))
        speed, acceleration, head_speed = most
        return float(speed), float(acceleration), float(head_speed)

    def pushes(self, beats_a_second: Callable[[Floats], Floats]) -> Floats:
        """Bound on the acceleration of the hand in the body's frame on every span, shape (spans,) [m/s²].

        Parameters
        ----------
        beats_a_second : callable
            As in `Ground`; it changes at knots only, or slowly.
        """
        return np.asarray(self._rates[1] * self.fastest(beats_a_second) ** 2)

    def fastest(
        self, beats_a_second: Callable[[Floats], Floats], inside: slice = slice(None)
    ) -> Floats:
        """The fastest tempo on every span or on some, shape (spans,) [beats/s], of what is known at its ends and in its middle."""
        spans: Floats = np.arange(self.head.spans, dtype=np.float64)[inside]
        places = np.concatenate([spans + share for share in (_INSIDE, 0.5, 1.0 - _INSIDE)])
        seen = beats_a_second(self.head.start + places * self.head.step).reshape(3, -1)
        return np.asarray(np.max(seen, axis=0))

    @cached_property
    def _rates(self) -> Floats:
        """Bounds on the hand's first and second derivatives and the head's first on every span, shape (3, spans); by slices."""
        found = [
            recent(
                "rates as flown", each.key, partial(largest_rates, *each.splines),
                most=MOST_SLICES,
            )
            for each in self._own_slices
        ]  # fmt: skip
        return np.concatenate(found, axis=1)

    @cached_property
    def _own_slices(self) -> list["_OwnSlice"]:
        """Its slices, each with the coefficients that count there."""
        first, step = round(self.head.start / self.head.step), self.head.step
        out = []
        slices = slices_between(first, first + self.head.spans)
        for said, (low, high) in zip(self._slices_said, slices, strict=True):
            own = slice(low - first, high - first + DEGREE)
            head, hand = self.head.coefficients[own], self.hand.coefficients[own]
            key = content_key(low, step, b"".join(said), head[-DEGREE:], hand[-DEGREE:])
            out.append(_OwnSlice(low, step, head, hand, key))
        return out

    def _spans(self, course: Course) -> slice:
        """The spans that lie on a course."""
        knots = self._knots(course)
        return slice(knots.start, knots.stop - 1)

    def _knots(self, course: Course) -> slice:
        first, last = (
            round((beat - self.head.start) / self.head.step) for beat in (course.start, course.end)
        )
        return slice(max(first, 0), last + 1)

    def at(self, beats: Floats) -> Motion:
        """State at show beats, shape (...); the tether is the direction from hand to head."""
        beats = np.asarray(beats, dtype=np.float64)
        hand, head = together((self.hand, self.head), beats, range(3))
        line = [end - own for end, own in zip(head, hand, strict=True)]
        return held(hand, line, self.drawn.at(beats).plane)

    def line(self, beats: Floats, hand: int, tether: int) -> list[Floats]:
        """Some of its state: the hand's place and derivatives, `hand` in all, then those of the tether; each shape (n, 3).

        Parameters
        ----------
        beats : ndarray, shape (n,) [show beats]
        hand, tether : int
            0 to 3.

        Notes
        -----
        Source: `at`, of which it is a part. Exact to rounding.
        """
        held_by, ends = together((self.hand, self.head), beats, range(max(hand, tether)))
        apart = [end - own for end, own in zip(ends, held_by, strict=True)][:tether]
        out = held_by[:hand]
        if apart:
            size = np.linalg.norm(apart[0], axis=-1, keepdims=True)
            out.append(np.asarray(apart[0] / size))
        if len(apart) > 1:
            still = apart[2] if len(apart) > 2 else np.zeros_like(apart[0])
            out += turning(apart[0], apart[1], still)[: len(apart) - 1]
        return out

    def pieces(self, start: float, end: float) -> tuple[tuple[float, float, Bounds], ...]:
        """Proven bounds on contiguous pieces that cover [start, end]."""
        edges, bounds = self._bounds
        inner = edges[(edges > start) & (edges < end)].tolist()
        cuts = [start, *inner, end]
        middles = (np.array(cuts[:-1]) + np.array(cuts[1:])) / 2.0
        which = np.clip(np.searchsorted(edges, middles, side="right") - 1, 0, len(bounds) - 1)
        return tuple(
            (low, high, bounds[k])
            for low, high, k in zip(cuts[:-1], cuts[1:], which.tolist(), strict=True)
        )

    @cached_property
    def _bounds(self) -> tuple[Floats, tuple[Bounds, ...]]:
        """Edges of pieces and their bounds: whole multiples of a piece from beat 0, so that slices share none."""
        start, step, spans = self.head.start, self.head.step, self.head.spans
        first = round(start / step)
        found = [
            recent(
                "bounds as flown", each.key, partial(_piece_bounds, each),
                most=_MOST_BOUNDS, record=_packed, restore=_unpacked,
            )
            for each in self._own_slices
        ]  # fmt: skip
        cuts = [first + k for k in _piece_starts(first, spans).tolist()]
        edges = start + np.append(np.array(cuts) - first, spans) * step
        return edges, tuple(bounds for each in found for bounds in each)


def _piece_starts(first: int, spans: int) -> Ints:
    """The first span of each piece, of spans from a knot on."""
    inner = np.arange((first // _PER_PIECE + 1) * _PER_PIECE, first + spans, _PER_PIECE) - first
    return np.concatenate([[0], inner]).astype(np.int64)


class _OwnSlice(NamedTuple):
    """Coefficients of both splines that count on some spans."""

    first: int  # knot, from beat 0
    step: float  # [beats]
    head: Floats  # (spans + 5, 3) [m]
    hand: Floats
    key: bytes  # of all that

    @property
    def splines(self) -> tuple[EvenSpline, EvenSpline]:
        """Of head and hand."""
        start = self.first * self.step
        return (
            EvenSpline(start=start, step=self.step, coefficients=self.head),
            EvenSpline(start=start, step=self.step, coefficients=self.hand),
        )


def _piece_bounds(part: _OwnSlice) -> tuple[Bounds, ...]:
    """Bounds of the pieces of some spans.

    Notes
    -----
    With δ from hand to head and m its size, |δ·δ'| on a span is at most what it is in the middle and half a span of its
    rate, |δ'|² + |δ||δ''|. So m is bounded from below, |m'| = |δ·δ'|/m from above, |d'| ≤ |δ'|/m, and of d'' the part
    along the tether is |d'|², that across it at most (|δ''| + 2|m'||d'|)/m.
    """
    first, step = part.first, part.step
    head, own = part.splines
    apart = EvenSpline(
        start=own.start, step=step, coefficients=head.coefficients - own.coefficients
    )
    half = step / 2.0
    middle = pieces(np.array([0.5])), pieces(np.array([0.5]), 1) / step
    here, rate = (
        sum(row[0, j] * apart.coefficients[j : j + apart.spans] for j in range(DEGREE + 1))
        for row in middle
    )
    size, first_rate, second = np.linalg.norm(here, axis=-1), apart.largest(1), apart.largest(2)
    along = np.abs(np.sum(here * rate, axis=-1))
    along = along + half * (first_rate**2 + (size + half * first_rate) * second)
    least = np.sqrt(np.maximum(size**2 - 2.0 * half * along, 0.0))
    with np.errstate(divide="ignore"):
        turn = first_rate / least
        bend = np.hypot((second + 2.0 * along / least * turn) / least, turn**2)
    rates = [own.largest(order) for order in range(1, 4)]
    reach = np.linalg.norm(own.controls(0)[..., :2], axis=-1).max(axis=1)
    starts = _piece_starts(first, own.spans)
    return _bounds_of(
        np.stack(
            [
                np.maximum.reduceat(values, starts) * ROUNDING_UP
                for values in (*rates, reach, turn, bend)
            ]
        )
    )


_BOUNDS = (
    "hand_speed",
    "hand_acceleration",
    "hand_jerk",
    "hand_reach",
    "turn_rate",
    "turn_acceleration",
)  # of a piece, in the order of their rows


def _bounds_of(rows: Floats) -> tuple[Bounds, ...]:
    return tuple(Bounds(**dict(zip(_BOUNDS, own, strict=True))) for own in rows.T.tolist())


def _packed(bounds: tuple[Bounds, ...]) -> str:
    rows = np.array([[getattr(each, name) for each in bounds] for name in _BOUNDS], dtype="<f8")
    return b64encode(rows.tobytes()).decode()


def _unpacked(record: str) -> tuple[Bounds, ...]:
    return _bounds_of(np.frombuffer(b64decode(record), "<f8").reshape(len(_BOUNDS), -1))


def slices_between(first: int, last: int) -> list[tuple[int, int]]:
    """First and last knots of the slices between two knots: whole multiples of their length inside.

    Parameters
    ----------
    first, last : int
        Numbers of knots, from beat 0.
    """
    cuts = range((first // SLICE_KNOTS + 1) * SLICE_KNOTS, last, SLICE_KNOTS)
    return list(pairwise([first, *cuts, last]))
