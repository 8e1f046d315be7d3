"""The same move smaller or larger: narrower or wider circles of the hands, lower or higher swings, where they pass the checks.

As a dancer follows soft and loud music: the steps stay what they are, and each is drawn small or large.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from sequencer.geometry.bodies import Side
from sequencer.motion.fitting.fits import Fit
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.parameters import ParameterValue
from sequencer.planning.drafting.auditioning.candidates import Audition, DraftMove, Drawn, Heard
from sequencer.show.drafted import FileRow

_STEPS: Mapping[
    str, float
] = {  # of the parameter that makes a pattern smaller or larger: to what its values are rounded
    "hand_radius": 0.05,  # [m]
    "size": 0.05,  # [m]
    "width": 0.05,  # [1]
    "amplitude": 5.0,  # [degrees]
}
_TIMES: tuple[tuple[Drawn, tuple[float, ...]], ...] = (
    ("small", (0.5, 0.75)),
    ("large", (1.5, 1.25)),
)  # the pattern's own size, the one that is seen best first; design choices of this project
SEEN_SIZE = 0.02  # [m] by which a size must differ from the usual one to be seen

Found = TypeVar("Found")


def can_be_sized(move: DraftMove, stage: Audition) -> bool:
    """Whether a move has a size, and is danced in its pattern's own: one that had to be made smaller to fit has no other."""
    own = _size_of(stage.show.book[move.pattern])
    if own is None:
        return False
    return not any(own[0] in values for values in stage.fit(move.as_usual).values.values())


def keeps_shape(move: DraftMove, stage: Audition) -> bool:
    """Whether a move in another size is the same otherwise: it starts where the usual one starts, in the same planes and posture.

    Where the body asks for another lean, start or lead it is a move of its own, which would have to be learnt.
    """
    one, usual = stage.fit(move), stage.fit(move.as_usual)
    pattern = stage.show.book[move.pattern]
    return one.posture == usual.posture and all(
        _shape(one, side, move, pattern) == _shape(usual, side, move, pattern)
        for side in stage.record.props
    )


def _shape(
    fit: Fit, side: Side, move: DraftMove, pattern: Pattern
) -> dict[str, ParameterValue | None]:
    """What one hand's path has besides its place and size."""
    besides = {*PLACE_OFFSETS, *move.parameters}
    usual = {each.name: each.default for each in pattern.parameters}
    whole = {**usual, **fit.values.get(side, {})}
    return {name: value for name, value in whole.items() if name not in besides}


def sizes_of(move: DraftMove, book: Mapping[str, Pattern]) -> list[tuple[DraftMove, ...]]:
    """A move drawn small and drawn large, each in the order in which it should be tried; nothing for a pattern of one size.

    Parameters
    ----------
    move : DraftMove
        In its usual size.
    book : mapping of name to Pattern
    """
    own = _size_of(book[move.pattern])
    if own is None:
        return []
    name, usual = own
    step = _STEPS[name]
    out = []
    for drawn, times in _TIMES:
        values = dict.fromkeys(round(round(usual * each / step) * step, 6) for each in times)
        out.append(
            tuple(
                replace(move, drawn=drawn, sized=(name, value))
                for value in values
                if value > 0 and (value > usual) == (drawn == "large") and value != usual
            )
        )
    return out


def _size_of(pattern: Pattern) -> tuple[str, float] | None:
    """The parameter that makes a pattern smaller or larger, and its usual value."""
    for each in pattern.parameters:
        if each.name in _STEPS and isinstance(each.default, int | float) and each.default > 0:
            return each.name, float(each.default)
    return None


def first_found(
    queues: Sequence[tuple[DraftMove, ...]],
    tried: Callable[[Sequence[DraftMove]], Sequence[Found | None]],
) -> list[tuple[DraftMove, Found]]:
    """Of each queue of moves the first with which something is found; those behind it are not tried.

    Parameters
    ----------
    queues : sequence of tuple of DraftMove
    tried : callable
        What is found with each of some moves; None for nothing.
    """
    out: dict[int, tuple[DraftMove, Found]] = {}
    for turn in range(max(map(len, queues), default=0)):
        own = [n for n, queue in enumerate(queues) if n not in out and turn < len(queue)]
        wave = [queues[n][turn] for n in own]
        for n, move, found in zip(own, wave, tried(wave), strict=True):
            if found is not None:
                out[n] = move, found
    return [out[n] for n in sorted(out)]


def written(name: str, value: float) -> FileRow:
    """The size of a move as a show file writes it."""
    if name in ("hand_radius", "size"):
        return {name: f"{100 * value:g} cm"}
    return {name: int(value) if value.is_integer() else value}


def is_seen(usual: Heard, other: Heard, drawn: Drawn) -> bool:
    """Whether a move passes in another size, and looks smaller or larger by enough."""
    more = other.size - usual.size
    return other.passes and (more if drawn == "large" else -more) >= SEEN_SIZE


def to_size(moves: Sequence[DraftMove], chosen: Sequence[int], most: int) -> list[int]:
    """The moves that get a smaller and a larger one beside them: as many of each pattern, the first first, as there is room for.

    Parameters
    ----------
    moves : sequence of DraftMove
    chosen : sequence of int
        Those of them that are kept.
    most : int
        Candidates in all, about.

    Returns
    -------
    sized : list of int
        Of `chosen`; none where many patterns are known already, which differ in size by themselves.
    """
    names = list(dict.fromkeys(moves[k].pattern for k in chosen))
    each = (most // 2 - len(chosen)) // (2 * max(len(names), 1))  # trying them takes long
    out: list[int] = []
    for name in names:
        out += [k for k in chosen if moves[k].pattern == name][: max(each, 0)]
    return out
