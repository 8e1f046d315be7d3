"""A head on a line against closed forms of mechanics, and every rate against differences."""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.motion.flown.tether import (
    UP,
    drag_of,
    flight,
    force,
    force_bend,
    force_rate,
    turning,
)
from tests.unit.motion.flown.flights import POI

G = 9.80665  # [m/s²], CGPM 1901
DRAG = 0.2  # [1/m] ten times that of a head, so that its terms count


def circle(radius, pulse, beats, axes):
    """A circle at constant speed and its first four derivatives, in the plane of two axes."""
    out = []
    for order in range(5):
        at = pulse * beats + order * np.pi / 2
        point = np.zeros((*beats.shape, 3))
        point[..., axes[0]], point[..., axes[1]] = np.cos(at), np.sin(at)
        out.append(radius * pulse**order * point)
    return tuple(out)


def wandering(t, order=0):
    """A path of which every derivative is known: three sines each way."""
    t = np.asarray(t)[..., None, None]
    draw = np.random.default_rng(3)
    size, pulse, phase = draw.normal(size=(3, 3)), draw.uniform(2, 6, (3, 3)), draw.normal(size=9)
    at = pulse * t + phase.reshape(3, 3) + order * np.pi / 2
    return np.sum(0.3 * size * pulse**order * np.sin(at), axis=-1)


def wandered(t):
    return tuple(wandering(t, order) for order in range(5))


def test_a_prop_that_hangs_is_under_its_hand():
    place = np.array([0.3, -0.2, 0.9])
    still = np.zeros(3)
    seen = flight((place, still, still, still, still), length=0.5, drag=DRAG)
    assert_allclose(seen.hand, [0.3, -0.2, 1.4])
    assert_allclose(seen.force, [0, 0, G])
    assert_allclose(seen.tether, [0, 0, -1], atol=1e-15)
    assert_allclose(seen.hand_rate, 0.0)
    assert_allclose(seen.hand_acceleration, 0.0)


def test_conical_pendulum_about_a_fixed_point():
    """tan a = w²R/g with R = r·sin a: the hand rests, whichever the angle (any mechanics text)."""
    length, angle = 0.45, np.radians(70.0)
    radius = length * np.sin(angle)
    pulse = np.sqrt(G * np.tan(angle) / radius)
    seen = flight(circle(radius, pulse, np.linspace(0, 1, 9), (0, 1)), length=length, drag=0.0)
    assert_allclose(seen.hand, np.tile([0, 0, length * np.cos(angle)], (9, 1)), atol=1e-12)
    assert_allclose(np.linalg.norm(seen.force, axis=-1), G / np.cos(angle))
    assert_allclose(seen.hand_rate, 0.0, atol=1e-12)
    assert_allclose(seen.hand_acceleration, 0.0, atol=1e-11)


@pytest.mark.parametrize("pulse", [4.0, 11.0])
def test_conical_pendulum_with_a_hand_on_a_circle(pulse):
    """tan a = w²R/g, R of the head's circle: the hand's has R − r·sin a, and goes as fast round (any mechanics text)."""
    length, radius = 0.45, 0.6
    seen = flight(circle(radius, pulse, np.linspace(0, 1, 9), (0, 1)), length=length, drag=0.0)
    angle = np.arctan(pulse**2 * radius / G)
    inner = radius - length * np.sin(angle)
    assert_allclose(np.hypot(seen.hand[:, 0], seen.hand[:, 1]), abs(inner))
    assert_allclose(seen.hand[:, 2], length * np.cos(angle))
    assert_allclose(np.linalg.norm(seen.hand_rate, axis=-1), pulse * abs(inner))
    assert_allclose(np.linalg.norm(seen.hand_acceleration, axis=-1), pulse**2 * abs(inner))


def test_pull_at_the_top_and_bottom_of_a_vertical_circle():
    """m(w²R − g) above and m(w²R + g) below; the hand is inwards of both (any mechanics text)."""
    radius, pulse, length = 0.8, 9.0, 0.45
    seen = flight(
        circle(radius, pulse, np.array([np.pi / 2, -np.pi / 2]) / pulse, (0, 2)),
        length=length, drag=0.0,
    )  # fmt: skip
    size = np.linalg.norm(seen.force, axis=-1)
    assert_allclose(size, [pulse**2 * radius - G, pulse**2 * radius + G])
    assert_allclose(seen.hand, [[0, 0, radius - length], [0, 0, length - radius]], atol=1e-12)


def test_drag_of_a_ball():
    """½ρC_d·A·v²/m of a smooth ball of 10 cm and 200 g at 10 m/s: 1.11 m/s² (1.2 kg/m³, 0.47)."""
    assert drag_of(POI) * 10.0**2 == pytest.approx(1.1074, rel=1e-3)
    # a ball that falls at √(g/k) is not pulled by its line
    falling = np.array([0.0, 0.0, -np.sqrt(G / DRAG)])
    assert_allclose(force(falling, np.zeros(3), DRAG), 0.0, atol=1e-6)
    # and one that is drawn along a level line at constant speed is pulled forwards
    assert_allclose(force(np.array([3.0, 0, 0]), np.zeros(3), DRAG), [9 * DRAG, 0, G], rtol=1e-8)


def test_gravity_is_turned_with_the_frame():
    up = np.array([0.0, G, 0.0])
    assert_allclose(force(np.zeros(3), np.zeros(3), DRAG, up), up)
    seen = flight(tuple(np.zeros((5, 3))), length=0.5, drag=0.0, up=up)
    assert_allclose(seen.hand, [0, 0.5, 0])
    assert_allclose(UP, [0, 0, G])


def test_rates_of_the_force_by_differences():
    t, step = np.linspace(0, 1, 7), 1e-5
    _, rate, acceleration, jerk, _ = wandered(t)

    def pulled(at):
        return force(wandering(at, 1), wandering(at, 2), DRAG)

    wanted = (pulled(t + step) - pulled(t - step)) / (2 * step)
    assert_allclose(force_rate(rate, acceleration, jerk, DRAG), wanted, rtol=1e-6, atol=1e-6)


def test_second_rates_of_the_force_by_differences():
    t, step = np.linspace(0, 1, 7), 1e-5

    def grown(at):
        return force_rate(*(wandering(at, order) for order in (1, 2, 3)), DRAG)

    wanted = (grown(t + step) - grown(t - step)) / (2 * step)
    assert_allclose(force_bend(*wandered(t)[1:], DRAG), wanted, rtol=1e-6, atol=1e-5)


def test_turning_by_differences():
    t, step = np.linspace(0, 1, 7), 1e-4

    def way(at):
        f = wandering(at)
        return f / np.linalg.norm(f, axis=-1, keepdims=True)

    first, second = turning(wandering(t), wandering(t, 1), wandering(t, 2))
    assert_allclose(first, (way(t + step) - way(t - step)) / (2 * step), rtol=1e-4, atol=1e-4)
    bent = (way(t + step) - 2 * way(t) + way(t - step)) / step**2
    assert_allclose(second, bent, rtol=1e-3, atol=1e-2)


@pytest.mark.parametrize("drag", [0.0, 0.02, 0.5])
def test_the_hand_moves_as_its_rates_say(drag):
    """By differences of places."""
    t, step, length = np.linspace(0, 1, 41), 1e-4, 0.45
    seen, before, after = (
        flight(wandered(at), length=length, drag=drag) for at in (t, t - step, t + step)
    )
    assert_allclose(np.linalg.norm(seen.hand - seen.head, axis=-1), length)
    assert_allclose(seen.tether, (seen.head - seen.hand) / length, atol=1e-12)
    rate = (after.hand - before.hand) / (2 * step)
    scale = np.linalg.norm(rate, axis=-1).max()
    assert_allclose(seen.hand_rate, rate, atol=1e-4 * scale)
    bent = (after.hand - 2 * seen.hand + before.hand) / step**2
    scale = np.linalg.norm(bent, axis=-1).max()
    assert_allclose(seen.hand_acceleration, bent, atol=1e-4 * scale)
