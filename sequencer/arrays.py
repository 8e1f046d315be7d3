"""Type names for the arrays passed between layers, and the checks that normalise arrays and numbers once."""

from math import isfinite
from numbers import Integral, Real
from typing import TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats: TypeAlias = NDArray[np.float64]
Bools: TypeAlias = NDArray[np.bool_]
Ints: TypeAlias = NDArray[np.int64]


def as_floats(name: str, values: ArrayLike) -> Floats:
    """Finite float64 array of any shape.

    Parameters
    ----------
    name : str
        The caller's name for the array; used in the error message.
    values : array_like, shape (...) [any unit]

    Returns
    -------
    floats : ndarray, shape (...) [same unit]

    Raises
    ------
    ValueError
        If a value is not finite.

    Notes
    -----
    Source: numpy's conversion rules. Exact.
    """
    floats = np.asarray(values, dtype=np.float64)
    if not np.isfinite(floats).all():
        raise ValueError(f"{name} must be finite, got {floats[~np.isfinite(floats)][0]!r}")
    return floats


def crossed(a: Floats, b: Floats) -> Floats:
    """Cross products, shape (..., 3): `np.cross` without what it spends on axes, which short arrays feel.

    Parameters
    ----------
    a, b : ndarray, shape (..., 3) [any unit]
        Broadcast against each other.

    Notes
    -----
    Source: the product's coordinates. Exact to rounding.
    """
    x = a[..., 1] * b[..., 2] - a[..., 2] * b[..., 1]
    found: Floats = np.empty((*x.shape, 3))
    found[..., 0] = x
    found[..., 1] = a[..., 2] * b[..., 0] - a[..., 0] * b[..., 2]
    found[..., 2] = a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]
    return found


def as_number(name: str, given: object, unit: str) -> float:
    """A number that a caller gave: no text, no truth value.

    Parameters
    ----------
    name : str
        The caller's name for it; used in the error message, as is the unit.
    given : object
    unit : str

    Returns
    -------
    number : float

    Raises
    ------
    TypeError
        If it is not a number.
    """
    if isinstance(given, bool) or not isinstance(given, Real):
        raise TypeError(f"{name} must be a number [{unit}], got {given!r}")
    return float(given)


def as_positive(name: str, given: object, unit: str) -> float:
    """A finite number above 0 that a caller gave; see `as_number`.

    Raises
    ------
    TypeError
        If it is not a number.
    ValueError
        If it is not finite, or not positive.
    """
    number = as_number(name, given, unit)
    if not (isfinite(number) and number > 0):
        raise ValueError(f"{name} must be positive, got {given!r}")
    return number


def as_whole(name: str, given: object, *, least: int | None = None) -> int:
    """A whole number that a caller gave.

    Raises
    ------
    TypeError
        If it is not a whole number.
    ValueError
        If it is less than `least`, where that is given.
    """
    if isinstance(given, bool) or not isinstance(given, Integral):
        raise TypeError(f"{name} must be a whole number, got {given!r}")
    if least is not None and given < least:
        raise ValueError(f"{name} must be at least {least}, got {given!r}")
    return int(given)
