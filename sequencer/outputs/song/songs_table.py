"""Many analysed songs, as one table for people and one record for tools."""

import json
from collections.abc import Sequence
from pathlib import Path

from sequencer.errors import InputError
from sequencer.outputs.song.song_report import song_record, unsure_text
from sequencer.timing.position import clock_text
from sequencer.timing.song import Song

_Results = Sequence[tuple[Path, Song | InputError]]
_WIDEST = 36  # characters of a file name


def songs_json(folder: Path, results: _Results) -> str:
    """One object: the record of `listen --json` for each song, and the files that could not be used."""
    record = {
        "folder": str(folder),
        "tracks": [song_record(s, path) for path, s in results if isinstance(s, Song)],
        "unusable": [
            {"track": str(path), "code": e.code, "message": str(e)}
            for path, e in results
            if isinstance(e, InputError)
        ],
    }
    return json.dumps(record, ensure_ascii=False, indent=1)


def songs_text(results: _Results) -> str:
    """One line per song: length, tempo, metre, bars, sections, and where to check by ear."""
    songs = [song for _, song in results if isinstance(song, Song)]
    wide = min(max([len(song.track) for song in songs], default=5), _WIDEST)
    lines = [
        f"{'track':<{wide}}{'length':>9}{'tempo':>8}{'in':>4}{'bars':>6}{'sections':>10}  listen here"
    ]
    for song in songs:
        name = song.track if len(song.track) <= wide else song.track[: wide - 1] + "…"
        start = f"{name:<{wide}}{clock_text(song.duration):>9}"
        if len(song.beats) < 2:
            lines.append(f"{start}{'–':>8}{'–':>4}{'–':>6}{'–':>10}  no steady beat found here")
            continue
        doubt = "; ".join(
            [unsure_text(song) or "–"]
            + ([f"no steady beat for {_length(song):.0f} s"] if song.unsteady else [])
            + list(song.warnings)
        )
        lines.append(
            f"{start}{song.tempo:>8.1f}{song.metre:>4}{len(song.downbeats):>6}"
            f"{len(song.sections):>10}  {doubt}"
        )
    unusable = len(results) - len(songs)
    rest = f", {unusable} could not be used" if unusable else ""
    lines += ["", f"{len(songs)} {'track' if len(songs) == 1 else 'tracks'} analysed{rest}"]
    return "\n".join(lines)


def _length(song: Song) -> float:
    return sum(b - a for a, b in song.unsteady)
