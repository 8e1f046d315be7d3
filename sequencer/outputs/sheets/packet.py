"""The plan packet for the authority: site plan to scale, performers, fuel, crew, rules, signatures.

Lengths in points; scales are of the print at 100 %.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from reportlab.platypus import CondPageBreak, Flowable, PageBreak, Spacer

from sequencer.facts.sources import Range
from sequencer.outputs.sheets.fuel_sheet import litres, soaks
from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading, named_rows
from sequencer.outputs.sheets.page.paper import CUE, INK, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    at_most,
    brief,
    clock,
    listed,
    place_words,
    plural,
    span_seconds,
)
from sequencer.outputs.sheets.parts.audience import audience_block
from sequencer.outputs.sheets.parts.cells import watch_cell, when_cell, who_cell
from sequencer.outputs.sheets.parts.compliance_table import compliance_block, rules_block
from sequencer.outputs.sheets.parts.cues import early_clock, late_clock, place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.emergency import emergency_block
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.holding import held_words
from sequencer.outputs.sheets.parts.kept_distances import distances_block
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    findings_block,
    notes_block,
    opening,
    role_on_stop,
)
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of
from sequencer.outputs.sheets.parts.stage_plans.landing_plan import landing_block
from sequencer.outputs.sheets.parts.stage_plans.plan import StagePlan
from sequencer.outputs.sheets.parts.stop_calls import stop_block
from sequencer.outputs.sheets.safety_sheet import (
    hazards_block,
    passes_block,
    posts_block,
)
from sequencer.outputs.words.date_words import day_words
from sequencer.safety.burns.burning import PlannedBurn, known_fuel
from sequencer.safety.rules.permits import permit_words
from sequencer.safety.site_ground.landings import landing_area
from sequencer.show.file_records.performer_record import Performer
from sequencer.units import rounded_up

SCALES = (
    20,
    25,
    50,
    75,
    100,
    125,
    150,
    200,
    250,
    300,
    400,
    500,
    1000,
    2000,
)  # usual drawing scales, paper to site
BLANK_LINE = "______________"
POINTS_A_METRE = 72 / 0.0254
_SIGNATURES = (
    "Safety lead",
    "For the performers",
    "For the place or its owner",
    "For the authority",
)


def packet_sheet(edition: Edition) -> Sheet:
    """The pages for the authority."""
    return Sheet(
        name="plan-packet", title="Plan packet for the authority", story=partial(_story, edition)
    )


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    show = edition.staged.show
    burns = edition.plan.burns
    facts = [
        ("Place", show.venue.name),
        ("Setting", show.venue.setting or "not stated"),
        ("Performers", f"{len(show.names)}, {edition.plan.lit_at_once} lit at once"),
        ("Flames", _flames(edition) if burns else "none"),
    ]
    story = opening(
        edition,
        room,
        kind="Plan packet for the authority",
        title=edition.title,
        facts=facts,
        stop=role_on_stop(edition, "lead"),
        close=True,
    )
    story += _contacts(edition, room)
    story += compliance_block(edition, room)
    story += _authority(edition)
    story += _to_fill_in(room)
    story += findings_block(edition, edition.findings_for(), room, title="What the checks found")
    story += _performers(edition, room)
    story += _fuel(edition, room)
    story += audience_block(edition, room)
    story += _burns(edition, room)
    story += [PageBreak(), *_site_plan(edition, page)]
    story += landing_block(edition, room, drawn=False)
    story += posts_block(edition, room)
    story += passes_block(edition, room)
    story += hazards_block(edition, room)
    story += _rules(edition, room)
    story += notes_block(edition, edition.findings_for(), room)
    story += cautions_block(edition, "packet", room, whole=True)
    story += stop_block(edition, room)
    story += emergency_block(edition, room)
    story += _signatures(room)
    return story


def _contacts(edition: Edition, room: float) -> list[Flowable]:
    """Where it is and who answers for it, with blanks for what the file does not say."""
    show = edition.staged.show
    leads = [edition.staged.taken_by(post.name) for post in show.crew if post.duty == "lead"]
    night = day_words(show.night) if show.night else f"not stated: {BLANK_LINE}"
    phone = f"phone {BLANK_LINE}"
    lines = [
        ("Address", show.emergency.address or BLANK_LINE),
        ("Night", f"{night}; song starts {show.begins or BLANK_LINE}"),
        ("Permit", permit_words(show)),
        ("Responsible", f"{BLANK_LINE}{BLANK_LINE}  {phone}"),
        (
            "Safety lead",
            f"{listed(leads) or BLANK_LINE}, {phone}      Operator {BLANK_LINE}, {phone}",
        ),
    ]
    rows: list[list[Cell]] = [
        [_words(name, strong=True, size=SMALL), _words(words, size=SMALL)] for name, words in lines
    ]
    return [Spacer(1, 4), grid(rows, [room * 0.15, room * 0.85], pad=1.6)]


def _to_fill_in(room: float) -> list[Flowable]:
    """What an authority or an insurer asks for and no show file holds."""
    lines = [
        ("Insurer", f"{BLANK_LINE} policy {BLANK_LINE}"),
        ("Sum insured", f"{BLANK_LINE} from {BLANK_LINE} to {BLANK_LINE}"),
        ("Risk assessment", f"reference {BLANK_LINE} date {BLANK_LINE}"),
        ("Organiser", f"{BLANK_LINE} phone {BLANK_LINE}"),
        ("Show ends", f"{BLANK_LINE} place clear by {BLANK_LINE}"),
        (
            "Attached",
            "log of timed burns ☐   fuel data sheet ☐   certificates ☐   owner’s consent ☐",
        ),
    ]
    return [
        CondPageBreak(150),
        heading("To be filled in by hand", level=2),
        named_rows(lines, room, share=0.24),
    ]


def _flames(edition: Edition) -> str:
    burns = edition.plan.burns
    first, last = min(b.alight_s for b in burns), max(b.out_s for b in burns)
    return f"{early_clock(first)}{NB}–{NB}{late_clock(last)}"


def _authority(edition: Edition) -> list[Flowable]:
    rules = edition.staged.show.rules
    who = rules.authority or "The authority is not named in the show file"
    names = listed([f"“{name}”" for name in rules.profile], most=4)
    profiles = f"{'profile' if len(rules.profile) == 1 else 'profiles'} {names}"
    words = (
        f"{who}. The plan was worked out against the {profiles}"
        f"{' plus the show’s own rules' if rules.file else ''}. On these pages “met” means only that the plan as "
        "entered meets that rule."
    )
    return [Prose(TextSpan(words, "Regular", TEXT), before=8)]


def plan_scale(plan: StagePlan, room: float) -> int:
    """The largest usual scale at which a plan fits the space."""
    plan.wrap(room, 1e9)
    fitting = plan.scale
    return next((n for n in SCALES if POINTS_A_METRE / n <= fitting + 1e-9), SCALES[-1])


def _site_plan(edition: Edition, page: Page) -> list[Flowable]:
    staged = edition.staged
    if not staged.standings:
        return []
    order = range(len(staged.standings))
    index = max(order, key=lambda k: (len(scene_of(edition, k).lit), -k))
    tall = page.tall - 96
    scene = replace(scene_of(edition, index, dimensions=True), landing=landing_area(edition.motion))
    scale = plan_scale(StagePlan(scene, tall=tall), page.inner)
    plan = StagePlan(scene, tall=tall, scale=POINTS_A_METRE / scale)
    words = (
        f"Scale 1 : {scale} when printed at 100 % (check the bar). Formation “{brief(staged.standings[index].formation)}”, "
        f"from {clock(staged.seconds(staged.standings[index].start))}. Circles are arm, prop and flame at full reach; distances drawn start from where people stand. Long dashes: "
        "where a head that comes off may land."
    )
    return [
        heading("Site plan", before=0),
        Prose(TextSpan(words, "Regular", SMALL, SOFT), after=4),
        plan,
        Spacer(1, 4),
        *distances_block(edition, page.inner),
    ]


def _table(
    heads: Sequence[str], rows: Sequence[Sequence[Cell]], widths: Sequence[float]
) -> Flowable:
    top: list[list[Cell]] = [[head_cell(word) for word in heads]]
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    return grid([*top, *rows], widths, style, repeat=1, pad=3)


def _words(text: str, *, strong: bool = False, size: float = TEXT) -> Prose:
    return Prose(TextSpan(text, "Bold" if strong else "Regular", size), role="TD")


def _performers(edition: Edition, room: float) -> list[Flowable]:
    widths = [room * 0.30, room * 0.30, room * 0.14]
    widths.append(room - sum(widths))
    rows = [
        [
            who_cell(edition, dancer.name),
            _words("\n".join(held_words(dancer))),
            _words(_age(edition, dancer)),
            _words(at_most(_reach(edition, dancer.name), decimals=2)),
        ]
        for dancer in edition.staged.show.cast
    ]
    heads = ("performer", "props, each hand", "age", "reach with prop and flame")
    return [CondPageBreak(120), heading("Performers and props"), _table(heads, rows, widths)]


def _age(edition: Edition, dancer: Performer) -> str:
    date = edition.printed_for
    if dancer.birth_year is None:
        return "not recorded"
    if date is None:
        return f"born {dancer.birth_year}"
    return f"{date.year - dancer.birth_year - 1} or {date.year - dancer.birth_year}"


def _reach(edition: Edition, who: str) -> float:
    return next(dancer.reach for dancer in edition.staged.dancers if dancer.name == who)


def _fuel(edition: Edition, room: float) -> list[Flowable]:
    fire = edition.staged.show.fire
    liquid = known_fuel(edition.staged)
    if fire is None or liquid is None:
        return []
    lines: list[tuple[str, str]] = [("Fuel", f"{liquid.title} (entered as {fire.fuel})")]
    if liquid.cas:
        lines.append(("CAS number", liquid.cas))
    for name, found, unit in (
        ("Flash point", liquid.flash_point, "°C"),
        ("Density", liquid.density, "kg/m³"),
    ):
        lines.append((name, _range(found, unit)))
    lines.append(
        (
            "Class",
            f"NFPA {liquid.nfpa_class or 'not known'}; GHS category {liquid.ghs_category or 'none'}",
        )
    )
    soaked = soaks(edition)
    masses = [soak.mass for soak in soaked if soak.mass is not None]
    if soaked and len(masses) == len(soaked):
        volume = litres(sum(masses), liquid)
        lines.append(
            (
                "On the wicks in all",
                f"{1000 * sum(masses):.0f}{NB}g" + (f", about {volume:.2f}{NB}L" if volume else ""),
            )
        )
    else:
        lines.append(
            ("On the wicks in all", "not known: the mass of a soaked wick is not entered for all")
        )
    if fire.fuel_on_site is not None:
        lines.append(("Brought along", f"{1000 * fire.fuel_on_site:.2f}{NB}L"))
    rows = [[_words(name, strong=True), _words(words)] for name, words in lines]
    return [CondPageBreak(120), heading("Fuel"), grid(rows, [room * 0.24, room * 0.76], pad=2.5)]


def _range(found: Range | None, unit: str) -> str:
    if found is None:
        return "not known: read the data sheet"
    ends = [f"{end:g}" for end in (found.low, found.high) if end is not None]
    return f"{' to '.join(dict.fromkeys(ends))}{NB}{unit}  ({found.citation})"


def _burns(edition: Edition, room: float) -> list[Flowable]:
    burns = edition.plan.burns
    if not burns:
        return []
    widths = [70.0, room * 0.27, room * 0.25]
    widths.append(room - sum(widths))
    rows = []
    for burn in burns:
        time = (
            "not known"
            if burn.burn is None
            else f"{span_seconds(burn.burn.seconds)}, {burn.burn.basis}"
        )
        share = ""
        if burn.burn is not None:
            share = f"\n{rounded_up(100 * burn.share()):.0f}{NB}% of it planned, lighting and putting out included"
        x, y, _ = place_at(edition.staged, burn.who, burn.start)
        rows.append(
            [
                when_cell(edition, burn.start),
                [
                    who_cell(edition, burn.who),
                    _words(f"{_handled(edition, burn)}; {place_words(x, y)}", size=SMALL),
                ],
                _words(f"burning time {time}{share}"),
                watch_cell(edition, burn),
            ]
        )
    return [
        CondPageBreak(130),
        heading("Burns"),
        _table(("lit at", "who", "wick", "watched by"), rows, widths),
    ]


def _handled(edition: Edition, burn: PlannedBurn) -> str:
    lit, out = (
        edition.staged.taken_by(who or "nobody named") for who in (burn.lit_by, burn.put_out_by)
    )
    words = f"lit by {brief(lit)} from {early_clock(burn.alight_s)}, put out by {brief(out)} until {late_clock(burn.out_s)}"
    return edition.in_order(words)


def _rules(edition: Edition, room: float) -> list[Flowable]:
    story = rules_block(edition, room)
    loosened = edition.plan.book.loosened
    if story and loosened:
        words = f"{plural(len(loosened), 'limit')} loosened; see the findings for by whom and why."
        story.append(Prose(TextSpan(words, "Bold", CUE), before=4))
    return story


def _signatures(room: float) -> list[Flowable]:
    rows: list[list[Cell]] = [[head_cell(w) for w in ("", "name", "signature", "date")]]
    rows += [[_words(words, strong=True), "", "", ""] for words in _SIGNATURES]
    widths = [room * 0.28, room * 0.28, room * 0.28, room * 0.16]
    return [
        CondPageBreak(190),
        heading("Signatures"),
        Prose(
            TextSpan(
                "A signature here says that the signer has read this version, nothing more.",
                "Regular",
                SMALL,
                SOFT,
            )
        ),
        grid(rows, widths, ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK), pad=13),
    ]
