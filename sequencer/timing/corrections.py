"""A person's corrections to a song's count, applied over the detected beats.

Order of application: beats given by hand or at one tempo, then a constant tempo, half or double tempo, shift, metre, which
beat is one, sections. Moments written as bar.beat refer to the count at that stage: `one` in the count before it is
moved, sections in the corrected count.
"""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import floor
from typing import Literal

import numpy as np

from sequencer.arrays import Floats
from sequencer.timing.constant_tempo import constant_grid
from sequencer.timing.position import Clock, Moment, Position, SectionEdge, clock_text
from sequencer.timing.song import Reading, Section, Song
from sequencer.timing.tempo import TempoMap, median_tempo

Level = Literal["half", "double"]
LONGEST_SHIFT = 5.0  # [s] anything larger is a unit error (ms for s)
LONGEST_BAR = 16  # beats
_DOUBTED = 0.45  # [1] most that a bar is sure where the music leaves a constant tempo
_ALIKE = 0.12  # octaves by which the tempos of one reading may differ


@dataclass(frozen=True, slots=True, kw_only=True)
class Corrections:
    """Manual corrections of one song; an empty record changes nothing."""

    metre: int | None = None  # beats per bar
    one: Position | Clock | None = None  # a beat that is the first of its bar
    constant: bool = False  # one tempo through the whole song, fitted to the detected beats
    tempo: Level | None = None  # count half as fast, or twice as fast
    shift: float = 0.0  # [s] added to every beat
    sections: tuple[tuple[Moment, str], ...] = ()  # start and name of each
    beats: tuple[float, ...] = ()  # [s] tapped or imported; replace the detected beats
    downbeats: tuple[float, ...] = ()  # [s] a subset of `beats`; empty: the bars follow `metre`

    def __post_init__(self) -> None:
        if self.metre is not None and not 1 <= self.metre <= LONGEST_BAR:
            raise ValueError(f"metre must be 1 to {LONGEST_BAR} beats per bar, got {self.metre}")
        if self.tempo not in {None, "half", "double"}:
            raise ValueError(f"tempo must be 'half' or 'double', got {self.tempo!r}")
        if not abs(self.shift) <= LONGEST_SHIFT:  # also catches nan
            raise ValueError(
                f"shift must be within ±{LONGEST_SHIFT:g} s, got {self.shift:g} s (milliseconds?)"
            )
        if any(not name.strip() for _, name in self.sections):
            raise ValueError("every section needs a name")
        if self.beats and (len(self.beats) < 2 or not _rising(self.beats) or self.beats[0] < 0):
            raise ValueError("beats must be at least two increasing times in seconds, from 0 on")
        if not set(self.downbeats) <= set(self.beats) or not _rising(self.downbeats):
            raise ValueError("downbeats must be increasing, and each must be one of the beats")


def corrected(song: Song, corrections: Corrections) -> Song:
    """The song with the corrections applied.

    Raises
    ------
    ValueError
        If a correction does not fit this song: no beats to correct, a moment outside the track, two
        sections at the same position.
    """
    if corrections == Corrections():
        return song
    heard = song
    song = _with_given_beats(song, corrections)
    count = (
        corrections.constant
        or corrections.metre
        or corrections.one is not None
        or corrections.tempo
        or corrections.shift
        or any(not isinstance(moment, Clock) for moment, _ in corrections.sections)
    )
    if count and len(song.beats) < 2:
        raise ValueError(
            "no steady beat was detected in this track, so its count cannot be corrected"
        )
    if corrections.constant:
        song = _at_constant_tempo(song)
    if corrections.tempo:
        song = _at_level(song, corrections.tempo)
    if corrections.shift:
        song = _shifted(song, corrections.shift)
    if corrections.metre:
        song = _in_metre(song, corrections.metre)
    if corrections.one is not None:
        song = _from_one(song, corrections.one)
    if corrections.sections:
        song = replace(song, sections=_sections(song, corrections.sections))
    return replace(song, readings=_readings(heard, song))


def steady_count(song: Song, tempo: float, one: float, metre: int | None = None) -> Corrections:
    """Beats at one tempo through the whole track, with a one at a moment, as corrections that replace the detected beats.

    Parameters
    ----------
    song : Song
    tempo : float
        Beats a minute.
    one : float
        A first beat of a bar [s].
    metre : int, optional
        Beats a bar; default: as detected.

    Raises
    ------
    ValueError
        If the moment is outside the track, or fewer than two beats fit into it.
    """
    if not 0.0 <= one <= song.duration:
        raise ValueError(f"the one at {clock_text(one)} is outside the track")
    gap = 60.0 / tempo
    before = floor(one / gap + 1e-9)
    number = np.arange(-before, floor((song.duration - one) / gap + 1e-9) + 1)
    if len(number) < 2:
        raise ValueError(f"at {tempo:g} beats a minute the track has no two beats")
    beats = [max(float(time), 0.0) for time in one + number * gap]
    length = metre or song.metre
    firsts = [time for time, k in zip(beats, number.tolist(), strict=True) if k % length == 0]
    return Corrections(beats=tuple(beats), downbeats=tuple(firsts))


def _rising(values: tuple[float, ...]) -> bool:
    return all(np.isfinite(values)) and all(a < b for a, b in pairwise(values))


def _with_given_beats(song: Song, corrections: Corrections) -> Song:
    if not corrections.beats:
        return song
    if corrections.beats[-1] > song.duration + 1.0:
        raise ValueError(
            f"the last beat given is at {corrections.beats[-1]:.1f} s, "
            f"but the track ends at {song.duration:.1f} s"
        )
    metre = corrections.metre or song.metre
    downbeats = corrections.downbeats or corrections.beats[::metre]
    if corrections.downbeats and not corrections.metre and len(downbeats) > 1:
        index = np.searchsorted(corrections.beats, downbeats)
        metre = int(np.bincount(np.diff(index)).argmax())
    return replace(
        song,
        beats=corrections.beats,
        downbeats=downbeats,
        metre=metre,
        tempo=median_tempo(corrections.beats),
        confidence=dict(song.confidence) | {"beats": 1.0, "downbeats": 1.0},
        bar_confidence=(1.0,) * len(downbeats),
        unsteady=(),
    )


def _downbeat_indices(song: Song) -> list[int]:
    place = {time: index for index, time in enumerate(song.beats)}
    return [place[time] for time in song.downbeats]


def _barred(song: Song, beats: Floats, indices: list[int], metre: int) -> Song:
    """The song with these beats, and bars at these indices; confidence follows the time."""
    times = tuple(float(beat) for beat in beats)
    downbeats = tuple(times[index] for index in indices)
    confidence: tuple[float, ...] = ()
    if song.bar_confidence:
        near = np.searchsorted(song.downbeats, np.array(downbeats) + 1e-6, side="right") - 1
        confidence = tuple(song.bar_confidence[max(int(index), 0)] for index in near)
    return replace(
        song,
        beats=times,
        downbeats=downbeats,
        metre=metre,
        tempo=median_tempo(beats),
        bar_confidence=confidence,
    )


def _at_constant_tempo(song: Song) -> Song:
    grid = constant_grid(song.beats, song.stretches() or ((0, song.metre),), song.duration)
    if len(grid.beats) < 2 or not grid.firsts:
        raise ValueError("too few beats for a constant tempo")
    found = _barred(song, grid.beats, list(grid.firsts), song.metre)
    first, last = found.beats[0], found.beats[-1]
    aside = tuple(span for span in song.unsteady if span[1] <= first or span[0] >= last)
    return replace(_doubted(found, grid.drifting), unsteady=aside)


def _doubted(song: Song, spans: tuple[tuple[float, float], ...]) -> Song:
    """The song with bars that reach into spans told to be listened to."""
    if not spans:
        return song
    ends = [*song.downbeats[1:], song.duration]
    told = song.bar_confidence or (1.0,) * len(song.downbeats)
    met = [
        any(a < end and start <= b for a, b in spans)
        for start, end in zip(song.downbeats, ends, strict=True)
    ]
    sure = tuple(min(c, _DOUBTED) if hit else c for c, hit in zip(told, met, strict=True))
    return replace(song, bar_confidence=sure)


def _readings(heard: Song, song: Song) -> tuple[Reading, ...]:
    """Ways to count the song as they are from a corrected count: it first, what was heard among the others."""
    if not heard.readings or not song.tempo:
        return heard.readings
    alike = [
        abs(np.log2(each.tempo / song.tempo)) < _ALIKE
        and each.metre == song.metre
        and song.shift_of(each) == 0
        for each in heard.readings
    ]
    if alike[0]:
        return heard.readings
    share = sum(each.share for each, own in zip(heard.readings, alike, strict=True) if own)
    others = tuple(each for each, own in zip(heard.readings, alike, strict=True) if not own)
    return (Reading(tempo=song.tempo, metre=song.metre, share=round(share, 4)), *others)


def _at_level(song: Song, level: Level) -> Song:
    """Half or twice as many beats, starting again wherever the count restarts."""
    beats = np.array(song.beats)
    stretches = song.stretches() or ((0, song.metre),)
    firsts = [first for first, _ in stretches]
    if level == "half":
        lead = beats[firsts[0] % 2 : firsts[0] : 2]
        parts = [lead, *(beats[a:b:2] for a, b in pairwise([*firsts, len(beats)]))]
        beats = np.concatenate(parts)
        if len(beats) < 2:
            raise ValueError("too few beats to count half as fast")
        edges = np.cumsum([len(part) for part in parts]).tolist()
    else:
        beats = np.sort(np.concatenate([beats, (beats[1:] + beats[:-1]) / 2]))
        edges = [*(2 * first for first in firsts), len(beats)]
    indices = list(range(edges[0] % song.metre, edges[0], song.metre))
    for (a, b), (_, metre) in zip(pairwise(edges), stretches, strict=True):
        indices += range(a, b, metre)
    return _barred(song, beats, indices, song.metre)


def _shifted(song: Song, shift: float) -> Song:
    inside = [0.0 <= beat + shift <= song.duration for beat in song.beats]
    beats = tuple(b + shift for b, kept in zip(song.beats, inside, strict=True) if kept)
    kept = set(beats)
    pairs = [
        (down + shift, song.bar_confidence[i] if song.bar_confidence else 1.0)
        for i, down in enumerate(song.downbeats)
        if down + shift in kept
    ]
    if len(beats) < 2 or not pairs:
        raise ValueError(f"shifted by {shift:g} s, no bar is left inside the track")
    return replace(
        song,
        beats=beats,
        downbeats=tuple(down for down, _ in pairs),
        bar_confidence=tuple(c for _, c in pairs) if song.bar_confidence else (),
    )


def _in_metre(song: Song, metre: int) -> Song:
    if metre == song.metre:
        return song  # including its shorter bars, if any
    first = min(_downbeat_indices(song), default=0)
    beats = np.array(song.beats)
    return _barred(song, beats, list(range(first % metre, len(beats), metre)), metre)


def _from_one(song: Song, one: Position | Clock) -> Song:
    beats = np.array(song.beats)
    if isinstance(one, Clock):
        at = one.seconds
        if not 0 <= at <= song.duration:
            raise ValueError(f"one at {one} is outside the track")
    else:
        count = song.tempo_map()
        at = float(count.seconds_from_beats(count.beat_of(one)))
    index = int(np.argmin(np.abs(beats - at)))
    gap = float(np.max(np.diff(beats)))
    if abs(beats[index] - at) > gap:
        raise ValueError(f"one at {one} is outside the beats of the song")
    known = np.array(_downbeat_indices(song) or [index])
    move = index - int(known[np.argmin(np.abs(known - index))])
    moved = [int(i) for i in known + move if 0 <= i < len(beats)]
    while moved and moved[0] >= song.metre:
        moved.insert(0, moved[0] - song.metre)
    while moved and len(beats) - moved[-1] > song.metre:
        moved.append(moved[-1] + song.metre)
    return _barred(song, beats, moved, song.metre)


def _seconds_of(song: Song, count: TempoMap | None, moment: Moment) -> float:
    if isinstance(moment, Clock):
        return moment.seconds
    if isinstance(moment, Position):
        if count is None:
            raise ValueError(f"{moment} needs a count, but no beat was detected")
        return float(count.seconds_from_beats(count.beat_of(moment)))
    for name, section in zip(song.section_names(), song.sections, strict=True):
        if moment.name in {name, section.label}:
            return section.start if moment.edge == "start" else section.end
    raise ValueError(
        f"there is no section {moment.name!r}; detected: {', '.join(song.section_names())}"
    )


def _sections(song: Song, given: tuple[tuple[Moment, str], ...]) -> tuple[Section, ...]:
    counted = any(isinstance(moment, Position | SectionEdge) for moment, _ in given)
    count = song.tempo_map() if counted and len(song.beats) > 1 else None
    placed = sorted(((_seconds_of(song, count, m), name.strip()) for m, name in given))
    for start, name in placed:
        if not -1.0 <= start < song.duration:
            raise ValueError(f"section {name!r} would start at {start:.1f} s, outside the track")
    for (a, before), (b, after) in pairwise(placed):
        if b - a < 0.05:
            raise ValueError(f"sections {before!r} and {after!r} start at the same place")
    starts = [0.0] + [start for start, _ in placed[1:]]
    ends = [*starts[1:], song.duration]
    return tuple(
        Section(start=start, end=end, label=name, energy=_mean_energy(song, start, end))
        for start, end, (_, name) in zip(starts, ends, placed, strict=True)
    )


def _mean_energy(song: Song, start: float, end: float) -> float:
    """Mean of the energy curve over a span; 0 if there is no curve."""
    if not song.energy:
        return 0.0
    n = len(song.energy)
    low = min(int(start / song.duration * n), n - 1)
    high = max(int(np.ceil(end / song.duration * n)), low + 1)
    return float(np.mean(song.energy[low:high]))
