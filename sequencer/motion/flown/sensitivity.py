"""How far a head strays for a hand that wobbles, if nobody steers: centimetres of head for one of hand.

The hand's path is as flown plus a wobble of one unit root mean square, spread evenly over three directions and over 1 to
3 Hz, from any instant on; two beats later the head is off by so many units root mean square over wobbles and instants. The
motion is integrated with the exact hand, to first order in the wobble (a wobble of 10⁻⁵ m). People see and steer, so this is
no forecast: it tells which patterns leave time to. With d the tether, r its length and p the part across d:

    d'' = p(−g·e_z − k|y'|y' − h'')/r − |d'|²·d,    y = h + r·d

Source: Newton's second law on a sphere (spherical pendulum with a moving support, any mechanics text); the classical Runge–Kutta method.
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.periods import FlownPeriod
from sequencer.motion.flown.tether import UP, drag_of, speed_of

BEATS = 2.0  # over which a wobble acts
FREQUENCIES = (1.0, 1.5, 2.0, 2.5, 3.0)  # [Hz] of a hand's wobble; common practice
_STARTS = 8  # instants of a period
_STEPS = 120  # a beat
_SMALL = 1e-5  # [m]


def sensitivity(period: FlownPeriod) -> float:
    """Head off over hand off, root mean squares, after two beats without steering [1].

    Parameters
    ----------
    period : FlownPeriod

    Notes
    -----
    Source: module docstring. Converged to about one per cent in steps and instants.
    """
    beat, prop = period.flying.beat, period.flying.prop
    waves = [
        (f, axis, phase) for f in FREQUENCIES for axis in range(3) for phase in (0.0, np.pi / 2)
    ]
    count = len(waves)
    pulse = 2.0 * np.pi * np.array([w[0] for w in waves])
    phase = np.array([w[2] for w in waves])
    # a sine's mean square is half its amplitude's, and a third of the unit goes to each axis
    size = _SMALL * np.sqrt(2.0 / 3.0) * np.eye(3)[[w[1] for w in waves]]
    starts = np.arange(_STARTS) * (period.law.period / _STARTS)
    steps = int(BEATS * _STEPS)
    step = beat / _STEPS
    nodes = starts[:, None] + np.arange(2 * steps + 1) / (2 * _STEPS)
    base = period.flight(nodes)
    drag, length = drag_of(prop), prop.length

    def wobble(k: int, order: int) -> Floats:
        at = pulse * (0.5 * k * step) + phase + order * np.pi / 2
        return np.asarray((pulse**order * np.sin(at))[:, None] * size)

    def bend(k: int, d: Floats, turn: Floats, steady: bool) -> Floats:
        moved, pushed = base.hand_rate[:, k, None], base.hand_acceleration[:, k, None]
        if not steady:
            moved, pushed = moved + wobble(k, 1), pushed + wobble(k, 2)
        rate = moved + length * turn
        driven = -UP - drag * speed_of(rate) * rate - pushed
        across = driven - np.sum(driven * d, axis=-1, keepdims=True) * d
        return np.asarray(across / length - np.sum(turn * turn, axis=-1, keepdims=True) * d)

    def flown(steady: bool, d: Floats, turn: Floats) -> Floats:
        for k in range(0, 2 * steps, 2):
            a1 = bend(k, d, turn, steady)
            d2, t2 = d + step / 2 * turn, turn + step / 2 * a1
            a2 = bend(k + 1, d2, t2, steady)
            d3, t3 = d + step / 2 * t2, turn + step / 2 * a2
            a3 = bend(k + 1, d3, t3, steady)
            d4, t4 = d + step * t3, turn + step * a3
            a4 = bend(k + 2, d4, t4, steady)
            d = d + step / 6 * (turn + 2 * t2 + 2 * t3 + t4)
            turn = turn + step / 6 * (a1 + 2 * a2 + 2 * a3 + a4)
            d = d / np.linalg.norm(d, axis=-1, keepdims=True)
            turn = turn - np.sum(turn * d, axis=-1, keepdims=True) * d
        return d

    d0 = base.tether[:, 0]
    turn0 = (base.head_rate[:, 0] - base.hand_rate[:, 0]) / length
    # A wobble takes hold with its value, not with a kick: the head starts where the hand would carry it.
    many = [np.repeat(each[:, None], count, axis=1) for each in (d0, turn0)]
    pushed = flown(False, *many)
    plain = flown(True, d0[:, None], turn0[:, None])
    off = length * (pushed - plain) + wobble(2 * steps, 0)
    # mean over waves of a frequency and phase, sum over axes
    return float(np.sqrt(np.mean(np.sum(off**2, axis=-1)) * 3.0) / _SMALL)
