"""What becomes of flown hands in their places in a show: strained by a walk or a change of tempo, or touching.

Patterns and links are flown standing still at a steady tempo; what could be flown otherwise, so that nothing is strained and the
props of both hands keep apart, is flown so already. Here the paths of the whole show are looked at: pull, acceleration and reach with walking, turning and the tempo of the moment, and the two
props of a performer against each other and against the body, proven on the splines that were flown.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from math import ceil, floor
from typing import NamedTuple

from sequencer.checks.dance.dancer_case import limits_of
from sequencer.checks.fault_kinds import (
    BODY_GAP,
    FLOWN_PULL,
    HAND_ACCELERATION,
    HAND_SPEED,
    PROPS_GAP,
    PULL,
    REACH,
    WICK_SPEED,
)
from sequencer.findings import Figure, Finding
from sequencer.geometry.bodies import SIDES, Side
from sequencer.kept import recent_each, whole_code
from sequencer.motion.clearance.slices import moving_keys, slice_edges
from sequencer.motion.flown.flown_motion import LEAST_PULL
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.feasibility import GAP_ERROR, body_gap, props_gap
from sequencer.motion.performers.least_values import Least
from sequencer.motion.trajectories.flown_hand import FlownHand
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.show.model import Limits
from sequencer.staging.flown_show import flown_show
from sequencer.staging.flown_strains import Strain, strains
from sequencer.staging.results import result_of
from sequencer.staging.staged import Staged
from sequencer.units import length_words

_SOURCE = "docs/motion.md, section 7"
_MOST_KEPT = 20_000  # slices
BOTH = "both"  # of the gaps: that of both props


def strained(show: Staged, *, followers: bool = False) -> Iterator[Finding]:
    """Hands that walking, turning or a change of tempo take past their limits, once for each place.

    Parameters
    ----------
    show : Staged
        As drawn.
    followers : bool
        Whether also what follows from something beside it that could not be flown, which is told by itself.
    """
    limits = show.show.limits
    for strain in strains(flown_show(show)):
        if strain.follows and not followers:
            continue
        course = strain.course
        where = "while walking or turning there" if strain.moving else "at the tempo of the moment"
        said = _strain_words(strain, limits)
        dancer = next(each for each in show.dancers if each.name == strain.who)
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
                "choose a pattern that pulls harder, or another link",
            ),
            source=_SOURCE,
            figures=tuple(_strain_figures(strain, limits, dancer.body.arm_length)),
            hands=(strain.side,),
        )  # fmt: skip


def _strain_words(strain: Strain, limits: Limits) -> str:
    """What a strained hand would have to do: the first limit that it misses, for of a slack tether nothing else means anything."""
    if strain.least_pull < LEAST_PULL:
        return f"the tether pulls with only {max(strain.least_pull, 0.0):.2f} of the head's weight, and needs {LEAST_PULL:g}"
    if strain.hand_acceleration > limits.hand_acceleration:
        return f"the hand would have to accelerate at {strain.hand_acceleration:.0f} m/s², the limit is {limits.hand_acceleration:g}"
    if strain.hand_speed > limits.hand_speed:
        return f"the hand would have to move at {strain.hand_speed:.1f} m/s, the limit is {limits.hand_speed:g}"
    if strain.most_pull > limits.pull:
        return f"the prop pulls with {strain.most_pull:.0f} N, the limit is {limits.pull:g}"
    if strain.wick_speed > limits.head_speed:
        return f"the wick moves at {strain.wick_speed:.1f} m/s, the limit is {limits.head_speed:g}"
    return f"the hand would be {length_words(strain.spare_reach)} out of reach"


def _strain_figures(strain: Strain, limits: Limits, arm: float) -> Iterator[Figure]:
    """The limits that a strained hand misses, in numbers."""
    if strain.least_pull < LEAST_PULL:
        yield Figure(
            quantity=FLOWN_PULL, value=strain.least_pull, limit=LEAST_PULL, unit="head weights", least=True
        )  # fmt: skip
    pushed, fast = strain.hand_acceleration, strain.hand_speed
    if pushed > limits.hand_acceleration:
        yield Figure(
            quantity=HAND_ACCELERATION, value=pushed, limit=limits.hand_acceleration, unit="m/s²"
        )
    if fast > limits.hand_speed:
        yield Figure(quantity=HAND_SPEED, value=fast, limit=limits.hand_speed, unit="m/s")
    if strain.most_pull > limits.pull:
        yield Figure(quantity=PULL, value=strain.most_pull, limit=limits.pull, unit="N")
    if strain.wick_speed > limits.head_speed:
        yield Figure(
            quantity=WICK_SPEED, value=strain.wick_speed, limit=limits.head_speed, unit="m/s"
        )
    if strain.spare_reach < 0:
        yield Figure(quantity=REACH, value=arm - strain.spare_reach, limit=arm, unit="m")


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


def touches(show: Staged) -> Iterator[Touch]:
    """What `touching` tells, in numbers.

    Parameters
    ----------
    show : Staged
        As drawn.
    """
    for dancer in flown_show(show).staged.dancers:
        beats, found = own_gaps(show, dancer)
        for name, gaps in found.items():
            sides: tuple[Side, ...] = SIDES if name == BOTH else (name,)  # type: ignore[assignment]  # a side's name
            for start, end, worst in _runs(beats, gaps):
                yield Touch(dancer.name, sides, start, end, worst)


class OwnGaps(NamedTuple):
    """The least gap on every stretch between two beats: of each flown prop to the body, and of both props."""

    beats: list[float]
    gaps: Mapping[str, Sequence[Least]]  # by side; of both by `BOTH`

    def of(self, side: Side) -> list[tuple[float, float, Least]]:
        """Of the prop in one hand to the body, with the stretch."""
        own = self.gaps[side]
        return [(*ends, least) for ends, least in zip(pairwise(self.beats), own, strict=True)]


def own_gaps(show: Staged, dancer: Dancer) -> OwnGaps:
    """How near the flown props of a performer come to the body and to each other, proven on their splines.

    To the body as far as it is below what the show has noted for a burning wick, where the performer is lit, else below 0.
    Stretches end at whole beats, at the borders of patterns and links, and where the performer is lit or put out.

    Parameters
    ----------
    show : Staged
    dancer : Dancer
        On flown paths.
    """
    hands = {
        side: hand for side, hand in dancer.trajectories.items() if isinstance(hand, FlownHand)
    }
    if not hands:
        return OwnGaps([], {})
    beats = _beats_of(hands.values(), [edge for burn in dancer.lit for edge in burn])
    near = limits_of(show).own_body_near
    key = "own gaps as flown", dancer.name
    return OwnGaps(beats, result_of(show, key, lambda: _gaps_of(dancer, hands, beats, near)))


def _gaps_of(
    dancer: Dancer, hands: Mapping[Side, FlownHand], beats: Sequence[float], near: float
) -> dict[str, list[Least]]:
    """The least gap on every stretch between two of some beats.

    Each slice of beats is looked at by itself, and kept by all that decides the motion in it.
    """
    edges = slice_edges(beats[0], beats[-1])
    inside = [
        [low, *(beat for beat in beats if low < beat < high), high]
        for low, high in pairwise(edges.tolist())
    ]
    nears = [near if _lit_between(dancer, own[0], own[-1]) else 0.0 for own in inside]
    keys = [
        None if own is None else (whole_code(), own, nears[k], *inside[k])
        for k, own in enumerate(moving_keys(dancer, edges))
    ]
    found = recent_each(
        "gaps as flown",
        keys,
        lambda missing: [_gaps_in(dancer, hands, inside[k], nears[k]) for k in missing],
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
    return {name: [gap for own in found for gap in own[name]] for name in found[0]}


def _lit_between(dancer: Dancer, low: float, high: float) -> bool:
    return any(start < high and low < end for start, end in dancer.lit)


def _gaps_in(
    dancer: Dancer, hands: Mapping[Side, FlownHand], beats: Sequence[float], near: float
) -> dict[str, list[Least]]:
    out: dict[str, list[Least]] = {
        side: body_gap(
            hand,
            beats,
            prop=dancer.props[side],
            body=dancer.body,
            carriage=dancer.carriage,
            near=near,
        )
        for side, hand in hands.items()
    }
    if len(hands) == len(SIDES):
        left, right = ((hands[side], dancer.props[side]) for side in SIDES)
        out[BOTH] = props_gap(left, right, beats)
    return out


def _beats_of(hands: Iterable[FlownHand], more: Iterable[float]) -> list[float]:
    """Where stretches end, from the first to the last beat at which all of the hands are known."""
    each = list(hands)
    first, last = max(own.head.start for own in each), min(own.head.end for own in each)
    edges = [span.start for own in each for span in own.drawn.spans]
    beats = {*map(float, range(floor(first) + 1, ceil(last))), *edges, *more}
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
