"""Tension of the tether, the work of the hand, and how far a head flies if it comes off.

With a the head's acceleration in seconds and g = (0, 0, −9.80665) m/s²: tension T = −m·d·(a − g), force
across m·|(a − g) − d(d·(a − g))|. At λ beats a second −d·a = λ²·A with A = r|d'|² − d·h'' (since d is
a unit vector), so T > 0 everywhere means λ²·A > g·d_z everywhere, and the lowest tempo is the
largest of √(g·d_z/A): found by branch and bound with Lipschitz bounds on A and d_z from the law's proven
bounds, so no moment is missed. If the tether is level or hanging throughout, that is 0, which no relative
error can settle: a tempo of 0.1 beats per minute counts as 0. d_z is bounded by both its slope and its
curvature, or a level tether would be subdivided needlessly. Frame: body frame [m]; acceleration along the
walking path is not included.
Source: Newton's second law; docs/motion.md, section 6; release range R = (v/g)√(v² + 2gh), the
envelope of trajectories (any mechanics text).
"""

from dataclasses import asdict, dataclass
from math import inf, isfinite, sqrt

import numpy as np

from sequencer.arrays import Floats
from sequencer.facts.flames import STANDARD_GRAVITY
from sequencer.kept import remembering
from sequencer.motion.laws.law import Law
from sequencer.motion.laws.state import Motion

GRAVITY = STANDARD_GRAVITY  # [m/s²]
_SAMPLES = 4096  # samples of one period, for averages; the integrands are smooth and periodic
_LOOKS = 256  # samples of one period, for a bound
TEMPO_ERROR = 2e-6  # relative error of a lowest tempo
_ROUNDING = 1e-12  # of a unit vector's height
EVERY_TEMPO = 0.1  # [beats/min] a tether that is taut from this tempo on is taut at every tempo
FASTEST_TEMPO = 1000.0  # [beats/min] no music is faster
MOST_PARTS = 2_000_000
NARROWEST = (
    1e-9  # [beats] half-width of an undecided part: the head is at rest there, and not pulled
)


def pull(motion: Motion, *, length: float, mass: float, beats_per_second: float) -> Floats:
    """Tension of the tether; negative if it would have to push.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (..., 3) [body frame].
    length : float
        Length of the tether [m].
    mass : float
        Mass of the head [kg].
    beats_per_second : float
        Tempo [beats/s].

    Returns
    -------
    tension : ndarray, shape (...) [N]

    Notes
    -----
    Source: Newton's second law. Exact for a massless tether.
    """
    felt = motion.head_acceleration(length) * beats_per_second**2
    felt[..., 2] += GRAVITY
    return np.asarray(-mass * np.sum(motion.tether * felt, axis=-1))


def force_across(motion: Motion, *, length: float, mass: float, beats_per_second: float) -> Floats:
    """Force across the tether that the nominal path would need and a passive tether cannot provide.

    Parameters
    ----------
    motion : Motion
        Arrays of shape (..., 3) [body frame].
    length : float
        Length of the tether [m].
    mass : float
        Mass of the head [kg].
    beats_per_second : float
        Tempo [beats/s].

    Returns
    -------
    force : ndarray, shape (...) [N]

    Notes
    -----
    Source: docs/motion.md, section 6. Exact.
    """
    felt = motion.head_acceleration(length) * beats_per_second**2
    felt[..., 2] += GRAVITY
    along = np.sum(motion.tether * felt, axis=-1, keepdims=True) * motion.tether
    return np.asarray(mass * np.linalg.norm(felt - along, axis=-1))


@dataclass(frozen=True, slots=True, kw_only=True)
class HandWork:
    """Hand motion beyond the nominal path, if the head follows the law exactly."""

    largest: float  # [m] from the law's hand
    rms: float  # [m]
    peak_speed: float  # [m/s] of the hand as required by the head
    work: float  # [J/beat] done by the hand on the prop, not counting work returned
    peak_force: float  # [N] in the tether
    peak_across: float  # [N] across the nominal tether


@remembering(record=asdict, restore=lambda record: HandWork(**record))
def hand_work(law: Law, *, length: float, mass: float, tempo: float) -> HandWork:
    """Hand position required by a passive tether, compared with the nominal one.

    Parameters
    ----------
    law : Law
    length : float
        Length of the tether [m].
    mass : float
        Mass of the head [kg].
    tempo : float
        [beats a minute]

    Returns
    -------
    work : HandWork

    Raises
    ------
    ValueError
        If the law has no period, or the tempo is not positive.

    Notes
    -----
    Source: docs/motion.md, section 6: the required hand position is p + r·(a − g)/|a − g|. Maxima are taken
    over 4096 instants of a period (relative error below 1e-5 for the built-in laws): for information only,
    not used for verdicts.
    """
    beats_per_second = beats_a_second(tempo)
    if not isfinite(law.period):
        raise ValueError("hand work is an average over a period, and this law has none")
    beats = np.arange(_SAMPLES, dtype=np.float64) * (law.period / _SAMPLES)
    motion = law.at(beats)
    felt = motion.head_acceleration(length) * beats_per_second**2
    felt[..., 2] += GRAVITY
    size = np.linalg.norm(felt, axis=-1, keepdims=True)
    towards = felt / np.maximum(size, 1e-12)
    needed = motion.head(length) + length * towards
    away = np.linalg.norm(needed - motion.hand, axis=-1)
    step = law.period / _SAMPLES / beats_per_second
    velocity = (np.roll(needed, -1, axis=0) - np.roll(needed, 1, axis=0)) / (2 * step)
    power = mass * np.sum(felt * velocity, axis=-1)
    across = force_across(motion, length=length, mass=mass, beats_per_second=beats_per_second)
    return HandWork(
        largest=float(np.max(away)),
        rms=float(np.sqrt(np.mean(away**2))),
        peak_speed=float(np.max(np.linalg.norm(velocity, axis=-1))),
        work=float(np.mean(np.maximum(power, 0.0)) / beats_per_second),
        peak_force=float(mass * np.max(size)),
        peak_across=float(np.max(across)),
    )


@remembering(record=float, restore=float)
def most_hand_work(law: Law, *, length: float, tempo: float) -> float:
    """Proven bound on `HandWork.largest` [m], much cheaper than the work itself.

    Parameters
    ----------
    law : Law
    length : float
        Length of the tether [m].
    tempo : float
        [beats a minute]

    Raises
    ------
    ValueError
        If the law has no period, or the tempo is not positive.

    Notes
    -----
    The hand is off by r·|d + f/|f||, f = a − g: never more than 2r, and changing at most at
    r·(|d'| + |f'|/|f|), since the direction of f turns no faster than |f'|/|f|. With |f'| ≤ λ²·(|h'''| + r|d'''|)
    around each of 256 instants of a period.
    """
    beats_per_second = beats_a_second(tempo)
    if not isfinite(law.period):
        raise ValueError("hand work is an average over a period, and this law has none")
    half = law.period / _LOOKS / 2
    motion = law.at(half * (2.0 * np.arange(_LOOKS, dtype=np.float64) + 1.0))
    felt = motion.head_acceleration(length) * beats_per_second**2
    felt[..., 2] += GRAVITY
    size = np.linalg.norm(felt, axis=-1)
    away = np.linalg.norm(motion.tether + felt / np.maximum(size, 1e-12)[:, None], axis=-1)
    bounds = law.bounds()
    slope = beats_per_second**2 * (bounds.hand_jerk + length * bounds.turn_jerk)
    least = size - slope * half
    with np.errstate(divide="ignore"):
        turning = np.where(least > 0.0, slope / np.maximum(least, 0.0), inf)
    return length * min(2.0, float(np.max(away + half * (bounds.turn_rate + turning))))


@remembering(record=float, restore=float)
def leaves(law: Law, *, length: float, tempo: float, start: float, end: float) -> float:
    """Maximum deviation of the hand from its nominal path for a passive tether, over some beats [m].

    Parameters
    ----------
    law : Law
    length : float
        Length of the tether [m].
    tempo : float
        [beats a minute]
    start, end : float
        Span in the law's beats; for a periodic law, at most one period is sampled.

    Raises
    ------
    ValueError
        If the tempo is not positive.

    Notes
    -----
    Source: docs/motion.md, section 6. Sampled at 64 instants per beat, plus 2 mm, rounded up to the next
    whole centimetre; 2 mm is the most that a 0.6 m tether turning twice per beat can gain between samples:
    a margin, not a bound.
    """
    beats_per_second = beats_a_second(tempo)
    span = min(end - start, law.period)
    count = max(64, int(np.ceil(64 * span))) + 1
    motion = law.at(np.linspace(start, start + span, count, dtype=np.float64))
    felt = motion.head_acceleration(length) * beats_per_second**2
    felt[..., 2] += GRAVITY
    size = np.maximum(np.linalg.norm(felt, axis=-1, keepdims=True), 1e-12)
    away = np.linalg.norm(length * (motion.tether + felt / size), axis=-1)
    return float(np.ceil(100.0 * (np.max(away) + 0.002))) / 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class TautTempo:
    """Tempi at which a tether stays taut along a whole law."""

    lowest: float  # [beats/min]; 0 if every tempo keeps it taut, inf if none does
    error: float  # [beats/min] the true value is at most this much below `lowest`
    at: float  # [beats] at which it goes slack first
    highest: float = (
        inf  # [beats/min] it stays taut up to here: at faster tempi the hand overtakes the head
    )


@remembering(record=asdict, restore=lambda record: TautTempo(**record))
def lowest_tempo(
    law: Law, *, length: float, start: float = 0.0, end: float | None = None
) -> TautTempo:
    """The lowest tempo at which the tether stays taut along a whole law, proven.

    Parameters
    ----------
    law : Law
    length : float
        Length of the tether [m].
    start, end : float, optional
        Span in the law's beats; one period if no end is given.

    Returns
    -------
    tempo : TautTempo

    Raises
    ------
    ValueError
        If no end is given and the law has no period.

    Notes
    -----
    Source: module docstring. `lowest` is an upper bound of the true value, with the error stated; below
    0.1 beats per minute it is reported as 0. A moment at which no tempo helps (the head is not pulled
    outward while it is above the hand) gives inf.
    """
    stop = law.period + start if end is None else end
    if not isfinite(stop):
        raise ValueError("this law has no period; give its end")
    edges = np.linspace(start, stop, 257, dtype=np.float64)
    low, high = edges[:-1], edges[1:]
    bounds = law.bounds()
    if not isfinite(bounds.hand_jerk):
        raise ValueError("nothing is proven about this law's third derivative")
    slope = (
        2 * length * bounds.turn_rate * bounds.turn_acceleration
        + bounds.turn_rate * bounds.hand_acceleration
        + bounds.hand_jerk
    )
    best, where = 0.0, start
    none = (EVERY_TEMPO / 60.0) ** 2
    parts = 0
    while low.size:
        parts += low.size
        middle, half = (low + high) / 2, (high - low) / 2
        if parts > MOST_PARTS or half[0] < NARROWEST:
            return TautTempo(lowest=inf, error=inf, at=float(middle[0]))
        motion = law.at(middle)
        lift = motion.tether[:, 2]
        outward = length * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
            motion.tether * motion.hand_acceleration, axis=-1
        )
        up = lift > _ROUNDING
        if np.any((outward <= 0) & up):
            return TautTempo(lowest=inf, error=0.0, at=float(middle[(outward <= 0) & up][0]))
        with np.errstate(divide="ignore", invalid="ignore"):
            here = np.where(up, GRAVITY * lift / outward, 0.0)
        if np.max(here) > best:
            best, where = float(np.max(here)), float(middle[np.argmax(here)])
        climb = np.abs(motion.tether_rate[:, 2]) * half + bounds.turn_acceleration * half**2 / 2
        most_lift = lift + _ROUNDING + np.minimum(bounds.turn_rate * half, climb)
        least = outward - slope * half
        with np.errstate(divide="ignore", invalid="ignore"):
            upper = np.where(
                most_lift <= 0, 0.0, np.where(least > 0, GRAVITY * most_lift / least, inf)
            )
        again = upper > max(best * (1 + 2 * TEMPO_ERROR), none)
        low, middle, high = low[again], middle[again], high[again]
        low, high = np.concatenate((low, middle)), np.concatenate((middle, high))
    highest = _highest_tempo(law, length, edges, slope)
    if best <= none:
        return TautTempo(lowest=0.0, error=EVERY_TEMPO, at=where, highest=highest)
    top = sqrt(best * (1 + 2 * TEMPO_ERROR)) * 60.0
    return TautTempo(lowest=top, error=top - sqrt(best) * 60.0, at=where, highest=highest)


def _highest_tempo(law: Law, length: float, edges: Floats, slope: float) -> float:
    """Highest tempo [beats/min] at which the hand never overtakes the head; inf beyond any music.

    Where A < 0 the tether is kept taut only by the weight of the hanging head: λ² < g·d_z/A. The
    smallest such limit is found in the same way as the lowest tempo, and reported from below, to 10⁻³.
    """
    low, high = edges[:-1], edges[1:]
    bounds = law.bounds()
    best = (FASTEST_TEMPO / 60.0) ** 2
    while low.size:
        middle, half = (low + high) / 2, (high - low) / 2
        motion = law.at(middle)
        hang = np.maximum(-motion.tether[:, 2], 0.0)
        outward = length * np.sum(motion.tether_rate**2, axis=-1) - np.sum(
            motion.tether * motion.hand_acceleration, axis=-1
        )
        least = outward - slope * half - _ROUNDING
        least_hang = np.maximum(hang - bounds.turn_rate * half, 0.0)
        with np.errstate(divide="ignore", invalid="ignore"):
            here = np.where(outward < -_ROUNDING, GRAVITY * hang / -outward, inf)
            lower = np.where(least < 0, GRAVITY * least_hang / -least, inf)
        best = min(best, float(np.min(here)))
        again = lower < best * (1 - 2e-3)
        if half[0] < NARROWEST and np.any(again):
            return 0.0
        low, middle, high = low[again], middle[again], high[again]
        low, high = np.concatenate((low, middle)), np.concatenate((middle, high))
    if best >= (FASTEST_TEMPO / 60.0) ** 2:
        return inf
    return sqrt(best * (1 - 2e-3)) * 60.0


def farthest_flight(speed: float, height: float) -> float:
    """Bound on the range of a released head [m] at any angle: R = (v/g)·√(v² + 2gh).

    Parameters
    ----------
    speed : float
        [m/s]
    height : float
        Above the ground [m].
    """
    return speed / GRAVITY * sqrt(speed**2 + 2 * GRAVITY * max(height, 0.0))


def beats_a_second(tempo: float) -> float:
    """Tempo [beats/min] in beats per second.

    Raises
    ------
    ValueError
        If it is not positive and finite.
    """
    if not (isfinite(tempo) and tempo > 0):
        raise ValueError(f"tempo must be positive, got {tempo!r} beats per minute")
    return tempo / 60.0
