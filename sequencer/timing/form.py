"""The form of a song as a dancer counts it: parts, in them groups of up to four eights, in those the eights.

A group ends where a new part is likely enough to begin, and after four phrases: choreography is mostly taught
in fours of eights (common practice).
"""

from dataclasses import dataclass

import numpy as np

from sequencer.timing.phrases import Phrase, phrases
from sequencer.timing.song import Section, Song

SURE_BORDER = 0.8  # confidence from which a border is told as sure
_BREAKS = 1 / 3  # confidence from which another part that may begin ends a group of four
_FOURS = 4
_NEAR = 0.1  # [s] between a moment and the beat on it
_BORDER = 0.25  # [s] between a border that was given and one that was heard


@dataclass(frozen=True, slots=True, kw_only=True)
class PhraseGroup:
    """Up to four phrases that belong together."""

    start: float  # [s]
    end: float  # [s]
    phrases: tuple[Phrase, ...]
    turn: float = 0.0  # 0 … 1: how likely it begins a part of its own, on the scale of sections


@dataclass(frozen=True, slots=True, kw_only=True)
class FormPart:
    """A section of the song with what is inside it."""

    name: str  # unique in the song
    section: Section
    bars: tuple[int, int] | None  # first and last, from 1; None if it has no whole bar
    groups: tuple[PhraseGroup, ...]
    turns: tuple[tuple[int, float], ...]  # bars inside that may begin a part, and how likely


def song_form(song: Song) -> tuple[FormPart, ...]:
    """The parts of a song in order, each with its groups of phrases; without phrases if there is no count.

    Notes
    -----
    Source: module docstring.
    """
    cut = phrases(song)
    return tuple(
        FormPart(
            name=name,
            section=part,
            bars=_bars(song, part),
            groups=_groups(song, [p for p in cut if p.section == name], part),
            turns=tuple((_bar_at(song, at), share) for at, share in _turns(song, part)),
        )
        for part, name in zip(song.sections, song.section_names(), strict=True)
    )


def sure_word(confidence: float) -> str:
    """How sure a border is: sure or perhaps."""
    return "sure" if confidence >= SURE_BORDER else "perhaps"


def section_mark(section: Section) -> str:
    """The label with a stroke for each way in which it has come before: B, B', B''."""
    return section.label + "'" * section.variant


def heard_borders_of(song: Song, heard: Song) -> tuple[tuple[str, float | None], ...]:
    """How the sections of a song that were given by hand were heard.

    Parameters
    ----------
    song : Song
        With sections as they are now.
    heard : Song
        As it was detected.

    Returns
    -------
    marks : tuple of (str, float or None)
        For each section: its label with a stroke for each way in which the same music has come before, where the same stretch was
        heard; and the confidence of a border that was heard where it begins, None where none was, or where the song begins.
    """
    return tuple(_as_heard(part, heard, first=k == 0) for k, part in enumerate(song.sections))


def _as_heard(part: Section, heard: Song, *, first: bool) -> tuple[str, float | None]:
    same = next((each for each in heard.sections if abs(each.start - part.start) < _BORDER), None)
    if same is None:
        turn = next((share for at, share in heard.turns if abs(at - part.start) < _BORDER), None)
        return part.label, turn
    whole = abs(same.end - part.end) < _BORDER
    mark = part.label + "'" * (same.variant if whole else 0)
    return mark, None if first else same.confidence


def _groups(song: Song, inside: list[Phrase], part: Section) -> tuple[PhraseGroup, ...]:
    turns = _turns(song, part)
    rows: list[tuple[list[Phrase], float]] = []
    for phrase in inside:
        turn = max((share for at, share in turns if abs(at - phrase.start) < _NEAR), default=0.0)
        if not rows or turn >= _BREAKS or len(rows[-1][0]) == _FOURS:
            rows.append(([], turn))
        rows[-1][0].append(phrase)
    return tuple(
        PhraseGroup(start=row[0].start, end=row[-1].end, phrases=tuple(row), turn=turn)
        for row, turn in rows
    )


def _turns(song: Song, part: Section) -> list[tuple[float, float]]:
    """Moments on first beats, inside a part and a bar or more from its ends, where another may begin."""
    if len(song.downbeats) < 2:
        return []
    firsts = np.array(song.downbeats)
    bar = float(np.median(np.diff(firsts)))
    return [
        (float(firsts[np.argmin(np.abs(firsts - at))]), share)
        for at, share in song.turns
        if part.start + bar * 0.9 < at < part.end - bar * 0.9
    ]


def _bars(song: Song, part: Section) -> tuple[int, int] | None:
    inside = [
        bar
        for bar, at in enumerate(song.downbeats, start=1)
        if part.start - _NEAR <= at < part.end - _NEAR
    ]
    return (inside[0], inside[-1]) if inside else None


def _bar_at(song: Song, seconds: float) -> int:
    return int(np.argmin(np.abs(np.array(song.downbeats) - seconds))) + 1
