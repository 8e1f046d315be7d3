"""Build steps of the toroids that a show dances: each station with a drawing, for a teacher to hand on.

Drawn from behind, as the performer sees it: x to the right, z up, what is ahead a little higher and to the
right. Lengths on paper in points, in the drawing metres of the body frame.
"""

from functools import partial
from typing import Any

import numpy as np
from reportlab.platypus import CondPageBreak, Flowable

from sequencer.arrays import Floats, as_floats
from sequencer.geometry.bodies import Body
from sequencer.motion.steps import Station, build_steps
from sequencer.outputs.sheets.blocks import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.furniture import Sheet
from sequencer.outputs.sheets.notices import cautions_block, opening
from sequencer.outputs.sheets.paper import CUE, HEAD, INK, RULE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.prose import Prose, Span
from sequencer.outputs.sheets.wording import number, plural
from sequencer.show.staged import HandWords

STATURE = 1.70  # [m] of the body that is drawn and measured
LENGTH = 0.55  # [m] of the tether that is drawn
MARK = 78.0  # side of a drawing
_LEFT, _LOW, _TALL = -0.72, 0.45, 2.05  # [m] of the drawing: left and lower edge, height and width
_AHEAD = (0.28, 0.16)  # of a metre ahead, to the right and up


class StationMark(Flowable):  # type: ignore[misc]
    """One station: body, hand, tether with its head, and the ring of the prop's plane."""

    def __init__(self, station: Station, length: float) -> None:
        super().__init__()
        self.station, self.length = station, length

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
        scale = MARK / _TALL
        x = float(point[0]) + _AHEAD[0] * float(point[1])
        y = float(point[2]) + _AHEAD[1] * float(point[1])
        return (x - _LEFT) * scale, (y - _LOW) * scale

    def _body(self, canvas: Any) -> None:
        body = Body(stature=STATURE)
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(3.0)
        canvas.setLineCap(1)
        hip, neck = np.array([0, 0, 0.9]), np.array([0, 0, 1.4])
        for foot in (-0.12, 0.12):
            canvas.line(*self._at(np.array([foot, 0, 0.04])), *self._at(hip))
        canvas.line(*self._at(hip), *self._at(neck))
        shoulders = [self._at(body.shoulder(side)) for side in ("left", "right")]
        canvas.line(*shoulders[0], *shoulders[1])
        canvas.setFillColor(RULE)
        canvas.circle(*self._at(np.array([0, 0, 1.58])), 3.4, stroke=0, fill=1)
        canvas.setLineCap(0)

    def _arrow(self, canvas: Any, head: Floats, way: Floats) -> None:
        """Which way the prop turns: a small arrow from its head along the ring."""
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


def toroids(edition: Edition) -> tuple[tuple[HandWords, tuple[Station, ...]], ...]:
    """Toroids and station patterns of the show's right hands, each set of parameters once."""
    found: dict[tuple[str, str], tuple[HandWords, tuple[Station, ...]]] = {}
    for block in edition.staged.blocks:
        part = block.hands.get("right") or block.hands.get("left")
        if part is None:
            continue
        key = (part.pattern, repr(sorted(part.parameters.items())))
        if key in found:
            continue
        try:
            stations = build_steps(part.pattern, part.parameters, body=Body(stature=STATURE))
        except ValueError:  # no toroid: nothing to build by stations
            continue
        found[key] = (part, tuple(stations))
    return tuple(found.values())


def steps_sheet(edition: Edition) -> Sheet:
    """The teacher's pages."""
    return Sheet(name="build-steps", title="Build steps", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    builds = toroids(edition)
    facts = [
        ("Builds", str(len(builds))),
        ("Seen", "from behind, as you see it"),
        ("Hand", "right"),
    ]
    stop = "Learn unlit. Lit: stop the props, low, away from people; stay, your spotter comes."
    story = opening(edition, room, kind="Build steps", title=edition.title, facts=facts, stop=stop)
    for part, stations in builds:
        story += [CondPageBreak(300)]
        story += _build(part, stations, room)
    story += cautions_block(edition, "performer", room)
    return story


def _build(part: HandWords, stations: tuple[Station, ...], room: float) -> list[Flowable]:
    cycles = stations[-2].cycle if len(stations) > 1 else 1
    home = "comes home after one cycle"
    if cycles > 1:
        home = f"comes home turned round after one cycle, and as it began after {cycles}"
    words = f"{plural(len(stations) - 1, 'half lobe')}, {number(stations[-1].beat)} beats; {home}."
    legend = (
        "Dot: hand. Thick line and ball: tether and head, the arrow says which way it turns. Ring: the prop’s plane, "
        "thick where it is nearer to you. Cross: where this plane meets the one before."
    )
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("", "", "plane, as you see it", "hand", "what changes")]
    ]
    rows += [_row(station, cycles) for station in stations]
    widths = [66.0, MARK + 10, room * 0.29, room * 0.13]
    widths.append(room - sum(widths))
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [
        heading(part.pattern),
        Prose(Span(words, "Bold", TEXT)),
        Prose(Span(legend, "Regular", SMALL, SOFT), after=4),
        grid(rows, widths, style, repeat=1, pad=1),
    ]


def _row(station: Station, cycles: int) -> list[Cell]:
    small = [f"count {number(station.beat)}", f"{station.half}, lobe {station.lobe}"]
    small += [f"cycle {station.cycle}"] if cycles > 1 else []
    change = [Prose(Span(station.change, "Regular", TEXT), role="TD")]
    if station.cross is not None:
        change.append(
            Prose(Span(f"cross: {station.cross_words}", "Regular", SMALL, SOFT), role="TD")
        )
    return [
        [
            Prose(Span(str(station.number), "Poster", HEAD), leading=1.1, role="TD"),
            Prose(Span("\n".join(small), "Regular", SMALL, SOFT), role="TD"),
        ],
        StationMark(station, LENGTH),
        [
            Prose(Span(station.performer, "Bold", CUE), leading=1.2, role="TD"),
            Prose(Span(f"audience: {station.audience}", "Regular", TEXT, SOFT), role="TD"),
        ],
        Prose(Span(station.place, "Bold", TEXT), role="TD"),
        change,
    ]
