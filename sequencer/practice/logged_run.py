"""A line of a practice log: what somebody ran, how often it came off, how long the props burnt, where they ended up."""

import datetime as dt
from dataclasses import dataclass

LOG_COLUMNS = (
    "date", "performer", "what", "from", "until", "speed", "lit", "tried", "clean",
    "burn", "ended", "fuel", "drift", "late", "note",
)  # fmt: skip
NEEDED = ("date", "performer")  # columns without which nothing can be told from a log
WHOLE_SHOW = "the whole show"


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedRun:
    """One line of a practice log."""

    date: dt.date
    who: str
    what: str = ""  # the exercise, as the plan calls it
    start: float | None = None  # [beats] where the loop starts
    end: float | None = None  # [beats]
    speed: float | None = None  # [1] of the song's tempo
    lit: bool = False
    tried: int = 0
    clean: int = 0
    burn: float | None = None  # [s] timed
    burnt_out: bool = True  # false: put out, so it could have burnt longer
    fuel: str = ""
    drift: tuple[float, float] | None = None  # [m, stage frame] from the place in the plan
    late: float | None = None  # [beats] behind the count; negative: ahead of it
    note: str = ""
    line: int = 0  # in the file
