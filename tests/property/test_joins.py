"""What holds for every join, blend and link, between random states of the vocabulary."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.carriage import beyond_upright
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.joining import Tolerances, gap_between
from sequencer.motion.trajectories.one_link.link_limits import HandSpace
from sequencer.motion.trajectories.one_link.links import link
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory

BODY = Body(stature=1.7)
ROOM = HandSpace(body=BODY, side="right", length=0.55)
NAMES = [n for n in patterns() if n != "inspin-flower-1"]
FIELDS = ("hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration")


def law_of(name):
    return law_for(name, {}, side="right", body=BODY)


states = st.builds(
    lambda name, beat: law_of(name).at(np.array(beat)),
    st.sampled_from(NAMES),
    st.floats(0, 6),
)


@given(states, states, st.sampled_from([0.5, 1.0, 2.0, 4.0]), st.booleans())
@settings(max_examples=80)
def test_a_link_meets_both_states(first, last, beats, roomy):
    """Position to 1 mm, direction to 0.1°, velocity to 1 mm/s are asked; it is exact to rounding."""
    law = link(first, last, beats, ROOM if roomy else None)
    for state, at in ((first, 0.0), (last, beats)):
        own = law.at(np.array(at))
        for name in FIELDS:
            assert_allclose(getattr(own, name), getattr(state, name), atol=1e-7, err_msg=name)
        assert_allclose(own.plane, state.plane, atol=1e-7)


@given(states, states, st.sampled_from([0.5, 1.0, 3.0]))
@settings(max_examples=60)
def test_a_link_is_smooth_and_bounded(first, last, beats):
    law = link(first, last, beats, ROOM)
    at = np.linspace(0, beats, 1601)
    motion = law.at(at)

    assert_allclose(np.linalg.norm(motion.tether, axis=-1), 1, atol=1e-12)
    assert_allclose(np.linalg.norm(motion.plane, axis=-1), 1, atol=1e-12)
    assert_allclose(np.sum(motion.plane * motion.tether, axis=-1), 0, atol=1e-12)
    for low, high, bounds in law.parts:
        own = (at >= low) & (at <= high)
        for vectors, most in (
            (motion.hand_rate, bounds.hand_speed),
            (motion.hand_acceleration, bounds.hand_acceleration),
            (motion.tether_rate, bounds.turn_rate),
            (motion.tether_acceleration, bounds.turn_acceleration),
            (motion.hand[:, :2], bounds.hand_reach),
        ):
            assert np.linalg.norm(vectors[own], axis=-1).max() <= most + 1e-9
    away = beyond_upright(BODY, motion.hand, "right")
    assert away.max() <= law.reach_of(BODY, "right") + 1e-12
    # the jerk's bound is the slope of the acceleration
    steps = np.linalg.norm(np.diff(motion.hand_acceleration, axis=0), axis=-1) / np.diff(at)
    assert steps.max() <= law.bounds().hand_jerk * (1 + 1e-9) + 1e-6


@given(states, states)
@settings(max_examples=100)
def test_a_gap_is_the_same_backwards_in_time(first, last):
    """Run backwards, the later state comes first and every rate changes its sign."""

    def backwards(state):
        return replace(
            state, hand_rate=-state.hand_rate, tether_rate=-state.tether_rate, plane=-state.plane
        )

    there = gap_between(first, last, 0.55)
    back = gap_between(backwards(last), backwards(first), 0.55)
    assert_allclose(back.hand, there.hand)
    assert_allclose(back.tether, there.tether)
    assert_allclose(back.axis, there.axis)
    assert_allclose(back.head_velocity, there.head_velocity)
    if np.isfinite(there.rate_ratio) and there.rate_ratio > 1e-9:
        assert_allclose(back.rate_ratio, 1 / there.rate_ratio)
    tolerances = Tolerances()
    assert bool(back.within(tolerances)) == bool(there.within(tolerances))
    assert bool(back.reversed_in_place(tolerances)) == bool(there.reversed_in_place(tolerances))


@given(st.lists(st.sampled_from(NAMES), min_size=2, max_size=5), st.data())
@settings(max_examples=25)
def test_a_course_never_jumps_and_keeps_its_bounds(names, data):
    spans, at = [], 4.0
    for name in names:
        at += data.draw(st.sampled_from([0.0, 0.0, 1.0, 3.0, 9.0]))
        length = data.draw(st.sampled_from([0.5, 2.0, 4.0]))
        spans.append(
            Span(start=at, end=at + length, law=law_of(name), origin=at, kind="block", label=name)
        )
        at += length
    trajectory = assembled(spans, rest("right", BODY, 0.55), space=ROOM)
    beats = np.linspace(0, at + 4, 12_001)
    motion, step = trajectory.at(beats), (at + 4) / 12_000
    pieces = trajectory.pieces(0.0, at + 4)
    assert pieces[0][0] == 0.0
    assert pieces[-1][1] == at + 4
    for (_, end, _), (start, _, _) in pairwise(pieces):
        assert abs(end - start) < 1e-9
    for low, high, bounds in pieces:
        own = (beats >= low) & (beats <= high)
        if not own.any():
            continue
        for vectors, most in (
            (motion.hand_rate, bounds.hand_speed),
            (motion.hand_acceleration, bounds.hand_acceleration),
            (motion.tether_rate, bounds.turn_rate),
            (motion.tether_acceleration, bounds.turn_acceleration),
            (motion.hand[:, :2], bounds.hand_reach),
        ):
            assert np.linalg.norm(vectors[own], axis=-1).max() <= most + 1e-9
    # twice continuously differentiable: steps of the first derivative stay within the second's bound
    most = max(b.turn_acceleration for _, _, b in pieces)
    steps = np.linalg.norm(np.diff(motion.tether_rate, axis=0), axis=-1)
    assert steps.max() <= most * step * (1 + 1e-6) + 1e-9
    most = max(b.hand_acceleration for _, _, b in pieces)
    assert np.linalg.norm(np.diff(motion.hand_rate, axis=0), axis=-1).max() <= most * step + 1e-9
    # and the second derivative has no jump at a boundary or at the ends of a blend
    corners = [s.start for s in trajectory.spans[1:]]
    corners += [b.boundary + w for b in trajectory.blends for w in (-b.half, b.half) if b.half]
    for corner in corners:
        before, after = (trajectory.at(np.array(corner + d)) for d in (-1e-7, 1e-7))
        assert_allclose(before.tether_acceleration, after.tether_acceleration, atol=1e-2)
        assert_allclose(before.hand_acceleration, after.hand_acceleration, atol=1e-2)
        assert_allclose(before.plane, after.plane, atol=1e-4)


def test_the_sampling_of_a_course_changes_nothing():
    """Any grid sees the same curve."""
    trajectory = Trajectory(
        tuple(
            Span(
                start=4.0 * k, end=4.0 * k + 4, law=law_of(n), origin=4.0 * k, kind="block", label=n
            )
            for k, n in enumerate(("pro-bend-4", "anti-bend-4", "iso-bend-4"))
        )
    )
    fine = trajectory.at(np.linspace(0, 12, 1201))
    coarse = trajectory.at(np.linspace(0, 12, 121))
    assert_allclose(fine.hand[::10], coarse.hand, atol=1e-12)
    assert_allclose(fine.tether[::10], coarse.tether, atol=1e-12)


near = st.fixed_dictionaries(
    {
        "from": st.floats(-100, -80),
        "hand_radius": st.floats(0.25, 0.35),
        "across": st.floats(-0.05, 0.05),
        "lag": st.floats(-10, 10),
        "ratio": st.sampled_from([-3.0, -2.8, -3.3]),
    }
)


@given(near, near, st.sampled_from([0.3, 1.0, 2.0]))
@settings(max_examples=25)
def test_near_laws_are_mixed_smoothly_within_bounds(first, last, length):
    spans = [
        Span(
            start=start, end=start + length, origin=start, kind="block", label="flower",
            law=law_for("orbit", given, side="right", body=BODY, beats=4.0),
        )
        for start, given in ((0.0, first), (length, last))
    ]  # fmt: skip
    spans[1] = replace(spans[1], origin=0.0)  # the second goes on where it would be by now
    met = [span.law.at(np.array(length)).tether for span in spans]
    assume(met[0] @ met[1] > np.cos(np.radians(50.0)))  # farther apart they are bridged by a link
    trajectory = Trajectory(tuple(spans))
    (blend,) = trajectory.blends
    assert blend.bridge is None
    if blend.half == 0.0:
        return
    assert blend.half == min(0.25, length / 2)
    beats = np.linspace(0, 2 * length, 4001)
    motion, step = trajectory.at(beats), 2 * length / 4000
    for low, high, bounds in trajectory.pieces(0.0, 2 * length):
        own = (beats >= low) & (beats <= high)
        for vectors, most in (
            (motion.hand_rate, bounds.hand_speed),
            (motion.hand_acceleration, bounds.hand_acceleration),
            (motion.tether_rate, bounds.turn_rate),
            (motion.tether_acceleration, bounds.turn_acceleration),
            (motion.hand[:, :2], bounds.hand_reach),
        ):
            assert np.linalg.norm(vectors[own], axis=-1).max() <= most + 1e-9
        jerk = np.linalg.norm(np.diff(motion.hand_acceleration[own], axis=0), axis=-1) / step
        assert jerk.max(initial=0.0) <= bounds.hand_jerk * (1 + 1e-6) + 1e-6
    # the third derivative jumps at the blend's ends, so differences are taken away from them
    edge = np.minimum(abs(beats - length + blend.half), abs(beats - length - blend.half))
    inner = (edge > 3 * step)[1:-1]
    for value, rate in (("hand", "hand_rate"), ("hand_rate", "hand_acceleration"),
                        ("tether", "tether_rate"), ("tether_rate", "tether_acceleration")):  # fmt: skip
        whole = getattr(motion, value)
        differences = ((whole[2:] - whole[:-2]) / (2 * step))[inner]
        assert_allclose(getattr(motion, rate)[1:-1][inner], differences, atol=0.02)
    assert_allclose(np.linalg.norm(motion.tether, axis=-1), 1, atol=1e-12)
    assert_allclose(np.sum(motion.plane * motion.tether, axis=-1), 0, atol=1e-12)
    before = spans[0].at(np.array(length - blend.half))
    after = spans[1].at(np.array(length + blend.half))
    assert_allclose(trajectory.at(np.array(length - blend.half)).tether, before.tether, atol=1e-9)
    assert_allclose(trajectory.at(np.array(length + blend.half)).tether, after.tether, atol=1e-9)


def test_bounds_go_on_beyond_the_ends():
    trajectory = Trajectory(
        (Span(start=2.0, end=4.0, law=law_of("toroid"), origin=2.0, kind="block", label="t"),)
    )
    pieces = trajectory.pieces(-10.0, 20.0)
    assert [(low, high) for low, high, _ in pieces] == [(-10.0, 2.0), (2.0, 4.0), (4.0, 20.0)]
    assert trajectory.pieces(2.5, 3.0)[0][:2] == (2.5, 3.0)
