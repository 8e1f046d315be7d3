"""Reads a practice log: a CSV table beside the show that a spreadsheet opens and a person may write by hand.

Columns are found by their names in the first line, in any order; columns of one's own are left alone. Every fault is
told with its line and column, and nothing is guessed: a line that cannot be understood counts for nothing until it is
mended.
"""

import csv
import datetime as dt
import io
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from sequencer.errors import InputError, InputErrors, Place
from sequencer.facts.burn_log import burning_seconds
from sequencer.facts.fuels import fuel as fuel_named
from sequencer.facts.log_tables import check_width, separator_of, table_text
from sequencer.practice.log_quotes import refuse_open_quote
from sequencer.practice.logged_run import NEEDED, LoggedRun
from sequencer.practice.place_drift import drift_of
from sequencer.show.reading import nearest

_QUOTED = "put texts that hold a comma in double quotes"
_MOST_SHOWN = 12  # faults told at once
_FIRST_YEAR = 2000
_SPEEDS = (10.0, 200.0)  # [%]
_MOST_TRIED = 1000
_MOST_LATE = 32.0  # [beats]
_LIT = {"yes": True, "lit": True, "no": False, "unlit": False, "": False}
_ENDED = {"": True, "burnt out": True, "put out": False}
_ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_DOTTED = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})")  # where there are dots, the day is first
_SLASHED = re.compile(r"(\d{1,4})/(\d{1,2})/(\d{1,4})")


@dataclass(frozen=True, slots=True, kw_only=True)
class LogGround:
    """What a log is read against: the show that it is kept for."""

    names: tuple[str, ...]  # everybody who may stand in it
    beat_of: Callable[
        [str], float
    ]  # of a moment as the show file writes it; ValueError if the song has none
    today: dt.date


def read_practice_log(path: Path, ground: LogGround) -> tuple[LoggedRun, ...]:
    """Lines of a practice log; none if there is no such file yet.

    Raises
    ------
    InputError
        For one fault, InputErrors for several: it cannot be read, has no header, or a line is not understood.
    """
    text = log_text(path)
    return () if text is None else parse_practice_log(text, str(path), ground)


def log_text(path: Path) -> str | None:
    """What a practice log says, to the letter; None if there is no such file.

    Raises
    ------
    InputError
        If it cannot be read as text.
    """
    try:
        return table_text(path, "practice log", "keep the old years in another file")
    except FileNotFoundError:
        return None


def parse_practice_log(text: str, file: str, ground: LogGround) -> tuple[LoggedRun, ...]:
    """Lines of a practice log from its text; `file` is its name in messages.

    Raises
    ------
    InputError
        As `read_practice_log`.
    """
    separator = separator_of(text)
    refuse_open_quote(text, file, separator)
    reader = csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=separator)
    runs: list[LoggedRun] = []
    faults: list[InputError] = []
    try:
        header = header_of(next(reader, []), file)
        for cells in reader:
            if not any(cell.strip() for cell in cells):
                continue
            line = reader.line_num
            try:
                check_width(header, cells, Place(file, line), _QUOTED)
                runs.append(
                    run_of(_named(header, cells), ground, _places(header, cells, file, line), line)
                )
            except InputError as error:
                faults += error.errors if isinstance(error, InputErrors) else [error]
    except csv.Error as error:
        raise InputError(
            "no-practice-log", Place(file, max(reader.line_num, 1)), f"this is not CSV: {error}",
            "save it as CSV, UTF-8",
        ) from error  # fmt: skip
    if faults:
        raise faults[0] if len(faults) == 1 else InputErrors(faults[:_MOST_SHOWN])
    return tuple(runs)


def header_of(cells: Sequence[str], file: str) -> list[str]:
    """Names of the columns.

    Raises
    ------
    InputError
        If a needed one is missing, or one is there twice.
    """
    header = [cell.strip().casefold() for cell in cells]
    missing = [name for name in NEEDED if name not in header]
    if missing:
        raise InputError(
            "no-practice-log", Place(file, 1, 1), f"the first line has no column {' and '.join(missing)}",
            "start the file with a line such as: date,performer,what,from,until,speed,lit,tried,clean",
        )  # fmt: skip
    twice = [name for name in dict.fromkeys(header) if name and header.count(name) > 1]
    if twice:
        raise InputError(
            "no-practice-log", Place(file, 1, 1), f"the first line has the column {twice[0]!r} twice",
            "name one of them otherwise",
        )  # fmt: skip
    return header


def run_of(
    row: Mapping[str, str], ground: LogGround, place: Callable[[str], Place], line: int = 0
) -> LoggedRun:
    """A line of the log from its cells.

    Parameters
    ----------
    row : mapping of str to str
        Cells by the names of their columns; missing ones are empty.
    ground : LogGround
    place : callable
        Where a column's cell stands, for messages.
    line : int

    Raises
    ------
    InputError
        For one fault, InputErrors for several.
    """
    cells = _Cells(row, ground, place)
    run = LoggedRun(
        date=cells.day(),
        who=cells.name(),
        what=row.get("what", ""),
        start=cells.moment("from"),
        end=cells.moment("until"),
        speed=cells.speed(),
        lit=cells.word("lit", _LIT, "yes or no") or bool(row.get("burn", "")),
        tried=cells.count("tried"),
        clean=cells.count("clean"),
        burn=cells.burn(),
        burnt_out=cells.word("ended", _ENDED, "burnt out, or put out"),
        fuel=cells.fuel(),
        drift=cells.drift(),
        late=cells.late(),
        note=row.get("note", ""),
        line=line,
    )
    if not cells.faults:
        cells.whole(run)
    if cells.faults:
        raise cells.faults[0] if len(cells.faults) == 1 else InputErrors(cells.faults)
    return run


class _Cells:
    """The cells of one line, each read by its kind; faults are gathered, so that one line is mended at once."""

    def __init__(
        self, row: Mapping[str, str], ground: LogGround, place: Callable[[str], Place]
    ) -> None:
        self._row, self._ground, self._place = row, ground, place
        self.faults: list[InputError] = []

    def _told(self, name: str, what: str, mend: str) -> None:
        self.faults.append(InputError("bad-value", self._place(name), what, mend))

    def day(self) -> dt.date:
        text = self._row.get("date", "")
        if not text:
            self._told("date", "the date is missing", "write it as 2026-11-30")
            return self._ground.today
        try:
            day = _date(text)
        except ValueError as error:
            self._told("date", *error.args)
            return self._ground.today
        if day > self._ground.today:
            self._told("date", f"{text} is still to come", "write the day on which it was run")
        elif day.year < _FIRST_YEAR:
            self._told("date", f"{text} is too long ago", "write the day on which it was run")
        return day

    def name(self) -> str:
        text, names = self._row.get("performer", ""), self._ground.names
        if not text and len(names) == 1:
            return names[0]
        found = next((name for name in names if name.casefold() == text.casefold()), None)
        if found is None and not text:
            self._told(
                "performer", "the performer is missing", f"write one of: {', '.join(names[:12])}"
            )
        elif found is None:
            self._told(
                "performer", f"{text!r} is not in the cast of this show",
                f"{nearest(text, names)}; a line of another show belongs into that show's log",
            )  # fmt: skip
        return found or text

    def moment(self, name: str) -> float | None:
        text = self._row.get(name, "")
        if not text:
            return None
        try:
            return self._ground.beat_of(text)
        except ValueError as error:
            self._told(
                name,
                str(error),
                "write bar.beat (17.3), in a column that the spreadsheet keeps as text",
            )
            return None

    def speed(self) -> float | None:
        text = self._row.get("speed", "")
        if not text:
            return None
        low, high = _SPEEDS
        value = _number(text.removesuffix("%").strip())
        if value is None or not low <= value <= high:
            self._told(
                "speed", f"{text!r} is not a speed in percent of the song's tempo", f"write {low:g} to {high:g}, such as 60"
            )  # fmt: skip
            return None
        return value / 100

    def word(self, name: str, meanings: Mapping[str, bool], asked: str) -> bool:
        text = self._row.get(name, "")
        if text.casefold() not in meanings:
            self._told(name, f"{text!r} is not understood here", f"write {asked}")
        return meanings.get(text.casefold(), False)

    def count(self, name: str) -> int:
        text = self._row.get(name, "")
        if not text:
            return 0
        if not re.fullmatch(r"\d{1,6}", text) or int(text) > _MOST_TRIED:
            self._told(
                name,
                f"{text!r} is not a count of tries",
                f"write a whole number up to {_MOST_TRIED}",
            )
            return 0
        return int(text)

    def burn(self) -> float | None:
        text = self._row.get("burn", "")
        seconds = burning_seconds(text) if text else None
        if text and seconds is None:
            self._told(
                "burn", f"{text!r} is not a burning time", "write seconds (245) or m:ss (4:05), above 0 and at most an hour"
            )  # fmt: skip
        return seconds

    def fuel(self) -> str:
        text = self._row.get("fuel", "")
        if not text:
            return ""
        try:
            return fuel_named(text).name
        except ValueError as error:
            self._told("fuel", str(error), "copy the name from its data sheet")
            return ""

    def drift(self) -> tuple[float, float] | None:
        text = self._row.get("drift", "")
        try:
            return drift_of(text) if text else None
        except ValueError as error:
            self._told("drift", str(error), "write such as: 40 cm downstage")
            return None

    def late(self) -> float | None:
        text = self._row.get("late", "")
        if not text:
            return None
        value = _number(text)
        if value is None or abs(value) > _MOST_LATE:
            self._told(
                "late", f"{text!r} is not a number of beats", f"write beats, such as 0.5; early is negative; at most {_MOST_LATE:g}"
            )  # fmt: skip
            return None
        return value

    def whole(self, run: LoggedRun) -> None:
        """Tell what a line lacks, where its cells are right by themselves."""
        row = self._row
        tried, clean = row.get("tried", ""), row.get("clean", "")
        if bool(tried) != bool(clean):
            empty, full = ("clean", "tried") if tried else ("tried", "clean")
            self._told(
                empty,
                f"{full!r} is {row[full]}, and {empty!r} is empty",
                "write both, such as 8 tried and 6 clean",
            )
        elif run.clean > run.tried:
            self._told(
                "clean", f"{clean} were clean of {tried} tried", "clean is at most what was tried"
            )
        if tried and not row.get("speed", ""):
            self._told(
                "speed",
                "the speed is missing",
                "write percent of the song's tempo, such as 60 or 100",
            )
        if row.get("burn", "") and row.get("lit", "").casefold() in {"no", "unlit"}:
            self._told(
                "lit", "a burn was timed, and 'lit' says no", "write yes, or leave out the burn"
            )
        if row.get("burn", "") and not row.get("fuel", ""):
            self._told(
                "fuel", "the fuel of this burn is missing", "write its name, such as white-gas"
            )
        if run.start is not None and run.end is not None and run.end <= run.start:
            self._told(
                "until", f"{row['until']} is not after {row['from']}", "write where the loop ended"
            )
        if not (
            tried or clean or any(row.get(name, "") for name in ("burn", "drift", "late", "note"))
        ):
            self._told(
                "tried",
                "nothing was run on this line",
                "write tried and clean, a burn, a drift or a note",
            )


def _date(text: str) -> dt.date:
    """A day; of what can be read in two ways, ValueError with what is wrong and how to mend it."""
    if match := _ISO.fullmatch(text):
        year, month, day = map(int, match.groups())
    elif match := _DOTTED.fullmatch(text):
        day, month, year = map(int, match.groups())
    elif match := _SLASHED.fullmatch(text):
        raise ValueError(
            f"{text!r} does not say which is the day and which the month", "write it as 2026-11-30"
        )
    else:
        raise ValueError(f"{text!r} is not a date", "write it as 2026-11-30")
    try:
        return dt.date(year, month, day)
    except ValueError:
        raise ValueError(
            f"there is no {text}", "write a day of the calendar, as 2026-11-30"
        ) from None


def _number(text: str) -> float | None:
    """A plain number with a point or a comma; None if it is none."""
    return float(text.replace(",", ".")) if re.fullmatch(r"[-+]?\d+(?:[.,]\d+)?", text) else None


def _named(header: Sequence[str], cells: Sequence[str]) -> dict[str, str]:
    return dict(zip(header, (cell.strip() for cell in cells), strict=False))


def _places(
    header: Sequence[str], cells: Sequence[str], file: str, line: int
) -> Callable[[str], Place]:
    def place(name: str) -> Place:
        before = cells[: header.index(name)] if name in header else []
        return Place(file, line, 1 + sum(len(cell) + 1 for cell in before))

    return place
