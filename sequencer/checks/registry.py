"""Every check by name, in the order in which they run: the built-in ones, then those of other packages.

A package offers a `Check` through an entry point of the group `sequencer.checks`. Its names and codes
must be its own. What fails while it runs is told as its package's fault.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import cache, partial

from sequencer.checks.check import Check, Part
from sequencer.checks.dance import feasible, joins, listen_again, travel
from sequencer.checks.distances import clearance, drift
from sequencer.checks.fire import (
    audience_room,
    burning_time,
    crew,
    equipment,
    extinguishers_at_hand,
    fuel_point,
    fuel_rules,
    heat,
    rules_kept,
    watch_kept,
    weather,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.cautions import Condition
from sequencer.plugins import Plugin, blamed, plugins
from sequencer.staging.staged import Staged

CHECK_PLUGINS = "sequencer.checks"
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
    extinguishers_at_hand.CHECK,
    fuel_point.CHECK,
    fuel_rules.CHECK,
    weather.WIND,
    rules_kept.CHECK,
    weather.DOWNWIND,
    audience_room.CHECK,
    rules_kept.CONFIRMED,
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
    installed = [(_loaded(plugin), plugin) for plugin in plugins(CHECK_PLUGINS)]
    for check, plugin in sorted(installed, key=lambda each: each[0].name):
        with blamed(plugin):
            _refuse_misfit(check, known)
        known.append(replace(check, run=partial(_run, plugin, check)))
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


def conditions_by_code() -> dict[str, Condition]:
    """Conditions of cautions, by the finding code that brings them up."""
    return {code: when for check in checks() for code, when in check.cautions.items()}


def fuel_codes() -> frozenset[str]:
    """Finding codes that the fuel keeper's sheet lists."""
    return frozenset(code for check in checks() for code in check.of_fuel)


def _loaded(plugin: Plugin) -> Check:
    check = plugin.load()
    with blamed(plugin):
        if not isinstance(check, Check):
            raise TypeError(f"expected a Check, got {type(check).__name__}")
    return check


def _run(plugin: Plugin, check: Check, show: Staged) -> Outcome:
    with blamed(plugin):
        return check.outcome(show)


def _refuse_misfit(check: Check, known: Sequence[Check]) -> None:
    """Refuse a check that cannot stand beside those that are known."""
    names = {each.name for each in known}
    if check.name in names:
        raise ValueError(f"it takes the name {check.name!r}, which is in use")
    taken = {code: each.name for each in known for code in each.codes}
    for code in check.codes:
        if code in taken:
            raise ValueError(
                f"it takes the code {code!r}, which is one of the check {taken[code]!r}"
            )
    for name in check.after:
        if name not in names:
            raise ValueError(f"it reads {name!r}, and no such check runs before it")


__all__ = ["BUILT_IN", "CHECK_PLUGINS", "Check", "check_named", "checks"]
