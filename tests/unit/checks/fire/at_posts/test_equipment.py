"""Equipment, distances and amounts: the edges of each check, on plain records."""

from dataclasses import dataclass

import pytest

from sequencer.checks.fire.at_posts.equipment import carried_findings, counted
from sequencer.checks.fire.at_posts.extinguishers_at_hand import (
    PlacedExtinguisher,
    extinguisher_findings,
    travel_findings,
    unstated_findings,
)
from sequencer.checks.fire.each_burn.burning_time import burn_findings
from sequencer.checks.fire.on_site.fuel_point import fuel_point_findings, line_distance
from sequencer.checks.fire.on_site.fuel_rules import fuel_amount_findings, fuel_kind_findings
from sequencer.checks.fire.records import Night
from sequencer.checks.fire.rules_kept import confirm_findings
from sequencer.facts.burn_times import BurnTime
from sequencer.facts.fuels import fuel
from sequencer.facts.profiles import CountRule, Override, Profile, Rule, kind_of, profile
from sequencer.facts.rule_book import rule_book
from sequencer.facts.sources import source
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import WalkPath
from sequencer.safety.burns.burning import PlannedBurn

BOOK = rule_book()
FOOT = 0.3048


@dataclass(frozen=True)
class Steady:
    """Half a second a beat."""

    def seconds(self, beat):
        return beat / 2

    def position(self, beat):
        return f"{int(beat) // 4 + 1}.{int(beat) % 4 + 1}"


def stand(x, y, who="Wren"):
    return Followed(who=who, floor=WalkPath((x, y)), start=0.0, end=32.0)


def foam(x, y, rating="2-A:10-B:C", guards="act"):
    return PlacedExtinguisher(place=(x, y), rating=rating, kind="foam", guards=guards)


def travel(placed, burns, *, book=BOOK, ground=None, **known):
    return travel_findings(
        placed, burns, book=book, clock=Steady(), ground=ground or WalkableFloor(),
        **{"fuel_point": None, "act_edge": {"Wren": 1.5}, **known},
    )  # fmt: skip


def alone(name):
    return rule_book(profile(name), with_default=False)


def test_what_the_crew_carries_is_counted():
    found = counted(["2 damp towels", "Fire blanket", "3x buckets", "towel", "radio"])

    assert found == {"towels": 3, "blankets": 1, "buckets": 3}


def test_blanket_or_towels():
    """Montréal wants a blanket or wet towels [A22]."""
    none = carried_findings({"towels": 0, "blankets": 0}, lit_at_once=2, book=alone("montreal"))

    assert [finding.code for finding in none] == ["equipment-missing"]
    assert not carried_findings({"towels": 1}, lit_at_once=2, book=alone("montreal"))
    assert not carried_findings({"blankets": 1}, lit_at_once=2, book=alone("montreal"))
    assert not carried_findings({}, lit_at_once=0, book=alone("montreal"))


def test_a_label_that_nobody_can_read_counts_for_nothing():
    found = extinguisher_findings(
        [foam(4, 0, "big red one")], lit_at_once=1, book=alone("kansas-city"), act=(0.0, 0.0)
    )

    assert found[0].message.startswith("0 of 1")
    assert not extinguisher_findings([], lit_at_once=0, book=BOOK, act=(0.0, 0.0))


@pytest.mark.parametrize(("x", "far"), [(30 * FOOT - 0.05, False), (30 * FOOT + 0.05, True)])
def test_the_walk_is_held_to_thirty_feet(x, far):
    """30 ft (9.14 m), NFPA 10 ch. 6 [B1; read second-hand]."""
    found = travel([foam(x, 0.0)], [stand(0.0, 0.0)], act_edge={"Wren": 5.0})

    assert [finding.code for finding in found] == (["extinguisher-far"] if far else [])


def test_a_walk_round_scenery_is_longer_than_the_straight_line():
    """25 ft straight, 35 ft by two legs of 20 and 15 round a wall's corner: fails 30 ft [B1, B3]."""
    at, unit = (20 * FOOT, 15 * FOOT), foam(0.0, 0.0)
    wall = WalkableFloor(
        (
            (
                (0.01, 0.02),
                (20 * FOOT - 0.01, 0.02),
                (20 * FOOT - 0.01, 15 * FOOT),
                (0.01, 15 * FOOT),
            ),
        )
    )

    assert not travel([unit], [stand(*at)], act_edge={"Wren": 5.0})
    (found,) = travel([unit], [stand(*at)], act_edge={"Wren": 5.0}, ground=wall)
    walked = float(found.message.split(" is ")[1].split(" m ")[0])
    assert walked == pytest.approx(35 * FOOT, abs=0.04)  # the wall stands 1 and 2 cm off the corner


def test_one_within_fifteen_feet_of_the_act():
    """Within 15 ft (4.57 m) of the act [A14]; the act ends at the flame."""
    near, far = foam(1.5 + 15 * FOOT - 0.05, 0.0), foam(1.5 + 15 * FOOT + 0.05, 0.0)

    assert not travel([near], [stand(0.0, 0.0)])
    (found,) = travel([far], [stand(0.0, 0.0)])
    assert "from the act" in found.message
    assert not travel([], [stand(0.0, 0.0)])
    assert not travel([far], [stand(0.0, 0.0)], book=alone("utah"))


def test_an_extinguisher_inside_the_reach_is_no_help():
    """5 mm on either side of the reach of 1.5 m."""
    inside, outside = foam(1.49, 0.0), foam(1.51, 0.0)

    (found,) = travel([inside], [stand(0.0, 0.0)])
    assert (found.code, found.severity) == ("extinguisher-in-reach", "stop")
    assert not travel([outside], [stand(0.0, 0.0)])


def test_the_fuel_point_has_its_own_extinguisher():
    """One at the act does not count for it, however near: whoever uses it there leaves the fuel without."""
    near, beside = foam(3.0, 0.0), foam(12.0, 1.0, guards="fuel")
    burns = [stand(0.0, 0.0)]

    assert not travel([near, beside], burns, fuel_point=(12.0, 2.0), fuel_volume=3e-3)
    for placed in ([near], [near, foam(12.0, 1.0)], [near, foam(12.0, 1.0, "2-A", "fuel")]):
        (found,) = travel(placed, burns, fuel_point=(12.0, 2.0))
        assert (found.code, found.severity) == ("fuel-extinguisher-missing", "stop")
    far = foam(3.0, 1.0, guards="fuel")
    (found,) = travel([near, far], burns, fuel_point=(14.0, 2.0), fuel_volume=3e-3)
    assert (found.code, found.where) == ("extinguisher-far", (14.0, 2.0))
    yard = WalkableFloor(
        (
            ((13, 1), (15, 1), (15, 1.5), (13, 1.5)), ((13, 2.5), (15, 2.5), (15, 3), (13, 3)),
            ((13, 1), (13.5, 1), (13.5, 3), (13, 3)), ((14.5, 1), (15, 1), (15, 3), (14.5, 3)),
        )
    )  # fmt: skip
    (found,) = travel([near, far], burns, fuel_point=(14.0, 2.0), ground=yard)
    assert "no way on foot" in found.message


def test_the_fuel_point_s_extinguisher_counts_neither_as_a_second_nor_as_an_opposing_one():
    """At least two on opposing sides [A1, A16]: one at the act and one by the fuel, on its other side, are one."""
    one, other = foam(4.0, 0.0), foam(-4.0, 0.0)
    by_fuel = foam(-4.0, 0.0, guards="fuel")

    def codes(placed):
        found = extinguisher_findings(placed, lit_at_once=1, book=BOOK, act=(0.0, 0.0))
        return [each.code for each in found]

    assert codes([one, other]) == []
    assert codes([one, by_fuel]) == ["extinguishers-few"]
    assert codes([one, foam(4.0, 1.0), by_fuel]) == ["extinguishers-one-side"]
    (found,) = travel(
        [foam(3.0, 0.0, guards="fuel"), foam(1.5 + 15 * FOOT + 0.05, 0.0)], [stand(0.0, 0.0)]
    )
    assert "from the act" in found.message


@pytest.mark.parametrize(("rating", "kind"), [(None, "foam"), ("2-A:10-B:C", None), (None, None)])
def test_an_extinguisher_of_which_little_is_known_counts_as_none(rating, kind):
    blank = PlacedExtinguisher(place=(-40.0, 0.04), rating=rating, kind=kind)
    (found,) = unstated_findings([foam(4.0, 0.0), blank])

    assert (found.code, found.severity) == ("extinguisher-unstated", "stop")
    assert "at [-40.0, 0.0] not stated: it counts as none" in found.message
    short = extinguisher_findings([foam(4.0, 0.0), blank], lit_at_once=1, book=BOOK, act=(0.0, 0.0))
    assert [each.code for each in short] == ["extinguishers-few"]
    assert not travel([blank], [stand(0.0, 0.0)])  # it is no walk to nothing


def test_a_rating_allows_a_walk_for_an_amount():
    """Class B table of NFPA 10: 10-B reaches 50 ft under 1 gal, 30 ft to 5 gal, no more beyond."""
    burns, unit = [stand(0.0, 0.0)], foam(3.0, 0.0, guards="fuel")

    assert not travel([unit], burns, fuel_point=(12.0, 0.0), fuel_volume=4e-3)
    (found,) = travel([unit], burns, fuel_point=(12.0, 0.0), fuel_volume=40e-3)
    assert (found.code, found.severity) == ("extinguisher-small", "warn")
    assert "40 L (extra hazard)" in found.message
    european = foam(3.0, 0.0, "21A 113B C", "fuel")
    assert not travel([european], burns, fuel_point=(12.0, 0.0), fuel_volume=40e-3)


@pytest.mark.parametrize(
    ("y", "close"), [(1.5 + 20 * FOOT - 0.05, True), (1.5 + 20 * FOOT + 0.05, False)]
)
def test_the_fuel_point_keeps_from_the_flame(y, close):
    """20 ft from the outer edge of prop and flame."""
    found = fuel_point_findings(
        (0.0, y), [stand(0.0, 0.0)], act_edge={"Wren": 1.5}, audience={}, book=BOOK, clock=Steady()
    )

    assert [finding.code for finding in found] == (["fuel-point-close"] if close else [])


def test_no_fuel_point_and_no_rule_give_nothing():
    args = {"act_edge": {}, "audience": {"front": [(0.0, 0.0), (1.0, 0.0)]}, "clock": Steady()}

    assert not fuel_point_findings(None, [stand(0, 0)], book=BOOK, **args)
    assert not fuel_point_findings((0.0, 1.0), [stand(0, 0)], book=alone("utah"), **args)


def test_distance_of_a_point_from_a_line():
    line = [(0.0, 0.0), (0.0, 0.0), (4.0, 0.0), (4.0, 3.0)]

    assert line_distance((2.0, 1.5), line) == 1.5
    assert line_distance((-3.0, 4.0), line) == 5.0
    assert line_distance((5.0, 2.0), line) == 1.0


def test_nothing_to_say_where_nothing_is_known():
    night = Night(indoors=False)

    assert not fuel_amount_findings(Night(indoors=False, fuel=fuel("kerosene")), alone("utah"))
    assert not fuel_kind_findings(night, BOOK)
    assert not fuel_amount_findings(night, BOOK)


def test_an_override_names_who_loosened_what():
    rule = Rule(
        kind=kind_of("spotters"), value=CountRule(1, 4), printed="one for four", profile="Own",
        source=source("A5"), mark="as entered",
        override=Override(reference="L-7", by="Ada", reason="fenced"),
    )  # fmt: skip
    own = Profile(
        name="own", title="Own", place="", edition="", authority=False, note="", rules=(rule,)
    )
    book = rule_book(None, own)

    assert book.needed("spotters", 4)[0] == 1
    (said,) = [each for each in confirm_findings(book) if each.code == "limit-loosened"]
    assert "by reference L-7, entered by Ada: fenced" in said.message


def test_a_burn_without_room_for_an_early_end_still_names_a_mend():
    """All of the soak is spent before this burn starts: only a bigger wick is left."""
    burn = PlannedBurn(
        who="W", start=0.0, end=20.0, start_s=100.0, end_s=110.0, lit_s=210.0, fuel="kerosene",
        burn=BurnTime(seconds=240.0, basis="measured", source="log"),
    )  # fmt: skip
    (found,) = burn_findings([burn], share=BOOK.strictest("burn-share"), cuts=[], positions=["1.1"])

    assert [text.split()[0] for text in found.remedies] == ["use"]
