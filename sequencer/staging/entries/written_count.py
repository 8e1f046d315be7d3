"""In which count a show file's bars are numbered: the one that its corrections give, or one without some of them.

Whoever corrects the count of a song by hand leaves all bar numbers as they were. A file says nowhere which count they are
of, so it is told by what they hit: borders of parts that were heard, and the track itself.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from sequencer.errors import InputError
from sequencer.shell_words import shell_path
from sequencer.show.file_records.held_values import held_values
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.counted_song import as_counted
from sequencer.timing.position import Position
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

COUNT_KEYS = (
    "tempo",
    "metre",
    "one",
    "steady",
    "beats",
)  # corrections that give beats other numbers
_ON = 0.25  # [s] a section that begins so near a border that was heard begins with it
_FEWEST = 2  # sections that must hit
_MOST = 0.6  # [1] of all that must hit in one count
_HALF = 0.5  # [1] and of these at most so many in the other


@dataclass(frozen=True, slots=True)
class _Fit:
    """How a file's bar numbers lie in a count."""

    outside: int  # moments beyond the track
    marks: int  # sections that begin at a bar, but for the first
    hit: int  # of these where one was heard


def without_corrections(read: ReadShow, keys: Sequence[str]) -> ReadShow:
    """A show as if its corrections of the count did not say some keys."""
    corrections = read.show.track.corrections
    bare = corrections.model_copy(update=dict.fromkeys(keys))
    track = read.show.track.model_copy(update={"corrections": bare})
    return replace(read, show=read.show.model_copy(update={"track": track}))


def count_keys(read: ReadShow) -> tuple[str, ...]:
    """The corrections of a show that give beats other numbers."""
    corrections = read.show.track.corrections
    return tuple(key for key in COUNT_KEYS if getattr(corrections, key) is not None)


def unknown_to_numbers(read: ReadShow, heard: Song) -> tuple[str, ...]:
    """Corrections of the count without which the file's bar numbers fit the song, and with which they do not.

    Parameters
    ----------
    read : ReadShow
    heard : Song
        As it was detected.

    Returns
    -------
    keys : tuple of str
        Empty where the numbers fit as they are, or fit no better in any other count.

    Notes
    -----
    Source: module docstring; shares that must hit are this project's choice.
    """
    keys = count_keys(read)
    if not keys:
        return ()
    now = _fit(read, heard)
    if now is None:
        return ()  # the corrections do not fit the song
    ways = [(key,) for key in keys]
    for way in [*ways, keys] if len(keys) > 1 else ways:
        before = _fit(without_corrections(read, way), heard)
        if before is not None and _better(before, now):
            return way
    return ()


def recount_words(read: ReadShow, keys: Sequence[str]) -> str:
    """The command that writes a show's numbers anew for such corrections."""
    options = " ".join(f"--recount {key}" for key in keys)
    return f"`sequencer check {shell_path(read.document.file)} {options}`"


def other_count_fault(read: ReadShow, heard: Song) -> InputError | None:
    """What is said of a show that cannot be staged since its numbers are of another count; None if they are not."""
    keys = unknown_to_numbers(read, heard)
    if not keys:
        return None
    return read.fault(
        "bars-of-another-count", ("track", "corrections", keys[0]),
        f"the bars of this show are numbered in the count without {keys_spoken(read, keys)}",
        f"to have everything written in the new count, at the same moments of the song, give {recount_words(read, keys)}",
    )  # fmt: skip


def keys_spoken(read: ReadShow, keys: Sequence[str]) -> str:
    """Corrections as the file says them: `tempo: half`, or their names where they take more than a word."""
    values = [(key, getattr(read.show.track.corrections, key)) for key in keys]
    said = [f"`{key}: {value}`" if isinstance(value, str | int) else f"`{key}`" for key, value in values]  # fmt: skip
    return " and ".join(said)


def _better(before: _Fit, now: _Fit) -> bool:
    if before.outside > now.outside:
        return False
    if before.marks >= _FEWEST:
        right = before.hit >= max(_FEWEST, _MOST * before.marks)
        return right and now.hit <= _HALF * before.hit
    return before.outside == 0 < now.outside


def _fit(read: ReadShow, heard: Song) -> _Fit | None:
    """None if there is no such count."""
    sections = read.show.track.corrections.sections
    try:
        _, count = as_counted(without_sections(read), heard)
    except InputError:
        return None
    times = [_second(count, moment) for moment in held_values(_moments_of(read), Position)]
    marks = [_second(count, m.start) for m in sections[1:] if isinstance(m.start, Position)]
    borders = [each.start for each in heard.sections] + [at for at, _ in heard.turns]
    return _Fit(
        outside=sum(time is None or time > heard.duration + _ON for time in times),
        marks=len(marks),
        hit=sum(
            time is not None and min(abs(time - at) for at in borders) <= _ON for time in marks
        ),
    )


def without_sections(read: ReadShow) -> ReadShow:
    """The show without sections of its own, whose moments may not fit another count."""
    corrections = read.show.track.corrections.model_copy(update={"sections": ()})
    track = read.show.track.model_copy(update={"corrections": corrections})
    return replace(read, show=read.show.model_copy(update={"track": track}))


def _moments_of(read: ReadShow) -> list[Any]:
    show = read.show
    lit = show.fire.lit if show.fire is not None else ()
    return [show.track.corrections.sections, show.staging, show.entrances, show.timeline, lit]


def _second(count: TempoMap, position: Position) -> float | None:
    """When it is; None where its bar has no such beat."""
    try:
        return count.second_of(count.beat_of(position))
    except ValueError:
        return None
