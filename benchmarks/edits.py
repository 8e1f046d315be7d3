"""Sequences of random edits against a check from nothing: python benchmarks/edits.py --sequences 1000 [--json].

The show, the kinds of edit and the comparison are those of tests/property/test_edits.py: blocks, phrases used
twice, spots, facings, ways, tempo, props, performers, lit spans, flame, crew, venue and rules. Each sequence
makes two to five of them, checks after each, and compares the last report, finding by finding and to the
last digit, with one of the same file staged and checked with nothing kept; and so the report of a process that
finds on disk what the sequences before it kept.
"""

import argparse
import importlib.util
import json
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[1]


def _module() -> Any:
    sys.path.insert(0, str(ROOT))
    place = ROOT / "tests" / "property" / "test_edits.py"
    spec = importlib.util.spec_from_file_location("edits_property", place)
    if spec is None or spec.loader is None:
        raise RuntimeError(f"cannot load {place}")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def main() -> None:
    """Print how many sequences ended alike, and the seeds of those that did not."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--sequences", type=int, default=1000)
    parser.add_argument("--first", type=int, default=0, help="seed of the first")
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as cache, pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", cache)
        patch.setenv("LOCALAPPDATA", cache)
        edits = _module()
        show, bad, start = edits.first_show(), [], time.process_time()
        for seed in range(given.first, given.first + given.sequences):
            said, values = edits.sequence(seed, show)
            anew = edits.from_nothing(show.read.document, values)
            next_one = edits.in_next_process(show.read.document, values)
            if not (edits.same(said, anew) and edits.same(next_one, anew)):
                bad.append(seed)
            if seed % 25 == 0:
                print(f"{seed}: {len(bad)} differ", file=sys.stderr, flush=True)
        figures = {
            "sequences": given.sequences,
            "differ": bad,
            "processor_s": time.process_time() - start,
        }
    print(json.dumps(figures) if given.json else figures)


if __name__ == "__main__":
    main()
