"""Periods that several tests fly, each searched once, and the head integrated forward by scipy."""

from functools import cache

import numpy as np
from scipy.integrate import solve_ivp

from sequencer.geometry.bodies import Body
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.periods import Flying
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


def integrated(period, looks, *, tolerance):
    """Heads at some beats, shape (n, 3), of a mass on a massless line of which only the hand is given.

    Newton's second law y'' = T·u − g − k|y'|y', u from head to hand; the line keeps its length, so
    T = u·(h'' + g + k|y'|y') + |h' − y'|²/r. The hand's rates are those of `Flight`, which test_tether.py holds to
    differences of the hand's places.
    """
    beat, prop = period.flying.beat, period.flying.prop
    drag = drag_of(prop)

    def rates(seconds, state):
        hand, v = period.flight(np.array(seconds / beat)), state[3:]
        u = (hand.hand - state[:3]) / prop.length
        against = GRAVITY + drag * np.sqrt(v @ v) * v
        apart = hand.hand_rate - v
        pull = u @ (hand.hand_acceleration + against) + apart @ apart / prop.length
        return np.concatenate([v, pull * u - against])

    start = np.concatenate([each for each in path_of(period, looks[0])[:2]])
    seconds = np.asarray(looks) * beat
    found = solve_ivp(
        rates, (seconds[0], seconds[-1]), start, method="DOP853", t_eval=seconds,
        rtol=tolerance, atol=tolerance, max_step=4 * period.head.step * beat,
    )  # fmt: skip
    return found.y[:3].T
