"""Kills verbs before each of the things that they do to a folder: `python benchmarks/kills.py --kills 1000 --json`.

A verb is run once to count its steps; then it is run and killed before one of them, and run again: no file may be half-written,
none lost, and the next run must end as if nothing had been. Where there are fewer kills than steps they are spread over these.
Every other kill comes at a random moment instead (SIGKILL), whatever the verb is at. `--first` goes on where an earlier run
ended; a kill that comes after the end of a verb is none, and is made anew.
"""

import argparse
import json
import os
import random
import sys
import tempfile
import time
from pathlib import Path

import soundfile

sys.path.insert(0, str(Path(__file__).parents[1]))

from forked import Forked, loaded_for

from sequencer.tasks.packing import pack_show
from tests import killed
from tests.cli.conftest import RATE, SHOW, click_track
from tests.killed import contents, faults_after, faults_at_random, steps_of, verb

PAIR = "formations: {pair: {spots: {Ash: {at: [-0.7, 4]}, Birch: {at: [0.7, 4]}}}}\nstaging: [{formation: pair, from: 1.1}]\n"
NEAR = SHOW.replace(
    "cast:\n", f"{PAIR}cast:\n  - {{name: Birch, stature: 1.7, prop: {{tether: 0.55}}}}\n"
)
SHORT = (
    SHOW.replace("song.wav", "short.wav")
    .replace("from: 3.1", "from: 2.1")
    .replace("beats: 16", "beats: 4")
)
# A person who opens a show, changes its title, saves, and ends the program: what was done before the kill is done again.
OPEN = """
import os, signal, threading
from pathlib import Path
from sequencer.desk.serving import serve_show
from tests.desk_client import DeskClient

def person(address):
    try:
        page = DeskClient(address)
        for said in ({"do": "change-titles", "values": {"title": "Three"}}, {"do": "change-block", "at": ["timeline", 0], "values": {"note": "slowly"}}):
            page.post("operations", revision=page.get("show")[1]["revision"], operation=said)
        assert page.post("save")[0] == 200
    finally:
        os.kill(os.getpid(), signal.SIGINT)

try:
    serve_show(Path("show.yaml"), browser=False, opened=lambda address: threading.Thread(target=person, args=(address,)).start())
except KeyboardInterrupt:
    pass
"""
UNPACK = (
    "from pathlib import Path\nfrom sequencer.tasks.packing import unpack_show\n"
    "if not Path('theirs').exists():\n    unpack_show('mailed.zip', 'theirs')"
)
LOG = (
    "from pathlib import Path\nif not Path('show.practice.csv').exists():\n"
    "    from click.testing import CliRunner\n    from sequencer.cli import main\n"
    "    done = CliRunner().invoke(main, ['practice', 'show.yaml', '--log', '2026-11-02 3.1 60% 6/8'])\n"
    "    assert done.exit_code == 0, done.output"
)
VERBS = {
    "listen": verb("listen", "short.wav", "--chart", "chart.png", "--clicks", "clicks.wav"),
    "practice": verb("practice", "show.yaml", "--out", "out"),
    "practice log": LOG,
    "patterns": verb("patterns", "extension", "--draw", "card.pdf"),
    "check --mend": verb("check", "near.yaml", "--mend", "--drawn"),
    "new": verb("new", "made.yaml", "--track", "song.wav", "--no-draft", "--force"),
    "draft": verb("draft", "short.yaml"),
    "open": OPEN,
    "rehearse": verb("rehearse", "show.yaml", "--only", "timetable", "--out", "out"),
    "page": verb("rehearse", "show.yaml", "--only", "page", "--drawn", "--out", "out"),
    "sheet": verb("sheet", "show.yaml", "--drawn", "--out", "out"),
    "draw": verb("draw", "show.yaml", "--out", "out"),
    "pack": verb("pack", "show.yaml", "--out", "out"),
    "unpack": UNPACK,
}


def main() -> None:
    """Kill, and tell what was found."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--kills", type=int, default=100, help="of all verbs together")
    asked.add_argument("--first", type=int, default=0, help="number of the first kill of each verb")
    asked.add_argument(
        "--of",
        type=int,
        help="how many kills of a verb its steps are spread over (default: --kills)",
    )
    asked.add_argument("--only", choices=sorted(VERBS))
    asked.add_argument("--json", action="store_true", dest="as_json")
    given = asked.parse_args()
    names = [given.only] if given.only else list(VERBS)
    each = max(1, given.kills // len(names))
    rows = [_killed(name, given.first, each, given.of or each) for name in names]
    if given.as_json:
        sys.stdout.write(json.dumps(rows, indent=1) + "\n")
    else:
        for row in rows:
            sys.stdout.write(
                "{verb:13} {steps:3} steps, {kills:4} kills (before {at} of the steps), {faults} faults\n".format(
                    **row
                )
            )
            sys.stdout.writelines(f"  {each}\n" for each in row["told"])
    sys.exit(any(row["faults"] for row in rows))


def _killed(name: str, first: int, kills: int, of: int) -> dict:
    code = VERBS[name]
    with tempfile.TemporaryDirectory() as room:
        start, place = Path(room) / "start", Path(room) / "place"
        start.mkdir()
        soundfile.write(start / "song.wav", click_track(), RATE)
        soundfile.write(start / "short.wav", click_track(seconds=16.0), RATE)
        for file, text in (("show", SHOW), ("near", NEAR), ("made", SHOW), ("short", SHORT)):
            (start / f"{file}.yaml").write_text(text, encoding="utf-8")
        pack_show(start / "short.yaml", room)
        (Path(room) / "short" / "short.zip").rename(start / "mailed.zip")
        killed.BEGUN = killed.begun
        if hasattr(os, "fork") and name != "open":  # which starts processes of its own
            loaded_for(killed.fresh(start, place), code)
            killed.BEGUN = Forked
        steps_of(start, place, code)  # what is worked out only once is known from here on
        begun = time.perf_counter()
        steps, whole = steps_of(start, place, code)
        lasts = time.perf_counter() - begun
        faults = [] if whole != contents(start) else ["it writes nothing"]
        done, at_steps = 0, set()
        for k in range(first, first + kills):
            for again in range(5):
                draw = random.Random(f"{name} {k} {again}")  # noqa: S311 (no secret: moments of kills)
                if k % 2:
                    found = faults_at_random(start, place, lasts * draw.random(), whole, code)
                else:
                    at = (
                        draw.randrange(len(steps))
                        if again
                        else _spread(k // 2, of // 2, len(steps))
                    )
                    found = faults_after(start, place, at + 1, whole, code)
                    at_steps |= set() if found is None else {at}
                if found is not None:
                    done, faults = done + 1, faults + found
                    break
    return {
        "verb": name,
        "steps": len(steps),
        "at": len(at_steps),
        "kills": done,
        "faults": len(faults),
        "told": faults[:10],
    }


def _spread(k: int, of: int, steps: int) -> int:
    """The step of the k-th kill: each in turn, or evenly spread where there are more of them than kills."""
    return k * steps // of % steps if of and of < steps else k % steps


if __name__ == "__main__":
    main()
