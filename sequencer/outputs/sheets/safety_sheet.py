"""The safety crew's sheet: who is lit when and where, who watches, what to keep clear of. Lengths in points."""

from collections.abc import Sequence
from functools import partial
from math import isfinite

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.page.elements import (
    Cell,
    Disc,
    LitMark,
    grid,
    head_cell,
    heading,
    named_rows,
)
from sequencer.outputs.sheets.page.paper import CUE, INK, MIST, SMALL, SOFT, TEXT, WATCH, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    at_least,
    at_most,
    brief,
    clock,
    clock_fine,
    listed,
    metres,
    place_words,
    plural,
    span_seconds,
    wind_words,
)
from sequencer.outputs.sheets.parts.cells import post_label, watch_cell, when_cell, who_cell
from sequencer.outputs.sheets.parts.compliance_table import compliance_block, confirm_block
from sequencer.outputs.sheets.parts.cues import early_clock, late_clock, place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    findings_block,
    notes_block,
    opening,
    role_on_stop,
)
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import formation_plans
from sequencer.outputs.sheets.parts.stage_plans.landing_plan import landing_block
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.safety.burns.burning import PlannedBurn, burn_time
from sequencer.safety.burns.handling import seconds_words
from sequencer.safety.duties.watching import HandOver
from sequencer.safety.rules.permits import permit_words
from sequencer.show.file_records.site import extinguisher_words
from sequencer.units import aloud, rounded_up

MOST_PASSES = 24
_BASIS = {
    "measured": "from your timed burn, as entered",
    "stated": "as entered, not timed",
    "default": "assumed, not measured",
}
ENDLESS = 1e5  # [pt] taller than any page


def safety_sheet(edition: Edition) -> Sheet:
    """The crew's pages."""
    return Sheet(name="safety", title="Safety crew sheet", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    story = opening(
        edition,
        room,
        kind="Safety lead and crew",
        title=edition.title,
        facts=night_facts(edition),
        stop=role_on_stop(edition, "lead"),
    )
    story += compliance_block(edition, room)
    story += findings_block(edition, edition.findings_for(), room, title="What the checks found")
    story += [Spacer(1, 8), TimelineStrip(edition)]
    story += fire_block(edition, room)
    story += posts_block(edition, room)
    story += passes_block(edition, room)
    story += hazards_block(edition, room)
    story += confirm_block(edition, room)
    story += landing_block(edition, room, drawn=True)
    story += formation_plans(edition, page, title="Formations and posts")
    story += notes_block(edition, edition.findings_for(), room)
    story += cautions_block(edition, "safety", room, whole=True)
    story += emergency_block(edition, room)
    return story


def night_facts(edition: Edition) -> list[tuple[str, str]]:
    """What the crew has to know about the whole show."""
    staged = edition.staged
    show = staged.show
    facts = []
    if staged.lit:
        burns = edition.plan.burns
        first, last = min(b.alight_s for b in burns), max(b.out_s for b in burns)
        facts.append(("Flames", f"{early_clock(first)} – {late_clock(last)}"))
        facts.append(("Lit at once", str(edition.plan.lit_at_once)))
    else:
        facts.append(("Flames", "none in this show"))
    if show.fire is not None:
        facts.append(("Fuel", show.fire.fuel))
        times = [t.seconds for n in show.names if (t := burn_time(staged, n)) is not None]
        facts.append(("Wick burns", span_seconds(min(times)) if times else "not known"))
    facts.append(("Rules", listed(show.rules.profile, most=3)))
    facts.append(("Permit", permit_words(show)))
    return facts


def fire_block(edition: Edition, room: float) -> list[Flowable]:
    """Every lighting, hand-over and putting out in order of time."""
    burns = edition.plan.burns
    if not burns:
        return [
            heading("Who burns when"),
            Prose(TextSpan("Nobody is lit in this show.", "Regular", CUE)),
        ]
    widths = [55.0, 56.0, room * 0.33, room * 0.235]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("time", "", "who", "where", "watched from, walk at most")]
    ]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    events: list[tuple[float, int, int, list[Cell]]] = []
    for burn in burns:
        number = edition.number_of(burn.who)
        events.append((burn.end, 0, number, _out_row(edition, burn)))
        events.append((burn.start, 2, number, _lit_row(edition, burn)))
    for change in edition.plan.watch.hand_overs:
        number = edition.number_of(change.who)
        events.append((change.beat, 1, number, _hand_over_row(edition, change)))
    for _, order, _, row in sorted(events, key=lambda e: (round(e[0], 6), e[1], e[2])):
        rows.append(row)
        if order == 0:
            style.append(("BACKGROUND", (0, len(rows) - 1), (-1, len(rows) - 1), MIST))
    return [
        CondPageBreak(130),
        heading("Who burns when"),
        grid(rows, widths, *style, repeat=1, pad=2.5),
    ]


def _lit_row(edition: Edition, burn: PlannedBurn) -> list[Cell]:
    by = "NOBODY IS NAMED to light: do not light"
    if burn.lit_by is not None:
        by = f"{brief(edition.staged.taken_by(burn.lit_by))} lights, from {early_clock(burn.alight_s)}"
    expected = f"{edition.in_order(by)}; out by {late_clock(burn.out_s)}, after {seconds_words(burn.flame_s)} alight"
    dry = "burning time not known"
    if burn.burn is not None and burn.dry_s is not None:
        dry = f"fuel gone about {clock(burn.dry_s)} ({_BASIS[burn.burn.basis]})"
    name: Cell = [
        who_cell(edition, burn.who),
        Prose(TextSpan(expected, "Regular", TEXT), role="TD"),
        Prose(TextSpan(dry, "Regular", TEXT, SOFT), role="TD"),
    ]
    x, y, _ = place_at(edition.staged, burn.who, burn.start)
    return [
        when_cell(edition, burn.start),
        LitMark("LIT", lit=True, wide=42),
        name,
        Prose(TextSpan(place_words(x, y), "Regular", TEXT), leading=1.2, role="TD"),
        watch_cell(edition, burn),
    ]


def _out_row(edition: Edition, burn: PlannedBurn) -> list[Cell]:
    x, y, _ = place_at(edition.staged, burn.who, burn.end)
    by = "NOBODY IS NAMED to put out: do not light"
    if burn.put_out_by is not None:
        by = f"{brief(edition.staged.taken_by(burn.put_out_by))} smothers, out by {late_clock(burn.out_s)}"
    return [
        when_cell(edition, burn.end),
        LitMark("OUT", lit=False, wide=42),
        who_cell(edition, burn.who),
        Prose(TextSpan(place_words(x, y), "Regular", TEXT), leading=1.2, role="TD"),
        [
            Prose(TextSpan(edition.in_order(by), "Bold", TEXT), role="TD"),
            Prose(
                TextSpan(
                    f"towel ready until it is cold, {late_clock(burn.cold_s)}", "Regular", TEXT
                ),
                role="TD",
            ),
        ],
    ]


def _hand_over_row(edition: Edition, change: HandOver) -> list[Cell]:
    x, y, _ = place_at(edition.staged, change.who, change.beat)
    words = f"{post_label(edition, change.giver)} hands over to {post_label(edition, change.taker)}"
    return [
        when_cell(edition, change.beat),
        Prose(TextSpan("WATCH", "Bold", SMALL), role="TD"),
        who_cell(edition, change.who),
        Prose(TextSpan(place_words(x, y), "Regular", TEXT), leading=1.2, role="TD"),
        Prose(TextSpan(words, "Bold", TEXT), role="TD"),
    ]


def posts_block(edition: Edition, room: float) -> list[Flowable]:
    """Who stands where with what."""
    crew = edition.staged.show.crew
    if not crew:
        return [
            CondPageBreak(80),
            heading("Posts"),
            Prose(
                TextSpan(
                    "No crew in the show file. Nobody may be lit unless somebody watches.",
                    "Bold",
                    CUE,
                )
            ),
        ]
    widths = [34.0, room * 0.27, room * 0.24, room * 0.23]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("post", "who", "stands", "watches", "at hand")]
    ]
    for post in crew:
        number = edition.staged.post_number(post.name)
        watched = listed(post.watches, most=8) or ("all" if post.duty == "spotter" else "–")
        rows.append(
            [
                Disc(f"S{number}", 24, colour=WATCH),
                [
                    Prose(TextSpan(edition.person(post.name), "Bold", CUE), leading=1.2, role="TD"),
                    Prose(TextSpan(post.duty, "Regular", TEXT, SOFT), role="TD"),
                ],
                Prose(TextSpan(place_words(*post.post), "Regular", TEXT), role="TD"),
                Prose(TextSpan(watched, "Regular", TEXT), role="TD"),
                Prose(
                    TextSpan(listed(post.equipment, most=12) or "nothing listed", "Regular", TEXT),
                    role="TD",
                ),
            ]
        )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [CondPageBreak(120), heading("Posts"), grid(rows, widths, style, repeat=1)]


def passes_block(edition: Edition, room: float) -> list[Flowable]:
    """The tightest clearances, with when and where."""
    passes = edition.close_passes()
    story: list[Flowable] = [CondPageBreak(110), heading("Close passes")]
    if not passes:
        story.append(
            Prose(TextSpan("No clearance was measured: " + _unseen(edition), "Regular", TEXT))
        )
        return story
    widths = [80.0, room * 0.36, 66.0, 62.0]
    widths.append(room - sum(widths))
    bars = edition.staged.tempo.bar_lengths
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("time", "between", "closest", "required", "where")]
    ]
    for one in passes[:MOST_PASSES]:
        under = one.distance < one.required
        where = place_words(*one.where) if one.where is not None else "–"
        rows.append(
            [
                [
                    Prose(TextSpan(clock_fine(one.at), "Bold", CUE), role="TD"),
                    Prose(
                        TextSpan(
                            aloud(one.position, bars, "bar ") if one.position else "",
                            "Regular",
                            SMALL,
                            SOFT,
                        ),
                        role="TD",
                    ),
                ],
                [
                    Prose(TextSpan(listed(one.between), "Bold", TEXT), role="TD"),
                    Prose(
                        TextSpan(" – ".join(p for p in one.parts if p), "Regular", SMALL, SOFT),
                        role="TD",
                    ),
                ],
                [
                    Prose(TextSpan(at_least(one.distance, decimals=2), "Bold", CUE), role="TD"),
                    Prose(TextSpan("TOO CLOSE" if under else "", "Bold", SMALL), role="TD"),
                ],
                Prose(TextSpan(at_most(one.required, decimals=2), "Regular", CUE), role="TD"),
                Prose(TextSpan(where, "Regular", TEXT), role="TD"),
            ]
        )
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    style += [
        ("BACKGROUND", (0, n), (-1, n), MIST)
        for n, one in enumerate(passes[:MOST_PASSES], start=1)
        if one.distance < one.required
    ]
    story.append(grid(rows, widths, *style, repeat=1))
    if len(passes) > MOST_PASSES:
        story.append(
            Prose(
                TextSpan(
                    f"{len(passes) - MOST_PASSES} wider ones are not printed; `sequencer check` lists them all.",
                    "Regular",
                    SMALL,
                    SOFT,
                ),
                before=3,
            )
        )
    error = max(one.error for one in passes)
    if isfinite(error):
        story.append(
            Prose(
                TextSpan(
                    f"Computed from the plan to {rounded_up(1000 * error):.0f}\u00a0mm, outer edge of prop and flame; "
                    "people drift: mark the floor.",
                    "Regular",
                    SMALL,
                    SOFT,
                ),
                before=3,
            )
        )
    return story


def _unseen(edition: Edition) -> str:
    return " ".join(edition.report.not_checked) or "the report has none."


def hazards_block(edition: Edition, room: float) -> list[Flowable]:
    """What is combustible, what is overhead, what is not known, and where the equipment is."""
    venue = edition.staged.show.venue
    lines: list[tuple[str, str]] = []
    for thing in venue.scenery:
        words = (
            "combustible: keep flames away from it"
            if thing.combustible
            else "non-combustible; do not run into it"
        )
        xs, ys = [p[0] for p in thing.outline], [p[1] for p in thing.outline]
        place = place_words((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
        lines.append((thing.name, f"{words}; {metres(thing.height)} high, {place}"))
    if venue.ceiling is None:
        lines.append(("Overhead", "not stated: measure the height, look for lines and branches"))
    elif venue.ceiling == "open":
        lines.append(("Overhead", "open sky as entered: look for lines, branches and bunting"))
    else:
        lines.append(("Overhead", f"ceiling at {at_least(float(venue.ceiling), decimals=2)}"))
    for part in venue.ceilings:
        xs, ys = [p[0] for p in part.outline], [p[1] for p in part.outline]
        place = place_words((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
        lines.append((part.name, f"overhead at {at_least(part.height, decimals=2)}, {place}"))
    if venue.setting == "outdoors":
        wind = (
            "not entered: measure at prop height before lighting"
            if venue.wind is None
            else f"gusts {rounded_up(venue.wind, 1):.1f}\u00a0m/s as entered"
        )
        if venue.wind_from is not None:
            wind += f", from {wind_words(venue.wind_from)}"
        lines.append(("Wind", wind))
    if venue.fuel_station is not None:
        lines.append(
            (
                "Fuel station",
                f"{place_words(*venue.fuel_station)}: shut during the act, no flame near it",
            )
        )
    lines += [
        ("Extinguisher", f"{extinguisher_words(tool)}; {place_words(*tool.at)}")
        for tool in venue.extinguishers
    ]
    if not venue.extinguishers:
        lines.append(("Extinguisher", "none entered"))
    lines += [
        (
            "Exit",
            f"{place.name}; {place_words(*place.at)}"
            + ("" if place.width is None else f"; {at_least(place.width, decimals=2)} wide"),
        )
        for place in venue.exits
    ]
    lines += _equipment(edition)
    return [
        CondPageBreak(110),
        heading("Hazards and equipment"),
        named_rows(lines, room, share=0.2),
        *_unseen_block(edition, room),
    ]


def _unseen_block(edition: Edition, room: float) -> list[Flowable]:
    """Everything that no check looked at, as one list."""
    lines = edition.report.not_checked
    if not lines:
        return []
    half = (len(lines) + 1) // 2
    columns: list[Cell] = [
        [Prose(TextSpan(f"– {words}", "Regular", SMALL), role="TD", after=1.5) for words in part]
        for part in (lines[:half], lines[half:])
    ]
    table = grid([columns], [room / 2, room / 2], pad=1, lines=False, by_cell=True)
    tall = table.wrap(room, ENDLESS)[
        1
    ]  # one row, which no page break can separate from its heading
    return [CondPageBreak(50 + tall), heading("Not looked at", level=2), table]


def _equipment(edition: Edition) -> Sequence[tuple[str, str]]:
    count: dict[str, int] = {}
    for post in edition.staged.show.crew:
        for thing in post.equipment:
            count[thing] = count.get(thing, 0) + 1
    words = listed([f"{n} × {thing}" for thing, n in sorted(count.items())])
    return (
        [("With the posts", words)]
        if words
        else [("With the posts", plural(0, "item") + " listed")]
    )
