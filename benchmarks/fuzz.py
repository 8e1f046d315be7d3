"""Fuzzes every reader of files at length: `python benchmarks/fuzz.py --cases 200000 --json`.

Each case is known by its seed; what is told as a bug is made again with `--only NAME --seed SEED`. A case may take ten
seconds of processor time and, with all before it, a gigabyte of memory. With the package `coverage` installed, `--coverage` tells the share
of the readers' lines and branches that were run.
"""

import argparse
import json
import signal
import sys
import time
import traceback
import warnings
from collections import Counter
from contextlib import contextmanager
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from tests.fuzz.targets import TARGETS

LONGEST = 10  # [s] of processor time of a case
WAITED = 120  # [s] on the clock: it waits for something, or the machine is very busy
MOST = 1 << 30  # [bytes]
SHARES = {
    "show": 0.3,
    "patterns": 0.12,
    "rules": 0.14,
    "burns": 0.09,
    "practice log": 0.04,
    "taps": 0.1,
    "midi": 0.08,
    "audio": 0.07,
    "archive": 0.05,
    "options": 0.01,
}
OF_A_SHOW = (
    "file_records/drift_records", "file_records/entrance_record", "file_records/evening", "file_records/field_kinds",
    "file_records/held_values", "file_records/performer_record", "file_records/prop_records", "file_records/site",
    "file_records/tonight_record", "file_records/wishes", "text/document", "text/file_text", "text/nodes", "text/pieces",
    "text/plain_values", "text/simple_rows", "fact_names", "model", "outside_files", "pattern_book", "reading",
)  # fmt: skip
READERS = [
    *(f"sequencer/show/{name}.py" for name in OF_A_SHOW), "sequencer/timing/taps.py", "sequencer/facts/burn_log.py",
    "sequencer/practice/log_reading.py", "sequencer/safety/rules/house_rules.py", "sequencer/motion/patterns/library.py", "sequencer/listening/signal/audio.py",
    "sequencer/listening/signal/mpeg.py", "sequencer/packed_files.py", "sequencer/packed_reading.py", "sequencer/file_names.py",
]  # fmt: skip


class HungError(Exception):
    """A case took longer than it may."""


def main() -> None:
    """Run the cases that are asked for, and tell how they end."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--cases", type=int, default=2000)
    asked.add_argument("--first", type=int, default=0, help="seed of the first case of each reader")
    asked.add_argument("--only", choices=sorted(TARGETS))
    asked.add_argument("--seed", type=int, help="run this one case of --only, and show it")
    asked.add_argument("--coverage", action="store_true")
    asked.add_argument("--json", action="store_true", dest="as_json")
    given = asked.parse_args()
    warnings.simplefilter("ignore")
    if given.seed is not None:
        target = TARGETS[given.only]
        sys.stdout.write(repr(target.case(given.seed)) + "\n")
        sys.stdout.write(target.run(given.seed) + "\n")
        return
    with _covering(given.coverage) as covered:
        names = [given.only] if given.only else list(SHARES)
        rows = [_run(name, given.first, _count(given, name)) for name in names]
    total = {
        "cases": sum(row["cases"] for row in rows), "bugs": sum(row["bugs"] for row in rows),
        "peak_mb": round(_peak() / 1e6), "covered": covered.get("share"),
    }  # fmt: skip
    if given.as_json:
        sys.stdout.write(json.dumps({"readers": rows, "total": total}, indent=1) + "\n")
    else:
        for row in rows:
            sys.stdout.write("{reader:9} {cases:7,} cases: {taken:6,} taken, {refused:7,} refused, {bugs} bugs; slowest {slowest:.2f} s\n".format(**row))  # fmt: skip
            for each in row["kinds"]:
                sys.stdout.write(f"  {each}\n")
        sys.stdout.write(f"{total}\n")
    sys.exit(total["bugs"] > 0)


def _count(given, name: str) -> int:
    return given.cases if given.only else max(1, round(given.cases * SHARES[name]))


def _run(name: str, first: int, cases: int) -> dict:
    target, ends, kinds, slowest = TARGETS[name], Counter(), {}, 0.0
    for seed in range(first, first + cases):
        begun = time.perf_counter()
        try:
            with _limited():
                ends[target.run(seed)] += 1
            _look_at_memory()
        except Exception as error:  # noqa: BLE001 (whatever it is, it is told)
            ends["bugs"] += 1
            at = traceback.extract_tb(error.__traceback__)[-1]
            kinds.setdefault((type(error).__name__, at.filename, at.lineno), f"seed {seed}: {type(error).__name__} in {Path(at.filename).name}:{at.lineno}: {str(error)[:160]}")  # fmt: skip
        slowest = max(slowest, time.perf_counter() - begun)
    return {
        "reader": name, "cases": cases, "taken": ends["taken"], "refused": ends["refused"], "bugs": ends["bugs"],
        "slowest": round(slowest, 2), "kinds": list(kinds.values()),
    }  # fmt: skip


def _look_at_memory() -> None:
    if _peak() > MOST:
        raise MemoryError(f"{_peak() / 1e6:.0f} MB")


@contextmanager
def _limited():
    if not hasattr(signal, "SIGALRM"):
        yield
        return

    def hung(*_):
        raise HungError(f"longer than {LONGEST} s at work, or {WAITED} s on the clock")

    before = {number: signal.signal(number, hung) for number in (signal.SIGALRM, signal.SIGPROF)}
    signal.setitimer(signal.ITIMER_PROF, LONGEST)
    signal.alarm(WAITED)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.alarm(0)
        for number, handler in before.items():
            signal.signal(number, handler)


def _peak() -> int:
    """The most memory that this process has held [bytes]."""
    try:
        import resource
    except ImportError:
        return 0
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * (
        1 if sys.platform == "darwin" else 1024
    )


@contextmanager
def _covering(wanted: bool):
    found: dict = {}
    if not wanted:
        yield found
        return
    import io

    import coverage

    watching = coverage.Coverage(include=READERS, branch=True, data_file=None)
    watching.start()
    yield found
    watching.stop()
    found["share"] = round(watching.report(file=io.StringIO()), 1)


if __name__ == "__main__":
    main()
