"""Sums over all divisions against all of them written out; squareness, repetition and the choice of borders."""

from itertools import combinations, pairwise

import numpy as np
import pytest

from sequencer.listening.song_form import form_parts
from sequencer.listening.song_form.form_parts import (
    borders_above,
    fits_in,
    part_evidence,
    shares_of,
    smeared,
)


def by_hand(nodes, parts, whole, longest):
    """Shares of borders, parts and the whole song, from every division of n bars."""
    n = len(nodes) - 1
    total, border, part, alone = 0.0, np.zeros(n + 1), np.zeros((n + 1, longest)), 0.0
    for count in range(n):
        for inner in combinations(range(1, n), count):
            spans = list(pairwise([0, *inner, n]))
            if any(b - a > longest for a, b in spans) and len(spans) > 1:
                continue
            single = spans == [(0, n)] and n > longest
            value = whole if single else sum(parts[a, b - a - 1] for a, b in spans)
            weight = np.exp(value + sum(nodes[b] for b in inner))
            total += weight
            border[list(inner)] += weight
            alone += weight * single
            for a, b in spans if not single else []:
                part[a, b - a - 1] += weight
    return border / total, part / total, alone / total, np.log(total)


@pytest.mark.parametrize("longest", [9, 4])
def test_shares_are_those_of_all_divisions(monkeypatch, longest):
    monkeypatch.setattr(form_parts, "LONGEST_PART", longest)
    rng = np.random.default_rng(3)
    nodes, parts = rng.normal(size=10), rng.normal(size=(10, longest))

    shares = shares_of(nodes, parts, 0.7)

    border, part, alone, total = by_hand(nodes, parts, 0.7, longest)
    assert shares.border == pytest.approx(border)
    assert shares.part == pytest.approx(part * fits_in(9))
    assert shares.whole == pytest.approx(alone)
    assert shares.total == pytest.approx(total)


def test_evidence_of_a_part():
    """Eight bars twice: the first eight come again, are eight, and are at an end."""
    rng = np.random.default_rng(0)
    once = rng.normal(size=(8, 5))
    rows = np.concatenate([once, once])
    alike = np.exp(-((rows[:, None] - rows[None]) ** 2).sum(axis=2))
    evidence, _ = part_evidence(alike, np.arange(17) * 2.5)

    log, _, four, eight, two, sixteen, end, _, end_four, short = evidence[4, 7, :10]  # bars 5 to 12
    assert (log, four, eight, two, sixteen, end, end_four, short) == (0, 1, 1, 1, 0, 0, 0, 0)
    assert evidence[4, 2, 9] == 1  # three bars in the middle are short
    assert evidence[0, 3, 8] == 1  # four at the beginning
    assert evidence[8, 7, 6] == pytest.approx(0)  # 20 s at the end
    assert np.argmax(evidence[1, :, 10]) + 1 in (4, 5, 6, 7)  # bars 2 to 5 … 8 come again
    again = (1 - np.median(alike)) / (alike.std() + 1e-6)
    assert evidence[1, 3, 10] == pytest.approx(again)
    assert evidence[:, :, 10].max() == pytest.approx(again)
    wide = np.pad(alike, 1, mode="edge")
    start, _ = part_evidence(wide, np.arange(19) * 2.5)
    # eight bars come again after eight
    assert start[1, 7, 10] == pytest.approx((1 - np.median(wide)) / (wide.std() + 1e-6))
    block = alike[4:12, 4:12]
    within = (block.mean() - 1 / 8 - alike.mean()) / (alike.std() + 1e-6)
    assert evidence[4, 7, 12] == pytest.approx(within)


def test_evidence_of_the_whole_song_is_that_of_a_part_and_goes_with_the_length_of_a_long_one():
    """Sixteen bars of 2.5 s; then the same bars so long that they last 32 minutes, four times eight."""
    rng = np.random.default_rng(0)
    alike = np.exp(-((rng.normal(size=(16, 1, 5)) - rng.normal(size=(1, 16, 5))) ** 2).sum(axis=2))
    alike = (alike + alike.T) / 2

    evidence, whole = part_evidence(alike, np.arange(17) * 2.5)
    _, eight = part_evidence(alike, np.arange(17) * 30.0)
    _, long = part_evidence(alike, np.arange(17) * 120.0)

    assert whole == pytest.approx(evidence[0, 15])
    assert whole[12] == pytest.approx(-1 / 16 / (alike.std() + 1e-6))
    assert eight[6:8] == pytest.approx([np.log(24), np.log(24) ** 2])
    assert long == pytest.approx(4 * eight)


def test_long_stretches_come_again_too_up_to_64_bars():
    rng = np.random.default_rng(1)
    rows = np.tile(rng.normal(size=(70, 5)), (2, 1))
    alike = np.exp(-((rows[:, None] - rows[None]) ** 2).sum(axis=2))

    evidence, _ = part_evidence(alike, np.arange(141) * 2.0)

    again = (1 - np.median(alike)) / (alike.std() + 1e-6)
    assert evidence[1, [15, 63], 10] == pytest.approx(
        again
    )  # in the middle: the first and last part have no such term
    assert evidence[1, 64, 10] == 0


def test_borders_have_the_largest_sum_and_three_bars_between():
    shares = np.array([0, 0.1, 0.2, 0.35, 0.2, 0.9, 0.7, 0.8, 0.1, 0, 0.31, 0, 0, 0])

    assert borders_above(shares, 0.3) == [0, 5, 10, 13]
    assert borders_above(shares[:-1], 0.3) == [0, 5, 12]  # two bars at the end are no part
    assert borders_above(shares, 0.95) == [0, 13]


def test_a_neighbouring_bar_counts_by_half():
    assert smeared(np.array([0, 0.2, 0.4, 0.0, 0.9, 0.8, 0])) == pytest.approx(
        [0, 0.4, 0.5, 0.65, 1, 1, 0]
    )
