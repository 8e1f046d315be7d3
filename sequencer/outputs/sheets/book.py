"""The captain's formation book: a plan for each change, and who walks where in how many counts.

Lengths in points.
"""

from collections.abc import Iterable, Sequence
from functools import partial
from math import dist, hypot, inf

from reportlab.platypus import Flowable, PageBreak, Spacer

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
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    brief_notes,
    cautions_block,
    doing_on_stop,
    findings_block,
    opening,
)
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import (
    scene_of,
    ways_to,
    wings_words,
)
from sequencer.outputs.sheets.parts.stage_plans.marks_plan import MarksPlan
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stage_plans.scene import Spot, way_length
from sequencer.outputs.sheets.parts.stage_plans.spike_marks import (
    SpikeMark,
    fixed_points,
    mark_at,
    sides,
    spike_marks,
)
from sequencer.outputs.sheets.parts.stage_plans.walk_marks import crossing_words
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.staging.staged import Staged

_ACROSS = 4  # names in one row
_HEADING = 74.0  # height of a page's words above its plan


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
    story += cautions_block(edition, "captain", room, columns=3)
    story += _floor_marks(edition, page)
    notes = brief_notes(edition, group)
    last = len(staged.standings) - 1
    for index in range(last + 1):
        story += _change(edition, index, page, notes if index == last else [])
    return story if last >= 0 else [*story, *notes]


def _floor_marks(edition: Edition, page: Page) -> list[Flowable]:
    """Every mark on one plan, and how far it is from the two fixed points."""
    staged = edition.staged
    marks = spike_marks(staged)
    if not marks:
        return []
    a, b = fixed_points(staged)
    usual, other = sides(staged)
    words = (
        f"A is {a.words}, B {b.words}; {metres(dist(a.place, b.place), decimals=2)} apart. Hold one tape at A, one at B: the mark "
        f"is where the two lengths meet. Of the line from A to B it is {usual}"
    )
    words += f"; a mark with * is {other}." if any(m.behind for m in marks) else "."
    if any(mark.weak for mark in marks):
        words += (
            " At a mark with ~ the two tapes cross too flatly: a centimetre of tape is more than "
            "four on the floor. Measure it from the centre line and the front edge."
        )
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("mark", "from A", "from B", "from centre and front", "who")]
    ]
    for mark in marks:
        uses: dict[str, list[str]] = {}
        for formation, who in mark.uses:
            uses.setdefault(formation, []).append(brief(who, most=16))
        who = "; ".join(f"{brief(name, most=24)}: {', '.join(each)}" for name, each in uses.items())
        cells = [
            TextSpan(f"{mark.number}{_signs(mark)}", "Poster", CUE),
            *(TextSpan(metres(long, decimals=2), "Bold", TEXT) for long in mark.lengths),
            TextSpan(place_words(*mark.place), "Regular", SMALL),
            TextSpan(who, "Regular", SMALL),
        ]
        rows.append([Prose(span, leading=1.15, role="TD") for span in cells])
    widths = [34.0, 56.0, 56.0, page.inner * 0.27]
    widths.append(page.inner - sum(widths))
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    table = grid(rows, widths, style, repeat=1, pad=1.2)
    left = page.tall - table.wrap(page.inner, inf)[1] - 76.0
    plan = MarksPlan(edition, tall=min(max(left, 150.0), page.inner * 0.8))
    return [
        PageBreak(),
        heading("Floor marks", before=0),
        Prose(TextSpan(words, "Regular", TEXT), after=4),
        plan,
        Spacer(1, 4),
        table,
    ]


def _signs(mark: SpikeMark) -> str:
    return f"{'*' if mark.behind else ''}{'~' if mark.weak else ''}"


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


def _change(edition: Edition, index: int, page: Page, after: Sequence[Flowable]) -> list[Flowable]:
    """One formation: its plan, as large as the page allows, who walks there how, and what comes after."""
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
    scene = scene_of(edition, index, crew=False, close=True)
    ways = _ways(edition, index, page.inner)
    words = [
        heading(f"{index + 1}  {standing.formation}", before=0),
        Prose(TextSpan(when, "Bold", CUE)),
        Prose(TextSpan(lasts, "Regular", TEXT, SOFT), after=2),
    ]
    below = [
        ways,
        *_crossings(edition, index),
        *_key_of_signs(staged, standing.spots.values()),
        *after,
    ]
    needed = _HEADING + sum(
        part.wrap(page.inner, inf)[1] + part.getSpaceBefore() + part.getSpaceAfter()
        for part in below
    )
    # as large as the page allows; of a very large cast the ways go on overleaf
    tall = max(page.tall - needed, 0.5 * page.tall)
    return [PageBreak(), *words, StagePlan(scene, tall=tall), Spacer(1, 2), *below]


def _crossings(edition: Edition, index: int) -> list[Flowable]:
    """Who passes first where ways cross, if the ways say so."""
    standing = edition.staged.standings[index]
    ways = ways_to(edition.staged, standing) if index else {}
    words = "; ".join(crossing_words(ways, standing.start - standing.walk))
    if not words:
        return []
    return [
        Prose(
            [
                TextSpan("Where ways cross  ", "Bold", SMALL),
                TextSpan(edition.in_order(words), "Regular", SMALL),
            ]
        )
    ]


def _key_of_signs(staged: Staged, spots: Iterable[Spot]) -> list[Flowable]:
    """What * and ~ at lengths mean, if any of these places has one."""
    signs = "".join(_signs(mark) for x, y, _ in spots if (mark := mark_at(staged, (x, y))))
    words = []
    if "*" in signs:
        words.append(f"* of the line from A to B this mark is {sides(staged)[1]}")
    if "~" in signs:
        words.append("~ tapes cross too flatly: measure from the centre line and the front edge")
    return [Prose(TextSpan("   ".join(words), "Regular", SMALL, SOFT))] if words else []


def _ways(edition: Edition, index: int, room: float) -> Flowable:
    staged = edition.staged
    standing = staged.standings[index]
    before = staged.standings[index - 1].spots if index else {}
    seconds = max(staged.seconds(standing.start) - staged.seconds(standing.walk), 1e-9)
    ways = ways_to(staged, standing) if index else {}
    widths = [28.0, room * 0.15, room * 0.23, room * 0.18, room * 0.16]
    widths.append(room - sum(widths))
    heads = ("", "who", "to", "from A, from B", "face", "walk")
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
        mark = mark_at(staged, (x, y))
        lengths = ", ".join(metres(each, decimals=2) for each in mark.lengths) if mark else ""
        lengths += _signs(mark) if mark else ""
        words = [
            f"{wings_words(staged, standing, name)}{place_words(x, y)}",
            lengths,
            facing_words(facing),
            way,
        ]
        rows.append(
            [
                Disc(str(edition.number_of(name)), 18),
                Prose(TextSpan(brief(name), "Bold", CUE), leading=1.2, role="TD"),
                *(Prose(TextSpan(each, "Regular", SMALL), role="TD") for each in words),
            ]
        )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return grid(rows, widths, style, repeat=1, pad=1.5)
