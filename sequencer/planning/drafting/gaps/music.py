"""What the song gives to each eight: how full it is, how busy, how bright; and where it strikes or holds its breath."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Floats
from sequencer.timing.highlights import breaks, highlights, power_level, struck
from sequencer.timing.loudness import SAME_LOUDNESS, percentile_ranks
from sequencer.timing.phrases import phrases
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_TENTHS = 10  # values of loudness per second
_SAME_DENSITY = 0.25  # [strokes/beat] eights that differ by less are equally busy
_SAME_BRIGHTNESS = 0.02  # [1] of the scale of bands
_COUNTED = 0.3  # [1] strength from which a stroke makes a passage busy


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
    drops: tuple[float, ...] = ()  # [beats] where the full music falls in


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
        accents=tuple(beat for beat, _ in struck(song, count, first, last)),
        breaks=breaks(song, count, first, last),
        drops=tuple(each.start for each in highlights(song, count) if each.kind == "drop"),
    )


def shares_below(values: Sequence[float], among: Sequence[float]) -> Floats:
    """The place of each value among others, from 0 for less than all to 1 for more than all; equals share theirs.

    Parameters
    ----------
    values, among : sequence of float [same unit]

    Returns
    -------
    places : ndarray, shape (n,) [1]

    Notes
    -----
    Source: mean ranks, their definition. Exact.
    """
    own, others = np.round(values, 6)[:, None], np.round(among, 6)
    before = np.sum(others < own, axis=1) + 0.5 * np.sum(others == own, axis=1) - 0.5
    if len(others) < 2:
        return np.full(len(own), 0.5)
    return np.asarray(np.clip(before / (len(others) - 1), 0.0, 1.0))


def _level(song: Song, start: float, end: float) -> float:
    """Loudness of a span [dB]; 0 for a song without."""
    if not song.loudness:
        return 0.0
    low = min(round(start * _TENTHS), len(song.loudness) - 1)
    high = max(round(end * _TENTHS), low + 1)
    return power_level(np.array(song.loudness[low:high]))


def _mean(curve: tuple[float, ...], duration: float, start: float, end: float) -> float:
    """Mean of an evenly spaced curve over a span; 0 if there is no curve."""
    if not curve:
        return 0.0
    low = min(int(start / duration * len(curve)), len(curve) - 1)
    high = max(int(np.ceil(end / duration * len(curve))), low + 1)
    return float(np.mean(curve[low:high]))
