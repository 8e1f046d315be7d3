"""`--help` against a bare Python start: python benchmarks/startup.py [--json].

Whole processes, in turn, so that a drift of the machine's speed falls on both; medians of the times and
of the ratio pair by pair.
"""

import argparse
import json
import statistics
import subprocess
import sys
import time

RUNS = 15
BARE = [sys.executable, "-c", "pass"]
CLICK = [sys.executable, "-c", "import click"]
HELP = [sys.executable, "-m", "sequencer", "--help"]


def seconds(command: list[str]) -> float:
    """Wall-clock seconds of one whole process."""
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def main() -> None:
    """Print the figures as one JSON object, or as lines."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--json", action="store_true")
    as_json = parser.parse_args().json
    for command in (BARE, CLICK, HELP):  # warm the disk cache
        seconds(command)
    rows = [(seconds(BARE), seconds(CLICK), seconds(HELP)) for _ in range(RUNS)]
    figures = {
        "runs": RUNS,
        "bare_python_s": statistics.median(row[0] for row in rows),
        "import_click_s": statistics.median(row[1] for row in rows),
        "help_s": statistics.median(row[2] for row in rows),
        "help_over_bare": statistics.median(row[2] / row[0] for row in rows),
    }
    if as_json:
        print(json.dumps(figures))
    else:
        for name, value in figures.items():
            print(f"{name:16} {value:.4g}")


if __name__ == "__main__":
    main()
