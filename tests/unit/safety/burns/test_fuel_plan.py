"""Fuel to prepare and the lighting order, weighed and timed by hand."""

from types import SimpleNamespace

import pytest

from sequencer.facts.burn_times import BurnTime
from sequencer.facts.fuels import fuel
from sequencer.safety.burns import fuel_plan as plans
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.fuel_plan import fuel_plan, lighting_order

DENSITY = fuel("kerosene").density.lowest


def burn(who, start=0, *, soak=0, wait=0.0, lit=20.0, seconds=100.0):
    time = None if seconds is None else BurnTime(seconds=seconds, basis="stated", source="")
    return PlannedBurn(
        who=who, start=start, end=start + 10, start_s=start / 2, end_s=start / 2 + 5, lit_s=lit,
        burn=time, fuel="kerosene", soak=soak, lighting_s=2.0, wait_s=wait,
    )  # fmt: skip


def prop(kept, wicks=1):
    return SimpleNamespace(fuel=kept, wick_count=wicks)


def show(**props):
    cast = [SimpleNamespace(name=who, props=own) for who, own in props.items()]
    fire = SimpleNamespace(fuel="kerosene")
    return SimpleNamespace(show=SimpleNamespace(cast=cast, fire=fire))


def test_each_prop_takes_up_what_it_keeps_and_what_is_spun_off():
    """0.03 kg kept are three quarters of what is taken up; two soaks; a spare of a fifth over all."""
    assert (plans.SPIN_OFF, plans.FUEL_RESERVE) == (0.25, 0.20)
    own = show(
        Ada={"left": prop(0.03, 2), "right": prop(0.06)}, Bo={"right": prop(0.045)},
        Cy={"right": prop(0.5)},
    )  # fmt: skip
    plan = fuel_plan(own, [burn("Ada"), burn("Ada", 20), burn("Ada", 60, soak=1), burn("Bo")])
    assert plan.fuel.name == "kerosene"
    assert [(one.who, one.side, one.soaks, one.wicks, one.kept) for one in plan.props] == [
        ("Ada", "left", 2, 2, 0.03), ("Ada", "right", 2, 1, 0.06), ("Bo", "right", 1, 1, 0.045),
    ]  # fmt: skip
    taken = [0.08 / DENSITY, 0.16 / DENSITY, 0.06 / DENSITY]
    assert [one.taken_up for one in plan.props] == pytest.approx(taken, rel=1e-12)
    assert [one.spun_off for one in plan.props] == pytest.approx([t / 4 for t in taken], rel=1e-12)
    assert plan.of("Ada") == pytest.approx(0.24 / DENSITY)
    assert plan.of("Bo") == pytest.approx(0.06 / DENSITY)
    assert plan.of("Cy") == 0
    assert plan.taken_up == pytest.approx(0.3 / DENSITY)
    assert plan.spun_off == pytest.approx(0.075 / DENSITY)
    assert plan.prepared == pytest.approx(0.36 / DENSITY)
    assert plan.unweighed == ()


def test_a_soak_that_is_not_weighed_is_named_once():
    own = show(
        Ada={"left": prop(None), "right": prop(None)}, Bo={"left": prop(0.03), "right": prop(None)}
    )
    plan = fuel_plan(own, [burn("Ada"), burn("Bo")])
    assert plan.unweighed == ("Ada", "Bo")
    assert plan.of("Ada") is plan.of("Bo") is None
    assert plan.taken_up == pytest.approx(0.04 / DENSITY)
    assert plan.spun_off == pytest.approx(0.01 / DENSITY)
    assert [one.spun_off is None for one in plan.props] == [True, True, False, True]


def test_nothing_lit_needs_no_fuel_and_an_unknown_density_no_volume(monkeypatch):
    own = show(Ada={"right": prop(0.03)})
    assert fuel_plan(own, []) is None
    monkeypatch.setattr(plans, "known_fuel", lambda _show: None)
    assert fuel_plan(own, [burn("Ada")]) is None
    monkeypatch.setattr(plans, "known_fuel", lambda _show: SimpleNamespace(density=None))
    plan = fuel_plan(own, [burn("Ada")])
    assert (plan.props[0].taken_up, plan.props[0].kept) == (None, 0.03)


def test_who_waits_longest_is_lit_first_and_that_long_before():
    """Two seconds of lighting, and then the wait."""
    found = lighting_order(
        [
            burn("Cy", 40, lit=30.0),
            burn("Ada", wait=5.0), burn("Bo", wait=10.0, seconds=None), burn("Di", lit=120.0),
        ]
    )  # fmt: skip
    assert [(one.start, one.start_s) for one in found] == [(0, 0.0), (40, 20.0)]
    told = [[(light.burn.who, light.at_s, light.spare_s) for light in one.lights] for one in found]
    assert told == [
        [("Bo", -12.0, None), ("Ada", -7.0, 80.0), ("Di", -2.0, -20.0)],
        [("Cy", 18.0, 70.0)],
    ]
    assert lighting_order([]) == ()
