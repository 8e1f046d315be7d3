"""What a show records about its venue and evening, and builders of findings that hold for a whole show."""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import wraps
from typing import Protocol

from sequencer.checks.check import Codes
from sequencer.checks.outcome import Outcome
from sequencer.facts.cautions import Condition
from sequencer.facts.fuels import Fuel
from sequencer.facts.profiles import Rule
from sequencer.facts.rule_book import RuleBook
from sequencer.facts.sources import Source
from sequencer.findings import Finding, Severity
from sequencer.safety.burns.burning import known_fuel
from sequencer.safety.rules.permits import permit_contradictions, permit_gaps, permit_that_holds
from sequencer.safety.safety_plan import PLAN_PARTS, safety_plan
from sequencer.show.model import Fire
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged
from sequencer.staging.wicks import flame_at_rest

STATED = ("setting", "ceiling", "spin_off")  # keys of the venue that a rule asks about
LITRE = 1e-3  # [m³]
PROGRESS = "checking fire and crew"
# codes that several checks give
BLANK: Codes = {"not-recorded": ("stop",)}
MISSING: Mapping[str, Condition] = {"not-recorded": "missing"}
CAPPED: Codes = {"limit-capped": ("warn",)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Night:
    """What a show records about its venue and evening; None where it records nothing."""

    indoors: bool
    open_sky: bool = False  # nothing is overhead, as stated
    sprinklers: bool | None = None
    permit: str | None = None  # number of the permit that holds for this place and night
    permit_gaps: tuple[str, ...] = ()  # what keeps the one recorded from counting
    no_date: bool = False  # the night of the performance is not stated
    permit_contradictions: tuple[str, ...] = ()  # what it says that does not fit the show
    wind: float | None = None  # [m/s] gusts
    gust_limit: float | None = None  # [m/s] set by the show
    fuel: Fuel | None = None
    fuel_on_site: float | None = None  # [m³]
    fuel_of: Mapping[str, float | None] = field(default_factory=dict)  # [m³] by performer
    fuel_prepared: float | None = None  # [m³] that the burns need, with spare
    unweighed: tuple[str, ...] = ()  # performers whose soak nobody weighed
    flame: float | None = None  # [m] over the wick at rest, as stated
    tallest: float | None = (
        None  # [m] the larger of that and the computed one at the peak, over all props
    )
    ages: Mapping[str, int | None] = field(default_factory=dict)  # [years] least, by performer
    persons: Mapping[str, str] = field(default_factory=dict)  # who stands in, by part
    unstated: tuple[
        str, ...
    ] = ()  # keys of the venue that nobody filled in: setting, ceiling, spin_off


@once_per_show_with(*PLAN_PARTS)
def night_of(show: Staged) -> Night:
    """What a show records about its venue and evening."""
    plan = safety_plan(show)
    venue, fire = show.show.venue, show.show.fire
    year = _year(show)
    return Night(
        indoors=venue.setting == "indoors",
        open_sky=venue.ceiling == "open",
        sprinklers=venue.sprinklers,
        permit=_permit(show),
        permit_gaps=permit_gaps(show.show),
        permit_contradictions=permit_contradictions(show.show),
        no_date=show.show.night is None,
        wind=venue.wind,
        gust_limit=show.show.weather.gusts,
        fuel=known_fuel(show),
        fuel_on_site=fire.fuel_on_site if fire else None,
        fuel_of={} if plan.fuel is None else {who: plan.fuel.of(who) for who in show.show.names},
        fuel_prepared=None if plan.fuel is None else plan.fuel.prepared,
        unweighed=() if plan.fuel is None else plan.fuel.unweighed,
        flame=fire.flame if fire else None,
        tallest=None if fire is None or fire.flame is None else _tallest(show, fire),
        ages={
            # born on the last day of that year: the least age it can be
            each.name: None if each.birth_year is None else year - each.birth_year - 1
            for each in show.show.cast
        },
        persons={
            each.name: show.taken_by(each.name)
            for each in show.show.cast
            if show.taken_by(each.name) != each.name
        },
        unstated=tuple(key for key in STATED if getattr(venue, key) is None),
    )


class BeatReader(Protocol):
    """Converts beats to seconds and to bar.beat."""

    def seconds(self, beat: float) -> float:
        """Second of the track."""
        ...

    def position(self, beat: float) -> str:
        """bar.beat as text."""
        ...

    def at_aloud(self, beat: float) -> str:
        """When something is, as it can be counted."""
        ...


def where_lit(check: Callable[[Staged], Outcome]) -> Callable[[Staged], Outcome]:
    """The check, with an empty outcome for a show in which nothing is lit."""

    @wraps(check)
    def guarded(show: Staged) -> Outcome:
        return check(show) if show.lit else Outcome()

    return guarded


def needed(book: RuleBook, kind: str) -> Rule:
    """The strictest rule of a kind that is always in force.

    Raises
    ------
    ValueError
        If no rule in force is of this kind.
    """
    rule = book.strictest(kind)
    if rule is None:
        raise ValueError(f"no rule in force is about {kind}")
    return rule


def blank_finding(what: str, where: str, rule: Rule | Source) -> Finding:
    """A finding on something that a rule or a text needs and nobody recorded."""
    return night_finding(
        "not-recorded", "stop", f"{what}; a blank counts as unmet", rule.citation,
        (f"write it under {where}",),
    )  # fmt: skip


def litres(volume: float) -> str:
    """A volume in litres, in words."""
    return f"{volume / LITRE:.3g} L"


def night_finding(
    code: str,
    severity: Severity,
    message: str,
    source: str,
    remedies: tuple[str, ...],
    *,
    who: tuple[str, ...] = (),
    where: tuple[float, float] | None = None,
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
        where=where,
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


def _tallest(show: Staged, fire: Fire) -> float:
    """Highest flame over any wick that distances are taken from [m]."""
    return max(
        flame_at_rest(prop, fire) for dancer in show.show.cast for prop in dancer.props.values()
    )


def _permit(show: Staged) -> str | None:
    permit = permit_that_holds(show.show)
    return permit.number if permit else None


def _year(show: Staged) -> int:
    """Year of the show's date, so that a file always gets the same verdict; this year if it has none."""
    if show.show.date:
        return int(show.show.date[:4])
    return dt.datetime.now(tz=dt.UTC).year
