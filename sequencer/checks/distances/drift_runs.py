"""Many random runs of one show, danced in parallel and stored in batches, so that an interrupted call resumes.

Each run draws new errors for every performer (`motion.performers.drifting`) and is searched with the same proof
as the plan. Runs are independent and seeded by their number and the performer's name, so the answer does
not depend on how many processes dance them, nor on how often the work is interrupted.
"""

import hashlib
import json
import signal
import threading
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import astuple, dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import NamedTuple

import numpy as np

from sequencer.checks.distances.scenes import Edges, by_scene
from sequencer.errors import InputError
from sequencer.files import PARTIAL, write_text
from sequencer.motion.clearance.approach import Approaches, SearchedCast, approaches_each
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.drifting import MeasuredSpread, Spread, drifted
from sequencer.workers import in_workers

RUNS = 200
_DRAWING = "3"  # raised whenever the same seed would draw other errors
_KEPT = 96  # folders of runs that stay in the cache: three for each show, one for each spread

RunProgress = Callable[[float], None]
Span = tuple[float, float]


class RunConflict(NamedTuple):
    """One pair under the requirement in one scene of one run."""

    pair: int  # place in the order of `pairs`
    scene: int  # of the pair's, see `scenes`
    start: float  # [beats]
    end: float  # [beats]
    distance: float  # [m] smallest
    at: float  # [beats] when


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
    logged: Mapping[str, MeasuredSpread] = field(default_factory=dict)  # by a log of rehearsals

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
    own: Mapping[str, Spread] = field(default_factory=dict)  # of performers who err by their own
    edges: tuple[Edges, ...] = ()  # of the scenes of every pair; none: each pair has one

    def spread_of(self, name: str) -> Spread:
        """How far a performer errs."""
        return self.own.get(name, self.spread)

    def times(self, factor: float) -> "Work":
        """The same with everybody's errors so many times as wide."""
        return replace(
            self,
            spread=self.spread.times(factor),
            own={name: each.times(factor) for name, each in self.own.items()},
        )


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


def some_runs(work: Work, numbers: Sequence[int]) -> list[Run]:
    """Conflicts of some runs, each by pair and scene.

    Parameters
    ----------
    work : Work
    numbers : sequence of int
        Of the runs. What happens in one does not depend on which others are asked for.
    """
    casts = [drawn_dancers(work, number) for number in numbers]
    each = approaches_each(
        [SearchedCast(cast, *work.span) for cast in casts], required=work.required, minima=False
    )
    scenes = [
        (run, pair, scene, spells)
        for run, found in enumerate(each)
        for pair, own in _spells(found).items()
        for scene, spells in sorted(_scenes(work, pair, own).items())
    ]
    out: list[list[RunConflict]] = [[] for _ in casts]
    least = _least(work, casts, each, scenes)
    for (run, pair, scene, spells), (distance, at) in zip(scenes, least, strict=True):
        conflict = RunConflict(pair, scene, spells[0][0], spells[-1][1], distance, at)
        out[run].append(conflict)
    return [tuple(run) for run in out]


_Scene = tuple[int, int, int, list[Span]]  # place of the run, pair, scene, and from when to when


def _spells(found: Approaches) -> dict[int, list[Span]]:
    """From when to when each pair is too close."""
    out: dict[int, list[Span]] = {}
    own = found.spans
    for pair, start, end in zip(
        own.group.tolist(), own.start.tolist(), own.end.tolist(), strict=True
    ):
        out.setdefault(pair, []).append((start, end))
    return out


def _scenes(work: Work, pair: int, spells: Sequence[Span]) -> dict[int, list[Span]]:
    return by_scene(spells, work.edges[pair] if work.edges else work.span)


def _least(
    work: Work,
    casts: Sequence[Sequence[Dancer]],
    each: Sequence[Approaches],
    scenes: Sequence[_Scene],
) -> list[tuple[float, float]]:
    """The smallest distance in each scene, and when: of a pair with several scenes, searched once more."""
    several = Counter((run, pair) for run, pair, _, _ in scenes)
    alone = [scene for scene in scenes if several[scene[:2]] > 1]
    again = approaches_each(
        [
            SearchedCast(
                (casts[run][each[run].first[pair]], casts[run][each[run].second[pair]]),
                spells[0][0],
                spells[-1][1],
            )
            for run, pair, _, spells in alone
        ],
        required=work.required,
    )
    known = {
        scene[:3]: (float(found.distance[0]), float(found.at[0]))
        for scene, found in zip(alone, again, strict=True)
    }
    return [
        known.get((run, pair, scene))
        or (float(each[run].distance[pair]), float(each[run].at[pair]))
        for run, pair, scene, _ in scenes
    ]


def drawn_dancers(work: Work, run: int) -> list[Dancer]:
    """Every performer with the errors of one run."""
    return [drawn_dancer(work, dancer, run) for dancer in work.dancers]


def drawn_dancer(work: Work, dancer: Dancer, run: int, spread: Spread | None = None) -> Dancer:
    """One performer with the errors of one run; with `spread`, the same draws that far."""
    return drifted(
        dancer,
        work.spread_of(dancer.name) if spread is None else spread,
        np.random.default_rng([work.seed, run, *dancer.name.encode()]),
        0.5 * (work.span[0] + work.span[1]),
    )


def _batch_size(n: int) -> int:
    """Runs that are danced and stored together: fewer if one run takes long."""
    return max(1, min(20, 2000 // max(n, 1) ** 2))


def _computed(
    work: Work, parts: Sequence[range], trials: Trials
) -> Iterator[tuple[range, list[Run]]]:
    found = in_workers(partial(some_runs, work), parts, jobs=trials.jobs, backend=trials.backend)
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
        repr(
            (
                _DRAWING, trials.content, work.span, work.required, astuple(work.spread), work.seed,
                sorted((name, astuple(own)) for name, own in work.own.items()), work.edges,
            )
        ).encode()
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
            tuple(RunConflict(int(p), int(k), *map(float, rest)) for p, k, *rest in run)
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
