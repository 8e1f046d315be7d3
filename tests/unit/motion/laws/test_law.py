"""A law's bounds at the head, and how often it repeats, by hand."""

from math import inf
from types import SimpleNamespace

from sequencer.motion.laws.law import Bounds, period_words

BOUNDS = Bounds(
    hand_speed=2.0, hand_acceleration=3.0, turn_rate=5.0, turn_acceleration=7.0, hand_reach=0.5
)


def test_a_head_is_as_fast_as_its_hand_and_its_tether_s_turning():
    assert BOUNDS.head_speed(0.5) == 2.0 + 0.5 * 5.0
    assert BOUNDS.head_acceleration(0.5) == 3.0 + 0.5 * 7.0


def test_what_is_not_proven_is_without_bound():
    parts = (BOUNDS.hand_jerk, BOUNDS.turn_jerk, BOUNDS.frame_rate, BOUNDS.frame_acceleration)
    assert parts == (inf,) * 4


def test_periods_in_words():
    said = [period_words(SimpleNamespace(period=p)) for p in (1, 2.0, 1.5, inf)]
    assert said == [
        "repeats every beat", "repeats every 2 beats", "repeats every 1.5 beats", "does not repeat",
    ]  # fmt: skip
