"""One tempo through a whole song: the grid of beats that a produced song was made on, fitted to the beats that were heard.

Heard beats may slip by a beat or half a beat for a while, as a search does that follows the sound; the grid does not. So it
is sought among halves of beats, in which such slips are whole steps.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats, Ints

_WIDE = 0.04  # [1] of the median tempo within which the grid's tempo is sought
_FINE = 0.1  # [turns] by which the last beat may be off between two tempos that are tried
_NEAR = 0.04  # [s] from the grid, or
_NEAR_SHARE = 0.1  # [1] of a beat, whichever is less: a beat that is on it
_ON_GRID = 0.85  # [1] of the beats that must be on it for the tempo to count as constant
_ON_BEAT = 0.75  # [1] of the beats that must lie on its beats; half beats off are slips
_SURE_HALF = 0.6  # [1] of those on it that tell which of the two are its beats
_END = 8  # beats at either end, of which
_STAYS = 0.75  # [1] must be on it, or the music slows down, or settles, there
_ROUNDS = 5
_FEWEST = 16  # beats
_RUN = 8  # bars that decide which beat is the one


@dataclass(frozen=True, slots=True, eq=False)
class ConstantGrid:
    """Beats at one tempo, and which of them begin bars.

    Parameters
    ----------
    beats : ndarray, shape (n,) [s]
    firsts : tuple of int
        Indices of the first beats of bars.
    on_grid : float
        Share of the heard beats that lie on it, or half a beat off.
    drifting : tuple of (float, float)
        Spans at the beginning and at the end in which the heard beats leave it [s]: there it is only counted on.
    """

    beats: Floats
    firsts: tuple[int, ...]
    on_grid: float
    drifting: tuple[tuple[float, float], ...] = ()


def constant_grid(
    beats: Sequence[float], stretches: Sequence[tuple[int, int]], duration: float
) -> ConstantGrid:
    """The grid of one tempo on which most heard beats lie.

    Parameters
    ----------
    beats : sequence of float [s]
        As they were heard, rising.
    stretches : sequence of (int, int)
        Where the heard count restarts: index of a first beat, and beats per bar from there on; see `Song.stretches`.
    duration : float
        Of the track [s].

    Returns
    -------
    grid : ConstantGrid
        From the first heard beat to the last.

    Raises
    ------
    ValueError
        If there are too few beats, too few of them lie on any grid, or too many lie between its beats.

    Notes
    -----
    Source: frequency with the largest resultant of the beats' phases (K. V. Mardia, P. E. Jupp, Directional Statistics, Wiley
    2000), then least squares over the beats that are near; from memory. To about 10 ms where 85 % of the beats are near.
    """
    times = np.asarray(beats, dtype=np.float64)
    if len(times) < _FEWEST:
        raise ValueError(f"{len(times)} beats are too few to tell whether the tempo is constant")
    half, start = _fitted(times, _likeliest_half(times))
    steps: Ints = np.round((times - start) / half).astype(np.int64)
    off = np.abs(times - start - steps * half)
    near = off <= min(_NEAR, _NEAR_SHARE * 2 * half)
    share = float(near.mean())
    if share < _ON_GRID:
        raise ValueError(
            f"the tempo is not constant: at {30.0 / half:.2f} beats a minute only {share:.0%} of the heard beats fall on its beats"
        )
    odd = float(np.mean(steps[near] % 2))
    if abs(odd - 0.5) < _SURE_HALF - 0.5:
        raise ValueError(
            "as many beats were heard between the beats of a constant tempo as on them"
        )
    if odd > 0.5:
        start, steps = start + half, np.asarray(steps - 1, dtype=np.int64)
    whole = float(np.mean(near & (steps % 2 == 0)))
    if whole < _ON_BEAT:
        raise ValueError(
            f"the tempo is not constant: at {30.0 / half:.2f} beats a minute only {whole:.0%} of the heard beats fall on its beats, "
            "and many between them"
        )
    first, last = int(np.round(steps[0] / 2)), int(np.round(steps[-1] / 2))
    number: Ints = np.arange(first, last + 1)
    grid: Floats = np.asarray(start + 2 * half * number, dtype=np.float64)
    inside = (grid >= 0) & (grid <= duration)
    number = np.asarray(number[inside], dtype=np.int64)
    firsts = _firsts(steps, stretches, number)
    return ConstantGrid(grid[inside], firsts, share, _drifting(times, near, duration))


def _drifting(times: Floats, near: Bools, duration: float) -> tuple[tuple[float, float], ...]:
    """Where the music leaves the grid at its ends, as a ritardando does, [s]."""
    begins, ends = _beats_off(near[::-1]), _beats_off(near)
    spans = [(0.0, float(times[begins - 1]))] if begins else []
    return (*spans, (float(times[-ends]), duration)) if ends else tuple(spans)


def _beats_off(near: Bools) -> int:
    """How many beats at the end are no longer on the grid, from the first that is not."""
    low = len(near)
    while low > 0 and near[max(low - _END, 0) : low].mean() < _STAYS:
        low = max(low - _END, 0)
    off = np.flatnonzero(~near[low:])
    return len(near) - low - int(off[0]) if len(off) else 0


def _likeliest_half(times: Floats) -> float:
    """Half a beat of the tempo about which the heard beats agree most [s]."""
    span = min(8, len(times) - 1)
    usual = float(np.median(times[span:] - times[:-span])) / span
    length = times[-1] - times[0]
    tries = max(round(2 * _WIDE * length * 2 / usual / _FINE), 8)
    rates = 2 / usual * np.linspace(1 - _WIDE, 1 + _WIDE, 2 * (tries // 2) + 1)
    agreed = [abs(np.exp(2j * np.pi * rate * times).sum()) for rate in rates]
    return 1 / float(rates[int(np.argmax(agreed))])


def _fitted(times: Floats, half: float) -> tuple[float, float]:
    """Half a beat, and a moment of the grid [s]: least squares over beats that are near."""
    start = float(np.angle(np.exp(2j * np.pi * times / half).sum()) / (2 * np.pi)) * half
    for _ in range(_ROUNDS):
        steps = np.round((times - start) / half)
        off = np.abs(times - start - steps * half)
        near = off <= max(_NEAR_SHARE * 2 * half, float(np.median(off)))
        if near.sum() < 2 or np.ptp(steps[near]) == 0:
            break
        half, start = (float(value) for value in np.polyfit(steps[near], times[near], 1))
    return half, start


def _firsts(steps: Ints, stretches: Sequence[tuple[int, int]], number: Ints) -> tuple[int, ...]:
    """Indices into the grid's numbers at which bars begin: as most bars of each long stretch were heard."""
    begins = [first for first, _ in stretches] or [0]
    metres = [metre for _, metre in stretches] or [4]
    ends = [*begins[1:], len(steps)]
    found: list[int] = []
    place, metre = None, metres[0]
    edge = int(number[0])
    for first, end, own in zip(begins, ends, metres, strict=True):
        long = (end - first) >= _RUN * own
        if place is not None and not long:
            continue
        before = place if place is not None and own == metre else None
        fresh = _place(steps[first:end:own], own, before)
        if place is None:
            place, metre = fresh, own
            continue
        if fresh != place or own != metre:
            until = int(np.round(steps[first] / 2))
            found += [n for n in range(edge, until) if n % metre == place]
            place, metre, edge = fresh, own, until
    last = int(number[-1]) + 1
    found += [n for n in range(edge, last) if n % metre == (place or 0)]
    kept = {int(n): k for k, n in enumerate(number)}
    return tuple(kept[n] for n in found if n in kept)


def _place(heard: Ints, metre: int, before: int | None) -> int:
    """Which number of the grid, modulo the metre, most heard first beats have; half a beat off counts for both sides."""
    votes = np.zeros(metre)
    for step in heard.tolist():
        for side in (step // 2, (step + 1) // 2):
            votes[side % metre] += 0.5
    if before is not None and votes[before] >= votes.max() - 1e-9:
        return before
    return int(np.argmax(votes))
