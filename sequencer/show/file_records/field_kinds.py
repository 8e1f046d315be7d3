"""The kinds of value in a show file, each parsed from the text that a person writes.

Every scalar arrives as the text in the file, so that `17.10` stays bar 17, beat 10.
"""

import datetime as dt
import re
from typing import Annotated, Any, Final, Literal

from pydantic import BeforeValidator, PlainSerializer, WithJsonSchema

from sequencer import units
from sequencer.timing.position import Clock, Position, SectionEdge, parse_moment
from sequencer.unseen_letters import steering_fault

# What an editor checks while somebody types; the reader, which also weighs ranges and readings, has the last word.
LEAST_CYCLE = 0.125  # [beats]
_MOST_BEATS = 100_000
_DIGITS = r"[-+]?(\d([\d.,'\u00a0\u2009\u202f ]*[\d.,])?|[.,]\d+)([eE][-+]?\d+)?"
_FEET = rf"{_DIGITS}\s*(ft|')\s*{_DIGITS}\s*(in|\")?"


def number_schema(
    description: str, *examples: str, units: dict[str, float] | None = None, pattern: str = ""
) -> WithJsonSchema:
    """The schema of a number or text; text of a quantity is a number with one of its units, or none."""
    said: dict[str, Any] = {"type": ["string", "number"], "description": description}
    if units is not None:
        known = "|".join(re.escape(unit) for unit in units)
        feet = f"|{_FEET}" if "ft" in units else ""
        pattern = rf"^\s*({_DIGITS}\s*({known})?{feet})\s*$"
    if pattern:
        said["pattern"] = pattern
        said["patternErrorMessage"] = f"{description}: {' or '.join(examples)}"
    return WithJsonSchema({**said, "examples": list(examples)})


def _quantity(
    table: dict[str, float], default: str, *, least: float, most: float
) -> BeforeValidator:
    def read(value: Any) -> float:
        amount = units.quantity(value, table, default=default)
        if not least <= amount <= most:
            slip = ""
            if table is units.LENGTHS and least <= amount / 1000 <= most and amount > most:
                slip = "; is it in mm?"
            elif table is units.LENGTHS and least <= amount / 100 <= most and amount > most:
                slip = "; is it in cm?"
            raise ValueError(f"{value!s} is outside {least:g} … {most:g} {default}{slip}")
        return amount

    return BeforeValidator(read)


def _moment(value: Any) -> Position | Clock | SectionEdge:
    if isinstance(value, Position | Clock | SectionEdge):
        return value
    return parse_moment(str(value))


def _words(value: Any) -> Any:
    if isinstance(value, str):
        _refuse_steering(value, "a note or cue")
    return value


def _refuse_steering(text: str, what: str) -> None:
    if (fault := steering_fault(text)) is not None:
        raise ValueError(f"{what} {fault}")


def _name(value: Any) -> str:
    if not isinstance(value, str):
        raise ValueError("a name must be text")
    name = " ".join(value.split())
    if not name:
        raise ValueError("a name must not be empty")
    _refuse_steering(name, "a name")
    if len(name) > 400:
        raise ValueError("a name can have at most 400 characters")
    return name


def _beats_written(value: Any) -> float:
    text = str(value).strip()
    for word in (" beats", " beat"):
        text = text.removesuffix(word)
    top, _, bottom = text.partition("/")
    try:
        beats = float(top) / float(bottom) if bottom else float(top)
    except (ValueError, ZeroDivisionError):
        raise ValueError(f"{value!r} is not a number of beats, such as 8 or 1/2") from None
    return beats


def _beats(value: Any) -> float:
    beats = _beats_written(value)
    if not 0 < beats <= _MOST_BEATS:
        bound = f"more than {_MOST_BEATS}" if beats > 0 else "not more than 0"
        raise ValueError(f"{value!s} beats is {bound}")
    return beats


def _cycle(value: Any) -> float:
    beats = _beats_written(value)
    if not LEAST_CYCLE <= beats <= _MOST_BEATS:
        raise ValueError(f"{value!s} beats is outside 1/8 … {_MOST_BEATS}")
    return beats


def _stop(value: Any) -> float | Literal[True]:
    if value is True or str(value).strip().casefold() == "true":
        return True
    return _beats(value)


def _beat_of_phrase(value: Any) -> float:
    try:
        beat = float(str(value).strip())
    except ValueError:
        beat = 0.0
    # Quarters only, so that bar.beat, which means nothing inside a phrase, is not taken for a beat.
    if not (1 <= beat <= 100_000 and (4 * beat).is_integer()):
        raise ValueError(
            f"{value!s} is not a beat of the phrase: count its beats from 1, such as 5 or 5.5"
        )
    return beat


_SIDES = {"audience": 0.0, "stage left": 90.0, "upstage": 180.0, "stage right": -90.0}


def _bearing(value: Any) -> float:
    text = " ".join(str(value).split()).casefold()
    if text in _SIDES:
        return _SIDES[text]
    try:
        degrees = units.quantity(value, units.ANGLES, default="°")
    except ValueError:
        sides = ", ".join(_SIDES)
        raise ValueError(
            f"{value!r} is not a direction; give {sides}, or degrees measured as for a facing"
        ) from None
    if not -360 <= degrees <= 360:
        raise ValueError(f"{value!s} is outside -360 … 360 °")
    return degrees


def _date(value: Any) -> str:
    text = str(value).strip()
    try:
        return dt.date.fromisoformat(text).isoformat() if len(text) == 10 else _no_date(text)
    except ValueError:
        return _no_date(text)


def _no_date(text: str) -> str:
    raise ValueError(f"{text!r} is not a calendar date, such as 2026-11-25")


Text = PlainSerializer(str, return_type=str)

Name = Annotated[
    str,
    BeforeValidator(_name),
    WithJsonSchema({"type": ["string", "number"], "description": "a name"}),
]
Words = Annotated[str, BeforeValidator(_words)]  # for people to read
Length = Annotated[
    float,
    _quantity(units.LENGTHS, "m", least=1e-3, most=500.0),
    number_schema(
        "a length; in metres unless a unit follows", "1.8 m", "6 ft", units=units.LENGTHS
    ),
]
Date = Annotated[str, BeforeValidator(_date), WithJsonSchema({"type": "string", "format": "date"})]
Coordinate = Annotated[
    float,
    _quantity(units.LENGTHS, "m", least=-500.0, most=500.0),
    number_schema(
        "a coordinate in the stage frame; in metres unless a unit follows",
        "-2.5",
        "6 ft",
        units=units.LENGTHS,
    ),
]
Mass = Annotated[
    float,
    _quantity(units.MASSES, "kg", least=1e-3, most=20.0),
    number_schema("a mass; in kilograms unless a unit follows", "200 g", units=units.MASSES),
]
Volume = Annotated[
    float,
    _quantity(units.VOLUMES, "L", least=0.0, most=1.0),
    number_schema("a volume; in litres unless a unit follows", "2 L", units=units.VOLUMES),
]
Area = Annotated[
    float,
    _quantity(units.AREAS, "m²", least=0.1, most=1e6),
    number_schema(
        "an area; in square metres unless a unit follows", "250 m²", "2700 ft²", units=units.AREAS
    ),
]
Duration = Annotated[
    float,
    _quantity(units.DURATIONS, "s", least=0.0, most=86400.0),
    number_schema(
        "a duration; in seconds unless a unit follows", "240 s", "4 min", units=units.DURATIONS
    ),
]
Shift = Annotated[
    float,
    _quantity(units.DURATIONS, "s", least=-60.0, most=60.0),
    number_schema(
        "a shift in time; in seconds unless a unit follows", "-12 ms", units=units.DURATIONS
    ),
]
Speed = Annotated[
    float,
    _quantity(units.SPEEDS, "m/s", least=0.0, most=60.0),
    number_schema(
        "a speed; in metres per second unless a unit follows", "3 m/s", "8 mph", units=units.SPEEDS
    ),
]
Degrees = Annotated[
    float,
    _quantity(units.ANGLES, "°", least=-720.0, most=720.0),
    number_schema("an angle in degrees", "90", units=units.ANGLES),
]
Bearing = Annotated[
    float,
    BeforeValidator(_bearing),
    number_schema(
        "where something comes from: a side of the stage, or degrees measured as for a facing",
        "upstage",
        "90",
    ),
]
_BEATS = number_schema(
    "a number of beats greater than 0",
    "8",
    "1/2",
    pattern=r"^\s*(\d+(\.\d*)?|\.\d+)([eE][-+]?\d+)?(\s*/\s*(\d+(\.\d*)?|\.\d+))?( beats?)?\s*$",
)
Beats = Annotated[float, BeforeValidator(_beats), _BEATS]
CycleLength = Annotated[float, BeforeValidator(_cycle), _BEATS]
StopLength = Annotated[
    float | Literal[True],
    BeforeValidator(_stop),
    WithJsonSchema(
        {
            "type": ["string", "number", "boolean"],
            "description": "a number of beats, or true where `beats` or `until` says how long",
            "examples": ["4"],
        }
    ),
]
PhraseBeat = Annotated[
    Position | Clock | SectionEdge | float,
    BeforeValidator(_beat_of_phrase),
    number_schema("a beat of the phrase, counted from 1", "5"),
]
COUNTED_MOMENT: Final = r"-?\d+\.\d+(\+(\d+/\d+|\d*\.\d+))?|\d+:\d+(\.\d*)?"
# what is only digits and points is bar.beat or m:ss.s
MOMENT_PATTERN: Final = rf"^\s*({COUNTED_MOMENT}|.*[^\d.:+\-/\s].*)\s*$"
When = Annotated[
    Position | Clock | SectionEdge,
    BeforeValidator(_moment),
    Text,
    WithJsonSchema(
        {
            "type": ["string", "number"],
            "description": "a moment: bar.beat, m:ss.s of the track, or a section's name",
            "pattern": MOMENT_PATTERN,
            "patternErrorMessage": "a moment: bar.beat such as 17.1, m:ss.s of the track such as 1:02.5, or a section's name",
            "examples": ["17.1", "17.3+1/2", "1:02.5", "verse 2", "end of verse 2"],
        }
    ),
]
