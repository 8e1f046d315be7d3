"""How sure each one is: exact by all paths, and by what is heard around it."""

from itertools import pairwise, product

import numpy as np

from sequencer.listening.bar_starts.bar_chances import chance_of_ones
from sequencer.listening.bar_starts.bar_choice import BAR_METRES, OTHER_COST, TURN_COST

STATES = [(metre, place) for metre in BAR_METRES for place in range(metre)]


def cost(old, new):
    """Of one step as `laid_bars` takes it; None where it takes none."""
    if new[0] == old[0] and new[1] == (old[1] + 1) % old[0]:
        return 0.0
    if new[1]:
        return None
    return TURN_COST if new[0] == old[0] else OTHER_COST


def test_the_chance_is_the_share_of_all_paths_that_have_a_one_there():
    score = np.random.default_rng(5).normal(0.0, 2.0, (3, len(STATES)))
    total, ones = 0.0, np.zeros(3)
    costs = [[cost(old, new) for new in STATES] for old in STATES]
    for path in product(range(len(STATES)), repeat=3):
        steps = [costs[a][b] for a, b in pairwise(path)]
        if None in steps:
            continue
        weight = np.exp(sum(score[t, k] for t, k in enumerate(path)) - sum(steps))
        total += weight
        ones += weight * np.array([STATES[k][1] == 0 for k in path])

    np.testing.assert_allclose(chance_of_ones(score), ones / total, rtol=1e-9)


def fours(strength):
    """Score of bars of four with their one on every fourth beat, told this clearly at each beat [nats]."""
    score = np.full((len(strength), len(STATES)), -2.0)
    for beat, told in enumerate(strength):
        for place in range(4):
            score[beat, STATES.index((4, place))] = told if place == beat % 4 else 0.0
    return score


def test_where_nothing_tells_the_one_it_is_less_sure_than_where_something_does():
    chance = chance_of_ones(fours([0.5] * 64 + [0.0] * 64))[::4]

    assert chance[:14].min() > 0.99
    assert chance[-1] < chance[20] < chance[15]
    assert np.all(chance_of_ones(fours([0.5] * 64))[1::4] < 0.01)


def test_a_song_in_which_nothing_tells_the_one_has_four_ways_alike():
    np.testing.assert_allclose(chance_of_ones(fours([0.0] * 40))[20], 0.25, atol=0.02)


def test_a_thousand_beats_neither_vanish_nor_overflow():
    chance = chance_of_ones(40.0 * fours([1.0] * 1000))

    np.testing.assert_allclose(chance[::4], 1.0)
    np.testing.assert_allclose(chance[1::4], 0.0, atol=1e-9)
