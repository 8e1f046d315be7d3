"""People who are off the plan: as unsure half way on a walk as where they stand, with derivatives and bounds."""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.stats import chi2

from sequencer.motion.performers.walks import Move, WalkPath, WalkPaths
from tests.repeated import at_length

MOVES = (
    Move(start=2.0, end=6.0, place=(2.0, 4.0), facing=1.0, through=((0.5, 3.0),)),
    Move(start=8.0, end=9.5, place=(0.0, 3.0), facing=-0.5),
)
STRAYS = ((0.3, -0.1, 0.2), (-0.2, 0.4, -0.3), (0.1, 0.1, 0.4))
PATH = WalkPath((0.0, 1.0), 0.2, MOVES, strays=STRAYS)
PLAN = WalkPath((0.0, 1.0), 0.2, MOVES)


def off(path, plan, beats):
    there, meant = path.at(beats), plan.at(beats)
    turn = np.asarray(there.facing - meant.facing)[..., None]
    return np.concatenate([there.place - meant.place, turn], axis=-1)


def test_each_place_is_missed_by_its_own():
    """Before, between and after the walks: the vectors themselves, by hand."""
    assert_allclose(off(PATH, PLAN, np.array([-3.0, 0.5, 2.0])), [STRAYS[0]] * 3, atol=1e-12)
    assert_allclose(off(PATH, PLAN, np.array([6.0, 7.0, 8.0])), [STRAYS[1]] * 3, atol=1e-12)
    assert_allclose(off(PATH, PLAN, np.array([9.5, 50.0])), [STRAYS[2]] * 2, atol=1e-12)


def test_on_the_way_they_mix_as_a_quarter_turn():
    """Half way s is 1/2: (before + after)/√2; a quarter on, s(1/4) = 10/64 − 15/256 + 6/1024 = 53/512."""
    a, b = np.array(STRAYS[0]), np.array(STRAYS[1])
    angle = np.pi / 2 * 53 / 512
    want = [np.cos(angle) * a + np.sin(angle) * b, (a + b) / np.sqrt(2)]
    assert_allclose(off(PATH, PLAN, np.array([3.0, 4.0])), want, atol=1e-12)


@pytest.mark.parametrize("share", [0.2, 0.5, *at_length(0.0, 0.7, 1.0)])
def test_nobody_is_surer_half_way(share):
    """Drawn with 15 cm in X and Y: 15 cm everywhere on the walk, by the chi-squared of 2·1500 draws at 99.9 %."""
    draw, n = np.random.default_rng(7), 1500
    at = 2.0 + 4.0 * share
    found = []
    for _ in range(n):
        strays = [(*draw.normal(size=2) * 0.15, 0.0) for _ in range(3)]
        path = WalkPath((0.0, 1.0), 0.2, MOVES, strays=tuple(strays))
        found.append(off(path, PLAN, np.array(at))[:2])
    total = np.sum(np.square(found)) / 0.15**2
    low, high = chi2.ppf([0.0005, 0.9995], 2 * n)
    assert low < total < high


def test_its_derivatives_are_its_differences():
    beats = np.linspace(0.0, 11.0, 110_001)
    there = PATH.at(beats)
    for value, rate, bend in (
        (there.place.T, there.place_rate.T, there.place_acceleration.T),
        (there.facing[None], there.facing_rate[None], there.facing_acceleration[None]),
    ):
        assert_allclose(np.gradient(value, beats, axis=1)[:, 2:-2], rate[:, 2:-2], atol=1e-4)
        inner = np.abs(beats[2:-2, None] - [2, 6, 8, 9.5]).min(axis=1) > 1e-3
        assert_allclose(
            np.gradient(rate, beats, axis=1)[:, 2:-2][:, inner], bend[:, 2:-2][:, inner], atol=2e-3
        )


@pytest.mark.parametrize("seed", range(12))
def test_it_keeps_its_bounds(seed):
    draw = np.random.default_rng(seed)
    strays = tuple(map(tuple, draw.normal(size=(3, 3)) * draw.choice([0.05, 2.0])))
    path = WalkPath((0.0, 1.0), 0.2, MOVES, strays=strays)
    for low, high, bounds in path.pieces(0.0, 12.0):
        there = path.at(np.linspace(low, high, 801)[1:-1])
        for rate, most in (
            (np.linalg.norm(there.place_rate, axis=-1), bounds.speed),
            (np.linalg.norm(there.place_acceleration, axis=-1), bounds.acceleration),
            (np.abs(there.facing_rate), bounds.turn_rate),
            (np.abs(there.facing_acceleration), bounds.turn_acceleration),
        ):
            assert rate.max() <= most + 1e-9


def test_a_bound_is_reached_by_who_strays_alone():
    """On a straight walk of no length with opposite quarter turns: the fastest is (π/2)·(15/8)·|b|/T at s = 1/2."""
    still = (Move(start=0.0, end=2.0, place=(1.0, 1.0), facing=0.0),)
    path = WalkPath((1.0, 1.0), 0.0, still, strays=((0.3, 0.0, 0.0), (0.0, 0.3, 0.0)))
    ((_, _, bounds),) = path.pieces(0.0, 2.0)
    fastest = np.linalg.norm(path.at(1.0).place_rate)
    assert fastest == pytest.approx(np.pi / 2 * 15 / 8 * 0.3 / 2.0)
    assert bounds.speed == pytest.approx(fastest * np.sqrt(2))  # √(|a|² + |b|²) for any two vectors


def test_many_at_once_are_the_same():
    other = WalkPath((5.0, 5.0), 0.0, (Move(start=1.0, end=3.0, place=(6.0, 5.0), facing=0.0),))
    beats = np.linspace(0.0, 10.0, 101)
    for paths in ((PATH, other), (other, PATH), (PLAN, other)):
        found = WalkPaths(paths).at([(0, 0, 60), (1, 60, 101)], beats)
        apart = [paths[0].at(beats[:60]), paths[1].at(beats[60:])]
        for name in ("place", "place_rate", "place_acceleration", "facing", "facing_acceleration"):
            assert_allclose(
                getattr(found, name), np.concatenate([getattr(one, name) for one in apart])
            )


def test_what_stands_for_it_tells_strays_apart():
    contents = {PATH.content, PLAN.content}
    contents.add(WalkPath((0.0, 1.0), 0.2, MOVES, strays=STRAYS[::-1]).content)
    stands = [WalkPath((0.0, 1.0), strays=own) for own in ((), ((0.1, 0.0, 0.0),))]
    assert len(contents) == 3
    assert stands[0].content != stands[1].content
    assert PATH.walks[0] != PLAN.walks[0]
    assert PATH.shifted(2.0).strays == PATH.moved((1.0, 0.0)).strays == STRAYS


def test_there_is_one_for_each_place():
    with pytest.raises(ValueError, match="one for each position held, 3, got 2"):
        WalkPath((0.0, 1.0), 0.2, MOVES, strays=STRAYS[:2])


def test_many_who_drift_are_each_as_alone(dance):
    """All points of an ensemble of drawn dancers, two of one plan, against each dancer's own."""
    from sequencer.motion.performers.drifting import Spread, drifted
    from sequencer.motion.performers.ensemble import Ensemble

    spread = Spread(place=0.3, facing=0.3, timing=0.5, tempo=0.02, tether=0.05, hand=0.3)
    plans = [dance.dancer("Ada", moves=MOVES), dance.dancer("Bo", ratio=-2.0, plane="wheel")]
    cast = [
        drifted(plan, spread, np.random.default_rng(k), 5.0)
        for k, plan in enumerate((*plans, plans[0]))
    ]
    cast.append(plans[0])
    who = np.repeat(np.arange(4), 25)
    beats = np.tile(np.linspace(0.0, 12.0, 25), 4)
    points, rates = Ensemble(cast).stage_points(who, beats)
    for k, one in enumerate(cast):
        want, speeds = one.stage_points(beats[who == k])
        assert_allclose(points[who == k].transpose(1, 0, 2), want, atol=1e-12)
        assert_allclose(rates[who == k].transpose(1, 0, 2), speeds, atol=1e-12)
