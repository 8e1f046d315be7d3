"""What the song gives to each eight: how full it is, how busy, how bright; and where it strikes or holds its breath."""

from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.timing.loudness import SAME_LOUDNESS, percentile_ranks
from sequencer.timing.phrases import phrases
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_TENTHS = 10  # values of loudness per second
_SAME_DENSITY = 0.25  # [strokes/beat] eights that differ by less are equally busy
_SAME_BRIGHTNESS = 0.02  # [1] of the scale of bands
_COUNTED = 0.3  # [1] strength from which a stroke makes a passage busy
_QUIET = 10.0  # [dB] below the part that follows: a break
_BREAK = 1.0  # [beats] the shortest
_LONGEST_BREAK = 8.0  # [beats] what is quiet for longer is a calm part
_AFTER = 4.0  # [beats] of the part that follows
_STEP = 0.5  # [beats] to which breaks and accents are told
_STRIKING = 0.8  # [1] least strength of an accent
_LESSER = 0.6  # [1] of an accent's strength: strokes beside it must be weaker
_BEFORE, _BEHIND = 0.4, 1.3  # [beats] that belong to an accent alone
_ON = 0.2  # [beats] an accent lies no further from a half beat


@dataclass(frozen=True, slots=True, kw_only=True)
class MusicEight:
    """A phrase of the song, mostly eight beats, and how it compares with the others; ranks from 0 to 1, 0.5 on the mean."""

    section: str  # name, unique in the song
    number: int  # in its section, from 1
    start: float  # [beats]
    end: float  # [beats]
    loudness: float  # [1] rank
    density: float  # [1] rank of strokes per beat
    brightness: float  # [1] rank


@dataclass(frozen=True, slots=True, kw_only=True)
class HeardMusic:
    """A song as a dancer hears it."""

    eights: tuple[MusicEight, ...]  # in order
    accents: tuple[float, ...]  # [beats] single strokes that stand out
    breaks: tuple[
        tuple[float, float], ...
    ]  # [beats] quiet before a loud part, which begins at the end


def heard_music(song: Song, count: TempoMap) -> HeardMusic:
    """What a song gives to each of its eights, and its accents and breaks.

    Parameters
    ----------
    song : Song
        Without loudness and strokes, as one made by hand, all eights are alike and there are no accents or breaks.
    count : TempoMap
        Of the song, with its corrections.

    Returns
    -------
    music : HeardMusic
        Without eights where no beat was heard.
    """
    cut = phrases(song)
    spans = [(p.start, p.end) for p in cut]
    onsets, strengths = np.array(song.onsets), np.array(song.onset_strengths)
    loudness = percentile_ranks([_level(song, a, b) for a, b in spans], apart=SAME_LOUDNESS)
    dense = onsets[strengths >= _COUNTED]
    density = percentile_ranks(
        [
            float(np.sum((dense >= a) & (dense < b))) / p.counts
            for p, (a, b) in zip(cut, spans, strict=True)
        ],
        apart=_SAME_DENSITY,
    )
    brightness = percentile_ranks(
        [_mean(song.brightness, song.duration, a, b) for a, b in spans], apart=_SAME_BRIGHTNESS
    )
    eights = tuple(
        MusicEight(
            section=p.section,
            number=p.number,
            start=float(count.beats_from_seconds(p.start)),
            end=float(count.beats_from_seconds(p.end)),
            loudness=float(loudness[k]),
            density=float(density[k]),
            brightness=float(brightness[k]),
        )
        for k, p in enumerate(cut)
    )
    if not eights:
        return HeardMusic(eights=(), accents=(), breaks=())
    first, last = eights[0].start, eights[-1].end
    return HeardMusic(
        eights=eights,
        accents=_accents(count.beats_from_seconds(onsets), strengths, first, last),
        breaks=_breaks(song, count, first, last),
    )


def _level(song: Song, start: float, end: float) -> float:
    """Loudness of a span [dB]; 0 for a song without."""
    if not song.loudness:
        return 0.0
    low = min(round(start * _TENTHS), len(song.loudness) - 1)
    high = max(round(end * _TENTHS), low + 1)
    return _power_level(np.array(song.loudness[low:high]))


def _power_level(levels: Floats) -> float:
    return float(10 * np.log10(np.mean(10 ** (levels / 10))))


def _mean(curve: tuple[float, ...], duration: float, start: float, end: float) -> float:
    """Mean of an evenly spaced curve over a span; 0 if there is no curve."""
    if not curve:
        return 0.0
    low = min(int(start / duration * len(curve)), len(curve) - 1)
    high = max(int(np.ceil(end / duration * len(curve))), low + 1)
    return float(np.mean(curve[low:high]))


def _accents(beats: Floats, strengths: Floats, first: float, last: float) -> tuple[float, ...]:
    """Strong strokes with nothing near as strong close by, to the half beat."""
    found = []
    for beat, strength in zip(beats, strengths, strict=True):
        half = round(beat / _STEP) * _STEP
        if strength < _STRIKING or abs(beat - half) > _ON or not first <= half <= last:
            continue
        near = (beats >= beat - _BEFORE) & (beats <= beat + _BEHIND) & (beats != beat)
        if not np.any(strengths[near] >= _LESSER * strength):
            found.append(float(half))
    return tuple(dict.fromkeys(found))


def _breaks(
    song: Song, count: TempoMap, first: float, last: float
) -> tuple[tuple[float, float], ...]:
    """Spans of half beats that are all much quieter than the beats after them."""
    if not song.loudness:
        return ()
    edges = np.arange(np.ceil(first / _STEP), np.floor(last / _STEP) + 1) * _STEP
    # A value stands for the tenth of a second around its time.
    at = np.clip(count.seconds_from_beats(edges) * _TENTHS + 0.5, 0, len(song.loudness))
    level = _means(np.array(song.loudness), at)
    after = round(_AFTER / _STEP)
    least, most = round(_BREAK / _STEP), round(_LONGEST_BREAK / _STEP)
    found = []
    start = 0
    for end in range(least, len(level) - after + 1):
        loud = _power_level(level[end : end + after])
        quiet = level < loud - _QUIET
        if quiet[end] or not quiet[end - 1]:
            continue
        length = _run(quiet[start:end])
        if least <= length <= most:
            found.append((float(edges[end - length]), float(edges[end])))
            start = end
    return tuple(found)


def _means(values: Floats, at: Floats) -> Floats:
    """Means between places of a row of values, which may lie within one; shape (len(at) − 1,)."""
    total = np.concatenate([[0.0], np.cumsum(values)])
    sums = np.diff(np.interp(at, np.arange(len(total)), total))
    means: Floats = sums / np.maximum(np.diff(at), 1e-9)
    return means


def _run(quiet: Bools) -> int:
    """How many there are in a row at the end."""
    loud = np.flatnonzero(~quiet)
    return len(quiet) - (int(loud[-1]) + 1 if len(loud) else 0)
