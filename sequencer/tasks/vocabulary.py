"""What `patterns` and `trace --pattern` do: list, card, build steps, drawings, joins, positions."""

import json
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sequencer.errors import InputError, Place

if TYPE_CHECKING:
    from sequencer.motion.props import Prop, PropKind
    from sequencer.show.pattern_book import Book


def list_text(
    *,
    family: str | None = None,
    containing: str | None = None,
    hardest: int | None = None,
    prop: "PropKind | None" = None,
    file: Path | None = None,
    as_json: bool = False,
) -> str:
    """The vocabulary, one line a pattern; what is for one prop, if one is given.

    Raises
    ------
    InputError
        If the family is not known.
    """
    from sequencer.outputs import pattern_cards

    book = book_from(file)
    families = sorted({pattern.family for pattern in book.values()})
    if family is not None and family not in families:
        raise InputError(
            "unknown-family",
            Place("--family"),
            f"no family is called {family!r}",
            f"use one of {', '.join(families)}",
        )
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


def card_text(
    name: str,
    settings: Sequence[str],
    *,
    tempo: float,
    prop: "PropKind" = "poi",
    file: Path | None = None,
    as_json: bool = False,
) -> str:
    """One pattern's card.

    Raises
    ------
    InputError
        If the pattern or a parameter is not known, or out of range.
    """
    from sequencer.outputs import pattern_cards

    book = book_from(file)
    with _named(name):
        parameters = read_settings(settings)
        held = _usual(prop)
        if as_json:
            record = pattern_cards.card_record(name, parameters, tempo=tempo, prop=held, book=book)
            return _json(record)
        return pattern_cards.card_text(name, parameters, tempo=tempo, prop=held, book=book)


def steps_text(
    name: str, settings: Sequence[str], *, file: Path | None = None, as_json: bool = False
) -> str:
    """Build steps of a toroid, station by station.

    Raises
    ------
    InputError
        If the pattern is no toroid, or it or a parameter is not known.
    """
    from sequencer.motion.steps import build_steps
    from sequencer.outputs import pattern_cards

    book = book_from(file)
    with _named(name):
        stations = build_steps(name, read_settings(settings), book=book)
    if as_json:
        return _json([pattern_cards.station_record(station) for station in stations])
    return pattern_cards.steps_text(name, stations)


def joins_text(*, file: Path | None = None, as_json: bool = False) -> str:
    """Verdicts of every ordered pair of the vocabulary."""
    from sequencer.motion.matrix import join_matrix
    from sequencer.outputs import pattern_cards

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
    name: str | None,
    settings: Sequence[str],
    path: Path,
    *,
    steps: bool = False,
    joins: bool = False,
    prop: "PropKind" = "poi",
    file: Path | None = None,
) -> None:
    """Write a drawing: of one pattern, of its build steps, of the vocabulary, or of the joins.

    Raises
    ------
    InputError
        If the pattern or a parameter is not known, or the file cannot be written.
    """
    from sequencer.outputs import pattern_drawing
    from sequencer.outputs.figures import write_figure, write_pages

    book = book_from(file)
    if joins:
        from sequencer.motion.matrix import join_matrix
        from sequencer.outputs.join_chart import join_chart

        write_figure(join_chart(join_matrix(book)), path)
        return
    if name is None:
        write_pages(pattern_drawing.vocabulary_figures(book), path)
        return
    with _named(name):
        if steps:
            from sequencer.outputs.pattern_steps import steps_figure

            figure = steps_figure(name, read_settings(settings), book=book)
        else:
            figure = pattern_drawing.pattern_figure(
                name, read_settings(settings), prop=_usual(prop), book=book
            )
    write_figure(figure, path)


def write_page(
    name: str,
    settings: Sequence[str],
    path: Path,
    *,
    tempo: float,
    timing: Literal["together", "split", "quarter"] = "split",
    direction: Literal["same", "opposite"] = "same",
    prop: "PropKind" = "poi",
    file: Path | None = None,
) -> None:
    """Write the rehearsal page of one pattern.

    Raises
    ------
    InputError
        If the pattern or a parameter is not known, or the file cannot be written.
    """
    from sequencer.files import write_text
    from sequencer.outputs.rehearsal.pattern import pattern_page

    book = book_from(file)
    with _named(name):
        page = pattern_page(
            name,
            read_settings(settings),
            tempo=tempo,
            timing=timing,
            direction=direction,
            prop=_usual(prop),
            book=book,
        )
    write_text(path, page)


def trace_pattern(
    name: str,
    settings: Sequence[str],
    *,
    beats: float | None,
    per_beat: int,
    tempo: float,
    file: Path | None = None,
) -> str:
    """Positions of one pattern of one hand, as CSV in the body frame.

    Raises
    ------
    InputError
        If the pattern or a parameter is not known, or out of range.
    """
    from sequencer.outputs.trace import pattern_csv

    book = book_from(file)
    with _named(name):
        return pattern_csv(
            name, read_settings(settings), beats=beats, per_beat=per_beat, tempo=tempo, book=book
        )


def laws_text(*, as_json: bool = False) -> str:
    """The kinds of law that a pattern of one's own may name, with their parameters."""
    from sequencer.motion.kinds import law_kinds
    from sequencer.outputs import pattern_cards

    kinds = law_kinds()
    if as_json:
        return _json(
            {name: pattern_cards.parameter_records(kind.parameters) for name, kind in kinds.items()}
        )
    return pattern_cards.laws_text(kinds)


def book_from(file: Path | None) -> "Book":
    """The vocabulary, with what a file of patterns (or a show file) adds.

    Raises
    ------
    InputError
        If the file cannot be read, holds no patterns, or one does not fit.
    """
    from sequencer.motion.library import patterns
    from sequencer.show.pattern_book import book_from_file

    return patterns() if file is None else book_from_file(file)


def read_settings(settings: Sequence[str]) -> dict[str, str]:
    """Parameters from KEY=VALUE texts.

    Raises
    ------
    InputError
        If a text is no KEY=VALUE.
    """
    parameters = {}
    for setting in settings:
        key, equals, value = setting.partition("=")
        if not equals or not key.strip():
            raise InputError(
                "bad-setting",
                Place("--set"),
                f"{setting!r} is no KEY=VALUE",
                "write for example lobes=4",
            )
        parameters[key.strip()] = value.strip()
    return parameters


@contextmanager
def _named(name: str) -> Iterator[None]:
    """What does not fit a pattern, said in one line."""
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


def _usual(kind: "PropKind") -> "Prop | None":
    """A prop of a kind in its usual size; None for a poi, whose tether the pattern may set."""
    from sequencer.show.props import usual_prop

    return None if kind == "poi" else usual_prop(kind)
