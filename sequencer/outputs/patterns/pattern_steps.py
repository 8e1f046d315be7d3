"""Build steps: every step with its drawing and what to do next, for a teacher to hand out.

A4 or Letter, one page for up to twelve steps (six lobes, or five where they go through two rounds); type of at least 9 pt. Where a second round brings the prop the other way
round, it stands beside the first.
"""

from collections.abc import Sequence
from itertools import count
from math import ceil
from textwrap import fill

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import LineCollection
from matplotlib.figure import Figure

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.motion.patterns.build_steps import Station
from sequencer.outputs.figures import plain_text
from sequencer.outputs.patterns.fit_words import body_words, danced_words
from sequencer.outputs.patterns.flown_words import flown_words, station_words
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.patterns.pattern_drawing import ARM, BODY, DRAWING_INK, DRAWING_SOFT
from sequencer.outputs.station_picture import HandAt, Stroke, Tone, flat, station_picture, window
from sequencer.outputs.words.station_words import (
    FoldedStep,
    StepWords,
    clock_view,
    folded_steps,
    hand_words,
    spoken_count,
    step_words,
)

PAPERS = {"a4": (8.27, 11.69), "letter": (8.5, 11.0)}
_TONES: dict[Tone, str] = {
    "ink": DRAWING_INK, "soft": DRAWING_SOFT, "arm": ARM, "body": BODY,
}  # fmt: skip
_LEFT, _RIGHT, _TOP, _LOW = 0.055, 0.955, 0.875, 0.07  # [share of the page]
_TYPE = 9.0  # [pt]
_ROWS = 12  # that fit a page
_FEWEST = 5  # rows whose height a page is cut into at least
_LETTER = 0.52  # width of a letter over its size


@plain_text
def steps_pages(one: OnePattern, *, side: Side = "right", paper: str = "a4") -> list[Figure]:
    """The build steps, on one page up to twelve of them; write them with `figures.write_pages`.

    Raises
    ------
    ValueError
        If the pattern is not a toroid, or the pattern, a parameter or the paper is not known.
    """
    if paper not in PAPERS:
        raise ValueError(f"paper must be one of {', '.join(PAPERS)}, got {paper!r}")
    stations = one.stations(side)
    flown = [one.flown_head(station, side) for station in stations]
    pictures = _pictures(one, stations, side)
    steps, words = folded_steps(stations), step_words(stations)
    about = _about(one, stations, side)
    legend = _legend(one, stations, side, marked=any(each is not None for each in flown))
    many = ceil(len(steps) / _ROWS)
    rows = ceil(len(steps) / many)
    pages = []
    for number in range(many):
        figure = Figure(figsize=PAPERS[paper])
        more = f" ({number + 1} of {many})" if many > 1 else ""
        title = f"Build steps: {one.name}{more}"
        figure.text(_LEFT, 0.975, title, fontsize=18, fontweight="bold", va="top")
        wide = _RIGHT - _LEFT
        figure.text(_LEFT, 0.945, _fill(about, wide, figure), fontsize=_TYPE, va="top")
        ink = "#333333"
        figure.text(
            _LEFT, 0.018, _fill(legend, wide, figure), fontsize=_TYPE, va="bottom", color=ink
        )
        page = _Page(figure, pictures, flown, window(pictures, one.body), words)
        tall = (_TOP - _LOW) / max(rows, _FEWEST)
        for k, step in enumerate(steps[number * rows : (number + 1) * rows]):
            off = [station_words(one, each, side) for each in (step.first, step.again) if each]
            page.row(step, (_LEFT, _TOP - k * tall), (wide, tall), next(filter(None, off), ""))
        pages.append(figure)
    return pages


def _pictures(one: OnePattern, stations: Sequence[Station], side: Side) -> list[list[Stroke]]:
    """A picture of each station, with both hands where two dance."""
    other: Side = "left" if side == "right" else "right"
    length = one.dance.props[side].length
    at = np.array([station.beat for station in stations])
    motion = one.laws[other].at(at) if other in one.laws and len(one.sides) > 1 else None
    out = []
    for k, station in enumerate(stations):
        hands = [
            HandAt(
                side=side, hand=station.hand, tether=station.tether, plane=station.plane, length=length
            )
        ]  # fmt: skip
        if motion is not None:
            hands.append(
                HandAt(
                    side=other, hand=motion.hand[k], tether=motion.tether[k], plane=motion.plane[k],
                    length=one.dance.props[other].length, leads=False,
                )
            )  # fmt: skip
        out.append(station_picture(hands, one.body, one.posture))
    return out


def _about(one: OnePattern, stations: Sequence[Station], side: Side) -> str:
    """What the pattern is and how it comes back."""
    values = one.values(side)
    toroid = "lobes" in values
    kind = (
        f"{values['lobes']} lobes, {values['bend']}-bend"
        if toroid
        else f"{len(stations) - 1} steps"
    )
    rounds = stations[-2].cycle if len(stations) > 1 else 1
    home = "After one round you are back where you began."
    if rounds > 1:
        home = f"After one round the prop spins the other way; after {rounds} you are back where you began."
    said = [body_words(one), *danced_words(one, side), *filter(None, [flown_words(one)])]
    return f"{kind}; {side} hand, {values['turn']} as you see it. {home} Here {'; '.join(said)}."


def _legend(one: OnePattern, stations: Sequence[Station], side: Side, *, marked: bool) -> str:
    words = (
        "Seen from behind, half from the right. Ball: the head; ring: the way it goes round in its plane, thick where nearer, "
        f"with arrows. The clock is the hand’s circle {clock_view(stations)}."
    )
    if len(one.sides) > 1:
        words += f" Dark: {side} hand; grey: the other hand at that count."
    return words + (" Open ball: where the head really flies." if marked else "")


def _fill(text: str, wide: float, figure: Figure, size: float = _TYPE) -> str:
    """Text broken to a share of the page's width."""
    return fill(text, max(int(wide * figure.get_figwidth() * 72 / (_LETTER * size)), 12))


class _Page:
    """Where the rows of steps are drawn."""

    def __init__(
        self,
        figure: Figure,
        pictures: Sequence[Sequence[Stroke]],
        flown: Sequence[Floats | None],
        seen: tuple[float, float, float],
        words: Sequence[StepWords],
    ) -> None:
        self.figure, self.pictures, self.flown = figure, pictures, flown
        self.seen, self.words = seen, words

    def row(
        self, step: FoldedStep, place: tuple[float, float], room: tuple[float, float], off: str
    ) -> None:
        """One step: number and counts, one picture or two, what to see and what to do next."""
        (left, top), (wide, tall) = place, room
        figure = self.figure
        shape = figure.get_figheight() / figure.get_figwidth()
        side = min(tall * 0.94, 0.13 / shape * 1.2)
        first, again = step.first, step.again
        counts = ", ".join(spoken_count(each.beat) for each in (first, again) if each is not None)
        figure.text(left, top, str(first.number), fontsize=15, fontweight="bold", va="top")
        beneath = f"count\n{counts}\npoi {first.half}"
        figure.text(left, top - 0.021, beneath, fontsize=_TYPE, va="top", linespacing=1.15)
        at = left + 0.075
        for each in (first, again):
            if each is not None:
                axes = figure.add_axes((at, top - side, side * shape, side))
                self._draw(axes, each.number - 1)
                at += side * shape + 0.008
        words = self.words[first.number - 1]
        room_left = left + wide - at
        lines = [f"{hand_words(words.hand)}, {words.plane}", f"next: {words.then}"]
        title = words.way
        if again is not None:
            other = self.words[again.number - 1]
            title = f"{words.way}; second time {other.way}"
            lines.append(f"second time: {other.then.partition('; ')[2]}")
        if off:
            lines.append(f"flown: {off}")
        title = _fill(title, room_left, figure, _TYPE + 2.5)
        figure.text(
            at, top, title, fontsize=_TYPE + 1, fontweight="bold", va="top", linespacing=1.05
        )
        body = "\n".join(_fill(line, room_left, figure) for line in lines)
        lower = top - 0.0155 * (1 + title.count("\n"))
        figure.text(at, lower, body, fontsize=_TYPE, va="top", linespacing=1.1)

    def _draw(self, axes: Axes, k: int) -> None:
        draw_strokes(axes, self.pictures[k], self.seen)
        if (head := self.flown[k]) is not None:
            axes.plot(*flat(head), "o", color="white", markeredgecolor=DRAWING_INK, markersize=5,
                      markeredgewidth=1.1, zorder=1000)  # fmt: skip


def draw_strokes(axes: Axes, strokes: Sequence[Stroke], seen: tuple[float, float, float]) -> None:
    """Draw a build step; `seen` is the middle of what is shown and half its height [m].

    The axes' shape on the page decides how much is seen to the left and right.
    """
    x, y, half = seen
    order = count(1)
    box = axes.get_window_extent()
    high = box.height * 72 / axes.figure.dpi  # [pt]
    shape = box.width / box.height
    for stroke in strokes:
        ink, z = _TONES[stroke.tone], next(order)
        if stroke.kind == "fill":
            axes.fill(*stroke.points.T, color=ink, linewidth=0, zorder=z)
        elif stroke.kind == "line":
            wide = max(stroke.width * high / 78.0, 0.4)
            axes.add_collection(
                LineCollection(
                    [stroke.points], colors=ink, linewidths=wide, capstyle="round", zorder=z
                )
            )
        else:
            face = ink if stroke.kind == "dot" else "white"
            axes.plot(*stroke.points.T, "o", color=ink, markerfacecolor=face,
                      markersize=stroke.width / half * high, zorder=z)  # fmt: skip
    axes.set_xlim(x - half * shape, x + half * shape)
    axes.set_ylim(y - half, y + half)
    axes.set_xticks([])
    axes.set_yticks([])
    for spine in axes.spines.values():
        spine.set_color("#b9bdc6")
