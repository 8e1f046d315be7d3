"""Build steps on one page: every station with a small drawing, for a teacher to hand out.

A4 or Letter, one page for any number of stations; drawn from behind, as the performer sees it.
"""

from math import ceil
from textwrap import fill

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.motion.patterns.build_steps import Station
from sequencer.outputs.patterns.fit_words import body_words, danced_words
from sequencer.outputs.patterns.flown_words import flown_words, station_words
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.patterns.pattern_drawing import (
    DRAWING_INK,
    DRAWING_SOFT,
    HAND,
    VIEWS,
    Drawn,
    draw_body,
    drawn,
)

PAPERS = {"a4": (8.27, 11.69), "letter": (8.5, 11.0)}


def steps_figure(one: OnePattern, *, side: Side = "right", paper: str = "a4") -> Figure:
    """The page of build steps; write it with `figures.write_figure`.

    Raises
    ------
    ValueError
        If the pattern is not a toroid, or the pattern, a parameter or the paper is not known.
    """
    if paper not in PAPERS:
        raise ValueError(f"paper must be one of {', '.join(PAPERS)}, got {paper!r}")
    stations = one.stations(side)
    shown = drawn(one, side)
    flown = [one.flown_head(station, side) for station in stations]
    wide, tall = PAPERS[paper]
    count = len(stations)
    columns = 3 if count <= 9 else 4 if count <= 20 else 5 if count <= 30 else 6
    rows = ceil(count / columns)
    figure = Figure(figsize=(wide, tall))
    values = one.values(side)
    figure.text(0.05, 0.972, f"Build steps: {one.name}", fontsize=18, fontweight="bold", va="top")
    toroid = "lobes" in values
    odd = toroid and values["lobes"] % 2 and values["bend"] != "iso"
    kind = f"{values['lobes']} lobes, {values['bend']}-bend" if toroid else f"{count - 1} stations"
    about = (
        f"{kind}; hand in the {values['plane']} plane, "
        f"{values['turn']} as you see it; {side} hand. {_steady(stations)}"
        + (
            "Odd: one cycle comes home the wrong way round, the second brings it back."
            if odd
            else "Home after one cycle."
        )
    )
    said = [body_words(one), *danced_words(one, side), *filter(None, [flown_words(one)])]
    about += f" Here {'; '.join(said)}."
    figure.text(0.05, 0.948, fill(about, 138), fontsize=7.5, va="top", linespacing=1.25)
    legend = (
        "Seen from behind, as the performer sees it. Dashed: hand path, dot: hand. Thick line: tether; ball: head. "
        "Ring: the prop's plane there, thick where it is nearer to you. Cross: where this plane meets the previous one, "
        "measured from the centre of the hand circle."
    )
    if any(each is not None for each in flown):
        legend += " Open ball: where the head really flies."
    figure.text(
        0.05, 0.022, fill(legend, 138), fontsize=7.5, va="bottom", color="#333333", linespacing=1.25
    )  # fmt: skip
    small = {3: 8.0, 4: 6.8, 5: 6.0, 6: 5.2}[columns]
    width, height = 0.91 / columns, 0.838 / rows
    letters = round(width * wide * 72 / small * 1.75)
    steady = bool(_steady(stations))
    texts = [
        _caption(station, letters, steady=steady, off=station_words(one, station, side))
        for station in stations
    ]
    most = max(text.count("\n") + 1 for text in texts)
    text_height = most * small * 1.2 / 72 / tall  # height of the longest text
    title = (small + 1.5) * 1.3 / 72 / tall
    drawing = max(height - text_height - 1.5 * title, 0.25 * height)
    for k, (station, text, head_flown) in enumerate(zip(stations, texts, flown, strict=True)):
        left = 0.05 + (k % columns) * width
        top = 0.898 - (k // columns) * height
        picture = figure.add_axes((left, top - title - drawing, width * 0.94, drawing))
        _draw(picture, station, shown, head_flown)
        head = f"{station.number}  beat {station.beat:g}  {station.half.upper()}" + (
            "  (home)" if k == count - 1 else f"  lobe {station.lobe}" if columns < 5 else ""
        )
        figure.text(left, top, head, fontsize=small + 1.5, fontweight="bold", va="top")
        figure.text(
            left, top - title - drawing, text, fontsize=small, va="top", linespacing=1.15
        )  # fmt: skip
    return figure


def _steady(stations: list[Station]) -> str:
    """A sentence on what changes from station to station, if it is always the same."""
    changes = {station.change for station in stations[1:]}
    if len(changes) != 1:
        return ""
    return f"From each station to the next {changes.pop().replace(', the', ' and the')}. "


def _caption(station: Station, letters: int, *, steady: bool, off: str) -> str:
    lines = [f"hand: {station.place}", station.performer.replace(" plane", "")]
    if station.audience != station.performer:
        lines.append(f"audience: {station.audience.split(', ', 1)[-1]}")
    if station.number > 1:
        if not steady:
            short = station.change.replace("the hand goes on by", "hand +")
            lines.append(short.replace("the plane turns by", "plane +"))
        lines.append(f"cross: {station.cross_words or 'none, planes parallel'}")
    if off:
        lines.append(f"flown: {off}")
    return "\n".join(fill(line, letters) for line in lines)


def _draw(axes: Axes, station: Station, shown: Drawn, flown: Floats | None) -> None:
    view = VIEWS[0]
    draw_body(axes, shown.body, view, shown.posture)
    axes.plot(*view.flat(shown.motion.hand).T, color=HAND, linestyle=(0, (4, 2)), linewidth=0.8)
    length = shown.length
    angle = np.linspace(0, 2 * np.pi, 97)
    across = np.cross(station.plane, station.tether)
    ring = station.hand + 0.45 * length * (
        np.cos(angle)[:, None] * station.tether + np.sin(angle)[:, None] * across
    )
    flat, depth = view.flat(ring), ring @ view.near
    for k in range(len(angle) - 1):
        near = depth[k] > station.hand @ view.near + 1e-9
        axes.plot(*flat[k : k + 2].T, color=DRAWING_INK if near else DRAWING_SOFT, linewidth=1.6 if near else 0.7,
                  solid_capstyle="round")  # fmt: skip
    head = station.hand + length * station.tether
    axes.plot(*view.flat(np.stack((station.hand, head))).T, color=DRAWING_INK, linewidth=2.4)
    axes.plot(*view.flat(head), "o", color=DRAWING_INK, markersize=6)
    axes.plot(*view.flat(station.hand), "o", color=HAND, markersize=4, zorder=5)
    if flown is not None:
        axes.plot(*view.flat(flown), "o", color="white", markeredgecolor=DRAWING_INK, markersize=6,
                  markeredgewidth=1.2, zorder=7)  # fmt: skip
    arrow = slice(10, 13)
    start, end = flat[arrow][0], flat[arrow][-1]
    if np.linalg.norm(end - start) > 1e-3:
        axes.annotate(
            "", end, xytext=start, arrowprops={"arrowstyle": "-|>", "color": DRAWING_INK, "lw": 1.2}
        )
    if station.cross is not None:
        axes.plot(
            *view.flat(station.cross), "x", color=HAND, markersize=6, markeredgewidth=1.6, zorder=6
        )
    middle = view.flat(shown.motion.hand).mean(axis=0)
    reach = float(np.ptp(shown.motion.hand[:, [0, 2]], axis=0).max()) / 2 + length + 0.08
    axes.set_xlim(middle[0] - reach, middle[0] + reach)
    axes.set_ylim(middle[1] - reach, middle[1] + reach)
    axes.set_aspect("equal", adjustable="box")
    axes.set_axis_off()
