"""How links and starts have fared so far in a draft, and how likely those that nobody tried yet fail: for the order of trials only.

Source: the share of those tried of one kind, drawn towards the share of a wider kind while few were tried, and that towards
the share of all (additive smoothing, common practice).
"""

from collections.abc import Hashable, Sequence

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.auditioning.passages import LINK_LENGTHS

_LINKS_FAIL, _EDGES_FAIL = 0.2, 0.1  # share that fails before anything is known
_AS_OFTEN = 5.0  # tries that this counts for
_WIDER = 2.0  # tries that the share of the wider kind counts for


def _places(kinds: Sequence[Hashable]) -> Ints:
    """Of each, which of the distinct kinds it is."""
    known = {kind: k for k, kind in enumerate(dict.fromkeys(kinds))}
    return np.array([known[kind] for kind in kinds])


def _smoothed(failed: Ints, tried: Ints, wider: Floats | float) -> Floats:
    return np.asarray((failed + _WIDER * wider) / (tried + _WIDER))


def _usual(failed: Ints, tried: Ints, first: float) -> float:
    return float((failed.sum() + first * _AS_OFTEN) / (tried.sum() + _AS_OFTEN))


class TrialRecord:
    """Of each kind of move, how many links to each other and starts from rest and ends in rest were tried, and how many failed.

    Parameters
    ----------
    moves : sequence of DraftMove
        n of them; of one kind are those of a pattern in one cycle and size, however the hands are timed.
    """

    def __init__(self, moves: Sequence[DraftMove]) -> None:
        self._patterns = _places([move.pattern for move in moves])
        self._kinds = _places([(move.pattern, move.cycle, move.drawn) for move in moves])
        self._levels = (self._patterns, self._kinds)
        sizes = [int(of.max(initial=-1)) + 1 for of in self._levels]
        self._links: list[Ints] = [  # tried and failed, by beats and by the two
            np.zeros((2, max(LINK_LENGTHS) + 1, size, size), dtype=np.int64) for size in sizes
        ]
        self._edges: list[Ints] = [  # tried and failed, into rest and out of it
            np.zeros((2, 2, size), dtype=np.int64) for size in sizes
        ]

    def add_link(self, first: int, link: int, second: int, *, failed: bool) -> None:
        """Takes up what became of a link of some beats, 0 for none, from one move to another."""
        for found, of in zip(self._links, self._levels, strict=True):
            found[:, link, of[first], of[second]] += 1, failed

    def add_edge(self, move: int, *, begins: bool, failed: bool) -> None:
        """Takes up whether a move could be flown out of rest, or into it."""
        for found, of in zip(self._edges, self._levels, strict=True):
            found[:, int(begins), of[move]] += 1, failed

    def never_passed(self, first: int, link: int, second: int) -> int:
        """How many links of some beats between the patterns of two moves were tried, as long as none passed; else 0."""
        tried, failed = self._links[0][:, link, self._patterns[first], self._patterns[second]]
        return int(tried) if tried == failed else 0

    def links_fail(self, link: int) -> Floats:
        """How likely links of some beats fail between each two moves, shape (n, n) [1]."""
        (tried, failed), (own_tried, own_failed) = (found[:, link] for found in self._links)
        wider = _smoothed(failed, tried, _usual(failed, tried, _LINKS_FAIL))
        pattern, kind = self._patterns, self._kinds
        own, others = own_failed[kind[:, None], kind], own_tried[kind[:, None], kind]
        return _smoothed(own, others, wider[pattern[:, None], pattern])

    def edges_fail(self, *, begins: bool) -> Floats:
        """How likely each move cannot be flown out of rest, or into it, shape (n,) [1]."""
        (tried, failed), (own_tried, own_failed) = (found[:, int(begins)] for found in self._edges)
        wider = _smoothed(failed, tried, _usual(failed, tried, _EDGES_FAIL))
        return _smoothed(own_failed[self._kinds], own_tried[self._kinds], wider[self._patterns])
