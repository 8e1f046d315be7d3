"""The fuel: which, how much, and whether it is enough for the burns.

Inputs are plain records. Sources: the rules of the book in force; flash points and classes of
`facts.fuels`.
"""

from collections.abc import Mapping, Sequence

from sequencer.checks.check import Check
from sequencer.checks.fire.records import (
    BLANK,
    MISSING,
    PROGRESS,
    Night,
    blank_finding,
    litres,
    night_finding,
    night_of,
    where_lit,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.fuels import Fuel
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.findings import Finding
from sequencer.safety.rules.house_rules import rules_of
from sequencer.safety.safety_plan import PLAN_PARTS
from sequencer.staging.staged import Staged


@where_lit
def fuel(show: Staged) -> Outcome:
    """The fuel of a show: its kind and its amount.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    night, book = night_of(show), rules_of(show)
    return Outcome(findings=(*fuel_kind_findings(night, book), *fuel_amount_findings(night, book)))


def fuel_kind_findings(night: Night, book: RuleBook) -> list[Finding]:
    """Fuels that are refused, everywhere or by a rule, or that need a warning."""
    fuel = night.fuel
    if fuel is None:
        return []
    if fuel.refused is not None:
        rule = next((each for each in book.all("fuel-refused") if _names(each, fuel)), None)
        origin = rule.citation if rule else fuel.refused.source.citation
        return [
            night_finding("fuel-refused", "stop", f"{fuel.title} is refused: {fuel.refused.why}", origin,
                     ("use kerosene or lamp-oil, with its data sheet",))
        ]  # fmt: skip
    flash = "unknown" if fuel.flash_point is None else f"{fuel.flash_point.lowest:.0f} °C"
    found = [
        night_finding(
            "fuel-refused",
            "stop",
            f"{fuel.title} (flash point {flash}) is refused by these rules",
            rule.citation,
            ("use a combustible liquid, flash point above 37.8 °C, such as lamp-oil",),
        )
        for rule in book.all("fuel-refused")
        if _names(rule, fuel)
    ]
    warned = next((rule for rule in book.all("fuel-warned") if _names(rule, fuel)), None)
    if warned and not found:
        origin = fuel.flash_point.citation if fuel.flash_point else ""
        found.append(
            night_finding(
                "fuel-class",
                "warn",
                f"{fuel.title} is NFPA class {fuel.nfpa_class or 'unknown'}, flash point {flash}: "
                "its vapour ignites at room temperature",
                f"{warned.citation} Flash point: {origin}",
                (
                    "keep the can closed and away from flames and sparks",
                    "change to lamp-oil or kerosene",
                ),
            )
        )
    return found


def fuel_amount_findings(night: Night, book: RuleBook) -> list[Finding]:
    """Too much fuel for a performer or on site, too little for the burns, or an unknown amount."""
    if night.fuel is None:
        return []
    found = []
    each = book.strictest("fuel-per-performer")
    for who, volume in night.fuel_of.items() if each else ():
        if each and volume is not None and volume > each.number:
            found.append(
                night_finding("fuel-over-limit", "stop",
                         f"{who} needs {litres(volume)}; {litres(each.number)} allowed per performer",
                         each.citation, ("use fewer or smaller wicks, or plan fewer burns",), who=(who,))
            )  # fmt: skip
    if night.unweighed and each:
        found.append(
            blank_finding(
                f"fuel in the wick is not recorded: {', '.join(night.unweighed)}",
                "cast, prop, fuel_mass, weighed after the spin-off",
                each,
            )
        )
    return [*found, *_on_site(night, night.fuel, book)]


def _on_site(night: Night, fuel: Fuel, book: RuleBook) -> list[Finding]:
    """Fuel on site, against what is allowed and what is needed."""
    found: list[Finding] = []
    site = book.strictest("fuel-on-site")
    if night.fuel_on_site is None:
        if site:
            found.append(blank_finding("fuel on site is not recorded", "fire, fuel_on_site", site))
        return found
    if night.fuel_prepared is not None and night.fuel_on_site < night.fuel_prepared:
        found.append(
            night_finding(
                "fuel-short",
                "warn",
                f"{litres(night.fuel_on_site)} on site; all soaks with a spare need "
                f"{litres(night.fuel_prepared)}",
                "soaked mass at the fuel's density, with spin-off and spare: this program's choice",
                (f"bring {litres(night.fuel_prepared)}", "soak fewer props"),
            )
        )
    if site and night.fuel_on_site > site.number:
        found.append(
            night_finding(
                "fuel-over-limit",
                "stop",
                f"{litres(night.fuel_on_site)} on site; {litres(site.number)} allowed",
                site.citation,
                (f"bring at most {litres(site.number)}",),
            )
        )
    group = "flammable" if fuel.flammable else "combustible"
    for rule in book.all("fuel-permit-volume"):
        edge = rule.value.get(group) if isinstance(rule.value, Mapping) else None
        if edge is not None and night.fuel_on_site > edge:
            found.append(
                night_finding(
                    "fuel-permit",
                    "warn",
                    f"{litres(night.fuel_on_site)} of {group} liquid on site; above {litres(edge)} "
                    "it needs a storage permit",
                    rule.citation,
                    ("bring less", "ask for the permit"),
                )
            )
    return found


def _names(rule: Rule, fuel: Fuel) -> bool:
    """True if a rule on fuels means this one."""
    names: Sequence[str] = rule.value if isinstance(rule.value, tuple) else ()
    return fuel.name in names or ("flammable" in names and fuel.flammable)


CHECK = Check(
    name="fuel",
    run=fuel,
    codes={
        **BLANK,
        "fuel-class": ("warn",),
        "fuel-over-limit": ("stop",),
        "fuel-permit": ("warn",),
        "fuel-refused": ("stop",),
        "fuel-short": ("warn",),
    },
    cautions=MISSING,
    of_fuel=("fuel-class", "fuel-over-limit", "fuel-permit", "fuel-refused", "fuel-short"),
    depends_on=PLAN_PARTS,
    progress=PROGRESS,
)
