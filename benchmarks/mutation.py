"""Plants faults in the arithmetic and counts those that no test sees.

    python benchmarks/mutation.py --sample 200 --seed 1 --workers 2
    python benchmarks/mutation.py --module 'motion/laws/*' --all
    python benchmarks/mutation.py --sample 200 --seed 1 --retry       # after tests were added

Modules: motion, geometry, timing, planning and the arithmetic of fire (`FIRE`). Which faults are planted
and which left out stands in `mutants.py`. Everything happens in private copies of the tree in a temporary
folder; the checkout is only read.

Which tests a mutant meets: first every test file runs once under coverage, without a mutant (kept in
`--folder`, by the content of package and test file). A mutant in a statement then meets the tests that run
it; one in a table or a default, which runs on import, those that run its class or module, or a module that
imports it. Nearest first: the test file of the module's name, then files that name the module, then those
of its package, then the others, quick ones first; the first failure ends it. Without `--deep`, whole checks,
pages, hearing and the command line are left out, and a mutant meets `--budget` seconds of processor time of tests
at most (as measured under coverage without it).

killed: a test failed. endless: ten times the processor time that its tests take without a mutant, and a
minute at least, were not enough; it counts as killed, and is listed. equivalent: survived, and
`mutants_equivalent.json` says why no test can tell it from the program. survived: all else.
"""

import argparse
import ast
import hashlib
import json
import random
import sys
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from fnmatch import fnmatch
from functools import cache
from math import inf
from pathlib import Path
from typing import Any

from mutant_runs import Test, private_copy, reach, verdict, warm_up
from mutants import Mutant, places, planted

ROOT = Path(__file__).resolve().parent.parent
PACKAGES = ("motion", "geometry", "timing", "planning")
FIRE = (
    "facts/burn_log.py", "facts/burn_times.py", "facts/combustion.py", "facts/flames.py",
    "facts/pool_fires.py", "facts/radiation.py", "safety/burns/burning.py", "safety/burns/fuel_plan.py",
)  # fmt: skip
NEAR = ("unit/motion", "unit/geometry", "unit/timing", "unit/safety", "unit/facts", "unit/staging",
        "unit/planning", "unit/checks/distances", "property", "reference")  # fmt: skip
DEEP = (*NEAR, "unit", "golden", "cli")
SKIPPED = ("test_startup.py", "test_rotation_js.py")  # processes and a browser, not arithmetic here
FACTOR = 10.0  # times the unmutated time: beyond it a mutant is taken to be endless
CONTROL = 25  # of so many mutants one has its tests run without it as well
EQUIVALENT = Path(__file__).with_name("mutants_equivalent.json")

Reached = list[tuple[Test, dict[str, int]]]


def modules(pattern: str) -> list[str]:
    """Files whose mutants are looked at, below the repository."""
    files = [file for name in PACKAGES for file in (ROOT / "sequencer" / name).rglob("*.py")]
    files += [ROOT / "sequencer" / name for name in FIRE]
    names = sorted(file.relative_to(ROOT).as_posix() for file in files)
    return [name for name in names if fnmatch(name, f"*{pattern}*")]


def drawn(pattern: str, sample: int | None, seed: int) -> list[Mutant]:
    """Mutants to look at: all, or a sample in which every mutant is as likely."""
    every = [place for module in modules(pattern) for place in places(ROOT, module)]
    random.Random(seed).shuffle(every)  # noqa: S311  # no secret
    found: list[Mutant] = []
    for place in every:
        if sample is not None and len(found) == sample:
            break
        if (plant := planted(ROOT, place)) is not None:
            found.append(plant[0])
    return found


# --- which tests ---


def test_files(deep: bool) -> list[str]:
    """Test files, below the repository."""
    files = {
        file.relative_to(ROOT).as_posix()
        for folder in (DEEP if deep else NEAR)
        for file in _files(ROOT / "tests" / folder)
        if file.name not in SKIPPED
    }
    return sorted(files)


def _files(place: Path) -> Iterable[Path]:
    return [place] if place.is_file() else place.rglob("test_*.py")


def reached(folder: Path, pool: ProcessPoolExecutor, deep: bool) -> Reached:
    """Lines that every test runs; from the folder what is kept there."""
    package = _content((ROOT / "sequencer").rglob("*.*"))
    kept, asked = [], {}
    for file in test_files(deep):
        path = folder / f"reach-{package}-{_content([ROOT / file])}-{Path(file).stem}.json"
        if path.exists():
            kept += _read_reach(path)
        else:
            asked[pool.submit(_write_reach, file, path)] = path
    for done, future in enumerate(as_completed(asked), 1):
        if future.result():
            kept += _read_reach(asked[future])
        _say(f"coverage {done}/{len(asked)}")
    return kept


def _read_reach(path: Path) -> Reached:
    rows = json.loads(path.read_text(encoding="utf-8"))
    return [(Test(*t), {m: int(b, 16) for m, b in bits.items()}) for t, bits in rows]


def _content(files: Iterable[Path]) -> str:
    total = hashlib.sha256()
    for file in sorted(files):
        if file.is_file() and file.suffix != ".pyc":
            total.update(file.relative_to(ROOT).as_posix().encode() + file.read_bytes())
    return total.hexdigest()[:16]


def chosen(mutant: Mutant, known: Reached, budget: float) -> list[Test]:
    """The tests that a mutant meets, nearest first, for `budget` seconds in all."""
    module = mutant.module
    for lines in _widening(module, mutant.line):
        tests = [test for test, bits in known if bits.get(module, 0) & lines]
        if tests:
            break
    else:
        places = {name: _bodies(name) for name in (module, *_users(module))}
        tests = [t for t, bits in known if any(bits.get(n, 0) & own for n, own in places.items())]
    tests.sort(key=lambda test: (_distance(test.file, mutant.module), test.seconds, test.name))
    return list(_affordable(tests, budget))


def _affordable(tests: Sequence[Test], budget: float) -> Iterator[Test]:
    total = 0.0
    for test in tests:
        if total + test.seconds <= budget or not total:
            total += test.seconds
            yield test


def _widening(module: str, line: int) -> Iterator[int]:
    """Lines about a line, as bits: its statement's, its function's; of what runs on import, its class's.

    What runs on import does so in whichever test comes first, so it says nothing: the functions do.
    """
    spans, classes = _spans(module)
    if _bodies(module) & 1 << line:
        for first, last in sorted(spans, key=lambda span: span[1] - span[0]):
            if first <= line <= last:
                yield (1 << last + 1) - (1 << first) & _bodies(module)
        return
    for first, last in classes:
        if first <= line <= last:
            yield (1 << last + 1) - (1 << first) & _bodies(module)


@cache
def _spans(module: str) -> tuple[list[tuple[int, int]], list[tuple[int, int]]]:
    """First and last line of every statement (of a compound one, its head's as well), and of every class."""
    out, classes = [], []
    for node in _statements(module):
        end = node.end_lineno or node.lineno
        body = getattr(node, "body", None)
        if isinstance(node, ast.ClassDef):
            classes.append((node.lineno, end))
        elif body and not isinstance(node, ast.FunctionDef):
            out.append((node.lineno, max(node.lineno, body[0].lineno - 1)))
        else:
            out.append((node.lineno, end))
    return out, classes


@cache
def _bodies(module: str) -> int:
    """Lines that run when a function is called, as bits."""
    bits = 0
    for node in _statements(module):
        if isinstance(node, ast.FunctionDef):
            bits |= (1 << (node.end_lineno or node.lineno) + 1) - (1 << node.body[0].lineno)
    return bits


@cache
def _statements(module: str) -> list[Any]:
    tree = ast.parse((ROOT / module).read_text(encoding="utf-8"))
    return [node for node in ast.walk(tree) if isinstance(node, ast.stmt)]


def _dotted(module: str) -> str:
    return module.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


@cache
def _graph() -> Any:
    import grimp

    return grimp.build_graph("sequencer", cache_dir=None)


@cache
def _users(module: str) -> frozenset[str]:
    """Files that import a module directly."""
    found = _graph().find_modules_that_directly_import(_dotted(module))
    return frozenset(name.replace(".", "/") + ".py" for name in found)


@cache
def _distance(file: str, module: str) -> int:
    """How near a test file is to a module."""
    name = Path(module)
    if Path(file).name == f"test_{name.name}":
        return 0
    text = (ROOT / file).read_text(encoding="utf-8")
    if _dotted(module) in text:
        return 1
    return 2 if name.parent.name in file else 3


# --- in a worker ---


_copy: list[Path] = []  # of this process


def _settle(base: str) -> None:
    _copy.append(private_copy(ROOT, Path(base)))


def _write_reach(file: str, path: Path) -> bool:
    """Keep what a test file reaches; False for one that fails without a mutant, which is left out."""
    try:
        found = reach(_copy[0], file)
    except RuntimeError as error:
        _say(f"left out: {error}")
        return False
    rows = [(test, {m: hex(b) for m, b in bits.items()}) for test, bits in found]
    part = path.with_suffix(".part")
    part.write_text(json.dumps(rows), encoding="utf-8")
    part.replace(path)
    return True


def tried(mutant: Mutant, tests: Sequence[Test], control: bool) -> str:
    """Verdict on a mutant; the nearest tests by themselves first, since collecting takes time too.

    As a control the same tests are run without it first: then all must pass.
    """
    root = _copy[0]
    if control and tests and (result := verdict(root, tests, FACTOR)) != "survived":
        raise RuntimeError(f"{result} without a mutant: the tests for {mutant.key}")
    file = root / mutant.module
    whole = file.read_bytes()
    plant = planted(ROOT, mutant)
    if plant is None:
        raise RuntimeError(f"no mutant any more: {mutant.key}")
    near = [test for test in tests if _distance(test.file, mutant.module) < 2]
    far = [test for test in tests if _distance(test.file, mutant.module) >= 2]
    try:
        file.write_text(plant[1], encoding="utf-8")
        for part in (near, far):
            result = verdict(root, part, FACTOR) if part else "survived"
            if result != "survived":
                return result
    finally:
        file.write_bytes(whole)
    return "survived"


# --- record and report ---


def load(path: Path) -> dict[str, dict[str, Any]]:
    """What is known from earlier calls, by key and occurrence."""
    return json.loads(path.read_text(encoding="utf-8")) if path.exists() else {}


def save(path: Path, record: dict[str, dict[str, Any]]) -> None:
    """The record, whole or not at all."""
    part = path.with_suffix(".part")
    part.write_text(json.dumps(record, indent=1), encoding="utf-8")
    part.replace(path)


def reasons() -> dict[str, str]:
    """Why mutants are equivalent, by key."""
    groups = json.loads(EQUIVALENT.read_text(encoding="utf-8"))
    return {key: group["why"] for group in groups for key in group["mutants"]}


def table(found: dict[str, dict[str, Any]]) -> str:
    """Figures by module, and what survived."""
    known = reasons()
    rows: dict[str, Counter[str]] = {}
    left, endless = [], []
    for each in found.values():
        result = each["verdict"]
        if result == "survived" and each["key"] in known:
            result = "equivalent"
        rows.setdefault(each["module"], Counter())[result] += 1
        told = (
            f"{each['module']}:{each['line']} {each['operator']}\n    {each['key'].split(' | ')[2]}"
        )
        if result == "survived":
            left.append(f"{told}\n    met {each['tests']} tests")
        elif result == "endless":
            endless.append(told)
    names = ("killed", "endless", "equivalent", "survived")
    lines = [f"{'module':55} {'mutants':>8} " + " ".join(f"{name:>10}" for name in names)]
    whole: Counter[str] = sum(rows.values(), Counter())
    for module, counts in [*sorted(rows.items()), ("all", whole)]:
        cells = " ".join(f"{counts[name]:10}" for name in names)
        lines.append(f"{module:55} {counts.total():8} {cells}")
    judged = whole.total() - whole["equivalent"]
    if judged:
        share = (whole["killed"] + whole["endless"]) / judged
        lines.append(f"killed: {share:.1%} of {judged}, equivalent ones apart")
    for title, listed in (("Survived:", left), ("Endless:", endless)):
        if listed:
            lines += ["", title, *sorted(listed)]
    return "\n".join(lines)


def _say(text: str) -> None:
    print(text, file=sys.stderr, flush=True)


def run(mutants: Sequence[Mutant], record: dict[str, dict[str, Any]], given: Any) -> None:
    """Try what the record does not hold, and keep each verdict as it comes."""
    with (
        tempfile.TemporaryDirectory(prefix="mutation-") as base,
        ProcessPoolExecutor(
            given.workers, mp_context=warm_up(), initializer=_settle, initargs=(base,)
        ) as pool,
    ):
        known = reached(given.folder, pool, given.deep)
        asked = {}
        for mutant in mutants:
            old = record.get(_place(mutant))
            if old and not (given.retry and old["verdict"] == "survived"):
                continue
            tests = chosen(mutant, known, inf if given.deep else given.budget)
            control = len(asked) % CONTROL == 0
            asked[pool.submit(tried, mutant, tests, control)] = mutant, len(tests)
        for done, future in enumerate(as_completed(asked), 1):
            mutant, count = asked[future]
            record[_place(mutant)] = {
                "key": mutant.key, "module": mutant.module, "line": mutant.line,
                "operator": mutant.operator, "verdict": future.result(), "tests": count,
            }  # fmt: skip
            save(given.folder / "record.json", record)
            _say(f"{done}/{len(asked)} {future.result()} {mutant.module}:{mutant.line}")


def main() -> None:
    """Draw, run what the record does not hold, print."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--sample", type=int, default=200)
    parser.add_argument("--all", action="store_true", help="every mutant instead of a sample")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--module", default="", metavar="PATTERN", help="only files that match")
    parser.add_argument("--deep", action="store_true", help="all tests, as long as they take")
    parser.add_argument("--budget", type=float, default=60.0, help="seconds of tests for a mutant")
    parser.add_argument("--retry", action="store_true", help="run again what survived")
    parser.add_argument("--list", action="store_true", help="only list the mutants")
    parser.add_argument("--report", action="store_true", help="only print what is known already")
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--folder", type=Path, default=Path(tempfile.gettempdir()) / "mutation")
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args()
    mutants = drawn(given.module, None if given.all else given.sample, given.seed)
    if given.list:
        print("\n".join(f"{m.module}:{m.line} {m.key.split(' | ', 1)[1]}" for m in mutants))
        return
    given.folder.mkdir(parents=True, exist_ok=True)
    record = load(given.folder / "record.json")
    if not given.report:
        run(mutants, record, given)
    found = {_place(m): record[_place(m)] for m in mutants if _place(m) in record}
    print(json.dumps(found) if given.json else table(found))


def _place(mutant: Mutant) -> str:
    return f"{mutant.key} #{mutant.occurrence}"


if __name__ == "__main__":
    main()
