"""What a show records about its place and evening, and findings that need neither time nor place."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sequencer.facts.fuels import Fuel
from sequencer.facts.profiles import Rule
from sequencer.findings import Finding, Severity

LITRE = 1e-3  # [m³]


@dataclass(frozen=True, slots=True, kw_only=True)
class Night:
    """What a show records about its place and evening; None where it records nothing."""

    indoors: bool
    open_sky: bool = False  # no ceiling is recorded
    sprinklers: bool | None = None
    permit: str | None = None  # the authority's reference
    wind: float | None = None  # [m/s] gusts
    gust_limit: float | None = None  # [m/s] of the show's own
    fuel: Fuel | None = None
    fuel_on_site: float | None = None  # [m³]
    fuel_of: Mapping[str, float | None] = field(default_factory=dict)  # [m³] by performer
    fuel_prepared: float | None = None  # [m³] that the burns need, with spare
    unweighed: tuple[str, ...] = ()  # performers whose soak nobody weighed
    flame: float | None = None  # [m] over the wick at rest
    ages: Mapping[str, int | None] = field(default_factory=dict)  # [years] least, by performer
    burns: bool = True  # somebody is lit


def blank_finding(what: str, where: str, rule: Rule) -> Finding:
    """What a rule needs and nobody recorded."""
    return night_finding(
        "not-recorded", "warn", f"{what}; a blank counts as unmet", rule.citation,
        (f"write it under {where}",),
    )  # fmt: skip


def litres(volume: float) -> str:
    """A volume in litres, for people."""
    return f"{volume / LITRE:.3g} L"


def night_finding(
    code: str,
    severity: Severity,
    message: str,
    source: str,
    remedies: tuple[str, ...],
    *,
    who: tuple[str, ...] = (),
) -> Finding:
    """A finding that holds for the whole show."""
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


def rule_finding(
    code: str,
    severity: Severity,
    message: str,
    remedies: tuple[str, ...],
    rule: Rule,
    *,
    where: tuple[float, float] | None = None,
) -> Finding:
    """A finding that holds for the whole show and cites a rule."""
    return Finding(
        code=code,
        severity=severity,
        who=(),
        start=None,
        end=None,
        position=None,
        message=message,
        remedies=remedies,
        source=rule.citation,
        where=where,
    )
