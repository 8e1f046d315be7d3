"""Beat times that a performer brings along: taps, or a table exported by another program.

One beat a line: seconds of the track (`12.48`) or `m:ss.s`; a second column, where there is one, counts
the beats of the bar, and 1 makes the line a bar's first beat. Columns are parted by comma, semicolon,
tab or blanks; empty lines, lines that start with # and one line of headings are passed over.
"""

import re
from pathlib import Path
from typing import NamedTuple

from sequencer.errors import InputError, Place

_CLOCK = re.compile(r"(?:(\d+):)?(\d+(?:\.\d+)?)")
LARGEST = 2_000_000  # bytes; an hour of taps is a few thousand lines


class BeatTimes(NamedTuple):
    """Beats and the bars' first beats, in seconds of the track."""

    beats: tuple[float, ...]
    downbeats: tuple[float, ...]  # empty where the file does not count


def read_beats(path: Path) -> BeatTimes:
    """Beat times from a file.

    Raises
    ------
    InputError
        If the file is missing, is no text, or a line holds no time or goes back in time.
    """
    lines = _text(path).splitlines()
    beats: list[float] = []
    downbeats: list[float] = []
    for number, line in enumerate(lines, 1):
        columns = [part for part in re.split(r"[,;\t ]+", line.strip()) if part]
        if not columns or columns[0].startswith("#"):
            continue
        seconds = _seconds(columns[0])
        if seconds is None:
            if not beats and not any(_seconds(part) is not None for part in columns):
                continue  # headings
            raise InputError(
                "bad-beat", Place(str(path), number, 1), f"{columns[0][:40]!r} is no time",
                "write seconds (12.48) or m:ss.s, one beat a line",
            )  # fmt: skip
        if beats and seconds <= beats[-1]:
            raise InputError(
                "bad-beat", Place(str(path), number, 1), f"{columns[0]} is not after {beats[-1]:g}",
                "put the beats in order, each once",
            )  # fmt: skip
        beats.append(seconds)
        if len(columns) > 1 and columns[1].split(".")[0] == "1":
            downbeats.append(seconds)
    if len(beats) < 2:
        raise InputError(
            "no-beats", Place(str(path)), f"the file holds {len(beats)} beats",
            "write at least two, one a line",
        )  # fmt: skip
    return BeatTimes(tuple(beats), tuple(downbeats))


def _text(path: Path) -> str:
    try:
        data = path.read_bytes() if path.stat().st_size <= LARGEST else b"\x00"
        if data[:4] == b"MThd":
            raise InputError(
                "midi-beats", Place(str(path)), "a MIDI file cannot be read yet",
                "export its beats as a text file of seconds, one a line",
            )  # fmt: skip
        text = data.decode("utf-8-sig")
    except OSError as error:
        raise InputError(
            "no-beat-file", Place(str(path)), f"cannot be read ({error.strerror})",
            "check the path, counted from the show file's folder",
        ) from error  # fmt: skip
    except UnicodeDecodeError:
        text = "\x00"
    if "\x00" in text:
        raise InputError(
            "bad-beat", Place(str(path)), "this is no text of beat times",
            "write seconds (12.48), one beat a line",
        )  # fmt: skip
    return text


def _seconds(text: str) -> float | None:
    found = _CLOCK.fullmatch(text)
    if not found:
        return None
    minutes, seconds = found.groups()
    return 60.0 * int(minutes or 0) + float(seconds)
