"""Type names for the arrays passed between layers, and the checks that normalise them once."""

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
    if not np.all(np.isfinite(floats)):
        raise ValueError(f"{name} must be finite, got {floats[~np.isfinite(floats)][0]!r}")
    return floats
