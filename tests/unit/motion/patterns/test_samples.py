"""Sampled rows: beats counted by hand, positions against the law's own state."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for, patterns_from
from sequencer.motion.patterns.samples import (
    CARD_STATURE,
    MOST_ROWS,
    SAMPLE_COLUMNS,
    law_rows,
    pattern_rows,
)

LAW = law_for("orbit", {"ratio": -3}, side="right", body=Body(stature=1.7), beats=4.0)
USUAL = {"beats": 1.5, "per_beat": 4, "tempo": 90.0, "tether": 0.6}


def test_constants():
    assert len(SAMPLE_COLUMNS) == 11
    assert CARD_STATURE == 1.70
    assert MOST_ROWS == 20_000_000


def test_rows_of_a_law():
    rows = law_rows(LAW, **USUAL)
    at = np.array([0.0, 0.25, 0.5, 0.75, 1.0, 1.25, 1.5])
    seen = LAW.at(at)
    assert_allclose(rows[:, 0], at / 1.5)  # 90 beats a minute are 1.5 a second
    assert_allclose(rows[:, 1], at)
    assert_allclose(rows[:, 2:5], seen.hand)
    assert_allclose(rows[:, 5:8], seen.hand + 0.6 * seen.tether)
    assert_allclose(rows[:, 8:], seen.plane)


@pytest.mark.parametrize(
    ("beats", "count"),
    [(1.5, 7), (1.49, 6), (1.5 - 1e-10, 7), (1.5 - 1e-9, 6), (0.1, 1), (1.74, 7)],
)
def test_a_last_row_that_is_missed_by_rounding_alone_is_there(beats, count):
    """Rows at quarters of a beat: a billionth of a row short still counts."""
    assert len(law_rows(LAW, **{**USUAL, "beats": beats})) == count


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"beats": 0.0}, "beats must be positive"),
        ({"tempo": 0.0}, "tempo must be positive"),
        ({"tether": 0.0}, "tether must be positive"),
        ({"per_beat": 0}, "per_beat must be at least 1"),
        ({"beats": 5_000_000.25}, "rows are more than 20000000"),
    ],
)
def test_what_is_refused(given, words):
    with pytest.raises(ValueError, match=words):
        law_rows(LAW, **{**USUAL, **given})


def test_one_row_a_beat_will_do_and_no_half():
    assert len(law_rows(LAW, **{**USUAL, "per_beat": 1})) == 2
    with pytest.raises(TypeError, match="per_beat"):
        law_rows(LAW, **{**USUAL, "per_beat": 1.5})


def test_as_many_rows_as_allowed_are_begun(monkeypatch):
    """The limit itself is allowed, one more is not: with a limit of six."""
    monkeypatch.setattr("sequencer.motion.patterns.samples.MOST_ROWS", 6)
    assert len(law_rows(LAW, **USUAL)) == 7
    with pytest.raises(ValueError, match="more than 6"):
        law_rows(LAW, **{**USUAL, "beats": 1.75})


def test_a_pattern_left_to_itself_is_one_cycle_of_the_right_hand():
    """Antispin of −3 has four petals: four beats, 24 rows each, 100 beats a minute, 0.51 m of tether."""
    rows = pattern_rows("orbit", {"ratio": -3})
    assert_allclose(rows, law_rows(LAW, beats=4.0, per_beat=24, tempo=100.0, tether=0.51))


def test_a_pattern_as_given():
    body = Body(stature=1.9)
    law = law_for("orbit", {"ratio": -3}, side="left", body=body, beats=5.0)
    rows = pattern_rows(
        "orbit", {"ratio": -3, "beats": "5", "tether": 0.7}, beats=2.0, per_beat=3, tempo=120.0,
        side="left", body=body,
    )  # fmt: skip
    assert_allclose(rows, law_rows(law, beats=2.0, per_beat=3, tempo=120.0, tether=0.7))
    whole = pattern_rows("orbit", {"ratio": -3, "beats": 5})
    assert whole[-1, 1] == 5.0
    book = patterns_from({"own": {"law": "orbit", "set": {"ratio": 3}, "cycle": 6}})
    assert pattern_rows("own", {}, book=book)[-1, 1] == 6.0
    with pytest.raises(ValueError, match="ratio must be -24 … 24"):
        pattern_rows("orbit", {"ratio": 99})
    with pytest.raises(ValueError, match="beats of a hand cycle must be a number, got 'two'"):
        pattern_rows("orbit", {"beats": "two"})
