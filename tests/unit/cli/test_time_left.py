"""The time left is told only where the pace so far is known and even. Reference: the same by hand."""

import pytest

from sequencer.cli.time_left import TimeLeft, time_words


def left_after(*seen):
    watch = TimeLeft()
    for moment, share in seen:
        watch.passed(moment, share)
    return watch.seconds


EVEN = [(2.0 * k, 0.1 * k) for k in range(6)]  # 20 s for all, half done


def test_an_even_pace_tells_what_is_left():
    assert left_after(*EVEN) == pytest.approx(10.0)
    assert left_after(*((7.0 + moment, share) for moment, share in EVEN)) == pytest.approx(10.0)


def test_of_two_halves_the_slower_counts():
    """0.2 in 4 s, then 0.2 in 5 s: the rest, 0.6, at 25 s for all."""
    seen = [(0.0, 0.0), (2.0, 0.1), (4.0, 0.2), (6.5, 0.3), (9.0, 0.4)]
    assert left_after(*seen) == pytest.approx(15.0)


@pytest.mark.parametrize(
    "seen",
    [
        [],
        EVEN[:4],  # too few steps
        [(0.19 * moment, share) for moment, share in EVEN],  # too short a time
        [(moment, share / 6) for moment, share in EVEN],  # too little done
        [(0.0, 0.0), (1.0, 0.1), (2.0, 0.2), (6.0, 0.3), (10.0, 0.4)],  # slows down by four
        [(0.0, 0.0), (4.0, 0.1), (8.0, 0.2), (9.0, 0.3), (10.0, 0.4)],  # speeds up
        [(moment, 0.3) for moment, _ in EVEN],  # stands still
    ],
    ids=["nothing", "few", "short", "little", "slower", "faster", "still"],
)  # fmt: skip
def test_nothing_is_told_where_it_would_be_a_guess(seen):
    assert left_after(*seen) is None


def test_another_piece_of_work_is_watched_anew():
    assert left_after(*EVEN, (11.0, 0.1), (12.0, 0.2)) is None
    again = [(100.0 + 2 * moment, share) for moment, share in EVEN]
    assert left_after(*EVEN, *again) == pytest.approx(20.0)


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (0.0, "about 5 s left"),
        (17.0, "about 20 s left"),
        (20.0, "about 20 s left"),
        (90.0, "about 90 s left"),
        (91.0, "about 2 min left"),
        (121.0, "about 3 min left"),
    ],
)
def test_words_round_up(seconds, words):
    assert time_words(seconds) == words
