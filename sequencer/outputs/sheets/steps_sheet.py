"""Build steps of the toroids that a show dances: each station with a drawing, for a teacher to hand out.

Drawn from behind, as the performer sees it: x to the right, z up, anything ahead drawn a little higher and to the
right. Lengths on paper in points, in the drawing in metres of the body frame.
"""

from collections.abc import Hashable
from dataclasses import dataclass, field
from functools import partial
from typing import Any

import numpy as np
from reportlab.platypus import CondPageBreak, Flowable

from sequencer.arrays import Floats, as_floats
from sequencer.geometry.bodies import Body, Side
from sequencer.motion.patterns.build_steps import Station, build_steps
from sequencer.motion.patterns.library import find
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, HEAD, INK, RULE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, number, plural
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import cautions_block, doing_on_stop, opening
from sequencer.outputs.words.place_words import block_place
from sequencer.outputs.words.posture_words import block_posture
from sequencer.staging.results import result_of
from sequencer.staging.staged import Block

MARK = 78.0  # side of a drawing
OFFSETS = ("across", "ahead", "up")  # of the hand circle's centre
_STATURE = 1.70  # [m] stature for the lengths below, which scale with it
_LEFT, _LOW, _TALL = -0.72, 0.45, 2.05  # [m] of the drawing: left and lower edge, height and width
_AHEAD = (0.28, 0.16)  # how far one metre ahead is drawn to the right and up


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """A toroid or station pattern as its first performer dances it, and how others differ."""

    pattern: str
    side: Side
    stations: tuple[Station, ...]
    body: Body
    length: float  # [m] of the tether
    key: Hashable  # the same for everybody whose stations match, seen from the hand circle's centre
    places: dict[tuple[str, str], bool] = field(default_factory=dict)
    """Performers and words, if it is not in its usual place; whether it is only mirrored."""


class StationMark(Flowable):  # type: ignore[misc]
    """One station: body, hand, tether with its head, and the ring of the prop's plane."""

    def __init__(self, station: Station, length: float, body: Body) -> None:
        super().__init__()
        self.station, self.length, self.body = station, length, body
        self.size = body.stature / _STATURE

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        """Its square."""
        self.width = self.height = MARK
        return MARK, MARK

    def draw(self) -> None:
        """Put it on the page."""
        canvas, station = self.canv, self.station
        canvas.begin_tag(
            "Figure", f"Station {station.number}: {station.performer}, hand {station.place}"
        )
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(0.5)
        canvas.rect(0, 0, MARK, MARK, stroke=1, fill=0)
        clip = canvas.beginPath()
        clip.rect(0, 0, MARK, MARK)
        canvas.saveState()
        canvas.clipPath(clip, stroke=0, fill=0)
        self._body(canvas)
        self._prop(canvas)
        canvas.restoreState()
        canvas.end_tag()

    def _prop(self, canvas: Any) -> None:
        station = self.station
        ring = np.linspace(0.0, 2 * np.pi, 49)
        side = np.cross(station.plane, station.tether)
        points = station.hand + self.length * (
            np.cos(ring)[:, None] * station.tether + np.sin(ring)[:, None] * side
        )
        near = points[:, 1] <= station.hand[1]
        for k in range(48):
            canvas.setStrokeColor(SOFT)
            canvas.setLineWidth(1.3 if near[k] and near[k + 1] else 0.45)
            canvas.line(*self._at(points[k]), *self._at(points[k + 1]))
        hand, head = self._at(station.hand), self._at(station.hand + self.length * station.tether)
        canvas.setStrokeColor(INK)
        canvas.setFillColor(INK)
        canvas.setLineWidth(2.0)
        canvas.line(*hand, *head)
        canvas.circle(*head, 3.4, stroke=0, fill=1)
        canvas.circle(*hand, 2.0, stroke=0, fill=1)
        self._arrow(canvas, station.hand + self.length * station.tether, as_floats("side", side))
        if station.cross is not None:
            x, y = self._at(station.cross)
            canvas.setLineWidth(1.1)
            canvas.line(x - 3, y - 3, x + 3, y + 3)
            canvas.line(x - 3, y + 3, x + 3, y - 3)

    def _at(self, point: Floats) -> tuple[float, float]:
        scale = MARK / (_TALL * self.size)
        x = float(point[0]) + _AHEAD[0] * float(point[1])
        y = float(point[2]) + _AHEAD[1] * float(point[1])
        return (x - _LEFT * self.size) * scale, (y - _LOW * self.size) * scale

    def _body(self, canvas: Any) -> None:
        body, size = self.body, self.size
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(3.0)
        canvas.setLineCap(1)
        hip, neck = np.array([0, 0, 0.9 * size]), np.array([0, 0, 1.4 * size])
        for foot in (-0.12, 0.12):
            canvas.line(*self._at(np.array([foot * size, 0, 0.04 * size])), *self._at(hip))
        canvas.line(*self._at(hip), *self._at(neck))
        shoulders = [self._at(body.shoulder(side)) for side in ("left", "right")]
        canvas.line(*shoulders[0], *shoulders[1])
        canvas.setFillColor(RULE)
        canvas.circle(*self._at(np.array([0, 0, 1.58 * size])), 3.4, stroke=0, fill=1)
        canvas.setLineCap(0)

    def _arrow(self, canvas: Any, head: Floats, way: Floats) -> None:
        """Direction of the prop: a small arrow from its head along the ring."""
        x0, y0 = self._at(head)
        x1, y1 = self._at(head + 0.22 * way)
        canvas.setLineWidth(1.0)
        canvas.line(x0, y0, x1, y1)
        dx, dy = x1 - x0, y1 - y0
        long = (dx * dx + dy * dy) ** 0.5
        if long > 2.0:
            ux, uy = dx / long, dy / long
            for turn in (1, -1):
                canvas.line(x1, y1, x1 - 3 * ux - turn * 2 * uy, y1 - 3 * uy + turn * 2 * ux)


def toroids(edition: Edition) -> tuple[Build, ...]:
    """Toroids and station patterns of the show's leading hands, each once for everybody who builds it alike."""
    return result_of(edition.staged, "toroids", lambda: _toroids(edition))


def _toroids(edition: Edition) -> tuple[Build, ...]:
    built: dict[Hashable, Build] = {}
    for block in edition.staged.blocks:
        dancer = next(d for d in edition.staged.dancers if d.name == block.who)
        one = _build_of(edition, block, dancer)
        if one is None:
            continue
        known = built.setdefault(one.key, one)
        if words := _placed(block, dancer):
            placed = known.places.setdefault((block.who, words), block.mirrored)
            known.places[block.who, words] = placed and block.mirrored
    return tuple(built.values())


def _build_of(edition: Edition, block: Block, dancer: Dancer) -> Build | None:
    """The build of the leading hand; for a mirrored block, as it is before left and right are swapped."""
    source: dict[Side, Side] = {"right": "right", "left": "left"}
    if block.mirrored:
        source = {"right": "left", "left": "right"}
    side = next((side for side in source if source[side] in block.hands), None)
    if side is None:
        return None
    part = block.hands[source[side]]
    values = find(part.pattern, edition.staged.book).values(part.values, side)
    for name in OFFSETS:
        values.pop(name, None)
    try:
        stations = build_steps(
            part.pattern, part.values, side=side, body=dancer.body, cycle=block.cycle,
            book=edition.staged.book,
        )  # fmt: skip
    except ValueError:  # not a toroid: no stations to build
        return None
    length = float(part.values.get("tether") or dancer.props[source[side]].length)
    return Build(
        pattern=part.pattern, side=side, stations=tuple(stations), body=dancer.body,
        length=length, key=(part.pattern, side, round(block.cycle, 6), repr(sorted(values.items()))),
    )  # fmt: skip


def _placed(block: Block, dancer: Dancer) -> str:
    """Where a performer dances it and how the body gives way; empty if both are as usual."""
    posture = block_posture(block).rstrip(".")
    clauses = [block_place(block, dancer), posture[:1].lower() + posture[1:]]
    return "; ".join(filter(None, clauses))


def _place_lines(build: Build, *, named: bool) -> list[str]:
    """A line for each performer and place."""
    return [
        f"{who}{', mirrored' if mirrored else ''}: {words}" if named else words
        for (who, words), mirrored in build.places.items()
    ]


def steps_sheet(edition: Edition) -> Sheet:
    """The teacher's pages."""
    return Sheet(name="build-steps", title="Build steps", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    builds = toroids(edition)
    facts = [
        ("Builds", str(len(builds))),
        ("Seen", "from behind, as you see it"),
        ("Hand", " or ".join(dict.fromkeys(build.side for build in builds))),
    ]
    stop = doing_on_stop(edition, None, "performer")
    story = opening(edition, room, kind="Build steps", title=edition.title, facts=facts, stop=stop)
    story.append(Prose(TextSpan("Learn unlit.", "Bold", TEXT), before=4))
    for build in builds:
        story += [CondPageBreak(300)]
        story += _build(build, room, named=len(edition.staged.dancers) > 1)
    story += cautions_block(edition, "performer", room)
    return story


def _build(build: Build, room: float, *, named: bool) -> list[Flowable]:
    stations = build.stations
    cycles = stations[-2].cycle if len(stations) > 1 else 1
    home = "comes home after one cycle"
    if cycles > 1:
        home = f"comes home the wrong way round after one cycle, and as it began after {cycles}"
    words = f"{plural(len(stations) - 1, 'half lobe')}, {number(stations[-1].beat)} beats; {home}."
    legend = (
        "Dot: hand. Thick line and ball: tether and head, the arrow says which way it turns. Ring: the prop’s plane, "
        "thick where it is nearer to you. Cross: where this plane meets the previous one."
    )
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("", "", "plane, as you see it", "hand", "what changes")]
    ]
    rows += [_row(station, cycles, build) for station in stations]
    widths = [66.0, MARK + 10, room * 0.29, room * 0.13]
    widths.append(room - sum(widths))
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        heading(build.pattern),
        Prose(TextSpan(words, "Bold", TEXT)),
        *(
            Prose(TextSpan(line.replace(" cm", f"{NB}cm"), "Regular", TEXT), after=2)
            for line in _place_lines(build, named=named)
        ),
        Prose(TextSpan(legend, "Regular", SMALL, SOFT), after=4),
        grid(rows, widths, style, repeat=1, pad=1),
    ]


def _row(station: Station, cycles: int, build: Build) -> list[Cell]:
    small = [f"count {number(station.beat)}", f"{station.half}, lobe {station.lobe}"]
    small += [f"cycle {station.cycle}"] if cycles > 1 else []
    change = [Prose(TextSpan(station.change, "Regular", TEXT), role="TD")]
    if station.cross is not None:
        change.append(
            Prose(TextSpan(f"cross: {station.cross_words}", "Regular", SMALL, SOFT), role="TD")
        )
    return [
        [
            Prose(TextSpan(str(station.number), "Poster", HEAD), leading=1.1, role="TD"),
            Prose(TextSpan("\n".join(small), "Regular", SMALL, SOFT), role="TD"),
        ],
        StationMark(station, build.length, build.body),
        [
            Prose(TextSpan(station.performer, "Bold", CUE), leading=1.2, role="TD"),
            Prose(TextSpan(f"audience: {station.audience}", "Regular", TEXT, SOFT), role="TD"),
        ],
        Prose(TextSpan(station.place, "Bold", TEXT), role="TD"),
        change,
    ]
