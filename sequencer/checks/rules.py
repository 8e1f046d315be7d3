"""The rest of the house rules: permit, roof, fuel, wind, age, and what only a person can confirm.

Inputs are plain records. A blank is not zero: what a rule needs and nobody recorded is said.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from sequencer.facts.fuels import Fuel
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.facts.wind import beaufort
from sequencer.findings import Finding, Severity

LITRE = 1e-3  # [m³]
_BY_HAND = ("official-watch", "spin-off-zone", "stop-word", "no-smoking", "fire-watch")


@dataclass(frozen=True, slots=True, kw_only=True)
class Night:
    """What a show records about its place and evening; None where it records nothing."""

    indoors: bool
    sprinklers: bool | None = None
    permit: str | None = None  # the authority's reference
    wind: float | None = None  # [m/s] gusts
    fuel: Fuel | None = None
    fuel_on_site: float | None = None  # [m³]
    fuel_of: Mapping[str, float | None] = field(default_factory=dict)  # [m³] by performer
    flame: float | None = None  # [m] over the wick at rest
    ages: Mapping[str, int | None] = field(default_factory=dict)  # [years] least, by performer
    burns: bool = True  # somebody is lit


def rule_findings(night: Night, book: RuleBook) -> list[Finding]:
    """Everything of the rules that needs neither time nor place.

    Parameters
    ----------
    night : Night
    book : RuleBook
    """
    if not night.burns:
        return []
    return [
        *_permit(night, book),
        *_roof(night, book),
        *_fuel_kind(night, book),
        *_fuel_amount(night, book),
        *_weather(night, book),
        *_flame(night, book),
        *_ages(night, book),
        *_loosened(book),
        *_by_hand(book),
    ]


def _permit(night: Night, book: RuleBook) -> list[Finding]:
    found = []
    if ban := book.asked("fire-ban"):
        found.append(
            _finding("fire-ban", "stop", "a day of total fire ban: nothing is lit", ban.citation,
                     ("dance it dark, or bring the commissioner's exemption in writing",))
        )  # fmt: skip
    rule = book.asked("permit")
    if rule and not night.permit:
        found.append(
            _finding(
                "no-permit",
                "note",
                "no permit reference is recorded: every sheet is marked DRAFT",
                rule.citation,
                ("write the authority's reference under rules, permit",),
            )
        )
    return found


def _roof(night: Night, book: RuleBook) -> list[Finding]:
    if not night.indoors:
        return []
    if rule := book.asked("indoor-forbidden"):
        return [
            _finding(
                "indoors-forbidden",
                "stop",
                "this rule set allows no fire under a roof",
                rule.citation,
                ("perform outdoors", "dance it dark"),
            )
        ]
    blank = []
    if (rule := book.asked("sprinklers")) and night.sprinklers is not True:
        word = "none" if night.sprinklers is False else "not recorded"
        blank.append((f"sprinklers: {word}", rule))
    if (rule := book.asked("indoor-agreed")) and not night.permit:
        blank.append(("no authority's reference for fire indoors", rule))
    if not blank:
        return []
    return [
        _finding(
            "indoors-not-recorded",
            "stop",
            f"fire indoors is off until it is recorded: {'; '.join(text for text, _ in blank)}",
            " ".join(dict.fromkeys(rule.citation for _, rule in blank)),
            (
                "agree ceiling, alarm isolation, exits and drapes with authority and venue in writing",
                "then record venue, sprinklers and rules, permit",
            ),
        )
    ]


def _fuel_kind(night: Night, book: RuleBook) -> list[Finding]:
    fuel = night.fuel
    if fuel is None:
        return []
    if fuel.refused is not None:
        rule = next((each for each in book.all("fuel-refused") if _names(each, fuel)), None)
        origin = rule.citation if rule else fuel.refused.source.citation
        return [
            _finding("fuel-refused", "stop", f"{fuel.title} is refused: {fuel.refused.why}", origin,
                     ("use kerosene or lamp-oil, with its data sheet",))
        ]  # fmt: skip
    flash = "unknown" if fuel.flash_point is None else f"{fuel.flash_point.lowest:.0f} °C"
    found = [
        _finding(
            "fuel-refused",
            "stop",
            f"{fuel.title} (flash point {flash}) is refused by this rule set",
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
            _finding(
                "fuel-class",
                "warn",
                f"{fuel.title} is NFPA class {fuel.nfpa_class or 'unknown'}, flash point {flash}: "
                "its vapour lights at room temperature",
                f"{warned.citation} Flash point: {origin}",
                ("keep it shut, away from every flame and spark", "change to lamp-oil or kerosene"),
            )
        )
    return found


def _fuel_amount(night: Night, book: RuleBook) -> list[Finding]:
    if night.fuel is None:
        return []
    found = []
    each = book.strictest("fuel-per-performer")
    for who, volume in night.fuel_of.items() if each else ():
        if each and volume is not None and volume > each.number:
            found.append(
                _finding("fuel-over-limit", "stop",
                         f"{who} needs {_litres(volume)}; {_litres(each.number)} allowed a performer",
                         each.citation, ("fewer or smaller wicks, or fewer burns",), who=(who,))
            )  # fmt: skip
    site = book.strictest("fuel-on-site")
    if night.fuel_on_site is None:
        if site:
            found.append(_blank("fuel on site is not recorded", "fire, fuel_on_site", site))
        return found
    if site and night.fuel_on_site > site.number:
        found.append(
            _finding(
                "fuel-over-limit",
                "stop",
                f"{_litres(night.fuel_on_site)} on site; {_litres(site.number)} allowed",
                site.citation,
                (f"bring at most {_litres(site.number)}",),
            )
        )
    group = "flammable" if night.fuel.flammable else "combustible"
    for rule in book.all("fuel-permit-volume"):
        edge = rule.value.get(group) if isinstance(rule.value, Mapping) else None
        if edge is not None and night.fuel_on_site > edge:
            found.append(
                _finding(
                    "fuel-permit",
                    "warn",
                    f"{_litres(night.fuel_on_site)} of a {group} liquid needs a storage permit "
                    f"above {_litres(edge)}",
                    rule.citation,
                    ("bring less", "ask for the permit"),
                )
            )
    return found


def _weather(night: Night, book: RuleBook) -> list[Finding]:
    stop, warn = book.strictest("wind-stop"), book.strictest("wind-warn")
    if night.indoors or stop is None:
        return []
    if night.wind is None:
        return [_blank("wind is not recorded", "venue, wind, measured at prop height", stop)]
    said = f"gusts of {night.wind:.1f} m/s (Beaufort {beaufort(night.wind)})"
    borrowed = "the limit is borrowed from open burning; no number for performers was found"
    if night.wind >= stop.number:
        return [
            _finding("wind-high", "stop", f"{said}, limit {stop.number:.1f} m/s; {borrowed}",
                     stop.citation, ("wait, or dance it dark",))
        ]  # fmt: skip
    if warn and night.wind >= warn.number:
        return [
            _finding("wind-near", "warn", f"{said}, care from {warn.number:.1f} m/s; {borrowed}",
                     warn.citation, ("measure at prop height before each act",
                                     "stop if flames lean at people, fuel or scenery"))
        ]  # fmt: skip
    return []


def _flame(night: Night, book: RuleBook) -> list[Finding]:
    rule = book.strictest("flame-height")
    if rule is None or night.flame is None or night.flame <= rule.number:
        return []
    return [
        _finding(
            "flame-high",
            "stop",
            f"a flame of {night.flame:.2f} m; {rule.number:.2f} m allowed",
            rule.citation,
            ("smaller wicks, timed and watched", "ask the authority in writing"),
        )
    ]


def _ages(night: Night, book: RuleBook) -> list[Finding]:
    rule = book.strictest("performer-age")
    if rule is None:
        return []
    found = []
    for who, age in night.ages.items():
        if age is not None and age < rule.number:
            found.append(
                _finding("under-age", "stop",
                         f"{who} may be {age}; {rule.number:g} years asked", rule.citation,
                         (f"{who} dances unlit", "ask the authority in writing"), who=(who,))
            )  # fmt: skip
    blank = [who for who, age in night.ages.items() if age is None]
    if blank:
        found.append(_blank(f"age is not recorded: {', '.join(blank)}", "cast, birth_year", rule))
    return found


def _loosened(book: RuleBook) -> list[Finding]:
    return [
        _finding(
            "limit-loosened",
            "note",
            f"{each.rule.kind.what}: {each.rule.printed} instead of {each.instead_of.printed}, "
            f"by reference {each.reference}{_by(each.rule)}",
            each.rule.citation,
            (),
        )
        for each in book.loosened
    ]


def _by_hand(book: RuleBook) -> list[Finding]:
    """One note a profile with what it asks and no program can see."""
    found = []
    for profile in book.profiles:
        texts = [
            rule.printed
            for rule in profile.rules
            if rule.kind.sort == "ask" or rule.kind.name in _BY_HAND
        ]
        if texts:
            found.append(
                _finding(
                    "to-confirm",
                    "note",
                    f"{profile.title} asks what only a person can confirm: {'; '.join(texts)}",
                    f"{profile.title}, {profile.edition}",
                    ("tick each on the plan packet",),
                )
            )
    return found


def _names(rule: Rule, fuel: Fuel) -> bool:
    """True if a rule on fuels means this one."""
    names: Sequence[str] = rule.value if isinstance(rule.value, tuple) else ()
    return fuel.name in names or ("flammable" in names and fuel.flammable)


def _by(rule: Rule) -> str:
    if rule.override is None:
        return ""
    return f", entered by {rule.override.by}: {rule.override.reason}"


def _blank(what: str, where: str, rule: Rule) -> Finding:
    return _finding(
        "not-recorded", "warn", f"{what}; a blank counts as unmet", rule.citation,
        (f"write it under {where}",),
    )  # fmt: skip


def _litres(volume: float) -> str:
    return f"{volume / LITRE:.3g} L"


def _finding(
    code: str,
    severity: Severity,
    message: str,
    source: str,
    remedies: tuple[str, ...],
    *,
    who: tuple[str, ...] = (),
) -> Finding:
    return Finding(
        code=code,
        severity=severity,
        who=who,
        start=None,
        end=None,
        position=None,
        message=message,
        remedies=remedies,
        source=source,
    )
