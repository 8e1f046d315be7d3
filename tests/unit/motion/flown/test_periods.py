"""Figures of a flown period: proven ones against dense sampling, the others against their definition."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.flown.flown_motion import LEAST_PULL, FlownLimits
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.laws.transforms import shifted
from tests.unit.motion.flown.flights import BODY, GRAVITY, POI, law_of, path_of, period_of

NAMES = pytest.mark.parametrize("name", ["extension", "two-beat-weave", "iso-bend-2"])
HEAVY = replace(POI, mass=0.02)  # as much drag as ten of the usual heads


def dense(period, count=4000):
    return np.linspace(0.0, period.law.period, count, endpoint=False)


def copy_of(period, **more):
    """The same path, flown by someone else or by another law."""
    kept = {"law": period.law, "flying": period.flying, "head": period.head, "alike": 1}
    return FlownPeriod(**{**kept, "residual": 0.0, **more})


def with_limits(period, **limits):
    return copy_of(period, flying=replace(period.flying, limits=FlownLimits(**limits)))


def pulls(period):
    """Sizes of the pull over the weight, written out once more."""
    _, rate, acceleration, _, _ = path_of(period, dense(period))
    drag = drag_of(period.flying.prop)
    speed = np.linalg.norm(rate, axis=-1, keepdims=True)
    return np.linalg.norm(acceleration + GRAVITY + drag * speed * rate, axis=-1) / 9.80665


@NAMES
@pytest.mark.parametrize("prop", [POI, HEAVY], ids=["usual", "much drag"])
def test_least_pull_is_never_above_what_is_sampled_and_near_it(name, prop):
    period = period_of(name)
    period = copy_of(period, flying=replace(period.flying, prop=prop))
    sampled = pulls(period).min()
    assert period.least_pull <= sampled
    assert period.least_pull == pytest.approx(sampled, rel=0.02 if prop is POI else 0.1)


def test_least_pull_of_a_level_circle():
    """√(g² + (w²R)²) + what drag adds across: a conical pendulum's, the same at every instant (any mechanics text)."""
    count, radius = 48, 0.6
    turn = 2 * np.pi * (np.arange(count + 5) - 2) / count
    ring = radius * np.stack([np.cos(turn), np.sin(turn), 0 * turn], axis=1)
    head = EvenSpline(start=0.0, step=1.0 / count, coefficients=ring, periodic=True)
    period = copy_of(period_of("extension"), head=head)
    pulse = 2 * np.pi / period.flying.beat
    outward, along = pulse**2 * radius, drag_of(POI) * (pulse * radius) ** 2
    wanted = np.sqrt(9.80665**2 + outward**2 + along**2) / 9.80665
    assert period.least_pull == pytest.approx(wanted, rel=0.01)
    assert_allclose(period.pull, POI.mass * 9.80665 * wanted, rtol=0.01)
    assert period.head_speed == pytest.approx(pulse * radius, rel=0.01)


def test_least_pull_of_a_light_ball_that_goes_up_and_down():
    """g − k|v|v − Aw²·sin: air carries what falls nearly as fast as it would alone, so drag decides."""
    count, size, light = 96, 0.5, replace(POI, mass=0.0005)
    turn = 2 * np.pi * (np.arange(count + 5) - 2) / count
    line = np.stack([0 * turn, 0 * turn, 1.2 + size * np.sin(turn)], axis=1)
    head = EvenSpline(start=0.0, step=1.0 / count, coefficients=line, periodic=True)
    period = period_of("extension")
    period = copy_of(period, head=head, flying=replace(period.flying, prop=light, tempo=22.0))
    t = np.linspace(0.0, 60.0 / 22.0, 4000)
    pulse, drag = 2 * np.pi * 22.0 / 60.0, drag_of(light)
    speed = size * pulse * np.cos(pulse * t)
    pull = 9.80665 - size * pulse**2 * np.sin(pulse * t) + drag * np.abs(speed) * speed
    wanted = pull.min() / 9.80665
    assert 0 < wanted < 0.6 * (1 - size * pulse**2 / 9.80665)
    assert period.least_pull <= wanted * (1 + 1e-3)  # the spline's amplitude is that much less
    assert period.least_pull == pytest.approx(wanted, abs=0.05)


@NAMES
def test_speeds_and_accelerations_are_never_below_what_is_sampled_and_near_it(name):
    period, beat = period_of(name), period_of(name).flying.beat
    for bound, curve, order in (
        (period.hand_speed, period.hand, 1),
        (period.hand_acceleration, period.hand, 2),
        (period.head_speed, period.head, 1),
    ):
        sampled = np.linalg.norm(curve.at(dense(period), order), axis=-1).max() / beat**order
        assert bound >= sampled * (1 - 1e-9)
        assert bound == pytest.approx(sampled, rel=0.02)


@NAMES
def test_the_hand_as_published_is_the_one_that_the_law_of_motion_gives(name):
    """At its knots it is the same; between them within a tenth of a millimetre, and its acceleration within a tenth."""
    period = period_of(name)
    knots = period.hand.step * np.arange(period.hand.spans)
    assert_allclose(period.hand.at(knots), period.flight(knots).hand, atol=1e-10)
    exact = period.flight(dense(period))
    assert_allclose(period.hand.at(dense(period)), exact.hand, atol=1e-4)
    # the head has four continuous derivatives, so the law's acceleration bends at the head's knots and the spline rounds it
    bent = period.hand.at(dense(period), 2) / period.flying.beat**2
    off = np.linalg.norm(bent - exact.hand_acceleration, axis=-1)
    assert off.max() < 0.1 * period.hand_acceleration
    assert_allclose(np.linalg.norm(exact.hand - exact.head, axis=-1), POI.length)


@NAMES
def test_how_far_head_hand_and_tether_are_off(name):
    period = period_of(name)
    drawn, head = period.law.at(dense(period)), period.head.at(dense(period)) - period.moved
    hand = period.flight(dense(period)).hand - period.moved
    for found, off in (
        (period.head_off, np.linalg.norm(head - drawn.head(POI.length), axis=-1)),
        (period.hand_off, np.linalg.norm(hand - drawn.hand, axis=-1)),
    ):
        assert found == pytest.approx((np.sqrt(np.mean(off**2)), off.max()), rel=0.01)
    across = np.linalg.norm(np.cross((head - hand) / POI.length, drawn.tether), axis=-1)
    assert period.tether_off < np.pi / 2
    assert np.sin(period.tether_off) == pytest.approx(across.max(), rel=0.01)


@NAMES
def test_pull_on_the_hand(name):
    period = period_of(name)
    wanted = POI.mass * 9.80665 * pulls(period)
    assert period.pull == pytest.approx((wanted.min(), wanted.max()), rel=0.01)


def test_a_period_that_flies_holds_every_limit_and_the_next_smaller_one_not():
    period = period_of("two-beat-weave")
    speed, acceleration = period.hand_speed, period.hand_acceleration
    assert period.broken == ()
    assert period.least_pull >= LEAST_PULL == 0.3
    assert with_limits(period, hand_speed=speed * 1.001).broken == ()
    assert with_limits(period, hand_speed=speed * 0.999).broken == ("speed",)
    assert with_limits(period, hand_acceleration=acceleration * 1.001).broken == ()
    assert with_limits(period, hand_acceleration=acceleration * 0.999).broken == ("acceleration",)
    # the same path at 30 beats a minute: the centrifugal pull is an eleventh
    slow = copy_of(
        period_of("extension"), flying=replace(period_of("extension").flying, tempo=30.0)
    )
    assert slow.least_pull < LEAST_PULL
    assert "pull" in slow.broken


def test_a_path_that_is_nothing_like_the_drawing():
    period = period_of("extension")
    other = copy_of(period, law=shifted(period.law, 0.5))
    assert other.tether_off > np.radians(150)
    assert "pattern" in other.broken


def test_reach_is_held_as_far_as_it_is_drawn():
    """Half a centimetre past the arm is at arm's length; a drawing that is out of reach may be flown so."""
    period = period_of("extension")
    drawn = period.law.at(dense(period))
    room = period.flying.space(0.0)
    assert period.spare_reach == pytest.approx(
        room.spare_reach(period.flight(dense(period)).hand).min(), abs=1e-3
    )
    assert room.spare_reach(drawn.hand).min() > 0

    def with_arm(spare_as_drawn):
        arm = BODY.arm_length - room.spare_reach(drawn.hand).min() + spare_as_drawn
        return copy_of(period, flying=replace(period.flying, body=Body(stature=1.75, arm=arm)))

    further = period.spare_reach - room.spare_reach(drawn.hand).min()  # than drawn
    just_there, out = with_arm(-further - 0.004), with_arm(-further - 0.007)
    assert just_there.spare_reach == pytest.approx(-0.004, abs=1e-3)
    assert ("reach" in just_there.broken) == (
        just_there.spare_reach < min(-0.005, -further - 0.004)
    )
    assert out.spare_reach == pytest.approx(-0.007, abs=1e-3)
    assert ("reach" in out.broken) == (further < 0)


def test_the_body_gap_is_that_of_the_path():
    period = period_of("two-beat-weave")
    flown = period.flight(dense(period))
    wanted = period.flying.space(0.03).gaps(flown.hand, flown.head).min()
    assert period.body_gap == pytest.approx(wanted, abs=2e-3)


def test_the_path_is_in_seconds():
    """Twice the tempo: twice the speed, four times the acceleration, of the same path."""
    period = period_of("extension")
    fast = copy_of(period, flying=replace(period.flying, tempo=200.0), law=law_of("extension"))
    assert fast.head_speed == pytest.approx(2 * period.head_speed)
    beats = np.linspace(0, 1, 9)
    assert_allclose(fast.flight(beats).head_rate, 2 * period.flight(beats).head_rate)


def test_places_alone_are_those_of_the_flight():
    period = period_of("extension")
    beats = np.linspace(-0.7, 2.3, 97)
    seen = period.flight(beats)
    head, hand = period.places(beats)
    assert np.array_equal(head, seen.head)
    assert_allclose(hand, seen.hand, rtol=0.0, atol=1e-15)
