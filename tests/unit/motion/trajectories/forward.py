"""A head integrated forward by scipy, of which only the hand is given."""

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import make_interp_spline

GRAVITY = np.array([0.0, 0.0, 9.80665])  # [m/s²], CGPM 1901


def off_its_path(seconds, hand, head, *, span, length, drag):
    """Largest distance [m] of a head on a massless line from its path, nobody steering.

    In a frame that does not accelerate: y'' = T·u − g − k|y'|y', u from head to hand; the line keeps its length, so
    T = u·(h'' + g + k|y'|y') + |h' − y'|²/r (Newton's second law, any mechanics text).

    Parameters
    ----------
    seconds : (n,), dense
    hand, head : (n, 3) there
    span : first and last second of the integration
    length, drag : of the line [m] and of the head [1/m]
    """
    held, path = (make_interp_spline(seconds, points, k=5) for points in (hand, head))
    rate, push = held.derivative(), held.derivative(2)

    def rates(t, state):
        place, v = state[:3], state[3:]
        u = (held(t) - place) / length
        against = GRAVITY + drag * np.sqrt(v @ v) * v
        apart = rate(t) - v
        pull = u @ (push(t) + against) + apart @ apart / length
        return np.concatenate([v, pull * u - against])

    looks = np.linspace(*span, 33)
    first = np.concatenate([path(looks[0]), path.derivative()(looks[0])])
    found = solve_ivp(rates, span, first, method="DOP853", t_eval=looks, rtol=1e-9, atol=1e-9)
    return float(np.linalg.norm(found.y[:3].T - path(looks), axis=1).max())
