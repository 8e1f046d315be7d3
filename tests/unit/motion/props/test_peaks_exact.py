"""What each search for a largest value is given: value, slope, bound and error worked out by hand.

The law is one whose every number and bound is known; the searches themselves are held by dense samples elsewhere.
"""

from dataclasses import replace
from math import hypot, inf, isnan, nan, sqrt

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.props import peaks
from sequencer.motion.props.peaks import (
    LEAST,
    Peak,
    Sought,
    farthest_let_go,
    fastest_hand,
    fastest_wick,
    flying,
    hand_speed,
    hardest_pull,
    hardest_twist,
    pulling,
    twisting,
    wick_speed,
)
from sequencer.motion.props.prop import Prop, PropPoint

G = 9.80665
RATE = 1.6
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
STAFF = Prop(kind="staff", length=0.5, behind=0.9, mass=0.8, head_mass=0.1, wick_radius=0.04)
HOOP = Prop(kind="hoop", length=0.8, mass=0.6, wicks=3, wick_radius=0.03)
FAN = Prop(kind="fan", length=0.4, mass=0.5, wicks=2, spread=2.1, head_mass=0.04, wick_radius=0.03)
BOUNDS = Bounds(
    hand_speed=0.7, hand_acceleration=1.3, turn_rate=2.2, turn_acceleration=3.1, hand_reach=0.9,
    hand_jerk=4.3, turn_jerk=5.7, frame_rate=2.9, frame_acceleration=6.1,
)  # fmt: skip


class Spun:
    """Tether and plane turn evenly about a slanting axis; the hand sways along another way. Bounds are just numbers."""

    period = 2.0

    def __init__(self, spin=np.pi, high=1.2, bounds=BOUNDS):
        self.spin, self.high, self.own = spin, high, bounds
        axes = np.linalg.qr(np.array([[1.0, 2.0, 0.5], [0.3, -1.0, 2.0], [1.0, 0.1, 0.4]]))[0]
        self.a, self.b, self.c = axes.T
        self.way = np.array([0.1, 0.2, 0.15])

    def at(self, beats):
        t = np.asarray(beats, float)[..., None]
        w, cos, sin = self.spin, np.cos(self.spin * t), np.sin(self.spin * t)
        out, across = cos * self.a + sin * self.b, cos * self.b - sin * self.a
        # the plane leans, so that a point beside the axis moves in its own way
        plane = np.cos(3 * t) * self.c + np.sin(3 * t) * across
        return Motion(
            hand=np.array([0.2, 0.3, self.high]) + self.way * np.sin(2 * t),
            hand_rate=2 * self.way * np.cos(2 * t), hand_acceleration=-4 * self.way * np.sin(2 * t),
            tether=out, tether_rate=w * across, tether_acceleration=-(w**2) * out, plane=plane,
        )  # fmt: skip

    def bounds(self):
        return self.own

    def place(self, spot, t):
        state = self.at(t)
        aside = np.cross(state.plane, state.tether)
        return state.hand + spot.along * state.tether + spot.across * aside

    def velocity(self, spot, t):
        """By the product rule, in a beat."""
        state, t = self.at(t), np.asarray(t, float)[..., None]
        cos, sin = np.cos(self.spin * t), np.sin(self.spin * t)
        across, back = cos * self.b - sin * self.a, -self.spin * (cos * self.a + sin * self.b)
        turning = -3 * np.sin(3 * t) * self.c + 3 * np.cos(3 * t) * across + np.sin(3 * t) * back
        aside = np.cross(turning, state.tether) + np.cross(state.plane, state.tether_rate)
        return state.hand_rate + spot.along * state.tether_rate + spot.across * aside


LAW = Spun()
T = np.linspace(-1.0, 3.0, 23)


def test_constants_are_those_told():
    assert LEAST == {"speed": 0.01, "pull": 0.1, "twist": 0.05, "flight": 0.05}
    assert (peaks.SHARE, peaks._GRID, peaks._STEP, peaks.OFF_GROUND) == (0.005, 512, 1e-6, 0.1)
    assert Sought(np.sin, 1.0, 1.0, "pull").error == 0.0


def test_the_hands_speed():
    asked = hand_speed(LAW, RATE)
    assert_allclose(asked.value(T), RATE * 2 * np.linalg.norm(LAW.way) * np.abs(np.cos(2 * T)))
    assert (asked.slope, asked.coarse) == pytest.approx((RATE * 1.3, RATE * 0.7))
    assert (asked.kind, asked.error) == ("speed", 0.0)


@pytest.mark.parametrize(
    ("prop", "coarse", "push", "timed"),
    [
        # |h'| + |a||d'| and |h''| + |a||d''| on the axis, with ρ and the frame's beside it
        (POI, 0.7 + 0.5 * 2.2, 1.3 + 0.5 * 3.1, False),
        (STAFF, 0.7 + 0.9 * 2.2, 1.3 + 0.9 * 3.1, False),
        (HOOP, 0.7 + 0.8 * 2.2, 1.3 + max(0.8 * 3.1, 0.4 * 6.1), True),
        (FAN, 0.7 + 0.4 * 2.9, 1.3 + 0.4 * 6.1, True),
    ],
    ids=lambda each: getattr(each, "kind", ""),
)
def test_the_wicks_speed(prop, coarse, push, timed):
    asked = wick_speed(LAW, prop, RATE)
    speeds = [np.linalg.norm(LAW.velocity(spot, T), axis=-1) for spot in prop.heads]
    assert_allclose(asked.value(T), RATE * np.max(speeds, axis=0), rtol=1e-8 if timed else 1e-12)
    assert asked.slope == pytest.approx(RATE * push)
    assert asked.coarse == pytest.approx(RATE * coarse)
    assert asked.kind == "speed"
    assert asked.error == pytest.approx(RATE * 1e-6 * push if timed else 0.0, rel=1e-12)


@pytest.mark.parametrize(("prop", "place"), [(POI, 0.5), (STAFF, -0.2), (HOOP, 0.4)])
def test_the_pull(prop, place):
    """m|λ²(h'' + r·d'') − g| at m·λ²(|h'''| + |r||d'''|); r to the centre of mass, behind the hand for the staff."""
    asked = pulling(LAW, prop, RATE)
    state = LAW.at(T)
    felt = RATE**2 * (state.hand_acceleration + place * state.tether_acceleration) + [0, 0, G]
    assert prop.centre_of_mass == pytest.approx(place)
    assert_allclose(asked.value(T), prop.mass * np.sqrt((felt**2).sum(axis=-1)), rtol=1e-12)
    assert asked.slope == pytest.approx(prop.mass * RATE**2 * (4.3 + abs(place) * 5.7))
    assert asked.coarse == pytest.approx(prop.mass * (RATE**2 * (1.3 + abs(place) * 3.1) + G))
    assert (asked.kind, asked.error) == ("pull", 0.0)


@pytest.mark.parametrize("prop", [STAFF, HOOP, FAN], ids=lambda prop: prop.kind)
def test_the_twist(prop):
    """|d × (λ²(I·d'' + m·r·h'') − m·r·g)| at λ²(I(|d'||d''| + |d'''|) + mr(|d'||h''| + |h'''|)) + mr·g|d'|."""
    asked = twisting(LAW, prop, RATE)
    state, inertia = LAW.at(T), prop.inertia
    carried = prop.mass * prop.centre_of_mass
    driven = RATE**2 * (inertia * state.tether_acceleration + carried * state.hand_acceleration)
    torque = np.cross(state.tether, driven + carried * np.array([0, 0, G]))
    assert_allclose(asked.value(T), np.sqrt((torque**2).sum(axis=-1)), atol=1e-12)
    size = abs(carried)
    slope = RATE**2 * (inertia * (2.2 * 3.1 + 5.7) + size * (2.2 * 1.3 + 4.3)) + size * G * 2.2
    assert asked.slope == pytest.approx(slope)
    assert asked.coarse == pytest.approx(RATE**2 * (inertia * 3.1 + size * 1.3) + size * G)
    assert (asked.kind, asked.error) == ("twist", 0.0)


@pytest.mark.parametrize("prop", [STAFF, HOOP], ids=lambda prop: prop.kind)
def test_instants_may_be_one_or_a_table(prop):
    """Each value is that of the flat list."""
    table = T[:12].reshape(3, 4)
    for asked in (
        hand_speed(LAW, RATE), wick_speed(LAW, prop, RATE), pulling(LAW, prop, RATE),
        twisting(LAW, prop, RATE), flying(LAW, prop, RATE, 0.0, 1.0),
    ):  # fmt: skip
        flat = asked.value(T[:12])
        assert_allclose(asked.value(table), flat.reshape(3, 4), rtol=1e-12)
        assert asked.value(T[3]) == pytest.approx(flat[3], rel=1e-12)


def flight_by_hand(law, prop, beats):
    """The farthest of all wicks: along·(up + √(up² + 2g·z))/g, from 10 cm at least."""
    most = np.zeros(len(beats))
    for spot in prop.heads:
        v, z = RATE * law.velocity(spot, beats), np.maximum(law.place(spot, beats)[:, 2], 0.1)
        aloft = (v[:, 2] + np.sqrt(v[:, 2] ** 2 + 2 * G * z)) / G
        most = np.maximum(most, np.hypot(v[:, 0], v[:, 1]) * aloft)
    return most


@pytest.mark.parametrize("high", [1.2, 0.3, -5.0])
@pytest.mark.parametrize("prop", [POI, STAFF, HOOP], ids=lambda prop: prop.kind)
def test_the_flight(prop, high):
    """By v_xy T, by v_z at most 2v/g, by z at most v/√(2g·0.1), at the rates of v and z; z at 512 parts and half of one."""
    law, (start, end) = Spun(high=high), (0.4, 1.7)
    asked = flying(law, prop, RATE, start, end)
    timed = prop is HOOP
    assert_allclose(asked.value(T), flight_by_hand(law, prop, T), rtol=1e-7 if timed else 1e-12)
    v = RATE * prop.fastest(BOUNDS)
    push = {"poi": 1.3 + 0.5 * 3.1, "staff": 1.3 + 0.9 * 3.1, "hoop": 1.3 + 0.8 * 3.1}[prop.kind]
    grid = start + (end - start) * np.arange(513) / 512
    top = max(law.place(spot, grid)[:, 2].max() for spot in prop.heads)
    top = max(top + prop.fastest(BOUNDS) * (end - start) / 1024, 0.1)
    aloft = (v + sqrt(v**2 + 2 * G * top)) / G
    by_speed, by_height = aloft + 2 * v / G, v / sqrt(2 * G * 0.1)
    assert asked.slope == pytest.approx(
        by_speed * RATE * push + by_height * prop.fastest(BOUNDS), rel=1e-12
    )
    assert asked.coarse == pytest.approx(v / G * sqrt(v**2 + 2 * G * top), rel=1e-12)
    assert asked.kind == "flight"
    error = by_speed * RATE * 1e-6 * push if timed else 0.0
    assert asked.error == pytest.approx(error, rel=1e-12)


def test_differences_are_taken_over_two_steps(monkeypatch):
    """With a step as long as 0.1 beats the difference quotient shows: (p(t + h) − p(t − h))/2h."""
    monkeypatch.setattr(peaks, "_STEP", 0.1)
    spot = PropPoint(0.3, 0.2)
    expected = (LAW.place(spot, T + 0.1) - LAW.place(spot, T - 0.1)) / 0.2
    assert_allclose(peaks._velocity(LAW, spot, T), expected, atol=1e-12)
    on = PropPoint(0.3)
    assert_allclose(peaks._velocity(LAW, on, T), LAW.velocity(on, T), atol=1e-12)
    assert_allclose(peaks._place(LAW, spot, T), LAW.place(spot, T), atol=1e-12)
    assert peaks._acceleration(BOUNDS, spot) == pytest.approx(1.3 + hypot(0.3, 0.2) * 6.1)
    assert peaks._acceleration(BOUNDS, PropPoint(-0.3)) == pytest.approx(1.3 + 0.3 * 3.1)


@pytest.mark.parametrize(
    ("asked", "wanted"),
    [
        (lambda **on: fastest_hand(LAW, **on), lambda: hand_speed(LAW, RATE)),
        (lambda **on: fastest_wick(LAW, prop=STAFF, **on), lambda: wick_speed(LAW, STAFF, RATE)),
        (lambda **on: hardest_pull(LAW, prop=STAFF, **on), lambda: pulling(LAW, STAFF, RATE)),
        (lambda **on: hardest_twist(LAW, prop=STAFF, **on), lambda: twisting(LAW, STAFF, RATE)),
        (
            lambda **on: farthest_let_go(LAW, prop=STAFF, **on),
            lambda: flying(LAW, STAFF, RATE, 0.5, 1.5),
        ),
    ],
    ids=["hand", "wick", "pull", "twist", "flight"],
)
def test_each_asks_for_its_own(asked, wanted, monkeypatch):
    seen = []
    monkeypatch.setattr(peaks, "_peak", lambda *given: seen.append(given) or "peak")
    assert asked(beats_per_second=RATE, start=0.5, end=1.5) == "peak"
    ((sought, start, end),) = seen
    assert (start, end) == (0.5, 1.5)
    assert sought[1:] == wanted()[1:]
    assert_array_equal(sought.value(T), wanted().value(T))


def tent(height, slope=None, *, kind="pull", coarse=100.0, error=0.0, steep=50.0):
    """A tent of some height over 1.3, level at 1 elsewhere."""

    def value(t):
        return np.maximum(height - steep * np.abs(t - 1.3), 1.0)

    return Sought(value, steep if slope is None else slope, coarse, kind, error)


def test_the_top_of_a_tent():
    """Within half a per cent, and a tenth of a newton at least."""
    for height in (5.0, 60.0):
        found = peaks._peak(tent(height), 0.0, 2.0)
        allowed = max(0.005 * height, 0.1)
        assert height - allowed <= found.found <= height <= found.most + 1e-12
        assert found.most <= found.found + allowed + 1e-12
        assert found.at == pytest.approx(1.3, abs=allowed / 50)
        assert found.known


def test_a_tent_between_two_samples_is_not_missed():
    """A tent half a part wide at the base, where two of 512 parts meet it unseen: its slope tells."""
    found = peaks._peak(tent(3.0, steep=2000.0, kind="speed"), 0.0, 2.0)
    assert 2.98 <= found.found <= 3.0 <= found.most <= found.found + 0.0151


def test_what_is_told_of_a_bound_and_of_an_error():
    coarse = peaks._peak(tent(5.0, coarse=5.02), 0.0, 2.0)
    assert coarse.most == 5.02
    plain, more = (peaks._peak(tent(5.0, error=error), 0.0, 2.0) for error in (0.0, 0.75))
    assert more.most == pytest.approx(plain.most + 0.75)
    assert more.found == plain.found
    unknown = peaks._peak(tent(5.0, slope=inf), 0.0, 2.0)
    assert (unknown.found, unknown.most, unknown.known) == (-inf, 100.0, False)
    assert isnan(unknown.at)
    assert not Peak(found=1.0, most=1.0, at=nan).known


def test_the_search_is_given_every_part_and_its_tolerance(monkeypatch):
    """512 parts of the span; tolerance half a per cent of the largest sample, and the least of its kind."""
    given = {}

    class Stop(Exception):
        pass

    def search(evaluate, **more):
        given.update(more, evaluate=evaluate)
        raise Stop

    monkeypatch.setattr(peaks, "search", search)
    for kind, height, tolerance in (("pull", 80.0, 0.4), ("pull", 4.0, 0.1), ("speed", 4.0, 0.02),
                                    ("twist", 1.5, 0.05), ("flight", 1.5, 0.05)):  # fmt: skip
        sought = Sought(lambda t, h=height: h - 3.0 * np.abs(t - 2.5), 3.0, 100.0, kind)
        with pytest.raises(Stop):
            peaks._peak(sought, 1.5, 3.5)
        assert given["tolerance"] == pytest.approx(tolerance)
        edges = np.linspace(1.5, 3.5, 513)
        assert_allclose(given["start"], edges[:-1])
        assert_allclose(given["end"], edges[1:])
        assert_array_equal(given["group"], np.zeros(512))
        assert (given["required"].tolist(), given["best"].tolist()) == ([-inf], [inf])
    sample = given["evaluate"](None, np.array([2.0, 2.5]), np.array([0.25, 0.5]), None)
    assert_allclose(sample.value, [0.0, -1.5])
    assert_allclose(sample.lower, [-0.75, -3.0])
    assert_allclose(sample.upper, [0.75, 0.0])
    assert_array_equal(sample.label, [0, 0])


def test_nothing_is_searched_without_a_proven_slope():
    unknown = Spun(bounds=replace(BOUNDS, turn_jerk=inf))
    told = hardest_pull(unknown, prop=POI, beats_per_second=RATE, start=0.0, end=1.0)
    assert (told.known, told.most) == (False, pulling(LAW, POI, RATE).coarse)
