"""Eights inside sections, unsure bars, and bars that change their length."""

from itertools import pairwise

import pytest

from sequencer.timing.phrases import level_word, phrase_length, phrases
from tests.songs import even_song, silent_song


def song(*, metre=4, bars=12, borders=(0.0, 16.0), confidence=(), lengths=None):
    """Beats every 0.5 s from 0.5 s on."""
    sections = {start: chr(65 + k) for k, start in enumerate(borders)}
    return even_song(
        lengths=lengths or [metre] * bars,
        start=0.5,
        metre=metre,
        sections=sections,
        bar_confidence=confidence,
    )


def test_a_section_is_cut_into_eights_from_its_own_first_beat():
    """48 beats from 0.5 s, a border at the 32nd: four eights, then two."""
    cut = phrases(song(borders=(0.0, 16.5)))

    assert [(p.section, p.number, p.counts) for p in cut] == [
        ("A", 1, 8), ("A", 2, 8), ("A", 3, 8), ("A", 4, 8), ("B", 1, 8), ("B", 2, 8),
    ]  # fmt: skip
    assert [p.start for p in cut] == pytest.approx([0.5, 4.5, 8.5, 12.5, 16.5, 20.5])
    assert all(a.end == pytest.approx(b.start) for a, b in pairwise(cut))
    assert cut[-1].end == pytest.approx(24.5)


def test_what_is_left_over_is_a_shorter_phrase_and_no_phrase_runs_over_a_border():
    cut = phrases(song(borders=(0.0, 6.5)))  # 12 beats, then 36

    assert [p.counts for p in cut if p.section == "A"] == [8, 4]
    assert [p.counts for p in cut if p.section == "B"] == [8, 8, 8, 8, 4]
    assert sum(p.counts for p in cut) == 48


def test_phrases_follow_the_metre():
    """Common practice: eights in two and four, sixes in a waltz, else two bars."""
    assert [phrase_length(metre) for metre in (2, 3, 4, 5, 6, 7, 8)] == [8, 6, 8, 10, 12, 14, 8]
    assert {p.counts for p in phrases(song(metre=3, borders=(0.0,)))} == {6}


def test_after_a_bar_put_in_the_eights_begin_anew():
    """Bars of 4 4 4 4 2 4 4 4 4: two eights, two counts, two eights from the next bar's one."""
    short = song(lengths=[4, 4, 4, 4, 2, 4, 4, 4, 4], borders=(0.0,))

    assert [p.counts for p in phrases(short)] == [8, 8, 2, 8, 8]
    assert {p.start for p in phrases(short)} <= set(short.downbeats)


def test_phrases_follow_a_metre_that_changes():
    """Ten bars of four, ten of three, ten of four: eights, sixes, eights."""
    changing = song(lengths=[4] * 10 + [3] * 10 + [4] * 10, borders=(0.0,))

    assert [p.counts for p in phrases(changing)] == [8] * 5 + [6] * 5 + [8] * 5
    assert changing.stretches() == ((0, 4), (40, 3), (70, 4))


def test_a_border_within_a_stretch_begins_its_own_phrases():
    short = song(lengths=[4, 4, 4, 2, 4, 4, 4, 4], borders=(0.0, 4.5))  # a border at the third bar

    assert [(p.section, p.counts) for p in phrases(short)] == [
        ("A", 8), ("B", 6), ("B", 8), ("B", 8),
    ]  # fmt: skip


def test_without_beats_there_are_no_phrases():
    assert phrases(silent_song()) == ()


def test_levels_fall_with_energy():
    assert [level_word(e) for e in (1.0, 0.7, 0.6, 0.4, 0.3, 0.0)] == [
        "high", "high", "middle", "middle", "low", "low",
    ]  # fmt: skip


def test_unsure_bars_are_told_in_stretches():
    shares = [0.9] * 20
    for bar in (3, 9, 10, 12, 17, 20):  # 9 to 12 is one stretch: one sure bar between
        shares[bar - 1] = 0.2

    assert song(bars=20, confidence=tuple(shares)).unsure_bars() == (
        (3, 3), (9, 12), (17, 17), (20, 20),
    )  # fmt: skip
    assert song(bars=3, confidence=(0.5, 0.9, 1.0)).unsure_bars() == ()


def test_runs_of_bars_of_one_length_are_metres_and_a_cut_bar_is_none():
    changing = song(lengths=[4] * 10 + [3] * 12 + [4] * 9)
    cut = song(lengths=[4] * 10 + [2] + [4] * 12)

    assert changing.metres() == ((1, 4), (11, 3), (23, 4))
    assert cut.metres() == ((1, 4),)


@pytest.mark.parametrize(
    ("lengths", "odd"),
    [
        ([4] * 12, ()),
        ([4, 4, 4, 4, 2, 4, 4, 4, 4], ((5, 2),)),
        ([3, *[4] * 9, 6, 4, 4], ((1, 3), (11, 6))),
        ([*[4] * 10, *[3] * 10], ()),
        ([*[4] * 10, 2, *[3] * 10], ((11, 2),)),
    ],
)
def test_bars_of_another_length_are_named(lengths, odd):
    assert song(lengths=lengths, borders=(0.0,)).odd_bars() == odd
