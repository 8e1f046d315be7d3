"""A performer's sheet: what to do, when and where, on two pages for a solo of four minutes. Lengths in points."""

from functools import partial
from itertools import product
from math import ceil, floor, inf

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.findings import Finding
from sequencer.outputs.sheets.page.elements import Disc, grid, heading
from sequencer.outputs.sheets.page.paper import TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, span_seconds
from sequencer.outputs.sheets.parts.cues import burns_of, early_clock, late_clock
from sequencer.outputs.sheets.parts.dance_rows.performer_rows import (
    CLOSEST_ROWS,
    ROW_TYPES,
    cue_table,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.holding import held_words
from sequencer.outputs.sheets.parts.notices import (
    brief_notes,
    cautions_block,
    doing_on_stop,
    findings_block,
    in_two_columns,
    opening,
)
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import formation_plans, height_of
from sequencer.outputs.sheets.parts.stage_plans.own_places import own_places
from sequencer.outputs.sheets.parts.stage_plans.small_plans import SMALL_TALL, small_plans
from sequencer.outputs.sheets.parts.whole_show import whole_show_block
from sequencer.safety.burns.burning import burn_time

_PAGES = 2  # that a show should fit on: the largest type is taken that does
_PLANS_ACROSS = 4
_MORE_ACROSS = (2, 3, 4)  # where it takes more pages anyway
_PLAN_SHARES = (
    1.4,
    1.2,
    1.0,
    0.8,
)  # of a column's width: how high plans may be where there is room
_PLAN_SHARE, _PLAN_TALL = 0.34, 150.0  # of the page's width, and height, of a soloist's plan
_GAP = 4.0  # above the rows
_CHANGES = 96.0  # for the note on what has changed, which is put in later
_SHORT = 0.4  # of a page


def performer_sheet(edition: Edition, who: str) -> Sheet:
    """One performer's pages."""
    return Sheet(
        name=f"performer-{edition.file_part(who)}",
        title=f"Performer’s sheet: {edition.person(who)}",
        story=partial(_story, edition, who),
    )


def _story(edition: Edition, who: str, page: Page) -> list[Flowable]:
    room = page.inner
    story = opening(
        edition,
        room,
        kind="Performer’s sheet",
        title=edition.person(who),
        facts=_facts(edition, who),
        stop=doing_on_stop(edition, who, "performer"),
        badge=Disc(str(edition.number_of(who)), 30),
        close=True,
    )
    findings = [finding for finding in edition.findings_for(who) if finding.who]
    story += findings_block(edition, findings, room, title="Before you dance: findings about you")
    story += whole_show_block(edition, who, room)
    story += _own_notes(edition, who)
    above = height_of(story, room) + (_CHANGES if edition.before else 0.0)
    table, floor, notes, cautions = _laid_out(edition, who, page, above + _GAP, findings)
    pieces = (*_kept(floor, room, page), *_kept(notes, room, page), *cautions)
    return [*story, Spacer(1, _GAP), table, *pieces]


def _laid_out(
    edition: Edition, who: str, page: Page, above: float, findings: list[Finding]
) -> tuple[Flowable, list[Flowable], list[Flowable], list[Flowable]]:
    """Rows, places, notes and cautions: in the largest type that two pages have room for, with plans as large as then fit."""
    room = page.inner
    floor = _floor(edition, who, page)
    notes = brief_notes(edition, findings)
    cautions = cautions_block(edition, "performer", room, columns=3) if len(floor) != 1 else []
    for sizes in ROW_TYPES:
        table = cue_table(edition, who, room, sizes)
        below = _below(table, above, page)
        if _pages([floor, notes, cautions], below, page) <= _PAGES:
            larger = _largest_floor(edition, who, page, floor, below, [notes, cautions])
            return table, larger, notes, cautions
    beside = min(notes, in_two_columns(notes, room), key=lambda each: height_of(each, room))
    smaller = cautions_block(edition, "performer", room, columns=4, small=True)
    small = [plans for tall in SMALL_TALL if (plans := small_plans(edition, page, who, tall))]
    for sizes in (*ROW_TYPES, CLOSEST_ROWS) if small else ():
        closer = cue_table(edition, who, room, sizes)
        below = _below(closer, above, page)
        for plans, last in product(small, (cautions, smaller)):
            if _pages([plans, beside, last], below, page) <= _PAGES:
                return closer, plans, beside, last
    foot = [*_kept(notes, room, page), *cautions]
    below = _below(table, above, page)
    return table, _floor_of_more_pages(edition, who, page, floor, below, foot), notes, cautions


def _floor_of_more_pages(
    edition: Edition,
    who: str,
    page: Page,
    floor: list[Flowable],
    below: float,
    foot: list[Flowable],
) -> list[Flowable]:
    """Where one stands, as large as the pages have room for that it takes anyway."""
    if len(edition.staged.show.names) < 2 or not floor:
        return floor

    def taken(plans: list[Flowable]) -> int:
        return _pages_parted([*_kept(plans, page.inner, page), *foot], below, page)

    most = taken(floor)
    for across, share in product(_MORE_ACROSS, _PLAN_SHARES):
        larger = _floor(edition, who, page, share, across)
        if taken(larger) <= most:
            return larger
    return floor


def _pages_parted(parts: list[Flowable], below: float, page: Page) -> int:
    """How many pages it takes to lay parts below what ends there, each parted as the pages will part it."""
    for part in parts:
        if isinstance(part, CondPageBreak):
            full, used = divmod(below, page.tall)
            if used + part.height > page.tall:
                below = (full + 1) * page.tall
        else:
            below = _below(part, below + part.getSpaceBefore(), page) + part.getSpaceAfter()
    return ceil(below / page.tall)


def _below(table: Flowable, above: float, page: Page) -> float:
    """How far down a table ends, with all pages before it [pt]: it is parted as the pages will part it."""
    full, used = divmod(above, page.tall)
    while True:
        high = table.wrap(page.inner, inf)[1]
        if used + high <= page.tall:
            return full * page.tall + used + high
        parts = table.split(page.inner, page.tall - used)
        if not parts and not used:  # a row that is higher than any page
            return (full + 1) * page.tall
        full, used = full + 1, 0.0
        table = parts[-1] if len(parts) > 1 else table


def _kept(parts: list[Flowable], room: float, page: Page) -> list[Flowable]:
    """What is short stays on one page with its heading."""
    high = height_of(parts, room)
    return [CondPageBreak(high + 2), *parts] if 0 < high < _SHORT * page.tall else parts


def _largest_floor(
    edition: Edition,
    who: str,
    page: Page,
    floor: list[Flowable],
    below: float,
    foot: list[list[Flowable]],
) -> list[Flowable]:
    """Where one stands, as large as two pages have room for."""
    if len(edition.staged.show.names) < 2 or not floor:
        return floor
    for share in _PLAN_SHARES:
        larger = _floor(edition, who, page, share)
        if _pages([larger, *foot], below, page) <= _PAGES:
            return larger
    return floor


def _pages(pieces: list[list[Flowable]], below: float, page: Page) -> int:
    """How many pages it takes to lay pieces that are not parted below what ends there."""
    full, used = divmod(below, page.tall)
    for piece in pieces:
        high = height_of(piece, page.inner)
        asked = [part.height for part in piece if isinstance(part, CondPageBreak)]
        if used + max(high + 2, *asked, 0) > page.tall:
            full, used = full + 1, 0.0
        used += high
    return int(full) + 1


def _floor(
    edition: Edition,
    who: str,
    page: Page,
    share: float | None = None,
    across: int = _PLANS_ACROSS,
) -> list[Flowable]:
    """Where one stands: in a group formation by formation, with the others; alone on one plan beside the cautions."""
    if len(edition.staged.show.names) > 1:
        return formation_plans(edition, page, focus=who, across=across, share=share)
    wide = page.inner * _PLAN_SHARE
    plan = own_places(edition, who, wide=wide - 12, tall=_PLAN_TALL)
    if not plan:
        return []
    left = [heading("Where you stand", level=2, before=4), *plan]
    right = cautions_block(edition, "performer", page.inner - wide, small=True)
    row = [[left, [part for part in right if not isinstance(part, CondPageBreak)]]]
    widths = [wide, page.inner - wide]
    return [grid(row, widths, pad=0, gutter=12, lines=False, by_cell=True)]


def own_notes(edition: Edition, who: str) -> tuple[str, ...]:
    """Notes of one's own, as the show file has them."""
    dancer = next(each for each in edition.staged.show.cast if each.name == who)
    return tuple(edition.in_order(note) for note in dancer.notes)


def _own_notes(edition: Edition, who: str) -> list[Flowable]:
    notes = own_notes(edition, who)
    if not notes:
        return []
    lines = [Prose(TextSpan(f"– {note}", "Bold", TEXT)) for note in notes]
    return [heading("Your own notes", level=2), *lines]


def _facts(edition: Edition, who: str) -> list[tuple[str, str]]:
    staged = edition.staged
    dancer = next(d for d in staged.show.cast if d.name == who)
    burns = burns_of(staged, who)
    lit = "not lit in this show"
    if burns:
        lit = "\n".join(
            f"{early_clock(b.alight_s)}{NB}–{NB}{late_clock(b.out_s)}" for b in burns[:4]
        )
        if len(burns) > 4:
            lit += f"\nand {len(burns) - 4} more"
    facts = [("Lit", lit)]
    time = burn_time(staged, who)
    if burns and time is not None:
        share = edition.staged.show.fire.reserve if edition.staged.show.fire else 1.0
        basis = {"measured": "timed", "stated": "stated, not timed"}.get(
            time.basis, "default: time your own"
        )
        facts.append(
            (
                f"Wick burns ({basis})",
                f"{span_seconds(floor(time.seconds))}, plan at most {span_seconds(floor(share * time.seconds))}",
            )
        )
    facts.append(("Props", "\n".join(held_words(dancer, short=True))))
    return facts
