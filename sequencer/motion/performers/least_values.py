"""The smallest value of a quantity on many stretches of many hands, searched together and kept.

A quantity is a function of the states of one hand or two, with a proven bound on its rate; it is searched by branch
and bound (geometry/certified.py), all hands at once, with their states computed together (courses.py). What is found
on a stretch does not depend on the others, and is kept by what decides it: laws and their places, postures, tempo.
Times are counted from the start of the stretch if that is exact, so that a block danced again, or later than before,
is not searched again.

A block that stays above all that matters throughout one cycle does so however often the cycle is danced: where more
than one cycle is asked for, one is searched first, and what it decides is left out of the search.
Frame: body frame, beats.
Source: S. A. Piyavskii, USSR Comput. Math. Math. Phys. 12, 1972 (from memory), for the search.
"""

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import count, groupby
from math import isfinite
from struct import Struct, pack
from typing import Any, NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.content_keys import content_key
from sequencer.geometry.certified import Sample, search
from sequencer.kept import kept_each, recent_each, shelved_each
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.batch import Needed
from sequencer.motion.performers.courses import Courses, LawPlaces
from sequencer.motion.performers.stretches import Stretches, stretches
from sequencer.motion.performers.whole_cycles import WholeCycle, whole_cycle
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.one_link.link_law import LinkLaw
from sequencer.motion.trajectories.trajectory import Trajectory

_SAMPLES = 16_384  # instants computed at a time, to limit memory
_GRAIN = 2.0**20  # parts of a beat; differences of times on this grid are exact
_FARTHEST = 2.0**13  # [beats]
_MOST_STRETCHES = 50_000  # whose results are kept with the objects that they were found for
_PAIR = Struct("<2d")
_ENOUGH_CYCLES = 1.5  # asked for: from here on one cycle is searched first


@dataclass(frozen=True, slots=True, kw_only=True)
class Least:
    """The smallest value over one stretch, proven to the tolerance of the quantity.

    A stretch that stays above `enough` has that value and no time.
    """

    value: float
    beat: float  # nan if it stays above `enough`
    label: int  # part of the body, or of the two props; -1 if it stays above `enough`


class Content(NamedTuple):
    """What decides a result, its times apart."""

    times: Sequence[float] = ()  # [beats]
    rest: Sequence[Any] = ()
    # [beats] that times are added to, of what is in the rest: they decide nothing more than whether sums are exact
    lengths: Sequence[float] = ()

    @property
    def nothing(self) -> bool:
        """Whether there is nothing that decides it."""
        return not (self.times or self.rest)


def _nothing(_low: float, _high: float) -> Content:
    return Content()


def _always(_low: float, _high: float) -> Hashable | None:
    return ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Quantity:
    """A function of the states of one hand or two, in given circumstances.

    Parameters
    ----------
    kind : str
        Its name, under which results are kept.
    fixed : sequence
        All that it depends on at every beat, besides the states.
    value : callable
        `value(t, *states)` gives value and label at some beats, each of shape (n,), from the states of the hands there,
        of which only what is needed is known.
    slope : callable
        `slope(stretches)` gives a proven bound on its rate on each piece [1/beat].
    needed : Needed
        What is computed of the states.
    error : float
        Tolerance of a smallest value.
    enough : float
        Values above this do not matter.
    places : ndarray, shape (k,) [beats]
        Where the circumstances change.
    whole_beats : bool
        Whether they may change at every whole beat too.
    of_rates : bool
        Whether it depends on how fast a law is danced.
    content : callable
        `content(low, high)` gives all that it depends on between two beats in particular.
    steady : callable
        `steady(low, high)` describes the circumstances if they stay the same between two beats; None if they do not.
    always : callable
        `always(steady, enough)` gives the same quantity in circumstances that last.
    around : sequence of object
        Objects that decide the circumstances at every beat, if they do: then a stretch is known by these, and its content is
        not looked at for that.
    whether : bool
        Whether it is only asked if the value stays above `enough`, not how far it goes below.
    """

    kind: str
    fixed: Sequence[Any]
    value: Callable[..., tuple[Floats, Ints]]
    slope: Callable[[Stretches], Floats]
    needed: Needed
    error: float
    enough: float
    always: Callable[[Any, float], "Quantity"]
    places: Floats = field(default_factory=lambda: np.zeros(0))
    whole_beats: bool = False
    of_rates: bool = False
    content: Callable[[float, float], Content] = _nothing
    steady: Callable[[float, float], Hashable | None] = _always
    around: Sequence[object] = ()
    whether: bool = False


class Asked(NamedTuple):
    """A quantity on stretches of one hand or two."""

    quantity: Quantity
    trajectories: tuple[Any, ...]
    intervals: Sequence[tuple[float, float]]  # [beats]


class _Stretch(NamedTuple):
    """One stretch of one hand or two."""

    quantity: Quantity
    trajectories: tuple[Any, ...]
    low: float  # [beats]
    high: float  # [beats]


class _Found(NamedTuple):
    """What a search found on a stretch that began at `low`."""

    value: float
    beat: float
    label: int
    low: float


def least_values(asked: Iterable[Asked]) -> list[list[Least]]:
    """Smallest values on stretches of many hands.

    Parameters
    ----------
    asked : iterable of Asked
        Quantities of one kind, with the same tolerance.

    Returns
    -------
    found : list of list of Least
        For each of `asked`, that of every interval.
    """
    asked = list(asked)
    return shelved_each(
        "least values of hands",
        lambda: [_whole_content(one) for one in asked],
        lambda missing: _by_stretch([asked[k] for k in missing]),
        len(asked),
        record=lambda own: [[one.value, one.beat, one.label] for one in own],
        restore=lambda record: [
            Least(value=value, beat=beat, label=label) for value, beat, label in record
        ],
    )


def _by_stretch(asked: Sequence[Asked]) -> list[list[Least]]:
    """Results as `least_values`, each stretch known or searched for itself."""
    each = [
        _Stretch(quantity, trajectories, float(low), float(high))
        for quantity, trajectories, intervals in asked
        for low, high in intervals
    ]
    found = iter(_known(each))
    return [[next(found) for _ in intervals] for *_, intervals in asked]


def _known(each: Sequence[_Stretch]) -> list[Least]:
    """Results of stretches, those of the same content searched once."""
    fixed: dict[int, bytes | None] = {}
    for own, *_ in each:
        if id(own) not in fixed:
            fixed[id(own)] = _key(_fixed(own))
    # An edit leaves most stretches as they were, made of the same objects: these are known by them at once.
    same = [_same_objects(one, fixed[id(one.quantity)]) for one in each]

    def work(missing: list[int]) -> list[tuple[object, Least]]:
        held = [same[k].held for k in missing]
        return list(zip(held, _by_content([each[k] for k in missing], fixed), strict=True))

    keys = [own.key for own in same]
    found = recent_each("least values of objects", keys, work, most=_MOST_STRETCHES)
    return [least for _, least in found]


def _by_content(each: Sequence[_Stretch], fixed: Mapping[int, bytes | None]) -> list[Least]:
    """Results of stretches, known by all that decides them, or searched."""
    contents = [_content(one, fixed[id(one.quantity)]) for one in each]
    first: dict[Hashable, int] = {}
    same = [first.setdefault(k if key is None else key, k) for k, key in enumerate(contents)]
    unique = list(first.values())
    known = kept_each(
        "least_values",
        [[object() if contents[k] is None else contents[k]] for k in unique],
        lambda missing: _searched([each[unique[k]] for k in missing]),
        record=list,
        restore=lambda record: _Found(*record),
    )
    where = dict(zip(unique, known, strict=True))
    return [_least(where[k], one.low) for k, one in zip(same, each, strict=True)]


def _least(found: _Found, low: float) -> Least:
    return Least(value=found.value, beat=found.beat + (low - found.low), label=found.label)


# --- content ---


def _key(things: Sequence[Any]) -> bytes | None:
    """A key of some contents; None if another package's law is among them."""
    try:
        return content_key(*things)
    except TypeError:
        return None


def _whole_content(asked: Asked) -> bytes | None:
    """A key of all that decides the results on all stretches of a hand or two."""
    quantity, trajectories, intervals = asked
    if not intervals:
        return None
    ends = [float(end) for interval in intervals for end in interval]
    low, high = min(ends), max(ends)
    around = quantity.content(low, high)
    moved = [each.part(low, high) if isinstance(each, FlownHand) else each for each in trajectories]
    return _key([*_fixed(quantity), around, moved, ends])


def _fixed(quantity: Quantity) -> list[Any]:
    return [quantity.kind, quantity.error, quantity.enough, quantity.whether, quantity.fixed]


class _Objects(NamedTuple):
    """What a stretch shares with one of the same beats and the same objects."""

    key: Hashable | None  # None if there is none
    held: tuple[object, ...] = ()  # the objects, so that their ids stay their own


def _same_objects(stretch: _Stretch, fixed: bytes | None) -> _Objects:
    """A key that a stretch shares with one of the same beats and the same objects."""
    quantity, trajectories, low, high = stretch
    if fixed is None or not all(isinstance(each, Trajectory) for each in trajectories):
        return _Objects(None)
    held: tuple[object, ...] = tuple(quantity.around)
    own: Hashable = None
    if not held:
        around = quantity.content(low, high)
        if not around.nothing:
            # What is in there is small and frozen, and most of it the same objects as before.
            held = tuple(around.rest)
            own = _packed(around.times)
    beats = _PAIR.pack(low, high)
    for each in trajectories:
        spans, blends = each.part(low, high)
        held += (None, *spans, None, *blends)
    return _Objects((fixed, own, beats, *map(id, held)), held)


def _packed(times: Sequence[float]) -> bytes:
    return pack(f"<{len(times)}d", *times)


def _content(stretch: _Stretch, fixed: bytes | None) -> bytes | None:
    """A key of all that decides a stretch, of which that of the quantity is known."""
    quantity, trajectories, low, high = stretch
    parts = [quantity.content(low, high), *(_part(each, low, high) for each in trajectories)]
    times = [low, high, *(time for part in parts for time in part.times)]
    exact = all(map(_exact, (*times, *(length for part in parts for length in part.lengths))))
    # only of laws is it known how they lie in time: all else is known by its own beats
    shifts = exact and all(isinstance(each, Trajectory) for each in trajectories)
    zero = low if shifts else 0.0
    key = _key(
        [fixed, [time - zero for time in times], [(len(own.times), own.rest) for own in parts]]
    )
    return key if fixed is not None else None


def _exact(time: float) -> bool:
    return (time * _GRAIN).is_integer() and abs(time) < _FARTHEST


def _part(trajectory: Any, low: float, high: float) -> Content:
    """What decides the states of a trajectory between two beats."""
    if isinstance(trajectory, FlownHand):
        return Content(rest=[trajectory.part(low, high)])
    if not isinstance(trajectory, Trajectory):
        return Content(rest=[trajectory])
    spans, blends = trajectory.part(low, high)
    live = [
        blend.half > 0.0
        and blend.boundary + blend.half > low
        and blend.boundary - blend.half < high
        for blend in blends
    ]
    beside = [any(pair) for pair in zip([False, *live], [*live, False], strict=True)]
    times: list[float] = []
    rest: list[Any] = []
    laws: list[Law] = []
    for span, blended in zip(spans, beside, strict=True):
        if blended or (span.start < high and span.end > low):
            times += [span.origin, *(min(max(edge, low), high) for edge in (span.start, span.end))]
            laws.append(span.law)
    for blend, own in zip(blends, live, strict=True):
        if own:
            times += [blend.boundary, blend.boundary - blend.half]
            rest.append(blend.bridge)
            laws += [blend.bridge] if blend.bridge is not None else []
    lengths = [float(law.beats) for law in laws if isinstance(law, LinkLaw)]
    return Content(times, [*rest, *laws], lengths)


# --- search ---


class _Pieces(NamedTuple):
    """Pieces of stretches, with all that a search needs; n pieces."""

    group: Ints  # (n,) the stretch of each piece
    start: Floats  # (n,) [beats]
    end: Floats  # (n,) [beats]
    slope: Floats  # (n,) [1/beat]
    places: tuple[LawPlaces, ...]  # of each hand

    def rows(self, rows: Ints) -> "_Pieces":
        """Some of them."""
        return _Pieces(
            group=self.group[rows],
            start=self.start[rows],
            end=self.end[rows],
            slope=self.slope[rows],
            places=tuple(each.rows(rows) for each in self.places),
        )


def _searched(each: Sequence[_Stretch]) -> list[_Found]:
    """Results of stretches, all searched together."""
    courses, pieces = _pieces(each)
    pieces = pieces.rows(np.flatnonzero(~_settled(each, courses, pieces)))
    quantities = list({id(one.quantity): one.quantity for one in each}.values())
    index = {id(quantity): k for k, quantity in enumerate(quantities)}
    owner = np.array([index[id(one.quantity)] for one in each])[pieces.group]
    needed = Needed(*(max(each) for each in zip(*(q.needed for q in quantities), strict=True)))

    def value(rows: Ints, t: Floats) -> tuple[Floats, Ints]:
        states = [courses.parts(own.rows(rows), t, needed) for own in pieces.places]
        values, labels = np.empty(len(t)), np.empty(len(t), dtype=np.int64)
        for k, quantity in enumerate(quantities):
            chosen = np.flatnonzero(owner[rows] == k)
            if len(chosen):
                own = [_motion(parts[:, :, chosen], needed) for parts in states]
                values[chosen], labels[chosen] = quantity.value(t[chosen], *own)
        return values, labels

    error = quantities[0].error
    best = np.array([one.quantity.enough + error for one in each])
    whether = np.array([one.quantity.whether for one in each])

    def evaluate(rows: Ints, t: Floats, half: Floats, enough: Floats) -> Sample:
        # A level may be large: memory is limited here.
        cuts = range(0, len(t), _SAMPLES)
        parts = [value(rows[low : low + _SAMPLES], t[low : low + _SAMPLES]) for low in cuts]
        here, label = (np.concatenate(part) for part in zip(*parts, strict=True))
        slack = pieces.slope[rows] * half
        group = pieces.group[rows]
        below = np.zeros(len(each), dtype=np.bool_)
        below[group[np.minimum(here, enough + error) < best[group]]] = True
        # Of what is known to go below, no more is asked.
        lower = np.where(whether[group] & below[group], np.inf, here - slack)
        return Sample(value=here, lower=lower, upper=here + slack, label=label)

    found = search(
        evaluate, group=pieces.group, start=pieces.start, end=pieces.end,
        required=np.full(len(each), -np.inf),
        best=best, tolerance=error, apart=True,
    )  # fmt: skip
    return [
        _Found(float(found.value[k]), float(found.at[k]), int(found.label[k]), one.low)
        for k, one in enumerate(each)
    ]


def _pieces(each: Sequence[_Stretch]) -> tuple[Courses, _Pieces]:
    """The pieces of stretches, and the trajectories that they belong to."""
    together = [list(own) for _, own in groupby(each, lambda one: list(map(id, one[:2])))]
    parts = [_between(own, some) for some in together for own in some[0].trajectories]
    courses, course = Courses(parts), count()
    found, before = [], 0
    for some in together:
        quantity, trajectories, *_ = some[0]
        cut = stretches(
            trajectories,
            [(one.low, one.high) for one in some],
            whole_beats=quantity.whole_beats,
            at=quantity.places,
        )
        middle = (cut.start + cut.end) / 2
        places = tuple(courses.places(next(course), middle) for _ in trajectories)
        slope = quantity.slope(cut)
        found.append(_Pieces(cut.group + before, cut.start, cut.end, slope, places))
        before += len(some)
    group, start, end, slope = (np.concatenate([own[k] for own in found]) for k in range(4))
    hands = [
        LawPlaces(*(np.concatenate(part) for part in zip(*own, strict=True)))
        for own in zip(*(own.places for own in found), strict=True)
    ]
    return courses, _Pieces(group, start, end, slope, tuple(hands))


def _between(trajectory: Any, some: Sequence[_Stretch]) -> Any:
    """A trajectory as far as some stretches need it."""
    if not isinstance(trajectory, Trajectory):
        return trajectory
    return trajectory.part(min(one.low for one in some), max(one.high for one in some))


def _motion(parts: Floats, needed: Needed) -> Motion:
    """States with what was computed of them; not a number is what was not."""
    none: Floats = np.broadcast_to(np.nan, (parts.shape[2], 3))
    rows = iter([part.T for part in parts])
    hand, hand_rate, push = (next(rows) if k < needed.hand else none for k in range(3))
    tether, rate, turn = (next(rows) if k < needed.tether else none for k in range(3))
    return Motion(
        hand=hand,
        hand_rate=hand_rate,
        hand_acceleration=push,
        tether=tether,
        tether_rate=rate,
        tether_acceleration=turn,
        plane=next(rows) if needed.plane else none,
    )


# --- whole cycles ---


def _settled(each: Sequence[_Stretch], courses: Courses, pieces: _Pieces) -> Bools:
    """Which pieces stay above all that matters, since a whole cycle of their laws does."""
    quantities: dict[Hashable, Quantity] = {}
    cycles: dict[Hashable, tuple[Quantity, WholeCycle, list[Ints]]] = {}
    for rows in _danced(pieces):
        quantity = each[pieces.group[rows[0]]].quantity
        if not isfinite(quantity.enough):
            continue
        steady = quantity.steady(float(pieces.start[rows[0]]), float(pieces.end[rows[-1]]))
        cycle = whole_cycle(
            [courses.law(int(hand.law[rows[0]])) for hand in pieces.places],
            [float(hand.origin[rows[0]]) for hand in pieces.places],
            of_rates=quantity.of_rates,
        )
        if steady is None or cycle is None:
            continue
        around = (id(quantity), steady)
        if around not in quantities:
            always = quantity.always(steady, quantity.enough + quantity.error)
            quantities[around] = replace(always, whether=True)
        cycles.setdefault((around, cycle), (quantities[around], cycle, []))[2].append(rows)
    settled = np.zeros(len(pieces.group), dtype=np.bool_)
    often = []
    for quantity, cycle, own in cycles.values():
        rows = np.concatenate(own)
        length = float(np.sum(pieces.end[rows] - pieces.start[rows]))
        if length >= _ENOUGH_CYCLES * cycle.period:
            often.append((rows, Asked(quantity, cycle.trajectories, [(0.0, cycle.period)])))
    found = _by_stretch([asked for _, asked in often])
    for (rows, _), (least,) in zip(often, found, strict=True):
        settled[rows] = least.label < 0
    return settled


def _danced(pieces: _Pieces) -> list[Ints]:
    """Pieces of one stretch on one span of each hand, in order; those on which laws are mixed are left out."""
    rows = np.flatnonzero(np.all([own.other < 0 for own in pieces.places], axis=0))
    columns = [pieces.group, *(own.law for own in pieces.places)]  # each span has a law of its own
    order = rows[np.lexsort([column[rows] for column in (pieces.start, *reversed(columns))])]
    changes = np.any([np.diff(column[order]) != 0 for column in columns], axis=0)
    return np.split(order, np.flatnonzero(changes) + 1) if len(order) else []
