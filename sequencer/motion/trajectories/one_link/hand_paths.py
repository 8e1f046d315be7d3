"""Hand paths of links: quintics through stops, for many links at once, with proven bounds.

The plain path is the one quintic that meets position, velocity and acceleration at both ends. If that would
exceed the arm's reach, the hand first comes to a stop (after a fraction of the link), moves to another stop
and starts from there: again quintics, twice continuously differentiable where they meet. Or it passes both of these places
at one speed and does not stand. Knots lie on
sixteenths of the link. Either kind may be displaced sideways: the plain path by a minimum-jerk step there
and back, a path through stops by moving its stops. Frame: body frame [m].
Source: T. Flash, N. Hogan (J. Neurosci. 5, 1985) for quintic hand paths (from memory); bounds from
Bernstein control points, any text on geometric modelling.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from math import comb
from typing import NamedTuple

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.laws.carriage import beyond_upright
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.sphere import power_rows, quintics

BOUND_PIECES = 16  # number of parts of a link with separate bounds
STOP_SHARE = 0.4  # fraction of the distance that the hand would cover at its speed until it stops
STOPPING = (4, 6, 2)  # sixteenths of the link until the hand stands
MOVING = (4, 2, 3, 5)  # sixteenths of the link until the hand goes at one speed
INSIDE = 0.88  # fraction of the arm within which the hand stops


@dataclass(frozen=True, slots=True, eq=False)
class Piecewise:
    """n paths with the same knots, for hands (m = 3) or a tether's azimuth and elevation (m = 2)."""

    knots: tuple[int, ...]  # in sixteenths, from 0 to 16
    pieces: Floats  # (n, len(knots) − 1, 6, m) [m or rad] quintics in each piece's local fraction

    def controls(self, order: int, beats: Floats) -> Floats:
        """Control points of a derivative by beats on each sixteenth, (n, 16, points, 3)."""
        found = []
        for k, (low, high) in enumerate(zip(self.knots[:-1], self.knots[1:], strict=True)):
            span = beats * (high - low) / BOUND_PIECES
            points = controls(self.pieces[:, k], order, high - low)
            found.append(points / span[:, None, None, None] ** order if order else points)
        return np.concatenate(found, axis=1)


def whole(coefficients: Floats) -> Piecewise:
    """Quintics (n, 6, m) as paths of one piece each."""
    return Piecewise((0, BOUND_PIECES), coefficients[:, None])


def plain_path(first: Motion, last: Motion, beats: Floats) -> Piecewise:
    """The quintics that meet n states at either end, arrays of shape (n, 3), in n numbers of beats."""
    return whole(_between(first, last, beats))


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
        Length of the arm [m].
    aside : ndarray, shape (n, 3) [m, body frame], optional
        Sideways displacement of each path.

    Returns
    -------
    paths : list of Piecewise
        The plain path first.

    Notes
    -----
    Source: module docstring. Exact at both ends.
    """
    plain = _between(first, last, beats)
    found = [whole(plain)]
    if aside is not None:
        found = [Piecewise((0, BOUND_PIECES // 2, BOUND_PIECES), _led(plain, aside))]
    through = _through(STOPPING, first, last, beats, shoulder, arm, aside, moving=False)
    return [*found, *through]


def moving_paths(
    first: Motion,
    last: Motion,
    beats: Floats,
    *,
    shoulder: Floats,
    arm: float,
    aside: Floats | None = None,
) -> list[Piecewise]:
    """Paths through the same stops on which the hand does not stand, but goes from one to the other at one speed.

    Parameters
    ----------
    first, last, beats, shoulder, arm, aside
        As for `hand_paths`.

    Returns
    -------
    paths : list of Piecewise

    Notes
    -----
    Source: module docstring; a quintic between states of one velocity that lies along their connection is straight
    and even. Exact at both ends.
    """
    return _through(MOVING, first, last, beats, shoulder, arm, aside, moving=True)


def _through(
    shares: Sequence[int],
    first: Motion,
    last: Motion,
    beats: Floats,
    shoulder: Floats,
    arm: float,
    aside: Floats | None,
    *,
    moving: bool,
) -> list[Piecewise]:
    """Paths through stops that are reached and left after some sixteenths, of each share n; all worked out together."""
    k, n = len(shares), len(beats)
    span = (beats * np.array(shares)[:, None] / BOUND_PIECES)[..., None]  # (k, n, 1)
    between = beats[:, None] - 2 * span
    # Ends of three pieces for each path: at its start, where the hand stops and goes on, and at its end.
    value, rate, pull = (np.empty((k, n, 4, 3)) for _ in range(3))
    for at, state in ((0, first), (3, last)):
        value[:, :, at], rate[:, :, at] = state.hand, state.hand_rate
        pull[:, :, at] = state.hand_acceleration
    pull[:, :, 1:3] = 0.0
    for at, state, sign in ((1, first, 1.0), (2, last, -1.0)):
        stop = state.hand + sign * STOP_SHARE * state.hand_rate * span
        value[:, :, at] = within_reach(stop + (0.0 if aside is None else aside), shoulder, arm)
    low, high = value[:, :, 1], value[:, :, 2]
    rate[:, :, 1:3] = ((high - low) / between)[:, :, None] if moving else 0.0
    scale = np.stack((span, between, span), axis=2)  # (k, n, 3, 1)
    ends = [
        np.stack((value[:, :, some], rate[:, :, some] * scale, pull[:, :, some] * scale**2), axis=3)
        for some in (slice(0, 3), slice(1, 4))
    ]
    pieces = quintics(*ends)  # (k, n, 3, 6, 3)
    return [
        Piecewise((0, own, BOUND_PIECES - own, BOUND_PIECES), paths)
        for own, paths in zip(shares, pieces, strict=True)
    ]


def halting(start: Floats, end: Floats, halt: int) -> Piecewise:
    """Paths that stop once soon after the start, and once before the end.

    Parameters
    ----------
    start, end : ndarray, shape (n, 3, m) [any unit]
        Value and its first two derivatives with respect to the fraction of the link, at 0 and at 1.
    halt : int
        Sixteenths of the link that each stop takes.

    Returns
    -------
    paths : Piecewise

    Notes
    -----
    Source: module docstring. Exact at both ends.
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
        Upright; its shoulder can move (`Body.shoulder_give`).
    side : {"left", "right"}

    Returns
    -------
    reach, speed, acceleration : ndarray, shape (n,) [m, m/beat, m/beat²]
        Reach is the distance from the nearest position that the shoulder can move to.

    Notes
    -----
    Source: a polynomial lies in the convex hull of its control points, and the distance from a convex
    set, a box as well as a point, is a convex function: nowhere in the hull is it larger than at the worst
    control point. Upper bounds.
    """
    return figures_of_each([paths], beats, body=body, side=side)


def figures_of_each(
    sets: Sequence[Piecewise], beats: Floats, *, body: Body, side: Side
) -> tuple[Floats, Floats, Floats]:
    """`hand_figures` of several sets of n paths, one set after the other, each of shape (sets · n,)."""
    places, rates, pulls = (
        np.concatenate([paths.controls(order, beats) for paths in sets]) for order in range(3)
    )
    sizes = [beyond_upright(body, places, side)]
    sizes += [np.linalg.norm(points, axis=-1) for points in (rates, pulls)]
    reach, speed, acceleration = (np.asarray(size.max(axis=(1, 2))) for size in sizes)
    return reach, speed, acceleration


def places(paths: Piecewise, x: Floats) -> Floats:
    """Values of n paths at fractions of their link.

    Parameters
    ----------
    paths : Piecewise
    x : ndarray, shape (k,) [1]

    Returns
    -------
    values : ndarray, shape (n, k, m) [m, body frame, or rad]

    Notes
    -----
    Source: polynomial in each piece's local fraction. Exact to rounding.
    """
    values = np.empty((len(paths.pieces), len(x), paths.pieces.shape[-1]))
    for part in known_portions(paths.knots, x.tobytes()):
        values[:, part.rows] = part.powers[0] @ paths.pieces[:, part.piece]
    return values


def jets(paths: Piecewise, beats: float, parts: Sequence["Portion"]) -> Floats:
    """Values, rates and accelerations of n paths.

    Parameters
    ----------
    paths : Piecewise
    beats : float
        Duration of each.
    parts : sequence of Portion
        The k fractions of the duration.

    Returns
    -------
    jets : ndarray, shape (3, n, k, m) [m, m/beat, m/beat², body frame, or rad and so on]

    Notes
    -----
    Source: polynomial in each piece's local fraction. Exact to rounding.
    """
    count = sum(len(part.powers[0]) for part in parts)
    found = np.empty((3, len(paths.pieces), count, paths.pieces.shape[-1]))
    for part in parts:
        own, span = paths.pieces[:, part.piece], beats * part.width
        for order, powers in enumerate(part.powers):
            found[order][:, part.rows] = powers @ own / span**order
    return found


class Portion(NamedTuple):
    """The fractions of a link at which one piece of its paths counts."""

    piece: int
    rows: slice | Bools  # which of the fractions
    width: float  # of the piece [1]
    powers: tuple[Floats, Floats, Floats]  # of its local fraction, as returned by `power_rows`


def portions(knots: tuple[int, ...], x: Floats) -> list[Portion]:
    """Fractions of a link, shape (k,), by the pieces in which they lie."""
    if len(knots) == 2:
        return [Portion(0, slice(None), np.float64(1.0), power_rows(x))]
    edges = np.array(knots) / BOUND_PIECES
    index = np.clip(np.searchsorted(edges, x, side="right") - 1, 0, len(edges) - 2)
    found = []
    for k in range(len(edges) - 1):
        chosen = index == k
        if chosen.any():
            width = edges[k + 1] - edges[k]
            found.append(Portion(k, chosen, width, power_rows((x[chosen] - edges[k]) / width)))
    return found


@lru_cache(maxsize=64)
def known_portions(knots: tuple[int, ...], x: bytes) -> list[Portion]:
    """The same for fractions that are looked at again and again."""
    return portions(knots, np.frombuffer(x))


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
    """Halves of n quintics, displaced at the middle, (n, 2, 6, 3).

    The minimum-jerk steps there and back leave position, velocity and acceleration at both ends unchanged,
    and meet at the middle with zero velocity and acceleration.
    """
    halves = []
    for low, step in ((0.0, (0, 0, 0, 10, -15, 6)), (0.5, (1, 0, 0, -10, 15, -6))):
        # x = low + y/2 converts powers of x to those of the half's local fraction y
        substitute = np.array(
            [[comb(j, i) * low ** (j - i) * 0.5**i if i <= j else 0.0 for j in range(6)] for i in range(6)]
        )  # fmt: skip
        halves.append(substitute @ plain + np.array(step, float)[:, None] * aside[:, None])
    return np.stack(halves, axis=1)


def within_reach(place: Floats, shoulder: Floats, arm: float) -> Floats:
    """Positions pulled towards the shoulder until they are well within reach, shape (..., 3) [m, body frame]."""
    away = place - shoulder
    size = np.linalg.norm(away, axis=-1, keepdims=True)
    return np.asarray(shoulder + away * np.minimum(1.0, INSIDE * arm / np.maximum(size, 1e-9)))


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
