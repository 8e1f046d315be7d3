"""Bars laid on beats in the context of the whole song, and the other ways to lay them as readings."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats, Ints
from sequencer.listening.activations import Activations
from sequencer.listening.bar_starts.bar_chances import chance_of_ones
from sequencer.listening.bar_starts.bar_choice import (
    BAR_METRES,
    BarWays,
    bar_ways,
    laid_bars,
    scored_by_beat,
)
from sequencer.listening.bar_starts.bar_evidence import bar_evidence
from sequencer.listening.levels import Counted
from sequencer.listening.signal.spectra import FRAMES
from sequencer.timing.song import Reading

_SAME = 0.12  # octaves within which two tempi are one
_UNTRIED = -1.5  # [nats/beat] of a metre that the search did not try
_TOLD = 0.01  # share from which a reading is told


@dataclass(frozen=True, slots=True, eq=False)
class LaidBars:
    """Bars on the beats of a song.

    Parameters
    ----------
    places : ndarray, shape (n,) [1]
        Of each beat in its bar, from 0.
    metres : ndarray, shape (n,) [1]
        Beats per bar of the metre that holds at each beat.
    metre : int
        Of most beats.
    phase : int
        Place of the first beat that is a one in most bars of that metre, 0 … metre − 1.
    ways : BarWays
        All ways to lay them through the whole song.
    ones : ndarray, shape (n,) [1]
        Probability that each beat is a one.
    """

    places: Ints
    metres: Ints
    metre: int
    phase: int
    ways: BarWays
    ones: Floats


def bars_in_context(
    times: Floats, heard: Activations, chroma: NDArray[np.float16], counted: list[Counted]
) -> LaidBars:
    """The best bars on these beats.

    Parameters
    ----------
    times : ndarray, shape (n,) [s]
        Beats, rising.
    heard : Activations
    chroma : ndarray, shape (m, 12) [1]
        See `Spectra`.
    counted : list of Counted
        What the search for beats found, most likely first, at least one.

    Returns
    -------
    laid : LaidBars

    Notes
    -----
    Source: `bar_choice`.
    """
    evidence = bar_evidence(times, heard, chroma, BAR_METRES)
    ways = bar_ways(evidence, heard.metres, metre_odds(counted), counted[0].path.metre)
    score = scored_by_beat(evidence, ways, _metres_at(times, heard))
    metres, places = laid_bars(score)
    metre = int(np.bincount(metres).argmax())
    ones = np.flatnonzero((places == 0) & (metres == metre))
    phase = int(np.bincount(ones % metre).argmax()) if len(ones) else 0
    return LaidBars(places, metres, metre, phase, ways, chance_of_ones(score))


def _metres_at(times: Floats, heard: Activations) -> Floats | None:
    """Log probability of each metre at each beat, shape (n, 8) [nats]; None where it is not known."""
    if not len(heard.metres_there):
        return None
    frames = np.clip(np.round(times * FRAMES).astype(np.int64), 0, len(heard.metres_there) - 1)
    return heard.metres_there[frames].astype(np.float64)


def metre_odds(counted: list[Counted]) -> dict[int, float]:
    """How much less likely than the best each metre is at the tempo of the first way [nats/beat]."""
    first = counted[0]
    best: dict[int, float] = {}
    for way in counted:
        if abs(np.log2(way.tempo / first.tempo)) < _SAME:
            best.setdefault(way.path.metre, way.value)
    top, beats = max(best.values()), len(first.path.frames)
    return {metre: max((value - top) / beats, _UNTRIED) for metre, value in best.items()}


def shifted_readings(
    readings: tuple[Reading, ...], laid: LaidBars, times: Floats
) -> tuple[Reading, ...]:
    """Readings with those of the tempo that is used told apart by metre and by where the one lies.

    Parameters
    ----------
    readings : tuple of Reading
        Most likely first; the first is the one used.
    laid : LaidBars
    times : ndarray, shape (n,) [s]
        The beats, at least as many as the longest bar has.

    Returns
    -------
    readings : tuple of Reading
        The bars as they are laid first; the shares sum to what they did, but for those below 1 %, which are left out.

    Notes
    -----
    Source: `BarWays.shares`.
    """
    first = readings[0]
    same = [r for r in readings if abs(np.log2(r.tempo / first.tempo)) < _SAME]
    share = sum(reading.share for reading in same)
    shares: dict[tuple[int, int], float] = {(laid.metre, laid.phase): 0.0}
    for metre, phase, chance in zip(
        laid.ways.metres.tolist(), laid.ways.phases.tolist(), laid.ways.shares, strict=True
    ):
        way = (metre, phase if metre == laid.metre else -1)
        shares[way] = shares.get(way, 0.0) + share * float(chance)
    told = [
        Reading(
            tempo=first.tempo,
            metre=metre,
            share=round(chance, 4),
            one=round(float(times[phase]), 4) if phase >= 0 else -1.0,
        )
        for (metre, phase), chance in shares.items()
    ]
    rest = [*told[1:], *(reading for reading in readings if reading not in same)]
    return (
        told[0],
        *sorted((r for r in rest if r.share >= _TOLD), key=lambda r: -r.share),
    )
