"""The captain's formation book: a plan for each change, and who walks where in how many counts.

Lengths in points.
"""

from functools import partial
from math import hypot, inf

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import Cell, Disc, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, INK, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    brief,
    clock,
    facing_words,
    metres,
    place_words,
    plural,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.formation_plans import (
    is_crowded,
    scene_of,
    ways_to,
    wings_words,
)
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    doing_on_stop,
    findings_block,
    notes_block,
    opening,
)
from sequencer.outputs.sheets.parts.plan import StagePlan
from sequencer.outputs.sheets.parts.scene import way_length
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip

_PLAN_BESIDE, _PLAN_TALL = 0.46, 168.0  # share of the width, and height, of a plan beside its words
_GUTTER = 12.0
_ACROSS = 4  # names in one row
_NARROW = 400.0  # width below which place, facing and walk are one column


def book_sheet(edition: Edition) -> Sheet:
    """The captain's pages."""
    return Sheet(name="formation-book", title="Formation book", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    staged = edition.staged
    room = page.inner
    facts = [
        ("Performers", str(len(staged.show.names))),
        ("Formations", str(len(staged.standings))),
        ("Changes", str(max(len(staged.standings) - 1, 0))),
        ("Length", clock(staged.song.duration)),
        ("Tempo", f"{staged.song.tempo:.0f} a minute"),
    ]
    stop = doing_on_stop(edition, None, "everybody")
    story = opening(
        edition,
        room,
        kind="Formation book",
        title=edition.title,
        facts=facts,
        stop=stop,
        close=True,
    )
    group = [f for f in edition.findings_for() if len(f.who) != 1 or f.severity == "stop"]
    story += findings_block(edition, group, room, title="Findings about the group")
    story += [Spacer(1, 8), TimelineStrip(edition), Spacer(1, 6)]
    story += _cast(edition, room)
    for index in range(len(staged.standings)):
        story += _change(edition, index, page)
    story += notes_block(edition, group, room)
    story += cautions_block(edition, "captain", room)
    return story


def _cast(edition: Edition, room: float) -> list[Flowable]:
    """Numbers and names, several to a row."""
    cells: list[list[Cell]] = [
        [
            Disc(str(edition.number_of(name)), 16),
            Prose(TextSpan(brief(edition.person(name)), "Bold", TEXT), role="TD"),
        ]
        for name in edition.staged.show.names
    ]
    cells += [["", ""]] * (-len(cells) % _ACROSS)
    rows = [
        [cell for each in cells[k : k + _ACROSS] for cell in each]
        for k in range(0, len(cells), _ACROSS)
    ]
    widths = [24.0, room / _ACROSS - 24.0] * _ACROSS
    return [heading("Who is who", level=2, before=4), grid(rows, widths, pad=2, by_cell=True)]


def _change(edition: Edition, index: int, page: Page) -> list[Flowable]:
    staged = edition.staged
    standing = staged.standings[index]
    beats = standing.start - standing.walk
    start = staged.seconds(standing.walk)
    when = f"{clock(start)}, bar {staged.position(standing.walk)}"
    if beats > 0:
        when += (
            f" – {clock(staged.seconds(standing.start))}, bar {staged.position(standing.start)}"
            f"   ·   {plural(beats, 'count')}"
        )
    until = min(staged.seconds(standing.end), staged.song.duration)
    lasts = f"until {clock(until)}; section {staged.section_at(standing.start) or 'none'}"
    scene = scene_of(edition, index, crew=False)
    words = [
        heading(f"{index + 1}  {standing.formation}", before=0),
        Prose(TextSpan(when, "Bold", CUE)),
        Prose(TextSpan(lasts, "Regular", TEXT, SOFT), after=2),
    ]
    beside = page.inner * _PLAN_BESIDE - _GUTTER
    if not is_crowded(scene, tall=_PLAN_TALL, wide=beside):
        plan = StagePlan(scene, tall=_PLAN_TALL, wide=beside)
        ways = _ways(edition, index, page.inner * (1 - _PLAN_BESIDE))
        cells = [[plan, [*words, ways]]]
        widths = [page.inner * _PLAN_BESIDE, page.inner * (1 - _PLAN_BESIDE)]
        row = grid(cells, widths, pad=4, gutter=_GUTTER, lines=False, by_cell=True)
        if row.wrap(page.inner, inf)[1] < page.tall:
            return [row]
    tall = page.tall * (0.5 if is_crowded(scene, tall=page.tall * 0.24, wide=page.inner) else 0.24)
    high = 22.0 + 25.0 * len(standing.spots)
    return [
        CondPageBreak(min(tall + high + 62, page.tall)),
        Spacer(1, 8),
        *words,
        StagePlan(scene, tall=tall),
        Spacer(1, 2),
        _ways(edition, index, page.inner),
    ]


def _ways(edition: Edition, index: int, room: float) -> Flowable:
    staged = edition.staged
    standing = staged.standings[index]
    before = staged.standings[index - 1].spots if index else {}
    seconds = max(staged.seconds(standing.start) - staged.seconds(standing.walk), 1e-9)
    ways = ways_to(staged, standing) if index else {}
    narrow = room < _NARROW
    widths = [24.0 if narrow else 28.0, room * (0.24 if narrow else 0.17)]
    widths += [] if narrow else [room * 0.31, room * 0.19]
    widths.append(room - sum(widths))
    heads = ("", "who", "to, facing, walk") if narrow else ("", "who", "to", "face", "walk")
    rows: list[list[Cell]] = [[head_cell(w) for w in heads]]
    for name, (x, y, facing) in standing.spots.items():
        path = ways.get(name, ())
        long = way_length(path)
        way = "stands"
        if long >= 0.05:
            curved = long > 1.01 * hypot(path[-1][0] - path[0][0], path[-1][1] - path[0][1])
            way = f"{metres(long)} {'curved' if curved else 'straight'}, mean {long / seconds:.1f}{NB}m/s"
        elif name in before and before[name] != standing.spots[name]:
            way = "turns"
        elif name not in before and index:
            way = "enters"
        if comings := standing.comings_of(name):
            way = ", ".join((*(each.words for each in comings), way))
        words = [
            f"{wings_words(staged, standing, name)}{place_words(x, y)}",
            facing_words(facing),
            way,
        ]
        words = [f"{words[0]}; facing {words[1]}; {words[2]}"] if narrow else words
        rows.append(
            [
                Disc(str(edition.number_of(name)), 16 if narrow else 18),
                Prose(
                    TextSpan(brief(name), "Bold", TEXT if narrow else CUE), leading=1.2, role="TD"
                ),
                *(Prose(TextSpan(each, "Regular", SMALL), role="TD") for each in words),
            ]
        )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return grid(rows, widths, style, repeat=1, pad=1.0 if narrow else 1.5)
