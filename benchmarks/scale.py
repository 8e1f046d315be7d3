"""What a large show costs: python benchmarks/scale.py [--cast 25 50 100 200 500] [--blocks] [--hours 3] [--jobs N …].

Each line is one JSON object about one process of the real command in which nothing was kept but the song:
processor seconds, seconds on the clock, and the most memory of the process and of its largest worker.

    --cast N …      `check` of a field of as many performers at 4.2 m, five minutes; the exponent of the
                    processor time over the number of performers is fitted to all of them
    --apart         the same with no two performers of one stature: nothing is shared between them
    --blocks        `check` of 50 performers with 200 blocks each: 10,000 blocks in 27 minutes
    --hours H       a song of H hours: `listen`, then `check` of two performers over all of it
    --jobs N …      each `check` above with so many processes
    --again         and the same once more with everything kept
"""

import argparse
import json
import math
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from speed import ROOT, show_text, write_clicks

FIVE_MINUTES = 150  # bars of four beats at 120 a minute
CHILD = """\
import json, resource, sys, time
from sequencer.__main__ import main
began = time.perf_counter()
try:
    status = main()
except SystemExit as end:
    status = end.code
wall = time.perf_counter() - began
if "joblib" in sys.modules:
    from joblib.externals.loky import get_reusable_executor
    get_reusable_executor().shutdown(wait=True)  # workers count only once they have ended
own, workers = (resource.getrusage(each) for each in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
try:  # what the system counts for a process begins with what its parent held
    most = next(int(line.split()[1]) for line in open("/proc/self/status") if line.startswith("VmHWM"))
except OSError:
    most = own.ru_maxrss
print(json.dumps({
    "cpu_s": own.ru_utime + own.ru_stime + workers.ru_utime + workers.ru_stime,
    "workers_cpu_s": workers.ru_utime + workers.ru_stime,
    "wall_s": wall,
    "most_mib": most / 1024,
    "worker_mib": workers.ru_maxrss / 1024,
    "status": status or 0,
}), file=sys.stderr)
"""


def command(*arguments: str) -> dict[str, float]:
    """Cost of one process of the command."""
    done = subprocess.run(
        [sys.executable, "-c", CHILD, *arguments], capture_output=True, text=True, cwd=ROOT, check=False
    )  # fmt: skip
    found: dict[str, float] = {}
    for line in done.stderr.splitlines()[-1:]:
        found = json.loads(line)
    if found.get("status") not in (0, 1):
        raise RuntimeError(done.stderr)
    return found | {"printed_kib": len(done.stdout) / 1024}


def forget(cache: Path) -> None:
    """Leave nothing kept but the song."""
    for place in (cache / "sequencer").iterdir():
        if place.is_dir() and place.name != "heard":
            shutil.rmtree(place)
        elif place.is_file():
            place.unlink()


def checks(show: Path, cache: Path, jobs: list[int], *, again: bool) -> Iterator[dict[str, float]]:
    """A check with nothing kept, for each number of processes, and one with everything."""
    for number in jobs or [None]:
        given = [] if number is None else ["--jobs", str(number)]
        forget(cache)
        yield {"jobs": number or 0} | command("check", str(show), *given)
    if again:
        yield {"again": True} | command("check", str(show))


def exponent(sizes: list[int], costs: list[float]) -> float:
    """Slope of the line of least squares through the logarithms."""
    x, y = [math.log(each) for each in sizes], [math.log(each) for each in costs]
    mx, my = sum(x) / len(x), sum(y) / len(y)
    above = sum((a - mx) * (b - my) for a, b in zip(x, y, strict=True))
    return above / sum((a - mx) ** 2 for a in x)


def song(folder: Path, seconds: float) -> None:
    """A song of clicks that has been heard."""
    write_clicks(folder / "clicks.wav", seconds)
    command("listen", str(folder / "clicks.wav"))


def say(**what: object) -> None:
    """One line of figures."""
    print(json.dumps(what), flush=True)


def casts(folder: Path, cache: Path, given: argparse.Namespace) -> None:
    """Fields of performers, five minutes."""
    song(folder, 303.0)
    costs: dict[int, float] = {}
    for performers in given.cast:
        show = folder / f"field{performers}.yaml"
        text = show_text(performers, FIVE_MINUTES, spacing=4.2, apart=given.apart)
        show.write_text(text, encoding="utf-8")
        for cost in checks(show, cache, given.jobs, again=given.again):
            say(performers=performers, **cost)
            if "again" not in cost:
                costs.setdefault(performers, cost["cpu_s"])
    if len(costs) > 1:
        say(exponent=exponent(list(costs), list(costs.values())))


def blocks(folder: Path, cache: Path, given: argparse.Namespace) -> None:
    """Ten thousand blocks."""
    song(folder, 1626.0)
    show = folder / "blocks.yaml"
    show.write_text(show_text(50, 808, spacing=4.2), encoding="utf-8")
    for cost in checks(show, cache, given.jobs, again=given.again):
        say(performers=50, blocks=10_000, **cost)


def hours(folder: Path, cache: Path, given: argparse.Namespace) -> None:
    """A song of hours, heard and then danced by two."""
    seconds = 3600 * given.hours
    write_clicks(folder / "clicks.wav", seconds)
    say(hours=given.hours, **command("listen", str(folder / "clicks.wav")))
    show = folder / "long.yaml"
    show.write_text(show_text(2, int(seconds / 2) - 8, spacing=4.2), encoding="utf-8")
    for cost in checks(show, cache, given.jobs, again=given.again):
        say(performers=2, hours=given.hours, **cost)


def main() -> None:
    """Print the figures, one JSON object a line."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--cast", type=int, nargs="*", default=[])
    parser.add_argument("--apart", action="store_true")
    parser.add_argument("--blocks", action="store_true")
    parser.add_argument("--hours", type=float, default=0.0)
    parser.add_argument("--jobs", type=int, nargs="*", default=[])
    parser.add_argument("--again", action="store_true")
    given = parser.parse_args()

    with tempfile.TemporaryDirectory() as base:
        folder, cache = Path(base), Path(base) / "cache"
        os.environ["XDG_CACHE_HOME"] = os.environ["LOCALAPPDATA"] = str(cache)
        if given.cast:
            casts(folder, cache, given)
        if given.blocks:
            blocks(folder, cache, given)
        if given.hours:
            hours(folder, cache, given)


if __name__ == "__main__":
    main()
