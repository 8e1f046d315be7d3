"""Proven bounds on what a flown hand feels and how fast it goes, between knots: hulls of the splines that are flown.

On a span a spline's derivative lies in the hull of its Bernstein points. With p the beats of a second, which the smoothed tempo
says, the pull over mass is p²·y'' + p·p'·y' + g·e_z + k·p²·|y'|·y' (derivatives by beats, stage frame; `tether`): the first term
is bounded by its points, along the force in the middle of the span for the least pull; what the others change
within half a span, by the rates of p and y'.
Source: hulls of splines (`even_splines`), the triangle inequality. Exact but for rounding.
"""

from typing import NamedTuple

import numpy as np

from sequencer.arrays import Floats
from sequencer.motion.flown.even_splines import DEGREE, EvenSpline, pieces
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
    pace, change = (paces_along(rate, fine, 0.5, order) for order in (0, 1))
    parts = _parts(rate, fine)
    steep, bent = (
        np.repeat(rate.largest(order) / np.sqrt(_AXES), parts.each)[parts.taken, None]
        for order in (1, 2)
    )  # of p' and p'', each shape (n, 1)
    fastest = pace + half * steep
    first, bend = (fine.on_each_span(0.5, order) for order in (1, 2))
    # the points in rows, axis by axis: (3, points, n)
    rates, second = (fine.bernstein(order).transpose(2, 1, 0) for order in (1, 2))
    fast, sharp, spread = (
        np.sqrt(_squares(each).max(axis=0))[:, None]
        for each in (rates, second, rates - first.T[:, None])
    )
    slack = 2.0 * half * fastest * steep * sharp  # what p² changes in the first term
    slack += fastest * steep * spread + half * (steep**2 + fastest * bent) * fast  # the second term
    gained = fastest * spread + half * steep * fast  # of the velocity
    slack += 2.0 * drag * (fastest * fast + _STILL) * gained  # drag
    others = force(pace * first, pace * change * first, drag)
    way = others + pace**2 * bend
    way = way / np.maximum(np.sqrt(_squares(way.T))[:, None], 1e-12)
    pulled = pace[:, 0] ** 2 * second + others.T[:, None]
    x, y, z = pulled * way.T[:, None]
    least = (x + y + z).min(axis=0) - slack[:, 0]
    most = np.sqrt(_squares(pulled).max(axis=0)) + slack[:, 0]
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
    squares = _squares(fine.bernstein(order).transpose(2, 1, 0)).max(axis=0)
    return np.asarray(np.sqrt(squares.reshape(-1, _FINER).max(axis=1)))


def _squares(vectors: Floats) -> Floats:
    """Their sizes squared, of vectors whose first axis is that of space."""
    x, y, z = np.square(vectors)
    return np.asarray(x + y + z)


class _Parts(NamedTuple):
    """How the spans of a path lie among those of a tempo, each of which is whole spans of the path long."""

    each: int  # spans of the path on one of the tempo
    taken: slice  # those of the path among all that the tempo has


def _parts(rate: EvenSpline, path: EvenSpline) -> _Parts:
    before = round((path.start - rate.start) / path.step)
    return _Parts(round(rate.step / path.step), slice(before, before + path.spans))


def paces_along(rate: EvenSpline, path: EvenSpline, share: float, order: int = 0) -> Floats:
    """A smoothed tempo, or a derivative of it, at the same place of every span of a path, shape (spans, 1).

    Parameters
    ----------
    rate : EvenSpline
        In each of three columns [beats/s]; its knots are knots of the path, which lies within it.
    path : EvenSpline
    share : float
        Of each span, from its start.
    order : int
    """
    each, taken = _parts(rate, path)
    places: Floats = (np.arange(each, dtype=np.float64) + share) / each
    shares = pieces(places, order) / rate.step**order  # the same on every span of the tempo
    first, last = taken.start // each, -(-taken.stop // each)
    own = rate.coefficients[first : last + DEGREE, :1]
    values = own[: last - first] * shares[:, 0]
    for j in range(1, DEGREE + 1):
        values += own[j : j + last - first] * shares[:, j]
    before = taken.start - first * each
    return np.asarray(values.reshape(-1, 1)[before : before + path.spans])
