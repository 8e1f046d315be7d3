"""Ways that are worked out together are, to the last digit, what each would be alone, and those of a link's own search."""

import numpy as np
import pytest

from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.every_way import every_way
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits
from sequencer.motion.trajectories.one_link.link_search import _ways

SHARES = np.linspace(0.0, 1.0, 33)
LENGTHS = np.array([1.0, 1.5, 2.0, 0.7, 1.0])


def unit(vectors):
    return vectors / np.linalg.norm(vectors, axis=-1, keepdims=True)


def states(seed):
    draw = np.random.default_rng(seed).normal(size=(6, len(LENGTHS), 3))
    tether = unit(draw[0])
    rate = draw[1] - np.sum(draw[1] * tether, axis=-1, keepdims=True) * tether
    return Motion(
        hand=0.3 * draw[2],
        hand_rate=draw[3],
        hand_acceleration=3.0 * draw[4],
        tether=tether,
        tether_rate=6.0 * rate,
        tether_acceleration=-np.sum((6.0 * rate) ** 2, axis=-1, keepdims=True) * tether,
        plane=unit(np.cross(tether, rate)),
    )


def rows(motion, chosen):
    names = ("hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane")  # fmt: skip
    return Motion(**{name: getattr(motion, name)[chosen] for name in names})


FIRST, LAST = states(1), states(2)


@pytest.fixture(scope="module")
def together():
    return every_way(FIRST, LAST, LENGTHS, SHARES)


@pytest.mark.parametrize("k", range(len(LENGTHS)))
def test_each_is_as_it_would_be_alone(together, k):
    part = slice(k, k + 1)
    (alone,) = every_way(rows(FIRST, part), rows(LAST, part), LENGTHS[part], SHARES)
    own = together[k]
    for name in ("hand", "tether", "tether_rate", "tether_acceleration"):
        assert np.array_equal(getattr(own, name), getattr(alone, name))
    places = np.linspace(0.0, LENGTHS[k], 9)
    for way in range(len(own.tether)):
        assert np.array_equal(own.law(way).at(places).tether, alone.law(way).at(places).tether)


@pytest.mark.parametrize("k", range(len(LENGTHS)))
def test_they_are_the_ways_of_a_search_in_its_order(together, k):
    """Source: the ways that a link's own search takes (`link_search`), one link at a time."""
    own, length = together[k], float(LENGTHS[k])
    ways = _ways(rows(FIRST, k), rows(LAST, k), length, LinkLimits())
    assert len(own.tether) == len(ways.peak)
    for way, (frame, pieces) in enumerate(zip(ways.frames, ways.angles.pieces, strict=True)):
        law = own.law(way)
        assert np.array_equal(law.frame, frame)
        assert np.array_equal(law.angles.pieces[0], pieces)
        assert law.beats == length


@pytest.mark.parametrize("k", range(len(LENGTHS)))
def test_a_way_leads_from_state_to_state(together, k):
    """Source: the states that are given; its law and what is seen of it agree."""
    own = together[k]
    for end, (state, at) in enumerate(((FIRST, 0.0), (LAST, LENGTHS[k]))):
        assert np.allclose(own.hand[0, -end], state.hand[k], atol=1e-12)
        assert np.allclose(own.tether[:, -end], state.tether[k], atol=1e-9)
        assert np.allclose(own.tether_rate[:, -end], state.tether_rate[k], atol=1e-8)
        for way in range(len(own.tether)):
            seen = own.law(way).at(np.array([at]))
            assert np.allclose(seen.hand_rate[0], state.hand_rate[k], atol=1e-9)
            assert np.allclose(
                own.tether_acceleration[way, -end], seen.tether_acceleration[0], atol=1e-6
            )
