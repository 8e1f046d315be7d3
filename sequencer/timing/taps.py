"""A count supplied by the performer: tapped times, a table of beats, or a Standard MIDI File.

A text or CSV file has one beat per line: seconds first, or under a heading `time`, `seconds`, `beat` or
`onset`; a column headed `place`, `bar`, `downbeat`, `number` or `label`, or a second column, says 1 where a bar
begins. A MIDI file gives the beats of its tempo and time signature events (Standard MIDI Files 1.0, MIDI
Manufacturers Association 1996); beats are those of the signature, dotted ones in 6/8, 9/8 and 12/8.

Columns may be parted by commas, semicolons, tabs or spaces. A comma inside a time is a decimal mark, never
one of thousands: beats would be minutes apart. Where it may also part two columns, the line is refused.
"""

import csv
import io
import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError, Place
from sequencer.given_files import TooLargeError, given_bytes
from sequencer.timing.corrections import Corrections

_TIMES = ("time", "seconds", "second", "beat", "beats", "onset", "s")
_PLACES = ("place", "downbeat", "number", "label", "position", "bar")
_LARGEST = 4_000_000  # bytes of such a file
_LATEST = 1e6  # [s] no track lasts for eleven days
_MOST_DIGITS = 20  # of a number in a message
_CLOSEST = 0.12  # [s] two taps closer than this are one bouncing finger
_MIDI = {".mid", ".midi", ".smf"}
_MOST_BEATS = 100_000  # of a song: over five hours at 300 beats a minute
_FRAMES = (
    0x8000  # a division with this bit counts in frames of time code, not in parts of a quarter note
)
_MOST_IN_SIGNATURE = 64  # beats of a bar, and the finest note that is counted in


def given_count(path: Path) -> Corrections:
    """Beats, and bars if the file has them, as corrections that replace the detected beats.

    Parameters
    ----------
    path : Path
        `.mid`, `.midi` or `.smf`; anything else is read as text or CSV.

    Returns
    -------
    corrections : Corrections
        With `beats`, and with `downbeats` or `metre` if the file gives them.

    Raises
    ------
    InputError
        If the file does not exist, is none of these, or its times do not increase; the message gives the
        line.
    """
    place = Place(str(path))
    try:
        content = given_bytes(path, _LARGEST)
    except TooLargeError as error:
        raise InputError(
            "taps-too-large",
            place,
            "this file is too large for a list of beats",
            "give the list of beats",
        ) from error
    except (OSError, ValueError) as error:
        raise InputError(
            "taps-unreadable",
            place,
            "the file cannot be read",
            "check its name and folder",
            getattr(error, "strerror", None) or str(error),
        ) from error
    if path.suffix.lower() in _MIDI or content.startswith(b"MThd"):
        return _from_midi(path, content)
    return _from_text(path, content)


def _from_text(path: Path, content: bytes) -> Corrections:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise InputError(
            "taps-not-text",
            Place(str(path)),
            "this is not text",
            "give one time in seconds per line, or a MIDI file",
        ) from error
    lines = [(n, line.strip()) for n, line in enumerate(text.splitlines(), 1)]
    lines = [(n, line) for n, line in lines if line and not line.startswith("#")]
    mark = _separator([line for _, line in lines])
    rows = [(n, _cells(line, mark)) for n, line in lines]
    when, where = 0, 1
    first = rows[0][1] if rows else []
    named = any(part.isalpha() for cell in first for part in cell[:1])
    if named and all(_seconds(cell) is None for cell in first):  # a time makes it a row of data
        heads = [cell.lower() for cell in rows[0][1]]
        when = next((heads.index(name) for name in _TIMES if name in heads), 0)
        where = next((heads.index(name) for name in _PLACES if name in heads), -1)
        rows = rows[1:]
    elif mark == "," and rows:
        _refuse_two_ways(path, rows)
    times: list[float] = []
    firsts: list[float] = []
    for line, cells in rows:
        time = _seconds(cells[when]) if when < len(cells) else None
        if time is None:
            raise InputError(
                "tap-not-a-time",
                Place(str(path), line, 1),
                f"{' '.join(cells)!r} is not a time",
                "write seconds, such as 12.34, or minutes and seconds, such as 1:02.5",
            )
        if times and time <= times[-1]:
            raise InputError(
                "taps-do-not-rise",
                Place(str(path), line, 1),
                f"{time:g} s comes after {times[-1]:g} s",
                "put the times in order, each once",
            )
        if times and time - times[-1] < _CLOSEST:
            continue
        times.append(time)
        if 0 <= where < len(cells) and _is_first(cells[where]):
            firsts.append(time)
    if len(times) < 4:
        raise InputError(
            "taps-too-few",
            Place(str(path)),
            f"only {len(times)} beats are given",
            "tap at least four beats",
        )
    return Corrections(beats=tuple(times), downbeats=tuple(firsts))


def _separator(lines: list[str]) -> str | None:
    """Column separator of a table; None if it is spaces, or there is only one column."""
    marks = [mark for mark in ";\t," if any(mark in line for line in lines)]
    if marks[:1] == [","] and lines[0].lower() in _TIMES:  # one heading, one column
        return None
    return marks[0] if marks else None


def _cells(line: str, mark: str | None) -> list[str]:
    if mark is None:
        return line.split()
    return [cell.strip() for cell in next(csv.reader([line], delimiter=mark))]


def _refuse_two_ways(path: Path, rows: list[tuple[int, list[str]]]) -> None:
    """Refuse a table in which every comma could be a column separator or a decimal mark: 12,345."""
    for _, cells in rows:
        if len(cells) != 2 or not cells[1].isdecimal() or not re.fullmatch(r"(\d+:)?\d+", cells[0]):
            return
    line, cells = rows[0]
    first, second = (_brief(cell) for cell in cells)
    raise InputError(
        "taps-two-ways",
        Place(str(path), line, 1),
        f"'{first},{second}' can be read as the time {first}.{second} or as the time {first} and a second "
        f"column {second}",
        f"write {first}.{second}, or separate the columns with a semicolon: {first};{second}",
    )


def _brief(number: str) -> str:
    """A number as it is written, or its beginning where nobody would write so many digits."""
    return number if len(number) <= _MOST_DIGITS else f"{number[:_MOST_DIGITS]}…"


def _seconds(text: str) -> float | None:
    match = re.fullmatch(r"(?:(\d+):)?(\d+(?:[.,]\d*)?|[.,]\d+)\s*s?", text.strip())
    if not match:
        return None
    seconds = 60.0 * float(match[1] or 0) + float(match[2].replace(",", "."))
    return seconds if seconds < _LATEST else None


def _is_first(text: str) -> bool:
    """True for 1, 1.0, "17.1" (bar.beat) and "downbeat"; false for 1.1."""
    if match := re.fullmatch(r"\d+\.(\d{1,9})", text):
        return int(match[1]) == 1 or float(text) == 1.0
    return text.lower() in {"1", "downbeat", "d", "x", "true", "yes"}


def _from_midi(path: Path, content: bytes) -> Corrections:
    import mido
    from mido.midifiles.meta import KeySignatureError

    try:
        file = mido.MidiFile(file=io.BytesIO(content))
        events = [(tick, m) for track in file.tracks for tick, m in _ticked(track)]
    except (
        OSError, EOFError, ValueError, KeyError, IndexError, TypeError, KeySignatureError
    ) as error:  # fmt: skip
        raise _unusable_midi(
            path,
            "this MIDI file cannot be read",
            "export it again as a Standard MIDI File",
            str(error),
        ) from error
    if not 0 < file.ticks_per_beat < _FRAMES:
        raise _unusable_midi(
            path,
            "this MIDI file does not count in parts of a beat",
            "export it again with ticks per quarter note",
        )
    end = max((tick for tick, _ in events), default=0)
    per_quarter = file.ticks_per_beat
    tempi = {0: 500_000} | {t: m.tempo for t, m in _in_order(events) if m.type == "set_tempo"}
    metres = {0: (4, 4)} | {
        t: (m.numerator, m.denominator) for t, m in _in_order(events) if m.type == "time_signature"
    }
    for numerator, denominator in metres.values():
        if not (1 <= numerator <= _MOST_IN_SIGNATURE and denominator <= _MOST_IN_SIGNATURE):
            raise _unusable_midi(
                path,
                f"this MIDI file has a time signature of {numerator} over "
                f"{denominator if denominator < 1e6 else 'more than a million'}",
                "correct the signature and export it again",
            )
    if min(tempi.values()) <= 0:
        raise _unusable_midi(
            path,
            "this MIDI file has a tempo of no time a beat",
            "correct the tempo and export it again",
        )
    if end / per_quarter * max(each[1] for each in metres.values()) / 4 > _MOST_BEATS:
        raise _unusable_midi(
            path,
            f"this MIDI file is longer than {_MOST_BEATS:,} beats",
            "cut it to the song and export it again",
        )
    ticks, firsts = _beat_ticks(metres, end, per_quarter)
    if len(ticks) < 4:
        raise InputError(
            "taps-too-few",
            Place(str(path)),
            "this MIDI file is shorter than four beats",
            "export the whole song, not only its tempo",
        )
    knots = np.array(sorted(tempi), dtype=np.float64)
    seconds = np.cumsum(
        [0.0, *((b - a) * tempi[int(a)] / 1e6 / per_quarter for a, b in pairwise(knots))]
    )
    index = np.searchsorted(knots, ticks, side="right") - 1
    rate = np.array([tempi[int(k)] for k in knots])[index] / 1e6 / per_quarter
    times = [round(float(t), 6) for t in seconds[index] + (ticks - knots[index]) * rate]
    return Corrections(
        beats=tuple(times),
        downbeats=tuple(t for t, first in zip(times, firsts, strict=True) if first),
    )


def _unusable_midi(path: Path, what: str, mend: str, why: str = "") -> InputError:
    return InputError("midi-not-understood", Place(str(path)), what, mend, why)


def _in_order(events: list[tuple[int, Any]]) -> list[tuple[int, Any]]:
    """Events in order of their ticks; the order within a tick is preserved."""
    return sorted(events, key=lambda event: event[0])


def _ticked(track: Any) -> list[tuple[int, Any]]:
    now, out = 0, []
    for message in track:
        now += message.time
        out.append((now, message))
    return out


def _beat_ticks(
    metres: dict[int, tuple[int, int]], end: int, per_quarter: int
) -> tuple[Floats, list[bool]]:
    """Ticks of beats, and which of them begin a bar; a change of signature begins one."""
    ticks: list[float] = []
    firsts: list[bool] = []
    starts = [*sorted(metres), end + 1]
    for start, stop in pairwise(starts):
        numerator, denominator = metres[start]
        compound = denominator == 8 and numerator in {6, 9, 12}
        step = 4 * per_quarter / denominator * (3 if compound else 1)
        count = numerator // 3 if compound else numerator
        number = 0
        while start + number * step < stop - step / 8:
            ticks.append(start + number * step)
            firsts.append(number % count == 0)
            number += 1
    return np.array(ticks), firsts
