"""The practice log beside a show: where it lies, and what it says of how far people stray."""

import datetime as dt
import os
import shlex
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.allowed_places import is_allowed
from sequencer.errors import InputError, Place
from sequencer.files import AnyPath

if TYPE_CHECKING:
    from sequencer.motion.performers.drifting import MeasuredSpread
    from sequencer.practice.log_reading import LogGround
    from sequencer.staging.staged import Staged


def practice_log_of(path: AnyPath) -> Path:
    """The log of a show: `mine.practice.csv` beside `mine.yaml`.

    Raises
    ------
    InputError
        If it is a link that leads where the show may not read: it could come with a show from elsewhere.
    """
    log = Path(path).with_suffix(".practice.csv")
    if not is_allowed(log, log.parent):
        real = Path(os.path.realpath(log)).parent
        raise InputError(
            "outside-folder", Place(str(log)), "this practice log is a link to a file outside the show's folder",
            f"put the log itself there, or, if you made that link, add --allow {shlex.quote(str(real))}",
            "a show from elsewhere must not read or change what is on your machine",
        )  # fmt: skip
    return log


def practised_spreads(show: "Staged") -> "dict[str, MeasuredSpread]":
    """How far performers stray by the log beside a show; nobody if there is none.

    Raises
    ------
    InputError
        If the log cannot be read, or a line of it is not understood.
    """
    from sequencer.practice.log_reading import read_practice_log
    from sequencer.practice.logged_spreads import measured_spreads
    from sequencer.practice.practice_plan import runs_by_part

    runs = read_practice_log(practice_log_of(show.file), ground_of(show, None))
    return measured_spreads(runs_by_part(show, runs))


def ground_of(show: "Staged", today: dt.date | None) -> "LogGround":
    """What a log's lines are read against: who there is, where in the song a moment is, and the day after which nothing was run."""
    from sequencer.practice.log_reading import LogGround
    from sequencer.staging.entries.moments import beat_of
    from sequencer.timing.position import parse_moment

    cast = show.show.names if show.read is None else show.read.written.names
    stand_ins = (
        tuple(each.name for each in show.show.tonight.stand_ins) if show.show.tonight else ()
    )
    return LogGround(
        names=tuple(dict.fromkeys((*cast, *stand_ins))),
        beat_of=lambda text: beat_of(parse_moment(text), show.song, show.tempo),
        today=today or dt.date.today(),  # noqa: DTZ011 (the day where the person is)
    )
