"""Build steps of the toroids that a show dances, as it dances them: each step drawn and said, for a teacher to hand out.

Each round of the hand is a row of steps; where a second round brings the poi the other way round, it stands beside the first.
Lengths on paper in points, in the drawing in metres of the body frame.
"""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, field
from functools import partial
from math import inf

import numpy as np
from reportlab.platypus import CondPageBreak, Flowable

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Body, Side
from sequencer.geometry.posture import Posture
from sequencer.motion.patterns.build_steps import Station, build_steps
from sequencer.motion.patterns.library import find
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, HEAD, INK, LEAD_SIZE, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, plural
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import cautions_block, doing_on_stop, opening
from sequencer.outputs.sheets.parts.stage_plans.step_mark import StepMark
from sequencer.outputs.station_picture import HandAt, Stroke, station_picture, window
from sequencer.outputs.words.place_words import block_place, danced_span
from sequencer.outputs.words.posture_words import block_posture
from sequencer.outputs.words.station_words import (
    FoldedStep,
    StepWords,
    clock_view,
    folded_steps,
    hand_words,
    spoken_count,
    started_at,
    step_words,
)
from sequencer.staging.results import result_of
from sequencer.staging.staged import Block

OFFSETS = ("across", "ahead", "up")  # of the hand circle's centre
_LARGE, _SMALLEST = 78.0, 52.0  # side of a drawing
_COUNT = 62.0  # width of the numbers and counts
_MIRROR = np.array(
    [-1.0, 1.0, 1.0]
)  # left and right swapped; an axis turns round but for its first part


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """A toroid or station pattern as its first performer dances it, and how others differ."""

    pattern: str
    side: Side
    stations: tuple[Station, ...]  # as danced: from the block's start, counted from it
    others: tuple[HandAt, ...]  # the other hand at each station; empty if one hand dances
    body: Body
    posture: Posture
    length: float  # [m] of the tether
    beats: float  # [beats] of the block
    cycle: float  # [beats] of one round
    key: Hashable  # the same for everybody whose stations match, seen from the hand circle's centre
    places: dict[tuple[str, str], bool] = field(default_factory=dict)
    """Performers and words, if it is not in its usual place; whether it is only mirrored."""

    @property
    def rounds(self) -> int:
        """Rounds of the hand until all is as at the start."""
        return self.stations[-2].cycle if len(self.stations) > 1 else 1

    def pictures(self) -> list[list[Stroke]]:
        """A picture of each station."""
        out = []
        for k, station in enumerate(self.stations):
            hands = [
                HandAt(
                    side=self.side, hand=station.hand, tether=station.tether,
                    plane=station.plane, length=self.length,
                )
            ]  # fmt: skip
            hands += [self.others[k]] if self.others else []
            out.append(station_picture(hands, self.body, self.posture))
        return out


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
        whole = build_steps(
            part.pattern, part.values, side=side, body=dancer.body, cycle=block.cycle,
            book=edition.staged.book,
        )  # fmt: skip
    except ValueError:  # not a toroid: no stations to build
        return None
    stations = started_at(whole, block.shift)
    length = float(part.values.get("tether") or dancer.props[source[side]].length)
    second: Side = "left" if side == "right" else "right"
    return Build(
        pattern=part.pattern, side=side, stations=tuple(stations), body=dancer.body,
        posture=block.posture, length=length, beats=block.end - block.start, cycle=block.cycle,
        others=_other_hand(block, dancer, second, source[second], stations),
        key=(
            part.pattern, side, round(block.cycle, 6), repr(sorted(values.items())), block.shift,
            block.timing, block.direction, len(block.hands),
        ),
    )  # fmt: skip


def _other_hand(
    block: Block, dancer: Dancer, side: Side, danced: Side, stations: list[Station]
) -> tuple[HandAt, ...]:
    """The other hand at the counts of the stations, as it is danced; if mirrored, as it is before the swap."""
    span = danced_span(dancer, danced, block)
    if danced not in block.hands or span is None:
        return ()
    motion = span.at(np.array([block.start + station.beat for station in stations]))
    length = float(block.hands[danced].values.get("tether") or dancer.props[danced].length)
    return tuple(
        HandAt(
            side=side, hand=_swapped(motion.hand[k], block), tether=_swapped(motion.tether[k], block),
            plane=-_swapped(motion.plane[k], block) if block.mirrored else motion.plane[k],
            length=length, leads=False,
        )
        for k in range(len(stations))
    )  # fmt: skip


def _swapped(vector: Floats, block: Block) -> Floats:
    return vector * _MIRROR if block.mirrored else vector


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
        ("Seen", "from behind, half from your right"),
        ("Hand", " or ".join(dict.fromkeys(build.side for build in builds))),
    ]
    stop = doing_on_stop(edition, None, "performer")
    story = opening(
        edition, room, kind="Build steps", title=edition.title, facts=facts, stop=stop, close=True
    )
    story.append(Prose(TextSpan("Learn unlit.", "Bold", TEXT), before=4))
    # the cautions here: a build has a page to itself, and would leave this one empty
    story += cautions_block(edition, "performer", room, columns=3)
    for build in builds:
        parts = _build(build, page, named=len(edition.staged.dancers) > 1)
        story += [CondPageBreak(min(_height(parts, room) + 2, page.tall)), *parts]
    return story


def _height(parts: Sequence[Flowable], room: float) -> float:
    return sum(
        part.wrap(room, inf)[1] + part.getSpaceBefore() + part.getSpaceAfter() for part in parts
    )


def _build(build: Build, page: Page, *, named: bool) -> list[Flowable]:
    """One build: what it comes to, its steps, and how to read them."""
    room = page.inner
    steps = folded_steps(build.stations)
    words = step_words(build.stations)
    pictures = build.pictures()
    seen = window(pictures, build.body)
    twice = any(step.again is not None for step in steps)
    top = [
        heading(build.pattern),
        Prose(TextSpan(_rounds(build), "Bold", TEXT)),
        *(
            Prose(TextSpan(line.replace(" cm", f"{NB}cm"), "Regular", TEXT), after=2)
            for line in _place_lines(build, named=named)
        ),
        Prose(TextSpan(_legend(build, twice=twice), "Regular", SMALL, SOFT), after=4),
    ]
    side = min(_LARGE, max(_SMALLEST, (page.tall - _height(top, room) - 24.0) / len(steps) - 4.0))
    heads = ["step", "first time round", "second time", ""] if twice else ["step", "", ""]
    rows: list[list[Cell]] = [[head_cell(words) for words in heads]]
    rows += [_row(step, words, pictures, seen, side) for step in steps]
    if not twice:
        rows = [rows[0], *([row[0], row[1], row[3]] for row in rows[1:])]
    widths = [_COUNT, *([side + 8] * (2 if twice else 1))]
    widths.append(room - sum(widths))
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [*top, grid(rows, widths, style, repeat=1, pad=1, gutter=6.0)]


def _rounds(build: Build) -> str:
    """How it goes in the routine, and how it comes back."""
    times = build.beats / build.cycle
    here = f"In the routine {plural(build.beats, 'count')}"
    if abs(times - round(times)) < 1e-6:
        here += f": {plural(round(times), 'time')} round, {plural(build.cycle, 'count')} each"
    else:
        here += f", {plural(build.cycle, 'count')} a round"
    if build.rounds > 1:
        return f"{here}. After one round the poi spins the other way; after {build.rounds} you are back where you began."
    return f"{here}. After one round you are back where you began."


def _legend(build: Build, *, twice: bool) -> str:
    words = (
        f"The clock is the hand’s circle {clock_view(build.stations)}. Ball: the head; ring: the way it goes round, thick "
        "where it is nearer to you, with arrows."
    )
    if build.others:
        words += f" Dark: {build.side} hand; grey: the other hand at that count."
    if twice:
        words += " Where nothing stands under the second time, it is as the first."
    return words


def _row(
    step: FoldedStep,
    words: list[StepWords],
    pictures: list[list[Stroke]],
    seen: tuple[float, float, float],
    side: float,
) -> list[Cell]:
    first, again = step.first, step.again
    said = words[first.number - 1]
    counts = [spoken_count(first.beat)]
    counts += [spoken_count(again.beat)] if again is not None else []
    number = [
        Prose(TextSpan(str(first.number), "Poster", HEAD), leading=1.05, role="TD"),
        Prose(TextSpan(f"count {', '.join(counts)}", "Bold", SMALL), leading=1.1, role="TD"),
        Prose(
            TextSpan(f"poi {first.half}", "Regular", SMALL, SOFT),
            leading=1.1,
            role="TD",
        ),
    ]
    marks: list[Cell] = [_mark(first, said, pictures, seen, side)]
    title = [TextSpan(said.way, "Bold", LEAD_SIZE)]
    if again is not None:
        other = words[again.number - 1]
        marks.append(_mark(again, other, pictures, seen, side))
        title.append(TextSpan(f"   second time {other.way}", "Bold", CUE, SOFT))
    else:
        marks.append("")
    where = f"{hand_words(said.hand)}, {said.plane}"
    lines = [
        Prose(title, leading=1.1, role="TD"),
        Prose(TextSpan(where, "Bold", TEXT), leading=1.15, role="TD"),
        Prose(
            [TextSpan("next  ", "Bold", TEXT, SOFT), TextSpan(said.then, "Regular", TEXT)],
            leading=1.15,
            role="TD",
        ),
    ]
    if again is not None and words[again.number - 1].then != said.then:
        second = words[again.number - 1].then.partition("; ")[2]
        spans = [TextSpan("second time  ", "Bold", SMALL, SOFT), TextSpan(second, "Regular", SMALL)]
        lines.append(Prose(spans, leading=1.12, role="TD"))
    return [number, *marks, lines]


def _mark(
    station: Station,
    said: StepWords,
    pictures: list[list[Stroke]],
    seen: tuple[float, float, float],
    side: float,
) -> StepMark:
    words = f"Step {station.number}: {hand_words(said.hand)}, poi {said.way}, {said.plane}"
    return StepMark(pictures[station.number - 1], seen, side=side, words=words)
