"""Hand paths of links: quintics through stops, for many links at once, with proven bounds.

The plain path is the one quintic that meets position, velocity and acceleration at both ends. Where
that would swing wider than the arm reaches, the hand first comes to a stop on its way (after a part of
the link), goes to another stop and starts from there: quintics again, twice continuously
differentiable where they meet. Knots lie on sixteenths of the link. Either may be led aside: the plain
path by a minimum-jerk step there and back, a path through stops by its stops. Frame: body frame [m].
Source: T. Flash, N. Hogan (J. Neurosci. 5, 1985) for quintic hand paths (from memory); bounds from
Bernstein control points, any text on geometric modelling.
"""

from dataclasses import dataclass
from functools import cache
from math import comb

import numpy as np

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.carriage import beyond_upright
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.sphere import quintics

BOUND_PIECES = 16  # parts of a link that are bounded by themselves
STOP_SHARE = 0.4  # of the way that the hand would go at its speed, until it stops
INSIDE = 0.88  # share of the arm within which the hand stops


@dataclass(frozen=True, slots=True, eq=False)
class Piecewise:
    """n paths of the same knots, of hands (m = 3) or of a tether's azimuth and elevation (m = 2)."""

    knots: tuple[int, ...]  # in sixteenths, from 0 to 16
    pieces: Floats  # (n, len(knots) − 1, 6, m) [m or rad] quintics of each piece's own share

    def controls(self, order: int, beats: Floats) -> Floats:
        """Control points of a derivative by beats on each sixteenth, (n, 16, points, 3)."""
        found = []
        for k, (low, high) in enumerate(zip(self.knots[:-1], self.knots[1:], strict=True)):
            span = beats * (high - low) / BOUND_PIECES
            points = controls(self.pieces[:, k], order, high - low)
            found.append(points / span[:, None, None, None] ** order)
        return np.concatenate(found, axis=1)


def whole(coefficients: Floats) -> Piecewise:
    """Quintics (n, 6, m) of one piece each as paths."""
    return Piecewise((0, BOUND_PIECES), coefficients[:, None])


def hand_paths(
    first: Motion,
    last: Motion,
    beats: Floats,
    *,
    shoulder: Floats,
    arm: float,
    aside: Floats | None = None,
) -> list[Piecewise]:
    """The plain path and paths through stops, for n pairs of states.

    Parameters
    ----------
    first, last : Motion
        Arrays of shape (n, 3) [body frame].
    beats : ndarray, shape (n,) [beats]
    shoulder : ndarray, shape (3,) [m, body frame]
    arm : float
        Its length [m].
    aside : ndarray, shape (n, 3) [m, body frame], optional
        By which each path is led aside on its way.

    Returns
    -------
    paths : list of Piecewise
        The plain one first.

    Notes
    -----
    Source: this module's head. Exact at both ends.
    """
    plain = _between(first, last, beats)
    found = [whole(plain)]
    if aside is not None:
        found = [Piecewise((0, BOUND_PIECES // 2, BOUND_PIECES), _led(plain, aside))]
    for sixteenths in (4, 6, 2):
        span = beats * sixteenths / BOUND_PIECES
        stops = [
            _within(
                state.hand
                + sign * STOP_SHARE * state.hand_rate * span[:, None]
                + (0.0 if aside is None else aside),
                shoulder,
                arm,
            )
            for state, sign in ((first, 1.0), (last, -1.0))
        ]
        still = [_still(stop) for stop in stops]
        found.append(
            Piecewise(
                (0, sixteenths, BOUND_PIECES - sixteenths, BOUND_PIECES),
                np.stack(
                    (
                        _between(first, still[0], span),
                        _between(still[0], still[1], beats - 2 * span),
                        _between(still[1], last, span),
                    ),
                    axis=1,
                ),
            )
        )
    return found


def halting(start: Floats, end: Floats, halt: int) -> Piecewise:
    """Paths that come to a stop soon after the start, and to another one before the end.

    Parameters
    ----------
    start, end : ndarray, shape (n, 3, m) [any unit]
        Value and its first two derivatives by the share of the link, at 0 and at 1.
    halt : int
        Sixteenths of the link that each stop takes.

    Returns
    -------
    paths : Piecewise

    Notes
    -----
    Source: this module's head. Exact at both ends.
    """
    share = halt / BOUND_PIECES
    scale = np.array([1.0, share, share**2])[:, None]
    first, last = start * scale, end * scale
    stops = [np.zeros_like(first), np.zeros_like(last)]
    for stop, own, sign in zip(stops, (first, last), (1.0, -1.0), strict=True):
        stop[:, 0] = own[:, 0] + sign * STOP_SHARE * own[:, 1]
    pieces = (quintics(first, stops[0]), quintics(stops[0], stops[1]), quintics(stops[1], last))
    return Piecewise((0, halt, BOUND_PIECES - halt, BOUND_PIECES), np.stack(pieces, axis=1))


def hand_figures(
    paths: Piecewise, beats: Floats, *, body: Body, side: Side
) -> tuple[Floats, Floats, Floats]:
    """Proven bounds of reach, speed and acceleration of n hand paths.

    Parameters
    ----------
    paths : Piecewise
    beats : ndarray, shape (n,) [beats]
    body : Body
        Upright; its shoulder gives (`Body.shoulder_give`).
    side : {"left", "right"}

    Returns
    -------
    reach, speed, acceleration : ndarray, shape (n,) [m, m/beat, m/beat²]
        Reach is the distance from the nearest place that the shoulder can give to.

    Notes
    -----
    Source: a polynomial lies in the convex hull of its control points, and the distance from a convex
    set, a box as well as a point, is a convex function: nowhere in the hull is it larger than at one of
    the control points. Upper bounds.
    """
    sizes = [beyond_upright(body, paths.controls(0, beats), side)]
    sizes += [np.linalg.norm(paths.controls(order, beats), axis=-1) for order in (1, 2)]
    reach, speed, push = (np.asarray(size.max(axis=(1, 2))) for size in sizes)
    return reach, speed, push


def places(paths: Piecewise, x: Floats) -> Floats:
    """Where n paths are at shares of their link.

    Parameters
    ----------
    paths : Piecewise
    x : ndarray, shape (k,) [1]

    Returns
    -------
    values : ndarray, shape (n, k, m) [m, body frame, or rad]

    Notes
    -----
    Source: powers of each piece's own share. Exact to rounding.
    """
    knots = np.array(paths.knots) / BOUND_PIECES
    index = np.clip(np.searchsorted(knots, x, side="right") - 1, 0, len(knots) - 2)
    values = np.empty((len(paths.pieces), len(x), paths.pieces.shape[-1]))
    for k in np.unique(index):
        chosen = index == k
        own = (x[chosen] - knots[k]) / (knots[k + 1] - knots[k])
        values[:, chosen] = own[:, None] ** np.arange(6) @ paths.pieces[:, k]
    return values


def controls(coefficients: Floats, order: int, parts: int = BOUND_PIECES) -> Floats:
    """Bernstein control points of a derivative on equal parts of 0 … 1.

    Parameters
    ----------
    coefficients : ndarray, shape (..., 6, m) [any unit]
        Of a quintic.
    order : int
        Of the derivative, 0 to 3.
    parts : int

    Returns
    -------
    points : ndarray, shape (..., parts, points, m) [same unit]

    Notes
    -----
    Source: conversion between power and Bernstein bases. Exact to rounding.
    """
    matrices = _matrices(order, parts)
    flat = matrices.reshape(-1, 6) @ coefficients
    return flat.reshape(*coefficients.shape[:-2], *matrices.shape[:2], coefficients.shape[-1])


def _between(first: Motion, last: Motion, beats: Floats) -> Floats:
    scale = beats[:, None]
    return quintics(
        np.stack((first.hand, first.hand_rate * scale, first.hand_acceleration * scale**2), axis=1),
        np.stack((last.hand, last.hand_rate * scale, last.hand_acceleration * scale**2), axis=1),
    )


def _led(plain: Floats, aside: Floats) -> Floats:
    """Halves of n quintics, led aside at the middle, (n, 2, 6, 3).

    The minimum-jerk step there and the one back leave position, velocity and acceleration at both ends
    as they were, and meet at the middle with none of the latter two.
    """
    halves = []
    for low, step in ((0.0, (0, 0, 0, 10, -15, 6)), (0.5, (1, 0, 0, -10, 15, -6))):
        # x = low + y/2 turns powers of x into those of the half's own share y
        substitute = np.array(
            [[comb(j, i) * low ** (j - i) * 0.5**i if i <= j else 0.0 for j in range(6)] for i in range(6)]
        )  # fmt: skip
        halves.append(substitute @ plain + np.array(step, float)[:, None] * aside[:, None])
    return np.stack(halves, axis=1)


def _within(place: Floats, shoulder: Floats, arm: float) -> Floats:
    """Places drawn towards the shoulder until they lie well within reach."""
    away = place - shoulder
    size = np.linalg.norm(away, axis=-1, keepdims=True)
    return np.asarray(shoulder + away * np.minimum(1.0, INSIDE * arm / np.maximum(size, 1e-9)))


def _still(place: Floats) -> Motion:
    zero = np.zeros_like(place)
    return Motion(
        hand=place,
        hand_rate=zero,
        hand_acceleration=zero,
        tether=zero,
        tether_rate=zero,
        tether_acceleration=zero,
        plane=zero,
    )


@cache
def _matrices(order: int, parts: int) -> Floats:
    """Matrices, (parts, points, 6), from a quintic's coefficients to the control points of parts."""
    derive = np.polynomial.polynomial.polyder(np.eye(6), order, axis=0)
    degree = len(derive) - 1
    width = 1.0 / parts
    bernstein = np.array(
        [
            [comb(i, j) / comb(degree, j) if j <= i else 0.0 for j in range(degree + 1)]
            for i in range(degree + 1)
        ]
    )
    matrices = []
    for part in range(parts):
        # x = low + width·y turns coefficients in x into those in y
        substitute = np.zeros((degree + 1, degree + 1))
        row: Floats = np.zeros(degree + 1)
        row[0] = 1.0
        for k in range(degree + 1):
            substitute[:, k] = row
            row = part * width * row + width * np.concatenate(([0.0], row[:-1]))
        matrices.append(bernstein @ substitute @ derive)
    return np.stack(matrices)
