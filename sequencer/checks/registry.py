"""Every check by name, in running order: the built-in ones, then those of other packages.

A package offers a `Check` through an entry point of the group `sequencer.checks`. Its name and
codes must not be in use yet. If it fails while it runs, its package is named as the cause.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import cache, partial

from sequencer.checks.check import Check
from sequencer.checks.dance import (
    accents_hit,
    as_flown,
    feasible,
    in_the_wings,
    joins,
    listen_again,
    named_sections,
    other_count,
    travel,
    who_is_there,
    wishes_kept,
)
from sequencer.checks.distances import drift, keeping_clear
from sequencer.checks.fire import not_planned, rules_kept
from sequencer.checks.fire.at_posts import (
    crew,
    equipment,
    extinguishers_at_hand,
    handing_over,
    lines_of_sight,
    posts_clear,
    watch_kept,
)
from sequencer.checks.fire.each_burn import burning_time, handling_kept
from sequencer.checks.fire.on_site import (
    audience_room,
    exits_clear,
    fuel_point,
    fuel_rules,
    heat,
    let_go_range,
    weather,
)
from sequencer.checks.outcome import Outcome
from sequencer.facts.cautions import Condition
from sequencer.plugins import Plugin, blamed, plugins
from sequencer.staging.results import Part
from sequencer.staging.staged import Staged

CHECK_PLUGINS = "sequencer.checks"
BUILT_IN: tuple[Check, ...] = (
    who_is_there.CHECK,
    in_the_wings.CHECK,
    joins.CHECK,
    accents_hit.CHECK,
    wishes_kept.CHECK,
    feasible.CHECK,
    keeping_clear.CHECK,
    travel.CHECK,
    burning_time.CHECK,
    handling_kept.CHECK,
    crew.CHECK,
    posts_clear.CHECK,
    watch_kept.CHECK,
    handing_over.CHECK,
    lines_of_sight.CHECK,
    heat.CHECK,
    let_go_range.CHECK,
    equipment.CHECK,
    extinguishers_at_hand.CHECK,
    fuel_point.CHECK,
    fuel_rules.CHECK,
    weather.WIND,
    rules_kept.CHECK,
    weather.DOWNWIND,
    exits_clear.CHECK,
    audience_room.CHECK,
    rules_kept.CONFIRMED,
    not_planned.CHECK,
    listen_again.CHECK,
    named_sections.CHECK,
    other_count.CHECK,
    as_flown.CHECK,
    drift.CHECK,
)


@cache
def checks() -> tuple[Check, ...]:
    """All checks, in the order in which they run.

    Raises
    ------
    InputError
        If an installed package's check cannot be loaded, is not a `Check`, has a name or a code that is
        already in use, or uses a check that does not run before it.
    """
    known = list(BUILT_IN)
    waiting = [(_loaded(plugin), plugin) for plugin in plugins(CHECK_PLUGINS)]
    while waiting:  # the first whose `after` has run; if there is none, the first is refused
        names = {each.name for each in known}
        ready = (k for k, (check, _) in enumerate(waiting) if names.issuperset(check.after))
        check, plugin = waiting.pop(next(ready, 0))
        with blamed(plugin):
            _refuse_misfit(check, known)
        known.append(replace(check, run=partial(_run, plugin, check)))
    return tuple(known)


def check_named(name: str) -> Check:
    """The check with this name.

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
    """Checks whose findings can change when a part of a show changes, in running order."""
    return tuple(check for check in checks() if part in check.depends_on and not check.on_request)


def found_by(name: str, show: Staged) -> Outcome:
    """Outcome of the check with this name, computed once per show; for checks that build on it."""
    return check_named(name).outcome(show)


def conditions_by_code() -> dict[str, Condition]:
    """Caution conditions, by the finding code that raises them."""
    return {code: when for check in checks() for code, when in check.cautions.items()}


def fuel_codes() -> frozenset[str]:
    """Finding codes listed on the fuel keeper's sheet."""
    return frozenset(code for check in checks() for code in check.of_fuel)


def blank_codes() -> frozenset[str]:
    """Codes of findings on what nobody stated."""
    return frozenset(code for code, when in conditions_by_code().items() if when == "missing")


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
    """Refuse a check whose name, codes or dependencies do not fit the checks already known."""
    names = {each.name for each in known}
    if check.name in names:
        raise ValueError(f"its name {check.name!r} is already in use")
    taken = {code: each.name for each in known for code in each.codes}
    for code in check.codes:
        if code in taken:
            raise ValueError(f"its code {code!r} already belongs to the check {taken[code]!r}")
    for name in check.after:
        if name not in names:
            raise ValueError(f"it uses {name!r}, but no such check runs before it")


__all__ = [
    "BUILT_IN",
    "CHECK_PLUGINS",
    "Check",
    "blank_codes",
    "check_named",
    "checks",
    "checks_of",
    "conditions_by_code",
    "found_by",
    "fuel_codes",
]
