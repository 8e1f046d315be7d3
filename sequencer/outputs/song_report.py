"""What was heard in a song, as JSON for tools and as a summary for people."""

import json
from pathlib import Path
from typing import Any

from sequencer.listening.hearing import song_json as song_record_of
from sequencer.timing.position import clock_text
from sequencer.timing.song import Song

SURE = 0.6  # confidence from which a reading needs no "listen here"


def song_record(song: Song, track: Path) -> dict[str, Any]:
    """The record of `listen --json`: seconds as numbers, tempo in beats a minute."""
    record = song_record_of(song, track)
    for part, name in zip(record["sections"], song.section_names(), strict=True):
        part["name"] = name
    return record


def song_json(song: Song, track: Path) -> str:
    """`listen --json` as text, the same bytes each time."""
    return json.dumps(song_record(song, track), ensure_ascii=False, indent=1)


def song_summary(song: Song) -> str:
    """What was heard, in a few lines."""
    lines = [f"{song.track}   {clock_text(song.duration)}   {song.sha256[:12]}"]
    if len(song.beats) < 2:
        spans = ", ".join(f"{clock_text(a)} to {clock_text(b)}" for a, b in song.unsteady)
        lines.append(
            f"no steady beat was heard{f' ({spans})' if spans else ''}; "
            "give beats by hand (--tap), or use another track"
        )
    else:
        doubt = [
            f"{subject} {value:.0%}" for subject, value in song.confidence.items() if value < SURE
        ]
        lines.append(
            f"{song.tempo:.1f} beats a minute, {song.metre} beats a bar, {len(song.beats)} beats, "
            f"bar 1 at {clock_text(song.downbeats[0], decimals=2)}"
        )
        if doubt:
            lines.append("listen again here, the machine is not sure: " + ", ".join(doubt))
        if song.unsteady:
            spans = ", ".join(f"{clock_text(a)} to {clock_text(b)}" for a, b in song.unsteady)
            lines.append(f"no steady beat from {spans}")
    if song.sections:
        lines += ["", f"{'section':<16}{'from':>8}{'to':>9}{'bar':>9}  energy"]
        count = song.tempo_map() if len(song.beats) > 1 else None
        for part, name in zip(song.sections, song.section_names(), strict=True):
            bar = (
                str(count.position_of(round(float(count.beats_from_seconds(part.start)))))
                if count and part.start >= song.downbeats[0] - 0.1
                else "–"
            )
            bar_of_energy = "█" * round(10 * part.energy)
            lines.append(
                f"{name:<16}{clock_text(part.start):>8}{clock_text(part.end):>9}{bar:>9}  {bar_of_energy}"
            )
    return "\n".join(lines)
