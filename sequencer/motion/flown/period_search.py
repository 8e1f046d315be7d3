"""The search for a law's period as one hand can fly it: several attempts, the first that holds every limit.

Lobes that are drawn alike are flown alike where the plane of the prop bends; where it does not, only repeats that keep up
are imposed, for there gravity lets each petal sag its own way and a hand that undid that would work three times as much.
A hand that leaves its drawn path needs room: a pattern that would get out of reach or into the body is danced as a whole
up to 25 cm from where it is drawn, as a performer does without a thought.
"""

from dataclasses import replace
from typing import Any, NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.kept import kept
from sequencer.motion.flown.apart import LEAST_BESIDE, gaps_between, prop_capsules
from sequencer.motion.flown.body_space import CLEARANCE, LEFT_BEHIND, BodySpace
from sequencer.motion.flown.contact import Touching
from sequencer.motion.flown.curve_layout import GAUSS_PLACES, CurveLayout
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, closed
from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.optimum import Optimum, Problem, Wanted
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.seeking import held_to_limits, sought
from sequencer.motion.flown.symmetry import Repeat, level_repeat_of, repeat_of
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.transforms import Mirrored, Retimed

KNOTS_A_BEAT = 12  # knots
_PER_LOOP = 12  # knots of a turn of the prop, if it turns more than once a beat
_MOST_LOOPS = 4.0  # a beat; a law without a bound on its rate gets as many knots
_FEWEST = 12  # knots of a part
_SOUND = 1e-5  # residual of a search that has converged
_FAR_OVER = 0.5  # share over a limit after all rounds
_SEED = 20_260
_JIGGLE = 0.1  # [m]
FARTHEST_MOVED = 0.25  # [m] that a pattern may be danced from where it is drawn
_MOVES = 12  # steps of the search for that
_STAY = 0.02  # weight of the move itself, against depths at every instant
_MIRROR = np.array([-1.0, 1.0, 1.0])
_EASED = (2.0, 1.7, 1.4, 1.2, 1.1)  # times the tempo, on the way down to it
_SAME_PERIOD = 1e-9  # [beats]
_APART_LOOKS = 96  # a beat
_FLAT = 1e-6  # [1] of the plane's normals


def flown_period(law: Law, flying: Flying) -> FlownPeriod:
    """A law's period as one hand can fly it.

    Parameters
    ----------
    law : Law
        With a period, in the body frame.
    flying : Flying
        With a passive prop.

    Raises
    ------
    ValueError
        If the law does not repeat, or the prop is rigid.
    """
    if not np.isfinite(law.period):
        raise ValueError("a law that does not repeat has no period to fly")
    if not flying.prop.flexible:
        raise ValueError(f"a {flying.prop.kind} is turned by the hand: it flies as drawn")
    plain = _plain(law, flying)
    record = kept(
        "flown period",
        (plain.law, plain.flying),
        lambda: _record_of(_searched(plain.law, plain.flying)),
        record=lambda own: own,
        restore=lambda own: own,
    )
    return _period_from(law, flying, plain, record)


def period_apart(free: FlownPeriod, other: FlownPeriod) -> FlownPeriod:
    """A period flown clear of that of the other hand; as it was where they keep apart, or where no way was found.

    Parameters
    ----------
    free, other : FlownPeriod
        Of both hands, in the same beats, each flown by itself. If the other does not repeat within this one's period, what
        repeats sooner would have to differ each time round: then it stays as it is.
    """
    times = free.law.period / other.law.period
    if abs(times - round(times)) > _SAME_PERIOD or _apart(free, other) >= LEAST_BESIDE:
        return free
    record = kept(
        "flown period apart",
        (
            free.law,
            free.flying,
            free.head.coefficients,
            other.head.coefficients,
            other.head.start,
            other.flying,
        ),
        lambda: _record_of(_cleared(free, other)),
        record=lambda found: found,
        restore=lambda found: found,
    )
    return _period_from(
        free.law, free.flying, _Plain(free.law, free.flying, 0.0, mirrored=False), record
    )


def _apart(one: FlownPeriod, other: FlownPeriod) -> float:
    """Least distance of two props at the looks [m]."""
    longest = one.law.period
    beats = np.linspace(0.0, longest, int(np.ceil(longest * _APART_LOOKS)) + 1, dtype=np.float64)
    seen, beside = one.flight(beats), other.flight(beats)
    others = prop_capsules(other.flying.prop, beside.head, beside.hand)
    return float(np.min(gaps_between(one.flying.prop, seen.head, seen.hand, others)))


def _cleared(free: FlownPeriod, other: FlownPeriod) -> FlownPeriod:
    """Sought with the other's path in the way; parts that are drawn alike may differ then."""
    law, flying = free.law, free.flying
    repeat = level_repeat_of(law, flying.prop.length)._replace(parts=1)
    grid = _grid_of(law, repeat, flying.beat)
    grid = replace(grid, centre=grid.centre + free.moved)
    wanted, _ = _wanted(law, flying, replace(grid, centre=grid.centre - free.moved), repeat)
    beats = (np.arange(grid.spans, dtype=np.float64)[:, None] + GAUSS_PLACES) * (
        law.period / grid.spans
    )
    beside = other.flight(beats.ravel())
    near = prop_capsules(other.flying.prop, beside.head, beside.hand)
    near[..., 6] += CLEARANCE
    problem = Problem(grid, replace(wanted, mates=near.reshape(*beats.shape, 1, *near.shape[1:])))
    found = held_to_limits(
        problem, problem.drawn(), lambda own: _period_of(law, flying, grid, repeat, own, free.moved)
    )
    return free if found.broken or _apart(found, other) < LEAST_BESIDE else found


class _Plain(NamedTuple):
    """A law from its own start and on the side for which it was written: shifts and mirror images share what is found."""

    law: Law
    flying: Flying
    shift: float  # [beats] into it at which the law as danced starts
    mirrored: bool


def _plain(law: Law, flying: Flying) -> _Plain:
    shift, flipped = 0.0, False
    while True:
        if isinstance(law, Retimed) and law.pace == 1.0:
            shift, law = shift + law.shift, law.law
        elif isinstance(law, Mirrored):
            flipped, law = not flipped, law.law
        else:
            break
    if flipped:
        side: Side = "left" if flying.side == "right" else "right"
        flying = replace(flying, side=side, posture=flying.posture.mirrored())
    return _Plain(law, flying, shift, flipped)


class _Attempt(NamedTuple):
    """One way to search, tried if those before it hold not every limit."""

    finer: int = 1  # times as many knots
    jiggled: bool = False  # start off the drawing
    eased: bool = False  # come from faster tempi, at which the tether is taut as drawn
    clearance: float = CLEARANCE  # [m] of the body


_ATTEMPTS = (_Attempt(), _Attempt(eased=True), _Attempt(jiggled=True), _Attempt(finer=2))


def _searched(law: Law, flying: Flying) -> FlownPeriod:
    """The first attempt that holds every limit, or the one that breaks the fewest and then deviates least."""
    repeat = (level_repeat_of if _flat(law) else repeat_of)(law, flying.prop.length)
    best: tuple[int, float] | None = None
    for attempt in _ATTEMPTS:
        period = _attempted(law, flying, repeat, attempt)
        rank = (len(period.broken), period.head_off[0])
        if best is None or rank < best:
            best, chosen = rank, period
        if not period.broken or _beyond_help(period):
            break
    if not chosen.broken and chosen.lingers:
        farther = _attempted(law, flying, repeat, _Attempt(clearance=LEFT_BEHIND))
        if not (farther.broken or farther.lingers):
            return farther
    return chosen


def _beyond_help(period: FlownPeriod) -> bool:
    """Whether a sound search ended well over a limit: more knots or another start would not mend that."""
    worst = max(period.missed().values(), default=0.0)
    return period.residual < _SOUND and worst > _FAR_OVER


def _attempted(law: Law, flying: Flying, repeat: Repeat, attempt: _Attempt) -> FlownPeriod:
    grid = _grid_of(law, repeat, flying.beat, attempt.finer)
    wanted, space = _wanted(law, flying, grid, repeat, attempt.clearance)
    problem = Problem(grid, wanted)
    start = problem.drawn()
    for faster in _EASED if attempt.eased else ():
        quick = replace(grid, step=grid.step / faster)
        start = Problem(quick, replace(wanted, room=None)).solved(start).unknown
    if attempt.jiggled:
        noise = np.random.default_rng(_SEED).normal(size=start.shape)
        for _ in range(3):
            noise = (np.roll(noise, 1, axis=0) + 2.0 * noise + np.roll(noise, -1, axis=0)) / 4.0
        start = start + _JIGGLE * noise
    moved: Floats = np.zeros(3)
    if wanted.room is not None:
        # without reach and body first: what touches then tells where to dance the pattern
        start = Problem(grid, replace(wanted, room=None)).solved(start).unknown
        moved = _clear(problem.hands(start), space.touching, flying.side)
        grid = replace(grid, centre=grid.centre + moved)
        problem = Problem(grid, wanted)
    return held_to_limits(
        problem, start, lambda found: _period_of(law, flying, grid, repeat, found, moved)
    )


def _clear(seen: tuple[Floats, Floats], touching: Touching, side: Side) -> Floats:
    """How far to move a pattern as a whole, at most `FARTHEST_MOVED`, so that least of it touches, shape (3,) [m].

    Never towards the other hand, whose prop is not known here. Least squares of depths and, lightly, of the move itself, by Gauss and Newton.
    """
    hand, head = seen
    moved: Floats = np.zeros(3)
    for _ in range(_MOVES):
        touch = touching(hand + moved, head + moved)
        if not len(touch.point):
            break
        share = 1.0 / len(hand)
        pulled = share * touch.normal.T @ touch.depth - _STAY * moved
        matrix = share * touch.normal.T @ touch.normal + _STAY * np.eye(3)
        moved = moved + np.linalg.solve(matrix, pulled)
        outward = min if side == "left" else max
        moved[0] = outward(moved[0], 0.0)
        far = float(np.linalg.norm(moved))
        moved *= min(1.0, FARTHEST_MOVED / max(far, FARTHEST_MOVED))
    return moved


def _flat(law: Law) -> bool:
    """Whether the prop stays in one plane."""
    plane = law.at(np.linspace(0.0, law.period, 97, dtype=np.float64)).plane
    return bool(np.max(np.abs(np.abs(plane @ plane[0]) - 1.0)) < _FLAT)


def _grid_of(law: Law, repeat: Repeat, beat: float, finer: int = 1) -> CurveLayout:
    loops = law.bounds().turn_rate / (2.0 * np.pi)
    knots = (
        max(KNOTS_A_BEAT, int(np.ceil(_PER_LOOP * min(loops, _MOST_LOOPS))))
        * law.period
        / repeat.parts
    )
    spans = finer * max(_FEWEST, int(np.ceil(knots - 1e-9)))
    taken = np.arange(spans)[:, None] + np.arange(DEGREE + 1)
    powers = np.array([np.linalg.matrix_power(repeat.turn, k) for k in range(repeat.parts)])
    turned = None if repeat.parts == 1 else powers[(taken // spans) % repeat.parts]
    return CurveLayout(
        step=law.period * beat / repeat.parts / spans, taken=taken % spans, turned=turned, count=spans,
        copies=powers, centre=repeat.centre,
    )  # fmt: skip


def _wanted(
    law: Law, flying: Flying, grid: CurveLayout, repeat: Repeat, clearance: float = CLEARANCE
) -> tuple[Wanted, BodySpace]:
    places: Floats = np.arange(grid.spans, dtype=np.float64)[:, None] + GAUSS_PLACES
    beats: Floats = np.asarray(places * (law.period / repeat.parts / grid.spans), dtype=np.float64)
    drawn = law.at(beats)
    head = drawn.head(flying.prop.length)
    # what is drawn nearer to the body than the clearance may be flown as near
    near = float(np.min(flying.space(0.0).gaps(drawn.hand.reshape(-1, 3), head.reshape(-1, 3))))
    space = flying.space(min(clearance, max(near, 0.0)))
    wanted = Wanted(
        head=head - grid.centre,
        hand=drawn.hand - grid.centre,
        inward=-drawn.tether,
        length=flying.prop.length,
        drag=drag_of(flying.prop),
        limits=sought(flying.limits),
        room=space.room(),
    )
    return wanted, space


def _period_of(
    law: Law, flying: Flying, grid: CurveLayout, repeat: Repeat, found: Optimum, moved: Floats
) -> FlownPeriod:
    parts = np.einsum("nab,kb->nka", grid.copies, found.unknown) + grid.centre
    return FlownPeriod(
        law=law,
        flying=flying,
        head=EvenSpline(
            start=0.0,
            step=grid.step / flying.beat,
            coefficients=closed(parts.reshape(-1, 3)),
            periodic=True,
        ),
        alike=repeat.parts,
        residual=found.residual,
        moved=moved,
    )


def _record_of(period: FlownPeriod) -> list[Any]:
    own = period.head.coefficients[: period.head.spans]
    return [
        own.ravel().tolist(),
        period.alike,
        period.residual,
        period.moved.tolist(),
        list(period.broken),
    ]


def _period_from(law: Law, flying: Flying, plain: _Plain, record: list[Any]) -> FlownPeriod:
    numbers, alike, residual, place, broken = record
    own: Floats = np.array(numbers).reshape(-1, 3)
    moved: Floats = np.array(place)
    if plain.mirrored:
        own, moved = own * _MIRROR, moved * _MIRROR
    head = EvenSpline(
        start=-plain.shift, step=law.period / len(own), coefficients=closed(own), periodic=True
    )
    period = FlownPeriod(
        law=law, flying=flying, head=head, alike=alike, residual=residual, moved=moved
    )
    vars(period)["broken"] = tuple(
        broken
    )  # kept, for it takes longer to work out than to restore all else
    return period
