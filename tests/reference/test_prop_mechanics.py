"""Centres of mass and moments of inertia of props, against handbook tables and against counting.

Sources: moments of inertia of a uniform rod (mL²/12 about its middle, mL²/3 about its end) and of a thin
ring (mR² about its axis, 2mR² about a parallel one through its rim), as every table of a mechanics
handbook has them (Meriam and Kraige, Engineering Mechanics: Dynamics, appendix D; from memory); the
parallel-axis theorem. Sizes of a staff: facts sheet, section 6 (common practice).
"""

from math import pi, radians

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import ComposedLaw, HandPath
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.peaks import hardest_pull, hardest_twist
from sequencer.motion.props.prop import Prop


def test_rod_about_its_middle_and_its_end():
    middle = Prop(kind="staff", length=0.7, behind=0.7, mass=0.6, wick_radius=0.04)
    assert_allclose(middle.inertia, 0.6 * 1.4**2 / 12)
    club = Prop(kind="club", length=1.2, behind=0.0, mass=0.6, wick_radius=0.04)
    assert_allclose(club.inertia, 0.6 * 1.2**2 / 3)


def test_parallel_axes_of_a_staff_held_off_its_middle():
    off = Prop(kind="staff", length=0.9, behind=0.5, mass=0.6, wick_radius=0.04)
    assert_allclose(off.centre_of_mass, 0.2)
    assert_allclose(off.inertia, 0.6 * 1.4**2 / 12 + 0.6 * 0.2**2)


def test_heads_are_points():
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, head_mass=0.15, wick_radius=0.04)
    assert_allclose(staff.inertia, 0.5 * 1.4**2 / 12 + 2 * 0.15 * 0.7**2)


def test_ring_about_its_rim():
    hoop = Prop(kind="hoop", length=0.9, mass=0.5, wicks=4, wick_radius=0.03)
    assert_allclose(hoop.inertia, 2 * 0.5 * 0.45**2)
    # counted, point by point of the rim
    turn = np.linspace(0, 2 * pi, 3601)[:-1]
    square = (0.45 + 0.45 * np.cos(turn)) ** 2 + (0.45 * np.sin(turn)) ** 2
    assert_allclose(hoop.inertia, 0.5 * square.mean())


def test_fan_by_counting():
    fan = Prop(
        kind="fan",
        length=0.4,
        mass=0.5,
        head_mass=0.04,
        wicks=5,
        spread=radians(120),
        wick_radius=0.03,
    )
    share = (np.arange(2000) + 0.5) / 2000
    angles = np.radians([-60, -30, 0, 30, 60])
    rods = 0.4 * share[:, None] * np.cos(angles)
    assert_allclose(
        fan.centre_of_mass, (0.3 * rods.mean() + 0.04 * 0.4 * np.cos(angles).sum()) / 0.5
    )
    assert_allclose(fan.inertia, 0.3 * np.mean((0.4 * share) ** 2) + 5 * 0.04 * 0.4**2, rtol=1e-6)


def test_steady_spin_takes_no_torque_but_the_weight():
    """A rod that turns steadily about its middle needs no torque; held at its end, m·g·L/2 level."""
    law = law_for("orbit", {"hand_radius": 0.0}, side="right", body=Body(), beats=1.0)
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
    assert hardest_twist(law, prop=staff, beats_per_second=2.0, start=0.0, end=1.0).most <= 0.05
    rod = Prop(kind="club", length=1.4, mass=0.8, wick_radius=0.04)
    found = hardest_twist(law, prop=rod, beats_per_second=2.0, start=0.0, end=1.0)
    assert found.found <= 0.8 * 9.80665 * 0.7 + 1e-9 <= found.most + 2e-9
    assert found.most == pytest.approx(0.8 * 9.80665 * 0.7, abs=0.0501)


def test_torque_of_a_swing_in_closed_form():
    """A rod about its middle swings with A·cos 2πt: I·A·(2π)² at the ends of the swing."""
    law = law_for("pendulum", {}, side="right", body=Body(), beats=2.0)
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
    beats = np.linspace(0, 2, 40_001)
    motion = law.at(beats)
    angle = np.unwrap(
        np.arctan2(motion.tether[:, 2], motion.tether @ np.cross([0, 0, 1.0], motion.plane[0]))
    )
    bend = np.gradient(np.gradient(angle, beats), beats)[5:-5]
    largest = hardest_twist(law, prop=staff, beats_per_second=1.0, start=0.0, end=2.0)
    true = staff.inertia * np.abs(bend).max()
    assert largest.found - 2e-3 <= true <= largest.most + 2e-3
    assert largest.most == pytest.approx(true, abs=0.0501)  # the smallest error it is found to


def test_nothing_is_claimed_without_bounds():
    class Unknown(ComposedLaw):
        def bounds(self):
            from sequencer.motion.laws.law import Bounds

            return Bounds(
                hand_speed=1, hand_acceleration=1, turn_rate=1, turn_acceleration=1, hand_reach=1
            )

    law = Unknown(
        hand=HandPath((0.3, 0.3, 1.0)), tether=(0.0, 0.0, -1.0), plane=(-1.0, 0.0, 0.0), turns=(), period=1.0
    )  # fmt: skip
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
    for search in (hardest_twist, hardest_pull):
        peak = search(law, prop=staff, beats_per_second=1.0, start=0.0, end=1.0)
        assert not peak.known
        assert peak.found == -np.inf
    # only the product rule's bound: the weight of the whole, off its middle by nothing, and its push
    assert peak.most == pytest.approx(0.8 * (1.0 + 9.80665))
