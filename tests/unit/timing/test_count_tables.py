"""Tables of bars and beats, by a count whose times are typed here."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.timing.count_tables import bars_frame, beats_frame
from sequencer.timing.tempo import TempoMap

# Two beats before the first bar; bars of three, then the tempo doubles.
TIMES = (0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.0, 6.5, 7.0)
COUNT = TempoMap(np.array(TIMES), first=-2, bars=(0,), metre=3)


def test_a_bar_has_its_beats_over_its_seconds():
    """Source: tempo is beats a minute, 60·n/Δt."""
    frame = bars_frame(COUNT, bars=2, confidence=(0.25, 0.75), sections=("a", "b"))
    assert frame["bar"].tolist() == [1, 2]
    assert_allclose(frame["start"], [2.5, 5.5])
    assert_allclose(frame["end"], [5.5, 7.0])
    assert frame["beats"].tolist() == [3, 3]
    assert_allclose(frame["tempo"], [60.0, 120.0])
    assert frame["confidence"].tolist() == [0.25, 0.75]
    assert frame["section"].tolist() == ["a", "b"]


def test_a_confidence_that_is_not_known_is_no_number():
    frame = bars_frame(COUNT, bars=2, confidence=(), sections=("a", "a"))
    assert np.isnan(frame["confidence"]).all()


def test_every_beat_has_its_place_in_a_bar():
    frame = beats_frame(COUNT)
    assert frame["bar"].tolist() == [0, 0, 1, 1, 1, 2, 2, 2, 3]
    assert frame["beat"].tolist() == [2, 3, 1, 2, 3, 1, 2, 3, 1]
    assert frame["seconds"].tolist() == pytest.approx(TIMES)
