"""From a show file to its sheets, stage by stage: python benchmarks/sheets.py [SHOW] [--json].

One process, one core; each stage is also given as a share of librosa's own beat tracker on the track,
measured in the same run, so that the figures mean something on another machine.
"""

import argparse
import json
import os
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "NUMBA_NUM_THREADS"):
    os.environ.setdefault(name, "1")  # before numpy is loaded

from sequencer import tasks  # noqa: E402

T = TypeVar("T")
SHOW = Path(__file__).parents[1] / "shows" / "lantern_round.yaml"


def timed(figures: dict[str, float], name: str, work: Callable[[], T]) -> T:
    """Do some work and note its processor seconds."""
    start = time.process_time()
    done = work()
    figures[f"{name}_s"] = time.process_time() - start
    return done


def baseline(track: Path) -> None:
    """Loading and beat tracking by librosa and beat tracking, for comparison."""
    import librosa

    samples, rate = librosa.load(track)
    librosa.beat.beat_track(y=samples, sr=rate)


def main() -> None:
    """Print the figures as one JSON object, or as lines."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("show", nargs="?", type=Path, default=SHOW)
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args()
    figures: dict[str, float] = {}
    track = asked.show.parent / tasks.stage_show(asked.show).show.track.file
    timed(figures, "librosa_first", lambda: baseline(track))
    timed(figures, "librosa", lambda: baseline(track))
    timed(figures, "listen", lambda: tasks.hear_song(track, again=True))
    timed(figures, "stage", lambda: tasks.stage_show(asked.show))
    timed(figures, "check", lambda: tasks.check_show(asked.show))
    with tempfile.TemporaryDirectory() as folder:
        for paper in ("a4", "letter"):
            timed(
                figures, f"check_and_sheets_{paper}",
                lambda paper=paper: tasks.print_sheets(asked.show, Path(folder), paper=paper),
            )  # fmt: skip
    for name in ("listen", "check", "check_and_sheets_a4"):
        figures[f"{name}_over_librosa"] = figures[f"{name}_s"] / figures["librosa_s"]
    if asked.json:
        print(json.dumps(figures))
    else:
        for name, value in figures.items():
            print(f"{name:32} {value:.3f}")


if __name__ == "__main__":
    main()
