"""A pupil's booklet of one pattern: what it is, what to learn first and in which order, the steps, common faults, how to practise.

A4 or Letter; type of at least 10 pt but for the steps. Faults and the order of practice are common practice among
teachers; tempi come from the pattern's own law.
"""

from collections.abc import Sequence
from math import ceil
from textwrap import fill

import numpy as np
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.outputs.figures import plain_text
from sequencer.outputs.patterns.fit_words import danced_words, number_words, verdict, who_words
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.patterns.pattern_drawing import VIEWS, draw_view, drawn_hands
from sequencer.outputs.patterns.pattern_records import gap_words, slowest_taut
from sequencer.outputs.patterns.pattern_steps import PAPERS, draw_strokes, steps_pages
from sequencer.outputs.station_picture import HandAt, station_picture, window
from sequencer.outputs.words.law_words import law_words
from sequencer.outputs.words.station_words import clocks_words, folded_steps, step_words

_LEFT, _WIDE = 0.08, 0.84  # [share of the page]
_BODY = 10.5  # [pt]
_LETTER = 0.52  # width of a letter over its size
_INSTANTS = 8  # pictures of one round of a pattern without stations
_CLEAN = 10  # rounds in a row before going on
_RISE = 5  # [beats a minute] from one tempo to the next
_SLOWEST = 0.6  # of the tempo, to begin with where the tether would stay taut even slower

_FAULTS = {
    "toroid": (
        "The planes blur: the poi drifts into the wall plane and the lobes become petals. Stop at each step and look at the ring.",
        "The hand hurries past the places where the poi swings across. Say the clock as you go.",
        "The hand’s circle shrinks, or wanders to one side: a friend watches it from behind.",
    ),
    "orbit": (
        "The hand’s circle and the poi are not counted together: say the rounds of the hand, not those of the poi.",
        "The hand stops at the side where it is comfortable, and the pattern gets an edge.",
        "The poi leaves its plane: dance along a wall, an arm’s length off.",
    ),
    "isolation": (
        "The hand leads the poi instead of sharing a circle with it: both are always on opposite sides of its middle.",
        "The circle is too wide for the tether: it should be half as wide as the tether is long.",
    ),
    "weave": (
        "The hands cross too late, and the poi hits an arm: cross while both point down.",
        "One hand is lazy, and split time turns into same time: listen for an even beat.",
        "The body turns with every crossing: let the arms do it.",
    ),
    "swing": (
        "The hand pulls at the turning point, and the tether goes slack: let it come to rest by itself.",
        "The swing is wider on one side: look straight ahead, not at the poi.",
    ),
    "travelling": (
        "Corners become round: the hand stops a little in each of them.",
        "The poi stops where the hand stops: its turning stays even all the way.",
    ),
}  # fmt: skip
_OTHER_FAULTS = (
    "The plane drifts: ask somebody to watch from the side.",
    "The two hands are not equally even: dance the weaker one alone, twice as long.",
)
_ODD = (
    "You stop after one round, since it seems wrong: with an odd number of lobes the poi then goes round the other way. Go "
    "round twice before you judge it."
)
_HYBRID = "The easier hand slows to the other’s pace, or follows it: count aloud for the hand that goes round."


@plain_text
def pupil_booklet(one: OnePattern, *, paper: str = "a4") -> list[Figure]:
    """The pages; write them with `figures.write_pages`.

    Raises
    ------
    ValueError
        If the paper is not known.
    """
    if paper not in PAPERS:
        raise ValueError(f"paper must be one of {', '.join(PAPERS)}, got {paper!r}")
    try:
        steps = steps_pages(one, paper=paper)
    except ValueError:  # not built of stations
        steps = [_instants(one, paper)]
    return [_first_page(one, paper), *steps, _practice_page(one, paper)]


def prerequisites(name: str, book: dict[str, Pattern] | None = None) -> list[Pattern]:
    """What to learn before a pattern, what comes first at the front.

    Parameters
    ----------
    name : str
    book : dict, optional
        Patterns to use instead of the built-in ones.
    """
    known = book or patterns()
    found: dict[str, Pattern] = {}

    def visit(each: str) -> None:
        for need in known[each].needs:
            if need in known and need not in found:
                visit(need)
                found[need] = known[need]

    visit(name)
    return list(found.values())


def faults_of(one: OnePattern) -> list[str]:
    """Common faults of a pattern, those of its kind first."""
    kind = one.pattern.hand("right").kind.name
    out = list(_FAULTS.get(kind, _OTHER_FAULTS))
    values = one.values("right")
    if kind == "toroid" and values["lobes"] % 2 and values["bend"] != "iso":
        out.insert(0, _ODD)
    if one.pattern.hybrid:
        out.insert(0, _HYBRID)
    room = verdict(one.proven) or gap_words(one)
    return [*out, f"You leave the drawn path, and there is little room: {room}."]


def practice_of(one: OnePattern) -> list[str]:
    """How to practise a pattern, in order."""
    first = prerequisites(one.name, dict(one.dance.book) if one.dance.book else None)
    try:
        stations = one.stations()
        words = step_words(stations)
        once = [words[step.first.number - 1].hand for step in folded_steps(stations)]
        hand = f"Without a prop: the hand alone, round the clock ({clocks_words(once)}), counting aloud."
    except ValueError:
        hand = "Without a prop: the hands alone, counting aloud, until you need not think of them."
    low = max(slowest_taut(one) or 0.0, _SLOWEST * one.tempo)
    low = min(ceil(low / _RISE) * _RISE, one.tempo)
    out = [
        hand,
        "One prop, unlit: from step to step. Stop at each, look where the prop is, say what comes next, go on.",
        (
            f"Without stopping, at {low:g} beats a minute. When {_CLEAN} rounds in a row are clean, {_RISE} more, up to "
            f"{one.tempo:g}; when three fail, {_RISE} fewer."
        ),
    ]
    if len(one.sides) > 1:
        out.append(
            "The other hand alone, the same way; then both, slowly again: "
            f"{timing_words(one.dance.timing, one.dance.direction)}."
        )
    out.append("The other way about: begin with the other hand, or as in a mirror.")
    if first:
        out.append(
            f"In and out: four rounds of {first[-1].name}, four of {one.name}, and back, without a stop."
        )
    out.append(
        "To the music, with your eyes ahead. Lit only once all of this is sure unlit, with somebody who watches you and can "
        "put you out."
    )
    return out


def _first_page(one: OnePattern, paper: str) -> Figure:
    pattern = one.pattern
    figure = Figure(figsize=PAPERS[paper])
    _title(figure, one.name, "A pupil’s booklet")
    marks = "■" * pattern.difficulty + "□" * (5 - pattern.difficulty)
    lines = [pattern.summary, f"{pattern.family}   {marks}   {pattern.why}".rstrip()]
    at = _write(figure, 0.905, lines, bold=1)
    hands = drawn_hands(one, flown=False)
    for k, view in enumerate((VIEWS[0], VIEWS[3])):
        axes = figure.add_axes((_LEFT + k * 0.43, at - 0.31, 0.41, 0.29))
        draw_view(axes, hands, view)
        axes.set_title(view.title, fontsize=10)
    at -= 0.335
    words = [
        f"{side} hand: {law_words(one.laws[side])}"
        for side in ("right", "left")
        if side in one.sides
    ]
    words.append(f"Drawn for somebody {who_words(one)}: {'; '.join(danced_words(one))}.")
    if pattern.notes:
        words.append(f"Your body: {pattern.notes}")
    at = _write(figure, at, words)
    at = _heading(figure, at - 0.012, "Learn first, in this order")
    first = prerequisites(one.name, dict(one.dance.book) if one.dance.book else None)
    steps = [
        f"{k}. {each.name} {'■' * each.difficulty}{'□' * (5 - each.difficulty)}: {each.summary}"
        for k, each in enumerate(first, start=1)
    ]
    _write(figure, at, steps or ["Nothing: this is where one begins."])
    return figure


def _practice_page(one: OnePattern, paper: str) -> Figure:
    figure = Figure(figsize=PAPERS[paper])
    _title(figure, one.name, "Faults and practice")
    at = _heading(figure, 0.905, "Common faults")
    at = _write(figure, at, [f"– {fault}" for fault in faults_of(one)])
    at = _heading(figure, at - 0.02, "How to practise")
    at = _write(figure, at, [f"{k}. {each}" for k, each in enumerate(practice_of(one), start=1)])
    at = _heading(figure, at - 0.02, "My notes")
    while at > 0.06:
        figure.add_artist(_rule(at))
        at -= 0.03
    return figure


def _instants(one: OnePattern, paper: str) -> Figure:
    """One round of a pattern without stations: both hands at even counts."""
    figure = Figure(figsize=PAPERS[paper])
    _title(
        figure,
        one.name,
        f"One round of the hand in eight pictures, {number_words(one.cycle)} beats",
    )
    beats = np.arange(_INSTANTS) * one.cycle / _INSTANTS
    moving = {side: one.laws[side].at(beats) for side in one.sides}
    pictures = [
        station_picture(
            [
                HandAt(
                    side=side, hand=motion.hand[k], tether=motion.tether[k], plane=motion.plane[k],
                    length=one.dance.props[side].length, leads=side == "right" or len(moving) == 1,
                )
                for side, motion in moving.items()
            ],
            one.body, one.posture,
        )
        for k in range(_INSTANTS)
    ]  # fmt: skip
    seen = window(pictures, one.body)
    wide = 0.40
    tall = 0.185
    for k, picture in enumerate(pictures):
        left, top = _LEFT + (k % 2) * 0.44, 0.88 - (k // 2) * 0.21
        axes = figure.add_axes((left, top - tall, wide, tall))
        draw_strokes(axes, picture, seen)
        figure.text(left, top + 0.004, str(k + 1), fontsize=11, fontweight="bold")
    words = "Seen from behind, half from the right. Dark: right hand; grey: left hand. Arrows: the way the prop goes."
    _write(figure, 0.045, [words])
    return figure


def _title(figure: Figure, name: str, what: str) -> None:
    figure.text(_LEFT, 0.965, name, fontsize=22, fontweight="bold", va="top")
    figure.text(_LEFT, 0.932, what, fontsize=11, va="top", color="#444444")


def _heading(figure: Figure, at: float, words: str) -> float:
    figure.text(_LEFT, at, words, fontsize=14, fontweight="bold", va="top")
    return at - 0.028


def _write(figure: Figure, at: float, lines: Sequence[str], *, bold: int = 0) -> float:
    """Paragraphs from a height down; where they end."""
    letters = int(_WIDE * figure.get_figwidth() * 72 / (_LETTER * _BODY))
    step = _BODY * 1.28 / 72 / figure.get_figheight()
    for k, line in enumerate(lines):
        text = fill(line, letters, subsequent_indent="   " if line[:1] in "–123456789" else "")
        figure.text(
            _LEFT, at, text, fontsize=_BODY, va="top", linespacing=1.28,
            fontweight="bold" if k < bold else "normal",
        )  # fmt: skip
        at -= step * (1 + text.count("\n")) + 0.004
    return at


def _rule(at: float) -> Line2D:
    return Line2D((_LEFT, _LEFT + _WIDE), (at, at), color="#b9bdc6", linewidth=0.7)
