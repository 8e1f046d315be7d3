"""Ways to count a track: every likely metre at every tempo level, decoded and compared by likelihood.

A level is the tempo, half of it or double; within a path no tempo is twice another, since nobody counts a
few bars of a song half as fast. Levels that fit the sound equally well are ranked by closeness to 120 beats
per minute, the tempo at which people prefer to tap.
Source: L. van Noorden, D. Moelants, Resonance in the perception of musical pulse, Journal of New Music
Research 28 (1999): resonance about a period of 0.5 s; its width in nats is fitted (benchmarks).
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.barpointer import FPS, Path, decode, intervals
from sequencer.timing.song import Reading

METRES = (2, 3, 4, 5, 6, 7)  # beats per bar to consider
_DOUBT = 4.0  # [nats/bar] a metre less likely than the best by more than this is not decoded
_FOUR = 0.6  # [nats/beat] prior in favour of four beats, as in most dance music
_PREFERRED = 120.0  # [beats/min]
_PREFERENCE = 4.0  # [nats/beat] per squared octave away from it
_BAND = 0.34  # natural logarithm of the ratio to a level's tempo; both ways less than an octave
_FLIP = 0.12  # octaves from a half or double within which a span is at another level
_STRETCH = 8  # beats
_HEARD = (
    0.1  # fraction of the mean beat probability that every other and every third beat must have
)
_INVENTED = 4.0  # [nats/beat] penalty on a level where it has not
_WINDOW = 20 * 60 * FPS  # [frames] decoded at a time
_OVERLAP = 60 * FPS


@dataclass(frozen=True, slots=True, eq=False)
class Counted:
    """One way to count a track."""

    path: Path
    value: float  # [nats] its log odds, including the priors on metre and tempo

    @property
    def tempo(self) -> float:
        """Median tempo [beats/min]."""
        return 60.0 * FPS / float(np.median(np.diff(self.path.frames)))


def ways_to_count(beat: Floats, downbeat: Floats, metres: Floats) -> list[Counted]:
    """Ways to count a track, most likely first.

    Parameters
    ----------
    beat : ndarray, shape (n,) [1]
        Probability of a beat at each frame of the search.
    downbeat : ndarray, shape (n,) [1]
    metres : ndarray, shape (8,) [nats]
        Log probability of each metre per bar, see `Activations`.

    Returns
    -------
    ways : list of Counted
        Empty if no path has at least two beats.

    Notes
    -----
    Source: module docstring. Each path is an exact maximum.
    """
    top = max(metres[metre] for metre in METRES)
    weighed = [metre for metre in METRES if metres[metre] > top - _DOUBT]
    free = {
        metre: path
        for metre in weighed
        if (path := decoded(beat, downbeat, metre)) is not None and len(path.frames) > 1
    }
    if not free:
        return []
    bars = max(len(path.frames) for path in free.values()) / 4
    likely = max(free, key=lambda metre: free[metre].score + bars * metres[metre])
    level = float(np.median(np.diff(free[likely].frames)))
    ways: list[Counted] = []
    for metre, path in free.items():
        own, whole = float(np.median(np.diff(path.frames))), not _flips(path)
        paths: list[Path | None] = [path] if whole else []
        others = (1.5 * level, level / 1.5) if metre == likely and {3, 6} & free.keys() else ()
        paths += [
            decoded(beat, downbeat, metre, near=tau)
            for tau in (level, level / 2, level * 2, *others)
            if not (whole and abs(np.log2(own / tau)) < _FLIP)
        ]
        ways += [
            Counted(one, _value(one, metres, bars) - _unheard(beat, one))
            for one in paths
            if one is not None and len(one.frames) > 1
        ]
    return sorted(ways, key=lambda way: -way.value)


def readings_of(ways: list[Counted]) -> tuple[Reading, ...]:
    """All ways with their probabilities, most likely first; those below 1 % are dropped.

    The odds are those of one mean beat, since neighbouring beats repeat the same evidence; the probability
    of the top level is then well calibrated (benchmarks).
    """
    values = np.array([way.value for way in ways])
    beats = max(len(ways[0].path.frames), 1)
    weight = np.exp(np.clip((values - values.max()) / beats, -60, 0))
    shares: dict[int, float] = {}  # keyed by the first way of each tempo and metre
    for number, share in enumerate(weight / weight.sum()):
        first = next(k for k in range(number + 1) if _alike(ways[k], ways[number]))
        shares[first] = shares.get(first, 0.0) + float(share)
    readings = [
        Reading(tempo=round(ways[k].tempo, 2), metre=ways[k].path.metre, share=round(share, 4))
        for k, share in shares.items()
    ]
    rest = sorted(readings[1:], key=lambda reading: -reading.share)
    return (readings[0], *(reading for reading in rest if reading.share >= 0.01))


def _alike(one: Counted, other: Counted) -> bool:
    near = abs(np.log2(one.tempo / other.tempo)) < _FLIP
    return one.path.metre == other.path.metre and bool(near)


def decoded(beat: Floats, downbeat: Floats, metre: int, near: float | None = None) -> Path | None:
    """Path through a whole track, at any tempo or near one interval [1/100 s]; None if there is none.

    Very long tracks are decoded in windows, joined in the middle of their overlap.
    """
    taus = intervals()
    if near is not None:
        taus = taus[np.abs(np.log(taus / near)) < _BAND]
        if not len(taus):
            return None
    if len(beat) <= _WINDOW + _OVERLAP:
        return decode(beat, downbeat, metre=metre, taus=taus)
    parts: list[Path] = []
    for start in range(0, len(beat) - _OVERLAP, _WINDOW):
        end = min(start + _WINDOW + _OVERLAP, len(beat))
        part = decode(beat[start:end], downbeat[start:end], metre=metre, taus=taus)
        low = start + _OVERLAP // 2 if start else 0
        high = end - _OVERLAP // 2 if end < len(beat) else end
        frames = part.frames + start
        kept = (frames >= low) & (frames < high)
        if parts and len(parts[-1].frames):
            kept &= frames > parts[-1].frames[-1] + 12  # not the same beat twice
        parts.append(Path(frames[kept], part.places[kept], part.breaks[kept], part.score, metre))
    columns = [
        np.concatenate([getattr(part, name) for part in parts])
        for name in ("frames", "places", "breaks")
    ]
    return Path(columns[0], columns[1], columns[2], sum(part.score for part in parts), metre)


def _value(path: Path, metres: Mapping[int, float] | Floats, bars: float) -> float:
    octaves = np.log2(60.0 * FPS / float(np.median(np.diff(path.frames))) / _PREFERRED)
    known = metres[path.metre] + (4 * _FOUR if path.metre == 4 else 0.0)
    return float(path.score + bars * known - _PREFERENCE * len(path.frames) * octaves**2)


def _unheard(beat: Floats, path: Path) -> float:
    """Penalty of a level at which every other, or every third, beat falls into silence [nats]."""
    near = np.clip(path.frames[:, None] + np.arange(-2, 3), 0, len(beat) - 1)
    chance = beat[near].max(axis=1)
    weakest = min(
        float(chance[k::step].mean()) for step in (2, 3) for k in range(min(step, len(chance)))
    )
    return 0.0 if weakest >= _HEARD * float(chance.mean()) else _INVENTED * len(path.frames)


def _flips(path: Path) -> bool:
    """True if some span is counted at half or double the tempo of the rest."""
    steps = np.diff(path.frames).astype(np.float64)
    if len(steps) < 2 * _STRETCH:
        return False
    local = np.median(np.lib.stride_tricks.sliding_window_view(steps, _STRETCH), axis=1)
    usual = np.sort(steps)[
        len(steps) // 2
    ]  # one of them: where half are twice the others, their mean lies between
    octaves = np.abs(np.log2(local / usual))
    return bool(np.any(np.abs(octaves - 1.0) < _FLIP))


__all__ = ["METRES", "Counted", "decoded", "readings_of", "ways_to_count"]
