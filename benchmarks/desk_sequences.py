"""Random operations through the desk's own code against checks from nothing: python benchmarks/desk_sequences.py --sequences 1000 [--json].

Each sequence does operations as a page sends them, on a show file with its journal, looked at by the desk's worker after each, not
always to the end; some are taken back and done again, saved, or followed by a kill. At its end the findings, as drawn and as flown, are
those of a worker with nothing kept, or its seed is told; and undo leads back to the first byte.
"""

import argparse
import json
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))


def main() -> None:
    """Print how many sequences ended alike, and the seeds of those that did not."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--sequences", type=int, default=1000)
    parser.add_argument("--first", type=int, default=0, help="seed of the first")
    parser.add_argument("--operations", type=int, default=5, help="of each sequence")
    parser.add_argument("--minutes", type=float, default=0.0, help="end after so many, if not 0")
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", folder)
        patch.setenv("LOCALAPPDATA", folder)
        from tests.desk_sequences import sequence

        bad: list[int] = []
        kinds: Counter[str] = Counter()
        began, processor, count, refused, findings = time.monotonic(), time.process_time(), 0, 0, 0
        for seed in range(given.first, given.first + given.sequences):
            told = sequence(seed, Path(folder) / "show.yaml", given.operations)
            count += 1
            refused += told.refused
            findings += told.findings
            kinds.update(told.kinds)
            if not told.alike:
                bad.append(seed)
            if count % 25 == 0:
                print(f"{count}: {len(bad)} differ", file=sys.stderr, flush=True)
            if given.minutes and time.monotonic() - began > 60 * given.minutes:
                break
        figures = {
            "sequences": count, "operations": sum(kinds.values()), "refused": refused, "findings": findings,
            "differ": bad, "processor_s": round(time.process_time() - processor, 1), "kinds": dict(kinds.most_common()),
        }  # fmt: skip
    print(json.dumps(figures) if given.json else json.dumps(figures, indent=2))


if __name__ == "__main__":
    main()
