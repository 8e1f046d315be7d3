"""Independent pieces of work done in several processes of this machine, or of a cluster that joblib knows."""

import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")


def in_workers(
    work: Callable[[Item], Result],
    items: Sequence[Item],
    *,
    jobs: int,
    backend: str | None = None,
) -> Iterator[Result]:
    """Results of independent items, in their order, each as soon as it and those before it are there.

    A Ctrl-C ends the processes without tracebacks of theirs.

    Parameters
    ----------
    work : callable
        A function of a module, or a partial of one, that another process can be given.
    items : sequence
    jobs : int
        Number of processes; -1 for one per core. With 1 and no backend the work is done in this process.
    backend : str, optional
        Of joblib, such as "dask" with an open client; then all its workers are used.
    """
    if jobs == 1 and backend is None:
        yield from map(work, items)
        return
    import joblib

    given = {} if backend is None else {"backend": backend}
    with joblib.parallel_config(n_jobs=jobs if backend is None else -1, **given):
        with _ignoring_interrupts():
            found = joblib.Parallel(return_as="generator")(
                joblib.delayed(work)(item) for item in items
            )
        yield from found


@contextmanager
def _ignoring_interrupts() -> Iterator[None]:
    """Make processes started in this context ignore Ctrl-C; this process ends them, without their tracebacks.

    The signal is ignored rather than blocked, since starting a worker delivers blocked signals. A Ctrl-C
    pressed meanwhile must be pressed again.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
