"""What may fill a slot: patterns with timing, direction and cycle that alone pass the checks for one performer.

Each candidate is danced by itself, by a copy of the performer, at the slowest and at the fastest tempo of the song's
stretches, and judged by the check of what can be danced (`checks.dance.feasible`): what it stops or warns of is no
candidate. How large it is drawn and how fast it is comes from the same laws.
"""

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import ceil, inf, isfinite
from typing import Literal

import numpy as np

from sequencer.arrays import Floats
from sequencer.checks.dance.dancer_case import limits_of
from sequencer.checks.dance.feasible import feasible
from sequencer.content_keys import whole_code
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import Posture
from sequencer.kept import kept_each
from sequencer.motion.fitting.fits import Dance, Fit
from sequencer.motion.fitting.pacing import usual_cycle
from sequencer.motion.fitting.search import fitted, fitted_together
from sequencer.motion.laws.carriage import lasting
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.blocks import Direction, Timing, block_laws
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.parameters import ParameterValue
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.show.file_records.performer_record import Performer
from sequencer.show.model import Show as ShowRecord
from sequencer.staging.dances import AS_THEY_ARE, CHANGED_OVER
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import pace_of
from sequencer.staging.wicks import flame_reach
from sequencer.timing.tempo import TempoMap

Drawn = Literal["", "small", "large"]

HANDS: tuple[tuple[Timing, Direction], ...] = (
    ("split", "same"),
    ("together", "same"),
    ("together", "opposite"),
    ("split", "opposite"),
)
_EVEN = (1.0, 2.0, 4.0, 8.0)  # [beats] of cycles that divide it
STRETCH = 16.0  # [beats] that a cycle should divide
_SLOWER = (0.6, 1.6)  # range of a cycle's length relative to the usual one
_FEW = 7  # patterns up to which each is tried in half time too
_LOOKS = 96  # samples of a cycle
_OPEN_PERIOD = 8.0  # [beats] looked at of a law that does not repeat
_MOST_PERIOD = 32.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftMove:
    """A way to dance a pattern."""

    pattern: str
    timing: Timing
    direction: Direction
    cycle: float  # [beats]
    usual: bool  # whether the cycle is the one that a block without `cycle` gets
    shift: float = 0.0  # [beats]
    one_hand: bool = False  # whether there is no second hand to time
    drawn: Drawn = ""  # smaller or larger than usual
    sized: tuple[str, float] | None = None  # the parameter that makes it so, in the units of laws

    @property
    def words(self) -> str:
        """The move in words."""
        hands = "" if self.one_hand else f", {timing_words(self.timing, self.direction)}"
        cycle = "" if self.usual else f", {self.cycle:g} beats a cycle"
        return f"{self.pattern}{hands}{cycle}" + (f", drawn {self.drawn}" if self.drawn else "")

    @property
    def parameters(self) -> dict[str, ParameterValue]:
        """What it sets of its pattern."""
        return {} if self.sized is None else {self.sized[0]: self.sized[1]}

    @property
    def as_usual(self) -> "DraftMove":
        """The same move in its usual size."""
        return replace(self, drawn="", sized=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What a move is like once it is danced."""

    passes: bool
    why: str = ""  # what a check said against it
    size: float = 0.0  # [m] how far the heads are from the middle of their paths, root mean square
    speed: float = 0.0  # [m/beat] of the heads, on average
    margin: float = 0.0  # [m] from body and other prop, at the samples of the fit


@dataclass(frozen=True, kw_only=True)
class Audition:
    """One performer at a range of tempos: for whom moves are auditioned."""

    show: Staged
    record: Performer
    tempo: tuple[float, float]  # slowest and fastest [beats/min], whole numbers
    lit: bool
    together: tuple[Performer, ...] = ()  # with whom one shape is danced; nobody: alone
    mirrored: bool = False  # left and right swapped
    room: float = 0.0  # [m] around everybody, where it is written where they stand
    # fits of all together, for auditions of the same show and the same people
    fits: dict[Hashable, list[Fit]] = field(default_factory=dict, compare=False, repr=False)

    @property
    def body(self) -> Body:
        """The performer's body."""
        return self.record.body

    @cached_property
    def props(self) -> dict[Side, Prop]:
        """The props with their flames."""
        fire = self.show.show.fire if self.lit else None
        return {side: own.held(flame_reach(own, fire)) for side, own in self.record.props.items()}

    @property
    def _own(self) -> Mapping[Side, Side]:
        """The side of the pattern that each hand dances."""
        return CHANGED_OVER if self.mirrored else AS_THEY_ARE

    def dance(self, move: DraftMove, record: Performer | None = None) -> Dance:
        """The fitting problem of a move, for this performer or another one."""
        record = record or self.record
        props = {self._own[side]: held for side, held in self._held[record.name].items()}
        return Dance(
            parts=dict.fromkeys(props, (move.pattern, move.parameters)),
            timing=move.timing,
            direction=move.direction,
            cycle=move.cycle,
            tempo=self.tempo,
            body=record.body,
            props=props,
            book=self.show.book,
            torque=self.show.show.limits.torque,
        )

    def fit(self, move: DraftMove) -> Fit:
        """Where and in which shape it is danced, as a block of it in a show would be."""
        alone = fitted(self.dance(move))
        if len(self._alike) < 2 or not alone.fits:  # then nobody else needs to look for room
            return alone
        key = move, self.tempo, self.mirrored, self._kinds
        if key not in self.fits:
            self.fits[key] = fitted_together([self.dance(move, each) for each in self._alike])
        return self.fits[key][self._alike.index(self.record)]

    @cached_property
    def _held(self) -> Mapping[str, Mapping[Side, Prop]]:
        """The props of this performer, and of all who dance together, by name."""
        return {
            each.name: {side: own.held() for side, own in each.props.items()}
            for each in (*self.together, self.record)
        }

    @cached_property
    def _kinds(self) -> frozenset[str]:
        return frozenset(prop.kind for prop in self.record.props.values())

    @cached_property
    def _alike(self) -> list[Performer]:
        """Who dances with props of the same kinds; performers with other props have a shape of their own."""
        return [
            each
            for each in self.together
            if {prop.kind for prop in each.props.values()} == self._kinds
        ]

    def laws(self, move: DraftMove) -> tuple[dict[Side, Law], Posture]:
        """The laws of a move as a block of it would get them, and the body's posture."""
        fit = self.fit(move)
        laws = block_laws(
            {
                side: (
                    move.pattern,
                    {**move.parameters, **fit.values.get(self._own[side], {})},
                )
                for side in self.record.props
            },
            timing=move.timing,
            direction=move.direction,
            cycle=move.cycle,
            shift=move.shift,
            mirrored=self.mirrored,
            body=self.body,
            tethers={side: prop.length for side, prop in self.props.items()},
            book=self.show.book,
        )
        return laws, fit.posture.mirrored() if self.mirrored else fit.posture

    @property
    def content(self) -> tuple[object, ...]:
        """All that an audition depends on besides the move and its pattern."""
        limits = limits_of(self.show)
        return self.body, self.props, self.tempo, self.lit, self.mirrored, limits


def moves_for(names: Sequence[str], stages: Sequence[Audition]) -> Iterator[DraftMove]:
    """The ways to dance some patterns, not yet auditioned.

    Parameters
    ----------
    names : sequence of str
    stages : sequence of Audition
        Everybody who dances, at every range of tempos.

    Yields
    ------
    move : DraftMove
        Of each pattern: the cycle that a block without `cycle` gets, one that divides two eights, those that
        suit other tempos of the song and, of few patterns, half time; each with every timing and direction of the hands.
    """
    show = stages[0].show
    held = [own.held() for stage in stages for own in stage.record.props.values()]
    tempos = dict.fromkeys(
        (show.song.tempo, *(each for stage in stages for each in _counted(stage.tempo)))
    )
    both = max(len(stage.record.props) for stage in stages) > 1
    pace = pace_of(show.show.limits)
    for name in names:
        lengths = dict.fromkeys(
            usual_cycle(name, {}, tempo=tempo, props=held, pace=pace, book=show.book)
            for tempo in tempos
        )
        usual = next(iter(lengths))
        if not _divides(usual):
            low, high = _SLOWER
            near = [c for c in _EVEN if low * usual <= c <= high * usual]
            lengths |= dict.fromkeys(sorted(near, key=lambda c: abs(np.log(c / usual)))[:1])
        if len(names) <= _FEW:  # of whom nothing should be lost because the song is quick
            lengths.setdefault(2.0 * usual)
        for cycle in lengths:
            for timing, direction in HANDS if both else HANDS[:1]:
                yield DraftMove(
                    pattern=name,
                    timing=timing,
                    direction=direction,
                    cycle=float(cycle),
                    usual=cycle == usual,
                    one_hand=not both,
                )


def _counted(tempo: tuple[float, float]) -> tuple[float, float]:
    """Tempos for which a cycle is chosen: the middle of a range, and its fast end, where the cycle of the middle may be too quick."""
    return sum(tempo) / 2, tempo[1]


def _divides(cycle: float) -> bool:
    count = STRETCH / cycle
    return abs(count - round(count)) < 1e-6


def usual_hands(move: DraftMove, pattern: Pattern) -> bool:
    """Whether hands are usually timed like this in a pattern; common practice."""
    if move.one_hand:
        return True
    if pattern.family == "weave":
        return (move.timing, move.direction) == ("split", "same")
    if pattern.name == "butterfly":
        return move.direction == "opposite"
    return True


def auditioned(moves: Sequence[DraftMove], stage: Audition) -> list[Heard]:
    """How each move fares when it is danced alone.

    Parameters
    ----------
    moves : sequence of DraftMove
    stage : Audition

    Returns
    -------
    heard : list of Heard
        Kept by their content.
    """
    fits = [stage.fit(move) for move in moves]
    return kept_each(
        "auditions of moves",
        move_contents(moves, fits, stage),
        lambda missing: _auditioned([moves[k] for k in missing], [fits[k] for k in missing], stage),
        record=lambda one: [one.passes, one.why, one.size, one.speed, one.margin],
        restore=lambda row: Heard(
            passes=bool(row[0]), why=str(row[1]), size=float(row[2]), speed=float(row[3]),
            margin=float(row[4]),
        ),
    )  # fmt: skip


def move_contents(
    moves: Sequence[DraftMove], fits: Sequence[Fit], stage: Audition
) -> list[tuple[object, ...]]:
    """All that decides how each of some moves, with its fit, fares when it is danced alone."""
    return [
        (whole_code(), move, fit.values, fit.posture, pattern_content(stage, move), *stage.content)
        for move, fit in zip(moves, fits, strict=True)
    ]


def pattern_content(stage: Audition, move: DraftMove) -> str:
    """A pattern as text: its name alone does not say what it is."""
    pattern: Pattern = stage.show.book[move.pattern]
    return repr(
        [(law.kind.name, sorted(law.fixed.items())) for law in (pattern.left, pattern.right)]
        + [(each.name, each.default) for each in pattern.parameters]
    )


def _auditioned(moves: Sequence[DraftMove], fits: Sequence[Fit], stage: Audition) -> list[Heard]:
    danced: dict[int, tuple[dict[Side, Law], Posture]] = {}
    out: dict[int, Heard] = {}
    for k, (move, fit) in enumerate(zip(moves, fits, strict=True)):
        if not fit.fits:
            out[k] = Heard(passes=False, why="it finds no room")
            continue
        danced[k] = stage.laws(move)
    said = _said({str(k): own for k, own in danced.items()}, stage)
    for k, (laws, _) in danced.items():
        size, speed = figures_of(laws, stage.props)
        least = min(fits[k].margins.body, fits[k].margins.other)
        why = said.get(str(k), "")
        out[k] = Heard(
            passes=not why, why=why, size=size, speed=speed,
            margin=least if isfinite(least) else 1.0,
        )  # fmt: skip
    return [out[k] for k in range(len(moves))]


def figures_of(laws: Mapping[Side, Law], props: Mapping[Side, Prop]) -> tuple[float, float]:
    """Size [m] and speed [m/beat] of what is danced, over both hands."""
    sizes, speeds = [], []
    for side, law in laws.items():
        span = law.period if isfinite(law.period) else _OPEN_PERIOD
        motion = law.at(span * np.arange(_LOOKS, dtype=np.float64) / _LOOKS)
        head = motion.hand + props[side].length * motion.tether
        sizes.append(float(np.mean(np.sum((head - head.mean(axis=0)) ** 2, axis=1))))
        rate = np.linalg.norm(motion.head_rate(props[side].length), axis=1)
        speeds.append(float(rate.mean()))
    return float(np.sqrt(np.mean(sizes))), float(np.mean(speeds))


def two_tempos(tempo: tuple[float, float], beats: int) -> TempoMap:
    """A count of so many beats at the slower tempo, and as many at the faster one."""
    low, high = tempo
    lengths = np.repeat([60.0 / low, 60.0 / high], beats)
    times: Floats = np.concatenate([[0.0], np.cumsum(lengths)])
    return TempoMap(times, bars=(0,), metre=4)


def _said(danced: Mapping[str, tuple[dict[Side, Law], Posture]], stage: Audition) -> dict[str, str]:
    """What the check of feasibility holds against each of some dances, by name."""
    if not danced:
        return {}
    half = int(
        max(
            ceil(law.period) if isfinite(law.period) else _OPEN_PERIOD
            for laws, _ in danced.values()
            for law in laws.values()
        )
    )
    half = int(min(max(half, 1), _MOST_PERIOD))
    dancers = []
    for name, (laws, posture) in danced.items():
        dancers.append(dancing_alone(name, laws, posture, stage, beats=float(2 * half)))
    return findings_on(dancers, two_tempos(stage.tempo, half), stage.show)


def dancing_alone(
    name: str,
    laws: Mapping[Side, Law],
    posture: Posture,
    stage: Audition,
    *,
    beats: float,
    beside: float = 0.0,
) -> Dancer:
    """A copy of the performer who dances one move, named as its only block is, for some beats, and for so many more before and behind."""
    props = stage.props
    return Dancer(
        name=name,
        body=stage.body,
        props={side: props[side] for side in laws},
        trajectories={
            side: Trajectory(
                (
                    Span(
                        start=-beside,
                        end=beats + beside,
                        law=law,
                        origin=0.0,
                        kind="block",
                        label=name,
                    ),
                ),
                hand_space_of(stage.body, side, props[side]),
            )
            for side, law in laws.items()
        },
        floor=WalkPath(place=(0.0, 0.0)),
        lit=((-beside, beats + beside),) if stage.lit else (),
        carriage=lasting(stage.body, posture),
    )


def findings_on(dancers: Sequence[Dancer], tempo: TempoMap, show: Staged) -> dict[str, str]:
    """The first STOP or WARN of feasibility on each of some dancers, by name; nothing on those who have none."""
    alone = audition_show(dancers, tempo, show)
    limits = replace(limits_of(show), drawn_off=inf)
    said: dict[str, str] = {}
    for finding in feasible(alone, limits=limits).findings:
        if (
            finding.severity != "note" and finding.start is not None
        ):  # a prop's size is no dance's fault
            for name in finding.who:
                said.setdefault(name, finding.message.partition(": ")[2] or finding.message)
    return said


def audition_show(dancers: Sequence[Dancer], tempo: TempoMap, show: Staged) -> Staged:
    """A show in which nothing but some auditions happens."""
    record: ShowRecord = show.show
    return Staged(
        file=show.file,
        show=record,
        song=show.song,
        tempo=tempo,
        dancers=tuple(dancers),
        blocks=(),
        standings=(),
        lit=(),
        book=show.book,
    )
