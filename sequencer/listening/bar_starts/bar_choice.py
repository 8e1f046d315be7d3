"""Which beat is the one, and how many make a bar: every way weighed over the whole song, with changes where they pay.

A way is a metre and a phase. Its score is linear in how far its first beats differ from all others (`bar_evidence`), fitted so that
the exponentials of the scores are proportional to the ways' chances. The count through the song is the best path over beats whose state is
metre and place in the bar: a bar may be cut short or drawn out, and the metre may change for good, at a cost.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from sequencer.arrays import Bools, Floats, Ints
from sequencer.listening.bar_starts.bar_evidence import BarEvidence
from sequencer.listening.bar_starts.bar_weights import BAR_WEIGHTS

BAR_METRES = (2, 3, 4, 5, 6, 7)  # beats per bar to consider
_SEARCHED, _FOUR = 1.0, 0.5  # [nats] for the metre of the search for beats, and for bars of four
# [nats] against bars of two. In the tracks that the weights were fitted on, bars of four are 3.1 times as common; in music one dances to,
# 20 times and more (common practice). ln(20/3.1) = 1.86, of which `_FOUR` is 0.5
_TWO = 1.25
_NAMED = 12.0  # [nats] least score of a way against the best
_TELLING = 64  # beats whose evidence counts as much as the fitted score says
TURN_COST = 6.0  # [nats] cost of a bar of another length, which moves the one
OTHER_COST = 9.0  # [nats] cost of another metre from here on
_HEARD_METRE = 0.08  # weight of the odds of a metre there, which come from 15 s of music
_RULED_OUT = -6.0  # [nats] least of them
_PHRASES = 4  # bars of a phrase


@dataclass(frozen=True, slots=True, eq=False)
class BarWays:
    """All ways to lay bars on the beats of a song.

    Parameters
    ----------
    metres, phases : ndarray, shape (27,) [1]
        Beats per bar, and the first beat that is a one.
    scores : ndarray, shape (27,) [nats]
    """

    metres: Ints
    phases: Ints
    scores: Floats

    @property
    def shares(self) -> Floats:
        """Probability of each way, shape (27,) [1]; they sum to 1."""
        weight = np.exp(np.maximum(self.scores - self.scores.max(), -60.0))
        return np.asarray(weight / weight.sum())


def bar_features(
    evidence: BarEvidence, metres: Floats, likely: dict[int, float]
) -> tuple[Ints, Ints, Floats]:
    """What speaks for each way.

    Parameters
    ----------
    evidence : BarEvidence
    metres : ndarray, shape (8,) [nats]
        Log probability of each metre, see `Activations`.
    likely : dict of int to float [nats/beat]
        How much less likely than the best the search for beats found each metre; −1.5 for one that it did not try.

    Returns
    -------
    metres, phases : ndarray, shape (27,) [1]
    rows : ndarray, shape (27, k) [1]
        One column for each of `BAR_WEIGHTS`.

    Notes
    -----
    Source: this project; what harmony, bass and phrases tell of bars is common practice.
    """
    number = np.arange(len(evidence.strokes))
    total = evidence.strokes.sum(axis=0)
    ways, rows = [], []
    for metre in BAR_METRES:
        turns = np.column_stack([evidence.turns, evidence.returns[metre]])
        for phase in range(metre):
            place = (number - phase) % metre
            ones = evidence.strokes[place == 0]
            lead = ones.sum(axis=0) / max(len(ones), 1)
            lead = lead - (total - ones.sum(axis=0)) / max(len(number) - len(ones), 1)
            rows.append(
                [
                    *lead,
                    *_half_way(evidence.strokes, place, metre),
                    float(phase == 0),
                    float(evidence.bass_in % metre == phase),
                    metres[metre],
                    *(float(metre == other) for other in BAR_METRES),
                    *_phrased(turns, number - phase, metre),
                    likely.get(metre, -1.5),
                ]
            )
            ways.append((metre, phase))
    table = np.array(ways)
    return table[:, 0], table[:, 1], np.array(rows)


def bar_ways(
    evidence: BarEvidence, metres: Floats, likely: dict[int, float], searched: int
) -> BarWays:
    """Every way to lay bars on a song's beats, with its score.

    Parameters
    ----------
    evidence, metres, likely
        As of `bar_features`.
    searched : int
        Beats per bar that the search for beats prefers.
    """
    of_metre, of_phase, rows = bar_features(evidence, metres, likely)
    known = _SEARCHED * (of_metre == searched) + _FOUR * (of_metre == 4) - _TWO * (of_metre == 2)
    return BarWays(of_metre, of_phase, rows @ BAR_WEIGHTS + known)


def scored_by_beat(
    evidence: BarEvidence, ways: BarWays, metres_there: Floats | None = None
) -> Floats:
    """What speaks at each beat for each place of each metre.

    Parameters
    ----------
    evidence : BarEvidence
    ways : BarWays
    metres_there : ndarray, shape (n, 8) [nats], optional
        Log probability of each metre at each beat.

    Returns
    -------
    score : ndarray, shape (n, 27) [nats]
        The places of bars of two, of three and so on. Along a way without changes they add up to its score, times the length.

    Notes
    -----
    Source: this project.
    """
    score = _by_beat(evidence, ways)
    return score if metres_there is None else score + _metres_told(metres_there)


def laid_bars(score: Floats) -> tuple[Ints, Ints]:
    """The best bars through the song.

    Parameters
    ----------
    score : ndarray, shape (n, 27) [nats]
        See `scored_by_beat`.

    Returns
    -------
    metres, places : ndarray, shape (n,) [1]
        Of each beat: beats per bar of the metre that holds there, and its place in the bar, from 0.

    Notes
    -----
    Source: Viterbi's algorithm over beats; exact for the costs stated above.
    """
    n, size = score.shape
    start = np.append(0, np.cumsum(BAR_METRES))
    states = [(m, p) for m in BAR_METRES for p in range(m)]
    before = np.array([start[i] + (p - 1) % m for i, m in enumerate(BAR_METRES) for p in range(m)])
    first = np.array([start[i] for i in range(len(BAR_METRES))])
    back = np.zeros((n, size), np.int64)
    best = score[0].copy()
    for t in range(1, n):
        here, come = best[before], before.copy()
        for low, high in pairwise(start):
            _offer(here, come, low, low + int(np.argmax(best[low:high])), best, TURN_COST)
        top = int(np.argmax(best))
        for one in first:
            _offer(here, come, one, top, best, OTHER_COST)
        best, back[t] = here + score[t], come
    path = np.zeros(n, np.int64)
    path[-1] = int(np.argmax(best))
    for t in range(n - 1, 0, -1):
        path[t - 1] = back[t, path[t]]
    table = np.array(states)[path]
    return table[:, 0], table[:, 1]


def _offer(here: Floats, come: Ints, to: int, origin: int, best: Floats, cost: float) -> None:
    """Let a state be reached from another at a cost, where that is better; stored in `here` and `come`."""
    if best[origin] - cost > here[to]:
        here[to], come[to] = best[origin] - cost, origin


def _by_beat(evidence: BarEvidence, ways: BarWays) -> Floats:
    """Score of each state at each beat by the song's own evidence, shape (n, 27) [nats]."""
    n = len(evidence.strokes)
    stroke = evidence.strokes @ BAR_WEIGHTS[: evidence.strokes.shape[1]]
    columns = []
    number = np.arange(n)
    for metre in BAR_METRES:
        own = ways.metres == metre
        worth = np.maximum(ways.scores[own] - ways.scores.max(), -_NAMED)
        phases = ways.phases[own]
        leads = np.array([_lead(stroke, number % metre == phase) for phase in phases])
        for place in range(metre):
            phase = (number - place) % metre
            column = (worth - leads)[phase] / _TELLING
            if place == 0:
                column = column + stroke * metre * metre / max(metre - 1, 1) / _TELLING
            columns.append(column)
    return np.column_stack(columns)


def _metres_told(there: Floats) -> Floats:
    """How much likelier than in the whole song each state's metre is at each beat, shape (n, 27) [nats]."""
    low = np.maximum(there[:, list(BAR_METRES)], _RULED_OUT)
    told = (low - low.mean(axis=0)) * _HEARD_METRE
    return np.repeat(told, BAR_METRES, axis=1)


def _lead(values: Floats, ones: Bools) -> float:
    """How far the mean over some lies above that over the others."""
    if not ones.any() or ones.all():
        return 0.0
    return float(values[ones].mean() - values[~ones].mean())


def _half_way(strokes: Floats, place: Ints, metre: int) -> tuple[float, float]:
    """How the beat half-way through a bar of four or six stands out, by odds and by bass."""
    if metre not in {4, 6}:
        return 0.0, 0.0
    half = strokes[place == metre // 2]
    rest = strokes[(place != 0) & (place != metre // 2)]
    if not len(half) or not len(rest):
        return 0.0, 0.0
    lead = (half.mean(axis=0) - rest.mean(axis=0)) * (1.0 if metre == 4 else 0.5)
    return float(lead[0]), float(lead[1])


def _phrased(turns: Floats, number: Ints, metre: int) -> Floats:
    """How much turns gather at one of the bars of a phrase, against all beats."""
    mean = turns.mean(axis=0)
    bar = number % (_PHRASES * metre)
    found = [turns[bar == k * metre] for k in range(_PHRASES)]
    return np.asarray(np.max([rows.mean(axis=0) - mean for rows in found if len(rows)], axis=0))


__all__ = [
    "BAR_METRES",
    "OTHER_COST",
    "TURN_COST",
    "BarWays",
    "bar_features",
    "bar_ways",
    "laid_bars",
    "scored_by_beat",
]
