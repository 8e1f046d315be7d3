"""Bounds of what joins two laws: every term of the product rule is there, measured by differences."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.trajectory import _BOUND_PIECES as PIECES
from sequencer.motion.trajectories.trajectory import Span, Trajectory, _can_mix

STILL = Bounds(
    hand_speed=0.0, hand_acceleration=0.0, turn_rate=0.0, turn_acceleration=0.0, hand_reach=5.0,
    hand_jerk=0.0, turn_jerk=0.0, frame_rate=0.0, frame_acceleration=0.0,
)  # fmt: skip
WIDTH = 0.5  # [beats] of a blend: a quarter of a beat to either side
RATE, PUSH, JERK = 15 / 8 / WIDTH, 10 / np.sqrt(3) / WIDTH**2, 60 / WIDTH**3  # of its step


class Known:
    """Hand c₀ + c₁t + c₂t² + c₃t³ from the boundary, tether at an angle of its own, plane rolled about it."""

    period = np.inf

    def __init__(self, *hand, angle=(0.0, 0.0), roll=(0.0, 0.0), bounds=STILL):
        self.hand = [np.array(c, float) for c in hand] + [np.zeros(3)] * (4 - len(hand))
        self.angle, self.roll, self.own = angle, roll, bounds

    def at(self, beats):
        t = np.asarray(beats, float)[..., None] - 4.0
        c0, c1, c2, c3 = self.hand
        a, b = self.angle[0] + self.angle[1] * t, self.roll[0] + self.roll[1] * t
        zero, spin = np.zeros_like(t), self.angle[1]
        tether = np.concatenate([np.cos(a), np.sin(a), zero], axis=-1)
        aside = np.concatenate([-np.sin(a), np.cos(a), zero], axis=-1)
        up = np.array([0.0, 0.0, 1.0]) + 0 * tether
        return Motion(
            hand=c0 + c1 * t + c2 * t**2 + c3 * t**3,
            hand_rate=c1 + 2 * c2 * t + 3 * c3 * t**2,
            hand_acceleration=2 * c2 + 6 * c3 * t,
            tether=tether,
            tether_rate=spin * aside,
            tether_acceleration=-(spin**2) * tether,
            plane=np.cos(b) * up + np.sin(b) * aside,
        )

    def bounds(self):
        return self.own


def joined(first, last):
    """Both laws for four beats each, blended over half a beat about beat 4."""
    spans = (
        Span(start=0.0, end=4.0, law=first, origin=0.0, kind="block", label="a"),
        Span(start=4.0, end=8.0, law=last, origin=0.0, kind="block", label="b"),
    )
    return Trajectory(spans)


def mixed(first, last):
    """The pieces of the blend with what is measured on each by differences of places and directions."""
    trajectory = joined(first, last)
    pieces = [each for each in trajectory.pieces(0.0, 8.0) if 3.75 <= each[0] < 4.25]
    assert len(pieces) == PIECES
    rows = []
    for low, high, bounds in pieces:
        beats = np.linspace(low, high, 401)
        step = beats[1] - beats[0]
        state = trajectory.at(beats)
        size = {
            "hand_speed": np.diff(state.hand, axis=0) / step,
            "hand_acceleration": np.diff(state.hand_rate, axis=0) / step,
            "hand_jerk": np.diff(state.hand_acceleration, axis=0) / step,
            "turn_rate": np.diff(state.tether, axis=0) / step,
            "turn_acceleration": np.diff(state.tether_rate, axis=0) / step,
            "frame_rate": np.diff(state.plane, axis=0) / step,
        }
        found = {k: np.linalg.norm(v, axis=-1).max() for k, v in size.items()}
        rows.append((bounds, found))
    return rows


CALM = replace(STILL, hand_speed=0.0)
FAR, RUNNING, PUSHED = (0.1, 0, 0), (0, 1.0, 0), (0, 0, 3.0)
HAND = {  # law before, law after, which figure, and what it is where one term makes it up
    "gap, speed": (Known((0, 0, 0)), Known(FAR), "hand_speed", 0.1 * RATE),
    "gap, acceleration": (Known((0, 0, 0)), Known(FAR), "hand_acceleration", 0.1 * PUSH),
    "gap, jerk": (Known((0, 0, 0)), Known(FAR), "hand_jerk", 0.1 * JERK),
    "speed of one": (
        Known((0, 0, 0), RUNNING, bounds=replace(STILL, hand_speed=1.0)),
        Known((0, 0, 0), RUNNING, bounds=replace(STILL, hand_speed=1.0)),
        "hand_speed", 1.0,
    ),
    "jerk of one": (
        Known((0, 0, 0), (0, 0, 0), (0, 0, 0), (2.0, 0, 0), bounds=replace(STILL, hand_jerk=12.0)),
        Known((0, 0, 0), (0, 0, 0), (0, 0, 0), (2.0, 0, 0), bounds=replace(STILL, hand_jerk=12.0)),
        "hand_jerk", 12.0,
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", HAND)
def test_a_term_of_a_mixed_hand_that_stands_alone_is_the_bound(case):
    """Source: (h + σΔ)' = h' + σΔ' + σ'Δ and so on, the product rule; peaks of σ' … as for the step."""
    first, last, which, exact = HAND[case]
    if first.hand[1].any() or first.hand[2].any() or first.hand[3].any():
        last.roll = (0.05, 0.0)  # the same but for the plane would need no blend
        last.hand[0] = last.hand[0] + [1e-7, 0, 0]
    rows = mixed(first, last)
    most = max(getattr(bounds, which) for bounds, _ in rows)
    assert most == pytest.approx(exact, rel=2e-3)
    for bounds, found in rows:
        assert found[which] <= getattr(bounds, which) * (1 + 1e-6) + 1e-6
    assert max(found[which] for _, found in rows) >= 0.94 * exact


def test_each_order_of_a_mixed_hand_counts_as_often_as_leibniz_says():
    """At the middle a law that speeds up from nothing leaves one term, 3σ'Δ'' or 2σ'Δ', and no other.

    Source: Leibniz's rule, binomial coefficients 1 2 1 and 1 3 3 1.
    """
    push = Known((0, 0, 0), (0, 0, 0), PUSHED, bounds=replace(STILL, hand_acceleration=6.0))
    rows = mixed(Known((0, 0, 0)), push)
    near = [rows[PIECES // 2 - 1], rows[PIECES // 2]]
    for bounds, found in near:
        assert found["hand_jerk"] >= 0.9 * 3 * RATE * 6.0
        assert found["hand_jerk"] <= bounds.hand_jerk
    run = Known((0, 0, 0), RUNNING, bounds=replace(STILL, hand_speed=1.0))
    for bounds, found in mixed(Known((0, 0, 0)), run):
        assert found["hand_acceleration"] <= bounds.hand_acceleration + 1e-6
        assert found["hand_jerk"] <= bounds.hand_jerk + 1e-4
        assert found["hand_speed"] <= bounds.hand_speed + 1e-9


@pytest.mark.parametrize("seed", range(4))
def test_a_mixed_hand_is_bounded_by_leibniz_and_taylor(seed):
    """Each part of the blend against the rule itself, with Δ and its rates followed from the part's middle."""
    draw = np.random.default_rng(seed)
    c = draw.normal(size=(2, 3, 3)) * np.array([0.05, 0.5, 1.5])[:, None]
    laws, bounds = [], []
    for own, speed in zip(c, (3.0, 4.0), strict=True):
        most = replace(
            STILL, hand_speed=speed, hand_acceleration=2 * np.linalg.norm(own[2]), hand_jerk=0.0
        )
        laws.append(Known(*own, bounds=most))
        bounds.append(most)
    rows, delta = mixed(*laws), WIDTH / PIECES / 2
    for k, (found_bounds, found) in enumerate(rows):
        t = 3.75 + (2 * k + 1) * delta
        a, b = (law.at(np.array(t)) for law in laws)
        second = bounds[0].hand_acceleration + bounds[1].hand_acceleration
        first = np.linalg.norm(b.hand_rate - a.hand_rate) + delta * second
        gap = np.linalg.norm(b.hand - a.hand) + delta * first
        fastest = max(
            min(own.hand_speed, np.linalg.norm(s.hand_rate) + delta * own.hand_acceleration)
            for own, s in zip(bounds, (a, b), strict=True)
        )
        largest = max(own.hand_acceleration for own in bounds)
        assert found_bounds.hand_speed == pytest.approx(fastest + RATE * gap)
        assert found_bounds.hand_acceleration == pytest.approx(
            largest + 2 * RATE * first + PUSH * gap
        )
        assert found_bounds.hand_jerk == pytest.approx(
            3 * RATE * second + 3 * PUSH * first + JERK * gap
        )
        for which in ("hand_speed", "hand_acceleration", "hand_jerk"):
            assert found[which] <= getattr(found_bounds, which) + 1e-4


@pytest.mark.parametrize(
    ("first", "last"),
    [((0.0, 0.0), (0.9, 0.0)), ((0.3, 2.0), (-0.3, 2.0)), ((0.3, -1.0), (-0.3, 1.0)), ((0.0, 0.0), (0.1, 2.5))],
    ids=["apart", "apart and turning", "towards each other", "one runs off"],
)  # fmt: skip
def test_a_mixed_tether_turns_no_faster_than_its_bound(first, last):
    """The unit vector along (1 − σ)d₁ + σd₂, by differences of directions alone."""

    def law(angle):
        spin = abs(angle[1])
        return Known(
            (0, 0, 0),
            angle=angle,
            bounds=replace(STILL, turn_rate=spin, turn_acceleration=spin**2, frame_rate=spin),
        )

    laws, delta = (law(first), law(last)), WIDTH / PIECES / 2
    for k, (bounds, found) in enumerate(mixed(*laws)):
        for which in ("turn_rate", "turn_acceleration", "frame_rate"):
            assert found[which] <= getattr(bounds, which) * (1 + 1e-6) + 1e-6
        # m = (1 − σ)d₁ + σd₂ by Leibniz's rule, Δ and Δ' followed from the middle of the part by Taylor's
        # theorem; |m|² = 1 − |Δ|²/4 at least; d' and d'' from m = |m|d.
        a, b = (each.at(np.array(3.75 + (2 * k + 1) * delta)) for each in laws)
        spins = [abs(first[1]), abs(last[1])]
        apart1 = np.linalg.norm(b.tether_rate - a.tether_rate) + delta * sum(x**2 for x in spins)
        apart = np.linalg.norm(b.tether - a.tether) + delta * apart1
        least = np.sqrt(1 - apart**2 / 4)
        turn = (max(spins) + RATE * apart) / least
        curve = max(spins) ** 2 + 2 * RATE * apart1 + PUSH * apart
        shrink = max(spins) * apart + RATE * apart**2 / 2
        assert bounds.turn_rate == pytest.approx(turn)
        assert bounds.turn_acceleration == pytest.approx(
            np.hypot((curve + 2 * shrink * turn) / least, turn**2)
        )


def test_two_tethers_apart_are_mixed_at_the_rate_of_the_chord():
    """Standing 2a apart: |d'| is σ'·2·sin a over |m|, largest at the middle, where |m| = cos a.

    Source: plane geometry; the second derivative is then −d'²d + (m'' across d)/|m|.
    """
    half = 0.4
    rows = mixed(Known((0, 0, 0), angle=(-half, 0.0)), Known((0, 0, 0), angle=(half, 0.0)))
    chord = 2 * np.sin(half)
    m1, m2, least = RATE * chord, PUSH * chord, np.cos(half)
    shrink = RATE * chord**2 / 2
    across = (m2 + 2 * shrink * m1 / least) / least
    for bounds, found in rows:
        assert bounds.turn_rate == pytest.approx(m1 / least)
        assert bounds.turn_acceleration == pytest.approx(np.hypot(across, (m1 / least) ** 2))
        assert found["turn_acceleration"] <= bounds.turn_acceleration
    assert max(found["turn_rate"] for _, found in rows) == pytest.approx(m1 / least, rel=1e-2)


@pytest.mark.parametrize("angle", [0.3, 1.2, 2.5, -2.0])
def test_a_plane_that_is_turned_over_rolls_at_its_angle_times_the_step(angle):
    """One tether, still; the plane rolls by an angle: its rate is that angle times σ'."""
    last = Known((1e-7, 0, 0), roll=(angle, 0.0))
    rows = mixed(Known((0, 0, 0)), last)
    assert max(bounds.frame_rate for bounds, _ in rows) == pytest.approx(
        abs(angle) * RATE, rel=1e-3
    )
    for bounds, found in rows:
        assert found["frame_rate"] <= bounds.frame_rate * (1 + 1e-6)
    assert max(found["frame_rate"] for _, found in rows) > 0.98 * abs(angle) * RATE


def test_planes_that_roll_by_themselves_are_counted_with_the_roll_between_them():
    """Both planes roll about a still tether, at different paces: differences of the plane."""
    for first, last in (
        ((0.0, 1.0), (0.5, 1.5)),
        ((0.4, -2.0), (-0.4, 2.0)),
        ((0.0, 3.0), (0.1, 3.0)),
    ):
        laws = [
            Known((x, 0, 0), roll=roll, bounds=replace(STILL, frame_rate=abs(roll[1])))
            for x, roll in ((0.0, first), (1e-7, last))
        ]  # fmt: skip
        for bounds, found in mixed(*laws):
            assert found["frame_rate"] <= bounds.frame_rate * (1 + 1e-6)


def test_a_plane_that_may_come_to_half_a_turn_proves_nothing():
    last = Known((1e-7, 0, 0), roll=(3.1, 0.5), bounds=replace(STILL, frame_rate=0.5))
    rows = mixed(Known((0, 0, 0)), last)
    assert any(bounds.frame_rate == np.inf for bounds, _ in rows)


def test_reach_is_the_farther_of_both():
    near, far = replace(STILL, hand_reach=0.4), replace(STILL, hand_reach=0.7)
    for pair in ((near, far), (far, near)):
        rows = mixed(*(Known((0.1 * k, 0, 0), bounds=own) for k, own in enumerate(pair)))
        assert all(bounds.hand_reach == 0.7 for bounds, _ in rows)


def test_outside_its_spans_a_course_goes_on_with_the_bounds_of_its_ends():
    slow, fast = replace(STILL, hand_speed=1.0), replace(STILL, hand_speed=2.0)
    trajectory = joined(Known((0, 0, 0), bounds=slow), Known(FAR, bounds=fast))
    pieces = trajectory.pieces(-3.0, 11.0)

    assert pieces[0][0] == -3.0
    assert pieces[-1][1] == 11.0
    assert_allclose([low for low, _, _ in pieces[1:]], [high for _, high, _ in pieces[:-1]])
    assert pieces[0][2] == slow
    assert pieces[-1][2] == fast
    assert [each[:2] for each in trajectory.pieces(9.0, 10.0)] == [(9.0, 10.0)]
    assert [each[:2] for each in trajectory.pieces(1.0, 2.0)] == [(1.0, 2.0)]


@pytest.mark.parametrize("last", [(0.5, 2.0), (2.5, 1.0)], ids=["mixed", "bridged"])
def test_rates_of_a_course_are_differences_before_in_and_after_a_blend(last):
    """Hand and tether with their two derivatives, by central differences; the plane lies across."""
    trajectory = joined(
        Known((0.2, 0.3, 1.0), (0.1, -0.2, 0.3), (0.2, 0.1, 0), angle=(0.0, 1.0)),
        Known((0.25, 0.3, 1.0), (0.2, 0.1, -0.3), (0, 0.3, 0.1), angle=last),
    )
    assert (trajectory.blends[0].bridge is None) == (last[0] < 1.0)
    beats, step = np.linspace(3.2, 4.8, 641), 1e-5
    state, before, after = (trajectory.at(beats + k * step) for k in (0, -1, 1))
    apart = np.abs(np.abs(beats - 4.0) - 0.25) > 2 * step  # third derivatives jump at its edges
    for value, rate in (
        ("hand", "hand_rate"), ("hand_rate", "hand_acceleration"),
        ("tether", "tether_rate"), ("tether_rate", "tether_acceleration"),
    ):  # fmt: skip
        slope = (getattr(after, value) - getattr(before, value)) / (2 * step)
        assert_allclose(slope[apart], getattr(state, rate)[apart], rtol=1e-5, atol=1e-4)
    for vectors in (state.tether, state.plane):
        assert_allclose(np.linalg.norm(vectors, axis=-1), 1.0, atol=1e-9)
    assert_allclose(np.sum(state.tether * state.plane, axis=-1), 0.0, atol=1e-9)
    grid = trajectory.at(beats[:6].reshape(2, 3))
    for name in (
        "hand",
        "hand_rate",
        "hand_acceleration",
        "tether",
        "tether_rate",
        "tether_acceleration",
        "plane",
    ):
        assert_allclose(getattr(grid, name).reshape(6, 3), getattr(state, name)[:6])


@pytest.mark.parametrize("turning", [0.0, 1.0])
@pytest.mark.parametrize("off", [-0.01, 0.01])
def test_tethers_may_be_mixed_while_they_stay_within_75_degrees(turning, off):
    """The widest angle is at an end of the blend; between 129 looks it grows by both turns over half a step."""
    half, bound = 0.25, 0.5
    bounds = replace(STILL, turn_rate=bound)
    allowed = np.cos(np.radians(75)) + 2 * bound * half / 128
    between = np.arccos(allowed + off) - turning * half
    first = Known((0, 0, 0), angle=(0.3, 0.0), bounds=bounds)
    last = Known((0, 0, 0), angle=(0.3 + between, turning), bounds=bounds)
    before, after = joined(first, last).spans
    assert _can_mix(before, after, 4.0, half) == (off > 0)


@pytest.mark.parametrize("bound", [0.2, 2.0])
def test_what_may_turn_faster_may_be_mixed_less(bound):
    """Each of the two turns counts."""
    half = 0.25
    for k in (0, 1):
        own = [replace(STILL, turn_rate=bound * (k == n)) for n in (0, 1)]
        for off in (-1e-4, 1e-4):
            angle = np.arccos(np.cos(np.radians(75)) + bound * half / 128 + off)
            before, after = joined(
                Known((0, 0, 0), bounds=own[0]),
                Known((0, 0, 0), angle=(angle, 0.0), bounds=own[1]),
            ).spans
            assert _can_mix(before, after, 4.0, half) == (off > 0)


@pytest.mark.parametrize(
    ("first", "last", "half"),
    [(4.0, 4.0, 0.25), (0.3, 4.0, 0.15), (4.0, 0.3, 0.15), (0.5, 0.6, 0.25), (0.4, 0.2, 0.1)],
)
def test_a_blend_takes_at_most_half_of_either_block(first, last, half):
    """A quarter of a beat to either side where both have it."""
    laws = Known((0, 0, 0)), Known((0.05, 0, 0))
    spans = (
        Span(start=0.0, end=first, law=laws[0], origin=0.0, kind="block", label="a"),
        Span(start=first, end=first + last, law=laws[1], origin=0.0, kind="block", label="b"),
    )
    (blend,) = Trajectory(spans).blends
    assert blend.half == pytest.approx(half)
