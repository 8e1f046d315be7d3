"""How links between patterns have fared so far in a draft, and how likely those that nobody tried yet fail."""

from collections.abc import Sequence

import numpy as np

from sequencer.arrays import Floats, Ints
from sequencer.planning.drafting.auditioning.passages import LINK_LENGTHS

_USUAL, _AS_OFTEN = (
    0.2,
    5.0,
)  # share of links that fail before anything is known, and tries it counts for
_PAIR = 2.0  # tries of a pair of patterns that what is known of all pairs counts for


class LinkRecord:
    """Of each pair of patterns and each number of beats, how many links were tried and how many failed.

    Parameters
    ----------
    patterns : sequence of str
        Of each move, n of them.
    """

    def __init__(self, patterns: Sequence[str]) -> None:
        names = {name: k for k, name in enumerate(dict.fromkeys(patterns))}
        self._of: Ints = np.array([names[name] for name in patterns])
        shape = (max(LINK_LENGTHS) + 1, len(names), len(names))
        self._tried: Ints = np.zeros(shape, dtype=np.int64)
        self._failed: Ints = np.zeros(shape, dtype=np.int64)

    def add(self, first: int, link: int, second: int, *, failed: bool) -> None:
        """Takes up what became of a link of some beats, 0 for none, from one move to another."""
        place = link, self._of[first], self._of[second]
        self._tried[place] += 1
        self._failed[place] += failed

    def failing(self, link: int) -> Floats:
        """How likely links of some beats fail between each two moves, shape (n, n) [1].

        Parameters
        ----------
        link : int
            [beats]

        Notes
        -----
        Source: the share of those tried between the two patterns, drawn towards the share of all links of as many beats while
        few were tried (additive smoothing, common practice). A guess for the order of trials, never a verdict.
        """
        tried, failed = self._tried[link], self._failed[link]
        usual = (failed.sum() + _USUAL * _AS_OFTEN) / (tried.sum() + _AS_OFTEN)
        share = (failed + _PAIR * usual) / (tried + _PAIR)
        return np.asarray(share[self._of[:, None], self._of])
