"""Proven bounds on what a flown hand feels and how fast it goes, between knots: hulls of the splines that are flown.

On a span a spline's derivative lies in the hull of its Bernstein points. With p the beats of a second, which the smoothed tempo
says, the pull over mass is p²·y'' + p·p'·y' + g·e_z + k·p²·|y'|·y' (derivatives by beats, stage frame; `tether`): the first term
is bounded by its points, along the force in the middle of the span for the least pull; what the others change
within half a span, by the rates of p and y'.
Source: hulls of splines (`even_splines`), the triangle inequality. Exact but for rounding.
"""

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.even_splines import EvenSpline
from sequencer.motion.flown.tether import force

_FINER = 2  # parts of a span
_STILL = 1e-4  # [m/s] by which the speed in drag is smoothed at rest
_AXES = 3  # a tempo's spline has the same numbers in each of its columns


def pull_bounds(path: EvenSpline, rate: EvenSpline, drag: float) -> tuple[Floats, Floats]:
    """Bounds on the pull over mass on every span of a head's path: never less, never more, each shape (spans,) [m/s²].

    Parameters
    ----------
    path : EvenSpline
        Of the head [m, stage frame], in beats.
    rate : EvenSpline
        The smoothed tempo [beats/s] in each of three columns; its knots are knots of the path.
    drag : float
        See `tether.drag_of` [1/m].

    Notes
    -----
    Source: module docstring. Proven.
    """
    fine = path.finer(_FINER)
    half = fine.step / 2.0
    middle = _middles(fine)
    pace, change = rate.at(middle)[:, :1], rate.at(middle, 1)[:, :1]
    which = np.clip(((middle - rate.start) / rate.step).astype(np.int64), 0, rate.spans - 1)
    steep, bent = (
        (rate.largest(order) / np.sqrt(_AXES))[which, None] for order in (1, 2)
    )  # of p' and p'', each shape (n, 1)
    fastest = pace + half * steep
    first, rates, second = fine.at(middle, 1), fine.bernstein(1), fine.bernstein(2)
    fast, sharp, spread = (
        np.linalg.norm(each, axis=-1).max(axis=1)[:, None]
        for each in (rates, second, rates - first[:, None])
    )
    slack = 2.0 * half * fastest * steep * sharp  # what p² changes in the first term
    slack += fastest * steep * spread + half * (steep**2 + fastest * bent) * fast  # the second term
    gained = fastest * spread + half * steep * fast  # of the velocity
    slack += 2.0 * drag * (fastest * fast + _STILL) * gained  # drag
    others = force(pace * first, pace * change * first, drag)
    way = others + pace**2 * fine.at(middle, 2)
    way = way / np.maximum(np.linalg.norm(way, axis=-1, keepdims=True), 1e-12)
    pulled = pace[:, None] ** 2 * second + others[:, None]
    least = np.sum(pulled * way[:, None], axis=-1).min(axis=1) - slack[:, 0]
    most = np.linalg.norm(pulled, axis=-1).max(axis=1) + slack[:, 0]
    return least.reshape(-1, _FINER).min(axis=1), most.reshape(-1, _FINER).max(axis=1)


def largest_on_spans(path: EvenSpline, order: int) -> Floats:
    """Bound on the size of a derivative on every span, shape (spans,) [m/beat^order]; much tighter than `EvenSpline.largest`.

    Parameters
    ----------
    path : EvenSpline
    order : int
    """
    return _by_span(path.finer(_FINER), order)


def largest_rates(head: EvenSpline, hand: EvenSpline) -> Floats:
    """`largest_on_spans` of a hand's first and second derivatives and of a head's first, shape (3, spans).

    Parameters
    ----------
    head, hand : EvenSpline
        On the same knots.
    """
    fine = hand.finer(_FINER)
    return np.stack([_by_span(fine, 1), _by_span(fine, 2), largest_on_spans(head, 1)])


def _by_span(fine: EvenSpline, order: int) -> Floats:
    """Bound on the size of a derivative on every span, of a path whose spans were divided."""
    x, y, z = np.square(fine.bernstein(order)).transpose(2, 1, 0)
    squares = (x + y + z).max(axis=0)
    return np.asarray(np.sqrt(squares.reshape(-1, _FINER).max(axis=1)))


def _middles(path: EvenSpline) -> Floats:
    places: Floats = np.arange(path.spans, dtype=np.float64) + 0.5
    return path.start + places * path.step
