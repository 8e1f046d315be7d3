"""All the places of one performer on one plan, numbered in the order of the show, with the walks between them.

Stage frame [m]: X to the audience's right, Y upstage. Lengths on paper in points.
"""

from collections.abc import Sequence
from math import cos, dist, radians, sin
from typing import Any

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.free_room import Boxes
from sequencer.outputs.sheets.page.paper import INK, PAPER, SMALL, SOFT, TINY
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, one_line
from sequencer.outputs.sheets.page.wording import brief, clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.stage_plans.scene import Scene, stage_outline
from sequencer.outputs.sheets.parts.stage_plans.site_drawing import SiteDrawing
from sequencer.staging.on_floor.own_walks import own_walks
from sequencer.staging.staged import Staged

_DISC = 6.6
Visit = tuple[float, tuple[float, float, float], str]  # beat, spot, formation


def visits_of(staged: Staged, who: str) -> tuple[Visit, ...]:
    """When a performer comes to which place: at first, and at the end of each walk."""
    first = next((each for each in staged.standings if who in each.spots), None)
    if first is None:
        return ()
    visits: list[Visit] = [(first.start, first.spots[who], first.formation)]
    walks = own_walks(who, staged.standings)
    visits += [(walk.end, walk.spot, walk.standing.formation) for walk in walks]
    return tuple(visits)


class OwnPlaces(SiteDrawing):
    """The plan: a place that is danced again has one number."""

    def __init__(self, edition: Edition, who: str, *, tall: float, wide: float) -> None:
        self.places = _places(edition.staged, who)
        spots = {str(number): spot for number, (spot, _) in enumerate(self.places, start=1)}
        scene = Scene(staged=edition.staged, spots=spots, crew=False, distances=False)
        super().__init__(scene, tall=tall, wide=wide)
        xs, ys = zip(
            *(*stage_outline(edition.staged), *(spot[:2] for spot, _ in self.places)), strict=True
        )
        pad = 0.5 + 0.04 * (max(xs) - min(xs))
        self._window = (min(xs) - pad, min(ys) - pad, max(xs) + pad, max(ys) + pad)

    def draw(self) -> None:
        """Put it on the page."""
        canvas, venue = self.canv, self.scene.staged.show.venue
        canvas.begin_tag("Figure", "Your places on the stage from above, audience at the bottom")
        self.draw_ground(canvas)
        self.draw_stage(canvas, venue)
        points = [self.at(*spot[:2]) for spot, _ in self.places]
        discs = discs_apart(points)
        self.taken = Boxes((x - _DISC, y - _DISC, x + _DISC, y + _DISC) for x, y in discs)
        self.draw_audience(canvas, venue)
        self.draw_scenery(canvas, venue)
        for (x, y), (spot, _) in zip(points, self.places, strict=True):
            self._arrow(canvas, x, y, spot[2])
        for number, ((x, y), place) in enumerate(zip(discs, points, strict=True), start=1):
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(0.8)
            canvas.line(*place, x, y)
            canvas.setFillColor(INK)
            canvas.setStrokeColor(PAPER)
            canvas.setLineWidth(0.8)
            canvas.circle(x, y, _DISC, stroke=1, fill=1)
            words = TextSpan(str(number), "Bold", TINY, PAPER)
            one_line(canvas, x, y - 2.8, words, align="centre")
        self.draw_frame(canvas)
        canvas.end_tag()

    def _arrow(self, canvas: Any, x: float, y: float, facing: float) -> None:
        """Which way one faces there."""
        turn = radians(facing)
        ahead, aside = (sin(turn), -cos(turn)), (cos(turn), sin(turn))
        arrow = canvas.beginPath()
        arrow.moveTo(x + ahead[0] * (_DISC + 6), y + ahead[1] * (_DISC + 6))
        for sign in (1, -1):
            arrow.lineTo(
                x + ahead[0] * (_DISC - 1) + sign * aside[0] * 4.2,
                y + ahead[1] * (_DISC - 1) + sign * aside[1] * 4.2,
            )
        arrow.close()
        canvas.setFillColor(SOFT)
        canvas.drawPath(arrow, stroke=0, fill=1)


def discs_apart(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Where discs stand about points [pt]: each on its own, or as near as it finds room beside those before it."""
    room = 2 * _DISC + 0.8
    found: list[tuple[float, float]] = []
    for x, y in points:
        rings = (
            (0.0, 0.0),
            *((far * room / 2, turn) for far in range(1, 40) for turn in range(0, 360, 30)),
        )
        tried = (
            (x + far * cos(radians(turn)), y + far * sin(radians(turn))) for far, turn in rings
        )
        free = (each for each in tried if all(dist(each, other) >= room for other in found))
        found.append(next(free, (x, y)))
    return found


def _places(staged: Staged, who: str) -> list[tuple[tuple[float, float, float], list[Visit]]]:
    """Places in the order of the first visit, each with all its visits."""
    found: dict[tuple[int, int, int], tuple[tuple[float, float, float], list[Visit]]] = {}
    for visit in visits_of(staged, who):
        x, y, facing = visit[1]
        key = (round(20 * x), round(20 * y), round(facing) % 360)
        found.setdefault(key, (visit[1], []))[1].append(visit)
    return list(found.values())


def own_places(edition: Edition, who: str, *, wide: float, tall: float) -> list[Flowable]:
    """The plan above its key: number, name of the formation, and when one comes there; nothing without formations."""
    plan = OwnPlaces(edition, who, tall=tall, wide=wide)
    if not plan.places:
        return []
    staged = edition.staged
    lines: list[Flowable] = []
    for number, (_, visits) in enumerate(plan.places, start=1):
        names = ", ".join(dict.fromkeys(brief(name) for _, _, name in visits))
        times = ", ".join(clock(max(staged.seconds(beat), 0.0)) for beat, _, _ in visits)
        spans = [
            TextSpan(f"{number}  {names}  ", "Bold", SMALL),
            TextSpan(times, "Regular", SMALL, SOFT),
        ]
        lines.append(Prose(spans, leading=1.2))
    return [plan, *lines]
