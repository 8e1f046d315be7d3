"""What stands out in a song, for stops and poses: accents, breaks, builds and drops, by the beats of its count.

An accent is one stroke alone that the bars around it do not have; a break is quiet for a few beats before the music goes on; a build grows over bars; a drop is the
beat on which the full music falls in. All is judged within the song: levels against the beats beside them, fullness by
ranks among the song's own beats.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.timing.loudness import SAME_LOUDNESS, percentile_ranks
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

HighlightKind = Literal["accent", "break", "build", "drop"]
STEP = 0.5  # [beats] to which breaks and accents are told
_TENTHS = 10  # values of loudness per second
_QUIET = 10.0  # [dB] below the part that follows: a break
_BREAK = 1.0  # [beats] the shortest
_LONGEST_BREAK = 8.0  # [beats] what is quiet for longer is a calm part
_AFTER = 4.0  # [beats] of the part that follows
_STRIKING = 0.8  # [1] least strength of an accent
_LESSER = 0.6  # [1] of an accent's strength: strokes beside it must be weaker
_BEFORE, _BEHIND = 0.4, 1.3  # [beats] that belong to an accent alone
_ON = 0.2  # [beats] an accent lies no further from a half beat
_ALIKE_BARS = 8  # bars on either side in which another stroke at the same place of the bar makes it a figure of the music
_HANDFUL = 5  # accents of a song: the strongest
_LENGTHS = (32, 24, 16, 12)  # [beats] of a build, longest first
_GROWS = 0.75  # rank correlation of fullness with time in a build
_RISE = 0.3  # [1] of the way from the song's calm beats to its full ones: its last quarter over its first
_GOES_ON = 1.5  # [dB] by which the music after a build is louder still, if there is such a bar
_LOUDER = 2.0  # [dB] at least, so that no even stretch is a build
_PAIR = 2  # beats over which fullness is taken
_SUDDEN = (
    0.6  # [1] of a build's rise that one pair of beats may bring: more is a new part, not a build
)
_OFTEN = 32  # [beats] for each break: where there are more, most of them are a figure of the music
_LONGER = 1.5  # [1] times the usual length of such, from which one is a break all the same
_SILENT = 30.0  # [dB] below the part that follows: no music
_JUMP, _JUMP_AFTER = (
    6.0,
    2.0,
)  # [dB] at a drop: on its own, and where a build or a break leads to it
_FULL = 0.45  # [1] rank of the eight beats from a drop on, at least; 0.5 where all are alike
_HELD = 3.0  # [dB] by which they may become softer again: one loud beat is no drop
_EIGHT = 8  # beats
_LEADS = 4.5  # [beats] at most from the end of a build to the drop that it leads to
_FAR = 1000  # beats: no section begins there
_SAME_DENSITY, _SAME_BRIGHTNESS = 0.25, 0.02  # as among eights: what spans less is even


@dataclass(frozen=True, slots=True, kw_only=True)
class Highlight:
    """Something in the song that stands out."""

    kind: HighlightKind
    start: float  # [beats] coordinate in the tempo map
    end: float  # [beats] equal to start for an accent and a drop
    strength: float  # accent: of its stroke; break, build and drop: [dB] by which the music changes


def highlights(song: Song, count: TempoMap) -> tuple[Highlight, ...]:
    """All that stands out, by time; of several at one beat, breaks and builds first.

    Parameters
    ----------
    song : Song
        Without loudness and strokes, as one made by hand, nothing stands out.
    count : TempoMap
        Of the song, with its corrections.

    Notes
    -----
    Source: module docstring; thresholds are this project's choice. To a half beat.
    """
    first, last = float(count.knots[0]), float(count.knots[-1])
    quiet = _rare(breaks(song, count, first, last), song, count)
    growing = _builds(song, count, quiet)
    found = [
        *(Highlight(kind="break", start=a, end=b, strength=_rise_at(song, count, b)) for a, b in quiet),
        *growing,
        *_drops(song, count, quiet, growing),
        *(Highlight(kind="accent", start=at, end=at, strength=own) for at, own in _alone(struck(song, count, first, last), song, count)),
    ]  # fmt: skip
    return tuple(sorted(found, key=lambda each: (each.start, -each.end)))


def struck(
    song: Song, count: TempoMap, first: float, last: float
) -> tuple[tuple[float, float], ...]:
    """Accents between two beats: strong strokes with nothing near as strong close by, to the half beat, and their strength."""
    beats, strengths = count.beats_from_seconds(np.array(song.onsets)), np.array(song.onset_strengths)  # fmt: skip
    found: dict[float, float] = {}
    for beat, strength in zip(beats, strengths, strict=True):
        half = round(beat / STEP) * STEP
        if strength < _STRIKING or abs(beat - half) > _ON or not first <= half <= last:
            continue
        near = (beats >= beat - _BEFORE) & (beats <= beat + _BEHIND) & (beats != beat)
        if not np.any(strengths[near] >= _LESSER * strength):
            found.setdefault(float(half), float(strength))
    return tuple(found.items())


def _alone(
    found: tuple[tuple[float, float], ...], song: Song, count: TempoMap
) -> list[tuple[float, float]]:
    """Of accents the strongest few that come neither again, at the same place of a bar nearby, nor as the music only begins."""
    beats, strengths = count.beats_from_seconds(np.array(song.onsets)), np.array(song.onset_strengths)  # fmt: skip
    bars, places = _in_bars(beats, count)
    begun = _begun(song, count)
    kept = []
    for at, own in found:
        if at - _AFTER < begun:
            continue
        bar, place = _in_bars(np.array([at]), count)
        near = (bars != bar) & (np.abs(bars - bar) <= _ALIKE_BARS) & (np.abs(places - place) <= _ON)
        if not np.any(strengths[near] >= _LESSER * own):
            kept.append((at, own))
    return sorted(kept, key=lambda each: -each[1])[:_HANDFUL]


def _in_bars(beats: Floats, count: TempoMap) -> tuple[Ints, Floats]:
    """Which bar each beat is in, and how many beats after its first; a stroke just before a bar belongs to it."""
    starts = np.array(count.bars, dtype=np.float64)
    bar: Ints = np.searchsorted(starts, beats + _ON, side="right") - 1
    return bar, beats - starts[np.maximum(bar, 0)]


def _begun(song: Song, count: TempoMap) -> float:
    """The beat on which the music begins: with its first bar, or later if that is still silent."""
    first = float(count.bars[0])
    loud = np.array(song.loudness)
    if not len(loud):
        return first
    sounds = np.flatnonzero(loud >= np.percentile(loud, 90) - _SILENT)
    return max(first, float(count.beats_from_seconds(sounds[0] / _TENTHS)))


def breaks(
    song: Song, count: TempoMap, first: float, last: float
) -> tuple[tuple[float, float], ...]:
    """Spans of half beats, between two beats, that are all much quieter than the beats after them."""
    if not song.loudness:
        return ()
    edges = np.arange(np.ceil(first / STEP), np.floor(last / STEP) + 1) * STEP
    level = levels_between(song, count, edges)
    after = round(_AFTER / STEP)
    least, most = round(_BREAK / STEP), round(_LONGEST_BREAK / STEP)
    found = []
    start = 0
    for end in range(least, len(level) - after + 1):
        loud = power_level(level[end : end + after])
        quiet = level < loud - _QUIET
        if quiet[end] or not quiet[end - 1]:
            continue
        length = _run(quiet[start:end])
        if least <= length <= most:
            found.append((float(edges[end - length]), float(edges[end])))
            start = end
    return tuple(found)


def levels_between(song: Song, count: TempoMap, edges: Floats) -> Floats:
    """Loudness between neighbouring beats, shape (len(edges) − 1,) [dB]; the song must have loudness."""
    # A value stands for the tenth of a second around its time.
    at = np.clip(count.seconds_from_beats(edges) * _TENTHS + 0.5, 0, len(song.loudness))
    values = np.array(song.loudness)
    total = np.concatenate([[0.0], np.cumsum(values)])
    sums = np.diff(np.interp(at, np.arange(len(total)), total))
    means: Floats = sums / np.maximum(np.diff(at), 1e-9)
    return means


def power_level(levels: Floats) -> float:
    """Level of the mean power of several levels [dB]."""
    return float(10 * np.log10(np.mean(10 ** (levels / 10))))


def _rare(
    found: tuple[tuple[float, float], ...], song: Song, count: TempoMap
) -> tuple[tuple[float, float], ...]:
    """Breaks into which the music falls, without those that are a figure of it, again and again."""
    kept = []
    for start, end in found:
        if start - _AFTER < float(count.knots[0]):
            continue  # the song only begins
        before = levels_between(song, count, start + np.array([-_AFTER, 0.0]))
        after = levels_between(song, count, end + np.array([0.0, _AFTER]))
        if before[0] >= after[0] - _QUIET:
            kept.append((start, end))
    lengths = [end - start for start, end in kept]
    if len(kept) * _OFTEN <= len(count.times):
        return tuple(kept)
    least = _LONGER * float(np.median(lengths))
    return tuple(each for each, length in zip(kept, lengths, strict=True) if length >= least)


def _builds(song: Song, count: TempoMap, quiet: tuple[tuple[float, float], ...]) -> list[Highlight]:
    """Stretches that grow into a bar, or into a break before it.

    Those into a section come first, then those into louder music, then the longest.
    """
    if not song.loudness or len(count.times) < 2 * _EIGHT:
        return []
    low = float(count.knots[0])
    full, level = _fullness(song, count), levels_between(song, count, count.knots)
    found: list[Highlight] = []
    ends = sorted({int(bar - low) for bar in count.bars} | {round(a - low) for a, _ in quiet})
    borders = {round(float(count.beats_from_seconds(each.start)) - low) for each in song.sections}
    ways = [(end, length) for length in _LENGTHS for end in ends]
    ways.sort(key=lambda way: (_way_to(way[0], borders), not _falls_in(level, way[0])))
    for end, length in ways:
        start = end - length
        if start < 0 or end > len(full) or _meets(found, low + start, low + end):
            continue
        if any(start < border < end for border in borders):
            continue  # it leads into a section, not over its border
        louder = _rise_of(_pairs(level[start:end]))
        if louder >= _LOUDER and _grows(_pairs(full[start:end])):
            found.append(Highlight(kind="build", start=low + start, end=low + end, strength=louder))
    return found


def _way_to(end: int, borders: set[int]) -> int:
    """Beats from where a build ends to the section that begins there, or after the break into which it grows."""
    return min((each - end for each in borders if 0 <= each - end <= _LEADS), default=_FAR)


def _falls_in(level: Floats, beat: int) -> bool:
    """Whether the music is clearly louder from a beat on than just before it."""
    before, after = level[max(beat - 4, 0) : beat], level[beat : beat + 4]
    if not len(before) or not len(after):
        return False
    return power_level(after) - power_level(before) >= _GOES_ON


def _meets(found: list[Highlight], start: float, end: float) -> bool:
    return any(each.start < end and start < each.end for each in found)


def _grows(full: Floats) -> bool:
    """Whether fullness rises steadily, and not in one step."""
    rise = _rise_of(full)
    if rise < _RISE or float(np.diff(full).max()) > _SUDDEN * rise:
        return False
    return _order(full) >= _GROWS


def _fullness(song: Song, count: TempoMap) -> Floats:
    """How full each beat is between the song's calm and full ones: by loudness, strokes and brightness, shape (n − 1,) [1]."""
    knots = count.knots
    shares = [_between_calm_and_full(levels_between(song, count, knots), SAME_LOUDNESS)]
    if song.onsets:
        strokes = count.beats_from_seconds(np.array(song.onsets))
        dense = np.histogram(strokes, knots, weights=np.array(song.onset_strengths))[0]
        shares.append(_between_calm_and_full(dense.astype(np.float64), _SAME_DENSITY))
    if song.brightness:
        spot = (np.arange(len(song.brightness)) + 0.5) / len(song.brightness) * song.duration
        middle = 0.5 * (count.times[1:] + count.times[:-1])
        bright = np.interp(middle, spot, np.array(song.brightness))
        shares.append(_between_calm_and_full(bright, _SAME_BRIGHTNESS))
    # loudness counts as much as how busy and how bright it is together
    weights = [max(len(shares) - 1, 1), *[1] * (len(shares) - 1)]
    return np.asarray(np.average(shares, axis=0, weights=weights))


def _between_calm_and_full(values: Floats, apart: float) -> Floats:
    """0 at the song's tenth percentile and below, 1 at its ninetieth and above; drawn together where these are not `apart`."""
    low, high = np.percentile(values, [10, 90])
    return np.asarray(np.clip((values - low) / max(high - low, apart), 0.0, 1.0))


def _drops(
    song: Song,
    count: TempoMap,
    quiet: tuple[tuple[float, float], ...],
    growing: list[Highlight],
) -> list[Highlight]:
    """First beats of bars on which the full music falls in."""
    knots = count.knots
    if not song.loudness or len(knots) < 2 * _EIGHT:
        return []
    level = levels_between(song, count, knots)
    fallen = [power_level(level[k : k + _EIGHT]) for k in range(len(level))]
    ranks = percentile_ranks(fallen, apart=SAME_LOUDNESS)
    leads = [b for _, b in quiet] + [each.end for each in growing]
    found: list[Highlight] = []
    for bar in count.bars:
        k = int(bar - knots[0])
        if k < _EIGHT or k + _EIGHT > len(level) or ranks[k] < _FULL:
            continue
        if bar == count.bars[0] or level[max(k - _EIGHT - 1, 0) : k].max() < fallen[k] - _SILENT:
            continue  # the music only begins, after a count-in or silence
        led = any(0 <= bar - end <= _LEADS for end in leads)
        jump = fallen[k] - power_level(level[max(k - (2 if led else 4), 0) : k])
        here, on = power_level(level[k : k + 4]), power_level(level[k + 4 : k + _EIGHT])
        held = on >= here - _HELD and here >= fallen[k] - _HELD  # nor is the loud beat a bar later
        if held and jump >= (_JUMP_AFTER if led else _JUMP):
            found.append(Highlight(kind="drop", start=float(bar), end=float(bar), strength=jump))
    return _strongest_apart(found)


def _strongest_apart(found: list[Highlight]) -> list[Highlight]:
    """Of drops within eight beats of each other the strongest."""
    kept: list[Highlight] = []
    for each in sorted(found, key=lambda one: (-one.strength, one.start)):
        if all(abs(each.start - other.start) > _EIGHT for other in kept):
            kept.append(each)
    return kept


def _rise_at(song: Song, count: TempoMap, beat: float) -> float:
    """By how much the beats after a beat are louder than the one before [dB]."""
    edges = beat + np.array([-1.0, 0.0, _AFTER])
    before, after = levels_between(song, count, edges)
    return float(after - before)


def _rise_of(values: Floats) -> float:
    quarter = max(len(values) // 4, 1)
    return float(values[-quarter:].mean() - values[:quarter].mean())


def _order(values: Floats) -> float:
    """Rank correlation with time; equal values share their rank."""
    ranks = percentile_ranks(values, apart=1e-9)
    time = np.arange(len(values)) - (len(values) - 1) / 2
    spread = float(np.sqrt(np.sum((ranks - ranks.mean()) ** 2) * np.sum(time**2)))
    return float(np.sum(ranks * time)) / spread if spread > 0 else 0.0


def _pairs(values: Floats) -> Floats:
    """Means of two beats at a time; there is an even number of them."""
    return np.asarray(values.reshape(-1, _PAIR).mean(axis=1))


def _run(quiet: Bools) -> int:
    """How many there are in a row at the end."""
    loud = np.flatnonzero(~quiet)
    return len(quiet) - (int(loud[-1]) + 1 if len(loud) else 0)
