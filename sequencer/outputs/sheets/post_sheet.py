"""A sheet for one crew post: whom to watch, when, and with what equipment. Lengths in points."""

from functools import partial
from math import dist

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import Cell, Disc, LitMark, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, INK, LEAD_SIZE, MIST, SOFT, TEXT, WATCH, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import NB, brief, listed, metres, place_words, slug
from sequencer.outputs.sheets.parts.cells import when_cell, who_cell
from sequencer.outputs.sheets.parts.cues import place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.formation_plans import formation_plans
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    doing_on_stop,
    findings_block,
    notes_block,
    opening,
)
from sequencer.safety.run_of_night import calling
from sequencer.show.model import CrewMember

_NEAR = 3.0  # [m] performers nearer than this to a post are shown on its sheet

_STOP = {
    "spotter": "You: go to your performer from where they see you, damp towel ready, smother from the head down.",
    "perimeter": "You: keep the audience back and the exits clear; guide people away, nobody runs.",
    "fuel keeper": "You: shut every can, keep people and flames away from the fuel, hand out nothing.",
    "lead": "You: music off, lights up; if anybody is hurt, {}; count your people.",
}
_DUTY = {
    "spotter": "You have one job: watch your performer from light-up until the wick is cold.",
    "perimeter": "Watch the edge, not the show. Let nobody cross it; watch children and dogs above all.",
    "fuel keeper": "Stay with the fuel as long as a can is open. Never more than one can open.",
    "lead": "You watch over everything. You say go, you may stop everything, and you light nobody yourself.",
}


def post_sheet(edition: Edition, number: int) -> Sheet:
    """The pages of the post with a number, from 1 in the order of the crew."""
    post = edition.staged.show.crew[number - 1]
    return Sheet(
        name=f"post-{number}-{slug(post.name, longest=32)}",
        title=f"Post S{number}: {post.name}",
        story=partial(_story, edition, number, post),
    )


def _usual(edition: Edition, post: CrewMember) -> str:
    """What a post does on the stop call, with who calls for help as on the emergency card."""
    caller = edition.staged.show.emergency.caller
    is_caller = caller is not None and caller.casefold() == post.name.casefold()
    help_ = "call for help and name the gate" if is_caller else edition.in_order(calling(caller))
    words = _STOP[post.duty].format(help_)
    return (
        f"{words} You also call for help, on the lead’s word."
        if is_caller and post.duty != "lead"
        else words
    )


def _story(edition: Edition, number: int, post: CrewMember, page: Page) -> list[Flowable]:
    room = page.inner
    facts = [
        ("Duty", post.duty),
        ("Stand", place_words(*post.post)),
        ("At hand", listed(post.equipment, most=4) or "nothing listed"),
    ]
    story = opening(
        edition,
        room,
        kind=f"Post S{number} · {edition.title}",
        title=post.name,
        facts=facts,
        stop=doing_on_stop(edition, post.name, post.duty, _usual(edition, post)),
        badge=Disc(f"S{number}", 40, colour=WATCH),
    )
    story += [Spacer(1, 6), Prose(TextSpan(_DUTY[post.duty], "Bold", LEAD_SIZE))]
    if len(post.equipment) > 4:
        story += [heading("What you have with you", level=2)]
        story += [Prose(TextSpan(f"– {brief(thing)}", "Regular", CUE)) for thing in post.equipment]
    about_post = [f for f in edition.report.findings if post.name in f.who]
    story += findings_block(edition, about_post, room, title="Findings about this post")
    story += _watch_block(edition, post, room)
    story += notes_block(edition, about_post, room)
    story += emergency_block(edition, room, short=True)
    chosen = plans_of(edition, post)
    story += formation_plans(edition, page, title="Where you look", chosen=chosen)
    story += cautions_block(edition, "post", room)
    return story


def plans_of(edition: Edition, post: CrewMember) -> tuple[int, ...]:
    """Formations to draw for a post: those in which its watch changes, or somebody new stands near it.

    For a solo one plan is enough.
    """
    staged = edition.staged
    watches = edition.plan.watch.of(post.name)
    if len(staged.show.names) < 2:
        return (0,) if staged.standings else ()
    chosen: list[int] = []
    watched: set[str] = set()
    near: set[str] = set()
    for index, standing in enumerate(staged.standings):
        now = {w.who for w in watches if w.start < standing.end and w.end > standing.start}
        beside = {
            name for name, (x, y, _) in standing.spots.items() if dist((x, y), post.post) < _NEAR
        }
        if not chosen or now != watched or beside - near:
            chosen.append(index)
        watched, near = now, beside
    return tuple(chosen)


def _watch_block(edition: Edition, post: CrewMember, room: float) -> list[Flowable]:
    """Watches of a post; all burns if it watches nobody."""
    staged = edition.staged
    plan = edition.plan.watch
    watches = plan.of(post.name)
    title = "Whom you watch" if watches else "Who burns when"
    widths = [64.0, 52.0, room * 0.34, room * 0.27]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [[head_cell(w) for w in ("time", "", "who", "where", "how far")]]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    spans: list[tuple[float, float, str, float | None, float | None]] = [
        (w.start, w.end, w.who, w.way, w.response) for w in watches
    ]
    if not watches:
        spans = [(b.start, b.end, b.who, None, None) for b in edition.plan.burns]
    if not spans:
        return [heading(title), Prose(TextSpan("Nobody is lit in this show.", "Regular", CUE))]
    burns = {
        (b.who, edge): kind for b in edition.plan.burns for edge, kind in ((b.start, 1), (b.end, 0))
    }
    events: list[tuple[float, int, str, float | None, float | None]] = []
    for start, end, who, way, response in spans:
        events.append((start, 1, who, way, response))
        events.append((end, 0, who, None, None))
    for beat, starts, who, way, response in sorted(
        events, key=lambda e: (round(e[0], 6), e[1], edition.number_of(e[2]))
    ):
        x, y, _ = place_at(staged, who, beat)
        far: Cell = ""
        if way is not None and response is not None:
            far = [
                Prose(TextSpan(f"at most {metres(way)}", "Bold", CUE), role="TD"),
                Prose(TextSpan(f"there in {response:.1f}{NB}s", "Regular", TEXT, SOFT), role="TD"),
            ]
        rows.append(
            [
                when_cell(edition, beat),
                _mark(burns.get((who, beat)), starts=bool(starts)),
                who_cell(edition, who),
                Prose(TextSpan(place_words(x, y), "Regular", CUE), leading=1.2, role="TD"),
                far,
            ]
        )
        if not starts:
            style.append(("BACKGROUND", (0, len(rows) - 1), (-1, len(rows) - 1), MIST))
    return [CondPageBreak(130), heading(title), grid(rows, widths, *style, repeat=1, pad=3)]


def _mark(kind: int | None, *, starts: bool) -> Flowable:
    """Lit or out if the burn itself changes; otherwise the watch is taken or handed over."""
    if kind is not None:
        return LitMark("LIT" if kind else "OUT", lit=bool(kind), wide=44)
    return Prose(TextSpan("TAKE OVER" if starts else "HAND OVER", "Bold", TEXT), role="TD")
