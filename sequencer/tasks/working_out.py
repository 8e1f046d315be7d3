"""Performers' dances worked out in several processes before a show is staged and checked in this one.

What one performer's dance is made of (fits, links), whether it can be danced and how it is flown depends on nobody else. The processes
hand back their results as records by content; the check that follows runs as it always does and finds them known, so
its report is the same to the last byte, whoever worked it out.
"""

from collections.abc import Sequence
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from functools import partial
from math import ceil
from typing import TYPE_CHECKING

from sequencer import kept
from sequencer.errors import InputError
from sequencer.progress import Progress, stop_if_unwanted
from sequencer.workers import in_workers

if TYPE_CHECKING:
    from sequencer.show.file_records.performer_record import Performer
    from sequencer.show.reading import ReadShow
    from sequencer.timing.song import Song

_EACH = 2  # parts for each process, so that none waits long for the last


def work_out(
    read: "ReadShow",
    song: "Song",
    *,
    jobs: int,
    flown: bool = False,
    progress: Progress | None = None,
) -> None:
    """Work out every performer's dance in several processes, and keep the results for this one.

    Parameters
    ----------
    read : ReadShow
    song : Song
    jobs : int
        Number of processes; -1 for one per core. With 1 nothing is done: the check itself works it out.
    flown : bool
        Whether the show is to be checked as flown: then every performer is flown as well.
    progress : callable, optional
    """
    if jobs == 1:
        return
    import joblib

    parts = alike(read.show.cast, _EACH * joblib.effective_n_jobs(jobs))
    say = progress or (lambda _subject, _share: None)
    say("working out the dances", 0.0)
    found = in_workers(partial(_records, read, song, flown=flown), parts, jobs=jobs)
    with suppress(BrokenProcessPool):  # a worker was killed: the check works out what is missing
        for done, records in enumerate(found, 1):
            stop_if_unwanted()
            kept.take(records)
            say("working out the dances", done / len(parts))


def alike(cast: "Sequence[Performer]", parts: int) -> list[tuple[str, ...]]:
    """Names in at most so many parts of one size; performers with the same body and props stand together.

    What two performers have in common is worked out once if one process does both.
    """
    ordered = sorted(cast, key=lambda each: each.model_dump_json(exclude={"name"}))
    names = [each.name for each in ordered]
    size = max(1, ceil(len(names) / parts))
    return [tuple(names[low : low + size]) for low in range(0, len(names), size)]


def _records(
    read: "ReadShow", song: "Song", names: Sequence[str], *, flown: bool = False
) -> dict[bytes, str | bytes]:
    """Everything that was worked out for some performers and not known yet, by its key."""
    from sequencer.checks.dance import as_flown, feasible, joins
    from sequencer.staging.timeline import staged

    with kept.collected() as records, suppress(InputError):  # the check says what is wrong
        show = staged(read, song, only=names)
        for check in (joins.CHECK, feasible.CHECK):
            check.outcome(show)
        if flown:
            as_flown.CHECK.outcome(show)
    return records
