"""Chosen tests in a process of their own, in a private copy of the tree, with a limit of processor time.

`reach` runs one test file and says which lines each of its tests runs, and how long it takes; `verdict`
runs tests until the first fails. Libraries are loaded once, before the processes part, where the system
can fork; the package and its tests are loaded anew each time. The cache of fits is empty each time.
"""

import contextlib
import importlib
import json
import multiprocessing
import os
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

LIBRARIES = (
    "coverage", "hypothesis", "hypothesis.extra.numpy", "joblib", "matplotlib", "numpy", "pandas",
    "pydantic", "pytest", "ruamel.yaml", "scipy.interpolate", "scipy.optimize", "scipy.spatial",
    "scipy.stats", "shapely", "sympy",
)  # fmt: skip
LEFT_OUT = (
    "*.pyc",
    ".git",
    ".hypothesis",
    ".*_cache",
    "*.egg-info",
    ".venv",
    "venv",
    "node_modules",
)
MEMORY = 8 * 2**30  # [bytes] of address space; a mutant that wants more has failed
AT_LEAST = 60.0  # [s] of processor time that every run is given


class Test(NamedTuple):
    """One test."""

    file: str  # below the repository, with slashes
    name: str  # pytest's node id
    seconds: float  # of processor time, unmutated


def private_copy(root: Path, base: Path) -> Path:
    """A copy of the tree in a folder of its own."""
    place = Path(tempfile.mkdtemp(dir=base)) / "tree"
    shutil.copytree(root, place, ignore=shutil.ignore_patterns(*LEFT_OUT))
    return place


def warm_up() -> Any:
    """Load the libraries, and give the way in which processes are started."""
    for variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
        os.environ.setdefault(variable, "1")
    if "fork" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    for name in LIBRARIES:
        with contextlib.suppress(ImportError):
            importlib.import_module(name)
    return multiprocessing.get_context("fork")


def reach(root: Path, file: str) -> list[tuple[Test, dict[str, int]]]:
    """Tests of a file, each with the lines it runs: a bit for each, by module."""
    answer = root.parent / "reach.json"
    answer.unlink(missing_ok=True)
    code = _in_process(_reach, (root, file, answer), limit=1800.0)
    if code not in (0, 5) or not answer.exists():
        end = (root.parent / "last.txt").read_text(encoding="utf-8", errors="replace")[-600:]
        raise RuntimeError(f"{file} fails without a mutant (status {code}): …{end}")
    rows = json.loads(answer.read_text(encoding="utf-8"))
    return [
        (Test(file, name, seconds), {module: int(bits, 16) for module, bits in lines.items()})
        for name, seconds, lines in rows
    ]


def verdict(root: Path, tests: Sequence[Test], factor: float) -> str:
    """What becomes of a mutant: "killed", "survived", or "endless" beyond the limit of time.

    The limit is `factor` times what the tests take without a mutant, and a minute at least, of processor
    time: what passes it does not end, or no longer in any useful time.
    """
    limit = max(AT_LEAST, factor * sum(test.seconds for test in tests))
    code = _in_process(_run, (root, tests), limit)
    if code is None or code == -getattr(signal, "SIGXCPU", 0):
        return "endless"
    if code == 4:
        raise RuntimeError(f"pytest did not find its tests: {tests[0].name} …")
    return "survived" if code == 0 else "killed"


def _in_process(target: Any, arguments: tuple[Any, ...], limit: float) -> int | None:
    """Exit status of a process, None if it had to be stopped."""
    process = warm_up().Process(target=_limited, args=(target, arguments, limit))
    process.start()
    process.join(20 * limit + 600)  # the machine may be busy: processor time is what counts
    if process.exitcode is None:
        process.kill()
        process.join()
        return None
    return int(process.exitcode)


def _limited(target: Any, arguments: tuple[Any, ...], limit: float) -> None:
    """Body of the process."""
    root = arguments[0]
    with contextlib.suppress(ImportError):
        import resource

        resource.setrlimit(resource.RLIMIT_CPU, (int(limit), int(limit) + 5))
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    out = os.open(root.parent / "last.txt", os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    for stream in (1, 2):
        os.dup2(out, stream)
    cache = tempfile.mkdtemp(prefix="cache-", dir=root.parent)
    for variable in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        os.environ[variable] = cache
    os.chdir(root)
    sys.path.insert(0, str(root))
    try:
        target(*arguments)
    finally:
        shutil.rmtree(cache, ignore_errors=True)


def _pytest(root: Path, files: Sequence[str], plugin: object, *more: str) -> int:
    import pytest

    # Libraries loaded beforehand cannot be rewritten, and need not be: no assertion of theirs is read.
    loaded = ("-W", "ignore::pytest.PytestAssertRewriteWarning")
    given = [
        *loaded,
        "-q",
        "--no-header",
        "--tb=line",
        "-p",
        "no:cacheprovider",
        "-n",
        "0",
        *more,
        *files,
    ]
    code = int(pytest.main(given, plugins=[plugin]))
    import sequencer

    if Path(sequencer.__file__).parent.parent.resolve() != root.resolve():
        raise RuntimeError(f"the tests ran {sequencer.__file__}, not the copy")
    return code


class _Chosen:
    """Keeps only the tests chosen, in their order."""

    def __init__(self, names: Sequence[str]) -> None:
        self.order = {name: k for k, name in enumerate(names)}

    def pytest_collection_modifyitems(self, items: list[Any]) -> None:
        items[:] = [item for item in items if item.nodeid in self.order]
        items.sort(key=lambda item: self.order[item.nodeid])


class _Traced:
    """Tells coverage which test is running, and times it."""

    def __init__(self, root: Path) -> None:
        import coverage

        self.root = root
        self.seconds: dict[str, float] = {}
        self.coverage = coverage.Coverage(data_file=None, config_file=False, source=["sequencer"])
        self.coverage.start()

    def pytest_runtest_logstart(self, nodeid: str) -> None:
        self.coverage.switch_context(nodeid)
        self.seconds[nodeid] = time.process_time()

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        self.seconds[nodeid] = time.process_time() - self.seconds[nodeid]
        self.coverage.switch_context("")

    def rows(self) -> list[tuple[str, float, dict[str, str]]]:
        """Name, time and lines of each test."""
        self.coverage.stop()
        data = self.coverage.get_data()
        bits: dict[str, dict[str, int]] = {name: {} for name in self.seconds}
        for file in data.measured_files():
            module = Path(file).resolve().relative_to(self.root.resolve()).as_posix()
            for line, names in data.contexts_by_lineno(file).items():
                for name in names:
                    if name:
                        bits[name][module] = bits[name].get(module, 0) | 1 << line
        return [
            (name, seconds, {module: hex(lines) for module, lines in bits[name].items()})
            for name, seconds in self.seconds.items()
        ]


def _reach(root: Path, file: str, answer: Path) -> None:
    traced = _Traced(root)
    code = _pytest(root, [file], traced)
    answer.write_text(json.dumps(traced.rows()), encoding="utf-8")
    sys.exit(code)


def _run(root: Path, tests: Sequence[Test]) -> None:
    sys.dont_write_bytecode = (
        True  # a mutant of the same size in the same second would be taken for it
    )
    files = list(dict.fromkeys(test.file for test in tests))
    sys.exit(_pytest(root, files, _Chosen([test.name for test in tests]), "-x"))
