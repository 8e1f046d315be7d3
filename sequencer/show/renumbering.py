"""What a show file says in bars and beats, written in another count of the same song.

Every moment keeps its moment of the song, and every length its seconds. Moments as m:ss.s and as sections stay as they
are; so do comments, order and whatever else is not a number of the count.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from sequencer.errors import InputError
from sequencer.show.drafted import KEY, is_drafted, mark_of
from sequencer.show.operations.rows import every_block
from sequencer.show.show_text import ShowText
from sequencer.show.text.plain_edits import TextEdit, ValueSet, changed_plain
from sequencer.show.text.plain_values import ValuePath
from sequencer.timing.position import Position, clock_text, parse_moment
from sequencer.timing.tempo import TempoMap

_RATIOS = tuple(Fraction(*pair) for pair in ((1, 1), (1, 2), (2, 1), (1, 3), (3, 1), (2, 3), (3, 2), (1, 4), (4, 1)))  # fmt: skip
_SAME_RATIO = 0.03  # by which the lengths of beats may be off such a ratio
_BETWEEN = 0.25  # [beats] a moment further than this from where it can be written falls between
_FINEST = 16  # parts of a beat that are written
_LENGTHS = ("beats", "cycle", "shift", "rest", "hold", "canon")  # keys of a block, in beats
_LEAST_CYCLE = Fraction(1, 8)


@dataclass(frozen=True, slots=True)
class Renumbering:
    """From one count of a song to another.

    Parameters
    ----------
    old, new : TempoMap
        The count in which a file's numbers are, and the one in which they are to be.
    ratio : Fraction
        Beats of the new count in one of the old; see `beat_ratio`.
    """

    old: TempoMap
    new: TempoMap
    ratio: Fraction

    def moment(self, position: Position) -> str:
        """bar.beat in the new count.

        Raises
        ------
        ValueError
            If there is no such beat in the old count, or it falls between what can be written in the new.
        """
        seconds = self.old.second_of(self.old.beat_of(position))
        at = float(self.new.beats_from_seconds(seconds))
        fine = min((position.beat * self.ratio).denominator * self.ratio.denominator, _FINEST)
        beat = Fraction(round(at * fine), fine)
        if abs(at - beat) > _BETWEEN:
            near = self.new.position_text(float(beat))
            raise ValueError(f"{position}, at {clock_text(seconds, decimals=2)}, falls between beats of the new count, nearest to {near}")  # fmt: skip
        return self.new.position_text(float(beat))

    def length(self, text: str) -> int | float | str:
        """A number of beats as the new count says it."""
        return _number(_fraction(text) * self.ratio)


def beat_ratio(old: TempoMap, new: TempoMap) -> Fraction:
    """Beats of a new count in one of an old, as a simple ratio.

    Raises
    ------
    ValueError
        If it is none: then no length in beats can be written anew.

    Notes
    -----
    Source: means over the beats that both have; within 3 % of the ratio (this project's choice).
    """
    start, end = max(old.times[0], new.times[0]), min(old.times[-1], new.times[-1])
    if end <= start:
        raise ValueError("the two counts have no stretch of the song in common")
    beats = [float(count.beats_from_seconds(end) - count.beats_from_seconds(start)) for count in (old, new)]  # fmt: skip
    found = min(_RATIOS, key=lambda ratio: abs(beats[1] / beats[0] / ratio - 1))
    if abs(beats[1] / beats[0] / found - 1) > _SAME_RATIO:
        raise ValueError(f"a beat of the old count is {beats[1] / beats[0]:.2f} beats of the new one, which is no simple part")  # fmt: skip
    return found


def renumbered(text: ShowText, change: Renumbering) -> ShowText:
    """A show file's text with all its bars and beats in the new count; drafted entries stay drafted.

    Raises
    ------
    InputError
        At the first number that cannot be written in it.
    """
    return with_drafted_marks(text, [*_moments(text, change), *_lengths(text, change)])


def with_drafted_marks(text: ShowText, edits: list[TextEdit]) -> ShowText:
    """The text after edits, with new marks on entries that are still as a draft wrote them but for the count."""
    if not edits:
        return text
    after = changed_plain(text.values, edits)
    marks: list[TextEdit] = []
    for path, row in _marked_rows(text):
        changed = after
        for key in path:
            changed = changed[key]
        if changed != row and str(row[KEY]) == mark_of(row):
            marks.append(ValueSet((*path, KEY), mark_of(changed)))
    return text.edited(*edits, *marks)


def _marked_rows(text: ShowText) -> Iterator[tuple[ValuePath, Mapping[str, Any]]]:
    staging = text.value("staging")
    rows = staging if isinstance(staging, list) else []
    for path, row in (*every_block(text), *((("staging", k), each) for k, each in enumerate(rows))):
        if is_drafted(row):
            yield path, row


def _moments(text: ShowText, change: Renumbering) -> Iterator[TextEdit]:
    for path in _moment_paths(text):
        value = text.value(*path)
        if value is None:
            continue
        try:
            moment = parse_moment(str(value))
        except ValueError:
            continue  # reading the file says it
        if not isinstance(moment, Position):
            continue
        try:
            written = change.moment(moment)
        except ValueError as error:
            raise InputError(
                "falls-between", text.document.place(*path), str(error),
                "write this moment as m:ss.s of the track and ask again",
            ) from None  # fmt: skip
        if written != str(value).strip():
            yield ValueSet(path, written)


def _moment_paths(text: ShowText) -> Iterator[ValuePath]:
    """Where a show file says moments of the song."""
    lists: tuple[tuple[ValuePath, tuple[str, ...]], ...] = (
        (("track", "corrections", "sections"), ("from",)),
        (("staging",), ("from",)),
        (("entrances",), ("comes_on", "goes_off")),
        (("timeline",), ("from", "until", "accent")),
        (("fire", "lit"), ("from", "until")),
    )
    for path, keys in lists:
        rows = text.value(*path)
        for k, row in enumerate(rows if isinstance(rows, list) else ()):
            if isinstance(row, Mapping):
                yield from ((*path, k, key) for key in keys if key in row)


def _lengths(text: ShowText, change: Renumbering) -> Iterator[TextEdit]:
    if change.ratio == 1:
        return
    for path, row in every_block(text):
        if not isinstance(row, Mapping):
            continue
        for key in _LENGTHS:
            if key in row and not isinstance(row[key], bool) and str(row[key]).casefold() != "true":
                yield _length(text, (*path, key), change)
        if path[0] == "phrases" and "accent" in row:
            yield _accent(text, (*path, "accent"), change)
    for heading in ("staging", "entrances"):
        rows = text.value(heading)
        for k, row in enumerate(rows if isinstance(rows, list) else ()):
            if isinstance(row, Mapping) and "beats" in row:
                yield _length(text, (heading, k, "beats"), change)


def _length(text: ShowText, path: ValuePath, change: Renumbering) -> TextEdit:
    value = str(text.value(*path))
    try:
        beats = _fraction(value) * change.ratio
    except (ValueError, ZeroDivisionError):
        raise InputError(
            "bad-length", text.document.place(*path), f"{value!r} is not a number of beats",
            "write a number such as 8 or 1/2",
        ) from None  # fmt: skip
    if path[-1] == "cycle" and beats < _LEAST_CYCLE:
        raise InputError(
            "falls-between", text.document.place(*path),
            f"a cycle of {value} beats would be shorter than an eighth of a beat of the new count",
            "write a longer cycle and ask again",
        )  # fmt: skip
    number = float(beats) if path[-1] == "shift" else _number(beats)
    return ValueSet(path, int(number) if isinstance(number, float) and number.is_integer() else number)  # fmt: skip


def _accent(text: ShowText, path: ValuePath, change: Renumbering) -> TextEdit:
    value = str(text.value(*path))
    beat = (_fraction(value) - 1) * change.ratio + 1
    if (4 * beat).denominator != 1:
        raise InputError(
            "falls-between", text.document.place(*path),
            f"beat {value} of the phrase falls between quarters of a beat of the new count",
            "take this accent out and ask again",
        )  # fmt: skip
    return ValueSet(path, _number(beat))


def _fraction(text: str) -> Fraction:
    return Fraction(text.strip().removesuffix(" beats").removesuffix(" beat").strip().replace(" ", ""))  # fmt: skip


def _number(beats: Fraction) -> int | float | str:
    """As a person writes it: 7, 3.5 or 4/3."""
    if beats.denominator == 1:
        return int(beats)
    short = round(float(beats), 4)
    return short if Fraction(str(short)) == beats else f"{beats.numerator}/{beats.denominator}"
