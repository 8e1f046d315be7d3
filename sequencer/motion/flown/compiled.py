"""The kernel's machine code: from portable code that was compiled before, so that the first use takes a fraction of a second.

`kernel.ll.gz` holds the kernel as LLVM's portable code, without the processor, the system or any library in it; llvmlite, which
numba brings along, makes machine code of it in memory when it is first needed. Nothing is written, so a read-only install and
several processes are one and the same. Where that code cannot be used, numba compiles the kernel itself, which takes seconds
each time. `python -m sequencer.motion.flown.compiled` makes the file anew; a test tells when that was forgotten.
"""

import ctypes
import gzip
import hashlib
import inspect
import os
import re
import zlib
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from importlib import resources
from pathlib import Path
from types import FunctionType
from typing import Any

from sequencer.arrays import Floats, Ints
from sequencer.motion.flown import kernel, kernel_places, kernel_points

DATA = "kernel.ll.gz"
_ENTRY = "flown_kernel"

Solver = Callable[[Ints, Floats], None]


def source_digest() -> str:
    """Of the kernel's source, which the portable code names."""
    text = "".join(inspect.getsource(each) for each in (kernel_places, kernel_points, kernel))
    return hashlib.sha256(text.replace("\r\n", "\n").encode()).hexdigest()


def packed() -> bytes:
    """The portable code as it lies in the package.

    Raises
    ------
    OSError
        If it cannot be read.
    """
    return resources.files(__package__).joinpath(DATA).read_bytes()


@cache
def solver() -> Solver:
    """`kernel.solve` as machine code, made once in a process."""
    try:
        return made_from(packed())
    except OSError:
        return _by_numba()


def made_from(code: bytes) -> Solver:
    """Machine code from portable code; by numba if that cannot be used here.

    Parameters
    ----------
    code : bytes
        As in the package.
    """
    try:
        return _from_portable(code)
    except (OSError, EOFError, zlib.error, RuntimeError, ImportError, ValueError):
        return _by_numba()


def _from_portable(code: bytes) -> Solver:
    """From portable code.

    Raises
    ------
    OSError, RuntimeError, ImportError
        If it cannot be read, or made into machine code here.
    """
    text = gzip.decompress(code).decode()
    if source_digest() not in text:
        raise RuntimeError("the portable code is not of this kernel")
    engine = engine_of(text)
    return _called(entry_of(engine, _ENTRY), engine)


def engine_of(*texts: str) -> Any:
    """Portable code as machine code of this processor; whoever calls it must hold the engine.

    Parameters
    ----------
    *texts : str
        Each by itself, of names that no other has.

    Raises
    ------
    RuntimeError, ImportError
        If it cannot be made into machine code here.
    """
    import llvmlite.binding as llvm

    llvm.initialize()
    llvm.initialize_native_target()
    llvm.initialize_native_asmprinter()
    target = llvm.Target.from_default_triple().create_target_machine(opt=2, features=_wide(llvm))
    first, *others = (llvm.parse_assembly(text) for text in texts)
    first.verify()
    engine = llvm.create_mcjit_compiler(first, target)
    for module in others:
        module.verify()
        engine.add_module(module)
    engine.finalize_object()
    return engine


def entry_of(engine: Any, name: str) -> int:
    """Where a function of machine code begins.

    Raises
    ------
    RuntimeError
        If there is none of this name.
    """
    address = engine.get_function_address(name)
    if not address:
        raise RuntimeError("the portable code holds no entry")
    return int(address)


def _wide(llvm: Any) -> str:
    """Features of this processor by which four numbers are worked out at once; each by itself, so that no digit changes."""
    try:
        own = llvm.get_host_cpu_features()
    except RuntimeError:  # a processor that cannot be asked
        return ""
    return ",".join(f"+{name}" for name in ("avx", "avx2") if own.get(name))


def _called(address: int, keep: object) -> Solver:
    entry = ctypes.CFUNCTYPE(ctypes.c_int32, *[ctypes.c_void_p] * 4)(address)

    def solve(ints: Ints, floats: Floats) -> None:
        spare = (ctypes.c_void_p * 2)()
        failed = entry(
            ctypes.addressof(spare),
            ctypes.addressof(spare) + ctypes.sizeof(ctypes.c_void_p),
            ints.ctypes.data,
            floats.ctypes.data,
        )
        if failed:
            raise RuntimeError(f"the flown kernel failed ({failed})")

    solve.engine = keep  # type: ignore[attr-defined]  # its memory holds the code
    return solve


def _by_numba() -> Solver:
    from numba import float64, int64, njit

    compiled: Solver = _jitted(njit)["solve"]
    compiled.compile((int64[::1], float64[::1]))  # type: ignore[attr-defined]
    return compiled


def _jitted(njit: Any) -> dict[str, Any]:
    names = {**vars(kernel_places), **vars(kernel_points), **vars(kernel)}
    return jitted(njit, kernel.FUNCTIONS, names)


def jitted(
    njit: Any, functions: Sequence[FunctionType], given: Mapping[str, Any]
) -> dict[str, Any]:
    """Names with some functions replaced by what numba makes of them.

    Parameters
    ----------
    njit : callable
        Numba's.
    functions : sequence of functions
        In the order in which they use each other.
    given : mapping
        All names that they use.
    """
    names = dict(given)
    for each in functions:
        own = FunctionType(each.__code__, names, each.__name__, each.__defaults__)
        names[each.__name__] = njit(error_model="numpy")(own)
    return names


def portable() -> str:
    """The kernel as LLVM's portable code, compiled by numba.

    Raises
    ------
    RuntimeError
        If it would need anything from outside.
    """
    begin_portable()
    from numba import carray, float64, int64, njit, types

    solve, header = _jitted(njit)["solve"], kernel_places.KERNEL_HEADER

    def entry(ints: Any, floats: Any) -> None:
        lengths = carray(ints, (header,))
        whole = header
        for k in range(1, 5):
            whole += lengths[k]
        total = 0
        for k in range(5, header):
            total += lengths[k]
        solve(carray(ints, (whole,)), carray(floats, (total,)))

    own = njit(error_model="numpy")(entry)
    signature = (types.CPointer(int64), types.CPointer(float64))
    own.compile(signature)
    made = own.overloads[signature]
    text = stripped(made.library.get_llvm_str(), {made.fndesc.llvm_func_name: _ENTRY})
    return f"; kernel {source_digest()}\n{text}\n"


def begin_portable() -> None:
    """Let numba, not loaded yet, compile for no processor that is at hand."""
    # A processor that does four at once, without which the code has no vectors; every other one is given them in pieces.
    os.environ.update(
        NUMBA_CPU_NAME="haswell", NUMBA_CPU_FEATURES="", NUMBA_ENABLE_AVX="1",
        NUMBA_LOOP_VECTORIZE="1", NUMBA_SLP_VECTORIZE="1",
    )  # fmt: skip  # before numba is loaded
    from numba.np import arrayobj

    # No place is counted from the end: to look whether one is below 0 takes longer than most of what is done there.
    arrayobj.fix_integer_index = _as_it_is


def _as_it_is(context: Any, builder: Any, kind: Any, index: Any, _size: Any) -> Any:
    """A place in an array, in place of numba's own function of the same parameters that lets it count from the end."""
    from numba import types

    return context.cast(builder, index, kind, types.intp)


def stripped(text: str, entries: Mapping[str, str]) -> str:
    """Some functions and what they call, without the processor and the system.

    Parameters
    ----------
    text : str
        As numba compiled it.
    entries : mapping of str to str
        The names that these functions get, by those that numba gave them.

    Raises
    ------
    RuntimeError
        If they need anything from outside.
    """
    import llvmlite.binding as llvm

    module = llvm.parse_assembly(text)
    for function in module.functions:
        if function.name not in entries and not function.is_declaration:
            function.linkage = "internal"
    for variable in module.global_variables:
        if not variable.is_declaration:
            variable.linkage = "internal"
    passes = llvm.create_module_pass_manager()
    passes.add_global_dce_pass()
    passes.add_strip_dead_prototypes_pass()
    passes.run(module)
    out = str(module)
    for given, name in entries.items():
        out = out.replace(given, name).replace(f'"{name}"', name)
    lines = [
        line for line in out.splitlines()
        if not re.match(r"target (triple|datalayout)|source_filename|; ModuleID", line)
    ]  # fmt: skip
    out = "\n".join(lines).replace("@sqrt(", "@llvm.sqrt.f64(")
    # the arrays are views of the caller's memory: nobody counts who refers to them, so this is never called
    out = re.sub(
        r"declare void @NRT_MemInfo_call_dtor\(([^)]*)\).*",
        r"define internal void @NRT_MemInfo_call_dtor(\1) {\nret void\n}",
        out,
    )
    outside = [
        name
        for name in re.findall(r"^declare [^@]*@(\S+?)\(", out, re.MULTILINE)
        if not name.startswith("llvm.") or name.startswith(("llvm.x86.", "llvm.aarch64."))
    ]
    if outside:
        raise RuntimeError(f"the kernel needs what is not in it: {', '.join(outside)}")
    return out


def main() -> None:
    """Write the portable code beside this module."""
    code = gzip.compress(portable().encode(), compresslevel=9, mtime=0)
    Path(__file__).with_name(DATA).write_bytes(code)


if __name__ == "__main__":
    main()
