"""What holds for every law of the vocabulary, drawn at random parameters."""

from math import isfinite

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.transforms import Retimed, mirrored, shifted
from sequencer.motion.patterns.library import cycle_beats, law_for, patterns
from sequencer.motion.patterns.toroid import toroid

BODY = Body(stature=1.7)
FIELDS = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip


def drawn_value(draw, parameter):
    if parameter.kind == "choice":
        return draw(st.sampled_from(parameter.choices))
    narrow = {"hand_radius": (0.05, 0.4), "size": (0.05, 0.4), "low": (parameter.low, 9.0)}
    if parameter.name in narrow:  # `low` stays under any `high`
        return draw(st.floats(*narrow[parameter.name]))
    if parameter.name == "ratio":
        return draw(st.sampled_from([-3.0, -1.5, 0.5, 1.0, 2.0, 2.5, 4.0]))
    if parameter.kind == "count":
        low, high = max(int(parameter.low), -6), min(int(parameter.high), 8)
        return draw(st.integers(low, high).filter(bool))
    if parameter.kind == "length":
        return draw(st.floats(max(parameter.low, -0.2), min(parameter.high, 0.2)))
    return draw(st.floats(parameter.low, parameter.high))


@st.composite
def laws(draw):
    """A law of some pattern with some of its parameters set."""
    pattern = draw(st.sampled_from(list(patterns().values())))
    side = draw(st.sampled_from(["left", "right"]))
    given_values = {}
    for parameter in pattern.parameters:
        if parameter.name != "tether" and draw(st.booleans()):
            given_values[parameter.name] = drawn_value(draw, parameter)
    if given_values.get("bend") == "anti" and given_values.get("lobes", 4) < 2:
        given_values["lobes"] = 3
    beats = draw(st.floats(0.8, 12.0))
    opposite = draw(st.booleans())
    return law_for(pattern.name, given_values, side=side, body=BODY, beats=beats, opposite=opposite)


def instants(law, count=23):
    span = law.period if isfinite(law.period) else 8.0
    return span * (np.arange(count) + 0.37) / count


@given(laws())
@settings(max_examples=150)
def test_tether_and_plane_are_unit_and_across(law):
    motion = law.at(instants(law))

    assert_allclose(np.linalg.norm(motion.tether, axis=-1), 1, atol=1e-12)
    assert_allclose(np.linalg.norm(motion.plane, axis=-1), 1, atol=1e-12)
    assert_allclose(np.sum(motion.plane * motion.tether, axis=-1), 0, atol=1e-12)
    assert_allclose(np.sum(motion.tether * motion.tether_rate, axis=-1), 0, atol=1e-9)


@given(laws())
@settings(max_examples=150)
def test_derivatives_are_central_differences(law):
    beats, step = instants(law), 1e-5
    before, now, after = law.at(beats - step), law.at(beats), law.at(beats + step)
    bounds = law.bounds()
    for value, rate, scale in (
        ("hand", "hand_rate", bounds.hand_acceleration),
        ("hand_rate", "hand_acceleration", bounds.hand_jerk),
        ("tether", "tether_rate", bounds.turn_acceleration),
        ("tether_rate", "tether_acceleration", bounds.turn_acceleration * bounds.turn_rate * 3),
    ):
        differences = (getattr(after, value) - getattr(before, value)) / (2 * step)
        assert_allclose(getattr(now, rate), differences, atol=1e-6 + scale * step, err_msg=value)


@given(laws(), st.integers(0, 2**32 - 1))
@settings(max_examples=150)
def test_nothing_exceeds_its_bound(law, seed):
    span = law.period if isfinite(law.period) else 8.0
    beats = np.random.default_rng(seed).uniform(-2 * span, 3 * span, 400)
    motion, bounds = law.at(beats), law.bounds()

    def size(vectors):
        return np.linalg.norm(vectors, axis=-1).max()

    assert size(motion.hand_rate) <= bounds.hand_speed + 1e-12
    assert size(motion.hand_acceleration) <= bounds.hand_acceleration + 1e-12
    assert size(motion.tether_rate) <= bounds.turn_rate + 1e-12
    assert size(motion.tether_acceleration) <= bounds.turn_acceleration + 1e-12
    assert size(motion.hand[:, :2]) <= bounds.hand_reach + 1e-12
    assert size(motion.head_rate(0.55)) <= bounds.head_speed(0.55) + 1e-12


@given(laws())
@settings(max_examples=60)
def test_a_period_brings_the_state_back(law):
    if not isfinite(law.period):
        return
    beats = instants(law)
    first, again = law.at(beats), law.at(beats + law.period)
    for name in FIELDS:
        assert_allclose(getattr(again, name), getattr(first, name), atol=1e-7, err_msg=name)


@given(laws())
@settings(max_examples=60)
def test_mirror_twice_is_the_same(law):
    beats = instants(law)
    seen, own = mirrored(mirrored(law)).at(beats), law.at(beats)
    once = mirrored(law).at(beats)
    for name in FIELDS:
        assert_allclose(getattr(seen, name), getattr(own, name), atol=0)
    # the mirror's turning axis is the mirrored axial vector: forward wheels stay forward
    assert_allclose(once.turning_axis * np.array([1, -1, -1]), own.turning_axis, atol=1e-12)


@given(laws(), st.floats(-5, 5), st.floats(0.25, 4))
@settings(max_examples=60)
def test_time_shift_and_pace(law, shift, rate):
    beats = instants(law)
    paced, own = Retimed(law, shift, rate).at(beats), law.at(shift + rate * beats)

    assert_allclose(paced.hand, own.hand)
    assert_allclose(paced.tether_rate, own.tether_rate * rate, atol=1e-12)
    assert_allclose(paced.hand_acceleration, own.hand_acceleration * rate**2, atol=1e-12)
    assert_allclose(shifted(shifted(law, shift), -shift).at(beats).hand, law.at(beats).hand)


@given(laws())
@settings(max_examples=30)
def test_scalar_row_and_grid_agree(law):
    grid = instants(law, 6).reshape(2, 3)
    whole = law.at(grid)
    for i, j in ((0, 0), (1, 2)):
        alone = law.at(grid[i, j])
        row = law.at(grid[i])
        for name in FIELDS:
            assert getattr(whole, name).shape == (2, 3, 3)
            assert getattr(alone, name).shape == (3,)
            assert_allclose(getattr(whole, name)[i, j], getattr(alone, name), atol=1e-14)
            assert_allclose(getattr(row, name)[j], getattr(alone, name), atol=1e-14)


@given(st.integers(1, 12), st.sampled_from(["pro", "anti"]), st.sampled_from([1, -1]))
def test_odd_lobes_come_home_reversed(lobes, bend, start):
    """After one hand cycle the sense is turned round if, and only if, lobes is odd."""
    if bend == "anti" and lobes < 2:
        return
    law = toroid(
        lobes=lobes, bend=bend, start=start, hand_radius=0.2, beats=4.0, side="right", body=BODY
    )
    first, last = law.at(np.array([0.0, 4.0])).plane

    assert_allclose(last, -first if lobes % 2 else first, atol=1e-12)


def test_cycle_beats_follow_lobes_petals_and_loops():
    assert cycle_beats("toroid", {"lobes": 5}) == 5
    assert cycle_beats("orbit", {"ratio": -3}) == 4
    assert cycle_beats("orbit", {"ratio": 5}) == 4
    assert cycle_beats("orbit", {"ratio": 1, "hand_radius": 0}) == 1
    assert cycle_beats("three-beat-weave", {}) == 3
