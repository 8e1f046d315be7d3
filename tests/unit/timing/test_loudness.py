"""Ranks of a song's parts, by hand."""

import numpy as np
import pytest

from sequencer.timing.loudness import percentile_ranks


def test_ranks_are_shares_below_with_ties_by_half() -> None:
    assert percentile_ranks([3.0, 1.0, 2.0, 2.0], apart=1.0) == pytest.approx(
        [0.875, 0.125, 0.5, 0.5]
    )
    assert len(percentile_ranks([], apart=1.0)) == 0


def test_what_lies_close_together_is_alike() -> None:
    # 0 to 0.5 evenly: the middle four fifths span 0.4, so ranks keep 0.4 of their width.
    ranks = percentile_ranks(np.linspace(0.0, 0.5, 11), apart=1.0)
    assert ranks == pytest.approx(0.5 + 0.4 * ((np.arange(11) + 0.5) / 11 - 0.5))
    assert percentile_ranks([7.0, 7.0, 7.0], apart=1.0) == pytest.approx([0.5] * 3)


def test_ranks_do_not_change_with_a_rising_curve() -> None:
    values = np.random.default_rng(1).normal(0, 20, 50)
    assert percentile_ranks(np.exp(values / 10), apart=1e-9) == pytest.approx(
        percentile_ranks(values, apart=1e-9)
    )
