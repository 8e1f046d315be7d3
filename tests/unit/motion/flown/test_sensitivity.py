"""How far a wobble carries the head: a closed form, and scipy's integration of the whole."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from sequencer.motion.flown import sensitivity as module
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.sensitivity import FREQUENCIES, sensitivity
from sequencer.motion.flown.tether import drag_of
from tests.unit.motion.flown.flights import GRAVITY, POI, flying, law_of, period_of

SIZE = np.sqrt(
    2.0 / 3.0
)  # amplitude of a sine along each axis whose sum has a root mean square of 1


def test_a_prop_that_hangs_is_a_driven_pendulum():
    """x'' = −(g/r)(x − h), h = A·sin(wt + φ), x − h at rest at first: solved by hand (any text on vibrations).

    A wobble upwards carries the head with it.
    """
    hang = np.tile([0.4, 0.2, 0.8], (17, 1))
    still = EvenSpline(start=0.0, step=1.0 / 12, coefficients=hang, periodic=True)
    period = FlownPeriod(
        law=law_of("static-spin"), flying=flying(), head=still, alike=1, residual=0.0
    )
    own, t, total = np.sqrt(9.80665 / POI.length), 1.2, 0.0
    for frequency in FREQUENCIES:
        w = 2 * np.pi * frequency
        for phase in (0.0, np.pi / 2):
            hand = SIZE * np.sin(w * t + phase)
            part = SIZE * w**2 / (own**2 - w**2)
            swing = part * (
                np.sin(w * t + phase)
                - np.sin(phase) * np.cos(own * t)
                - np.cos(phase) * w / own * np.sin(own * t)
            )
            total += 2 * (swing + hand) ** 2 + hand**2
    wanted = np.sqrt(total / (2 * len(FREQUENCIES)))
    assert sensitivity(period) == pytest.approx(wanted, rel=1e-3)


def test_by_integration_of_the_head_itself(monkeypatch):
    """The same wobbles on a head with much drag in space, y'' = T·u − g − k|y'|y', by scipy: 26 states at once."""
    monkeypatch.setattr(module, "_STARTS", 2)
    monkeypatch.setattr(module, "FREQUENCIES", (1.5, 3.0))
    own = period_of("extension")
    light = replace(POI, mass=0.004)
    period = FlownPeriod(
        law=own.law, flying=replace(own.flying, prop=light), head=own.head, alike=1, residual=0.0
    )
    beat, drag, small = period.flying.beat, drag_of(light), 1e-5
    starts = np.array([0.0, 0.5])[:, None] * np.ones(13)
    waves = [(f, a, p) for f in (1.5, 3.0) for a in range(3) for p in (0.0, np.pi / 2)]
    pulse = 2 * np.pi * np.array([0.0] + [w[0] for w in waves])
    phase = np.array([0.0] + [w[2] for w in waves])
    size = small * SIZE * np.vstack([np.zeros(3), np.eye(3)[[w[1] for w in waves]]])

    def wobble(t, order):
        return (pulse**order * np.sin(pulse * t + phase + order * np.pi / 2))[:, None] * size

    def rates(t, state):
        y, v = state.reshape(2, 2, 13, 3)
        own = period.flight(starts[:, :1] + t / beat)
        u = (own.hand + wobble(t, 0) - y) / POI.length
        against = GRAVITY + drag * np.linalg.norm(v, axis=-1, keepdims=True) * v
        apart = np.sum((own.hand_rate + wobble(t, 1) - v) ** 2, axis=-1, keepdims=True)
        pushed = own.hand_acceleration + wobble(t, 2) + against
        pull = np.sum(u * pushed, axis=-1, keepdims=True) + apart / POI.length
        return np.stack([v, pull * u - against]).ravel()

    first = period.flight(starts)
    state = np.stack([first.head + wobble(0.0, 0), first.head_rate + wobble(0.0, 1)])
    found = solve_ivp(rates, (0.0, 2 * beat), state.ravel(), method="DOP853", rtol=1e-8, atol=1e-10)
    heads = found.y[:, -1].reshape(2, 2, 13, 3)[0]
    off = (heads[:, 1:] - heads[:, :1]) / small
    wanted = np.sqrt(3 * np.mean(np.sum(off**2, axis=-1)))
    assert sensitivity(period) == pytest.approx(wanted, rel=0.01)


def test_a_bent_pattern_leaves_less_time_than_a_weave(monkeypatch):
    """As the prototype found: a two-beat weave strays by some twenty for one, bends by a hundred."""
    monkeypatch.setattr(module, "_STEPS", 40)
    assert sensitivity(period_of("two-beat-weave")) < sensitivity(period_of("iso-bend-2")) / 3
