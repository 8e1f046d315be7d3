"""Captions of who dances what, to run alongside the song: WebVTT.

A cue lasts from one change to the next and says who dances what; its identifier is the bar.beat of its start.
Source: W3C, WebVTT: The Web Video Text Tracks Format, sections 4 and 6.
"""

from collections.abc import Sequence
from itertools import pairwise
from operator import attrgetter
from pathlib import Path

from sequencer.files import write_text
from sequencer.staging.staged import Block, Staged


def write_captions(path: Path, staged: Staged) -> None:
    """Write the captions.

    Raises
    ------
    InputError
        If the folder cannot be written.
    """
    write_text(path, captions(staged))


def captions(staged: Staged) -> str:
    """The captions of a show; performers who dance the same share a line."""
    danced = sorted((*staged.blocks, *staged.stops), key=attrgetter("start"))
    edges = sorted(
        {round(beat, 6) for block in danced for beat in (block.start, block.end)}
        | {round(accent.beat, 6) for accent in staged.accents}
        | {round(beat, 6) for span in staged.lit for beat in (span.start, span.end)}
    )
    lines = [
        "WEBVTT",
        "",
        "NOTE",
        _plain(f"{staged.show.title}, version {staged.show.version}"),
        "",
    ]
    coming = list(reversed(danced))
    now: list[Block] = []
    for start, end in pairwise(edges):
        while coming and coming[-1].start <= start + 1e-6:
            now.append(coming.pop())
        now = [block for block in now if block.end > start + 1e-6]
        begin = max(staged.seconds(start), 0.0)
        stop = min(staged.seconds(end), staged.song.duration)
        if stop - begin < 0.001:
            continue
        performers: dict[str, list[str]] = {}
        for block in now:
            performers.setdefault(block.title, []).append(block.who)
        hit = [each.who for each in staged.accents if abs(each.beat - start) < 1e-6]
        lit = [span.who for span in staged.lit if span.start <= start + 1e-6 < span.end]
        text = [f"{_who(staged, who)}: {title}" for title, who in performers.items()]
        text += [
            f"{what}: {_who(staged, who)}" for what, who in (("accent", hit), ("lit", lit)) if who
        ]
        if not text:
            continue
        lines += [staged.position(start), f"{timestamp(begin)} --> {timestamp(stop)}"]
        lines += [_plain(line) for line in text]
        lines.append("")
    return "\n".join(lines)


def _who(staged: Staged, names: Sequence[str]) -> str:
    return "all" if len(names) == len(staged.show.names) > 1 else ", ".join(names)


def timestamp(seconds: float) -> str:
    """HH:MM:SS.mmm, rounded to the millisecond before it is cut into parts, so that it carries."""
    ticks = round(seconds * 1000)
    minutes, rest = divmod(ticks, 60_000)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02d}:{minutes:02d}:{rest // 1000:02d}.{rest % 1000:03d}"


def _plain(text: str) -> str:
    """Cue text without markup: anything that could be read as a tag, a reference or an arrow is escaped."""
    one = " ".join(text.split())
    return one.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
