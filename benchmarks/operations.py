"""Operations on show files: many at random with undo, each held against an oracle; how long one takes by size of the show.

`python benchmarks/operations.py --json`. `--operations 100000` is the long run, `--seed` another one.
"""

import argparse
import json
import random
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from sequencer.show.operations.block_operations import (
    ChangeBlock,
    DeleteBlocks,
    PutBlock,
    StretchBlock,
)
from sequencer.show.operations.history import History
from sequencer.show.operations.people_operations import RenamePerson
from tests.made_operations import SHOW, VARIANTS
from tests.operation_runs import Told, run

STEPS = 120  # operations on one text before all are undone
WHOLE = 0.05  # of the texts are parsed in one go besides
SIZES = (100, 1_000, 10_000)  # blocks


def many(operations: int, seed: int) -> dict[str, object]:
    """Operations at random, on each variant of a show in turn."""
    told, began = Told(), time.perf_counter()
    draw = random.Random(seed)  # noqa: S311  # no secret
    turn = 0
    while told.done + told.refused < operations:
        left = operations - told.done - told.refused
        own = run(
            VARIANTS[turn % len(VARIANTS)], draw, steps=min(STEPS, left), rounds=1, whole=WHOLE
        )
        told.done += own.done
        told.refused += own.refused
        told.kinds.update(own.kinds)
        told.codes.update(own.codes)
        turn += 1
        if turn % 50 == 0:
            print(f"{told.done + told.refused} operations", file=sys.stderr, flush=True)
    return {
        "operations": told.done + told.refused, "done": told.done, "refused": told.refused,
        "seconds": round(time.perf_counter() - began, 1),
        "done by kind": dict(told.kinds.most_common()), "refused by code": dict(told.codes.most_common()),
    }  # fmt: skip


def show_of(blocks: int) -> str:
    """A show of many blocks, one line each."""
    head, _, rest = SHOW.partition("timeline:\n")
    tail = rest[rest.index("\nfire:") :]
    who = ("Ash", "Birch", "Cedar")
    rows = [
        f"  - {{who: {who[k % 3]}, from: {1 + k // 3}.1, pattern: extension, beats: {2 + k % 3}, note: number {k}}}\n"
        for k in range(blocks)
    ]
    return f"{head}timeline:\n{''.join(rows)}{tail}"


def pace(blocks: int) -> dict[str, float]:
    """Seconds of processor time that one operation takes, in the median."""
    text = show_of(blocks)
    began = time.process_time()
    history = History(text)
    opened = time.process_time() - began
    timed_show = history.show.show
    draw = random.Random(1)  # noqa: S311  # no secret
    taken: dict[str, list[float]] = {}

    def timed(kind: str, work: object) -> None:
        start = time.process_time()
        work()  # type: ignore[operator]
        taken.setdefault(kind, []).append(time.process_time() - start)

    for k in range(12):
        at = ("timeline", draw.randrange(blocks))
        timed("stretch", lambda at=at, k=k: history.do(StretchBlock(at=at, beats=20 + k)))
        timed(
            "change",
            lambda at=at, k=k: history.do(ChangeBlock(at=at, values={"note": f"other {k}"})),
        )
        timed(
            "put", lambda at=at: history.do(PutBlock(into=at[:1], before=at[1], block={"rest": 2}))
        )
        timed("delete", lambda at=at: history.do(DeleteBlocks(at=(at,))))
        timed("undo", history.undo)
    timed(
        "rename a performer",
        lambda: history.do(RenamePerson(group="cast", name="Ash", new="Rowan")),
    )
    return {
        "blocks": len(timed_show.timeline), "open": round(opened, 4),
        **{kind: round(statistics.median(own), 4) for kind, own in taken.items()},
    }  # fmt: skip


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--operations", type=int, default=2_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--json", action="store_true", help="as one JSON object")
    given = parser.parse_args()
    figures = {
        "random operations": many(given.operations, given.seed),
        "processor seconds by size": [pace(blocks) for blocks in SIZES],
    }
    print(json.dumps(figures, indent=None if given.json else 2))


if __name__ == "__main__":
    main()
