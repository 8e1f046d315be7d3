"""Many random runs of one show, danced in parallel and stored in batches, so that an interrupted call resumes.

Each run draws new errors for every performer (`motion.performers.drifting`) and is searched with the same proof
as the plan. Runs are independent and seeded by their number and the performer's name, so the answer does
not depend on how many processes dance them, nor on how often the work is interrupted.
"""

import hashlib
import json
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import astuple, dataclass
from functools import partial
from pathlib import Path
from typing import NamedTuple

import numpy as np

from sequencer.errors import InputError
from sequencer.files import PARTIAL, write_text
from sequencer.motion.clearance.approach import approaches
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import Spread, drifted
from sequencer.workers import in_workers

RUNS = 200
TOGETHER = 8.0  # [beats] approaches no farther apart than this are one conflict
_DRAWING = "2"  # raised whenever the same seed would draw other errors
_KEPT = 32  # shows whose runs stay in the cache

RunProgress = Callable[[float], None]
Span = tuple[float, float]


class RunConflict(NamedTuple):
    """One pair under the requirement in one run."""

    pair: int  # place in the order of `pairs`
    start: float  # [beats]
    end: float  # [beats]
    distance: float  # [m] smallest


Run = tuple[RunConflict, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Trials:
    """How a show is danced: how often, with which seed, in how many processes, and where runs are stored."""

    runs: int = RUNS
    seed: int = 0
    jobs: int = 1  # processes; -1 for one a core
    backend: str | None = None  # of joblib, such as "dask" with an open client
    folder: Path | None = None  # finished runs are stored there
    content: str = ""  # identifies the show, beside the dancers themselves

    def __post_init__(self) -> None:
        if self.runs < 1:
            raise ValueError(f"runs must be at least 1, got {self.runs}")
        if self.seed < 0:
            raise ValueError(f"seed must not be negative, got {self.seed}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """Input of every process: the plan, and the errors to draw."""

    dancers: tuple[Dancer, ...]
    span: Span
    required: float
    spread: Spread
    seed: int


def danced(work: Work, trials: Trials, *, progress: RunProgress | None = None) -> list[Run]:
    """Every run of a show, in order; runs stored by an earlier call are not danced again.

    Parameters
    ----------
    work : Work
    trials : Trials
    progress : callable, optional
        Called with the share done.
    """
    key = _key(work, trials)
    folder = None if trials.folder is None else trials.folder / key
    _swept(folder)
    step = _batch_size(len(work.dancers))
    parts = [range(low, min(low + step, trials.runs)) for low in range(0, trials.runs, step)]
    done = {part.start: runs for part in parts if (runs := _stored(folder, key, part)) is not None}
    waiting = [part for part in parts if part.start not in done]
    say = progress or (lambda _share: None)
    say(sum(len(runs) for runs in done.values()) / trials.runs)
    for part, found in _computed(work, waiting, trials):
        done[part.start] = found
        _store(folder, key, part, found)
        say(sum(len(runs) for runs in done.values()) / trials.runs)
    if trials.folder is not None:
        _tidied(trials.folder)
    return [run for part in parts for run in done[part.start]]


def one_run(work: Work, run: int, *, only: str | None = None) -> Run:
    """Conflicts of one run; with `only`, everyone but that performer dances the plan."""
    drawn = drawn_dancers(work, run, only=only)
    found = approaches(drawn, *work.span, required=work.required, minima=False)
    out = []
    for pair in np.unique(found.spans.group):
        of = found.spans.group == pair
        begin, end = found.spans.start[of], found.spans.end[of]
        cuts = np.flatnonzero(begin[1:] - end[:-1] > TOGETHER) + 1
        for some in np.split(np.arange(len(begin)), cuts):
            low, high = float(begin[some[0]]), float(end[some[-1]])
            distance = float(found.distance[pair])
            if len(cuts):
                two = (drawn[found.first[pair]], drawn[found.second[pair]])
                distance = float(approaches(two, low, high, required=work.required).distance[0])
            out.append(RunConflict(int(pair), low, high, distance))
    return tuple(out)


def drawn_dancers(work: Work, run: int, *, only: str | None = None) -> list[Dancer]:
    """Every performer with the errors of one run; with `only`, just that performer has errors."""
    middle = 0.5 * (work.span[0] + work.span[1])
    return [
        drifted(
            dancer,
            work.spread,
            np.random.default_rng([work.seed, run, *dancer.name.encode()]),
            middle,
        )
        if only is None or only == dancer.name
        else dancer
        for dancer in work.dancers
    ]


def _batch_size(n: int) -> int:
    """Runs that are danced and stored together: fewer if one run takes long."""
    return max(1, min(20, 2000 // max(n, 1) ** 2))


def _computed(
    work: Work, parts: Sequence[range], trials: Trials
) -> Iterator[tuple[range, list[Run]]]:
    found = in_workers(partial(_some, work), parts, jobs=trials.jobs, backend=trials.backend)
    yield from zip(parts, found, strict=True)


@contextmanager
def _delaying_interrupts() -> Iterator[None]:
    """Answer a Ctrl-C only at the end of this context, so that what was begun is finished."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    pressed: list[int] = []
    before = signal.signal(signal.SIGINT, lambda number, _frame: pressed.append(number))
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
        if pressed:
            signal.raise_signal(signal.SIGINT)


def _some(work: Work, part: range) -> list[Run]:
    return [one_run(work, run) for run in part]


def _key(work: Work, trials: Trials) -> str:
    """Key of the runs: the same for the same show, spread and seed, however many runs."""
    at = np.linspace(*work.span, 513)
    digest = hashlib.sha256()
    for dancer in work.dancers:
        points, _ = dancer.stage_points(at)
        digest.update(np.round(points, 9).tobytes())
        digest.update(np.round(dancer.radii(points, dancer.is_lit(at)), 9).tobytes())
        deviation = sorted(dancer.deviation.items())
        digest.update(repr((dancer.name, dancer.lit, deviation)).encode())
    digest.update(
        repr((_DRAWING, trials.content, work.span, work.required, astuple(work.spread), work.seed))
        .encode()
    )  # fmt: skip
    return digest.hexdigest()


def _path(folder: Path, part: range) -> Path:
    return folder / f"{part.start:07d}.json"


def _store(folder: Path | None, key: str, part: range, found: list[Run]) -> None:
    """Store a part; a cache that cannot be written is no reason to fail."""
    if folder is None:
        return
    rows = [[list(conflict) for conflict in run] for run in found]
    content = {"key": key, "runs": rows, "checksum": _checksum(rows)}
    with _delaying_interrupts(), suppress(InputError, OSError):
        write_text(_path(folder, part), json.dumps(content))


def _swept(folder: Path | None) -> None:
    """Delete what a killed call left half-written.

    If another call is still writing it, that part is not stored and is danced again another time.
    """
    if folder is None:
        return
    with suppress(OSError):
        for left in folder.glob(f"{PARTIAL}*"):
            left.unlink(missing_ok=True)


def _stored(folder: Path | None, key: str, part: range) -> list[Run] | None:
    """Stored runs of a part; None if the file is damaged or belongs to another show."""
    if folder is None:
        return None
    try:
        content = json.loads(_path(folder, part).read_text(encoding="utf-8"))
        rows = content["runs"]
        if content["key"] != key or content["checksum"] != _checksum(rows) or len(rows) < len(part):
            return None
        return [
            tuple(RunConflict(int(k), float(low), float(high), float(d)) for k, low, high, d in run)
            for run in rows[: len(part)]
        ]
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def _checksum(rows: object) -> str:
    return hashlib.sha256(json.dumps(rows).encode("ascii")).hexdigest()


def _tidied(folder: Path) -> None:
    """Delete all but the runs of the shows danced last."""
    import shutil

    with suppress(OSError):
        folders = sorted((one for one in folder.iterdir() if one.is_dir()), key=_age, reverse=True)
        for old in folders[_KEPT:]:
            shutil.rmtree(old, ignore_errors=True)


def _age(folder: Path) -> float:
    try:
        return folder.stat().st_mtime
    except OSError:
        return 0.0
