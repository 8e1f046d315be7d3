"""How `check --danced` runs: where results are cached, and where the work is done – on this machine or a cluster."""

import hashlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.digests import sha256_of_file
from sequencer.errors import InputError, Place
from sequencer.staging.staged import Staged
from sequencer.system_folders import cache_folder

if TYPE_CHECKING:
    from sequencer.checks.distances.drift_runs import Trials

PATIENCE = "10s"  # how long a cluster may take to answer
_DANCED = {
    "cast",
    "formations",
    "staging",
    "patterns",
    "phrases",
    "timeline",
    "fire",
    "limits",
    "drift",
}  # sections of the show file that the result depends on, besides the song


@dataclass(frozen=True, slots=True, kw_only=True)
class Dancing:
    """Options of `check --danced`."""

    runs: int
    seed: int = 0
    jobs: int = -1  # worker processes; -1 for one per core
    cluster: str | None = None  # address of a Dask scheduler


@contextmanager
def trials(show: Staged, options: Dancing) -> "Iterator[Trials]":
    """Trials of a show, with the cluster connected while they are danced.

    Raises
    ------
    InputError
        If a cluster is given and Dask is not installed, or no scheduler answers there; if the log of what was practised
        cannot be read, or a line of it is not understood.
    """
    from sequencer.checks.distances.drift_runs import Trials
    from sequencer.tasks.practice_logs import practised_spreads

    with connected(options.cluster):
        yield Trials(
            runs=options.runs,
            seed=options.seed,
            jobs=options.jobs,
            backend=None if options.cluster is None else "dask",
            folder=cache_folder() / "danced",
            content=_content(show),
            logged=practised_spreads(show),
        )


def _content(show: Staged) -> str:
    inputs = show.show.model_dump_json(include=_DANCED) + show.show.track.model_dump_json()
    content = hashlib.sha256((show.song.sha256 + inputs).encode("utf-8"))
    for file in show.show.pattern_files:
        content.update(sha256_of_file(Path(show.file).parent / file).encode("ascii"))
    return content.hexdigest()


@contextmanager
def connected(cluster: str | None) -> Iterator[None]:
    """A Dask cluster for joblib to use inside the `with` block; nothing if no address is given.

    Raises
    ------
    InputError
        If Dask is not installed, or no scheduler answers there.
    """
    if cluster is None:
        yield
        return
    place = Place("--cluster")
    try:
        from distributed import Client
    except ImportError as error:
        raise InputError(
            "no-dask", place, "Dask is not installed", 'pip install "sequencer[dask]"'
        ) from error
    try:
        client = Client(cluster, timeout=PATIENCE)
    except (OSError, ValueError) as error:  # a time-out is an OSError too
        raise InputError(
            "no-cluster",
            place,
            f"no Dask scheduler answers at {cluster!r}",
            "give the scheduler's address, such as tcp://host:8786, or leave --cluster out",
        ) from error
    try:
        yield
    finally:
        with suppress(OSError, TimeoutError):
            client.close()
