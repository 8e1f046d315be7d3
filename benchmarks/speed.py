"""How long a performer waits for an answer: python benchmarks/speed.py [--json] [--runs 5] [--only NAME …].

Every figure is processor time over that of a calibrating loop of 20 million additions in the same interpreter,
measured in the same run, so that it means something on another machine; medians. Whole processes find the
song's analysis known, as a performer who has asked before does, and whatever else earlier calls kept.

The loop runs as in a plain script, at the level of a module, where each name is looked up in a mapping; inside a
function, where names have fixed places, CPython 3.11 takes about two fifths of that time (`loop_function_s`, beside
`loop_s`). The figures that are asked for agree only with a loop of the first kind: where it took 4.2 s, the version of
that time checked eight performers in 27 s, 6.4 loops. That version takes 7.5 to 8.3 plain loops here, but 17 to 19 of a
function. `--json` gives every figure in loops of a function as well, under `in_function_loops`.

    help            `--help`, over a bare start of the interpreter (wall-clock time)
    check 8         `check` of eight performers and four minutes, whole process, of a show that has not changed
    check 8 changed the same with one block changed since the last check
    check 8 first   the same with nothing kept but the song
    check group     `check` of the demo group, four performers and 3:07, which has not changed
    check group changed  the same with one block changed
    check solo      `check` of the solo demo, which has not changed
    edit group      one block of the demo group changed, in a running process, to all findings
    edit group flown  the same as flown: the whole check of the show as flown, its links and strained stretches sought anew
    edit solo, edit solo flown  both of the solo demo
    edit 8, edit 8 flown  both of eight performers and four minutes
    spot 8          one spot moved, to the distances
    … drawn         the three with `--drawn`: as drawn, not as it can be flown; edits and spots are as drawn
    mend 5          `check --mend` of five performers who come too close in every formation
    sheet group     all sheets of the demo group, whole process

With `--cast 25 50 100 200`, the distances alone: of as many performers over a field, five minutes, in seconds of
processor time, from nothing and after a spot is moved, each in a process of its own; and the most memory it took.
"""

import argparse
import json
import math
import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "NUMBA_NUM_THREADS"):
    os.environ.setdefault(name, "1")  # before numpy is loaded
os.environ.pop(
    "PYTHONDONTWRITEBYTECODE", None
)  # an installed program is compiled once, not each time

ROOT = Path(__file__).resolve().parents[1]
PATTERNS = (
    "two-beat-weave",
    "three-beat-weave",
    "extension",
    "static-spin",
    "pro-bend-4",
    "infinity",
)
NAMES = ("Ash", "Birch", "Cedar", "Dogwood", "Elm", "Fir", "Gorse", "Hazel")
HEAD = """\
title: Waiting
track: {{file: clicks.wav, corrections: {{metre: 4, one: 0:00.5}}}}
venue:
  stage: {{shape: rectangle, width: {width:g} m, depth: {depth:g} m}}
  audience: [{{name: front, line: [[-14, -8], [14, -8]]}}]
  ceiling: open
  scenery: [{{name: post, outline: [[-0.3, 19], [0.3, 19], [0.3, 19.6], [-0.3, 19.6]], height: 3 m}}]
  extinguishers: [{{at: [-13, 5], rating: "2-A:10-B:C", kind: foam}}, {{at: [13, 5], rating: "2-A:10-B:C", kind: foam}}]
  fuel_station: [16, 16]
cast:
{cast}
formations:
{formations}
staging:
{staging}
timeline:
{timeline}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{{who: all, from: 3.1, until: {until}.1}}]
crew:
  - {{name: Ivy, post: [-12, 8], duty: spotter}}
  - {{name: Juniper, post: [12, 8], duty: spotter}}
"""


def show_text(performers: int, bars: int, *, spacing: float, apart: bool = False) -> str:
    """A show in rows that move a metre or two every eight bars; steps of 14 beats, some by all, some alone.

    Rows of four up to eight performers, a square field of them beyond. Eight statures; `apart`, as many as performers.
    """
    names = [f"{NAMES[k % 8]}{k // 8 or ''}" for k in range(performers)]
    across = 4 if performers <= 8 else math.ceil(math.sqrt(performers))
    middle = (across - 1) / 2
    statures = [
        f"{1.55 + 0.3 * k / performers:.4f}" if apart else f"{1.6 + 0.03 * (k % 8):.2f}"
        for k in range(performers)
    ]
    cast = [
        f"  - {{name: {name}, stature: {stature}, prop: {{tether: 0.45 m, fuel_mass: 40 g}}}}"
        for name, stature in zip(names, statures, strict=True)
    ]
    places = [
        ((k % across - middle) * spacing, 4.0 + (k // across) * spacing * 1.2)
        for k in range(performers)
    ]
    formations, staging, timeline = [], [], []
    for n in range(bars // 8):
        turned = [(x + (n % 3 - 1) * 1.2, y + n % 2) for x, y in places]
        spots = ", ".join(
            f"{name}: {{at: [{x:.2f}, {y:.2f}]}}"
            for name, (x, y) in zip(names, turned, strict=True)
        )
        formations.append(f"  f{n}: {{spots: {{{spots}}}}}")
        walk = ", beats: 12" if n else ""
        staging.append(f"  - {{formation: f{n}, from: {8 * n + 1}.1{walk}}}")
    for n in range(1, bars // 4 - 1):
        at, step = 4 * n + 1, PATTERNS[n % len(PATTERNS)]
        if n % 2:
            timeline.append(f"  - {{who: all, from: {at}.1, pattern: {step}, beats: 12}}")
            continue
        for k, name in enumerate(names):
            own = PATTERNS[(n + k) % len(PATTERNS)]
            timeline.append(f"  - {{who: {name}, from: {at}.1, pattern: {own}, beats: 12}}")
    return HEAD.format(
        cast="\n".join(cast), formations="\n".join(formations), staging="\n".join(staging),
        timeline="\n".join(timeline), until=bars - 4,
        width=max(26, 2 * (middle * spacing + 6)), depth=max(18, places[-1][1] + 8),
    )  # fmt: skip


def write_clicks(path: Path, seconds: float) -> None:
    """A song of clicks at 120 a minute."""
    import numpy as np
    import soundfile as sf

    rate = 22_050
    sound = np.zeros(int(seconds * rate))
    click = np.sin(np.arange(900) * 0.3) * np.exp(-np.arange(900) / 150)
    for beat in range(int((seconds - 1) * 2)):
        start = int((0.5 + 0.5 * beat) * rate)
        sound[start : start + 900] += click * (1.0 if beat % 4 == 0 else 0.6)
    sf.write(path, sound, rate)


LOOP = """\
total = 0
for k in range(20_000_000):
    total += k
"""


def loop() -> float:
    """Processor seconds of the calibrating loop as a plain script runs it: its names are those of a module."""
    script = compile(LOOP, "loop", "exec")
    start = time.process_time()
    exec(script, {})  # noqa: S102  ours, and the point of it
    return time.process_time() - start


def loop_in_function() -> float:
    """The same inside a function: its names are local."""
    start = time.process_time()
    total = 0
    for k in range(20_000_000):
        total += k
    return time.process_time() - start


def process(*arguments: str) -> float:
    """Processor seconds of a whole process of the command."""
    return _spent([sys.executable, "-m", "sequencer", *arguments])


def _spent(command: list[str]) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode not in (0, 1):
        raise RuntimeError(done.stderr)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def edits(path: Path, runs: int, *, spots: bool = False, flown: bool = False) -> Iterator[float]:
    """Processor seconds from a change to what is found, as drawn or as flown: of a block's shift, or of a spot's place."""
    from sequencer import tasks
    from sequencer.checks.distances import keeping_clear
    from sequencer.planning.offers import checked_with_mends
    from sequencer.planning.trying.restaging import restaged

    show = tasks.stage_show(path)
    checked_with_mends(show, flown=flown)
    read = show.read
    if read is None:
        raise RuntimeError("a show from a file remembers it")
    values = read.document.values
    for k in range(runs):
        if spots:
            formation = list(values["formations"])[k % len(values["formations"])]
            name = read.show.names[k % len(read.show.names)]
            x, y = values["formations"][formation]["spots"][name]["at"]
            change = (
                ("formations", formation, "spots", name, "at"),
                [float(x) + 0.1, float(y) + 0.05 * k],
            )
        else:
            blocks = [i for i, entry in enumerate(values["timeline"]) if "pattern" in entry]
            change = (("timeline", blocks[len(blocks) // 2 + k], "shift"), 0.5)
        start = time.process_time()
        after = restaged(show, [change])
        if spots:
            keeping_clear.CHECK.outcome(after)
        else:
            checked_with_mends(after, flown=flown)
        yield time.process_time() - start


class Measured(NamedTuple):
    """Medians of one run [s of processor time]."""

    loop_s: float  # as in a plain script
    loop_function_s: float
    seconds: Mapping[str, float]

    @property
    def ratios(self) -> dict[str, float]:
        """Over the plain script's loop."""
        return {name: own / self.loop_s for name, own in self.seconds.items()}

    @property
    def in_function_loops(self) -> dict[str, float]:
        """Over the function's loop."""
        return {name: own / self.loop_function_s for name, own in self.seconds.items()}


def figures(folder: Path, runs: int, only: list[str]) -> Measured:
    """All figures."""
    write_clicks(folder / "clicks.wav", 243.0)
    eight, five = folder / "eight.yaml", folder / "five.yaml"
    eight.write_text(show_text(8, 120, spacing=4.2), encoding="utf-8")
    five.write_text(show_text(5, 40, spacing=2.4), encoding="utf-8")
    group, solo = ROOT / "shows" / "lantern_round.yaml", ROOT / "shows" / "night_ferry.yaml"

    def mended(*how: str) -> float:
        again = folder / "again.yaml"
        shutil.copy(five, again)
        return process("check", str(again), "--mend", *how)

    def changed(show: Path, *how: str) -> float:
        again = folder / "shows" / show.name
        if not again.parent.exists():
            again.parent.mkdir()
            shutil.copytree(ROOT / "audio_samples", folder / "audio_samples")
            shutil.copy(folder / "clicks.wav", again.parent)
        numbers.append(len(numbers))
        again.write_text(_one_block_changed(show, len(numbers)), encoding="utf-8")
        return process("check", str(again), *how)

    numbers: list[int] = []
    single: dict[str, Callable[[], float]] = {
        "check 8": lambda: process("check", str(eight)),
        "check group": lambda: process("check", str(group)),
        "check solo": lambda: process("check", str(solo)),
        "check 8 changed": lambda: changed(eight),
        "check group changed": lambda: changed(group),
        "check 8 changed drawn": lambda: changed(eight, "--drawn"),
        "check group changed drawn": lambda: changed(group, "--drawn"),
        "mend 5": mended,
        "mend 5 drawn": lambda: mended("--drawn"),
        "sheet group": lambda: process("sheet", str(group), "--out", str(folder / "prints")),
        "check 8 first": lambda: _first(folder / "cache" / "sequencer", eight),
    }
    series: dict[str, Callable[[], Iterator[float]]] = {
        "edit group": lambda: edits(group, runs),
        "edit group flown": lambda: edits(group, runs, flown=True),
        "edit solo": lambda: edits(solo, runs),
        "edit solo flown": lambda: edits(solo, runs, flown=True),
        "edit 8": lambda: edits(eight, runs),
        "edit 8 flown": lambda: edits(eight, runs, flown=True),
        "spot 8": lambda: edits(eight, runs, spots=True),
    }
    loops = [loop() for _ in range(runs)]
    inside = [loop_in_function() for _ in range(runs)]
    found: dict[str, list[float]] = {}
    for name in [each for each in (*single, *series) if not only or each in only]:
        if name in series:
            found[name] = list(series[name]())
            continue
        single[name]()  # so that the song is known
        found[name] = [single[name]() for _ in range(runs)]
    loops += [loop() for _ in range(runs)]
    inside += [loop_in_function() for _ in range(runs)]
    seconds = {name: statistics.median(times) for name, times in found.items()}
    return Measured(statistics.median(loops), statistics.median(inside), seconds)


def _one_block_changed(show: Path, number: int) -> str:
    """The text of a show with another shift of a block in its middle, another one for each number."""
    from sequencer.show.editing import edited_text
    from sequencer.show.text.document import read_document

    timeline = read_document(show).values["timeline"]
    blocks = [i for i, entry in enumerate(timeline) if "pattern" in entry]
    change = (("timeline", blocks[len(blocks) // 2], "shift"), round(0.5 + number / 64, 6))
    return edited_text(show.read_text(encoding="utf-8"), [change])


def _first(cache: Path, show: Path) -> float:
    """A check with nothing kept but the song."""
    for place in cache.iterdir():
        if place.is_dir() and place.name != "heard":
            shutil.rmtree(place)
        elif place.is_file():
            place.unlink()
    return process("check", str(show))


def help_over_bare(runs: int) -> float:
    """Wall-clock time of `--help` over that of a bare start, pair by pair."""

    def seconds(command: list[str]) -> float:
        start = time.perf_counter()
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd=ROOT)
        return time.perf_counter() - start

    bare, asked = [sys.executable, "-c", "pass"], [sys.executable, "-m", "sequencer", "--help"]
    pairs = [(seconds(bare), seconds(asked)) for _ in range(3 * runs)]
    return statistics.median(b / a for a, b in pairs)


def of_cast(folder: Path, performers: int) -> dict[str, float]:
    """Processor seconds for the distances of a large cast, and the most memory of the process [MiB]."""
    from sequencer import tasks
    from sequencer.checks.distances import keeping_clear
    from sequencer.planning.trying.restaging import restaged

    write_clicks(folder / "clicks.wav", 303.0)
    path = folder / "field.yaml"
    path.write_text(show_text(performers, 150, spacing=4.2), encoding="utf-8")
    show = tasks.stage_show(path)
    staged_mib = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    start = time.process_time()
    found = keeping_clear.CHECK.outcome(show)
    first = time.process_time() - start
    name = show.show.names[performers // 2]
    x, y = show.read.document.values["formations"]["f3"]["spots"][name]["at"]
    start = time.process_time()
    change = (("formations", "f3", "spots", name, "at"), [float(x) + 0.1, float(y)])
    keeping_clear.CHECK.outcome(restaged(show, [change]))
    return {
        "performers": performers,
        "distances_s": first,
        "spot_s": time.process_time() - start,
        "staged_mib": staged_mib,
        "most_mib": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
        "rows": len(found.clearances),
    }


def main() -> None:
    """Print the figures as one JSON object, or as lines."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--json", action="store_true")
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--only", nargs="*", default=[])
    parser.add_argument("--cast", type=int, nargs="*", default=[])
    parser.add_argument("--own-process", action="store_true", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.own_process:
        with tempfile.TemporaryDirectory() as base:
            print(json.dumps(of_cast(Path(base), *given.cast)), flush=True)
        return
    if given.cast:
        with tempfile.TemporaryDirectory() as base:
            os.environ["XDG_CACHE_HOME"] = os.environ["LOCALAPPDATA"] = base
            for performers in given.cast:
                again = [sys.executable, __file__, "--own-process", "--cast", str(performers)]
                subprocess.run(again, check=True)
        return
    with tempfile.TemporaryDirectory() as base:
        os.environ["XDG_CACHE_HOME"] = os.environ["LOCALAPPDATA"] = str(Path(base) / "cache")
        measured = figures(Path(base), given.runs, given.only)
    found = {"loop_s": measured.loop_s, "loop_function_s": measured.loop_function_s}
    found |= measured.ratios
    if not given.only or "help" in given.only:
        found["help"] = help_over_bare(given.runs)
    if given.json:
        print(json.dumps({**found, "in_function_loops": measured.in_function_loops}))
    else:
        for name, value in found.items():
            print(f"{name:19} {value:.3g}")


if __name__ == "__main__":
    main()
