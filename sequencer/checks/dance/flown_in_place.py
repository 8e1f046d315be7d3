"""What becomes of flown hands in their places in a show: strained by a walk or a change of tempo, or touching.

Patterns and links are flown standing still at a steady tempo; what could be flown otherwise, so that nothing is strained and the
props of both hands keep apart, is flown so already. Here the paths of the whole show are looked at: pull, acceleration and reach with walking, turning and the tempo of the moment, and the two
props of a performer against each other and against the body, proven on the splines that were flown.
"""

from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import islice, pairwise
from math import ceil, floor
from typing import NamedTuple

from sequencer.checks.dance.dancer_case import limits_of
from sequencer.checks.dance.feasible import feasible
from sequencer.checks.dance.flown_findings import FlownPlace, over_limit
from sequencer.checks.fault_kinds import (
    BODY_GAP,
    FLOWN_PULL,
    HAND_ACCELERATION,
    HAND_SPEED,
    PROP_TURNS,
    PROPS_GAP,
    PULL,
    REACH,
    TOO_FAST,
    WICK_SPEED,
)
from sequencer.content_keys import whole_code
from sequencer.findings import Figure, Finding
from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import recent_each
from sequencer.motion.clearance.slices import moving_keys, slice_edges
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import (
    GAP_ERROR,
    body_quantity,
    frame_rates,
    props_quantity,
    shape_of,
)
from sequencer.motion.performers.least_values import Asked, Least, Quantity, least_values
from sequencer.motion.trajectories.flown_path.flown_hand import FlownHand
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.model import Limits
from sequencer.staging.in_flight.flown_show import flown_show, performer_key
from sequencer.staging.in_flight.flown_strains import Strain, missed_limits, rows_of, strains
from sequencer.staging.results import results_together
from sequencer.staging.staged import Staged
from sequencer.units import length_words

_SOURCE = "docs/motion.md, section 7"
_MOST_KEPT = 20_000  # slices
_MOST_FLIGHTS = 256  # performers
_TOUCHING = (
    -2 * GAP_ERROR
)  # [m] of which a search tells values below half: those that count as touches
BOTH = "both"  # of the gaps: that of both props


def strained(show: Staged, told: Sequence[FlownPlace] = ()) -> Iterator[Finding]:
    """Hands that walking, turning or a change of tempo take past their limits, once for each place.

    Parameters
    ----------
    show : Staged
        As drawn.
    told : sequence of FlownPlace, optional
        Where it is told that something cannot be flown. What is strained beside it and follows from it is left out until that is
        mended, but where the drawing is too fast too: of a flown hand the strain says so in its place.
    """
    limits = show.show.limits
    for strain in strains(flown_show(show)):
        if _follows(strain, told) and not _fast_as_drawn(show, strain):
            continue
        course = strain.course
        where = "while walking or turning there" if strain.moving else "at the tempo of the moment"
        dancer = next(each for each in show.dancers if each.name == strain.who)
        missed = missed_limits(strain, limits, dancer.body.arm_length)
        said = _limit_words(strain, missed[0], limits)
        drawn = dancer.trajectories[strain.side]
        middle = (course.start + course.end) / 2
        spans = drawn.spans if isinstance(drawn, Trajectory) else ()
        label = next((each.label for each in spans if each.start <= middle < each.end), "link")
        yield Finding(
            code="strained-as-flown",
            severity="warn",
            who=(strain.who,),
            start=show.seconds(course.start),
            end=show.seconds(course.end),
            position=show.position(round(course.start * 16) / 16),
            message=f"{label}, {strain.side} hand: {where} {said}",
            remedies=(
                *(("give the walk more beats, or let it begin later",) if strain.moving else ()),
                _WAYS_OUT.get(missed[0], "give it more beats, or choose another pattern or link"),
            ),
            source=_SOURCE,
            figures=tuple(
                _limit_figure(strain, each, limits, dancer.body.arm_length) for each in missed
            ),
            hands=(strain.side,),
        )  # fmt: skip


_SLOWER = "give its cycle more beats, or take a shorter tether or a lighter head"
_WAYS_OUT = {
    "least_pull": "choose a pattern that pulls harder, or another link",
    "most_pull": _SLOWER,
    "wick_speed": _SLOWER,
}


def _follows(strain: Strain, told: Sequence[FlownPlace]) -> bool:
    """Whether a strain follows from what is told of its hand beside it, and from nothing else."""
    own = [
        each
        for each in told
        if (each.hand.dancer.name, each.hand.side) == (strain.who, strain.side)
    ]
    return any(
        all(any(each.start < high and low < each.end for each in own) for low, high in some)
        for some in strain.follows
    )


def _fast_as_drawn(show: Staged, strain: Strain) -> bool:
    """Whether the drawing of a strained passage is too fast or too hard, but for its turns, which are told anyway."""
    start, end = (show.seconds(beat) for beat in (strain.course.start, strain.course.end))
    return any(
        each.code == TOO_FAST
        and each.who == (strain.who,)
        and strain.side in each.hands
        and any(figure.quantity != PROP_TURNS for figure in each.figures)
        and each.start is not None
        and each.end is not None
        and each.start < end
        and start < each.end
        for each in feasible(show).findings
    )


def _limit_words(strain: Strain, missed: str, limits: Limits) -> str:
    """What a strained hand would have to do, by a limit that it misses (see `missed_limits`)."""
    pushed, fast = strain.hand_acceleration, strain.hand_speed
    hard, swung = strain.most_pull, strain.wick_speed
    return {
        "least_pull": f"the tether pulls with only {max(strain.least_pull, 0.0):.2f} of the head's weight, and needs {LEAST_PULL:g}",
        "hand_acceleration": "the hand would have to accelerate at "
        f"{over_limit(pushed, limits.hand_acceleration, 0)} m/s², the limit is {limits.hand_acceleration:g}",
        "hand_speed": f"the hand would have to move at {over_limit(fast, limits.hand_speed, 1)} m/s, the limit is {limits.hand_speed:g}",
        "most_pull": f"the prop pulls with {over_limit(hard, limits.pull, 0)} N, the limit is {limits.pull:g}",
        "wick_speed": f"the wick moves at {over_limit(swung, limits.head_speed, 1)} m/s, the limit is {limits.head_speed:g}",
        "spare_reach": f"the hand would be {length_words(strain.spare_reach)} out of reach",
    }[missed]


def _limit_figure(strain: Strain, missed: str, limits: Limits, arm: float) -> Figure:
    """A limit that a strained hand misses, in numbers."""
    quantity, value, limit, unit = {
        "least_pull": (FLOWN_PULL, strain.least_pull, LEAST_PULL, "head weights"),
        "hand_acceleration": (HAND_ACCELERATION, strain.hand_acceleration, limits.hand_acceleration, "m/s²"),
        "hand_speed": (HAND_SPEED, strain.hand_speed, limits.hand_speed, "m/s"),
        "most_pull": (PULL, strain.most_pull, limits.pull, "N"),
        "wick_speed": (WICK_SPEED, strain.wick_speed, limits.head_speed, "m/s"),
        "spare_reach": (REACH, arm - strain.spare_reach, arm, "m"),
    }[missed]  # fmt: skip
    least = missed == "least_pull"
    return Figure(quantity=quantity, value=value, limit=limit, unit=unit, least=least)


class Touch(NamedTuple):
    """A passage of beats in which a performer's props meet, or one goes into the body, on the flown paths."""

    who: str
    hands: tuple[Side, ...]  # both where their props meet
    start: float  # [beats]
    end: float  # [beats]
    worst: Least


def touching(show: Staged) -> Iterator[Finding]:
    """Own props that meet, and props that go into their performer, on the flown paths; proven, beat by beat."""
    bodies = {dancer.name: dancer.body for dancer in show.dancers}
    for touch in touches(show):
        worst = touch.worst
        if touch.hands == SIDES:
            code, said = "props-meet-as-flown", "both hands: as flown the two props meet"
        else:
            label = worst.label
            part = bodies[touch.who].capsules[label].name if label >= 0 else "body"
            said = f"{touch.hands[0]} hand: as flown the prop goes {length_words(worst.value)} into the {part}"
            code = "hits-body-as-flown"
        yield _told(show, touch, code, said)


def first_touch(show: Staged) -> Iterator[Finding]:
    """Where own props first meet, or go into their performer, of each hand and of both: whether, not how deep.

    Parameters
    ----------
    show : Staged
        As drawn. For whoever tries shows one after another: `touching` says more, and takes many times longer where they touch.
    """
    for dancer in flown_show(show).staged.dancers:
        (found,) = _gaps_of(show, [dancer], whether=True)
        for name, gaps in found.gaps.items():
            sides: tuple[Side, ...] = SIDES if name == BOTH else (name,)  # type: ignore[assignment]  # a side's name
            met = (
                Touch(dancer.name, sides, start, end, least)
                for (start, end), least in zip(pairwise(found.beats[name]), gaps, strict=True)
                if least.label >= 0
            )
            for touch in islice(met, 1):
                both = touch.hands == SIDES
                code = "props-meet-as-flown" if both else "hits-body-as-flown"
                yield _told(
                    show, touch, code, "as flown the prop touches the other one, or the body"
                )


def touches(show: Staged) -> Iterator[Touch]:
    """What `touching` tells, in numbers.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    for dancer in flown_show(show).staged.dancers:
        found = own_gaps(show, dancer)
        for name, gaps in found.gaps.items():
            sides: tuple[Side, ...] = SIDES if name == BOTH else (name,)  # type: ignore[assignment]  # a side's name
            for start, end, worst in _runs(found.beats[name], gaps):
                yield Touch(dancer.name, sides, start, end, worst)


class OwnGaps(NamedTuple):
    """The least gap on every stretch between two beats: of each flown prop to the body, and of both props."""

    # By side, over all that this hand flies; of both, by `BOTH`, where both do.
    beats: Mapping[str, Sequence[float]]
    gaps: Mapping[str, Sequence[Least]]

    def of(self, side: Side) -> list[tuple[float, float, Least]]:
        """Of the prop in one hand to the body, with the stretch."""
        ends = pairwise(self.beats[side])
        return [(*each, least) for each, least in zip(ends, self.gaps[side], strict=True)]


def own_gaps(show: Staged, dancer: Dancer) -> OwnGaps:
    """How near the flown props of a performer come to the body and to each other, proven on their splines.

    To the body as far as it is below what the show has noted for a burning wick, where the performer is lit, else below 0.
    Stretches end at whole beats, at the borders of patterns and links, and where the performer is lit or put out.

    Parameters
    ----------
    show : Staged
        As drawn.
    dancer : Dancer
        On flown paths, of this show.
    """
    others = flown_show(show).staged.dancers  # what is not known of them is searched together
    every = {each.name: each for each in (*others, dancer)}
    found = results_together(
        show,
        {name: ("own gaps as flown", name) for name in every},
        lambda names: dict(zip(names, _gaps_of(show, [every[k] for k in names]), strict=True)),
    )
    return found[dancer.name]


def look_at_flight(show: Staged, dancer: Dancer) -> None:
    """Work out what checks ask of one performer's flight, so that it is known by content.

    Parameters
    ----------
    show : Staged
        As drawn.
    dancer : Dancer
        On flown paths, of this show.
    """
    drawn = next(each for each in show.dancers if each.name == dancer.name)
    rows_of(show, drawn, dancer)
    _gaps_of(show, [dancer])


class _Window(NamedTuple):
    """A slice of beats in which a performer's gaps are looked at by themselves."""

    dancer: Dancer
    hands: Mapping[Side, FlownHand]
    beats: Mapping[str, Sequence[float]]  # where stretches end, as in `OwnGaps`
    near: float  # [m]
    key: Hashable | None  # all that decides the gaps in it

    def of(self, name: str) -> Sequence[float]:
        """Where stretches of a hand or of both end in it."""
        return self.beats.get(name, ())


def _gaps_of(show: Staged, dancers: Sequence[Dancer], *, whether: bool = False) -> list[OwnGaps]:
    """The least gap on every stretch of some performers, by hand and of both; if asked for, only whether it is one that counts as a touch."""
    near, drawn = limits_of(show).own_body_near, {each.name: each for each in show.dancers}

    def known_by(dancer: Dancer) -> Hashable | None:
        key = performer_key(show, drawn[dancer.name])
        flown = [(side, hand.slices) for side, hand in _flown_hands(dancer).items()]
        if key is None or any(not slices or None in slices for _, slices in flown):
            return None
        return key, *flown, dancer.lit, near, whether

    return recent_each(
        "own gaps of flights",
        [known_by(each) for each in dancers],
        lambda missing: _new_gaps_of([dancers[k] for k in missing], near, whether=whether),
        most=_MOST_FLIGHTS,
    )


def _new_gaps_of(dancers: Sequence[Dancer], near: float, *, whether: bool) -> list[OwnGaps]:
    """The same, worked out.

    Each slice of beats is kept by all that decides the motion in it; those that are not known are searched together.
    """
    beats = [_stretches_of(each) for each in dancers]
    windows = [
        list(_windows(dancer, own, near)) for dancer, own in zip(dancers, beats, strict=True)
    ]
    each = [window for own in windows for window in own]
    found = iter(
        recent_each(
            "touches as flown" if whether else "gaps as flown",
            [window.key for window in each],
            lambda missing: _gaps_in([each[k] for k in missing], whether=whether),
            most=_MOST_KEPT,
            record=lambda own: {
                name: [[each.value, each.beat, each.label] for each in gaps]
                for name, gaps in own.items()
            },
            restore=lambda record: {
                name: [Least(value=value, beat=beat, label=label) for value, beat, label in gaps]
                for name, gaps in record.items()
            },
        )
    )
    out = []
    for ends, own in zip(beats, windows, strict=True):
        gaps = [next(found) for _ in own]
        out.append(
            OwnGaps(ends, {name: [gap for some in gaps for gap in some[name]] for name in ends})
        )
    return out


def _stretches_of(dancer: Dancer) -> dict[str, list[float]]:
    """Where stretches end, of each flown hand and of both."""
    hands = _flown_hands(dancer)
    edges = [
        *(edge for burn in dancer.lit for edge in burn),
        *(span.start for own in hands.values() for span in own.drawn.spans),
    ]
    beats: dict[str, list[float]] = {side: _beats_of([hand], edges) for side, hand in hands.items()}
    if len(hands) == len(SIDES):
        beats[BOTH] = _beats_of(hands.values(), edges)
    return beats


def _flown_hands(dancer: Dancer) -> dict[Side, FlownHand]:
    return {side: hand for side, hand in dancer.trajectories.items() if isinstance(hand, FlownHand)}


def _windows(
    dancer: Dancer, beats: Mapping[str, Sequence[float]], near: float
) -> Iterator[_Window]:
    """The slices of beats that cover some stretches."""
    known = [own for own in beats.values() if own]
    if not known:
        return
    edges = slice_edges(min(own[0] for own in known), max(own[-1] for own in known))
    for (low, high), moved in zip(
        pairwise(edges.tolist()), moving_keys(dancer, edges), strict=True
    ):
        inside = {name: _within(own, low, high) for name, own in beats.items()}
        limit = near if _lit_between(dancer, low, high) else 0.0
        key = (
            None
            if moved is None
            else (whole_code(), moved, limit, *((name, *some) for name, some in inside.items()))
        )
        yield _Window(dancer, _flown_hands(dancer), inside, limit, key)


def _within(beats: Sequence[float], low: float, high: float) -> list[float]:
    """The beats from one to another, with those two as far as there are beats on either side of them."""
    if not beats or beats[0] >= high or beats[-1] <= low:
        return []
    start, end = max(low, beats[0]), min(high, beats[-1])
    return [start, *(beat for beat in beats if start < beat < end), end]


def _lit_between(dancer: Dancer, low: float, high: float) -> bool:
    return any(start < high and low < end for start, end in dancer.lit)


def _gaps_in(windows: Sequence[_Window], *, whether: bool = False) -> list[dict[str, list[Least]]]:
    """The gaps in some windows, all searched together; if asked for, only whether each is one that counts as a touch."""
    alike: dict[Hashable, Quantity] = {}  # so that those of the same circumstances are one
    wanted: list[tuple[int, str, Asked]] = []
    for k, (dancer, hands, _, noted, _) in enumerate(windows):
        near = _TOUCHING if whether else noted
        for side, hand in hands.items():
            if beats := windows[k].of(side):
                shape = shape_of(dancer.props[side], frame_rates(hand, beats))
                body = alike.setdefault(
                    (id(dancer), side, near, shape),
                    replace(
                        body_quantity(
                            shape=shape, body=dancer.body, carriage=dancer.carriage, enough=near
                        ),
                        whether=whether,
                    ),
                )
                wanted.append((k, side, Asked(body, (hand,), list(pairwise(beats)))))
        if beats := windows[k].of(BOTH):
            both = tuple(hands[side] for side in SIDES)
            shapes = tuple(
                shape_of(dancer.props[side], frame_rates(hands[side], beats)) for side in SIDES
            )
            apart = props_quantity(shapes=shapes, enough=_TOUCHING if whether else 0.0)
            props = alike.setdefault(shapes, replace(apart, whether=whether))
            wanted.append((k, BOTH, Asked(props, both, list(pairwise(beats)))))
    out: list[dict[str, list[Least]]] = [{name: [] for name in each.beats} for each in windows]
    for some in (
        [each for each in wanted if each[1] != BOTH],
        [each for each in wanted if each[1] == BOTH],
    ):
        found = least_values([asked for *_, asked in some]) if some else []
        for (k, name, _), gaps in zip(some, found, strict=True):
            out[k][name] = gaps
    return out


def _beats_of(hands: Iterable[FlownHand], edges: Iterable[float]) -> list[float]:
    """Where stretches end, from the first to the last beat at which all of some hands are known; none if there is no such beat."""
    each = list(hands)
    first, last = max(own.head.start for own in each), min(own.head.end for own in each)
    if first >= last:
        return []
    beats = {*map(float, range(floor(first) + 1, ceil(last))), *edges}
    return [first, *sorted(beat for beat in beats if first < beat < last), last]


def _runs(beats: Sequence[float], gaps: Sequence[Least]) -> Iterator[tuple[float, float, Least]]:
    """Passages of beats with a touch: where each starts and ends, and its worst."""
    run: list[Least] = []
    start = 0.0
    for beat, gap in zip(beats, [*gaps, None], strict=False):
        if gap is not None and gap.value < -GAP_ERROR:
            start = start if run else beat
            run.append(gap)
        elif run:
            yield start, beat, min(run, key=lambda each: each.value)
            run = []


def _told(show: Staged, touch: Touch, code: str, said: str) -> Finding:
    drawn = next(each for each in show.dancers if each.name == touch.who)
    worst = touch.worst
    labels = dict.fromkeys(
        span.label
        for trajectory in drawn.trajectories.values()
        if isinstance(trajectory, Trajectory)
        for span in trajectory.spans
        if span.start <= worst.beat < span.end
    )
    return Finding(
        code=code,
        severity="warn",
        who=(touch.who,),
        start=show.seconds(touch.start),
        end=show.seconds(touch.end),
        position=show.position(round(worst.beat * 16) / 16),
        message=f"{' / '.join(labels)}, {said}",
        remedies=(
            "change the hands' timing or the shift there, or give the link other beats",
            "rehearse it slowly and unlit: where there is room a performer steers clear",
        ),
        source=_SOURCE,
        figures=(
            Figure(
                quantity=PROPS_GAP if touch.hands == SIDES else BODY_GAP,
                value=worst.value,
                limit=0.0,
                unit="m",
                least=True,
            ),
        ),
        hands=touch.hands,
    )
