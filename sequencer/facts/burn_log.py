"""A log of timed burns, and a lower limit for the next burn.

The log is a CSV table with a header. Required columns: `fuel` and `burn` (seconds, or m:ss). Optional
columns: `performer`, `wick` (any name you choose), `ended` (`burnt out`, or `put out`: the wick could have
burnt longer, and the row counts only as a lower limit). Other columns are ignored. A practice log (with columns `tried`
and `clean`) is such a table too; its lines without a burn are passed over.

The estimate is robust: median and median absolute deviation, so that one typing error does not shift it. A
short burn is never discarded: the plan uses the shortest burn or the lower end of the prediction interval,
whichever is less.

Sources: prediction interval of a normal sample, NIST/SEMATECH e-Handbook of Statistical Methods (from
memory); small-sample factors of the median absolute deviation, Croux and Rousseeuw 1992 (from
memory); the minimum spread is a design choice.
"""

import csv
import io
import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from pathlib import Path
from statistics import median

from sequencer.errors import InputError, InputErrors, Place
from sequencer.facts.burn_times import BurnTime
from sequencer.facts.fuels import fuel as fuel_named
from sequencer.facts.log_tables import check_width, separator_of, table_text

_CONFIDENCE = 0.95  # probability that the next burn is not shorter than the lower end
FEWEST = 3  # minimum number of burns for an interval
LEAST_SPREAD = 0.05  # [1] fraction of the median: stopwatches, people and weather vary by this much; a design choice
_SMALL_SAMPLE = {2: 1.196, 3: 1.495, 4: 1.363, 5: 1.206, 6: 1.2, 7: 1.14, 8: 1.129, 9: 1.107}
_MAD_TO_SIGMA = 1.4826
_CLOCK = re.compile(r"^(\d+):([0-5]\d(?:\.\d+)?)$")
_QUOTED = "write times without a comma (245 or 4:05), and texts that hold one in double quotes"
_PRACTISED = {"tried", "clean"}  # columns by which a practice log is known
_ENDS = {"burnt out": True, "put out": False}


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedBurn:
    """One timed burn."""

    fuel: str
    seconds: float  # [s]
    performer: str = ""
    wick: str = ""
    burnt_out: bool = True  # false: put out early, so it could have lasted longer
    line: int = 0  # line in the file


@dataclass(frozen=True, slots=True, kw_only=True)
class BurnEstimate:
    """Estimate of the next burn from a log."""

    count: int  # number of burns that burnt out
    middle: float  # [s] median
    shortest: float  # [s]
    spread: float  # [s] robust standard deviation, never below the minimum spread
    lower: (
        float | None
    )  # [s] lower end of the prediction interval; None with fewer than `FEWEST` burns
    upper: float | None  # [s]
    outliers: tuple[int, ...]  # lines of burns more than 3.5 spreads from the median

    @property
    def counted_on(self) -> float:
        """Burning time that a plan may use [s]."""
        return self.shortest if self.lower is None else min(self.lower, self.shortest)

    def burn_time(self) -> BurnTime:
        """The estimate as a burning time with its origin."""
        if self.lower is None:
            origin = f"shortest of {self.count} timed burns; no interval with fewer than {FEWEST}"
        else:
            origin = (
                f"{self.count} timed burns, median {self.middle:.0f} s; the next lasts at least "
                f"{self.lower:.0f} s with {_CONFIDENCE:.0%} confidence, the shortest lasted "
                f"{self.shortest:.0f} s"
            )
        return BurnTime(seconds=self.counted_on, basis="measured", source=origin, count=self.count)


def read_burn_log(path: Path) -> tuple[TimedBurn, ...]:
    """Timed burns from a file.

    Raises
    ------
    InputError
        For one fault, InputErrors for several: file not found, no header, an unknown fuel, an invalid time.
    """
    try:
        text = table_text(path, "burn log", "give the path of a burn log")
    except FileNotFoundError as error:
        raise InputError(
            "no-file", Place(str(path)), "burn log not found", "check the path"
        ) from error
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    return parse_burn_log(text, str(path))


def parse_burn_log(text: str, file: str) -> tuple[TimedBurn, ...]:
    """Timed burns from a string; `file` is its name in messages.

    Raises
    ------
    InputError
        As `read_burn_log`.
    """
    separator = separator_of(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    try:
        header = [cell.strip().casefold() for cell in next(reader, [])]
        missing = [name for name in ("fuel", "burn") if name not in header]
        if missing:
            raise InputError(
                "no-burn-log", Place(file, 1, 1), f"the header has no column {' and '.join(missing)}",
                "start the file with a line such as: date,performer,fuel,wick,burn,ended",
            )  # fmt: skip
        burns: list[TimedBurn] = []
        faults: list[InputError] = []
        for cells in reader:
            if not any(cell.strip() for cell in cells) or _timed_nothing(header, cells):
                continue
            try:
                check_width(header, cells, Place(file, reader.line_num), _QUOTED)
                burns.append(_burn(header, cells, file, reader.line_num, separator))
            except InputError as error:
                faults.append(error)
    except csv.Error as error:
        raise InputError(
            "no-burn-log", Place(file, reader.line_num), f"this is not CSV: {error}",
            "save it as CSV, UTF-8",
        ) from error  # fmt: skip
    if faults:
        raise faults[0] if len(faults) == 1 else InputErrors(faults[:12])
    return tuple(burns)


def estimate(burns: Sequence[TimedBurn]) -> BurnEstimate | None:
    """Estimate of the next burn from burns of one kind; None if none of them burnt out.

    Parameters
    ----------
    burns : sequence of TimedBurn
        Burns of one fuel in one wick.
    """
    whole = [burn for burn in burns if burn.burnt_out]
    if not whole:
        return None
    times = sorted(burn.seconds for burn in whole)
    n = len(times)
    middle = median(times)
    deviation = median(abs(time - middle) for time in times)
    factor = _SMALL_SAMPLE.get(n, n / (n - 0.8))  # of one burn: it does not deviate
    spread = max(_MAD_TO_SIGMA * factor * deviation, LEAST_SPREAD * middle)
    lower = upper = None
    if n >= FEWEST:
        from scipy.stats import t

        margin = float(t.ppf(_CONFIDENCE, n - 1)) * spread * sqrt(1 + 1 / n)
        lower, upper = max(middle - margin, 1.0), middle + margin
    return BurnEstimate(
        count=n,
        middle=middle,
        shortest=times[0],
        spread=spread,
        lower=lower,
        upper=upper,
        outliers=tuple(burn.line for burn in whole if abs(burn.seconds - middle) > 3.5 * spread),
    )


def matching(
    burns: Sequence[TimedBurn], *, fuel: str, performer: str = "", wick: str = ""
) -> tuple[TimedBurn, ...]:
    """Burns of a fuel by a performer with a wick; rows without a name count for everybody."""
    wanted = fuel_named(fuel).name
    return tuple(
        burn
        for burn in burns
        if fuel_named(burn.fuel).name == wanted
        and (
            not performer or not burn.performer or burn.performer.casefold() == performer.casefold()
        )
        and (not wick or not burn.wick or burn.wick.casefold() == wick.casefold())
    )


def _timed_nothing(header: list[str], cells: list[str]) -> bool:
    """Whether it is a line of a practice log on which no burn was timed; in a log of burns alone that is a fault."""
    burn = header.index("burn")
    return set(header) >= _PRACTISED and not "".join(cells[burn : burn + 1]).strip()


def _burn(header: list[str], cells: list[str], file: str, line: int, separator: str) -> TimedBurn:
    row = dict(zip(header, (cell.strip() for cell in cells), strict=False))

    def place(name: str) -> Place:
        before = cells[: header.index(name)] if name in header else []
        return Place(file, line, 1 + sum(len(cell) + len(separator) for cell in before))

    try:
        liquid = fuel_named(row.get("fuel", ""))
    except ValueError as error:
        raise InputError(
            "unknown-fuel", place("fuel"), str(error), "copy the name from its data sheet"
        ) from None
    given = row.get("burn", "")
    seconds = burning_seconds(given)
    if seconds is None:
        raise InputError(
            "bad-value", place("burn"), f"{given!r} is not a burning time",
            "write seconds (245) or m:ss (4:05), above 0 and at most an hour",
        )  # fmt: skip
    ended = (row.get("ended") or "burnt out").casefold()
    if ended not in _ENDS:
        raise InputError(
            "bad-value", place("ended"), f"{row['ended']!r} is not a valid end of a burn",
            "write burnt out, or put out",
        )  # fmt: skip
    return TimedBurn(
        fuel=liquid.name,
        seconds=seconds,
        performer=row.get("performer", ""),
        wick=row.get("wick", ""),
        burnt_out=_ENDS[ended],
        line=line,
    )


def burning_seconds(text: str) -> float | None:
    """A burning time [s] written as seconds or m:ss; None if it is none."""
    match = _CLOCK.match(text)
    try:
        value = 60 * float(match[1]) + float(match[2]) if match else float(text.removesuffix("s"))
    except ValueError:
        return None
    return value if 0 < value <= 3600 else None
