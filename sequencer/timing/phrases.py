"""Phrases: the stretches of eight counts in which dance is taught and remembered.

Sections are divided into phrases from their first beat, so that a phrase never crosses a boundary; the
remainder at the end of a section is a shorter phrase. In bars of two or four beats a phrase has eight
counts; in other metres, two bars (six counts of a waltz). Common practice.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Ints
from sequencer.timing.song import Song

EIGHT = 8
_SLACK = 0.05  # [s] between a boundary and the beat on it
_STEPS = (2 / 3, 1 / 3)  # of a section's energy: thirds of the song's loudness


@dataclass(frozen=True, slots=True, kw_only=True)
class Phrase:
    """A group of counts that belong together."""

    section: str  # name, unique in the song
    number: int  # in its section, from 1
    start: float  # [s]
    end: float  # [s]
    counts: int  # beats


def phrase_length(metre: int) -> int:
    """Number of counts in a full phrase, in bars of `metre` beats."""
    return EIGHT if EIGHT % metre == 0 else 2 * metre


def phrases(song: Song) -> tuple[Phrase, ...]:
    """All phrases of a song, in order; none if no beat was detected.

    Beats before the first downbeat, and before a section's first beat, belong to no phrase. Where the count
    restarts, as after a bar that is shorter than the others, a new phrase begins.
    """
    if len(song.beats) < 2 or not song.downbeats:
        return ()
    beats = np.array(song.beats)
    stretches = song.stretches()
    found: list[Phrase] = []
    for section, name in zip(song.sections, song.section_names(), strict=True):
        low = max(section.start, song.downbeats[0])
        inside = np.flatnonzero((beats >= low - _SLACK) & (beats < section.end - _SLACK))
        starts = _starts(inside, stretches)
        for number, (a, b) in enumerate(pairwise([*starts, len(inside)]), start=1):
            last = int(inside[b - 1])
            end = float(beats[last + 1]) if last + 1 < len(beats) else section.end
            found.append(
                Phrase(
                    section=name,
                    number=number,
                    start=float(beats[inside[a]]),
                    end=min(end, section.end) if end > section.end + _SLACK else end,
                    counts=b - a,
                )
            )
    return tuple(found)


def _starts(inside: Ints, stretches: tuple[tuple[int, int], ...]) -> list[int]:
    """Indices at which phrases start among these consecutive beats."""
    if not len(inside):
        return []
    low, high = int(inside[0]), int(inside[-1]) + 1
    begun = [s for s in stretches if s[0] <= low][-1:]
    within = [(low, metre) for _, metre in begun] + [s for s in stretches if low < s[0] < high]
    ends = [*(first for first, _ in within[1:]), high]
    return [
        at - low
        for (first, metre), end in zip(within, ends, strict=True)
        for at in range(first, end, phrase_length(metre))
    ]


def level_word(energy: float) -> str:
    """How strong a section is within its song: high, middle or low.

    Parameters
    ----------
    energy : float
        0 … 1, the share of the song that is quieter; see `Section`.
    """
    high, middle = _STEPS
    return "high" if energy >= high else "middle" if energy >= middle else "low"


__all__ = ["Phrase", "level_word", "phrase_length", "phrases"]
