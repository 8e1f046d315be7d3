"""What a plan has on a subject is that of whoever has the least room: two performers who differ in each."""

from dataclasses import replace

import pytest

from sequencer.facts.pace import response_seconds
from sequencer.facts.profiles import profile
from sequencer.findings import Clearance, Report
from sequencer.safety.duties.watching import Watch, WatchPlan
from sequencer.safety.measures import PlanCase, measured, moment
from tests.unit.checks.fire.test_rules_kept import show

RULES = {rule.kind.name: rule for rule in profile("default").rules}
UNLIKE = (
    ("name: Wren, stature: 1.7 m, prop: {tether: 55 cm, wick: 4 cm, fuel_mass: 8 g}, birth_year: 1990",
     "name: Wren, stature: 1.7 m, prop: {tether: 55 cm, wick: 4 cm, fuel_mass: 16 g}, birth_year: 2001"),
    ("- {who: all, from: 1.1, until: 81.1}", "- {who: Wren, from: 1.1, until: 81.1}\n    - {who: Moss, from: 1.1, until: 41.1}"),
)  # fmt: skip


@pytest.fixture(scope="module")
def case():
    return PlanCase.of(show(UNLIKE), Report(show="s"))


def at(first, second, distance):
    return Clearance(
        between=(first, second), distance=distance, required=7.62, at=61.9, error=0.005
    )


def test_the_youngest_the_most_fuel_and_the_longest_burn_count(case):
    age, fuel, share = (
        measured(case, RULES[kind])
        for kind in ("performer-age", "fuel-per-performer", "burn-share")
    )

    # 2026 less 2001, and one year less: born on the last day of that year
    assert (age.value, age.words) == (24.0, "Wren")
    assert (fuel.value, fuel.words) == (case.plan.fuel.of("Wren"), "Wren")
    assert fuel.value == pytest.approx(2 * case.plan.fuel.of("Moss"))
    assert (share.value, share.words) == (max(burn.share() for burn in case.plan.burns), "Wren")


def test_the_smallest_of_the_proven_distances_counts_and_says_where(case):
    rows = (
        at("Moss", "front", 9.0),
        at("Wren", "front", 8.0),
        at("Wren", "Moss", 1.0),
        at("Wren", "hay (combustible)", 6.5),
    )
    found = measured(
        replace(case, report=Report(show="s", clearances=rows)), RULES["audience-distance"]
    )

    assert (found.value, found.words) == (8.0, "Wren to front, 1:01")
    assert measured(case, RULES["audience-distance"]).blank == "no distance was computed"


def test_the_walk_is_that_of_the_watch_as_planned_where_it_is_longer(case):
    """Flint at [-2, 8] and Brook at [2, 8] are 4 m from Wren and Moss; a watch of 7.3 m was planned all the same."""
    near = measured(case, RULES["response-distance"])
    watch = Watch(who="Moss", spotter="Flint", start=0.0, end=9.0, way=7.3)
    plan = replace(case.plan, watch=WatchPlan(watches=(watch,), hand_overs=(), unwatched=()))
    found = measured(replace(case, plan=plan), RULES["response-distance"])

    assert near.value == pytest.approx(4.0, abs=0.01)
    assert (found.value, found.words) == (7.3, "Flint to Moss: 5 s brisk, 8 s slow")
    timed = replace(
        RULES["response-distance"],
        kind=replace(RULES["response-distance"].kind, name="response-time"),
    )
    assert measured(replace(case, plan=plan), timed).value == response_seconds(7.3)


def test_nobody_to_watch_is_no_walk_of_nothing(case):
    crew = tuple(replace(duty, watches=("Moss",)) for duty in case.plan.crew)
    found = measured(replace(case, plan=replace(case.plan, crew=crew)), RULES["response-distance"])

    assert (found.met, found.value, found.words) == (False, None, "nobody watches Wren")


@pytest.mark.parametrize(
    ("edit", "kind", "blank"),
    [
        (("  wind: 2 m/s\n", ""), "wind-stop", "gusts"),
        (("  wind_from: stage left\n", ""), "fuel-upwind", "where the wind comes from"),
        (("  fuel_station: [11, 13]\n", ""), "fuel-point-distance", "the fuel point"),
        (("  fuel_on_site: 1 L\n", ""), "fuel-on-site", "fuel on site"),
        (("  ceiling: open\n", ""), "ceiling-height", "what is overhead"),
        (("  setting: outdoors\n", ""), "indoor-agreed", "outdoors or indoors"),
        (("  flame: 0.3 m\n", ""), "flame-height", "height of the flame"),
        ((', rating: "2-A"', ""), "extinguishers", "rating or contents of an extinguisher"),
        (("  spin_off: [[10, 14], [12.5, 14], [12.5, 16], [10, 16]]\n", ""), "spin-off-zone", "the spin-off zone"),
        ((", birth_year: 1990", ""), "performer-age", "age of a performer"),
    ],
)  # fmt: skip
def test_a_blank_is_not_a_number(edit, kind, blank):
    asked = next(
        rule
        for name in ("default", "austin")
        for rule in profile(name).rules
        if rule.kind.name == kind
    )
    found = measured(PlanCase.of(show((edit,)), Report(show="s")), asked)

    assert (found.value, found.met, found.blank) == (None, None, blank)


def test_a_moment_is_the_second_in_progress():
    assert [moment(seconds) for seconds in (61.99, 61.0, 0.2)] == ["1:01", "1:01", "0:00"]
