"""Fuzzes a reader of files where new code is reached: `python benchmarks/guided.py show --seconds 600`.

With the package `atheris` installed (libFuzzer for Python; CPython 3.11 to 3.13 on Linux), which is no dependency of this project. Files are
changed as by `fuzz.py`, at the level of letters, words, lines or the tree (tests/fuzz/changes.py); those that reach code which none has
reached before are kept and changed further. A case that ends in anything but "taken" or "refused" stops the run, and its file lies in the
folder given by `--found`. Told at the end are the cases and the edges reached.
"""

import argparse
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

LONGEST = 10  # [s] of a case
MOST_MEMORY = 1024  # [MiB]
MOST_BYTES = 60_000


def main() -> None:
    """Run one reader for so long."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("reader")
    asked.add_argument("--seconds", type=int, default=600)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--found", type=Path, help="folder for files that end otherwise")
    given = asked.parse_args()
    try:
        import atheris
    except ImportError:
        asked.exit(2, "guided.py needs the package atheris: pip install atheris\n")
    with atheris.instrument_imports(include=["sequencer"], enable_loader_override=False):
        from tests.fuzz.changes import changed_bytes, changed_text
        from tests.fuzz.targets import TARGETS, Target

        target = TARGETS.get(given.reader)
        if not isinstance(target, Target):
            asked.error(f"no reader {given.reader!r}")
        for content in target.seeds():
            target.judged(content)  # what a reader needs is imported when it first reads

    def changed(content: bytes, most: int, seed: int) -> bytes:
        try:
            new = changed_text(content.decode("utf-8"), seed).encode("utf-8", "surrogatepass")
        except UnicodeDecodeError:
            new = changed_bytes(content, seed)
        return new[:most]

    with tempfile.TemporaryDirectory() as folder:
        for k, content in enumerate(target.seeds()):
            (Path(folder) / f"{k}").write_bytes(content)
        found = given.found or Path.cwd()
        found.mkdir(parents=True, exist_ok=True)
        options = [
            f"-max_total_time={given.seconds}", f"-seed={given.seed}", f"-timeout={LONGEST}", f"-rss_limit_mb={MOST_MEMORY}",
            f"-max_len={MOST_BYTES}", f"-artifact_prefix={found}/", "-print_final_stats=1", folder,
        ]  # fmt: skip
        atheris.Setup([sys.argv[0], *options], target.judged, custom_mutator=changed)
        atheris.Fuzz()


if __name__ == "__main__":
    main()
