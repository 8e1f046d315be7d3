"""The whole show on one strip: the song's sections and energy, formations, who dances and who is lit.

Lengths in points. Time runs evenly from left to right over the whole track.
"""

from collections.abc import Sequence
from typing import Any

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.bidi import apart
from sequencer.outputs.sheets.page.letters import width
from sequencer.outputs.sheets.page.paper import (
    FLAME,
    HAIR,
    INK,
    MIST,
    PAPER,
    RULE,
    SMALL,
    SOFT,
    TINY,
)
from sequencer.outputs.sheets.page.prose import TextSpan, one_line
from sequencer.outputs.sheets.page.wording import clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.timing.form import song_form

LABELS = 104.0  # space for names on the left
BAND, CURVE, AXIS, _FLOOR, LEGEND = 14.0, 34.0, 24.0, 13.0, 17.0
STEPS = (5, 10, 15, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600)  # [s] between times on the axis


class TimelineStrip(Flowable):  # type: ignore[misc]
    """The strip, as wide as the space allows.

    Parameters
    ----------
    edition : Edition
    focus : str, optional
        The performer whose sheet this is; that lane is taller.
    lanes : bool
        Draw a lane for every performer, or only for the one in focus.
    names : sequence of str, optional
        Performers whose lanes to draw instead.
    """

    def __init__(
        self,
        edition: Edition,
        *,
        focus: str | None = None,
        lanes: bool = True,
        names: Sequence[str] | None = None,
    ) -> None:
        super().__init__()
        self.edition, self.focus = edition, focus
        cast = edition.staged.show.names
        self.names = (
            tuple(n for n in cast if lanes or n == focus) if names is None else tuple(names)
        )
        self.label_room = LABELS if self.names else 0.0

    @property
    def description(self) -> str:
        """What it shows, for comparison with another strip."""
        staged = self.edition.staged
        song = [(s.label, round(s.start, 1), round(s.end, 1)) for s in staged.song.sections]
        stands = [
            (s.formation, round(s.walk, 3), round(s.start, 3), round(s.end, 3))
            for s in staged.standings
        ]
        lanes = [
            (
                self.edition.number_of(name),
                name,
                [(round(b.start, 3), round(b.end, 3), b.link) for b in staged.blocks_of(name)],
                [(round(b.start, 3), round(b.end, 3)) for b in staged.lit_of(name)],
                [
                    (round(burn.alight_s, 3), round(burn.out_s, 3), burn.dry_s)
                    for burn in self.edition.plan.burns
                    if burn.who == name
                ],
            )
            for name in self.names
        ]
        return f"[timeline {song} {stands} {lanes}"

    def wrap(self, room: float, _tall: float) -> tuple[float, float]:
        """As wide as the space; one lane per performer."""
        self.width = room
        self.height = (
            BAND + CURVE + AXIS + _FLOOR + sum(map(self._lane_height, self.names)) + LEGEND
        )
        return self.width, self.height

    def split(self, room: float, tall: float) -> list[Flowable]:
        """Two strips if not all lanes fit, each with the song above its lanes."""
        _, high = self.wrap(room, tall)
        left = tall - (high - sum(map(self._lane_height, self.names)))
        count = 0
        for name in self.names:
            left -= self._lane_height(name)
            if left < 0:
                break
            count += 1
        if not 0 < count < len(self.names) or count < min(8, len(self.names)):
            return []
        parts = (self.names[:count], self.names[count:])
        return [TimelineStrip(self.edition, focus=self.focus, names=part) for part in parts]

    def _lane_height(self, name: str) -> float:
        return 20.0 if name == self.focus else 12.5

    def x(self, seconds: float) -> float:
        """Position of a second of the track."""
        share = min(max(seconds / self.edition.staged.song.duration, 0.0), 1.0)
        return self.label_room + share * (self.width - self.label_room)

    def draw(self) -> None:
        """Put the strip on the page."""
        canvas = self.canv
        begin = getattr(canvas, "begin_tag", None)
        if begin is not None:
            begin("Figure", "Timeline of the whole show over the song's sections and energy")
        top = self.height
        self._sections(canvas, top - BAND, top - BAND - CURVE)
        self._energy(canvas, top - BAND - CURVE)
        top -= BAND + CURVE
        self._axis(canvas, top)
        top -= AXIS
        self._floor(canvas, top - _FLOOR)
        top -= _FLOOR + 2
        for name in self.names:
            tall = self._lane_height(name)
            self._lane(canvas, name, top - tall, tall)
            top -= tall
        self._legend(canvas, 2.0)
        if begin is not None:
            canvas.end_tag()

    def _sections(self, canvas: Any, base: float, floor: float) -> None:
        song = self.edition.staged.song
        one_line(
            canvas, 0, base + 4, TextSpan("song", "Regular", TINY, SOFT), room=self.label_room or 1
        )
        names = song.section_names()
        for index, (section, name) in enumerate(zip(song.sections, names, strict=True)):
            a, b = self.x(section.start), self.x(section.end)
            if index % 2 == 0:
                canvas.setFillColor(MIST)
                canvas.rect(a, floor, b - a, base + BAND - floor, stroke=0, fill=1)
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(HAIR)
            canvas.line(a, floor, a, base + BAND)
            if b - a > 14:
                one_line(canvas, a + 3, base + 4, TextSpan(name, "Bold", TINY, INK), room=b - a - 5)
        for group in (group for part in song_form(song) for group in part.groups[1:]):
            at = self.x(group.start)  # fours of eights
            canvas.line(at, base, at, base + 3)

    def _energy(self, canvas: Any, base: float) -> None:
        energy = self.edition.staged.song.energy
        if not energy:
            return
        columns = max(int((self.width - self.label_room) / 1.5), 1)
        span = self.width - self.label_room
        path = canvas.beginPath()
        path.moveTo(self.label_room, base)
        tops = []
        for k in range(columns + 1):
            low = int(k * len(energy) / (columns + 1))
            high = max(int((k + 1) * len(energy) / (columns + 1)), low + 1)
            level = sum(energy[low:high]) / (high - low)
            point = (
                self.label_room + span * k / columns,
                base + min(max(level, 0.0), 1.0) * (CURVE - 4),
            )
            path.lineTo(*point)
            tops.append(point)
        path.lineTo(self.width, base)
        path.close()
        canvas.setFillColor(RULE)
        canvas.drawPath(path, stroke=0, fill=1)
        line = canvas.beginPath()
        line.moveTo(*tops[0])
        for point in tops[1:]:
            line.lineTo(*point)
        canvas.setStrokeColor(SOFT)
        canvas.setLineWidth(0.7)
        canvas.drawPath(line, stroke=1, fill=0)
        one_line(
            canvas,
            0,
            base + CURVE / 2 - 4,
            TextSpan("energy", "Regular", TINY, SOFT),
            room=self.label_room or 1,
        )

    def _axis(self, canvas: Any, base: float) -> None:
        staged = self.edition.staged
        duration = staged.song.duration
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.8)
        canvas.line(self.label_room, base, self.width, base)
        pace = (self.width - self.label_room) / duration
        step = next((s for s in STEPS if s * pace >= 34), STEPS[-1])
        one_line(
            canvas, 0, base - 10, TextSpan("time", "Regular", TINY, SOFT), room=self.label_room or 1
        )
        one_line(
            canvas, 0, base - 20, TextSpan("bar", "Regular", TINY, SOFT), room=self.label_room or 1
        )
        for k in range(int(duration // step) + 1):
            x = self.x(k * step)
            words = clock(k * step)
            if x + width(words, "Regular") * TINY > self.width:
                continue
            canvas.line(x, base, x, base - 3)
            one_line(canvas, x + 1.5, base - 10, TextSpan(words, "Regular", TINY, INK))
        self._bars(canvas, base, pace)

    def _bars(self, canvas: Any, base: float, pace: float) -> None:
        staged = self.edition.staged
        last = staged.tempo.position_of(
            float(staged.tempo.beats_from_seconds(staged.song.duration))
        ).bar
        bars = max(last, 1)
        step = next(
            (
                n
                for n in (1, 2, 4, 8, 16, 32, 64, 128, 256)
                if n * staged.song.duration / bars * pace >= 24
            ),
            512,
        )
        for bar in range(1, bars + 1, step):
            x = self.x(staged.seconds(float(staged.tempo.bar_start(bar))))
            if x + 16 > self.width:
                break
            canvas.setLineWidth(HAIR)
            canvas.line(x, base, x, base + 2)
            one_line(canvas, x + 1.5, base - 20, TextSpan(str(bar), "Regular", TINY, SOFT))

    def _floor(self, canvas: Any, base: float) -> None:
        staged = self.edition.staged
        if not staged.standings:
            return
        one_line(
            canvas,
            0,
            base + 3.5,
            TextSpan("formation", "Regular", TINY, SOFT),
            room=self.label_room or 1,
        )
        for standing in staged.standings:
            walk, a = self.x(staged.seconds(standing.walk)), self.x(staged.seconds(standing.start))
            b = self.x(min(staged.seconds(standing.end), staged.song.duration))
            if a - walk > 0.5:
                canvas.setStrokeColor(SOFT)
                canvas.setLineWidth(0.7)
                for k in range(max(int((a - walk) // 3), 1)):
                    canvas.line(walk + 3 * k, base + 2, min(walk + 3 * k + 4, a), base + 10)
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(HAIR)
            canvas.rect(a, base + 1, max(b - a - 1, 0.5), 10.5, stroke=1, fill=0)
            if b - a > 14:
                one_line(
                    canvas,
                    a + 2,
                    base + 3.5,
                    TextSpan(standing.formation, "Regular", TINY, INK),
                    room=b - a - 5,
                )

    def _legend(self, canvas: Any, base: float) -> None:
        x = self.label_room
        for words, draw in (("dances", self._dances), ("lit", self._lit), ("wick dry", self._dry)):
            draw(canvas, x, base + 3)
            x += 27 + one_line(canvas, x + 21, base, TextSpan(words, "Regular", TINY, SOFT)) + 8

    @staticmethod
    def _dances(canvas: Any, x: float, y: float) -> None:
        canvas.setFillColor(PAPER)
        canvas.setStrokeColor(SOFT)
        canvas.setLineWidth(HAIR)
        canvas.rect(x, y - 3, 17, 6, stroke=1, fill=1)

    @staticmethod
    def _lit(canvas: Any, x: float, y: float) -> None:
        canvas.setFillColor(FLAME)
        canvas.rect(x, y - 1.9, 17, 3.8, stroke=0, fill=1)

    @staticmethod
    def _dry(canvas: Any, x: float, y: float) -> None:
        canvas.setStrokeColor(FLAME)
        canvas.setLineWidth(0.8)
        canvas.setDash(1, 1.5)
        canvas.line(x, y, x + 17, y)
        canvas.setDash()
        canvas.line(x + 17, y - 3, x + 17, y + 3)

    def _lane(self, canvas: Any, name: str, base: float, tall: float) -> None:
        staged = self.edition.staged
        focused = name == self.focus
        number = self.edition.number_of(name)
        one_line(
            canvas,
            0,
            base + tall / 2 - 3,
            TextSpan(
                f"{number}  {apart(name)}",
                "Bold" if focused or self.focus is None else "Regular",
                SMALL if focused else TINY,
                INK,
            ),
            room=self.label_room - 6,
        )
        middle = base + tall / 2
        canvas.setStrokeColor(RULE)
        canvas.setLineWidth(HAIR)
        canvas.line(self.label_room, base, self.width, base)
        half = 4.8 if focused else 3.0
        for block in staged.blocks_of(name):
            a, b = self.x(staged.seconds(block.start)), self.x(staged.seconds(block.end))
            canvas.setFillColor(PAPER)
            canvas.setStrokeColor(SOFT)
            canvas.rect(a, middle - half, max(b - a, 0.4), 2 * half, stroke=1, fill=1)
        for burn in self.edition.plan.burns:
            if burn.who != name:
                continue
            a, b = self.x(burn.alight_s), self.x(burn.out_s)
            canvas.setFillColor(FLAME)
            canvas.rect(a, middle - half * 0.6, b - a, half * 1.2, stroke=0, fill=1)
            if burn.dry_s is not None:
                until = self.x(burn.dry_s)
                canvas.setStrokeColor(FLAME)
                canvas.setLineWidth(0.8)
                if until > b:
                    canvas.setDash(1, 1.5)
                    canvas.line(b, middle, until, middle)
                    canvas.setDash()
                canvas.line(until, middle - half, until, middle + half)
