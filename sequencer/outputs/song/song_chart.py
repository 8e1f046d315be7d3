"""An analysed song as one chart: sections, energy, bars with their confidence, tempo.

Long songs are broken into lines of about two minutes, so that bars stay readable. Repeats of a section
share a hatch as well as a grey, so that they can be recognised in print.
"""

from math import ceil

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from sequencer.arrays import Floats
from sequencer.errors import written_out
from sequencer.outputs.figures import plain_text
from sequencer.outputs.song.song_report import metres_text, readings_text
from sequencer.timing.form import SURE_BORDER, section_mark, song_form
from sequencer.timing.highlights import highlights
from sequencer.timing.phrases import phrase_length, phrases
from sequencer.timing.position import clock_text
from sequencer.timing.song import SURE_CONFIDENCE, Song

LINE = 120.0  # [s] of song per line, roughly
_INK, ACCENT, FAINT = "#1a1a1a", "#b3400a", "#8a8a8a"
_BELOW = -0.14  # on the energy scale: the strip of bar numbers lies below it
_LETTER = 0.009  # width of a letter of a section's name, as a share of the line
_HATCHES = ("", "///", "...", "\\\\\\", "xxx", "---", "+++", "ooo")
_FLOOR = 0.101  # share of the strip's height where energy begins
_IN_A_ROW = 6  # words of the legend
_PERHAPS = (0, (5, 4))
_KINDS = {"build": "╱ build", "break": "□ break", "drop": "◆ drop", "accent": "× accent"}
_GREYS = ("#f2f2f2", "#dcdcdc", "#e8e4da", "#d3dbe0", "#ece0d8", "#dde5d8")


@plain_text
def song_chart(song: Song) -> Figure:
    """Sections and energy above, tempo and bar confidence below, one pair of strips per line.

    Parameters
    ----------
    song : Song

    Returns
    -------
    figure : Figure
    """
    lines = max(1, ceil(song.duration / LINE))
    width = song.duration / lines
    figure = Figure(figsize=(14.0, 1.1 + 2.7 * lines), layout="constrained")
    figure.suptitle(_title(song), fontsize=13, x=0.01, ha="left")
    grid = figure.subplots(2 * lines, 1, height_ratios=[2.0, 1.0] * lines, squeeze=False)[:, 0]
    for k in range(lines):
        span = (k * width, (k + 1) * width)
        _energy(grid[2 * k], song, span)
        _tempo(grid[2 * k + 1], song, span)
    figure.supxlabel(_legend(song), fontsize=10)
    return figure


def _title(song: Song) -> str:
    track = written_out(song.track)
    if len(song.beats) < 2:
        return f"{track}: no steady beat found here"
    caption = (
        f"{track}: {song.tempo:.1f} beats a minute, {song.metre} beats a bar, "
        f"{clock_text(song.duration)}"
    )
    if changes := metres_text(song):
        caption += f"\nthe metre changes: {changes}"
    if others := readings_text(song):
        caption += f"\ncould also be counted: {others}"
    return caption


def _legend(song: Song) -> str:
    parts = ["time [m:ss]", "grey: energy"]
    if song.beats:
        counts = phrase_length(song.metre)
        parts += ["numbers: bars", f"┃ phrases of {counts} counts, thick: by fours"]
    if any(part.confidence < SURE_BORDER for part in song.sections):
        parts.append("dashed: perhaps not a new part")
    if song.turns:
        parts.append("dotted: less likely")
    kinds = (
        {each.kind for each in highlights(song, song.tempo_map())} if len(song.beats) > 1 else set()
    )
    parts += [words for kind, words in _KINDS.items() if kind in kinds]
    if song.unsure_bars():
        parts.append("▼ listen here: the count is uncertain")
    if song.unsteady:
        parts.append("crossed out: no steady beat found here")
    rows = [parts[k : k + _IN_A_ROW] for k in range(0, len(parts), _IN_A_ROW)]
    return "\n".join("    ".join(row) for row in rows)


def _energy(axes: Axes, song: Song, span: tuple[float, float]) -> None:
    labels = list(dict.fromkeys(part.label for part in song.sections))
    for part, name in zip(song.sections, song.section_names(), strict=True):
        start, end = max(part.start, span[0]), min(part.end, span[1])
        if end <= start:
            continue
        k = labels.index(part.label)
        axes.axvspan(
            start, end, facecolor=_GREYS[k % len(_GREYS)], hatch=_HATCHES[k % len(_HATCHES)],
            edgecolor="#c4c4c4", linewidth=0.0,
        )  # fmt: skip
        sure = part.confidence >= SURE_BORDER
        axes.axvline(part.start, color=_INK, linewidth=1.0, linestyle="-" if sure else _PERHAPS)
        title = f"{name} ({section_mark(part)})" if part.variant else name
        axes.text(
            start + 0.3,
            1.0,
            title if end - start > len(title) * _LETTER * (span[1] - span[0]) else "",
            fontsize=10,
            fontweight="bold",
            va="bottom",
            color=_INK,
            clip_on=True,
        )
    if song.energy:
        at = np.linspace(0.0, song.duration, len(song.energy))
        axes.fill_between(at, np.array(song.energy), color="#6f6f6f", alpha=0.75, linewidth=0.0)
    _bars(axes, song, span)
    _highlights(axes, song)
    axes.set(xlim=span, ylim=(_BELOW, 1.25), yticks=[])
    axes.set_ylabel("energy", fontsize=9)
    axes.tick_params(labelbottom=False)


def _bars(axes: Axes, song: Song, span: tuple[float, float]) -> None:
    inside = [(k, t) for k, t in enumerate(song.downbeats) if span[0] <= t < span[1]]
    step = max(1, 4 * ceil(len(inside) / 64))
    for k, t in inside:
        axes.vlines(t, _BELOW, 0.5 * _BELOW, color=_INK, linewidth=0.6)
        if k % step == 0:
            axes.text(
                t + 0.15, _BELOW, f" {k + 1}", fontsize=8, va="bottom", color=_INK, clip_on=True
            )
    for phrase in phrases(song):
        if span[0] <= phrase.start < span[1]:
            axes.vlines(phrase.start, _BELOW, 0.0, color=_INK, linewidth=1.6)
    for group in (group for part in song_form(song) for group in part.groups):
        if span[0] <= group.start < span[1]:
            axes.vlines(group.start, _BELOW, 0.0, color=_INK, linewidth=3.2)
    for at, _ in song.turns:
        axes.vlines(at, 0.0, 1.0, color=_INK, linewidth=0.8, linestyle=":")
    unsure = [
        t for k, t in inside if song.bar_confidence and song.bar_confidence[k] < SURE_CONFIDENCE
    ]
    axes.plot(unsure, np.full(len(unsure), 0.93), "v", color=ACCENT, markersize=7, mec="white")


def _highlights(axes: Axes, song: Song) -> None:
    """Builds slope upwards, breaks are boxed, drops and accents are points."""
    if len(song.beats) < 2:
        return
    count = song.tempo_map()
    for each in highlights(song, count):
        start, end = count.second_of(each.start), count.second_of(each.end)
        if each.kind == "build":
            axes.plot([start, end], [0.05, 0.85], color=ACCENT, linewidth=2.0)
        elif each.kind == "break":
            axes.axvspan(
                start, end, _FLOOR, 0.75, facecolor="white", edgecolor=ACCENT, linewidth=1.2
            )
        elif each.kind == "drop":
            axes.plot([start], [0.85], "D", color=ACCENT, markersize=8, mec="white")
        else:
            axes.plot([start], [0.85], "x", color=_INK, markersize=4)


def _tempo(axes: Axes, song: Song, span: tuple[float, float]) -> None:
    beats: Floats = np.array(song.beats, dtype=np.float64)
    if len(beats) > 1:
        tempo = 60.0 / np.diff(beats)
        middle = 0.5 * (beats[1:] + beats[:-1])
        smooth = np.convolve(np.pad(tempo, 2, mode="edge"), np.full(5, 0.2), "valid")
        axes.plot(middle, smooth, color=_INK, linewidth=1.2)
        low, high = np.percentile(smooth, [1, 99])
        room = max(0.08 * high, 0.3 * (high - low))
        axes.set_ylim(low - room, high + room)
    for start, end in song.unsteady:
        axes.axvspan(start, end, facecolor="none", edgecolor=ACCENT, hatch="xx", linewidth=0.8)
    ticks = np.arange(np.ceil(span[0] / 10.0) * 10.0, span[1], 10.0)
    axes.set(xlim=span)
    axes.set_xticks(ticks, [clock_text(float(t), decimals=0) for t in ticks], fontsize=8)
    axes.set_ylabel("beats\na minute", fontsize=9)
    axes.grid(axis="y", color="#dddddd", linewidth=0.6)
