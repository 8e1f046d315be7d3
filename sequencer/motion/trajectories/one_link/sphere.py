"""Paths on the unit sphere that match direction, rate and acceleration at both ends.

About a pole p the direction is d = cos ψ·(cos α·p₁ + sin α·p₂) + sin ψ·p; azimuth α and elevation ψ
are quintics in the fraction x = t/T, so |d| = 1 exactly and the path is as smooth as they are. The ends
must not lie near ±p; the path in between may cross the pole. Of several poles and numbers of loops the
gentlest is used: the one with the smallest peak turning acceleration.
Source: spherical coordinates and Hermite interpolation, any text on geometric modelling. Exact.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from sequencer.arrays import Bools, Floats, crossed

LEAST_COSINE = 0.35  # limit on an end's elevation: nearer to the pole the rates of the azimuth become too large
SPHERE_SAMPLES = 25  # only for choosing among candidates; not used in proofs
LOOPS = (-1, 0, 1)  # loops around the initial guess
_ORDERS = np.arange(6.0)


@dataclass(frozen=True, slots=True, eq=False)
class Ends:
    """Direction and its derivatives at both ends of n paths; arrays (n, 2, 3), [1/beat] and so on."""

    tether: Floats
    rate: Floats
    acceleration: Floats
    axis: Floats  # unit turning axes at the ends


@dataclass(frozen=True, slots=True, eq=False)
class SpherePaths:
    """The chosen paths: frames (n, 3, 3) with the pole last, quintics (n, 6, 2) of α and ψ in x."""

    frames: Floats
    angles: Floats
    peak: Floats  # (n,) [1/beat²] sampled peak of |d''|: for ranking, not a bound


def quintics(start: Floats, end: Floats) -> Floats:
    """Quintic coefficients through values and their first two derivatives.

    Parameters
    ----------
    start, end : ndarray, shape (..., 3, m) [any unit]
        Value, first and second derivative with respect to x at 0 and at 1.

    Returns
    -------
    coefficients : ndarray, shape (..., 6, m) [same unit]
        Of 1, x … x⁵.

    Notes
    -----
    Source: Hermite interpolation. Exact.
    """
    p, v, a = (start[..., k, :] for k in range(3))
    q, w, b = (end[..., k, :] for k in range(3))
    jump = q - p - v - a / 2
    slope = w - v - a
    curve = b - a
    found: Floats = np.empty((*jump.shape[:-1], 6, jump.shape[-1]))
    terms = (
        p,
        v,
        a / 2,
        10 * jump - 4 * slope + curve / 2,
        -15 * jump + 7 * slope - curve,
        6 * jump - 3 * slope + curve / 2,
    )
    for k, term in enumerate(terms):
        found[..., k, :] = term
    return found


def polynomial(coefficients: Floats, x: Floats) -> tuple[Floats, Floats, Floats]:
    """A quintic and its first two derivatives.

    Parameters
    ----------
    coefficients : ndarray, shape (..., 6, m) [any unit]
    x : ndarray, shape (k,) [1]

    Returns
    -------
    value, rate, acceleration : ndarray, shape (..., k, m) [same unit]

    Notes
    -----
    Source: powers of x. Exact to rounding.
    """
    powers, first, second = power_rows(x)
    return powers @ coefficients, first @ coefficients, second @ coefficients


def power_rows(x: Floats) -> tuple[Floats, Floats, Floats]:
    """Rows of 1, x … x⁵ and of their first two derivatives, each shape (k, 6) [1]."""
    powers: Floats = x[:, None] ** _ORDERS
    first, second = np.zeros_like(powers), np.zeros_like(powers)
    np.multiply(powers[:, :-1], _ORDERS[1:], out=first[:, 1:])
    np.multiply(first[:, :-1], _ORDERS[1:], out=second[:, 1:])
    return powers, first, second


def sphere_candidates(ends: Ends, beats: Floats, *, peaks: bool = True) -> Iterator[SpherePaths]:
    """All paths considered for n pairs of ends: one for each pole and number of loops.

    Parameters
    ----------
    ends : Ends
    beats : ndarray, shape (n,) [beats]
        Duration of each path.
    peaks : bool
        Whether to sample the peaks; if not, `peak` is 0 for a usable pole.

    Yields
    ------
    paths : SpherePaths
        `peak` is inf if a pole is unusable.

    Notes
    -----
    Source: module docstring. Exact at both ends.
    """
    x: Floats = np.arange(SPHERE_SAMPLES, dtype=np.float64) / (SPHERE_SAMPLES - 1)
    frames, coefficients, usable = every_path(ends, beats)
    for own, paths, good in zip(frames, coefficients, usable, strict=True):
        for angles in paths:
            peak = np.zeros(len(beats))
            if peaks:
                acceleration = directions(None, angles, x, beats)[2]
                peak = np.max(np.linalg.norm(acceleration, axis=-1), axis=-1)
            yield SpherePaths(own, angles, np.where(good, peak, np.inf))


def every_path(ends: Ends, beats: Floats) -> tuple[Floats, Floats, Bools]:
    """The same, all at once: m poles, l numbers of loops, n pairs of ends.

    Parameters
    ----------
    ends : Ends
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    frames : ndarray, shape (m, n, 3, 3) [1]
    coefficients : ndarray, shape (m, l, n, 6, 2) [rad]
    usable : ndarray, shape (m, n) [1]
        Whether neither end lies near the pole.

    Notes
    -----
    Source: module docstring. Exact at both ends.
    """
    scale = np.stack((np.ones(len(beats)), beats, beats**2), axis=1)[:, None, :, None]
    frames = _frames(_poles(ends), ends.tether[:, 0])
    local = [_turned(frames, part) for part in (ends.tether, ends.rate, ends.acceleration)]
    level = np.hypot(local[0][..., 0], local[0][..., 1])
    usable: Bools = level.min(axis=-1) >= LEAST_COSINE
    angles = _angles(local, np.maximum(level, 1e-6)) * scale  # (m, n, 2, 3, 2), by x
    whole = (angles[..., 0, 1, 0] + angles[..., 1, 1, 0]) / 2
    ahead = angles[..., 1, 0, 0] - angles[..., 0, 0, 0]
    middle = np.round((whole - ahead) / (2 * np.pi))
    end = np.repeat(angles[:, None, :, 1], len(LOOPS), axis=1)
    end[..., 0, 0] += 2 * np.pi * (middle[:, None] + np.array(LOOPS)[:, None])
    return frames, quintics(angles[:, None, :, 0], end), usable


def _turned(frames: Floats, parts: Floats) -> Floats:
    """Vectors (n, e, 3) in frames (m, n, 3, 3), shape (m, n, e, 3); summed in the order of numpy's einsum."""
    products = frames[:, :, None] * parts[:, :, None]
    # Plus 0: the azimuth of (−1, −0) would be −π.
    return np.asarray(products[..., 0] + products[..., 2] + products[..., 1] + 0.0)


def pointings(frames: Floats, turns: Floats) -> Floats:
    """Directions alone.

    Parameters
    ----------
    frames : ndarray, shape (n, 3, 3) [1]
        Rows p₁, p₂ and the pole.
    turns : ndarray, shape (n, k, 2) [rad]
        Azimuth and elevation.

    Returns
    -------
    tether : ndarray, shape (n, k, 3) [1]

    Notes
    -----
    Source: module docstring. Exact.
    """
    alpha, psi = turns[..., 0], turns[..., 1]
    level = np.cos(psi)
    found: Floats = np.empty((*level.shape, 3))
    found[..., 0], found[..., 1] = level * np.cos(alpha), level * np.sin(alpha)
    found[..., 2] = np.sin(psi)
    return np.asarray(found @ frames)


def directions(
    frames: Floats | None, angles: Floats, x: Floats, beats: Floats
) -> tuple[Floats, Floats, Floats]:
    """Direction and its first two derivatives by beats.

    Parameters
    ----------
    frames : ndarray, shape (n, 3, 3) [1]
        Rows p₁, p₂ and the pole; None for the local frame.
    angles : ndarray, shape (n, 6, 2) [rad]
    x : ndarray, shape (k,) [1]
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    tether, rate, acceleration : ndarray, shape (n, k, 3) [1, 1/beat, 1/beat²]

    Notes
    -----
    Source: derivatives of spherical coordinates. Exact.
    """
    scale = beats[:, None, None]
    value, rate, acceleration = polynomial(angles, x)
    return moved(frames, value, rate / scale, acceleration / scale**2)


def moved(
    frames: Floats | None, value: Floats, rate: Floats, acceleration: Floats
) -> tuple[Floats, Floats, Floats]:
    """Direction and its derivatives from those of azimuth and elevation.

    Parameters
    ----------
    frames : ndarray, shape (n, 3, 3) [1]
        Rows p₁, p₂ and the pole; None for the local frame.
    value, rate, acceleration : ndarray, shape (n, k, 2) [rad, rad/beat, rad/beat²]

    Returns
    -------
    tether, rate, acceleration : ndarray, shape (n, k, 3) [1, 1/beat, 1/beat²]

    Notes
    -----
    Source: derivatives of spherical coordinates. Exact.
    """
    alpha, psi = value[..., 0], value[..., 1]
    alpha1, psi1 = rate[..., 0], rate[..., 1]
    alpha2, psi2 = acceleration[..., 0], acceleration[..., 1]
    ca, sa, cp, sp = np.cos(alpha), np.sin(alpha), np.cos(psi), np.sin(psi)
    # Coordinates of the radial direction, and of those upwards and eastwards, of which the last is level.
    radial, up = (cp * ca, cp * sa, sp), (-sp * ca, -sp * sa, cp)
    east, whirl = (-sa, ca), cp * alpha1
    rise, turn = psi2 + cp * sp * alpha1**2, cp * alpha2 - 2 * sp * psi1 * alpha1
    fall = psi1**2 + whirl**2
    parts: Floats = np.empty((3, *ca.shape, 3))
    for k in range(2):
        parts[0, ..., k] = radial[k]
        parts[1, ..., k] = psi1 * up[k] + whirl * east[k]
        parts[2, ..., k] = rise * up[k] + turn * east[k] - fall * radial[k]
    parts[0, ..., 2] = sp
    parts[1, ..., 2] = psi1 * cp
    parts[2, ..., 2] = rise * cp - fall * sp
    if frames is None:
        return parts[0], parts[1], parts[2]
    return parts[0] @ frames, parts[1] @ frames, parts[2] @ frames


def _poles(ends: Ends) -> Floats:
    """Poles to try, shape (m, n, 3)."""
    first, last = ends.axis[:, 0], ends.axis[:, 1]
    across = crossed(ends.tether[:, 0], ends.tether[:, 1])
    turning = np.array([first, last, first + last, first - last, across])
    fixed = np.broadcast_to(np.eye(3)[:, None], (3, *first.shape))
    return np.concatenate((_unit(turning, first), fixed))


def _unit(vectors: Floats, instead: Floats) -> Floats:
    size = np.linalg.norm(vectors, axis=-1, keepdims=True)
    return np.asarray(np.where(size > 1e-6, vectors / np.maximum(size, 1e-6), instead))


def _frames(pole: Floats, towards: Floats) -> Floats:
    """Rows p₁, p₂, pole (m, n, 3, 3), p₁ as near to `towards` (n, 3) as can be."""
    flat = towards - np.sum(towards * pole, axis=-1, keepdims=True) * pole
    spare = np.where(np.abs(pole[..., :1]) < 0.7, np.array([1.0, 0, 0]), np.array([0, 1.0, 0]))
    spare = spare - np.sum(spare * pole, axis=-1, keepdims=True) * pole
    first = _unit(flat, spare / np.linalg.norm(spare, axis=-1, keepdims=True))
    return np.stack((first, crossed(pole, first), pole), axis=-2)


def _angles(local: list[Floats], cosine: Floats) -> Floats:
    """Azimuth and elevation with derivatives by beats, (..., 2 ends, 3 orders, 2 angles)."""
    place, rate, acceleration = local
    x, y, z = (place[..., k] for k in range(3))
    alpha, psi = np.arctan2(y, x), np.arctan2(z, cosine)
    psi1 = rate[..., 2] / cosine
    alpha1 = (x * rate[..., 1] - y * rate[..., 0]) / cosine**2
    psi2 = (acceleration[..., 2] + z * psi1**2) / cosine
    alpha2 = (
        x * acceleration[..., 1] - y * acceleration[..., 0] + 2 * cosine * z * psi1 * alpha1
    ) / cosine**2
    return np.stack(
        (
            np.stack((alpha, psi), axis=-1),
            np.stack((alpha1, psi1), axis=-1),
            np.stack((alpha2, psi2), axis=-1),
        ),
        axis=-2,
    )
