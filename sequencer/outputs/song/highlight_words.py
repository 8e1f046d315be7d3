"""What stands out in a song, in words and as JSON values: breaks, builds, drops and accents with bar and time."""

from typing import Any

from sequencer.timing.highlights import Highlight, HighlightKind, highlights
from sequencer.timing.position import clock_text
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap
from sequencer.units import aloud, counted

_NAMED = 6  # of a kind that are named one by one
_KINDS: tuple[tuple[HighlightKind, str], ...] = (
    ("build", "builds up"),
    ("break", "breaks off"),
    ("drop", "drops at"),
    ("accent", "single strokes at"),
)


def highlights_text(song: Song) -> list[str]:
    """A line for each kind: where it is, by bar and time; the strongest few by time."""
    if len(song.beats) < 2:
        return []
    count = song.tempo_map()
    found = highlights(song, count)
    lines = []
    for kind, words in _KINDS:
        own = [each for each in found if each.kind == kind]
        if not own:
            continue
        named = sorted(sorted(own, key=lambda each: -each.strength)[:_NAMED], key=lambda each: each.start)  # fmt: skip
        more = len(own) - len(named)
        rest = f" and {more} more" if more else ""
        lines.append(f"{words} {', '.join(_where(each, count) for each in named)}{rest}")
    return lines


def highlight_records(song: Song) -> list[dict[str, Any]]:
    """All of them, by time: `kind`, `start` and `end` [s], `from` and `to` as bar.beat, `strength`."""
    if len(song.beats) < 2:
        return []
    count = song.tempo_map()
    return [
        {
            "kind": each.kind,
            "start": round(count.second_of(each.start), 3),
            "end": round(count.second_of(each.end), 3),
            "from": count.position_text(each.start),
            "to": count.position_text(each.end),
            "strength": round(each.strength, 2),
        }
        for each in highlights(song, count)
    ]


def _where(each: Highlight, count: TempoMap) -> str:
    spoken = aloud(count.position_text(each.start), count.bar_lengths)
    at = f"{spoken} ({clock_text(count.second_of(each.start))})"
    if each.kind == "build":
        return f"from {at} to {count.position_text(each.end)}"
    if each.kind == "break":
        return f"{counted(each.end - each.start, 'beat')} from {at}"
    return at
