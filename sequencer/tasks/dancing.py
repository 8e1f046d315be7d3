"""How `check --danced` is worked: where runs are kept, and who does them – this machine or a cluster."""

import hashlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.errors import InputError, Place
from sequencer.staging.staged import Staged

if TYPE_CHECKING:
    from sequencer.checks.distances.drift_runs import Trials

PATIENCE = "10s"  # for a cluster to answer
_DANCED = {
    "cast",
    "formations",
    "staging",
    "patterns",
    "phrases",
    "timeline",
    "fire",
    "drift",
}  # headings on which what is danced depends, beside the song


@dataclass(frozen=True, slots=True, kw_only=True)
class Dancing:
    """What a person asks for."""

    runs: int
    seed: int = 0
    jobs: int = -1  # processes; -1 for one a core
    cluster: str | None = None  # address of a Dask scheduler


@contextmanager
def trials(show: Staged, asked: Dancing) -> "Iterator[Trials]":
    """Trials of a show, with the cluster connected while they are danced.

    Raises
    ------
    InputError
        If a cluster is asked for and Dask is not installed, or nothing answers there.
    """
    from platformdirs import user_cache_path

    from sequencer.checks.distances.drift_runs import Trials

    with connected(asked.cluster):
        yield Trials(
            runs=asked.runs,
            seed=asked.seed,
            jobs=asked.jobs,
            backend=None if asked.cluster is None else "dask",
            folder=user_cache_path("sequencer") / "danced",
            content=_content(show),
        )


def _content(show: Staged) -> str:
    told = show.show.model_dump_json(include=_DANCED) + show.show.track.model_dump_json()
    content = hashlib.sha256((show.song.sha256 + told).encode("utf-8"))
    for file in show.show.pattern_files:
        content.update((Path(show.file).parent / file).read_bytes())
    return content.hexdigest()


@contextmanager
def connected(cluster: str | None) -> Iterator[None]:
    """A Dask cluster that joblib may use meanwhile; nothing where no address is given.

    Raises
    ------
    InputError
        If Dask is not installed, or nothing answers there.
    """
    if cluster is None:
        yield
        return
    place = Place("--cluster")
    try:
        from distributed import Client
    except ImportError as error:
        raise InputError(
            "no-dask", place, "Dask is not installed here", 'pip install "sequencer[dask]"'
        ) from error
    try:
        client = Client(cluster, timeout=PATIENCE)
    except (OSError, ValueError) as error:  # a time-out is an OSError too
        raise InputError(
            "no-cluster",
            place,
            f"no Dask scheduler answers at {cluster!r}",
            "give its address, such as tcp://host:8786, or leave --cluster out",
        ) from error
    try:
        yield
    finally:
        with suppress(OSError, TimeoutError):
            client.close()
