"""How many beats a hand cycle takes where nobody says: the pattern's usual number, or one that can be danced.

At a slow tempo a tether goes slack, at a quick one hand or prop become too fast. The usual number of beats
is halved, doubled, or taken by quarters and thirds until the cycle holds at the tempo: taut, and within the
limits. What holds is looked at over samples of a period, and proven afterwards like all else (checks).
Source: the order is a design choice of this project: halves and doubles keep to the music.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from math import inf, isfinite, pi

import numpy as np

from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import Pattern, cycle_beats, find, law_for
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY

TAUT = 0.5  # [m/s²] of pull over mass that a tether keeps at least
_STILL = 0.35 * pi  # [1/beat] a tether that turns slower nearly stands, as at the top of a stall
# Of the usual beats, in turn; the last four keep no count, and are taken where nothing else can be danced.
CYCLE_SHARES = (1.0, 0.5, 2.0, 0.75, 1.5, 2 / 3, 4 / 3, 0.25, 0.875, 0.625, 5 / 6, 0.5625)
MOST_TRIALS = 12  # shapes of the hands' paths, of those that a law lists, that may be taken instead
_LOOKS = 256
_ROUNDING = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """What is asked of a performer at most."""

    hand_speed: float = 6.0  # [m/s]
    hand_acceleration: float = 80.0  # [m/s²]
    turns: float = 2.5  # [turns/s]
    head_speed: float = 20.0  # [m/s]
    torque: float = 8.0  # [N·m] of one hand, with what is rigid


def least_pull(motion: Motion, *, length: float, beats_per_second: float) -> float:
    """Least pull of a tether over mass where it matters [m/s²]; inf of one that only rests at a top.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (n, 3) [body frame], over a period.
    length : float
        Of the tether [m].
    beats_per_second : float
        Tempo [beats/s].

    Notes
    -----
    Source: docs/motion.md, section 6. A tether that comes nearly to rest over the hand is slack by nature,
    as in a stall, and no reason to dance it faster.
    """
    outward = length * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
        motion.tether * motion.hand_acceleration, axis=-1
    )
    pull = beats_per_second**2 * outward - GRAVITY * motion.tether[..., 2]
    turning = np.linalg.norm(motion.tether_rate, axis=-1)
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
    """Beats of one hand cycle at a tempo.

    Parameters
    ----------
    name, parameters
        The pattern, and what is set of it.
    tempo : float
        [beats a minute]
    props : iterable of Prop
        All that it is danced with, so that those who dance together keep together.
    pace : Pace, optional
    book : mapping, optional

    Returns
    -------
    beats : float
        The pattern's usual ones where no number tried holds.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    usual = cycle_beats(name, parameters, book)
    limits, beats_per_second = pace or Pace(), tempo / 60.0
    asked = [
        (prop, laws)
        for prop in dict.fromkeys(replace(each, flame_reach=0.0) for each in props)
        for laws in _laws(name, parameters, prop, book)
    ]

    def holds(prop: Prop, laws: Laws, share: float) -> bool:
        return _holds(laws(usual * share), prop, beats_per_second, limits)

    if all(holds(prop, laws, CYCLE_SHARES[0]) for prop, laws in asked):
        return usual
    rows = [[holds(prop, laws, share) for share in CYCLE_SHARES] for prop, laws in asked]
    # What holds at no number of beats is told by the checks, and does not decide for the others.
    able = [row for row in rows if any(row)]
    fits = (share for k, share in enumerate(CYCLE_SHARES) if able and all(row[k] for row in able))
    return usual * next(fits, 1.0)


Laws = Callable[[float], list[Law]]  # beats of a cycle → the law, of every shape tried


def _laws(
    name: str,
    parameters: Mapping[str, object],
    prop: Prop,
    book: Mapping[str, Pattern] | None,
) -> list[Laws]:
    """How each hand's laws are built for a prop; one hand where both dance the same."""
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


def _holds(laws: list[Law], prop: Prop, exact: float, pace: Pace) -> bool:
    """Whether one of a hand's laws is taut and asks no more than may be asked."""
    beats_per_second = exact * (1 - _ROUNDING)  # what is met exactly is kept
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
    """Largest torque of the hand at the looks taken [N·m].

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
    Source: as peaks.py, which proves it.
    """
    shifted = prop.mass * prop.centre_of_mass
    driven = prop.inertia * motion.tether_acceleration + shifted * motion.hand_acceleration
    moving = beats_per_second**2 * np.linalg.norm(np.cross(motion.tether, driven), axis=-1)
    level = np.hypot(motion.tether[..., 0], motion.tether[..., 1])
    return float(np.max(moving + abs(shifted) * GRAVITY * level))
