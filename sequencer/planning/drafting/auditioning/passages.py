"""How one move passes into the next: joined as it is, or by a link of 1 to 4 beats, each tried before it is used.

What joins without a link is known for all pairs at once. A link is looked at only once a routine wants it: the two
moves are danced by a copy of the performer, with the link between them, and judged by the checks of joins, of
what can be danced and of what can be flown. What was found is kept by its content.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from math import ceil

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.checks.dance.joins import joins, tolerances_of
from sequencer.content_keys import whole_code
from sequencer.geometry.bodies import Side
from sequencer.geometry.posture import Posture
from sequencer.kept import kept_each
from sequencer.motion.laws.carriage import carried
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.assembly import LEAD_IN, joined
from sequencer.motion.trajectories.joining import gap_between
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.planning.drafting.auditioning.candidates import (
    Audition,
    DraftMove,
    audition_show,
    findings_on,
    pattern_content,
)
from sequencer.planning.drafting.auditioning.flights import unflown
from sequencer.staging.dancers import link_limits
from sequencer.timing.tempo import TempoMap

LINK_LENGTHS = (1, 2, 3, 4)  # [beats] of a link
BESIDE_LINK = 2.0  # [beats] of each move that are looked at beside a link

Tempos = tuple[float, float]  # slowest and fastest [beats/min]
# The fastest tempo of the move before, of the link, and of the move after [beats/min], at which a show flies each of them
FlownTempos = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class PassageTempos:
    """The tempos at which a passage is danced, wherever in the song it comes."""

    between: Tempos  # of the beats about it
    flown: tuple[tuple[FlownTempos, ...], ...]  # by the link's beats, from 0: at which it is tried
    links: tuple[float, ...]  # by the link's beats, from 0: the fastest of its own [beats/min]

    @staticmethod
    def steady(between: Tempos) -> "PassageTempos":
        """Of a passage that is flown at one tempo, the fastest."""
        once, count = ((between[1],) * 3,), 1 + max(LINK_LENGTHS)
        return PassageTempos(between=between, flown=(once,) * count, links=(between[1],) * count)


@dataclass(frozen=True, slots=True, kw_only=True)
class MovePassage:
    """A move that has been danced for some beats, and the next, with a link between them."""

    before: DraftMove
    beats: float  # [beats] that the first is danced
    link: int  # [beats]; 0 if the two are joined
    after: DraftMove


class MoveLaws:
    """The laws of moves, each built once; how much longer than others this performer dances before a passage, and whether at all."""

    def __init__(self, stage: Audition, *, longer: int = 0, dances: bool = True) -> None:
        self.stage = stage
        self.dances = dances  # whether they are on the stage
        self.longer = longer  # [beats]
        self._known: dict[DraftMove, tuple[dict[Side, Law], Posture]] = {}
        self._states: dict[tuple[DraftMove, float], dict[Side, Motion]] = {}

    def otherwise(self, *, longer: int, dances: bool) -> "MoveLaws":
        """The same performer at the same tempo, who dances longer or not at all; what is known of moves is shared."""
        other = MoveLaws(self.stage, longer=longer, dances=dances)
        other._known, other._states = self._known, self._states
        return other

    def of(self, move: DraftMove) -> tuple[dict[Side, Law], Posture]:
        """The laws of a move, and the body's posture."""
        if move not in self._known:
            self._known[move] = self.stage.laws(move)
        return self._known[move]

    def states(self, moves: Sequence[DraftMove], beats: float) -> dict[Side, Motion]:
        """The states of some moves so many beats after their start, stacked, for each hand."""
        each = [self._state(move, beats) for move in moves]
        return {
            side: Motion(
                **{
                    name: np.concatenate([getattr(one[side], name) for one in each])
                    for name in Motion.__slots__
                }
            )
            for side in self.stage.record.props
        }

    def _state(self, move: DraftMove, beats: float) -> dict[Side, Motion]:
        """The state of each hand so many beats after a move's start."""
        key = move, beats
        if key not in self._states:
            at = np.array([beats])
            self._states[key] = {side: law.at(at) for side, law in self.of(move)[0].items()}
        return self._states[key]


def joining(first: MoveLaws, second: MoveLaws, moves: Sequence[DraftMove], beats: float) -> Bools:
    """Which moves, danced for some beats, join each of the moves without a link.

    Parameters
    ----------
    first, second : MoveLaws
        At the tempo of the one and of the other.
    moves : sequence of DraftMove
        n of them.
    beats : float
        For those who are not late.

    Returns
    -------
    joins : ndarray, shape (n, n) [1]
        Rows are the first of the two.

    Notes
    -----
    Source: the tolerances of a join, see `motion.trajectories.joining`; hands and postures must both agree.
    """
    stage = first.stage
    allowed = tolerances_of(stage.show)
    ends, starts = first.states(moves, beats + first.longer), second.states(moves, 0.0)
    out: Bools = np.ones((len(moves), len(moves)), dtype=np.bool_)
    for side, prop in stage.props.items():
        row = _spread(ends[side], (slice(None), None))
        column = _spread(starts[side], (None, slice(None)))
        out &= gap_between(row, column, prop.length).within(allowed)
    stood, stands = ([laws.of(move)[1] for move in moves] for laws in (first, second))
    same = np.array([[one == other for other in stands] for one in stood], dtype=np.bool_)
    return np.asarray(out & same)


def _spread(motion: Motion, index: tuple[object, object]) -> Motion:
    parts: dict[str, Floats] = {name: getattr(motion, name)[index] for name in Motion.__slots__}
    return Motion(**parts)


def tried(
    passages: Sequence[MovePassage],
    first: MoveLaws,
    second: MoveLaws,
    tempos: PassageTempos | None = None,
    *,
    fly: bool = True,
) -> list[str]:
    """What the checks hold against each of some passages; empty texts where nothing is.

    Parameters
    ----------
    passages : sequence of MovePassage
        With the beats of those who are not late.
    first, second : MoveLaws
        At the tempo of the one move and of the other.
    tempos : PassageTempos, optional
        Of the beats from the one to the other, which may be steadier than the moves' own stretches; default: those of
        both moves, flown at the fastest.
    fly : bool
        Whether they are flown as well.

    Returns
    -------
    said : list of str
        Kept by their content.
    """
    passages = [replace(each, beats=each.beats + first.longer) for each in passages]

    def content(move: DraftMove, laws: MoveLaws) -> tuple[object, ...]:
        fit = laws.stage.fit(move)
        of_joins = tolerances_of(laws.stage.show)
        return (
            fit.values,
            fit.posture,
            pattern_content(laws.stage, move),
            of_joins,
            *laws.stage.content,
        )

    known = tempos or PassageTempos.steady(_tempos(first, second))
    contents = [
        (
            whole_code(), each, content(each.before, first), content(each.after, second),
            known.between[0], known.links[each.link], known.flown[each.link] if fly else (),
        )
        for each in passages
    ]  # fmt: skip
    return kept_each(
        "auditions of passages",
        contents,
        lambda missing: _tried([passages[k] for k in missing], first, second, known, fly=fly),
        record=str,
        restore=str,
    )


def _tempos(first: MoveLaws, second: MoveLaws) -> Tempos:
    """The slowest and the fastest tempo of two moves."""
    each = {tempo for laws in (first, second) for tempo in laws.stage.tempo}
    return min(each), max(each)


def _tried(
    passages: Sequence[MovePassage],
    first: MoveLaws,
    second: MoveLaws,
    tempos: PassageTempos,
    *,
    fly: bool,
) -> list[str]:
    stage, slowest = first.stage, tempos.between[0]
    paces = [tempos.links[each.link] for each in passages]
    dancers = [
        _dancer(str(k), each, first, second, fastest=pace)
        for k, (each, pace) in enumerate(zip(passages, paces, strict=True))
    ]
    # tethers are slackest where it is slow
    said = findings_on(dancers, TempoMap.steady(slowest, beats=16), stage.show)
    for tempo in dict.fromkeys((slowest, *paces)):
        some = [each for each, pace in zip(dancers, paces, strict=True) if tempo in (slowest, pace)]
        steady = TempoMap.steady(tempo, beats=16)
        for finding in joins(audition_show(some, steady, stage.show)).findings:
            for name in finding.who:
                said.setdefault(name, finding.message)
    for dancer, each in zip(dancers, passages, strict=True) if fly else ():
        if dancer.name not in said:
            maps = (_flown_at(each, those) for those in tempos.flown[each.link])
            found = (unflown(dancer, stage, tempo) for tempo in maps)
            said[dancer.name] = next(filter(None, found), "")
    return [said.get(str(k), "") for k in range(len(passages))]


def _flown_at(passage: MovePassage, tempos: FlownTempos) -> TempoMap:
    """The tempos of a passage as `_dancer` dances it."""
    beats = ceil(min(BESIDE_LINK, passage.beats)), passage.link, ceil(BESIDE_LINK) + 1
    lengths = np.repeat([60.0 / tempo for tempo in tempos], beats)
    times: Floats = np.concatenate([[0.0], np.cumsum(lengths)])
    return TempoMap(times, bars=(0,), metre=4)


def _dancer(
    name: str, passage: MovePassage, earlier: MoveLaws, later: MoveLaws, *, fastest: float
) -> Dancer:
    """A performer who dances the end of one move, the link and the beginning of the next."""
    stage = earlier.stage
    (first, stood), (second, stands) = earlier.of(passage.before), later.of(passage.after)
    beside = min(BESIDE_LINK, passage.beats)
    low, high = beside, beside + passage.link
    ends = [(0.0, low, stood), (high, high + BESIDE_LINK, stands)]
    carriage = carried(stage.body, ends, lead=LEAD_IN)
    trajectories: dict[Side, Trajectory] = {}
    props = stage.props
    steady = TempoMap.steady(fastest, beats=16)
    for side in sorted(props, reverse=True):  # as in a show: the right hand first
        before = Span(
            start=0.0, end=low, law=first[side], origin=low - passage.beats, kind="block",
            label=passage.before.pattern,
        )  # fmt: skip
        after = Span(
            start=high, end=high + BESIDE_LINK, law=second[side], origin=high, kind="block",
            label=passage.after.pattern,
        )  # fmt: skip
        trajectories[side] = joined(
            before,
            after,
            rest(side, stage.body, props[side]),
            space=hand_space_of(stage.body, side, props[side]),
            other=trajectories.get("right"),
            carriage=carriage,
            limits=partial(link_limits, stage.show.show.limits, steady),
        )
    whole: Mapping[Side, Trajectory] = {side: trajectories[side] for side in props}
    return Dancer(
        name=name,
        body=stage.body,
        props=props,
        trajectories=whole,
        floor=WalkPath(place=(0.0, 0.0)),
        lit=((0.0, high + BESIDE_LINK),) if stage.lit else (),
        carriage=carriage,
    )
