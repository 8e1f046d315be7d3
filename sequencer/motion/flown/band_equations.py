"""LAPACK's two functions for equations in a band, without the rest of SciPy's linear algebra.

To load all of `scipy.linalg` takes 0.15 s of processor time, as long as a small edit; its machine code alone, 0.01 s. Where
that cannot be had by itself, the whole is loaded: the functions are the same.
Source: E. Anderson et al., LAPACK Users' Guide, 1999: dgbtrf, dgbtrs.
"""

import sys
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from importlib.machinery import PathFinder
from importlib.util import module_from_spec
from pathlib import Path
from typing import Any, NamedTuple

_CODE_NAME = "scipy.linalg._flapack"


class BandFunctions(NamedTuple):
    """What factors a band, and what solves with the factors; as SciPy documents them."""

    dgbtrf: Callable[..., Any]
    dgbtrs: Callable[..., Any]


@cache
def band_functions() -> BandFunctions:
    """Both, loaded once in a process."""
    if "scipy.linalg" not in sys.modules:
        with suppress(ImportError, AttributeError, OSError):
            return _from_code()
    from scipy.linalg import lapack

    return BandFunctions(lapack.dgbtrf, lapack.dgbtrs)


def _from_code() -> BandFunctions:
    """From the machine code alone.

    Raises
    ------
    ImportError, AttributeError, OSError
        If it is not where it was, or cannot be loaded by itself.
    """
    import scipy  # finds the libraries that the code needs

    folder = str(Path(scipy.__file__).parent / "linalg")
    spec = PathFinder.find_spec(_CODE_NAME, [folder])
    if spec is None or spec.loader is None:
        raise ImportError(f"{folder} holds no {_CODE_NAME}")
    code = module_from_spec(spec)
    spec.loader.exec_module(code)
    sys.modules.pop(_CODE_NAME, None)  # whoever loads all of it finds it as it would be
    return BandFunctions(code.dgbtrf, code.dgbtrs)
