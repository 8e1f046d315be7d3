"""The fuel station's sheet: what to soak for whom, when they light, and how to store the fuel. Lengths in points.

A soaked mass is what stays on a wick after the spin-off, as in the show file; what is spun off is
additional, and is caught. Volumes follow from the fuel's density.
"""

from dataclasses import dataclass
from functools import partial

from reportlab.platypus import CondPageBreak, Flowable, Spacer

from sequencer.facts.fuels import Fuel
from sequencer.facts.signs import signs_for
from sequencer.outputs.sheets.page.elements import Cell, grid, head_cell, heading
from sequencer.outputs.sheets.page.paper import CUE, HEAD, INK, SMALL, SOFT, TEXT, Page
from sequencer.outputs.sheets.page.pictograms import CODES, SignMark
from sequencer.outputs.sheets.page.prose import Prose, TextSpan
from sequencer.outputs.sheets.page.wording import (
    NB,
    brief,
    metres,
    place_words,
    plural,
    span_seconds,
)
from sequencer.outputs.sheets.parts.cells import who_cell
from sequencer.outputs.sheets.parts.cues import early_clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet
from sequencer.outputs.sheets.parts.notices import (
    cautions_block,
    findings_block,
    notes_block,
    opening,
    role_on_stop,
)
from sequencer.outputs.sheets.parts.timeline_strip import TimelineStrip
from sequencer.safety.burns.burning import PlannedBurn, known_fuel
from sequencer.safety.burns.fuel_plan import FUEL_RESERVE, SPIN_OFF, FuelPlan
from sequencer.safety.burns.handling import seconds_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Soak:
    """One performer's wicks, soaked once."""

    who: str
    burn: PlannedBurn  # the first on this soak
    wicks: int
    mass: float | None  # [kg] of fuel on all of them; None if it is not known for one of them


def fuel_sheet(edition: Edition) -> Sheet:
    """The pages of the fuel station."""
    return Sheet(name="fuel", title="Fuel station", story=partial(_story, edition))


def soaks(edition: Edition) -> tuple[Soak, ...]:
    """One entry for each soak, in the order of lighting."""
    staged = edition.staged
    cast = {dancer.name: dancer for dancer in staged.show.cast}
    found, before = [], set()
    for burn in edition.plan.burns:
        if (burn.who, burn.soak) in before:  # lit again on the same soak
            continue
        props = cast[burn.who].props.values()
        masses = [prop.fuel for prop in props]
        known = [mass for mass in masses if mass is not None]
        found.append(
            Soak(
                who=burn.who,
                burn=burn,
                wicks=sum(prop.wick_count for prop in props),
                mass=sum(known) if len(known) == len(masses) else None,
            )
        )
        before.add((burn.who, burn.soak))
    return tuple(found)


def litres(mass: float, liquid: Fuel | None) -> float | None:
    """Volume of a mass of fuel at its lowest known density [L], so rather too much; None if unknown."""
    if liquid is None or liquid.density is None:
        return None
    return 1000.0 * mass / liquid.density.lowest


def _story(edition: Edition, page: Page) -> list[Flowable]:
    room = page.inner
    show = edition.staged.show
    liquid = known_fuel(edition.staged)
    soaked = soaks(edition)
    facts = [("Fuel", show.fire.fuel if show.fire else "none")]
    if liquid is not None:
        flash = liquid.flash_point
        facts.append(("Flash point", f"{flash.lowest:.0f}{NB}°C" if flash else "not known"))
        facts.append(("Class", f"NFPA {liquid.nfpa_class}" if liquid.nfpa_class else "not known"))
    facts.append(("To prepare", _prepared(edition.plan.fuel)))
    if show.fire is not None and show.fire.fuel_on_site is not None:
        facts.append(("On site", f"{1000 * show.fire.fuel_on_site:.1f}{NB}L as entered"))
    story = opening(
        edition,
        room,
        kind="Fuel station",
        title=edition.title,
        facts=facts,
        stop=role_on_stop(edition, "fuel keeper"),
    )
    story += [Spacer(1, 6), _sign_row(room)]
    report = edition.report
    findings = [each for each in report.findings if each.code in report.fuel_codes]
    story += findings_block(edition, findings, room, title="Findings about fuel and burns")
    story += _soak_block(edition, soaked, liquid, room)
    story += [Spacer(1, 8), TimelineStrip(edition)]
    story += _steps(edition)
    story += notes_block(edition, findings, room)
    story += cautions_block(edition, "fuel", room)
    return story


def _prepared(plan: FuelPlan | None) -> str:
    if plan is None:
        return "nothing"
    if plan.unweighed:
        return "weigh a soaked wick first"
    return f"{1000 * plan.prepared:.2f}{NB}L"


def _sign_row(room: float) -> Flowable:
    """The safety signs for a fuel point, by their registered meaning."""
    signs = [sign for sign in signs_for("fuel point") if sign.code in CODES]
    cells: list[Cell] = [
        [SignMark(sign.code, 40), Prose(TextSpan(sign.what, "Regular", SMALL), before=3)]
        for sign in signs
    ]
    return grid([cells], [room / len(signs)] * len(signs), lines=False, pad=2)


def _soak_block(
    edition: Edition, soaked: tuple[Soak, ...], liquid: Fuel | None, room: float
) -> list[Flowable]:
    if not soaked:
        return [
            heading("What to soak"),
            Prose(TextSpan("Nobody is lit in this show.", "Regular", CUE)),
        ]
    widths = [70.0, room * 0.36, 70.0, room * 0.22]
    widths.append(room - sum(widths))
    rows: list[list[Cell]] = [
        [head_cell(w) for w in ("lit from", "who, lit by", "wicks", "fuel on them", "done")]
    ]
    for soak in soaked:
        amount = "not known: weigh"
        if soak.mass is not None:
            volume = litres(soak.mass, liquid)
            amount = f"{1000 * soak.mass:.0f}{NB}g"
            amount += f"\nabout {1000 * volume:.0f}{NB}mL" if volume is not None else ""
        name: list[Flowable] = [who_cell(edition, soak.who)]
        name += [
            Prose(TextSpan(line, "Bold", TEXT), role="TD") for line in _lit_lines(edition, soak)
        ]
        alight = early_clock(soak.burn.alight_s)
        rows.append(
            [
                Prose(TextSpan(alight, "Poster", HEAD), leading=1.1, role="TD"),
                name,
                Prose(TextSpan(str(soak.wicks), "Poster", HEAD), role="TD"),
                Prose(TextSpan(amount, "Bold", CUE), role="TD"),
                _TickBox(),
            ]
        )
    style = ("LINEBELOW", (0, 0), (-1, 0), 1.2, INK)
    tail = Prose(
        TextSpan(
            f"“To prepare” is what the wicks take up ({SPIN_OFF:.0%} of it is spun off and caught) plus "
            f"{FUEL_RESERVE:.0%} spare. Both shares are this tool’s choice; measure your own.",
            "Regular",
            SMALL,
            SOFT,
        ),
        before=3,
    )
    return [CondPageBreak(130), heading("What to soak"), grid(rows, widths, style, repeat=1), tail]


def _lit_lines(edition: Edition, soak: Soak) -> list[str]:
    """Who lights a soaked set and where, never at the fuel; and what a relight needs."""
    burn = soak.burn
    by = "NOBODY IS NAMED TO LIGHT: hand nothing out"
    if burn.lit_by is not None:
        by = f"{edition.in_order(brief(edition.staged.taken_by(burn.lit_by)))} lights"
        by += f", {place_words(*burn.lit_at)}" if burn.lit_at is not None else ""
    if not burn.soak:
        return [by]
    if burn.second_set:
        return ["SECOND SET: soak it with the first, never the hot wick", by]
    cool = seconds_words(burn.cool_s) + edition.plan.handling.words("cool")
    return [f"RELIGHT of the same wick: soak it only when it is cold, {cool} after it is out", by]


class _TickBox(Flowable):  # type: ignore[misc]
    """An empty box to tick."""

    def wrap(self, _room: float, _tall: float) -> tuple[float, float]:
        return 18.0, 18.0

    def draw(self) -> None:
        self.canv.setStrokeColor(INK)
        self.canv.setLineWidth(1.2)
        self.canv.rect(0.6, 0.6, 16, 16, stroke=1, fill=0)


def _steps(edition: Edition) -> list[Flowable]:
    """Soak, spin off and hand over, with the times of the rules in force."""
    venue = edition.staged.show.venue
    book = edition.plan.book
    lines = []
    if venue.fuel_station is not None:
        x, y = venue.fuel_station
        lines.append(f"The station is {place_words(x, y)}; keep it shut while anybody is lit.")
    distance = book.strictest("fuel-point-distance")
    if distance is not None:
        lines.append(
            f"No lit prop within {metres(distance.number)} of it; the rule says “{distance.printed}”."
        )
    for kind, words in (
        ("soak-seconds", "Soak"),
        ("spin-off-seconds", "Spin or shake off into the container"),
    ):
        rule = book.strictest(kind)
        if rule is not None:
            lines.append(
                f"{words}: {span_seconds(rule.number)} at least; the rule says “{rule.printed}”."
            )
    lines += [
        "Never more than one can open; lid on before the next person comes.",
        "Wipe hands and handles, then walk to where the props are lit: never handle fuel and flame together.",
        "Rags go into lidded metal. Spilled fuel is covered and reported before anybody lights.",
        f"After the last flame: seal, count {plural(sum(s.wicks for s in soaks(edition)), 'soaked wick')}, wrap what is hot.",
    ]
    return [
        CondPageBreak(120),
        heading("Order of work"),
        *(
            Prose([TextSpan(f"{k}  ", "Poster", CUE), TextSpan(line, "Regular", CUE)], after=3)
            for k, line in enumerate(lines, start=1)
        ),
    ]
