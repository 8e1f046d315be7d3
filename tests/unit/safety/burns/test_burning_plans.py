"""Burns and burning times of a small show, at half a second a beat, worked out by hand."""

import math
from types import SimpleNamespace

import pytest

from sequencer.facts.burn_log import TimedBurn
from sequencer.motion.performers.walks import WalkPath
from sequencer.safety.burns import burning
from sequencer.safety.burns.burning import burn_time, known_fuel, planned_burns, timed_burns
from sequencer.show.model import Handling
from sequencer.staging.staged import Lit


def prop(mass=None):
    return SimpleNamespace(fuel_mass=mass)


def show(lit=(), *, burn=None, burns=None, fire=True, props=None, crew=(), **handled):
    """Ada, Bo and Cy, 2.1336 m apart, 2 s of slow walk; `lit` is (who, first beat, last beat, and more as entered).

    Lighting and putting out take 5 s each, cooling 1 s, unless `handled` says otherwise.
    """
    props = props or {}
    cast = [
        SimpleNamespace(name=who, props=props.get(who, {"right": prop()}))
        for who in ("Ada", "Bo", "Cy")
    ]
    handling = Handling(**{"light": 5.0, "put_out": 5.0, "cool": 1.0, **handled})
    record = (
        SimpleNamespace(fuel="kerosene", burn=burn, burns=burns, handling=handling)
        if fire
        else None
    )
    spans = [
        Lit(who=who, start=start, end=end, path=(), **(more[0] if more else {}))
        for who, start, end, *more in lit
    ]
    posts = [SimpleNamespace(name=name, duty=duty) for name, duty in crew]
    return SimpleNamespace(
        show=SimpleNamespace(fire=record, names=("Ada", "Bo", "Cy"), cast=cast, crew=posts),
        dancers=[
            SimpleNamespace(name=who, floor=WalkPath((2.1336 * k, 0.0)))
            for k, who in enumerate(("Ada", "Bo", "Cy"))
        ],
        seconds=lambda beat: beat / 2,
        lit_of=lambda who: [span for span in spans if span.who == who],
        file="shows/x.yaml",
    )  # fmt: skip


STATED = SimpleNamespace(time=100.0, measured=False)


def test_a_show_without_fire_has_no_fuel_and_no_burns():
    none = show(fire=False)
    assert known_fuel(none) is None
    assert timed_burns(none) == ()
    assert burn_time(none, "Ada") is None
    assert planned_burns(none, refuel_seconds=30.0) == ()
    assert known_fuel(show()).name == "kerosene"
    assert timed_burns(show()) == ()


def test_a_log_lies_beside_the_show(tmp_path):
    (tmp_path / "log.csv").write_text("fuel,burn\nkerosene,240\n", encoding="utf-8")
    own = show(burns="log.csv")
    own.file = str(tmp_path / "x.yaml")
    assert timed_burns(own) == (TimedBurn(fuel="kerosene", seconds=240.0, line=2),)


def test_logged_goes_before_stated_and_stated_before_the_default():
    log = [TimedBurn(fuel="kerosene", seconds=77.0, performer="Bo")]
    own = show(burn=STATED)
    assert (burn_time(own, "Bo", log).seconds, burn_time(own, "Bo", log).basis) == (
        77.0,
        "measured",
    )
    ada = burn_time(own, "Ada", log)
    assert (ada.seconds, ada.basis, ada.source) == (100.0, "stated", "stated in the show file")
    timed = burn_time(show(burn=SimpleNamespace(time=90.0, measured=True)), "Ada")
    assert (timed.seconds, timed.basis) == (90.0, "measured")
    assert timed.source == "timed burn of this show's performers"
    assert burn_time(show(burn=STATED), "Ada").seconds == 100.0


def test_the_default_is_that_of_the_prop_that_burns_shortest(monkeypatch):
    """One second a gram here; a prop whose time is not known leaves the performer's unknown."""
    asked = []

    def default(liquid, *, soak, wick_area):
        asked.append((liquid.name, soak, wick_area))
        if soak is None:
            return None
        return burning.BurnTime(seconds=1000 * soak, basis="default", source="")

    monkeypatch.setattr(burning, "default_burn_time", default)
    monkeypatch.setattr(burning, "wick_area", lambda _prop: 0.25)
    own = show(
        props={
            "Ada": {"left": prop(0.06), "right": prop(0.05)},
            "Bo": {"left": prop(0.06), "right": prop()},
        }
    )
    assert burn_time(own, "Ada").seconds == 50.0
    assert asked == [("kerosene", 0.06, 0.25), ("kerosene", 0.05, 0.25)]
    assert burn_time(own, "Bo") is None


def test_burns_of_one_soak_are_counted_together():
    """Out for 10 s, not enough to cool for 1 s and soak again in 9.5 s, and then for 10.5 s, which is."""
    own = show([("Ada", 0, 20), ("Ada", 40, 60), ("Ada", 81, 101)], burn=STATED)
    found = planned_burns(own, refuel_seconds=9.5)
    assert [(one.start, one.end, one.start_s, one.end_s) for one in found] == [
        (0, 20, 0.0, 10.0), (40, 60, 20.0, 30.0), (81, 101, 40.5, 50.5),
    ]  # fmt: skip
    assert [(one.lit_s, one.soak, one.lighting_s, one.wait_s) for one in found] == [
        (15.0, 0, 5.0, 0.0), (30.0, 0, 5.0, 0.0), (15.0, 1, 5.0, 0.0),
    ]  # fmt: skip
    assert {(one.who, one.fuel, one.burn.seconds) for one in found} == {("Ada", "kerosene", 100.0)}


def test_a_second_set_is_a_soak_of_its_own_however_soon():
    second = {"second_set": True}
    own = show([("Ada", 0, 20, second), ("Ada", 30, 40, second), ("Ada", 50, 60)], burn=STATED)
    found = planned_burns(own, refuel_seconds=100.0)
    assert [(one.soak, one.second_set, one.lit_s) for one in found] == [
        (0, False, 15.0),  # the first set, whatever it is called
        (1, True, 10.0),
        (1, False, 20.0),
    ]


def test_burns_are_in_order_of_their_start_and_then_of_the_cast():
    own = show([("Cy", 0, 10), ("Ada", 0, 10), ("Bo", -4, 10), ("Ada", 90, 91)], burn=STATED)
    found = planned_burns(own, refuel_seconds=9.0)
    assert [(one.who, one.start) for one in found] == [
        ("Bo", -4), ("Ada", 0), ("Cy", 0), ("Ada", 90),
    ]  # fmt: skip
    assert [one.soak for one in found] == [0, 0, 0, 1]


def test_equal_time_to_spare_is_lit_in_the_order_of_the_cast():
    """Five seconds for each, and two from one to the next: Cy from −5 s, Bo from −12 s, Ada from −19 s."""
    found = planned_burns(
        show([(who, 0, 10) for who in ("Ada", "Bo", "Cy")], burn=STATED), refuel_seconds=10.0
    )
    assert [one.alight_s for one in found] == pytest.approx([-19.0, -12.0, -5.0])
    assert [one.wait_s for one in found] == pytest.approx([14.0, 7.0, 0.0])
    assert [one.lit_s for one in found] == pytest.approx([24.0, 17.0, 10.0])
    assert [one.lit_by for one in found] == [None] * 3
    assert [one.lit_at for one in found] == [(0.0, 0.0), (2.1336, 0.0), (2.1336 * 2, 0.0)]


def test_who_has_least_to_spare_is_lit_last_and_several_people_light_side_by_side():
    """Ada has burnt some of her soak before, so Bo is lit first; Cy by another, at once.

    To be with Bo at −2 s, Sorrel is done with Ada's first lighting at −4 s: Ada burns from −9 s to 5 s, and from 5 s to 15 s.
    """
    own = show(
        [("Ada", 0, 10), ("Ada", 20, 30), ("Bo", 20, 30), ("Cy", 20, 30, {"lit_by": "Moth"})],
        burn=STATED, crew=[("Sorrel", "lighter"), ("Moth", "lead"), ("Brook", "spotter")],
    )  # fmt: skip
    found = planned_burns(own, refuel_seconds=100.0)
    told = {(one.who, one.start): one for one in found}
    assert [told[who, 20].alight_s for who in ("Bo", "Ada", "Cy")] == pytest.approx(
        [-2.0, 5.0, 5.0]
    )
    assert [told[who, 20].lit_by for who in ("Bo", "Ada", "Cy")] == ["Sorrel", "Sorrel", "Moth"]
    assert told["Ada", 20].lit_s == pytest.approx(14.0 + 10.0)


@pytest.mark.parametrize(
    ("crew", "handled", "lit_by"),
    [
        ([("Sorrel", "lighter")], {}, "Sorrel"),
        ([("Sorrel", "lighter"), ("Moth", "lighter")], {}, None),  # one of two: nobody is named
        ([("Moth", "lead")], {}, None),
        ([("Sorrel", "lighter")], {"lit_by": "Moth"}, "Moth"),
    ],
)
def test_the_only_lighter_lights_unless_somebody_is_named(crew, handled, lit_by):
    own = show([("Ada", 0, 10)], burn=STATED, crew=crew, **handled)
    assert planned_burns(own, refuel_seconds=10.0)[0].lit_by == lit_by


def test_the_way_from_the_place_of_lighting_is_burnt_too():
    """Ada is lit 4.2672 m from her place, 4 s of slow walk, and so lighting is over 4 s before the burn begins."""
    own = show([("Ada", 20, 30, {"lit_at": (0.0, 4.2672)})], burn=STATED)
    (one,) = planned_burns(own, refuel_seconds=10.0)
    assert (one.lighting_s, one.lit_at) == (5.0, (0.0, 4.2672))
    assert (one.wait_s, one.alight_s) == pytest.approx((4.0, 1.0))


def test_a_burn_without_a_time_has_nothing_to_spare():
    own = burning.PlannedBurn(
        who="Ada", start=0, end=10, start_s=0.0, end_s=5.0, lit_s=5.0, burn=None, fuel="kerosene"
    )
    assert (own.soak, own.wait_s, own.queue_s, burning.spare(own)) == (0, 0.0, 0.0, 0.0)
    assert own.share() == math.inf


def test_who_is_put_out_before_another_is_lit_does_not_count():
    def burn(who, start, end):
        return burning.PlannedBurn(
            who=who, start=start, end=end, start_s=start / 2, end_s=end / 2, lit_s=1.0, burn=None,
            fuel="kerosene",
        )  # fmt: skip

    first, second, third = burn("Ada", 0, 4), burn("Bo", 2, 8), burn("Cy", 8, 9)
    assert burning.lit_at_once((first, second, third)) == (2, second)


@pytest.mark.parametrize(("lit", "dry"), [(30.0, 75.0), (100.0, 5.0), (101.0, 4.0), (110.0, 0.0)])
def test_a_wick_is_dry_once_its_time_is_burnt(lit, dry):
    """Put out at 5 s: what is left goes on from there; what is lacking ends before, but not before the start."""
    own = burning.PlannedBurn(
        who="Ada", start=0, end=10, start_s=0.0, end_s=5.0, lit_s=lit, fuel="kerosene",
        burn=burning.BurnTime(seconds=100.0, basis="stated", source=""),
    )  # fmt: skip
    assert own.dry_s == dry
    assert own.share() == lit / 100
