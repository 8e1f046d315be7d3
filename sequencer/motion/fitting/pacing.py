"""Default number of beats per hand cycle: the pattern's usual number, or one that can be danced.

At a slow tempo a tether goes slack; at a fast one, hand or prop become too fast. The usual number of beats
is halved, doubled, or changed by quarters and thirds until the cycle works at the tempo: taut, and within
the limits. This is tested on samples of a period, and proven afterwards by the checks.
Source: the order is a design choice of this project: halving and doubling stay with the music.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from math import inf, isfinite, pi

import numpy as np

from sequencer.arrays import crossed
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.kept import recent, remembering
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for, patterns
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY

TAUT = 0.5  # [m/s²] minimum pull over mass of a tether
_STILL = (
    0.35 * pi
)  # [1/beat] a tether turning slower than this is nearly at rest, as at the top of a stall
# Fractions of the usual beats, in order; the last four do not fit the count, and are used only if nothing else can be danced.
MOST_USUAL = 4096  # kept in the process
CYCLE_SHARES = (1.0, 0.5, 2.0, 0.75, 1.5, 2 / 3, 4 / 3, 0.25, 0.875, 0.625, 5 / 6, 0.5625)
MOST_TRIALS = (
    12  # number of alternative hand-path shapes, of those that a law lists, that may be tried
)
_LOOKS = 256
_ROUNDING = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """Limits on what a performer can do."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]
    turns: float = 2.5  # [turns/s]
    head_speed: float = 20.0  # [m/s]
    torque: float = 8.0  # [N·m] of one hand on a rigid prop


def least_pull(motion: Motion, *, length: float, beats_per_second: float) -> float:
    """Smallest relevant pull of a tether over mass [m/s²]; inf if it only comes to rest at the top.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (n, 3) [body frame], over a period.
    length : float
        Length of the tether [m].
    beats_per_second : float
        Tempo [beats/s].

    Notes
    -----
    Source: docs/motion.md, section 6. A tether that nearly comes to rest above the hand is necessarily
    slack, as in a stall, and is not a reason to dance faster.
    """
    outward = length * np.sum(motion.tether_rate**2, axis=1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=1
    )
    pull = beats_per_second**2 * outward - GRAVITY * motion.tether[..., 2]
    turning = np.linalg.norm(motion.tether_rate, axis=1)
    k = int(np.argmin(pull))
    stands = turning[k] < min(_STILL, 0.5 * float(turning.max()))
    return inf if stands and pull[k] >= -GRAVITY - 1e-6 else float(pull[k])


def usual_cycle(
    name: str,
    parameters: Mapping[str, object],
    *,
    tempo: float,
    props: Iterable[Prop],
    pace: Pace | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> float:
    """Beats per hand cycle at a tempo.

    Parameters
    ----------
    name, parameters
        The pattern and its set parameters.
    tempo : float
        [beats a minute]
    props : iterable of Prop
        All props used, so that performers who dance together stay together.
    pace : Pace, optional
    book : mapping, optional

    Returns
    -------
    beats : float
        The pattern's usual number if none of those tried works.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    held = list(dict.fromkeys(replace(each, flame_reach=0.0) for each in props))
    known = patterns() if book is None else book
    limits = pace or Pace()
    # A pattern is known by itself, so another one of its name is not taken for it.
    key = (repr(sorted(parameters.items())), tempo, tuple(held), limits, known.get(name))
    # On disk the book is part of the key: which patterns there are depends on the packages installed.
    return recent(
        "usual cycle",
        None if key[-1] is None else key,
        lambda: _usual(name, parameters, tempo, held, limits, known),
        most=MOST_USUAL,
    )


@remembering(record=float, restore=float)
def _usual(
    name: str, parameters: Mapping[str, object], tempo: float, props: Sequence[Prop], limits: Pace,
    book: Mapping[str, Pattern],
) -> float:  # fmt: skip
    usual = cycle_beats(name, parameters, book)
    beats_per_second = tempo / 60.0
    cases = [(prop, laws) for prop in props for laws in _laws(name, parameters, prop, book)]

    @cache
    def holds(row: int, k: int) -> bool:
        prop, laws = cases[row]
        return _holds(laws(usual * CYCLE_SHARES[k]), prop, beats_per_second, limits)

    rows, shares = range(len(cases)), range(len(CYCLE_SHARES))
    if all(holds(row, 0) for row in rows):
        return usual
    # A pattern that works at no number of beats is reported by the checks, and does not constrain the others.
    able = [row for row in rows if any(holds(row, k) for k in shares)]
    fits = (CYCLE_SHARES[k] for k in shares if all(holds(row, k) for row in able))
    return usual * next(fits, 1.0)


Laws = Callable[[float], list[Law]]  # beats per cycle → the law, for every shape tried


def _laws(
    name: str,
    parameters: Mapping[str, object],
    prop: Prop,
    book: Mapping[str, Pattern] | None,
) -> list[Laws]:
    """Builders of each hand's laws for a prop; one hand if both dance the same."""
    pattern = find(name, book)
    body = Body(stature=1.70)
    trials = pattern.trials(parameters, prop.kind)[:MOST_TRIALS]

    def laws(side: Side) -> Laws:
        own = {p.name for p in pattern.hand(side).kind.parameters}
        shapes = [{key: value for key, value in trial.items() if key in own} for trial in trials]
        return lambda beats: [
            law_for(
                name, {**shape, **parameters}, side=side, body=body, beats=beats,
                tether=prop.length, book=book,
            )
            for shape in shapes
        ]  # fmt: skip

    sides: tuple[Side, ...] = SIDES if pattern.hybrid else SIDES[1:]
    return [laws(side) for side in sides]


@remembering(record=bool, restore=bool)
def _holds(laws: list[Law], prop: Prop, exact: float, pace: Pace) -> bool:
    """Whether one of a hand's laws is taut and within the limits."""
    beats_per_second = exact * (1 - _ROUNDING)  # a limit met exactly is met
    for law in laws:
        bounds = law.bounds()
        if (
            bounds.hand_speed * beats_per_second > pace.hand_speed
            or bounds.hand_acceleration * beats_per_second**2 > pace.hand_acceleration
            or bounds.turn_rate * beats_per_second / (2 * pi) > pace.turns
            or prop.fastest(bounds) * beats_per_second > pace.head_speed
        ):
            continue
        span = law.period if isfinite(law.period) else 8.0
        motion = law.at(span * np.arange(_LOOKS, dtype=np.float64) / _LOOKS)
        if prop.flexible:
            if least_pull(motion, length=prop.length, beats_per_second=exact) >= TAUT:
                return True
        elif twist(motion, prop, beats_per_second) <= pace.torque:
            return True
    return False


def twist(motion: Motion, prop: Prop, beats_per_second: float) -> float:
    """Largest torque of the hand over the samples [N·m].

    Parameters
    ----------
    motion : Motion
        Arrays of shape (n, 3) [body frame].
    prop : Prop
        A rigid one.
    beats_per_second : float
        Tempo [beats/s].

    Notes
    -----
    Source: as in `motion.props.peaks`, which proves it.
    """
    shifted = prop.mass * prop.centre_of_mass
    driven = prop.inertia * motion.tether_acceleration + shifted * motion.hand_acceleration
    moving = beats_per_second**2 * np.linalg.norm(crossed(motion.tether, driven), axis=1)
    level = np.hypot(motion.tether[..., 0], motion.tether[..., 1])
    return float(np.max(moving + abs(shifted) * GRAVITY * level))
