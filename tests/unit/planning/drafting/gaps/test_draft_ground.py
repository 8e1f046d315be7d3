"""How full a stretch is among all stretches of the song."""

import numpy as np
import pytest
from scipy.stats import rankdata

from sequencer.planning.drafting.gaps.draft_ground import shares_below


def test_places_are_mean_ranks():
    """Outside reference: scipy.stats.rankdata, average ranks."""
    rng = np.random.default_rng(5)
    values = rng.integers(0, 9, 40) / 10
    assert shares_below(values, values) == pytest.approx((rankdata(values) - 1) / 39)


def test_one_stretch_alone_has_the_place_that_it_has_in_the_whole_song():
    song = [0.1, 0.5, 0.66, 0.2, 0.9]
    assert shares_below([0.66], song)[0] == shares_below(song, song)[2] == 0.75


def test_an_even_song_is_in_the_middle_throughout():
    assert shares_below([0.4] * 5, [0.4] * 5).tolist() == [0.5] * 5
    assert shares_below([0.4], [0.4]).tolist() == [0.5]


def test_a_stretch_between_two_of_the_song_lies_between_their_places():
    assert shares_below([0.3, -1.0, 2.0], [0.2, 0.4, 0.6]) == pytest.approx([0.25, 0.0, 1.0])
