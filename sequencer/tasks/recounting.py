"""What `check --recount` does: a show file's count put right, and all its bars and beats written in the new count."""

import os
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from pydantic import JsonValue

from sequencer import kept
from sequencer.errors import InputError, Place
from sequencer.files import AnyPath
from sequencer.progress import Progress, within
from sequencer.show.operations.rows import keys_set
from sequencer.show.reading import ReadShow, show_from_document
from sequencer.show.renumbering import Renumbering, beat_ratio, renumbered, with_drafted_marks
from sequencer.show.show_text import ShowText
from sequencer.show.text.document import parse_document
from sequencer.show.text.file_text import disk_text, write_disk_text
from sequencer.show.text.plain_edits import TakenOut, TextEdit, ValueSet
from sequencer.show.text.plain_values import ValuePath
from sequencer.staging.entries.counted_song import as_counted
from sequencer.staging.entries.written_count import COUNT_KEYS, unknown_to_numbers, without_sections
from sequencer.tasks import songs
from sequencer.tasks.kept_one import with_one_kept

if TYPE_CHECKING:
    from sequencer.staging.staged import Block, Staged
    from sequencer.timing.song import Song

_MOVED = 0.25  # [beats of the old count] by which a block may lie elsewhere: counts differ by what is heard
_SAME_CYCLE = 1e-6  # [beats]
_CORRECTIONS: ValuePath = ("track", "corrections")
_OUT = "none"  # what takes a correction out
_SUCH = {"tempo": "half", "metre": "3", "one": "0:12.4", "beats": "my-taps.txt"}


@dataclass(frozen=True, slots=True)
class RenumberedShow:
    """A show file in another count."""

    text: str
    changed: int  # lines that say something else
    drafted: bool  # whether it has entries that a draft would replace


def recount_show(
    path: AnyPath, corrections: Sequence[str], *, progress: Progress | None = None
) -> RenumberedShow:
    """Correct the count of a show file, and write its bars and beats in the new count; atomically, whole or not at all.

    Parameters
    ----------
    path : path
    corrections : sequence of str
        Each as `key=value`, such as `tempo=half`, where `none` takes it out, or as `key`, for what the file already says but its numbers do not follow
        yet.
    progress : callable, optional

    Raises
    ------
    InputError
        If the show cannot be used in the count that its numbers are of, if something cannot be written in the new one, or
        if the numbers may follow it already: then nothing is written.
    """
    with kept.shelf(os.fspath(path)):
        return _recounted_show(Path(path), corrections, progress)


def _recounted_show(path: Path, given: Sequence[str], progress: Progress | None) -> RenumberedShow:
    before = disk_text(path)
    text = ShowText(before.text, str(path))
    old, new = _counts(text, given)
    read, other = _read(old), _read(new)
    if read.show is not read.written:
        raise read.fault(
            "not-everybody", ("tonight",), "the count is changed for everybody, and not everybody is there tonight",
            "take `tonight` out of the file meanwhile",
        )  # fmt: skip
    song = songs.song_of(read, progress=within(progress, 0.0, 0.5))
    if old.text != text.text and not unknown_to_numbers(other, song):
        raise _refuse_unknown(text, given)
    new = with_one_kept(new, read, other, song)
    other = _read(new)
    if progress is not None:
        progress("writing the new numbers", 0.5)
    after = _written(new, read, other, song)
    if disk_text(path) != before:
        raise InputError(
            "changed-meanwhile", Place(str(path)),
            "the show file was changed meanwhile, so nothing was written and your change is kept", "ask again",
        )  # fmt: skip
    write_disk_text(path, replace(before, text=after.text))
    lines = Counter(after.text.splitlines()) - Counter(text.text.splitlines())
    return RenumberedShow(
        text=after.text,
        changed=lines.total(),
        drafted="drafted:" in after.text,
    )


def _counts(text: ShowText, given: Sequence[str]) -> tuple[ShowText, ShowText]:
    """The show file in the count that its numbers are of, and with the corrections that are given."""
    held = text.value(*_CORRECTIONS)
    said = held if isinstance(held, dict) else {}
    taken: list[TextEdit] = []
    put: dict[str, JsonValue] = {}
    keys: set[str] = set()
    for each in given:
        key, _, value = (part.strip() for part in each.partition("="))
        if key not in COUNT_KEYS:
            raise InputError(
                "no-such-correction", Place(text.file), f"{key!r} is no correction that numbers beats anew",
                f"give one of {', '.join(COUNT_KEYS)}, such as tempo=half",
            )  # fmt: skip
        if key in keys:
            raise InputError(
                "two-counts", Place(text.file), f"{key!r} is to be corrected twice at once",
                f"give --recount {key} once",
            )  # fmt: skip
        keys.add(key)
        if key in said and value == _OUT:
            put[key] = None
        elif key in said and value in {"", str(said[key])}:
            taken.append(TakenOut((*_CORRECTIONS, key)))
        elif value and value != _OUT:
            put[key] = value
        else:
            raise InputError(
                "no-such-correction", Place(text.file), f"the file has no correction {key!r}",
                f"say which, such as {key}={_SUCH[key]}" if key in _SUCH else f"write {key!r} under `track`, `corrections`",
            )  # fmt: skip
    if taken and put:
        raise InputError(
            "two-counts", Place(text.file), "some of these corrections are in the file and some are not",
            "ask for one after the other",
        )  # fmt: skip
    if put:
        return text, text.edited(*keys_set(text, _CORRECTIONS, put))
    return text.edited(*taken), text


def _read(text: ShowText) -> ReadShow:
    return show_from_document(parse_document(text.text, text.file))


def _refuse_unknown(text: ShowText, given: Sequence[str]) -> InputError:
    """What is said where nothing tells whether the numbers follow a correction that the file has already."""
    key = given[0].partition("=")[0].strip()
    value = text.value(*_CORRECTIONS, key)
    said = f"{key}={value}" if isinstance(value, str) else key
    return InputError(
        "count-known", text.document.place(*_CORRECTIONS, key),
        f"the bars of this show fit the count with `{key}` as they are, so nothing was written anew",
        f"if they are of the count before, take `{key}` out of the file and give --recount {said}",
    )  # fmt: skip


def _written(new: ShowText, read: ReadShow, other: ReadShow, song: "Song") -> ShowText:
    """The file with the new corrections and all numbers in their count; the show lies where it lay."""
    from sequencer.staging.timeline import staged

    before = staged(read, song, fly=False)
    _, count = as_counted(without_sections(other), song)
    try:
        change = Renumbering(before.tempo, count, beat_ratio(before.tempo, count))
    except ValueError as error:
        raise InputError(
            "falls-between", new.document.place(*_CORRECTIONS), str(error), "correct the count in another way"
        ) from None  # fmt: skip
    text = renumbered(new, change)
    after = staged(_read(text), song, fly=False)
    if edits := list(_kept_cycles(text, before, after, float(change.ratio))):
        text = with_drafted_marks(text, edits)
        after = staged(_read(text), song, fly=False)
    _refuse_moved(text, before, after)
    return text


def _kept_cycles(
    text: ShowText, before: "Staged", after: "Staged", ratio: float
) -> Iterator[TextEdit]:
    """Cycles written out where a block lasts for a number of them and would last longer or shorter.

    All others are danced by the new counts: a cycle that is left out suits the tempo.
    """
    done: dict[ValuePath, float] = {}
    for one, two in zip(before.blocks, after.blocks, strict=True):
        wanted = round(one.cycle * ratio, 6)
        counted = text.value(*one.path, "cycles") is not None
        if not counted or one.link or abs(two.cycle - wanted) < _SAME_CYCLE:
            continue
        if done.setdefault(one.path, wanted) != wanted:
            raise InputError(
                "falls-between", text.document.place(*one.path), f"{one.title} has another cycle for each who dances it here",
                "write a `cycle` of its own for each and ask again",
            )  # fmt: skip
    for path, cycle in done.items():
        yield ValueSet((*path, "cycle"), int(cycle) if float(cycle).is_integer() else cycle)


def _refuse_moved(text: ShowText, before: "Staged", after: "Staged") -> None:
    """Refuse a count in which something would be danced at another moment than before."""
    for one, two in zip(_danced(before), _danced(after), strict=True):
        for a, b in ((one.start, two.start), (one.end, two.end)):
            off = after.seconds(b) - before.seconds(a)
            if abs(off) > _MOVED / float(before.tempo.beats_per_second(a)):
                raise InputError(
                    "falls-between", text.document.place(*one.path),
                    f"{one.title} of {one.who} would lie {abs(off):.1f} s {'later' if off > 0 else 'earlier'} in the new count, "
                    "which has longer or shorter bars there",
                    "say with `from` and `until`, as m:ss.s, when it is danced, and ask again",
                )  # fmt: skip


def _danced(show: "Staged") -> list["Block"]:
    return [*show.blocks, *show.stops]
