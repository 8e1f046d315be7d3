"""What may come next: every pattern of the vocabulary, by how it joins what stands before it.

Each pattern is fitted to its performers as a block of the show would be. Still a look, no verdict: what it leads to, distances and
flights are up to the checks once it is in the show.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import isfinite, nan

import numpy as np

from sequencer.arrays import Bools
from sequencer.geometry.bodies import Side
from sequencer.motion.fitting.pacing import usual_cycle
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.blocks import block_laws
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.trajectories.joining import (
    VERDICTS,
    Tolerances,
    VerdictKind,
    gap_between,
    shifts_of,
    shortest_link,
)
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits, hand_space_of
from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.progress import stop_if_unwanted
from sequencer.show.model import Step
from sequencer.staging.dancers import link_limits
from sequencer.staging.dances import fitted_blocks
from sequencer.staging.staged import Block, HandWords, Path, Staged
from sequencer.staging.timeline import pace_of
from sequencer.timing.position import TOUCH

_LINKED = 4.0  # [beats] of tempo that is looked at for a link
_LONG = 8.0  # [beats] of a block for which a pattern is fitted
_PATH: Path = ("timeline", -1)  # of no entry yet: one step, danced together


@dataclass(frozen=True, slots=True, kw_only=True)
class NextPattern:
    """A pattern, and how it would join."""

    pattern: Pattern
    suits: bool  # whether it suits what the performers hold
    cycle: float  # [beats] of one hand cycle, as a block without one is given
    verdict: VerdictKind | None  # the worst of all hands; None if nothing stands before it
    shift: float = 0.0  # [beats] after which it joins
    link_beats: float = nan  # [beats] of the shortest link, if it needs one


def next_patterns(
    show: Staged, who: Sequence[str], at: float | None = None
) -> tuple[NextPattern, ...]:
    """Every pattern, what joins first: those that suit, by verdict, then the easy ones.

    Parameters
    ----------
    show : Staged
    who : sequence of str
        Who is to dance it.
    at : float, optional
        Beat at which it would start; where it is left out, nothing stands before it.

    Raises
    ------
    ValueError
        If somebody is not in the cast.
    """
    dancers = {dancer.name: dancer for dancer in show.dancers}
    absent = [name for name in who if name not in dancers]
    if absent:
        raise ValueError(f"{absent[0]!r} is not in the cast")
    chosen = [dancers[name] for name in who]
    stands = [] if at is None else [_stand(show, dancer, at) for dancer in chosen]
    found = []
    for pattern in show.book.values():
        stop_if_unwanted()
        found.append(_next(show, pattern, chosen, stands, at))
    return tuple(
        sorted(
            found,
            key=lambda one: (
                not one.suits,
                -1 if one.verdict is None else VERDICTS.index(one.verdict),
                one.link_beats if isfinite(one.link_beats) else 0.0,
                one.pattern.difficulty,
                one.pattern.name,
            ),
        )
    )


def _stand(show: Staged, dancer: Dancer, at: float) -> Mapping[Side, Motion]:
    """The state in which each hand leaves what it dances last before a beat; empty where it dances nothing, or stops."""
    last = max(
        (
            block
            for block in (*show.blocks, *show.stops)
            if block.who == dancer.name and not block.link and block.end <= at + TOUCH
        ),
        key=lambda block: block.end,
        default=None,
    )
    if last is None or last.stop:
        return {}
    states = {}
    for side, trajectory in dancer.trajectories.items():
        if not isinstance(trajectory, Trajectory):
            continue
        for span in trajectory.spans:
            if span.kind == "block" and span.start <= last.start + TOUCH < span.end:
                states[side] = span.at(np.array(last.end))
    return states


def _next(
    show: Staged,
    pattern: Pattern,
    dancers: Sequence[Dancer],
    stands: Sequence[Mapping[Side, Motion]],
    at: float | None,
) -> NextPattern:
    props = [prop for dancer in dancers for prop in dancer.props.values()]
    suits = all(
        pattern.suits(prop.kind, len(dancer.props))
        for dancer in dancers
        for prop in dancer.props.values()
    )
    cycle = usual_cycle(
        pattern.name, {}, tempo=show.song.tempo, pace=pace_of(show.show.limits), book=show.book,
        props=props,
    )  # fmt: skip
    if at is None or not any(stands):
        return NextPattern(pattern=pattern, suits=suits, cycle=cycle, verdict=None)
    limits = link_limits(show.show.limits, show.tempo, at, at + _LINKED)
    worst: tuple[int, float, float] = (0, 0.0, nan)
    blocks = [_block(pattern.name, dancer, at, cycle) for dancer in dancers]
    fitted = fitted_blocks(show.show, blocks, show.tempo, show.book)
    for dancer, block, stand in zip(dancers, fitted, stands, strict=True):
        laws = block_laws(
            {side: (part.pattern, part.values) for side, part in block.hands.items()},
            timing=block.timing, direction=block.direction, cycle=cycle, body=dancer.body,
            tethers={side: prop.length for side, prop in dancer.props.items()}, book=show.book,
        )  # fmt: skip
        own = _judged(dancer, stand, laws, limits)
        worst = max(worst, own, key=lambda one: (one[0], one[1]))
    kind, shift, beats = worst
    return NextPattern(
        pattern=pattern, suits=suits, cycle=cycle, verdict=VERDICTS[kind], shift=shift, link_beats=beats
    )  # fmt: skip


def _block(pattern: str, dancer: Dancer, at: float, cycle: float) -> Block:
    """A block of a pattern as an entry without more would be."""
    return Block(
        who=dancer.name, start=at, end=at + _LONG, cycle=cycle,
        timing=Step.model_fields["timing"].default, direction=Step.model_fields["direction"].default,
        hands={side: HandWords(pattern=pattern, parameters={}) for side in dancer.props},
        shift=0.0, mirrored=False, link=False, phrase=None, note="", path=_PATH,
    )  # fmt: skip


def _judged(
    dancer: Dancer, stand: Mapping[Side, Motion], laws: Mapping[Side, Law], limits: LinkLimits
) -> tuple[int, float, float]:
    """The verdict on both hands of a performer, its number, with the shift and the beats of a link that it asks for."""
    tolerances = Tolerances()
    shifts = max(
        (shifts_of(laws[side]) for side in stand if side in laws), key=len, default=np.zeros(1)
    )
    joins: Bools = np.ones(len(shifts), dtype=np.bool_)
    reversed_ = False
    for side, state in stand.items():
        if side not in laws:
            continue
        gaps = gap_between(state, laws[side].at(shifts), dancer.props[side].length)
        joins &= gaps.within(tolerances)
        reversed_ |= bool(gaps.reversed_in_place(tolerances)[0])
    if joins[0]:
        return VERDICTS.index("joins"), 0.0, nan
    if reversed_:
        return VERDICTS.index("wrong way round"), 0.0, nan
    if np.any(joins):
        return VERDICTS.index("joins after a shift"), float(shifts[np.argmax(joins)]), nan
    longest = 0.0
    for side, state in stand.items():
        if side not in laws:
            continue
        space = hand_space_of(dancer.body, side, dancer.props[side])
        beats, _ = shortest_link(state, laws[side].at(np.zeros(())), space=space, limits=limits)
        if not isfinite(beats):
            return VERDICTS.index("cannot join"), 0.0, nan
        longest = max(longest, beats)
    return VERDICTS.index("needs a link"), 0.0, longest
