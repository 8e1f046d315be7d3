"""Periods that several tests fly, each searched once, and the head integrated forward by scipy."""

from functools import cache
from math import factorial

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import BSpline, PPoly

from sequencer.geometry.bodies import Body
from sequencer.motion.flown.flown_motion import Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import Prop

BODY = Body(stature=1.75)
POI = Prop(length=0.45, mass=0.2, wick_radius=0.05)
GRAVITY = np.array([0.0, 0.0, 9.80665])  # [m/s²], CGPM 1901


def law_of(name, *, side="right", tether=POI.length, **parameters):
    return law_for(name, parameters, side=side, body=BODY, tether=tether)


def flying(*, side="right", tempo=100.0, **more):
    return Flying(prop=more.pop("prop", POI), body=BODY, side=side, tempo=tempo, **more)


@cache
def period_of(name, *, side="right", tempo=100.0):
    return flown_period(law_of(name, side=side), flying(side=side, tempo=tempo))


def path_of(period, beats):
    """The head and its first four derivatives in seconds."""
    beat = period.flying.beat
    return [period.head.at(np.asarray(beats), order) / beat**order for order in range(5)]


def integrated(period, looks, *, tolerance=1e-8):
    """Heads at some beats, shape (n, 3), of a mass on a massless line of which only the hand is given.

    Newton's second law y'' = T·u − g − k|y'|y', u from head to hand; the line keeps its length, so
    T = u·(h'' + g + k|y'|y') + |h' − y'|²/r. The hand and its rates are written out here once more, with all of drag's.
    """
    beat, prop, drag = period.flying.beat, period.flying.prop, drag_of(period.flying.prop)
    path = _polynomials(period)

    def hand(seconds):
        y, v, a, j, s = path(seconds).reshape(5, 3)
        w = np.sqrt(v @ v)
        w1 = v @ a / w
        w2 = (a @ a + v @ j) / w - w1**2 / w
        f = a + GRAVITY + drag * w * v
        f1 = j + drag * (w1 * v + w * a)
        f2 = s + drag * (w2 * v + 2 * w1 * a + w * j)
        size = np.sqrt(f @ f)
        u = f / size
        u1 = (f1 - (u @ f1) * u) / size
        u2 = (f2 - (u1 @ f1 + u @ f2) * u - 2 * (u @ f1) * u1) / size
        return y + prop.length * u, v + prop.length * u1, a + prop.length * u2

    def rates(seconds, state):
        place, velocity, acceleration = hand(seconds)
        v = state[3:]
        u = (place - state[:3]) / prop.length
        against = GRAVITY + drag * np.sqrt(v @ v) * v
        apart = velocity - v
        pull = u @ (acceleration + against) + apart @ apart / prop.length
        return np.concatenate([v, pull * u - against])

    seconds = np.asarray(looks) * beat
    found = solve_ivp(
        rates, (seconds[0], seconds[-1]), path(seconds[0])[:6], method="DOP853", t_eval=seconds,
        rtol=tolerance, atol=tolerance, max_step=2 * period.head.step * beat,
    )  # fmt: skip
    return found.y[:3].T


def _polynomials(period):
    """Head and four derivatives in seconds, all coordinates of all in one piecewise polynomial of scipy."""
    curve, step = period.head, period.head.step * period.flying.beat
    knots = step * np.arange(-5, curve.spans + 6)
    spline, starts = BSpline(knots, curve.coefficients, 5), knots[5:-6]
    taylor = [spline(starts, nu=power) / factorial(power) for power in range(5, -1, -1)]
    inner = PPoly(np.array(taylor), knots[5:-5])
    rows = []
    for order in range(5):
        each = inner.derivative(order).c if order else inner.c
        rows.append(np.concatenate([np.zeros((order, *each.shape[1:])), each]))
    return PPoly(np.concatenate(rows, axis=-1), inner.x, extrapolate="periodic")
