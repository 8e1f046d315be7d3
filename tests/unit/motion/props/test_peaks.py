"""Largest speeds, pulls, twists and flights: against dense sampling, and each slope's terms by themselves."""

from dataclasses import replace

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.law import Bounds
from sequencer.motion.laws.state import Motion
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props import peaks
from sequencer.motion.props.peaks import (
    SHARE,
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
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import GRAVITY

BODY = Body(stature=1.7)
POI = Prop(length=0.5, mass=0.2, wick_radius=0.05)
SHORT = Prop(length=0.002, mass=0.2, wick_radius=0.01)
ROD = Prop(kind="club", length=0.9, behind=0.1, mass=0.5, head_mass=0.1, wick_radius=0.04)
STAFF = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
FAN = Prop(kind="fan", length=0.4, mass=0.5, wicks=5, spread=2.1, head_mass=0.04, wick_radius=0.03)
HOOP = Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03)
RATE = 100 / 60


def law_of(name, prop=POI, **parameters):
    beats = parameters.pop("beats", None)
    return law_for(name, parameters, side="right", body=BODY, tether=prop.length, beats=beats)


def rising(sought, law, n=40_001):
    """Largest rate of the value between neighbours, sampled: the slope must not be under it."""
    beats = np.linspace(0.0, law.period, n)
    return np.max(np.abs(np.diff(sought.value(beats)))) / (beats[1] - beats[0])


@pytest.mark.parametrize("prop", [POI, ROD, STAFF, FAN, HOOP], ids=lambda prop: prop.kind)
@pytest.mark.parametrize("name", ["pro-bend-3", "antispin-flower-4", "two-beat-weave", "pendulum"])
def test_no_moment_is_above_what_is_told(name, prop):
    law = law_of(name, prop)
    span = {"beats_per_second": RATE, "start": 0.0, "end": law.period}
    beats = np.linspace(0.0, law.period, 100_001)
    motion = law.at(beats)
    second = np.diff(beats)[0] / RATE
    places = [
        motion.hand + s.along * motion.tether + s.across * np.cross(motion.plane, motion.tether)
        for s in prop.heads
    ]
    moving = [np.gradient(place, second, axis=0)[1:-1] for place in places]
    speed = max(np.linalg.norm(each, axis=-1).max() for each in moving)
    flights = []
    for place, v in zip(places, moving, strict=True):
        high = np.maximum(place[1:-1, 2], 0.0)
        aloft = (v[:, 2] + np.sqrt(v[:, 2] ** 2 + 2 * GRAVITY * high)) / GRAVITY
        flights.append(np.hypot(v[:, 0], v[:, 1]) * aloft)
    felt = RATE**2 * (
        motion.hand_acceleration + prop.centre_of_mass * motion.tether_acceleration
    ) + np.array([0.0, 0.0, GRAVITY])
    pull = prop.mass * np.linalg.norm(felt, axis=-1).max()
    hand = RATE * np.linalg.norm(motion.hand_rate, axis=-1).max()
    told = [
        (fastest_hand(law, **span), hand, 0.01),
        (fastest_wick(law, prop=prop, **span), speed, 0.01),
        (hardest_pull(law, prop=prop, **span), pull, 0.1),
        (farthest_let_go(law, prop=prop, **span), max(each.max() for each in flights), 0.05),
    ]
    for peak, true, least in told:
        assert peak.known
        assert peak.most >= true * (1 - 1e-5)  # 1e-5: the sampling's own error
        assert peak.most <= true + max(2 * SHARE * true, least + 1e-4)
        assert peak.found <= peak.most


def test_a_steady_circle_is_that_of_the_textbook():
    """ω·r, m·(ω²·r + g) at the bottom; it flies farthest a little before it is level with the start."""
    law = law_of("static-spin", beats=1.0)
    span = {"prop": POI, "beats_per_second": 2.0, "start": 0.0, "end": 1.0}
    omega = 4 * np.pi
    assert fastest_wick(law, **span).most == pytest.approx(omega * 0.5, rel=1e-6)
    pull = hardest_pull(law, **span)
    assert pull.most == pytest.approx(0.2 * (omega**2 * 0.5 + 9.80665), rel=1e-3)
    angle = np.linspace(0, 2 * np.pi, 100_001)
    height = law.at(np.array(0.0)).hand[2] + 0.5 * np.sin(angle)
    up, along = omega * 0.5 * np.cos(angle), omega * 0.5 * np.abs(np.sin(angle))
    range_ = along * (up + np.sqrt(up**2 + 2 * 9.80665 * height)) / 9.80665
    assert farthest_let_go(law, **span).most == pytest.approx(range_.max(), rel=0.011)


def test_twist_of_a_rod_is_that_of_the_vector_sum():
    """Motion and weight are added as vectors: where they go against each other less is needed."""
    law = law_of("antispin-flower-3", ROD)
    beats = np.linspace(0.0, law.period, 100_001)
    motion = law.at(beats)
    carried = ROD.mass * ROD.centre_of_mass
    need = RATE**2 * (
        ROD.inertia * motion.tether_acceleration + carried * motion.hand_acceleration
    ) + carried * np.array([0.0, 0.0, GRAVITY])
    true = np.linalg.norm(np.cross(motion.tether, need), axis=-1).max()
    peak = hardest_twist(law, prop=ROD, beats_per_second=RATE, start=0.0, end=law.period)
    assert true <= peak.most <= true + 0.051


@pytest.mark.parametrize(
    ("sought", "name", "parameters", "prop", "share"),
    [
        # each case is one in which one term of the slope is all that there is, or nearly
        (lambda law, _: hand_speed(law, RATE), "line", {}, POI, 0.9),
        (lambda law, prop: wick_speed(law, prop, RATE), "pendulum", {}, POI, 0.9),
        (lambda law, prop: wick_speed(law, prop, RATE), "line", {}, SHORT, 0.8),
        (lambda law, prop: pulling(law, prop, 4.0), "pendulum", {"amplitude": 20.0}, POI, 0.1),
        (lambda law, prop: pulling(law, prop, 4.0), "carry", {}, POI, 0.5),
        (lambda law, prop: twisting(law, prop, 0.0), "static-spin", {}, ROD, 0.99),
        (lambda law, prop: twisting(law, prop, 4.0), "pendulum", {"amplitude": 20.0}, STAFF, 0.35),
        (lambda law, prop: twisting(law, prop, 8.0), "carry", {}, ROD, 0.5),
        (lambda law, prop: flying(law, prop, RATE, 0.0, law.period), "static-spin", {}, POI, 0.1),
    ],
)
def test_slopes_hold_and_are_not_idle(sought, name, parameters, prop, share):
    law = law_of(name, prop, **parameters)
    asked = sought(law, prop)
    true = rising(asked, law)
    assert share * asked.slope <= true <= asked.slope * (1 + 1e-6)


def test_where_nothing_is_proven_the_bound_stands():
    class Unknown:
        period = 4.0

        def __init__(self, law):
            self.law, self.at = law, law.at

        def bounds(self):
            return replace(self.law.bounds(), hand_jerk=np.inf, frame_acceleration=np.inf)

    law = Unknown(law_of("pro-bend-4"))
    span = {"beats_per_second": RATE, "start": 0.0, "end": 4.0}
    pull = hardest_pull(law, prop=POI, **span)
    assert not pull.known
    assert pull.most >= hardest_pull(law.law, prop=POI, **span).most
    assert not fastest_wick(law, prop=FAN, **span).known
    assert fastest_wick(law, prop=POI, **span).known


class Flown:
    """A hand and a tether's angle in the wheel plane, both as polynomials of beats up to 1: bounds exact.

    Laws of the vocabulary have bounds so wide that they hide a term that is missing.
    """

    def __init__(self, *, along=(0.0,), up=(1.0,), angle=(0.0,), end=1.0):
        self.parts = [np.polynomial.Polynomial(each) for each in (along, up, angle)]
        self.period = end

    def at(self, beats):
        return self._orders(np.asarray(beats, dtype=float))[0]

    def _orders(self, t):
        zero, (x, z, phi) = np.zeros_like(t), self.parts

        def vector(along, up):
            return np.stack((zero, along, up), axis=-1)

        hand = [vector(*(p.deriv(k)(t) for p in (x, z))) for k in range(4)]
        out, across = (
            vector(np.cos(phi(t)), np.sin(phi(t))),
            vector(-np.sin(phi(t)), np.cos(phi(t))),
        )
        w1, w2, w3 = (phi.deriv(k)(t)[..., None] for k in (1, 2, 3))
        tether = [out, w1 * across, w2 * across - w1**2 * out,
                  (w3 - w1**3) * across - 3 * w1 * w2 * out]  # fmt: skip
        plane = np.broadcast_to([1.0, 0.0, 0.0], out.shape)
        motion = Motion(
            hand=hand[0], hand_rate=hand[1], hand_acceleration=hand[2], tether=tether[0],
            tether_rate=tether[1], tether_acceleration=tether[2], plane=plane,
        )  # fmt: skip
        return motion, hand[3], tether[3]

    def bounds(self):
        motion, jerk, turn_jerk = self._orders(np.linspace(0, self.period, 1001))

        def most(part):
            return float(np.linalg.norm(part, axis=-1).max())

        return Bounds(
            hand_speed=most(motion.hand_rate), hand_acceleration=most(motion.hand_acceleration),
            turn_rate=most(motion.tether_rate), turn_acceleration=most(motion.tether_acceleration),
            hand_reach=most(motion.hand[..., :2]), hand_jerk=most(jerk), turn_jerk=most(turn_jerk),
        )  # fmt: skip


@pytest.mark.parametrize(
    ("sought", "law", "share"),
    [
        # a turn that quickens evenly from a steady one: its own curve hides in the tether's third derivative
        (lambda law: twisting(law, STAFF, 4.0), Flown(angle=(0.0, 1.2, 0.0, 0.288), end=0.1), 0.5),
        # a steady turn of what a steady push twists
        (lambda law: twisting(law, ROD, 8.0), Flown(along=(0.0, 0.0, 10.0), angle=(0.0, 0.3)), 0.9),
        # a wick that rises evenly near the ground: nothing pushes it, it only comes higher
        (lambda law: flying(law, POI, 1.0, 0.0, 1.0), Flown(along=(0, 1.0), up=(0.11, 0.3)), 0.1),
        # a slow wick high up, pushed: it is the time that it falls which counts
        (
            lambda law: flying(law, POI, 1.0, 0.0, 0.1),
            Flown(along=(0, 0, 10.0), up=(2.5,), end=0.1),
            0.4,
        ),
    ],
    ids=["turning quicker", "turning in a push", "rising", "pushed high up"],
)
def test_slopes_hold_where_bounds_are_exact(sought, law, share):
    asked = sought(law)
    true = rising(asked, law)
    assert share * asked.slope <= true <= asked.slope * (1 + 1e-6)


def test_a_wick_that_is_timed_by_a_difference_is_told_with_its_error(monkeypatch):
    """Timed over a fifth of a beat a turning wick seems slower than it is; what is told is not."""
    law, fan = law_of("static-spin", FAN, beats=1.0), replace(FAN, wicks=4)  # none on the axis
    span = {"prop": fan, "beats_per_second": RATE, "start": 0.0, "end": 1.0}
    true = fastest_wick(law, **span).found
    monkeypatch.setattr(peaks, "_STEP", 0.1)
    rough = fastest_wick(law, **span)
    assert rough.found < 0.95 * true
    assert rough.most >= true
