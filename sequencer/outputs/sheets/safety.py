"""The safety crew's sheet: who burns when and where, who watches, what to keep clear of. Lengths in points."""

from collections.abc import Sequence
from functools import partial
from math import isfinite

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.outputs.sheets.blocks import (
    Cell,
    Disc,
    LitMark,
    facts_row,
    fitted,
    grid,
    head_cell,
    heading,
    kicker,
)
from sequencer.outputs.sheets.cues import lit_together
from sequencer.outputs.sheets.edition import Edition
from sequencer.outputs.sheets.formations import formation_plans
from sequencer.outputs.sheets.furniture import Sheet
from sequencer.outputs.sheets.notices import (
    caution_box,
    cautions_block,
    findings_block,
    letters_block,
    stop_bar,
)
from sequencer.outputs.sheets.paper import CUE, HEAD, INK, MIST, SMALL, SOFT, TEXT, WATCH, Page
from sequencer.outputs.sheets.prose import Prose, Span
from sequencer.outputs.sheets.watch import Watch, watches
from sequencer.outputs.sheets.wording import (
    brief,
    clock,
    clock_fine,
    listed,
    metres,
    place_words,
    plural,
    span_seconds,
)
from sequencer.outputs.timeline_strip import TimelineStrip
from sequencer.show.burning import burn_time

MOST_PASSES = 24


def safety_sheet(edition: Edition) -> Sheet:
    """The crew's pages."""
    return Sheet(name="safety", title="Safety crew sheet", story=partial(_story, edition))


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    story: list[Flowable] = [kicker("Safety crew sheet"), fitted(edition.title, room), Spacer(1, 3)]
    story.append(facts_row(night_facts(edition), room))
    story += stop_bar(
        "Crew: music off and lights up first, then each watcher to their performer with the damp towel. "
        "Smother from the head down. Nobody runs through the audience."
    )
    story += caution_box(edition, room)
    story += letters_block(edition, room)
    story += findings_block(edition, edition.findings_for(), room, title="What the checks found")
    story += [CondPageBreak(150), Spacer(1, 8), TimelineStrip(edition)]
    story += fire_block(edition, room)
    story += posts_block(edition, room)
    story += passes_block(edition, room)
    story += hazards_block(edition, room)
    story += formation_plans(edition, page, title="Formations and posts")
    story += cautions_block(edition, "safety", room)
    return story


def night_facts(edition: Edition) -> list[tuple[str, str]]:
    """What the crew has to know of the whole show."""
    staged = edition.staged
    show = staged.show
    facts = []
    if staged.lit:
        first, last = min(b.start for b in staged.lit), max(b.end for b in staged.lit)
        most = max((len(who) for _, _, who in lit_together(staged)), default=0)
        facts.append(
            (
                "Flames",
                f"{clock(staged.seconds(first))} – {clock(staged.seconds(last))}",
            )
        )
        facts.append(("Lit at once", str(most)))
    else:
        facts.append(("Flames", "none in this show"))
    if show.fire is not None:
        facts.append(("Fuel", show.fire.fuel))
        times = [t.seconds for n in show.names if (t := burn_time(staged, n)) is not None]
        facts.append(("Wick burns", span_seconds(min(times)) if times else "not known"))
    facts.append(("Rules", show.rules.profile))
    facts.append(("Permit", show.rules.permit or "none recorded"))
    return facts


def fire_block(edition: Edition, room: float) -> list[Flowable]:
    """Every lighting and every putting out in the order of the night."""
    staged = edition.staged
    found = watches(staged)
    if not found:
        return [
            heading("Who burns when"),
            Prose(Span("Nobody is lit in this show.", "Regular", CUE)),
        ]
    widths = [60.0, 46.0, room * 0.30, room * 0.26]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [[head_cell(w) for w in ("time", "", "who", "where", "who watches")]]
    style: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)]
    events = [(w.burn.end, 0, w) for w in found] + [(w.burn.start, 1, w) for w in found]
    for beat, lighting, watch in sorted(
        events, key=lambda e: (round(e[0], 6), e[1], edition.number_of(e[2].burn.who))
    ):
        rows.append(_fire_row(edition, beat, bool(lighting), watch))
        if not lighting:
            style.append(("BACKGROUND", (0, len(rows) - 1), (-1, len(rows) - 1), MIST))
    return [CondPageBreak(130), heading("Who burns when"), grid(rows, widths, *style, repeat=1)]


def _fire_row(edition: Edition, beat: float, lighting: bool, watch: Watch) -> list[Cell]:
    staged = edition.staged
    seconds = staged.seconds(beat)
    who = watch.burn.who
    planned = staged.seconds(watch.burn.end) - staged.seconds(watch.burn.start)
    spot = watch.spot if lighting else watch.out_spot
    name: list[Flowable] = [
        Prose(
            [
                Span(f"{edition.number_of(who)}  ", "Poster", CUE, INK),
                Span(brief(who), "Bold", CUE),
            ],
            leading=1.2,
            role="TD",
        )
    ]
    if lighting:
        words = (
            f"expected out {clock(staged.seconds(watch.burn.end))}, after {span_seconds(planned)}"
        )
        name.append(Prose(Span(words, "Regular", TEXT), role="TD"))
        dry = (
            "burning time not known"
            if watch.burns_until is None
            else f"wick dry about {clock(watch.burns_until)}"
        )
        name.append(Prose(Span(dry, "Regular", TEXT, SOFT), role="TD"))
    return [
        [
            Prose(Span(clock(seconds), "Poster", HEAD), leading=1.1, role="TD"),
            Prose(Span(f"bar {staged.position(beat)}", "Bold", TEXT), role="TD"),
        ],
        LitMark("LIT" if lighting else "OUT", lit=lighting, wide=42),
        name,
        Prose(Span(place_words(*spot[:2]), "Regular", CUE), leading=1.2, role="TD"),
        _watchers(edition, watch)
        if lighting
        else Prose(Span("towel ready until it is cold", "Regular", TEXT), role="TD"),
    ]


def _watchers(edition: Edition, watch: Watch) -> Cell:
    if not watch.watchers:
        return Prose(Span("NOBODY: do not light", "Bold", CUE), role="TD")
    crew = edition.staged.show.crew
    lines: list[Flowable] = [
        Prose(
            [
                Span(f"S{crew.index(post) + 1}  ", "Bold", TEXT, WATCH),
                Span(brief(post.name), "Bold", TEXT),
                Span(f", {metres(far)} away", "Regular", TEXT),
            ],
            role="TD",
        )
        for post, far in watch.watchers[:4]
    ]
    if len(watch.watchers) > 4:
        lines.append(
            Prose(Span(f"and {len(watch.watchers) - 4} more", "Regular", TEXT, SOFT), role="TD")
        )
    return lines


def posts_block(edition: Edition, room: float) -> list[Flowable]:
    """Who stands where with what."""
    crew = edition.staged.show.crew
    if not crew:
        return [
            CondPageBreak(80),
            heading("Posts"),
            Prose(
                Span(
                    "No crew in the show file. Nobody may be lit without somebody who watches.",
                    "Bold",
                    CUE,
                )
            ),
        ]
    widths = [34.0, room * 0.27, room * 0.24, room * 0.23]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("post", "who", "stands", "watches", "has in reach")]
    ]
    for number, post in enumerate(crew, start=1):
        watched = listed(post.watches, most=8) or ("all" if post.duty == "spotter" else "–")
        rows.append(
            [
                Disc(f"S{number}", 24, colour=WATCH),
                [
                    Prose(Span(post.name, "Bold", CUE), leading=1.2, role="TD"),
                    Prose(Span(post.duty, "Regular", TEXT, SOFT), role="TD"),
                ],
                Prose(Span(place_words(*post.post), "Regular", TEXT), role="TD"),
                Prose(Span(watched, "Regular", TEXT), role="TD"),
                Prose(Span(listed(post.equipment) or "nothing listed", "Regular", TEXT), role="TD"),
            ]
        )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return [CondPageBreak(120), heading("Posts"), grid(rows, widths, style, repeat=1)]


def passes_block(edition: Edition, room: float) -> list[Flowable]:
    """The tightest clearances, with when and where."""
    passes = edition.close_passes()
    story: list[Flowable] = [CondPageBreak(110), heading("Close passes")]
    if not passes:
        story.append(Prose(Span("No clearance was measured: " + _unseen(edition), "Regular", TEXT)))
        return story
    widths = [64.0, room * 0.38, 66.0, 66.0]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("time", "between", "closest", "asked for", "where")]
    ]
    for one in passes[:MOST_PASSES]:
        under = one.distance < one.required
        where = place_words(*one.where) if one.where is not None else "–"
        rows.append(
            [
                [
                    Prose(Span(clock_fine(one.at), "Bold", CUE), role="TD"),
                    Prose(
                        Span(f"bar {one.position}" if one.position else "", "Regular", SMALL, SOFT),
                        role="TD",
                    ),
                ],
                [
                    Prose(Span(listed(one.between), "Bold", TEXT), role="TD"),
                    Prose(
                        Span(" – ".join(p for p in one.parts if p), "Regular", SMALL, SOFT),
                        role="TD",
                    ),
                ],
                [
                    Prose(Span(metres(one.distance, decimals=2), "Bold", CUE), role="TD"),
                    Prose(Span("TOO CLOSE" if under else "", "Bold", SMALL), role="TD"),
                ],
                Prose(Span(metres(one.required, decimals=2), "Regular", CUE), role="TD"),
                Prose(Span(where, "Regular", TEXT), role="TD"),
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
                Span(
                    f"{len(passes) - MOST_PASSES} wider ones are not printed; `sequencer check` lists all.",
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
                Span(
                    f"Computed from the plan to {1000 * error:.0f}\u00a0mm, outer edge of prop and flame; "
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
    return " ".join(edition.report.unseen) or "the report holds none."


def hazards_block(edition: Edition, room: float) -> list[Flowable]:
    """What burns, what hangs, what is not known; and where the equipment stands."""
    venue = edition.staged.show.venue
    lines: list[tuple[str, str]] = []
    for thing in venue.scenery:
        words = (
            "burns: keep flames away" if thing.combustible else "does not burn; do not run into it"
        )
        xs, ys = [p[0] for p in thing.outline], [p[1] for p in thing.outline]
        place = place_words((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
        lines.append((thing.name, f"{words}; {metres(thing.height)} high, {place}"))
    if venue.ceiling == "open":
        lines.append(("Overhead", "open sky as entered: look for lines, branches and bunting"))
    else:
        lines.append(("Overhead", f"ceiling at {metres(float(venue.ceiling), decimals=2)}"))
    if venue.setting == "outdoors":
        wind = (
            "not entered: measure at prop height before lighting"
            if venue.wind is None
            else f"gusts {venue.wind:.1f}\u00a0m/s as entered"
        )
        lines.append(("Wind", wind))
    if venue.fuel_station is not None:
        lines.append(
            (
                "Fuel station",
                f"{place_words(*venue.fuel_station)}: shut during the act, no flame near it",
            )
        )
    lines += [
        ("Extinguisher", f"{tool.kind}, {tool.rating}; {place_words(*tool.at)}")
        for tool in venue.extinguishers
    ]
    if not venue.extinguishers:
        lines.append(("Extinguisher", "none entered"))
    lines += [("Exit", f"{place.name}; {place_words(*place.at)}") for place in venue.exits]
    lines += _equipment(edition)
    lines += [("Not looked at", words) for words in edition.report.unseen]
    rows: list[list[Cell]] = [
        [Prose(Span(name, "Bold", TEXT), role="TD"), Prose(Span(words, "Regular", TEXT), role="TD")]
        for name, words in lines
    ]
    return [
        CondPageBreak(110),
        heading("Hazards and equipment"),
        grid(rows, [room * 0.26, room * 0.74], pad=3),
    ]


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
