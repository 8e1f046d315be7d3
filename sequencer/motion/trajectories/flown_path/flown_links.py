"""Links as one hand can fly them: from the state in which one motion ends to that in which the next begins.

Head and its first four derivatives are given at both ends, so the hand is smooth to its acceleration. In between the head's
path is the one nearest to a drawn link, with a tenth of a pattern's weight, that holds the limits of pull, speed,
acceleration, reach and body. A prop must keep moving to fly, so the bridge itself is short: in a longer link what comes
before is danced on for a while, or what comes after begins early. Bridges are tried by how near they are to flying as
drawn, by every way of the tether round the sphere; the first that flies is taken, else the one that misses least.
Frame: body frame [m].
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial
from math import inf
from typing import Any, NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.content_keys import content_key
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.kept import kept
from sequencer.motion.flown.apart import LEAST_BESIDE, gaps_between, prop_capsules
from sequencer.motion.flown.body_space import CLEARANCE, LEFT_BEHIND
from sequencer.motion.flown.curve_layout import GAUSS_PLACES, CurveLayout, whole
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, at_knot
from sequencer.motion.flown.flown_motion import FlownMotion, Flying
from sequencer.motion.flown.optimum import Optimum, Problem, Wanted
from sequencer.motion.flown.seeking import HOPELESS, held_to_limits, sought
from sequencer.motion.flown.tether import UP, drag_of
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link.every_way import EveryWay, every_way
from sequencer.motion.trajectories.one_link.hand_paths import Piecewise
from sequencer.motion.trajectories.one_link.head_states import HeadState, motions_of
from sequencer.motion.trajectories.one_link.link_law import LinkLaw, law_record, restored_law

LINK_KNOTS = 24  # knots: twice a pattern's, for all of it happens in few beats
_FEWEST = 24
HURRIED = (
    1.5  # times the faster of the speeds at its ends: a head faster than that is whipped round
)
UNHURRIED = 5.0  # [m/s] of a head that nobody calls fast; common practice
LINK_WEIGHT = 0.1  # of the deviation from the drawn link, against a pattern's
_LOOKS = 33  # at a drawn link
_MIDDLES = np.arange(6, _LOOKS - 6, 5)  # looks at which ways are compared
_ALIKE = 0.35  # [1] between unit vectors: tethers nearer than this all the way lead to one optimum
MOST_TRIED, MOST_TRIED_BESIDE = 8, 20  # bridges, and of those that keep clear of the other prop
_MOST_LOOKED_AT, _TOO_UNLIKELY = 4, 0.6  # ways of a quick look, and how unlikely each may be
_QUICKLY_HOPELESS = 0.3  # share of a limit by which a way of a quick look misses it for good
TAKEN_OVER = 0.01  # share of speed and acceleration; half of it is what bounds by control points are above the values
BRIDGE_STEP = 0.5  # [beats] between the beginnings, and the ends, of bridges
SHORTEST_BRIDGE, LONGEST_BRIDGE = (
    1.0,
    2.0,
)  # [beats] of a bridge; in a longer link the rest is danced on


_MOST_FLEW = 500  # links of quick looks
_FLEW: dict[bytes, "FlownLink"] = {}  # of this process

_BESIDE_LOOKS = 96  # a beat, at which the other prop is looked at
_FAR_OFF = 1e3  # unlikeliness of a bridge beside which the props meet anyway
_DEEP = 0.02  # [m] in the other prop, at every instant, is as unlikely as a pull that is missing


StateAt = Callable[
    [float], HeadState
]  # beats after, or before if negative, the border of a motion that goes on


PlacesAt = Callable[
    [Floats], tuple[Floats, Floats]
]  # beats (n,) → head, hand (n, 3) [m, body frame]


class Beside(NamedTuple):
    """The same performer's other prop during a link, in beats of the link."""

    prop: Prop
    at: PlacesAt
    before: PlacesAt  # of the own prop, if what comes before the link is danced on
    after: PlacesAt  # and if what comes after it has begun

    def capsules(self, beats: Floats) -> Floats:
        """Its tether and its head at some beats, shape (n, 2, 7): ends and radius [m, body frame]."""
        return prop_capsules(self.prop, *self.at(beats))


@dataclass(frozen=True, kw_only=True, eq=False)
class FlownLink(FlownMotion):
    """A link as flown: what comes before goes on a little, what comes after begins a little early, the rest is a bridge.

    Parameters
    ----------
    flying : Flying
    head : EvenSpline
        The head's path on the bridge [m, body frame], in beats of the link.
    beats : float
        Length of the link [beats].
    drawn : LinkLaw
        What the bridge was drawn as, in its own beats.
    residual : float
        First-order residual of the optimum: the share of the value that a further step promises.
    beside_gap : float
        Least distance of the prop from the other hand's in the whole link [m], at the looks; inf if that was not looked at.
    """

    beats: float
    drawn: LinkLaw
    residual: float
    beside_gap: float = inf

    @cached_property
    def broken(self) -> tuple[str, ...]:
        """Names of the limits that are not held: pull, speed, acceleration, reach and the other prop; empty if it flies.

        A pattern may be flown at its limits to the last digit; what takes over from it may pass them by `TAKEN_OVER`.
        """
        missed = self.missed()
        kept_by_little = {
            name for name, share in missed.items() if name != "pull" and share <= TAKEN_OVER
        }
        near = () if self.beside_gap >= LEAST_BESIDE else ("other prop",)
        return (*(each for each in self.overstepped() if each not in kept_by_little), *near)


_States = Mapping[float, HeadState]  # by beats of the link


class _Bridge(NamedTuple):
    """A bridge to try."""

    unlikely: float
    start: float  # [beats] of the link
    end: float
    drawn: Callable[[], LinkLaw]
    first: HeadState
    last: HeadState
    middle: Floats  # (places, 3) [1] tether on the way


def flown_link(
    before: StateAt,
    after: StateAt,
    beats: float,
    flying: Flying,
    beside: Beside | None = None,
) -> FlownLink:
    """The link of some beats from one motion to another.

    Parameters
    ----------
    before, after : callable
        The state some beats after the end of the one, and some beats (negative) before the start of the other.
    beats : float
    flying : Flying
    beside : Beside, optional
        The other hand's prop, which is kept clear of; not looked at if not given.

    Raises
    ------
    ValueError
        If `beats` is not positive, or the prop is rigid.
    """
    if not flying.prop.flexible:
        raise ValueError(f"a {flying.prop.kind} is turned by the hand: it flies as drawn")
    if not (beats > 0 and np.isfinite(beats)):
        raise ValueError(f"a link's beats must be positive, got {beats!r}")
    if flying.side == "left":  # mirror images share what is found
        own = replace(flying, side="right", posture=flying.posture.mirrored())
        near = None if beside is None else _mirrored_beside(beside)
        found = flown_link(_mirrored_state(before), _mirrored_state(after), beats, own, near)
        return _mirrored_link(found, flying)
    firsts, lasts = _ends_of(before, after, beats)
    other = None if beside is None else _other(beside, beats, flying)
    seen = [] if other is None else [other.capsules, other.going_on, other.beginning]
    return kept(
        "flown link",
        ([*firsts.values()], [*lasts.values()], beats, flying, *seen),
        lambda: _searched(firsts, lasts, beats, flying, other),
        record=_record_of,
        restore=lambda record: _link_from(record, beats, flying),
    )


class GripLimits(NamedTuple):
    """What a flown prop may ask of the grip and the eye, which no flight is sought for."""

    pull: float = inf  # [N]
    head_speed: float = inf  # [m/s]

    def held_by(self, link: FlownLink) -> bool:
        """Whether a link asks for no more."""
        return link.pull[1] <= self.pull and link.head_speed <= self.head_speed


def surely_flies(
    before: StateAt,
    after: StateAt,
    beats: float,
    flying: Flying,
    grip: GripLimits = GripLimits(),  # noqa: B008  # immutable
) -> bool:
    """Whether a link flies by one of its likeliest ways; a quick look, and no says only that none of these does.

    Parameters
    ----------
    before, after : callable
    beats : float
    flying : Flying
        As for `flown_link`.
    grip : GripLimits, optional
        What the link may ask for besides; what asks for more would be told as strained.

    Notes
    -----
    Source: the same search as `flown_link`, ended at the first way that holds every limit. Of 344 links of drafted routines
    nearly all that fly do so by one of these ways.
    """
    if flying.side == "left":
        own = replace(flying, side="right", posture=flying.posture.mirrored())
        return surely_flies(_mirrored_state(before), _mirrored_state(after), beats, own, grip)
    firsts, lasts = _ends_of(before, after, beats)
    return kept(
        "whether a link flies",
        ([*firsts.values()], [*lasts.values()], beats, flying, grip),
        lambda: any(
            not link.broken and grip.held_by(link)
            for bridge in _unlike(_bridges(firsts, lasts, beats, flying, None), _MOST_LOOKED_AT)
            if bridge.unlikely <= _TOO_UNLIKELY
            for link in (_quickly_flown(bridge, beats, flying),)
        ),
        record=bool,
        restore=bool,
    )


def _ends_of(before: StateAt, after: StateAt, beats: float) -> tuple[_States, _States]:
    """The states in which a bridge may begin and end, by beats of the link."""
    starts = np.arange(0.0, max(beats - SHORTEST_BRIDGE, 0.0) + 1e-9, BRIDGE_STEP).tolist()
    ends = [
        end
        for end in np.arange(beats, 0.0, -BRIDGE_STEP).tolist()
        if any(_fits(start, end, beats) for start in starts)
    ]
    return (
        {start: _unsigned(before(start)) for start in starts},
        {end: _unsigned(after(end - beats)) for end in ends},
    )


def _unsigned(state: HeadState) -> HeadState:
    """The same with no zero below zero: in a mirror image it would be known by another key."""
    return HeadState(state.path + 0.0, state.plane + 0.0)


_POLAR = np.array([-1.0, 1.0, 1.0])  # a place or a direction, mirrored in x = 0


def _mirrored_state(state: StateAt) -> StateAt:
    """The state mirrored in x = 0; its plane is an axial vector."""

    def mirrored(beat: float) -> HeadState:
        seen = state(beat)
        return HeadState(seen.path * _POLAR, seen.plane * -_POLAR)

    return mirrored


def _mirrored_beside(beside: Beside) -> Beside:
    def mirrored(places: PlacesAt) -> PlacesAt:
        def at(beats: Floats) -> tuple[Floats, Floats]:
            head, hand = places(beats)
            return head * _POLAR, hand * _POLAR

        return at

    return Beside(beside.prop, mirrored(beside.at), mirrored(beside.before), mirrored(beside.after))


def _mirrored_link(link: FlownLink, flying: Flying) -> FlownLink:
    """A link mirrored in x = 0, for who flies the mirror image; it breaks the same limits."""
    head, drawn = link.head, link.drawn
    hand = Piecewise(drawn.hand.knots, drawn.hand.pieces * _POLAR)
    # a mirrored frame leads the tether where it belongs; the plane about it tilts the other way, and points to the other side
    first, last = drawn.tilt
    out = replace(
        link,
        flying=flying,
        head=replace(head, coefficients=head.coefficients * _POLAR),
        drawn=replace(
            drawn, hand=hand, frame=drawn.frame * _POLAR, tilt=(np.pi - first, np.pi - last)
        ),
    )
    vars(out)["broken"] = link.broken
    return out


class _Other(NamedTuple):
    """The other prop through a whole link, at the looks."""

    beside: Beside
    beats: Floats  # (n,) of the link
    capsules: Floats  # (n, 2, 7)
    going_on: Floats  # (n,) [m] from what comes before, if it is danced on
    beginning: Floats  # (n,) [m] from what comes after, if it has begun

    def gap(self, start: float, end: float) -> float:
        """Least distance outside a bridge from one beat to another [m]."""
        early = self.going_on[self.beats <= start]
        late = self.beginning[self.beats >= end]
        return float(min(np.min(early, initial=inf), np.min(late, initial=inf)))


def _other(beside: Beside, beats: float, flying: Flying) -> _Other:
    looks = np.linspace(0.0, beats, int(np.ceil(beats * _BESIDE_LOOKS)) + 1, dtype=np.float64)
    capsules = beside.capsules(looks)
    going_on, beginning = (
        gaps_between(flying.prop, *own(looks), capsules) for own in (beside.before, beside.after)
    )
    return _Other(beside, looks, capsules, going_on, beginning)


def _fits(start: float, end: float, beats: float) -> bool:
    """Whether a bridge from one beat of a link to another is of a length that is tried."""
    length = end - start
    return length > 0 and (
        SHORTEST_BRIDGE - 1e-9 <= length <= LONGEST_BRIDGE + 1e-9
        or (length < SHORTEST_BRIDGE and length >= beats)
    )


def _searched(
    firsts: _States, lasts: _States, beats: float, flying: Flying, other: _Other | None
) -> FlownLink:
    """The likeliest bridge that flies, or else the one that misses least."""
    most = MOST_TRIED if other is None else MOST_TRIED_BESIDE
    best: FlownLink | None = None
    way: _Bridge | None = None
    rank: tuple[int, float, float] = (0, inf, inf)
    for bridge in _unlike(_bridges(firsts, lasts, beats, flying, other), most):
        link = None if other is not None else _FLEW.get(_content(bridge, beats, flying))
        link = link or _flown(bridge, beats, flying, other)
        own = _rank(link, bridge)
        if best is None or own < rank:
            best, way, rank = link, bridge, own
        if rank == (0, 0.0, 0.0):
            break
    if best is None or way is None:
        raise ValueError("no way of the tether was found")
    if not best.broken and best.lingers:
        farther = _flown(way, beats, flying, other, clearance=LEFT_BEHIND)
        if not farther.lingers and _rank(farther, way) <= rank:
            return farther
    return best


def _quickly_flown(bridge: _Bridge, beats: float, flying: Flying) -> FlownLink:
    """A bridge as flown, left early where it is hopeless; one that flies is remembered, as a longer look would find the same."""
    link = _flown(bridge, beats, flying, None, hopeless=_QUICKLY_HOPELESS)
    if not link.broken:
        _FLEW[_content(bridge, beats, flying)] = link
        while len(_FLEW) > _MOST_FLEW:
            _FLEW.pop(next(iter(_FLEW)), None)
    return link


def _content(bridge: _Bridge, beats: float, flying: Flying) -> bytes:
    """All that decides how a bridge is flown beside nothing."""
    return content_key(
        bridge.start, bridge.end, bridge.first, bridge.last, bridge.middle, beats, flying
    )


def _unlike(bridges: Iterable[_Bridge], most: int) -> list[_Bridge]:
    """The likeliest bridges, the likeliest first; of those whose ways are nearly the same, one."""
    out: list[_Bridge] = []
    for bridge in sorted(bridges, key=lambda each: each.unlikely):
        same = (each for each in out if (each.start, each.end) == (bridge.start, bridge.end))
        if not any(np.max(np.abs(each.middle - bridge.middle)) < _ALIKE for each in same):
            out.append(bridge)
            if len(out) == most:
                break
    return out


def _bridges(
    firsts: _States, lasts: _States, beats: float, flying: Flying, other: _Other | None
) -> Iterator[_Bridge]:
    """Every bridge that a link may hold, by where it begins and ends and the way of its tether."""
    shares: Floats = np.linspace(0.0, 1.0, _LOOKS, dtype=np.float64)
    spans = [(start, end) for start in firsts for end in lasts if _fits(start, end, beats)]
    if not spans:
        return
    starts, ends = (
        motions_of([states[span[k]] for span in spans], flying)
        for k, states in enumerate((firsts, lasts))
    )
    every = every_way(starts, ends, np.array([end - start for start, end in spans]), shares)
    for (start, end), ways, own in zip(spans, every, _unlikely(every, flying), strict=True):
        unlikely = own
        if other is not None:
            unlikely = unlikely + _near(ways, start + shares * (end - start), flying, other.beside)
            unlikely = unlikely + (_FAR_OFF if other.gap(start, end) < LEAST_BESIDE else 0.0)
        for k, each in enumerate(unlikely.tolist()):
            middle = ways.tether[k, _MIDDLES]
            yield _Bridge(each, start, end, partial(ways.law, k), firsts[start], lasts[end], middle)


def _record_of(link: FlownLink) -> list[Any]:
    head, drawn = link.head, law_record(link.drawn)
    return [
        head.start,
        head.step,
        head.coefficients.tolist(),
        drawn,
        link.residual,
        link.beside_gap,
        list(link.broken),
    ]


def _link_from(record: Sequence[Any], beats: float, flying: Flying) -> FlownLink:
    start, step, coefficients, drawn, residual, gap, broken = record
    link = FlownLink(
        flying=flying,
        head=EvenSpline(start=start, step=step, coefficients=np.array(coefficients)),
        beats=beats,
        drawn=restored_law(drawn),
        residual=residual,
        beside_gap=gap,
    )
    vars(link)["broken"] = tuple(
        broken
    )  # kept, for it takes longer to work out than to restore all else
    return link


def _rank(link: FlownLink, bridge: _Bridge) -> tuple[int, float, float]:
    calm = max(link.head_speed - _hurry(bridge, link.flying), 0.0)
    return len(link.broken), sum(link.missed().values()), calm


def _hurry(bridge: _Bridge, flying: Flying) -> float:
    """A head's speed that a link should not pass [m/s]: a wick that is whipped round flies far if it comes off."""
    ends = [
        float(np.linalg.norm(each.path[1])) / flying.beat for each in (bridge.first, bridge.last)
    ]
    return HURRIED * max(*ends, UNHURRIED)


def _unlikely(every: Sequence[EveryWay], flying: Flying) -> list[Floats]:
    """How far each way of some drawn links is from one that flies, shape (ways,): pull that is missing, hand that is hurried or out of reach."""
    rate, length = 1.0 / flying.beat, flying.prop.length
    counts = [len(ways.tether) for ways in every]
    owner = np.repeat(np.arange(len(every)), counts)
    hand, hand_rate, hand_acceleration = np.stack([ways.hand for ways in every], axis=1)
    tether, tether_rate, bent = (
        np.concatenate(column)
        for column in zip(*((ways.tether, ways.tether_rate, ways.tether_acceleration) for ways in every), strict=True)
    )  # fmt: skip
    felt = (hand_acceleration[owner] + length * bent) * rate**2 + UP
    pull = -np.sum(tether * felt, axis=-1) / STANDARD_GRAVITY
    across = np.linalg.norm(felt + pull[..., None] * STANDARD_GRAVITY * tether, axis=-1)
    lack = np.maximum(1.0 - pull, 0.0)
    hurry = np.linalg.norm(hand_acceleration, axis=-1) * rate**2 / flying.limits.hand_acceleration
    off = across / np.maximum(np.linalg.norm(felt, axis=-1), 1.0)
    speed = np.linalg.norm(hand_rate[owner] + length * tether_rate, axis=-1) * rate
    calm = HURRIED * np.maximum(np.maximum(speed[:, 0], speed[:, -1]), UNHURRIED)
    whipped = np.maximum(speed / calm[:, None] - 1.0, 0.0)
    spare = flying.space(CLEARANCE).spare_reach(hand.reshape(-1, 3)).reshape(hand.shape[:2])
    short = np.maximum(-spare, 0.0) / 0.1
    squares = lack**2 + (hurry**2)[owner] + off**2 + (short**2)[owner] + whipped**2
    return np.split(np.mean(squares, axis=-1), np.cumsum(counts)[:-1])


def _near(ways: EveryWay, beats: Floats, flying: Flying, beside: Beside) -> Floats:
    """How deep each way of a drawn link is in the other prop, shape (ways,), in the unit of `_unlikely`."""
    count = len(ways.tether)
    others = np.tile(beside.capsules(beats), (count, 1, 1))
    hand = np.tile(ways.hand[0], (count, 1))
    head = hand + flying.prop.length * ways.tether.reshape(-1, 3)
    gaps = gaps_between(flying.prop, head, hand, others).reshape(count, -1)
    return np.asarray(np.mean((np.maximum(CLEARANCE - gaps, 0.0) / _DEEP) ** 2, axis=-1))


def _flown(
    bridge: _Bridge,
    beats: float,
    flying: Flying,
    other: _Other | None,
    *,
    hopeless: float = HOPELESS,
    clearance: float = CLEARANCE,
) -> FlownLink:
    grid = _grid(bridge.end - bridge.start, flying.beat)
    step = (bridge.end - bridge.start) / grid.spans
    places = (np.arange(grid.spans, dtype=np.float64)[:, None] + GAUSS_PLACES) * step
    law = bridge.drawn()
    drawn = law.at(places)
    length = flying.prop.length
    problem = Problem(
        grid,
        Wanted(
            head=drawn.head(length),
            hand=drawn.hand,
            inward=-drawn.tether,
            length=length,
            drag=drag_of(flying.prop),
            limits=sought(flying.limits),
            head_weight=LINK_WEIGHT,
            hand_weight=LINK_WEIGHT,
            room=flying.space(clearance).room(),
            mates=None if other is None else _mates(bridge.start + places, other.beside),
        ),
    )
    start = problem.drawn()
    start[:DEGREE] = at_knot(bridge.first.path, step)
    start[-DEGREE:] = at_knot(bridge.last.path, step)

    def motion(found: Optimum) -> FlownLink:
        link = FlownLink(
            flying=flying,
            head=EvenSpline(start=bridge.start, step=step, coefficients=found.unknown),
            beats=beats,
            drawn=law,
            residual=found.residual,
        )
        return link if other is None else replace(link, beside_gap=_gap(link, other))

    return held_to_limits(problem, start, motion, hopeless=hopeless)


def _mates(beats: Floats, beside: Beside) -> Floats:
    """The other prop at Gauss points, clearance included, as the problem takes it."""
    out = beside.capsules(beats.ravel())
    out[..., 6] += CLEARANCE
    return out.reshape(*beats.shape, 1, *out.shape[1:])


def _gap(link: FlownLink, other: _Other) -> float:
    """Least distance of a hand's prop from the other at the looks of the whole link [m]."""
    start, end = link.head.start, link.head.end
    within = (other.beats > start) & (other.beats < end)
    seen = link.flight(other.beats[within])
    gaps = gaps_between(link.flying.prop, seen.head, seen.hand, other.capsules[within])
    return min(float(np.min(gaps, initial=inf)), other.gap(start, end))


def _grid(beats: float, beat: float) -> CurveLayout:
    spans = max(_FEWEST, int(np.ceil(LINK_KNOTS * beats - 1e-9)))
    grid = whole(spans, beats * beat / spans)
    free = np.ones(grid.count, dtype=np.bool_)
    free[:DEGREE] = free[-DEGREE:] = False
    return replace(grid, free=free)
