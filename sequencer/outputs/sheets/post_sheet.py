"""A page for one crew post, read at arm's length in the dark: stop call, rows of the act, a small plan for each.

Nothing on it is smaller than `DARK_SIZE`; what is for reading beforehand is on the crew's shared sheet. Lengths in points.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from math import inf

import numpy as np
from reportlab.platypus import Flowable, PageBreak, Spacer

from sequencer.facts.cautions import page_one
from sequencer.geometry.walking import NO_WAY
from sequencer.outputs.sheets.page.bars import Grid
from sequencer.outputs.sheets.page.elements import Cell, Disc, grid
from sequencer.outputs.sheets.page.letters import clipped, printable, width
from sequencer.outputs.sheets.page.marking import ChangesNote
from sequencer.outputs.sheets.page.paper import DARK_SIZE, INK, PAPER, RULE, WATCH, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, at_most, brief, listed, slug
from sequencer.outputs.sheets.parts.cues import place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet, first_caution
from sequencer.outputs.sheets.parts.notices import doing_on_stop
from sequencer.outputs.sheets.parts.own_side import OwnSide, Point, own_side
from sequencer.outputs.sheets.parts.post_acts import PostAct, post_acts
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import WAY_POINTS
from sequencer.outputs.sheets.parts.stage_plans.post_plan import PlanMark, PostPlan, PostScene
from sequencer.outputs.sheets.parts.stage_plans.scene import stage_outline, way_length
from sequencer.safety.duties.people import named_in
from sequencer.show.file_records.evening import Emergency
from sequencer.show.model import CrewMember

_SAME = 1e-6  # [beats]
_STANDS = 0.05  # [m] a shorter way is none
_TIMES = 78.0  # width of the times
_LEFT, _PLANS = 0.29, 0.28  # shares of the page: who and where, and the plans
_GAP = 10.0
_MOST_PLAN = 360.0  # height
_PAD = 3.0
_DUTY = {
    "spotter": "Watch your performer from the torch until the wick is cold. That is all you do.",
    "perimeter": "Watch the edge, not the show.",
    "fuel keeper": "Stay with the fuel. Never more than one can open.",
    "lighter": "Light in this order, on the lead’s word only.",
    "lead": "Watch all of it. You say go; anybody may say stop.",
}


@dataclass(frozen=True, slots=True)
class _RowSizes:
    """Sizes of type in the rows."""

    time: float
    order: float
    cue: float
    plan: float  # least height of the plan beside them


_ROW_SIZES = (
    _RowSizes(34, 26, 18, 84),
    _RowSizes(30, 22, 17, 80),
    _RowSizes(26, 19, 16, 76),
    _RowSizes(24, 17, 15, 72),
    _RowSizes(24, 15, 14, 64),
    _RowSizes(24, 15, 14, 56),
)
_BAND_SIZES = (24.0, 22.0, 20.0, 18.0, 16.0, DARK_SIZE)
_BAND_SHARES = (0.31, 0.36, 0.42, 0.48)  # of the width, for the call
_NAME_SIZES = (34.0, 28.0, 22.0, 18.0, DARK_SIZE)
_LEFT_SIZES = (18.0, 17.0, 16.0, 15.0, DARK_SIZE)
_MOST_ORDERS = 8  # in one row
_MOST_BAND = 72.0  # height, from which smaller type is tried


def post_sheet(edition: Edition, number: int) -> Sheet:
    """The page of the post with a number, from 1 in the order of the whole crew, whoever is away."""
    staged = edition.staged
    post = next(each for each in staged.show.crew if staged.post_number(each.name) == number)
    return Sheet(
        name=f"post-{number}-{slug(post.name, longest=32)}",
        title=f"Post S{number}: {edition.person(post.name)}",
        story=partial(_story, edition, number, post),
        wide=True,
        large=True,
        who=post.name,
    )


def _story(edition: Edition, number: int, post: CrewMember, page: Page) -> list[Flowable]:
    side = own_side(stage_outline(edition.staged), post.post)
    band = _band(edition, post, page.inner)
    foot = _caution(edition)
    note = [ChangesNote(size=DARK_SIZE)] if edition.before is not None else []
    used = sum(part.wrap(page.inner, inf)[1] for part in (*band, *foot))
    room = page.tall - used - 2 * _GAP - (DARK_SIZE * 1.3 if note else 0.0) - 1.0
    acts = post_acts(edition, post, side)
    pages = _pages(edition, post, side, acts, page.inner, room)
    story: list[Flowable] = []
    for index, rows in enumerate(pages):
        where = f"{index + 1} of {len(pages)}" if len(pages) > 1 else ""
        left = _left(edition, number, post, side, (page.inner * _LEFT - _GAP, room), where)
        body = grid(
            [[left, rows]],
            [page.inner * _LEFT, page.inner * (1 - _LEFT)],
            pad=0,
            gutter=_GAP,
            lines=False,
            by_cell=True,
            heights=[room],
        )
        story += [PageBreak()] if index else []
        story += [
            *band,
            Spacer(1, _GAP),
            body,
            Spacer(1, _GAP),
            *foot,
            *(note if not index else []),
        ]
        band, foot = _band(edition, post, page.inner), _caution(edition)
    return story


def _band(edition: Edition, post: CrewMember, room: float) -> list[Flowable]:
    """The stop call and what this post does on it, white on black and in one size."""
    call = edition.staged.show.stop_call
    word = edition.in_order(brief(call.word))
    signal = edition.in_order(brief(call.signal))
    does = doing_on_stop(edition, post.name, post.duty)
    does = "YOU: " + does.removeprefix("You: ")
    shout = f"“{word}” three times\n{signal}"
    sizes = [(size, share) for size in _BAND_SIZES for share in _BAND_SHARES]
    for size, share in sizes:
        band = _band_of(shout, does, size, (room * share, room * (1 - share)))
        if band.wrap(room, inf)[1] <= _MOST_BAND:
            break
    return [band]


def _band_of(shout: str, does: str, size: float, widths: tuple[float, float]) -> Grid:
    cells: list[Cell] = [
        Prose(TextSpan(words, "Bold", size, PAPER), leading=1.16) for words in (shout, does)
    ]
    return grid(
        [cells],
        widths,
        ("BACKGROUND", (0, 0), (-1, -1), INK),
        ("LEFTPADDING", (0, 0), (-1, -1), 10),
        ("RIGHTPADDING", (0, 0), (-1, -1), 8),
        ("LINEAFTER", (0, 0), (0, 0), 1.5, PAPER),
        pad=6,
        lines=False,
        by_cell=True,
    )


def _caution(edition: Edition) -> list[Flowable]:
    """What the plan is not, at the foot."""
    spans = [TextSpan(page_one(), "Poster", DARK_SIZE)]
    if edition.is_lit:
        spans.append(TextSpan(f" {first_caution()[0]}", "Poster", DARK_SIZE))
    return [Prose(spans, leading=1.2)]


def _left(
    edition: Edition,
    number: int,
    post: CrewMember,
    side: OwnSide,
    room: tuple[float, float],
    where: str,
) -> list[Flowable]:
    """Who this is, where they stand, what they have, and whom to go to; as large as it fits."""
    for size in _LEFT_SIZES:
        cells = _left_of(edition, number, post, side, room[0], where, size)
        if sum(cell.wrap(room[0], inf)[1] + cell.getSpaceAfter() for cell in cells) <= room[1]:
            break
    return cells


def _left_of(
    edition: Edition,
    number: int,
    post: CrewMember,
    side: OwnSide,
    room: float,
    where: str,
    size: float,
) -> list[Flowable]:
    name = edition.in_order(brief(edition.person(post.name)))
    largest = next(
        (s for s in _NAME_SIZES if clipped(name, "Poster", s, room - 44) == name), DARK_SIZE
    )
    title = [Prose(TextSpan(name, "Poster", largest), leading=1.1, role="H1")]
    duty = f"{post.duty}, page {where}" if where else post.duty
    title.append(Prose(TextSpan(duty, "Bold", size), leading=1.15))
    head = grid(
        [[Disc(f"S{number}", 40, colour=WATCH), title]],
        [46, room - 46],
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        pad=0,
        gutter=0,
        lines=False,
    )
    card = edition.staged.show.emergency
    stand = f"mark S{number}: {side.words}, {side.place_words(*post.post)}"
    lines = [
        ("STAND", stand, 4),
        ("AT HAND", listed((brief(e, most=24) for e in post.equipment), most=4) or "nothing listed", 3),
        ("EXTINGUISHER", _extinguisher_words(edition, post, side), 2),
    ]  # fmt: skip
    if edition.is_lit or any(entered for _, entered in card.lines):
        lines += [
            ("FIRST AID", card.first_aider or "________", 2),
            ("CALLS HELP", _you(post, card.caller) or "________", 2),
            # not an order: nobody but whoever is named there goes to meet anybody
            ("HELP IS MET", _met(post, card) or "________", 2),
        ]
    cells: list[Flowable] = [head, Spacer(1, 5)]
    cells.append(Prose(TextSpan(_DUTY[post.duty], "Bold", size), leading=1.15, after=3))
    for label, words, most in lines:
        label_span = TextSpan(f"{label} ", "Poster", size)
        shown = clipped(edition.in_order(words), "Regular", DARK_SIZE, most * (room - 12) - 90)
        cells.append(Spacer(1, 4))
        cells.append(Prose([label_span, TextSpan(shown, "Regular", size)], leading=1.15))
    return cells


def _you(post: CrewMember, text: str | None) -> str | None:
    """An entry of the emergency card as somebody reads it on their own page."""
    return "YOU" if text is not None and named_in(text, (post.name,)) else text


def _met(post: CrewMember, card: Emergency) -> str | None:
    """Who meets the responders, and where."""
    where = card.meeting_point
    if card.meets is None:
        return where and f"at {where}"
    who = _you(post, card.meets)
    return f"by {who}" if where is None or where in card.meets else f"by {who}; at {where}"


def _extinguisher_words(edition: Edition, post: CrewMember, side: OwnSide) -> str:
    found = nearest_extinguisher(edition, post)
    if found is None:
        return "none entered"
    way, at = found
    return f"{at_most(way, decimals=0)}, {side.direction(post.post, at)}"


def nearest_extinguisher(edition: Edition, post: CrewMember) -> tuple[float, Point] | None:
    """The nearest extinguisher on foot: how far [m], and where; for the fuel's keeper one of the fuel, else one of the act.

    None if there is none with a way to it.
    """
    other = "act" if post.duty == "fuel keeper" else "fuel"
    every = edition.staged.show.venue.extinguishers
    tools = [tool.at for tool in every if tool.guards != other] or [tool.at for tool in every]
    if not tools:
        return None
    here = np.array([post.post], dtype=np.float64)
    ways = edition.plan.ground.ways_to(tools)(here)[0].tolist()
    way, at = min(zip(ways, tools, strict=True))
    return (way, at) if way < NO_WAY else None


def _pages(
    edition: Edition,
    post: CrewMember,
    side: OwnSide,
    acts: Sequence[PostAct],
    inner: float,
    tall: float,
) -> list[list[Flowable]]:
    """The rows of each page: all on one in the largest type that fits, or on as many as the smallest needs."""
    room = inner * (1 - _LEFT)
    words = room * (1 - _PLANS / (1 - _LEFT)) - _TIMES
    plan = inner * _PLANS - _GAP
    if not acts:
        nobody = "Nobody is lit in this show."
        return [[Prose(TextSpan(nobody, "Bold", 20.0))]]
    acts = [part for act in acts for part in _parts(act)]
    pages, start = [], 0
    while start < len(acts):
        stop = len(acts)
        while stop - start > 1 and sum(_heights(acts[start:stop], _ROW_SIZES[-1], words)) > tall:
            stop -= 1
        part = acts[start:stop]
        sizes = next(
            (each for each in _ROW_SIZES if sum(_heights(part, each, words)) <= tall),
            _ROW_SIZES[-1],
        )
        heights = _shared(_heights(part, sizes, words), tall)
        widths = (_TIMES, words, plan)
        pages.append([_rows(edition, post, side, part, sizes, heights, widths=widths)])
        start = stop
    return pages


def _parts(act: PostAct) -> list[PostAct]:
    """A row, in several where it has more orders than a page holds."""
    starts = range(0, len(act.orders), _MOST_ORDERS)
    return [replace(act, orders=act.orders[k : k + _MOST_ORDERS]) for k in starts]


def _shared(heights: Sequence[float], tall: float) -> list[float]:
    """Heights of the rows with what is left of the page shared among them, up to the largest plan."""
    spare = max(tall - sum(heights), 0.0) / len(heights)
    return [max(high, min(high + spare, _MOST_PLAN)) for high in heights]


def _texts(act: PostAct, sizes: _RowSizes) -> tuple[Prose, list[Flowable]]:
    """The time of a row, and its cue and orders."""
    long = width(printable(act.when), "Poster")
    time = min(sizes.time, (_TIMES - 6.0) / long)
    when = Prose(TextSpan(act.when, "Poster", time), leading=1.1, role="TD")
    body: list[Flowable] = [
        Prose(TextSpan(act.cue or " ", "Regular", sizes.cue), leading=1.12, role="TD")
    ]
    for order in act.orders:
        spans = [TextSpan(order.words, "Bold", sizes.order)]
        if order.detail:
            spans.append(TextSpan(f" {order.detail}", "Regular", sizes.cue))
        body.append(Prose(spans, leading=1.12, role="TD"))
    if act.still:
        body.append(Prose(TextSpan(act.still, "Regular", sizes.cue), leading=1.12, role="TD"))
    return when, body


def _heights(acts: Sequence[PostAct], sizes: _RowSizes, room: float) -> list[float]:
    """Height that each row needs."""
    found = []
    for act in acts:
        time, body = _texts(act, sizes)
        text = sum(part.wrap(room - _GAP, inf)[1] for part in body)
        found.append(max(text, time.wrap(_TIMES, inf)[1], sizes.plan) + 2 * _PAD + 1.0)
    return found


def _rows(
    edition: Edition,
    post: CrewMember,
    side: OwnSide,
    acts: Sequence[PostAct],
    sizes: _RowSizes,
    heights: Sequence[float],
    *,
    widths: tuple[float, float, float],
) -> Grid:
    rows: list[list[Cell]] = []
    for act, high in zip(acts, heights, strict=True):
        time, body = _texts(act, sizes)
        plan = PostPlan(
            _scene(edition, post, side, act, wide=widths[2]), wide=widths[2], tall=high - 2 * _PAD
        )
        rows.append([time, body, plan])
    style = [
        ("RIGHTPADDING", (0, 0), (0, -1), 0),
        ("LINEABOVE", (0, 0), (-1, 0), 1.2, INK),
        ("LINEBELOW", (0, 0), (-1, -1), 1.2, RULE),
    ]
    return grid(
        rows, [widths[0], widths[1], widths[2]], *style, pad=_PAD, gutter=_GAP, heights=heights
    )


def _scene(
    edition: Edition, post: CrewMember, side: OwnSide, act: PostAct, *, wide: float
) -> PostScene:
    """What a post sees at the moment of a row."""
    staged = edition.staged
    show = staged.show
    ways = _walks(edition, act.beat)
    marks = []
    for who in dict.fromkeys(act.watched):
        x, y, _ = place_at(staged, who, act.beat)
        name = brief(who, most=24)
        way = tuple(side.view(*point) for point in ways.get(who, ()))
        number = str(edition.number_of(who))
        marks.append(
            PlanMark(kind="performer", at=side.view(x, y), words=number, name=name, way=way)
        )
    marks.append(PlanMark(kind="you", at=side.view(*post.post), words="YOU"))
    for other in show.crew:
        if other.name in act.crew:
            k = edition.staged.post_number(other.name)
            words = f"S{k}{NB}{brief(other.name, most=24).upper()}"
            fits = clipped(words, "Poster", DARK_SIZE, 0.45 * wide) == words
            words = words if fits else f"S{k}"
            marks.append(PlanMark(kind="crew", at=side.view(*other.post), words=words))
    nearest = nearest_extinguisher(edition, post)
    if nearest is not None:
        marks.append(PlanMark(kind="extinguisher", at=side.view(*nearest[1])))
    marks += [PlanMark(kind="exit", at=side.view(*place.at)) for place in show.venue.exits]
    for who in show.names:
        if who not in act.watched:
            x, y, _ = place_at(staged, who, act.beat)
            marks.append(PlanMark(kind="other", at=side.view(x, y)))
    return PostScene(
        stage=tuple(side.view(x, y) for x, y in stage_outline(staged)),
        audience=tuple(
            tuple(side.view(x, y) for x, y in edge.line) for edge in show.venue.audience
        ),
        marks=tuple(marks),
    )


def _walks(edition: Edition, beat: float) -> dict[str, tuple[Point, ...]]:
    """Who walks at a beat or sets off, and along which way from there [m, stage frame]."""
    staged = edition.staged
    for standing in staged.standings:
        if not standing.walk - _SAME <= beat < standing.start - _SAME:
            continue
        beats = np.linspace(beat, standing.start, WAY_POINTS, dtype=np.float64)
        ways = {
            dancer.name: tuple((float(x), float(y)) for x, y in dancer.floor.at(beats).place)
            for dancer in staged.dancers
            if dancer.name in standing.spots
        }
        return {who: way for who, way in ways.items() if way_length(way) > _STANDS}
    return {}
