"""Progress by the week, from a practice log: how often it was practised, how much came off, how far places drift."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from statistics import fmean

from sequencer.practice.logged_run import LoggedRun

AT_TEMPO = 0.98  # [1] a speed this near to the song's is the song's


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeWeek:
    """One week of practice, from its Monday."""

    monday: dt.date
    days: int
    tried: int
    clean: int
    at_tempo: int  # tries of these at the song's tempo or faster
    lit: int  # tries of these with fire
    drift: float | None  # [m] mean distance from the place in the plan; None: not measured

    @property
    def share(self) -> float | None:
        """Share of the tries that were clean [1]; None if nothing was counted."""
        return self.clean / self.tried if self.tried else None


def weeks_of(runs: Sequence[LoggedRun], today: dt.date | None = None) -> tuple[PracticeWeek, ...]:
    """Every week from the first that the log tells of to today's, or to the log's last; those without practice too."""
    if not runs:
        return ()
    days = [run.date for run in runs]
    first, last = _monday(min(days)), _monday(max([*days, *([today] if today else [])]))
    count = (last - first).days // 7 + 1
    mondays = [first + dt.timedelta(weeks=k) for k in range(count)]
    return tuple(
        _week(monday, [run for run in runs if _monday(run.date) == monday]) for monday in mondays
    )


def _week(monday: dt.date, runs: Sequence[LoggedRun]) -> PracticeWeek:
    drifts = [hypot(*run.drift) for run in runs if run.drift is not None]
    return PracticeWeek(
        monday=monday,
        days=len({run.date for run in runs}),
        tried=sum(run.tried for run in runs),
        clean=sum(run.clean for run in runs),
        at_tempo=sum(run.tried for run in runs if run.speed is not None and run.speed >= AT_TEMPO),
        lit=sum(run.tried for run in runs if run.lit),
        drift=fmean(drifts) if drifts else None,
    )


def _monday(day: dt.date) -> dt.date:
    return day - dt.timedelta(days=day.weekday())
