"""Laws of the same form as rows of a table, so that many are evaluated at once.

A search evaluates each of many laws at a few instants; with one call per law, call overhead exceeds the
arithmetic. Laws of the same form (equal numbers of slides, arms and turns, with phases of the same kind)
differ only in their numbers: these are stacked, and each instant gathers the numbers of its law. Laws of
any other form are evaluated one by one. Only the derivatives asked for are computed. What is computed for an
instant does not depend on the others: all arithmetic is by element. Coordinate axes come first.
Frame: body frame [m], rates per beat.
Source: the same formulas as composed.py, rotations.py, phases.py and links.py; a test checks that they agree.
"""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import NamedTuple, Protocol

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.motion.laws.composed import ComposedLaw
from sequencer.motion.laws.phases import CosineSteps, Phase, Steps, Wave, smooth_step
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.state import Motion
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.performers.turn_tables import (
    Jet,
    carried_rows,
    cross_rows,
    phases_of,
    turns_of,
    vectors_of,
)
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.one_link.hand_paths import BOUND_PIECES, Piecewise
from sequencer.motion.trajectories.one_link.link_law import LinkLaw


class Needed(NamedTuple):
    """What is computed of a state."""

    hand: int  # 1 for its place, 2 for its rate too, 3 for its acceleration too; 0 for nothing
    tether: int  # likewise
    plane: bool = False

    @property
    def rows(self) -> int:
        """How many vectors that is."""
        return self.hand + self.tether + self.plane


class Props(NamedTuple):
    """Hand and tether of n props at an instant each, all (3, n)."""

    hand: Floats  # [m, body frame]
    hand_rate: Floats  # [m/beat]
    tether: Floats  # [1]
    tether_rate: Floats  # [1/beat]


class Evaluated(Protocol):
    """Anything that can be evaluated: a law, or a whole trajectory."""

    def at(self, beats: Floats) -> Motion:
        """State at its beats, shape (...)."""
        ...


class Laws:
    """Laws that are evaluated together.

    Parameters
    ----------
    laws : sequence of laws or trajectories
        Equal laws share a row. Each is stacked when it is first asked for.
    """

    def __init__(self, laws: Sequence[Evaluated]) -> None:
        self._laws = laws
        n = len(laws)
        self._shift, self._pace, self._side = np.zeros(n), np.ones(n), np.ones(n)
        self._table: Ints = np.full(n, -1, dtype=np.int64)
        self._row: Ints = np.full(n, -1, dtype=np.int64)
        self._places: dict[int, tuple[int, int]] = {}  # table and row of each law, by its id
        self._order: dict[Hashable, int] = {}  # table of each form
        self._rows: dict[Hashable, dict[Hashable, int]] = {}  # by form and law
        self._members: dict[Hashable, list[Evaluated]] = {}  # by form
        self._tables: list[_Table] = []

    def _stack(self, which: Ints) -> None:
        """Give each of these laws a row; a law that nobody asks for is never looked at."""
        grown: set[Hashable] = set()
        for k in which.tolist():
            each = unwrapped(self._laws[k])
            self._shift[k], self._pace[k], self._side[k] = each.shift, each.pace, each.side
            if id(each.law) in self._places:
                self._table[k], self._row[k] = self._places[id(each.law)]
                continue
            form = _form(each.law)
            table = self._order.setdefault(form, len(self._order))
            known, members = self._rows.setdefault(form, {}), self._members.setdefault(form, [])
            name: Hashable = each.law if isinstance(each.law, ComposedLaw) else id(each.law)
            if name not in known:
                known[name] = len(known)
                members.append(each.law)
                grown.add(form)
            place = self._places[id(each.law)] = table, known[name]
            self._table[k], self._row[k] = place
        self._tables = [
            _stacked(form, members) if form in grown else self._tables[k]
            for k, (form, members) in enumerate(self._members.items())
        ]

    def at(self, which: Ints, beats: Floats) -> Props:
        """Hand and tether of the chosen laws, at their beats.

        Parameters
        ----------
        which : ndarray, shape (n,) [1]
            Index of a law for each instant.
        beats : ndarray, shape (n,) [beats]

        Returns
        -------
        props : Props

        Notes
        -----
        Source: module docstring. Exact to rounding.
        """
        return Props(*self.parts(which, beats, _VALUE_AND_RATE))

    def parts(self, which: Ints, beats: Floats, needed: Needed) -> Floats:
        """What is needed of the chosen laws, at their beats.

        Parameters
        ----------
        which : ndarray, shape (n,) [1]
            Index of a law for each instant.
        beats : ndarray, shape (n,) [beats]
        needed : Needed

        Returns
        -------
        parts : ndarray, shape (rows, 3, n) [m and 1, and per beat, body frame]
            Hand and its derivatives, tether and its derivatives, plane.

        Notes
        -----
        Source: module docstring. Exact to rounding.
        """
        new = self._table[which] < 0
        if np.any(new):
            self._stack(np.unique(which[new]))
        pace, side = self._pace[which], self._side[which]
        time = self._shift[which] + pace * beats
        parts = np.empty((needed.rows, 3, len(which)))
        tables, rows = self._table[which], self._row[which]
        for k, table in enumerate(self._tables):
            chosen = np.flatnonzero(tables == k)
            if len(chosen) == len(which):
                parts[:] = table.at(rows, time, needed)
            elif len(chosen):
                parts[:, :, chosen] = table.at(rows[chosen], time[chosen], needed)
        vectors = needed.hand + needed.tether
        parts[:vectors, 0] *= side
        parts[vectors:, 1:] *= side  # the plane is an axial vector
        for first, count in ((0, needed.hand), (needed.hand, needed.tether)):
            for order in range(1, count):
                parts[first + order] *= pace**order
        return parts


_VALUE_AND_RATE = Needed(hand=2, tether=2)


class Plain(NamedTuple):
    """A law without its wrappers: its beats are shift + pace·beats; side −1 means mirrored."""

    law: Evaluated
    shift: float
    pace: float
    side: float


def unwrapped(law: Evaluated) -> Plain:
    """A law without what mirrors it or changes its time."""
    shift, pace, side = 0.0, 1.0, 1.0
    while True:
        if isinstance(law, Mirrored):
            side = -side
        elif isinstance(law, Retimed):
            shift, pace = law.shift + law.pace * shift, law.pace * pace
        else:
            return Plain(law, shift, pace, side)
        law = law.law


class _Table(Protocol):
    def at(self, rows: Ints, beats: Floats, needed: Needed) -> Floats:
        """What is needed of the chosen rows, shape (rows, 3, n)."""
        ...


def _form(law: Evaluated) -> Hashable:
    """What laws must have in common to share a table; None for a law that stands alone."""
    if isinstance(law, LinkLaw):
        return "link"
    if not isinstance(law, ComposedLaw):
        return None
    hand = law.hand
    slides = tuple(_phase_form(slide.phase) for slide in hand.slides)
    arms = tuple(_turns_form(arm.turns) for arm in hand.arms)
    form = (slides, arms, _turns_form(law.turns))
    return None if _has_none(form) else form


def _turns_form(turns: Sequence[Turn]) -> tuple[Hashable, ...]:
    return tuple(_phase_form(turn.angle) for turn in turns)


def _phase_form(phase: Phase) -> Hashable:
    if isinstance(phase, Wave):
        return ("wave", len(phase.sways))
    if isinstance(phase, Steps):
        return ("steps", len(phase.knots), phase.repeats)
    if isinstance(phase, CosineSteps):
        return ("cosine", len(phase.knots))
    return None


def _has_none(form: Hashable) -> bool:
    return form is None or (isinstance(form, tuple) and any(_has_none(part) for part in form))


def _stacked(form: Hashable, laws: list[Evaluated]) -> _Table:
    if form is None:
        return _Loose(tuple(laws))
    if form == "link":
        return _Links([law for law in laws if isinstance(law, LinkLaw)])
    return _Composed([law for law in laws if isinstance(law, ComposedLaw)])


@dataclass(frozen=True, slots=True)
class _Loose:
    """Laws of other forms, evaluated one by one."""

    laws: tuple[Evaluated, ...]

    def at(self, rows: Ints, beats: Floats, needed: Needed) -> Floats:
        parts = np.empty((needed.rows, 3, len(rows)))
        for row in np.unique(rows):
            chosen = np.flatnonzero(rows == row)
            law = self.laws[row]
            if isinstance(law, FlownHand) and not needed.plane:
                for k, part in enumerate(law.line(beats[chosen], needed.hand, needed.tether)):
                    parts[k][:, chosen] = part.T
                continue
            seen = law.at(beats[chosen])
            hand = (seen.hand, seen.hand_rate, seen.hand_acceleration)[: needed.hand]
            tether = (seen.tether, seen.tether_rate, seen.tether_acceleration)[: needed.tether]
            for k, part in enumerate((*hand, *tether, *([seen.plane] * needed.plane))):
                parts[k][:, chosen] = part.T
        return parts


class _Composed:
    """Composed laws of the same form."""

    def __init__(self, laws: Sequence[ComposedLaw]) -> None:
        first = laws[0]
        self.centre = vectors_of([law.hand.centre for law in laws])
        self.slides = [
            (
                vectors_of([law.hand.slides[k].vector for law in laws]),
                phases_of([law.hand.slides[k].phase for law in laws]),
            )
            for k in range(len(first.hand.slides))
        ]
        self.arms = [
            (
                vectors_of([law.hand.arms[k].vector for law in laws]),
                turns_of([law.hand.arms[k].turns for law in laws]),
            )
            for k in range(len(first.hand.arms))
        ]
        self.tether = vectors_of([law.tether for law in laws])
        self.plane = vectors_of([law.plane for law in laws])
        self.turns = turns_of([law.turns for law in laws])

    def at(self, rows: Ints, beats: Floats, needed: Needed) -> Floats:
        still: Floats = np.zeros((3, len(rows)))
        hand: Jet = [self.centre.take(rows, axis=-1), still, still][: needed.hand]
        if hand:
            for vectors, phase in self.slides:
                vector = vectors.take(rows, axis=-1)
                orders = phase.at(rows, beats, needed.hand)
                hand = [part + own * vector for part, own in zip(hand, orders, strict=True)]
            for vectors, turns in self.arms:
                arm = [vectors.take(rows, axis=-1), still, still][: needed.hand]
                carried = carried_rows(turns, arm, rows, beats)
                hand = [part + own for part, own in zip(hand, carried, strict=True)]
        tether: Jet = [self.tether.take(rows, axis=-1), still, still][: needed.tether]
        if tether:
            tether = carried_rows(self.turns, tether, rows, beats)
        plane: Jet = [self.plane.take(rows, axis=-1)][: needed.plane]
        if plane:
            plane = carried_rows(self.turns, plane, rows, beats)
        return np.stack((*hand, *tether, *plane))


class _Pieces:
    """Paths of links with any knots."""

    def __init__(self, paths: Sequence[Piecewise]) -> None:
        most = max(len(path.knots) for path in paths)
        self.knots = np.full((len(paths), most), np.inf)
        for k, path in enumerate(paths):
            self.knots[k, : len(path.knots)] = np.array(path.knots) / BOUND_PIECES
        counts = np.array([len(path.knots) - 1 for path in paths])
        self.last = counts - 1
        self.first = np.concatenate([[0], np.cumsum(counts)[:-1]])
        # The pieces along the last axis, as everywhere here: (6, m, pieces).
        whole = np.concatenate([path.pieces[0] for path in paths])
        self.pieces = np.ascontiguousarray(whole.transpose(1, 2, 0))

    def at(self, rows: Ints, x: Floats, count: int) -> Jet:
        """Value and derivatives with respect to the link's fraction, `count` in all, each (m, n)."""
        knots, each = self.knots.take(rows, axis=0), np.arange(len(rows))
        index = np.sum(knots <= x[:, None], axis=1) - 1
        index = np.minimum(np.maximum(index, 0), self.last[rows])  # quicker than `np.clip`
        begin = knots[each, index]
        width = knots[each, index + 1] - begin
        own = self.pieces.take(self.first[rows] + index, axis=-1)
        found = _quintic(own, (x - begin) / width, count)
        return [part / width**order if order else part for order, part in enumerate(found)]


class _Links:
    """Links with any knots."""

    def __init__(self, links: Sequence[LinkLaw]) -> None:
        self.beats = np.array([link.beats for link in links])
        self.frame = np.stack([link.frame for link in links], axis=-1)
        self.tilt = np.array([link.tilt for link in links]).T
        self.hands = _Pieces([link.hand for link in links])
        self.angles = _Pieces([link.angles for link in links])

    def at(self, rows: Ints, beats: Floats, needed: Needed) -> Floats:
        span = self.beats[rows]
        x = beats / span
        parts: Jet = []
        if needed.hand:
            hand = self.hands.at(rows, x, needed.hand)
            parts += [part / span**order if order else part for order, part in enumerate(hand)]
        if needed.tether or needed.plane:
            angles = self.angles.at(rows, x, max(needed.tether, 1))
            parts += self._tethers(rows, x, angles, needed)
        return np.stack(parts)

    def _tethers(self, rows: Ints, x: Floats, angles: Jet, needed: Needed) -> Jet:
        """The tether and its derivatives from those of azimuth and elevation, as `sphere.moved`, and the plane."""
        span, frame = self.beats[rows], self.frame.take(rows, axis=-1)
        alpha, psi = angles[0]
        ca, sa, cp, sp = np.cos(alpha), np.sin(alpha), np.cos(psi), np.sin(psi)
        radial = np.stack((cp * ca, cp * sa, sp))
        local: Jet = [radial]
        up = np.stack((-sp * ca, -sp * sa, cp))
        if needed.tether > 1:
            east = np.stack((-sa, ca, np.zeros_like(ca)))
            alpha1, psi1 = angles[1] / span
            local.append(psi1 * up + cp * alpha1 * east)
        if needed.tether > 2:
            alpha2, psi2 = angles[2] / span**2
            local.append(
                (psi2 + cp * sp * alpha1**2) * up
                + (cp * alpha2 - 2 * sp * psi1 * alpha1) * east
                - (psi1**2 + (cp * alpha1) ** 2) * radial
            )
        found = [_turned(frame, part) for part in local]
        if not needed.plane:
            return found[: needed.tether]
        first, last = self.tilt.take(rows, axis=-1)
        turn = first + (last - first) * smooth_step(x)[0]
        upright = _turned(frame, up)
        plane = np.cos(turn) * upright + np.sin(turn) * cross_rows(found[0], upright)
        return [*found[: needed.tether], plane]


def _turned(frame: Floats, local: Floats) -> Floats:
    """Vectors (3, n) in the axes of frames (3, 3, n), each in its own."""
    return np.asarray(local[0] * frame[0] + local[1] * frame[1] + local[2] * frame[2])


def _quintic(c: Floats, x: Floats, count: int) -> Jet:
    """Value and derivatives of quintics (6, m, n), each at its own argument; `count` in all, each (m, n)."""
    value, slope, half = c[5], np.zeros_like(c[5]), np.zeros_like(c[5])
    for k in range(4, -1, -1):
        if count > 2:
            half = half * x + slope
        if count > 1:
            slope = slope * x + value
        value = value * x + c[k]
    return [value, slope, 2.0 * half][:count]
