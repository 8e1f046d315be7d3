"""The machine code of `small_loops.py`, made in memory from portable code as that of the kernel is (`compiled.py`).

To make it takes as long as some hundred calls of what it stands for, so a process begins with NumPy and goes over to it when
it has done as much: every digit is the same. Where it cannot be had everything is left to NumPy. What it takes to make it is
loaded only then.
`python -m sequencer.motion.flown.small_code` makes `small_loops.ll.gz` anew; a test tells when that was forgotten.
"""

from collections.abc import Callable
from functools import cache
from importlib import resources
from pathlib import Path
from typing import Any, NamedTuple

SMALL_DATA = "small_loops.ll.gz"
_BETWEEN = "\n; and\n"  # the code of one and of the next
_PAIR_GAPS, _SPLINE_VALUES = "small_pair_gaps", "small_spline_values"
WORTH_SMALL_CODE = 70_000.0  # [µs] of NumPy's after which it is made: it takes as long itself


class SmallCode(NamedTuple):
    """The loops as machine code; arrays must be contiguous, or be given by their `address`."""

    pair_gaps: Callable[..., None]  # see `small_loops.pair_gaps`
    spline_values: Callable[..., None]  # see `small_loops.spline_values`


def small_digest() -> str:
    """Of the loops' source, which the portable code names."""
    import hashlib
    import inspect

    from sequencer.motion.flown import small_loops

    text = inspect.getsource(small_loops)
    return hashlib.sha256(text.replace("\r\n", "\n").encode()).hexdigest()


def small_code_for(microseconds: float) -> SmallCode | None:
    """The machine code, if it is there, or worth making and can be made; to be asked for once for each use.

    Parameters
    ----------
    microseconds : float
        That NumPy would take, roughly.
    """
    if _SPENT[0] < WORTH_SMALL_CODE:
        _SPENT[0] += microseconds
        return None
    return small_code()


_SPENT = [0.0]  # [µs] in this process


@cache
def small_code() -> SmallCode | None:
    """The machine code, made once in a process; None if it cannot be used here."""
    import zlib

    try:
        packed = resources.files(__package__).joinpath(SMALL_DATA).read_bytes()
        return small_code_from(packed)
    except (OSError, EOFError, zlib.error, RuntimeError, ImportError, ValueError):
        return None


def small_code_from(packed: bytes) -> SmallCode:
    """Machine code from portable code.

    Parameters
    ----------
    packed : bytes
        As in the package.

    Raises
    ------
    OSError, EOFError, zlib.error, ValueError, RuntimeError, ImportError
        If it cannot be read, is of other loops, or cannot be made into machine code here.
    """
    import gzip

    from sequencer.motion.flown import compiled

    text = gzip.decompress(packed).decode()
    if small_digest() not in text:
        raise RuntimeError("the portable code is not of these loops")
    engine = compiled.engine_of(*text.split(_BETWEEN))
    return SmallCode(
        pair_gaps=_called(engine, _PAIR_GAPS, arrays=8, numbers=4),
        spline_values=_called(engine, _SPLINE_VALUES, arrays=7, numbers=4),
    )


def address(array: Any) -> int:
    """Where the numbers of an array lie, for whoever gives it to the loops again and again; it must be held meanwhile."""
    return int(array.__array_interface__["data"][0])


def _called(engine: Any, name: str, *, arrays: int, numbers: int) -> Callable[..., None]:
    """A function of some arrays, or where they lie, and then some whole numbers."""
    import ctypes

    from sequencer.motion.flown import compiled

    kinds = [ctypes.c_void_p] * (2 + arrays) + [ctypes.c_int64] * numbers
    entry = ctypes.CFUNCTYPE(ctypes.c_int32, *kinds)(compiled.entry_of(engine, name))

    def call(*given: Any) -> None:
        spare = (ctypes.c_void_p * 2)()
        first = ctypes.addressof(spare)
        second = first + ctypes.sizeof(ctypes.c_void_p)
        places = [each if type(each) is int else address(each) for each in given[:arrays]]
        failed = entry(first, second, *places, *given[arrays:])
        if failed:
            raise RuntimeError(f"{name} failed ({failed})")

    call.engine = engine  # type: ignore[attr-defined]  # its memory holds the code
    return call


def portable_small_code() -> str:
    """The loops as LLVM's portable code, compiled by numba.

    Raises
    ------
    RuntimeError
        If it would need anything from outside.
    """
    from sequencer.motion.flown import compiled, small_loops

    compiled.begin_portable()
    from numba import carray, float64, int64, njit, types

    made_of = compiled.jitted(njit, small_loops.SMALL_LOOPS, vars(small_loops))
    gaps, values = made_of["pair_gaps"], made_of["spline_values"]

    def of_pairs(
        hand: Any, tether: Any, wide: Any, rods: Any, starts: Any, axes: Any, radii: Any,
        least: Any, n: int, k: int, m: int, r: int,
    ) -> None:  # fmt: skip
        props, bodies = (n * k * 3,), (m * k * 3,)
        gaps(
            carray(hand, props), carray(tether, props), carray(wide, props), carray(rods, (r * 5,)),
            carray(starts, bodies), carray(axes, bodies), carray(radii, (m,)), carray(least, (n,)),
            n, k, m, r,
        )  # fmt: skip

    def of_splines(
        coefficients: Any, beats: Any, tables: Any, folds: Any, scales: Any, work: Any, out: Any,
        n: int, spans: int, first: int, count: int,
    ) -> None:  # fmt: skip
        values(
            carray(coefficients, ((spans + 5) * 3,)), carray(beats, (n,)), carray(tables, (180,)),
            carray(folds, (30,)), carray(scales, (5,)), carray(work, (12,)),
            carray(out, (count * n * 3,)), n, spans, first, count,
        )  # fmt: skip

    texts = []
    for entry, name, arrays in ((of_pairs, _PAIR_GAPS, 8), (of_splines, _SPLINE_VALUES, 7)):
        own = njit(error_model="numpy")(entry)
        signature = (*[types.CPointer(float64)] * arrays, *[int64] * 4)
        own.compile(signature)
        made = own.overloads[signature]
        entries = {made.fndesc.llvm_func_name: name}
        texts.append(compiled.stripped(made.library.get_llvm_str(), entries))
    return f"; loops {small_digest()}\n" + _BETWEEN.join(texts)


def main() -> None:
    """Write the portable code beside this module."""
    import gzip

    code = gzip.compress(portable_small_code().encode(), compresslevel=9, mtime=0)
    Path(__file__).with_name(SMALL_DATA).write_bytes(code)


if __name__ == "__main__":
    main()
