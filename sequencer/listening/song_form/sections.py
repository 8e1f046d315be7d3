"""The form of a song: its parts, which of them return, how sure each border is, and where others may lie.

Parts are what a performer names: a verse, a refrain, a break. The division is that of `form_parts`, the labels
those of `form_labels`, on the bars of `form_features`. Borders lie on the first beats of bars.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Floats
from sequencer.listening.signal.spectra import Spectra
from sequencer.listening.song_form.form_features import (
    bar_edges,
    bar_groups,
    border_evidence,
    likeness,
    long_bars,
)
from sequencer.listening.song_form.form_labels import labels_of, pair_evidence, variants_of
from sequencer.listening.song_form.form_parts import (
    borders_above,
    part_evidence,
    scored,
    shares_of,
    smeared,
)
from sequencer.listening.song_form.form_weights import FORM, PART_LABELS

_FEWEST = 8  # bars that can be divided
_LEAST = 0.3  # share of all divisions from which a border is drawn
_PERHAPS = 0.15  # and from which it is told as possible, at most once in so many bars:
_AWAY = 4
_SHARES = (0.0, 0.37, 0.52, 0.68, 0.83, 0.97, 1.0)
_RIGHT = (
    0.0,
    0.51,
    0.645,
    0.82,
    0.835,
    0.965,
    0.99,
)  # of borders of these shares, by folds over sources


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part in seconds, with a label that repeats where the music repeats."""

    start: float  # [s]
    end: float  # [s]
    label: str
    variant: int = 0  # 0 as it came at first, 1, 2 … for other ways in which it returns
    confidence: float = 1.0  # 0 … 1: that a part begins here, within a bar


@dataclass(frozen=True, slots=True)
class Form:
    """The parts of a song, and moments inside them where a part may begin: [s] and confidence, as that of parts."""

    parts: tuple[Stretch, ...]
    turns: tuple[tuple[float, float], ...] = ()


def form_of(spectra: Spectra, downbeats: Floats) -> Form:
    """Parts that cover the whole track, and where there may be more.

    Parameters
    ----------
    spectra : Spectra
    downbeats : ndarray, shape (n,) [s]

    Returns
    -------
    form : Form
        One part if the track is too short, or too uniform, to divide.

    Notes
    -----
    Source: module docstring. Borders lie on downbeats.
    """
    end = spectra.duration
    bars = long_bars(downbeats)
    if not divisible(downbeats):
        return Form((Stretch(0.0, end, "A"),))
    groups = bar_groups(spectra, bars)
    alike = likeness(groups)
    evidence = part_evidence(alike, bar_edges(bars, end))
    shares = smeared(shares_of(*scored(FORM, border_evidence(groups, alike), *evidence)).border)
    borders = borders_above(shares, _LEAST)
    labels = labels_of(PART_LABELS, pair_evidence(groups, alike, borders))
    variants = variants_of(groups, borders, labels)
    sure = np.interp(shares, _SHARES, _RIGHT)
    starts = [0.0, *(float(bars[b]) for b in borders[1:-1])]
    parts = tuple(
        Stretch(start, stop, _letter(label), variant, float(sure[b]) if b else 1.0)
        for (start, stop), label, variant, b in zip(
            pairwise([*starts, end]), labels, variants, borders[:-1], strict=True
        )
    )
    turns = tuple((float(bars[b]), float(sure[b])) for b in _possible(shares, borders))
    return Form(parts, turns)


def divisible(downbeats: Floats) -> bool:
    """Whether a song has bars enough that parts can be looked for: eight, short ones taken in pairs."""
    return len(long_bars(downbeats)) >= _FEWEST


def _possible(shares: Floats, borders: list[int]) -> list[int]:
    """Bars, rising, that are no border but may be one: the likeliest of their neighbourhood."""
    found: list[int] = []
    taken = list(borders)
    for b in np.argsort(-shares[1:-1], kind="stable") + 1:
        if shares[b] < _PERHAPS:
            break
        if min(abs(int(b) - other) for other in taken) >= _AWAY:
            found.append(int(b))
            taken.append(int(b))
    return sorted(found)


def _letter(index: int) -> str:
    """A … Z, AA, AB …: like spreadsheet columns."""
    name = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        name = chr(65 + rest) + name
    return name
