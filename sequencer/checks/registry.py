"""Every check by name, in the order in which they run: the built-in ones, then those of other packages.

A package offers a `Check` through an entry point of the group `sequencer.checks`. Its names and codes
must be its own.
"""

from collections.abc import Sequence
from functools import cache
from importlib.metadata import EntryPoint, entry_points

from sequencer.checks.check import Check, Part
from sequencer.checks.dance import feasible, joins, listen_again, travel
from sequencer.checks.distances import clearance, drift
from sequencer.checks.fire import (
    audience_room,
    burning_time,
    crew,
    equipment,
    extinguishers,
    fuel_point,
    fuel_rules,
    heat,
    house_rules,
    watch_kept,
    weather,
)
from sequencer.checks.outcome import Outcome
from sequencer.errors import InputError, Place
from sequencer.facts.cautions import Condition
from sequencer.findings import Severity
from sequencer.staging.staged import Staged

ENTRY_POINTS = "sequencer.checks"
BUILT_IN: tuple[Check, ...] = (
    joins.CHECK,
    feasible.CHECK,
    clearance.CHECK,
    travel.CHECK,
    burning_time.CHECK,
    crew.CHECK,
    watch_kept.CHECK,
    heat.CHECK,
    equipment.CHECK,
    extinguishers.CHECK,
    fuel_point.CHECK,
    fuel_rules.CHECK,
    weather.WIND,
    house_rules.CHECK,
    weather.DOWNWIND,
    audience_room.CHECK,
    house_rules.CONFIRMED,
    listen_again.CHECK,
    drift.CHECK,
)


@cache
def checks() -> tuple[Check, ...]:
    """All checks, in the order in which they run.

    Raises
    ------
    InputError
        If an installed package's check cannot be loaded, is no `Check`, takes a name or a code that is in
        use, or reads a check that does not run before it.
    """
    known = list(BUILT_IN)
    installed = [(_loaded(entry), entry) for entry in entry_points(group=ENTRY_POINTS)]
    for check, entry in sorted(installed, key=lambda each: each[0].name):
        if fault := _fault(check, known):
            raise _broken(entry, fault)
        known.append(check)
    return tuple(known)


def check_named(name: str) -> Check:
    """The check of a name.

    Raises
    ------
    ValueError
        If there is none.
    """
    for check in checks():
        if check.name == name:
            return check
    raise ValueError(f"no check {name!r}; there are {', '.join(check.name for check in checks())}")


def checks_of(part: Part) -> tuple[Check, ...]:
    """Checks whose findings can change with a part of a show, in their order."""
    return tuple(check for check in checks() if part in check.depends_on and not check.only_asked)


def found_by(name: str, show: Staged) -> Outcome:
    """What the check of a name finds in a show, worked out once for each show: for checks that read it."""
    return check_named(name).outcome(show)


def declared_codes() -> dict[str, tuple[Severity, ...]]:
    """Every finding code with the severities that it may have."""
    return {code: own for check in checks() for code, own in check.codes.items()}


def conditions_by_code() -> dict[str, Condition]:
    """Conditions of cautions, by the finding code that brings them up."""
    return {code: when for check in checks() for code, when in check.cautions.items()}


def fuel_codes() -> frozenset[str]:
    """Finding codes that the fuel keeper's sheet lists."""
    return frozenset(code for check in checks() for code in check.of_fuel)


def _loaded(entry: EntryPoint) -> Check:
    try:
        check = entry.load()
    except Exception as error:
        raise _broken(entry, f"cannot be loaded: {error}") from error
    if not isinstance(check, Check):
        raise _broken(entry, f"is no Check but {type(check).__name__}")
    return check


def _fault(check: Check, known: Sequence[Check]) -> str | None:
    """What keeps a package's check from standing beside those that are known."""
    names = {each.name for each in known}
    if check.name in names:
        return f"takes the name {check.name!r}, which is in use"
    taken = {code: each.name for each in known for code in each.codes}
    for code in check.codes:
        if code in taken:
            return f"takes the code {code!r}, which is one of the check {taken[code]!r}"
    unknown = [name for name in check.after if name not in names]
    return f"reads {unknown[0]!r}, and no such check runs before it" if unknown else None


def _broken(entry: EntryPoint, what: str) -> InputError:
    package = f"package {entry.dist.name} {entry.dist.version}" if entry.dist else entry.value
    return InputError(
        "broken-check",
        Place(package),
        f"its check {entry.name!r} {what}",
        "install a version that works, or uninstall the package",
    )


__all__ = ["BUILT_IN", "ENTRY_POINTS", "Check", "check_named", "checks", "declared_codes"]
