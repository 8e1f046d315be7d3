"""Pairs of parts compared in order at the best shift; joined while the odds speak for it."""

import numpy as np
import pytest

from sequencer.listening.song_form.form_features import likeness
from sequencer.listening.song_form.form_labels import (
    LabelWeights,
    labels_of,
    pair_evidence,
    variants_of,
)


def groups_of(rows):
    """The same rows as chroma, and still views besides."""
    n = len(rows)
    still = {"timbre": np.zeros((n, 2)), "rhythm": np.zeros((n, 2)), "loud": np.zeros((n, 1))}
    return {"chroma": rows, **still}


def test_a_part_that_comes_in_one_bar_late_is_as_alike_as_it_can_be():
    rng = np.random.default_rng(0)
    tune = rng.normal(size=(8, 6))
    rows = np.concatenate([tune, rng.normal(size=(1, 6)), tune])
    groups = groups_of(rows)

    evidence = pair_evidence(groups, likeness(groups), [0, 8, 17])

    assert evidence[0, 1, 0] == pytest.approx(1)  # chroma, bar by bar
    assert evidence[0, 1, 12] == 1  # neighbours
    assert evidence[0, 1, 13] == pytest.approx(np.log(8 / 9))
    assert np.array_equal(evidence[0, 1], evidence[1, 0])


def test_a_shift_leaves_three_quarters_of_the_shorter_part():
    """The last four of eight bars begin another eight: that is too little; six are enough."""
    rng = np.random.default_rng(0)
    found = []
    for common in (4, 6):
        tune = rng.normal(size=(16 - common, 6))
        groups = groups_of(np.concatenate([tune[:8], tune[-8:]]))
        found.append(pair_evidence(groups, likeness(groups), [0, 8, 16])[0, 1, 0])

    assert found[0] < 0.9
    assert found[1] == pytest.approx(1)


def test_parts_are_joined_while_the_mean_odds_speak_for_it():
    """1 and 2 are alike, 2 and 3 nearly, 1 and 3 not at all: 3 stays out, as the mean says."""
    weights = LabelWeights(np.array([1.0, 0.0]), np.zeros(1), np.ones(1))
    odds = np.array([[0, 5, -4, -9], [5, 0, 2, -9], [-4, 2, 0, -9], [-9, -9, -9, 0.0]])

    assert labels_of(weights, odds[..., None]) == [0, 0, 1, 2]
    odds[0, 2] = odds[2, 0] = -1.0
    assert labels_of(weights, odds[..., None]) == [0, 0, 0, 1]


def joined_by_hand(odds):
    """Average linkage written out: the likeliest pair of groups is joined as long as its mean odds are above nothing."""
    groups = [[k] for k in range(len(odds))]
    while len(groups) > 1:
        means = {
            (i, j): np.mean([odds[a, b] for a in groups[i] for b in groups[j]])
            for i in range(len(groups))
            for j in range(i)
        }
        (i, j), best = max(means.items(), key=lambda each: each[1])
        if best <= 0:
            break
        groups[j] += groups.pop(i)
    return [next(k for k, group in enumerate(groups) if part in group) for part in range(len(odds))]


@pytest.mark.parametrize("seed", range(5))
def test_joining_is_average_linkage(seed):
    rng = np.random.default_rng(seed)
    odds = rng.normal(size=(14, 14)) * 3
    odds = odds + odds.T
    weights = LabelWeights(np.array([1.0, 0.0]), np.zeros(1), np.ones(1))

    assert labels_of(weights, odds[..., None]) == joined_by_hand(odds)


def test_returns_that_sound_otherwise_are_variants_in_order():
    sound = np.repeat([0.0, 2.0, 0.1, 2.1, 5.0], 4)[:, None]
    groups = groups_of(np.zeros((20, 3))) | {"loud": sound}

    assert variants_of(groups, [0, 4, 8, 12, 16, 20], [0, 0, 0, 0, 0]) == [0, 1, 0, 1, 2]
    assert variants_of(groups, [0, 4, 8, 12, 16, 20], [0, 1, 0, 1, 2]) == [0, 0, 0, 0, 0]


def test_a_little_louder_is_no_variant():
    for apart, variant in ((0.7, 0), (0.8, 1)):
        groups = groups_of(np.zeros((8, 3))) | {"loud": np.repeat([0.0, apart], 4)[:, None]}
        assert variants_of(groups, [0, 4, 8], [0, 0]) == [0, variant]
