"""What `patterns` and `trace --pattern` do: the list, cards, build steps, drawings, joins and positions."""

import json
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sequencer.errors import InputError, Place
from sequencer.files import AnyPath

if TYPE_CHECKING:
    from sequencer.geometry.bodies import Body
    from sequencer.motion.props.prop import PropKind
    from sequencer.outputs.patterns.one_pattern import OnePattern
    from sequencer.progress import Progress
    from sequencer.show.pattern_book import Book


def list_text(
    *,
    family: str | None = None,
    containing: str | None = None,
    hardest: int | None = None,
    prop: "PropKind | None" = None,
    file: AnyPath | None = None,
    as_json: bool = False,
) -> str:
    """The vocabulary, one line per pattern; only patterns for `prop`, if one is given.

    Raises
    ------
    InputError
        If the family is not known.
    """
    from sequencer.outputs.patterns import pattern_cards

    book = book_from(file)
    _check_family(family, book)
    chosen = pattern_cards.chosen_patterns(
        book, family=family, hardest=hardest, containing=containing, prop=prop
    )
    if as_json:
        return _json(
            [
                {
                    "name": pattern.name,
                    "family": pattern.family,
                    "difficulty": pattern.difficulty,
                    "summary": pattern.summary,
                    "props": list(pattern.props),
                }
                for pattern in chosen
            ]
        )
    return pattern_cards.list_text(chosen)


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternOptions:
    """Options for one pattern: parameters, and who dances it with what."""

    settings: Sequence[str] = ()
    tempo: float = 100.0
    timing: Literal["together", "split", "quarter"] = "split"
    direction: Literal["same", "opposite"] = "same"
    prop: "PropKind" = "poi"
    stature: str | None = None
    file: AnyPath | None = None


def one_of(name: str, options: PatternOptions) -> "OnePattern":
    """A pattern as the given body dances it.

    Raises
    ------
    InputError
        If the pattern, a parameter or the stature is not known, or out of range.
    """
    from sequencer.outputs.patterns.one_pattern import one_pattern

    book, body = book_from(options.file), body_of(options.stature)
    with _named(name):
        return one_pattern(
            name, read_settings(options.settings), tempo=options.tempo, timing=options.timing,
            direction=options.direction, prop=options.prop, body=body, book=book,
        )  # fmt: skip


def body_of(stature: str | None) -> "Body":
    """A body from its stature, a length with or without a unit; 1.70 m if none is given.

    Raises
    ------
    InputError
        If it is not a length, or nobody is that tall.
    """
    from sequencer.geometry.bodies import Body
    from sequencer.motion.patterns.samples import CARD_STATURE
    from sequencer.units import LENGTHS, quantity

    try:
        return Body(
            stature=CARD_STATURE if stature is None else quantity(stature, LENGTHS, default="m")
        )
    except ValueError as error:
        raise InputError(
            "bad-stature", Place("--stature"), str(error), "write, for example, 1.62m or 5'4\""
        ) from error


def card_text(
    name: str,
    options: PatternOptions | None = None,
    *,
    as_json: bool = False,
    progress: "Progress | None" = None,
) -> str:
    """One pattern's card; of a pattern that cannot be flown it takes up to a minute the first time.

    Raises
    ------
    InputError
        If the pattern, a parameter or the stature is not known, or out of range.
    """
    from sequencer.outputs.patterns import pattern_cards, pattern_records

    one = one_of(name, options or PatternOptions())
    if as_json:
        return _json(pattern_records.card_record(one, progress))
    return pattern_cards.card_text(one, progress)


def steps_text(name: str, options: PatternOptions | None = None, *, as_json: bool = False) -> str:
    """Build steps of a toroid, station by station.

    Raises
    ------
    InputError
        If the pattern is not a toroid, or the pattern, a parameter or the stature is not known.
    """
    from sequencer.outputs.patterns import pattern_cards, pattern_records

    one = one_of(name, options or PatternOptions())
    with _named(name):
        if as_json:
            return _json(pattern_records.station_records(one))
        return pattern_cards.steps_text(one)


def joins_text(*, file: AnyPath | None = None, as_json: bool = False) -> str:
    """Verdict on joining each ordered pair of patterns in the vocabulary."""
    from sequencer.motion.trajectories.join_matrix import join_matrix
    from sequencer.outputs.patterns import pattern_cards

    matrix = join_matrix(book_from(file))
    if as_json:
        return _json(
            {
                "names": list(matrix.names),
                "verdicts": [
                    [matrix.verdict(first, following) for following in matrix.names]
                    for first in matrix.names
                ],
                "counts": matrix.counts(),
            }
        )
    return pattern_cards.joins_text(matrix)


def draw(
    name: str, path: AnyPath, options: PatternOptions | None = None, *, steps: bool = False
) -> None:
    """Write a drawing of one pattern, or of its build steps.

    Raises
    ------
    InputError
        If the pattern, a parameter or the stature is not known, or the file cannot be written.
    """
    from sequencer.outputs.figures import write_pages

    one = one_of(name, options or PatternOptions())
    with _named(name):
        if steps:
            from sequencer.outputs.patterns.pattern_steps import steps_pages

            pages = steps_pages(one)
        else:
            from sequencer.outputs.patterns.pattern_drawing import pattern_figure

            pages = [pattern_figure(one)]
    write_pages(pages, Path(path))


def draw_joins(path: AnyPath, *, file: AnyPath | None = None) -> None:
    """Draw the join matrix to a file.

    Raises
    ------
    InputError
        If the file cannot be written.
    """
    from sequencer.motion.trajectories.join_matrix import join_matrix
    from sequencer.outputs.figures import write_figure
    from sequencer.outputs.patterns.join_chart import join_chart

    write_figure(join_chart(join_matrix(book_from(file))), Path(path))


def draw_all(
    path: AnyPath,
    options: PatternOptions | None = None,
    *,
    family: str | None = None,
    containing: str | None = None,
    hardest: int | None = None,
    progress: "Progress | None" = None,
) -> None:
    """Write the contact sheet: every pattern for the prop, on three bodies or on one.

    Raises
    ------
    InputError
        If no pattern matches, the family or the stature is not known, or the file cannot be written.
    """
    from sequencer.outputs.figures import check_kind, write_pages
    from sequencer.outputs.patterns.contact_sheet import BODIES, contact_sheet
    from sequencer.outputs.patterns.pattern_cards import chosen_patterns

    options = options or PatternOptions()
    check_kind(Path(path))
    book = book_from(options.file)
    _check_family(family, book)
    chosen = chosen_patterns(
        book, family=family, hardest=hardest, containing=containing, prop=options.prop
    )
    if not chosen:
        raise InputError("no-pattern", Place("--draw"), "no pattern matches", "use fewer filters")
    bodies = BODIES if options.stature is None else (body_of(options.stature),)
    pages = contact_sheet(
        chosen, bodies, prop=options.prop, tempo=options.tempo, timing=options.timing, direction=options.direction,
        book=book, progress=progress,
    )  # fmt: skip
    write_pages(pages, Path(path))


def write_booklet(name: str, path: AnyPath, options: PatternOptions | None = None) -> None:
    """Write a pupil's booklet of one pattern: what to learn first, the steps, common faults, how to practise.

    Raises
    ------
    InputError
        If the pattern, a parameter or the stature is not known, or the file is no PDF or cannot be written.
    """
    from sequencer.outputs.figures import write_pages
    from sequencer.outputs.patterns.booklet import pupil_booklet

    one = one_of(name, options or PatternOptions())
    with _named(name):
        pages = pupil_booklet(one)
    write_pages(pages, Path(path))


def write_page(name: str, path: AnyPath, options: PatternOptions | None = None) -> None:
    """Write the rehearsal page of one pattern.

    Raises
    ------
    InputError
        If the pattern, a parameter or the stature is not known, or the file cannot be written.
    """
    from sequencer.files import write_text
    from sequencer.outputs.rehearsal.pattern import pattern_page

    write_text(Path(path), pattern_page(one_of(name, options or PatternOptions())))


def trace_pattern(
    name: str,
    settings: Sequence[str],
    *,
    beats: float | None,
    per_beat: int,
    tempo: float,
    file: AnyPath | None = None,
) -> str:
    """Positions of one pattern danced by one hand, as drawn and as flown with a poi, as CSV in the body frame.

    Raises
    ------
    InputError
        If the pattern or a parameter is not known, or out of range.
    """
    from sequencer.outputs.exports.trace import pattern_csv

    book = book_from(file)
    with _named(name):
        return pattern_csv(
            name, read_settings(settings), beats=beats, per_beat=per_beat, tempo=tempo, book=book
        )


def laws_text(*, as_json: bool = False) -> str:
    """The kinds of law that a user's pattern may name, with their parameters."""
    from sequencer.motion.patterns.law_kinds import law_kinds
    from sequencer.outputs.patterns import pattern_cards, pattern_records

    kinds = law_kinds()
    if as_json:
        return _json(
            {
                name: pattern_records.parameter_records(kind.parameters)
                for name, kind in kinds.items()
            }
        )
    return pattern_cards.laws_text(kinds)


def book_from(file: AnyPath | None) -> "Book":
    """The vocabulary, with the patterns that a pattern file or show file adds.

    Raises
    ------
    InputError
        If the file cannot be read, holds no patterns, or one of them is not valid.
    """
    from sequencer.motion.patterns.library import patterns
    from sequencer.show.pattern_book import book_from_file

    return patterns() if file is None else book_from_file(Path(file))


def read_settings(settings: Sequence[str]) -> dict[str, str]:
    """Parameters from KEY=VALUE texts.

    Raises
    ------
    InputError
        If a text is not KEY=VALUE.
    """
    parameters = {}
    for setting in settings:
        key, equals, value = setting.partition("=")
        if not equals or not key.strip():
            raise InputError(
                "bad-setting",
                Place("--set"),
                f"{setting!r} is not KEY=VALUE",
                "write, for example, lobes=4",
            )
        parameters[key.strip()] = value.strip()
    return parameters


def _check_family(family: str | None, book: "Book") -> None:
    """Raise if there is no such family."""
    families = sorted({pattern.family for pattern in book.values()})
    if family is not None and family not in families:
        raise InputError(
            "unknown-family",
            Place("--family"),
            f"no family is called {family!r}",
            f"use one of {', '.join(families)}",
        )


@contextmanager
def _named(name: str) -> Iterator[None]:
    """Report a value that does not fit a pattern in one line."""
    try:
        yield
    except ValueError as error:
        raise InputError(
            "bad-pattern",
            Place(name),
            str(error),
            "`sequencer patterns` lists names and parameters",
        ) from error


def _json(value: Mapping[str, object] | Sequence[object]) -> str:
    return json.dumps(value, ensure_ascii=False, indent=2) + "\n"
